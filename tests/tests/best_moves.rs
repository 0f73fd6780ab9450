//! How often the search finds the best moves of two published test sets, at a stated number of nodes.
//!
//! Sources: D. Kopec and I. Bratko, "The Bratko-Kopec Experiment" (1982), 24 positions; F. Reinfeld,
//! *Win at Chess* (1945), as numbered in the book's EPD, best moves as commonly given. Both from memory.

use sealed_move::chess::{Budget, read, search};
use sealed_move_tests::data;

/// Nodes for one position.
const NODES: u64 = 300_000;

#[test]
fn kopec_and_bratko() {
    score("kopec_bratko.epd", 24, 14);
}

#[test]
fn win_at_chess() {
    score("win_at_chess.epd", 117, 108);
}

fn score(file: &str, of: usize, at_least: usize) {
    let entries: Vec<_> = read::read_file(file, data(file).as_bytes())
        .into_iter()
        .collect::<Result<_, _>>()
        .expect("every line is readable");
    assert_eq!(entries.len(), of);
    let mut missed = Vec::new();
    for entry in &entries {
        let judged = search::search(&entry.position, 60, 1, &Budget::unlimited().nodes(NODES));
        if !entry.best.contains(&judged.lines[0].line[0]) {
            missed.push(entry.id.as_str());
        }
    }
    println!(
        "{file}: {} of {of} at {NODES} nodes; missed {}",
        of - missed.len(),
        missed.join(", ")
    );
    assert!(
        of - missed.len() >= at_least,
        "{} missed: {missed:?}",
        missed.len()
    );
}
