//! The leaderboard and the engagement summary as plain text.

// What a text says stands in the FTL; its values are named after what they are.
#![allow(missing_docs)]

use chrono_tz::Tz;
use serde::Serialize;

use crate::{
    chess::fact::{And, Decimal, Line, Theirs},
    desk::{
        Covered, Kind, KindName, Leaderboard, LeaderboardRow, Period, Summary, SummaryMember,
        SummaryPost, SummaryTopic,
    },
    words::Words,
};

/// Attempts below which no percentage is given, for it would mean little. Common practice.
const ENOUGH: usize = 8;

#[derive(Clone, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
enum Text {
    // The leaderboard.
    FiguresBoard {
        period: Covered,
    },
    FiguresBoardTopic {
        topic: Theirs,
        period: Covered,
    },
    NoPointsYet,
    FiguresBoardRow {
        rank: usize,
        name: Theirs,
        points: Decimal,
        solved: usize,
        tried: usize,
    },
    FiguresBoardAsked {
        rank: usize,
        name: Theirs,
        points: Decimal,
        answered: usize,
    },
    FiguresBoardBoth {
        rank: usize,
        name: Theirs,
        points: Decimal,
        solved: usize,
        tried: usize,
        answered: usize,
    },

    // The summary.
    FiguresSummary {
        period: Covered,
    },
    /// `percent` solved; `None` where it would mean little.
    FiguresAttempts {
        posts: usize,
        tried: usize,
        solved: usize,
        percent: Option<i64>,
        first: usize,
    },
    FiguresAnswers {
        questions: usize,
        answered: usize,
    },
    FiguresMember {
        name: Theirs,
        points: Decimal,
        tried: usize,
        solved: usize,
        first: usize,
        hints: usize,
    },
    FiguresMemberAsked {
        name: Theirs,
        points: Decimal,
        answered: usize,
    },
    FiguresMemberBoth {
        name: Theirs,
        points: Decimal,
        tried: usize,
        solved: usize,
        first: usize,
        hints: usize,
        answered: usize,
    },
    FiguresDidNotAnswer {
        names: And<Theirs>,
    },
    FiguresWentQuiet {
        names: And<Theirs>,
    },
    FiguresWentQuietSince {
        recent: Covered,
        before: Covered,
        names: And<Theirs>,
    },
    FiguresCameBack {
        names: And<Theirs>,
    },
    FiguresPost {
        number: i64,
        topic: Option<Theirs>,
        task: String,
        tried: usize,
        solved: usize,
        percent: Option<i64>,
        first: usize,
    },
    FiguresMissed {
        moves: And<Missed>,
    },
    FiguresAsked {
        kind: KindName,
        number: i64,
        topic: Option<Theirs>,
        answered: usize,
    },
    FiguresTopic {
        topic: Theirs,
        posts: usize,
        tried: usize,
        solved: usize,
        percent: Option<i64>,
        first: usize,
    },
    FiguresTopicAsked {
        topic: Theirs,
        questions: usize,
        answered: usize,
    },

    // Headings.
    FiguresWhoTookPart,
    FiguresPosts,
    FiguresTopics,
    FiguresWhatNext,
}

/// A wrong move, how often it was played, and what refutes it.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
enum Missed {
    MissedMove {
        played: Line,
        count: usize,
    },
    MissedRefuted {
        played: Line,
        count: usize,
        refuted: Line,
    },
}

/// The leaderboard over a period.
pub(super) fn leaderboard(words: &Words, board: &Leaderboard, period: &Period, zone: Tz) -> String {
    let period = period.covered(zone);
    let mut lines = vec![match &board.topic {
        Some(topic) => Text::FiguresBoardTopic {
            topic: topic.clone().into(),
            period,
        },
        None => Text::FiguresBoard { period },
    }];
    if board.rows.is_empty() {
        lines.push(Text::NoPointsYet);
    }
    lines.extend(board.rows.iter().map(board_row));
    lines.iter().map(|line| words.say(line) + "\n").collect()
}

fn board_row(row: &LeaderboardRow) -> Text {
    let (rank, name, points) = (row.rank, row.name.clone().into(), Decimal::of(row.points));
    let (solved, tried, answered) = (row.solved, row.tried, row.answered);
    match (tried, answered) {
        (_, 0) => Text::FiguresBoardRow {
            rank,
            name,
            points,
            solved,
            tried,
        },
        (0, _) => Text::FiguresBoardAsked {
            rank,
            name,
            points,
            answered,
        },
        _ => Text::FiguresBoardBoth {
            rank,
            name,
            points,
            solved,
            tried,
            answered,
        },
    }
}

/// The summary, with its dates in the group's zone.
pub(super) fn summary(words: &Words, summary: &Summary, zone: Tz) -> String {
    let covered = |from, to| {
        Period {
            from,
            to,
            topic: None,
        }
        .covered(zone)
    };
    let mut head = vec![Text::FiguresSummary {
        period: covered(summary.from, summary.to),
    }];
    let sum = |part: fn(&SummaryPost) -> usize| summary.problems().map(part).sum::<usize>();
    let (posts, questions) = (summary.problems().count(), summary.questions().count());
    if posts > 0 || questions == 0 {
        let (solved, tried) = (sum(|p| p.solved), sum(|p| p.tried));
        head.push(Text::FiguresAttempts {
            posts,
            tried,
            solved,
            percent: percent(solved, tried),
            first: sum(|p| p.first_try),
        });
    }
    if questions > 0 {
        let answered = summary.questions().map(|p| p.tried).sum();
        head.push(Text::FiguresAnswers {
            questions,
            answered,
        });
    }
    let mut parts = vec![head];

    let (active, idle): (Vec<_>, Vec<_>) = summary.members.iter().partition(|m| m.took_part());
    let idle: Vec<String> = idle.into_iter().map(|m| m.name.clone()).collect();
    let mut people: Vec<Text> = active.into_iter().map(member).collect();
    if !people.is_empty() {
        people.insert(0, Text::FiguresWhoTookPart);
    }
    people.extend(named(&idle).map(|names| Text::FiguresDidNotAnswer { names }));
    people.extend(
        named(&summary.went_quiet).map(|names| match &summary.compared {
            Some(compared) => Text::FiguresWentQuietSince {
                recent: covered(compared.recent_from, compared.recent_to),
                before: covered(compared.before_from, compared.before_to),
                names,
            },
            None => Text::FiguresWentQuiet { names },
        }),
    );
    people.extend(named(&summary.came_back).map(|names| Text::FiguresCameBack { names }));
    parts.push(people);

    let mut rows: Vec<String> = parts
        .iter()
        .filter(|part| !part.is_empty())
        .map(|part| lines(words, part))
        .collect();
    let posts: Vec<String> = summary
        .posts
        .iter()
        .map(|one| words.tell(&post(one)))
        .collect();
    let topics: Vec<String> = summary
        .topics
        .iter()
        .map(|one| {
            topic(one)
                .iter()
                .map(|t| words.say(t))
                .collect::<Vec<_>>()
                .join("\n")
        })
        .collect();
    let advice = vec![words.tell(&summary.advice)];
    for (heading, said) in [
        (Text::FiguresPosts, posts),
        (Text::FiguresTopics, topics),
        (Text::FiguresWhatNext, advice),
    ] {
        if !said.is_empty() {
            rows.push(format!("{}\n{}\n", words.say(&heading), said.join("\n")));
        }
    }
    rows.join("\n")
}

fn lines(words: &Words, texts: &[Text]) -> String {
    texts.iter().map(|text| words.say(text) + "\n").collect()
}

fn named(names: &[String]) -> Option<And<Theirs>> {
    (!names.is_empty()).then(|| And {
        and: names.iter().cloned().map(Theirs::from).collect(),
    })
}

/// The share that solved, in whole percent.
fn percent(solved: usize, tried: usize) -> Option<i64> {
    (tried >= ENOUGH).then(|| (100.0 * solved as f64 / tried as f64).round_ties_even() as i64)
}

fn member(member: &SummaryMember) -> Text {
    let (name, points) = (member.name.clone().into(), Decimal::of(member.points));
    let (tried, solved, first) = (member.tried, member.solved, member.first_try);
    let (hints, answered) = (member.hints, member.answered);
    match (tried, answered) {
        (_, 0) => Text::FiguresMember {
            name,
            points,
            tried,
            solved,
            first,
            hints,
        },
        (0, _) => Text::FiguresMemberAsked {
            name,
            points,
            answered,
        },
        _ => Text::FiguresMemberBoth {
            name,
            points,
            tried,
            solved,
            first,
            hints,
            answered,
        },
    }
}

/// How a post went, and where it went wrong.
fn post(post: &SummaryPost) -> Vec<Text> {
    let topic = post.topic.clone().map(Theirs::from);
    let Kind::Problem { stipulation } = &post.kind else {
        return vec![Text::FiguresAsked {
            kind: post.kind.name(),
            number: post.number,
            topic,
            answered: post.tried,
        }];
    };
    let mut said = vec![Text::FiguresPost {
        number: post.number,
        topic,
        task: stipulation.clone(),
        tried: post.tried,
        solved: post.solved,
        percent: percent(post.solved, post.tried),
        first: post.first_try,
    }];
    let missed: Vec<Missed> = post
        .common_wrong
        .iter()
        .map(|wrong| {
            let (played, count) = (wrong.san.clone().into(), wrong.count);
            match wrong.refutation.as_str() {
                "" => Missed::MissedMove { played, count },
                refuted => Missed::MissedRefuted {
                    played,
                    count,
                    refuted: refuted.to_owned().into(),
                },
            }
        })
        .collect();
    if !missed.is_empty() {
        said.push(Text::FiguresMissed {
            moves: And { and: missed },
        });
    }
    said
}

/// How problems and questions of a topic went, a line each.
fn topic(topic: &SummaryTopic) -> Vec<Text> {
    let name = || Theirs::from(topic.name().to_owned());
    let problems = (topic.posts > 0).then(|| Text::FiguresTopic {
        topic: name(),
        posts: topic.posts,
        tried: topic.tried,
        solved: topic.solved,
        percent: percent(topic.solved, topic.tried),
        first: topic.first_try,
    });
    let questions = (topic.questions > 0).then(|| Text::FiguresTopicAsked {
        topic: name(),
        questions: topic.questions,
        answered: topic.answered,
    });
    problems.into_iter().chain(questions).collect()
}

#[cfg(test)]
mod tests {
    use chrono::{TimeZone, Utc};

    use super::*;
    use crate::{
        desk::{Advice, CommonWrong, Said},
        words::{english, words},
    };

    fn week() -> Period {
        let day = |day| Utc.with_ymd_and_hms(2026, 3, day, 0, 0, 0).single();
        Period {
            from: day(2),
            to: day(9),
            topic: None,
        }
    }

    #[test]
    fn a_percentage_needs_enough_to_mean_something() {
        assert_eq!(percent(1, 2), None);
        assert_eq!(percent(5, 8), Some(62));
    }

    #[test]
    fn the_leaderboard_reads_as_a_list() {
        let row = |rank, name: &str, points, answered| LeaderboardRow {
            rank,
            name: name.into(),
            points,
            solved: 1,
            tried: 2,
            answered,
        };
        let board = Leaderboard {
            topic: Some("Back rank".into()),
            rows: vec![row(1, "Ana", 7.5, 0), row(2, "Bo", 1.0, 1)],
        };
        assert_eq!(
            leaderboard(english(), &board, &week(), Tz::UTC),
            "Leaderboard, Back rank, 2 to 8 March 2026\n\
             1. Ana: 7.5 points, 1 of 2 solved\n\
             2. Bo: 1 point, 1 of 2 solved, 1 question answered\n"
        );
        assert_eq!(
            leaderboard(words("de"), &board, &week(), Tz::UTC),
            "Rangliste, Back rank, 2. bis 8. März 2026\n\
             1. Ana: 7,5 Punkte, 1 von 2 gelöst\n\
             2. Bo: 1 Punkt, 1 von 2 gelöst, 1 Frage beantwortet\n"
        );
        let none = leaderboard(english(), &Leaderboard::default(), &week(), Tz::UTC);
        assert!(none.contains("No points yet"), "{none}");
    }

    #[test]
    fn the_summary_reads_from_top_to_bottom() {
        let member = |name: &str, tried, points| SummaryMember {
            name: name.into(),
            tried,
            solved: tried,
            first_try: 0,
            points,
            hints: 1,
            answered: 0,
        };
        let one = Summary {
            from: week().from,
            to: week().to,
            members: vec![member("Ana", 1, 2.5), member("Bo", 0, 0.0)],
            posts: vec![SummaryPost {
                number: 7,
                topic: Some("Back rank".into()),
                kind: Kind::Problem {
                    stipulation: "#2".into(),
                },
                tried: 8,
                solved: 4,
                first_try: 1,
                common_wrong: vec![CommonWrong {
                    san: "Rd7".into(),
                    count: 3,
                    refutation: "1...Rxd7".into(),
                    why: Said::default(),
                }],
            }],
            topics: vec![SummaryTopic {
                topic: Some("Back rank".into()),
                posts: 1,
                tried: 8,
                solved: 4,
                first_try: 1,
                questions: 0,
                answered: 0,
            }],
            went_quiet: vec!["Carla".into()],
            came_back: vec![],
            compared: None,
            advice: vec![Advice::AdviceNobody],
        };
        insta::assert_snapshot!(summary(english(), &one, Tz::UTC), @r"
        Engagement summary, 2 to 8 March 2026
        1 post, 8 attempts, 4 solved (50%), 1 at the first try.

        Who took part
        Ana: 2.5 points, 1 tried, 1 solved, 0 at the first try, 1 hint
        Did not answer: Bo
        Went quiet: Carla

        Posts
        Position 7, Back rank, #2: 8 tried, 4 solved (50%), 1 at the first try. Most often wrong: Rd7 (3; 1...Rxd7).

        Topics, weakest first
        Back rank: 1 post, 8 attempts, 4 solved (50%), 1 at the first try

        What to teach next
        Nobody answered in this period. Ask the group whether the days and the hour suit them, and post something easier.
        ");
        insta::assert_snapshot!(summary(words("es"), &one, Tz::UTC), @r"
        Resumen de participación, del 2 al 8 de marzo de 2026
        1 publicación, 8 intentos, 4 con solución (50 %), 1 al primer intento.

        Quién ha participado
        Ana: 2,5 puntos, intentadas: 1, resueltas: 1, al primer intento: 0, 1 pista
        No respondieron: Bo
        Han dejado de participar: Carla

        Publicaciones
        Posición 7, Back rank, #2: intentos: 8, 4 con solución (50 %), 1 al primer intento. Errores más frecuentes: Td7 (3; 1...Txd7).

        Temas, el más flojo primero
        Back rank: 1 publicación, 8 intentos, 4 con solución (50 %), 1 al primer intento

        Qué enseñar ahora
        En este periodo no respondió nadie. Pregunta al grupo si le van bien los días y la hora, y publica algo más fácil.
        ");
    }
}
