//! One thread's search: the tree below the root.

use std::sync::atomic::{AtomicBool, Ordering};

use shakmaty::{Chess, EnPassantMode, Move, MoveList, Position, zobrist::Zobrist64};

use super::{
    super::{Budget, Spent},
    DEEPEST, MATE, MATED_SOON, Ranked, Score,
    evaluate::evaluate,
    exchange::{exchange, worth},
    order::Memory,
    table::{Bound, Entry, Table, code, decode},
};

const INFINITE: i32 = MATE + 1;

pub(super) struct Worker<'a> {
    root: Chess,
    table: &'a Table,
    budget: &'a Budget<'a>,
    over: &'a AtomicBool,
    memory: Box<Memory>,
    /// Hashes of the positions on the path, those before the root first.
    path: Vec<u64>,
    /// Whether the move that led to the position at hand was a pass.
    passed: bool,
    nodes: u64,
    unbooked: u64,
}

/// A position with its hash, as the search passes it down.
#[derive(Clone)]
struct Node {
    position: Chess,
    hash: u64,
}

impl Node {
    fn new(position: Chess) -> Self {
        let hash = hash(&position);
        Self { position, hash }
    }

    fn after(&self, mv: Move) -> Self {
        let hash =
            self.position
                .update_zobrist_hash(Zobrist64(self.hash), mv, EnPassantMode::Legal);
        let mut position = self.position.clone();
        position.play_unchecked(mv);
        let hash = hash.map_or_else(|| self::hash(&position), |h| h.0);
        Self { position, hash }
    }

    /// The same position with the other side to move; `None` in check.
    fn passed(&self) -> Option<Self> {
        self.position.clone().swap_turn().ok().map(Self::new)
    }
}

fn hash(position: &Chess) -> u64 {
    position.zobrist_hash::<Zobrist64>(EnPassantMode::Legal).0
}

impl<'a> Worker<'a> {
    pub fn new(
        root: &Chess,
        before: &[Chess],
        table: &'a Table,
        budget: &'a Budget<'a>,
        over: &'a AtomicBool,
    ) -> Self {
        let path = before.iter().map(hash).collect();
        Self {
            root: root.clone(),
            table,
            budget,
            over,
            memory: Memory::new(),
            path,
            passed: false,
            nodes: 0,
            unbooked: 0,
        }
    }

    pub fn nodes(&self) -> u64 {
        self.nodes
    }

    /// Ranks the `count` best first moves at one depth. `last` is the ranking of the depth before.
    pub fn rank(
        &mut self,
        depth: i32,
        count: usize,
        last: &[Ranked],
    ) -> Result<Vec<Ranked>, Spent> {
        let root = Node::new(self.root.clone());
        let mut moves = root.position.legal_moves();
        self.memory.sort(&root.position, &mut moves, 0, 0);
        for ranked in last.iter().rev() {
            if let Some(at) = ranked
                .line
                .first()
                .and_then(|first| moves.iter().position(|mv| mv == first))
            {
                moves[..=at].rotate_right(1);
            }
        }
        let mut found: Vec<Ranked> = Vec::new();
        while found.len() < count.min(root.position.legal_moves().len()) {
            let guess = last.get(found.len()).map(|ranked| value(ranked.score));
            let (best, mv, line) = self.window(&root, &moves, depth, guess)?;
            moves.retain(|other| *other != mv);
            found.push(Ranked {
                line,
                score: Score::of(best),
            });
        }
        // A later move can turn out better than an earlier one that was searched with less in the table.
        found.sort_by_key(|ranked| -value(ranked.score));
        Ok(found)
    }

    /// The best of `moves`, searched in a window about `guess` that widens until the value lies within.
    fn window(
        &mut self,
        root: &Node,
        moves: &MoveList,
        depth: i32,
        guess: Option<i32>,
    ) -> Result<(i32, Move, Vec<Move>), Spent> {
        let (mut alpha, mut beta) = (-INFINITE, INFINITE);
        let mut width = 40;
        if let Some(guess) = guess.filter(|g| depth >= 4 && g.abs() < MATED_SOON) {
            (alpha, beta) = (guess - width, guess + width);
        }
        loop {
            let (best, mv, line) = self.root_moves(root, moves, depth, alpha, beta)?;
            width *= 4;
            if best <= alpha && alpha > -INFINITE {
                alpha = if width > 1000 {
                    -INFINITE
                } else {
                    best - width
                };
            } else if best >= beta && beta < INFINITE {
                beta = if width > 1000 { INFINITE } else { best + width };
            } else {
                return Ok((best, mv, line));
            }
        }
    }

    fn root_moves(
        &mut self,
        root: &Node,
        moves: &MoveList,
        depth: i32,
        mut alpha: i32,
        beta: i32,
    ) -> Result<(i32, Move, Vec<Move>), Spent> {
        let mut best: Option<(i32, Move, Vec<Move>)> = None;
        self.path.push(root.hash);
        for &mv in moves {
            let next = root.after(mv);
            let mut line = Vec::new();
            let full = |worker: &mut Self, line: &mut Vec<Move>| {
                worker.below(&next, depth - 1, -beta, -alpha, 1, line)
            };
            let score = match best {
                None => full(self, &mut line).map(|s| -s),
                Some(_) => match self
                    .below(&next, depth - 1, -alpha - 1, -alpha, 1, &mut line)
                    .map(|s| -s)
                {
                    Ok(score) if score > alpha && score < beta => full(self, &mut line).map(|s| -s),
                    other => other,
                },
            };
            let score = match score {
                Ok(score) => score,
                Err(spent) => {
                    self.path.pop();
                    return Err(spent);
                }
            };
            if best.as_ref().is_none_or(|(top, ..)| score > *top) {
                line.insert(0, mv);
                best = Some((score, mv, line));
            }
            alpha = alpha.max(score);
            if alpha >= beta {
                break;
            }
        }
        self.path.pop();
        best.ok_or(Spent)
    }

    /// Principal-variation search; value for the side to move, exact within `alpha..beta`.
    fn below(
        &mut self,
        node: &Node,
        depth: i32,
        alpha: i32,
        beta: i32,
        ply: usize,
        line: &mut Vec<Move>,
    ) -> Result<i32, Spent> {
        line.clear();
        let position = &node.position;
        let after_pass = std::mem::take(&mut self.passed);
        if self.drawn(node) {
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
        let checked = position.is_check();
        let depth = if checked { depth + 1 } else { depth };
        if depth <= 0 || ply >= DEEPEST - 1 {
            return self.quiet(node, alpha, beta, ply);
        }
        self.book()?;
        let wide = beta - alpha > 1;
        let known = self.table.get(node.hash);
        if let Some(entry) = known.filter(|entry| !wide && entry.depth >= depth) {
            let score = from_table(entry.score, ply);
            let enough = match entry.bound {
                Bound::Exact => true,
                Bound::AtLeast => score >= beta,
                Bound::AtMost => score <= alpha,
            };
            // Close to the fifty-move limit an old score may hide a draw.
            if enough && position.halfmoves() < 80 {
                return Ok(score);
            }
        }
        let still = evaluate(position);
        let mut rest = Vec::new();
        if !wide
            && !checked
            && !after_pass
            && depth >= 3
            && still >= beta
            && has_pieces(position)
            && beta.abs() < MATED_SOON
            && let Some(passed) = node.passed()
        {
            self.path.push(node.hash);
            self.passed = true;
            let score = self
                .below(
                    &passed,
                    depth - 3 - depth / 6,
                    -beta,
                    -beta + 1,
                    ply + 1,
                    &mut rest,
                )
                .map(|s| -s);
            self.path.pop();
            if score? >= beta {
                return Ok(beta);
            }
        }
        let mut moves = position.legal_moves();
        if moves.is_empty() {
            return Ok(if checked { -MATE + ply as i32 } else { 0 });
        }
        let first = known.map_or(0, |entry| entry.best);
        self.memory.sort(position, &mut moves, first, ply);
        let (mut best, mut best_move, begin) = (-INFINITE, None, alpha);
        let mut quiets: Vec<Move> = Vec::new();
        self.path.push(node.hash);
        for (i, &mv) in moves.iter().enumerate() {
            let quiet = !mv.is_capture() && !mv.is_promotion();
            let next = node.after(mv);
            let gives_check = next.position.is_check();
            // Near the leaves a quiet move cannot bring a hopeless position back.
            let hopeless =
                !wide && !checked && !gives_check && quiet && depth <= 3 && best > -MATED_SOON;
            if hopeless
                && (still + 120 * depth <= alpha || quiets.len() > 6 + 3 * (depth * depth) as usize)
            {
                best = best.max(still + 120 * depth).min(alpha.max(best));
                continue;
            }
            let mut reduction = 0;
            if i >= 3 && depth >= 3 && quiet && !checked && !gives_check {
                reduction =
                    1 + i32::from(i >= 8) + i32::from(i >= 20) + depth / 8 - i32::from(wide);
                reduction = reduction.clamp(0, depth - 2);
            }
            let score = self.one(
                &next,
                depth - 1,
                reduction,
                i == 0,
                alpha,
                beta,
                ply,
                &mut rest,
            );
            let score = match score {
                Ok(score) => score,
                Err(spent) => {
                    self.path.pop();
                    return Err(spent);
                }
            };
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
                if quiet {
                    self.memory
                        .refuted(position.turn(), mv, &quiets, ply, depth);
                }
                break;
            }
            if quiet {
                quiets.push(mv);
            }
        }
        self.path.pop();
        let bound = match best {
            b if b >= beta => Bound::AtLeast,
            b if b > begin => Bound::Exact,
            _ => Bound::AtMost,
        };
        let best_code = best_move.map_or(first, code);
        self.table.put(
            node.hash,
            Entry {
                depth,
                score: to_table(best, ply),
                bound,
                best: best_code,
            },
        );
        Ok(best)
    }

    /// One move: with a narrow window and a reduction first, and in full when it surprises.
    #[allow(clippy::too_many_arguments)]
    fn one(
        &mut self,
        next: &Node,
        depth: i32,
        reduction: i32,
        first: bool,
        alpha: i32,
        beta: i32,
        ply: usize,
        line: &mut Vec<Move>,
    ) -> Result<i32, Spent> {
        if first {
            return self
                .below(next, depth, -beta, -alpha, ply + 1, line)
                .map(|s| -s);
        }
        let mut score = -self.below(next, depth - reduction, -alpha - 1, -alpha, ply + 1, line)?;
        if score > alpha && reduction > 0 {
            score = -self.below(next, depth, -alpha - 1, -alpha, ply + 1, line)?;
        }
        if score > alpha && score < beta {
            score = -self.below(next, depth, -beta, -alpha, ply + 1, line)?;
        }
        Ok(score)
    }

    /// Captures and promotions (all moves when in check) until the position is quiet.
    fn quiet(&mut self, node: &Node, mut alpha: i32, beta: i32, ply: usize) -> Result<i32, Spent> {
        self.book()?;
        let position = &node.position;
        let checked = position.is_check();
        let still = evaluate(position);
        if ply >= DEEPEST - 1 {
            return Ok(still);
        }
        let mut best = -MATE + ply as i32;
        let mut moves = position.legal_moves();
        if moves.is_empty() {
            return Ok(if checked { best } else { 0 });
        }
        if !checked {
            best = still;
            alpha = alpha.max(best);
            if alpha >= beta {
                return Ok(best);
            }
            moves.retain(|mv| mv.is_capture() || mv.promotion() == Some(shakmaty::Role::Queen));
        }
        let first = self.table.get(node.hash).map_or(0, |entry| entry.best);
        let first = decode(&moves, first).map_or(0, code);
        self.memory.sort(position, &mut moves, first, ply);
        for &mv in &moves {
            if !checked {
                let gain = mv.capture().map_or(0, worth) + if mv.is_promotion() { 850 } else { 0 };
                if still + gain + 200 <= alpha || exchange(position, mv) < 0 {
                    continue;
                }
            }
            let score = -self.quiet(&node.after(mv), -beta, -alpha, ply + 1)?;
            best = best.max(score);
            alpha = alpha.max(score);
            if alpha >= beta {
                break;
            }
        }
        Ok(best)
    }

    /// Draws that no further play changes, and repetitions on the path.
    fn drawn(&self, node: &Node) -> bool {
        let position = &node.position;
        let reversible = position.halfmoves() as usize;
        if position.is_insufficient_material() {
            return true;
        }
        if reversible >= 100 && !position.is_checkmate() {
            return true;
        }
        // Two plies back at the least, and no further than the last capture or pawn move.
        self.path
            .iter()
            .rev()
            .take(reversible)
            .skip(1)
            .step_by(2)
            .any(|&hash| hash == node.hash)
    }

    /// Counts a node and asks the budget now and then.
    fn book(&mut self) -> Result<(), Spent> {
        self.nodes += 1;
        self.unbooked += 1;
        if self.unbooked >= Budget::STRIDE {
            self.budget.spend(self.unbooked)?;
            self.unbooked = 0;
            if self.over.load(Ordering::Relaxed) {
                return Err(Spent);
            }
        }
        Ok(())
    }
}

fn value(score: Score) -> i32 {
    match score {
        Score::Cp(v) => v,
        Score::Mate(n) if n > 0 => MATE - 2 * n + 1,
        Score::Mate(n) => -MATE - 2 * n,
    }
}

/// Mates are kept in the table as counted from the position, in the tree as counted from the root.
fn to_table(score: i32, ply: usize) -> i32 {
    match score {
        MATED_SOON.. => score + ply as i32,
        s if s <= -MATED_SOON => score - ply as i32,
        s => s,
    }
}

fn from_table(score: i32, ply: usize) -> i32 {
    match score {
        MATED_SOON.. => score - ply as i32,
        s if s <= -MATED_SOON => score + ply as i32,
        s => s,
    }
}

/// Without pieces a side may be in zugzwang, and passing proves nothing.
fn has_pieces(position: &Chess) -> bool {
    let board = position.board();
    (position.us() & !(board.pawns() | board.kings())).any()
}
