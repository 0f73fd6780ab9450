//! The legend under a board with marks: each sign used, drawn as on the board, with its meaning.

use super::super::canvas::{Canvas, Hand};
use super::super::palette::Palette;
use super::super::text::{Text, Tongue};
use super::{Diagram, marks};
use sealed_move_chess::scene::SceneMark;

/// A sign that a legend can explain.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in super::super) enum Sign {
    LastMove,
    Refutation,
    Step,
    Open,
    Guarded,
    Blocked,
    Guard,
    Square,
}

impl Sign {
    pub(in super::super) const ALL: [Self; 8] = [
        Self::LastMove,
        Self::Refutation,
        Self::Step,
        Self::Open,
        Self::Guarded,
        Self::Guard,
        Self::Blocked,
        Self::Square,
    ];

    pub(in super::super) fn words(self, tongue: &Tongue) -> String {
        tongue.say(&match self {
            Self::LastMove => Text::LegendLastMove,
            Self::Refutation => Text::LegendRefutation,
            Self::Step => Text::LegendSteps,
            Self::Open => Text::LegendOpen,
            Self::Guarded => Text::LegendGuarded,
            Self::Blocked => Text::LegendBlocked,
            Self::Guard => Text::LegendGuard,
            Self::Square => Text::LegendSquare,
        })
    }

    fn shown_by(self, mark: &SceneMark) -> bool {
        match mark {
            SceneMark::Refutation(..) => self == Self::Refutation,
            SceneMark::Step(..) => self == Self::Step,
            SceneMark::OpenFlight(_) => self == Self::Open,
            SceneMark::GuardedFlight(_) => self == Self::Guarded,
            SceneMark::BlockedFlight(_) => self == Self::Blocked,
            SceneMark::Guard(..) => self == Self::Guard,
            SceneMark::Square(_) => self == Self::Square,
        }
    }

    /// Draws the sign into a box of side `s`.
    pub(in super::super) fn draw(
        self,
        canvas: &mut Canvas,
        (x, y): (f32, f32),
        s: f32,
        palette: &Palette,
    ) {
        let middle = (x + s / 2.0, y + s / 2.0);
        let (left, right) = ((x + s * 0.04, middle.1), (x + s * 0.96, middle.1));
        match self {
            Self::LastMove => marks::frame(canvas, (x, y), s, palette),
            Self::Refutation => marks::arrow(
                canvas,
                left,
                right,
                s * 0.24,
                palette.refutation,
                palette.casing,
            ),
            Self::Step => {
                marks::arrow(canvas, left, right, s * 0.16, palette.step, palette.casing);
            }
            Self::Open => marks::open(canvas, middle, s * 1.8, palette),
            Self::Guarded => marks::guarded(canvas, middle, s * 1.8, palette),
            Self::Blocked => marks::blocked(canvas, middle, s, palette),
            Self::Guard => marks::dashes(canvas, left, right, s * 1.6, palette),
            Self::Square => marks::lozenge(canvas, middle, s, palette),
        }
    }
}

/// The signs of one diagram, laid out in rows.
pub(in super::super) struct Legend {
    rows: Vec<Vec<(Sign, String, f32)>>,
    size: f32,
    margin: f32,
}

impl Legend {
    /// The legend for what `diagram` shows; empty when it has no marks.
    pub(in super::super) fn of(diagram: &Diagram, width: f32, tongue: &Tongue) -> Self {
        let signs = Sign::ALL
            .into_iter()
            .filter(|sign| match sign {
                Sign::LastMove => diagram.last_move.is_some() && !diagram.marks.is_empty(),
                sign => diagram.marks.iter().any(|mark| sign.shown_by(mark)),
            })
            .map(|sign| (sign, sign.words(tongue)));
        Self::rows(signs.collect(), width)
    }

    /// No legend at all.
    pub(in super::super) fn none() -> Self {
        Self::rows(Vec::new(), 0.0)
    }

    fn rows(signs: Vec<(Sign, String)>, width: f32) -> Self {
        let size = (width * 0.033).clamp(9.0, 30.0);
        let margin = (width * 0.038).round();
        let hand = Hand::new(size, "");
        let mut rows: Vec<Vec<(Sign, String, f32)>> = Vec::new();
        let mut x = f32::MAX;
        for (sign, words) in signs {
            let wide = size * 1.45 + hand.width(&words) + size * 1.1;
            if x + wide > width {
                rows.push(Vec::new());
                x = margin;
            }
            if let Some(row) = rows.last_mut() {
                row.push((sign, words, x));
            }
            x += wide;
        }
        Self { rows, size, margin }
    }

    pub(in super::super) fn height(&self) -> f32 {
        if self.rows.is_empty() {
            0.0
        } else {
            (self.rows.len() as f32 * self.size * 1.65 + self.margin * 0.6).round()
        }
    }

    pub(in super::super) fn draw(&self, canvas: &mut Canvas, top: f32, palette: &Palette) {
        for (i, row) in self.rows.iter().enumerate() {
            let y = top + self.size * (1.65 * i as f32 + 0.3);
            for (sign, words, x) in row {
                sign.draw(canvas, (*x, y), self.size * 1.15, palette);
                canvas.text(
                    words,
                    x + self.size * 1.5,
                    y + self.size * 0.88,
                    Hand::new(self.size, palette.ink),
                );
            }
        }
    }
}
