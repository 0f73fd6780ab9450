//! What the tests of pictures set up: a position by its FEN, a line by its moves in SAN.

use super::Tongue;
use shakmaty::{CastlingMode, Chess, Move, Position, fen::Fen, san::San};

/// What pictures say in English.
pub(super) fn english() -> Tongue {
    Tongue::new("en", |tag, text| sealed_move_words::words(tag).say(text))
}

pub(super) fn position(fen: &str) -> Chess {
    fen.parse::<Fen>()
        .expect("a FEN")
        .into_position(CastlingMode::Standard)
        .expect("a position")
}

pub(super) fn line(start: &Chess, sans: &[&str]) -> Vec<Move> {
    let mut at = start.clone();
    sans.iter()
        .map(|san| {
            let mv = san
                .parse::<San>()
                .expect("SAN")
                .to_move(&at)
                .expect("legal");
            at.play_unchecked(mv);
            mv
        })
        .collect()
}
