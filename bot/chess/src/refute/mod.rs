//! Why a move is wrong: the refuting line, and one sentence of reason built from the position.
//!
//! For a mate the defence is proved to hold by the prover before anything is said; for a win or a draw
//! it is the search's best reply, and called so. [`reason`] finds out what the defence does on the
//! board, [`words`] says it, [`scene`] points it out. Nothing here shows what the right move is: the
//! line begins with the defence and ends there, and no square is named that only the solution knows.

mod exchange;
mod reason;
mod scene;
mod told;

use shakmaty::{Chess, Color, Move, Position, Role};

pub(super) use exchange::settled;
pub use reason::{Back, Facts, LostGuard, Reason, reasons};
pub(super) use scene::arrival as arrived;

use super::{
    Budget, Solution, Spent,
    fact::{Because, Why},
    pieces::worth,
    prove,
    scene::Scene,
};

/// How many of the defences that hold are looked at for one that explains itself.
const CANDIDATES: usize = 16;
/// How much plainer a reason must be for a defence that gives material away to be preferred.
const GIVEN_AWAY: usize = 3;
/// How much work may go into finding out whether a wrong move mates after all, only later.
const SLOWER_NODES: u64 = 150_000;

/// Proof that a move does not meet the stipulation, with what to say of it.
#[derive(Clone, Debug)]
pub struct Refutation {
    /// The position after the move that is refuted.
    pub after: Chess,
    /// The line, the defence first. Empty when there is nothing to play (stalemate).
    pub line: Vec<Move>,
    /// What the line shows, the main thing first.
    pub reasons: Vec<Reason>,
    /// The reasons as they are told; empty when there is none to show.
    pub why: Why,
    /// The same without what is said of a mate that comes too late.
    pub point: Why,
    /// A picture of it.
    pub scene: Scene,
}

impl Refutation {
    /// Whether the reason speaks of the wrong move itself, so that any defence would do.
    pub fn is_about_the_move(&self) -> bool {
        matches!(
            self.reasons
                .iter()
                .find(|r| !matches!(r, Reason::Slower { .. })),
            Some(Reason::NoThreat | Reason::NoCheck | Reason::Stalemate)
        )
    }
}

/// What may not be spoken of: squares on which the key or the main line arrives.
#[derive(Clone, Debug, Default)]
pub struct Sealed {
    arrivals: shakmaty::Bitboard,
}

impl Sealed {
    /// The squares that the keys and the solver's moves of the main line reach.
    pub fn of(solution: &Solution) -> Self {
        let mut sealed = Self::default();
        for branch in &solution.keys {
            sealed.arrivals.add(scene::arrival(branch.mv));
        }
        for mv in solution.main_line().into_iter().step_by(2) {
            sealed.arrivals.add(scene::arrival(mv));
        }
        sealed
    }

    /// Whether a square may be named as the point of the member's own threat.
    pub fn may_name(&self, square: shakmaty::Square) -> bool {
        !self.arrivals.contains(square)
    }
}

/// Whether `mv`, played in `before` with `left` moves to mate in (itself counted), fails; `None` is a
/// proof that it mates in time.
///
/// # Errors
/// [`Spent`] when the budget ended before it was known.
pub fn mate_move(
    before: &Chess,
    mv: Move,
    left: u8,
    sealed: &Sealed,
    budget: &Budget<'_>,
) -> Result<Option<Refutation>, Spent> {
    mate_move_by(before, mv, left, sealed, None, budget)
}

/// As [`mate_move`]; the refutation is by `defence` where that holds.
///
/// # Errors
/// As [`mate_move`].
pub(super) fn mate_move_by(
    before: &Chess,
    mv: Move,
    left: u8,
    sealed: &Sealed,
    defence: Option<Move>,
    budget: &Budget<'_>,
) -> Result<Option<Refutation>, Spent> {
    let mut after = before.clone();
    after.play_unchecked(mv);
    if after.is_checkmate() {
        return Ok(None);
    }
    if after.is_stalemate() {
        let facts = Facts::new(before, mv, &after, None, left);
        return Ok(Some(shown(&facts, vec![Reason::Stalemate])));
    }
    let left_after = left.saturating_sub(1);
    let mut holding = prove::refutations(&after, left_after, budget)?;
    if holding.is_empty() {
        return Ok(None);
    }
    if let Some(defence) = defence.filter(|defence| holding.contains(defence)) {
        holding = vec![defence];
    }
    let slower = slower_mate(&after, left, budget);
    let held = settled(&after, after.turn());
    let mut threat = std::cell::OnceCell::new();
    let candidates = holding.iter().take(CANDIDATES).enumerate();
    let told_apart = candidates.map(|(place, &defence)| {
        let mut facts = Facts::new(before, mv, &after, Some(defence), left);
        facts.threat = threat.clone();
        let found = reasons(&facts, sealed);
        threat.clone_from(&facts.threat);
        let mut vague = found.first().map_or(usize::MAX, Reason::vagueness);
        let settled = settled(&facts.beyond, after.turn());
        // Taking something elsewhere does not show how the threat of a quiet move is met.
        let elsewhere = matches!(
            found.first(),
            Some(Reason::Takes {
                the_mover: false,
                ..
            })
        );
        if elsewhere && !after.is_check() {
            vague = vague.saturating_add(1);
        }
        // A check that throws a piece away holds the mate up, but nobody would play it.
        if settled < held - 1 {
            vague = vague.saturating_add(GIVEN_AWAY);
        }
        // Where any move would do, the one that wins most is shown; otherwise the order of conviction
        // decides between reasons that are equally plain.
        let idle = found.first() == Some(&Reason::NoThreat);
        // Nobody promotes to less where a queen does as well.
        let odd = defence.promotion().is_some_and(|to| to != Role::Queen);
        (
            (vague, if idle { -settled } else { 0 }, odd, place),
            facts,
            found,
        )
    });
    let Some((_, facts, mut found)) = told_apart.min_by_key(|(rank, ..)| *rank) else {
        return Ok(None);
    };
    if let Some(moves) = slower {
        found.insert(0, Reason::Slower { moves });
    }
    Ok(Some(shown(&facts, found)))
}

/// The length of the mate that the move still forces, when it is one or two moves too long and
/// that is soon found out.
fn slower_mate(after: &Chess, left: u8, budget: &Budget<'_>) -> Option<u8> {
    let over = || budget.spend(0).is_err();
    for more in 0..2u8 {
        let small = Budget::unlimited()
            .nodes(SLOWER_NODES)
            .table_bytes(1 << 20)
            .until(&over);
        let length = left + more;
        let held = prove::refutation(after, length, &small);
        let _ = budget.spend(small.used());
        match held {
            Ok(None) => return Some(length + 1),
            Ok(Some(_)) => {}
            Err(Spent) => return None,
        }
    }
    None
}

fn shown(facts: &Facts, reasons: Vec<Reason>) -> Refutation {
    Refutation {
        after: facts.after.clone(),
        line: facts.defence.into_iter().collect(),
        why: told::whole(facts, &reasons),
        point: told::point(facts, &reasons).into(),
        scene: scene::of(facts, &reasons),
        reasons,
    }
}

/// What a capture does, where the reply to `mv` is one.
pub(super) fn capture_told(
    before: &Chess,
    mv: Move,
    after: &Chess,
    reply: Move,
) -> Option<Vec<Because>> {
    let facts = Facts::new(before, mv, after, Some(reply), u8::MAX);
    let reason = reason::capture(&facts)?;
    Some(told::point(&facts, &[reason]))
}

/// Material in pawns, the side's own less the other's; kings do not count. Common practice.
pub(super) fn balance(position: &Chess, side: Color) -> i32 {
    let count = |color| {
        let material = position.board().material_side(color);
        let pieces = Role::ALL.into_iter();
        pieces
            .map(|role| i32::from(material[role]) * worth(role))
            .sum::<i32>()
    };
    count(side) - count(!side)
}

#[cfg(test)]
mod tests;
