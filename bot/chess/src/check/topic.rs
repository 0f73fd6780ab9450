//! Whether a checked position shows its topic: the final picture of the main line, or of every full-length
//! line, bears the pattern that the topic's name means.
//!
//! Worked out from a report alone, so that a topic may be changed without checking the position again. Gives
//! facts, whole sentences each.

// What a fact says stands beside its name; its values are named after what they are.
#![allow(missing_docs)]

use serde::Serialize;
use shakmaty::Color;

use super::{FinalPicture, OwnLine, OwnMate, Report, Soundness};
use crate::{
    Stipulation,
    fact::{And, Line, Pattern, number},
    line::numbered,
    name::meant,
};

/// The first version of the checker that kept how lines end.
const KEEPS_ENDS: u32 = 5;

/// What has to bear the pattern.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum TopicOn {
    /// The main line, the proof's or the coach's own; of a win or a draw the first of the coach's lines that
    /// ends in mate.
    #[default]
    MainLine,
    /// Every full-length line; of a win or a draw every one of the coach's lines that ends in mate.
    EveryLine,
}

/// How a position stands to its topic.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum TopicState {
    /// The topic names no pattern.
    Label,
    /// The pattern is shown.
    Verified,
    /// It is not.
    NotVerified,
    /// It is not known: the check was cut short, or is of a version that did not keep how lines end.
    Open,
    /// The position has no solution that could show anything.
    NoSolution,
}

/// How a position stands to its topic, with what is to be said of it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct TopicCheck {
    /// In a word.
    pub verdict: TopicState,
    /// The pattern that the topic means.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pattern: Option<&'static str>,
    /// In whole sentences; none of a topic that means no pattern.
    pub facts: Vec<TopicFact>,
}

impl TopicCheck {
    /// Whether the topic means a pattern and is to be marked as not verified.
    pub fn is_doubtful(&self) -> bool {
        matches!(self.verdict, TopicState::NotVerified | TopicState::Open)
    }
}

/// How far a picture reaches.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Extent {
    /// There is one full-length line.
    Only,
    /// There are several, and all show it.
    All,
    /// Some do not.
    Some,
    /// How many do is not known.
    Main,
}

/// Whose line does not show a picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum WhoseLine {
    /// The main line.
    Main,
    /// One of full length beside it.
    Full,
    /// One of the coach's own.
    Own,
}

/// A sentence on a topic that means a pattern.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum TopicFact {
    /// The main line shows it; so do `showing` of all `lines` of full length.
    TopicShown {
        pattern: Pattern,
        last: Line,
        extent: Extent,
        showing: u32,
        lines: u32,
    },
    /// The coach's own line shows it; the mate is proved to be forced from a move on.
    TopicShownByCoach {
        pattern: Pattern,
        line: Line,
        last: Line,
        from: Line,
    },
    /// A line shows something else, or a mate without a name.
    TopicNotShown {
        pattern: Pattern,
        whose: WhoseLine,
        line: Line,
        last: Line,
        shows: Option<And<Pattern>>,
    },
    /// No line ends in mate.
    TopicWithoutMate { pattern: Pattern },
    /// The time or work allowed ended before it was known.
    TopicUnsettled { pattern: Pattern },
    /// All lines that are known show it, and not all are known.
    TopicNotAllKnown { pattern: Pattern, lines: u32 },
    /// The report is of a version that did not keep how lines end.
    TopicUnchecked { pattern: Pattern },

    // Beside these.
    /// So many of the full-length lines show it.
    TopicFigures { showing: u32, lines: u32 },
    /// The first line that does not show it.
    TopicElsewhere {
        line: Line,
        last: Line,
        shows: Option<And<Pattern>>,
    },
    /// So many of the coach's lines end without mate; the first of them.
    TopicDeclined { number: u32, line: Line },
}

/// Holds a report against a topic.
///
/// ```
/// use sealed_move_chess::{
///     Budget,
///     check::{CheckOptions, TopicOn, TopicState, check, topic_check},
///     read::read_file,
/// };
///
/// let epd = b"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - dm 2;";
/// let entry = read_file("t", epd).remove(0).unwrap();
/// let report = check(&entry, &CheckOptions::default(), &Budget::unlimited());
/// let verdict = |topic| topic_check(&report, topic, TopicOn::MainLine).verdict;
/// assert_eq!(verdict("Back-rank mate"), TopicState::Verified);
/// assert_eq!(verdict("Smothered mate"), TopicState::NotVerified);
/// assert_eq!(verdict("Deflection"), TopicState::Label);
/// ```
pub fn topic_check(report: &Report, topic: &str, on: TopicOn) -> TopicCheck {
    let Some(pattern) = meant(topic) else {
        return TopicCheck {
            verdict: TopicState::Label,
            pattern: None,
            facts: Vec::new(),
        };
    };
    let held = Held {
        report,
        pattern,
        on,
    };
    let (verdict, facts) = match (report.verdict, report.stipulation) {
        (Soundness::Illegal | Soundness::Unsound, _) | (_, None) => {
            (TopicState::NoSolution, Vec::new())
        }
        (Soundness::Undecided, _) => held.unsettled(),
        (_, Some(Stipulation::Mate(_))) => held.by_proof(),
        (_, Some(Stipulation::Win | Stipulation::Draw)) => held.by_own_lines(),
    };
    TopicCheck {
        verdict,
        pattern: Some(pattern),
        facts,
    }
}

type Told = (TopicState, Vec<TopicFact>);

/// A report that is held against a pattern.
struct Held<'a> {
    report: &'a Report,
    pattern: &'static str,
    on: TopicOn,
}

impl Held<'_> {
    /// A mate: by the full-length lines of the proof.
    fn by_proof(&self) -> Told {
        let Report { ends, line, .. } = self.report;
        // Of older reports the main line is known.
        let main = ends.pictures.first();
        let (line, patterns) = main.map_or((line, &self.report.patterns), |main| {
            (&main.line, &main.patterns)
        });
        let lacking = ends.pictures.iter().find(|one| !self.has(&one.patterns));
        match self.on {
            TopicOn::MainLine if self.has(patterns) => {
                let mut facts = vec![self.shown(line)];
                facts.extend(lacking.map(|one| self.elsewhere(&one.line, &one.patterns)));
                (TopicState::Verified, facts)
            }
            TopicOn::MainLine => match self.own_main_line() {
                Some((own, mate)) => {
                    let beside = self.elsewhere(line, patterns);
                    let facts = vec![self.shown_by_coach(own, mate), beside];
                    (TopicState::Verified, facts)
                }
                None => self.not_shown(WhoseLine::Main, line, patterns),
            },
            TopicOn::EveryLine if main.is_none() => self.unchecked(),
            TopicOn::EveryLine => match lacking {
                Some(one) if one.line == *line => {
                    self.not_shown(WhoseLine::Main, &one.line, &one.patterns)
                }
                Some(one) => self.not_shown(WhoseLine::Full, &one.line, &one.patterns),
                None if ends.whole => (TopicState::Verified, vec![self.shown(line)]),
                None => self.not_all_known(self.lines()),
            },
        }
    }

    /// A win or a draw: by the coach's own lines that end in mate; without one, by the search's.
    fn by_own_lines(&self) -> Told {
        let ends = &self.report.ends;
        if ends.is_empty() && self.report.version < KEEPS_ENDS {
            return self.unchecked();
        }
        if ends.cut {
            return self.unsettled();
        }
        let mates: Vec<(&OwnLine, &OwnMate)> = self.own_mates().collect();
        let Some(&(first, mate)) = mates.first() else {
            return self.by_search(ends.pictures.first());
        };
        let lacking = mates.iter().find(|(_, mate)| !self.has(&mate.patterns));
        let lacking = match self.on {
            TopicOn::MainLine => lacking.filter(|(line, _)| *line == first),
            TopicOn::EveryLine => lacking,
        };
        if let Some((line, mate)) = lacking {
            return self.not_shown(WhoseLine::Own, &line.line, &mate.patterns);
        }
        if self.on == TopicOn::EveryLine && !ends.whole {
            return self.not_all_known(number(mates.len()));
        }
        let mut facts = vec![self.shown_by_coach(first, mate)];
        let declined: Vec<&OwnLine> = ends.own.iter().filter(|own| own.mate.is_none()).collect();
        facts.extend(declined.first().map(|first| TopicFact::TopicDeclined {
            number: number(declined.len()),
            line: self.written(&first.line),
        }));
        (TopicState::Verified, facts)
    }

    /// By the picture at the end of the search's own line, beside which there are always others.
    fn by_search(&self, end: Option<&FinalPicture>) -> Told {
        match (end, self.on) {
            (None, _) => {
                let pattern = self.pattern();
                let facts = vec![TopicFact::TopicWithoutMate { pattern }];
                (TopicState::NotVerified, facts)
            }
            (Some(end), _) if !self.has(&end.patterns) => {
                self.not_shown(WhoseLine::Main, &end.line, &end.patterns)
            }
            (Some(end), TopicOn::MainLine) => (TopicState::Verified, vec![self.shown(&end.line)]),
            (Some(_), TopicOn::EveryLine) => self.not_all_known(1),
        }
    }

    fn has(&self, patterns: &[String]) -> bool {
        patterns.iter().any(|pattern| pattern == self.pattern)
    }

    fn pattern(&self) -> Pattern {
        Pattern {
            pattern: self.pattern.to_owned(),
        }
    }

    fn own_mates(&self) -> impl Iterator<Item = (&OwnLine, &OwnMate)> {
        let own = self.report.ends.own.iter();
        own.filter_map(|own| Some((own, own.mate.as_ref()?)))
    }

    /// The coach's own main line of a mate, if it shows the pattern.
    fn own_main_line(&self) -> Option<(&OwnLine, &OwnMate)> {
        self.own_mates()
            .next()
            .filter(|(_, mate)| self.has(&mate.patterns))
    }

    /// How many full-length lines are known.
    fn lines(&self) -> u32 {
        self.report.ends.pictures.iter().map(|one| one.lines).sum()
    }

    /// How many of them show the pattern.
    fn showing(&self) -> u32 {
        let pictures = self.report.ends.pictures.iter();
        let showing = pictures.filter(|one| self.has(&one.patterns));
        showing.map(|one| one.lines).sum()
    }

    fn shown(&self, line: &[String]) -> TopicFact {
        let (showing, lines) = (self.showing(), self.lines());
        TopicFact::TopicShown {
            pattern: self.pattern(),
            last: self.last(line),
            extent: match (self.report.ends.whole, lines) {
                (false, _) => Extent::Main,
                (true, 1) => Extent::Only,
                (true, _) if showing == lines => Extent::All,
                (true, _) => Extent::Some,
            },
            showing,
            lines,
        }
    }

    fn shown_by_coach(&self, own: &OwnLine, mate: &OwnMate) -> TopicFact {
        // Every other move is the solver's, the first and the last included.
        let solver_moves = own.line.len().div_ceil(2);
        let forced = usize::try_from(mate.forced).unwrap_or(usize::MAX);
        let at = 2 * solver_moves.saturating_sub(forced);
        TopicFact::TopicShownByCoach {
            pattern: self.pattern(),
            line: self.written(&own.line),
            last: self.last(&own.line),
            from: self.at(&own.line, at),
        }
    }

    fn not_shown(&self, whose: WhoseLine, line: &[String], patterns: &[String]) -> Told {
        let mut facts = vec![TopicFact::TopicNotShown {
            pattern: self.pattern(),
            whose,
            line: self.written(line),
            last: self.last(line),
            shows: named(patterns),
        }];
        let (showing, lines) = (self.showing(), self.lines());
        if showing > 0 && self.report.ends.whole && whose != WhoseLine::Own {
            facts.push(TopicFact::TopicFigures { showing, lines });
        }
        (TopicState::NotVerified, facts)
    }

    fn elsewhere(&self, line: &[String], patterns: &[String]) -> TopicFact {
        TopicFact::TopicElsewhere {
            line: self.written(line),
            last: self.last(line),
            shows: named(patterns),
        }
    }

    fn unsettled(&self) -> Told {
        let pattern = self.pattern();
        (
            TopicState::Open,
            vec![TopicFact::TopicUnsettled { pattern }],
        )
    }

    fn unchecked(&self) -> Told {
        let pattern = self.pattern();
        (
            TopicState::Open,
            vec![TopicFact::TopicUnchecked { pattern }],
        )
    }

    fn not_all_known(&self, lines: u32) -> Told {
        let pattern = self.pattern();
        let facts = vec![TopicFact::TopicNotAllKnown { pattern, lines }];
        (TopicState::Open, facts)
    }

    /// A line with its numbers, from 1 as solutions are printed.
    fn written(&self, line: &[String]) -> Line {
        numbered(self.turn(), 1, line).into()
    }

    /// The last move of a line with its number.
    fn last(&self, line: &[String]) -> Line {
        self.at(line, line.len().saturating_sub(1))
    }

    /// A move of a line with its number.
    fn at(&self, line: &[String], at: usize) -> Line {
        let turn = self.turn();
        let first = line.get(at..=at).unwrap_or_default();
        // Moves of the side that begins come at even places.
        let (turn, before) = match (at.is_multiple_of(2), turn) {
            (true, turn) => (turn, at / 2),
            (false, Color::White) => (Color::Black, at / 2),
            (false, Color::Black) => (Color::White, at / 2 + 1),
        };
        numbered(turn, number(before) + 1, first).into()
    }

    /// Whose move it is in the position, by its FEN.
    fn turn(&self) -> Color {
        match self.report.fen.split(' ').nth(1) {
            Some("b") => Color::Black,
            _ => Color::White,
        }
    }
}

/// Patterns as a value; none for a mate without a name.
fn named(patterns: &[String]) -> Option<And<Pattern>> {
    let and: Vec<Pattern> = patterns
        .iter()
        .map(|pattern| Pattern {
            pattern: pattern.clone(),
        })
        .collect();
    (!and.is_empty()).then_some(And { and })
}

#[cfg(test)]
mod tests;
