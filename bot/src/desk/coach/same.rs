//! A position that is kept already comes again, under another name, topic or comment, or with other
//! moves: what differs is shown, and the coach says which is to stand. Nothing is replaced in silence.

use std::sync::Arc;

use chrono::{DateTime, Utc};
use sealed_move_store::{Check, Db, Given, Group, NewPosition, Position, Tx};
use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::{CoachDesk, shelf};
use crate::desk::{
    CheckedPosition, CoachWords, GroupId, Person, Place, PositionId, Soundness, TopicName, convert,
    error::Done,
    handle::{coached, position_of},
    refusal::Refusal,
};

/// Which version of a position stands when a file says something else of it than what is kept.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum SameChoice {
    /// What is kept stays as it is.
    #[default]
    Keep,
    /// The file's name and moves are taken, and its topic and words where it has any.
    New,
    /// Name and moves stay; the file's topic becomes a further one, and its words come behind the old.
    Both,
}

/// In what two versions of a position differ.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Differs {
    /// File or id.
    Name,
    /// Topic.
    Topic,
    /// Words for the post or the reveal.
    Words,
    /// Best moves, variations, or remarks of the file.
    Moves,
}

/// A version of a position.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Version {
    /// File and id.
    pub name: String,
    /// Topics, the one that is counted first.
    pub topics: Vec<String>,
    /// The coach's words.
    pub words: CoachWords,
}

/// The same position, kept before and now given otherwise.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SameAgain {
    /// As it was kept.
    pub kept: Version,
    /// As the file gives it.
    pub given: Version,
    /// In what they differ.
    pub differs: Vec<Differs>,
    /// Which stands now.
    pub done: SameChoice,
}

/// An earlier post of a position.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct PostedBefore {
    /// Its number within the group.
    pub number: i64,
    /// When.
    pub at: DateTime<Utc>,
}

/// A position as a file gives it, held until the coach has chosen.
#[derive(Clone, Debug)]
pub struct Fresh {
    pub(super) topic: Option<TopicName>,
    pub(super) words: CoachWords,
    pub(super) source: String,
    pub(super) fen: String,
    pub(super) stipulation: String,
    pub(super) given: Given,
    pub(super) check: Check,
}

/// What became of a position of a file.
pub(super) struct Placed {
    pub(super) position: PositionId,
    pub(super) same: Option<SameAgain>,
    /// Its placement with another task, by name.
    pub(super) other_tasks: Vec<String>,
    pub(super) posted: Option<PostedBefore>,
}

impl Fresh {
    fn version(&self) -> Version {
        Version {
            name: self.source.clone(),
            topics: self.topic.clone().map(String::from).into_iter().collect(),
            words: self.words.clone(),
        }
    }
}

impl PostedBefore {
    /// "No. 4 on 3 March 2026", by the group's calendar.
    pub fn words(&self, zone: chrono_tz::Tz) -> String {
        format!(
            "No. {} on {}",
            self.number,
            self.at.with_timezone(&zone).format("%-d %B %Y")
        )
    }
}

impl CoachDesk<'_> {
    /// The coach's choice on a position that an import showed as kept already; the position as it then
    /// is. Coaches only.
    ///
    /// # Errors
    /// When nothing waits for a choice, or the position is gone.
    pub async fn settle_same(
        self,
        place: &Place,
        coach: &Person,
        checked: &CheckedPosition,
        choice: SameChoice,
    ) -> Done<CheckedPosition> {
        let (Some(position), Some(fresh), Some(same)) =
            (checked.position, &checked.fresh, &checked.same)
        else {
            return crate::desk::error::bad_request(Refusal::NothingToChoose);
        };
        let (at, by, fresh) = (place.clone(), coach.clone(), Arc::clone(fresh));
        let kept = self
            .desk
            .write(move |tx| {
                let group = coached(tx, &at, &by)?;
                let twin = position_of(tx, &group, position)?;
                settle(tx, &group, &twin, &fresh, choice)?;
                position_of(tx, &group, position)
            })
            .await?;
        let now = shelf::laid_out(kept, None)?;
        Ok(CheckedPosition {
            topic: now.topic,
            further_topics: now.further_topics,
            words: now.words,
            same: Some(SameAgain {
                done: choice,
                ..same.clone()
            }),
            // Placed once: the other version is in the store now, or left for good.
            fresh: (choice == SameChoice::Keep)
                .then(|| checked.fresh.clone())
                .flatten(),
            ..checked.clone()
        })
    }
}

/// Board, side to move, castling and en passant: what makes a position the same, whatever its counters.
pub(super) fn placement(fen: &str) -> String {
    fen.split(' ').take(4).collect::<Vec<_>>().join(" ")
}

/// The latest post of a placement.
pub(super) fn posted_before(db: &Db<'_>, group: GroupId, fen: &str) -> Done<Option<PostedBefore>> {
    Ok(db
        .last_posted(group, &placement(fen))?
        .map(|posted| PostedBefore {
            number: posted.number,
            at: posted.at,
        }))
}

/// Keeps a position of a file. One that is kept already becomes what `choice` says.
pub(super) fn keep(
    tx: &Tx<'_>,
    group: &Group,
    fresh: &Fresh,
    choice: SameChoice,
    now: DateTime<Utc>,
) -> Done<Placed> {
    let alike = tx.positions_of_placement(group.id, &placement(&fresh.fen))?;
    let (twins, others): (Vec<_>, Vec<_>) = alike
        .into_iter()
        .partition(|position| position.stipulation == fresh.stipulation);
    let posted = posted_before(tx, group.id, &fresh.fen)?;
    let other_tasks = others
        .iter()
        .map(|other| format!("{} ({})", other.source, other.stipulation))
        .collect();
    let Some(twin) = twins.first() else {
        let position = insert(tx, group, fresh, now)?;
        return Ok(Placed {
            position,
            same: None,
            other_tasks,
            posted,
        });
    };
    let kept = version(twin)?;
    let given = fresh.version();
    let differs = differences(twin, &kept, fresh, &given);
    if differs.is_empty() {
        tx.renew_position(twin.id, &fresh.source, &fresh.given)?;
        tx.replace_check(twin.id, &fresh.check)?;
    } else {
        settle(tx, group, twin, fresh, choice)?;
    }
    Ok(Placed {
        position: twin.id,
        same: (!differs.is_empty()).then_some(SameAgain {
            kept,
            given,
            differs,
            done: choice,
        }),
        other_tasks,
        posted,
    })
}

fn insert(tx: &Tx<'_>, group: &Group, fresh: &Fresh, now: DateTime<Utc>) -> Done<PositionId> {
    let topic_id = match &fresh.topic {
        Some(topic) => Some(topic.in_group(tx, group.id)?),
        None => None,
    };
    Ok(tx.upsert_position(&NewPosition {
        group_id: group.id,
        topic_id,
        source: fresh.source.clone(),
        fen: fresh.fen.clone(),
        stipulation: fresh.stipulation.clone(),
        words: fresh.words.to_keep()?,
        given: fresh.given.clone(),
        check: fresh.check.clone(),
        created_at: now,
    })?)
}

fn version(position: &Position) -> Done<Version> {
    Ok(Version {
        name: position.source.clone(),
        topics: position
            .topic
            .iter()
            .chain(&position.further_topics)
            .cloned()
            .collect(),
        words: CoachWords::kept(position)?,
    })
}

/// In what a file's version says something else than the kept one; what it leaves open is no difference.
fn differences(twin: &Position, kept: &Version, fresh: &Fresh, given: &Version) -> Vec<Differs> {
    let mut differs = Vec::new();
    if kept.name != given.name {
        differs.push(Differs::Name);
    }
    let known = |topic: &String| {
        kept.topics
            .iter()
            .any(|own| own.to_lowercase() == topic.to_lowercase())
    };
    if !given.topics.iter().all(known) {
        differs.push(Differs::Topic);
    }
    let (old, new) = (&kept.words, &given.words);
    let said_otherwise = (!new.with_post.is_empty() && !old.with_post.contains(&new.with_post))
        || (!new.at_reveal.is_empty() && !old.at_reveal.contains(&new.at_reveal))
        || (!new.notes.is_empty() && old.notes != new.notes);
    if said_otherwise {
        differs.push(Differs::Words);
    }
    let squeezed = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    if differs.is_empty() && squeezed(&twin.given.text) != squeezed(&fresh.given.text) {
        differs.push(Differs::Moves);
    }
    differs
}

/// Makes a kept position what is given of it now, in every regard.
pub(super) fn rewrite(tx: &Tx<'_>, group: &Group, position: PositionId, fresh: &Fresh) -> Done<()> {
    tx.renew_position(position, &fresh.source, &fresh.given)?;
    tx.replace_check(position, &fresh.check)?;
    let topic = match &fresh.topic {
        Some(topic) => Some(topic.in_group(tx, group.id)?),
        None => None,
    };
    tx.set_position_topic(position, topic)?;
    Ok(tx.set_position_words(position, &fresh.words.to_keep()?)?)
}

fn settle(
    tx: &Tx<'_>,
    group: &Group,
    twin: &Position,
    fresh: &Fresh,
    choice: SameChoice,
) -> Done<()> {
    let own = CoachWords::kept(twin)?;
    match choice {
        SameChoice::Keep => return decide(tx, twin, fresh, None),
        SameChoice::New => {
            tx.renew_position(twin.id, &fresh.source, &fresh.given)?;
            let mut check = fresh.check.clone();
            let own = twin.check.report.get(LINES);
            put_lines(&mut check, fresh.check.report.get(LINES).or(own));
            tx.replace_check(twin.id, &check)?;
            if let Some(topic) = &fresh.topic {
                let topic = topic.in_group(tx, group.id)?;
                tx.set_position_topic(twin.id, Some(topic))?;
            }
            if !fresh.words.is_empty() {
                tx.set_position_words(twin.id, &fresh.words.to_keep()?)?;
            }
        }
        SameChoice::Both => {
            decide(tx, twin, fresh, fresh.check.report.get(LINES))?;
            if let Some(topic) = &fresh.topic {
                let topic = topic.in_group(tx, group.id)?;
                match twin.topic_id {
                    None => tx.set_position_topic(twin.id, Some(topic))?,
                    Some(_) => tx.add_further_topic(twin.id, topic)?,
                }
            }
            tx.set_position_words(twin.id, &own.joined(&fresh.words).to_keep()?)?;
        }
    }
    Ok(())
}

/// The part of a report with the coach's own lines.
const LINES: &str = "coach_lines";

/// A check that could not decide gives way to one that did; name, warnings and the coach's lines stay the
/// old ones. Where there are no such lines, these others come in.
fn decide(tx: &Tx<'_>, twin: &Position, fresh: &Fresh, others: Option<&Value>) -> Done<()> {
    let undecided = sealed_move_store::Soundness::Undecided;
    let gives_way = twin.check.soundness == undecided && fresh.check.soundness != undecided;
    let own = &twin.check.report;
    let added = others.filter(|_| own.get(LINES).is_none());
    if !gives_way && added.is_none() {
        return Ok(());
    }
    let mut check = match gives_way {
        true => fresh.check.clone(),
        false => twin.check.clone(),
    };
    for part in ["id", "warnings"] {
        if let Some(own) = own.get(part) {
            check.report[part] = own.clone();
        }
    }
    put_lines(&mut check, own.get(LINES).or(added));
    Ok(tx.replace_check(twin.id, &check)?)
}

/// Puts the coach's own lines into a report, or takes them out.
fn put_lines(check: &mut Check, lines: Option<&Value>) {
    match (lines, check.report.as_object_mut()) {
        (Some(lines), Some(report)) => {
            report.insert(LINES.to_owned(), lines.clone());
        }
        (None, Some(report)) => {
            report.remove(LINES);
        }
        (_, None) => {}
    }
}

/// Whether a report's verdict can be kept at all.
pub(super) fn keepable(verdict: Soundness) -> bool {
    convert::soundness(verdict) != sealed_move_store::Soundness::Illegal
}
