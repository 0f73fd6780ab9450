//! Lines of moves written out: SAN with check and mate signs, numbered as printed chess does.

use shakmaty::{Chess, Color, Move, Position, san::SanPlus};

/// SAN of each move of `line` played from `position`, with `+` and `#`.
///
/// Moves after the first illegal one are left out.
pub fn sans(position: &Chess, line: &[Move]) -> Vec<String> {
    let mut position = position.clone();
    let mut out = Vec::with_capacity(line.len());
    for &mv in line {
        if !position.is_legal(mv) {
            break;
        }
        out.push(SanPlus::from_move_and_play_unchecked(&mut position, mv).to_string());
    }
    out
}

/// The moves of a line in SAN played from `start`, as far as they can be played.
///
/// ```
/// use sealed_move_chess::line::moves;
/// use shakmaty::Chess;
///
/// let line = ["e4", "e5", "Ke3"].map(str::to_owned);
/// assert_eq!(moves(&Chess::default(), &line).len(), 2);
/// ```
pub fn moves(start: &Chess, line: &[String]) -> Vec<Move> {
    let mut position = start.clone();
    line.iter()
        .map_while(|san| {
            let mv = san.parse::<SanPlus>().ok()?.san.to_move(&position).ok()?;
            position.play_unchecked(mv);
            Some(mv)
        })
        .collect()
}

/// A numbered line such as `1.Rd8+ Rxd8 2.Rxd8#` or `1...Qb2+ 2.Kxb2 Nd3#`, counting from `first`.
///
/// ```
/// use sealed_move_chess::line::numbered;
/// use shakmaty::Color;
///
/// assert_eq!(numbered(Color::Black, 3, &["Rxc2", "Kxc2"]), "3...Rxc2 4.Kxc2");
/// ```
pub fn numbered<S: AsRef<str>>(turn: Color, first: u32, sans: &[S]) -> String {
    let mut out = String::new();
    let mut number = first;
    let mut turn = turn;
    for (i, san) in sans.iter().enumerate() {
        if i > 0 {
            out.push(' ');
        }
        match turn {
            Color::White => out.push_str(&format!("{number}.")),
            Color::Black if i == 0 => out.push_str(&format!("{number}...")),
            Color::Black => {}
        }
        out.push_str(san.as_ref());
        if turn == Color::Black {
            number += 1;
        }
        turn = !turn;
    }
    out
}
