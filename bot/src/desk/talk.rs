//! Talk among members as everyone reads it, for a chat that has no memory of its own.

use sealed_move_store::{Lines, TalkLine};

use super::{Desk, Place, Rank, TalkRow, error::Done, handle::group_at};

impl Desk {
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
