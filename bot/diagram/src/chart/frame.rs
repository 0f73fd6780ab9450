//! The layer all charts draw on: a page 720 units wide with a title, rows or columns, and a key.
//! Letters are large, for the picture is seen at half its size on a phone.

use super::super::canvas::{Canvas, Hand, Paint, Words};
use super::super::lettering;
use super::super::text::{Text, Tongue};

/// Light or dark.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Theme {
    #[default]
    Light,
    Dark,
}

/// Width of every chart.
pub(super) const WIDTH: f32 = 720.0;

/// Free space at the sides.
pub(super) const MARGIN: f32 = 28.0;

/// Size of ordinary words; half of it reaches the eye on a phone.
pub(super) const SIZE: f32 = 25.0;

/// Colours of a chart.
#[derive(Clone, Copy, Debug)]
pub(in super::super) struct Inks {
    pub page: &'static str,
    pub ink: &'static str,
    /// Quieter words; still readable.
    pub quiet: &'static str,
    /// Lines of the scale.
    pub grid: &'static str,
    /// The track behind a bar.
    pub track: &'static str,
    /// The figure that matters most.
    pub strong: &'static str,
    /// The figure beside it.
    pub soft: &'static str,
    /// What calls for attention.
    pub wax: &'static str,
}

impl Theme {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Light, Self::Dark];

    pub(in super::super) fn inks(self) -> Inks {
        match self {
            Self::Light => Inks {
                page: "#fcf9fc",
                ink: "#2a1c30",
                quiet: "#6a5a70",
                grid: "#ddd0de",
                track: "#ece2ed",
                strong: "#5a2d7a",
                soft: "#9a7ab2",
                wax: "#a8202c",
            },
            Self::Dark => Inks {
                page: "#1c1520",
                ink: "#f0e7f2",
                quiet: "#b7a5bd",
                grid: "#43364a",
                track: "#32283a",
                strong: "#d9b3ff",
                soft: "#8467a0",
                wax: "#ff9d8c",
            },
        }
    }
}

/// Height of the band of a title in one line.
const HEAD: f32 = 76.0;

/// A page with its title, and where its content begins; `content` is the height of that. A long title takes
/// more than one line.
pub(super) fn page(title: &str, content: f32, inks: &Inks) -> (Canvas, f32) {
    let hand = Hand::new(32.0, inks.ink).bold();
    let lines = lettering::wrapped(title, hand.weight, hand.size, WIDTH - 2.0 * MARGIN);
    let head = HEAD + lines.len().saturating_sub(1) as f32 * 38.0;
    let height = (head + content).round();
    let mut canvas = Canvas::new(WIDTH, height, Words::Outlined);
    canvas.rect(0.0, 0.0, WIDTH, height, Paint::fill(inks.page));
    for (n, line) in lines.iter().enumerate() {
        canvas.text(line, MARGIN, 50.0 + n as f32 * 38.0, hand);
    }
    (canvas, head)
}

/// What a sign in the key looks like.
#[derive(Clone, Copy)]
pub(super) enum Swatch {
    Bar(&'static str),
    Whisker(&'static str),
    Rule(&'static str),
}

/// Size of the words in a key; room of a sign with the space behind it; from one entry to the next.
const KEY: f32 = 22.0;
const SWATCH: f32 = 35.0;
const GAP: f32 = 26.0;

/// The key under a chart, from left to right, on one line.
pub(super) fn key(
    canvas: &mut Canvas,
    y: f32,
    entries: &[(Swatch, Text)],
    inks: &Inks,
    tongue: &Tongue,
) {
    let entries: Vec<(Swatch, String)> = entries
        .iter()
        .map(|(swatch, text)| (*swatch, tongue.say(text)))
        .collect();
    // What is too long for one line is set smaller.
    let long: f32 = entries
        .iter()
        .map(|(_, words)| Hand::new(KEY, "").width(words))
        .sum();
    let swatches = entries.len() as f32 * (SWATCH + GAP) - GAP;
    let room = WIDTH - 2.0 * MARGIN - swatches;
    let hand = Hand::new(KEY * (room / long).min(1.0), inks.quiet);
    let mut x = MARGIN;
    for (swatch, words) in &entries {
        let middle = y - 7.5;
        match *swatch {
            Swatch::Bar(ink) => {
                canvas.rect(x, y - 16.0, 26.0, 17.0, Paint::fill(ink));
            }
            Swatch::Whisker(ink) => {
                whisker(canvas, x, x + 26.0, middle, ink);
                canvas.circle(x + 13.0, middle, 5.5, Paint::fill(ink));
            }
            Swatch::Rule(ink) => {
                canvas.line(
                    (x, middle),
                    (x + 26.0, middle),
                    Paint::stroke(ink, 3.0).dashed(7.0, 5.0),
                );
            }
        }
        canvas.text(words, x + SWATCH, y, hand);
        x += SWATCH + hand.width(words) + GAP;
    }
}

/// A horizontal interval with ends.
pub(super) fn whisker(canvas: &mut Canvas, from: f32, to: f32, y: f32, ink: &str) {
    let paint = Paint::stroke(ink, 3.0);
    canvas.line((from, y), (to, y), paint);
    for x in [from, to] {
        canvas.line((x, y - 6.5), (x, y + 6.5), paint);
    }
}

/// Said instead of a chart when there are no figures.
pub(super) fn nothing(title: &str, inks: &Inks, tongue: &Tongue) -> Canvas {
    let (mut canvas, head) = page(title, 60.0, inks);
    canvas.text(
        &tongue.say(&Text::ChartNothing),
        MARGIN,
        head + 24.0,
        Hand::new(SIZE, inks.quiet),
    );
    canvas
}

/// Whole per cents.
pub(super) fn percent(part: usize, of: usize) -> u32 {
    (100.0 * part.min(of) as f64 / of.max(1) as f64).round() as u32
}
