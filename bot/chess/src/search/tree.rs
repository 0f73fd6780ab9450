//! The tree below the root: principal-variation search with extensions, reductions and pruning.

use shakmaty::{Move, Position};

use super::{
    super::Spent,
    DEEPEST, MATE, MATED_SOON,
    node::{Checks, Node},
    order::{Picker, is_quiet},
    prune,
    table::{Bound, Entry, code},
    worker::{INFINITE, Worker},
};

/// How a position is to be searched, apart from depth and window.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Manner {
    /// The position is expected to refute the move that led to it.
    pub cut: bool,
    /// No pass may be tried: one was just made, or its verdict is being verified.
    pub no_null_move: bool,
}

impl Manner {
    fn plain(cut: bool) -> Self {
        Self {
            cut,
            no_null_move: false,
        }
    }
}

impl Worker<'_> {
    /// One move: with a narrow window and a reduction first, and in full when it surprises.
    #[allow(clippy::too_many_arguments)]
    pub(super) fn search_move(
        &mut self,
        next: &Node,
        depth: i32,
        reduction: i32,
        first: bool,
        cut: bool,
        (alpha, beta): (i32, i32),
        ply: usize,
        line: &mut Vec<Move>,
    ) -> Result<i32, Spent> {
        let below = ply + 1;
        let narrow = (-alpha - 1, -alpha);
        let wide = beta - alpha > 1;
        if first {
            let manner = Manner::plain(!wide && !cut);
            return Ok(-self.alpha_beta(next, depth, (-beta, -alpha), below, manner, line)?);
        }
        let mut score = if reduction > 0 {
            let manner = Manner::plain(true);
            -self.alpha_beta(next, depth - reduction, narrow, below, manner, line)?
        } else {
            INFINITE
        };
        if score > alpha {
            let manner = Manner::plain(wide || !cut);
            score = -self.alpha_beta(next, depth, narrow, below, manner, line)?;
        }
        if score > alpha && score < beta {
            let manner = Manner::plain(false);
            score = -self.alpha_beta(next, depth, (-beta, -alpha), below, manner, line)?;
        }
        Ok(score)
    }

    /// Value for the side to move, exact within the window; `line` becomes the best play.
    pub(super) fn alpha_beta(
        &mut self,
        node: &Node,
        depth: i32,
        (alpha, beta): (i32, i32),
        ply: usize,
        manner: Manner,
        line: &mut Vec<Move>,
    ) -> Result<i32, Spent> {
        line.clear();
        let position = &node.position;
        if self.is_draw(node) {
            return Ok(0);
        }
        // Nothing found below can beat a mate that is already shorter.
        let (mut alpha, beta) = (
            alpha.max(-MATE + ply as i32),
            beta.min(MATE - ply as i32 - 1),
        );
        if alpha >= beta {
            return Ok(alpha);
        }
        let checked = node.checked;
        let mut depth = if checked { depth + 1 } else { depth };
        if depth <= 0 || ply >= DEEPEST - 1 {
            return self.quiescence(node, alpha, beta, ply, 0);
        }
        self.count_node()?;
        let wide = beta - alpha > 1;
        let known = self.table.get(node.hash);
        if let Some(entry) = known.filter(|entry| !wide && entry.depth >= depth) {
            let score = from_table(entry.score, ply);
            // Close to the fifty-move limit an old score may hide a draw.
            if settles(entry.bound, score, alpha, beta) && position.halfmoves() < 80 {
                return Ok(score);
            }
        }
        let plain = match known {
            Some(entry) => entry.static_eval,
            None => self.evaluate(node),
        };
        self.static_evals[ply] = plain;
        // What a search found before is a better guess than the bare evaluation.
        let still = match known {
            Some(entry) if entry.score.abs() < MATED_SOON => match entry.bound {
                Bound::Exact => entry.score,
                Bound::Lower => plain.max(entry.score),
                Bound::Upper => plain.min(entry.score),
            },
            _ => plain,
        };
        let improving = !checked && (ply < 2 || plain > self.static_evals[ply - 2]);
        let usual = alpha > -MATED_SOON && beta < MATED_SOON;
        let mut rest = Vec::new();
        if !wide
            && !checked
            && usual
            && let Some(score) = self.without_moves(
                node,
                depth,
                (alpha, beta),
                ply,
                manner,
                (still, improving),
                &mut rest,
            )?
        {
            return Ok(score);
        }
        let first = known.map_or(0, |entry| entry.best);
        if first == 0 && !checked && depth >= 5 {
            // Without a move to begin with, a shallower look finds one at less cost.
            depth -= 1;
        }
        let moves = position.legal_moves();
        if moves.is_empty() {
            return Ok(if checked { -MATE + ply as i32 } else { 0 });
        }
        let previous = self.previous_moves();
        let turn = position.turn();
        let mut picker = Picker::new(&self.histories, position, moves, first, previous, ply);
        let mut checks: Option<Option<Checks>> = None;
        let (mut best, mut best_move, begin) = (-INFINITE, None, alpha);
        let mut tried: Vec<Move> = Vec::new();
        let (mut number, mut quiets) = (0, 0);
        while let Some((mv, loses)) = picker.next(position) {
            let quiet = is_quiet(mv);
            let past = if quiet {
                self.histories.quiet_history(turn, mv, previous)
            } else {
                0
            };
            if !wide && !checked && best > -MATED_SOON && usual && (quiet || loses) {
                let poor = if quiet {
                    quiets >= prune::late_move_count(depth, improving)
                        || prune::futility_margin(depth)
                            .is_some_and(|hope| still + hope + past / 256 <= alpha)
                        || depth <= 3 && past < -6_000 * depth
                } else {
                    false
                } || prune::exchange_margin(depth, quiet).is_some_and(|most| {
                    !super::exchange::static_exchange_at_least(position, mv, -most)
                });
                if poor
                    && !(quiet
                        && checks
                            .get_or_insert_with(|| Checks::of(position))
                            .as_ref()
                            .is_some_and(|checks| checks.gives(mv)))
                {
                    quiets += usize::from(quiet);
                    continue;
                }
            }
            let next = node.after(mv);
            let mut reduction = 0;
            if number >= 2 && depth >= 3 && !checked && (quiet || loses) {
                reduction = self.reductions.of(depth, number);
                reduction -= i32::from(wide) + i32::from(next.checked);
                reduction += i32::from(!improving) + i32::from(manner.cut);
                if quiet {
                    reduction -= i32::from(self.histories.is_killer(mv, ply));
                    reduction -= past / 12_000;
                } else {
                    reduction -= 1;
                }
                reduction = reduction.clamp(0, depth - 2);
            }
            self.make_move(node, mv);
            let score = self.search_move(
                &next,
                depth - 1,
                reduction,
                number == 0,
                manner.cut,
                (alpha, beta),
                ply,
                &mut rest,
            );
            self.unmake_move();
            let score = score?;
            number += 1;
            quiets += usize::from(quiet);
            if score > best {
                best = score;
                if score > alpha {
                    best_move = Some(mv);
                    line.clear();
                    line.push(mv);
                    line.append(&mut rest);
                    alpha = score;
                }
            }
            if alpha >= beta {
                self.histories
                    .record_cutoff(turn, mv, &tried, previous, ply, depth);
                break;
            }
            tried.push(mv);
        }
        let bound = match best {
            b if b >= beta => Bound::Lower,
            b if b > begin => Bound::Exact,
            _ => Bound::Upper,
        };
        self.table.put(
            node.hash,
            Entry {
                depth,
                score: to_table(best, ply),
                static_eval: plain,
                bound,
                best: best_move.map_or(first, code),
            },
        );
        Ok(best)
    }

    /// What can be said before any move is tried, from the evaluation alone or by passing.
    #[allow(clippy::too_many_arguments)]
    fn without_moves(
        &mut self,
        node: &Node,
        depth: i32,
        (alpha, beta): (i32, i32),
        ply: usize,
        manner: Manner,
        (still, improving): (i32, bool),
        rest: &mut Vec<Move>,
    ) -> Result<Option<i32>, Spent> {
        let pieces = node.pieces();
        if pieces > 0
            && still < MATED_SOON
            && prune::reverse_futility_margin(depth, improving)
                .is_some_and(|margin| still - margin >= beta)
        {
            return Ok(Some(still));
        }
        if prune::razoring_margin(depth).is_some_and(|margin| still + margin <= alpha) {
            let score = self.quiescence(node, alpha, alpha + 1, ply, 0)?;
            if score <= alpha {
                return Ok(Some(score));
            }
        }
        if manner.no_null_move || depth < 3 || still < beta || pieces == 0 {
            return Ok(None);
        }
        let Some(passed) = node.after_null_move() else {
            return Ok(None);
        };
        let left = depth - prune::null_move_reduction(depth, still - beta);
        let no_null_move = Manner {
            cut: !manner.cut,
            no_null_move: true,
        };
        let floor = self.make_null_move(node);
        let score = self.alpha_beta(
            &passed,
            left,
            (-beta, -beta + 1),
            ply + 1,
            no_null_move,
            rest,
        );
        self.unmake_null_move(floor);
        if -score? < beta {
            return Ok(None);
        }
        // Zugzwang would make the pass lie: where it matters most, ask again with a move.
        if depth < 10 && pieces > 1 {
            return Ok(Some(beta));
        }
        let no_null_move = Manner {
            no_null_move: true,
            ..manner
        };
        let score =
            self.alpha_beta(node, left.max(1), (beta - 1, beta), ply, no_null_move, rest)?;
        Ok((score >= beta).then_some(beta))
    }
}

/// Whether a bound ends the search of a window.
pub(super) fn settles(bound: Bound, score: i32, alpha: i32, beta: i32) -> bool {
    match bound {
        Bound::Exact => true,
        Bound::Lower => score >= beta,
        Bound::Upper => score <= alpha,
    }
}

/// Mates are kept in the table as counted from the position, in the tree as counted from the root.
pub(super) fn to_table(score: i32, ply: usize) -> i32 {
    match score {
        MATED_SOON.. => score + ply as i32,
        s if s <= -MATED_SOON => score - ply as i32,
        s => s,
    }
}

pub(super) fn from_table(score: i32, ply: usize) -> i32 {
    match score {
        MATED_SOON.. => score - ply as i32,
        s if s <= -MATED_SOON => score + ply as i32,
        s => s,
    }
}
