//! What is kept of a person: handed over in full, and erased on their word.

use std::collections::HashMap;

use sealed_move_store::{Attempt, Db, Group, KeptPerson};
use serde_json::Value;

use super::{
    Desk, Person, Place, ReplyId, attempt,
    error::{DeskError, Done, not_allowed, not_found},
    handle::group_at,
    names::NAMELESS_COACH,
    refusal::Refusal,
    tongue,
};

impl Desk {
    /// Everything kept of a person in this group, as JSON.
    ///
    /// # Errors
    /// When nothing is.
    pub async fn kept_of_me(&self, place: &Place, person: &Person) -> Done<Value> {
        let (place, user) = (place.clone(), person.user.clone());
        self.read(move |db| {
            let group = group_at(db, &place)?;
            let kept = match db.member_by_user(group.id, &user)? {
                Some(member) => db.kept_of(member.id)?,
                None => None,
            };
            match kept {
                Some(kept) => exported(db, &group, kept),
                None => not_found(Refusal::NothingKeptOfYou),
            }
        })
        .await
    }

    /// Erases everything kept of a person in this group: replies, verdicts, points, hints, talk, name.
    /// Of a coach, that they coach the group stays, under the name "Coach": somebody has to run it. One
    /// who wants that erased as well is first made a coach no longer.
    ///
    /// # Errors
    /// When nothing is kept, or the person is shut out and has to ask a coach.
    pub async fn erase_me(&self, place: &Place, person: &Person) -> Done<()> {
        let now = self.now();
        let (place, user) = (place.clone(), person.user.clone());
        self.write(move |tx| {
            let group = group_at(tx, &place)?;
            let Some(member) = tx.member_by_user(group.id, &user)? else {
                return not_found(Refusal::NothingKeptOfYou);
            };
            if member.removed_at.is_some() {
                // Erasing would forget that they are shut out: that is for the coach to do.
                return not_allowed(Refusal::ShutOut);
            }
            tx.delete_member(member.id)?;
            if member.coach {
                let coach = tx.upsert_member(group.id, &user, NAMELESS_COACH, now)?;
                tx.set_coach(coach, true)?;
            }
            Ok(())
        })
        .await?;
        // So that no trace is left in the unused parts of the files.
        Ok(self.inner.store.scrub().await?)
    }
}

/// What is kept, with the points of each verdict that counts as they were counted; what the judge gave
/// before the prices of tries and hints stands beside them.
pub(super) fn exported(db: &Db<'_>, group: &Group, kept: KeptPerson) -> Done<Value> {
    let mut counted: HashMap<ReplyId, f64> = HashMap::new();
    for attempt in &kept.attempts {
        let Attempt {
            post_id, member_id, ..
        } = attempt.attempt;
        if let Some(post) = db.post(post_id)? {
            let work = attempt::work(db, &post, member_id)?;
            counted.extend(
                work.after
                    .iter()
                    .map(|(reply, after)| (*reply, after.points)),
            );
        }
    }
    let member = db.member_by_user(group.id, &kept.chat_user)?;
    let language = tongue::of_member(group, member.as_ref())?;
    let mut out = serde_json::to_value(kept).map_err(|error| {
        DeskError::damaged(format!("what is kept cannot be written out ({error})"))
    })?;
    if let Some(out) = out.as_object_mut() {
        out.insert("language".into(), String::from(language).into());
    }
    let replies = out.get_mut("replies").and_then(Value::as_array_mut);
    for reply in replies.into_iter().flatten() {
        let points = reply
            .get("id")
            .and_then(Value::as_i64)
            .and_then(|id| counted.get(&ReplyId::of(id)))
            .copied()
            .unwrap_or(0.0);
        let verdicts = reply.get_mut("verdicts").and_then(Value::as_array_mut);
        let Some(verdicts) = verdicts else { continue };
        let last = verdicts.len().saturating_sub(1);
        for (at, verdict) in verdicts
            .iter_mut()
            .filter_map(Value::as_object_mut)
            .enumerate()
        {
            if let Some(judged) = verdict.remove("points") {
                verdict.insert("points_before_prices".into(), judged);
            }
            if at == last {
                verdict.insert("points".into(), points.into());
            }
        }
    }
    Ok(out)
}
