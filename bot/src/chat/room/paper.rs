//! The JSON shapes that the pages read and write. The words in them are the desk's.

use base64::{Engine, engine::general_purpose::STANDARD};
use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::cards::Led;
use crate::desk::{
    self, AnswerGroup, AnswerGroups, Begins, CheckedPosition, CoachWords, Content, HintSheet,
    HomeworkRow, InLesson, Leaderboard, Note as CoachNote, Outcome, OwnAnswer, OwnExample,
    OwnHomework, OwnPost, OwnState, Picture, PictureKind, Points, PositionId, PostId, PostSheet,
    PostedBefore, Rank, RepliesTo, ReplyId, ReplyRow, RevealSheet, SameAgain, ShownAnswer,
    VerdictSheet,
};
use crate::{
    chat::{
        common::{
            report::{said_of, topic_said},
            same::same_again,
            text::{NoSolutionProved, Tasked},
        },
        pictures,
        said::{in_words, words_of},
    },
    words::Words,
};

/// A picture with the words that replace it.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Shown {
    src: String,
    alt: String,
}

impl Shown {
    /// A picture at an address of its own.
    pub(super) fn at(src: String, picture: &Picture, words: &Words) -> Self {
        Self {
            src,
            alt: pictures::alt(picture, words),
        }
    }

    /// A picture inside the answer, for one person's eyes.
    pub(super) fn inside(picture: &Picture, words: &Words) -> Self {
        Self {
            src: format!(
                "data:{};base64,{}",
                media_type(picture.kind),
                STANDARD.encode(&picture.bytes)
            ),
            alt: pictures::alt(picture, words),
        }
    }
}

/// The media type of a picture.
pub(super) fn media_type(kind: PictureKind) -> &'static str {
    match kind {
        PictureKind::Png => "image/png",
        PictureKind::Gif => "image/gif",
    }
}

/// A post.
#[derive(Debug, Serialize)]
pub(super) struct Post {
    post: PostId,
    number: i64,
    topic: Option<String>,
    lesson: Option<InLesson>,
    closes_at: DateTime<Utc>,
    #[serde(flatten)]
    holds: Holds,
}

/// What a post holds.
#[derive(Debug, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
enum Holds {
    Problem {
        stipulation: String,
        task: String,
        words: String,
        picture: Shown,
    },
    Question {
        words: String,
        picture: Option<Shown>,
    },
    Words {
        words: String,
        picture: Option<Shown>,
    },
}

impl Post {
    /// A post of the room; its picture has an address of its own.
    pub(super) fn of(sheet: &PostSheet, words: &Words) -> Self {
        let src = format!("/api/posts/{}/position-{}.png", sheet.post, sheet.number);
        Self::with(sheet, words, |picture| {
            Shown::at(src.clone(), picture, words)
        })
    }

    /// A post that is not in the room yet.
    pub(super) fn preview(sheet: &PostSheet, words: &Words) -> Self {
        Self::with(sheet, words, |picture| Shown::inside(picture, words))
    }

    fn with(sheet: &PostSheet, words: &Words, show: impl Fn(&Picture) -> Shown) -> Self {
        let holds = match &sheet.content {
            Content::Problem {
                stipulation,
                side,
                words: coach,
                picture,
            } => Holds::Problem {
                stipulation: stipulation.to_string(),
                task: words.say(&Tasked::of(*side, *stipulation)),
                words: coach.clone(),
                picture: show(picture),
            },
            Content::Question(written) => Holds::Question {
                words: written.words.clone(),
                picture: written.picture.as_ref().map(show),
            },
            Content::Words(written) => Holds::Words {
                words: written.words.clone(),
                picture: written.picture.as_ref().map(show),
            },
        };
        Self {
            post: sheet.post,
            number: sheet.number,
            topic: sheet.topic.clone(),
            lesson: sheet.lesson.clone(),
            closes_at: sheet.closes_at,
            holds,
        }
    }
}

/// A reveal.
#[derive(Debug, Serialize)]
pub(super) struct Reveal {
    post: Post,
    #[serde(flatten)]
    shows: Revealed,
    /// Where to read more of it.
    cards: Vec<Led>,
    took_part: usize,
    leaderboard: Leaderboard,
}

/// What a reveal shows.
#[derive(Debug, Serialize)]
#[serde(tag = "shows", rename_all = "kebab-case")]
enum Revealed {
    Solution {
        solution: Vec<String>,
        patterns: Vec<String>,
        comment: String,
        notes: Vec<CoachNote>,
        picture: Shown,
        common_wrong: Option<Common>,
        solved: Vec<String>,
    },
    Answered {
        at_reveal: String,
        answered: Vec<String>,
        waiting: usize,
        examples: Vec<ShownAnswer>,
    },
}

impl Reveal {
    /// A reveal in its reader's words; its picture has an address of its own.
    pub(super) fn of(sheet: RevealSheet, words: &Words) -> Self {
        let src = format!(
            "/api/posts/{}/solution-{}.png",
            sheet.post.post, sheet.post.number
        );
        let post = Post::of(&sheet.post, words);
        Self::with(sheet, post, words, |picture| {
            Shown::at(src.clone(), picture, words)
        })
    }

    /// What will close a post that is not in the room yet.
    pub(super) fn preview(sheet: RevealSheet, words: &Words) -> Self {
        let post = Post::preview(&sheet.post, words);
        Self::with(sheet, post, words, |picture| Shown::inside(picture, words))
    }

    fn with(
        sheet: RevealSheet,
        post: Post,
        words: &Words,
        show: impl Fn(&Picture) -> Shown,
    ) -> Self {
        Self {
            post,
            cards: sheet
                .cards
                .iter()
                .map(|link| Led::to(link, words))
                .collect(),
            shows: match sheet.shows {
                desk::Shown::Solution(solution) => Revealed::Solution {
                    picture: show(&solution.picture),
                    solution: match solution.solution.is_empty() {
                        true => vec![words.say(&NoSolutionProved {})],
                        false => solution.solution,
                    },
                    patterns: solution.patterns,
                    comment: solution.comment,
                    notes: solution.notes,
                    common_wrong: solution.common_wrong.map(|wrong| Common {
                        why: words.tell(&wrong.why.facts),
                        san: wrong.san,
                        count: wrong.count,
                        refutation: wrong.refutation,
                    }),
                    solved: solution.solved,
                },
                desk::Shown::Answered {
                    at_reveal,
                    answered,
                    waiting,
                    examples,
                } => Revealed::Answered {
                    at_reveal,
                    answered,
                    waiting,
                    examples,
                },
            },
            took_part: sheet.took_part,
            leaderboard: sheet.leaderboard,
        }
    }
}

/// The commonest wrong move.
#[derive(Debug, Serialize)]
struct Common {
    san: String,
    count: usize,
    refutation: String,
    why: String,
}

/// A verdict for one member.
#[derive(Debug, Serialize)]
pub(super) struct Judged {
    reply: ReplyId,
    post: PostId,
    /// What the member wrote.
    text: String,
    /// Absent while it waits for the coach.
    verdict: Option<Outcome>,
    message: String,
    picture: Option<Shown>,
    your_move: bool,
    points: Points,
    /// What it may have meant, to choose from.
    readings: Vec<String>,
}

impl Judged {
    pub(super) fn of(sheet: &VerdictSheet, text: &str) -> Self {
        Self {
            reply: sheet.reply,
            post: sheet.post,
            text: text.to_owned(),
            verdict: Some(sheet.outcome),
            message: in_words(&sheet.said),
            picture: sheet
                .picture
                .as_ref()
                .map(|picture| Shown::inside(picture, words_of(&sheet.said.language))),
            your_move: sheet.your_move,
            points: sheet.points,
            readings: sheet.readings.clone(),
        }
    }
}

/// A member's own reply to a post, as a page that is loaded again shows it.
#[derive(Debug, Serialize)]
pub(super) struct Mine {
    #[serde(flatten)]
    judged: Judged,
    received_at: DateTime<Utc>,
}

impl Mine {
    /// A reply as it is kept; the sheet adds the picture, where there is one.
    pub(super) fn of(post: PostId, row: ReplyRow, sheet: Option<VerdictSheet>) -> Self {
        let received_at = row.received_at;
        let judged = match sheet {
            Some(sheet) => Judged::of(&sheet, &row.text),
            None => Judged {
                reply: row.reply,
                post,
                text: row.text,
                verdict: row.verdict.or(match row.to {
                    RepliesTo::Problem => None,
                    RepliesTo::Question => Some(Outcome::Kept),
                }),
                message: in_words(&row.said),
                picture: None,
                your_move: false,
                points: row.points,
                readings: Vec::new(),
            },
        };
        Self {
            judged,
            received_at,
        }
    }
}

/// A reply, for the coach.
#[derive(Serialize)]
pub(super) struct Replied {
    #[serde(flatten)]
    row: ReplyRow,
    /// What its member was told.
    message: String,
}

impl Replied {
    /// A reply in the words of the coach who reads it.
    pub(super) fn of(row: ReplyRow, words: &Words) -> Self {
        Self {
            message: words.tell(&row.said.facts),
            row,
        }
    }
}

/// A reply that waits for the coach.
#[derive(Serialize)]
pub(super) struct Homework {
    post: PostId,
    number: i64,
    asked: String,
    reply: Replied,
}

impl Homework {
    pub(super) fn of(row: HomeworkRow, words: &Words) -> Self {
        Self {
            post: row.post,
            number: row.number,
            asked: row.asked,
            reply: Replied::of(row.reply, words),
        }
    }
}

/// The answers to a question, grouped by the first move found in each.
#[derive(Serialize)]
pub(super) struct Grouped {
    answered: usize,
    waiting: usize,
    groups: Vec<Group>,
}

/// Answers that begin alike.
#[derive(Serialize)]
struct Group {
    #[serde(flatten)]
    begins: Begins,
    waiting: usize,
    answers: Vec<Replied>,
}

impl Grouped {
    /// Answers in the words of the coach who reads them.
    pub(super) fn of(asked: AnswerGroups, words: &Words) -> Self {
        let group = |group: AnswerGroup| Group {
            begins: group.begins,
            waiting: group.waiting,
            answers: group
                .answers
                .into_iter()
                .map(|row| Replied::of(row, words))
                .collect(),
        };
        Self {
            answered: asked.answered,
            waiting: asked.waiting,
            groups: asked.groups.into_iter().map(group).collect(),
        }
    }
}

/// An answer that the whole group may see, in a group that keeps them open.
#[derive(Debug, Serialize)]
pub(super) struct Answered {
    reply: ReplyId,
    post: PostId,
    name: String,
    rank: Rank,
    text: String,
    verdict: Option<Outcome>,
    message: String,
    at: DateTime<Utc>,
}

impl Answered {
    /// An answer in its reader's words.
    pub(super) fn of(post: PostId, row: ReplyRow, words: &Words) -> Self {
        Self {
            reply: row.reply,
            post,
            name: row.name,
            rank: row.rank,
            text: row.text,
            verdict: row.verdict,
            message: words.tell(&row.said.facts),
            at: row.received_at,
        }
    }
}

/// How a member stands at a post.
#[derive(Debug, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub(super) enum Own {
    Problem(Box<OwnWork>),
    Question(Box<OwnAnswered>),
    Words,
}

/// A member's own answer to a question.
#[derive(Debug, Serialize)]
pub(super) struct OwnAnswered {
    reply: Option<ReplyId>,
    answer: String,
    /// How it stands with the coach.
    message: String,
    /// The coach's private words.
    words: String,
    waiting: bool,
    earlier: Vec<String>,
    /// Which of their answers the coach would show.
    examples: Vec<OwnExample>,
    /// Others' answers that are shown after the reveal.
    others: Vec<ShownAnswer>,
    live: bool,
}

impl OwnAnswered {
    fn of(own: OwnAnswer) -> Self {
        Self {
            reply: own.reply,
            message: in_words(&own.said),
            answer: own.answer,
            words: own.words,
            waiting: own.waiting,
            earlier: own.earlier,
            examples: own.examples,
            others: own.others,
            live: own.live,
        }
    }
}

/// A question that the reader answered.
#[derive(Debug, Serialize)]
pub(super) struct OwnQuestion {
    post: PostId,
    number: i64,
    asked: String,
    own: OwnAnswered,
}

impl OwnQuestion {
    pub(super) fn of(one: OwnHomework) -> Self {
        Self {
            post: one.post,
            number: one.number,
            asked: one.asked,
            own: OwnAnswered::of(one.own),
        }
    }
}

impl Own {
    pub(super) fn of(own: desk::Own, words: &Words) -> Self {
        match own {
            desk::Own::Problem(own) => Self::Problem(Box::new(OwnWork::of(*own, words))),
            desk::Own::Question(own) => Self::Question(Box::new(OwnAnswered::of(*own))),
            desk::Own::Words => Self::Words,
        }
    }
}

/// A member's own sheet of a problem.
#[derive(Debug, Serialize)]
pub(super) struct OwnWork {
    state: Option<OwnState>,
    points: Points,
    ended: String,
    hint_price: String,
    more_hints: bool,
    live: bool,
    board: Option<Shown>,
}

impl OwnWork {
    fn of(own: OwnPost, words: &Words) -> Self {
        Self {
            state: own.state,
            points: own.points,
            ended: in_words(&own.ended),
            hint_price: in_words(&own.hint_price),
            more_hints: own.more_hints,
            live: own.live,
            board: own.board.as_ref().map(|board| Shown::inside(board, words)),
        }
    }
}

/// A hint step for one member.
#[derive(Debug, Serialize)]
pub(super) struct Hint {
    post: PostId,
    number: u16,
    step: u8,
    text: String,
    more: bool,
    /// What the next step takes.
    price: String,
}

impl Hint {
    pub(super) fn of(post: PostId, sheet: HintSheet) -> Self {
        Self {
            post,
            number: sheet.number,
            step: sheet.step,
            text: in_words(&sheet.said),
            more: sheet.more,
            price: in_words(&sheet.price),
        }
    }
}

/// A checked position in the coach's hands.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Checked {
    position: Option<PositionId>,
    topic: Option<String>,
    further_topics: Vec<String>,
    /// How it stands to its topic, with what that says in the reader's words.
    topic_check: Option<Value>,
    words: CoachWords,
    /// The same position as it was kept, with what a coach reads of it.
    same: Option<Same>,
    posted: Option<PostedBefore>,
    /// With what it says in the reader's words.
    report: Value,
    picture: Option<Shown>,
}

/// A position that was kept before and is given otherwise.
#[derive(Clone, Debug, Serialize)]
struct Same {
    #[serde(flatten)]
    again: SameAgain,
    text: String,
    /// Whether another choice can still be made.
    choice: bool,
}

impl Checked {
    pub(super) fn of(checked: &CheckedPosition, words: &Words) -> Self {
        Self {
            position: checked.position,
            topic: checked.topic.clone(),
            further_topics: checked.further_topics.clone(),
            topic_check: checked.topic_check().map(|check| topic_said(&check, words)),
            words: checked.words.clone(),
            same: checked.same.as_ref().map(|again| Same {
                text: same_again(words, again, str::to_owned),
                choice: checked.fresh.is_some(),
                again: again.clone(),
            }),
            posted: checked.posted,
            report: said_of(&checked.report, words),
            picture: match (checked.position, &checked.picture) {
                (Some(id), picture) => Some(Shown {
                    src: format!("/api/coach/positions/{id}/diagram.png"),
                    // Where there are none yet, the page puts the FEN into its words.
                    alt: picture
                        .as_ref()
                        .map_or_else(String::new, |picture| pictures::alt(picture, words)),
                }),
                (None, Some(picture)) => Some(Shown::inside(picture, words)),
                (None, None) => None,
            },
        }
    }
}

/// A word to the coach.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Note {
    pub(super) text: String,
    pub(super) at: DateTime<Utc>,
}

/// What a request brings when it brings text. `source` is made by the page, once for each thing sent,
/// so that what is sent again after a broken connection counts once.
#[derive(Debug, Deserialize)]
pub(super) struct Said {
    pub(super) text: String,
    #[serde(default)]
    pub(super) source: String,
    /// The open post that it was written to, where there is one.
    #[serde(default)]
    pub(super) post: Option<PostId>,
    /// Whom it is for, where its writer was asked.
    #[serde(default)]
    pub(super) to: Option<To>,
    /// Whether its writer was asked what it is to be, and said that it is their answer.
    #[serde(default)]
    pub(super) sure: bool,
}

/// Whom a message is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub(super) enum To {
    /// Everyone in the group.
    All,
}
