//! Lessons as they are being written: kept as they are typed, shown as members will see them, and taken in.

use std::sync::Arc;

use chrono::{DateTime, Utc};
use sealed_move_store::{self as store, Db, Group, Position, Written};
use serde::Serialize;
use serde_json::Value;

use super::{
    CoachDesk, NewPostContent,
    import::Checked,
    lesson_import::{LessonFile, MadeOf, made, went_out},
    lessons::{LessonSheet, lesson_of},
};
use crate::chess::{
    lesson::{self, Draft, Part},
    read::{Entry, Fault, ReadError},
};
use crate::desk::{
    CheckedPosition, DraftId, InLesson, Leaderboard, LessonId, Person, Place, PositionId,
    PostSheet, RevealSheet, SameChoice, TopicName,
    checking::kept_check,
    content::Held,
    error::{DeskError, Done, bad_request, not_found},
    handle::coached,
    problems::Posed,
    refusal::Refusal,
    reveal::TookPart,
};

/// The most that a draft may weigh, in bytes of its JSON.
const LARGEST: usize = 1 << 20;

/// A draft in the list of them.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct DraftRow {
    /// Its id.
    pub draft: DraftId,
    /// Its title; may be empty.
    pub title: String,
    /// How many steps it has.
    pub steps: usize,
    /// The lesson that it was opened from or became, while there is that.
    pub lesson: Option<LessonId>,
    /// When it was written to last.
    pub changed_at: DateTime<Utc>,
}

/// A draft that lies open.
#[derive(Clone, Debug)]
pub struct DraftSheet {
    /// Its id.
    pub draft: DraftId,
    /// Which one of its states this is.
    pub revision: i64,
    /// The lesson whose place it takes when it is taken in.
    pub lesson: Option<LessonId>,
    /// What is written.
    pub content: Draft,
    /// What is wrong with it so far.
    pub faults: Vec<DraftFault>,
    /// When it was begun.
    pub begun_at: DateTime<Utc>,
}

/// What is wrong with a step of a draft.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DraftFault {
    /// The step, from 1.
    pub step: usize,
    /// Why it cannot be read.
    pub what: Fault,
}

/// What became of writing to a draft.
#[derive(Clone, Debug)]
pub enum DraftSaved {
    /// It is kept.
    Kept {
        /// Which state it is now.
        revision: i64,
        /// What is wrong with it so far.
        faults: Vec<DraftFault>,
    },
    /// Somebody else has written meanwhile, and nothing was changed: the draft as it is.
    Overtaken(Box<DraftSheet>),
}

/// What goes out at once of a step, as members will see it.
#[derive(Clone, Debug)]
pub struct PartPreview {
    /// The post; none of a stop that has no task and none was found.
    pub post: Option<PostSheet>,
    /// What closes it; none of words alone.
    pub reveal: Option<RevealSheet>,
    /// Of a stop, what the check found.
    pub checked: Option<Box<CheckedPosition>>,
}

impl CoachDesk<'_> {
    /// The group's drafts, the one written to last first. Coaches only.
    pub async fn drafts(self, place: &Place, coach: &Person) -> Done<Vec<DraftRow>> {
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .read(move |db| {
                let group = coached(db, &place, &coach)?;
                let row = |kept: store::Draft| {
                    let content = content(&kept)?;
                    Ok(DraftRow {
                        draft: kept.id,
                        title: content.title,
                        steps: content.steps.len(),
                        lesson: kept.lesson_id,
                        changed_at: kept.changed_at,
                    })
                };
                db.drafts(group.id)?.into_iter().map(row).collect()
            })
            .await
    }

    /// A draft. Coaches only.
    ///
    /// # Errors
    /// When there is no such draft.
    pub async fn draft_sheet(
        self,
        place: &Place,
        coach: &Person,
        draft: DraftId,
    ) -> Done<DraftSheet> {
        let (at, by) = (place.clone(), coach.clone());
        let kept = self
            .desk
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                draft_of(db, &group, draft)
            })
            .await?;
        self.laid_open(kept).await
    }

    /// Begins a draft with something in it or nothing. Coaches only.
    ///
    /// # Errors
    /// When it is too large.
    pub async fn begin_draft(
        self,
        place: &Place,
        coach: &Person,
        content: Draft,
    ) -> Done<DraftSheet> {
        let json = to_keep(&content)?;
        let now = self.desk.now();
        let (at, by) = (place.clone(), coach.clone());
        let kept = self
            .desk
            .write(move |tx| {
                let group = coached(tx, &at, &by)?;
                let id = tx.insert_draft(group.id, None, &json, now)?;
                draft_of(tx, &group, id)
            })
            .await?;
        self.laid_open(kept).await
    }

    /// Opens a lesson for writing: the draft that was opened from it before, or a new one. Taken in, it takes the
    /// lesson's place; where something of the lesson was posted it is a copy, and has no lesson. Coaches only.
    ///
    /// # Errors
    /// When there is no such lesson.
    pub async fn open_lesson(
        self,
        place: &Place,
        coach: &Person,
        lesson: LessonId,
    ) -> Done<DraftSheet> {
        let (at, by) = (place.clone(), coach.clone());
        let (kept, games, begun) = self
            .desk
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                let kept = lesson_of(db, &group, lesson)?;
                let games = db.lesson_steps(lesson)?.into_iter().map(|step| step.game);
                let begun = db.draft_of_lesson(lesson)?;
                let begun = match went_out(db, lesson)? {
                    true => None,
                    false => begun,
                };
                Ok((kept, games.collect::<Vec<_>>(), begun))
            })
            .await?;
        if let Some(begun) = begun {
            return self.laid_open(begun).await;
        }
        let limit = self.desk.inner.options.check_seconds;
        let content = self
            .desk
            .inner
            .checks
            .run("opening a lesson", limit, move |_| {
                Draft::of_games(&kept.title, kept.topic.as_deref(), &games)
            })
            .await?
            .map_err(|error| {
                DeskError::damaged(format!("a step of a lesson in it cannot be read ({error})"))
            })?;
        let json = to_keep(&content)?;
        let now = self.desk.now();
        let (at, by) = (place.clone(), coach.clone());
        let kept = self
            .desk
            .write(move |tx| {
                let group = coached(tx, &at, &by)?;
                let kept = lesson_of(tx, &group, lesson)?;
                let takes_place = !went_out(tx, kept.id)?;
                if takes_place && let Some(begun) = tx.draft_of_lesson(kept.id)? {
                    return Ok(begun);
                }
                // The same copy is not made twice.
                let copies = tx.drafts(group.id)?.into_iter();
                let copied = copies
                    .filter(|_| !takes_place)
                    .find(|draft| draft.lesson_id.is_none() && draft.content == json);
                if let Some(copied) = copied {
                    return Ok(copied);
                }
                let of = Some(kept.id).filter(|_| takes_place);
                let id = tx.insert_draft(group.id, of, &json, now)?;
                draft_of(tx, &group, id)
            })
            .await?;
        self.laid_open(kept).await
    }

    /// Writes to a draft that stood at `revision` when it was read; where somebody has written since, nothing is
    /// changed. Coaches only.
    ///
    /// # Errors
    /// When there is no such draft, or it is too large.
    pub async fn save_draft(
        self,
        place: &Place,
        coach: &Person,
        draft: DraftId,
        revision: i64,
        content: Draft,
    ) -> Done<DraftSaved> {
        let json = to_keep(&content)?;
        let now = self.desk.now();
        let (at, by) = (place.clone(), coach.clone());
        let written = self
            .desk
            .write(move |tx| {
                let group = coached(tx, &at, &by)?;
                let kept = draft_of(tx, &group, draft)?;
                Ok(match tx.write_draft(kept.id, revision, &json, now)? {
                    Some(revision) => Ok(revision),
                    None => Err(kept),
                })
            })
            .await?;
        Ok(match written {
            Ok(revision) => DraftSaved::Kept {
                revision,
                faults: self.faults(content).await?,
            },
            Err(kept) => DraftSaved::Overtaken(Box::new(self.laid_open(kept).await?)),
        })
    }

    /// Forgets a draft; a lesson that it became stays. Coaches only.
    ///
    /// # Errors
    /// When there is no such draft.
    pub async fn remove_draft(self, place: &Place, coach: &Person, draft: DraftId) -> Done<()> {
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let group = coached(tx, &place, &coach)?;
                let kept = draft_of(tx, &group, draft)?;
                Ok(tx.remove_draft(kept.id)?)
            })
            .await
    }

    /// A draft as a file of PGN, half finished as it may be. Coaches only.
    ///
    /// # Errors
    /// When there is no such draft.
    pub async fn export_draft(self, place: &Place, coach: &Person, draft: DraftId) -> Done<String> {
        Ok(self
            .draft_sheet(place, coach, draft)
            .await?
            .content
            .written()
            .0)
    }

    /// Takes a draft in as a lesson, as [`CoachDesk::import_lesson`] does a file. It takes the place of the lesson
    /// that it was opened from or became; where something of that was posted it becomes another one, which needs
    /// a title of its own. The draft stays, and belongs to the lesson. Coaches only.
    ///
    /// # Errors
    /// When somebody has written to it since `revision`, a step cannot be read, or as
    /// [`CoachDesk::import_lesson`].
    pub async fn take_in_draft(
        self,
        place: &Place,
        coach: &Person,
        (draft, revision): (DraftId, i64),
        progress: Arc<dyn Fn(usize, usize) + Send + Sync>,
    ) -> Done<LessonSheet> {
        let sheet = self.draft_sheet(place, coach, draft).await?;
        if sheet.revision != revision {
            return bad_request(Refusal::DraftChanged);
        }
        if sheet.content.steps.is_empty() {
            return bad_request(Refusal::DraftEmpty);
        }
        if let Some(fault) = sheet.faults.into_iter().next() {
            return bad_request(Refusal::DraftStepWrong {
                step: u32::try_from(fault.step).unwrap_or(u32::MAX),
                what: Box::new(fault.what),
            });
        }
        let was = sheet.lesson;
        let replaces = self
            .desk
            .read(move |db| match was {
                Some(lesson) if went_out(db, lesson)? => Ok(None),
                was => Ok(was),
            })
            .await?;
        let title = sheet.content.title.trim().to_owned();
        let file = LessonFile {
            name: match title.is_empty() {
                true => "draft.pgn".into(),
                false => title.clone(),
            },
            bytes: sheet.content.written().0.into_bytes(),
            // One without a title is refused by name.
            title: Some(title),
            replaces,
        };
        let taken = self
            .import_lesson(place, coach, file, SameChoice::Keep, progress)
            .await?;
        if let Some(lesson) = taken.lesson {
            self.desk
                .write(move |tx| match tx.draft(draft)? {
                    // Removed meanwhile: the lesson is there all the same.
                    None => Ok(()),
                    Some(kept) => Ok(tx.set_draft_lesson(kept.id, Some(lesson))?),
                })
                .await?;
        }
        Ok(taken)
    }

    /// A step of a draft as members will see it, part by part, before the reveal and at it, as if it were the
    /// next to go out. Its stops are checked for that, and nothing is kept. Coaches only.
    ///
    /// # Errors
    /// When there is no such step, or it cannot be read.
    pub async fn preview_draft(
        self,
        place: &Place,
        coach: &Person,
        content: Draft,
        step: usize,
    ) -> Done<Vec<PartPreview>> {
        let (at, by) = (place.clone(), coach.clone());
        let group = self.desk.read(move |db| coached(db, &at, &by)).await?;
        let steps = content.steps.len();
        let wrong = self.faults(content.clone()).await?;
        if let Some(fault) = wrong.into_iter().find(|fault| fault.step == step) {
            return bad_request(Refusal::DraftStepWrong {
                step: u32::try_from(step).unwrap_or(u32::MAX),
                what: Box::new(fault.what),
            });
        }
        let limit = self.desk.inner.options.check_seconds;
        let only = Draft {
            steps: content
                .steps
                .get(step.wrapping_sub(1))
                .cloned()
                .into_iter()
                .collect(),
            ..content.clone()
        };
        let read = self
            .desk
            .inner
            .checks
            .run("reading a step", limit, move |_| {
                lesson::read_lesson("", only.written().0.as_bytes()).steps
            })
            .await?;
        if !read.iter().any(Result::is_ok) {
            return not_found(Refusal::NoStep {
                step: number(step),
                steps: number(steps),
            });
        }
        let stops = read.iter().flatten().flat_map(|step| &step.parts);
        let stops: Vec<Result<Entry, ReadError>> =
            stops.filter_map(Part::stop).cloned().map(Ok).collect();
        let mut checked = self.check_all(stops, Arc::new(|_, _| {})).await?;
        let (parts, checked) = self
            .desk
            .inner
            .checks
            .run("looking through a step", limit, move |_| {
                let made = made(&read, &mut checked);
                (made, checked)
            })
            .await?;
        let mut checked: Vec<Option<Checked>> = checked.into_iter().map(Some).collect();
        let mut out = Vec::with_capacity(parts.len());
        for part in parts {
            let stands = InLesson {
                lesson: None,
                part: part.part,
                title: content.title.clone(),
                step: number(step),
                steps: number(steps),
                lead: part.lead,
            };
            out.push(match part.holds {
                MadeOf::Stop(at) => match checked.get_mut(at).and_then(Option::take) {
                    Some(stop) => self.stop_preview(&group, stop, stands).await?,
                    None => continue,
                },
                MadeOf::Written(found) => {
                    let topic = TopicName::filled_in(found.topic.as_deref())?;
                    let held = held(found.content);
                    let topic = topic.map(String::from);
                    let (post, reveal) = self.both_sides(&group, &held, topic, stands).await?;
                    PartPreview {
                        post: Some(post),
                        reveal,
                        checked: None,
                    }
                }
            });
        }
        Ok(out)
    }

    /// A stop with its report, before its reveal and at it.
    async fn stop_preview(
        self,
        group: &Group,
        stop: Checked,
        stands: InLesson,
    ) -> Done<PartPreview> {
        let topic = stop.topic.map(String::from);
        let checked = CheckedPosition {
            position: None,
            topic: topic.clone(),
            further_topics: Vec::new(),
            words: stop.words,
            same: None,
            posted: None,
            fresh: None,
            report: stop.report,
            picture: None,
        };
        let Some(task) = checked.report.stipulation else {
            return Ok(PartPreview {
                post: None,
                reveal: None,
                checked: Some(Box::new(checked)),
            });
        };
        let now = self.desk.now();
        let position = Position {
            id: PositionId::of(0),
            group_id: group.id,
            topic_id: None,
            topic: topic.clone(),
            further_topics: Vec::new(),
            source: String::new(),
            fen: checked.report.fen.clone(),
            stipulation: task.to_string(),
            words: checked.words.to_keep()?,
            given: stop.given,
            check: kept_check(&checked.report, now)?,
            anyway: false,
            created_at: now,
        };
        let held = Held::Problem(Box::new(Posed::of(position)?));
        let (post, reveal) = self.both_sides(group, &held, topic, stands).await?;
        Ok(PartPreview {
            post: Some(post),
            reveal,
            checked: Some(Box::new(checked)),
        })
    }

    /// What members see at first, and what closes it, where something does.
    async fn both_sides(
        self,
        group: &Group,
        held: &Held,
        topic: Option<String>,
        stands: InLesson,
    ) -> Done<(PostSheet, Option<RevealSheet>)> {
        let of = |held| (group.clone(), held, topic.clone(), None, Some(stands));
        let post = self.previewed(of(held.clone())).await?;
        let reveal = match held {
            Held::Words(_) => None,
            Held::Problem(_) | Held::Question(..) => {
                let nobody = TookPart::default();
                let leaders = Leaderboard {
                    topic: topic.clone(),
                    rows: Vec::new(),
                };
                let sheet = self
                    .desk
                    .revealed(group.clone(), held, post.clone(), nobody, leaders)
                    .await?;
                Some(sheet)
            }
        };
        Ok((post, reveal))
    }

    async fn laid_open(self, kept: store::Draft) -> Done<DraftSheet> {
        let content = content(&kept)?;
        Ok(DraftSheet {
            faults: self.faults(content.clone()).await?,
            draft: kept.id,
            revision: kept.revision,
            lesson: kept.lesson_id,
            begun_at: kept.created_at,
            content,
        })
    }

    async fn faults(self, content: Draft) -> Done<Vec<DraftFault>> {
        let limit = self.desk.inner.options.check_seconds;
        let faults = self
            .desk
            .inner
            .quick
            .run("reading a draft", limit, move |_| content.faults())
            .await?;
        let fault = |(step, what)| DraftFault { step, what };
        Ok(faults.into_iter().map(fault).collect())
    }
}

/// A draft of the group by id.
fn draft_of(db: &Db<'_>, group: &Group, draft: DraftId) -> Done<store::Draft> {
    match db.draft(draft)? {
        Some(kept) if kept.group_id == group.id => Ok(kept),
        _ => not_found(Refusal::NoDraft),
    }
}

fn content(kept: &store::Draft) -> Done<Draft> {
    serde_json::from_value(kept.content.clone())
        .map_err(|error| DeskError::damaged(format!("a draft in it cannot be read ({error})")))
}

fn to_keep(content: &Draft) -> Done<Value> {
    let json = serde_json::to_value(content)
        .map_err(|error| DeskError::damaged(format!("a draft cannot be written ({error})")))?;
    match json.to_string().len() > LARGEST {
        true => bad_request(Refusal::DraftTooLarge {
            most: LARGEST.into(),
        }),
        false => Ok(json),
    }
}

fn held(content: NewPostContent) -> Held {
    match content {
        NewPostContent::Question {
            words,
            fen,
            at_reveal,
        } => Held::Question(Written { words, fen }, at_reveal),
        NewPostContent::Words { words, fen } => Held::Words(Written { words, fen }),
    }
}

fn number(at: usize) -> i64 {
    i64::try_from(at).unwrap_or(i64::MAX)
}
