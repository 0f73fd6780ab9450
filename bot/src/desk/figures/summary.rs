//! The engagement summary, put together from the store's figures.

use std::collections::HashSet;

use sealed_move_store::{self as store, WrongFirst};
use shakmaty::Color;

use super::{advice, leaderboard::by_name};
use crate::{
    chess::line::numbered,
    desk::{
        CommonWrong, Compared, Kind, LanguageTag, MemberId, Period, Summary, SummaryMember,
        SummaryPost, SummaryTopic, telling,
    },
};

/// How many wrong moves of a post are named.
const WRONG_NAMED: usize = 3;

/// What a summary is put together from.
#[derive(Clone, Debug)]
pub(super) struct Figures {
    /// What it covers.
    pub period: Period,
    /// Each member's part.
    pub members: Vec<store::MemberFigures>,
    /// Each post.
    pub posts: Vec<PostFigures>,
    /// Each topic.
    pub topics: Vec<store::TopicFigures>,
    /// Who took part in the period.
    pub now: Vec<(MemberId, String)>,
    /// Who took part in the one before; `None` when there is none.
    pub before: Option<Vec<(MemberId, String)>>,
    /// Who ever took part before that.
    pub earlier: Vec<(MemberId, String)>,
    /// The two periods that are compared, the later one first.
    pub compared: Option<(Period, Period)>,
}

/// One post's figures and what its position adds to them.
#[derive(Clone, Debug)]
pub(super) struct PostFigures {
    /// The figures.
    pub post: store::PostFigures,
    /// FEN of its position.
    pub fen: String,
    /// Its keys in SAN, as last checked.
    pub keys: Vec<String>,
    /// Wrong first moves, the commonest first.
    pub wrong: Vec<WrongFirst>,
}

/// Puts the summary together.
pub(super) fn assemble(figures: Figures) -> Summary {
    let Figures {
        period,
        members,
        posts,
        topics,
        now,
        before,
        earlier,
        compared,
    } = figures;
    let coaches: HashSet<MemberId> = members
        .iter()
        .filter(|m| m.coach)
        .map(|m| m.member_id)
        .collect();
    let (went_quiet, came_back) = match &before {
        Some(before) => {
            let (now_ids, before_ids, earlier_ids) = (ids(&now), ids(before), ids(&earlier));
            (
                names(before, |id| {
                    !now_ids.contains(&id) && !coaches.contains(&id)
                }),
                names(&now, |id| {
                    !before_ids.contains(&id) && earlier_ids.contains(&id) && !coaches.contains(&id)
                }),
            )
        }
        None => (Vec::new(), Vec::new()),
    };

    let mut summary = Summary {
        from: period.from,
        to: period.to,
        members: members_of(members, &period),
        posts: posts.into_iter().map(post).collect(),
        topics: weakest_first(topics),
        went_quiet,
        came_back,
        compared: compared.map(|(recent, before)| Compared {
            recent_from: recent.from,
            recent_to: recent.to,
            before_from: before.from,
            before_to: before.to,
        }),
        advice: Vec::new(),
    };
    summary.advice = advice::of(&summary);
    summary
}

fn ids(people: &[(MemberId, String)]) -> HashSet<MemberId> {
    people.iter().map(|(id, _)| *id).collect()
}

fn names(people: &[(MemberId, String)], wanted: impl Fn(MemberId) -> bool) -> Vec<String> {
    let mut names: Vec<String> = people
        .iter()
        .filter(|(id, _)| wanted(*id))
        .map(|(_, name)| name.clone())
        .collect();
    names.sort_by(|a, b| by_name(a, b));
    names
}

/// Most points first, then by name. Coaches are listed when they took part; nobody is before they joined.
fn members_of(members: Vec<store::MemberFigures>, period: &Period) -> Vec<SummaryMember> {
    let mut rows: Vec<SummaryMember> = members
        .into_iter()
        .filter(|m| {
            m.tried + m.answered > 0 || (!m.coach && period.to.is_none_or(|to| m.joined_at < to))
        })
        .map(|m| SummaryMember {
            name: m.name,
            tried: m.tried as usize,
            solved: m.solved as usize,
            first_try: m.first_try as usize,
            points: m.points,
            hints: m.hints as usize,
            answered: m.answered as usize,
        })
        .collect();
    rows.sort_by(|a, b| {
        b.points
            .total_cmp(&a.points)
            .then((b.tried + b.answered).cmp(&(a.tried + a.answered)))
            .then_with(|| by_name(&a.name, &b.name))
    });
    rows
}

fn post(figures: PostFigures) -> SummaryPost {
    let PostFigures {
        post,
        fen,
        keys,
        wrong,
    } = figures;
    SummaryPost {
        number: post.number,
        topic: post.topic,
        kind: Kind::of(&post.content),
        tried: post.tried as usize,
        solved: post.solved as usize,
        first_try: post.first_try as usize,
        common_wrong: wrong
            .into_iter()
            // A move that a later check found to be a key is no example of a wrong one.
            .filter(|wrong| !keys.contains(&wrong.san))
            .take(WRONG_NAMED)
            .map(|wrong| CommonWrong {
                refutation: refutation(&fen, &wrong.refutation),
                san: wrong.san,
                count: wrong.members as usize,
                why: telling::why(&LanguageTag::default(), wrong.facts.as_ref(), &wrong.why),
            })
            .collect(),
    }
}

/// The refuting line, numbered from the answer to the wrong first move on. The second field of FEN says who
/// is to move (PGN standard, Edwards, 1994, section 16.1.3.2).
fn refutation(fen: &str, line: &[String]) -> String {
    match fen.split_whitespace().nth(1) {
        Some("b") => numbered(Color::White, 2, line),
        _ => numbered(Color::Black, 1, line),
    }
}

/// The smallest share of solved attempts first. Shares of few attempts are drawn towards a half (Laplace's
/// rule of succession), so that one unlucky answer does not make the weakest topic.
fn weakest_first(topics: Vec<store::TopicFigures>) -> Vec<SummaryTopic> {
    let mut rows: Vec<SummaryTopic> = topics
        .into_iter()
        .map(|t| SummaryTopic {
            topic: Some(t.topic),
            posts: t.posts as usize,
            tried: t.tried as usize,
            solved: t.solved as usize,
            first_try: t.first_try as usize,
            questions: t.questions as usize,
            answered: t.answered as usize,
        })
        .collect();
    rows.sort_by(|a, b| {
        // One of questions alone has no share.
        (a.posts == 0)
            .cmp(&(b.posts == 0))
            .then_with(|| {
                advice::share(a.solved, a.tried).total_cmp(&advice::share(b.solved, b.tried))
            })
            .then_with(|| by_name(a.name(), b.name()))
    });
    rows
}

impl Summary {
    /// The posts that were problems; rates of solutions are of these.
    pub fn problems(&self) -> impl Iterator<Item = &SummaryPost> {
        self.posts
            .iter()
            .filter(|post| matches!(post.kind, Kind::Problem { .. }))
    }

    /// The posts that were questions.
    pub fn questions(&self) -> impl Iterator<Item = &SummaryPost> {
        self.posts.iter().filter(|post| post.kind == Kind::Question)
    }
}

#[cfg(test)]
mod tests {
    use chrono::{DateTime, TimeDelta, Utc};

    use super::*;

    fn day(n: i64) -> DateTime<Utc> {
        DateTime::UNIX_EPOCH + TimeDelta::days(n)
    }

    fn member(id: i64, name: &str, tried: u32, points: f64) -> store::MemberFigures {
        store::MemberFigures {
            member_id: MemberId::of(id),
            name: name.into(),
            coach: false,
            joined_at: day(0),
            tried,
            solved: tried,
            first_try: tried,
            answered: 0,
            points,
            hints: 0,
        }
    }

    fn people(list: &[(i64, &str)]) -> Vec<(MemberId, String)> {
        list.iter()
            .map(|(id, name)| (MemberId::of(*id), (*name).to_owned()))
            .collect()
    }

    fn empty() -> Figures {
        Figures {
            period: Period {
                from: Some(day(7)),
                to: Some(day(14)),
                topic: None,
            },
            members: Vec::new(),
            posts: Vec::new(),
            topics: Vec::new(),
            now: Vec::new(),
            before: Some(Vec::new()),
            earlier: Vec::new(),
            compared: None,
        }
    }

    #[test]
    fn quiet_and_back_are_told_apart_from_new() {
        let mut coach = member(9, "Coach", 0, 0.0);
        coach.coach = true;
        let summary = assemble(Figures {
            members: vec![coach],
            now: people(&[(1, "Ana"), (2, "Bruno"), (3, "Newcomer")]),
            before: Some(people(&[
                (1, "Ana"),
                (4, "dora"),
                (5, "Carla"),
                (9, "Coach"),
            ])),
            earlier: people(&[(2, "Bruno"), (1, "Ana"), (6, "Long gone")]),
            ..empty()
        });
        assert_eq!(summary.went_quiet, ["Carla", "dora"]);
        assert_eq!(summary.came_back, ["Bruno"]);
        let first = assemble(Figures {
            now: people(&[(1, "Ana")]),
            before: None,
            earlier: people(&[(1, "Ana")]),
            ..empty()
        });
        assert!(first.went_quiet.is_empty() && first.came_back.is_empty());
    }

    #[test]
    fn members_are_listed_who_belong_to_the_period() {
        let mut coach = member(1, "Coach", 0, 0.0);
        coach.coach = true;
        let mut playing_coach = member(2, "Second coach", 1, 5.0);
        playing_coach.coach = true;
        let mut later = member(3, "Later", 0, 0.0);
        later.joined_at = day(14);
        let summary = assemble(Figures {
            members: vec![
                coach,
                playing_coach,
                later,
                member(4, "idle", 0, 0.0),
                member(5, "Ana", 2, 7.5),
                member(6, "zero", 2, 0.0),
            ],
            ..empty()
        });
        let names: Vec<_> = summary.members.iter().map(|m| m.name.as_str()).collect();
        assert_eq!(names, ["Ana", "Second coach", "zero", "idle"]);
    }

    #[test]
    fn wrong_moves_carry_their_numbered_refutation() {
        let wrong = |san: &str, members| WrongFirst {
            san: san.into(),
            members,
            refutation: vec!["Kxc2".into(), "Kg8".into()],
            facts: None,
            why: "the king takes it".into(),
        };
        let figures = |fen: &str| PostFigures {
            post: store::PostFigures {
                post_id: store::PostId::of(1),
                number: 7,
                topic: None,
                content: store::Content::Problem {
                    position_id: store::PositionId::of(1),
                    stipulation: "#2".into(),
                },
                opened_at: day(8),
                tried: 9,
                solved: 1,
                first_try: 1,
                hints: 0,
            },
            fen: fen.into(),
            keys: vec!["Qb2+".into()],
            wrong: vec![
                wrong("Qb2+", 5),
                wrong("Rc2", 4),
                wrong("Rc3", 2),
                wrong("Rc4", 1),
                wrong("Rc5", 1),
            ],
        };
        let black = post(figures("8/8/8/8/8/8/8/8 b - - 0 1"));
        let names: Vec<_> = black.common_wrong.iter().map(|w| w.san.as_str()).collect();
        assert_eq!(names, ["Rc2", "Rc3", "Rc4"]);
        assert_eq!(black.common_wrong[0].refutation, "2.Kxc2 Kg8");
        let white = post(figures("8/8/8/8/8/8/8/8 w - - 0 1"));
        assert_eq!(white.common_wrong[0].refutation, "1...Kxc2 2.Kg8");
    }

    #[test]
    fn one_unlucky_answer_does_not_make_the_weakest_topic() {
        let topic = |name: &str, solved, tried| store::TopicFigures {
            topic: name.into(),
            posts: 1,
            tried,
            solved,
            first_try: 0,
            questions: 0,
            answered: 0,
        };
        let order: Vec<_> = weakest_first(vec![
            topic("strong", 18, 20),
            topic("one miss", 0, 1),
            topic("untried", 0, 0),
            topic("weak", 4, 20),
        ])
        .into_iter()
        .map(|t| t.name().to_owned())
        .collect();
        assert_eq!(order, ["weak", "one miss", "untried", "strong"]);
    }
}
