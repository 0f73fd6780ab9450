//! The whole evaluation: what colours and mirrors must not change, and what is worth more.

use proptest::prelude::*;
use shakmaty::{
    Board, CastlingMode, Chess, Color, FromSetup, Piece, Position, Role, Setup, Square,
};

use super::*;
use crate::parse_fen;

fn value_of(position: &Chess) -> i32 {
    evaluate(position, &mut PawnTable::new())
}

fn worth(fen: &str) -> i32 {
    value_of(&parse_fen(fen).expect("a position").position)
}

#[test]
fn knows_what_is_worth_more() {
    assert!(worth("4k3/8/8/8/8/8/8/4K2Q w - -") > 800);
    assert!(worth("4k3/8/8/8/8/8/8/4K2Q b - -") < -800);
    assert!(
        worth("4k3/8/8/8/8/8/8/4KB2 w - -") < 100,
        "a bishop alone does not win"
    );
    assert!(worth("4k3/4P3/4K3/8/8/8/8/8 w - -") > worth("4k3/8/8/8/8/4P3/4K3/8 w - -"));
}

/// The thresholds of `+` and `=` are in pawns, so a pawn has to stay about one: each pawn of a plain
/// middlegame and of a plain ending in turn is taken away.
#[test]
fn a_pawn_is_worth_about_a_pawn() {
    for fen in [
        "r1bq1rk1/ppp2ppp/2np1n2/2b1p3/2B1P3/2NP1N2/PPP2PPP/R1BQ1RK1 w - -",
        "4r1k1/ppp2ppp/8/8/8/8/PPP2PPP/4R1K1 w - -",
    ] {
        let position = parse_fen(fen).expect("a position").position;
        let whole = value_of(&position);
        let mut losses: Vec<i32> = (position.board().pawns() & position.us())
            .into_iter()
            .map(|pawn| {
                let mut setup = position.to_setup(shakmaty::EnPassantMode::Legal);
                setup.board.discard_piece_at(pawn);
                let without = Chess::from_setup(setup, CastlingMode::Standard).expect("legal");
                whole - value_of(&without)
            })
            .collect();
        losses.sort_unstable();
        let median = losses[losses.len() / 2];
        assert!((75..=135).contains(&median), "{fen}: {losses:?}");
    }
}

fn pieces() -> impl Strategy<Value = Vec<(usize, usize, bool)>> {
    proptest::collection::vec((0usize..64, 0usize..5, any::<bool>()), 0..28)
}

/// A position with kings and pieces anywhere, if the rules apply to it.
fn arrange(kings: (usize, usize), pieces: &[(usize, usize, bool)], turn: Color) -> Option<Chess> {
    let square = |n: usize| Square::ALL[n];
    let mut board = Board::empty();
    for &(at, role, white) in pieces {
        let role = Role::ALL[role];
        let last = matches!(at / 8, 0 | 7);
        if role == Role::Pawn && last {
            continue;
        }
        let color = Color::from_white(white);
        board.set_piece_at(square(at), Piece { color, role });
    }
    board.set_piece_at(square(kings.0), Color::White.king());
    board.set_piece_at(square(kings.1), Color::Black.king());
    let mut setup = Setup::empty();
    setup.board = board;
    setup.turn = turn;
    Chess::from_setup(setup, CastlingMode::Standard)
        .or_else(shakmaty::PositionError::ignore_too_much_material)
        .or_else(shakmaty::PositionError::ignore_impossible_check)
        .ok()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    #[test]
    fn swapped_colours_are_worth_the_same(
        white in 0usize..64, black in 0usize..64, pieces in pieces(), turn in any::<bool>()
    ) {
        let turn = Color::from_white(turn);
        let swapped: Vec<_> = pieces.iter().map(|&(at, role, white)| (at ^ 56, role, !white)).collect();
        if let (Some(one), Some(other)) = (
            arrange((white, black), &pieces, turn),
            arrange((black ^ 56, white ^ 56), &swapped, !turn),
        ) {
            prop_assert_eq!(value_of(&one), value_of(&other));
        }
    }
}
