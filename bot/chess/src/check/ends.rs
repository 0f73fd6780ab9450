//! How the lines of a checked position end: what a topic is held against.
//!
//! Of a mate these are the lines of full length, in which the defender leaves nothing quicker, by the pictures
//! they end in. Of a win or a draw they are the lines of the coach's own tree: those that end in mate, for
//! which the mate is on the board and the prover says how far back it is forced, and those that do not, in
//! which what was offered is declined.

use serde::{Deserialize, Serialize};
use shakmaty::{Chess, Color, Move, Position};

use super::{Complaint, Finding, Statement, variations, written};
use crate::{
    Branch, Budget, Solution,
    fact::{Line, number},
    line::{moves, sans},
    name::name,
    prove::Prover,
    read::{Entry, GameNode, GameTree},
};

/// The most full-length lines that are looked at.
const MOST_LINES: u32 = 2_000;
/// The most lines of the coach's own that are kept.
const MOST_OWN: usize = 40;
/// How far back a mate is traced, in moves of the side that mates.
const LONGEST_FORCED: usize = 6;
/// The most work on tracing the mates of one position back, in positions visited.
const MOST_NODES: u64 = 200_000;
/// Bytes of the prover's table for it.
const TABLE: usize = 1 << 20;

/// The ends of a position's lines, as the store keeps them with the report.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Ends {
    /// The pictures that full-length lines end in, the main line's first. Of a win or a draw, the one that the
    /// search's own line ends in, if it is mate.
    #[serde(default)]
    pub pictures: Vec<FinalPicture>,
    /// Lines of the coach's own. Of a mate their main line, if it is of full length; of a win or a draw
    /// every line but those behind a move marked as wrong or found to be so, the main line first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub own: Vec<OwnLine>,
    /// Whether these are all the lines there are, rather than those known or looked at.
    #[serde(default)]
    pub whole: bool,
    /// Whether the budget ended before the moves of the coach's own lines had been checked.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub cut: bool,
}

/// A final picture.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct FinalPicture {
    /// The first line that ends in it, in SAN.
    pub line: Vec<String>,
    /// Names of the mating patterns it shows, the most particular first; none for a mate without a name.
    pub patterns: Vec<String>,
    /// How many full-length lines end in a picture of these patterns.
    pub lines: u32,
}

/// A line of the coach's own.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct OwnLine {
    /// The line in SAN.
    pub line: Vec<String>,
    /// Its end, where that is mate.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mate: Option<OwnMate>,
}

/// The mate at the end of a line of the coach's own.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct OwnMate {
    /// Names of the mating patterns it shows, the most particular first.
    pub patterns: Vec<String>,
    /// By how many of the line's last moves it is proved to be forced, counting the moves of the side that
    /// mates; at least the mate itself.
    pub forced: u32,
}

impl Ends {
    /// Whether nothing is known of any line.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

/// The ends of a mate in `moves`, which is as short as there is one.
pub(super) fn of_mate(entry: &Entry, solution: &Solution, moves: u8) -> Ends {
    let position = &entry.position;
    let mut walk = Walk {
        start: position,
        line: Vec::new(),
        pictures: Vec::new(),
        lines: 0,
        whole: solution.complete,
    };
    for key in &solution.keys {
        walk.follow(position, key, moves);
    }
    let tree = entry.variations.as_ref();
    let own = tree.and_then(|tree| own_main_line(position, solution, moves, tree));
    Ends {
        pictures: walk.pictures,
        own: own.into_iter().collect(),
        whole: walk.whole,
        cut: false,
    }
}

/// The ends of a win or a draw: `line` is the search's, and `found` what is wrong in the coach's own variations.
pub(super) fn of_advantage(
    entry: &Entry,
    line: &[String],
    found: &[Statement],
    budget: &Budget<'_>,
) -> Ends {
    let position = &entry.position;
    let solver = position.turn();
    let searched = moves(position, line);
    let end = end_of(position, &searched);
    let pictures = is_mated(&end, solver).then(|| FinalPicture {
        line: line.to_vec(),
        patterns: name(&end).patterns,
        lines: 1,
    });
    let stop = || budget.spend(0).is_err();
    let share = Budget::unlimited()
        .nodes(MOST_NODES)
        .until(&stop)
        .table_bytes(TABLE);
    let mut lines = OwnLines {
        start: position,
        solver,
        spoilt: spoilt(found),
        prover: Prover::new(position, &share),
        line: Vec::new(),
        own: Vec::new(),
        whole: true,
    };
    if let Some(tree) = &entry.variations {
        lines.follow(position, tree);
    }
    let (own, whole) = (lines.own, lines.whole);
    // What was spent is told; that it may be all there was changes nothing any more.
    let _ = budget.spend(share.used());
    Ends {
        pictures: pictures.into_iter().collect(),
        // Of what the search found there are always lines besides.
        whole: whole && !own.is_empty(),
        own,
        cut: found
            .iter()
            .any(|told| matches!(told, Statement::Found(Finding::VariationsCut { .. }))),
    }
}

/// Collects the full-length lines of a solution.
struct Walk<'a> {
    start: &'a Chess,
    line: Vec<Move>,
    pictures: Vec<FinalPicture>,
    lines: u32,
    whole: bool,
}

impl Walk<'_> {
    /// The attacker is to move, follows `branch`, and has `left` moves with it.
    fn follow(&mut self, before: &Chess, branch: &Branch, left: u8) {
        if self.lines >= MOST_LINES {
            self.whole = false;
            return;
        }
        let after = played(before, branch.mv);
        self.line.push(branch.mv);
        if after.is_checkmate() {
            self.add(&after, left);
        } else if branch.defences.is_empty() {
            self.whole = false;
        }
        for defence in &branch.defences {
            let next = played(&after, defence.mv);
            self.line.push(defence.mv);
            let first = defence.continuations.first();
            match first.map_or(Lasts::Unknown, |first| lasts(&next, first, left - 1)) {
                Lasts::ToTheEnd => {
                    for continuation in &defence.continuations {
                        self.follow(&next, continuation, left - 1);
                    }
                }
                Lasts::Shorter => {}
                Lasts::Unknown => self.whole = false,
            }
            self.line.pop();
        }
        self.line.pop();
    }

    fn add(&mut self, end: &Chess, left: u8) {
        if left > 1 {
            return;
        }
        self.lines += 1;
        let patterns = name(end).patterns;
        let mut known = self.pictures.iter_mut();
        match known.find(|picture| picture.patterns == patterns) {
            Some(picture) => picture.lines += 1,
            None => self.pictures.push(FinalPicture {
                line: sans(self.start, &self.line),
                patterns,
                lines: 1,
            }),
        }
    }
}

/// How long a branch holds out.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Lasts {
    /// All the moves there are.
    ToTheEnd,
    /// Fewer: no defence holds out so long.
    Shorter,
    /// The tree was cut before that shows.
    Unknown,
}

/// How long the best defence to `branch` lasts, which has `left` moves with the branch's own.
fn lasts(before: &Chess, branch: &Branch, left: u8) -> Lasts {
    if left <= 1 {
        return Lasts::ToTheEnd;
    }
    let after = played(before, branch.mv);
    if branch.defences.is_empty() {
        return match after.is_checkmate() {
            true => Lasts::Shorter,
            false => Lasts::Unknown,
        };
    }
    let mut longest = Lasts::Shorter;
    for defence in &branch.defences {
        let next = played(&after, defence.mv);
        // The first continuation is the shortest.
        let first = defence.continuations.first();
        match first.map_or(Lasts::Unknown, |first| lasts(&next, first, left - 1)) {
            Lasts::ToTheEnd => return Lasts::ToTheEnd,
            Lasts::Unknown => longest = Lasts::Unknown,
            Lasts::Shorter => {}
        }
    }
    longest
}

/// The coach's own main line of a mate, if it is one of full length.
fn own_main_line(
    position: &Chess,
    solution: &Solution,
    moves: u8,
    tree: &GameTree,
) -> Option<OwnLine> {
    let (mut here, mut line) = (position.clone(), Vec::new());
    let (mut branches, mut tree) = (&solution.keys, tree);
    for left in (1..=moves).rev() {
        let node = tree.nodes.first()?;
        let branch = branches.iter().find(|branch| branch.mv == node.mv)?;
        line.push(node.mv);
        here.play_unchecked(node.mv);
        if left == 1 {
            break;
        }
        let answer = node.next.nodes.first()?;
        let mut defences = branch.defences.iter();
        let defence = defences.find(|defence| defence.mv == answer.mv)?;
        line.push(answer.mv);
        here.play_unchecked(answer.mv);
        if lasts(&here, defence.continuations.first()?, left - 1) != Lasts::ToTheEnd {
            return None;
        }
        (branches, tree) = (&defence.continuations, &answer.next);
    }
    here.is_checkmate().then(|| OwnLine {
        line: sans(position, &line),
        mate: Some(OwnMate {
            patterns: name(&here).patterns,
            forced: moves.into(),
        }),
    })
}

/// Collects the coach's own lines of a win or a draw.
struct OwnLines<'a> {
    start: &'a Chess,
    solver: Color,
    /// Moves that let the win or the draw go, by their line in the file.
    spoilt: Vec<(u32, &'a Line)>,
    prover: Prover<'a>,
    line: Vec<Move>,
    own: Vec<OwnLine>,
    whole: bool,
}

impl OwnLines<'_> {
    fn follow(&mut self, here: &Chess, tree: &GameTree) {
        let right: Vec<&GameNode> = tree
            .nodes
            .iter()
            .filter(|node| here.turn() != self.solver || !self.is_wrong(here, node))
            .collect();
        if right.is_empty() {
            self.add(here);
        }
        for node in right {
            self.line.push(node.mv);
            self.follow(&played(here, node.mv), &node.next);
            self.line.pop();
        }
    }

    fn is_wrong(&self, here: &Chess, node: &GameNode) -> bool {
        let place = || {
            (
                number(node.line),
                Line::from(written::in_place(here, node.mv)),
            )
        };
        let let_go = |(row, line): (u32, Line)| {
            let mut spoilt = self.spoilt.iter();
            spoilt.any(|(at, spoilt)| *at == row && **spoilt == line)
        };
        variations::marked_wrong(node) || (!self.spoilt.is_empty() && let_go(place()))
    }

    fn add(&mut self, end: &Chess) {
        if self.line.is_empty() {
            return;
        }
        if self.own.len() >= MOST_OWN {
            self.whole = false;
            return;
        }
        let mate = is_mated(end, self.solver).then(|| OwnMate {
            patterns: name(end).patterns,
            forced: self.forced(),
        });
        self.own.push(OwnLine {
            line: sans(self.start, &self.line),
            mate,
        });
    }

    /// By how many of the solver's last moves of the line, which ends in mate, the mate is forced.
    fn forced(&self) -> u32 {
        let mut here = self.start.clone();
        // The position after each of the solver's moves.
        let mut after = Vec::new();
        for (at, mv) in self.line.iter().enumerate() {
            here.play_unchecked(*mv);
            if at.is_multiple_of(2) {
                after.push(here.clone());
            }
        }
        let back = after.iter().rev().take(LONGEST_FORCED).zip(0_u8..);
        let forced =
            back.take_while(|(position, more)| self.prover.meets(position, *more).unwrap_or(false));
        number(forced.count().max(1))
    }
}

/// The moves that are found to let the win or the draw go.
fn spoilt(found: &[Statement]) -> Vec<(u32, &Line)> {
    let let_go = found.iter().filter_map(|told| match told {
        Statement::Found(Finding::InVariation {
            row,
            line,
            what: Complaint::LetsItGo { .. },
        }) => Some((*row, line)),
        _ => None,
    });
    let_go.collect()
}

/// Whether the side that `solver` plays against is mated.
fn is_mated(position: &Chess, solver: Color) -> bool {
    position.turn() != solver && position.is_checkmate()
}

fn end_of(position: &Chess, line: &[Move]) -> Chess {
    line.iter()
        .fold(position.clone(), |here, mv| played(&here, *mv))
}

fn played(position: &Chess, mv: Move) -> Chess {
    let mut after = position.clone();
    after.play_unchecked(mv);
    after
}
