//! The desk as a whole, on a store in a file and with a clock that stands until it is set.

mod cards;
mod coach;
mod coach_lines;
mod coach_words;
mod content;
mod doubt;
mod drafts;
mod edit;
mod figures;
mod homework;
mod interrupted;
mod lesson_walk;
mod lessons;
mod order;
mod outbox;
mod people;
mod replies;
mod restart;
mod spoken;
mod store_use;
mod taken_out;
mod tongue;
mod topic;
mod waiting;
mod week;

use std::sync::Arc;

use chrono::{DateTime, Utc};
use sealed_move_store::Store;
use tempfile::TempDir;

use super::{rounds::Look, *};
use crate::{
    chat::pictures::{self, alt},
    chess::{Stipulation, fact::Side},
    words::{english, words},
};

/// Two chats, of which the desk knows no more than their keys.
pub(super) const ROOM: ChatKey = ChatKey::of("room");
pub(super) const DISCORD: ChatKey = ChatKey::of("discord");

/// What the chat of a place declares of itself.
pub(super) fn manners(place: &Place) -> Manners {
    match place.chat {
        DISCORD => Manners {
            names: Names::ByChat,
            delivery: Delivery::Sent,
        },
        _ => Manners {
            names: Names::ByMember,
            delivery: Delivery::Shown,
        },
    }
}

/// Positions of our own making, mates on the back rank in one to three.
pub(super) const FILE: &str = "\
6k1/5ppp/8/8/8/8/8/R5K1 w - - id \"a\"; dm 1; c0 \"Back rank\";
6k1/5ppp/8/8/8/8/8/1R4K1 w - - id \"b\"; dm 1; c0 \"Back rank\";
6k1/5ppp/8/8/8/8/8/2R3K1 w - - id \"c\"; dm 1; c0 \"Back rank\";
6k1/5ppp/8/8/8/8/8/3R2K1 w - - id \"d\"; dm 1; c0 \"Back rank\";
6k1/5ppp/8/8/8/8/8/4R1K1 w - - id \"e\"; dm 1; c0 \"Back rank\";
6k1/5ppp/8/8/8/8/6PP/R6K w - - id \"f\"; dm 1; c0 \"Back rank\";
r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - id \"two\"; dm 2; c0 \"Back rank\"; c1 \"Two rooks against two.\";
1rrr2k1/5ppp/8/8/8/3R4/3R1PPP/3Q2K1 w - - id \"three\"; dm 3; c0 \"Back rank\";
";

pub(super) fn at(text: &str) -> DateTime<Utc> {
    DateTime::parse_from_rfc3339(text).expect("a time").to_utc()
}

pub(super) fn person(name: &str) -> Person {
    Person {
        user: format!("u-{name}"),
        name: name.into(),
        language: None,
    }
}

/// A group with its coach, on a store in a folder of its own.
pub(super) struct Club {
    folder: Arc<TempDir>,
    pub clock: TestClock,
    pub desk: Desk,
    pub place: Place,
    pub coach: Person,
}

impl Club {
    /// A group that meets daily at 18:00 in `zone`, founded at `now`.
    pub async fn new(now: &str, zone: chrono_tz::Tz) -> Self {
        let folder = Arc::new(TempDir::new().expect("a folder"));
        let clock = TestClock::at(at(now));
        let desk = desk(&folder, &clock);
        let club = Self {
            folder,
            clock,
            desk,
            place: Place {
                chat: ROOM,
                channel: "club".into(),
            },
            coach: person("Coach"),
        };
        club.found(&club.place, zone).await;
        club
    }

    /// Another program on the same file.
    pub fn elsewhere(&self) -> Desk {
        desk(&self.folder, &self.clock)
    }

    pub async fn found(&self, place: &Place, zone: chrono_tz::Tz) {
        let settings = Settings {
            zone,
            wrong_cost: Points::of(1.0),
            ..Settings::default()
        };
        self.desk
            .found_group(place, manners(place), None, settings, &self.coach)
            .await
            .expect("founded");
    }

    /// The program stops, at whatever point it is, and starts again on the same file.
    pub fn restart(&mut self) {
        self.desk = desk(&self.folder, &self.clock);
    }

    pub async fn import(&self, place: &Place, file: &str) -> Vec<CheckedPosition> {
        self.desk
            .coach()
            .import(
                place,
                &self.coach,
                "week.epd",
                file.into(),
                Arc::new(|_, _| {}),
            )
            .await
            .expect("read")
    }

    /// Imports and queues the first `most` positions of [`FILE`].
    pub async fn fill(&self, place: &Place, most: usize) -> Vec<ItemId> {
        let file: Vec<&str> = FILE.lines().take(most).collect();
        let mut items = Vec::new();
        for checked in self.import(place, &file.join("\n")).await {
            let position = checked.position.expect("kept");
            let item = self
                .desk
                .coach()
                .enqueue(place, &self.coach, position, false)
                .await;
            items.push(item.expect("queued"));
        }
        items
    }

    /// What must go out in the room now, if anything.
    pub async fn errand(&self) -> Option<Errand> {
        errand_in(&self.desk, ROOM).await
    }

    pub fn set(&self, now: &str) {
        self.clock.set(at(now));
    }

    /// Carries out everything that is due now and says what it was.
    pub async fn carry_all(&self) -> Vec<String> {
        let mut carried = Vec::new();
        while let Some(errand) = self.errand().await {
            carried.push(said(&errand));
            self.carried(&errand).await;
        }
        carried
    }

    pub async fn carried(&self, errand: &Errand) {
        let delivered = Delivered {
            message: Some(format!("message {}", said(errand))),
            thread: None,
        };
        self.desk
            .rounds()
            .errand_done(errand, &delivered)
            .await
            .expect("written down");
    }

    /// Posts the position with this id of [`FILE`] and returns the post.
    pub async fn open(&self, id: &str) -> PostId {
        let line = FILE
            .lines()
            .find(|line| line.contains(&format!("id \"{id}\"")))
            .expect("in the file");
        self.open_anyway(line).await
    }

    /// Posts the position of a line of EPD, sound or not, and returns the post.
    pub async fn open_anyway(&self, epd: &str) -> PostId {
        let position = self.import(&self.place, epd).await[0]
            .position
            .expect("kept");
        let item = self
            .desk
            .coach()
            .enqueue(&self.place, &self.coach, position, true)
            .await
            .expect("queued");
        self.post_of(item).await
    }

    /// An item is posted at once; the post it has become.
    async fn post_of(&self, item: ItemId) -> PostId {
        self.desk
            .coach()
            .post_now(&self.place, &self.coach, Some(item))
            .await
            .expect("posted");
        let errand = self.errand().await.expect("an errand");
        self.carried(&errand).await;
        match errand.kind {
            ErrandKind::Post { sheet, .. } => sheet.post,
            other => panic!("a post, not {other:?}"),
        }
    }
}

pub(super) async fn errand_in(desk: &Desk, chat: ChatKey) -> Option<Errand> {
    loop {
        match desk.rounds().look(chat).await.expect("the store works") {
            Look::Go(errand) => return Some(errand),
            Look::Again => {}
            Look::Wait(_) => return None,
        }
    }
}

/// When the desk will look again by itself.
pub(super) async fn waits_until(desk: &Desk, chat: ChatKey) -> Option<DateTime<Utc>> {
    loop {
        match desk.rounds().look(chat).await.expect("the store works") {
            Look::Go(errand) => panic!("nothing to do, not {errand:?}"),
            Look::Again => {}
            Look::Wait(until) => return until,
        }
    }
}

fn desk(folder: &TempDir, clock: &TestClock) -> Desk {
    let store = Store::open(&folder.path().join("group.db")).expect("a store");
    let options = DeskOptions {
        threads: 2,
        table_bytes: 1 << 20,
        look_for_others: std::time::Duration::from_millis(20),
        ..DeskOptions::speaking(pictures::say)
    };
    Desk::with_options(store, Arc::new(clock.clone()), options)
}

/// An errand in a few words.
pub(super) fn said(errand: &Errand) -> String {
    let again = |again: &bool| if *again { " again" } else { "" };
    match &errand.kind {
        ErrandKind::Post { sheet, again: a } => format!("post {}{}", sheet.number, again(a)),
        ErrandKind::Reveal { sheet, again: a } => {
            format!("reveal {}{}", sheet.post.number, again(a))
        }
        ErrandKind::TellCoach(notice) => format!("coach: {}", serde_json::json!(notice)),
        ErrandKind::AnswerMember(told) => {
            format!("{} is answered: {}", told.user, told.row.words)
        }
        ErrandKind::TellMember { user, sheet, .. } => format!("{user}: {}", in_words(&sheet.said)),
        ErrandKind::AskLeave(asked) => format!("{} may show? {}", asked.user, asked.text),
        ErrandKind::Example(sheet) => match &sheet.shown {
            None => format!("example {} taken back", sheet.number),
            Some(shown) => {
                let by = shown.name.as_deref().unwrap_or("somebody");
                format!("example {} by {by}: {}", sheet.number, shown.text)
            }
        },
    }
}

impl DeskError {
    /// Why, in English.
    pub(in crate::desk) fn in_english(&self) -> String {
        english().say(&self.why())
    }
}

/// Facts in words.
fn in_words(said: &Said) -> String {
    words(said.language.as_str()).tell(&said.facts)
}

/// What these tests read of a problem, all of whose posts they are unless they say otherwise.
pub(super) struct ProblemSheet<'a> {
    pub side: Side,
    pub stipulation: Stipulation,
    pub words: &'a str,
    pub picture: &'a Picture,
}

impl PostSheet {
    pub(super) fn problem(&self) -> ProblemSheet<'_> {
        match &self.content {
            Content::Problem {
                stipulation,
                side,
                words,
                picture,
            } => ProblemSheet {
                side: *side,
                stipulation: *stipulation,
                words,
                picture,
            },
            Content::Question(_) | Content::Words(_) => panic!("a problem"),
        }
    }
}

impl RevealSheet {
    pub(super) fn solution(&self) -> &Solution {
        match &self.shows {
            Shown::Solution(solution) => solution,
            Shown::Answered { .. } => panic!("a solution"),
        }
    }
}

impl VerdictSheet {
    pub(super) fn verdict(&self) -> Verdict {
        self.outcome.verdict().expect("a verdict")
    }
}

/// A problem that waits.
pub(crate) struct QueuedProblem {
    pub position: PositionId,
    pub soundness: Soundness,
    pub posted: Option<PostedBefore>,
    pub further_topics: Vec<String>,
}

impl QueueItem {
    pub(crate) fn problem(&self) -> QueuedProblem {
        match &self.holds {
            Queued::Problem {
                position,
                soundness,
                posted,
                further_topics,
                ..
            } => QueuedProblem {
                position: *position,
                soundness: *soundness,
                posted: *posted,
                further_topics: further_topics.clone(),
            },
            Queued::Question { .. } | Queued::Words { .. } => panic!("a problem"),
        }
    }
}
