//! Charts in rows: a label above, a bar or an interval under it, the figures at the right.

use super::super::canvas::{Canvas, Hand, Paint};
use super::super::lettering::{self, Weight};
use super::super::text::{Text, Tongue, number};
use super::frame::{MARGIN, SIZE, Swatch, Theme, WIDTH, key, nothing, page, percent, whisker};
use super::{Mastery, SolveRate, wilson};

/// Height of one row.
const ROW: f32 = 68.0;

/// From one line of a label to the next.
const LINE: f32 = 29.0;

/// The most rows a chart shows; the alt text and the report have the rest.
const MOST: usize = 24;

const FOOT: f32 = 62.0;

/// Where the bars end.
const RIGHT: f32 = WIDTH - MARGIN;

/// What is written above a bar.
struct Label {
    lines: Vec<String>,
    figures: String,
}

impl Label {
    fn new(label: &str, figures: String) -> Self {
        let room = RIGHT - MARGIN - Hand::new(SIZE, "").width(&figures) - 18.0;
        Self {
            lines: lettering::wrapped(label, Weight::Regular, SIZE, room),
            figures,
        }
    }

    fn height(&self) -> f32 {
        ROW + (self.lines.len().saturating_sub(1)) as f32 * LINE
    }
}

struct Rows {
    canvas: Canvas,
    /// Middle of each row's bar.
    middles: Vec<f32>,
    /// Under the last row.
    bottom: f32,
}

impl Rows {
    /// A page with its rows' labels and figures; a long label takes more than one line.
    fn new(title: &str, labels: &[Label], theme: Theme, extra: f32) -> Self {
        let inks = theme.inks();
        let rows: f32 = labels.iter().map(Label::height).sum();
        let (mut canvas, mut y) = page(title, rows + extra + FOOT, &inks);
        let hand = Hand::new(SIZE, inks.ink);
        let mut middles = Vec::with_capacity(labels.len());
        for label in labels {
            for (n, line) in label.lines.iter().enumerate() {
                canvas.text(line, MARGIN, y + 25.0 + n as f32 * LINE, hand);
            }
            canvas.text(&label.figures, RIGHT, y + 25.0, hand.end());
            y += label.height();
            middles.push(y - ROW + 44.0);
        }
        Self {
            canvas,
            middles,
            bottom: y,
        }
    }

    fn bar(&mut self, middle: f32, from: f32, to: f32, ink: &str) {
        if to > from {
            self.canvas
                .rect(from, middle - 9.0, to - from, 18.0, Paint::fill(ink));
        }
    }
}

fn along(share: f64) -> f32 {
    MARGIN + (RIGHT - MARGIN) * share.clamp(0.0, 1.0) as f32
}

pub(super) fn solve_rates(
    title: &str,
    rows: &[SolveRate],
    theme: Theme,
    tongue: &Tongue,
) -> Canvas {
    let inks = theme.inks();
    if rows.is_empty() {
        return nothing(title, &inks, tongue);
    }
    let labels: Vec<Label> = rows
        .iter()
        .take(MOST)
        .map(|row| {
            let figures = tongue.say(&Text::ChartOf {
                part: number(row.solved),
                whole: number(row.tried),
            });
            Label::new(&row.label, figures)
        })
        .collect();
    let mut chart = Rows::new(title, &labels, theme, 34.0);
    let bottom = chart.bottom;
    for quarter in 0..=4u8 {
        let x = along(f64::from(quarter) / 4.0);
        // The scale is drawn beside the intervals only, not through the labels.
        let paint = Paint::stroke(inks.grid, 1.5);
        for y in chart.middles.clone() {
            chart.canvas.line((x, y - 11.0), (x, y + 11.0), paint);
        }
        let hand = Hand::new(20.0, inks.quiet);
        let hand = match quarter {
            0 => hand,
            4 => hand.end(),
            _ => hand.middle(),
        };
        let words = tongue.say(&Text::ChartPercent {
            percent: u32::from(quarter) * 25,
        });
        chart.canvas.text(&words, x, bottom + 24.0, hand);
    }
    for (row, middle) in rows.iter().zip(chart.middles.clone()) {
        if row.tried == 0 {
            continue;
        }
        let (low, high) = wilson(row.solved, row.tried);
        whisker(
            &mut chart.canvas,
            along(low),
            along(high),
            middle,
            inks.strong,
        );
        let at = along(row.solved as f64 / row.tried as f64);
        // Within the page even at 0 and 100 per cent.
        let at = at.clamp(MARGIN + 8.0, RIGHT - 8.0);
        chart
            .canvas
            .circle(at, middle, 10.5, Paint::fill(inks.page));
        chart
            .canvas
            .circle(at, middle, 8.5, Paint::fill(inks.strong));
    }
    key(
        &mut chart.canvas,
        bottom + 70.0,
        &[(Swatch::Whisker(inks.strong), Text::ChartKeyInterval)],
        &inks,
        tongue,
    );
    chart.canvas
}

pub(super) fn rate(row: &SolveRate) -> Text {
    let label = row.label.as_str().into();
    if row.tried == 0 {
        return Text::AltNobodyTried { label };
    }
    let (low, high) = wilson(row.solved, row.tried);
    Text::AltRate {
        label,
        solved: number(row.solved),
        tried: number(row.tried),
        percent: percent(row.solved, row.tried),
        low: (low * 100.0).round() as u32,
        high: (high * 100.0).round() as u32,
    }
}

pub(super) fn mastery(title: &str, topics: &[Mastery], theme: Theme, tongue: &Tongue) -> Canvas {
    let inks = theme.inks();
    if topics.is_empty() {
        return nothing(title, &inks, tongue);
    }
    let labels: Vec<Label> = topics
        .iter()
        .take(MOST)
        .map(|topic| {
            let figures = tongue.say(&Text::ChartShare {
                percent: percent(topic.solved, topic.tried),
                whole: number(topic.tried),
            });
            Label::new(&topic.topic, figures)
        })
        .collect();
    let mut chart = Rows::new(title, &labels, theme, 0.0);
    for (topic, middle) in topics.iter().zip(chart.middles.clone()) {
        let of = topic.tried.max(1) as f64;
        let first = along(topic.first_try.min(topic.solved) as f64 / of);
        let solved = along(topic.solved as f64 / of);
        chart.bar(middle, MARGIN, RIGHT, inks.track);
        chart.bar(middle, MARGIN, solved, inks.soft);
        chart.bar(middle, MARGIN, first, inks.strong);
        // A gap tells the two apart without their colours.
        if first > MARGIN && solved > first {
            chart.bar(middle, first - 1.5, first + 1.5, inks.page);
        }
    }
    let y = chart.bottom + 36.0;
    key(
        &mut chart.canvas,
        y,
        &[
            (Swatch::Bar(inks.strong), Text::ChartKeyFirst),
            (Swatch::Bar(inks.soft), Text::ChartKeyLater),
            (Swatch::Bar(inks.track), Text::ChartKeyUnsolved),
        ],
        &inks,
        tongue,
    );
    chart.canvas
}

pub(super) fn topic(row: &Mastery) -> Text {
    Text::AltMastery {
        topic: row.topic.as_str().into(),
        solved: number(row.solved),
        tried: number(row.tried),
        percent: percent(row.solved, row.tried),
        first: number(row.first_try),
    }
}
