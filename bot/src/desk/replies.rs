//! A member's reply: written down before anything else, then judged, and the verdict kept before it is
//! shown. Each step can be done over: the same message counts once, and a reply that a crash left
//! without its verdict is judged at the next start.
//!
//! Replies that come after the close are kept and answered, and do not count: they have no verdict in
//! the store. Neither have replies to a position whose solution could not be proved, until the coach
//! judges them by hand.

use chrono::{DateTime, TimeDelta, Utc};
use sealed_move_store::{
    Attempt, AttemptState, Db, Group, NewReply, NewVerdict, Position, Post, PostState, Reply,
    ReplyOf, Tx, VerdictRow, Via,
};
use shakmaty::Position as _;

use super::{
    ChatName, Desk, ErrandKind, Heard, Person, Picture, Place, ReplyRow, Settings, Verdict,
    VerdictSheet,
    attempt::{self, Rules},
    convert,
    error::{Done, bad_request, not_found},
    groups::place_of,
    handle::{coached, group_at, member, post_of},
    posting::takes_replies,
    text::{self, LONGEST_REPLY},
};
use crate::chess::{
    self, Budget,
    check::Problem,
    judge::{Judgement, Setting, Terms},
};
use crate::diagram::Diagram;

/// Replies that a crash left without a verdict are judged at the next start while their post is open
/// or closed no longer ago than this; older ones wait for the coach's hand.
const JUDGED_AFTERWARDS: TimeDelta = TimeDelta::days(7);

/// A reply that is written down, with all that judging it takes.
#[derive(Clone)]
pub(super) struct Kept {
    pub(super) group: Group,
    pub(super) settings: Settings,
    pub(super) post: Post,
    pub(super) position: Position,
    pub(super) reply: Reply,
    /// Every reply of the member to the post, this one among them.
    pub(super) replies: Vec<ReplyOf>,
    pub(super) attempt: Option<Attempt>,
    /// Whether the text was cut when it was written down.
    pub(super) cut: bool,
}

impl Desk {
    /// An explicit answer to a post. `source` is the chat's id of the message or interaction: the same
    /// source twice counts once. Somebody new becomes a member.
    ///
    /// # Errors
    /// When the post is not this group's, nothing is written, or the source is somebody else's.
    pub async fn answer(
        &self,
        place: &Place,
        person: &Person,
        post: i64,
        source: &str,
        text: &str,
    ) -> Done<VerdictSheet> {
        let (text, cut) = text::body(text, LONGEST_REPLY);
        if text.is_empty() {
            return bad_request(
                "There is nothing to judge: write your move, such as Nf3 or 1.Qh7+ Kf8 2.Qh8#.",
            );
        }
        let _turn = self.inner.turns.take(post, &person.user).await;
        let kept = self
            .write_down(place, person, post, source, text, cut, Via::Answer)
            .await?;
        self.verdict_on(kept).await
    }

    /// A message among others: judged when it plainly answers the open post (the latest when several
    /// are). Talk is not kept.
    pub async fn hear(
        &self,
        place: &Place,
        person: &Person,
        source: &str,
        text: &str,
    ) -> Done<Heard> {
        let now = self.now();
        let at = place.clone();
        let open = self
            .read(move |db| {
                let group = group_at(db, &at)?;
                Ok(db
                    .open_posts(group.id)?
                    .into_iter()
                    .rfind(|post| takes_replies(post, now)))
            })
            .await?;
        match open {
            Some(post) => self.hear_in(place, person, post.id, source, text).await,
            None => Ok(Heard::Talk),
        }
    }

    /// As [`Desk::hear`], for a message that belongs to a certain post, as one in its thread does.
    pub async fn hear_in(
        &self,
        place: &Place,
        person: &Person,
        post: i64,
        source: &str,
        text: &str,
    ) -> Done<Heard> {
        let (text, cut) = text::body(text, LONGEST_REPLY);
        let _turn = self.inner.turns.take(post, &person.user).await;
        let now = self.now();
        let (at, who, key) = (place.clone(), person.user.clone(), key(place, source));
        let (known, post_row, position, settings, replies) = self
            .read(move |db| {
                let group = group_at(db, &at)?;
                let post = post_of(db, &group, post)?;
                let member = db.member_by_user(group.id, &who)?;
                let known = match (&member, db.reply_by_source(&key)?) {
                    (Some(member), Some(reply)) if reply.member_id == member.id => {
                        Some(kept_reply(db, reply)?)
                    }
                    _ => None,
                };
                let replies = match &member {
                    Some(member) => db.replies_of(post.id, member.id)?,
                    None => Vec::new(),
                };
                let position = position(db, &post)?;
                Ok((
                    known,
                    post,
                    position,
                    convert::kept_settings(&group.settings)?,
                    replies,
                ))
            })
            .await?;
        if let Some(kept) = known {
            return Ok(Heard::Again(Box::new(self.verdict_on(kept).await?)));
        }
        // What was cut is longer than any solution; what nobody can judge is left to the coach.
        if text.is_empty() || cut || !takes_replies(&post_row, now) {
            return Ok(Heard::Talk);
        }
        let Some(problem) = self.problem(&position.fen, &position.stipulation).await? else {
            return Ok(Heard::Talk);
        };
        let line = line_before(&replies, None);
        let judged = self
            .judge(&problem, line, text.clone(), &settings, Setting::Talk)
            .await?;
        let Some(judgement) = judged else {
            return Ok(Heard::Talk);
        };
        let kept = self
            .write_down(place, person, post, source, text, false, Via::Talk)
            .await?;
        let sheet = self.keep_verdict(kept, &problem, judgement).await?;
        Ok(Heard::Answer(Box::new(sheet)))
    }

    /// A member's verdict once more, as when a page is loaded again.
    pub async fn verdict(&self, place: &Place, person: &Person, reply: i64) -> Done<VerdictSheet> {
        let (place, user) = (place.clone(), person.user.clone());
        let kept = self
            .read(move |db| {
                let group = group_at(db, &place)?;
                let member = db.member_by_user(group.id, &user)?;
                match (member, db.reply(reply)?) {
                    (Some(member), Some(reply)) if reply.member_id == member.id => {
                        kept_reply(db, reply)
                    }
                    _ => not_found("There is no such reply of yours."),
                }
            })
            .await?;
        self.verdict_on(kept).await
    }

    /// One member's own replies to a post with their verdicts, in the order they came.
    pub async fn my_replies(
        &self,
        place: &Place,
        person: &Person,
        post: i64,
    ) -> Done<Vec<ReplyRow>> {
        let (place, user) = (place.clone(), person.user.clone());
        self.read(move |db| {
            let group = group_at(db, &place)?;
            let post = post_of(db, &group, post)?;
            let Some(member) = db.member_by_user(group.id, &user)? else {
                return Ok(Vec::new());
            };
            Ok(db
                .replies_of(post.id, member.id)?
                .into_iter()
                .map(row)
                .collect())
        })
        .await
    }

    /// Replies to a post with their verdicts, in the order they came. Coaches only.
    pub async fn replies(&self, place: &Place, coach: &Person, post: i64) -> Done<Vec<ReplyRow>> {
        let (place, coach) = (place.clone(), coach.clone());
        self.read(move |db| {
            let group = coached(db, &place, &coach)?;
            let post = post_of(db, &group, post)?;
            Ok(db.replies_to(post.id)?.into_iter().map(row).collect())
        })
        .await
    }

    /// Judges the replies that an earlier run wrote down and did not come to judge, and tells their
    /// members; returns how many. Done once before the first errand goes out, so that a reveal that is
    /// due at the start knows of them.
    pub async fn judge_pending(&self) -> Done<usize> {
        let now = self.now();
        let pending = self
            .read(move |db| {
                let mut pending = Vec::new();
                for unjudged in db.unjudged_replies()? {
                    let kept = kept_reply(db, unjudged.reply)?;
                    let recent = kept
                        .post
                        .closed_at
                        .is_none_or(|at| now - at <= JUDGED_AFTERWARDS);
                    if recent && kept.counts() {
                        pending.push(kept);
                    }
                }
                Ok(pending)
            })
            .await?;
        let mut judged = 0;
        for kept in pending {
            let reply = kept.reply.id;
            match self.judge_one_pending(kept).await {
                Ok(told) => judged += usize::from(told),
                // One that cannot be judged must not keep the others, nor the bot, from going on.
                Err(error) => {
                    tracing::error!(reply, %error, "a reply of an earlier run could not be judged")
                }
            }
        }
        Ok(judged)
    }

    async fn judge_one_pending(&self, kept: Kept) -> Done<bool> {
        let (member, place) = (kept.reply.member_id, place_of(&kept.group));
        let user = self
            .read(move |db| Ok(db.member(member)?.map(|member| member.chat_user)))
            .await?;
        let Some(user) = user else { return Ok(false) };
        let _turn = self.inner.turns.take(kept.post.id, &user).await;
        // Read again: it may have been judged, or others before it, since the list was made.
        let reply = kept.reply.id;
        let kept = self
            .read(move |db| match db.reply(reply)? {
                Some(reply) if db.current_verdict(reply.id)?.is_none() => {
                    kept_reply(db, reply).map(Some)
                }
                _ => Ok(None),
            })
            .await?;
        let Some(kept) = kept else { return Ok(false) };
        if self
            .problem(&kept.position.fen, &kept.position.stipulation)
            .await?
            .is_none()
        {
            return Ok(false);
        }
        let text = kept.reply.text.clone();
        let sheet = self.verdict_on(kept).await?;
        self.inner.errands.tell(
            place,
            ErrandKind::TellMember {
                user,
                text,
                sheet: Box::new(sheet),
            },
        );
        Ok(true)
    }

    /// Writes a reply down, once for each source.
    #[allow(clippy::too_many_arguments)]
    async fn write_down(
        &self,
        place: &Place,
        person: &Person,
        post: i64,
        source: &str,
        text: String,
        cut: bool,
        via: Via,
    ) -> Done<Kept> {
        let now = self.now();
        let key = key(place, source);
        let (place, person) = (place.clone(), person.clone());
        self.write(move |tx: &Tx<'_>| {
            let group = group_at(tx, &place)?;
            let post = post_of(tx, &group, post)?;
            let member = member(tx, &group, &person, now)?;
            let inserted = tx.insert_reply(&NewReply {
                post_id: post.id,
                member_id: member,
                source: Some(key),
                via,
                text,
                received_at: now,
            })?;
            let Some(reply) = tx.reply(inserted.id)? else {
                return not_found("The reply was removed meanwhile.");
            };
            if reply.member_id != member || reply.post_id != post.id {
                return bad_request(
                    "This message has been taken as another answer already; send it anew.",
                );
            }
            Ok(Kept {
                cut: cut && inserted.new,
                ..kept_reply(tx, reply)?
            })
        })
        .await
    }

    /// The verdict on a reply that is written down: the one it has, or a new one.
    pub(super) async fn verdict_on(&self, kept: Kept) -> Done<VerdictSheet> {
        let Some(problem) = self
            .problem(&kept.position.fen, &kept.position.stipulation)
            .await?
        else {
            return Ok(by_hand(&kept));
        };
        if let Some(verdict) = kept.verdict().cloned() {
            return self.shown_again(kept, &problem, verdict).await;
        }
        if kept.cut {
            return self.keep_verdict(kept, &problem, too_long()).await;
        }
        let line = line_before(&kept.replies, Some(kept.reply.id));
        let text = kept.reply.text.clone();
        let judged = self
            .judge(&problem, line, text, &kept.settings, Setting::Answer)
            .await?;
        let Some(judgement) = judged else {
            return bad_request("This could not be read as an answer; write just the moves.");
        };
        if kept.counts() {
            self.keep_verdict(kept, &problem, judgement).await
        } else {
            self.late(kept, &problem, judgement).await
        }
    }

    /// Judges on the pool, within the time for a reply.
    pub(super) async fn judge(
        &self,
        problem: &Problem,
        line: Vec<String>,
        text: String,
        settings: &Settings,
        setting: Setting,
    ) -> Done<Option<Judgement>> {
        let problem = problem.clone();
        let terms = Terms {
            language: settings.language,
            setting,
            defence_choice: 0,
        };
        let options = &self.inner.options;
        let table = options.table_bytes;
        self.inner
            .quick
            .run("judging a reply", options.reply_seconds, move |sign| {
                let stop = || sign.stop();
                let budget = Budget::unlimited().until(&stop).table_bytes(table);
                chess::judge::judge(&problem, &line, &text, &terms, &budget)
            })
            .await
    }

    /// Keeps a verdict with what it makes of the attempt, then lays it out.
    pub(super) async fn keep_verdict(
        &self,
        kept: Kept,
        problem: &Problem,
        judgement: Judgement,
    ) -> Done<VerdictSheet> {
        let now = self.now();
        let before = line_before(&kept.replies, Some(kept.reply.id));
        let new = NewVerdict {
            reply_id: kept.reply.id,
            verdict: convert::verdict(judgement.verdict),
            points: if judgement.points.is_finite() {
                judgement.points.clamp(0.0, 5.0)
            } else {
                0.0
            },
            moves: judgement.moves.clone(),
            refutation: judgement.refutation.clone(),
            line: match judgement.verdict {
                Verdict::Solved | Verdict::OnTheWay => judgement.line.clone(),
                _ => before.clone(),
            },
            why: judgement.why.clone(),
            message: judgement.message.clone(),
            // After the end it is for the fun of it, and no part of what the group got wrong.
            wrong_first: match kept.ended() {
                None => wrong_first(problem, &before, &judgement),
                Some(_) => None,
            },
            by_coach: false,
            given_at: now,
        };
        let (post, member, rules) = (kept.post.id, kept.reply.member_id, rules(&kept.settings));
        let (settled, hints) = self
            .write(move |tx| {
                tx.insert_verdict(&new)?;
                let settled = attempt::settle(tx, post, member, rules)?;
                Ok((settled, tx.hint_count(post, member)?))
            })
            .await?;
        let ended = kept.ended();
        let message = match ended {
            Some(AttemptState::Solved) => {
                format!(
                    "You have solved this one already, so nothing changes. {}",
                    judgement.message
                )
            }
            Some(AttemptState::GivenUp) => {
                format!(
                    "You have given this one up, so this does not count. {}",
                    judgement.message
                )
            }
            Some(AttemptState::Playing) | None => with_points(
                judgement.verdict,
                &judgement.message,
                settled.as_ref(),
                hints,
                &kept.settings,
            ),
        };
        Ok(VerdictSheet {
            reply: kept.reply.id,
            post: kept.post.id,
            verdict: judgement.verdict,
            message,
            picture: self.picture_of(&kept, problem, &judgement).await?,
            your_move: judgement.verdict == Verdict::OnTheWay && ended.is_none(),
            points: settled.map_or(0.0, |attempt| attempt.points),
        })
    }

    /// A kind answer to a reply that came after the close.
    async fn late(
        &self,
        kept: Kept,
        problem: &Problem,
        judgement: Judgement,
    ) -> Done<VerdictSheet> {
        Ok(VerdictSheet {
            reply: kept.reply.id,
            post: kept.post.id,
            verdict: judgement.verdict,
            message: format!(
                "Thank you. Replies to this post have closed, so this one does not count. {}",
                judgement.message
            ),
            picture: self.picture_of(&kept, problem, &judgement).await?,
            your_move: false,
            points: kept.attempt.map_or(0.0, |attempt| attempt.points),
        })
    }

    /// A verdict that was kept before, laid out once more.
    async fn shown_again(
        &self,
        kept: Kept,
        problem: &Problem,
        verdict: VerdictRow,
    ) -> Done<VerdictSheet> {
        // The picture is not kept; judging the same text on the same line gives the same one.
        let picture = if verdict.by_coach {
            None
        } else {
            let line = line_before(&kept.replies, Some(kept.reply.id));
            let text = kept.reply.text.clone();
            match self
                .judge(problem, line, text, &kept.settings, Setting::Answer)
                .await?
            {
                Some(judgement) => self.picture_of(&kept, problem, &judgement).await?,
                None => None,
            }
        };
        let playing = kept
            .attempt
            .as_ref()
            .is_some_and(|attempt| attempt.state == AttemptState::Playing);
        let last = kept
            .replies
            .last()
            .is_some_and(|last| last.reply.id == kept.reply.id);
        let now = self.now();
        Ok(VerdictSheet {
            reply: kept.reply.id,
            post: kept.post.id,
            verdict: convert::kept_verdict(verdict.verdict),
            message: verdict.message,
            picture,
            your_move: verdict.verdict == sealed_move_store::Verdict::OnTheWay
                && playing
                && last
                && takes_replies(&kept.post, now),
            points: kept.attempt.map_or(0.0, |attempt| attempt.points),
        })
    }

    async fn picture_of(
        &self,
        kept: &Kept,
        problem: &Problem,
        judgement: &Judgement,
    ) -> Done<Option<Picture>> {
        let Some(scene) = &judgement.scene else {
            return Ok(None);
        };
        let diagram = Diagram {
            style: kept.settings.style,
            ..Diagram::scene(scene, problem.position.turn())
        };
        self.draw(diagram).await.map(Some)
    }
}

impl Kept {
    /// Whether the reply came before the close.
    pub(super) fn counts(&self) -> bool {
        self.reply.received_at < self.post.closes_at || self.post.state == PostState::Intended
    }

    /// The verdict that the reply has.
    pub(super) fn verdict(&self) -> Option<&VerdictRow> {
        self.replies
            .iter()
            .find(|other| other.reply.id == self.reply.id)?
            .verdict
            .as_ref()
    }

    /// How the attempt had ended before this reply, if it had.
    fn ended(&self) -> Option<AttemptState> {
        self.attempt
            .as_ref()
            .map(|attempt| attempt.state)
            .filter(|state| *state != AttemptState::Playing)
    }
}

/// A reply as it is kept, with all that judging it takes.
pub(super) fn kept_reply(db: &Db<'_>, reply: Reply) -> Done<Kept> {
    let Some(post) = db.post(reply.post_id)? else {
        return not_found("The post of this reply was removed.");
    };
    let Some(group) = db.group(post.group_id)? else {
        return not_found("The group of this reply was removed.");
    };
    Ok(Kept {
        settings: convert::kept_settings(&group.settings)?,
        position: position(db, &post)?,
        replies: db.replies_of(post.id, reply.member_id)?,
        attempt: db.attempt(post.id, reply.member_id)?,
        cut: false,
        group,
        post,
        reply,
    })
}

fn position(db: &Db<'_>, post: &Post) -> Done<Position> {
    match db.position(post.position_id)? {
        Some(position) => Ok(position),
        None => not_found("The position of this post was removed."),
    }
}

/// The source of a message as the store keeps it: two chats may use the same ids.
pub(super) fn key(place: &Place, source: &str) -> String {
    let chat = match place.chat {
        ChatName::Room => "room",
        ChatName::Discord => "discord",
    };
    format!("{chat}:{source}")
}

/// The group's rules on points.
pub(super) fn rules(settings: &Settings) -> Rules {
    Rules {
        wrong_cost: settings.wrong_cost,
        hint_cost: settings.hint_cost,
    }
}

/// The line as it stood before a reply (or after all of them): what the last right reply before it left
/// on the board; empty again once the problem was solved.
pub(super) fn line_before(replies: &[ReplyOf], reply: Option<i64>) -> Vec<String> {
    let mut line = Vec::new();
    for earlier in replies
        .iter()
        .take_while(|earlier| Some(earlier.reply.id) != reply)
    {
        let Some(verdict) = &earlier.verdict else {
            continue;
        };
        match verdict.verdict {
            sealed_move_store::Verdict::OnTheWay if !verdict.line.is_empty() => {
                line.clone_from(&verdict.line);
            }
            sealed_move_store::Verdict::Solved => line.clear(),
            _ => {}
        }
    }
    line
}

/// The first move, where it is what was wrong.
fn wrong_first(problem: &Problem, before: &[String], judgement: &Judgement) -> Option<String> {
    if judgement.verdict != Verdict::Wrong || !before.is_empty() || judgement.points > 0.0 {
        return None;
    }
    let first = judgement.moves.first()?;
    let is_key = problem
        .solution
        .keys
        .iter()
        .any(|key| chess::line::sans(&problem.position, &[key.mv]).first() == Some(first));
    (!is_key).then(|| first.clone())
}

fn too_long() -> Judgement {
    Judgement {
        verdict: Verdict::Unreadable,
        moves: Vec::new(),
        points: 0.0,
        refutation: Vec::new(),
        why: String::new(),
        message: format!(
            "This is longer than any solution. Its first {LONGEST_REPLY} characters are kept and nothing was judged; send just the moves, such as 1.Qh7+ Kf8 2.Qh8#."
        ),
        scene: None,
        line: Vec::new(),
    }
}

/// What is said of a reply that only the coach can judge.
fn by_hand(kept: &Kept) -> VerdictSheet {
    match kept.verdict() {
        Some(verdict) => VerdictSheet {
            reply: kept.reply.id,
            post: kept.post.id,
            verdict: convert::kept_verdict(verdict.verdict),
            message: verdict.message.clone(),
            picture: None,
            your_move: false,
            points: kept.attempt.as_ref().map_or(0.0, |attempt| attempt.points),
        },
        None => VerdictSheet {
            reply: kept.reply.id,
            post: kept.post.id,
            verdict: Verdict::Unclear,
            message: if kept.counts() {
                "Your answer is kept, and sealed until the reveal. Your coach judges this one by hand.".into()
            } else {
                "Thank you. Replies to this post have closed; your coach can still read yours."
                    .into()
            },
            picture: None,
            your_move: false,
            points: 0.0,
        },
    }
}

/// The judge's words, with what the attempt is worth where the group's rules took something off.
fn with_points(
    verdict: Verdict,
    message: &str,
    attempt: Option<&Attempt>,
    hints: u8,
    settings: &Settings,
) -> String {
    let (Verdict::Solved, Some(attempt)) = (verdict, attempt) else {
        return message.to_owned();
    };
    let mut reasons = Vec::new();
    if attempt.wrong > 0 && settings.wrong_cost > 0.0 {
        reasons.push(counted(attempt.wrong, "wrong try", "wrong tries"));
    }
    if hints > 0 && settings.hint_cost > 0.0 {
        reasons.push(counted(u32::from(hints), "hint", "hints"));
    }
    let points = text::points(attempt.points);
    let after = if reasons.is_empty() {
        String::new()
    } else {
        format!(" after {}", reasons.join(" and "))
    };
    format!("{message} {points} of 5 points{after}.")
}

fn counted(count: u32, one: &str, many: &str) -> String {
    match count {
        1 => format!("one {one}"),
        _ => format!("{count} {many}"),
    }
}

/// A reply in a list.
pub(super) fn row(reply: ReplyOf) -> ReplyRow {
    let verdict = reply.verdict;
    ReplyRow {
        reply: reply.reply.id,
        name: reply.name,
        text: reply.reply.text,
        received_at: reply.reply.received_at,
        verdict: verdict
            .as_ref()
            .map(|verdict| convert::kept_verdict(verdict.verdict)),
        points: verdict.as_ref().map_or(0.0, |verdict| verdict.points),
        by_coach: verdict.as_ref().is_some_and(|verdict| verdict.by_coach),
        message: verdict.map(|verdict| verdict.message).unwrap_or_default(),
    }
}

/// Whether a verdict settles something: it cost, gained or was answered with a defence.
pub(super) fn decided(verdict: sealed_move_store::Verdict) -> bool {
    use sealed_move_store::Verdict as V;
    matches!(verdict, V::Solved | V::OnTheWay | V::Wrong)
}

/// The time as the group's members read it.
pub(super) fn local(settings: &Settings, moment: DateTime<Utc>) -> String {
    moment
        .with_timezone(&settings.zone)
        .format("%H:%M on %A, %-d %B")
        .to_string()
}
