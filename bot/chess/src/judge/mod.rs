//! The verdict on a reply.
//!
//! [`mod@self`] takes the text, has it read, and hands the moves to [`mate`] (proved, by the solution
//! tree and off it by the prover) or to [`advantage`] (judged by tables or search). [`points`] holds the scale,
//! [`words`] what the member is told, [`readings`] the ways to take a doubtful reply, [`hints`] the steps
//! of help. Nothing a member is told shows more
//! of the solution than the member wrote, except the hints that were asked for.

mod advantage;
mod choice;
mod coach;
mod hints;
mod mate;
pub mod points;
mod readings;
mod told;

use serde::{Deserialize, Serialize};
use shakmaty::Move;

use super::reply::{self, Doubt, Reading, Tree, Trouble, TroubleKind, Way};
use super::{
    Budget, Language, Stipulation,
    check::Problem,
    fact::{Remark, Why},
    scene::Scene,
};

pub use advantage::EQUAL_DEFENCES;
pub use hints::{HINT_STEPS, hint};

/// What the judge says of a reply.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// The stipulation is met, as far as the scale asks.
    Solved,
    /// Right so far, more is wanted.
    OnTheWay,
    /// A wrong move.
    Wrong,
    /// A move the rules do not allow here.
    Illegal,
    /// Could be several moves; the message says which.
    Unclear,
    /// No move could be read.
    Unreadable,
}

/// Where a message came from: an explicit answer is always read as one, talk only when it plainly is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Setting {
    /// Answer button, command, direct message: whatever is written is meant as an answer.
    Answer,
    /// A message among others: chatter, questions and moves mentioned in passing are left alone.
    Talk,
}

/// How a reply is to be read and answered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Terms {
    /// What the group writes in.
    pub language: Language,
    /// Where the message came from.
    pub setting: Setting,
    /// Which of several defences that resist equally long is played against the member: 0 always the
    /// main one; any other number picks one, the same for the same number and the same line. Give
    /// each member a number of their own to let defences differ between members. Against mates the
    /// verdict and the points do not depend on it.
    ///
    /// Against `+` and `=` the defences within [`EQUAL_DEFENCES`] of the best count as equal.
    pub defence_choice: u64,
    /// Which of the coach's own lines of a win or a draw is played against the member, where there are
    /// several: 0 always the main one; numbers that follow one another take them in turn.
    pub line_choice: u64,
}

impl Terms {
    /// An explicit answer, met with the main defence.
    pub fn answer(language: Language) -> Self {
        Self {
            language,
            setting: Setting::Answer,
            defence_choice: 0,
            line_choice: 0,
        }
    }
}

/// The verdict on one reply, with all that is needed to tell the member.
#[derive(Clone, Debug)]
pub struct Judgement {
    /// The verdict.
    pub verdict: Verdict,
    /// Moves read, in SAN, the first one first; the main line of the reply when it has several.
    pub moves: Vec<String>,
    /// Points by the federation's scale, 0.0 to 5.0, before the group's rules on tries and hints.
    pub points: f64,
    /// The refuting line in SAN, the first move after the wrong one first.
    pub refutation: Vec<String>,
    /// The reason, without the line; empty when none can be shown.
    pub why: Why,
    /// The whole answer to the member, a sentence each.
    pub said: Vec<Remark>,
    /// A picture that shows the point.
    pub scene: Option<Scene>,
    /// The line played so far by both sides in SAN, the bot's best defence last when on the way.
    /// Give it back to [`judge`] with the member's next move.
    pub line: Vec<String>,
    /// What the reply may have meant, where it was not plain: each a line such as `1.Ne7+ Kh8 2.Qxh7+`,
    /// numbered from the start of the problem, which is read as exactly that when it is sent as an
    /// answer in any language. It holds no move that the member did not write. Empty when nothing is
    /// asked.
    pub readings: Vec<String>,
}

impl Judgement {
    /// A verdict that brings nothing but words, with the line as it stood before it.
    pub fn plain(verdict: Verdict, said: Vec<Remark>, line: Vec<String>) -> Self {
        Self {
            verdict,
            moves: Vec::new(),
            points: 0.0,
            refutation: Vec::new(),
            why: Why::default(),
            said,
            scene: None,
            line,
            readings: Vec::new(),
        }
    }
}

/// Judges one written reply to a problem.
///
/// `line` is what has been played with this member so far (SAN, ending with the bot's defence), empty
/// at the start. `None` only with [`Setting::Talk`], when the message is no answer.
///
/// ```
/// use sealed_move_chess::{Budget, Language, Stipulation, check, judge::*, parse_fen};
///
/// let position = parse_fen("r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1").unwrap().position;
/// let budget = Budget::unlimited();
/// let problem = check::problem(&position, Stipulation::Mate(2), &Default::default(), &budget).unwrap();
/// let terms = Terms::answer(Language::English);
/// let said = judge(&problem, &[], "rook takes d8", &terms, &budget).unwrap();
/// assert_eq!(said.verdict, Verdict::Solved);
/// assert_eq!(said.points, 5.0);
/// ```
pub fn judge(
    problem: &Problem,
    line: &[String],
    text: &str,
    terms: &Terms,
    budget: &Budget<'_>,
) -> Option<Judgement> {
    let &Terms {
        language, setting, ..
    } = terms;
    let played = super::line::moves(&problem.position, line);
    let case = Case {
        problem,
        played: &played,
        line,
        defence_choice: terms.defence_choice,
        line_choice: terms.line_choice,
        budget,
    };
    let reading = match reply::read(&problem.position, &played, text, language) {
        Ok(reading) => reading,
        Err(reply::TooLong) if setting == Setting::Talk => return None,
        Err(reply::TooLong) => {
            let most = u32::try_from(reply::MOST_CHARACTERS).unwrap_or(u32::MAX);
            let said = vec![Remark::TooLong { most }];
            return Some(case.plain(Verdict::Unreadable, said));
        }
    };
    if setting == Setting::Talk && !reading.answer {
        return None;
    }
    if let Some(doubt) = reading.doubt {
        return Some(case.not_claimed(doubt, &reading));
    }
    if reading.placed == 0 {
        return Some(case.unread(&reading));
    }
    let judgement = case.judged(&reading.tree, &reading.troubles);
    // What can be taken in several ways is judged only where all of them come to the same.
    let differs = reading
        .ways
        .iter()
        .any(|way| case.judged(&way.tree, &way.troubles).verdict != judgement.verdict);
    if differs {
        let mut ways: Vec<&Tree> = reading.ways.iter().map(|way| &way.tree).collect();
        if !reading.ways.iter().any(|way| way.parts) {
            ways.insert(0, &reading.tree);
        }
        return Some(case.several_ways(&ways));
    }
    // A wrong move is charged only where nothing written after it may be the answer instead.
    if judgement.verdict == Verdict::Wrong {
        let right = |way: &&Way| {
            matches!(
                case.judged(&way.tree, &way.troubles).verdict,
                Verdict::Solved | Verdict::OnTheWay
            )
        };
        if let Some(way) = reading.guards.iter().find(right) {
            return Some(case.several_ways(&[&reading.tree, &way.tree]));
        }
    }
    Some(judgement)
}

/// What a reply is judged against.
struct Case<'a> {
    problem: &'a Problem,
    played: &'a [Move],
    line: &'a [String],
    defence_choice: u64,
    line_choice: u64,
    budget: &'a Budget<'a>,
}

impl Case<'_> {
    /// The verdict on one way to take a reply.
    fn judged(&self, tree: &Tree, troubles: &[Trouble]) -> Judgement {
        let mut judgement = match self.problem.stipulation {
            Stipulation::Mate(moves) => mate::judge(self, moves, tree),
            Stipulation::Win | Stipulation::Draw => advantage::judge(self, tree),
        };
        if judgement.verdict == Verdict::Solved {
            judgement
                .said
                .extend(coach::on_solved(self, &judgement.line));
        }
        let start = tree.node(tree.cursor()).position.clone();
        judgement.moves = super::line::sans(&start, &tree.main_line());
        let settled = matches!(judgement.verdict, Verdict::Solved | Verdict::Wrong);
        if let Some(trouble) = troubles.first().filter(|_| !settled) {
            let read = judgement.moves;
            judgement = self.trouble(tree, trouble);
            judgement.moves = read;
        }
        judgement
    }

    /// Nothing is claimed: asks for what is.
    fn not_claimed(&self, doubt: Doubt, reading: &Reading) -> Judgement {
        let ways: Vec<&Tree> = match doubt {
            Doubt::Rejected => Vec::new(),
            _ if reading.ways.is_empty() => vec![&reading.tree],
            _ => reading.ways.iter().map(|way| &way.tree).collect(),
        };
        let readings = readings::of(self, &ways);
        let said = told::not_claimed(doubt, &readings);
        Judgement {
            readings,
            ..self.plain(Verdict::Unclear, said)
        }
    }

    /// The reply can be taken in ways that come to different verdicts.
    fn several_ways(&self, ways: &[&Tree]) -> Judgement {
        let readings = readings::of(self, ways);
        let said = vec![told::several_ways(&readings)];
        Judgement {
            readings,
            ..self.plain(Verdict::Unclear, said)
        }
    }

    fn plain(&self, verdict: Verdict, said: Vec<Remark>) -> Judgement {
        Judgement::plain(verdict, said, self.line.to_vec())
    }

    /// The judge could not find out; the coach decides.
    fn undecided(&self, moves: &[Move]) -> Judgement {
        let line = told::numbered(&self.problem.position, moves).into();
        self.plain(Verdict::Unclear, vec![Remark::NotSettled { line }])
    }

    /// Nothing could be read.
    fn unread(&self, reading: &Reading) -> Judgement {
        match reading.troubles.first() {
            Some(trouble) => self.trouble(&reading.tree, trouble),
            None => self.plain(Verdict::Unreadable, vec![Remark::NoMove]),
        }
    }

    fn trouble(&self, tree: &Tree, trouble: &Trouble) -> Judgement {
        let verdict = match trouble.kind {
            TroubleKind::Illegal => Verdict::Illegal,
            TroubleKind::Unclear => Verdict::Unclear,
            TroubleKind::Garbled => Verdict::Unreadable,
        };
        let followed = tree.moves_to(trouble.at);
        let followed = (followed.len() > self.played.len())
            .then(|| told::numbered(&self.problem.position, &followed));
        let mut judgement = self.plain(verdict, told::trouble(trouble, followed));
        if trouble.kind == TroubleKind::Illegal {
            judgement.why.why.extend(trouble.reason.clone());
        }
        judgement
    }
}

#[cfg(test)]
mod tests;
