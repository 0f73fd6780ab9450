//! `queue`: see and arrange the week.

use std::{
    io::{self, Write},
    path::PathBuf,
};

use chrono::{NaiveDate, NaiveDateTime, TimeZone};
use clap::{Args, Subcommand};

use super::{
    Globals, Outcome,
    check::tell_words,
    groups::{GroupArgs, Open, acting},
    output::json_line,
    text::{Failure, List, LocalTime, OrFail, Text, failure, path, theirs, unless},
    tongue::readers,
};
use crate::{
    chat::{
        common::{card, text::Tasked},
        pictures,
    },
    chess::parse_fen,
    desk::{
        Content, Desk, ItemId, NoTime, Person, Place, PositionId, QueueItem, Queued, TakenOutId,
        Telling, TopicName, WaitsFor, note_lines,
    },
    diagram::{Text as OnPaper, sheet},
    words::words,
};

/// See and arrange the week: the positions, questions and words waiting, in order, with when each goes out.
#[derive(Debug, Args)]
pub struct QueueArgs {
    #[command(flatten)]
    which: GroupArgs,
    /// One JSON object a place in the queue
    #[arg(long)]
    json: bool,
    #[command(subcommand)]
    action: Option<QueueAction>,
}

#[derive(Debug, Subcommand)]
enum QueueAction {
    /// Put positions that `import` kept at the end of the queue, by their numbers
    Add {
        /// Numbers of positions
        #[arg(required = true)]
        positions: Vec<PositionId>,
        /// Also those that are not sound
        #[arg(long)]
        anyway: bool,
        /// Also those that were posted before
        #[arg(long)]
        again: bool,
    },
    /// Put a question at the end of the queue: members answer in their own words, and a coach marks what they write
    Question {
        /// What is asked, at most 1,000 characters
        words: String,
        /// A position to be shown beside it; it has to be legal and is not proved
        #[arg(long)]
        fen: Option<String>,
        /// The topic its points count under
        #[arg(long)]
        topic: Option<String>,
        /// Your own words on it, shown when it is closed
        #[arg(long, value_name = "TEXT")]
        reveal: Option<String>,
        /// When it goes out, in the group's own time, such as 2026-12-01T18:00
        #[arg(long, value_name = "WHEN")]
        on: Option<String>,
    },
    /// Put words at the end of the queue that are there to be read: they take no answers
    Say {
        /// The words, at most 1,000 characters
        words: String,
        /// A position to be shown beside them
        #[arg(long)]
        fen: Option<String>,
        /// The topic
        #[arg(long)]
        topic: Option<String>,
        /// When they go out, in the group's own time, such as 2026-12-01T18:00
        #[arg(long, value_name = "WHEN")]
        on: Option<String>,
    },
    /// Put a topic's card at the end of the queue: its words with the position of its example, in the group's language
    Card {
        /// The card, by the name or title of its pattern, or by its topic
        name: String,
        /// When it goes out, in the group's own time, such as 2026-12-01T18:00
        #[arg(long, value_name = "WHEN")]
        on: Option<String>,
    },
    /// See the words that go out with a position, or write them anew
    Words {
        /// Number of the position
        position: PositionId,
        /// Words that go out with the post; an empty text takes them away
        #[arg(long, value_name = "TEXT")]
        post: Option<String>,
        /// Words for the reveal; an empty text takes them away
        #[arg(long, value_name = "TEXT")]
        reveal: Option<String>,
        /// Send the words for the post although they tell a move of the position
        #[arg(long)]
        anyway: bool,
    },
    /// Move an item to another place in the order, 1 being the first
    Move {
        /// Number of the item
        item: ItemId,
        /// Its new place
        to: usize,
    },
    /// Fix when an item goes out, in the group's own time, or free it again
    At {
        /// Number of the item
        item: ItemId,
        /// Such as 2026-12-01T18:00, or "free"
        time: String,
    },
    /// Set the topic of a position
    Topic {
        /// Number of the position
        position: PositionId,
        /// The topic; leave it out to take the topic away
        topic: Option<String>,
    },
    /// Take an item out of the queue; `put-back` puts it back
    Remove {
        /// Number of the item
        item: ItemId,
    },
    /// Put back what was taken out of the queue, at the place where it stood
    PutBack {
        /// Its number, as `remove` told it; the latest by default
        #[arg(value_name = "N")]
        taken: Option<TakenOutId>,
    },
    /// Post an item, or the next one, now
    Now {
        /// Number of the item
        item: Option<ItemId>,
    },
    /// Stop posting until a day, or until `queue resume`
    Pause {
        /// First day on which to post again, such as 2027-01-04
        #[arg(long)]
        until: Option<NaiveDate>,
    },
    /// Go on posting
    Resume,
    /// Write the queue as sheets for the classroom: six positions to a page, solutions on the last
    Print {
        /// A PDF file
        #[arg(value_name = "FILE")]
        out: PathBuf,
        /// Paper of the size Letter instead of A4
        #[arg(long)]
        letter: bool,
    },
}

impl QueueArgs {
    pub(super) fn run(self, place: &Globals) -> anyhow::Result<Outcome> {
        let open = Open::existing(place)?;
        let group = open.existing_group(&self.which)?;
        open.wait(async {
            if let Some(action) = self.action {
                let told = action.carry_out(&open.desk, &group).await?;
                if let Some(told) = told.filter(|_| !self.json) {
                    writeln!(io::stdout(), "{}", told.said())?;
                }
            }
            list(&open.desk, &group, self.json).await
        })?;
        Ok(Outcome::Fine)
    }
}

impl QueueAction {
    /// Does it, and returns what is to be said of it before the week is shown.
    async fn carry_out(self, desk: &Desk, group: &Place) -> anyhow::Result<Option<Text>> {
        let coach = acting(desk, group).await?;
        match self {
            Self::Add {
                positions,
                anyway,
                again,
            } => {
                for position in positions {
                    match again {
                        true => {
                            desk.coach()
                                .enqueue_again(group, &coach, position, anyway)
                                .await?
                        }
                        false => {
                            desk.coach()
                                .enqueue(group, &coach, position, anyway)
                                .await?
                        }
                    };
                }
            }
            Self::Question {
                words,
                fen,
                topic,
                reveal,
                on,
            } => {
                let on = on.as_deref().map(local_time).transpose()?.flatten();
                let topic = TopicName::filled_in(topic.as_deref())?;
                let reveal = reveal.as_deref().unwrap_or_default();
                let item = desk
                    .coach()
                    .enqueue_question(group, &coach, &words, fen.as_deref(), topic, reveal)
                    .await?;
                fixed(desk, group, &coach, item, on).await?;
            }
            Self::Say {
                words,
                fen,
                topic,
                on,
            } => {
                let on = on.as_deref().map(local_time).transpose()?.flatten();
                let topic = TopicName::filled_in(topic.as_deref())?;
                let item = desk
                    .coach()
                    .enqueue_words(group, &coach, &words, fen.as_deref(), topic)
                    .await?;
                fixed(desk, group, &coach, item, on).await?;
            }
            Self::Card { name, on } => {
                let on = on.as_deref().map(local_time).transpose()?.flatten();
                let card = desk.member().card_called(group, &name).await?;
                let item = card::enqueue(desk, group, &coach, card).await?;
                fixed(desk, group, &coach, item, on).await?;
            }
            Self::Words {
                position,
                post,
                reveal,
                anyway,
            } => {
                let kept = desk.coach().checked(group, &coach, position).await?.words;
                if post.is_some() || reveal.is_some() {
                    let telling = match anyway {
                        true => Telling::Meant,
                        false => Telling::Refused,
                    };
                    let with_post = post.as_ref().unwrap_or(&kept.with_post);
                    let at_reveal = reveal.as_ref().unwrap_or(&kept.at_reveal);
                    desk.coach()
                        .set_words(group, &coach, position, with_post, at_reveal, telling)
                        .await?;
                }
                let now = desk.coach().checked(group, &coach, position).await?.words;
                tell_words(
                    &mut io::stdout().lock(),
                    &now.with_post,
                    &now.at_reveal,
                    &now.notes,
                )?;
            }
            Self::Move { item, to } => {
                unless(to >= 1, || Failure::PlacesFromOne)?;
                desk.coach().reorder(group, &coach, item, to - 1).await?;
            }
            Self::At { item, time } => {
                desk.coach()
                    .fix_time(group, &coach, item, local_time(&time)?)
                    .await?
            }
            Self::Topic { position, topic } => {
                let topic = topic.as_deref().map(str::parse).transpose()?;
                desk.coach()
                    .set_topic(group, &coach, position, topic)
                    .await?;
            }
            Self::Remove { item } => {
                let taken = desk.coach().dequeue(group, &coach, item).await?.get();
                return Ok(Some(Text::TakenOut { taken }));
            }
            Self::PutBack { taken } => put_back(desk, group, &coach, taken).await?,
            Self::Now { item } => desk.coach().post_now(group, &coach, item).await?,
            Self::Pause { until } => {
                let zone = desk.settings(group).await?.zone;
                let until = until.map(|day| first_moment(zone, day)).transpose()?;
                desk.coach().pause(group, &coach, until).await?;
            }
            Self::Resume => desk.coach().resume(group, &coach).await?,
            Self::Print { out, letter } => {
                let pdf = print(desk, group, letter).await?;
                std::fs::write(&out, pdf)
                    .or_fail(|| Failure::FileUnwritable { file: path(&out) })?;
            }
        }
        Ok(None)
    }
}

/// Puts back what was taken out; the latest, where none is named.
async fn put_back(
    desk: &Desk,
    group: &Place,
    coach: &Person,
    taken: Option<TakenOutId>,
) -> anyhow::Result<()> {
    let taken = match taken {
        Some(taken) => taken,
        None => {
            let lately = desk.coach().taken_out(group, coach).await?;
            let latest = lately.first().or_fail(|| Failure::NothingTakenOut)?;
            latest.taken
        }
    };
    desk.coach().put_back_in_week(group, coach, taken).await?;
    Ok(())
}

/// Fixes when a new item goes out, where that is said; one that cannot go out then does not wait at all.
async fn fixed(
    desk: &Desk,
    group: &Place,
    coach: &Person,
    item: ItemId,
    on: Option<NaiveDateTime>,
) -> anyhow::Result<()> {
    let Some(on) = on else { return Ok(()) };
    if let Err(error) = desk.coach().fix_time(group, coach, item, Some(on)).await {
        desk.coach().dequeue(group, coach, item).await?;
        return Err(error.into());
    }
    Ok(())
}

/// The queue as a PDF.
async fn print(desk: &Desk, group: &Place, letter: bool) -> anyhow::Result<Vec<u8>> {
    let coach = acting(desk, group).await?;
    let settings = desk.settings(group).await?;
    let words = words(settings.language.tag());
    let tongue = pictures::tongue(words);
    let with_letters = |moves: &str| words.moves(moves);
    let mut items = Vec::new();
    for item in desk.coach().queue(group).await? {
        items.push(match item.holds {
            Queued::Problem { position, fen, .. } => {
                let checked = desk.coach().checked(group, &coach, position).await?;
                let content = desk
                    .coach()
                    .preview_item(group, &coach, item.id)
                    .await?
                    .content;
                let (task, words) = match content {
                    Content::Problem {
                        side,
                        stipulation,
                        words: coach,
                        ..
                    } => (words.say(&Tasked::of(side, stipulation)), coach),
                    Content::Question(written) | Content::Words(written) => {
                        (String::new(), written.words)
                    }
                };
                sheet::Item {
                    shows: sheet::Shows::Board(parse_fen(&fen)?.position),
                    task,
                    words,
                    solution: checked.report.variations,
                    remarks: checked
                        .words
                        .at_reveal
                        .lines()
                        .map(str::to_owned)
                        .chain(note_lines(&checked.words.notes, with_letters))
                        .collect(),
                }
            }
            Queued::Question {
                words,
                fen,
                at_reveal,
            } => written(tongue.say(&OnPaper::SheetQuestion), words, fen, &at_reveal)?,
            Queued::Words { words, fen } => {
                written(tongue.say(&OnPaper::SheetToBeRead), words, fen, "")?
            }
        });
    }
    unless(!items.is_empty(), || Failure::NothingToPrint)?;
    let title = settings.name;
    let paper = if letter {
        sheet::Paper::Letter
    } else {
        sheet::Paper::A4
    };
    Ok(sheet::Sheet {
        title,
        paper,
        items,
    }
    .pdf(&tongue)?)
}

/// A question or words on paper.
fn written(
    task: String,
    words: String,
    fen: Option<String>,
    at_reveal: &str,
) -> anyhow::Result<sheet::Item> {
    Ok(sheet::Item {
        shows: match fen {
            Some(fen) => sheet::Shows::Board(parse_fen(&fen)?.position),
            None => sheet::Shows::Words,
        },
        task,
        words,
        solution: Vec::new(),
        remarks: at_reveal.lines().map(str::to_owned).collect(),
    })
}

pub(super) fn local_time(text: &str) -> anyhow::Result<Option<NaiveDateTime>> {
    if text == "free" {
        return Ok(None);
    }
    for format in ["%Y-%m-%dT%H:%M", "%Y-%m-%d %H:%M"] {
        if let Ok(time) = NaiveDateTime::parse_from_str(text, format) {
            return Ok(Some(time));
        }
    }
    Err(failure(Failure::TimeNotRead {
        written: theirs(text),
    }))
}

/// The first moment of a day in a zone: midnight, or what comes after it where midnight is skipped.
fn first_moment(
    zone: chrono_tz::Tz,
    day: NaiveDate,
) -> anyhow::Result<chrono::DateTime<chrono::Utc>> {
    (0..=6)
        .filter_map(|half_hours| {
            let local = day.and_hms_opt(half_hours / 2, 30 * (half_hours % 2), 0)?;
            zone.from_local_datetime(&local).earliest()
        })
        .map(|moment| moment.to_utc())
        .next()
        .or_fail(|| Failure::DayMissing {
            day: day.into(),
            zone: zone.name().to_owned(),
        })
}

pub(super) async fn list(desk: &Desk, group: &Place, json: bool) -> anyhow::Result<()> {
    let mut out = io::stdout().lock();
    let items = desk.coach().queue(group).await?;
    if json {
        for item in &items {
            json_line(&mut out, item)?;
        }
        return Ok(());
    }
    let settings = desk.settings(group).await?;
    let zone = settings.zone;
    match desk.coach().paused(group).await? {
        Some(Some(until)) => {
            let moment = LocalTime::at(until, zone);
            writeln!(out, "{}", Text::PostingPausedUntil { moment }.said())?;
        }
        Some(None) => writeln!(out, "{}", Text::PostingPaused.said())?,
        None => {}
    }
    if items.is_empty() {
        let group = theirs(settings.name);
        writeln!(out, "{}", Text::QueueIsEmpty { group }.said())?;
    }
    for (place, item) in items.iter().enumerate() {
        let due = match (item.due_at, item.fixed) {
            (None, _) => Text::QueueNoTime {
                why: item.no_time.unwrap_or(NoTime::Waits),
            },
            (Some(due), false) => Text::QueueDue {
                moment: LocalTime::at(due, zone),
            },
            (Some(due), true) => Text::QueueDueFixed {
                moment: LocalTime::at(due, zone),
            },
        };
        let kind = item.holds.kind();
        let sign = match kind.task() {
            Some(task) => task.to_owned(),
            None => readers().say(&Text::QueueKind { kind: kind.name() }),
        };
        writeln!(
            out,
            "{:>3}. {}  {sign}  {}  {}  ({})",
            place + 1,
            due.said(),
            topics(item),
            item.holds.label(&item.source),
            about(item, zone).said(),
        )?;
        for more in below(item) {
            writeln!(out, "     {}", more.said())?;
        }
    }
    Ok(())
}

/// What stands below an item: its step in a lesson, and what it waits for.
fn below(item: &QueueItem) -> Vec<Text> {
    let step = item.lesson.iter().map(|lesson| Text::QueueStepOf {
        title: theirs(&lesson.title),
        step: lesson.step,
        steps: lesson.steps,
    });
    let waits = item.waits_for.iter().map(|what| match what {
        WaitsFor::Post { number } => Text::QueueWaitsForPost { number: *number },
        WaitsFor::Item { item, called } => Text::QueueWaitsForItem {
            item: item.get(),
            called: theirs(called),
        },
    });
    step.chain(waits).collect()
}

/// What an item in the queue is about, marked where its topic is not verified.
fn topics(item: &QueueItem) -> String {
    let Some(topic) = &item.topic else {
        return Text::QueueNoTopic.said();
    };
    let further = item.holds.further_topics();
    let topics = match further.is_empty() {
        true => topic.clone(),
        false => Text::QueueTopicAlso {
            topic: theirs(topic),
            others: List {
                list: further.iter().map(theirs).collect(),
            },
        }
        .said(),
    };
    match item.holds.topic_is_doubtful() {
        true => Text::QueueTopicNotVerified { topic: topics }.said(),
        false => topics,
    }
}

/// By which numbers an item in the queue goes, and whether it comes again.
fn about(item: &QueueItem, zone: chrono_tz::Tz) -> Text {
    let number = item.id;
    match &item.holds {
        Queued::Problem {
            position, posted, ..
        } => match posted {
            None => Text::QueuePosition {
                item: number.get(),
                position: position.get(),
            },
            Some(posted) => Text::QueuePositionAgain {
                item: number.get(),
                position: position.get(),
                number: posted.number,
                date: posted.at.with_timezone(&zone).date_naive().into(),
            },
        },
        Queued::Question { fen, .. } | Queued::Words { fen, .. } => match fen {
            Some(_) => Text::QueueItemWithPosition { item: number.get() },
            None => Text::QueueItem { item: number.get() },
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_local_times_and_says_how_to_write_them() {
        assert_eq!(local_time("free").ok(), Some(None));
        assert!(local_time("2026-12-01T18:00").is_ok_and(|t| t.is_some()));
        assert!(local_time("tomorrow").is_err_and(|e| e.to_string().contains("2026-12-01T18:00")));
    }

    #[test]
    fn a_day_without_midnight_begins_later() {
        // Clocks in Santiago went from 24:00 on 4 September 2027 (IANA time zone database) to 01:00.
        let day = NaiveDate::from_ymd_opt(2027, 9, 5).expect("a day");
        let first = first_moment(chrono_tz::America::Santiago, day).expect("a moment");
        assert_eq!(
            first
                .with_timezone(&chrono_tz::America::Santiago)
                .format("%H:%M")
                .to_string(),
            "01:00"
        );
    }
}
