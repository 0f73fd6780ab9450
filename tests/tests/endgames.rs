//! Wins judged by endgame tables, and mates proved without any, agree with python-chess's own probers,
//! move by move.

use std::collections::BTreeSet;

use sealed_move_tests::{python_script, sealed_move};

/// The folder of tables that a variable names.
fn tables(variable: &str) -> String {
    std::env::var(variable)
        .unwrap_or_else(|_| panic!("{variable} names no folder of tables; start by tests/run"))
}

/// What the program lists under `keys`.
fn keys(line: &serde_json::Value) -> BTreeSet<&str> {
    let listed = line["keys"].as_array().expect("keys");
    listed.iter().filter_map(|key| key.as_str()).collect()
}

#[test]
fn tables_give_the_same_keys_as_an_independent_prober() {
    let folder = tables("SEALED_MOVE_TEST_SYZYGY");
    let fens = python_script("endgame_keys.py", &[&folder, "make", "150", "20261125"], "");
    let wanted = python_script("endgame_keys.py", &[&folder], &fens);
    let epd: String = fens
        .lines()
        .map(|fen| {
            format!(
                "{} task \"+\";\n",
                fen.splitn(5, ' ').take(4).collect::<Vec<_>>().join(" ")
            )
        })
        .collect();
    let ran = sealed_move(
        &["check", "--json", "--tables", &folder, "-"],
        epd.as_bytes(),
    );
    let lines = ran.json();
    assert_eq!(lines.len(), 150, "{}", ran.err);
    let mut won = 0;
    for ((line, wanted), fen) in lines.iter().zip(wanted.lines()).zip(fens.lines()) {
        let wanted: BTreeSet<&str> = wanted.split_whitespace().collect();
        assert_eq!(keys(line), wanted, "{fen}");
        assert_eq!(line["proved"], true, "{fen}");
        let verdict = match wanted.len() {
            0 => "unsound",
            1 => "sound",
            _ => "several-keys",
        };
        assert_eq!(line["verdict"], verdict, "{fen}");
        won += usize::from(!wanted.is_empty());
    }
    assert!(
        won > 30,
        "only {won} of the positions are won: they prove little"
    );
}

/// How many positions of each length, and the longest; to `#8`, which the prover is made for.
const OF_EACH: usize = 12;
const LONGEST: usize = 8;

#[test]
fn mates_in_two_to_eight_have_the_length_and_the_keys_of_an_independent_prober() {
    let folder = tables("SEALED_MOVE_TEST_GAVIOTA");
    let [count, longest] = [OF_EACH, LONGEST].map(|number| number.to_string());
    let made = python_script(
        "mate_lengths.py",
        &[&folder, &count, &longest, "20261125"],
        "",
    );
    let rows: Vec<Vec<&str>> = made.lines().map(|row| row.split(';').collect()).collect();
    assert_eq!(rows.len(), OF_EACH * (LONGEST - 1));
    let epd: String = rows
        .iter()
        .map(|row| {
            let fields: Vec<&str> = row[0].split(' ').take(4).collect();
            format!("{} dm {};\n", fields.join(" "), row[1])
        })
        .collect();
    let ran = sealed_move(&["check", "--json", "-"], epd.as_bytes());
    let lines = ran.json();
    assert_eq!(lines.len(), rows.len(), "{}", ran.err);
    for (line, row) in lines.iter().zip(&rows) {
        let wanted: BTreeSet<&str> = row[2].split_whitespace().collect();
        assert_eq!(keys(line), wanted, "{row:?}");
        assert_eq!(line["proved"], true, "{row:?}");
        // A shorter mate would be called short, and none at all unsound.
        let verdict = if wanted.len() == 1 {
            "sound"
        } else {
            "several-keys"
        };
        assert_eq!(line["verdict"], verdict, "{row:?}");
    }
}
