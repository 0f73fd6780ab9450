//! The value of a quiet position, in hundredths of a pawn.
//!
//! Each term has a file: piece-square tables ([`squares`]), pawns ([`pawns`]), what pieces see and
//! threaten ([`pieces`]), the kings' safety ([`king`]), and what decides or draws endings
//! ([`endings`]). A term is worth one thing with all pieces on the board and another with none, and is
//! blended between. Values are our own unless a file names a source.

mod endings;
mod king;
mod pawns;
mod pieces;
mod squares;
mod view;

use std::ops::{Add, AddAssign, Mul, Neg, Sub};

use shakmaty::{Chess, Color, Position, Role};

pub(super) use pawns::PawnTable;
use view::View;

/// A value in the middlegame and in the endgame.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Value {
    mg: i32,
    eg: i32,
}

const fn value(mg: i32, eg: i32) -> Value {
    Value { mg, eg }
}

impl Add for Value {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        value(self.mg + other.mg, self.eg + other.eg)
    }
}

impl AddAssign for Value {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl Neg for Value {
    type Output = Self;
    fn neg(self) -> Self {
        value(-self.mg, -self.eg)
    }
}

impl Sub for Value {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self + -other
    }
}

impl Mul<i32> for Value {
    type Output = Self;
    fn mul(self, times: i32) -> Self {
        value(self.mg * times, self.eg * times)
    }
}

/// What it is worth to be on move.
const TEMPO: i32 = 12;

/// Value for the side to move.
pub(super) fn evaluate(position: &Chess, pawn_table: &mut PawnTable) -> i32 {
    let board = position.board();
    let view = View::of(board);
    let (structure, passed) = pawn_table.structure(board);
    let mut sum = structure;
    for color in Color::ALL {
        let mut own = material(board, color);
        own += pawns::passed(&view, color, passed);
        own += pieces::pieces(&view, color);
        own += king::safety(&view, color);
        sum += if color == Color::White { own } else { -own };
    }
    let weight: i32 = Role::ALL
        .into_iter()
        .map(|role| squares::phase(role) * board.by_role(role).count() as i32)
        .sum();
    let weight = weight.min(24);
    let mut white = (sum.mg * weight + sum.eg * (24 - weight)) / 24;
    white += endings::drive(board);
    white = endings::scale(board, white);
    TEMPO
        + if position.turn() == Color::White {
            white
        } else {
            -white
        }
}

/// Material and squares.
fn material(board: &shakmaty::Board, color: Color) -> Value {
    let mut sum = Value::default();
    for role in Role::ALL {
        let (on_mg, on_eg) = squares::tables(role);
        let (mg, eg) = squares::material(role);
        for square in board.by_color(color) & board.by_role(role) {
            // The tables begin with the eighth rank as White sees it.
            let index = usize::from(if color == Color::White {
                square.flip_vertical()
            } else {
                square
            });
            sum += value(mg + on_mg[index], eg + on_eg[index]);
        }
    }
    sum
}

#[cfg(test)]
mod tests;
