//! Where things lie on the board's picture. All lengths are whole pixels, so that squares have
//! sharp edges and the hatching repeats exactly.

use shakmaty::{Color, File, Rank, Square};

/// Smaller pictures carry no coordinates: nobody could read them.
const COORDINATES_FROM: u32 = 200;

/// The measures of one board.
#[derive(Clone, Copy, Debug)]
pub(in super::super) struct Layout {
    /// Left edge of the squares.
    pub left: f32,
    /// Top edge of the squares.
    pub top: f32,
    /// Side of a square.
    pub square: f32,
    /// Width of the whole.
    pub width: f32,
    /// Height of the whole, without a legend.
    pub height: f32,
    /// Size of the coordinates' letters, where there is room for them.
    pub letters: Option<f32>,
    bottom: Color,
}

impl Layout {
    /// A board `size` pixels wide.
    pub(in super::super) fn new(size: u32, bottom: Color) -> Self {
        let coordinates = size >= COORDINATES_FROM;
        let share = if coordinates { 0.936 } else { 0.9 };
        let square = (size as f32 * share / 8.0).floor();
        let rest = size as f32 - 8.0 * square;
        let left = if coordinates {
            (rest * 0.55).round()
        } else {
            (rest * 0.3).round()
        };
        let top = (size as f32 * 0.012).ceil();
        let below = if coordinates { left } else { top };
        Self {
            left,
            top,
            square,
            width: size as f32,
            height: top + 8.0 * square + below,
            letters: coordinates.then_some((left * 0.82).min(square * 0.3)),
            bottom,
        }
    }

    /// Upper left corner of a square.
    pub(in super::super) fn corner(&self, square: Square) -> (f32, f32) {
        let (file, rank) = (u32::from(square.file()), u32::from(square.rank()));
        let (column, row) = match self.bottom {
            Color::White => (file, 7 - rank),
            Color::Black => (7 - file, rank),
        };
        (
            self.left + column as f32 * self.square,
            self.top + row as f32 * self.square,
        )
    }

    /// Middle of a square.
    pub(in super::super) fn centre(&self, square: Square) -> (f32, f32) {
        let (x, y) = self.corner(square);
        (x + self.square / 2.0, y + self.square / 2.0)
    }

    /// Side of the whole board.
    pub(in super::super) fn side(&self) -> f32 {
        8.0 * self.square
    }

    /// The file shown in each column, left to right.
    pub(super) fn files(&self) -> Vec<File> {
        match self.bottom {
            Color::White => File::ALL.to_vec(),
            Color::Black => File::ALL.into_iter().rev().collect(),
        }
    }

    /// The rank shown in each row, top to bottom.
    pub(super) fn ranks(&self) -> Vec<Rank> {
        match self.bottom {
            Color::White => Rank::ALL.into_iter().rev().collect(),
            Color::Black => Rank::ALL.to_vec(),
        }
    }

    /// Whether the player of `color` sits at the bottom.
    pub(super) fn at_bottom(&self, color: Color) -> bool {
        self.bottom == color
    }
}
