//! Answers to a question side by side, grouped by the first move found in each, and those among them that are to
//! be shown to the group.

use sealed_move_store::{Content, Leave};
use serde::Serialize;
use shakmaty::Chess;

use super::CoachDesk;
use crate::chess::{Language, reply::first_move};
use crate::desk::{
    Kind, Person, Place, PostId, ReplyId, ReplyRow, Settled,
    answers::counting,
    convert,
    drawing::board_of,
    error::{Done, bad_request},
    examples::{LONGEST_BESIDE, answer_of},
    handle::{coached, post_of},
    refusal::Refusal,
    replies::rows,
    text, tongue,
};

/// How long reading the answers to one question may take, in seconds.
const READING: f64 = 10.0;

/// The answers to a question, side by side.
#[derive(Clone, Serialize)]
pub struct AnswerGroups {
    /// Number of the post.
    pub number: i64,
    /// How many answered.
    pub answered: usize,
    /// How many of their answers wait for the coach: they are neither marked nor settled.
    pub waiting: usize,
    /// Groups by first move, the largest first; then the answers without one, then those that were answered anew.
    pub groups: Vec<AnswerGroup>,
}

/// Answers that begin alike.
#[derive(Clone, Serialize)]
pub struct AnswerGroup {
    /// What they have in common.
    pub begins: Begins,
    /// How many of them wait for the coach.
    pub waiting: usize,
    /// The answers, in the order they came.
    pub answers: Vec<ReplyRow>,
}

/// What answers have in common.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "begins", rename_all = "kebab-case")]
pub enum Begins {
    /// The first move surely found in them.
    Move {
        /// In SAN.
        san: String,
    },
    /// No move is surely found in them.
    NoMove,
    /// Their writers answered again: the last answer counts.
    Replaced,
}

impl CoachDesk<'_> {
    /// The answers to a question, grouped by the first legal move that is surely found in each. An answer without a
    /// mark is counted as waiting, never as wrong. Coaches only.
    ///
    /// # Errors
    /// When there is no such post, or it is no question.
    pub async fn answers_by_move(
        self,
        place: &Place,
        coach: &Person,
        post: PostId,
    ) -> Done<AnswerGroups> {
        let (place, coach) = (place.clone(), coach.clone());
        let (number, language, board, listed) = self
            .desk
            .read(move |db| {
                let group = coached(db, &place, &coach)?;
                let post = post_of(db, &group, post)?;
                let Content::Question { asked, .. } = &post.content else {
                    return bad_request(Refusal::OnlyQuestionsAreGrouped {
                        number: post.number,
                        kind: Kind::of(&post.content).name(),
                    });
                };
                let board = asked.fen.as_deref().and_then(board_of);
                let replies = db.replies_to(post.id)?;
                let counts = counting(&replies, &post);
                let reader = tongue::of_person(db, &group, &coach)?;
                let rows = rows(db, &reader, &post, replies)?;
                let listed: Vec<(ReplyRow, bool)> = rows.into_iter().zip(counts).collect();
                let language = convert::kept_settings(&group.settings)?.language;
                Ok((post.number, language, board, listed))
            })
            .await?;
        let groups = self
            .desk
            .inner
            .checks
            .run("reading answers", READING, move |_| {
                grouped(board.as_ref(), language, listed)
            })
            .await?;
        let counted = || {
            let replaced = |group: &&AnswerGroup| group.begins != Begins::Replaced;
            groups.iter().filter(replaced)
        };
        Ok(AnswerGroups {
            number,
            answered: counted().map(|group| group.answers.len()).sum(),
            waiting: counted().map(|group| group.waiting).sum(),
            groups,
        })
    }

    /// Asks an answer's writer for their leave to show it to the group with the reveal, with `words` beside it,
    /// which may be empty. Asked again, only the words change. Coaches only.
    ///
    /// # Errors
    /// When it is no answer to a question, its words are gone, its writer has said no, or the words are too long.
    pub async fn ask_to_show(
        self,
        place: &Place,
        coach: &Person,
        reply: ReplyId,
        words: &str,
    ) -> Done<()> {
        let (words, cut) = text::body(words, LONGEST_BESIDE);
        if cut {
            return bad_request(Refusal::WordsBesideTooLong {
                most: LONGEST_BESIDE.into(),
            });
        }
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let group = coached(tx, &place, &coach)?;
                let (reply, _) = answer_of(tx, &group, reply)?;
                if reply.text.is_empty() {
                    return bad_request(Refusal::WordsAreGone);
                }
                let before = tx.example(reply.id)?.and_then(|example| example.leave);
                if before == Some(Leave::Refused) {
                    return bad_request(Refusal::WriterSaidNo);
                }
                Ok(tx.ask_example(reply.id, &words, now)?)
            })
            .await?;
        self.desk.inner.errands.wake.notify_waiters();
        Ok(())
    }

    /// Takes back that an answer is to be shown: whatever its writer said, it is out of sight. One who said no is not
    /// asked again. Coaches only.
    ///
    /// # Errors
    /// When there is no such answer.
    pub async fn no_longer_show(self, place: &Place, coach: &Person, reply: ReplyId) -> Done<()> {
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let group = coached(tx, &place, &coach)?;
                let (reply, _) = answer_of(tx, &group, reply)?;
                match tx.example(reply.id)?.and_then(|example| example.leave) {
                    Some(Leave::Refused) => Ok(()),
                    _ => Ok(tx.forget_example(reply.id)?),
                }
            })
            .await?;
        self.desk.inner.errands.wake.notify_waiters();
        Ok(())
    }
}

fn grouped(
    board: Option<&Chess>,
    language: Language,
    listed: Vec<(ReplyRow, bool)>,
) -> Vec<AnswerGroup> {
    let mut groups: Vec<AnswerGroup> = Vec::new();
    for (row, counts) in listed {
        let begins = match (counts, board) {
            (false, _) => Begins::Replaced,
            (true, None) => Begins::NoMove,
            (true, Some(board)) => match first_move(board, &row.text, language) {
                Some(san) => Begins::Move { san },
                None => Begins::NoMove,
            },
        };
        let waits = usize::from(counts && row.settled == Settled::Unjudged);
        match groups.iter_mut().find(|group| group.begins == begins) {
            Some(group) => {
                group.waiting += waits;
                group.answers.push(row);
            }
            None => groups.push(AnswerGroup {
                begins,
                waiting: waits,
                answers: vec![row],
            }),
        }
    }
    let place = |group: &AnswerGroup| match group.begins {
        Begins::Move { .. } => 0,
        Begins::NoMove => 1,
        Begins::Replaced => 2,
    };
    groups.sort_by_key(|group| (place(group), std::cmp::Reverse(group.answers.len())));
    groups
}
