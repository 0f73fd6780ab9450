//! What members are told of points: beside a verdict, and before they pay for a hint.

use sealed_move_store::{Prices, Verdict, VerdictRow};

use super::{
    attempt::{After, LATER_WRONG, Work},
    text,
};
use crate::chess::judge::{HINT_STEPS, points::FULL};

/// A verdict's words with its points: what a solution is worth, and with a wrong move what was paid and what
/// the next one costs.
pub(super) fn with_points(
    verdict: Verdict,
    message: &str,
    after: Option<After>,
    prices: Prices,
) -> String {
    let Some(after) = after.filter(|after| after.counts) else {
        return message.to_owned();
    };
    match verdict {
        Verdict::Solved => format!("{message} {}", earned(after, prices)),
        Verdict::Wrong => match lost(after, prices) {
            Some(lost) => format!("{message} {lost}"),
            None => message.to_owned(),
        },
        Verdict::OnTheWay | Verdict::Illegal | Verdict::Unclear | Verdict::Unreadable => {
            message.to_owned()
        }
    }
}

/// A kept verdict's words with its points.
pub(super) fn of_kept(verdict: &VerdictRow, after: Option<After>, prices: Prices) -> String {
    if !verdict.by_coach {
        return with_points(verdict.verdict, &verdict.message, after, prices);
    }
    match after {
        // Older verdicts hold their points in words.
        Some(after) if !verdict.message.contains(" of 5 points") => {
            by_coach(&verdict.message, &verdict.why, after.points)
        }
        _ => verdict.message.clone(),
    }
}

/// A coach's verdict with the points for the post and the coach's own words.
pub(super) fn by_coach(message: &str, words: &str, points: f64) -> String {
    let points = text::points(points);
    if words.is_empty() {
        format!("{message}. {points} of 5 points.")
    } else {
        format!("{message}. {points} of 5 points. \"{words}\"")
    }
}

fn earned(after: After, prices: Prices) -> String {
    let mut reasons = Vec::new();
    if after.wrong > 0 && prices.wrong_cost > 0.0 {
        reasons.push(counted(after.wrong as usize, "wrong try", "wrong tries"));
    }
    if after.hints > 0 && prices.hint_cost > 0.0 {
        reasons.push(counted(after.hints, "hint", "hints"));
    }
    let why = if reasons.is_empty() {
        String::new()
    } else {
        format!(" after {}", reasons.join(" and "))
    };
    format!("{} of 5 points{why}.", text::points(after.points))
}

/// What a wrong move took; with the first one, all the prices.
fn lost(after: After, prices: Prices) -> Option<String> {
    if prices.wrong_cost <= 0.0 {
        return None;
    }
    if prices.wrong_cost >= FULL && after.left <= 0.0 {
        return (after.wrong == 1).then(|| {
            "By this group's scale nothing can be scored on a position after a wrong first move; finding it \
             is still worth the while."
                .to_owned()
        });
    }
    let left = format!("Solving it now gives {}.", text::counted(after.left));
    if after.wrong > 1 {
        return Some(left);
    }
    let hint = if prices.hint_cost > 0.0 {
        format!(", each hint {}", text::points(prices.hint_cost))
    } else {
        String::new()
    };
    Some(format!(
        "{left} Each wrong first move takes {}{}{hint}{}.",
        text::counted(prices.wrong_cost),
        later(prices),
        least(prices),
    ))
}

/// The price of a wrong move further down, where it is another one.
fn later(prices: Prices) -> String {
    if prices.wrong_cost > LATER_WRONG {
        format!(
            ", a wrong move later in the line {}",
            text::points(LATER_WRONG)
        )
    } else {
        String::new()
    }
}

/// What is kept in any case.
fn least(prices: Prices) -> String {
    if prices.least > 0.0 {
        format!(
            "; whoever solves it without being shown the move keeps at least {}",
            text::points(prices.least)
        )
    } else {
        String::new()
    }
}

/// What the next hint takes, said before it is taken: a sentence, and a few words for a button.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct HintPrice {
    pub sentence: String,
    pub label: String,
    pub costs: bool,
}

/// What the next hint takes off a member's work.
pub(super) fn next_hint(work: &Work) -> HintPrice {
    hint_price(work, work.next_step())
}

/// The price of hint `step` (from 1); of one that was taken already, nothing.
fn hint_price(work: &Work, step: u8) -> HintPrice {
    if step > HINT_STEPS {
        return HintPrice {
            sentence: "You have taken every hint there is for this move.".into(),
            label: "shown again, takes nothing".into(),
            costs: false,
        };
    }
    let (now, then) = (work.left(), work.left_after_hint(step));
    let shows = match step {
        HINT_STEPS => "The next hint shows the move. It",
        _ => "A hint",
    };
    let left = text::points(then);
    if now - then < 0.005 {
        HintPrice {
            sentence: format!("{shows} takes nothing; you would still have {left} left."),
            label: format!("takes nothing, leaves {left}"),
            costs: false,
        }
    } else {
        HintPrice {
            sentence: format!(
                "{shows} takes {}; you would have {left} left.",
                text::counted(now - then)
            ),
            label: format!("takes {}, leaves {left}", text::points(now - then)),
            costs: true,
        }
    }
}

fn counted(count: usize, one: &str, many: &str) -> String {
    match count {
        1 => format!("one {one}"),
        _ => format!("{count} {many}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const CLUB: Prices = Prices {
        wrong_cost: 1.0,
        hint_cost: 1.0,
        least: 1.0,
    };

    fn after(wrong: u32, left: f64) -> Option<After> {
        Some(After {
            points: 0.0,
            wrong,
            hints: 0,
            left,
            counts: true,
        })
    }

    #[test]
    fn the_first_wrong_verdict_of_a_post_tells_the_prices() {
        assert_eq!(
            with_points(Verdict::Wrong, "Rd7 does not work.", after(1, 4.0), CLUB),
            "Rd7 does not work. Solving it now gives 4 points. Each wrong first move takes 1 point, each hint 1; \
             whoever solves it without being shown the move keeps at least 1."
        );
        assert_eq!(
            with_points(Verdict::Wrong, "Rd6 does not work.", after(2, 3.0), CLUB),
            "Rd6 does not work. Solving it now gives 3 points."
        );
        let tournament = Prices {
            wrong_cost: 5.0,
            hint_cost: 1.0,
            least: 0.0,
        };
        let told = with_points(Verdict::Wrong, "No.", after(1, 0.0), tournament);
        assert!(told.contains("nothing can be scored"), "{told}");
        let free = Prices {
            wrong_cost: 0.0,
            ..CLUB
        };
        assert_eq!(
            with_points(Verdict::Wrong, "No.", after(1, 5.0), free),
            "No."
        );
    }

    #[test]
    fn what_does_not_count_says_nothing_of_points() {
        let late = after(1, 4.0).map(|after| After {
            counts: false,
            ..after
        });
        assert_eq!(with_points(Verdict::Solved, "Yes.", late, CLUB), "Yes.");
        assert_eq!(with_points(Verdict::Solved, "Yes.", None, CLUB), "Yes.");
    }
}
