//! The order in which moves are tried: the table's move, captures that lose nothing, killers, quiet
//! moves by what earlier cut-offs say of them, and captures that lose material last.

use shakmaty::{Chess, Color, Move, MoveList, Position, Role, Square};

use super::{
    DEEPEST,
    exchange::{gain, wins_at_least},
    table::code,
};

/// Bounds of a history value.
const FULL: i32 = 16_384;

/// What a move was, as later moves remember it: whose, which man, to where.
pub(super) type Trace = u16;

/// As [`Trace`], before the first move and after a pass.
pub(super) const NO_TRACE: Trace = 2 * MEN;
/// Men of one side times squares.
const MEN: u16 = 6 * 64;

/// The trace of `mv` by `turn`.
pub(super) fn trace(turn: Color, mv: Move) -> Trace {
    (turn as u16) * MEN + man(mv) as u16
}

fn man(mv: Move) -> usize {
    (mv.role() as usize - 1) * 64 + usize::from(mv.to())
}

/// The moves a position was reached by, the last one first: the opponent's, and our own before it.
pub(super) type Traces = [Trace; 2];

/// What earlier cut-offs say about moves.
pub(super) struct Memory {
    killers: [[u16; 2]; DEEPEST + 1],
    /// Quiet moves by from and to.
    history: [[[i16; 64]; 64]; 2],
    /// Quiet moves by the move one or two half-moves before.
    following: Vec<[i16; MEN as usize]>,
    /// Captures by man, square and victim.
    captures: [[[i16; 6]; MEN as usize]; 2],
}

impl Memory {
    pub fn new() -> Box<Self> {
        Box::new(Self {
            killers: [[0; 2]; DEEPEST + 1],
            history: [[[0; 64]; 64]; 2],
            following: vec![[0; MEN as usize]; usize::from(NO_TRACE) + 1],
            captures: [[[0; 6]; MEN as usize]; 2],
        })
    }

    /// Remembers the move that refuted its position, and those tried before it that did not.
    pub fn refuted(
        &mut self,
        turn: Color,
        mv: Move,
        tried: &[Move],
        traces: Traces,
        ply: usize,
        depth: i32,
    ) {
        let praise = (16 * depth * depth + 32 * depth).min(1_800);
        if is_quiet(mv) {
            let killers = &mut self.killers[ply];
            if killers[0] != code(mv) {
                *killers = [code(mv), killers[0]];
            }
            self.quiet(turn, mv, traces, praise);
        } else {
            self.capture(turn, mv, praise);
        }
        for &other in tried {
            if !is_quiet(other) {
                self.capture(turn, other, -praise);
            } else if is_quiet(mv) {
                self.quiet(turn, other, traces, -praise);
            }
        }
    }

    fn quiet(&mut self, turn: Color, mv: Move, traces: Traces, praise: i32) {
        let (from, to) = squares(mv);
        add(&mut self.history[turn as usize][from][to], praise);
        for trace in traces {
            if trace != NO_TRACE {
                add(&mut self.following[usize::from(trace)][man(mv)], praise);
            }
        }
    }

    fn capture(&mut self, turn: Color, mv: Move, praise: i32) {
        if let Some(victim) = mv.capture() {
            add(
                &mut self.captures[turn as usize][man(mv)][victim as usize - 1],
                praise,
            );
        }
    }

    /// What is remembered of a quiet move, about -48,000 to 48,000.
    pub fn of_quiet(&self, turn: Color, mv: Move, traces: Traces) -> i32 {
        let (from, to) = squares(mv);
        let following = |trace: Trace| i32::from(self.following[usize::from(trace)][man(mv)]);
        i32::from(self.history[turn as usize][from][to])
            + following(traces[0])
            + following(traces[1])
    }

    /// Whether `mv` refuted a sister position.
    pub fn is_killer(&self, mv: Move, ply: usize) -> bool {
        self.killers[ply.min(DEEPEST)].contains(&code(mv))
    }

    fn rank(&self, turn: Color, mv: Move, first: u16, traces: Traces, ply: usize) -> i32 {
        if code(mv) == first {
            return FIRST;
        }
        if mv.promotion().is_some_and(|role| role != Role::Queen) {
            return UNDERPROMOTION + gain(mv);
        }
        if !is_quiet(mv) {
            let known = mv.capture().map_or(0, |victim| {
                self.captures[turn as usize][man(mv)][victim as usize - 1]
            });
            return TAKES + gain(mv) * 32 - mv.role() as i32 * 64 + i32::from(known) / 4;
        }
        let killers = self.killers[ply.min(DEEPEST)];
        if code(mv) == killers[0] {
            KILLER + 1
        } else if code(mv) == killers[1] {
            KILLER
        } else {
            self.of_quiet(turn, mv, traces)
        }
    }
}

const FIRST: i32 = 10_000_000;
const TAKES: i32 = 1_000_000;
const KILLER: i32 = 100_000;
const UNDERPROMOTION: i32 = -500_000;
const LOSES: i32 = -2_000_000;

fn add(value: &mut i16, praise: i32) {
    let old = i32::from(*value);
    // Pulls towards the bounds the more slowly the nearer it is.
    *value = (old + praise - old * praise.abs() / FULL) as i16;
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
        memory: &Memory,
        position: &Chess,
        moves: MoveList,
        first: u16,
        traces: Traces,
        ply: usize,
    ) -> Self {
        let mut ranks = [0; 256];
        for (rank, &mv) in ranks.iter_mut().zip(&moves) {
            *rank = memory.rank(position.turn(), mv, first, traces, ply);
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
            if (TAKES / 2..FIRST).contains(&rank) && !wins_at_least(position, mv, 0) {
                self.ranks[best] = rank + LOSES;
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

    fn order(fen: &str, memory: &Memory, first: u16, traces: Traces) -> Vec<String> {
        let position = parse_fen(fen).expect("a position").position;
        let moves = position.legal_moves();
        let mut picker = Picker::new(memory, &position, moves, first, traces, 0);
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
        let memory = Memory::new();
        let order = order(FEN, &memory, 0, [NO_TRACE; 2]);
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
        let mut memory = Memory::new();
        let (good, bad) = (played("d1d2", FEN), played("e1e2", FEN));
        memory.refuted(Color::White, good, &[bad], [NO_TRACE; 2], 1, 6);
        let by_history = order(FEN, &memory, 0, [NO_TRACE; 2]);
        assert_eq!(by_history[1], "d1d2", "after the free knight");
        assert_eq!(by_history[by_history.len() - 2], "e1e2");
        memory.refuted(Color::White, bad, &[], [NO_TRACE; 2], 0, 1);
        assert_eq!(order(FEN, &memory, 0, [NO_TRACE; 2])[1], "e1e2", "a killer");
        assert_eq!(order(FEN, &memory, code(good), [NO_TRACE; 2])[0], "d1d2");
    }

    #[test]
    fn an_answer_is_remembered_by_what_it_answered() {
        let mut memory = Memory::new();
        let reply = played("d1d2", FEN);
        let last = trace(
            Color::Black,
            played("h5f4", "4k3/8/2p5/3p3n/8/8/8/3RK2R b K -"),
        );
        memory.refuted(Color::White, reply, &[], [last, NO_TRACE], 1, 1);
        let with = memory.of_quiet(Color::White, reply, [last, NO_TRACE]);
        let without = memory.of_quiet(Color::White, reply, [NO_TRACE; 2]);
        assert!(with > without && without > 0);
    }
}
