//! The tree below the root: principal-variation search with extensions, reductions and pruning.

use std::cell::LazyCell;

use shakmaty::{Color, Move, MoveList, Position};

use super::{
    super::Spent,
    DEEPEST, MATE, MATED_SOON,
    exchange::static_exchange_at_least,
    node::{Checks, Node},
    order::{Picker, PreviousMoves, is_quiet},
    prune,
    table::{Bound, Entry, code},
    window::Window,
    worker::{INFINITE, Worker},
};

/// How a node is to be searched.
#[derive(Clone, Copy, Debug)]
pub(super) struct Visit {
    /// Half-moves to go.
    pub depth: i32,
    pub window: Window,
    /// Half-moves from the root.
    pub ply: usize,
    /// The node is expected to refute the move that led to it.
    pub cut_node: bool,
    /// A null move may be tried: none was just made, and none is being verified.
    pub null_move: bool,
}

/// Where a move stands among those searched at a node.
#[derive(Clone, Copy, Debug)]
pub(super) enum Place {
    First,
    /// Searched with this late-move reduction at first.
    Later {
        reduction: i32,
    },
}

/// A node about to be searched, and what is known of it before its moves are tried.
struct Evaluated<'a> {
    node: &'a Node,
    visit: Visit,
    static_eval: i32,
    /// The static evaluation, or what an earlier search found that is a better guess.
    estimate: i32,
    /// The side to move stands better than at its last move.
    improving: bool,
    /// The table's move, packed; 0 for none.
    table_move: u16,
}

impl Evaluated<'_> {
    /// Whether the node belongs to the principal variation, as far as is known.
    fn is_pv(&self) -> bool {
        self.visit.window.is_open()
    }

    /// Whether forward pruning is sound enough here; see [`prune`].
    fn may_prune(&self) -> bool {
        !self.is_pv() && !self.node.checked && self.visit.window.is_clear_of_mates()
    }
}

/// A move whose turn has come.
struct Candidate {
    mv: Move,
    quiet: bool,
    /// A capture that loses material.
    loses: bool,
    /// What the history tables say of a quiet move; 0 for others.
    history: i32,
}

/// What the moves of a node came to.
struct Found {
    score: i32,
    /// The last move that raised alpha.
    best: Option<Move>,
}

impl Worker<'_> {
    /// Value of `node` for the side to move, exact within the window; `line` becomes the best play.
    pub(super) fn alpha_beta(
        &mut self,
        node: &Node,
        mut visit: Visit,
        line: &mut Vec<Move>,
    ) -> Result<i32, Spent> {
        line.clear();
        if self.is_draw(node) {
            return Ok(0);
        }
        visit.window = visit.window.within_mate_distance(visit.ply);
        if visit.window.is_closed() {
            return Ok(visit.window.alpha);
        }
        // Check extension.
        visit.depth += i32::from(node.checked);
        if visit.depth <= 0 || visit.ply >= DEEPEST - 1 {
            return self.quiescence(node, visit.window, visit.ply, 0);
        }
        self.count_node()?;
        let known = self.table.get(node.hash);
        if let Some(score) = known.and_then(|entry| table_cutoff(node, visit, entry)) {
            return Ok(score);
        }
        let mut evaluated = self.static_evaluation(node, visit, known);
        if evaluated.may_prune() {
            if let Some(score) = reverse_futility(&evaluated) {
                return Ok(score);
            }
            if let Some(score) = self.razoring(&evaluated)? {
                return Ok(score);
            }
            if let Some(score) = self.null_move(&evaluated)? {
                return Ok(score);
            }
        }
        if evaluated.table_move == 0 && !node.checked {
            evaluated.visit.depth -= prune::internal_iterative_reduction(visit.depth);
        }
        let moves = node.position.legal_moves();
        if moves.is_empty() {
            return Ok(match node.checked {
                true => -MATE + visit.ply as i32,
                false => 0,
            });
        }
        let found = self.move_loop(&evaluated, moves, line)?;
        self.store(&evaluated, &found);
        Ok(found.score)
    }

    /// Static evaluation, from the table where it is known.
    fn static_evaluation<'a>(
        &mut self,
        node: &'a Node,
        visit: Visit,
        known: Option<Entry>,
    ) -> Evaluated<'a> {
        let ply = visit.ply;
        let static_eval = match known {
            Some(entry) => entry.static_eval,
            None => self.evaluate(node),
        };
        self.static_evals[ply] = static_eval;
        let estimate = match known {
            Some(entry) if entry.score.abs() < MATED_SOON => match entry.bound {
                Bound::Exact => entry.score,
                Bound::Lower => static_eval.max(entry.score),
                Bound::Upper => static_eval.min(entry.score),
            },
            _ => static_eval,
        };
        Evaluated {
            node,
            visit,
            static_eval,
            estimate,
            improving: !node.checked && (ply < 2 || static_eval > self.static_evals[ply - 2]),
            table_move: known.map_or(0, |entry| entry.best),
        }
    }

    /// Razoring: so far below the window only captures can help, and quiescence looks at those.
    fn razoring(&mut self, evaluated: &Evaluated<'_>) -> Result<Option<i32>, Spent> {
        let Visit {
            depth, window, ply, ..
        } = evaluated.visit;
        if prune::razoring_margin(depth)
            .is_none_or(|margin| evaluated.estimate + margin > window.alpha)
        {
            return Ok(None);
        }
        let score = self.quiescence(evaluated.node, Window::zero_above(window.alpha), ply, 0)?;
        Ok((score <= window.alpha).then_some(score))
    }

    /// Null move: a side that stays above the window though it passes needs no search.
    fn null_move(&mut self, evaluated: &Evaluated<'_>) -> Result<Option<i32>, Spent> {
        let (node, visit) = (evaluated.node, evaluated.visit);
        let beta = visit.window.beta;
        let above = evaluated.estimate - beta;
        let pieces = node.pieces();
        if !visit.null_move || visit.depth < prune::NULL_MOVE_DEPTH || above < 0 || pieces == 0 {
            return Ok(None);
        }
        let Some(passed) = node.after_null_move() else {
            return Ok(None);
        };
        let depth = visit.depth - prune::null_move_reduction(visit.depth, above);
        let reply = Visit {
            depth,
            window: -Window::zero_below(beta),
            ply: visit.ply + 1,
            cut_node: !visit.cut_node,
            null_move: false,
        };
        let mut line = Vec::new();
        let outer = self.make_null_move(node);
        let score = self.alpha_beta(&passed, reply, &mut line);
        self.unmake_null_move(outer);
        if -score? < beta {
            return Ok(None);
        }
        // In zugzwang passing beats every move: where that matters most, ask again with a move.
        if visit.depth < prune::NULL_MOVE_VERIFICATION_DEPTH && pieces > 1 {
            return Ok(Some(beta));
        }
        let verification = Visit {
            depth: depth.max(1),
            window: Window::zero_below(beta),
            null_move: false,
            ..visit
        };
        let score = self.alpha_beta(node, verification, &mut line)?;
        Ok((score >= beta).then_some(beta))
    }

    /// Tries the moves, best first, until one of them refutes the move that led here.
    fn move_loop(
        &mut self,
        evaluated: &Evaluated<'_>,
        moves: MoveList,
        line: &mut Vec<Move>,
    ) -> Result<Found, Spent> {
        let (node, visit) = (evaluated.node, evaluated.visit);
        let position = &node.position;
        let (turn, previous) = (position.turn(), self.previous_moves());
        let first = evaluated.table_move;
        let mut picker = Picker::new(&self.histories, position, moves, first, previous, visit.ply);
        let checks = LazyCell::new(|| Checks::of(position));
        let gives_check = |mv| checks.as_ref().is_some_and(|checks| checks.gives(mv));
        let may_prune = evaluated.may_prune();
        let mut window = visit.window;
        let mut found = Found {
            score: -INFINITE,
            best: None,
        };
        let (mut searched, mut quiets) = (Vec::new(), 0);
        let mut rest = Vec::new();
        while let Some((mv, loses)) = picker.next(position) {
            let candidate = self.candidate(turn, (mv, loses), previous);
            let quiet = candidate.quiet;
            if may_prune
                && found.score > -MATED_SOON
                && is_prunable(evaluated, &candidate, quiets)
                && !(quiet && gives_check(mv))
            {
                quiets += usize::from(quiet);
                continue;
            }
            let next = node.after(mv);
            let place = match searched.len() {
                0 => Place::First,
                number => Place::Later {
                    reduction: self.late_move_reduction(evaluated, &candidate, number, &next),
                },
            };
            self.make_move(node, mv);
            let score = self.search_move(&next, Visit { window, ..visit }, place, &mut rest);
            self.unmake_move();
            let score = score?;
            quiets += usize::from(quiet);
            found.score = found.score.max(score);
            if score > window.alpha {
                window.alpha = score;
                found.best = Some(mv);
                line.clear();
                line.push(mv);
                line.append(&mut rest);
            }
            if window.is_closed() {
                self.histories
                    .record_cutoff(turn, mv, &searched, previous, visit.ply, visit.depth);
                break;
            }
            searched.push(mv);
        }
        Ok(found)
    }

    fn candidate(
        &self,
        turn: Color,
        (mv, loses): (Move, bool),
        previous: PreviousMoves,
    ) -> Candidate {
        let quiet = is_quiet(mv);
        let history = match quiet {
            true => self.histories.quiet_history(turn, mv, previous),
            false => 0,
        };
        Candidate {
            mv,
            quiet,
            loses,
            history,
        }
    }

    /// Late-move reduction: how much less deep the move searched as `number` (from 0) is tried at
    /// first. `next` is the position after it.
    fn late_move_reduction(
        &self,
        evaluated: &Evaluated<'_>,
        candidate: &Candidate,
        number: usize,
        next: &Node,
    ) -> i32 {
        let visit = evaluated.visit;
        let late = number >= 2 && (candidate.quiet || candidate.loses);
        if !late || visit.depth < 3 || evaluated.node.checked {
            return 0;
        }
        let mut reduction = self.reductions.of(visit.depth, number);
        reduction -= i32::from(evaluated.is_pv()) + i32::from(next.checked);
        reduction += i32::from(!evaluated.improving) + i32::from(visit.cut_node);
        if candidate.quiet {
            reduction -= i32::from(self.histories.is_killer(candidate.mv, visit.ply));
            reduction -= candidate.history / 12_000;
        } else {
            reduction -= 1;
        }
        reduction.clamp(0, visit.depth - 2)
    }

    /// Value of the move that leads to `next`, for the side that makes it; `visit` is the one of the
    /// node before, with the window that is left. A move that is not the first is expected to be no
    /// better: a zero window asks whether it is, first with its reduction, and the whole window only
    /// where it surprises.
    pub(super) fn search_move(
        &mut self,
        next: &Node,
        visit: Visit,
        place: Place,
        line: &mut Vec<Move>,
    ) -> Result<i32, Spent> {
        let Visit {
            window, cut_node, ..
        } = visit;
        let full = Visit {
            depth: visit.depth - 1,
            window: -window,
            ply: visit.ply + 1,
            cut_node: false,
            null_move: true,
        };
        let Place::Later { reduction } = place else {
            let cut_node = !window.is_open() && !cut_node;
            return Ok(-self.alpha_beta(next, Visit { cut_node, ..full }, line)?);
        };
        let zero = Visit {
            window: -Window::zero_above(window.alpha),
            cut_node: window.is_open() || !cut_node,
            ..full
        };
        if reduction > 0 {
            let reduced = Visit {
                depth: zero.depth - reduction,
                cut_node: true,
                ..zero
            };
            let score = -self.alpha_beta(next, reduced, line)?;
            if score <= window.alpha {
                return Ok(score);
            }
        }
        let score = -self.alpha_beta(next, zero, line)?;
        if score <= window.alpha || score >= window.beta {
            return Ok(score);
        }
        Ok(-self.alpha_beta(next, full, line)?)
    }

    fn store(&mut self, evaluated: &Evaluated<'_>, found: &Found) {
        let visit = evaluated.visit;
        let entry = Entry {
            depth: visit.depth,
            score: found.score,
            static_eval: evaluated.static_eval,
            bound: Bound::of(found.score, visit.window),
            best: found.best.map_or(evaluated.table_move, code),
        };
        self.table
            .put(evaluated.node.hash, entry.counted_from(visit.ply));
    }
}

/// Table cutoff: an earlier search at least as deep has settled the question. Not on the principal
/// variation, whose line is wanted.
fn table_cutoff(node: &Node, visit: Visit, entry: Entry) -> Option<i32> {
    if visit.window.is_open() || entry.depth < visit.depth || node.is_near_fifty_moves() {
        return None;
    }
    entry.cutoff(visit.window, visit.ply)
}

/// Reverse futility: so far above the window the side to move will not lose as much. Without pieces
/// it may be in zugzwang.
fn reverse_futility(evaluated: &Evaluated<'_>) -> Option<i32> {
    let Visit { depth, window, .. } = evaluated.visit;
    let margin = prune::reverse_futility_margin(depth, evaluated.improving)?;
    let estimate = evaluated.estimate;
    (estimate < MATED_SOON && estimate - margin >= window.beta && evaluated.node.pieces() > 0)
        .then_some(estimate)
}

/// Whether a move that gives no check may be left out, where forward pruning is allowed. `quiets`
/// quiet moves came before it.
fn is_prunable(evaluated: &Evaluated<'_>, candidate: &Candidate, quiets: usize) -> bool {
    let Candidate {
        mv, quiet, history, ..
    } = *candidate;
    if !quiet && !candidate.loses {
        return false;
    }
    let (depth, alpha) = (evaluated.visit.depth, evaluated.visit.window.alpha);
    let late = || quiets >= prune::late_move_count(depth, evaluated.improving);
    let futile = || {
        prune::futility_margin(depth)
            .is_some_and(|margin| evaluated.estimate + margin + history / 256 <= alpha)
    };
    let failed_before = || prune::history_floor(depth).is_some_and(|floor| history < floor);
    let loses_much = || {
        prune::exchange_margin(depth, quiet)
            .is_some_and(|most| !static_exchange_at_least(&evaluated.node.position, mv, -most))
    };
    quiet && (late() || futile() || failed_before()) || loses_much()
}
