//! What a member's work on a post is worth: one replay of the verdicts in order, used for a new reply,
//! an overruled one, an edited one and a withdrawn one alike, and for every place where points are shown, so
//! that these can never disagree.
//!
//! The judge gives five points for a full solution and part points for part, for each reply by itself. The
//! post's prices are taken off here: each wrong first move and each hint step before a reply costs what the
//! post says. A wrong move further down the line, after the right key, costs a point (or the price of a wrong
//! first move where that is less). Whoever solves without having been shown a move keeps the least that the
//! post promises; being shown a move is taking the last hint step of one. What counts is the best that any
//! reply was worth when it came. Points that the coach gave stand as given, in place of what came before.
//!
//! Taking part is a reply that decided something, a hint, or giving up; nothing else makes an attempt. At a
//! question it is an answer in time, or one that a coach has marked; its points are those of the last mark.

use sealed_move_store::{
    Attempt, AttemptState, Content, Db, Hint, Moment, Points, Post, PostState, Prices, ReplyOf,
    StoreError, Tx, Verdict, VerdictRow,
};

use super::{MemberId, PostId, ReplyId, Scale, Settings};
use crate::chess::judge::HINT_STEPS;

/// Points off for a wrong move after the right key.
pub(super) const LATER_WRONG: Points = Points::of(1.0);
/// By the scale `club`, the least for whoever solves without being shown the move.
pub(super) const LEAST: Points = Points::of(1.0);

/// What a post of a group costs.
pub(super) fn prices(settings: &Settings) -> Prices {
    match settings.points {
        Scale::Club => Prices {
            wrong_cost: settings.wrong_cost,
            hint_cost: settings.hint_cost,
            least: LEAST,
        },
        Scale::Tournament => Prices {
            wrong_cost: Points::FULL,
            hint_cost: settings.hint_cost,
            least: Points::ZERO,
        },
    }
}

/// When a member gave up, and the last reply before it (0 for none).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct GaveUp {
    pub at: Moment,
    pub after: ReplyId,
}

/// What stood to be counted after a reply.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct After {
    /// Points for the post.
    pub points: Points,
    /// Wrong moves up to and with the reply.
    pub wrong: u32,
    /// Hint steps before it.
    pub hints: usize,
    /// What solving the post at once would be worth.
    pub left: Points,
    /// Whether the reply could still change anything: it came in time, and the member was not done.
    pub counts: bool,
}

/// A member's work on a post.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Work {
    /// What it comes to; `None` for who took no part.
    pub attempt: Option<Attempt>,
    /// What stood after each reply, by its id, in their order.
    pub after: Vec<(ReplyId, After)>,
    hints: Vec<Hint>,
    off: Off,
    prices: Prices,
}

/// What was lost on the way.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Off {
    wrong: Points,
    hints: usize,
    shown: bool,
}

impl Off {
    fn hints(mut self, hints: &[Hint], upto: impl Fn(&Hint) -> bool) -> Self {
        let taken = || hints.iter().filter(|hint| upto(hint));
        self.hints = taken().count();
        self.shown = taken().any(|hint| hint.step >= HINT_STEPS);
        self
    }

    /// What a reply with these points by the judge's scale is worth.
    fn worth(self, judged: Points, verdict: Verdict, prices: Prices) -> Points {
        let worth = judged
            .less(self.wrong)
            .less(prices.hint_cost.times(self.hints));
        let least = match verdict {
            Verdict::Solved if !self.shown => prices.least,
            _ => Points::ZERO,
        };
        worth.max(least)
    }
}

impl Work {
    /// Points for the post.
    pub fn points(&self) -> Points {
        let attempt = self.attempt.as_ref();
        attempt.map(|attempt| attempt.points).unwrap_or_default()
    }

    /// What stood after a reply.
    pub fn after_reply(&self, reply: ReplyId) -> Option<After> {
        let found = self.after.iter().find(|(id, _)| *id == reply);
        found.map(|(_, after)| *after)
    }

    /// What solving the post at once would be worth.
    pub fn left(&self) -> Points {
        self.best(self.off)
    }

    /// The same, had the member taken hint `step` (from 1) first.
    pub fn left_after_hint(&self, step: u8) -> Points {
        self.best(Off {
            hints: self.off.hints + 1,
            shown: self.off.shown || step >= HINT_STEPS,
            ..self.off
        })
    }

    /// The hint step that comes next, from 1, on the move of the line that is the member's to make.
    pub fn next_step(&self) -> u8 {
        let played = self
            .attempt
            .as_ref()
            .map_or(0, |attempt| attempt.line.len());
        let taken = self
            .hints
            .iter()
            .filter(|hint| usize::from(hint.ply) == played);
        taken.map(|hint| hint.step).max().unwrap_or(0) + 1
    }

    fn best(&self, off: Off) -> Points {
        off.worth(Points::FULL, Verdict::Solved, self.prices)
            .max(self.points())
    }

    /// Where it stands.
    pub fn state(&self) -> Option<AttemptState> {
        self.attempt.as_ref().map(|attempt| attempt.state)
    }
}

/// Comes before every reply.
const BEFORE_ALL: ReplyId = ReplyId::of(0);

/// A member's work on a post, as it is kept.
pub(super) fn work(db: &Db<'_>, post: &Post, member: MemberId) -> Result<Work, StoreError> {
    let replies = db.replies_of(post.id, member)?;
    let attempt = db.attempt(post.id, member)?;
    work_of(db, post, member, &replies, attempt.as_ref())
}

/// As [`work`], where the member's replies and what is kept of the attempt are at hand.
pub(super) fn work_of(
    db: &Db<'_>,
    post: &Post,
    member: MemberId,
    replies: &[ReplyOf],
    attempt: Option<&Attempt>,
) -> Result<Work, StoreError> {
    let gave_up = attempt.and_then(|attempt| {
        Some(GaveUp {
            at: attempt.gave_up_at?,
            after: attempt.gave_up_after.unwrap_or(BEFORE_ALL),
        })
    });
    work_given_up(db, post, member, replies, gave_up)
}

fn work_given_up(
    db: &Db<'_>,
    post: &Post,
    member: MemberId,
    replies: &[ReplyOf],
    gave_up: Option<GaveUp>,
) -> Result<Work, StoreError> {
    match &post.content {
        Content::Problem { .. } => {}
        Content::Question { .. } => return Ok(answers(post, member, replies)),
        Content::Words(_) => return Ok(nothing(post)),
    }
    let hints = db.hints(post.id, member)?;
    Ok(replay(
        post.id,
        member,
        replies,
        &hints,
        post.prices,
        gave_up,
    ))
}

/// Works out a member's attempt at a post from what is kept of it and keeps the result.
pub(super) fn settle(tx: &Tx<'_>, post: &Post, member: MemberId) -> Result<Work, StoreError> {
    let work = work(tx, post, member)?;
    keep(tx, post, member, work)
}

/// As [`settle`], for a member who gives up now.
pub(super) fn settle_given_up(
    tx: &Tx<'_>,
    post: &Post,
    member: MemberId,
    at: Moment,
) -> Result<Work, StoreError> {
    let replies = tx.replies_of(post.id, member)?;
    let after = replies.last().map_or(BEFORE_ALL, |of| of.reply.id);
    settle_with(tx, post, member, Some(GaveUp { at, after }))
}

/// As [`settle`], for a member who gave up at that moment, or did not.
pub(super) fn settle_with(
    tx: &Tx<'_>,
    post: &Post,
    member: MemberId,
    gave_up: Option<GaveUp>,
) -> Result<Work, StoreError> {
    let replies = tx.replies_of(post.id, member)?;
    let work = work_given_up(tx, post, member, &replies, gave_up)?;
    keep(tx, post, member, work)
}

fn keep(tx: &Tx<'_>, post: &Post, member: MemberId, work: Work) -> Result<Work, StoreError> {
    match &work.attempt {
        Some(attempt) => tx.upsert_attempt(attempt)?,
        None => {
            tx.delete_attempt(post.id, member)?;
        }
    }
    Ok(work)
}

/// Whether a verdict settles something: it cost, gained or was answered with a defence.
pub(super) fn decided(verdict: Verdict) -> bool {
    matches!(
        verdict,
        Verdict::Solved | Verdict::OnTheWay | Verdict::Wrong
    )
}

/// Whether a verdict that is kept makes its sender one who took part.
fn settles(verdict: &VerdictRow) -> bool {
    decided(verdict.verdict) || (verdict.by_coach && !verdict.points.is_zero())
}

/// The work of who did nothing.
fn nothing(post: &Post) -> Work {
    Work {
        attempt: None,
        after: Vec::new(),
        hints: Vec::new(),
        off: Off::default(),
        prices: post.prices,
    }
}

/// The work that these answers to a question (in order) come to. It is never solved: what is not marked
/// waits, and what is marked has its points.
fn answers(post: &Post, member: MemberId, replies: &[ReplyOf]) -> Work {
    let mark = |of: &ReplyOf| match &of.verdict {
        Some(verdict) if verdict.by_coach => Some(verdict.points),
        _ => None,
    };
    let in_time =
        |of: &ReplyOf| post.state == PostState::Intended || of.reply.received_at < post.closes_at;
    let mut work = nothing(post);
    let mut points = Points::ZERO;
    let mut started = None;
    for of in replies {
        let marked = mark(of);
        let counts = marked.is_some() || in_time(of);
        points = marked.unwrap_or(points);
        if counts {
            started.get_or_insert(of.reply.received_at);
        }
        let stands = After {
            points,
            wrong: 0,
            hints: 0,
            left: points,
            counts,
        };
        work.after.push((of.reply.id, stands));
    }
    work.attempt = started.map(|started_at| Attempt {
        post_id: post.id,
        member_id: member,
        state: AttemptState::Playing,
        line: Vec::new(),
        points,
        wrong: 0,
        first_try: false,
        started_at,
        ended_at: None,
        gave_up_at: None,
        gave_up_after: None,
    });
    work
}

/// The work that these replies (in order), hints and giving up come to. Replies without a verdict do
/// not count: they came late, or are still to be judged.
fn replay(
    post: PostId,
    member: MemberId,
    replies: &[ReplyOf],
    hints: &[Hint],
    prices: Prices,
    gave_up: Option<GaveUp>,
) -> Work {
    let deeds = replies
        .iter()
        .filter(|of| of.verdict.as_ref().is_some_and(settles))
        .map(|of| of.reply.received_at)
        .take(1)
        .chain(hints.iter().map(|hint| hint.given_at))
        .chain(gave_up.map(|gave_up| gave_up.at));
    let mut attempt = Attempt {
        post_id: post,
        member_id: member,
        state: AttemptState::Playing,
        line: Vec::new(),
        points: Points::ZERO,
        wrong: 0,
        first_try: false,
        started_at: Moment::default(),
        ended_at: None,
        gave_up_at: gave_up.map(|gave_up| gave_up.at),
        gave_up_after: gave_up.map(|gave_up| gave_up.after),
    };
    let mut after = Vec::with_capacity(replies.len());
    let mut off = Off::default();
    for of in replies {
        off = off.hints(hints, |hint| hint.after_reply < of.reply.id);
        let gone = gave_up.is_some_and(|gave_up| of.reply.id > gave_up.after);
        // Whoever has given up goes on for the fun of it; the coach's word still counts.
        let counted = of
            .verdict
            .as_ref()
            .filter(|v| attempt.state == AttemptState::Playing && (!gone || v.by_coach));
        if let Some(verdict) = counted {
            if verdict.by_coach && settles(verdict) {
                attempt.points = verdict.points;
            } else if !verdict.by_coach {
                let worth = off.worth(verdict.points, verdict.verdict, prices);
                attempt.points = attempt.points.max(worth);
            }
            match verdict.verdict {
                Verdict::Solved => {
                    attempt.state = AttemptState::Solved;
                    attempt.ended_at = Some(of.reply.received_at);
                    attempt.first_try =
                        attempt.wrong == 0 && off.hints == 0 && attempt.points == Points::FULL;
                    attempt.line.clone_from(&verdict.line);
                }
                Verdict::OnTheWay => {
                    if !verdict.line.is_empty() {
                        attempt.line.clone_from(&verdict.line);
                    }
                }
                Verdict::Wrong => {
                    attempt.wrong += 1;
                    off.wrong = off.wrong.and(if verdict.wrong_first.is_some() {
                        prices.wrong_cost
                    } else {
                        prices.wrong_cost.min(LATER_WRONG)
                    });
                }
                // A mark is given to an answer to a question alone.
                Verdict::Illegal | Verdict::Unclear | Verdict::Unreadable | Verdict::Marked => {}
            }
        }
        let stands = After {
            points: attempt.points,
            wrong: attempt.wrong,
            hints: off.hints,
            left: off
                .worth(Points::FULL, Verdict::Solved, prices)
                .max(attempt.points),
            counts: counted.is_some(),
        };
        after.push((of.reply.id, stands));
    }
    if let Some(gave_up) = gave_up.filter(|_| attempt.state == AttemptState::Playing) {
        attempt.state = AttemptState::GivenUp;
        attempt.ended_at = Some(gave_up.at);
    }
    let started = deeds.min();
    Work {
        attempt: started.map(|started_at| Attempt {
            started_at,
            ..attempt
        }),
        after,
        hints: hints.to_vec(),
        off: off.hints(hints, |_| true),
        prices,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use sealed_move_store::{Reply, Via};

    const TOURNAMENT: Prices = Prices {
        wrong_cost: Points::of(5.0),
        hint_cost: Points::of(1.0),
        least: Points::of(0.0),
    };
    const CLUB: Prices = Prices {
        wrong_cost: Points::of(1.0),
        hint_cost: Points::of(1.0),
        least: Points::of(1.0),
    };
    const GENTLE: Prices = Prices {
        wrong_cost: Points::of(1.5),
        hint_cost: Points::of(0.5),
        least: Points::of(0.0),
    };

    fn at(second: i64) -> Moment {
        Moment::from_timestamp(1_800_000_000 + second, 0).expect("in range")
    }

    fn reply(
        second: i64,
        verdict: Verdict,
        points: f64,
        wrong_first: Option<&str>,
        line: &[&str],
    ) -> ReplyOf {
        ReplyOf {
            reply: Reply {
                id: ReplyId::of(second),
                post_id: PostId::of(1),
                member_id: MemberId::of(2),
                source: None,
                via: Via::Answer,
                text: String::new(),
                received_at: at(second),
            },
            name: "Ana".into(),
            coach: false,
            words: None,
            gone: None,
            example: None,
            verdict: Some(VerdictRow {
                id: second,
                reply_id: ReplyId::of(second),
                verdict,
                points: Points::of(points),
                moves: Vec::new(),
                refutation: Vec::new(),
                line: line.iter().map(|s| (*s).to_owned()).collect(),
                facts: None,
                why: String::new(),
                message: String::new(),
                wrong_first: wrong_first.map(str::to_owned),
                by_coach: false,
                given_at: at(second),
            }),
        }
    }

    fn hint(second: i64, step: u8) -> Hint {
        Hint {
            post_id: PostId::of(1),
            member_id: MemberId::of(2),
            ply: 0,
            step,
            given_at: at(second),
            // Of replies and hints in one second the reply comes first.
            after_reply: ReplyId::of(second - 1),
        }
    }

    fn wrong(second: i64) -> ReplyOf {
        reply(second, Verdict::Wrong, 0.0, Some("Rd7"), &[])
    }

    fn solved(second: i64) -> ReplyOf {
        reply(
            second,
            Verdict::Solved,
            5.0,
            None,
            &["Rxd8+", "Rxd8", "Rxd8#"],
        )
    }

    fn go(replies: &[ReplyOf], hints: &[Hint], rules: Prices, given_up: Option<i64>) -> Attempt {
        work(replies, hints, rules, given_up)
            .attempt
            .expect("an attempt")
    }

    /// Who gives up at a second does so before the reply of that second.
    fn work(replies: &[ReplyOf], hints: &[Hint], rules: Prices, given_up: Option<i64>) -> Work {
        let gave_up = given_up.map(|second| GaveUp {
            at: at(second),
            after: ReplyId::of(second - 1),
        });
        replay(
            PostId::of(1),
            MemberId::of(2),
            replies,
            hints,
            rules,
            gave_up,
        )
    }

    /// The judge's scale is the one that is kept.
    #[test]
    fn a_full_solution_is_all_the_points_there_are() {
        assert_eq!(Points::of(crate::chess::judge::points::FULL), Points::FULL);
    }

    #[test]
    fn solved_at_first_try_is_worth_five() {
        let attempt = go(&[solved(10)], &[], TOURNAMENT, None);
        assert_eq!(
            (attempt.state, attempt.points, attempt.first_try),
            (AttemptState::Solved, Points::of(5.0), true)
        );
        assert_eq!(attempt.ended_at, Some(at(10)));
        assert_eq!(attempt.line, ["Rxd8+", "Rxd8", "Rxd8#"]);
    }

    #[test]
    fn a_wrong_key_scores_nothing_by_the_federations_rule() {
        let attempt = go(&[wrong(1), solved(2)], &[], TOURNAMENT, None);
        assert_eq!(
            (
                attempt.state,
                attempt.points,
                attempt.wrong,
                attempt.first_try
            ),
            (AttemptState::Solved, Points::of(0.0), 1, false)
        );
    }

    #[test]
    fn whoever_solves_without_being_shown_the_move_keeps_a_point() {
        let many: Vec<ReplyOf> = (1..9).map(wrong).chain([solved(20)]).collect();
        assert_eq!(go(&many, &[], CLUB, None).points, Points::of(1.0));
        assert_eq!(
            go(&many, &[hint(10, 1), hint(11, 2)], CLUB, None).points,
            Points::of(1.0)
        );
        let shown = [hint(10, 1), hint(11, 2), hint(12, 3)];
        assert_eq!(go(&many, &shown, CLUB, None).points, Points::of(0.0));
        // Shown the move with two points left, they are kept.
        assert_eq!(
            go(&[solved(20)], &shown, CLUB, None).points,
            Points::of(2.0)
        );
        assert_eq!(
            go(&[wrong(1), solved(20)], &[], CLUB, None).points,
            Points::of(4.0)
        );
        let only_part = go(&many[..8], &[], CLUB, None);
        assert_eq!((only_part.points, only_part.wrong), (Points::ZERO, 8));
    }

    #[test]
    fn a_hint_alone_is_taking_part_and_chatter_is_not() {
        let hinted = go(&[], &[hint(4, 1)], CLUB, None);
        assert_eq!(
            (hinted.state, hinted.points, hinted.started_at),
            (AttemptState::Playing, Points::of(0.0), at(4))
        );
        let chatter = reply(1, Verdict::Unreadable, 0.0, None, &[]);
        assert_eq!(work(&[chatter], &[], CLUB, None).attempt, None);
    }

    #[test]
    fn what_is_left_is_told_before_it_is_paid() {
        let after = work(&[wrong(1)], &[hint(5, 1)], CLUB, None);
        assert_eq!(
            (after.left(), after.left_after_hint(2)),
            (Points::of(3.0), Points::of(2.0))
        );
        let low: Vec<ReplyOf> = (1..9).map(wrong).collect();
        let low = work(&low, &[], CLUB, None);
        assert_eq!(
            (low.left(), low.left_after_hint(1), low.left_after_hint(3)),
            (Points::of(1.0), Points::of(1.0), Points::ZERO)
        );
        assert_eq!(
            work(&[wrong(1)], &[], TOURNAMENT, None).left(),
            Points::ZERO
        );
    }

    #[test]
    fn an_overruled_solution_with_less_than_full_points_is_no_first_try() {
        let mut overruled = solved(2);
        if let Some(verdict) = &mut overruled.verdict {
            verdict.points = Points::of(3.0);
            verdict.by_coach = true;
        }
        let attempt = go(&[overruled], &[], CLUB, None);
        assert_eq!(
            (attempt.points, attempt.first_try),
            (Points::of(3.0), false)
        );
    }

    #[test]
    fn each_reply_shows_the_points_as_they_stood() {
        let key = reply(1, Verdict::OnTheWay, 2.0, None, &["Qh7+", "Kf8"]);
        let work = work(&[wrong(0), key, solved(3), wrong(4)], &[], CLUB, None);
        let points: Vec<Points> = work.after.iter().map(|(_, after)| after.points).collect();
        assert_eq!(points, [0.0, 1.0, 4.0, 4.0].map(Points::of));
        let counts: Vec<bool> = work.after.iter().map(|(_, after)| after.counts).collect();
        assert_eq!(counts, [true, true, true, false]);
    }

    #[test]
    fn gentler_groups_take_off_what_they_say() {
        let attempt = go(
            &[wrong(1), solved(20)],
            &[hint(5, 1), hint(6, 2)],
            GENTLE,
            None,
        );
        assert_eq!(
            (attempt.points, attempt.first_try),
            (Points::of(5.0 - 1.5 - 1.0), false)
        );
        // A hint after the solution is no matter.
        assert_eq!(
            go(&[solved(20)], &[hint(30, 1)], GENTLE, None).points,
            Points::of(5.0)
        );
    }

    #[test]
    fn part_of_a_line_is_worth_its_part_and_a_later_slip_a_point() {
        let key = reply(1, Verdict::OnTheWay, 2.0, None, &["Qh7+", "Kf8"]);
        let slip = reply(2, Verdict::Wrong, 2.0, None, &["Qh7+", "Kf8"]);
        let attempt = go(std::slice::from_ref(&key), &[], TOURNAMENT, None);
        assert_eq!(
            (attempt.state, attempt.points),
            (AttemptState::Playing, Points::of(2.0))
        );
        assert_eq!(attempt.line, ["Qh7+", "Kf8"]);
        let attempt = go(&[key, slip, solved(3)], &[], TOURNAMENT, None);
        assert_eq!((attempt.points, attempt.wrong), (Points::of(4.0), 1));
    }

    #[test]
    fn what_could_not_be_read_costs_nothing() {
        let noise = [Verdict::Illegal, Verdict::Unclear, Verdict::Unreadable]
            .map(|v| reply(1, v, 0.0, None, &[]));
        assert_eq!(work(&noise, &[], TOURNAMENT, None).attempt, None);
        let [a, b, c] = noise;
        assert!(go(&[a, b, c, solved(2)], &[], TOURNAMENT, None).first_try);
    }

    #[test]
    fn nothing_counts_after_the_end() {
        let given_up = go(&[wrong(1), solved(9)], &[], GENTLE, Some(5));
        assert_eq!(
            (given_up.state, given_up.points, given_up.ended_at),
            (AttemptState::GivenUp, Points::of(0.0), Some(at(5)))
        );
        let only_given_up = go(&[], &[], GENTLE, Some(5));
        assert_eq!(
            (only_given_up.state, only_given_up.started_at),
            (AttemptState::GivenUp, at(5))
        );
        assert_eq!(go(&[solved(1), wrong(2)], &[], GENTLE, None).wrong, 0);
    }

    #[test]
    fn the_coachs_points_stand_as_given() {
        let mut overruled = wrong(2);
        if let Some(verdict) = &mut overruled.verdict {
            verdict.verdict = Verdict::Solved;
            verdict.points = Points::of(3.5);
            verdict.by_coach = true;
        }
        let attempt = go(&[wrong(1), overruled], &[hint(0, 1)], TOURNAMENT, None);
        assert_eq!(
            (attempt.state, attempt.points),
            (AttemptState::Solved, Points::of(3.5))
        );
    }

    #[test]
    fn replies_without_a_verdict_make_no_attempt() {
        let mut late = solved(1);
        late.verdict = None;
        assert_eq!(work(&[late], &[], TOURNAMENT, None).attempt, None);
    }

    fn some_reply() -> impl Strategy<Value = ReplyOf> {
        let verdict = prop_oneof![
            3 => Just((Verdict::Wrong, true)),
            1 => Just((Verdict::Wrong, false)),
            2 => Just((Verdict::OnTheWay, false)),
            1 => Just((Verdict::Solved, false)),
            1 => Just((Verdict::Illegal, false)),
            1 => Just((Verdict::Unclear, false)),
            1 => Just((Verdict::Unreadable, false)),
        ];
        (0i64..100, verdict, 0u8..=10).prop_map(|(second, (verdict, first), halves)| {
            // As the judge has it: nothing for a wrong key or what is no move, five for the whole.
            let points = match verdict {
                Verdict::Solved => 5.0,
                Verdict::OnTheWay => f64::from(halves) / 2.0,
                Verdict::Wrong if !first => f64::from(halves) / 2.0,
                _ => 0.0,
            };
            reply(second, verdict, points, first.then_some("Rd7"), &[])
        })
    }

    fn some_replies() -> impl Strategy<Value = Vec<ReplyOf>> {
        prop::collection::vec(some_reply(), 1..12).prop_map(|mut replies| {
            replies.sort_by_key(|of| of.reply.received_at);
            replies
        })
    }

    fn some_hints() -> impl Strategy<Value = Vec<Hint>> {
        prop::collection::vec(0i64..100, 0..4).prop_map(|mut seconds| {
            seconds.sort_unstable();
            seconds
                .iter()
                .zip(1..)
                .map(|(second, step)| hint(*second, step))
                .collect()
        })
    }

    fn some_rules() -> impl Strategy<Value = Prices> {
        (0u8..=10, 0u8..=10, prop::bool::ANY).prop_map(|(wrong, hint, club)| Prices {
            wrong_cost: Points::of(f64::from(wrong) / 2.0),
            hint_cost: Points::of(f64::from(hint) / 2.0),
            least: if club { LEAST } else { Points::ZERO },
        })
    }

    proptest! {
        #[test]
        fn points_stay_on_the_scale_and_the_first_try_is_whole(
            replies in some_replies(), hints in some_hints(), rules in some_rules(),
            given_up in prop::option::of(0i64..100),
        ) {
            let Some(attempt) = work(&replies, &hints, rules, given_up).attempt else {
                return Ok(());
            };
            prop_assert!(attempt.points <= Points::FULL);
            if attempt.first_try {
                prop_assert_eq!((attempt.state, attempt.points, attempt.wrong), (AttemptState::Solved, Points::of(5.0), 0));
            }
            prop_assert_eq!(attempt.ended_at.is_none(), attempt.state == AttemptState::Playing);
        }

        /// Another wrong first move, another hint or a higher price never pays.
        #[test]
        fn misses_and_hints_never_pay(
            replies in some_replies(), hints in some_hints(), rules in some_rules(), second in 0i64..100,
        ) {
            let points = work(&replies, &hints, rules, None).points();
            let mut more = replies.clone();
            more.insert(0, wrong(-1));
            prop_assert!(go(&more, &hints, rules, None).points <= points);
            let mut hinted = hints.clone();
            hinted.push(hint(second, 3));
            prop_assert!(go(&replies, &hinted, rules, None).points <= points);
            let dearer = Prices { wrong_cost: rules.wrong_cost.and(Points::of(1.0)), hint_cost: rules.hint_cost.and(Points::of(1.0)), ..rules };
            prop_assert!(work(&replies, &hints, dearer, None).points() <= points);
        }

        /// What is no move costs nothing, wherever it stands.
        #[test]
        fn what_is_no_move_changes_no_points(replies in some_replies(), hints in some_hints(), rules in some_rules()) {
            let moves: Vec<ReplyOf> = replies
                .iter()
                .filter(|of| {
                    let verdict = of.verdict.as_ref().map(|v| v.verdict);
                    !matches!(verdict, Some(Verdict::Illegal | Verdict::Unclear | Verdict::Unreadable))
                })
                .cloned()
                .collect();
            prop_assert_eq!(
                work(&replies, &hints, rules, None).attempt,
                work(&moves, &hints, rules, None).attempt
            );
        }

        /// By the federation's rule a wrong key scores nothing, whatever follows.
        #[test]
        fn after_a_wrong_key_nothing_scores(replies in some_replies(), hints in some_hints()) {
            let mut after = replies;
            after.insert(0, wrong(0));
            prop_assert_eq!(go(&after, &hints, TOURNAMENT, None).points, Points::of(0.0));
        }

        /// The solution ends it: nothing that follows counts for or against.
        #[test]
        fn nothing_follows_the_solution(before in some_replies(), after in some_replies(), rules in some_rules()) {
            let mut whole = before;
            whole.push(solved(100));
            let end = go(&whole, &[], rules, None);
            whole.extend(after);
            prop_assert_eq!(go(&whole, &[], rules, None), end);
        }
    }
}
