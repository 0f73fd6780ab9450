//! From a coach's file to checked positions: read it, check each position in parallel, keep what could
//! be kept, report in the file's order.

use std::sync::{
    Arc,
    atomic::{AtomicUsize, Ordering},
};

use chrono::{DateTime, Utc};
use futures::{StreamExt, stream};
use sealed_move_store::{Given, Group, Tx};

use super::{
    CoachDesk,
    same::{self, Fresh, Placed},
};
use crate::chess::{
    fact::{List, Theirs},
    read::{self, Entry, Item, LARGEST_FILE, ReadError},
};
use crate::desk::{
    CheckedPosition, CoachWords, Person, Place, Report, SameChoice, Settings, TopicName,
    checking::{find, kept_check},
    convert,
    drawing::board_of,
    error::{Done, bad_request},
    handle::coached,
    noted::Noted,
    refusal::{Named, Refusal},
    text,
};

/// Diagrams come with the first so many positions of an import; [`CoachDesk::diagram_of`] draws the others.
/// A file of ten megabytes holds some ten thousand positions, and their pictures half a gigabyte.
pub const DIAGRAMS_AT_ONCE: usize = 100;

/// A position as the file gives it, with its report.
pub(super) struct Checked {
    pub(super) report: Report,
    pub(super) topic: Option<TopicName>,
    pub(super) words: CoachWords,
    pub(super) given: Given,
}

/// What became of a position of a file: where it is kept, and as what the file gives it.
pub(super) type Became = Option<(Placed, Arc<Fresh>)>;

/// What is to be kept of checked positions; none of one that cannot be kept.
pub(super) fn rows(
    file: &str,
    checked: &[Checked],
    now: DateTime<Utc>,
) -> Done<Vec<Option<Arc<Fresh>>>> {
    let row = |one: &Checked| {
        let report = &one.report;
        let task = report
            .stipulation
            .filter(|_| same::keepable(report.verdict));
        Ok(match task {
            None => None,
            Some(task) => Some(Arc::new(Fresh {
                topic: one.topic.clone(),
                words: one.words.clone(),
                source: source(file, &report.id),
                fen: report.fen.clone(),
                stipulation: task.to_string(),
                given: one.given.clone(),
                check: kept_check(report, now)?,
            })),
        })
    };
    checked.iter().map(row).collect()
}

/// Keeps them; what became of each, in order.
pub(super) fn keep_rows(
    tx: &Tx<'_>,
    group: &Group,
    rows: Vec<Option<Arc<Fresh>>>,
    choice: SameChoice,
    now: DateTime<Utc>,
) -> Done<Vec<Became>> {
    let keep = |row: Option<Arc<Fresh>>| {
        let Some(fresh) = row else {
            return Ok(None);
        };
        let kept = same::keep(tx, group, &fresh, choice, now)?;
        Ok(Some((kept, fresh)))
    };
    rows.into_iter().map(keep).collect()
}

impl CoachDesk<'_> {
    /// Checks a file and keeps what could be read; the reports come in the file's order.
    /// `progress(done, of)` is called as positions are finished, from several threads.
    ///
    /// A position that was kept before is checked again and keeps its id; where the file says something
    /// else of it, what is kept stays, and the coach may choose ([`CoachDesk::settle_same`]). What cannot be
    /// kept (not readable, illegal, no task stated or found) is reported with its place in the file.
    ///
    /// # Errors
    /// When the file is empty or too large, or the person does not coach the group.
    pub async fn import(
        self,
        place: &Place,
        coach: &Person,
        file: &str,
        bytes: Vec<u8>,
        progress: Arc<dyn Fn(usize, usize) + Send + Sync>,
    ) -> Done<Vec<CheckedPosition>> {
        self.import_choosing(place, coach, file, bytes, SameChoice::Keep, progress)
            .await
    }

    /// As [`CoachDesk::import`], with the coach's choice for every position that is kept already.
    ///
    /// # Errors
    /// As [`CoachDesk::import`].
    pub async fn import_choosing(
        self,
        place: &Place,
        coach: &Person,
        file: &str,
        bytes: Vec<u8>,
        choice: SameChoice,
        progress: Arc<dyn Fn(usize, usize) + Send + Sync>,
    ) -> Done<Vec<CheckedPosition>> {
        let (at, by) = (place.clone(), coach.clone());
        let group = self.desk.read(move |db| coached(db, &at, &by)).await?;
        let settings = convert::kept_settings(&group.settings)?;
        let file = text::title(file, Named::File, 200)?;
        light(&file, bytes.len())?;

        let name = file.clone();
        let limit = self.desk.inner.options.check_seconds;
        let items = self
            .desk
            .inner
            .checks
            .run("reading a file", limit, move |_| {
                read::read_items(&name, &bytes)
            })
            .await?;
        let of = items.len();
        let entries: Vec<_> = items
            .into_iter()
            .filter_map(|item| match item {
                Ok(Item::Problem(entry)) => Some(Ok(*entry)),
                // They need no check: see `written_in`.
                Ok(Item::Question(_) | Item::Words(_)) => None,
                Err(error) => Some(Err(error)),
            })
            .collect();
        if of == 0 {
            return bad_request(Refusal::NoPositions { file: file.into() });
        }

        let checked = self.check_all(entries, progress).await?;
        let kept = self.keep(&group, &file, &checked, choice).await?;
        self.lay_out(checked, kept, &settings, DIAGRAMS_AT_ONCE)
            .await
    }

    /// Checks entries in parallel, as many at a time as the pool has room, in stable order.
    pub(super) async fn check_all(
        self,
        entries: Vec<Result<Entry, ReadError>>,
        progress: Arc<dyn Fn(usize, usize) + Send + Sync>,
    ) -> Done<Vec<Checked>> {
        let of = entries.len();
        let done = Arc::new(AtomicUsize::new(0));
        let checks: Vec<_> = entries
            .into_iter()
            .map(|entry| {
                let (done, progress) = (done.clone(), progress.clone());
                async move {
                    let checked = match entry {
                        Ok(entry) => self.check_entry(entry).await,
                        Err(error) => Ok(Checked {
                            report: Report::unreadable(&error),
                            topic: None,
                            words: CoachWords::default(),
                            given: Given {
                                text: String::new(),
                                line: 1,
                            },
                        }),
                    };
                    progress(done.fetch_add(1, Ordering::Relaxed) + 1, of);
                    checked
                }
            })
            .collect();
        stream::iter(checks)
            .buffered(self.desk.inner.options.threads.max(1) * 2)
            .collect::<Vec<_>>()
            .await
            .into_iter()
            .collect()
    }

    /// The report on one entry, and what is to be kept beside it.
    pub(super) async fn check_entry(self, entry: Entry) -> Done<Checked> {
        let (topic, left_out) = TopicName::of_entry(&entry);
        let given = Given {
            text: entry.text.clone(),
            line: i64::try_from(entry.line).unwrap_or(i64::MAX),
        };
        // One thread for each: the positions themselves go in parallel.
        let mut report = self.desk.check(entry, 1).await?;
        report.warnings.extend(left_out);
        // The words are kept beside the report, where the coach can change them.
        let words = CoachWords::of(&std::mem::take(&mut report.comments));
        Ok(Checked {
            report,
            topic,
            words,
            given,
        })
    }

    /// Keeps the positions that can be kept, in one transaction; what became of each, in order.
    async fn keep(
        self,
        group: &Group,
        file: &str,
        checked: &[Checked],
        choice: SameChoice,
    ) -> Done<Vec<Became>> {
        let now = self.desk.now();
        let rows = rows(file, checked, now)?;
        let group = group.clone();
        self.desk
            .write(move |tx| keep_rows(tx, &group, rows, choice, now))
            .await
    }

    /// Checked positions with what became of them, the first `diagrams` of them drawn.
    pub(super) async fn lay_out(
        self,
        checked: Vec<Checked>,
        kept: Vec<Became>,
        settings: &Settings,
        diagrams: usize,
    ) -> Done<Vec<CheckedPosition>> {
        let mut out = Vec::with_capacity(checked.len());
        let mut drawn = 0;
        for (mut one, kept) in checked.into_iter().zip(kept) {
            let picture = match board_of(&one.report.fen) {
                Some(board) if drawn < diagrams => {
                    drawn += 1;
                    Some(self.desk.draw_plain(board, settings).await?)
                }
                _ => None,
            };
            let (position, same, posted, fresh) = match kept {
                None => (None, None, None, None),
                Some((kept, fresh)) => {
                    if !kept.other_tasks.is_empty() {
                        let list = kept.other_tasks.into_iter().map(Theirs::from).collect();
                        let noted = Noted::KeptWithOtherTask {
                            kept: List { list },
                        };
                        one.report.warnings.push(noted.into());
                    }
                    let fresh = Some(fresh).filter(|_| kept.same.is_some());
                    (Some(kept.position), kept.same, kept.posted, fresh)
                }
            };
            // What is kept is what will go out: a file's topic and words may have given way to it.
            let (topic, further_topics, words) = match (&same, position) {
                (Some(_), Some(id)) => {
                    let now = self.desk.read(move |db| find(db, id)).await?;
                    let words = CoachWords::kept(&now)?;
                    (now.topic, now.further_topics, words)
                }
                _ => (one.topic.map(String::from), Vec::new(), one.words),
            };
            out.push(CheckedPosition {
                position,
                topic,
                further_topics,
                words,
                same,
                posted,
                fresh,
                report: one.report,
                picture,
            });
        }
        Ok(out)
    }
}

/// Refuses a file that is too heavy.
pub(super) fn light(file: &str, bytes: usize) -> Done<()> {
    if bytes <= LARGEST_FILE {
        return Ok(());
    }
    bad_request(Refusal::FileTooHeavy {
        file: file.to_owned().into(),
        size: bytes.div_ceil(1 << 20).into(),
        most: (LARGEST_FILE >> 20).into(),
    })
}

/// File and id as the coach gave them; an id made of the file's name already says both.
pub(super) fn source(file: &str, id: &str) -> String {
    let source = if id.starts_with(file) {
        id.to_owned()
    } else {
        format!("{file}: {id}")
    };
    text::body(&source.replace('\n', " "), 300).0
}
