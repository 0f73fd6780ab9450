//! The coach's own variations of a win or a draw, each move judged by search or by endgame tables.
//!
//! What is called wrong, with the thresholds of [`CheckOptions`] as the solver sees them:
//!
//! | in the file | wrong when the position after it stands |
//! | --- | --- |
//! | a move of the solver, task `+` | at `other_margin` or less |
//! | a move of the solver, task `=` | at `-win_margin` or less |
//! | a move of the solver marked `?`, `??` or `?!`, task `+` | at `win_margin` or more: it wins after all |
//! | the same, task `=` | at `-other_margin` or more: it draws after all |
//! | the main reply to a move so marked | as in the two rows above: it refutes nothing |
//! | `=` (glyphs 10 to 12) at a line's end | at `win_margin` or more for either side |
//! | `+/=`, `=/+` (14, 15) | below −0.5, or at `win_margin + other_margin` or more, for the side said to be better |
//! | `+/-`, `-/+` (16, 17) | at 0 or less for the side said to be better |
//! | `+-`, `-+` (18 to 21) | at `other_margin` or less for the side said to win |
//! | `#` | short of mate |
//!
//! In between nothing is said: the coach may know better. Every move is judged a little less deep than
//! the position itself ([`SHALLOWER`]); before a complaint is made, the judgement is done again at full
//! depth, and the complaint names the depth it rests on. A position that came before in the line
//! counts as drawn when it comes again.
//!
//! Where a line of a win ends in mate, the prover is asked first whether it does so by force; a move after
//! which it does needs no judgement. What holds is handed on with the moves, for replies are judged along
//! them.

use std::{cell::Cell, collections::HashSet};

use shakmaty::{Chess, Color, Move, Position};

use super::{Complaint, Complaints, Finding, Statement, marked_wrong};
use crate::{
    Budget, Spent, Stipulation,
    check::{
        Assessment, CheckOptions, TableVerdict,
        advantage::{SHALLOWEST, deep_enough, is_key},
        tables, written,
    },
    fact::{And, Centipawns, Line, number},
    prove,
    read::{Entry, GameNode, GameTree},
    search::{self, Score},
};

/// How much less deep than the position itself a move of a variation is judged first, in half-moves.
const SHALLOWER: u32 = 4;

/// The longest mate at a line's end, in moves of the solver, that is looked for by proof.
const LONGEST_PROVED: u8 = 5;
/// Positions that one such proof may look at.
const PROOF_NODES: u64 = 300_000;
/// The most lines that are named for ending in a proved mate.
const MOST_NAMED: usize = 4;

/// What became of an entry's variations.
#[derive(Default)]
pub(in crate::check) struct Checked {
    /// What is wrong, each with its line in the file.
    pub warnings: Vec<Statement>,
    /// How far they hold, where nothing is wrong and they are more than one.
    pub told: Vec<Finding>,
    /// The solver's moves that hold, each by the moves from the start to it.
    pub holding: HashSet<Vec<Move>>,
}

/// Checks every variation of an entry whose task is to win or to draw.
pub(in crate::check) fn check(
    entry: &Entry,
    task: Stipulation,
    options: &CheckOptions,
    budget: &Budget<'_>,
) -> Checked {
    let Some(tree) = &entry.variations else {
        return Checked::default();
    };
    let mut walk = Walk {
        solver: entry.position.turn(),
        task,
        options,
        budget,
        path: Vec::new(),
        line: Vec::new(),
        complaints: Complaints::default(),
        holding: HashSet::new(),
        mates: Vec::new(),
        ends: 0,
        shallowest: Cell::new(None),
    };
    let spent = walk.solver_moves(&entry.position, tree).is_err();
    let told = walk.told();
    Checked {
        holding: walk.holding,
        warnings: walk.complaints.told(spent),
        told,
    }
}

/// How a position stands for the solver, and by what right we say so.
#[derive(Clone, Debug)]
struct Standing {
    /// What it is worth, on the scale of [`Score::rank`].
    worth: i32,
    by: By,
    /// The best move, where there is one.
    best: Option<Move>,
}

#[derive(Clone, Debug)]
enum By {
    /// The game is over.
    Rules(Assessment),
    /// Endgame tables.
    Tables(TableVerdict),
    /// Search to a depth.
    Depth(u32, Score),
}

impl Standing {
    /// How it stands for a side.
    fn told(&self, side: Color, solver: Color) -> Assessment {
        let own = side == solver;
        let side = side.into();
        match &self.by {
            By::Rules(standing) => standing.clone(),
            By::Tables(known) => Assessment::TablesSay {
                side,
                known: if own { *known } else { turned_known(*known) },
            },
            By::Depth(depth, score) => {
                let depth = *depth;
                match if own { *score } else { turned(*score) } {
                    Score::Cp(centipawns) => Assessment::SearchSays {
                        depth,
                        side,
                        value: Centipawns { centipawns },
                    },
                    Score::Mate(moves) if moves > 0 => Assessment::SearchSaysMate {
                        depth,
                        side,
                        moves: moves.unsigned_abs(),
                    },
                    Score::Mate(moves) => Assessment::SearchSaysMated {
                        depth,
                        side,
                        moves: moves.unsigned_abs(),
                    },
                }
            }
        }
    }
}

fn turned(score: Score) -> Score {
    match score {
        Score::Cp(value) => Score::Cp(-value),
        Score::Mate(moves) => Score::Mate(-moves),
    }
}

fn turned_known(known: TableVerdict) -> TableVerdict {
    match known {
        TableVerdict::Win => TableVerdict::Loss,
        TableVerdict::Draw => TableVerdict::Draw,
        TableVerdict::Loss => TableVerdict::Win,
    }
}

struct Walk<'a> {
    solver: Color,
    task: Stipulation,
    options: &'a CheckOptions,
    budget: &'a Budget<'a>,
    /// The positions of the line before the one looked at.
    path: Vec<Chess>,
    /// The moves of the line.
    line: Vec<Move>,
    complaints: Complaints,
    /// Lines to the solver's moves that hold.
    holding: HashSet<Vec<Move>>,
    /// The first move of each line after which mate by force is proved, by the moves to it.
    mates: Vec<(Vec<Move>, Line)>,
    /// How many lines keep to the task to their end.
    ends: usize,
    /// The least depth that a judgement rests on.
    shallowest: Cell<Option<u32>>,
}

impl Walk<'_> {
    /// The solver is to move.
    fn solver_moves(&mut self, position: &Chess, tree: &GameTree) -> Result<(), Spent> {
        for node in &tree.nodes {
            let after = self.step(position, node);
            let outcome = self.solver_move(position, node, &after);
            self.back();
            outcome?;
        }
        Ok(())
    }

    fn solver_move(
        &mut self,
        position: &Chess,
        node: &GameNode,
        after: &Chess,
    ) -> Result<(), Spent> {
        if marked_wrong(node) {
            if let Some(judged) = self.doubted(after, Self::meets_clearly)? {
                let what = Complaint::WrongYetDoes {
                    task: self.task.into(),
                    standing: judged.told(self.solver, self.solver),
                };
                self.complaints.add(position, node, what);
                return Ok(());
            }
            self.refuting_reply(after, node)?;
            return self.only_signs(position, node, after);
        }
        if self.mates_by_force(position, node, after)? {
            // Proved, so that nothing is left to judge.
        } else if let Some(judged) = self.doubted(after, Self::fails)? {
            self.path.pop();
            let before = self.judge(position, self.options.depth)?;
            self.path.push(position.clone());
            let better = before
                .best
                .filter(|best| !self.fails(before.worth) && *best != node.mv);
            let what = Complaint::LetsItGo {
                task: self.task.into(),
                standing: judged.told(self.solver, self.solver),
                better: better.map(|best| in_place(position, best)),
            };
            self.complaints.add(position, node, what);
            return Ok(());
        }
        self.holding.insert(self.line.clone());
        self.ends += usize::from(node.next.nodes.is_empty());
        self.signs(position, node, after)?;
        self.defender_moves(after, &node.next)
    }

    /// Whether the line that begins with a move of the solver ends in mate, and by proof in no more
    /// moves whatever the defence.
    fn mates_by_force(
        &mut self,
        before: &Chess,
        node: &GameNode,
        after: &Chess,
    ) -> Result<bool, Spent> {
        let Some(moves) = moves_to_mate(node, after).filter(|_| self.task == Stipulation::Win)
        else {
            return Ok(false);
        };
        if moves > 0 {
            let over = || self.budget.spend(0).is_err();
            let small = Budget::unlimited()
                .nodes(PROOF_NODES)
                .table_bytes(1 << 20)
                .until(&over);
            let held = prove::refutation(after, moves, &small);
            self.budget.spend(small.used())?;
            if !matches!(held, Ok(None)) {
                return Ok(false);
            }
        }
        let known = |(line, _): &(Vec<Move>, Line)| self.line.starts_with(line);
        if !self.mates.iter().any(known) {
            self.mates
                .push((self.line.clone(), in_place(before, node.mv)));
        }
        Ok(true)
    }

    /// The defender is to move, and the solver has kept to the task.
    fn defender_moves(&mut self, position: &Chess, tree: &GameTree) -> Result<(), Spent> {
        for node in &tree.nodes {
            let after = self.step(position, node);
            self.ends += usize::from(node.next.nodes.is_empty());
            let outcome = self
                .signs(position, node, &after)
                .and_then(|()| self.solver_moves(&after, &node.next));
            self.back();
            outcome?;
        }
        Ok(())
    }

    /// After a move that the coach marks as wrong: the main reply given must refute it.
    fn refuting_reply(&mut self, position: &Chess, wrong: &GameNode) -> Result<(), Spent> {
        let Some(reply) = wrong.next.nodes.first() else {
            return Ok(());
        };
        let after = self.step(position, reply);
        let doubted = self.doubted(&after, Self::meets_clearly);
        self.back();
        if let Some(judged) = doubted? {
            let before = self.judge(position, self.options.depth)?;
            let better = before
                .best
                .filter(|best| !self.meets_clearly(before.worth) && *best != reply.mv);
            let what = Complaint::RefutesNot {
                standing: judged.told(self.solver, self.solver),
                better: better.map(|best| in_place(position, best)),
            };
            self.complaints.add(position, reply, what);
        }
        Ok(())
    }

    /// Below a wrong move only the signs are held to the truth.
    fn only_signs(&mut self, before: &Chess, node: &GameNode, after: &Chess) -> Result<(), Spent> {
        self.signs(before, node, after)?;
        for next in &node.next.nodes {
            let then = self.step(after, next);
            let outcome = self.only_signs(after, next, &then);
            self.back();
            outcome?;
        }
        Ok(())
    }

    /// Plays the move, and takes note of where the walk is.
    fn step(&mut self, position: &Chess, node: &GameNode) -> Chess {
        self.complaints.at(position, node);
        self.path.push(position.clone());
        self.line.push(node.mv);
        let mut after = position.clone();
        after.play_unchecked(node.mv);
        after
    }

    fn back(&mut self) {
        self.path.pop();
        self.line.pop();
    }

    /// How far the lines hold.
    fn told(&self) -> Vec<Finding> {
        if self.ends < 2 {
            return Vec::new();
        }
        let mut told = vec![Finding::VariationsHold {
            number: number(self.ends),
            depth: self.shallowest.get(),
        }];
        let mates: Vec<Line> = self.mates.iter().map(|(_, line)| line.clone()).collect();
        if !mates.is_empty() {
            let more = number(mates.len().saturating_sub(MOST_NAMED));
            let and = mates.into_iter().take(MOST_NAMED).collect();
            told.push(Finding::VariationsMate {
                lines: And { and },
                more,
            });
        }
        told
    }

    /// `#` anywhere, and the sign for the evaluation at a line's end.
    fn signs(&mut self, before: &Chess, node: &GameNode, after: &Chess) -> Result<(), Spent> {
        self.complaints.mate_sign(before, node, after);
        if !node.next.nodes.is_empty() {
            return Ok(());
        }
        for nag in &node.nags {
            let Some(claim) = Claim::of(*nag) else {
                continue;
            };
            let side = claim.side.unwrap_or(self.solver);
            let sign = if side == self.solver { 1 } else { -1 };
            let false_claim =
                move |walk: &Self, worth: i32| !claim.allows(sign * worth, walk.options);
            if let Some(judged) = self.doubted(after, false_claim)? {
                let what = Complaint::EndsWith {
                    sign: claim.sign.to_owned(),
                    standing: judged.told(side, self.solver),
                };
                self.complaints.add(before, node, what);
            }
        }
        Ok(())
    }

    /// The standing of a position when it is as bad as `wrong` says, also at full depth.
    fn doubted(
        &self,
        position: &Chess,
        wrong: impl Fn(&Self, i32) -> bool,
    ) -> Result<Option<Standing>, Spent> {
        let depth = self.options.depth.saturating_sub(SHALLOWER).max(SHALLOWEST);
        let first = self.judge(position, depth.min(self.options.depth))?;
        if !wrong(self, first.worth) {
            return Ok(None);
        }
        let again = match first.by {
            By::Depth(reached, _) if reached < self.options.depth => {
                self.judge(position, self.options.depth)?
            }
            _ => first,
        };
        Ok(wrong(self, again.worth).then_some(again))
    }

    fn judge(&self, position: &Chess, depth: u32) -> Result<Standing, Spent> {
        let to_move = position.turn() == self.solver;
        let over = |worth, what| {
            Ok(Standing {
                worth,
                by: By::Rules(what),
                best: None,
            })
        };
        if position.is_checkmate() {
            let mate = Score::Mate(if to_move { 0 } else { 1 }).rank();
            return over(mate, Assessment::IsMateNow);
        }
        if position.is_stalemate() {
            return over(0, Assessment::IsStalemateNow);
        }
        if position.is_insufficient_material() {
            return over(0, Assessment::NeitherCanMate);
        }
        if let Some(judged) = self.by_tables(position) {
            return Ok(judged);
        }
        let searched = search::deepen(position, &self.path, depth, 1, self.budget, &mut |_| {});
        let [best, ..] = &searched.lines[..] else {
            return Err(Spent);
        };
        if searched.depth < depth && !deep_enough(&searched) {
            return Err(Spent);
        }
        if matches!(best.score, Score::Cp(_)) {
            let least = self.shallowest.get().unwrap_or(searched.depth);
            self.shallowest.set(Some(least.min(searched.depth)));
        }
        let score = if to_move {
            best.score
        } else {
            turned(best.score)
        };
        Ok(Standing {
            worth: if to_move {
                best.score.rank()
            } else {
                -best.score.rank()
            },
            by: By::Depth(searched.depth, score),
            best: best.line.first().copied(),
        })
    }

    fn by_tables(&self, position: &Chess) -> Option<Standing> {
        let every = tables::every_move(position, self.options.endgames.as_deref()?)?;
        let rank = |known: &TableVerdict| match known {
            TableVerdict::Win => 2,
            TableVerdict::Draw => 1,
            TableVerdict::Loss => 0,
        };
        let &(best, known) = every.iter().max_by_key(|(_, known)| rank(known))?;
        let known = if position.turn() == self.solver {
            known
        } else {
            turned_known(known)
        };
        let worth = match known {
            TableVerdict::Win => Score::Mate(1).rank(),
            TableVerdict::Draw => 0,
            TableVerdict::Loss => -Score::Mate(1).rank(),
        };
        Some(Standing {
            worth,
            by: By::Tables(known),
            best: Some(best),
        })
    }

    /// Whether the solver has let go of what the task asks for.
    fn fails(&self, worth: i32) -> bool {
        !is_key(self.task, Score::Cp(worth), self.options)
    }

    /// Whether the solver has what the task asks for beyond doubt.
    fn meets_clearly(&self, worth: i32) -> bool {
        match self.task {
            Stipulation::Draw => worth >= -self.options.other_margin,
            _ => worth >= self.options.win_margin,
        }
    }
}

/// In how many more moves of the solver the main line after a move of the solver's mates, where it does
/// and is not too long to prove.
fn moves_to_mate(node: &GameNode, after: &Chess) -> Option<u8> {
    let (mut at, mut here, mut half_moves) = (after.clone(), node, 0_u8);
    while let Some(next) = here.next.nodes.first() {
        half_moves += 1;
        if half_moves > 2 * LONGEST_PROVED {
            return None;
        }
        at.play_unchecked(next.mv);
        here = next;
    }
    at.is_checkmate()
        .then_some(half_moves)
        .filter(|half_moves| half_moves % 2 == 0)
        .map(|half_moves| half_moves / 2)
}

/// What a sign at a line's end says.
#[derive(Clone, Copy)]
struct Claim {
    sign: &'static str,
    /// The side said to be better; neither for `=`.
    side: Option<Color>,
    extent: Extent,
}

#[derive(Clone, Copy)]
enum Extent {
    Level,
    Slight,
    Moderate,
    Decisive,
}

impl Claim {
    /// Glyphs of the PGN standard, section 10; 13, unclear, says nothing.
    fn of(nag: u8) -> Option<Self> {
        let (sign, extent) = match nag {
            10..=12 => ("=", Extent::Level),
            14 => ("+/=", Extent::Slight),
            15 => ("=/+", Extent::Slight),
            16 => ("+/-", Extent::Moderate),
            17 => ("-/+", Extent::Moderate),
            18 | 20 => ("+-", Extent::Decisive),
            19 | 21 => ("-+", Extent::Decisive),
            _ => return None,
        };
        let side = match (extent, nag % 2) {
            (Extent::Level, _) => None,
            (_, 0) => Some(Color::White),
            _ => Some(Color::Black),
        };
        Some(Self { sign, side, extent })
    }

    /// Whether a worth, as the side said to be better sees it, agrees with the sign.
    fn allows(self, worth: i32, options: &CheckOptions) -> bool {
        match self.extent {
            Extent::Level => worth.abs() < options.win_margin,
            Extent::Slight => worth >= -50 && worth < options.win_margin + options.other_margin,
            Extent::Moderate => worth > 0,
            Extent::Decisive => worth > options.other_margin,
        }
    }
}

/// A move with the number that its place in the game gives it, as a value.
fn in_place(before: &Chess, mv: Move) -> Line {
    written::in_place(before, mv).into()
}
