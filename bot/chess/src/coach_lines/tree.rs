//! The coach's lines on the board.

use shakmaty::{Chess, Color, Move};

use super::{CoachLines, before_the_reveal, mark_wrong, played};
use crate::Stipulation;

/// A place in a [`CoachTree`]: 0 is the start of the problem.
pub type NodeAt = usize;

/// A move of the coach's on the board.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct CoachNode {
    /// The move; none at the start of the problem.
    pub mv: Option<Move>,
    /// What follows, the main move first.
    pub next: Vec<NodeAt>,
    /// Words on the move that may stand with a verdict, as the coach wrote them.
    pub words: Vec<String>,
    /// Numeric annotation glyphs.
    nags: Vec<u8>,
    holds: bool,
}

impl CoachNode {
    /// Whether the coach marks the move as wrong.
    pub fn is_marked_wrong(&self) -> bool {
        mark_wrong(&self.nags)
    }

    /// Whether the solver of a win or a draw keeps to the task with the move, as the check found.
    pub fn holds(&self) -> bool {
        self.holds && !self.is_marked_wrong()
    }
}

/// The coach's lines on the board. Where a file has the same move twice in one place, it is one here.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CoachTree {
    nodes: Vec<CoachNode>,
}

impl CoachTree {
    /// The tree of lines that begin at `start`; `None` where there is none. A move that cannot be played
    /// is left out with all that follows it.
    pub fn of(start: &Chess, lines: &CoachLines) -> Option<Self> {
        let mut nodes = vec![CoachNode::default()];
        let mut boards = vec![start.clone()];
        let mut places: Vec<Option<NodeAt>> = Vec::with_capacity(lines.moves.len());
        for kept in &lines.moves {
            let before = match kept.after {
                None => Some(0),
                Some(place) => places.get(place).copied().flatten(),
            };
            let reached = before.and_then(|before| {
                let (board, path) = played(boards[before].clone(), Vec::new(), &kept.san)?;
                Some((before, board, *path.last()?))
            });
            let Some((before, board, mv)) = reached else {
                places.push(None);
                continue;
            };
            let mut next = nodes[before].next.iter().copied();
            let twin = next.find(|&next| nodes[next].mv == Some(mv));
            let place = twin.unwrap_or_else(|| {
                let new = nodes.len();
                nodes[before].next.push(new);
                nodes.push(CoachNode {
                    mv: Some(mv),
                    ..CoachNode::default()
                });
                boards.push(board);
                new
            });
            let node = &mut nodes[place];
            let words = [&kept.before, &kept.words].map(|words| before_the_reveal(words));
            node.words
                .extend(words.into_iter().filter(|words| !words.is_empty()));
            node.nags.extend(&kept.nags);
            node.holds |= kept.holds;
            places.push(Some(place));
        }
        (nodes.len() > 1).then_some(Self { nodes })
    }

    /// A node.
    pub fn node(&self, at: NodeAt) -> &CoachNode {
        &self.nodes[at]
    }

    /// The place that these moves from the start lead to.
    pub fn at(&self, moves: &[Move]) -> Option<NodeAt> {
        moves.iter().try_fold(0, |at, mv| {
            let next = &self.nodes[at].next;
            next.iter()
                .copied()
                .find(|&next| self.nodes[next].mv == Some(*mv))
        })
    }

    /// The coach's first move after `at` that keeps to the task.
    pub fn right(&self, at: NodeAt) -> Option<NodeAt> {
        let mut next = self.nodes[at].next.iter().copied();
        next.find(|&next| self.nodes[next].holds())
    }

    /// The defences after the move at `at` that the coach goes on from, in the coach's order.
    pub fn met(&self, at: NodeAt) -> Vec<NodeAt> {
        let next = self.nodes[at].next.iter().copied();
        next.filter(|&next| self.right(next).is_some()).collect()
    }

    /// The main line after `at`, as far as the coach gives it.
    pub fn main_line(&self, at: NodeAt) -> Vec<NodeAt> {
        let mut line = Vec::new();
        let mut here = at;
        while let Some(&next) = self.nodes[here].next.first() {
            line.push(next);
            here = next;
        }
        line
    }

    /// The moves at these places.
    pub fn moves(&self, places: &[NodeAt]) -> Vec<Move> {
        let moves = places.iter().filter_map(|&place| self.nodes[place].mv);
        moves.collect()
    }

    /// Whether a sign of the coach's at `at` says that the solver has not done what the task asks.
    pub fn says_failed(&self, at: NodeAt, solver: Color, task: Stipulation) -> bool {
        // Glyphs of the PGN standard, section 10: even ones from 14 on are White's, odd ones Black's.
        let for_white = |nag: u8| nag.is_multiple_of(2);
        self.nodes[at].nags.iter().any(|&nag| match nag {
            10..=12 => task != Stipulation::Draw,
            14..=21 => for_white(nag) != solver.is_white(),
            _ => false,
        })
    }
}
