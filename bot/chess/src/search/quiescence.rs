//! The end of each line: captures and queen promotions, at first also checks, until the position is
//! quiet enough to be evaluated. In check every move is tried.

use shakmaty::{Position, Role};

use super::{
    super::Spent,
    DEEPEST, MATE, MATED_SOON,
    exchange::{gain, static_exchange_at_least},
    node::{Checks, Node},
    order::{Picker, is_quiet},
    table::{Bound, Entry, code},
    tree::{from_table, settles, to_table},
    worker::Worker,
};

/// What a capture may gain beyond the man it takes.
const DELTA_MARGIN: i32 = 200;

impl Worker<'_> {
    /// Value of `node` once it is quiet. `far` counts half-moves since the search proper.
    pub(super) fn quiescence(
        &mut self,
        node: &Node,
        mut alpha: i32,
        beta: i32,
        ply: usize,
        far: u32,
    ) -> Result<i32, Spent> {
        self.count_node()?;
        let (position, checked) = (&node.position, node.checked);
        let known = self.table.get(node.hash);
        if let Some(entry) = known.filter(|_| beta - alpha == 1 && position.halfmoves() < 80) {
            let score = from_table(entry.score, ply);
            if settles(entry.bound, score, alpha, beta) {
                return Ok(score);
            }
        }
        let static_eval = match known {
            Some(entry) => entry.static_eval,
            None => self.evaluate(node),
        };
        if ply >= DEEPEST - 1 {
            return Ok(static_eval);
        }
        let begin = alpha;
        let mut best = -MATE + ply as i32;
        let with_checks = !checked && far == 0;
        let moves = if checked || with_checks || node.pieces() == 0 {
            let all = position.legal_moves();
            if all.is_empty() {
                return Ok(if checked { best } else { 0 });
            }
            Some(all)
        } else {
            None
        };
        if !checked {
            best = static_eval;
            if best >= beta {
                return Ok(best);
            }
            alpha = alpha.max(best);
        }
        let moves = match moves {
            Some(mut all) => {
                if !checked {
                    let checks = with_checks.then(|| Checks::of(position)).flatten();
                    all.retain(|mv| {
                        mv.is_capture() && mv.promotion().is_none_or(|r| r == Role::Queen)
                            || mv.promotion() == Some(Role::Queen)
                            || is_quiet(*mv) && checks.as_ref().is_some_and(|c| c.gives(*mv))
                    });
                }
                all
            }
            None => {
                let mut some = position.capture_moves();
                some.extend(
                    position
                        .promotion_moves()
                        .into_iter()
                        .filter(|mv| !mv.is_capture()),
                );
                some.retain(|mv| mv.promotion().is_none_or(|role| role == Role::Queen));
                some
            }
        };
        let first = known.map_or(0, |entry| entry.best);
        let previous = self.previous_moves();
        let mut picker = Picker::new(&self.histories, position, moves, first, previous, ply);
        let mut best_move = 0;
        while let Some((mv, loses)) = picker.next(position) {
            if !checked {
                if loses {
                    // So do all that follow.
                    break;
                }
                if is_quiet(mv) {
                    if !static_exchange_at_least(position, mv, 0) {
                        continue;
                    }
                } else {
                    let hope = static_eval + gain(mv) + DELTA_MARGIN;
                    if hope <= alpha {
                        best = best.max(hope);
                        continue;
                    }
                    if code(mv) == first && !static_exchange_at_least(position, mv, 0) {
                        continue;
                    }
                }
            }
            let next = node.after(mv);
            self.make_move(node, mv);
            let score = self.quiescence(&next, -beta, -alpha, ply + 1, far + 1);
            self.unmake_move();
            let score = -score?;
            if score > best {
                best = score;
                if score > alpha {
                    alpha = score;
                    best_move = code(mv);
                }
            }
            if alpha >= beta {
                break;
            }
        }
        let bound = match best {
            b if b >= beta => Bound::Lower,
            b if b > begin => Bound::Exact,
            _ => Bound::Upper,
        };
        if best.abs() < MATED_SOON || checked {
            self.table.put(
                node.hash,
                Entry {
                    depth: 0,
                    score: to_table(best, ply),
                    static_eval,
                    bound,
                    best: best_move,
                },
            );
        }
        Ok(best)
    }
}
