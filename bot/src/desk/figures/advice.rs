//! What to teach next, out of the summary's figures and honest about how few they may be.

// What a fact says stands beside its name; its values are named after what they are.
#![allow(missing_docs)]

use serde::{Deserialize, Serialize};

use crate::{
    chess::fact::{And, Line, List, Theirs},
    desk::{Summary, SummaryPost, SummaryTopic},
};

/// Attempts below which a share says little. Common practice.
pub(super) const ENOUGH: usize = 8;
/// Below this share a topic is taught again. Common practice.
const AGAIN: f64 = 0.5;
/// From this share on the group is ready for more. Common practice.
const READY: f64 = 0.8;
/// Shares nearer to each other than this are not told apart.
const CLOSE: f64 = 0.1;
/// Names given before the rest is counted.
const NAMED: usize = 4;

/// The share of attempts that solved, drawn towards a half when they are few (Laplace's rule of
/// succession). 0.0 to 1.0.
pub(super) fn share(solved: usize, tried: usize) -> f64 {
    (solved as f64 + 1.0) / (tried as f64 + 2.0)
}

/// A sentence of the advice.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Advice {
    // There is too little to go by.
    AdviceNothingClosed,
    AdviceOnlyQuestions,
    AdviceNobody,
    AdviceFew {
        tried: usize,
    },
    AdviceFewSoFar {
        tried: usize,
        topic: Theirs,
        solved: usize,
        of: usize,
    },

    // Of topics.
    AdviceTeachAgain {
        topic: Theirs,
        solved: usize,
        of: usize,
    },
    AdviceStay {
        topic: Theirs,
        solved: usize,
        of: usize,
        first: usize,
    },
    AdviceReady {
        topic: Theirs,
        solved: usize,
        of: usize,
    },
    AdviceNear {
        topics: And<NearTopic>,
    },
    AdviceManyNear {
        number: usize,
    },

    // Of answers.
    AdviceBegin {
        number: i64,
        count: usize,
        of: usize,
        played: Line,
    },
    AdviceBeginRefuted {
        number: i64,
        count: usize,
        of: usize,
        played: Line,
        refuted: Line,
    },
    AdviceFirstTries {
        first: usize,
        solved: usize,
    },

    // Of members.
    AdviceQuiet {
        names: And<Theirs>,
    },
    AdviceManyQuiet {
        names: List<Theirs>,
        others: usize,
    },
}

/// A topic that went about as well as another.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename = "near-topic")]
pub struct NearTopic {
    pub topic: Theirs,
    pub solved: usize,
    pub of: usize,
}

/// The advice, in a few sentences.
pub(super) fn of(summary: &Summary) -> Vec<Advice> {
    if summary.posts.is_empty() {
        return vec![Advice::AdviceNothingClosed];
    }
    let tried: usize = summary.problems().map(|post| post.tried).sum();
    let answered: usize = summary.questions().map(|post| post.tried).sum();
    if tried == 0 && answered > 0 {
        return vec![Advice::AdviceOnlyQuestions];
    }
    if tried == 0 {
        return vec![Advice::AdviceNobody];
    }
    let mut sentences = on_topics(&summary.topics, tried);
    sentences.extend(on_wrong_moves(&summary.posts));
    sentences.extend(on_first_tries(&summary.posts));
    sentences.extend(on_quiet(&summary.went_quiet));
    sentences
}

fn on_topics(topics: &[SummaryTopic], tried: usize) -> Vec<Advice> {
    let name = |topic: &SummaryTopic| Theirs::from(topic.name().to_owned());
    let judged: Vec<&SummaryTopic> = topics
        .iter()
        .filter(|topic| topic.tried >= ENOUGH)
        .collect();
    let Some(weakest) = judged.first() else {
        // Topics come weakest first; one that nobody tried is not weak.
        return vec![match topics.iter().find(|topic| topic.tried > 0) {
            Some(weakest) if topics.len() > 1 => Advice::AdviceFewSoFar {
                tried,
                topic: name(weakest),
                solved: weakest.solved,
                of: weakest.tried,
            },
            _ => Advice::AdviceFew { tried },
        }];
    };
    let rate = share(weakest.solved, weakest.tried);
    let (topic, solved, of) = (name(weakest), weakest.solved, weakest.tried);
    let mut advice = vec![if rate < AGAIN {
        Advice::AdviceTeachAgain { topic, solved, of }
    } else if rate < READY {
        Advice::AdviceStay {
            topic,
            solved,
            of,
            first: weakest.first_try,
        }
    } else {
        return vec![Advice::AdviceReady { topic, solved, of }];
    }];
    let near: Vec<NearTopic> = judged[1..]
        .iter()
        .filter(|topic| share(topic.solved, topic.tried) - rate < CLOSE)
        .map(|topic| NearTopic {
            topic: name(topic),
            solved: topic.solved,
            of: topic.tried,
        })
        .collect();
    match near.len() {
        0 => {}
        n if n <= NAMED => advice.push(Advice::AdviceNear {
            topics: And { and: near },
        }),
        number => advice.push(Advice::AdviceManyNear { number }),
    }
    advice
}

/// The wrong move most worth a lesson: chosen by two at least, and by a third of those who tried.
fn on_wrong_moves(posts: &[SummaryPost]) -> Option<Advice> {
    let (post, wrong) = posts
        .iter()
        .filter_map(|post| Some((post, post.common_wrong.first()?)))
        .filter(|(post, wrong)| wrong.count >= 2 && wrong.count * 3 >= post.tried)
        // The latest of equals: it is fresh in mind.
        .max_by_key(|(post, wrong)| (wrong.count, post.number))?;
    let (number, count, of) = (post.number, wrong.count, post.tried);
    let played = wrong.san.clone().into();
    Some(match wrong.refutation.as_str() {
        "" => Advice::AdviceBegin {
            number,
            count,
            of,
            played,
        },
        refuted => Advice::AdviceBeginRefuted {
            number,
            count,
            of,
            played,
            refuted: refuted.to_owned().into(),
        },
    })
}

fn on_first_tries(posts: &[SummaryPost]) -> Option<Advice> {
    let solved: usize = posts.iter().map(|post| post.solved).sum();
    let first: usize = posts.iter().map(|post| post.first_try).sum();
    (solved >= ENOUGH && first * 2 < solved).then_some(Advice::AdviceFirstTries { first, solved })
}

fn on_quiet(quiet: &[String]) -> Option<Advice> {
    let names = |quiet: &[String]| quiet.iter().cloned().map(Theirs::from).collect();
    match quiet.len() {
        0 => None,
        n if n <= NAMED => Some(Advice::AdviceQuiet {
            names: And { and: names(quiet) },
        }),
        n => Some(Advice::AdviceManyQuiet {
            names: List {
                list: names(&quiet[..NAMED - 1]),
            },
            others: n - (NAMED - 1),
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::desk::{CommonWrong, Kind};

    fn topic(name: &str, solved: usize, tried: usize) -> SummaryTopic {
        SummaryTopic {
            topic: Some(name.into()),
            posts: 2,
            tried,
            solved,
            first_try: solved,
            questions: 0,
            answered: 0,
        }
    }

    fn post(number: i64, solved: usize, tried: usize) -> SummaryPost {
        SummaryPost {
            number,
            topic: None,
            kind: Kind::Problem {
                stipulation: "#2".into(),
            },
            tried,
            solved,
            first_try: solved,
            common_wrong: Vec::new(),
        }
    }

    fn advice(topics: Vec<SummaryTopic>, posts: Vec<SummaryPost>) -> Vec<Advice> {
        of(&Summary {
            topics,
            posts,
            ..Summary::default()
        })
    }

    fn named(name: &str) -> Theirs {
        name.to_owned().into()
    }

    fn names(number: usize) -> Vec<String> {
        (0..number).map(|n| format!("M{n}")).collect()
    }

    #[test]
    fn nothing_is_read_out_of_nothing() {
        assert_eq!(of(&Summary::default()), [Advice::AdviceNothingClosed]);
        let nobody = advice(vec![topic("Pin", 0, 0)], vec![post(1, 0, 0)]);
        assert_eq!(nobody, [Advice::AdviceNobody]);
    }

    #[test]
    fn few_answers_are_called_few() {
        let few = advice(
            vec![topic("Pin", 0, 3), topic("Fork", 2, 3)],
            vec![post(1, 2, 6)],
        );
        assert_eq!(
            few,
            [Advice::AdviceFewSoFar {
                tried: 6,
                topic: named("Pin"),
                solved: 0,
                of: 3
            }]
        );
        let one = advice(vec![topic("Pin", 0, 3)], vec![post(1, 0, 3)]);
        assert_eq!(one, [Advice::AdviceFew { tried: 3 }]);
    }

    #[test]
    fn the_share_decides_between_again_longer_and_more() {
        let first = |solved| {
            let posts = vec![post(1, 8, 12)];
            advice(vec![topic("Pin", solved, 12)], posts).swap_remove(0)
        };
        let (topic, of) = (named("Pin"), 12);
        assert_eq!(
            first(3),
            Advice::AdviceTeachAgain {
                topic: topic.clone(),
                solved: 3,
                of
            }
        );
        assert_eq!(
            first(8),
            Advice::AdviceStay {
                topic: topic.clone(),
                solved: 8,
                of,
                first: 8
            }
        );
        assert_eq!(
            first(12),
            Advice::AdviceReady {
                topic,
                solved: 12,
                of
            }
        );
    }

    #[test]
    fn topics_that_cannot_be_told_apart_are_named_together() {
        let advice = advice(
            vec![
                topic("Pin", 4, 12),
                topic("Fork", 5, 13),
                topic("Skewer", 11, 12),
            ],
            vec![post(1, 20, 37)],
        );
        assert_eq!(
            advice,
            [
                Advice::AdviceTeachAgain {
                    topic: named("Pin"),
                    solved: 4,
                    of: 12
                },
                Advice::AdviceNear {
                    topics: And {
                        and: vec![NearTopic {
                            topic: named("Fork"),
                            solved: 5,
                            of: 13
                        }]
                    }
                }
            ]
        );
    }

    #[test]
    fn a_wrong_move_that_many_chose_is_where_to_begin() {
        let wrong = |san: &str, count| CommonWrong {
            san: san.into(),
            count,
            refutation: "1...Rxd7".into(),
            why: crate::desk::Said::default(),
        };
        let mut posts = vec![post(6, 5, 9), post(7, 5, 9), post(8, 1, 20)];
        posts[0].common_wrong = vec![wrong("Ra1", 4)];
        posts[1].common_wrong = vec![wrong("Rd7", 4), wrong("Rd6", 1)];
        posts[2].common_wrong = vec![wrong("Rare", 5)];
        let begin = Advice::AdviceBeginRefuted {
            number: 7,
            count: 4,
            of: 9,
            played: "Rd7".to_owned().into(),
            refuted: "1...Rxd7".to_owned().into(),
        };
        let advised = advice(vec![topic("Pin", 11, 38)], posts);
        assert!(advised.contains(&begin), "{advised:?}");
        let mut lone = vec![post(1, 0, 1)];
        lone[0].common_wrong = vec![wrong("Rd7", 1)];
        assert_eq!(advice(vec![], lone), [Advice::AdviceFew { tried: 1 }]);
    }

    #[test]
    fn the_quiet_are_named_a_few_and_counted_beyond() {
        let theirs = |quiet: &[&str]| quiet.iter().map(|name| named(name)).collect::<Vec<_>>();
        assert_eq!(
            on_quiet(&names(1)),
            Some(Advice::AdviceQuiet {
                names: And {
                    and: theirs(&["M0"])
                }
            })
        );
        assert_eq!(
            on_quiet(&names(9)),
            Some(Advice::AdviceManyQuiet {
                names: List {
                    list: theirs(&["M0", "M1", "M2"])
                },
                others: 6
            })
        );
    }

    #[test]
    fn solutions_after_misses_ask_for_care() {
        let mut posts = vec![post(1, 10, 12)];
        posts[0].first_try = 2;
        let care = Advice::AdviceFirstTries {
            first: 2,
            solved: 10,
        };
        assert!(advice(vec![topic("Pin", 10, 12)], posts).contains(&care));
    }
}
