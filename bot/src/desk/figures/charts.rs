//! The summary's charts: which there are, and the figures each one shows.

use chrono::{DateTime, Datelike, Days, Utc};
use chrono_tz::Tz;
use shakmaty::{Position as _, san::SanPlus};

use super::summary::{Figures, PostFigures};
use crate::{
    desk::{Summary, drawing::board_of, reveal::OFTEN},
    diagram::{
        Text,
        chart::{self, Chart, Day, Mastery, SolveRate, Week, WrongMove},
    },
};

/// The most posts in one chart; of more, the latest.
const MOST_POSTS: usize = 24;

/// The charts worth drawing, in the order in which a coach reads them. None without a post.
pub(super) fn of(figures: &Figures, summary: &Summary, zone: Tz) -> Vec<Chart> {
    if summary.posts.is_empty() {
        return Vec::new();
    }
    // Rates of solutions are of problems.
    let problems: Vec<_> = summary.problems().collect();
    let latest = problems.len().saturating_sub(MOST_POSTS);
    let mut charts = vec![chart::participation(
        Text::ChartParticipation,
        figures
            .posts
            .iter()
            .map(|of| day(of.post.opened_at, of, zone))
            .collect(),
    )];
    if !problems.is_empty() {
        charts.push(chart::solve_rates(
            Text::ChartSolved,
            problems[latest..]
                .iter()
                .map(|post| SolveRate {
                    label: match &post.topic {
                        Some(topic) => format!("{} · {topic}", post.number),
                        None => format!("{} · {}", post.number, post.kind.sign()),
                    },
                    tried: post.tried,
                    solved: post.solved,
                })
                .collect(),
        ));
    }
    if summary.topics.iter().any(|topic| topic.posts > 0) {
        charts.push(chart::mastery(
            Text::ChartMastery,
            summary
                .topics
                .iter()
                .filter(|topic| topic.posts > 0)
                .map(|topic| Mastery {
                    topic: topic.name().to_owned(),
                    tried: topic.tried,
                    solved: topic.solved,
                    first_try: topic.first_try,
                })
                .collect(),
        ));
    }
    charts.extend(commonest_wrong(&figures.posts));
    charts
}

fn day(opened_at: DateTime<Utc>, of: &PostFigures, zone: Tz) -> Day {
    let date = opened_at.with_timezone(&zone).date_naive();
    let monday = date - Days::new(date.weekday().num_days_from_monday().into());
    let sunday = monday + Days::new(6);
    Day {
        day: date.day(),
        week: Week {
            from: (monday.day(), monday.month()),
            to: (sunday.day(), sunday.month()),
        },
        tried: of.post.tried as usize,
        solved: of.post.solved as usize,
    }
}

/// The wrong first moves of the post where most members chose the same one; none where no two did.
fn commonest_wrong(posts: &[PostFigures]) -> Option<Chart> {
    let wrong = |of: &PostFigures| -> Vec<(String, usize)> {
        of.wrong
            .iter()
            .filter(|wrong| !of.keys.contains(&wrong.san))
            .map(|wrong| (wrong.san.clone(), wrong.members as usize))
            .collect()
    };
    let (of, moves) = posts
        .iter()
        .map(|of| (of, wrong(of)))
        .filter(|(_, moves)| {
            moves
                .first()
                .is_some_and(|(_, count)| *count >= OFTEN as usize)
        })
        .max_by_key(|(of, moves)| (moves.first().map(|(_, count)| *count), of.post.number))?;
    let board = board_of(&of.fen)?;
    let moves = moves
        .into_iter()
        .filter_map(|(san, count)| {
            let mv = san.parse::<SanPlus>().ok()?.san.to_move(&board).ok()?;
            Some(WrongMove {
                from: mv.from()?,
                to: mv.to(),
                san,
                count,
            })
        })
        .collect();
    let bottom = board.turn();
    Some(chart::wrong_moves(
        Text::ChartWrong {
            number: of.post.number,
        },
        board,
        bottom,
        moves,
    ))
}

#[cfg(test)]
mod tests {
    use chrono::TimeZone;
    use sealed_move_store::{self as store, WrongFirst};

    use super::*;
    use crate::{chat::pictures, desk::Period, diagram::Tongue};

    fn english() -> Tongue {
        pictures::tongue(crate::words::english())
    }

    fn figures(wrong: &[(&str, u32)]) -> Figures {
        let post = store::PostFigures {
            post_id: store::PostId::of(1),
            number: 7,
            topic: Some("Back rank".into()),
            content: store::Content::Problem {
                position_id: store::PositionId::of(1),
                stipulation: "#2".into(),
            },
            // Sunday in Lisbon, Monday in Auckland.
            opened_at: Utc
                .with_ymd_and_hms(2026, 3, 1, 18, 0, 0)
                .single()
                .expect("a moment"),
            tried: 6,
            solved: 2,
            first_try: 1,
            hints: 0,
        };
        Figures {
            period: Period::default(),
            members: Vec::new(),
            topics: vec![store::TopicFigures {
                topic: "Back rank".into(),
                posts: 1,
                tried: 6,
                solved: 2,
                first_try: 1,
                questions: 0,
                answered: 0,
            }],
            posts: vec![PostFigures {
                post,
                fen: "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1".into(),
                keys: vec!["Rxd8+".into()],
                wrong: wrong
                    .iter()
                    .map(|(san, members)| WrongFirst {
                        san: (*san).into(),
                        members: *members,
                        refutation: Vec::new(),
                        facts: None,
                        why: String::new(),
                    })
                    .collect(),
            }],
            now: Vec::new(),
            before: None,
            earlier: Vec::new(),
            compared: None,
        }
    }

    fn alts(wrong: &[(&str, u32)]) -> Vec<String> {
        let summary = super::super::summary::assemble(figures(wrong));
        of(&figures(wrong), &summary, Tz::UTC)
            .iter()
            .map(|chart| chart.alt(&english()))
            .collect()
    }

    #[test]
    fn there_is_a_chart_for_each_question_that_has_an_answer() {
        let alts = alts(&[("Rxd8+", 3), ("Rd7", 2), ("h3", 1)]);
        assert_eq!(alts.len(), 4, "{alts:#?}");
        assert!(alts[1].contains("7 · Back rank"));
        assert!(alts[3].starts_with("Position 7: first moves that failed"));
        assert!(
            alts[3].contains("Rd7") && !alts[3].contains("Rxd8"),
            "{}",
            alts[3]
        );
        let none: Vec<_> = of(
            &Figures {
                posts: Vec::new(),
                ..figures(&[])
            },
            &Summary::default(),
            Tz::UTC,
        );
        assert!(none.is_empty());
    }

    /// Few answers are drawn towards a half, so that the raw share would put these the other way round.
    #[test]
    fn topics_stand_in_one_order_in_list_table_and_chart() {
        let topic = |name: &str, solved, tried| store::TopicFigures {
            topic: name.into(),
            posts: 1,
            tried,
            solved,
            first_try: 0,
            questions: 0,
            answered: 0,
        };
        let figures = Figures {
            topics: vec![topic("One miss", 0, 1), topic("Weak", 4, 20)],
            ..figures(&[])
        };
        let summary = super::super::summary::assemble(figures.clone());
        let list: Vec<&str> = summary.topics.iter().map(|t| t.name()).collect();
        assert_eq!(list, ["Weak", "One miss"]);
        let chart = of(&figures, &summary, Tz::UTC)[2].alt(&english());
        let csv = summary
            .csv(super::super::SummaryTable::Topics)
            .expect("a table");
        for text in [chart, csv] {
            assert!(text.find("Weak") < text.find("One miss"), "{text}");
        }
    }

    #[test]
    fn a_move_that_one_member_chose_makes_no_chart() {
        assert_eq!(alts(&[("Rd7", 1), ("h3", 1)]).len(), 3);
    }

    #[test]
    fn days_are_those_of_the_group() {
        let of = figures(&[]);
        let post = &of.posts[0];
        let lisbon = day(post.post.opened_at, post, Tz::Europe__Lisbon);
        assert_eq!(
            (lisbon.day, lisbon.week.from, lisbon.week.to),
            (1, (23, 2), (1, 3))
        );
        let auckland = day(post.post.opened_at, post, Tz::Pacific__Auckland);
        assert_eq!(
            (auckland.day, auckland.week.from, auckland.week.to),
            (2, (2, 3), (8, 3))
        );
    }
}
