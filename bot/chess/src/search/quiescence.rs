//! Quiescence search, the end of each line: captures and queen promotions, at first also checks, until
//! the position is quiet enough to be evaluated. In check every move is tried.

use shakmaty::{Chess, Move, MoveList, Position, Role};

use super::{
    super::Spent,
    DEEPEST, MATE, MATED_SOON,
    exchange::{gain, static_exchange_at_least},
    node::{Checks, Node},
    order::{Picker, is_quiet},
    table::{Bound, Entry, code},
    window::Window,
    worker::Worker,
};

/// Delta pruning: what a capture may gain beyond what it takes.
const DELTA_MARGIN: i32 = 200;

impl Worker<'_> {
    /// Value of `node` once it is quiet. `beyond` counts half-moves since the search proper.
    pub(super) fn quiescence(
        &mut self,
        node: &Node,
        mut window: Window,
        ply: usize,
        beyond: u32,
    ) -> Result<i32, Spent> {
        self.count_node()?;
        let (position, checked) = (&node.position, node.checked);
        let known = self.table.get(node.hash);
        if !window.is_open()
            && !node.is_near_fifty_moves()
            && let Some(score) = known.and_then(|entry| entry.cutoff(window, ply))
        {
            return Ok(score);
        }
        let static_eval = match known {
            Some(entry) => entry.static_eval,
            None => self.evaluate(node),
        };
        if ply >= DEEPEST - 1 {
            return Ok(static_eval);
        }
        let asked = window;
        let mut best = -MATE + ply as i32;
        let with_checks = !checked && beyond == 0;
        // All moves are listed only where they are tried, or to see stalemate: pieces nearly always
        // have a move.
        let all = (checked || with_checks || node.pieces() == 0).then(|| position.legal_moves());
        if all.as_ref().is_some_and(|all| all.is_empty()) {
            return Ok(if checked { best } else { 0 });
        }
        if !checked {
            // Stand pat: the side to move need not go on taking.
            best = static_eval;
            if best >= window.beta {
                return Ok(best);
            }
            window.alpha = window.alpha.max(best);
        }
        let moves = match all {
            Some(mut all) => {
                if !checked {
                    retain_forcing(&mut all, position, with_checks);
                }
                all
            }
            None => captures(position),
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
                    let hoped = static_eval + gain(mv) + DELTA_MARGIN;
                    if hoped <= window.alpha {
                        best = best.max(hoped);
                        continue;
                    }
                    if code(mv) == first && !static_exchange_at_least(position, mv, 0) {
                        continue;
                    }
                }
            }
            let next = node.after(mv);
            self.make_move(node, mv);
            let score = self.quiescence(&next, -window, ply + 1, beyond + 1);
            self.unmake_move();
            let score = -score?;
            if score > best {
                best = score;
                if score > window.alpha {
                    window.alpha = score;
                    best_move = code(mv);
                }
            }
            if window.is_closed() {
                break;
            }
        }
        if best.abs() < MATED_SOON || checked {
            let entry = Entry {
                depth: 0,
                score: best,
                static_eval,
                bound: Bound::of(best, asked),
                best: best_move,
            };
            self.table.put(node.hash, entry.counted_from(ply));
        }
        Ok(best)
    }
}

/// Leaves the captures and queen promotions of all moves, and the quiet checks where they are wanted.
fn retain_forcing(all: &mut MoveList, position: &Chess, with_checks: bool) {
    let checks = with_checks.then(|| Checks::of(position)).flatten();
    all.retain(|&mut mv| match is_quiet(mv) {
        true => checks.as_ref().is_some_and(|checks| checks.gives(mv)),
        false => promotes_well(mv),
    });
}

/// Captures and queen promotions, made without the other moves.
fn captures(position: &Chess) -> MoveList {
    let mut moves = position.capture_moves();
    let promotions = position.promotion_moves().into_iter();
    moves.extend(promotions.filter(|mv| !mv.is_capture()));
    moves.retain(|&mut mv| promotes_well(mv));
    moves
}

/// Promotes to nothing less than a queen.
fn promotes_well(mv: Move) -> bool {
    mv.promotion().is_none_or(|role| role == Role::Queen)
}
