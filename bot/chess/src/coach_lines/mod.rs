//! The coach's own lines: the game tree of a PGN, kept whole with its position.
//!
//! [`CoachLines`] is how a report keeps them, moves in SAN in a plain list, for a tree of objects inside
//! one another would be deeper than JSON is read. [`CoachTree`] is the same on the board, to judge by.

mod tree;

use std::collections::HashSet;

use serde::{Deserialize, Serialize};
use shakmaty::{Chess, Move, Position, san::SanPlus};

use crate::{
    comments::{Comment, Goes, MOST_IN_NOTES},
    read::{GameNode, GameTree, without_commands},
};

pub use tree::{CoachNode, CoachTree, NodeAt};

/// The most moves that are kept of one position.
pub const MOST_MOVES: usize = 600;

/// Glyphs of the PGN standard, section 10: poor move, very poor move, questionable move.
const WRONG: [u8; 3] = [2, 4, 6];

/// Whether the coach's glyphs say that a move is wrong: `?`, `??` or `?!`.
pub(crate) fn mark_wrong(nags: &[u8]) -> bool {
    nags.iter().any(|nag| WRONG.contains(nag))
}

/// The coach's own game tree of a position.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct CoachLines {
    /// Every move behind the one that it follows; of several that follow the same, the main one first.
    pub moves: Vec<CoachMove>,
    /// Whether moves or words are left out because there are more than are kept.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub cut: bool,
}

/// A move of the coach's.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct CoachMove {
    /// Which move of the list it follows, from 0; none for a first move.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub after: Option<usize>,
    /// The move in SAN.
    pub san: String,
    /// Numeric annotation glyphs.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub nags: Vec<u8>,
    /// Words before the move, as the file has them.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub before: String,
    /// Words behind the move, as the file has them.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub words: String,
    /// Whether the check found that the solver of a win or a draw keeps to the task with it.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub holds: bool,
}

impl CoachLines {
    /// The lines of a tree that begins at `start`: at most [`MOST_MOVES`] moves and [`MOST_IN_NOTES`]
    /// characters of words.
    pub fn of(start: &Chess, tree: &GameTree) -> Self {
        let mut lines = Self::default();
        lines.add(start, tree, None, &mut { MOST_IN_NOTES });
        lines
    }

    fn add(&mut self, from: &Chess, tree: &GameTree, after: Option<usize>, room: &mut usize) {
        for node in &tree.nodes {
            if self.moves.len() >= MOST_MOVES {
                self.cut = true;
                return;
            }
            let place = self.moves.len();
            let mut next = from.clone();
            let san = SanPlus::from_move_and_play_unchecked(&mut next, node.mv).to_string();
            let before = self.kept(node.before.as_deref(), room);
            let words = self.kept(node.comment.as_deref(), room);
            self.moves.push(CoachMove {
                after,
                san,
                nags: node.nags.clone(),
                before,
                words,
                holds: false,
            });
            self.add(&next, &node.next, Some(place), room);
        }
    }

    /// Words, or none where there is no room for all of them.
    fn kept(&mut self, words: Option<&str>, room: &mut usize) -> String {
        let words = without_commands(words.unwrap_or_default());
        let long = words.chars().count();
        if long > *room {
            self.cut = true;
            return String::new();
        }
        *room -= long;
        words
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.moves.is_empty()
    }

    /// The lines of a win or a draw in which every move of the solver was found to hold, in SAN, the main one
    /// first; none where the coach gives no more than a first move.
    pub fn holding(&self) -> Vec<Vec<String>> {
        // By the moves of the list: the line to each, where it holds so far.
        let mut lines: Vec<Option<Vec<String>>> = Vec::with_capacity(self.moves.len());
        let mut goes_on = vec![false; self.moves.len()];
        for kept in &self.moves {
            let before = match kept.after {
                None => Some(Vec::new()),
                Some(place) => lines.get(place).cloned().flatten(),
            };
            let line = before.and_then(|mut line| {
                let solvers = line.len().is_multiple_of(2);
                line.push(kept.san.clone());
                let wrong = mark_wrong(&kept.nags) || !kept.holds;
                (!solvers || !wrong).then_some(line)
            });
            if let (Some(_), Some(place)) = (&line, kept.after) {
                goes_on[place] = true;
            }
            lines.push(line);
        }
        let ends = lines.into_iter().zip(goes_on);
        let ends: Vec<_> = ends
            .filter_map(|(line, goes_on)| line.filter(|_| !goes_on))
            .collect();
        match ends.first() {
            Some(main) if main.len() > 2 => ends,
            _ => Vec::new(),
        }
    }

    /// Puts the words through `clean`.
    pub fn clean(&mut self, clean: impl Fn(&str) -> String) {
        for kept in &mut self.moves {
            kept.before = clean(&kept.before);
            kept.words = clean(&kept.words);
        }
    }

    /// Notes which moves the check found to hold, each by the moves from `start` to it.
    pub(crate) fn note_holding(&mut self, start: &Chess, holding: &HashSet<Vec<Move>>) {
        let mut reached: Vec<Option<(Chess, Vec<Move>)>> = Vec::with_capacity(self.moves.len());
        for kept in &mut self.moves {
            let from = match kept.after {
                None => Some((start.clone(), Vec::new())),
                Some(place) => reached.get(place).cloned().flatten(),
            };
            let here = from.and_then(|(position, path)| played(position, path, &kept.san));
            kept.holds = here
                .as_ref()
                .is_some_and(|(_, path)| holding.contains(path));
            reached.push(here);
        }
    }

    /// The tree as a file would give it, every move on one `line` of it.
    pub fn tree(&self, start: &Chess, line: usize) -> GameTree {
        let mut positions: Vec<Option<(Chess, Move)>> = Vec::with_capacity(self.moves.len());
        for kept in &self.moves {
            let from = match kept.after {
                None => Some(start.clone()),
                Some(place) => positions.get(place).cloned().flatten().map(|(at, _)| at),
            };
            positions.push(from.and_then(|at| {
                let (after, path) = played(at, Vec::new(), &kept.san)?;
                Some((after, *path.last()?))
            }));
        }
        // From the last to the first, so that what follows a move is whole when the move is built.
        let mut following: Vec<Vec<GameNode>> = vec![Vec::new(); self.moves.len() + 1];
        for (place, kept) in self.moves.iter().enumerate().rev() {
            let mut nodes = std::mem::take(&mut following[place + 1]);
            nodes.reverse();
            let Some((_, mv)) = positions[place] else {
                continue;
            };
            let some = |words: &String| (!words.is_empty()).then(|| words.clone());
            following[kept.after.map_or(0, |before| before + 1)].push(GameNode {
                mv,
                nags: kept.nags.clone(),
                mate_sign: false,
                before: some(&kept.before),
                comment: some(&kept.words),
                line,
                next: GameTree { nodes },
            });
        }
        let mut nodes = std::mem::take(&mut following[0]);
        nodes.reverse();
        GameTree { nodes }
    }
}

fn played(mut at: Chess, mut path: Vec<Move>, san: &str) -> Option<(Chess, Vec<Move>)> {
    let mv = san.parse::<SanPlus>().ok()?.san.to_move(&at).ok()?;
    at.play_unchecked(mv);
    path.push(mv);
    Some((at, path))
}

/// What of a coach's words on a move may stand with a verdict: what is marked for the reveal may not.
fn before_the_reveal(words: &str) -> String {
    let parts = Comment::read(words, Goes::WithPost);
    let now = parts.into_iter().filter(|part| part.goes != Goes::AtReveal);
    now.map(|part| part.text).collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests;
