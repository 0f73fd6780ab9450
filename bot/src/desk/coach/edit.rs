//! A kept position written anew: its board, task, topic, words and lines. It is checked again at once.

use sealed_move_store::{Db, Given, Group, Position};

use super::{
    CoachDesk,
    same::{placement, posted_before},
    shelf,
};
use crate::chess::{
    Stipulation, StipulationError,
    comments::gives_away,
    fact::Theirs,
    lesson::DraftStep,
    read::{self, Entry, Item},
};
use crate::desk::{
    CheckedPosition, CoachWords, Person, Place, PositionId, TopicName,
    checking::{as_given, kept_check, report},
    convert,
    drawing::board_of,
    error::{DeskError, Done, bad_request},
    handle::{coached, position_of},
    problems::Posed,
    refusal::Refusal,
    text,
};

/// The most characters of a position that is written as text.
pub const LONGEST_EDITED: usize = 20_000;

/// A kept position opened for writing.
#[derive(Clone, Debug)]
pub struct PositionToEdit {
    /// What it is called.
    pub source: String,
    /// All of it.
    pub step: DraftStep,
    /// The same as a game of PGN, with words and lines, but without task and topic.
    pub text: String,
    /// Why it cannot be changed, where it cannot.
    pub barred: Option<Refusal>,
}

/// A position as a coach has written it anew.
#[derive(Clone, Debug)]
pub enum EditedPosition {
    /// In its parts; a task that is left empty is found by the check.
    Step(Box<DraftStep>),
    /// As a game of PGN or as a FEN, with the task and the topic beside it.
    Text {
        /// The game or the FEN.
        text: String,
        /// The task's sign; empty for the check to find one.
        task: String,
        /// The topic; empty for none.
        topic: String,
    },
}

impl CoachDesk<'_> {
    /// A kept position, opened for writing. Coaches only.
    ///
    /// # Errors
    /// When there is no such position.
    pub async fn position_to_edit(
        self,
        place: &Place,
        coach: &Person,
        position: PositionId,
    ) -> Done<PositionToEdit> {
        let (at, by) = (place.clone(), coach.clone());
        let (kept, barred) = self
            .desk
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                let kept = position_of(db, &group, position)?;
                let barred = barred(db, &kept)?;
                Ok((kept, barred))
            })
            .await?;
        let words = CoachWords::kept(&kept)?;
        let found = report(&kept.check.report)?;
        let posed = Posed::of(kept)?;
        let limit = self.desk.inner.options.check_seconds;
        self.desk
            .inner
            .checks
            .run("opening a position", limit, move |_| {
                let Position {
                    fen,
                    source,
                    topic,
                    stipulation,
                    ..
                } = posed.position.clone();
                let entry = as_given(&posed);
                let tells = gives_away(&posed.board, &found.keys, &found.line, &words.with_post);
                let step = DraftStep {
                    id: found.id,
                    fen,
                    task: stipulation,
                    topic: topic.unwrap_or_default(),
                    // Words that tell a move go out only where the coach has said so.
                    anyway: tells.is_some(),
                    words: words.with_post,
                    at_reveal: words.at_reveal,
                    ..DraftStep::of_entry(&entry)
                };
                let bare = DraftStep {
                    task: String::new(),
                    topic: String::new(),
                    ..step.clone()
                };
                PositionToEdit {
                    source,
                    text: bare.as_position(),
                    step,
                    barred,
                }
            })
            .await
    }

    /// Makes a kept position what is written of it now, checks it at once, and gives it with its report. It keeps
    /// its place in the week; a word to post it anyway holds only as long as board, task and verdict do. Coaches
    /// only.
    ///
    /// # Errors
    /// When it was posted or belongs to a lesson, what is written is not one position that can be set up, no task
    /// is given and none is found, or the group has that position already.
    pub async fn edit_position(
        self,
        place: &Place,
        coach: &Person,
        position: PositionId,
        edited: EditedPosition,
    ) -> Done<CheckedPosition> {
        let (at, by) = (place.clone(), coach.clone());
        let (group, kept) = self
            .desk
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                let kept = position_of(db, &group, position)?;
                may_change(db, &kept)?;
                Ok((group, kept))
            })
            .await?;
        let written = Written::of(edited)?;
        let name = text::body(&kept.source, 200).0;
        let limit = self.desk.inner.options.check_seconds;
        let entry = self
            .desk
            .inner
            .checks
            .run("reading a position", limit, move |_| written.read(&name))
            .await??;
        let id = report(&kept.check.report)?.id;
        let mut checked = self.check_entry(entry).await?;
        checked.report.id = id;
        let Some(task) = checked
            .report
            .stipulation
            .filter(|_| super::same::keepable(checked.report.verdict))
        else {
            return bad_request(Refusal::EditNoTask);
        };
        let new = New {
            fen: checked.report.fen.clone(),
            task: task.to_string(),
            topic: checked.topic,
            words: checked.words,
            given: checked.given,
            check: kept_check(&checked.report, self.desk.now())?,
        };
        let (at, by) = (place.clone(), coach.clone());
        let (now, posted) = self
            .desk
            .write(move |tx| {
                let group = coached(tx, &at, &by)?;
                let kept = position_of(tx, &group, position)?;
                may_change(tx, &kept)?;
                new.keep(tx, &group, &kept)?;
                let now = position_of(tx, &group, position)?;
                let posted = posted_before(tx, group.id, &now.fen)?;
                Ok((now, posted))
            })
            .await?;
        let settings = convert::kept_settings(&group.settings)?;
        let picture = match board_of(&now.fen) {
            Some(board) => Some(self.desk.draw_plain(board, &settings).await?),
            None => None,
        };
        Ok(CheckedPosition {
            posted,
            ..shelf::laid_out(now, picture)?
        })
    }
}

/// Why a position cannot be changed: members have seen it, or its lesson says what it is.
fn barred(db: &Db<'_>, kept: &Position) -> Done<Option<Refusal>> {
    if let Some(number) = db.own_post(kept.id)? {
        return Ok(Some(Refusal::PositionWentOut { number }));
    }
    let Some((lesson, step)) = db.lesson_of_position(kept.id)? else {
        return Ok(None);
    };
    let title = db.lesson(lesson)?.map_or_else(String::new, |of| of.title);
    Ok(Some(Refusal::PositionInLesson {
        title: title.into(),
        step,
    }))
}

fn may_change(db: &Db<'_>, kept: &Position) -> Done<()> {
    match barred(db, kept)? {
        Some(why) => bad_request(why),
        None => Ok(()),
    }
}

/// What a coach has written, as text.
struct Written {
    text: String,
    /// Task and topic that stand before the text's own.
    beside: Option<(Option<Stipulation>, Option<TopicName>)>,
}

impl Written {
    fn of(edited: EditedPosition) -> Done<Self> {
        let written = match edited {
            EditedPosition::Step(step) => Self {
                text: step.as_position(),
                beside: None,
            },
            EditedPosition::Text { text, task, topic } => {
                let task = match task.trim() {
                    "" => None,
                    task => Some(task.parse().map_err(|why: StipulationError| {
                        DeskError::BadRequest(Refusal::EditBadTask { why })
                    })?),
                };
                let topic = TopicName::filled_in(Some(&topic))?;
                Self {
                    text,
                    beside: Some((task, topic)),
                }
            }
        };
        match written.text.chars().count() > LONGEST_EDITED {
            true => bad_request(Refusal::DraftTooLarge {
                most: LONGEST_EDITED.into(),
            }),
            false => Ok(written),
        }
    }

    /// The one position that it is.
    fn read(self, name: &str) -> Done<Entry> {
        let mut items = read::read_items(name, self.text.as_bytes());
        let entry = match (items.pop(), items.is_empty()) {
            (Some(Ok(Item::Problem(entry))), true) => *entry,
            (Some(Err(error)), true) => {
                return bad_request(Refusal::EditUnreadable {
                    what: error.problem,
                });
            }
            _ => return bad_request(Refusal::EditNotOne),
        };
        Ok(match self.beside {
            None => entry,
            Some((stipulation, topic)) => Entry {
                stipulation,
                topic: topic.map(String::from),
                ..entry
            },
        })
    }
}

/// A position as it is written down.
struct New {
    fen: String,
    task: String,
    topic: Option<TopicName>,
    words: CoachWords,
    given: Given,
    check: sealed_move_store::Check,
}

impl New {
    fn keep(&self, tx: &sealed_move_store::Tx<'_>, group: &Group, kept: &Position) -> Done<()> {
        let alike = tx.positions_of_placement(group.id, &placement(&self.fen))?;
        let twin = alike
            .into_iter()
            .find(|other| other.id != kept.id && other.stipulation == self.task);
        if let Some(twin) = twin {
            return bad_request(Refusal::PositionThere {
                position: Theirs::from(twin.source),
            });
        }
        tx.change_position(kept.id, &self.fen, &self.task, &self.given)?;
        tx.replace_check(kept.id, &self.check)?;
        let same = (&kept.fen, &kept.stipulation, kept.check.soundness)
            == (&self.fen, &self.task, self.check.soundness);
        if same && kept.anyway {
            tx.set_position_anyway(kept.id, true)?;
        }
        let topic = match &self.topic {
            Some(topic) => Some(topic.in_group(tx, group.id)?),
            None => None,
        };
        tx.set_position_topic(kept.id, topic)?;
        Ok(tx.set_position_words(kept.id, &self.words.to_keep()?)?)
    }
}
