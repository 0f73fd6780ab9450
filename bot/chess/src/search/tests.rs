//! The searcher against positions whose truth is known.

use shakmaty::{Chess, san::SanPlus};

use super::*;
use crate::parse_fen;

fn position(fen: &str) -> Chess {
    parse_fen(fen).expect("a position").position
}

fn best(fen: &str, depth: u32) -> (String, Score) {
    let position = position(fen);
    let judged = search(&position, depth, 1, &Budget::unlimited());
    let top = &judged.lines[0];
    (
        SanPlus::from_move(position, top.line[0]).to_string(),
        top.score,
    )
}

#[test]
fn finds_mates() {
    // Composed for this test: the rook's ladder, and a smothered corner.
    assert_eq!(
        best("6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - -", 4),
        ("Rd8#".into(), Score::Mate(1))
    );
    assert_eq!(
        best("6rk/6pp/8/4N3/8/8/6PP/6K1 w - -", 4),
        ("Nf7#".into(), Score::Mate(1))
    );
    assert_eq!(best("7k/8/8/8/8/2K5/1R6/R7 w - -", 8).1, Score::Mate(2));
}

#[test]
fn a_mated_or_stalemated_side_has_no_lines() {
    for fen in [
        "3R2k1/5ppp/8/8/8/8/8/6K1 b - -",
        "7k/5Q2/6K1/8/8/8/8/8 b - -",
    ] {
        assert!(
            search(&position(fen), 4, 1, &Budget::unlimited())
                .lines
                .is_empty(),
            "{fen}"
        );
    }
}

#[test]
fn counts_mates_against_the_mover() {
    let judged = search(
        &position("7k/8/8/8/8/8/R7/1R4K1 b - -"),
        8,
        1,
        &Budget::unlimited(),
    );
    let Score::Mate(moves) = judged.lines[0].score else {
        panic!("{:?}", judged.lines[0].score)
    };
    assert!(moves < 0, "{moves}");
}

#[test]
fn wins_material_and_knows_dead_draws() {
    let (san, score) = best("3q3k/8/8/8/8/8/8/K2R4 w - -", 5);
    assert_eq!(san, "Rxd8+");
    assert!(score.rank() > 300, "{score:?}");
    let (_, score) = best("8/8/8/4k3/8/8/4K3/5B2 w - -", 6);
    assert_eq!(score, Score::Cp(0));
}

#[test]
fn ranks_several_lines_in_order() {
    let judged = search(
        &position("3q3k/8/8/8/8/8/8/K2R4 w - -"),
        4,
        3,
        &Budget::unlimited(),
    );
    assert_eq!(judged.lines.len(), 3);
    assert!(
        judged
            .lines
            .windows(2)
            .all(|pair| pair[0].score.rank() >= pair[1].score.rank())
    );
    let firsts: std::collections::HashSet<_> = judged.lines.iter().map(|l| l.line[0]).collect();
    assert_eq!(firsts.len(), 3);
}

#[test]
fn pawn_endings_are_not_passed_away() {
    // Réti, 1921: White draws by 1.Kg7. From memory.
    let (san, score) = best("7K/8/k1P5/7p/8/8/8/8 w - -", 16);
    assert_eq!(san, "Kg7");
    assert!(score.rank() > -150, "{score:?}");
}

#[test]
fn one_thread_gives_one_answer() {
    let start = Chess::default();
    let once = search(&start, 6, 2, &Budget::unlimited());
    let again = search(&start, 6, 2, &Budget::unlimited());
    assert_eq!(once.nodes, again.nodes);
    assert_eq!(once.lines[0].line, again.lines[0].line);
}

#[test]
fn the_budget_ends_it_with_a_legal_line() {
    let judged = search(&Chess::default(), 40, 1, &Budget::unlimited().nodes(20_000));
    assert!(judged.nodes < 60_000, "{}", judged.nodes);
    let mut at = Chess::default();
    for &mv in &judged.lines[0].line {
        assert!(at.is_legal(mv));
        at.play_unchecked(mv);
    }
}

#[test]
fn two_threads_find_the_same_mate() {
    let budget = Budget::unlimited().threads(2);
    let judged = search(&position("7k/8/8/8/8/2K5/1R6/R7 w - -"), 8, 1, &budget);
    assert_eq!(judged.lines[0].score, Score::Mate(2));
}

#[test]
fn perpetual_check_saves_the_weaker_side() {
    // Composed for this test: White is far behind, and draws by checks from d8 and g5.
    let (san, score) = best("6k1/5p1p/8/8/8/8/qr4PP/3Q3K w - -", 10);
    assert_eq!((san.as_str(), score), ("Qd8+", Score::Cp(0)));
    // Without the checks it is lost.
    let (_, score) = best("6k1/5p1p/3p4/8/8/8/qr4PP/3B3K w - -", 8);
    assert!(score.rank() < -500, "{score:?}");
}
