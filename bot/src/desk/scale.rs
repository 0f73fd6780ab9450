//! How points are counted in a group, in words, for members who ask.

use super::{
    Desk, Place, Settings,
    attempt::{self, LATER_WRONG},
    error::Done,
    text,
};
use crate::chess::judge::points;

impl Desk {
    /// How points are counted here: the scale, what the group takes off, and what counts; a paragraph
    /// each.
    pub async fn scale(&self, place: &Place) -> Done<Vec<String>> {
        Ok(scale(&self.settings(place).await?))
    }
}

/// What a group takes off, in points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Costs {
    /// Each wrong first move.
    pub wrong: f64,
    /// Whether nothing more can be scored after one.
    pub wrong_ends: bool,
    /// A wrong move later in the line.
    pub later: f64,
    /// Each hint.
    pub hint: f64,
    /// What whoever solves without being shown the move keeps.
    pub least: f64,
}

impl Settings {
    /// What a post with these settings takes off.
    pub fn costs(&self) -> Costs {
        let prices = attempt::prices(self);
        Costs {
            wrong: prices.wrong_cost,
            wrong_ends: prices.wrong_cost >= points::FULL,
            later: prices.wrong_cost.min(LATER_WRONG),
            hint: prices.hint_cost,
            least: prices.least,
        }
    }
}

fn scale(settings: &Settings) -> Vec<String> {
    let prices = attempt::prices(settings);
    vec![
        points::rule().to_owned(),
        format!(
            "{} {}{}",
            wrong(prices.wrong_cost),
            hints(prices.hint_cost),
            least(prices.least)
        ),
        "The best of your answers to a position counts, at what it was worth when it came. An answer \
         that is not legal, not clear or not readable costs nothing. A position keeps the prices it was \
         posted with. Your coach can change any verdict, and the points follow."
            .to_owned(),
    ]
}

fn wrong(cost: f64) -> String {
    if cost <= 0.0 {
        return "In this group wrong moves take nothing off.".to_owned();
    }
    let first = if cost >= points::FULL {
        "In this group nothing more can be scored on a position after a wrong first move."
            .to_owned()
    } else {
        format!(
            "In this group each wrong first move takes {} off what follows.",
            text::counted(cost)
        )
    };
    format!(
        "{first} A wrong move later in the line takes {} off.",
        text::counted(cost.min(LATER_WRONG))
    )
}

fn hints(cost: f64) -> String {
    if cost <= 0.0 {
        "Hints take nothing off.".to_owned()
    } else {
        format!("Each hint takes {} off.", text::counted(cost))
    }
}

fn least(points: f64) -> String {
    if points <= 0.0 {
        return String::new();
    }
    format!(
        " Whoever solves a position keeps at least {}, unless the last hint has shown the move.",
        text::counted(points)
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::desk::Scale;

    fn told(wrong_cost: f64, hint_cost: f64) -> String {
        by(Scale::Club, wrong_cost, hint_cost)
    }

    fn by(points: Scale, wrong_cost: f64, hint_cost: f64) -> String {
        scale(&Settings {
            points,
            wrong_cost,
            hint_cost,
            ..Settings::default()
        })
        .join("\n")
    }

    #[test]
    fn says_what_the_group_takes_off() {
        let club = told(1.0, 1.0);
        assert!(
            club.contains("each wrong first move takes 1 point off what follows")
                && club.contains("keeps at least 1 point, unless the last hint has shown the move"),
            "{club}"
        );
        let strict = by(Scale::Tournament, 1.0, 1.0);
        assert!(!strict.contains("at least"), "{strict}");
        assert!(strict.contains("worth 5 points"), "{strict}");
        assert!(
            strict.contains("nothing more can be scored on a position after a wrong first move"),
            "{strict}"
        );
        assert!(
            strict.contains("later in the line takes 1 point off. Each hint takes 1 point off."),
            "{strict}"
        );
        let gentle = told(0.5, 0.0);
        assert!(
            gentle.contains(
                "each wrong first move takes 0.5 points off what follows. A wrong move later in the line takes 0.5 points off. Hints take nothing off."
            ),
            "{gentle}"
        );
        assert!(told(0.0, 0.0).contains("wrong moves take nothing off"));
    }
}
