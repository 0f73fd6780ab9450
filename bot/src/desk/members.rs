//! Where a person stands in a group: their rank, and whether they may talk.

use chrono::{DateTime, Utc};
use sealed_move_store::{Member, Mute};
use serde::Serialize;

use super::{
    Desk, MemberId, Person, Place, convert,
    error::Done,
    handle::group_at,
    refusal::{LocalTime, Refusal},
};

/// Where a person stands in a group.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Not a member.
    Stranger,
    /// A member, or a coach.
    Member(MemberIs),
    /// Shut out by a coach.
    Removed,
}

/// A member as they are known.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MemberIs {
    /// Their id in the group.
    pub id: MemberId,
    /// The first of the ids by which the chat knows them: the same for all their devices.
    pub person: Person,
    /// Rank.
    pub rank: Rank,
    /// Why they may not talk at the moment, in words for them; `None` where they may.
    pub muted: Option<Refusal>,
}

/// Rank in a group. It comes from the store alone, never from a name.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Rank {
    /// A member.
    #[default]
    Member,
    /// A coach.
    Coach,
}

impl Rank {
    /// The rank of a row of the store.
    pub(super) fn of(coach: bool) -> Self {
        if coach { Self::Coach } else { Self::Member }
    }
}

/// The mute that holds at a moment.
pub(super) fn mute_now(member: &Member, now: DateTime<Utc>) -> Option<&Mute> {
    member
        .mute
        .as_ref()
        .filter(|mute| mute.until.is_none_or(|until| until > now))
}

impl Desk {
    /// Where a person stands in the group.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub async fn standing(&self, place: &Place, user: &str) -> Done<Standing> {
        let now = self.now();
        let (place, user) = (place.clone(), user.to_owned());
        self.read(move |db| {
            let group = group_at(db, &place)?;
            let Some(member) = db.member_by_user(group.id, &user)? else {
                return Ok(Standing::Stranger);
            };
            if member.removed_at.is_some() {
                return Ok(Standing::Removed);
            }
            let muted = match mute_now(&member, now) {
                Some(mute) => Some(muted_fact(mute, &convert::kept_settings(&group.settings)?)),
                None => None,
            };
            Ok(Standing::Member(MemberIs {
                id: member.id,
                rank: Rank::of(member.coach),
                person: Person {
                    user: member.chat_user,
                    name: member.name,
                    language: None,
                },
                muted,
            }))
        })
        .await
    }
}

/// What a muted member is told.
pub(super) fn muted_fact(mute: &Mute, settings: &super::Settings) -> Refusal {
    Refusal::Muted {
        until: mute.until.map(|until| LocalTime::at(until, settings.zone)),
        reason: Some(mute.why.clone())
            .filter(|why| !why.is_empty())
            .map(Into::into),
    }
}
