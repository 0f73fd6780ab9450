//! Participation: a column a post, in two parts, named by its day and gathered in weeks, each with its mean.

use super::super::canvas::{Canvas, Hand, Paint};
use super::super::text::{Decimal, Text, Tongue, number};
use super::Day;
use super::frame::{MARGIN, Swatch, Theme, WIDTH, key, nothing, page};

/// Height of the columns' field.
const FIELD: f32 = 260.0;

/// How much lower every other week is named.
const LOWER: f32 = 26.0;

/// The most days a chart shows: six weeks; of more, the last.
const MOST: usize = 42;

pub(super) fn participation(title: &str, days: &[Day], theme: Theme, tongue: &Tongue) -> Canvas {
    let inks = theme.inks();
    let days = &days[days.len().saturating_sub(MOST)..];
    if days.is_empty() {
        return nothing(title, &inks, tongue);
    }
    let (mut canvas, head) = page(title, FIELD + 138.0 + LOWER, &inks);
    let (top, bottom) = (head + 8.0, head + FIELD);
    let most = days.iter().map(|d| d.tried).max().unwrap_or(0).max(1);
    let step = step(most);
    let ceiling = most.div_ceil(step) * step;
    let height = |count: f64| (bottom - top) * (count / ceiling as f64) as f32;
    let scale = Hand::new(20.0, inks.quiet);
    let left = MARGIN + scale.width(&ceiling.to_string()) + 12.0;
    let right = WIDTH - MARGIN;
    for value in (0..=ceiling).step_by(step) {
        let y = bottom - height(value as f64);
        canvas.line((left, y), (right, y), Paint::stroke(inks.grid, 1.5));
        canvas.text(&value.to_string(), left - 10.0, y + 7.0, scale.end());
    }

    let weeks = weeks(days);
    // A week is parted from the next by half a column.
    let gaps = weeks.len().saturating_sub(1) as f32 * 0.5;
    let pitch = ((right - left) / (days.len() as f32 + gaps)).min(86.0);
    let wide = (pitch * 0.72).min(52.0);
    let mut x = left + pitch * 0.14;
    for (number, week) in weeks.into_iter().enumerate() {
        let start = x;
        for day in week {
            let (tried, solved) = (height(day.tried as f64), height(day.solved as f64));
            canvas.rect(x, bottom - tried, wide, tried, Paint::fill(inks.soft));
            canvas.rect(x, bottom - solved, wide, solved, Paint::fill(inks.strong));
            if solved > 0.0 && tried > solved {
                canvas.rect(x, bottom - solved - 1.5, wide, 3.0, Paint::fill(inks.page));
            }
            let label = day.day.to_string();
            if Hand::new(20.0, "").width(&label) <= pitch {
                let hand = Hand::new(20.0, inks.ink).middle();
                canvas.text(&label, x + wide / 2.0, bottom + 26.0, hand);
            }
            x += pitch;
        }
        let end = x - pitch + wide;
        let mean = mean(week);
        let y = bottom - height(mean);
        for (ink, width) in [(inks.page, 6.0), (inks.wax, 3.0)] {
            let paint = Paint::stroke(ink, width);
            let paint = if ink == inks.wax {
                paint.dashed(8.0, 5.0)
            } else {
                paint
            };
            canvas.line((start - 4.0, y), (end + 4.0, y), paint);
        }
        if let Some(day) = week.first() {
            canvas.line(
                (start, bottom + 36.0),
                (end, bottom + 36.0),
                Paint::stroke(inks.quiet, 1.5),
            );
            let hand = Hand::new(20.0, inks.quiet);
            let name = tongue.say(&day.week.text());
            let wide = hand.width(&name);
            // Narrow weeks are named on two lines in turn, within the page.
            let middle = ((start + end) / 2.0).clamp(MARGIN + wide / 2.0, right - wide / 2.0);
            let line = bottom + 60.0 + if number % 2 == 1 { LOWER } else { 0.0 };
            canvas.text(&name, middle, line, hand.middle());
        }
        x += pitch * 0.5;
    }
    key(
        &mut canvas,
        bottom + 108.0 + LOWER,
        &[
            (Swatch::Bar(inks.strong), Text::ChartKeySolved),
            (Swatch::Bar(inks.soft), Text::ChartKeyTookPart),
            (Swatch::Rule(inks.wax), Text::ChartKeyMean),
        ],
        &inks,
        tongue,
    );
    canvas
}

/// A round step for a scale up to `most` with at most five lines.
fn step(most: usize) -> usize {
    let mut unit = 1;
    loop {
        for factor in [1, 2, 5] {
            if most.div_ceil(factor * unit) <= 5 {
                return factor * unit;
            }
        }
        unit *= 10;
    }
}

/// The days in runs of one week.
fn weeks(days: &[Day]) -> Vec<&[Day]> {
    days.chunk_by(|a, b| a.week == b.week).collect()
}

fn mean(week: &[Day]) -> f64 {
    week.iter().map(|d| d.tried).sum::<usize>() as f64 / week.len().max(1) as f64
}

pub(super) fn words(days: &[Day], tongue: &Tongue) -> Vec<String> {
    weeks(days)
        .into_iter()
        .map(|week| {
            let each: Vec<String> = week
                .iter()
                .map(|of| {
                    tongue.say(&Text::AltDay {
                        day: of.day,
                        tried: number(of.tried),
                        solved: number(of.solved),
                    })
                })
                .collect();
            let name = week
                .first()
                .map_or_else(String::new, |day| tongue.say(&day.week.text()));
            let whole = tongue.say(&Text::AltWeek {
                week: name,
                mean: Decimal::of((mean(week) * 10.0).round() / 10.0),
            });
            format!("{whole} {}", each.join("; "))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_scale_has_few_round_steps() {
        for (most, wanted) in [
            (1, 1),
            (5, 1),
            (6, 2),
            (11, 5),
            (25, 5),
            (26, 10),
            (2_600, 1_000),
        ] {
            assert_eq!(step(most), wanted, "{most}");
        }
    }
}
