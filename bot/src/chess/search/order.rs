//! The order in which moves are tried: the table's move, winning captures, killers, then history.

use shakmaty::{Chess, Color, Move, MoveList, Position, Square};

use super::{
    DEEPEST,
    exchange::{exchange, worth},
    table::code,
};

/// What earlier cut-offs say about quiet moves.
pub(super) struct Memory {
    killers: [[u16; 2]; DEEPEST + 1],
    history: [[[i32; 64]; 64]; 2],
}

impl Memory {
    pub fn new() -> Box<Self> {
        Box::new(Self {
            killers: [[0; 2]; DEEPEST + 1],
            history: [[[0; 64]; 64]; 2],
        })
    }

    /// Remembers a quiet move that refuted its position, and the quiet ones that did not.
    pub fn refuted(&mut self, turn: Color, mv: Move, tried: &[Move], ply: usize, depth: i32) {
        let killers = &mut self.killers[ply];
        if killers[0] != code(mv) {
            *killers = [code(mv), killers[0]];
        }
        let gain = (depth * depth).min(400);
        self.add(turn, mv, gain);
        for &other in tried {
            self.add(turn, other, -gain);
        }
    }

    fn add(&mut self, turn: Color, mv: Move, gain: i32) {
        let (from, to) = squares(mv);
        let value = &mut self.history[turn as usize][from][to];
        // Pulls towards ±8,000 the more slowly the nearer it is.
        *value += gain * 20 - *value * gain / 400;
    }

    /// Sorts `moves`, best first.
    pub fn sort(&self, position: &Chess, moves: &mut MoveList, first: u16, ply: usize) {
        let killers = self.killers[ply.min(DEEPEST)];
        let history = &self.history[position.turn() as usize];
        moves.sort_by_cached_key(|&mv| {
            let value = if code(mv) == first {
                1_000_000
            } else if mv.is_capture() || mv.is_promotion() {
                let balance = exchange(position, mv);
                let victim = mv.capture().map_or(0, worth);
                if balance >= 0 {
                    200_000 + victim * 8 + balance
                } else {
                    -200_000 + balance
                }
            } else if code(mv) == killers[0] {
                100_001
            } else if code(mv) == killers[1] {
                100_000
            } else {
                let (from, to) = squares(mv);
                history[from][to]
            };
            -value
        });
    }
}

fn squares(mv: Move) -> (usize, usize) {
    (
        usize::from(mv.from().unwrap_or(Square::A1)),
        usize::from(mv.to()),
    )
}
