//! From a coach's file to a lesson: every step is read, every stop checked like any position, and what would
//! give away the answer to an earlier stop is found and made to wait.

use std::sync::Arc;

use sealed_move_store::{ContentId, Db, Group, LessonPart, LessonStep, NewLesson, Tx};
use serde_json::Value;

use super::{
    CoachDesk, FoundWritten, PartHolds, PartSheet, PartStands,
    import::{Became, Checked, keep_rows, light, rows, source},
    lessons::{LessonSheet, StepSheet, lesson_of},
    same::{self, Fresh},
    written,
};
use crate::chess::{
    check::Statement,
    comments::{Comments, Note},
    lesson::{self, Holds, Secret, Shows, Step},
    read::{Entry, ReadError},
};
use crate::desk::{
    CoachWords, LessonId, Person, Place, PositionId, Report, SameChoice, TopicName, convert,
    error::{DeskError, Done, bad_request},
    handle::coached,
    refusal::{Named, Refusal},
    text,
};

/// The most characters of a lesson's title.
const LONGEST_TITLE: usize = 100;

/// A lesson as a coach hands it over.
#[derive(Clone, Debug, Default)]
pub struct LessonFile {
    /// The file's name.
    pub name: String,
    /// What is in it.
    pub bytes: Vec<u8>,
    /// A title that stands before the file's own.
    pub title: Option<String>,
    /// A lesson whose place it takes; it has the same title, or gives its own up.
    pub replaces: Option<LessonId>,
}

/// A part that is ready to be kept.
#[derive(Clone)]
pub(super) struct Made {
    pub(super) step: i64,
    pub(super) part: i64,
    pub(super) lead: Vec<Note>,
    pub(super) holds: MadeOf,
    /// The earlier parts, by their place in the list of all, that it would give away.
    pub(super) tells: Vec<usize>,
}

#[derive(Clone)]
pub(super) enum MadeOf {
    /// The stop of this place among those checked.
    Stop(usize),
    Written(FoundWritten),
}

impl CoachDesk<'_> {
    /// Takes a lesson in: reads the file, checks every stop, keeps what could be read, and reports step by
    /// step in the file's order. Nothing is put into the week.
    /// `progress(done, of)` is called as stops are finished, from several threads. Coaches only.
    ///
    /// A position that was kept before becomes what `choice` says, as in [`CoachDesk::import_choosing`].
    ///
    /// # Errors
    /// When the file is empty or too large, the group has another lesson of that title, something of the lesson
    /// that it replaces was posted, or the person does not coach the group.
    pub async fn import_lesson(
        self,
        place: &Place,
        coach: &Person,
        given: LessonFile,
        choice: SameChoice,
        progress: Arc<dyn Fn(usize, usize) + Send + Sync>,
    ) -> Done<LessonSheet> {
        let LessonFile {
            name,
            bytes,
            title,
            replaces,
        } = given;
        let (at, by) = (place.clone(), coach.clone());
        let group = self.desk.read(move |db| coached(db, &at, &by)).await?;
        let file = text::title(&name, Named::File, 200)?;
        light(&file, bytes.len())?;
        let (name, limit) = (file.clone(), self.desk.inner.options.check_seconds);
        let read = self
            .desk
            .inner
            .checks
            .run("reading a file", limit, move |_| {
                lesson::read_lesson(&name, &bytes)
            })
            .await?;
        let title = title.as_deref().or(read.title.as_deref());
        let title = title.unwrap_or(&file);
        let title = text::title(title, Named::Lesson, LONGEST_TITLE)?;
        let topic = TopicName::filled_in(read.topic.as_deref())?;
        let (of, wanted) = (group.clone(), title.clone());
        self.desk
            .read(move |db| {
                may_replace(db, &of, replaces)?;
                title_is_free(db, &of, &wanted, replaces)
            })
            .await?;

        let mut steps = Vec::new();
        let mut stops = Vec::new();
        for step in read.steps {
            if let Ok(step) = &step {
                let own = step.parts.iter().filter_map(lesson::Part::stop);
                stops.extend(own.cloned().map(Ok::<Entry, ReadError>));
            }
            steps.push(step);
        }
        let checked = self.check_all(stops, progress).await?;
        let (steps, checked, made) = self
            .desk
            .inner
            .checks
            .run("looking through a lesson", limit, move |_| {
                let mut checked = checked;
                let made = made(&steps, &mut checked);
                (steps, checked, made)
            })
            .await?;
        let mut leads = Vec::with_capacity(made.len());
        for part in &made {
            leads.push(serde_json::to_value(&part.lead).map_err(|error| {
                DeskError::damaged(format!("a lesson cannot be written ({error})"))
            })?);
        }
        let now = self.desk.now();
        let new = Fitted {
            rows: rows(&file, &checked, now)?,
            games: games(&steps),
            lesson: NewLesson {
                group_id: group.id,
                title: title.clone(),
                topic_id: None,
                source: file,
                created_at: now,
            },
            topic: topic.clone(),
            parts: made.clone(),
            leads,
            choice,
            replaces,
        };
        let (lesson, became) = self.keep_lesson(group.clone(), new).await?;
        let settings = convert::kept_settings(&group.settings)?;
        let positions = self.lay_out(checked, became, &settings, 0).await?;
        let mut sheet = LessonSheet {
            lesson,
            title,
            topic: topic.map(String::from),
            steps: step_sheets(&steps),
        };
        let places: Vec<(i64, i64)> = made.iter().map(|part| (part.step, part.part)).collect();
        let mut positions = positions.into_iter();
        let mut ids: Vec<(PositionId, i64)> = Vec::new();
        for part in made {
            let Some(step) = sheet.steps.iter_mut().find(|step| step.step == part.step) else {
                continue;
            };
            let (holds, stands) = match part.holds {
                MadeOf::Stop(_) => {
                    let Some(position) = positions.next() else {
                        continue;
                    };
                    let stands = match position.position {
                        None => PartStands::NotKept,
                        Some(id) => match ids.iter().find(|(earlier, _)| *earlier == id) {
                            Some((_, step)) => PartStands::AsBefore { step: *step },
                            None => {
                                ids.push((id, part.step));
                                PartStands::Kept
                            }
                        },
                    };
                    (PartHolds::Stop(Box::new(position)), stands)
                }
                MadeOf::Written(found) => (PartHolds::Written(found.content), PartStands::Kept),
            };
            step.parts.push(PartSheet {
                part: part.part,
                lead: part.lead,
                holds,
                waits_for: part.tells.iter().map(|earlier| places[*earlier]).collect(),
                stands,
            });
        }
        Ok(sheet)
    }

    /// Keeps a lesson in one transaction; with no step that can be kept, nothing is.
    async fn keep_lesson(self, group: Group, new: Fitted) -> Done<(Option<LessonId>, Vec<Became>)> {
        self.desk
            .write(move |tx| {
                if new.games.is_empty() {
                    return Ok((None, new.rows.iter().map(|_| None).collect()));
                }
                may_replace(tx, &group, new.replaces)?;
                title_is_free(tx, &group, &new.lesson.title, new.replaces)?;
                let (lesson, became) = new.keep(tx, &group)?;
                Ok((Some(lesson), became))
            })
            .await
    }
}

/// Refuses a title that a lesson of the group has, unless that is the one that is replaced.
fn title_is_free(db: &Db<'_>, group: &Group, title: &str, replaces: Option<LessonId>) -> Done<()> {
    match db.lesson_called(group.id, title)? {
        None => Ok(()),
        Some(kept) if Some(kept.id) == replaces => Ok(()),
        Some(kept) => bad_request(Refusal::LessonThere {
            title: kept.title.into(),
        }),
    }
}

/// Refuses to replace a lesson of which something was posted: members have seen it.
fn may_replace(db: &Db<'_>, group: &Group, replaces: Option<LessonId>) -> Done<()> {
    let Some(lesson) = replaces else {
        return Ok(());
    };
    let kept = lesson_of(db, group, lesson)?;
    match went_out(db, lesson)? {
        false => Ok(()),
        true => bad_request(Refusal::LessonWentOut {
            title: kept.title.into(),
        }),
    }
}

/// Whether a part of a lesson was posted, or is about to be.
pub(super) fn went_out(db: &Db<'_>, lesson: LessonId) -> Done<bool> {
    let parts = db.lesson_parts(lesson)?;
    Ok(parts.iter().any(|part| part.post.is_some()))
}

/// A lesson as it is written down.
struct Fitted {
    lesson: NewLesson,
    topic: Option<TopicName>,
    games: Vec<LessonStep>,
    /// The positions of its stops, none for one that cannot be kept.
    rows: Vec<Option<Arc<Fresh>>>,
    parts: Vec<Made>,
    /// What leads up to each part.
    leads: Vec<Value>,
    choice: SameChoice,
    /// The lesson whose place it takes.
    replaces: Option<LessonId>,
}

impl Fitted {
    fn keep(&self, tx: &Tx<'_>, group: &Group) -> Done<(LessonId, Vec<Became>)> {
        let now = self.lesson.created_at;
        let old = match self.replaces {
            Some(lesson) => tx.clear_lesson(lesson)?,
            None => Vec::new(),
        };
        let rows = self.rows.clone();
        let mut became = keep_rows(tx, group, rows, self.choice, now)?;
        self.renew(tx, group, &old, &mut became)?;
        let topic_id = match &self.topic {
            Some(topic) => Some(topic.in_group(tx, group.id)?),
            None => None,
        };
        let lesson = tx.insert_lesson(&NewLesson {
            topic_id,
            ..self.lesson.clone()
        })?;
        for game in &self.games {
            tx.add_lesson_step(lesson, game)?;
        }
        let mut contents: Vec<Option<ContentId>> = Vec::with_capacity(self.parts.len());
        for (part, lead) in self.parts.iter().zip(&self.leads) {
            let content = match &part.holds {
                MadeOf::Stop(at) => match &became[*at] {
                    Some((placed, _)) => Some(tx.problem_of(placed.position, now)?),
                    None => None,
                },
                MadeOf::Written(found) => {
                    let topic = TopicName::filled_in(found.topic.as_deref())?;
                    let source = source(&self.lesson.source, &found.id);
                    let holds = written::checked(&found.content)?;
                    Some(written::keep(tx, group, holds, topic, source, now)?)
                }
            };
            if let Some(content) = content {
                tx.add_lesson_part(lesson, part.step, part.part, content, lead)?;
                let others = part.tells.iter().filter_map(|earlier| contents[*earlier]);
                for other in others.filter(|other| *other != content) {
                    tx.let_content_wait(content, other)?;
                }
            }
            contents.push(content);
        }
        self.take_places(tx, group, &old, &contents)?;
        Ok((lesson, became))
    }
}

impl Fitted {
    /// A position that was a stop of the lesson that is replaced, and of no other, is what is written of it now.
    fn renew(
        &self,
        tx: &Tx<'_>,
        group: &Group,
        old: &[LessonPart],
        became: &mut [Became],
    ) -> Done<()> {
        for (placed, fresh) in became.iter_mut().flatten() {
            let mut stops = old.iter().filter_map(|part| part.content.position());
            if stops.any(|stop| stop == placed.position)
                && tx.lesson_of_position(placed.position)?.is_none()
            {
                same::rewrite(tx, group, placed.position, fresh)?;
                placed.same = None;
            }
        }
        Ok(())
    }

    /// What waited in the week of the lesson that is replaced: a part that is in the new one goes on waiting, and
    /// another gives its place to the one that stands now where it stood.
    fn take_places(
        &self,
        tx: &Tx<'_>,
        group: &Group,
        old: &[LessonPart],
        contents: &[Option<ContentId>],
    ) -> Done<()> {
        let queue = tx.queue(group.id)?;
        let mut waiting: Vec<ContentId> = queue.iter().map(|item| item.content_id).collect();
        for part in old {
            if contents.contains(&Some(part.content_id)) {
                continue;
            }
            let heir = self
                .parts
                .iter()
                .zip(contents)
                .find(|(new, _)| (new.step, new.part) == (part.step, part.part))
                .and_then(|(_, content)| *content)
                .filter(|content| !waiting.contains(content));
            match (part.item, heir) {
                (Some(item), Some(heir)) => {
                    tx.put_in_place(item, heir)?;
                    waiting.push(heir);
                }
                (Some(item), None) => tx.dequeue(item)?,
                (None, _) => {}
            }
            tx.forget_content(part.content_id)?;
        }
        Ok(())
    }
}

/// The steps that could be read, as they are kept.
fn games(steps: &[Result<Step, ReadError>]) -> Vec<LessonStep> {
    (1..)
        .zip(steps.iter().flatten())
        .map(|(step, of)| LessonStep {
            step,
            game: of.game.clone(),
            line: i64::try_from(of.line).unwrap_or(i64::MAX).max(1),
            contrast: of.contrast,
        })
        .collect()
}

/// The parts of all steps, in order, with their words made harmless and those held that would tell a move, and
/// with what each would give away.
pub(super) fn made(steps: &[Result<Step, ReadError>], checked: &mut [Checked]) -> Vec<Made> {
    let mut all: Vec<Made> = Vec::new();
    let mut secrets: Vec<Option<Secret>> = Vec::new();
    let mut stops = 0;
    for (step, of) in (1..).zip(steps.iter().flatten()) {
        for (part, given) in (1..).zip(&of.parts) {
            let mut lead: Vec<Note> = given.lead.iter().map(harmless).collect();
            let mut shows = Shows::of(given, &of.start);
            let (holds, secret) = match &given.holds {
                Holds::Stop(entry) => {
                    let one = &mut checked[stops];
                    stops += 1;
                    hold(one, entry, &mut lead);
                    shows.and_solution(&entry.position, &one.report.line);
                    let secret = Secret::of(entry, &one.report.keys, &one.report.line);
                    (MadeOf::Stop(stops - 1), Some(secret))
                }
                Holds::Question(written) => (
                    MadeOf::Written(FoundWritten::question(written.clone())),
                    None,
                ),
                Holds::Words(written) => {
                    (MadeOf::Written(FoundWritten::words(written.clone())), None)
                }
            };
            let tells = secrets
                .iter()
                .enumerate()
                .filter(|(_, secret)| secret.as_ref().is_some_and(|s| s.told_by(&shows)))
                .map(|(at, _)| at)
                .collect();
            all.push(Made {
                step,
                part,
                lead,
                holds,
                tells,
            });
            secrets.push(secret);
        }
    }
    all
}

/// Words on the way to a stop that tell its move wait for the reveal, and the coach is told.
fn hold(checked: &mut Checked, entry: &Entry, lead: &mut [Note]) {
    let Report { keys, line, .. } = &checked.report;
    let held = lesson::guard(lead, &entry.position, keys, line);
    if held.is_empty() {
        return;
    }
    let comments = Comments::held(held);
    let told = comments.warnings().into_iter().map(Statement::from);
    checked.report.warnings.extend(told);
    checked.words = checked.words.joined(&CoachWords::of(&comments));
}

fn harmless(note: &Note) -> Note {
    let clean = |words: &str| text::body(words, lesson::MOST_AT_ONCE).0;
    Note {
        before: clean(&note.before),
        after: clean(&note.after),
        ..note.clone()
    }
}

/// The steps in the file's order, those that could not be read among them.
fn step_sheets(steps: &[Result<Step, ReadError>]) -> Vec<StepSheet> {
    let mut place = 0;
    let sheet = |step: &Result<Step, ReadError>| match step {
        Ok(step) => {
            place += 1;
            StepSheet {
                step: place,
                line: i64::try_from(step.line).unwrap_or(i64::MAX),
                contrast: step.contrast,
                trouble: None,
                parts: Vec::new(),
            }
        }
        Err(error) => StepSheet {
            step: 0,
            line: i64::try_from(error.line).unwrap_or(i64::MAX),
            contrast: false,
            trouble: Some(Box::new(Report::unreadable(error))),
            parts: Vec::new(),
        },
    };
    steps.iter().map(sheet).collect()
}
