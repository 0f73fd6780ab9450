//! What to teach next, out of the summary's figures and honest about how few they may be.

use super::words::{and, share_of};
use crate::desk::{Summary, SummaryPost, SummaryTopic};

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

/// The advice, in a few sentences.
pub(super) fn of(summary: &Summary) -> String {
    if summary.posts.is_empty() {
        return "No post was closed in this period, so there is nothing to build on yet.".into();
    }
    let tried: usize = summary.problems().map(|post| post.tried).sum();
    let answered: usize = summary.questions().map(|post| post.tried).sum();
    if tried == 0 && answered > 0 {
        return "Only questions were answered in this period; what to teach next stands in the answers.".into();
    }
    if tried == 0 {
        return "Nobody answered in this period. Ask the group whether the days and the hour suit them, \
                and post something easier."
            .into();
    }
    let mut sentences = vec![on_topics(&summary.topics, tried)];
    sentences.extend(on_wrong_moves(&summary.posts));
    sentences.extend(on_first_tries(&summary.posts));
    sentences.extend(on_quiet(&summary.went_quiet));
    sentences.join(" ")
}

fn on_topics(topics: &[SummaryTopic], tried: usize) -> String {
    let counts = |topic: &SummaryTopic| share_of(topic.solved, topic.tried);
    let judged: Vec<&SummaryTopic> = topics
        .iter()
        .filter(|topic| topic.tried >= ENOUGH)
        .collect();
    let Some(weakest) = judged.first() else {
        // Topics come weakest first; one that nobody tried is not weak.
        return match topics.iter().find(|topic| topic.tried > 0) {
            Some(weakest) if topics.len() > 1 => format!(
                "Too few answers yet ({tried} in all) to say what is weak; {} did least well so far, {} solved, \
                 which may be chance.",
                weakest.topic,
                counts(weakest)
            ),
            _ => format!("Too few answers yet ({tried} in all) to say what to teach next."),
        };
    };
    let rate = share(weakest.solved, weakest.tried);
    let near: Vec<String> = judged[1..]
        .iter()
        .filter(|topic| share(topic.solved, topic.tried) - rate < CLOSE && rate < READY)
        .map(|topic| format!("{} ({})", topic.topic, counts(topic)))
        .collect();
    let near = match near.len() {
        0 => String::new(),
        n if n <= NAMED => format!(" {} went about as well.", and(&near)),
        n => format!(" {n} other topics went about as well."),
    };
    if rate < AGAIN {
        format!(
            "Teach {} again: {} attempts solved it.{near}",
            weakest.topic,
            counts(weakest)
        )
    } else if rate < READY {
        format!(
            "Stay with {} a little longer: {} attempts solved it, {} of them at the first try.{near}",
            weakest.topic,
            counts(weakest),
            weakest.first_try
        )
    } else {
        format!(
            "The group is ready for something new or harder: even {}, its weakest topic, was solved in {} attempts.",
            weakest.topic,
            counts(weakest)
        )
    }
}

/// The wrong move most worth a lesson: chosen by two at least, and by a third of those who tried.
fn on_wrong_moves(posts: &[SummaryPost]) -> Option<String> {
    let (post, wrong) = posts
        .iter()
        .filter_map(|post| Some((post, post.common_wrong.first()?)))
        .filter(|(post, wrong)| wrong.count >= 2 && wrong.count * 3 >= post.tried)
        // The latest of equals: it is fresh in mind.
        .max_by_key(|(post, wrong)| (wrong.count, post.number))?;
    let refuted = if wrong.refutation.is_empty() {
        String::new()
    } else {
        format!(", which fails to {}", wrong.refutation)
    };
    Some(format!(
        "Begin with post {}: {} of {} played {}{refuted}.",
        post.number, wrong.count, post.tried, wrong.san
    ))
}

fn on_first_tries(posts: &[SummaryPost]) -> Option<String> {
    let solved: usize = posts.iter().map(|post| post.solved).sum();
    let first_try: usize = posts.iter().map(|post| post.first_try).sum();
    (solved >= ENOUGH && first_try * 2 < solved).then(|| {
        format!(
            "Only {} solutions came at the first try: practise looking for the defence before answering.",
            share_of(first_try, solved)
        )
    })
}

fn on_quiet(quiet: &[String]) -> Option<String> {
    match quiet.len() {
        0 => None,
        n if n <= NAMED => Some(format!("A word to {} could bring them back.", and(quiet))),
        n => {
            let mut names = quiet[..NAMED - 1].to_vec();
            names.push(format!("{} others", n - names.len()));
            Some(format!("A word to {} could bring them back.", and(&names)))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::desk::{CommonWrong, Kind};

    fn topic(name: &str, solved: usize, tried: usize) -> SummaryTopic {
        SummaryTopic {
            topic: name.into(),
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

    fn advice(topics: Vec<SummaryTopic>, posts: Vec<SummaryPost>) -> String {
        of(&Summary {
            topics,
            posts,
            ..Summary::default()
        })
    }

    #[test]
    fn nothing_is_read_out_of_nothing() {
        assert!(of(&Summary::default()).contains("nothing to build on"));
        assert!(advice(vec![topic("Pin", 0, 0)], vec![post(1, 0, 0)]).contains("Nobody answered"));
    }

    #[test]
    fn few_answers_are_called_few() {
        let few = advice(
            vec![topic("Pin", 0, 3), topic("Fork", 2, 3)],
            vec![post(1, 2, 6)],
        );
        assert_eq!(
            few,
            "Too few answers yet (6 in all) to say what is weak; Pin did least well so far, 0 of 3 solved, \
             which may be chance."
        );
        assert!(!few.contains("Teach"));
        let one = advice(vec![topic("Pin", 0, 3)], vec![post(1, 0, 3)]);
        assert_eq!(
            one,
            "Too few answers yet (3 in all) to say what to teach next."
        );
    }

    #[test]
    fn the_share_decides_between_again_longer_and_more() {
        let posts = || vec![post(1, 8, 12)];
        assert!(advice(vec![topic("Pin", 3, 12)], posts()).starts_with("Teach Pin again: 3 of 12"));
        assert!(advice(vec![topic("Pin", 8, 12)], posts()).starts_with("Stay with Pin"));
        assert!(advice(vec![topic("Pin", 12, 12)], posts()).contains("new or harder"));
    }

    #[test]
    fn topics_that_cannot_be_told_apart_are_named_together() {
        let text = advice(
            vec![
                topic("Pin", 4, 12),
                topic("Fork", 5, 13),
                topic("Skewer", 11, 12),
            ],
            vec![post(1, 20, 37)],
        );
        assert!(
            text.contains("Teach Pin again: 4 of 12")
                && text.contains("Fork (5 of 13) went about as well")
        );
        assert!(!text.contains("Skewer"));
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
        let text = advice(vec![topic("Pin", 11, 38)], posts);
        assert!(
            text.contains("Begin with post 7: 4 of 9 played Rd7, which fails to 1...Rxd7."),
            "{text}"
        );
        let mut lone = vec![post(1, 0, 1)];
        lone[0].common_wrong = vec![wrong("Rd7", 1)];
        assert!(!advice(vec![], lone).contains("Begin"));
    }

    #[test]
    fn the_quiet_are_named_a_few_and_counted_beyond() {
        let names = |n: usize| (0..n).map(|n| format!("M{n}")).collect::<Vec<_>>();
        assert_eq!(
            on_quiet(&names(1)).as_deref(),
            Some("A word to M0 could bring them back.")
        );
        assert_eq!(
            on_quiet(&names(9)).as_deref(),
            Some("A word to M0, M1, M2 and 6 others could bring them back.")
        );
    }

    #[test]
    fn solutions_after_misses_ask_for_care() {
        let mut posts = vec![post(1, 10, 12)];
        posts[0].first_try = 2;
        assert!(advice(vec![topic("Pin", 10, 12)], posts).contains("Only 2 of 10 solutions"));
    }
}
