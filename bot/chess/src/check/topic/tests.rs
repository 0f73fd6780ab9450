//! Positions with a topic that they show, and with one that they do not.

use super::super::{CheckOptions, Complaint, Ends, Finding, Statement, check, ends::of_advantage};
use super::*;
use crate::{Budget, read::read_file};

/// Composed for these tests: the back rank, by the only full-length line.
const BACK_RANK: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - dm 2;";
/// Composed for these tests: 1.Qxf4+ Ka8 2.Qf8# is the main line, 1...Kc8 2.Qc7# as long.
const TWO_PICTURES: &str = "1k6/pp6/8/B7/5r2/8/1N3Q2/1K6 w - - dm 2;";
/// Composed for these tests: 1.Nf6+ gxf6 2.Rc8# is the main line; after 1...Kh8 either rook mates on the back
/// rank, and after 1...Kf8 2.Rc8# has no name.
const FOUR_LINES: &str = "6k1/1R1N2p1/8/8/r7/8/8/2R4K w - - 0 1";
/// Composed for these tests: the queen takes the queen and lets herself be taken, for the back rank.
const OFFER: &str = "2r3k1/5ppp/5b2/2Q1R3/2q5/8/N4PPP/6K1 w - - 0 1";

fn pgn(fen: &str, task: &str, moves: &str) -> String {
    format!("[SetUp \"1\"]\n[FEN \"{fen}\"]\n[Task \"{task}\"]\n\n{moves} *\n")
}

fn report(text: &str) -> Report {
    let entry = read_file("t", text.as_bytes()).remove(0).expect("readable");
    check(&entry, &CheckOptions::default(), &Budget::unlimited())
}

fn main_line(report: &Report, topic: &str) -> TopicCheck {
    topic_check(report, topic, TopicOn::MainLine)
}

fn every_line(report: &Report, topic: &str) -> TopicCheck {
    topic_check(report, topic, TopicOn::EveryLine)
}

fn pattern(name: &str) -> Pattern {
    Pattern {
        pattern: name.to_owned(),
    }
}

fn pictures(names: &[&str]) -> Option<And<Pattern>> {
    Some(And {
        and: names.iter().map(|name| pattern(name)).collect(),
    })
}

#[test]
fn a_mate_shows_its_topic_or_is_told_what_it_shows() {
    let report = report(BACK_RANK);
    for on in [TopicOn::MainLine, TopicOn::EveryLine] {
        let shown = topic_check(&report, "Grundreihenmatt", on);
        let fact = TopicFact::TopicShown {
            pattern: pattern("back-rank"),
            last: "2.Rxd8#".into(),
            extent: Extent::Only,
            showing: 1,
            lines: 1,
        };
        assert_eq!(shown.verdict, TopicState::Verified);
        assert_eq!(shown.pattern, Some("back-rank"));
        assert_eq!(shown.facts, [fact]);
        assert!(!shown.is_doubtful());

        let other = topic_check(&report, "Smothered mate", on);
        let fact = TopicFact::TopicNotShown {
            pattern: pattern("smothered"),
            whose: WhoseLine::Main,
            line: "1.Rxd8+ Rxd8 2.Rxd8#".into(),
            last: "2.Rxd8#".into(),
            shows: pictures(&["back-rank"]),
        };
        assert_eq!(other.verdict, TopicState::NotVerified);
        assert_eq!(other.facts, [fact]);
        assert!(other.is_doubtful());

        let label = topic_check(&report, "Deflection", on);
        assert_eq!(label.verdict, TopicState::Label);
        assert!(label.facts.is_empty() && !label.is_doubtful());
    }
}

#[test]
fn a_line_of_black_has_its_numbers() {
    let report = report("3r2k1/3r1ppp/8/8/8/8/5PPP/R2R2K1 b - - dm 2;");
    let TopicFact::TopicNotShown { line, last, .. } = &main_line(&report, "Boden").facts[0] else {
        panic!("{report:?}")
    };
    assert_eq!(*line, "1...Rxd1+ 2.Rxd1 Rxd1#".into());
    assert_eq!(*last, "2...Rxd1#".into());
}

#[test]
fn the_main_line_shows_it_and_another_line_of_full_length_does_not() {
    let report = report(TWO_PICTURES);
    let other = "1.Qxf4+ Kc8 2.Qc7#";
    let shown = main_line(&report, "back rank");
    assert_eq!(shown.verdict, TopicState::Verified);
    let facts = [
        TopicFact::TopicShown {
            pattern: pattern("back-rank"),
            last: "2.Qf8#".into(),
            extent: Extent::Some,
            showing: 1,
            lines: 2,
        },
        TopicFact::TopicElsewhere {
            line: other.into(),
            last: "2.Qc7#".into(),
            shows: pictures(&["kiss"]),
        },
    ];
    assert_eq!(shown.facts, facts);

    let every = every_line(&report, "back rank");
    assert_eq!(every.verdict, TopicState::NotVerified);
    let facts = [
        TopicFact::TopicNotShown {
            pattern: pattern("back-rank"),
            whose: WhoseLine::Full,
            line: other.into(),
            last: "2.Qc7#".into(),
            shows: pictures(&["kiss"]),
        },
        TopicFact::TopicFigures {
            showing: 1,
            lines: 2,
        },
    ];
    assert_eq!(every.facts, facts);

    // The other way round the main line fails, and half of the lines show it.
    let kiss = main_line(&report, "Kiss of the queen");
    assert_eq!(kiss.verdict, TopicState::NotVerified);
    assert!(matches!(
        &kiss.facts[..],
        [
            TopicFact::TopicNotShown {
                whose: WhoseLine::Main,
                ..
            },
            TopicFact::TopicFigures {
                showing: 1,
                lines: 2
            }
        ]
    ));
}

#[test]
fn every_line_counts_once_and_a_mate_without_a_name_is_told() {
    let report = report(&format!("{FOUR_LINES}\n"));
    assert_eq!(report.stipulation, Some(Stipulation::Mate(2)));
    let counted: Vec<(&[String], u32)> = report
        .ends
        .pictures
        .iter()
        .map(|picture| (&picture.patterns[..], picture.lines))
        .collect();
    assert_eq!(counted.len(), 3, "{:?}", report.ends);
    assert_eq!(counted[0], (&["ladder".to_owned()][..], 1));
    assert!(counted.contains(&(&["back-rank".to_owned()][..], 2)));
    assert!(counted.contains(&(&[][..], 1)));
    assert!(report.ends.whole);
    let shows = |check: TopicCheck| match &check.facts[0] {
        TopicFact::TopicNotShown { shows, .. } => shows.clone(),
        other => panic!("{other:?}"),
    };
    assert_eq!(
        shows(main_line(&report, "Anastasia")),
        pictures(&["ladder"])
    );
    let nameless = self::report("2k1r3/2pp4/3QR3/8/8/1N6/8/1K6 w - - dm 2;");
    assert_eq!(shows(main_line(&nameless, "Anastasia")), None);
}

#[test]
fn the_coachs_own_main_line_counts_if_it_is_of_full_length() {
    let own = report(&pgn(
        FOUR_LINES,
        "#2",
        "1. Nf6+ Kh8 (1... gxf6 2. Rc8#) 2. Rb8#",
    ));
    let shown = main_line(&own, "Back-rank mate");
    assert_eq!(shown.verdict, TopicState::Verified);
    let facts = [
        TopicFact::TopicShownByCoach {
            pattern: pattern("back-rank"),
            line: "1.Nf6+ Kh8 2.Rb8#".into(),
            last: "2.Rb8#".into(),
            from: "1.Nf6+".into(),
        },
        TopicFact::TopicElsewhere {
            line: "1.Nf6+ gxf6 2.Rc8#".into(),
            last: "2.Rc8#".into(),
            shows: pictures(&["ladder"]),
        },
    ];
    assert_eq!(shown.facts, facts);
    // A side line of the coach's is not what the position is about.
    let beside = report(&pgn(
        FOUR_LINES,
        "#2",
        "1. Nf6+ gxf6 (1... Kh8 2. Rb8#) 2. Rc8#",
    ));
    assert!(main_line(&beside, "Back-rank mate").is_doubtful());
    // One that leaves off before the mate shows nothing.
    let short = report(&pgn(FOUR_LINES, "#2", "1. Nf6+ Kh8"));
    assert!(main_line(&short, "Back-rank mate").is_doubtful());
}

/// In the smothered mate in four the rook may take the knight, and is mated on the back rank a move sooner.
#[test]
fn a_line_against_a_weak_defence_is_no_main_line() {
    let fen = "2q2r1k/6pp/ppppQ3/4pnNP/8/4B3/PPPR4/1K6 w - - 0 1";
    let report = report(&pgn(fen, "#4", "1. Nf7+ Rxf7 2. Qxc8+ Rf8 3. Qxf8#"));
    assert_eq!(report.verdict, Soundness::Sound, "{report:?}");
    assert!(main_line(&report, "Back-rank mate").is_doubtful());
    assert_eq!(
        main_line(&report, "smothered").verdict,
        TopicState::Verified
    );
    assert_eq!(
        every_line(&report, "smothered").verdict,
        TopicState::Verified
    );
}

#[test]
fn a_win_shows_its_topic_where_the_offer_is_accepted() {
    let line = "1. Qxc4 Rxc4 (1... Rb8 2. Re1 $18) 2. Re8#";
    let report = report(&pgn(OFFER, "+", line));
    assert_eq!(report.verdict, Soundness::Sound, "{report:?}");
    assert!(report.warnings.is_empty(), "{:?}", report.warnings);
    let facts = [
        TopicFact::TopicShownByCoach {
            pattern: pattern("back-rank"),
            line: "1.Qxc4 Rxc4 2.Re8#".into(),
            last: "2.Re8#".into(),
            // Before it the offer can be declined.
            from: "2.Re8#".into(),
        },
        TopicFact::TopicDeclined {
            number: 1,
            line: "1.Qxc4 Rb8 2.Re1".into(),
        },
    ];
    for on in [TopicOn::MainLine, TopicOn::EveryLine] {
        let shown = topic_check(&report, "Back-rank mate", on);
        assert_eq!(shown.verdict, TopicState::Verified);
        assert_eq!(shown.facts, facts);
    }
    let other = main_line(&report, "Smothered mate");
    let fact = TopicFact::TopicNotShown {
        pattern: pattern("smothered"),
        whose: WhoseLine::Own,
        line: "1.Qxc4 Rxc4 2.Re8#".into(),
        last: "2.Re8#".into(),
        shows: pictures(&["back-rank"]),
    };
    assert_eq!(other.facts, [fact]);
}

/// The offer stands as a side line, and the mate is traced back to where it begins.
#[test]
fn a_mate_is_traced_back_as_far_as_it_is_forced() {
    let fen = "2r3k1/5ppp/5b2/2Q1R3/2q5/8/N4PPP/6K1 w - - 0 1";
    let text = pgn(
        fen,
        "+",
        "1. Qxc4 Rd8 (1... Rxc4 2. Re8#) 2. Qc1 Kf8 3. Qb1 Kg8",
    );
    let entry = read_file("t", text.as_bytes()).remove(0).expect("readable");
    let ends = of_advantage(&entry, &[], &[], &Budget::unlimited());
    let forced = |own: &OwnLine| own.mate.as_ref().map(|mate| mate.forced);
    assert_eq!(
        ends.own.iter().map(forced).collect::<Vec<_>>(),
        [None, Some(1)]
    );

    let two = pgn(
        "r2r2k1/5ppp/8/8/8/7P/3R1PP1/3R2K1 w - - 0 1",
        "+",
        "1. Rxd8+ Rxd8 2. Rxd8#",
    );
    let entry = read_file("t", two.as_bytes()).remove(0).expect("readable");
    let ends = of_advantage(&entry, &[], &[], &Budget::unlimited());
    assert_eq!(forced(&ends.own[0]), Some(2));
}

#[test]
fn a_line_behind_a_wrong_move_shows_nothing() {
    let of = |moves: &str, found: &[Statement]| {
        let text = pgn(OFFER, "+", moves);
        let entry = read_file("t", text.as_bytes()).remove(0).expect("readable");
        of_advantage(&entry, &[], found, &Budget::unlimited()).own
    };
    assert!(of("1. Qxc4 $2 Rxc4 2. Re8#", &[]).is_empty());
    let plain = "1. Qxc4 Rxc4 2. Re8#";
    assert_eq!(of(plain, &[]).len(), 1);
    let found = Finding::InVariation {
        row: 5,
        line: "1.Qxc4".into(),
        what: Complaint::LetsItGo {
            task: crate::fact::Task::Win,
            standing: super::super::Assessment::IsStalemateNow,
            better: None,
        },
    };
    assert!(of(plain, &[found.into()]).is_empty());
}

#[test]
fn a_win_without_a_line_to_mate_shows_no_mate() {
    let report = report(&pgn(OFFER, "+", "1. Qxc4 Rb8 2. Re1"));
    let check = main_line(&report, "Back-rank mate");
    let fact = TopicFact::TopicWithoutMate {
        pattern: pattern("back-rank"),
    };
    assert_eq!(
        (check.verdict, &check.facts[..]),
        (TopicState::NotVerified, &[fact][..])
    );
    assert_eq!(main_line(&report, "Clearance").verdict, TopicState::Label);
}

#[test]
fn what_is_not_known_is_open() {
    let start = "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - dm 5;";
    let entry = read_file("t", start.as_bytes())
        .remove(0)
        .expect("readable");
    let little = Budget::unlimited().nodes(20_000);
    let undecided = check(&entry, &CheckOptions::default(), &little);
    assert_eq!(undecided.verdict, Soundness::Undecided);
    let open = main_line(&undecided, "Back-rank mate");
    let fact = TopicFact::TopicUnsettled {
        pattern: pattern("back-rank"),
    };
    assert_eq!(
        (open.verdict, &open.facts[..]),
        (TopicState::Open, &[fact][..])
    );
    assert!(open.is_doubtful());

    let mut cut = report(BACK_RANK);
    cut.ends.whole = false;
    assert!(matches!(
        main_line(&cut, "Back-rank mate").facts[..],
        [TopicFact::TopicShown {
            extent: Extent::Main,
            ..
        }]
    ));
    let every = every_line(&cut, "Back-rank mate");
    assert_eq!(every.verdict, TopicState::Open);
    assert!(matches!(
        every.facts[..],
        [TopicFact::TopicNotAllKnown { lines: 1, .. }]
    ));

    let mut cut = report(&pgn(OFFER, "+", "1. Qxc4 Rxc4 2. Re8#"));
    cut.ends.cut = true;
    assert_eq!(main_line(&cut, "Back-rank mate").verdict, TopicState::Open);
}

#[test]
fn an_unsound_position_has_nothing_to_show() {
    let report = report("7k/8/5K2/8/8/8/8/6R1 w - - dm 1;");
    assert_eq!(report.verdict, Soundness::Unsound);
    let check = main_line(&report, "Ladder mate");
    assert_eq!(check.verdict, TopicState::NoSolution);
    assert!(check.facts.is_empty() && !check.is_doubtful());
}

/// A report of the fourth version, as stores hold it.
#[test]
fn reports_from_before_lines_were_kept_tell_of_their_main_line() {
    let old = |task: &str, patterns: &[&str]| -> Report {
        serde_json::from_value(serde_json::json!({
            "id": "w1", "fen": "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1", "stipulation": task,
            "verdict": "sound", "keys": ["Rxd8+"], "line": ["Rxd8+", "Rxd8", "Rxd8#"],
            "patterns": patterns, "proved": true, "nodes": 37, "seconds": 0.0, "message": [],
            "version": 4,
        }))
        .expect("a report")
    };
    let mate = old("#2", &["back-rank"]);
    assert!(mate.ends.is_empty());
    assert_eq!(main_line(&mate, "back rank").verdict, TopicState::Verified);
    assert_eq!(main_line(&mate, "Boden").verdict, TopicState::NotVerified);
    assert_eq!(every_line(&mate, "back rank").verdict, TopicState::Open);
    let win = main_line(&old("+", &[]), "back rank");
    assert_eq!(win.verdict, TopicState::Open);
    assert!(matches!(win.facts[..], [TopicFact::TopicUnchecked { .. }]));
}

#[test]
fn ends_come_back_as_they_were_kept() {
    for text in [
        BACK_RANK.to_owned(),
        pgn(OFFER, "+", "1. Qxc4 Rxc4 (1... Rb8 2. Re1 $18) 2. Re8#"),
    ] {
        let report = report(&text);
        let kept = serde_json::to_value(&report).expect("plain data");
        let read: Report = serde_json::from_value(kept).expect("a report");
        assert!(!read.ends.is_empty());
        assert_eq!(read.ends, report.ends);
    }
    assert!(Ends::default().is_empty());
}
