//! What a member's work on a post is worth: one replay of the verdicts in order, used for a new reply,
//! an overruled one, an edited one and a withdrawn one alike, so that they can never disagree.
//!
//! The scale is that of the World Federation for Chess Composition, five points for a full solution and
//! part points for part, which the judge gives for each reply by itself. The group's rules are taken off
//! here: each wrong first move and each hint step before a reply costs what the settings say. A wrong
//! move further down the line, after the right key, costs a point (or the price of a wrong first move
//! where that is less): our own rule, since the federation's solvers write their line only once. What
//! counts is the best that any reply was worth when it came. Points that the coach gave stand as given.

use sealed_move_store::{Attempt, AttemptState, Hint, Moment, ReplyOf, StoreError, Tx, Verdict};

/// Points off for a wrong move after the right key.
pub(super) const LATER_WRONG: f64 = 1.0;

/// The group's rules on tries and hints.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Rules {
    /// Points off for each wrong first move.
    pub wrong_cost: f64,
    /// Points off for each hint step.
    pub hint_cost: f64,
}

/// Works out a member's attempt at a post from what is kept of it and keeps the result. `None` when
/// nothing of an attempt is left.
pub(super) fn settle(
    tx: &Tx<'_>,
    post: i64,
    member: i64,
    rules: Rules,
) -> Result<Option<Attempt>, StoreError> {
    let given_up = tx
        .attempt(post, member)?
        .filter(|attempt| attempt.state == AttemptState::GivenUp)
        .and_then(|attempt| attempt.ended_at);
    settle_given_up(tx, post, member, rules, given_up)
}

/// As [`settle`], with the moment at which the member gave up.
pub(super) fn settle_given_up(
    tx: &Tx<'_>,
    post: i64,
    member: i64,
    rules: Rules,
    given_up: Option<Moment>,
) -> Result<Option<Attempt>, StoreError> {
    let replies = tx.replies_of(post, member)?;
    let hints = tx.hints(post, member)?;
    let attempt = replay(post, member, &replies, &hints, rules, given_up);
    match &attempt {
        Some(attempt) => tx.upsert_attempt(attempt)?,
        None => {
            tx.delete_attempt(post, member)?;
        }
    }
    Ok(attempt)
}

/// The attempt that these replies (in order), hints and giving up come to. Replies without a verdict do
/// not count: they came late, or are still to be judged.
fn replay(
    post: i64,
    member: i64,
    replies: &[ReplyOf],
    hints: &[Hint],
    rules: Rules,
    given_up: Option<Moment>,
) -> Option<Attempt> {
    let judged = || {
        replies
            .iter()
            .filter_map(|r| Some((&r.reply, r.verdict.as_ref()?)))
    };
    let started_at = judged()
        .map(|(reply, _)| reply.received_at)
        .next()
        .or(given_up)?;
    let mut attempt = Attempt {
        post_id: post,
        member_id: member,
        state: AttemptState::Playing,
        line: Vec::new(),
        points: 0.0,
        wrong: 0,
        first_try: false,
        started_at,
        ended_at: None,
    };
    let mut wrong_off = 0.0;
    for (reply, verdict) in judged() {
        // Whoever has given up goes on for the fun of it; the coach's word still counts.
        if given_up.is_some_and(|at| reply.received_at >= at) && !verdict.by_coach {
            continue;
        }
        let hinted = hints
            .iter()
            .filter(|hint| hint.given_at <= reply.received_at)
            .count();
        let worth = if verdict.by_coach {
            verdict.points
        } else {
            verdict.points - wrong_off - rules.hint_cost * hinted as f64
        };
        attempt.points = attempt.points.max(worth.clamp(0.0, 5.0));
        match verdict.verdict {
            Verdict::Solved => {
                attempt.state = AttemptState::Solved;
                attempt.ended_at = Some(reply.received_at);
                attempt.first_try = attempt.wrong == 0 && hinted == 0;
                attempt.line.clone_from(&verdict.line);
                return Some(attempt);
            }
            Verdict::OnTheWay => {
                if !verdict.line.is_empty() {
                    attempt.line.clone_from(&verdict.line);
                }
            }
            Verdict::Wrong => {
                attempt.wrong += 1;
                wrong_off += if verdict.wrong_first.is_some() {
                    rules.wrong_cost
                } else {
                    rules.wrong_cost.min(LATER_WRONG)
                };
            }
            Verdict::Illegal | Verdict::Unclear | Verdict::Unreadable => {}
        }
    }
    if let Some(at) = given_up {
        attempt.state = AttemptState::GivenUp;
        attempt.ended_at = Some(at);
    }
    Some(attempt)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use sealed_move_store::{Reply, VerdictRow, Via};

    const FEDERATION: Rules = Rules {
        wrong_cost: 5.0,
        hint_cost: 1.0,
    };
    const GENTLE: Rules = Rules {
        wrong_cost: 1.5,
        hint_cost: 0.5,
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
                id: second,
                post_id: 1,
                member_id: 2,
                source: None,
                via: Via::Answer,
                text: String::new(),
                received_at: at(second),
            },
            name: "Ana".into(),
            coach: false,
            words: None,
            gone: None,
            verdict: Some(VerdictRow {
                id: second,
                reply_id: second,
                verdict,
                points,
                moves: Vec::new(),
                refutation: Vec::new(),
                line: line.iter().map(|s| (*s).to_owned()).collect(),
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
            post_id: 1,
            member_id: 2,
            ply: 0,
            step,
            given_at: at(second),
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

    fn go(replies: &[ReplyOf], hints: &[Hint], rules: Rules, given_up: Option<i64>) -> Attempt {
        replay(1, 2, replies, hints, rules, given_up.map(at)).expect("an attempt")
    }

    #[test]
    fn solved_at_first_try_is_worth_five() {
        let attempt = go(&[solved(10)], &[], FEDERATION, None);
        assert_eq!(
            (attempt.state, attempt.points, attempt.first_try),
            (AttemptState::Solved, 5.0, true)
        );
        assert_eq!(attempt.ended_at, Some(at(10)));
        assert_eq!(attempt.line, ["Rxd8+", "Rxd8", "Rxd8#"]);
    }

    #[test]
    fn a_wrong_key_scores_nothing_by_the_federations_rule() {
        let attempt = go(&[wrong(1), solved(2)], &[], FEDERATION, None);
        assert_eq!(
            (
                attempt.state,
                attempt.points,
                attempt.wrong,
                attempt.first_try
            ),
            (AttemptState::Solved, 0.0, 1, false)
        );
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
            (5.0 - 1.5 - 1.0, false)
        );
        // A hint after the solution is no matter.
        assert_eq!(go(&[solved(20)], &[hint(30, 1)], GENTLE, None).points, 5.0);
    }

    #[test]
    fn part_of_a_line_is_worth_its_part_and_a_later_slip_a_point() {
        let key = reply(1, Verdict::OnTheWay, 2.0, None, &["Qh7+", "Kf8"]);
        let slip = reply(2, Verdict::Wrong, 2.0, None, &["Qh7+", "Kf8"]);
        let attempt = go(std::slice::from_ref(&key), &[], FEDERATION, None);
        assert_eq!(
            (attempt.state, attempt.points),
            (AttemptState::Playing, 2.0)
        );
        assert_eq!(attempt.line, ["Qh7+", "Kf8"]);
        let attempt = go(&[key, slip, solved(3)], &[], FEDERATION, None);
        assert_eq!((attempt.points, attempt.wrong), (4.0, 1));
    }

    #[test]
    fn what_could_not_be_read_costs_nothing() {
        let noise = [Verdict::Illegal, Verdict::Unclear, Verdict::Unreadable]
            .map(|v| reply(1, v, 0.0, None, &[]));
        let attempt = go(&noise, &[], FEDERATION, None);
        assert_eq!(
            (attempt.state, attempt.points, attempt.wrong),
            (AttemptState::Playing, 0.0, 0)
        );
        let [a, b, c] = noise;
        assert!(go(&[a, b, c, solved(2)], &[], FEDERATION, None).first_try);
    }

    #[test]
    fn nothing_counts_after_the_end() {
        let given_up = go(&[wrong(1), solved(9)], &[], GENTLE, Some(5));
        assert_eq!(
            (given_up.state, given_up.points, given_up.ended_at),
            (AttemptState::GivenUp, 0.0, Some(at(5)))
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
            verdict.points = 3.5;
            verdict.by_coach = true;
        }
        let attempt = go(&[wrong(1), overruled], &[hint(0, 1)], FEDERATION, None);
        assert_eq!((attempt.state, attempt.points), (AttemptState::Solved, 3.5));
    }

    #[test]
    fn replies_without_a_verdict_make_no_attempt() {
        let mut late = solved(1);
        late.verdict = None;
        assert_eq!(replay(1, 2, &[late], &[hint(0, 1)], FEDERATION, None), None);
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

    fn some_rules() -> impl Strategy<Value = Rules> {
        (0u8..=10, 0u8..=10).prop_map(|(wrong, hint)| Rules {
            wrong_cost: f64::from(wrong) / 2.0,
            hint_cost: f64::from(hint) / 2.0,
        })
    }

    proptest! {
        #[test]
        fn points_stay_on_the_scale_and_the_first_try_is_whole(
            replies in some_replies(), hints in some_hints(), rules in some_rules(),
            given_up in prop::option::of(0i64..100),
        ) {
            let attempt = go(&replies, &hints, rules, given_up);
            prop_assert!((0.0..=5.0).contains(&attempt.points));
            if attempt.first_try {
                prop_assert_eq!((attempt.state, attempt.points, attempt.wrong), (AttemptState::Solved, 5.0, 0));
            }
            prop_assert_eq!(attempt.ended_at.is_none(), attempt.state == AttemptState::Playing);
        }

        /// Another wrong first move, another hint or a higher price never pays.
        #[test]
        fn misses_and_hints_never_pay(
            replies in some_replies(), hints in some_hints(), rules in some_rules(), second in 0i64..100,
        ) {
            let points = go(&replies, &hints, rules, None).points;
            let mut more = replies.clone();
            more.insert(0, wrong(0));
            prop_assert!(go(&more, &hints, rules, None).points <= points);
            let mut hinted = hints.clone();
            hinted.push(hint(second, 3));
            prop_assert!(go(&replies, &hinted, rules, None).points <= points);
            let dearer = Rules { wrong_cost: (rules.wrong_cost + 1.0).min(5.0), hint_cost: (rules.hint_cost + 1.0).min(5.0) };
            prop_assert!(go(&replies, &hints, dearer, None).points <= points);
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
            let all = go(&replies, &hints, rules, None);
            match replay(1, 2, &moves, &hints, rules, None) {
                Some(some) => prop_assert_eq!(
                    (some.state, some.points, some.wrong, some.first_try),
                    (all.state, all.points, all.wrong, all.first_try)
                ),
                None => prop_assert_eq!((all.state, all.points, all.wrong), (AttemptState::Playing, 0.0, 0)),
            }
        }

        /// By the federation's rule a wrong key scores nothing, whatever follows.
        #[test]
        fn after_a_wrong_key_nothing_scores(replies in some_replies(), hints in some_hints()) {
            let mut after = replies;
            after.insert(0, wrong(0));
            prop_assert_eq!(go(&after, &hints, FEDERATION, None).points, 0.0);
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
