//! Talk among members, said and taken back.

use super::MemberDesk;
use crate::desk::{
    Person, Place, convert,
    error::{Done, bad_request, not_allowed, not_found},
    handle::{group_at, member, member_of},
    members::{mute_now, muted_fact},
    refusal::Refusal,
    text,
};

/// The most characters of a line of talk.
pub const LONGEST_LINE: usize = 4_000;

impl MemberDesk<'_> {
    /// Keeps a line of talk (the room's own chat) and returns its id.
    ///
    /// # Errors
    /// When there is nothing in it, or too much; when a coach has muted the member.
    pub async fn say(self, place: &Place, person: &Person, text: &str) -> Done<i64> {
        let (text, cut) = text::body(text, LONGEST_LINE);
        if text.is_empty() {
            return bad_request(Refusal::NothingToSay);
        }
        if cut {
            return bad_request(Refusal::TalkTooLong {
                most: LONGEST_LINE.into(),
            });
        }
        let now = self.desk.now();
        let (place, person) = (place.clone(), person.clone());
        self.desk
            .write(move |tx| {
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

    /// Takes back a line of talk: its writer's own only.
    ///
    /// # Errors
    /// When it is not theirs, or there is no such line.
    pub async fn take_back(self, place: &Place, person: &Person, line: i64) -> Done<()> {
        let now = self.desk.now();
        let (place, user) = (place.clone(), person.user.clone());
        self.desk
            .write(move |tx| {
                let group = group_at(tx, &place)?;
                let member = tx.member_by_user(group.id, &user)?;
                // Of others' messages nothing is said, not even whether there is one.
                let own = match (member, tx.talk_line(line)?) {
                    (Some(member), Some(line)) if line.member_id == member.id => {
                        Some((member, line))
                    }
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
}
