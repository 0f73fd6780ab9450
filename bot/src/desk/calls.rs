//! The calls. Split by who asks: see the files of this folder.

use std::sync::Arc;

use chrono::{DateTime, Utc};

use super::{clock::Clock, errand::*, sheets::*};
use sealed_move_store::Store;

/// Why the desk could not do what was asked; the text is for the person who asked.
#[derive(Debug, thiserror::Error)]
pub enum DeskError {
    /// The store failed.
    #[error(
        "the store could not be read or written: {0}. Nothing that was already kept is lost; check the disk and try again."
    )]
    Store(String),
    /// There is no such thing.
    #[error("{0}")]
    NotFound(String),
    /// The person may not.
    #[error("{0}")]
    NotAllowed(String),
    /// The request makes no sense as it stands.
    #[error("{0}")]
    BadRequest(String),
    /// A picture could not be drawn.
    #[error("{0}")]
    Picture(#[from] crate::diagram::DiagramError),
}

impl From<sealed_move_store::StoreError> for DeskError {
    fn from(error: sealed_move_store::StoreError) -> Self {
        Self::Store(error.to_string())
    }
}

/// The desk. Cheap to clone; all clones are one desk.
#[derive(Clone)]
pub struct Desk {
    pub(super) store: Store,
    pub(super) clock: Arc<dyn Clock>,
}

pub(super) type Done<T> = Result<T, DeskError>;

// ---- groups -----------------------------------------------------------------------------------
impl Desk {
    /// A desk on `store` that tells the time by `clock`.
    pub fn new(store: Store, clock: Arc<dyn Clock>) -> Self {
        Self { store, clock }
    }
    /// The time by the desk's clock.
    pub fn now(&self) -> DateTime<Utc> {
        self.clock.now()
    }
    /// Makes `place` a group's, with `coach` as its first coach. Errs when it is one already.
    pub async fn found_group(
        &self,
        place: &Place,
        server: Option<&str>,
        settings: Settings,
        coach: &Person,
    ) -> Done<()> {
        todo!()
    }
    /// Every group of a chat.
    pub async fn places(&self, chat: ChatName) -> Done<Vec<Place>> {
        todo!()
    }
    /// The group's settings.
    pub async fn settings(&self, place: &Place) -> Done<Settings> {
        todo!()
    }
    /// Changes them. Coaches only.
    pub async fn change_settings(
        &self,
        place: &Place,
        coach: &Person,
        settings: Settings,
    ) -> Done<()> {
        todo!()
    }
    /// Whether this person coaches the group.
    pub async fn is_coach(&self, place: &Place, user: &str) -> Done<bool> {
        todo!()
    }
    /// Names another coach. Coaches only.
    pub async fn add_coach(&self, place: &Place, coach: &Person, new: &Person) -> Done<()> {
        todo!()
    }
}

// ---- the coach --------------------------------------------------------------------------------
impl Desk {
    /// Checks a file and keeps what could be read; the reports come in the file's order.
    /// `progress(done, of)` is called as positions are finished.
    pub async fn import(
        &self,
        place: &Place,
        coach: &Person,
        file: &str,
        bytes: Vec<u8>,
        progress: Arc<dyn Fn(usize, usize) + Send + Sync>,
    ) -> Done<Vec<CheckedPosition>> {
        todo!()
    }
    /// Sets a position's topic (made when new); `None` takes it away.
    pub async fn set_topic(
        &self,
        place: &Place,
        coach: &Person,
        position: i64,
        topic: Option<&str>,
    ) -> Done<()> {
        todo!()
    }
    /// The group's topics by name.
    pub async fn topics(&self, place: &Place) -> Done<Vec<String>> {
        todo!()
    }
    /// Puts a position at the end of the queue. One that is not sound needs `anyway`.
    pub async fn enqueue(
        &self,
        place: &Place,
        coach: &Person,
        position: i64,
        anyway: bool,
    ) -> Done<i64> {
        todo!()
    }
    /// The queue in order, with when each will go out.
    pub async fn queue(&self, place: &Place) -> Done<Vec<QueueItem>> {
        todo!()
    }
    /// Moves an item to place `to` (0 is first).
    pub async fn reorder(&self, place: &Place, coach: &Person, item: i64, to: usize) -> Done<()> {
        todo!()
    }
    /// Fixes an item's time in the group's zone (`2026-12-01T18:00`), or frees it.
    pub async fn fix_time(
        &self,
        place: &Place,
        coach: &Person,
        item: i64,
        local: Option<chrono::NaiveDateTime>,
    ) -> Done<()> {
        todo!()
    }
    /// Takes an item out of the queue; the position stays.
    pub async fn dequeue(&self, place: &Place, coach: &Person, item: i64) -> Done<()> {
        todo!()
    }
    /// The post exactly as members would see it.
    pub async fn preview(&self, place: &Place, coach: &Person, position: i64) -> Done<PostSheet> {
        todo!()
    }
    /// Posts the item (or the next one) as soon as the chat can.
    pub async fn post_now(&self, place: &Place, coach: &Person, item: Option<i64>) -> Done<()> {
        todo!()
    }
    /// Pauses posting, until a moment or until resumed.
    pub async fn pause(
        &self,
        place: &Place,
        coach: &Person,
        until: Option<DateTime<Utc>>,
    ) -> Done<()> {
        todo!()
    }
    /// Ends a pause.
    pub async fn resume(&self, place: &Place, coach: &Person) -> Done<()> {
        todo!()
    }
    /// Whether posting is paused, and until when.
    pub async fn paused(&self, place: &Place) -> Done<Option<Option<DateTime<Utc>>>> {
        todo!()
    }
    /// Closes an open post with its reveal as soon as the chat can.
    pub async fn close_now(&self, place: &Place, coach: &Person, post: i64) -> Done<()> {
        todo!()
    }
    /// Overrules the current verdict on a reply; the leaderboard follows.
    pub async fn overrule(
        &self,
        place: &Place,
        coach: &Person,
        reply: i64,
        verdict: Verdict,
        points: f64,
    ) -> Done<()> {
        todo!()
    }
    /// Replies to a post with their verdicts, for the coach.
    pub async fn replies(&self, place: &Place, coach: &Person, post: i64) -> Done<Vec<ReplyRow>> {
        todo!()
    }
    /// The engagement summary.
    pub async fn summary(&self, place: &Place, period: &Period) -> Done<Summary> {
        todo!()
    }
    /// Charts for the summary.
    pub async fn summary_charts(&self, place: &Place, period: &Period) -> Done<Vec<Picture>> {
        todo!()
    }
}

// ---- members ----------------------------------------------------------------------------------
impl Desk {
    /// Greets a person: makes them a member, or renames them.
    pub async fn enter(&self, place: &Place, person: &Person) -> Done<()> {
        todo!()
    }
    /// The post now open, if any; the latest when several are.
    pub async fn open_post(&self, place: &Place) -> Done<Option<PostSheet>> {
        todo!()
    }
    /// A post by id, open or closed.
    pub async fn post(&self, place: &Place, post: i64) -> Done<PostSheet> {
        todo!()
    }
    /// Ids and numbers of posts, the latest first, closed or open.
    pub async fn posts(&self, place: &Place, most: usize) -> Done<Vec<PostRow>> {
        todo!()
    }
    /// The reveal of a closed post; errs while it is open.
    pub async fn reveal(&self, place: &Place, post: i64) -> Done<RevealSheet> {
        todo!()
    }
    /// An explicit answer to a post. `source` is the chat's id of the message or interaction: the same
    /// source twice counts once.
    pub async fn answer(
        &self,
        place: &Place,
        person: &Person,
        post: i64,
        source: &str,
        text: &str,
    ) -> Done<VerdictSheet> {
        todo!()
    }
    /// A message among others: judged when it plainly answers the open post.
    pub async fn hear(
        &self,
        place: &Place,
        person: &Person,
        source: &str,
        text: &str,
    ) -> Done<Heard> {
        todo!()
    }
    /// The next hint step for this member.
    pub async fn hint(&self, place: &Place, person: &Person, post: i64) -> Done<HintSheet> {
        todo!()
    }
    /// Gives up: the attempt ends, the solution stays sealed until the reveal.
    pub async fn give_up(&self, place: &Place, person: &Person, post: i64) -> Done<String> {
        todo!()
    }
    /// The member's own standing.
    pub async fn progress(&self, place: &Place, person: &Person) -> Done<Progress> {
        todo!()
    }
    /// The board as this member's line stands.
    pub async fn my_board(&self, place: &Place, person: &Person, post: i64) -> Done<Picture> {
        todo!()
    }
    /// The leaderboard.
    pub async fn leaderboard(&self, place: &Place, period: &Period) -> Done<Leaderboard> {
        todo!()
    }
    /// Everything kept of a person in this group, as JSON.
    pub async fn kept_of_me(&self, place: &Place, person: &Person) -> Done<serde_json::Value> {
        todo!()
    }
    /// Erases everything kept of a person in this group.
    pub async fn erase_me(&self, place: &Place, person: &Person) -> Done<()> {
        todo!()
    }
    /// Keeps a line of talk (the room's own chat) and returns its id.
    pub async fn say(&self, place: &Place, person: &Person, text: &str) -> Done<i64> {
        todo!()
    }
    /// Talk after line `after`, oldest first, at most `most` lines.
    pub async fn talk(&self, place: &Place, after: i64, most: usize) -> Done<Vec<TalkRow>> {
        todo!()
    }
}

// ---- errands ----------------------------------------------------------------------------------
impl Desk {
    /// Waits for the next thing that must go out in `chat` and records the intent. Sleeps until the next
    /// due moment; wakes when the queue or the settings change. Unfinished errands of an earlier run
    /// come first, marked `again`.
    pub async fn next_errand(&self, chat: ChatName) -> Done<Errand> {
        todo!()
    }
    /// Records where an errand went.
    pub async fn errand_done(&self, errand: &Errand, delivered: &Delivered) -> Done<()> {
        todo!()
    }
    /// Records that an errand could not be carried out now; it comes again after a pause.
    pub async fn errand_failed(&self, errand: &Errand, why: &str) -> Done<()> {
        todo!()
    }
}
