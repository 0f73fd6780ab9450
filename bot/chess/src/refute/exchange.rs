//! What is left on the board when the captures are over: enough to tell a sensible defence from one
//! that only gives a piece away for a move's delay, and a queen lost from a queen exchanged.

use shakmaty::{Chess, Color, Position};

use super::balance;

/// How many half-moves of captures are looked at.
const HORIZON: u8 = 6;
/// How many, where it must be certain that nothing is won back.
const FAR: u8 = 8;
/// Worth more than all pieces and pawns together.
const MATED: i32 = 1_000;

/// The balance of `side` in pawns once both sides have taken what is worth taking.
///
/// Captures, promotions and ways out of check are looked at for a few half-moves; who takes nothing
/// keeps what there is.
pub(crate) fn settled(position: &Chess, side: Color) -> i32 {
    let value = quiet(position, -MATED, MATED, HORIZON);
    if position.turn() == side {
        value
    } else {
        -value
    }
}

/// The most that the side to move can have after any move of its own, captures or none, and the
/// captures that follow: a fork that wins back what was lost is seen.
pub(super) fn after_any_move(position: &Chess) -> i32 {
    let mut best = -MATED;
    for mv in position.legal_moves() {
        let mut next = position.clone();
        next.play_unchecked(mv);
        best = best.max(-quiet(&next, -MATED, -best, FAR));
    }
    best
}

/// For the side to move, within `alpha` and `beta`.
fn quiet(position: &Chess, mut alpha: i32, beta: i32, horizon: u8) -> i32 {
    let checked = position.is_check();
    let mut best = if checked {
        -MATED
    } else {
        balance(position, position.turn())
    };
    if horizon == 0 {
        return balance(position, position.turn());
    }
    let mut moves = position.legal_moves();
    if moves.is_empty() {
        return if checked { -MATED } else { 0 };
    }
    if !checked {
        moves.retain(|mv| mv.is_capture() || mv.is_promotion());
    }
    // The most valuable victim first, by the least valuable attacker.
    moves.sort_by_key(|mv| {
        let taken = mv.capture().map_or(0, |role| role as i32);
        8 * -taken + mv.role() as i32
    });
    for mv in moves {
        if best >= beta {
            break;
        }
        alpha = alpha.max(best);
        let mut next = position.clone();
        next.play_unchecked(mv);
        best = best.max(-quiet(&next, -beta, -alpha, horizon - 1));
    }
    best
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::parse_fen;

    #[test]
    fn a_fork_wins_back_what_captures_do_not() {
        // The knight checks from f6 and takes on d7.
        let fork = parse_fen("6k1/3q4/8/3N4/8/8/8/6K1 w - - 0 1").expect("a position");
        assert_eq!(settled(&fork.position, Color::White), 3 - 9);
        assert_eq!(after_any_move(&fork.position), 3);
        // From here it attacks the queen alone, and she goes.
        let none = parse_fen("6k1/2q5/8/8/8/2N5/8/6K1 w - - 0 1").expect("a position");
        assert_eq!(after_any_move(&none.position), 3 - 9);
    }

    #[test]
    fn captures_are_followed_to_their_end() {
        for (fen, expected) in [
            // A guarded pawn is left alone, an unguarded one is taken.
            ("4k3/8/3p4/4p3/8/8/8/4R1K1 w - - 0 1", 5 - 2),
            ("4k3/8/8/4p3/8/8/8/4R1K1 w - - 0 1", 5),
            // Two attackers and one guard.
            ("4k3/8/3p4/4p3/8/8/4R3/4R1K1 w - - 0 1", 10 - 2),
            // A pawn may promote, and take something with it.
            ("3r3k/2P5/8/8/8/8/8/6K1 w - - 0 1", 9),
            // In check the piece that would take may not.
            ("4k3/8/8/8/7b/8/4r3/R3K3 w - - 0 1", 5 - 3),
        ] {
            let position = parse_fen(fen).expect("a position").position;
            assert_eq!(settled(&position, Color::White), expected, "{fen}");
            assert_eq!(settled(&position, Color::Black), -expected, "{fen}");
        }
    }
}
