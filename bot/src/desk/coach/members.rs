//! Members in a coach's hands: who they are, keeping one from talking, shutting one out, another name,
//! two that are one person, and what is kept of them.

use chrono::{DateTime, TimeDelta, Utc};
use sealed_move_store::{Deed, Member, Mute, Tx};
use serde::Serialize;

use super::CoachDesk;
use crate::desk::{
    MemberId, Person, Place,
    attempt::{self, GaveUp},
    deeds::{DeedNote, did},
    error::{Done, bad_request, not_found},
    handle::{coached, coaching, member_of},
    members::{Rank, mute_now},
    names,
    privacy::exported,
    refusal::{Fate, Refusal},
    text,
};

/// The longest time for which a member is muted with an end: a year.
const LONGEST_MUTE: i64 = 366 * 24 * 60;

/// The most characters of a reason.
const LONGEST_REASON: usize = 200;

/// A member in a coach's list.
#[derive(Clone, Debug, Serialize)]
pub struct Listed {
    /// Id.
    pub id: MemberId,
    /// Name.
    pub name: String,
    /// Rank.
    pub rank: Rank,
    /// Since when they belong to the group.
    pub joined_at: DateTime<Utc>,
    /// How many answers they sent.
    pub answers: u32,
    /// How many devices or accounts are theirs, the first one included.
    pub devices: usize,
    /// Until when they may not talk: an empty end is until the coach lifts it.
    pub muted: Option<MutedUntil>,
    /// Since when they are shut out.
    pub removed_at: Option<DateTime<Utc>>,
}

/// Until when a member may not talk, and why.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct MutedUntil {
    /// The end; `None` until a coach lifts it.
    pub until: Option<DateTime<Utc>>,
    /// The reason; may be empty.
    pub why: String,
}

/// What became of a member who was merged into another.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Merged {
    /// The one that is left.
    pub name: String,
    /// Every id by which the chat knows them now.
    pub users: Vec<String>,
}

/// A coach's deed on a member, while it is done.
struct Step {
    group: sealed_move_store::Group,
    by: Member,
    member: Member,
    now: DateTime<Utc>,
}

impl Step {
    fn did(&self, tx: &Tx<'_>, deed: Deed, note: &str) -> Done<()> {
        let about = Some(self.member.id);
        did(tx, &self.group, &self.by, deed, about, note, self.now)
    }

    fn no_coach(&self, what: Fate) -> Done<()> {
        if self.member.coach {
            return bad_request(Refusal::CoachIsNot {
                name: self.member.name.clone().into(),
                what,
            });
        }
        Ok(())
    }
}

impl CoachDesk<'_> {
    /// The group's members by name, with how they stand. Coaches only.
    ///
    /// # Errors
    /// When the person is no coach.
    pub async fn roll(self, place: &Place, coach: &Person) -> Done<Vec<Listed>> {
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .read(move |db| {
                let group = coached(db, &place, &coach)?;
                db.members(group.id)?
                    .into_iter()
                    .map(|member| {
                        Ok(Listed {
                            id: member.id,
                            rank: Rank::of(member.coach),
                            joined_at: member.joined_at,
                            answers: db.reply_count(member.id)?,
                            devices: db.ids_of(member.id)?.len(),
                            muted: mute_now(&member, now).map(|mute| MutedUntil {
                                until: mute.until,
                                why: mute.why.clone(),
                            }),
                            removed_at: member.removed_at,
                            name: member.name,
                        })
                    })
                    .collect()
            })
            .await
    }

    /// The id of a member by the chat's id of the person. Coaches only.
    ///
    /// # Errors
    /// When there is no such member, or the asker is no coach.
    pub async fn member_known_as(
        self,
        place: &Place,
        coach: &Person,
        user: &str,
    ) -> Done<MemberId> {
        let (place, coach, user) = (place.clone(), coach.clone(), user.to_owned());
        self.desk
            .read(move |db| {
                let group = coached(db, &place, &coach)?;
                match db.member_by_user(group.id, &user)? {
                    Some(member) => Ok(member.id),
                    None => not_found(Refusal::NothingKeptOfThem),
                }
            })
            .await
    }

    /// Gives a member another name. Coaches only.
    ///
    /// # Errors
    /// [`DeskError::NameTaken`] when the name is another's, or looks like it.
    pub async fn rename(
        self,
        place: &Place,
        coach: &Person,
        member: MemberId,
        name: &str,
    ) -> Done<String> {
        let name = name.to_owned();
        self.by_coach(place, coach, member, move |tx, step| {
            let new = names::claim(tx, step.group.id, Some(&step.member), &name)?;
            if new != step.member.name {
                tx.rename_member(step.member.id, &new)?;
                let note = format!("{} → {new}", step.member.name);
                step.did(tx, Deed::Rename, &note)?;
            }
            Ok(new)
        })
        .await
    }

    /// Keeps a member from talking, for so many minutes or (`None`) until a coach lifts it; they can
    /// still answer. Coaches only.
    ///
    /// # Errors
    /// When the member coaches the group, or the time or the reason is out of its bounds.
    pub async fn mute(
        self,
        place: &Place,
        coach: &Person,
        member: MemberId,
        minutes: Option<i64>,
        why: &str,
    ) -> Done<()> {
        if minutes.is_some_and(|minutes| !(1..=LONGEST_MUTE).contains(&minutes)) {
            return bad_request(Refusal::MuteLength);
        }
        let (why, cut) = text::body(why, LONGEST_REASON);
        if cut {
            return bad_request(Refusal::ReasonTooLong {
                most: LONGEST_REASON.into(),
            });
        }
        let now = self.desk.now();
        self.by_coach(place, coach, member, move |tx, step| {
            step.no_coach(Fate::Muted)?;
            let until = minutes.map(|minutes| now + TimeDelta::minutes(minutes));
            tx.set_mute(
                step.member.id,
                Some(&Mute {
                    at: now,
                    until,
                    why: why.clone(),
                }),
            )?;
            step.did(tx, Deed::Mute, &why)
        })
        .await
    }

    /// Lets a muted member talk again. Coaches only.
    ///
    /// # Errors
    /// When there is no such member.
    pub async fn unmute(self, place: &Place, coach: &Person, member: MemberId) -> Done<()> {
        self.by_coach(place, coach, member, |tx, step| {
            tx.set_mute(step.member.id, None)?;
            step.did(tx, Deed::Unmute, "")
        })
        .await
    }

    /// Shuts a member out; what is kept of them stays. Gives every id by which the chat knows them.
    /// Coaches only.
    ///
    /// # Errors
    /// When the member coaches the group.
    pub async fn remove(
        self,
        place: &Place,
        coach: &Person,
        member: MemberId,
    ) -> Done<Vec<String>> {
        let now = self.desk.now();
        self.by_coach(place, coach, member, move |tx, step| {
            step.no_coach(Fate::Removed)?;
            if step.member.removed_at.is_none() {
                tx.set_removed(step.member.id, Some(now))?;
                step.did(tx, Deed::Remove, "")?;
            }
            Ok(tx.ids_of(step.member.id)?)
        })
        .await
    }

    /// Lets a member back who was shut out. Coaches only.
    ///
    /// # Errors
    /// When there is no such member.
    pub async fn let_back(
        self,
        place: &Place,
        coach: &Person,
        member: MemberId,
    ) -> Done<Vec<String>> {
        self.by_coach(place, coach, member, |tx, step| {
            if step.member.removed_at.is_some() {
                tx.set_removed(step.member.id, None)?;
                step.did(tx, Deed::LetBack, "")?;
            }
            Ok(tx.ids_of(step.member.id)?)
        })
        .await
    }

    /// Makes two members one: everything of `gone` becomes `keep`'s. At a post that both worked on, the
    /// replies of both count in the order they came, and the attempt is worked out anew by the rules
    /// that hold for every attempt. Cannot be undone. Coaches only.
    ///
    /// # Errors
    /// When they are one already, or one of them is shut out.
    pub async fn merge(
        self,
        place: &Place,
        coach: &Person,
        keep: MemberId,
        gone: MemberId,
    ) -> Done<Merged> {
        if keep == gone {
            return bad_request(Refusal::SameMember);
        }
        let now = self.desk.now();
        self.by_coach(place, coach, keep, move |tx, step| {
            let other = member_of(tx, &step.group, gone)?;
            if step.member.removed_at.is_some() || other.removed_at.is_some() {
                return bad_request(Refusal::RemovedNotMerged);
            }
            let shared = tx.shared_posts(keep, gone)?;
            // Whoever is kept from talking under one of two names is kept from it under both.
            let mute = longer(step.member.mute.clone(), other.mute.clone());
            tx.merge_members(keep, gone, now)?;
            tx.set_mute(keep, mute.as_ref())?;
            for shared in shared {
                let Some(post) = tx.post(shared.post_id)? else {
                    continue;
                };
                let gave_up = shared.gave_up.map(|(at, after)| GaveUp { at, after });
                attempt::settle_with(tx, &post, keep, gave_up)?;
            }
            // The coach may have merged themselves.
            let by = if step.by.id == gone {
                &step.member
            } else {
                &step.by
            };
            let note = DeedNote::NoteMerged {
                name: step.member.name.clone().into(),
                other: other.name.clone().into(),
            };
            let note = note.to_keep();
            did(tx, &step.group, by, Deed::Merge, Some(keep), &note, now)?;
            Ok(Merged {
                name: step.member.name.clone(),
                users: tx.ids_of(keep)?,
            })
        })
        .await
    }

    /// Everything kept of a member, as JSON, for a coach to hand over to them. Coaches only.
    ///
    /// # Errors
    /// When there is no such member.
    pub async fn kept_of_member(
        self,
        place: &Place,
        coach: &Person,
        member: MemberId,
    ) -> Done<(String, serde_json::Value)> {
        self.by_coach(place, coach, member, |tx, step| {
            step.did(tx, Deed::Export, "")?;
            let Some(kept) = tx.kept_of(step.member.id)? else {
                return not_found(Refusal::NoMember);
            };
            Ok((step.member.name.clone(), exported(tx, &step.group, kept)?))
        })
        .await
    }

    /// Erases a member with everything kept of them, on their word; gives every id by which the chat
    /// knew them. Of somebody shut out nothing is left either, so that they are shut out no longer.
    /// Coaches only.
    ///
    /// # Errors
    /// When the member coaches the group: coaches erase themselves.
    pub async fn erase_member(
        self,
        place: &Place,
        coach: &Person,
        member: MemberId,
    ) -> Done<Vec<String>> {
        let now = self.desk.now();
        let users = self
            .by_coach(place, coach, member, move |tx, step| {
                step.no_coach(Fate::Erased)?;
                let users = tx.ids_of(step.member.id)?;
                tx.delete_member(step.member.id)?;
                did(tx, &step.group, &step.by, Deed::Erase, None, "", now)?;
                Ok(users)
            })
            .await?;
        // So that no trace is left in the unused parts of the files.
        self.desk.inner.store.scrub().await?;
        Ok(users)
    }

    /// Runs a coach's deed on a member of the group, in one transaction.
    async fn by_coach<T, F>(
        self,
        place: &Place,
        coach: &Person,
        member: MemberId,
        act: F,
    ) -> Done<T>
    where
        T: Send + 'static,
        F: FnOnce(&Tx<'_>, &Step) -> Done<T> + Send + 'static,
    {
        let now = self.desk.now();
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let (group, by) = coaching(tx, &place, &coach)?;
                let member = member_of(tx, &group, member)?;
                act(
                    tx,
                    &Step {
                        group,
                        by,
                        member,
                        now,
                    },
                )
            })
            .await
    }
}

/// Of two mutes the one that lasts longer.
fn longer(one: Option<Mute>, other: Option<Mute>) -> Option<Mute> {
    match (one, other) {
        (Some(one), Some(other)) => {
            let one_lasts = match (one.until, other.until) {
                (None, _) => true,
                (_, None) => false,
                (Some(a), Some(b)) => a >= b,
            };
            Some(if one_lasts { one } else { other })
        }
        (one, other) => one.or(other),
    }
}
