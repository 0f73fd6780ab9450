//! What every chat says alike, as facts; what they say in each language stands in `common.ftl` of the package
//! `words`, under the variant's name in kebab case.

// What a text says stands in the FTL; its values are named after what they are.
#![allow(missing_docs)]

use serde::Serialize;

pub use crate::desk::values::Theirs;

use crate::{
    desk::values::{Count, Decimal, Stipulation},
    desk::{Costs, Language, Settings, Side},
    words::Words,
};

/// The task of a problem, in a sentence.
#[derive(Clone, Copy, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Tasked {
    TaskMate { side: Side, moves: Count },
    TaskWin { side: Side },
    TaskDraw { side: Side },
}

impl Tasked {
    /// What the side to move is asked for.
    pub fn of(side: Side, stipulation: Stipulation) -> Self {
        match stipulation {
            Stipulation::Mate(moves) => Self::TaskMate {
                side,
                moves: moves.into(),
            },
            Stipulation::Win => Self::TaskWin { side },
            Stipulation::Draw => Self::TaskDraw { side },
        }
    }
}

/// A language in which replies are read, by its name.
#[derive(Clone, Copy, Debug, Serialize)]
#[serde(tag = "is", rename = "language-name")]
pub struct LanguageName {
    language: Language,
}

impl LanguageName {
    /// This one's.
    pub fn of(language: Language) -> Self {
        Self { language }
    }

    /// The name as it stands in a list to choose from, where it begins a line.
    pub fn listed(language: Language, words: &Words) -> String {
        let name = words.say(&Self::of(language));
        let mut letters = name.chars();
        let first = letters.next().into_iter().flat_map(char::to_uppercase);
        first.chain(letters).collect()
    }
}

/// A post was closed whose solution was never proved.
#[derive(Clone, Copy, Debug, Serialize)]
#[serde(tag = "is", rename = "no-solution-proved")]
pub struct NoSolutionProved {}

/// A sentence or two on how points are counted.
#[derive(Clone, Copy, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum PointsRule {
    RuleFullSolution,
    RuleWrongFree,
    RuleWrongEnds { later: Decimal },
    RuleWrongTakes { wrong: Decimal, later: Decimal },
    RuleHintFree,
    RuleHintTakes { hint: Decimal },
    RuleLeast { points: Decimal },
    RuleBest,
}

/// How points are counted in a group with these settings: the scale, what the group takes off, and what
/// counts; a paragraph each.
pub fn points_rules(words: &Words, settings: &Settings) -> [String; 3] {
    let costs = settings.costs();
    let (wrong, later) = (Decimal::of(costs.wrong), Decimal::of(costs.later));
    let wrong = match costs {
        Costs {
            wrong_ends: true, ..
        } => PointsRule::RuleWrongEnds { later },
        _ if costs.wrong.is_zero() => PointsRule::RuleWrongFree,
        _ => PointsRule::RuleWrongTakes { wrong, later },
    };
    let hint = match costs.hint.is_zero() {
        true => PointsRule::RuleHintFree,
        false => PointsRule::RuleHintTakes {
            hint: Decimal::of(costs.hint),
        },
    };
    let least = (!costs.least.is_zero()).then(|| PointsRule::RuleLeast {
        points: Decimal::of(costs.least),
    });
    let here = words.tell([wrong, hint].iter().chain(&least));
    [
        words.say(&PointsRule::RuleFullSolution),
        here,
        words.say(&PointsRule::RuleBest),
    ]
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use shakmaty::Color;

    use super::*;
    use crate::{
        desk,
        words::{english, tags, words},
    };

    #[test]
    fn every_language_of_replies_has_a_name_of_its_own_in_every_language() {
        for tag in tags() {
            let names: BTreeSet<String> = Language::ALL
                .iter()
                .map(|language| LanguageName::listed(*language, words(tag)))
                .collect();
            assert_eq!(names.len(), Language::ALL.len(), "{tag}: {names:?}");
        }
        assert_eq!(
            LanguageName::listed(Language::Spanish, words("es")),
            "Español"
        );
    }

    fn told(points: desk::Scale, wrong_cost: f64, hint_cost: f64) -> String {
        let settings = Settings {
            points,
            wrong_cost: desk::Points::of(wrong_cost),
            hint_cost: desk::Points::of(hint_cost),
            ..Settings::default()
        };
        points_rules(english(), &settings).join("\n")
    }

    #[test]
    fn says_what_the_group_takes_off() {
        let club = told(desk::Scale::Club, 1.0, 1.0);
        assert!(
            club.contains("each wrong first move takes 1 point off what follows")
                && club.contains("keeps at least 1 point, unless the last hint has shown the move"),
            "{club}"
        );
        let strict = told(desk::Scale::Tournament, 1.0, 1.0);
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
        let gentle = told(desk::Scale::Club, 0.5, 0.0);
        assert!(
            gentle.contains("each wrong first move takes 0.5 points off what follows")
                && gentle.contains("later in the line 0.5. Hints take nothing off."),
            "{gentle}"
        );
        let free = told(desk::Scale::Club, 0.0, 0.0);
        assert!(free.contains("wrong moves take nothing off"), "{free}");
    }

    #[test]
    fn tasks_read_as_sentences() {
        let task = |side: Color, stipulation| english().say(&Tasked::of(side.into(), stipulation));
        for (side, stipulation, said) in [
            (
                Color::White,
                Stipulation::Mate(1),
                "White to move and mate in one.",
            ),
            (
                Color::White,
                Stipulation::Mate(3),
                "White to move and mate in three.",
            ),
            (
                Color::Black,
                Stipulation::Mate(14),
                "Black to move and mate in 14.",
            ),
            (Color::White, Stipulation::Win, "White to move and win."),
            (Color::Black, Stipulation::Draw, "Black to move and draw."),
        ] {
            assert_eq!(task(side, stipulation), said);
        }
    }
}
