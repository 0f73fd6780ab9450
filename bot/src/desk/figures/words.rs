//! The engagement summary in plain words, for a terminal or a chat.

use chrono_tz::Tz;

use super::{advice::ENOUGH, leaderboard::with_answered};
use crate::desk::{Kind, Period, Summary, SummaryPost, SummaryTopic, text};

/// "3 of 12".
pub(super) fn share_of(part: usize, whole: usize) -> String {
    format!("{part} of {whole}")
}

/// "A", "A and B", "A, B and C".
pub(super) fn and<S: AsRef<str>>(items: &[S]) -> String {
    let mut out = String::new();
    for (n, item) in items.iter().enumerate() {
        if n > 0 {
            out.push_str(if n + 1 == items.len() { " and " } else { ", " });
        }
        out.push_str(item.as_ref());
    }
    out
}

/// "1 post", "2 posts".
fn count(n: usize, one: &str, many: &str) -> String {
    format!("{n} {}", if n == 1 { one } else { many })
}

/// "5 solved (63%)"; without the percentage where there are too few for one to mean anything.
fn solved(solved: usize, tried: usize) -> String {
    if tried < ENOUGH {
        return format!("{solved} solved");
    }
    format!(
        "{solved} solved ({:.0}%)",
        100.0 * solved as f64 / tried as f64
    )
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

    /// The summary as plain text, with its dates in the group's zone.
    pub fn text(&self, zone: Tz) -> String {
        let period = Period {
            from: self.from,
            to: self.to,
            topic: None,
        };
        let sum = |part: fn(&SummaryPost) -> usize| self.problems().map(part).sum::<usize>();
        let mut out = format!("Engagement summary, {}\n", period.in_words(zone));
        let (problems, questions) = (self.problems().count(), self.questions().count());
        if problems > 0 || questions == 0 {
            out.push_str(&format!(
                "{}, {}, {}, {} at the first try.\n",
                count(problems, "post", "posts"),
                count(sum(|p| p.tried), "attempt", "attempts"),
                solved(sum(|p| p.solved), sum(|p| p.tried)),
                sum(|p| p.first_try),
            ));
        }
        if questions > 0 {
            out.push_str(&format!(
                "{}, {}.\n",
                count(questions, "question", "questions"),
                count(self.questions().map(|p| p.tried).sum(), "answer", "answers"),
            ));
        }

        let (active, idle): (Vec<_>, Vec<_>) = self.members.iter().partition(|m| m.took_part());
        let lines = active.iter().map(|m| {
            let solved = format!(
                "{} tried, {} solved, {} at the first try, {}",
                m.tried,
                m.solved,
                m.first_try,
                count(m.hints, "hint", "hints"),
            );
            let done = with_answered(solved, m.tried, m.answered);
            format!("{}: {} points, {done}", m.name, text::points(m.points))
        });
        section(&mut out, "Who took part", lines);
        let idle: Vec<&str> = idle.iter().map(|m| m.name.as_str()).collect();
        let quiet = match &self.compared {
            Some(compared) => {
                let words = |from, to| {
                    let topic = None;
                    Period { from, to, topic }.in_words(zone)
                };
                format!(
                    "Went quiet ({}, after {})",
                    words(compared.recent_from, compared.recent_to),
                    words(compared.before_from, compared.before_to)
                )
            }
            None => "Went quiet".to_owned(),
        };
        for (heading, names) in [
            ("Did not answer", and(&idle)),
            (&quiet, and(&self.went_quiet)),
            ("Came back", and(&self.came_back)),
        ] {
            if !names.is_empty() {
                out.push_str(&format!("{heading}: {names}\n"));
            }
        }
        section(&mut out, "Posts", self.posts.iter().map(post));
        section(
            &mut out,
            "Topics, weakest first",
            self.topics.iter().map(topic),
        );
        section(
            &mut out,
            "What to teach next",
            [self.advice.clone()].into_iter(),
        );
        out
    }
}

fn section(out: &mut String, heading: &str, lines: impl Iterator<Item = String>) {
    let lines: Vec<String> = lines.collect();
    if lines.is_empty() {
        return;
    }
    out.push_str(&format!("\n{heading}\n"));
    for line in lines {
        out.push_str(&line);
        out.push('\n');
    }
}

fn post(post: &SummaryPost) -> String {
    match &post.kind {
        Kind::Problem { stipulation } => problem(post, stipulation),
        Kind::Question | Kind::Words => format!(
            "{} {}{}: {}.",
            post.kind.noun(),
            post.number,
            post.topic
                .as_ref()
                .map_or_else(String::new, |topic| format!(", {topic}")),
            count(post.tried, "answer", "answers"),
        ),
    }
}

fn problem(post: &SummaryPost, stipulation: &str) -> String {
    let mut line = format!(
        "Position {}{}, {}: {} tried, {}, {} at the first try.",
        post.number,
        post.topic
            .as_ref()
            .map_or_else(String::new, |topic| format!(", {topic}")),
        stipulation,
        post.tried,
        solved(post.solved, post.tried),
        post.first_try,
    );
    let wrong: Vec<String> = post
        .common_wrong
        .iter()
        .map(|wrong| match wrong.refutation.as_str() {
            "" => format!("{} ({})", wrong.san, wrong.count),
            refutation => format!("{} ({}; {refutation})", wrong.san, wrong.count),
        })
        .collect();
    if !wrong.is_empty() {
        line.push_str(&format!(" Most often wrong: {}.", and(&wrong)));
    }
    line
}

fn topic(topic: &SummaryTopic) -> String {
    let problems = (topic.posts > 0).then(|| {
        format!(
            "{}, {}, {}, {} at the first try",
            count(topic.posts, "post", "posts"),
            count(topic.tried, "attempt", "attempts"),
            solved(topic.solved, topic.tried),
            topic.first_try,
        )
    });
    let questions = (topic.questions > 0).then(|| {
        format!(
            "{} with {}",
            count(topic.questions, "question", "questions"),
            count(topic.answered, "answer", "answers")
        )
    });
    let done: Vec<String> = problems.into_iter().chain(questions).collect();
    format!("{}: {}", topic.topic, done.join(", "))
}

#[cfg(test)]
mod tests {
    use chrono::{TimeZone, Utc};

    use super::*;
    use crate::desk::{CommonWrong, SummaryMember};

    #[test]
    fn lists_are_joined_as_one_says_them() {
        assert_eq!(and::<&str>(&[]), "");
        assert_eq!(and(&["A"]), "A");
        assert_eq!(and(&["A", "B"]), "A and B");
        assert_eq!(and(&["A", "B", "C"]), "A, B and C");
    }

    #[test]
    fn a_percentage_needs_enough_to_mean_something() {
        assert_eq!(solved(1, 2), "1 solved");
        assert_eq!(solved(5, 8), "5 solved (62%)");
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
        let summary = Summary {
            from: Some(
                Utc.with_ymd_and_hms(2026, 3, 2, 0, 0, 0)
                    .single()
                    .expect("a day"),
            ),
            to: Some(
                Utc.with_ymd_and_hms(2026, 3, 9, 0, 0, 0)
                    .single()
                    .expect("a day"),
            ),
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
                    why: crate::desk::Said::default(),
                }],
            }],
            topics: vec![SummaryTopic {
                topic: "Back rank".into(),
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
            advice: "Rest.".into(),
        };
        insta::assert_snapshot!(summary.text(Tz::UTC), @r"
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
        Rest.
        ");
    }
}
