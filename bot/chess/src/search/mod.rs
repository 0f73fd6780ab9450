//! The searcher for advantage: alpha-beta with a tapered evaluation, for `+` and `=` tasks.
//!
//! Iterative deepening ([`worker`]) over a principal-variation search ([`tree`]) with a transposition
//! table ([`table`]), moves ordered by exchanges and by what refuted before ([`order`]), check
//! extensions, null move (never in check, without pieces, or twice running; verified where zugzwang is
//! likely), late-move reductions that are searched again when they surprise, and forward pruning
//! ([`prune`]). Each line ends in captures and first checks ([`quiescence`]) and the evaluation
//! ([`evaluate`]). First moves are never reduced or pruned.
//!
//! It judges. Depth counts moves as searched before reductions, so a judgement at a depth has looked at
//! the likely lines so deep and at unlikely ones less. A mate it finds is a mate, as no move of a mated
//! side is left out, but a shorter one may exist; even that it calls a judgement: proofs are the
//! prover's.

mod evaluate;
mod exchange;
mod node;
mod order;
mod prune;
mod quiescence;
mod table;
mod tree;
mod window;
mod worker;

use std::thread;

use shakmaty::{Chess, Move, Position};

use super::Budget;
use table::Table;
use worker::Worker;

/// A judgement of a position by search, from the view of the side to move.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Score {
    /// Hundredths of a pawn.
    Cp(i32),
    /// Mates in this many moves (positive) or is mated in this many (negative or zero).
    Mate(i32),
}

impl Score {
    /// One scale for both kinds, larger is better for the side to move: mates lie beyond every
    /// evaluation, the shorter the further.
    pub fn rank(self) -> i32 {
        match self {
            Self::Cp(value) => value,
            Self::Mate(moves) if moves > 0 => MATE - moves,
            Self::Mate(moves) => -MATE - moves,
        }
    }

    fn of(value: i32) -> Self {
        match value {
            MATED_SOON.. => Self::Mate((MATE - value + 1) / 2),
            v if v <= -MATED_SOON => Self::Mate(-((MATE + v) / 2)),
            v => Self::Cp(v),
        }
    }
}

/// Value of being mated at once; a mate `n` half-moves away is worth `MATE - n`.
const MATE: i32 = 32_000;
/// Beyond this a value is a mate.
const MATED_SOON: i32 = MATE - 512;
/// The deepest a line may go, in half-moves.
const DEEPEST: usize = 128;

/// One line of play with its score, best first.
#[derive(Clone, Debug)]
pub struct Ranked {
    /// The line; its first move is the one ranked.
    pub line: Vec<Move>,
    /// Score for the side to move at the root.
    pub score: Score,
}

/// What a search found.
#[derive(Clone, Debug)]
pub struct Judged {
    /// The best lines, best first; as many as were asked for and exist.
    pub lines: Vec<Ranked>,
    /// The last depth finished, in half-moves.
    pub depth: u32,
    /// Positions visited.
    pub nodes: u64,
}

/// Searches `position` to `depth` half-moves at most, or until the budget ends (the last finished
/// depth counts), and ranks the `lines` best first moves.
///
/// With one line, a better move that the unfinished depth has found takes the place of the last one's.
///
/// With one thread the result depends on the position and the limits only. Further threads search the
/// same tree and share the table, which deepens the search but lets runs differ.
///
/// ```
/// use sealed_move_chess::{Budget, parse_fen, search::{Score, search}};
///
/// let position = parse_fen("7k/8/8/8/8/8/1R6/R3K3 w - -")?.position;
/// let judged = search(&position, 6, 1, &Budget::unlimited());
/// assert!(matches!(judged.lines[0].score, Score::Mate(_)));
/// # Ok::<(), sealed_move_chess::PositionError>(())
/// ```
pub fn search(position: &Chess, depth: u32, lines: usize, budget: &Budget<'_>) -> Judged {
    deepen(position, &[], depth, lines, budget, &mut |_| {})
}

/// [`search`], with the positions that led here (their repetition is a draw), telling `tell` each
/// finished depth.
pub fn deepen(
    position: &Chess,
    before: &[Chess],
    depth: u32,
    lines: usize,
    budget: &Budget<'_>,
    tell: &mut dyn FnMut(&Judged),
) -> Judged {
    let table = Table::new(budget.table_size());
    let over = std::sync::atomic::AtomicBool::new(false);
    let depth = depth.clamp(1, DEEPEST as u32 - 28);
    thread::scope(|scope| {
        for helper in 1..budget.thread_count() {
            let (table, over) = (&table, &over);
            scope.spawn(move || {
                // Helpers only feed the table; starting at different depths keeps them apart.
                let mut worker = Worker::new(position, before, table, budget, over);
                for depth in (1 + helper as u32 % 2)..=DEEPEST as u32 - 28 {
                    if worker.rank(depth as i32, 1, &[]).is_err() {
                        break;
                    }
                }
            });
        }
        let mut worker = Worker::new(position, before, &table, budget, &over);
        let mut best = Judged {
            lines: Vec::new(),
            depth: 0,
            nodes: 0,
        };
        for depth in 1..=depth {
            let Ok(ranked) = worker.rank(depth as i32, lines, &best.lines) else {
                break;
            };
            best = Judged {
                lines: ranked,
                depth,
                nodes: worker.nodes(),
            };
            tell(&best);
            // A mate shorter than the depth just finished will not change any more.
            let settled = |ranked: &Ranked| matches!(ranked.score, Score::Mate(n) if 2 * n.unsigned_abs() <= depth);
            if best.lines.is_empty() || best.lines.iter().all(settled) {
                break;
            }
        }
        over.store(true, std::sync::atomic::Ordering::Relaxed);
        if let Some(ranked) = worker.partial()
            && best.depth > 0
        {
            best.lines = vec![ranked];
        }
        if best.lines.is_empty() {
            // Not even one half-move was finished: any legal move, worth nothing known.
            best.lines
                .extend(position.legal_moves().first().map(|&mv| Ranked {
                    line: vec![mv],
                    score: Score::Cp(0),
                }));
        }
        best.nodes = worker.nodes();
        best
    })
}

#[cfg(test)]
mod tests;
