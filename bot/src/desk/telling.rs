//! What members are told of points: beside a verdict, and before they pay for a hint.

// What a fact says stands beside its name; its values are named after what they are.
#![allow(missing_docs)]

use sealed_move_store::{self as store, Prices, Verdict as KeptVerdict, VerdictRow};
use serde::Serialize;
use serde_json::Value;

use super::{
    LanguageTag, Said, Verdict,
    attempt::{After, LATER_WRONG, Work},
    refusal::{LocalTime, Whole},
    said::facts_of,
};
use crate::chess::{
    fact::{Decimal, Theirs},
    judge::HINT_STEPS,
};

/// One sentence to a member, or a few words on a button, besides what the judge says.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub(super) enum Told {
    // Of points.
    /// What a solution is worth, and what was paid on the way.
    PointsEarned {
        points: Decimal,
        wrong: u32,
        hints: u32,
    },
    /// What solving it is worth now.
    SolvingNowGives {
        points: Decimal,
    },
    /// Nothing can be scored any more.
    NothingAfterWrong,
    /// What wrong moves and hints take.
    Prices {
        wrong: Decimal,
        later: Option<Decimal>,
        hint: Option<Decimal>,
    },
    /// What is kept in any case.
    AtLeast {
        points: Decimal,
    },

    // Of a hint, before it is taken.
    /// It takes nothing; `last` where it shows the move.
    HintFree {
        left: Decimal,
        last: bool,
    },
    /// It takes so much, and leaves so much.
    HintTakes {
        takes: Decimal,
        left: Decimal,
        last: bool,
    },
    /// There is none left.
    NoMoreHints,
    /// On a button.
    PriceFree {
        left: Decimal,
    },
    /// On a button.
    PriceTakes {
        takes: Decimal,
        left: Decimal,
    },
    /// On a button.
    PriceAgain,

    // Of a reply that changes nothing.
    /// It was solved before.
    SolvedAlready,
    /// It was given up before.
    GivenUpAlready,
    /// It is given up, or was before; when the solution comes.
    GivenUpNow {
        at: LocalTime,
    },
    GivenUpBefore {
        at: LocalTime,
    },
    /// How it ended.
    YouSolved {
        points: Decimal,
    },
    YouGaveUp {
        at: LocalTime,
    },
    /// It came too late.
    RepliesClosed,
    /// The coach judges.
    CoachWillJudge,
    /// An answer to a question is kept; the coach reads it.
    CoachWillRead,
    /// The coach could, though it came too late.
    CoachCanRead,
    /// Only the beginning of what was written is kept; `again` where another answer is still taken.
    OnlyBeginningKept {
        most: Whole,
        again: bool,
    },

    // Of a coach's verdict.
    /// The verdict; of which position, where that is not plain.
    CoachLooked {
        number: Option<i64>,
        verdict: Verdict,
    },
    /// An answer to a question is marked; to which, where that is not plain.
    CoachMarked {
        number: Option<i64>,
    },
    /// The points.
    PointsOfFive {
        points: Decimal,
    },
    /// The coach's own words.
    CoachSays {
        words: Theirs,
    },

    // From before facts were kept.
    /// A verdict in the words of its time.
    AsItWas {
        words: String,
    },
    /// A reason in the words of its time.
    AsReason {
        words: String,
    },
}

/// Adds the points to what a verdict says: what a solution is worth, and with a wrong move what was paid and
/// what the next one costs.
pub(super) fn with_points(
    mut said: Said,
    verdict: KeptVerdict,
    after: Option<After>,
    prices: Prices,
) -> Said {
    let Some(after) = after.filter(|after| after.counts) else {
        return said;
    };
    match verdict {
        KeptVerdict::Solved => said.push(earned(after, prices)),
        KeptVerdict::Wrong => lost(after, prices)
            .into_iter()
            .for_each(|told| said.push(told)),
        KeptVerdict::OnTheWay
        | KeptVerdict::Illegal
        | KeptVerdict::Unclear
        | KeptVerdict::Unreadable
        | KeptVerdict::Marked => {}
    }
    said
}

/// A kept verdict with its points.
pub(super) fn of_kept(
    language: &LanguageTag,
    verdict: &VerdictRow,
    after: Option<After>,
    prices: Prices,
) -> Said {
    let said = Said::new(language);
    let Some(facts) = facts_of(verdict) else {
        let old = verdict.message.clone();
        return match (verdict.by_coach, after) {
            (false, _) => with_points(
                said.and(Told::AsItWas { words: old }),
                verdict.verdict,
                after,
                prices,
            ),
            // Still older ones hold their points in words.
            (true, Some(after)) if !old.contains(" of 5 points") => by_coach(
                said.and(Told::AsItWas {
                    words: format!("{old}."),
                }),
                &verdict.why,
                after.points,
            ),
            (true, _) => said.and(Told::AsItWas { words: old }),
        };
    };
    let said = Said { facts, ..said };
    match (verdict.by_coach, after) {
        (false, _) => with_points(said, verdict.verdict, after, prices),
        (true, Some(after)) => by_coach(said, &verdict.why, after.points),
        (true, None) => said,
    }
}

/// The reason that was given with a verdict, from its facts or from the sentence of an old one.
pub(super) fn why(language: &LanguageTag, facts: Option<&Value>, sentence: &str) -> Said {
    let mut said = Said::new(language);
    match facts.and_then(|facts| facts.get("why")) {
        Some(why) => {
            let given = why.get("why").and_then(Value::as_array);
            if given.is_some_and(|given| !given.is_empty()) {
                said.push(why);
            }
        }
        None if !sentence.is_empty() => said.push(Told::AsReason {
            words: sentence.to_owned(),
        }),
        None => {}
    }
    said
}

/// A coach's verdict, without its points: these may change with the verdict on another reply.
pub(super) fn coach_looked(number: Option<i64>, verdict: Verdict) -> Told {
    Told::CoachLooked { number, verdict }
}

/// Adds the points for the post and the coach's own words to a coach's verdict.
pub(super) fn by_coach(mut said: Said, words: &str, points: store::Points) -> Said {
    said.push(Told::PointsOfFive {
        points: points.into(),
    });
    if !words.is_empty() {
        said.push(Told::CoachSays {
            words: words.to_owned().into(),
        });
    }
    said
}

fn earned(after: After, prices: Prices) -> Told {
    let paid = |count: u32, cost: store::Points| if cost.is_zero() { 0 } else { count };
    Told::PointsEarned {
        points: after.points.into(),
        wrong: paid(after.wrong, prices.wrong_cost),
        hints: paid(
            u32::try_from(after.hints).unwrap_or(u32::MAX),
            prices.hint_cost,
        ),
    }
}

/// What a wrong move took; with the first one, all the prices.
fn lost(after: After, prices: Prices) -> Vec<Told> {
    if prices.wrong_cost.is_zero() {
        return Vec::new();
    }
    if prices.wrong_cost == store::Points::FULL && after.left.is_zero() {
        return match after.wrong {
            1 => vec![Told::NothingAfterWrong],
            _ => Vec::new(),
        };
    }
    let mut told = vec![Told::SolvingNowGives {
        points: after.left.into(),
    }];
    if after.wrong > 1 {
        return told;
    }
    told.push(Told::Prices {
        wrong: prices.wrong_cost.into(),
        // Where it is another one.
        later: (prices.wrong_cost > LATER_WRONG).then(|| LATER_WRONG.into()),
        hint: (!prices.hint_cost.is_zero()).then(|| prices.hint_cost.into()),
    });
    if !prices.least.is_zero() {
        told.push(Told::AtLeast {
            points: prices.least.into(),
        });
    }
    told
}

/// What the next hint takes, said before it is taken: a sentence, and a few words for a button.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct HintPrice {
    pub sentence: Told,
    pub label: Told,
    pub costs: bool,
}

impl HintPrice {
    /// The label, to be shown.
    pub(super) fn label_in(&self, language: &LanguageTag) -> Said {
        Said::new(language).and(&self.label)
    }

    /// The sentence, to be shown.
    pub(super) fn sentence_in(&self, language: &LanguageTag) -> Said {
        Said::new(language).and(&self.sentence)
    }
}

/// What the next hint takes off a member's work.
pub(super) fn next_hint(work: &Work) -> HintPrice {
    hint_price(work, work.next_step())
}

/// The price of hint `step` (from 1); of one that was taken already, nothing.
fn hint_price(work: &Work, step: u8) -> HintPrice {
    if step > HINT_STEPS {
        return HintPrice {
            sentence: Told::NoMoreHints,
            label: Told::PriceAgain,
            costs: false,
        };
    }
    let (now, then) = (work.left(), work.left_after_hint(step));
    let (left, last) = (then.into(), step == HINT_STEPS);
    let takes = now.less(then);
    if takes.is_zero() {
        HintPrice {
            sentence: Told::HintFree { left, last },
            label: Told::PriceFree { left },
            costs: false,
        }
    } else {
        let takes = takes.into();
        HintPrice {
            sentence: Told::HintTakes { takes, left, last },
            label: Told::PriceTakes { takes, left },
            costs: true,
        }
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;
    use crate::{chess::Language, desk::said};

    const CLUB: Prices = Prices {
        wrong_cost: store::Points::of(1.0),
        hint_cost: store::Points::of(1.0),
        least: store::Points::of(1.0),
    };

    fn told(verdict: KeptVerdict, after: Option<After>, prices: Prices) -> String {
        let said = with_points(Said::new(Language::English), verdict, after, prices);
        sealed_move_words::english().tell(&said.facts)
    }

    fn after(wrong: u32, left: f64) -> Option<After> {
        Some(After {
            points: store::Points::ZERO,
            wrong,
            hints: 0,
            left: store::Points::of(left),
            counts: true,
        })
    }

    #[test]
    fn the_first_wrong_verdict_of_a_post_tells_the_prices() {
        assert_eq!(
            told(KeptVerdict::Wrong, after(1, 4.0), CLUB),
            "Solving it now gives 4 points. Each wrong move takes 1 point, each hint 1. Whoever solves it \
             without being shown the move keeps at least 1."
        );
        assert_eq!(
            told(KeptVerdict::Wrong, after(2, 3.0), CLUB),
            "Solving it now gives 3 points."
        );
        let tournament = Prices {
            wrong_cost: store::Points::of(5.0),
            hint_cost: store::Points::of(1.0),
            least: store::Points::of(0.0),
        };
        let nothing = told(KeptVerdict::Wrong, after(1, 0.0), tournament);
        assert!(nothing.contains("nothing can be scored"), "{nothing}");
        let free = Prices {
            wrong_cost: store::Points::of(0.0),
            ..CLUB
        };
        assert_eq!(told(KeptVerdict::Wrong, after(1, 5.0), free), "");
    }

    #[test]
    fn what_does_not_count_says_nothing_of_points() {
        let late = after(1, 4.0).map(|after| After {
            counts: false,
            ..after
        });
        assert_eq!(told(KeptVerdict::Solved, late, CLUB), "");
        assert_eq!(told(KeptVerdict::Solved, None, CLUB), "");
    }

    fn row(by_coach: bool, message: &str, facts: Option<Value>) -> VerdictRow {
        VerdictRow {
            id: 1,
            reply_id: sealed_move_store::ReplyId::of(1),
            verdict: KeptVerdict::Wrong,
            points: store::Points::ZERO,
            moves: Vec::new(),
            refutation: Vec::new(),
            line: Vec::new(),
            facts,
            why: "look at the back rank".into(),
            message: message.into(),
            wrong_first: None,
            by_coach,
            given_at: chrono::DateTime::UNIX_EPOCH,
        }
    }

    fn tag(language: Language) -> LanguageTag {
        language.into()
    }

    fn again(language: Language, row: &VerdictRow) -> String {
        let said = of_kept(&language.into(), row, after(2, 3.0), CLUB);
        sealed_move_words::words(language.tag()).tell(&said.facts)
    }

    #[test]
    fn a_verdict_is_read_in_the_readers_language_and_an_old_one_as_it_was() {
        let facts = said::kept(
            &[json!({ "is": "fails", "line": { "line": "1.Rd7" } })],
            &Default::default(),
        );
        let new = row(false, "", Some(facts));
        assert_eq!(
            again(Language::English, &new),
            "1.Rd7 does not work. Solving it now gives 3 points."
        );
        assert_eq!(
            again(Language::German, &new),
            "1.Td7 geht nicht. Wer es jetzt löst, bekommt 3 Punkte."
        );
        let old = row(false, "1.Rd7 does not work.", None);
        assert_eq!(
            again(Language::German, &old),
            "1.Rd7 does not work. (So wurde es damals gesagt.) Wer es jetzt löst, bekommt 3 Punkte."
        );
        // A language that is read and not spoken yet.
        assert_eq!(
            again(Language::Polish, &new),
            "1.Rd7 does not work. Solving it now gives 3 points."
        );
    }

    #[test]
    fn a_coachs_verdict_has_its_points_and_the_coachs_words_in_any_language() {
        let facts = said::kept(&[coach_looked(None, Verdict::Wrong)], &Default::default());
        let new = row(true, "", Some(facts));
        assert_eq!(
            again(Language::English, &new),
            "Your coach has looked at your answer: not the solution. 0 of 5 points. \"look at the back rank\""
        );
        assert_eq!(
            again(Language::Spanish, &new),
            "Tu entrenador ha mirado tu respuesta: no es la solución. 0 de 5 puntos. «look at the back rank»"
        );
        let old = row(true, "your coach has looked at your answer: wrong", None);
        assert!(
            again(Language::English, &old)
                .starts_with("your coach has looked at your answer: wrong."),
            "{}",
            again(Language::English, &old)
        );
        let oldest = row(true, "your coach says: solved, 2 of 5 points.", None);
        let told = again(Language::English, &oldest);
        assert_eq!(told.matches("of 5 points").count(), 1, "{told}");
    }

    #[test]
    fn a_reason_comes_from_the_facts_or_from_an_old_sentence() {
        let english = |said: &Said| sealed_move_words::english().tell(&said.facts);
        let facts =
            json!({ "version": 1, "said": [], "why": { "why": [{ "is": "back-rank-again" }] } });
        let given = why(&tag(Language::English), Some(&facts), "");
        assert_eq!(english(&given), "the back rank is defended again");
        let none = json!({ "version": 1, "said": [], "why": { "why": [] } });
        assert!(why(&tag(Language::English), Some(&none), "").is_empty());
        assert!(why(&tag(Language::English), None, "").is_empty());
        let old = why(&tag(Language::German), None, "the rook takes it");
        assert_eq!(english(&old), "the rook takes it");
    }
}
