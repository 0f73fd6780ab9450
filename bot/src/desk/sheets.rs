//! What the desk hands to a chat and takes from it: plain values, no store rows, no chat's types.
//! A chat lays a sheet out in its own manners; the words are the desk's.

use chrono::{DateTime, Utc};
use serde::{Deserialize, Deserializer, Serialize, de::Error as _};

use super::{CardLink, Content, Kind, LanguageTag, MemberId, PostId, ReplyId, Said};

pub use crate::chess::check::{Report, Soundness, TopicCheck, TopicOn, TopicState, topic_check};
pub use crate::chess::comments::{Note, lines as note_lines};
pub use crate::chess::fact::Side;
pub use crate::chess::{Language, judge::Verdict};
pub use crate::diagram::{Picture, PictureKind, Style};
pub use sealed_move_store::{
    ChatKey, Defences, Delivery, Mode, Names, NoPoints, NoTimeOfDay, NoTimesOfDay, NoWeekdays,
    Points, Scale, TimeOfDay, TimesOfDay, Weekdays,
};

/// What a chat declares of itself; it stands with the groups that are founded in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Manners {
    /// Who says what a member is called.
    pub names: Names,
    /// How a verdict reaches its member.
    pub delivery: Delivery,
}

/// A group's place: a chat and a channel in it.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Place {
    /// The chat.
    pub chat: ChatKey,
    /// The channel's id, or the room's name.
    pub channel: String,
}

/// Who speaks, as the chat knows them.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Person {
    /// The chat's id of the person.
    pub user: String,
    /// The name shown to others; cut to 80 characters and stripped of control characters by the desk.
    pub name: String,
    /// The language that their client asks for, where it does and people can be spoken to in it.
    pub language: Option<LanguageTag>,
}

/// A group's settings.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Settings {
    /// The group's name.
    pub name: String,
    /// IANA time zone.
    #[serde(deserialize_with = "zone")]
    pub zone: chrono_tz::Tz,
    /// When posts go out, local.
    #[serde(rename = "post_time")]
    pub post_times: TimesOfDay,
    /// Days on which they do.
    pub days: Weekdays,
    /// Minutes from the post to its reveal.
    pub open_minutes: u32,
    /// Sealed or open.
    pub mode: Mode,
    /// Piece letters read first.
    pub language: Language,
    /// Look of the diagrams.
    pub style: Style,
    /// The scale of points.
    pub points: Scale,
    /// Points off for each wrong first move, by the scale `club`.
    pub wrong_cost: Points,
    /// Points off for each hint step.
    pub hint_cost: Points,
    /// Whether members meet the same defences.
    pub defences: Defences,
}

/// A time zone by its IANA name, as somebody wrote it into a file.
fn zone<'de, D: Deserializer<'de>>(written: D) -> Result<chrono_tz::Tz, D::Error> {
    let name = String::deserialize(written)?;
    name.parse()
        .map_err(|_| D::Error::custom(NoZone(name.clone())))
}

/// A name that is none of the IANA database's.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{0:?} is no time zone of the IANA list; write one such as Europe/Lisbon")]
pub struct NoZone(pub String);

impl Default for Settings {
    fn default() -> Self {
        Self {
            name: "Study group".into(),
            zone: chrono_tz::UTC,
            post_times: TimeOfDay::of(18, 0).into(),
            days: Weekdays::every_day(),
            open_minutes: 23 * 60,
            mode: Mode::Sealed,
            language: Language::English,
            style: Style::Print,
            points: Scale::Club,
            wrong_cost: Points::of(1.0),
            hint_cost: Points::of(1.0),
            defences: Defences::Same,
        }
    }
}

/// A post before the group, as everyone may see it. Gives nothing away.
#[derive(Clone)]
pub struct PostSheet {
    /// Id of the post; 0 in a preview.
    pub post: PostId,
    /// Number within the group.
    pub number: i64,
    /// Marks the message so that it is sent once; at most 25 characters.
    pub nonce: String,
    /// Topic, where the coach set one.
    pub topic: Option<String>,
    /// Where it stands in a lesson, when it is part of one.
    pub lesson: Option<InLesson>,
    /// What it holds.
    pub content: Content,
    /// When replies close; where it takes none, when it went out.
    pub closes_at: DateTime<Utc>,
    /// The chat's id of the message, once sent.
    pub message: Option<String>,
    /// The chat's id of the thread, once made.
    pub thread: Option<String>,
}

/// Where a post stands in a lesson. Gives nothing away: words that would tell are held before.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct InLesson {
    /// The lesson; `None` of a draft, which is none yet.
    pub lesson: Option<super::LessonId>,
    /// Its title.
    pub title: String,
    /// The step, from 1.
    pub step: i64,
    /// Its place in the step, from 1.
    pub part: i64,
    /// How many steps there are.
    pub steps: i64,
    /// The moves that lead up to it, or the example that is shown, with the words beside them.
    pub lead: Vec<Note>,
}

/// What closes a post.
#[derive(Clone)]
pub struct RevealSheet {
    /// The post it closes.
    pub post: PostSheet,
    /// What it shows.
    pub shows: Shown,
    /// The cards it leads to: of the patterns in the final position, and of the topic.
    pub cards: Vec<CardLink>,
    /// How many took part.
    pub took_part: usize,
    /// Leaderboard so far: of the post's topic, or of all topics when it has none.
    pub leaderboard: Leaderboard,
}

/// What a reveal shows.
#[derive(Clone)]
pub enum Shown {
    /// Of a problem.
    Solution(Box<Solution>),
    /// Of a question. Of what was answered only that is shown which its writer allows.
    Answered {
        /// The coach's words on it; may be empty.
        at_reveal: String,
        /// Who answered, by name.
        answered: Vec<String>,
        /// How many answers still wait for the coach's mark.
        waiting: usize,
        /// Answers that are shown as examples, with their writers' leave.
        examples: Vec<super::ShownAnswer>,
    },
}

/// A problem's solution.
#[derive(Clone)]
pub struct Solution {
    /// Key and variations, a numbered line each, main line first; none where none was proved.
    pub solution: Vec<String>,
    /// Names of the mating patterns in the final position.
    pub patterns: Vec<String>,
    /// The coach's words on it.
    pub comment: String,
    /// The coach's own line with its variations and the words beside their moves, main line first.
    pub notes: Vec<Note>,
    /// The final position with guards and flights marked.
    pub picture: Picture,
    /// The commonest wrong first move, if several members chose it: SAN, how many they were, and its
    /// refutation with the reason.
    pub common_wrong: Option<CommonWrong>,
    /// Who solved it, by name, in order of points then time.
    pub solved: Vec<String>,
}

/// A wrong first move that came up.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CommonWrong {
    /// The move in SAN.
    pub san: String,
    /// How many members chose it.
    pub count: usize,
    /// Its refutation as a numbered line.
    pub refutation: String,
    /// The reason; may be empty.
    pub why: Said,
}

/// What came of a reply.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// A verdict on a reply to a problem.
    Judged(Verdict),
    /// An answer to a question is kept; the coach reads it.
    Kept,
    /// The coach has marked an answer to a question.
    Marked,
}

impl Outcome {
    /// The verdict, of a reply to a problem.
    pub fn verdict(self) -> Option<Verdict> {
        match self {
            Self::Judged(verdict) => Some(verdict),
            Self::Kept | Self::Marked => None,
        }
    }
}

impl Serialize for Outcome {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Judged(verdict) => verdict.serialize(serializer),
            Self::Kept => serializer.serialize_str("kept"),
            Self::Marked => serializer.serialize_str("marked"),
        }
    }
}

/// What is to be said to one member of a reply; for that member's eyes (or behind spoiler marks).
#[derive(Clone)]
pub struct VerdictSheet {
    /// Id of the reply as stored.
    pub reply: ReplyId,
    /// The post it answers.
    pub post: PostId,
    /// What came of it.
    pub outcome: Outcome,
    /// The whole answer.
    pub said: Said,
    /// A picture of the refutation, or of the board after the bot's defence.
    pub picture: Option<Picture>,
    /// True while the member has a line to go on with ("your move").
    pub your_move: bool,
    /// True when nothing is left to do: solved, given up or closed.
    pub over: bool,
    /// What the next hint takes, for a button; may be empty.
    pub hint_label: Said,
    /// Points for the post as they stand.
    pub points: Points,
    /// What the reply may have meant, where it was not plain: each, sent as an answer, is read as
    /// exactly what it says. For the member's eyes only; empty when nothing is asked.
    pub readings: Vec<String>,
}

/// A post that is open, as somebody is asked about it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct OpenPost {
    /// Id of the post.
    pub post: PostId,
    /// Number within the group.
    pub number: i64,
    /// Topic, where the coach set one.
    pub topic: Option<String>,
    /// What it holds. Of one that waited for its writer's word since before there were others, a problem.
    #[serde(default = "a_problem")]
    pub holds: Kind,
}

fn a_problem() -> Kind {
    Kind::Problem {
        stipulation: String::new(),
    }
}

/// Why a message was not taken yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Why {
    /// Its moves fit another open post than the one it was sent to.
    Elsewhere,
    /// It answers one of several open posts.
    Several,
    /// It may tell others a move of a sealed post, and is not plainly an answer.
    MayTell,
}

/// A span of time and topic that a report covers.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Period {
    /// From this moment.
    pub from: Option<DateTime<Utc>>,
    /// Up to but without this moment.
    pub to: Option<DateTime<Utc>>,
    /// This topic only.
    pub topic: Option<String>,
}

/// Points by member.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Leaderboard {
    /// Topic, when it covers one only.
    pub topic: Option<String>,
    /// Best first; ties share a rank and keep the order of names.
    pub rows: Vec<LeaderboardRow>,
}

/// One member's line of the leaderboard.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LeaderboardRow {
    /// Rank; equal points share one, and the next is skipped.
    pub rank: usize,
    /// Name.
    pub name: String,
    /// Points.
    pub points: f64,
    /// Problems solved.
    pub solved: usize,
    /// Problems tried.
    pub tried: usize,
    /// Questions answered.
    #[serde(default)]
    pub answered: usize,
}

/// A reply with its verdict, for the coach.
#[derive(Clone, Serialize)]
#[allow(missing_docs)]
pub struct ReplyRow {
    pub reply: ReplyId,
    /// What it answers.
    pub to: RepliesTo,
    pub name: String,
    pub rank: super::Rank,
    /// How it stands with the coach.
    pub settled: Settled,
    /// A coach's private answer to it; empty where a coach noted that it needs none.
    pub coach_words: Option<String>,
    /// Since when its words are out of the group's sight, where answers are open.
    pub gone: Option<super::GoneRow>,
    /// Whether a coach would show it to the group, and its writer's leave.
    pub example: Option<super::ExampleRow>,
    pub text: String,
    pub received_at: DateTime<Utc>,
    pub verdict: Option<Outcome>,
    pub points: Points,
    /// What the member was told.
    #[serde(skip)]
    pub said: Said,
    pub by_coach: bool,
}

/// What a reply answers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
#[allow(missing_docs)]
pub enum RepliesTo {
    Problem,
    Question,
}

/// How a reply stands with the coach.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Settled {
    /// A verdict decided it, the bot's or the coach's: it can be overruled.
    Judged,
    /// A coach answered it in private.
    Answered,
    /// A coach noted that it needs no answer.
    NeedsNone,
    /// Nothing decided it: it can be judged by hand.
    Unjudged,
}

/// A post in a list.
#[derive(Clone, Debug, Serialize)]
#[allow(missing_docs)]
pub struct PostRow {
    pub post: PostId,
    pub number: i64,
    pub topic: Option<String>,
    #[serde(flatten)]
    pub kind: Kind,
    pub opened_at: DateTime<Utc>,
    pub closes_at: DateTime<Utc>,
    pub open: bool,
}

/// A line of talk in the room.
#[derive(Clone, Debug, Serialize)]
#[allow(missing_docs)]
pub struct TalkRow {
    pub id: i64,
    /// The member's id in the group.
    pub by: MemberId,
    pub name: String,
    pub rank: super::Rank,
    pub text: String,
    pub said_at: DateTime<Utc>,
}
