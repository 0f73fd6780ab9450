//! The search itself: a depth-first AND/OR search, full width on both sides.
//!
//! Ordering, killers and the table decide only what is looked at first. Every "yes" rests on a reply
//! to every defence, every "no" on a defence to every move.
//!
//! A node is a move made, or a checking move weighed.

use std::sync::atomic::{AtomicBool, Ordering};

use shakmaty::{Chess, Move, MoveList, Position, Role, attacks};

use super::strike::{CheckMap, is_legal, is_mated};
use super::table::{Key, Table, from_to, pack};
use crate::pieces::worth;
use crate::{Budget, Spent, Stipulation};

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

/// Where `refuters` keeps what worked with this many moves left.
fn level(moves: u8) -> usize {
    usize::from(moves).min(LEVELS - 1)
}

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
    #[inline]
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
        if known.no_mate == 0
            && let Some(mv) = self.mate_in_one(position)?
        {
            self.table.note(&key, Some(1), None, pack(mv));
            return Ok(true);
        }
        let ranked = self.ordered_attack(position, moves, known.best)?;
        // Short mates first: most defences allow one, and where they do not, little is lost.
        for length in (known.no_mate + 1).max(2)..=moves {
            for &(_, mv) in &ranked {
                self.visit()?;
                if !self.holds(&played(position, mv), length - 1)? {
                    self.reward(ATTACKER, mv, length);
                    self.table.note(&key, Some(length), None, pack(mv));
                    return Ok(true);
                }
            }
            self.table.note(&key, None, Some(length), 0);
        }
        Ok(false)
    }

    /// The attacker's moves, likely keys first: the table's move, then those that leave the defender
    /// the fewest replies, checks before quiet moves.
    fn ordered_attack(
        &mut self,
        position: &Chess,
        moves: u8,
        best: u16,
    ) -> Result<Vec<(u32, Move)>, Spent> {
        const MERITS: u32 = 1 << 12;
        let Some(map) = CheckMap::of(position) else {
            return Ok(Vec::new());
        };
        let legal = position.legal_moves();
        let mut ranked = Vec::with_capacity(legal.len());
        for &mv in &legal {
            let check = map.is_check(position, mv);
            let mut rank = if check { 0 } else { 1 << 20 };
            if best != 0 && pack(mv) == best {
                rank = 0;
            } else {
                if moves > 2 || check {
                    self.visit()?;
                    rank += played(position, mv).legal_moves().len() as u32 * MERITS;
                }
                rank += MERITS - 1 - self.history[ATTACKER][from_to(mv)].min(MERITS - 1);
            }
            ranked.push((rank, mv));
        }
        ranked.sort_by_key(|(rank, _)| *rank);
        Ok(ranked)
    }

    /// With the defender to move: does he hold, so that he is not mated and some defence is not met
    /// by a mate within `moves` more moves of the attacker?
    pub(super) fn holds(&mut self, position: &Chess, moves: u8) -> Result<bool, Spent> {
        match moves {
            0 => Ok(!(position.is_check() && is_mated(position))),
            1 => self.holds_against_one(position),
            _ => self.holds_against_more(position, moves),
        }
    }

    /// One move is left to the attacker. The table knows nothing here, so what just worked against a
    /// sister move is asked before any list is made.
    fn holds_against_one(&mut self, position: &Chess) -> Result<bool, Spent> {
        let killers = self.refuters[1];
        for killer in killers.into_iter().flatten() {
            if is_legal(position, killer) {
                self.visit()?;
                if self.mate_in_one(&played(position, killer))?.is_none() {
                    return Ok(true);
                }
            }
        }
        let replies = position.legal_moves();
        if replies.is_empty() {
            return Ok(!position.is_check());
        }
        let map = CheckMap::of(position);
        let mut open: Vec<(i32, Move)> = Vec::with_capacity(replies.len());
        for &mv in &replies {
            if !killers.contains(&Some(mv)) {
                open.push((-self.promise(mv, map.as_ref(), position), mv));
            }
        }
        open.sort_by_key(|(merit, _)| *merit);
        for (_, mv) in open {
            self.visit()?;
            if self.mate_in_one(&played(position, mv))?.is_none() {
                self.remember_refuter(1, mv);
                return Ok(true);
            }
        }
        Ok(false)
    }

    fn holds_against_more(&mut self, position: &Chess, moves: u8) -> Result<bool, Spent> {
        let key = Key::of(position);
        let known = self.table.look(&key);
        if known.no_mate >= moves {
            return Ok(true);
        }
        if known.mate != 0 && known.mate <= moves {
            return Ok(false);
        }
        let replies = position.legal_moves();
        if replies.is_empty() {
            return Ok(!position.is_check());
        }
        let holding = if moves == 2 {
            self.find_holding_quickly(position, &replies, known.best)?
        } else {
            self.find_holding(position, &replies, moves, known.best)?
        };
        match holding {
            Some(mv) => {
                self.remember_refuter(moves, mv);
                self.table.note(&key, None, Some(moves), pack(mv));
            }
            None => self.table.note(&key, Some(moves), None, 0),
        }
        Ok(holding.is_some())
    }

    /// A defence that holds against two moves more. Positions two moves before the end are by far the
    /// most, and proving one is about as much work as making every move to see what it promises, so
    /// the order is made without.
    fn find_holding_quickly(
        &mut self,
        position: &Chess,
        replies: &[Move],
        best: u16,
    ) -> Result<Option<Move>, Spent> {
        let map = CheckMap::of(position);
        let occupied = position.board().occupied();
        let mut open: Vec<(i32, Move)> = Vec::with_capacity(replies.len());
        for &mv in replies {
            let mut merit = self.promise(mv, map.as_ref(), position) + self.fame(mv, 2);
            if map.as_ref().is_some_and(|map| map.is_check(position, mv)) {
                // Few moves answer a check.
                merit += 56_000;
            }
            if let Some(role) = mv.capture() {
                let piece = role.of(!position.turn());
                let freedom = attacks::attacks(mv.to(), piece, occupied).count();
                merit += 2_000 * freedom as i32;
            }
            if pack(mv) == best {
                merit += 1 << 20;
            }
            open.push((-merit, mv));
        }
        open.sort_by_key(|(merit, _)| *merit);
        for (_, mv) in open {
            self.visit()?;
            if !self.attack(&played(position, mv), 2)? {
                return Ok(Some(mv));
            }
        }
        Ok(None)
    }

    /// A defence that holds. Every one is first made, to hear what the table knows and to see how
    /// much freedom it leaves the attacker: that decides how much work its proof is.
    fn find_holding(
        &mut self,
        position: &Chess,
        replies: &[Move],
        moves: u8,
        best: u16,
    ) -> Result<Option<Move>, Spent> {
        let map = CheckMap::of(position);
        let mut open: Vec<(i32, Move)> = Vec::with_capacity(replies.len());
        for &mv in replies {
            match self.outlook(position, mv, moves, map.as_ref())? {
                Outlook::Mated => {}
                Outlook::Holds => return Ok(Some(mv)),
                Outlook::Open(_) if pack(mv) == best => open.push((i32::MIN, mv)),
                Outlook::Open(merit) => open.push((-merit, mv)),
            }
        }
        open.sort_by_key(|(merit, _)| *merit);
        for (_, mv) in open {
            self.visit()?;
            if !self.attack(&played(position, mv), moves)? {
                return Ok(Some(mv));
            }
        }
        Ok(None)
    }

    fn remember_refuter(&mut self, moves: u8, mv: Move) {
        self.reward(DEFENDER, mv, moves);
        let pair = &mut self.refuters[level(moves)];
        if pair[0] != Some(mv) {
            pair[1] = pair[0];
            pair[0] = Some(mv);
        }
    }

    fn reward(&mut self, side: usize, mv: Move, moves: u8) {
        let merit = &mut self.history[side][from_to(mv)];
        *merit = merit.saturating_add(u32::from(moves) * u32::from(moves));
    }

    /// Every defence that the table does not know to lose to a mate in `moves`, likely refutations
    /// first.
    pub(super) fn ordered_defence(
        &mut self,
        position: &Chess,
        moves: u8,
    ) -> Result<Vec<Move>, Spent> {
        let map = CheckMap::of(position);
        let mut ranked = Vec::new();
        for &mv in &position.legal_moves() {
            match self.outlook(position, mv, moves, map.as_ref())? {
                Outlook::Mated => {}
                Outlook::Holds => ranked.push((i32::MIN, mv)),
                Outlook::Open(merit) => ranked.push((-merit, mv)),
            }
        }
        ranked.sort_by_key(|(merit, _)| *merit);
        Ok(ranked.into_iter().map(|(_, mv)| mv).collect())
    }

    /// What is to be expected of a defence against mate in `moves`: the table's word where it has
    /// one; else the better, the longer a mate is known to be away, the less freedom the attacker
    /// is left, and the more often the like has worked.
    fn outlook(
        &mut self,
        position: &Chess,
        mv: Move,
        moves: u8,
        map: Option<&CheckMap>,
    ) -> Result<Outlook, Spent> {
        let mut merit = self.promise(mv, map, position);
        if moves > 1 {
            self.visit()?;
            let after = played(position, mv);
            let known = self.table.look(&Key::of(&after));
            if known.mate != 0 && known.mate <= moves {
                return Ok(Outlook::Mated);
            }
            if known.no_mate >= moves {
                return Ok(Outlook::Holds);
            }
            merit += self.fame(mv, moves);
            merit += i32::from(known.no_mate) * 20_000 - freedom(&after) * 10_000;
        }
        Ok(Outlook::Open(merit))
    }

    /// What a defence shows before it is made.
    fn promise(&self, mv: Move, map: Option<&CheckMap>, position: &Chess) -> i32 {
        let mut merit = self.history[DEFENDER][from_to(mv)].min(1 << 14) as i32;
        if map.is_some_and(|map| map.is_check(position, mv)) {
            merit += 4_000;
        }
        if let Some(role) = mv.capture() {
            merit += 500 * worth(role);
        }
        if mv.role() == Role::King {
            merit += 600;
        }
        if mv.promotion() == Some(Role::Queen) {
            merit += 2_000;
        }
        merit
    }

    /// The merit of having just worked elsewhere with as many moves left.
    fn fame(&self, mv: Move, moves: u8) -> i32 {
        match self.refuters[level(moves)] {
            [Some(latest), _] if latest == mv => 10_000,
            [_, Some(before)] if before == mv => 8_000,
            _ => 0,
        }
    }

    /// A move that mates at once.
    pub(super) fn mate_in_one(&mut self, position: &Chess) -> Result<Option<Move>, Spent> {
        self.visit()?;
        let Some(map) = CheckMap::of(position) else {
            return Ok(None);
        };
        // The move that mated in a sister position first.
        if let Some(last) = self.mating
            && is_legal(position, last)
            && map.is_check(position, last)
            && map.is_mate(position, last)
        {
            return Ok(Some(last));
        }
        let mut checks = MoveList::new();
        map.checks(position, &mut checks);
        for &mv in &checks {
            self.visit()?;
            if map.is_mate(position, mv) {
                self.mating = Some(mv);
                return Ok(Some(mv));
            }
        }
        Ok(None)
    }
}

/// The position after a legal move.
#[inline(always)]
pub(super) fn played(position: &Chess, mv: Move) -> Chess {
    let mut after = position.clone();
    after.play_unchecked(mv);
    after
}

/// What is known of a defence before it is searched.
enum Outlook {
    /// It loses in time.
    Mated,
    /// It holds.
    Holds,
    /// Neither is known; the higher, the more likely it holds, and the less work it is to prove.
    Open(i32),
}

/// About how many moves the side to move has.
fn freedom(position: &Chess) -> i32 {
    if position.is_check() {
        return position.legal_moves().len() as i32;
    }
    let board = position.board();
    let (ours, occupied) = (position.us(), board.occupied());
    let mut moves = (ours & board.pawns()).count();
    for role in [
        Role::Knight,
        Role::Bishop,
        Role::Rook,
        Role::Queen,
        Role::King,
    ] {
        let piece = role.of(position.turn());
        for from in board.by_piece(piece) {
            moves += (attacks::attacks(from, piece, occupied) & !ours).count();
        }
    }
    moves as i32
}
