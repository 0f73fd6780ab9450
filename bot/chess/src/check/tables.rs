//! Endgame tables, where the user has them: exact verdicts on wins and draws with few pieces and pawns.
//!
//! Floor 1 reads no files; whoever does hands over something that knows [`Endgames`]. The fifty-move rule
//! is not counted: it does not apply to compositions unless stated (World Federation for Chess
//! Composition, Codex, article 17).

use std::fmt;

use serde::{Deserialize, Serialize};
use shakmaty::{Chess, Move, Position};

use crate::Stipulation;

/// What is known of a position, for the side to move and without the fifty-move rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum TableVerdict {
    /// The side to move wins.
    Win,
    /// Drawn.
    Draw,
    /// The side to move loses.
    Loss,
}

/// Tables that know the truth of endings.
pub trait Endgames: fmt::Debug + Send + Sync {
    /// The most pieces and pawns, kings included, for which there is a table.
    fn most_men(&self) -> usize;
    /// What is known of the position; `None` when its table is not there.
    fn known(&self, position: &Chess) -> Option<TableVerdict>;
}

/// Every move with what it leads to, for the side that makes it; `None` when a table is missing.
pub(super) fn every_move(
    position: &Chess,
    tables: &dyn Endgames,
) -> Option<Vec<(Move, TableVerdict)>> {
    if position.board().occupied().count() > tables.most_men() || position.castles().any() {
        return None;
    }
    position
        .legal_moves()
        .into_iter()
        .map(|mv| {
            let mut after = position.clone();
            after.play_unchecked(mv);
            let known = if after.is_checkmate() {
                TableVerdict::Win
            } else if after.is_stalemate() || after.is_insufficient_material() {
                TableVerdict::Draw
            } else {
                match tables.known(&after)? {
                    TableVerdict::Win => TableVerdict::Loss,
                    TableVerdict::Draw => TableVerdict::Draw,
                    TableVerdict::Loss => TableVerdict::Win,
                }
            };
            Some((mv, known))
        })
        .collect()
}

/// Whether a move that leads to `known` meets the task.
pub(super) fn meets(task: Stipulation, known: TableVerdict) -> bool {
    match task {
        Stipulation::Draw => known != TableVerdict::Loss,
        _ => known == TableVerdict::Win,
    }
}
