//! Messages that are taken out of sight: taken back by their writer, or hidden by a coach. They are gone
//! for everyone at once, and kept for the coaches with who did it and when.

use sealed_move_store::{Deed, Lines, Member, TalkLine};
use serde::Serialize;

use super::{
    Desk, GroupId, Person, Place, ReplyId, TalkRow,
    deeds::{DeedNote, did},
    error::{Done, bad_request, not_found},
    gone::GoneRow,
    handle::{coached, coaching, group_at},
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

impl Desk {
    /// Takes back a line of talk: its writer's own only.
    ///
    /// # Errors
    /// When it is not theirs, or there is no such line.
    pub async fn take_back(&self, place: &Place, person: &Person, line: i64) -> Done<()> {
        let now = self.now();
        let (place, user) = (place.clone(), person.user.clone());
        self.write(move |tx| {
            let group = group_at(tx, &place)?;
            let member = tx.member_by_user(group.id, &user)?;
            // Of others' messages nothing is said, not even whether there is one.
            let own = match (member, tx.talk_line(line)?) {
                (Some(member), Some(line)) if line.member_id == member.id => Some((member, line)),
                _ => None,
            };
            let Some((member, line)) = own else {
                return not_found(Refusal::NoMessageOfYours);
            };
            if line.gone.is_none() {
                tx.set_talk_gone(line.id, Some((member.id, now)))?;
            }
            Ok(())
        })
        .await
    }

    /// Takes any line of talk out of everyone's sight. Coaches only.
    ///
    /// # Errors
    /// When there is no such line in the group.
    pub async fn hide(&self, place: &Place, coach: &Person, line: i64) -> Done<()> {
        let now = self.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.write(move |tx| {
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
    pub async fn put_back(&self, place: &Place, coach: &Person, line: i64) -> Done<()> {
        let now = self.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.write(move |tx| {
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
        &self,
        place: &Place,
        coach: &Person,
        before: Option<i64>,
        most: usize,
    ) -> Done<Vec<WatchedRow>> {
        let (place, coach) = (place.clone(), coach.clone());
        self.read(move |db| {
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
    pub async fn put_back_answer(&self, place: &Place, coach: &Person, reply: ReplyId) -> Done<()> {
        let now = self.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.write(move |tx| {
            let (group, by) = coaching(tx, &place, &coach)?;
            let reply = super::answers::reply_of(tx, &group, reply)?;
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
