//! What all charts promise.

use super::*;
use crate::{canvas::escape, sample::english};

/// The week after so many.
fn week(after: usize) -> Week {
    let monday = 2 + 7 * after as u32;
    Week {
        from: (monday, 3),
        to: (monday + 6, 3),
    }
}

/// One chart of every kind, with figures that strain the layout.
pub(super) fn every_kind() -> Vec<Chart> {
    let long = "Żółkiewska-Wiesengrund, Bartholomäus Ёжиков <b>&\"'";
    vec![
        solve_rates(
            Text::ChartSolved,
            vec![
                SolveRate {
                    label: long.repeat(3),
                    tried: 12,
                    solved: 0,
                },
                SolveRate {
                    label: "No. 2".into(),
                    tried: 1,
                    solved: 1,
                },
                SolveRate {
                    label: "No. 3".into(),
                    tried: 0,
                    solved: 0,
                },
            ],
        ),
        participation(
            Text::ChartParticipation,
            (0..30)
                .map(|i| Day {
                    day: i as u32 + 1,
                    week: week(i / 7),
                    tried: (i * 7) % 13,
                    solved: (i * 7) % 13 / 2,
                })
                .collect(),
        ),
        mastery(
            Text::ChartMastery,
            vec![
                Mastery {
                    topic: long.into(),
                    tried: 10,
                    solved: 2,
                    first_try: 0,
                },
                Mastery {
                    topic: "Pins".into(),
                    tried: 10,
                    solved: 9,
                    first_try: 6,
                },
            ],
        ),
        wrong_moves(
            Text::ChartWrong { number: 7 },
            Chess::default(),
            Color::White,
            vec![
                WrongMove {
                    from: Square::G1,
                    to: Square::F3,
                    san: "Nf3".into(),
                    count: 1,
                },
                WrongMove {
                    from: Square::E2,
                    to: Square::E4,
                    san: "e4".into(),
                    count: 4,
                },
            ],
        ),
    ]
}

#[test]
fn every_chart_draws_in_both_themes_and_stays_small() {
    for chart in every_kind() {
        for theme in Theme::ALL {
            let picture = chart.png(theme, &english()).expect("draws");
            assert!(picture.bytes.len() < 60_000, "{}", picture.bytes.len());
            let alt = picture.alt.in_words(&english());
            assert!(!alt.is_empty() && alt.chars().count() <= 1_024);
        }
    }
}

/// Of forty long topics the words tell as many as a chat takes, each whole, and how many more there are.
#[test]
fn the_words_of_a_chart_leave_out_whole_figures_and_say_so() {
    let topic = |n: usize| Mastery {
        topic: format!("The discovered attack with a check that wins a queen, part {n}"),
        tried: 30 + n,
        solved: n,
        first_try: 0,
    };
    for count in [1, 5, 12, 40] {
        let topics: Vec<Mastery> = (0..count).map(topic).collect();
        let whole: Vec<String> = topics
            .iter()
            .map(|row| english().say(&rows::topic(row)))
            .collect();
        let alt = mastery(Text::ChartMastery, topics).alt(&english());
        assert!(alt.chars().count() <= 1_024, "{alt}");
        let told = whole.iter().filter(|words| alt.contains(*words)).count();
        let more = format!("; {} more in the table.", count - told);
        assert_eq!(alt.ends_with(&more), told < count, "{alt}");
        assert!(
            told > 0 && (told == count || alt.chars().count() > 850),
            "{alt}"
        );
        let plain = format!("Topics, weakest first. {}", whole[..told].join("; "));
        assert!(alt.starts_with(&plain), "{alt}");
    }
}

/// Sixty letters, in words or in one: all of them stand on lines that fit, none is left out.
#[test]
fn names_of_sixty_letters_are_wrapped_and_never_cut() {
    use crate::lettering::{Weight, width, wrapped};
    for name in [
        "The discovered attack with a check that wins the queen first",
        &"W".repeat(60),
        &"Ж".repeat(60),
    ] {
        let lines = wrapped(name, Weight::Regular, 25.0, 480.0);
        let letters = |text: &str| text.chars().filter(|c| *c != ' ').collect::<String>();
        assert_eq!(letters(&lines.concat()), letters(name));
        for line in &lines {
            assert!(width(line, Weight::Regular, 25.0) <= 480.0, "{line}");
        }
    }
    let tall = |name: &str| {
        let topic = Mastery {
            topic: name.into(),
            tried: 3,
            solved: 1,
            first_try: 0,
        };
        let svg = mastery(Text::ChartMastery, vec![topic]).svg(Theme::Light, &english());
        let height = svg
            .split("height=\"")
            .nth(1)
            .and_then(|s| s.split('"').next());
        height
            .and_then(|h| h.parse::<f32>().ok())
            .expect("a height")
    };
    assert!(tall(&"W".repeat(60)) > tall("Pins"));
}

#[test]
fn no_figures_at_all_still_make_a_chart() {
    for chart in [
        solve_rates(Text::ChartSolved, Vec::new()),
        participation(Text::ChartParticipation, Vec::new()),
        mastery(Text::ChartMastery, Vec::new()),
        wrong_moves(
            Text::ChartWrong { number: 7 },
            Chess::default(),
            Color::White,
            Vec::new(),
        ),
    ] {
        assert!(chart.png(Theme::Light, &english()).is_ok());
        let alt = chart.alt(&english());
        assert!(alt.contains("nothing yet"), "{alt}");
    }
}

#[test]
fn names_from_people_are_no_markup() {
    for chart in every_kind() {
        let svg = chart.svg(Theme::Light, &english());
        assert!(!svg.contains("<b>"));
    }
    assert_eq!(escape("<b>&\"'\u{1}\n"), "&lt;b&gt;&amp;&quot;&#39; ");
}

#[test]
fn the_words_hold_every_figure() {
    let words: Vec<String> = every_kind()
        .iter()
        .map(|chart| chart.alt(&english()))
        .collect();
    assert!(
        words[0].contains("No. 2: 1 of 1 solved, 100 % (likely 21 to 100 %)"),
        "{}",
        words[0]
    );
    assert!(words[0].contains("No. 3: nobody tried"), "{}", words[0]);
    assert!(
        words[1].contains("2–8 Mar, 4.3 members a post: on 1, 0 took part and 0 solved; on 2, 7 took part and 3 solved"),
        "{}",
        words[1]
    );
    assert!(
        words[2].starts_with("Topics, weakest first. Żółkiewska"),
        "topics keep the order given: {}",
        words[2]
    );
    assert!(
        words[2].contains("Pins: 9 of 10 solved, 90 %, 6 at the first try"),
        "{}",
        words[2]
    );
    assert!(
        words[3].contains("e4, 4 members; Nf3, 1 member. White: king e1"),
        "{}",
        words[3]
    );
}
