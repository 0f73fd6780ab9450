//! The order in which moves are tried: the table's move, captures that lose nothing, killers, quiet
//! moves by their history, and captures that lose material last.

use shakmaty::{Chess, Color, Move, MoveList, Position, Role, Square};

use super::{
    DEEPEST,
    exchange::{gain, static_exchange_at_least},
    table::code,
};

/// Bounds of a history value.
const HISTORY_LIMIT: i32 = 16_384;

/// What continuation history keeps of an earlier move: whose it was, by which piece, to where.
pub(super) type PieceTo = u16;

/// As [`PieceTo`], before the first move and after a null move.
pub(super) const NO_MOVE: PieceTo = 2 * PIECE_SQUARES;
/// Kinds of pieces and pawns of one side, times squares.
const PIECE_SQUARES: u16 = 6 * 64;

/// What is kept of `mv` by `turn`.
pub(super) fn piece_to(turn: Color, mv: Move) -> PieceTo {
    (turn as u16) * PIECE_SQUARES + piece_square(mv) as u16
}

fn piece_square(mv: Move) -> usize {
    (mv.role() as usize - 1) * 64 + usize::from(mv.to())
}

/// The moves a position was reached by, the last one first: the opponent's, and our own before it.
pub(super) type PreviousMoves = [PieceTo; 2];

/// What earlier cutoffs say about moves.
pub(super) struct Histories {
    /// Quiet moves that caused a cutoff at the same ply.
    killers: [[u16; 2]; DEEPEST + 1],
    /// Quiet moves by from and to.
    history: [[[i16; 64]; 64]; 2],
    /// Quiet moves by the move one or two half-moves before.
    continuation: Vec<[i16; PIECE_SQUARES as usize]>,
    /// Captures by capturing piece, square and victim.
    capture_history: [[[i16; 6]; PIECE_SQUARES as usize]; 2],
}

impl Histories {
    pub fn new() -> Box<Self> {
        Box::new(Self {
            killers: [[0; 2]; DEEPEST + 1],
            history: [[[0; 64]; 64]; 2],
            continuation: vec![[0; PIECE_SQUARES as usize]; usize::from(NO_MOVE) + 1],
            capture_history: [[[0; 6]; PIECE_SQUARES as usize]; 2],
        })
    }

    /// Remembers the move that caused a beta cutoff, and those searched before it that did not.
    pub fn record_cutoff(
        &mut self,
        turn: Color,
        mv: Move,
        searched: &[Move],
        previous: PreviousMoves,
        ply: usize,
        depth: i32,
    ) {
        let bonus = (16 * depth * depth + 32 * depth).min(1_800);
        if is_quiet(mv) {
            let killers = &mut self.killers[ply];
            if killers[0] != code(mv) {
                *killers = [code(mv), killers[0]];
            }
            self.update_quiet(turn, mv, previous, bonus);
        } else {
            self.update_capture(turn, mv, bonus);
        }
        for &other in searched {
            if !is_quiet(other) {
                self.update_capture(turn, other, -bonus);
            } else if is_quiet(mv) {
                self.update_quiet(turn, other, previous, -bonus);
            }
        }
    }

    fn update_quiet(&mut self, turn: Color, mv: Move, previous: PreviousMoves, bonus: i32) {
        let (from, to) = squares(mv);
        add(&mut self.history[turn as usize][from][to], bonus);
        for earlier in previous {
            if earlier != NO_MOVE {
                add(
                    &mut self.continuation[usize::from(earlier)][piece_square(mv)],
                    bonus,
                );
            }
        }
    }

    fn update_capture(&mut self, turn: Color, mv: Move, bonus: i32) {
        if let Some(victim) = mv.capture() {
            add(
                &mut self.capture_history[turn as usize][piece_square(mv)][victim as usize - 1],
                bonus,
            );
        }
    }

    /// What is remembered of a quiet move, about -48,000 to 48,000.
    pub fn quiet_history(&self, turn: Color, mv: Move, previous: PreviousMoves) -> i32 {
        let (from, to) = squares(mv);
        let continuation =
            |earlier: PieceTo| i32::from(self.continuation[usize::from(earlier)][piece_square(mv)]);
        i32::from(self.history[turn as usize][from][to])
            + continuation(previous[0])
            + continuation(previous[1])
    }

    /// Whether `mv` refuted a sister position.
    pub fn is_killer(&self, mv: Move, ply: usize) -> bool {
        self.killers[ply.min(DEEPEST)].contains(&code(mv))
    }

    fn rank(&self, turn: Color, mv: Move, first: u16, previous: PreviousMoves, ply: usize) -> i32 {
        if code(mv) == first {
            return TABLE_MOVE;
        }
        if mv.promotion().is_some_and(|role| role != Role::Queen) {
            return UNDERPROMOTION + gain(mv);
        }
        if !is_quiet(mv) {
            let known = mv.capture().map_or(0, |victim| {
                self.capture_history[turn as usize][piece_square(mv)][victim as usize - 1]
            });
            return CAPTURE + gain(mv) * 32 - mv.role() as i32 * 64 + i32::from(known) / 4;
        }
        let killers = self.killers[ply.min(DEEPEST)];
        if code(mv) == killers[0] {
            KILLER + 1
        } else if code(mv) == killers[1] {
            KILLER
        } else {
            self.quiet_history(turn, mv, previous)
        }
    }
}

const TABLE_MOVE: i32 = 10_000_000;
const CAPTURE: i32 = 1_000_000;
const KILLER: i32 = 100_000;
const UNDERPROMOTION: i32 = -500_000;
const LOSING: i32 = -2_000_000;

fn add(value: &mut i16, bonus: i32) {
    let old = i32::from(*value);
    // Pulls towards the bounds the more slowly the nearer it is.
    *value = (old + bonus - old * bonus.abs() / HISTORY_LIMIT) as i16;
}

/// Neither takes nor promotes.
pub(super) fn is_quiet(mv: Move) -> bool {
    !mv.is_capture() && !mv.is_promotion()
}

fn squares(mv: Move) -> (usize, usize) {
    (
        usize::from(mv.from().unwrap_or(Square::A1)),
        usize::from(mv.to()),
    )
}

/// Hands out moves best first. Captures are looked at closer only when their turn comes.
pub(super) struct Picker {
    moves: MoveList,
    ranks: [i32; 256],
    at: usize,
}

impl Picker {
    pub fn new(
        histories: &Histories,
        position: &Chess,
        moves: MoveList,
        first: u16,
        previous: PreviousMoves,
        ply: usize,
    ) -> Self {
        let mut ranks = [0; 256];
        for (rank, &mv) in ranks.iter_mut().zip(&moves) {
            *rank = histories.rank(position.turn(), mv, first, previous, ply);
        }
        Self {
            moves,
            ranks,
            at: 0,
        }
    }

    /// The next move, and whether it is a capture that loses material.
    pub fn next(&mut self, position: &Chess) -> Option<(Move, bool)> {
        loop {
            let len = self.moves.len();
            let best = (self.at..len).max_by_key(|&i| (self.ranks[i], len - i))?;
            let (mv, rank) = (self.moves[best], self.ranks[best]);
            if (CAPTURE / 2..TABLE_MOVE).contains(&rank)
                && !static_exchange_at_least(position, mv, 0)
            {
                self.ranks[best] = rank + LOSING;
                continue;
            }
            self.moves.swap(self.at, best);
            self.ranks.swap(self.at, best);
            self.at += 1;
            return Some((mv, rank < UNDERPROMOTION));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::parse_fen;

    fn order(fen: &str, histories: &Histories, first: u16, previous: PreviousMoves) -> Vec<String> {
        let position = parse_fen(fen).expect("a position").position;
        let moves = position.legal_moves();
        let mut picker = Picker::new(histories, &position, moves, first, previous, 0);
        std::iter::from_fn(|| picker.next(&position))
            .map(|(mv, _)| mv.to_uci(shakmaty::CastlingMode::Standard).to_string())
            .collect()
    }

    fn played(uci: &str, fen: &str) -> Move {
        let position = parse_fen(fen).expect("a position").position;
        let uci: shakmaty::uci::UciMove = uci.parse().expect("uci");
        uci.to_move(&position).expect("legal")
    }

    // Composed for this test: a rook can take a free knight or a guarded pawn.
    const FEN: &str = "4k3/8/2p5/3p3n/8/8/8/3RK2R w K -";

    #[test]
    fn captures_that_lose_come_last() {
        let histories = Histories::new();
        let order = order(FEN, &histories, 0, [NO_MOVE; 2]);
        assert_eq!(order[0], "h1h5");
        assert_eq!(order.last().map(String::as_str), Some("d1d5"));
        assert_eq!(
            order.len(),
            parse_fen(FEN)
                .expect("a position")
                .position
                .legal_moves()
                .len()
        );
    }

    #[test]
    fn what_refuted_before_comes_sooner_and_what_failed_later() {
        let mut histories = Histories::new();
        let (good, bad) = (played("d1d2", FEN), played("e1e2", FEN));
        histories.record_cutoff(Color::White, good, &[bad], [NO_MOVE; 2], 1, 6);
        let by_history = order(FEN, &histories, 0, [NO_MOVE; 2]);
        assert_eq!(by_history[1], "d1d2", "after the free knight");
        assert_eq!(by_history[by_history.len() - 2], "e1e2");
        histories.record_cutoff(Color::White, bad, &[], [NO_MOVE; 2], 0, 1);
        assert_eq!(
            order(FEN, &histories, 0, [NO_MOVE; 2])[1],
            "e1e2",
            "a killer"
        );
        assert_eq!(order(FEN, &histories, code(good), [NO_MOVE; 2])[0], "d1d2");
    }

    #[test]
    fn an_answer_is_remembered_by_what_it_answered() {
        let mut histories = Histories::new();
        let reply = played("d1d2", FEN);
        let last = piece_to(
            Color::Black,
            played("h5f4", "4k3/8/2p5/3p3n/8/8/8/3RK2R b K -"),
        );
        histories.record_cutoff(Color::White, reply, &[], [last, NO_MOVE], 1, 1);
        let with = histories.quiet_history(Color::White, reply, [last, NO_MOVE]);
        let without = histories.quiet_history(Color::White, reply, [NO_MOVE; 2]);
        assert!(with > without && without > 0);
    }
}
