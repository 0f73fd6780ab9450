//! What must hold of any position: turned boards give turned solutions, limits and threads change
//! no word of an answer, and the plain search agrees.

use std::sync::atomic::{AtomicU64, Ordering};

use proptest::prelude::*;
use shakmaty::{
    Bitboard, Board, CastlingMode, Chess, Color, EnPassantMode, FromSetup, Move, Piece, Position,
    Role, Setup, Square,
};

use super::tests::plain_keys;
use super::*;
use crate::Branch;

/// The board seen in a mirror from left to right, or with the colours exchanged.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Turned {
    Mirrored,
    Swapped,
}

pub(crate) fn turned(position: &Chess, how: Turned) -> Chess {
    let mut setup = position.to_setup(EnPassantMode::Legal);
    match how {
        Turned::Mirrored => {
            setup.board.flip_horizontal();
            setup.ep_square = setup.ep_square.map(Square::flip_horizontal);
            setup.castling_rights = Bitboard::EMPTY;
        }
        Turned::Swapped => {
            setup.board.mirror();
            setup.ep_square = setup.ep_square.map(Square::flip_vertical);
            setup.castling_rights = setup.castling_rights.flip_vertical();
            setup.turn = !setup.turn;
        }
    }
    Chess::from_setup(setup, CastlingMode::Standard).expect("as legal as before")
}

fn turned_move(mv: Move, how: Turned) -> (Square, Square, Option<Role>) {
    let square = |square: Square| match how {
        Turned::Mirrored => square.flip_horizontal(),
        Turned::Swapped => square.flip_vertical(),
    };
    (
        square(mv.from().expect("no drops")),
        square(mv.to()),
        mv.promotion(),
    )
}

/// A position of a few pieces.
pub(crate) fn small_position() -> impl Strategy<Value = Chess> {
    let piece = prop::sample::select(vec![
        'Q', 'R', 'R', 'B', 'N', 'P', 'P', 'p', 'p', 'n', 'b', 'r', 'q',
    ]);
    (
        prop::collection::vec((piece, 0..64_u32), 1..6),
        0..64_u32,
        0..64_u32,
        any::<bool>(),
    )
        .prop_filter_map("no position", |(pieces, white, black, white_moves)| {
            let mut board = Board::empty();
            let all = pieces
                .into_iter()
                .chain([('K', white), ('k', black)])
                .map(|(piece, square)| (Piece::from_char(piece), Square::new(square)));
            for (piece, square) in all {
                board.set_piece_at(square, piece?);
            }
            let setup = Setup {
                board,
                turn: Color::from_white(white_moves),
                ..Setup::empty()
            };
            Chess::from_setup(setup, CastlingMode::Standard).ok()
        })
}

/// A solution that knows nothing of the order in which it was written down.
#[derive(Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Bare((Square, Square, Option<Role>), Vec<Bare>);

fn bare(branches: &[Branch], turn: &impl Fn(Move) -> (Square, Square, Option<Role>)) -> Vec<Bare> {
    let mut out: Vec<Bare> = branches
        .iter()
        .map(|branch| {
            let mut defences: Vec<Bare> = branch
                .defences
                .iter()
                .map(|defence| Bare(turn(defence.mv), bare(&defence.continuations, turn)))
                .collect();
            defences.sort();
            Bare(turn(branch.mv), defences)
        })
        .collect();
    out.sort();
    out
}

fn bare_tries(
    tries: &[Try],
    turn: &impl Fn(Move) -> (Square, Square, Option<Role>),
) -> Vec<[(Square, Square, Option<Role>); 2]> {
    let mut out: Vec<_> = tries
        .iter()
        .map(|one| [turn(one.mv), turn(one.refutation)])
        .collect();
    out.sort();
    out
}

proptest! {
    #![proptest_config(crate::cases::cases(120))]

    /// Length, keys, tries and, where it is complete, the whole tree.
    #[test]
    fn turned_boards_give_turned_solutions(position in small_position(), moves in 2..=3_u8) {
        let proof = mate(&position, moves, &Budget::unlimited()).expect("no bound");
        for how in [Turned::Mirrored, Turned::Swapped] {
            let other = mate(&turned(&position, how), moves, &Budget::unlimited()).expect("no bound");
            let ours = |mv| turned_move(mv, how);
            let theirs = |mv: Move| (mv.from().expect("no drops"), mv.to(), mv.promotion());
            prop_assert_eq!(proof.shortest, other.shortest);
            let (one, two) = (&proof.solution, &other.solution);
            prop_assert_eq!(bare_tries(&one.tries, &ours), bare_tries(&two.tries, &theirs));
            prop_assert_eq!(one.complete, two.complete);
            if one.complete {
                prop_assert_eq!(bare(&one.keys, &ours), bare(&two.keys, &theirs));
            } else {
                prop_assert_eq!(one.keys.len(), two.keys.len());
            }
        }
    }

    /// With too few nodes, too small a table, or a call to stop on the way, there is either no
    /// answer or the same one; only the tree may be less than whole, and then says so.
    #[test]
    fn limits_never_give_a_wrong_word(
        position in small_position(),
        nodes in 0_u64..40_000,
        table in 0_usize..100_000,
        looks in 0_u64..40,
        threads in 1..=2_usize,
    ) {
        let truth = mate(&position, 3, &Budget::unlimited()).expect("no bound");
        let asked = AtomicU64::new(0);
        let stop = || asked.fetch_add(1, Ordering::Relaxed) >= looks;
        let by_nodes = Budget::unlimited().nodes(nodes).table_bytes(table).threads(threads);
        let by_call = Budget::unlimited().until(&stop).table_bytes(table).threads(threads);
        for budget in [by_nodes, by_call] {
            let mut prover = Prover::new(&position, &budget);
            if let Ok(found) = prover.shortest(3) {
                prop_assert_eq!(found, truth.shortest);
            } else {
                prop_assert!(truth.shortest.is_none_or(|moves| prover.none_within() < moves));
            }
            let standing = prover.standing(3);
            let is_key = |mv: &Move| truth.solution.keys.iter().any(|key| key.mv == *mv);
            prop_assert!(standing.keys.iter().all(is_key));
            prop_assert!(!standing.failed.iter().any(is_key));
            if let Ok(solution) = prover.solution(3) {
                if prover.are_tries_settled(3) {
                    prop_assert_eq!(&solution.tries, &truth.solution.tries);
                } else {
                    let known = |one: &Try| truth.solution.tries.contains(one);
                    prop_assert!(solution.tries.iter().all(known));
                }
                prop_assert_eq!(solution.main_line(), truth.solution.main_line());
                let keys = |keys: &[Branch]| keys.iter().map(|key| key.mv).collect::<Vec<_>>();
                prop_assert_eq!(keys(&solution.keys), keys(&truth.solution.keys));
                if solution.complete {
                    prop_assert_eq!(&solution.keys, &truth.solution.keys);
                }
            }
        }
    }

    /// The whole solution, order and cut included. Threads are used from four moves on.
    #[test]
    fn one_thread_and_two_agree(position in small_position()) {
        let enough = 3_000_000;
        let budget = Budget::unlimited().nodes(enough);
        let one = mate(&position, 4, &budget);
        prop_assume!(one.is_ok());
        let two = mate(&position, 4, &Budget::unlimited().threads(2)).expect("no bound");
        let one = one.expect("assumed");
        prop_assert_eq!(one.shortest, two.shortest);
        // A budget that ended while the tree grew cut it elsewhere than its size does.
        if budget.used() < enough {
            prop_assert_eq!(one.solution, two.solution);
        }
    }

    #[test]
    fn small_positions_agree_with_a_plain_search(position in small_position()) {
        let proof = mate(&position, 2, &Budget::unlimited()).expect("no bound");
        let mut found: Vec<Move> = proof.solution.keys.iter().map(|key| key.mv).collect();
        found.sort_by_key(|mv| order_of(*mv));
        prop_assert_eq!(found, plain_keys(&position, 2));
    }
}
