//! What is kept of a person, written out.

use std::collections::HashMap;

use sealed_move_store::{Attempt, Db, Group, KeptPerson};
use serde_json::Value;

use super::{
    Points, ReplyId, attempt,
    error::{DeskError, Done},
    tongue,
};

/// What is kept, with the points of each verdict that counts as they were counted; what the judge gave
/// before the prices of tries and hints stands beside them.
pub(super) fn exported(db: &Db<'_>, group: &Group, kept: KeptPerson) -> Done<Value> {
    let mut counted: HashMap<ReplyId, Points> = HashMap::new();
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
            .unwrap_or_default();
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
                verdict.insert("points".into(), f64::from(points).into());
            }
        }
    }
    Ok(out)
}
