//! Fills a fresh store for the demo: an invented group, its positions, and three past weeks, played
//! through the desk's own calls on a clock that is set from one event to the next. So everything the
//! demo shows was really imported, checked, posted, answered, judged and revealed.
//!
//! All times are counted back from the moment given: the group posts at that time of day, its last post
//! was yesterday's, and today's is due when the filling ends.

mod script;

#[cfg(test)]
mod positions_test;
#[cfg(test)]
mod weeks_test;

use std::{collections::HashMap, path::Path, sync::Arc, time::Duration};

use anyhow::{Context, bail, ensure};
use chrono::{DateTime, TimeDelta, Utc};
use indicatif::{ProgressBar, ProgressStyle};
use sealed_move_demo_data::{LESSON_FILES, POSITION_FILES};
use sealed_move_store::Store;

use super::config::Config;
use crate::{
    chat::room,
    desk::{
        Delivered, Desk, DeskOptions, ErrandKind, LessonFile, LessonPlan, Person, Place, PostSheet,
        SameChoice, Settings, Soundness, TestClock, TimeOfDay,
    },
    words::english,
};
use script::{Deed, Script, ScriptLine};

/// Minutes from a post to its reveal: the next one is two hours off then, whatever the clocks do.
const OPEN_MINUTES: u32 = 22 * 60;

/// An errand that is due is there at once; longer than this means that none will come.
const ERRAND_WAIT: Duration = Duration::from_secs(60);

/// Fills the fresh store at `path` with three weeks that end now, with a progress bar where a person
/// looks on.
///
/// # Errors
/// When the store cannot be written, or the demo's material has a mistake.
pub async fn fill(config: &Config, path: &Path) -> anyhow::Result<()> {
    let bar = ProgressBar::new(0).with_message("Playing the past weeks");
    bar.set_style(ProgressStyle::with_template("{msg} {bar:30} {pos}/{len}")?);
    let filled = fill_until(config.desk_options()?, path, Utc::now(), &|done, of| {
        bar.set_length(of as u64);
        bar.set_position(done as u64);
    })
    .await;
    bar.finish_and_clear();
    filled
}

/// Fills the fresh store at `path` with three weeks that end at `now`. `progress(done, of)` is called
/// as posts are played.
async fn fill_until(
    options: DeskOptions,
    path: &Path,
    now: DateTime<Utc>,
    progress: &(dyn Fn(usize, usize) + Sync),
) -> anyhow::Result<()> {
    let script = Script::read()?;
    let store =
        Store::open(path).with_context(|| format!("the demo's store {}", path.display()))?;
    let mut play = Play::begin(&script, store, options, now).await?;
    play.hand_in(&script).await?;
    let posts = script.group.past.len();
    for (done, position) in script.group.past.iter().enumerate() {
        progress(done, posts);
        let lines = script.past.get(position).map_or(&[][..], Vec::as_slice);
        play.day(lines).await?;
    }
    progress(posts, posts);
    Ok(())
}

/// The three weeks while they are played.
struct Play {
    desk: Desk,
    clock: TestClock,
    place: Place,
    coach: Person,
    /// Everyone who writes, by the script's name.
    people: HashMap<String, Person>,
    /// Lines played so far; each is a message of its own.
    lines: usize,
}

impl Play {
    /// Founds the group, early enough for the first post.
    async fn begin(
        script: &Script,
        store: Store,
        options: DeskOptions,
        now: DateTime<Utc>,
    ) -> anyhow::Result<Self> {
        let days = i64::try_from(script.group.past.len())?;
        // Two hours cover a change of the clocks and do not reach the day before.
        let founded = now - TimeDelta::days(days) - TimeDelta::hours(2);
        let clock = TestClock::at(founded);
        let desk = Desk::with_options(store, Arc::new(clock.clone()), options);
        let (place, coach) = (room::place(), room::coach());
        let settings = Settings {
            name: script.group.name.clone(),
            zone: script.group.zone,
            post_times: TimeOfDay::from(now.with_timezone(&script.group.zone).time()).into(),
            open_minutes: OPEN_MINUTES,
            ..Settings::default()
        };
        desk.found_group(&place, room::home().manners, None, settings, &coach)
            .await?;
        let mut people: HashMap<String, Person> = script
            .group
            .members
            .iter()
            .map(|member| {
                let person = Person {
                    user: format!("demo-{}", member.user),
                    name: member.name.clone(),
                    language: None,
                };
                (member.user.clone(), person)
            })
            .collect();
        people.insert("coach".to_owned(), coach.clone());
        Ok(Self {
            desk,
            clock,
            place,
            coach,
            people,
            lines: 0,
        })
    }

    /// The coach hands in every file and puts the positions into the queue.
    async fn hand_in(&self, script: &Script) -> anyhow::Result<()> {
        let mut ids = HashMap::new();
        for (file, text) in POSITION_FILES {
            let checked = self
                .desk
                .coach()
                .import(
                    &self.place,
                    &self.coach,
                    file,
                    text.as_bytes().to_vec(),
                    Arc::new(|_, _| {}),
                )
                .await?;
            for position in checked {
                let report = position.report;
                ensure!(
                    report.verdict == Soundness::Sound,
                    "{file} of the demo, {}: {}",
                    report.id,
                    english().tell(&report.message)
                );
                let id = position
                    .position
                    .with_context(|| format!("{file} of the demo, {} was not kept", report.id))?;
                ids.insert(report.id, id);
            }
        }
        for name in script.group.past.iter().chain(&script.group.queue) {
            let id = ids
                .get(name)
                .with_context(|| format!("no file of the demo has the position {name}"))?;
            self.desk
                .coach()
                .enqueue(&self.place, &self.coach, *id, false)
                .await?;
        }
        self.plan_lessons().await
    }

    /// The lessons stand behind the positions.
    async fn plan_lessons(&self) -> anyhow::Result<()> {
        let desk = self.desk.coach();
        for (file, text) in LESSON_FILES {
            let sheet = desk
                .import_lesson(
                    &self.place,
                    &self.coach,
                    LessonFile {
                        replaces: None,
                        name: (*file).to_owned(),
                        bytes: text.as_bytes().to_vec(),
                        title: None,
                    },
                    SameChoice::Keep,
                    Arc::new(|_, _| {}),
                )
                .await?;
            let broken = sheet.steps.iter().find(|step| step.trouble.is_some());
            ensure!(
                broken.is_none(),
                "{file} of the demo: a step cannot be read"
            );
            let lesson = sheet
                .lesson
                .with_context(|| format!("{file} of the demo was not kept"))?;
            desk.plan_lesson(
                &self.place,
                &self.coach,
                lesson,
                LessonPlan::InOrder,
                false,
                false,
            )
            .await?;
        }
        Ok(())
    }

    /// One day: the post goes out, the group writes, the reveal closes it.
    async fn day(&mut self, lines: &[ScriptLine]) -> anyhow::Result<()> {
        let queue = self.desk.coach().queue(&self.place).await?;
        let due = queue
            .first()
            .and_then(|item| item.due_at)
            .context("the demo's queue is empty too early")?;
        self.clock.set(due);
        let post = self.carry(Wanted::Post).await?;
        for line in lines {
            let moment = due + line.after;
            ensure!(
                moment < post.closes_at,
                "past.tsv of the demo: {} after post {} comes too late",
                line.after,
                post.number
            );
            self.clock.set(moment);
            self.play(&post, line).await?;
        }
        self.clock.set(post.closes_at);
        self.carry(Wanted::Reveal).await?;
        Ok(())
    }

    /// What a member does.
    async fn play(&mut self, post: &PostSheet, line: &ScriptLine) -> anyhow::Result<()> {
        self.lines += 1;
        let source = format!("demo-{}", self.lines);
        let Some(person) = self.people.get(&line.member) else {
            bail!("the demo has no member {}", line.member);
        };
        match &line.deed {
            Deed::Answer(text) => {
                self.desk
                    .member()
                    .answer(&self.place, person, post.post, &source, text)
                    .await?;
            }
            Deed::Hint => {
                self.desk
                    .member()
                    .hint(&self.place, person, post.post)
                    .await?;
            }
            Deed::GiveUp => {
                self.desk
                    .member()
                    .give_up(&self.place, person, post.post)
                    .await?;
            }
            Deed::Talk(text) => {
                self.desk.member().say(&self.place, person, text).await?;
            }
        }
        Ok(())
    }

    /// Carries what is due, up to the errand that is wanted; the sheet of its post.
    async fn carry(&self, wanted: Wanted) -> anyhow::Result<PostSheet> {
        loop {
            let errand =
                tokio::time::timeout(ERRAND_WAIT, self.desk.rounds().next_errand(room::KEY))
                    .await
                    .context("the demo waited for a post that did not come")??;
            let (message, sheet) = match &errand.kind {
                ErrandKind::Post { sheet, .. } => (
                    Some(format!("post-{}", sheet.post)),
                    (wanted == Wanted::Post).then(|| (**sheet).clone()),
                ),
                ErrandKind::Reveal { sheet, .. } => (
                    Some(format!("reveal-{}", sheet.post.post)),
                    (wanted == Wanted::Reveal).then(|| sheet.post.clone()),
                ),
                ErrandKind::TellCoach(_)
                | ErrandKind::TellMember { .. }
                | ErrandKind::AnswerMember(_)
                | ErrandKind::AskLeave(_)
                | ErrandKind::Example(_) => (None, None),
            };
            let delivered = Delivered {
                message,
                thread: None,
            };
            self.desk.rounds().errand_done(&errand, &delivered).await?;
            if let Some(sheet) = sheet {
                return Ok(sheet);
            }
        }
    }
}

/// Which errand is waited for.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Wanted {
    Post,
    Reveal,
}
