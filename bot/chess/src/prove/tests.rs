//! The prover against a plain full-width search with no table and no ordering, and on positions
//! made to catch one rule each.

use shakmaty::{Chess, Move, Position, san::SanPlus};

use super::search::played;
use super::*;
use crate::{Branch, parse_fen, pieces::worth};

fn position(fen: &str) -> Chess {
    parse_fen(fen).expect("a position").position
}

fn plain_attack(position: &Chess, moves: u8) -> bool {
    moves > 0
        && position.legal_moves().iter().any(|mv| {
            let mut after = position.clone();
            after.play_unchecked(*mv);
            plain_defence(&after, moves - 1)
        })
}

fn plain_defence(position: &Chess, moves: u8) -> bool {
    let replies = position.legal_moves();
    if replies.is_empty() {
        return position.is_check();
    }
    moves > 0
        && replies.iter().all(|mv| {
            let mut after = position.clone();
            after.play_unchecked(*mv);
            plain_attack(&after, moves)
        })
}

pub(super) fn plain_keys(position: &Chess, moves: u8) -> Vec<Move> {
    let mut keys: Vec<Move> = position
        .legal_moves()
        .into_iter()
        .filter(|mv| {
            let mut after = position.clone();
            after.play_unchecked(*mv);
            plain_defence(&after, moves - 1)
        })
        .collect();
    keys.sort_by_key(|mv| order_of(*mv));
    keys
}

/// Every first move that one defence alone holds against.
fn plain_tries(position: &Chess, moves: u8) -> Vec<Try> {
    let mut tries = Vec::new();
    for mv in position.legal_moves() {
        let after = played(position, mv);
        // A move that should mate at once fails to whatever is played.
        if moves < 2 {
            continue;
        }
        let mut holding = after.legal_moves();
        holding.retain(|reply| !plain_attack(&played(&after, *reply), moves - 1));
        if let [refutation] = holding[..] {
            tries.push(Try { mv, refutation });
        }
    }
    tries.sort_by_key(|one| order_of(one.mv));
    tries
}

fn keys(fen: &str, moves: u8) -> Vec<String> {
    let position = position(fen);
    mate(&position, moves, &Budget::unlimited())
        .expect("no bound")
        .solution
        .keys
        .iter()
        .map(|key| SanPlus::from_move(position.clone(), key.mv).to_string())
        .collect()
}

/// Small positions of many kinds, and what a plain search says of them.
#[test]
fn agrees_with_a_plain_search() {
    for (fen, most) in [
        ("r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - -", 2),
        ("7k/8/5K2/8/8/8/8/6R1 w - -", 3),
        ("8/8/8/8/8/1k6/7r/1K6 b - -", 3),
        ("k7/8/1K6/8/8/8/8/2Q5 w - -", 3),
        ("8/P7/8/8/8/8/k1K5/8 w - -", 3),
        ("5k2/5P2/5K2/8/8/8/8/6B1 w - -", 3),
        ("8/5P1k/8/6K1/8/8/8/8 w - -", 3),
        ("4k2r/8/8/8/8/8/4PPPP/6RK b k -", 2),
        ("6rk/6pp/7N/8/8/1Q6/8/6K1 w - -", 2),
        ("8/8/8/1Pp5/k1K5/8/1B6/2R5 w - c6", 2),
        ("kbK5/pp6/1P6/8/8/8/8/R7 w - -", 2),
        ("8/8/8/8/1p6/1k6/1P6/1K1q4 w - -", 2),
    ] {
        let position = position(fen);
        for moves in 1..=most {
            let proof = mate(&position, moves, &Budget::unlimited()).expect("no bound");
            let shortest = (1..=moves).find(|n| plain_attack(&position, *n));
            assert_eq!(proof.shortest, shortest, "{fen} #{moves}");
            let mut found: Vec<Move> = proof.solution.keys.iter().map(|key| key.mv).collect();
            found.sort_by_key(|mv| order_of(*mv));
            assert_eq!(found, plain_keys(&position, moves), "{fen} #{moves}");
            assert!(proof.solution.complete);
            check_tree(&position, &proof.solution.keys, moves);
            assert_eq!(
                proof.solution.tries,
                plain_tries(&position, moves),
                "{fen} #{moves}"
            );
        }
    }
}

/// Every defence is in the tree, every continuation in it mates in time, and none is missing.
fn check_tree(position: &Chess, branches: &[Branch], moves: u8) {
    assert_eq!(branches.len(), plain_keys(position, moves).len());
    for branch in branches {
        let mut after = position.clone();
        after.play_unchecked(branch.mv);
        let replies = after.legal_moves();
        assert_eq!(branch.defences.len(), replies.len());
        let mut longest = u8::MAX;
        for defence in &branch.defences {
            assert!(replies.contains(&defence.mv));
            let mut next = after.clone();
            next.play_unchecked(defence.mv);
            let length = (1..).find(|n| plain_attack(&next, *n)).expect("a mate");
            assert!(length <= longest, "longest resistance first");
            longest = length;
            check_tree(&next, &defence.continuations, moves - 1);
        }
    }
}

#[test]
fn stalemate_is_a_defence_and_not_a_mate() {
    // A queen on c8 would stalemate; the rook does not, and mates next move.
    assert_eq!(keys("8/k1P5/2K5/8/8/8/8/8 w - -", 2), ["c8=R"]);
    let stalemated = position("7k/5Q2/6K1/8/8/8/8/8 b - -");
    assert_eq!(refutation(&stalemated, 3, &Budget::unlimited()), Ok(None));
}

#[test]
fn castling_counts_where_the_position_allows_it() {
    let fen = |rights| format!("5k2/8/8/8/8/4R3/6R1/4K2R w {rights} -");
    assert_eq!(keys(&fen("K"), 1), ["Rf1#", "O-O#"]);
    assert_eq!(keys(&fen("-"), 1), ["Rf1#"]);
}

#[test]
fn a_spent_budget_claims_nothing() {
    let start = Chess::default();
    let budget = Budget::unlimited().nodes(500);
    assert_eq!(shortest_mate(&start, 5, &budget), Err(Spent));
    let stop = || true;
    let budget = Budget::unlimited().until(&stop);
    assert!(mate(&start, 4, &budget).is_err());
}

/// The whole solution, trees and order included, is the same with one thread, two and three, and
/// with a table too small to be of use.
#[test]
fn threads_and_table_change_nothing() {
    for fen in [
        "1r2k1r1/pbppnp1p/1b3P2/8/Q7/B1PB1q2/P4PPP/3R2K1 w - -",
        "k7/8/2K5/8/8/8/8/1R6 w - -",
        "8/8/8/8/2p5/1k6/7r/1K6 b - -",
    ] {
        let position = position(fen);
        let one = mate(&position, 4, &Budget::unlimited()).expect("no bound");
        for (threads, bytes) in [(2, 16 << 20), (3, 1 << 20), (1, 0), (2, 0)] {
            let budget = Budget::unlimited().threads(threads).table_bytes(bytes);
            let other = mate(&position, 4, &budget).expect("no bound");
            assert_eq!(one.shortest, other.shortest, "{fen}");
            assert_eq!(one.solution, other.solution, "{fen}");
        }
    }
}

/// Adolf Anderssen - Jean Dufresne, Berlin, 1852; Thomas Taverner, Dubuque Chess Journal, 1889; Niels
/// Hoeg, 1905 (all from memory): defences stand by how long they resist, then a check, the dearer capture, a promotion, and any
/// piece's move before the king's.
#[test]
fn defences_stand_by_resistance_and_then_by_interest() {
    fn length(branch: &Branch) -> usize {
        let longest = branch.defences.first();
        1 + longest.map_or(0, |defence| length(&defence.continuations[0]))
    }
    fn look(position: &Chess, branches: &[Branch], compared: &mut usize) {
        for branch in branches {
            let after = played(position, branch.mv);
            let ranks: Vec<_> = branch
                .defences
                .iter()
                .map(|defence| {
                    let next = played(&after, defence.mv);
                    look(&next, &defence.continuations, compared);
                    (
                        length(&defence.continuations[0]),
                        next.is_check(),
                        defence.mv.capture().map_or(0, worth),
                        defence.mv.promotion().is_some(),
                        defence.mv.role() != Role::King,
                    )
                })
                .collect();
            assert!(ranks.is_sorted_by(|one, next| one >= next), "{ranks:?}");
            *compared += ranks.windows(2).filter(|pair| pair[0] != pair[1]).count();
        }
    }
    let mut compared = 0;
    for (fen, moves) in [
        ("1r2k1r1/pbppnp1p/1b3P2/8/Q7/B1PB1q2/P4PPP/3R2K1 w - -", 4),
        ("3brrb1/2N4B/8/2p4Q/2p2k2/5P2/4P1KR/2N2RB1 w - -", 2),
        ("8/R7/4kPP1/3ppp2/3B1P2/1K1P1P2/8/8 w - -", 3),
    ] {
        let position = position(fen);
        let proof = mate(&position, moves, &Budget::unlimited()).expect("no bound");
        assert!(
            proof.solution.complete && proof.shortest == Some(moves),
            "{fen}"
        );
        look(&position, &proof.solution.keys, &mut compared);
    }
    assert!(compared >= 10, "{compared}");
}

/// No line mates with a bare king, a lone minor piece or bishops of one colour of square; with a pawn
/// that may promote there is one.
#[test]
fn dead_positions_hold_no_mate() {
    for fen in [
        "7k/8/6K1/8/8/8/8/8 w - -",
        "7k/8/6K1/8/8/8/8/6N1 w - -",
        "7k/8/6K1/8/8/4B3/8/2B5 w - -",
    ] {
        assert_eq!(
            shortest_mate(&position(fen), 4, &Budget::unlimited()),
            Ok(None),
            "{fen}"
        );
    }
    let promotes = position("7k/1P6/6K1/8/8/8/8/8 w - -");
    assert_eq!(
        shortest_mate(&promotes, 4, &Budget::unlimited()),
        Ok(Some(1))
    );
}
