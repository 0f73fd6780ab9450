//! Hints in three steps, each recorded before it is given, and giving up.

use sealed_move_store::{AttemptState, Group, Post};

use super::MemberDesk;
use crate::chess::{
    fact::Hint,
    judge::{self, HINT_STEPS},
};
use crate::desk::{
    HintSheet, Person, Place, PostId, attempt,
    content::{self, problem_at},
    convert,
    error::{Done, bad_request},
    handle::{group_at, member, post_of},
    posting::takes_replies,
    refusal::{Lacking, LocalTime, Refusal},
    replies::line_before,
    said::Said,
    telling::{Told, next_hint},
    tongue,
};

impl MemberDesk<'_> {
    /// The next hint step for this member: the piece to look at, the idea, the move. With each move of a
    /// line that is played out the steps begin anew. Asked for once more after the last step, it gives
    /// the last one again.
    ///
    /// # Errors
    /// When the post is closed, the member is done with it, or there is no proved solution to hint at.
    pub async fn hint(self, place: &Place, person: &Person, post: PostId) -> Done<HintSheet> {
        self.desk.rounds().earlier_first(post, &person.user).await?;
        let _turn = self.desk.inner.turns.take(post, &person.user).await;
        let now = self.desk.now();
        let at = place.clone();
        let posed = self
            .desk
            .read(move |db| {
                let group = group_at(db, &at)?;
                let post = post_of(db, &group, post)?;
                let posed = problem_at(db, &post, Lacking::Hints)?;
                open(&post, takes_replies(&post, now))?;
                Ok(posed)
            })
            .await?;
        let Some(problem) = self.desk.problem(&posed).await? else {
            return bad_request(Refusal::NoHints);
        };
        let (at, by) = (place.clone(), person.clone());
        let (post, member, line, language) = self
            .desk
            .write(move |tx| {
                let group: Group = group_at(tx, &at)?;
                let post = post_of(tx, &group, post)?;
                open(&post, takes_replies(&post, now))?;
                let member = member(tx, &group, &by, now)?;
                match tx.attempt(post.id, member)?.map(|attempt| attempt.state) {
                    Some(AttemptState::Solved) => {
                        return bad_request(Refusal::SolvedNoHint);
                    }
                    Some(AttemptState::GivenUp) => {
                        return bad_request(Refusal::GivenUpNoHint);
                    }
                    Some(AttemptState::Playing) | None => {}
                }
                let line = line_before(&tx.replies_of(post.id, member)?, None);
                Ok((post, member, line, tongue::of_person(tx, &group, &by)?))
            })
            .await?;
        let ply = ply(&line);
        // Worked out before it is recorded: a hint that says nothing costs nothing.
        let texts: Vec<Option<Vec<Hint>>> = self
            .desk
            .inner
            .quick
            .run(
                "working out a hint",
                self.desk.inner.options.reply_seconds,
                move |_| {
                    let step = |step| judge::hint(&problem, &line, step);
                    (1..=HINT_STEPS).map(step).collect()
                },
            )
            .await?;
        let Some(texts) = texts.into_iter().collect::<Option<Vec<_>>>() else {
            return bad_request(Refusal::NoHint);
        };
        let (step, price) = self
            .desk
            .write(move |tx| {
                let step = tx
                    .next_hint(post.id, member, ply, HINT_STEPS, now)?
                    .unwrap_or(HINT_STEPS);
                let work = attempt::settle(tx, &post, member)?;
                Ok((step, next_hint(&work)))
            })
            .await?;
        Ok(HintSheet {
            number: number(ply),
            step,
            said: texts
                .get(usize::from(step) - 1)
                .map(|hint| Said::of(&language, hint))
                .unwrap_or_default(),
            more: step < HINT_STEPS,
            price: price.sentence_in(&language),
            price_label: price.label_in(&language),
        })
    }

    /// The hints this member has taken for a post, in order: for a page that is loaded again. Records
    /// nothing.
    pub async fn my_hints(
        self,
        place: &Place,
        person: &Person,
        post: PostId,
    ) -> Done<Vec<HintSheet>> {
        let (at, by) = (place.clone(), person.clone());
        let (held, taken, line, language) = self
            .desk
            .read(move |db| {
                let group = group_at(db, &at)?;
                let post = post_of(db, &group, post)?;
                let (taken, line) = match db.member_by_user(group.id, &by.user)? {
                    Some(member) => {
                        let line = line_before(&db.replies_of(post.id, member.id)?, None);
                        (db.hints(post.id, member.id)?, line)
                    }
                    None => (Vec::new(), Vec::new()),
                };
                let language = tongue::of_person(db, &group, &by)?;
                Ok((content::held(db, &post)?, taken, line, language))
            })
            .await?;
        if taken.is_empty() {
            return Ok(Vec::new());
        }
        let problem = match held.problem() {
            Some(posed) => self.desk.problem(posed).await?,
            None => None,
        };
        let Some(problem) = problem else {
            return Ok(Vec::new());
        };
        self.desk
            .inner
            .quick
            .run(
                "working out hints",
                self.desk.inner.options.reply_seconds,
                move |_| {
                    taken
                        .into_iter()
                        .map(|taken| {
                            let before = &line[..line.len().min(taken.ply.into())];
                            HintSheet {
                                number: number(taken.ply),
                                step: taken.step,
                                said: match judge::hint(&problem, before, taken.step) {
                                    Some(hint) => Said::of(&language, &hint),
                                    None => Said::new(&language).and(Refusal::NoHint),
                                },
                                more: taken.step < HINT_STEPS,
                                price: Said::default(),
                                price_label: Said::default(),
                            }
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
    pub async fn give_up(self, place: &Place, person: &Person, post: PostId) -> Done<Said> {
        self.desk.rounds().earlier_first(post, &person.user).await?;
        let _turn = self.desk.inner.turns.take(post, &person.user).await;
        let now = self.desk.now();
        let (place, person) = (place.clone(), person.clone());
        self.desk
            .write(move |tx| {
                let group = group_at(tx, &place)?;
                let post = post_of(tx, &group, post)?;
                problem_at(tx, &post, Lacking::GivingUp)?;
                open(&post, takes_replies(&post, now))?;
                let settings = convert::kept_settings(&group.settings)?;
                let member = member(tx, &group, &person, now)?;
                let at = LocalTime::at(post.closes_at, settings.zone);
                let told = match tx.attempt(post.id, member)?.map(|attempt| attempt.state) {
                    Some(AttemptState::Solved) => return bad_request(Refusal::HasSolved),
                    Some(AttemptState::GivenUp) => Told::GivenUpBefore { at },
                    Some(AttemptState::Playing) | None => {
                        attempt::settle_given_up(tx, &post, member, now)?;
                        Told::GivenUpNow { at }
                    }
                };
                Ok(Said::new(tongue::of_person(tx, &group, &person)?).and(told))
            })
            .await
    }
}

/// The half-move of the line that is the member's to make.
fn ply(line: &[String]) -> u16 {
    u16::try_from(line.len()).unwrap_or(u16::MAX)
}

/// Which of the member's moves that is, from 1.
fn number(ply: u16) -> u16 {
    ply / 2 + 1
}

fn open(post: &Post, takes_replies: bool) -> Done<()> {
    if takes_replies {
        return Ok(());
    }
    bad_request(Refusal::PositionClosed {
        number: post.number,
    })
}
