//! Hints in three steps, each recorded before it is given, and giving up.

use sealed_move_store::{AttemptState, Group, Post};

use super::{
    Desk, HintSheet, Person, Place, attempt, convert,
    error::{Done, bad_request},
    handle::{group_at, member, post_of},
    posting::takes_replies,
    replies::{line_before, local, rules},
};
use crate::chess::judge::{self, HINT_STEPS};

impl Desk {
    /// The next hint step for this member: the piece to look at, the idea, the first move. Asked for
    /// once more after the last step, it gives the last one again.
    ///
    /// # Errors
    /// When the post is closed, the member is done with it, or there is no proved solution to hint at.
    pub async fn hint(&self, place: &Place, person: &Person, post: i64) -> Done<HintSheet> {
        let _turn = self.inner.turns.take(post, &person.user).await;
        let now = self.now();
        let at = place.clone();
        let (settings, position) = self
            .read(move |db| {
                let group = group_at(db, &at)?;
                let post = post_of(db, &group, post)?;
                open(&post, takes_replies(&post, now))?;
                let settings = convert::kept_settings(&group.settings)?;
                Ok((settings, db.position(post.position_id)?))
            })
            .await?;
        let problem = match position {
            Some(position) => self.problem(&position.fen, &position.stipulation).await?,
            None => None,
        };
        let Some(problem) = problem else {
            return bad_request("There are no hints for this one; ask your coach.");
        };
        let (at, by) = (place.clone(), person.clone());
        let (step, line) = self
            .write(move |tx| {
                let group: Group = group_at(tx, &at)?;
                let post = post_of(tx, &group, post)?;
                open(&post, takes_replies(&post, now))?;
                let member = member(tx, &group, &by, now)?;
                match tx.attempt(post.id, member)?.map(|attempt| attempt.state) {
                    Some(AttemptState::Solved) => {
                        return bad_request(
                            "You have solved this one; there is nothing left to hint at.",
                        );
                    }
                    Some(AttemptState::GivenUp) => {
                        return bad_request(
                            "You have given this one up; the solution comes with the reveal.",
                        );
                    }
                    Some(AttemptState::Playing) | None => {}
                }
                let step = tx
                    .next_hint(post.id, member, HINT_STEPS, now)?
                    .unwrap_or(HINT_STEPS);
                let line = line_before(&tx.replies_of(post.id, member)?, None);
                Ok((step, line))
            })
            .await?;
        let language = settings.language;
        let text = self
            .inner
            .quick
            .run(
                "working out a hint",
                self.inner.options.reply_seconds,
                move |_| judge::hint(&problem, &line, step, language),
            )
            .await?;
        Ok(HintSheet {
            step,
            text,
            more: step < HINT_STEPS,
        })
    }

    /// The hints this member has taken for a post, in order, for the line as it stands: for a page that
    /// is loaded again. Records nothing.
    pub async fn my_hints(
        &self,
        place: &Place,
        person: &Person,
        post: i64,
    ) -> Done<Vec<HintSheet>> {
        let (at, user) = (place.clone(), person.user.clone());
        let (settings, position, taken, line) = self
            .read(move |db| {
                let group = group_at(db, &at)?;
                let post = post_of(db, &group, post)?;
                let settings = convert::kept_settings(&group.settings)?;
                let (taken, line) = match db.member_by_user(group.id, &user)? {
                    Some(member) => (
                        db.hint_count(post.id, member.id)?,
                        line_before(&db.replies_of(post.id, member.id)?, None),
                    ),
                    None => (0, Vec::new()),
                };
                Ok((settings, db.position(post.position_id)?, taken, line))
            })
            .await?;
        if taken == 0 {
            return Ok(Vec::new());
        }
        let problem = match position {
            Some(position) => self.problem(&position.fen, &position.stipulation).await?,
            None => None,
        };
        let Some(problem) = problem else {
            return Ok(Vec::new());
        };
        let language = settings.language;
        self.inner
            .quick
            .run(
                "working out hints",
                self.inner.options.reply_seconds,
                move |_| {
                    (1..=taken.min(HINT_STEPS))
                        .map(|step| HintSheet {
                            step,
                            text: judge::hint(&problem, &line, step, language),
                            more: step < HINT_STEPS,
                        })
                        .collect()
                },
            )
            .await
    }

    /// Gives up: the attempt ends, the solution stays sealed until the reveal. Returns what to tell the
    /// member.
    ///
    /// # Errors
    /// When the post is closed or solved already.
    pub async fn give_up(&self, place: &Place, person: &Person, post: i64) -> Done<String> {
        let _turn = self.inner.turns.take(post, &person.user).await;
        let now = self.now();
        let (place, person) = (place.clone(), person.clone());
        self.write(move |tx| {
            let group = group_at(tx, &place)?;
            let post = post_of(tx, &group, post)?;
            open(&post, takes_replies(&post, now))?;
            let settings = convert::kept_settings(&group.settings)?;
            let member = member(tx, &group, &person, now)?;
            let reveal = local(&settings, post.closes_at);
            match tx.attempt(post.id, member)?.map(|attempt| attempt.state) {
                Some(AttemptState::Solved) => bad_request("You have solved this one already."),
                Some(AttemptState::GivenUp) => Ok(format!("You gave this one up before. The solution comes at {reveal}.")),
                Some(AttemptState::Playing) | None => {
                    attempt::settle_given_up(tx, post.id, member, rules(&settings), Some(now))?;
                    Ok(format!("You have given this one up. The solution stays sealed until the reveal at {reveal}."))
                }
            }
        })
        .await
    }
}

fn open(post: &Post, takes_replies: bool) -> Done<()> {
    if takes_replies {
        return Ok(());
    }
    bad_request(format!(
        "Post {} is closed; look at its reveal.",
        post.number
    ))
}
