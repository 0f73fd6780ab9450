//! The guard on invented texts: every leak is held, and ordinary talk passes.

use shakmaty::{CastlingMode, Chess, fen::Fen};

use super::*;
use crate::line;

const QUEEN: &str = "5rk1/5ppp/8/3N3Q/8/4R3/5PPP/6K1 w - - 0 1";

fn position(name: &str) -> Chess {
    let fen = match name {
        "queen" => QUEEN,
        "rooks" => "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1",
        "castle" => "4k3/8/8/8/8/8/5PPP/4K2R w K - 0 1",
        "promote" => "7k/4P3/6K1/8/8/8/8/8 w - - 0 1",
        "pawns" => "7k/8/8/3pP3/2p5/1P6/8/7K w - d6 0 1",
        name => panic!("no position is called {name}"),
    };
    let fen: Fen = fen.parse().expect("a FEN");
    fen.into_position(CastlingMode::Standard).expect("legal")
}

/// The moves at one position.
fn at(position: &Chess) -> Moves {
    let mut moves = Moves::default();
    moves.add(position);
    moves
}

/// The positions along the solution of the queen's problem.
fn along_the_line() -> Moves {
    let start = position("queen");
    let mut at = start.clone();
    let mut moves = Moves::default();
    moves.add(&at);
    let sans = ["Ne7+", "Kh8", "Qxh7+", "Kxh7", "Rh3#"].map(str::to_owned);
    for mv in line::moves(&start, &sans) {
        at.play_unchecked(mv);
        moves.add(&at);
    }
    moves
}

fn texts(corpus: &str) -> impl Iterator<Item = &str> {
    corpus
        .lines()
        .filter(|line| !line.is_empty() && !line.starts_with("# ") && !line.contains(": 5rk1"))
}

#[test]
fn every_leak_is_held() {
    let mut missed = Vec::new();
    let mut count = 0;
    for row in texts(include_str!("leaks.txt")) {
        let (name, text) = row.split_once('\t').expect("a tab");
        let text = text.replace("\\n", "\n");
        count += 1;
        let held = match name {
            "queen" => along_the_line().may_be_told_by(&text),
            name => at(&position(name)).may_be_told_by(&text),
        };
        if !held {
            missed.push(text);
        }
    }
    assert!(count >= 150, "{count}");
    assert!(
        missed.is_empty(),
        "{} of {count}: {missed:#?}",
        missed.len()
    );
}

#[test]
fn ordinary_talk_passes() {
    let moves = along_the_line();
    let talk: Vec<&str> = texts(include_str!("talk.txt")).collect();
    let held: Vec<&&str> = talk
        .iter()
        .filter(|text| moves.may_be_told_by(text))
        .collect();
    println!("{} of {} held: {held:#?}", held.len(), talk.len());
    assert!(talk.len() >= 200, "{}", talk.len());
    assert!(
        held.len() * 20 <= talk.len(),
        "{} of {}: {held:#?}",
        held.len(),
        talk.len()
    );
}

#[test]
fn where_nothing_can_be_played_nothing_is_held() {
    assert!(!Moves::default().may_be_told_by("Qh7"));
    let stalemate: Fen = "7k/5Q2/6K1/8/8/8/8/8 b - - 0 1".parse().expect("a FEN");
    let position: Chess = stalemate
        .into_position(CastlingMode::Standard)
        .expect("legal");
    assert!(!at(&position).may_be_told_by("Kg8"));
}

#[test]
fn castling_promoting_and_taking_are_held_only_where_they_can_be_played() {
    for text in ["castle!", "0-0", "promote", "en passant", "exd"] {
        assert!(!at(&position("queen")).may_be_told_by(text), "{text}");
    }
}

#[test]
fn what_is_too_long_to_look_at_is_held() {
    let long = "word ".repeat(5_000);
    assert!(at(&position("queen")).may_be_told_by(&long));
}
