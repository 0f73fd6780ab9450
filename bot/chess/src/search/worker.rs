//! One thread's search at the root: aspiration windows, several lines at once, and what the tree below
//! shares.

use std::sync::atomic::{AtomicBool, Ordering};

use shakmaty::{Chess, Move, MoveList, Position};

use super::{
    super::{Budget, Spent},
    DEEPEST, MATE, MATED_SOON, Ranked, Score,
    evaluate::{PawnTable, evaluate},
    node::{Node, hash},
    order::{Histories, NO_MOVE, Picker, PieceTo, PreviousMoves, piece_to},
    prune::Reductions,
    table::Table,
    tree::{Place, Visit},
    window::Window,
};

pub(super) const INFINITE: i32 = MATE + 1;

pub(super) struct Worker<'a> {
    root: Chess,
    pub(super) table: &'a Table,
    budget: &'a Budget<'a>,
    over: &'a AtomicBool,
    pub(super) histories: Box<Histories>,
    pawns: PawnTable,
    pub(super) reductions: Box<Reductions>,
    /// Hashes of the positions on the path, those before the root first.
    path: Vec<u64>,
    /// The path's length at the last null move: no repetition reaches across one.
    last_null_move: usize,
    /// Static evaluations and moves along the path, by half-moves from the root.
    pub(super) static_evals: Box<[i32; DEEPEST + 2]>,
    played: Vec<PieceTo>,
    /// The root's moves with the nodes each took at the last depth.
    efforts: Vec<(Move, u64)>,
    nodes: u64,
    unreported: u64,
    /// What the unfinished depth has found so far.
    partial: Option<Ranked>,
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
            histories: Histories::new(),
            pawns: PawnTable::new(),
            reductions: Reductions::new(),
            path,
            last_null_move: 0,
            static_evals: Box::new([0; DEEPEST + 2]),
            played: Vec::with_capacity(DEEPEST),
            efforts: Vec::new(),
            nodes: 0,
            unreported: 0,
            partial: None,
        }
    }

    pub fn nodes(&self) -> u64 {
        self.nodes
    }

    /// The best move of a depth that the budget cut short, when only one line was asked for and at
    /// least the move that led before was searched in full.
    pub fn partial(&mut self) -> Option<Ranked> {
        self.partial.take()
    }

    /// Ranks the `count` best first moves at one depth. `last` is the ranking of the depth before.
    pub fn rank(
        &mut self,
        depth: i32,
        count: usize,
        last: &[Ranked],
    ) -> Result<Vec<Ranked>, Spent> {
        self.partial = None;
        let root = Node::new(self.root.clone());
        let mut moves = self.root_order(&root, last);
        let count = count.min(moves.len());
        let mut found: Vec<Ranked> = Vec::new();
        while found.len() < count {
            let guess = last.get(found.len()).map(|ranked| value(ranked.score));
            let (best, mv, line) =
                self.aspiration_search(&root, &moves, depth, guess, count == 1)?;
            moves.retain(|other| *other != mv);
            found.push(Ranked {
                line,
                score: Score::of(best),
            });
        }
        // A later move can turn out better than an earlier one that was searched with less in the table.
        found.sort_by_key(|ranked| -value(ranked.score));
        self.partial = None;
        Ok(found)
    }

    /// The root's moves: the last ranking first, then those that took most work.
    fn root_order(&mut self, root: &Node, last: &[Ranked]) -> MoveList {
        let mut moves = root.position.legal_moves();
        if self.efforts.is_empty() {
            let mut picker = Picker::new(
                &self.histories,
                &root.position,
                moves.clone(),
                0,
                [NO_MOVE; 2],
                0,
            );
            while let Some((mv, _)) = picker.next(&root.position) {
                self.efforts.push((mv, 0));
            }
        }
        self.efforts
            .sort_by_key(|(_, nodes)| std::cmp::Reverse(*nodes));
        moves.clear();
        moves.extend(self.efforts.iter().map(|(mv, _)| *mv));
        for (_, nodes) in &mut self.efforts {
            *nodes = 0;
        }
        for ranked in last.iter().rev() {
            if let Some(at) = ranked
                .line
                .first()
                .and_then(|first| moves.iter().position(|mv| mv == first))
            {
                moves[..=at].rotate_right(1);
            }
        }
        moves
    }

    /// The best of `moves`, searched in a window about `guess` that widens until the value lies within.
    fn aspiration_search(
        &mut self,
        root: &Node,
        moves: &MoveList,
        depth: i32,
        guess: Option<i32>,
        only: bool,
    ) -> Result<(i32, Move, Vec<Move>), Spent> {
        let mut window = Window::FULL;
        let mut width = 25;
        if let Some(guess) = guess.filter(|g| depth >= 4 && g.abs() < MATED_SOON) {
            window = Window::new(guess - width, guess + width);
        }
        loop {
            let (best, mv, line) = self.root_moves(root, moves, depth, window, only)?;
            width *= 3;
            if best <= window.alpha && window.alpha > -INFINITE {
                window.alpha = if width > 1000 {
                    -INFINITE
                } else {
                    best - width
                };
            } else if best >= window.beta && window.beta < INFINITE {
                window.beta = if width > 1000 { INFINITE } else { best + width };
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
        mut window: Window,
        only: bool,
    ) -> Result<(i32, Move, Vec<Move>), Spent> {
        let begin = window.alpha;
        let mut best: Option<(i32, Move, Vec<Move>)> = None;
        self.static_evals[0] = self.evaluate(root);
        for &mv in moves {
            let next = root.after(mv);
            let mut line = Vec::new();
            let before = self.nodes;
            self.make_move(root, mv);
            let visit = Visit {
                depth,
                window,
                ply: 0,
                cut_node: false,
                null_move: false,
            };
            let place = match best {
                None => Place::First,
                Some(_) => Place::Later { reduction: 0 },
            };
            let score = self.search_move(&next, visit, place, &mut line);
            self.unmake_move();
            let score = score?;
            if let Some((_, nodes)) = self.efforts.iter_mut().find(|(other, _)| *other == mv) {
                *nodes += self.nodes - before;
            }
            if best.as_ref().is_none_or(|(top, ..)| score > *top) {
                line.insert(0, mv);
                if only && score > begin {
                    self.partial = Some(Ranked {
                        line: line.clone(),
                        score: Score::of(score),
                    });
                }
                best = Some((score, mv, line));
            }
            window.alpha = window.alpha.max(score);
            if window.is_closed() {
                break;
            }
        }
        best.ok_or(Spent)
    }

    /// Plays `mv` from `node` on the path.
    pub(super) fn make_move(&mut self, node: &Node, mv: Move) {
        self.path.push(node.hash);
        self.played.push(piece_to(node.position.turn(), mv));
    }

    pub(super) fn unmake_move(&mut self) {
        self.path.pop();
        self.played.pop();
    }

    /// Passes at `node`; gives what [`Worker::unmake_null_move`] needs to end it.
    pub(super) fn make_null_move(&mut self, node: &Node) -> usize {
        self.path.push(node.hash);
        self.played.push(NO_MOVE);
        std::mem::replace(&mut self.last_null_move, self.path.len())
    }

    pub(super) fn unmake_null_move(&mut self, outer: usize) {
        self.unmake_move();
        self.last_null_move = outer;
    }

    /// The moves the position at hand was reached by.
    pub(super) fn previous_moves(&self) -> PreviousMoves {
        let back = |n: usize| {
            self.played
                .len()
                .checked_sub(n)
                .map_or(NO_MOVE, |at| self.played[at])
        };
        [back(1), back(2)]
    }

    /// Draws that no further play changes, and repetitions on the path.
    pub(super) fn is_draw(&self, node: &Node) -> bool {
        let position = &node.position;
        let reversible = position.halfmoves() as usize;
        if position.is_insufficient_material() {
            return true;
        }
        if reversible >= 100 && !(node.checked && position.is_checkmate()) {
            return true;
        }
        // Two plies back at the least, and no further than the last capture, pawn move or null move.
        self.path[self.last_null_move..]
            .iter()
            .rev()
            .take(reversible)
            .skip(1)
            .step_by(2)
            .any(|&hash| hash == node.hash)
    }

    /// Counts a node and asks the budget now and then.
    pub(super) fn count_node(&mut self) -> Result<(), Spent> {
        self.nodes += 1;
        self.unreported += 1;
        if self.unreported >= Budget::STRIDE {
            self.budget.spend(self.unreported)?;
            self.unreported = 0;
            if self.over.load(Ordering::Relaxed) {
                return Err(Spent);
            }
        }
        Ok(())
    }

    pub(super) fn evaluate(&mut self, node: &Node) -> i32 {
        evaluate(&node.position, &mut self.pawns)
    }
}

fn value(score: Score) -> i32 {
    match score {
        Score::Cp(v) => v,
        Score::Mate(n) if n > 0 => MATE - 2 * n + 1,
        Score::Mate(n) => -MATE - 2 * n,
    }
}
