//! The search itself: a depth-first AND/OR search, full width on both sides.
//!
//! Ordering, killers and the table decide only what is looked at first. Every "yes" rests on a reply
//! to every defence, every "no" on a defence to every move.

use std::sync::atomic::{AtomicBool, Ordering};

use shakmaty::{Chess, Move, Position, Role};

use super::strike::{CheckMap, is_mated};
use super::table::{Key, Table, from_to, pack};
use crate::chess::{Budget, Spent, Stipulation};

/// One thread of a proof.
pub(super) struct Worker<'a> {
    budget: &'a Budget<'a>,
    table: &'a Table,
    /// Raised by another thread when this one's answer is no longer needed.
    needless: Option<&'a AtomicBool>,
    /// Nodes not yet booked.
    nodes: u64,
    /// The two latest refutations, by moves left.
    refuters: [[Option<Move>; 2]; LEVELS],
    /// The latest mating move of the attacker.
    mating: Option<Move>,
    /// How often a move between two squares refuted or met the stipulation, defender first.
    history: Box<[[u32; 4096]; 2]>,
}

const LEVELS: usize = Stipulation::LONGEST as usize + 2;

const DEFENDER: usize = 0;
const ATTACKER: usize = 1;

impl<'a> Worker<'a> {
    pub(super) fn new(budget: &'a Budget<'a>, table: &'a Table) -> Self {
        Self {
            budget,
            table,
            needless: None,
            nodes: 0,
            refuters: [[None; 2]; LEVELS],
            mating: None,
            history: Box::new([[0; 4096]; 2]),
        }
    }

    /// Ends early, as if the budget were spent, once the flag is up.
    pub(super) fn while_not(mut self, needless: &'a AtomicBool) -> Self {
        self.needless = Some(needless);
        self
    }

    /// Books the nodes not yet booked. The work is done by now, so a budget that this overruns has
    /// bounded nothing and says nothing.
    pub(super) fn settle(&mut self) {
        let _ = self.budget.spend(std::mem::take(&mut self.nodes));
    }

    /// Counts a position looked at.
    pub(super) fn visit(&mut self) -> Result<(), Spent> {
        self.nodes += 1;
        if self.nodes >= Budget::STRIDE {
            self.budget.spend(std::mem::take(&mut self.nodes))?;
            if self
                .needless
                .is_some_and(|flag| flag.load(Ordering::Relaxed))
            {
                return Err(Spent);
            }
        }
        Ok(())
    }

    fn after(&mut self, position: &Chess, mv: Move) -> Result<Chess, Spent> {
        self.visit()?;
        let mut after = position.clone();
        after.play_unchecked(mv);
        Ok(after)
    }

    /// With the attacker to move: is there a mate within `moves`?
    pub(super) fn attack(&mut self, position: &Chess, moves: u8) -> Result<bool, Spent> {
        match moves {
            0 => return Ok(false),
            1 => return Ok(self.mate_in_one(position)?.is_some()),
            _ => {}
        }
        let key = Key::of(position);
        let known = self.table.look(&key);
        if known.mate != 0 && known.mate <= moves {
            return Ok(true);
        }
        if known.no_mate >= moves {
            return Ok(false);
        }
        if position.has_insufficient_material(position.turn()) {
            return Ok(false);
        }
        for (mv, after) in self.ordered_attack(position, moves, known.best)? {
            if self.defend(&after, moves - 1)?.is_none() {
                self.history[ATTACKER][from_to(mv)] += u32::from(moves) * u32::from(moves);
                self.table.note(&key, Some(moves), None, pack(mv));
                return Ok(true);
            }
        }
        self.table.note(&key, None, Some(moves), 0);
        Ok(false)
    }

    /// The attacker's moves, likely keys first: the table's move, then those that leave the defender
    /// the fewest replies, checks before quiet moves.
    fn ordered_attack(
        &mut self,
        position: &Chess,
        moves: u8,
        best: u16,
    ) -> Result<Vec<(Move, Chess)>, Spent> {
        let Some(map) = CheckMap::of(position) else {
            return Ok(Vec::new());
        };
        let legal = position.legal_moves();
        let mut ranked = Vec::with_capacity(legal.len());
        for mv in legal {
            let after = self.after(position, mv)?;
            let check = map.is_check(position, mv);
            let mut rank: u64 = if check { 0 } else { 1 << 20 };
            if best != 0 && pack(mv) == best {
                rank = 0;
            } else {
                if moves > 2 || check {
                    rank += (after.legal_moves().len() as u64) << 14;
                }
                let merit = self.history[ATTACKER][from_to(mv)].min((1 << 14) - 1);
                rank += (1 << 14) - 1 - u64::from(merit);
            }
            ranked.push((rank, mv, after));
        }
        ranked.sort_by_key(|(rank, ..)| *rank);
        Ok(ranked
            .into_iter()
            .map(|(_, mv, after)| (mv, after))
            .collect())
    }

    /// With the defender to move: `None` when he is mated, or every defence is met by a mate within
    /// `moves` more moves of the attacker; otherwise a defence that holds (any one).
    pub(super) fn defend(&mut self, position: &Chess, moves: u8) -> Result<Option<Held>, Spent> {
        if moves == 0 {
            return Ok(if position.is_check() && is_mated(position) {
                None
            } else {
                Some(Held::InTime)
            });
        }
        let replies = position.legal_moves();
        if replies.is_empty() {
            return Ok(if position.is_check() {
                None
            } else {
                Some(Held::Stalemate)
            });
        }
        let level = usize::from(moves).min(LEVELS - 1);
        let mut rest: Vec<Move> = replies.to_vec();
        // Refutations that just worked against a sister move, before any sorting is paid for.
        for killer in self.refuters[level].into_iter().flatten() {
            let Some(at) = rest.iter().position(|mv| *mv == killer) else {
                continue;
            };
            rest.remove(at);
            let after = self.after(position, killer)?;
            if !self.attack(&after, moves)? {
                return Ok(Some(Held::By(killer)));
            }
        }
        self.order_defence(position, &mut rest);
        for mv in rest {
            let after = self.after(position, mv)?;
            if !self.attack(&after, moves)? {
                self.remember_refuter(level, moves, mv);
                return Ok(Some(Held::By(mv)));
            }
        }
        Ok(None)
    }

    fn remember_refuter(&mut self, level: usize, moves: u8, mv: Move) {
        self.history[DEFENDER][from_to(mv)] += u32::from(moves) * u32::from(moves);
        let pair = &mut self.refuters[level];
        if pair[0] != Some(mv) {
            pair[1] = pair[0];
            pair[0] = Some(mv);
        }
    }

    /// Likely refutations first: what worked before, checks, captures, the king's own moves.
    pub(super) fn order_defence(&self, position: &Chess, replies: &mut [Move]) {
        let map = CheckMap::of(position);
        replies.sort_by_cached_key(|mv| {
            let mut merit = i64::from(self.history[DEFENDER][from_to(*mv)].min(1 << 16));
            if map.as_ref().is_some_and(|map| map.is_check(position, *mv)) {
                merit += 4000;
            }
            if let Some(role) = mv.capture() {
                merit += 500 * worth(role);
            }
            if mv.role() == Role::King {
                merit += 600;
            }
            if mv.promotion() == Some(Role::Queen) {
                merit += 2000;
            }
            -merit
        });
    }

    /// A move that mates at once.
    pub(super) fn mate_in_one(&mut self, position: &Chess) -> Result<Option<Move>, Spent> {
        self.visit()?;
        let Some(map) = CheckMap::of(position) else {
            return Ok(None);
        };
        let legal = position.legal_moves();
        let last = self.mating.filter(|mv| legal.contains(mv));
        for mv in last.into_iter().chain(legal) {
            if !map.is_check(position, mv) {
                continue;
            }
            let after = self.after(position, mv)?;
            if is_mated(&after) {
                self.mating = Some(mv);
                return Ok(Some(mv));
            }
        }
        Ok(None)
    }
}

/// How a defence holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Held {
    /// By this move.
    By(Move),
    /// The defender has no move and is not in check.
    Stalemate,
    /// The defender is not mated, and the attacker has no move left.
    InTime,
}

impl Held {
    /// The move that holds, where there is one.
    pub(super) fn by(self) -> Option<Move> {
        match self {
            Self::By(mv) => Some(mv),
            Self::Stalemate | Self::InTime => None,
        }
    }
}

/// The usual count in pawns.
pub(super) fn worth(role: Role) -> i64 {
    match role {
        Role::Pawn => 1,
        Role::Knight | Role::Bishop => 3,
        Role::Rook => 5,
        Role::Queen => 9,
        Role::King => 0,
    }
}
