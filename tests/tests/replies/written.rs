//! The table of written replies: what members write, in every language read, each with its outcome
//! written before it was run. No right answer may be charged, no rejected move credited.

use std::collections::{HashMap, HashSet};
use std::fmt::Write;

use sealed_move::chess::{
    Budget, Language,
    check::{CheckOptions, Problem, problem},
    judge::{Judgement, Setting, Terms, judge},
    parse_fen,
};
use sealed_move_tests::english::InEnglish as _;

/// Positions that one judgement may search: what is read has to be judged, not analysed.
const NODES: u64 = 200_000;
/// Fewest rows, and fewest positions.
const LEAST: (usize, usize) = (450, 12);
/// Classes of which each language has rows.
const CLASSES: &[&str] = &[
    "correction",
    "rejected",
    "hedge",
    "question",
    "annotated",
    "one-a-line",
    "left-out",
    "slip",
    "trailing",
    "talk",
];

/// One row of the table.
struct Row<'a> {
    class: &'a str,
    language: &'a str,
    position: &'a str,
    text: &'a str,
    verdicts: Vec<&'a str>,
    claim: &'a str,
    may_be_charged: bool,
    rejected: Vec<&'a str>,
}

impl<'a> Row<'a> {
    fn parse(line: &'a str) -> Self {
        let fields: Vec<&str> = line.split('\t').collect();
        let [
            class,
            language,
            position,
            text,
            verdict,
            claim,
            charge,
            rejected,
        ] = fields[..]
        else {
            panic!("eight fields: {line}")
        };
        assert!(CLASSES.contains(&class), "class of {line}");
        assert!(matches!(charge, "free" | "charge"), "charge of {line}");
        let verdicts: Vec<&str> = verdict.split('|').collect();
        assert!(
            verdicts.len() == 1 || verdicts.iter().all(|v| *v != "wrong"),
            "only harmless outcomes may be open: {line}"
        );
        Self {
            class,
            language,
            position,
            text,
            verdicts,
            claim,
            may_be_charged: charge == "charge",
            rejected: match rejected {
                "-" => Vec::new(),
                lines => lines.split(" / ").collect(),
            },
        }
    }

    /// What tells the row from every other.
    fn name(&self) -> String {
        let talk = if self.class == "talk" { "talk\t" } else { "" };
        format!("{talk}{}\t{}\t{}", self.language, self.position, self.text)
    }

    fn terms(&self) -> Terms {
        let language = serde_json::from_value::<Language>(self.language.into());
        Terms {
            setting: match self.class {
                "talk" => Setting::Talk,
                _ => Setting::Answer,
            },
            ..Terms::answer(language.expect("a language"))
        }
    }

    /// What is not as written; empty when all is.
    fn faults(&self, said: Option<&Judgement>) -> Vec<String> {
        let mut faults = Vec::new();
        let verdict = said.map_or("left-alone".to_owned(), verdict_of);
        if !self.verdicts.contains(&verdict.as_str()) {
            faults.push(format!("{verdict}, not {}", self.verdicts.join(" or ")));
        }
        if verdict == "wrong" && !self.may_be_charged {
            faults.push("CHARGED".into());
        }
        let Some(said) = said else { return faults };
        let moves = said.moves.join(" ");
        let judged = matches!(verdict.as_str(), "solved" | "on-the-way" | "wrong");
        for rejected in self.rejected.iter().filter(|_| judged) {
            if begins(&moves, rejected) {
                faults.push(format!("REJECTED MOVE TAKEN: {rejected}"));
            }
        }
        if judged && self.claim != "-" {
            let as_claimed = match self.claim.strip_suffix(" .") {
                Some(whole) => moves == whole,
                None => begins(&moves, self.claim),
            };
            if !as_claimed {
                faults.push(format!("read as {moves}, not {}", self.claim));
            }
        }
        faults
    }
}

/// Whether a line begins with these moves.
fn begins(line: &str, moves: &str) -> bool {
    line == moves || line.starts_with(&format!("{moves} "))
}

fn verdict_of(said: &Judgement) -> String {
    let name = serde_json::to_value(said.verdict).expect("a verdict");
    name.as_str().expect("a name").to_owned()
}

fn solved(fen: &str, task: &str) -> Problem {
    let position = parse_fen(fen).expect("a position").position;
    let task = task.parse().expect("a task");
    let budget = Budget::unlimited();
    problem(&position, task, &CheckOptions::default(), &budget).expect("sound")
}

#[test]
fn replies_are_taken_as_their_writers_mean_them() {
    let mut problems: HashMap<&str, Problem> = HashMap::new();
    let mut rows = Vec::new();
    for line in include_str!("written.txt").lines() {
        if line.starts_with('#') || line.is_empty() {
            continue;
        }
        if let Some(position) = line.strip_prefix("position\t") {
            let fields: Vec<&str> = position.split('\t').collect();
            let [name, fen, task] = fields[..] else {
                panic!("four fields: {line}")
            };
            problems.insert(name, solved(fen, task));
            continue;
        }
        rows.push(Row::parse(line));
    }
    assert!(rows.len() >= LEAST.0, "{} rows", rows.len());
    assert!(problems.len() >= LEAST.1, "{} positions", problems.len());
    let open = rows.iter().filter(|row| row.verdicts.len() > 1).count();
    assert!(open * 20 <= rows.len(), "{open} rows allow two outcomes");
    for language in Language::ALL {
        let name = serde_json::to_value(language).expect("a language");
        for class in CLASSES {
            let has = |row: &Row| row.class == *class && name == row.language;
            assert!(rows.iter().any(has), "{name}: no row of class {class}");
        }
    }
    let mut report = String::new();
    let mut names = HashSet::new();
    for row in &rows {
        let name = row.name();
        assert!(names.insert(name.clone()), "twice: {name}");
        let problem = &problems[row.position];
        let text = row.text.replace("\\n", "\n");
        let budget = Budget::unlimited().nodes(NODES).table_bytes(1 << 20);
        let said = judge(problem, &[], &text, &row.terms(), &budget);
        let faults = row.faults(said.as_ref());
        if !faults.is_empty() {
            let message = said.map_or(String::new(), |said| said.message());
            let faults = faults.join("; ");
            let class = row.class;
            writeln!(report, "[{class}] {name}\n    {faults}\n    {message}").expect("memory");
        }
    }
    let failing = report.matches("\n[").count() + usize::from(!report.is_empty());
    println!("{} of {} rows as written", rows.len() - failing, rows.len());
    assert!(report.is_empty(), "\n{report}");
}
