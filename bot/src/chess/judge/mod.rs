//! The verdict on a reply.

use serde::{Deserialize, Serialize};

use super::{Budget, check::Problem, scene::Scene};

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

/// Piece letters and words a group writes in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
#[allow(missing_docs)]
pub enum Language {
    #[default]
    English,
    German,
    French,
    Spanish,
    Italian,
    Portuguese,
    Dutch,
    Russian,
    Polish,
    Czech,
    Hungarian,
}

/// Where a message came from: an explicit answer is always read as one, talk only when it plainly is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Setting {
    /// Answer button, command, direct message: whatever is written is meant as an answer.
    Answer,
    /// A message among others: chatter, questions and moves mentioned in passing are left alone.
    Talk,
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
    /// One sentence of reason, without the line; empty when none can be shown.
    pub why: String,
    /// The whole answer to the member, plain text.
    pub message: String,
    /// A picture that shows the point.
    pub scene: Option<Scene>,
    /// The line played so far by both sides in SAN, the bot's best defence last when on the way.
    /// Give it back to [`judge`] with the member's next move.
    pub line: Vec<String>,
}

/// Judges one written reply to a problem.
///
/// `line` is what has been played with this member so far (SAN, ending with the bot's defence), empty
/// at the start. `None` only with [`Setting::Talk`], when the message is no answer.
pub fn judge(
    problem: &Problem,
    line: &[String],
    text: &str,
    language: Language,
    setting: Setting,
    budget: &Budget<'_>,
) -> Option<Judgement> {
    let _ = (problem, line, text, language, setting, budget);
    todo!()
}

/// The hint steps, in order: the piece to look at, the idea, the first move.
pub const HINT_STEPS: u8 = 3;

/// The text of hint `step` (1 to [`HINT_STEPS`]) for the position reached by `line`.
pub fn hint(problem: &Problem, line: &[String], step: u8, language: Language) -> String {
    let _ = (problem, line, step, language);
    todo!()
}
