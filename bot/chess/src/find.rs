//! Finds positions for a topic in games: where one side had a forced mate that ends in a wanted
//! pattern, whether the player saw it or not.
//!
//! Takes one game at a time, so that an archive of any length can be streamed through; what it gives
//! has been through the same [`check`] as any position a coach hands in, and is sound.

use shakmaty::{Chess, Color, Move, Position};

use super::{
    Budget, Spent, Stipulation,
    check::{CheckOptions, Report, Soundness, check},
    prove,
    read::{Entry, Game},
};

/// What is looked for.
#[derive(Clone, Debug)]
pub struct Wanted {
    /// The pattern's name, such as `back-rank`; any pattern with a name when `None`.
    pub pattern: Option<&'static str>,
    /// Length of the shortest mate wanted, in moves; at least 1.
    pub shortest: u8,
    /// Length of the longest.
    pub longest: u8,
    /// Positions that may be visited for one position of a game before it is passed over.
    pub nodes: u64,
}

impl Default for Wanted {
    /// Any pattern, mates in two and three.
    fn default() -> Self {
        Self {
            pattern: None,
            shortest: 2,
            longest: 3,
            nodes: 200_000,
        }
    }
}

/// A position found.
#[derive(Clone, Debug)]
pub struct Found {
    /// Line of the game in its file, from 1.
    pub line: usize,
    /// Whose move it is.
    pub turn: Color,
    /// Number of the move in the game.
    pub number: u32,
    /// Whether the player found the key.
    pub played: bool,
    /// What the check says; always sound.
    pub report: Report,
}

/// The positions of a game's main line that are wanted, in the game's order. A mate that was still
/// there a move later is given once, where it was longest.
///
/// # Errors
/// [`Spent`] when the budget ended first. A position that takes more than [`Wanted::nodes`] alone is
/// passed over instead.
pub fn find_in(game: &Game, wanted: &Wanted, budget: &Budget<'_>) -> Result<Vec<Found>, Spent> {
    let mut found = Vec::new();
    let mut position = game.start.clone();
    let mut at = game.tree.nodes.first();
    // The last mate of each side: where it began to be seen, and its length then.
    let mut last: [Option<(usize, u8)>; 2] = [None, None];
    let mut ply = 0;
    while let Some(node) = at {
        let side = usize::from(position.turn() == Color::Black);
        let before = last[side].filter(|(seen, _)| seen + 2 == ply);
        if let Some(moves) = mate_in(&position, wanted.longest, wanted.nodes, budget)? {
            let goes_on = before.is_some_and(|(_, longer)| moves < longer);
            last[side] = Some((ply, moves));
            if !goes_on
                && moves >= wanted.shortest
                && let Some(report) = sound(game, &position, moves, wanted, budget)?
            {
                found.push(Found {
                    line: game.line,
                    turn: position.turn(),
                    number: position.fullmoves().get(),
                    played: report.keys.first() == Some(&san(&position, node.mv)),
                    report,
                });
            }
        }
        if !position.is_legal(node.mv) {
            break;
        }
        position.play_unchecked(node.mv);
        ply += 1;
        at = node.next.nodes.first();
    }
    Ok(found)
}

/// The shortest mate within `longest`, if it is seen within `nodes`.
fn mate_in(
    position: &Chess,
    longest: u8,
    nodes: u64,
    budget: &Budget<'_>,
) -> Result<Option<u8>, Spent> {
    let stop = || budget.spend(0).is_err();
    let own = Budget::unlimited()
        .nodes(nodes)
        .until(&stop)
        .table_bytes(TABLE);
    let answer = prove::shortest_mate(position, longest, &own);
    budget.spend(own.used())?;
    Ok(answer.unwrap_or(None))
}

/// Bytes of the prover's table: small, since most positions are done with in a few thousand visits.
const TABLE: usize = 1 << 18;

/// The report on a position if it is sound and ends in what is wanted.
fn sound(
    game: &Game,
    position: &Chess,
    moves: u8,
    wanted: &Wanted,
    budget: &Budget<'_>,
) -> Result<Option<Report>, Spent> {
    let entry = Entry {
        id: id(game, position),
        line: game.line,
        position: position.clone(),
        stipulation: Some(Stipulation::Mate(moves)),
        ..Entry::default()
    };
    let stop = || budget.spend(0).is_err();
    let own = Budget::unlimited()
        .nodes(wanted.nodes.saturating_mul(8))
        .until(&stop);
    let report = check(&entry, &CheckOptions::default(), &own);
    budget.spend(own.used())?;
    let shown = match wanted.pattern {
        Some(pattern) => report.patterns.iter().any(|found| found == pattern),
        None => !report.patterns.is_empty(),
    };
    Ok((report.verdict == Soundness::Sound && shown).then_some(report))
}

/// Players and move, such as `Ash-Birch, 23`; without names the line in the file.
fn id(game: &Game, position: &Chess) -> String {
    let number = position.fullmoves();
    let dots = if position.turn() == Color::Black {
        "..."
    } else {
        ""
    };
    match (game.tag("White"), game.tag("Black")) {
        (Some(white), Some(black)) => format!("{white}-{black}, {number}{dots}"),
        _ => format!("line {}, {number}{dots}", game.line),
    }
}

fn san(position: &Chess, mv: Move) -> String {
    shakmaty::san::SanPlus::from_move(position.clone(), mv).to_string()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::read::read_games;

    /// Morphy against the Duke of Brunswick and Count Isouard, Paris 1858; from memory.
    const OPERA: &str = r#"[Event "Paris"]
[White "Morphy"]
[Black "Duke and Count"]
[Result "1-0"]

1. e4 e5 2. Nf3 d6 3. d4 Bg4 4. dxe5 Bxf3 5. Qxf3 dxe5 6. Bc4 Nf6 7. Qb3 Qe7
8. Nc3 c6 9. Bg5 b5 10. Nxb5 cxb5 11. Bxb5+ Nbd7 12. O-O-O Rd8 13. Rxd7 Rxd7
14. Rd1 Qe6 15. Bxd7+ Nxd7 16. Qb8+ Nxb8 17. Rd8# 1-0
"#;

    fn game(text: &str) -> Game {
        read_games("games.pgn", text.as_bytes())
            .remove(0)
            .expect("a game")
    }

    fn found(text: &str, wanted: &Wanted) -> Vec<Found> {
        find_in(&game(text), wanted, &Budget::unlimited()).expect("unlimited")
    }

    #[test]
    fn finds_a_mate_that_was_played() {
        let wanted = Wanted {
            pattern: Some("opera"),
            ..Wanted::default()
        };
        let found = found(OPERA, &wanted);
        assert_eq!(found.len(), 1, "{found:?}");
        assert_eq!(found[0].report.id, "Morphy-Duke and Count, 16");
        assert_eq!(found[0].report.keys, ["Qb8+"]);
        assert_eq!(found[0].number, 16);
        assert_eq!(found[0].line, 1);
        assert!(found[0].played);
    }

    #[test]
    fn finds_a_mate_that_was_missed() {
        let missed = r#"[White "?"]
[Black "?"]
[SetUp "1"]
[FEN "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 31"]

31. Kf1 Kf8 *
"#;
        let found = found(missed, &Wanted::default());
        assert_eq!(found.len(), 1, "{found:?}");
        assert!(!found[0].played);
        assert_eq!(found[0].report.keys, ["Rxd8+"]);
        assert_eq!(found[0].report.patterns, ["back-rank"]);
        assert_eq!(found[0].report.id, "line 1, 31");
    }

    #[test]
    fn another_pattern_or_length_is_not_wanted() {
        for wanted in [
            Wanted {
                pattern: Some("smothered"),
                ..Wanted::default()
            },
            Wanted {
                shortest: 3,
                ..Wanted::default()
            },
        ] {
            assert!(found(OPERA, &wanted).is_empty(), "{wanted:?}");
        }
    }

    #[test]
    fn a_spent_budget_claims_nothing() {
        let spent = find_in(
            &game(OPERA),
            &Wanted::default(),
            &Budget::unlimited().nodes(0),
        );
        assert_eq!(spent.map(|found| found.len()), Err(Spent));
    }
}
