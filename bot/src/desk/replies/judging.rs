//! From a reply that is written down to its verdict: judged on the pool, kept with what it makes of the
//! attempt, and laid out for the member.

use chrono::{DateTime, Utc};
use sealed_move_store::{AttemptState, NewVerdict, Post, Reply, ReplyOf, Tx, VerdictRow};
use sha2::{Digest, Sha256};
use shakmaty::Position as _;

use super::{Case, kept::Asks};
use crate::chess::{
    self, Budget,
    check::Problem,
    fact::Remark,
    judge::{Judgement, Setting, Terms},
};
use crate::desk::{
    Defences, Desk, MemberId, Outcome, Picture, Points, PostId, ReplyId, Settings, Verdict,
    VerdictSheet,
    attempt::{self, After, Work},
    convert,
    error::{Done, bad_request},
    posting::takes_replies,
    refusal::Refusal,
    said::{self, Said},
    telling::{self, Told},
    text::LONGEST_REPLY,
};
use crate::diagram::Diagram;

impl Desk {
    /// The verdict on a reply that is written down: the one it has, or a new one.
    pub(in crate::desk) async fn verdict_on(&self, kept: Case) -> Done<VerdictSheet> {
        let Some(problem) = self.judged_by(&kept.asks).await? else {
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
            .judge(&problem, line, text, kept.answerer(), Setting::Answer)
            .await?;
        let Some(judgement) = judged else {
            return bad_request(Refusal::NoMoveRead);
        };
        if kept.counts() {
            self.keep_verdict(kept, &problem, judgement).await
        } else {
            self.late(kept, &problem, judgement).await
        }
    }

    /// Judges on the pool, within the time for a reply.
    pub(in crate::desk) async fn judge(
        &self,
        problem: &Problem,
        line: Vec<String>,
        text: String,
        by: Answerer<'_>,
        setting: Setting,
    ) -> Done<Option<Judgement>> {
        let problem = problem.clone();
        let terms = Terms {
            language: by.settings.language,
            setting,
            defence_choice: defence_choice(by.settings, by.user),
            line_choice: by.line_choice(),
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
    pub(in crate::desk) async fn keep_verdict(
        &self,
        kept: Case,
        problem: &Problem,
        judgement: Judgement,
    ) -> Done<VerdictSheet> {
        let before = line_before(&kept.replies, Some(kept.reply.id));
        let ruling = Ruling::new(problem, &judgement, before, kept.ended(), self.now());
        let (post, reply) = (kept.post.clone(), kept.reply.clone());
        let worth = self.write(move |tx| ruling.keep(tx, &post, &reply)).await?;
        self.told(kept, problem, judgement, worth).await
    }

    /// The sheet of a verdict that was just kept.
    pub(in crate::desk) async fn told(
        &self,
        kept: Case,
        problem: &Problem,
        judgement: Judgement,
        Worth { work, after }: Worth,
    ) -> Done<VerdictSheet> {
        let ended = kept.ended();
        let language = &kept.language;
        let judged = Said::of(language, &judgement.said);
        let said = match ended {
            Some(AttemptState::Solved) => Said::new(language).and(Told::SolvedAlready).then(judged),
            Some(AttemptState::GivenUp) => {
                Said::new(language).and(Told::GivenUpAlready).then(judged)
            }
            Some(AttemptState::Playing) | None => telling::with_points(
                judged,
                convert::verdict(judgement.verdict),
                after,
                kept.post.prices,
            ),
        };
        Ok(VerdictSheet {
            reply: kept.reply.id,
            post: kept.post.id,
            outcome: Outcome::Judged(judgement.verdict),
            said,
            picture: match self.picture_of(&kept, problem, &judgement).await? {
                None if judgement.verdict == Verdict::Solved && ended.is_none() => {
                    self.final_board(&kept, &judgement.line).await?
                }
                picture => picture,
            },
            your_move: judgement.verdict == Verdict::OnTheWay && ended.is_none(),
            over: over(work.state()),
            hint_label: telling::next_hint(&work).label_in(language),
            points: work.points(),
            readings: match ended {
                None => judgement.readings,
                Some(_) => Vec::new(),
            },
        })
    }

    /// A kind answer to a reply that came after the close.
    async fn late(
        &self,
        kept: Case,
        problem: &Problem,
        judgement: Judgement,
    ) -> Done<VerdictSheet> {
        Ok(VerdictSheet {
            reply: kept.reply.id,
            post: kept.post.id,
            outcome: Outcome::Judged(judgement.verdict),
            said: Said::new(&kept.language)
                .and(Told::RepliesClosed)
                .then(Said::of(&kept.language, &judgement.said)),
            picture: self.picture_of(&kept, problem, &judgement).await?,
            your_move: false,
            over: true,
            hint_label: Said::default(),
            points: kept
                .attempt
                .map(|attempt| attempt.points)
                .unwrap_or_default(),
            readings: Vec::new(),
        })
    }

    /// A verdict that was kept before, laid out once more.
    async fn shown_again(
        &self,
        kept: Case,
        problem: &Problem,
        verdict: VerdictRow,
    ) -> Done<VerdictSheet> {
        // The picture and the readings are not kept; judging the same text on the same line gives the
        // same ones.
        let (picture, readings) = if verdict.by_coach {
            (None, Vec::new())
        } else {
            let line = line_before(&kept.replies, Some(kept.reply.id));
            let text = kept.reply.text.clone();
            match self
                .judge(problem, line, text, kept.answerer(), Setting::Answer)
                .await?
            {
                // Two members made one since: the defence that is kept is the other's.
                Some(judgement) if other_defence(&verdict, &judgement) => {
                    (self.final_board(&kept, &verdict.line).await?, Vec::new())
                }
                Some(judgement) => (
                    self.picture_of(&kept, problem, &judgement).await?,
                    judgement.readings,
                ),
                None => (None, Vec::new()),
            }
        };
        let playing = kept
            .attempt
            .as_ref()
            .is_none_or(|attempt| attempt.state == AttemptState::Playing);
        let last = kept
            .replies
            .last()
            .is_some_and(|last| last.reply.id == kept.reply.id);
        // Only the last word of somebody still at it is worth asking back about.
        let open = takes_replies(&kept.post, self.now());
        let at_it = playing && last && open;
        let after = kept.after();
        let picture = match picture {
            None if verdict.verdict == sealed_move_store::Verdict::Solved => {
                self.final_board(&kept, &verdict.line).await?
            }
            picture => picture,
        };
        Ok(VerdictSheet {
            reply: kept.reply.id,
            post: kept.post.id,
            outcome: convert::kept_verdict(verdict.verdict),
            said: telling::of_kept(&kept.language, &verdict, after, kept.post.prices),
            picture,
            your_move: verdict.verdict == sealed_move_store::Verdict::OnTheWay && at_it,
            over: !open || over(kept.attempt.as_ref().map(|attempt| attempt.state)),
            hint_label: telling::next_hint(&kept.work).label_in(&kept.language),
            points: after.map(|after| after.points).unwrap_or_default(),
            readings: match (verdict.verdict, at_it) {
                (sealed_move_store::Verdict::Unclear, true) => readings,
                _ => Vec::new(),
            },
        })
    }

    /// The board after the member's line, where the judge shows nothing else.
    async fn final_board(&self, kept: &Case, line: &[String]) -> Done<Option<Picture>> {
        let Asks::Problem(posed) = &kept.asks else {
            return Ok(None);
        };
        let language = kept.language.as_str();
        self.draw_after_if_playable(posed, line, &kept.settings, language)
            .await
    }

    async fn picture_of(
        &self,
        kept: &Case,
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
        self.draw(diagram, kept.language.as_str()).await.map(Some)
    }
}

/// A verdict on its way into the store.
pub(in crate::desk) struct Ruling(NewVerdict);

/// What a member's work has come to with a verdict.
pub(in crate::desk) struct Worth {
    work: Work,
    /// What stood after the reply.
    after: Option<After>,
}

impl Ruling {
    /// The verdict on a reply that was made with the line `before` on the board, by a member whose attempt
    /// had `ended` or had not.
    pub(in crate::desk) fn new(
        problem: &Problem,
        judgement: &Judgement,
        before: Vec<String>,
        ended: Option<AttemptState>,
        now: DateTime<Utc>,
    ) -> Self {
        Self(NewVerdict {
            reply_id: ReplyId::of(0),
            verdict: convert::verdict(judgement.verdict),
            // The judge keeps to the scale.
            points: Points::checked(judgement.points).unwrap_or_default(),
            moves: judgement.moves.clone(),
            refutation: judgement.refutation.clone(),
            // After the end it is for the fun of it, and no part of what the group got wrong.
            wrong_first: match ended {
                None => wrong_first(problem, &before, judgement),
                Some(_) => None,
            },
            line: match judgement.verdict {
                Verdict::Solved | Verdict::OnTheWay => judgement.line.clone(),
                _ => before,
            },
            facts: said::kept(&judgement.said, &judgement.why),
            words: String::new(),
            by_coach: false,
            given_at: now,
        })
    }

    /// Keeps it as the one that counts on `reply`, with what it makes of the attempt.
    pub(in crate::desk) fn keep(self, tx: &Tx<'_>, post: &Post, reply: &Reply) -> Done<Worth> {
        tx.insert_verdict(&NewVerdict {
            reply_id: reply.id,
            ..self.0
        })?;
        // A coach may have made two members one while this was judged.
        let member = tx
            .reply(reply.id)?
            .map_or(reply.member_id, |kept| kept.member_id);
        let work = attempt::settle(tx, post, member)?;
        Ok(Worth {
            after: work.after_reply(reply.id),
            work,
        })
    }
}

/// Whose reply is judged.
#[derive(Clone, Copy)]
pub(in crate::desk) struct Answerer<'a> {
    pub(in crate::desk) settings: &'a Settings,
    /// The chat's id of whoever sent it.
    pub(in crate::desk) user: &'a str,
    pub(in crate::desk) member: MemberId,
    pub(in crate::desk) post: PostId,
}

impl Answerer<'_> {
    /// The number by which one of the coach's own lines is chosen. Members of a group have ids that follow
    /// one another, so that the lines are met in turn, and each member meets another one at the next post.
    fn line_choice(self) -> u64 {
        self.member
            .get()
            .wrapping_add(self.post.get())
            .unsigned_abs()
    }
}

impl Case {
    /// Whose reply it is.
    pub(in crate::desk) fn answerer(&self) -> Answerer<'_> {
        Answerer {
            settings: &self.settings,
            user: &self.user,
            member: self.reply.member_id,
            post: self.post.id,
        }
    }
}

/// Whether a reply that is right so far was met with another defence than it is now.
fn other_defence(verdict: &VerdictRow, now: &Judgement) -> bool {
    verdict.verdict == sealed_move_store::Verdict::OnTheWay
        && now.verdict == Verdict::OnTheWay
        && verdict.line != now.line
}

/// The number by which a member's defences are chosen: 0 where all meet the same. It hangs on the member
/// alone, so that a line goes on as it began after a restart and on another machine.
fn defence_choice(settings: &Settings, user: &str) -> u64 {
    match settings.defences {
        Defences::Same => 0,
        Defences::Differ => Sha256::digest(user)
            .iter()
            .take(8)
            .fold(0, |number, &byte| number << 8 | u64::from(byte))
            .max(1),
    }
}

/// Whether nothing is left to do at a post.
pub(in crate::desk) fn over(state: Option<AttemptState>) -> bool {
    matches!(state, Some(AttemptState::Solved | AttemptState::GivenUp))
}

/// The line as it stood before a reply (or after all of them): what the last right reply before it left
/// on the board; empty again once the problem was solved.
pub(in crate::desk) fn line_before(replies: &[ReplyOf], reply: Option<ReplyId>) -> Vec<String> {
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
    let most = u32::try_from(LONGEST_REPLY).unwrap_or(u32::MAX);
    let said = vec![Remark::LongerThanAnySolution { most }];
    Judgement::plain(Verdict::Unreadable, said, Vec::new())
}

/// What is said of a reply that only the coach can judge.
fn by_hand(kept: &Case) -> VerdictSheet {
    let after = kept.after();
    match kept.verdict() {
        Some(verdict) => VerdictSheet {
            reply: kept.reply.id,
            post: kept.post.id,
            outcome: convert::kept_verdict(verdict.verdict),
            said: telling::of_kept(&kept.language, verdict, after, kept.post.prices),
            picture: None,
            your_move: false,
            over: over(kept.attempt.as_ref().map(|attempt| attempt.state)),
            hint_label: Said::default(),
            points: after.map(|after| after.points).unwrap_or_default(),
            readings: Vec::new(),
        },
        None => {
            let (outcome, in_time) = kept.asks.left_to_the_coach();
            let counts = kept.counts();
            let mut said = Said::new(&kept.language).and(match counts {
                true => in_time,
                false => Told::CoachCanRead,
            });
            if kept.cut {
                said.push(Told::OnlyBeginningKept {
                    most: LONGEST_REPLY.into(),
                    again: counts,
                });
            }
            VerdictSheet {
                reply: kept.reply.id,
                post: kept.post.id,
                outcome,
                said,
                picture: None,
                your_move: false,
                over: !kept.counts(),
                hint_label: Said::default(),
                points: after.map(|after| after.points).unwrap_or_default(),
                readings: Vec::new(),
            }
        }
    }
}
