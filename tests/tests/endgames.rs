//! Wins judged by endgame tables agree with python-chess's own prober, move by move.

use std::collections::BTreeSet;

use sealed_move_tests::{python_script, sealed_move};

#[test]
fn tables_give_the_same_keys_as_an_independent_prober() {
    let folder = std::env::var("SEALED_MOVE_TEST_SYZYGY")
        .expect("SEALED_MOVE_TEST_SYZYGY names no folder of tables; start the tests by tests/run");
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
        let keys: BTreeSet<&str> = line["keys"]
            .as_array()
            .expect("keys")
            .iter()
            .filter_map(|key| key.as_str())
            .collect();
        assert_eq!(keys, wanted, "{fen}");
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
