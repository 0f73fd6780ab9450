//! Messages that a coach takes out of everyone's sight. They are gone for everyone at once, and kept for the
//! coaches with who did it and when.

use sealed_move_store::{Deed, Lines, Member, TalkLine};
use serde::Serialize;

use super::CoachDesk;
use crate::desk::{
    GroupId, Person, Place, ReplyId, TalkRow,
    deeds::{DeedNote, did},
    error::{Done, bad_request, not_found},
    gone::GoneRow,
    handle::{coached, coaching},
    refusal::Refusal,
    talk,
};

/// A line of talk as a coach sees it.
#[derive(Clone, Debug, Serialize)]
pub struct WatchedRow {
    /// The line.
    #[serde(flatten)]
    pub line: TalkRow,
    /// How it went out of sight, if it did.
    pub gone: Option<GoneRow>,
}

impl CoachDesk<'_> {
    /// Takes any line of talk out of everyone's sight. Coaches only.
    ///
    /// # Errors
    /// When there is no such line in the group.
    pub async fn hide(self, place: &Place, coach: &Person, line: i64) -> Done<()> {
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let (group, by) = coaching(tx, &place, &coach)?;
                let (line, writer) = line_of(tx, group.id, line)?;
                if line.gone.is_none() {
                    tx.set_talk_gone(line.id, Some((by.id, now)))?;
                    did(tx, &group, &by, Deed::Hide, Some(writer.id), "", now)?;
                }
                Ok(())
            })
            .await
    }

    /// Puts a line back that a coach has hidden. Coaches only.
    ///
    /// # Errors
    /// When its writer took it back: that is their word.
    pub async fn put_back(self, place: &Place, coach: &Person, line: i64) -> Done<()> {
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let (group, by) = coaching(tx, &place, &coach)?;
                let (line, writer) = line_of(tx, group.id, line)?;
                let Some(gone) = line.gone else { return Ok(()) };
                if gone.by_id == Some(writer.id) {
                    return bad_request(Refusal::MessageTakenBack);
                }
                tx.set_talk_gone(line.id, None)?;
                did(tx, &group, &by, Deed::PutBack, Some(writer.id), "", now)
            })
            .await
    }

    /// The last `most` lines before line `before`, those out of sight among them. Coaches only.
    ///
    /// # Errors
    /// When the person is no coach.
    pub async fn watched_talk(
        self,
        place: &Place,
        coach: &Person,
        before: Option<i64>,
        most: usize,
    ) -> Done<Vec<WatchedRow>> {
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .read(move |db| {
                let group = coached(db, &place, &coach)?;
                let before = before.unwrap_or(i64::MAX);
                let lines = db.talk_before(group.id, before, most, Lines::All)?;
                Ok(lines.into_iter().map(watched).collect())
            })
            .await
    }

    /// Shows the words of an answer to the group again that a coach has hidden. Coaches only.
    ///
    /// # Errors
    /// When its writer took them back.
    pub async fn put_back_answer(self, place: &Place, coach: &Person, reply: ReplyId) -> Done<()> {
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let (group, by) = coaching(tx, &place, &coach)?;
                let reply = crate::desk::answers::reply_of(tx, &group, reply)?;
                let own = tx
                    .replies_of(reply.post_id, reply.member_id)?
                    .into_iter()
                    .find(|of| of.reply.id == reply.id)
                    .and_then(|of| of.gone)
                    .is_some_and(|gone| gone.by_id == Some(reply.member_id));
                if own {
                    return bad_request(Refusal::AnswerTakenBack);
                }
                tx.set_reply_gone(reply.id, None)?;
                did(
                    tx,
                    &group,
                    &by,
                    Deed::PutBack,
                    Some(reply.member_id),
                    &DeedNote::NoteAnswer.to_keep(),
                    now,
                )
            })
            .await
    }
}

/// A line of the group with its writer.
fn line_of(db: &sealed_move_store::Db<'_>, group: GroupId, line: i64) -> Done<(TalkLine, Member)> {
    let Some(line) = db.talk_line(line)? else {
        return not_found(Refusal::NoMessage);
    };
    match db.member(line.member_id)? {
        Some(writer) if writer.group_id == group => Ok((line, writer)),
        _ => not_found(Refusal::NoMessage),
    }
}

fn watched(mut line: TalkLine) -> WatchedRow {
    let gone = line
        .gone
        .take()
        .map(|gone| GoneRow::of(gone, line.member_id));
    WatchedRow {
        line: talk::row(line),
        gone,
    }
}
