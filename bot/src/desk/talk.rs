//! Talk between members, for a chat that has no memory of its own, and values that a chat wants
//! remembered over a restart.

use sealed_move_store::{Lines, TalkLine};

use super::{
    Desk, Person, Place, Rank, TalkRow, convert,
    error::{Done, bad_request, not_allowed},
    handle::{group_at, member, member_of},
    members::{mute_now, muted_fact},
    refusal::Refusal,
    text,
};

/// The most characters of a line of talk.
pub const LONGEST_LINE: usize = 4_000;

impl Desk {
    /// Keeps a line of talk (the room's own chat) and returns its id.
    ///
    /// # Errors
    /// When there is nothing in it, or too much; when a coach has muted the member.
    pub async fn say(&self, place: &Place, person: &Person, text: &str) -> Done<i64> {
        let (text, cut) = text::body(text, LONGEST_LINE);
        if text.is_empty() {
            return bad_request(Refusal::NothingToSay);
        }
        if cut {
            return bad_request(Refusal::TalkTooLong {
                most: LONGEST_LINE.into(),
            });
        }
        let now = self.now();
        let (place, person) = (place.clone(), person.clone());
        self.write(move |tx| {
            let group = group_at(tx, &place)?;
            let member = member(tx, &group, &person, now)?;
            if let Some(mute) = mute_now(&member_of(tx, &group, member)?, now) {
                let settings = convert::kept_settings(&group.settings)?;
                return not_allowed(muted_fact(mute, &settings));
            }
            Ok(tx.insert_talk(group.id, member, &text, now)?)
        })
        .await
    }

    /// Talk after line `after`, oldest first, at most `most` lines.
    pub async fn talk(&self, place: &Place, after: i64, most: usize) -> Done<Vec<TalkRow>> {
        let place = place.clone();
        self.read(move |db| {
            let group = group_at(db, &place)?;
            Ok(db
                .talk_after(group.id, after, most)?
                .into_iter()
                .map(row)
                .collect())
        })
        .await
    }

    /// The last `most` lines of talk before line `before` (the very last without it), oldest first.
    pub async fn talk_before(
        &self,
        place: &Place,
        before: Option<i64>,
        most: usize,
    ) -> Done<Vec<TalkRow>> {
        let place = place.clone();
        self.read(move |db| {
            let group = group_at(db, &place)?;
            let lines = db.talk_before(group.id, before.unwrap_or(i64::MAX), most, Lines::Seen)?;
            Ok(lines.into_iter().map(row).collect())
        })
        .await
    }
}

/// A line as everyone sees it.
pub(super) fn row(line: TalkLine) -> TalkRow {
    TalkRow {
        id: line.id,
        by: line.member_id,
        rank: Rank::of(line.coach),
        name: line.name,
        text: line.text,
        said_at: line.said_at,
    }
}
