//! Messages out of sight, taken back by their writer or hidden by a coach: how, by whom and when.

use chrono::{DateTime, Utc};
use sealed_move_store::Deed;
use serde::Serialize;

use super::{
    Desk, MemberId, Person, Place, ReplyId,
    deeds::{DeedNote, did},
    error::{Done, not_found},
    handle::group_at,
    refusal::Refusal,
};

/// How many lines that are gone a page is told of when it connects again.
const TOLD: usize = 1_000;

/// How a message went out of sight.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum How {
    /// Its writer took it back.
    TakenBack,
    /// A coach hid it.
    Hidden,
}

/// A message out of sight, for a coach.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct GoneRow {
    /// How.
    pub how: How,
    /// By whom; `None` once they were erased.
    pub by: Option<String>,
    /// When.
    pub at: DateTime<Utc>,
}

impl GoneRow {
    /// From a row of the store: `writer` wrote what is gone.
    pub(super) fn of(gone: sealed_move_store::Gone, writer: MemberId) -> Self {
        Self {
            how: if gone.by_id == Some(writer) {
                How::TakenBack
            } else {
                How::Hidden
            },
            by: gone.by,
            at: gone.at,
        }
    }
}

impl Desk {
    /// The ids of lines up to line `until` that went out of sight: for a page that may show them still.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub async fn gone_lines(&self, place: &Place, until: i64) -> Done<Vec<i64>> {
        let place = place.clone();
        self.read(move |db| {
            let group = group_at(db, &place)?;
            Ok(db.talk_gone(group.id, until, TOLD)?)
        })
        .await
    }

    /// Takes the words of an answer out of the group's sight, where answers are open: what came of it
    /// stands. The writer may take back their own, a coach may hide any.
    ///
    /// # Errors
    /// When it is somebody else's and the person is no coach.
    pub async fn hide_answer(&self, place: &Place, person: &Person, reply: ReplyId) -> Done<()> {
        let now = self.now();
        let (place, user) = (place.clone(), person.user.clone());
        self.write(move |tx| {
            let group = group_at(tx, &place)?;
            let by = tx.member_by_user(group.id, &user)?;
            let found = match (by, tx.reply(reply)?) {
                (Some(by), Some(reply)) => match tx.member(reply.member_id)? {
                    Some(writer)
                        if writer.group_id == group.id && (by.coach || by.id == writer.id) =>
                    {
                        Some((by, reply, writer))
                    }
                    _ => None,
                },
                _ => None,
            };
            let Some((by, reply, writer)) = found else {
                return not_found(Refusal::NoAnswerOfYours);
            };
            tx.set_reply_gone(reply.id, Some((by.id, now)))?;
            if by.id != writer.id {
                did(
                    tx,
                    &group,
                    &by,
                    Deed::Hide,
                    Some(writer.id),
                    &DeedNote::NoteAnswer.to_keep(),
                    now,
                )?;
            }
            Ok(())
        })
        .await
    }
}
