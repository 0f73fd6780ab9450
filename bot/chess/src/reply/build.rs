//! From items to a tree of moves: each move is tried where it can belong, numbers and breaks saying
//! where first.

use shakmaty::{Chess, Color, Move, Position, Square};

use super::notation::{EXACT, Shape, Target, WrittenMove};
use super::phrase::{Item, Piece};
use super::reason;
use super::resolve::{Resolved, arrival, bare_sans, legal_of, resolve};
use super::stance::Mark;
use super::tree::{NodeId, Tree};
use super::words::Word;
use super::{Trouble, TroubleKind};
use crate::fact::Because;

/// Most tries to fit a move somewhere; a reply that needs more is no honest one.
const MOST_TRIES: usize = 3_000;
/// Most moves that may fail before reading stops.
const MOST_TROUBLES: usize = 12;
/// How far up a variation may branch off without a number that says where.
const FAR: usize = 40;
/// How many defences left out are filled in.
const MOST_ASSUMED: usize = 12;

/// What stands between the last move and the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Break {
    None,
    Line,
    /// `;` or a word such as "if".
    Semi,
    Paren,
    Or,
}

/// What came of building.
pub(super) struct Built {
    pub tree: Tree,
    pub troubles: Vec<Trouble>,
    /// Moves placed.
    pub placed: usize,
    /// Defences that were left out and filled in.
    pub assumed: usize,
    /// Moves mentioned in prose that fit nowhere and were passed over.
    pub passed_over: usize,
}

pub(super) struct Builder<'a> {
    text: &'a [char],
    tree: Tree,
    solver: Color,
    frontier: Vec<NodeId>,
    outer: Vec<Vec<NodeId>>,
    label: Option<(u32, bool)>,
    /// The first number with the ply it stood at, both in half-moves.
    first_label: Option<(usize, usize)>,
    brk: Break,
    /// Ply at which the last stretch between breaks began, and whether it was the first.
    stretch: Option<(usize, bool)>,
    stopped: bool,
    any: bool,
    prose: usize,
    then: bool,
    tries: usize,
    assumed: usize,
    /// What is shown of a line that is no part of the answer.
    shadow: Option<Shadow>,
    troubles: Vec<Trouble>,
    placed: usize,
    passed_over: usize,
    /// Pieces spoken of where they stand, before any move: "the knight on d5 is strong". No trouble
    /// where a move follows.
    spoken_of: Vec<Trouble>,
}

/// A line that the writer rejects or only mentions, followed as long as its moves go on from it.
struct Shadow {
    /// Its number among the marks; none in a bracket that shows another first move.
    line: Option<u16>,
    /// The position at its end; none when it cannot be followed.
    position: Option<Chess>,
    /// True when the defender begins it: then it is a side line like any other.
    defence: bool,
    /// Nothing but numbers has stood since its last move.
    going: bool,
}

impl<'a> Builder<'a> {
    pub fn new(text: &'a [char], start: &Chess, played: &[Move]) -> Self {
        let tree = Tree::new(start, played);
        Self {
            text,
            solver: start.turn(),
            frontier: vec![tree.cursor()],
            tree,
            outer: Vec::new(),
            label: None,
            first_label: None,
            brk: Break::None,
            stretch: None,
            stopped: false,
            any: false,
            prose: 0,
            then: false,
            tries: 0,
            assumed: 0,
            shadow: None,
            troubles: Vec::new(),
            placed: 0,
            passed_over: 0,
            spoken_of: Vec::new(),
        }
    }

    /// Builds the tree; `marks` say of each item whether it belongs to the answer.
    pub fn run(mut self, pieces: &[Piece], marks: &[Mark]) -> Built {
        let mut i = 0;
        while i < pieces.len() && self.troubles.len() < MOST_TROUBLES && self.tries < MOST_TRIES {
            i = match marks[i] {
                Mark::Keep => self.step(pieces, marks, i),
                Mark::Drop => i + 1,
                Mark::Aside { line, loose } => self.aside(pieces, marks, i, line, loose),
            };
        }
        if self.placed == 0 {
            self.troubles.splice(..0, self.spoken_of);
        }
        Built {
            tree: self.tree,
            troubles: self.troubles,
            placed: self.placed,
            assumed: self.assumed,
            passed_over: self.passed_over,
        }
    }

    /// An item of a line that is no part of the answer, unless the defender begins it.
    fn aside(
        &mut self,
        pieces: &[Piece],
        marks: &[Mark],
        i: usize,
        line: u16,
        loose: bool,
    ) -> usize {
        let Item::Move { written, .. } = &pieces[i].item else {
            return self.step(pieces, marks, i);
        };
        if self
            .shadow
            .as_ref()
            .is_none_or(|shadow| shadow.line != Some(line))
        {
            let mut candidates = self.candidates();
            let head = self.frontier.first().copied().unwrap_or(0);
            let path = self.tree.path(head);
            candidates.extend(path.iter().rev().take(FAR).map(|&node| vec![node]));
            let fit = candidates.iter().flatten().find_map(|&node| {
                self.tries += 1;
                let position = &self.tree.node(node).position;
                match resolve(position, self.last_arrival(node), written) {
                    Resolved::One(mv) => Some((node, mv)),
                    _ => None,
                }
            });
            let defence =
                fit.is_some_and(|(node, _)| self.turn(node) != self.solver) && self.placed > 0;
            let position = fit.map(|(node, mv)| {
                let mut position = self.tree.node(node).position.clone();
                position.play_unchecked(mv);
                position
            });
            self.shadow = Some(Shadow {
                line: Some(line),
                position,
                defence,
                going: true,
            });
            if !defence {
                self.label = None;
                return i + 1;
            }
            return self.moved(pieces, marks, i, written);
        }
        let defence = self.shadow.as_ref().is_some_and(|shadow| shadow.defence);
        if defence {
            return self.moved(pieces, marks, i, written);
        }
        let known = self
            .shadow
            .as_ref()
            .is_some_and(|shadow| shadow.position.is_some());
        if self.follows_shadow(written) || !loose || !known {
            self.label = None;
            return i + 1;
        }
        // It does not go on from the rejected line, so it is the writer's own again.
        self.moved(pieces, marks, i, written)
    }

    /// Whether the move goes on from the line that is no part of the answer; it is played there then.
    fn follows_shadow(&mut self, written: &WrittenMove) -> bool {
        self.tries += 1;
        let Some(shadow) = self.shadow.as_mut().filter(|shadow| !shadow.defence) else {
            return false;
        };
        let Some(position) = shadow.position.as_mut() else {
            return false;
        };
        match resolve(position, None, written) {
            Resolved::One(mv) => {
                position.play_unchecked(mv);
                shadow.going = true;
                true
            }
            _ => false,
        }
    }

    /// Whether a move that is not marked still belongs to the rejected line before it: it follows with
    /// nothing between, or it is a capture there and none where the answer stands.
    fn belongs_to_shadow(&mut self, written: &WrittenMove) -> bool {
        self.tries += 1;
        let Some(Shadow {
            position: Some(position),
            going,
            defence: false,
            line: Some(_),
        }) = &self.shadow
        else {
            return false;
        };
        let Resolved::One(there) = resolve(position, None, written) else {
            return false;
        };
        if *going && self.label.is_none() {
            return true;
        }
        let takes = written.shapes.iter().any(|shape| shape.takes);
        let here = self.frontier.first().map(|&node| {
            resolve(
                &self.tree.node(node).position,
                self.last_arrival(node),
                written,
            )
        });
        let captures = matches!(here, Some(Resolved::One(mv)) if mv.is_capture());
        takes && position.turn() != self.solver && there.is_capture() && !captures
    }

    fn step(&mut self, pieces: &[Piece], marks: &[Mark], i: usize) -> usize {
        let piece = &pieces[i];
        if let Some(shadow) = self.shadow.as_mut()
            && !matches!(
                piece.item,
                Item::Move { .. } | Item::Number { .. } | Item::Dots | Item::Question
            )
        {
            shadow.going = false;
        }
        match &piece.item {
            Item::Move { written, .. } => return self.moved(pieces, marks, i, written),
            Item::Number { number, black } => self.label = Some((*number, *black)),
            Item::Dots => {
                self.label = self.label.map(|(number, _)| (number, true));
            }
            Item::Open => {
                if self.outer.len() < 64 {
                    self.outer.push(self.frontier.clone());
                }
                (self.brk, self.label, self.stopped) = (Break::Paren, None, false);
            }
            Item::Close => {
                if let Some(frontier) = self.outer.pop() {
                    self.frontier = frontier;
                }
                self.shadow = None;
                (self.brk, self.label, self.stopped, self.any) = (Break::None, None, false, false);
                self.prose = 0;
            }
            Item::Line => self.pause(Break::Line),
            Item::Semi | Item::If => self.pause(Break::Semi),
            Item::Or => self.pause(Break::Or),
            Item::Comma => self.then = true,
            Item::Any => self.any = true,
            // "the queen on h4te is loose, Ne2+"
            Item::Garbled if self.placed == 0 && self.label.is_none() && in_words(pieces, i) => {
                self.trouble(piece, TroubleKind::Garbled, None, Vec::new(), None);
                self.speaks_of();
            }
            Item::Garbled => {
                if self.placed == 0 || self.label.is_some() || self.prose == 0 {
                    self.trouble(piece, TroubleKind::Garbled, None, Vec::new(), None);
                } else {
                    self.prose += 1;
                }
            }
            Item::Question => {}
            Item::Word(word) => match word {
                Word::Then => self.then = true,
                Word::Other
                | Word::Aside
                | Word::Asks
                | Word::Not
                | Word::Deny
                | Word::No
                | Word::Unlike
                | Word::Instead
                | Word::But
                | Word::Former
                | Word::Seems
                | Word::Hedge
                | Word::Better
                | Word::Else
                | Word::Man(_)
                | Word::Fails
                | Word::Works
                | Word::Because => {
                    self.prose += 1;
                }
                _ => {}
            },
        }
        i + 1
    }

    fn pause(&mut self, brk: Break) {
        // A line break after a semicolon and the like changes nothing.
        if self.brk == Break::None || brk != Break::Line {
            self.brk = brk;
        }
        self.stopped = false;
        self.any = false;
        if brk != Break::Or {
            self.prose = 0;
        }
    }

    fn moved(
        &mut self,
        pieces: &[Piece],
        marks: &[Mark],
        i: usize,
        written: &WrittenMove,
    ) -> usize {
        if self.stopped && !self.turns_back() {
            return i + 1;
        }
        let mut written = written.clone();
        let mut next = i + 1;
        if marks.get(i + 1) == Some(&marks[i])
            && let Some(pair) = self.pair(pieces, i, &written)
        {
            written = pair;
            next = i + 2;
        }
        let gap = i.checked_sub(1).map_or(&[][..], |before| {
            &self.text[pieces[before].end.min(pieces[i].start)..pieces[i].start]
        });
        if let Some(shadow) = self.shadow.as_mut()
            && gap.contains(&'.')
        {
            shadow.going = false;
        }
        if marks[i] == Mark::Keep && self.belongs_to_shadow(&written) {
            self.follows_shadow(&written);
            self.label = None;
            return i + 1;
        }
        // A bracket may show another move of the solver's than the one before it; that is no claim.
        if matches!(self.shadow, Some(Shadow { line: None, .. })) {
            self.label = None;
            return next;
        }
        if self.defence_left_out()
            && let Some(placed) = self.assume(self.frontier[0], &written)
        {
            self.place(placed);
            return next;
        }
        let candidates = self.candidates();
        if self.other_in_bracket(&candidates, &written) {
            self.shadow = Some(Shadow {
                line: None,
                position: None,
                defence: false,
                going: false,
            });
            self.label = None;
            return next;
        }
        let mut unclear: Option<(NodeId, Vec<Move>)> = None;
        for (k, frontier) in candidates.iter().enumerate() {
            // Moves one to a line are a line before they are moves to choose from.
            if k > 0
                && self.brk == Break::Line
                && self.label.is_none()
                && self
                    .frontier
                    .first()
                    .is_some_and(|&node| frontier != &[node])
                && self.may_assume(&written)
                && let Some(placed) = self.assume(self.frontier[0], &written)
            {
                self.place(placed);
                return next;
            }
            match self.try_at(frontier, &written) {
                Fit::Placed(placed) => {
                    self.place(placed);
                    return next;
                }
                Fit::Unclear(node, moves) => {
                    unclear = Some((node, moves));
                    break;
                }
                Fit::No => {}
            }
        }
        if unclear.is_none()
            && self.may_assume(&written)
            && let Some(placed) = self.assume(self.frontier[0], &written)
        {
            self.place(placed);
            return next;
        }
        if self.follows_shadow(&written)
            || (self.placed > 0 && is_bare_capture(&written, self.text[pieces[i].start]))
        {
            self.label = None;
            return next;
        }
        let piece = Piece {
            item: Item::Comma,
            start: pieces[i].start,
            end: pieces[next - 1].end,
        };
        if self.prose > 0 && self.placed > 0 && self.label.is_none() {
            self.passed_over += 1;
            return next;
        }
        let at = candidates.first().and_then(|f| f.first()).copied();
        if unclear.is_none()
            && self.placed == 0
            && self.label.is_none()
            && (self.stands_there(pieces, i, &written)
                || (written.shapes.iter().any(|s| s.lone_square().is_some())
                    && in_words(pieces, i)))
        {
            self.impossible(&piece, at.unwrap_or(self.tree.cursor()), &written);
            self.speaks_of();
            return next;
        }
        match unclear {
            Some((node, moves)) => {
                let mut possible = bare_sans(&self.tree.node(node).position, &moves);
                possible.sort();
                self.trouble(&piece, TroubleKind::Unclear, None, possible, Some(node));
            }
            None => self.impossible(&piece, at.unwrap_or(self.tree.cursor()), &written),
        }
        next
    }

    /// Takes the last trouble for something that is only spoken of.
    fn speaks_of(&mut self) {
        let spoken_of = self.troubles.pop();
        if self.spoken_of.len() < MOST_TROUBLES {
            self.spoken_of.extend(spoken_of);
        }
        self.stopped = false;
    }

    /// Whether a piece is named with the square on which one like it stands: what is told of it is no
    /// move.
    fn stands_there(&self, pieces: &[Piece], i: usize, written: &WrittenMove) -> bool {
        let Some(&node) = self.frontier.first() else {
            return false;
        };
        let board = self.tree.node(node).position.board();
        // "el peón de h7": the piece may be named some words before.
        let named = pieces[i.saturating_sub(2)..i]
            .iter()
            .find_map(|piece| match piece.item {
                Item::Word(Word::Man(role)) => Some(role),
                _ => None,
            });
        written.shapes.iter().any(|shape| match shape.to {
            Target::Square(square) if !shape.takes => board
                .role_at(square)
                .is_some_and(|role| shape.role == Some(role) || named == Some(role)),
            _ => false,
        })
    }

    /// Two squares one after the other are one move from the first to the second, when an own piece
    /// stands on the first.
    fn pair(&self, pieces: &[Piece], i: usize, written: &WrittenMove) -> Option<WrittenMove> {
        let from = written.shapes.iter().find_map(Shape::lone_square)?;
        let Item::Move {
            written: second, ..
        } = &pieces.get(i + 1)?.item
        else {
            return None;
        };
        let to = second.shapes.iter().find_map(Shape::lone_square)?;
        let board = self.tree.node(*self.frontier.first()?).position.board();
        let turn = self.tree.node(*self.frontier.first()?).position.turn();
        (board.color_at(from) == Some(turn)).then(|| WrittenMove {
            check: second.check,
            mate: second.mate,
            ..WrittenMove::shape(Shape {
                from_file: Some(from.file()),
                from_rank: Some(from.rank()),
                ..Shape::to(None, Target::Square(to), EXACT)
            })
        })
    }

    /// Where the move may belong, the likeliest first.
    fn candidates(&self) -> Vec<Vec<NodeId>> {
        let frontier = self.frontier.clone();
        let Some(&head) = frontier.first() else {
            return Vec::new();
        };
        let path = self.tree.path(head);
        let at_ply = |ply: usize| path.get(ply).map(|&node| vec![node]);
        let parents: Vec<NodeId> = frontier
            .iter()
            .filter_map(|&node| self.tree.node(node).parent)
            .collect();
        let ply = self.tree.node(head).ply;
        let mut out: Vec<Vec<NodeId>> = Vec::new();
        match self.expected() {
            Some(expected) if expected == ply => out.push(frontier.clone()),
            Some(expected) => out.extend(at_ply(expected)),
            // Numbers begin again with the problem when the first move is the one played.
            None if self.label.is_some_and(|(number, _)| number == 1) => out.push(vec![0]),
            None => {}
        }
        match self.brk {
            Break::None => {}
            Break::Or | Break::Paren if !parents.is_empty() => out.push(parents),
            Break::Or | Break::Paren => {}
            Break::Semi => {
                // Pairs of moves may be parted by semicolons too: "Rxd8+ Rxd8; Rxd8#".
                let own = |node: NodeId| self.turn(node) == self.solver;
                let began = self.stretch.and_then(|(ply, _)| at_ply(ply));
                out.extend(began.filter(|nodes| !(own(nodes[0]) && own(head))));
            }
            Break::Line => {
                out.push(frontier.clone());
                if let Some((ply, false)) = self.stretch
                    && path.get(ply).is_some_and(|&n| self.turn(n) != self.solver)
                {
                    out.extend(at_ply(ply));
                }
            }
        }
        out.push(frontier);
        if self.brk != Break::None || self.placed == 0 {
            out.extend(path.iter().rev().skip(1).take(FAR).map(|&node| vec![node]));
        }
        out
    }

    /// The ply at which the number says that the move stands, once a number has shown how they count.
    fn expected(&self) -> Option<usize> {
        let (number, black) = self.label?;
        let (first, at) = self.first_label?;
        (at + 2 * number as usize + usize::from(black)).checked_sub(first)
    }

    /// Whether, after something that could not be read, this move begins anew further up.
    fn turns_back(&self) -> bool {
        let head = self.frontier.first().copied().unwrap_or(0);
        self.expected()
            .is_some_and(|ply| ply <= self.tree.node(head).ply)
    }

    /// Whether the number says that the move is the solver's next, with no defence between.
    fn defence_left_out(&self) -> bool {
        let [head] = self.frontier[..] else {
            return false;
        };
        self.assumed < MOST_ASSUMED
            && self.turn(head) != self.solver
            && (self.any || self.expected() == Some(self.tree.node(head).ply + 1))
    }

    fn turn(&self, node: NodeId) -> Color {
        self.tree.node(node).position.turn()
    }

    fn last_arrival(&self, node: NodeId) -> Option<Square> {
        self.tree.node(node).mv.map(arrival)
    }

    fn try_at(&mut self, frontier: &[NodeId], written: &WrittenMove) -> Fit {
        let mut placed = Vec::new();
        let mut unclear = None;
        for &node in frontier {
            self.tries += 1;
            let last = self.last_arrival(node);
            match resolve(&self.tree.node(node).position, last, written) {
                Resolved::One(mv) if self.allowed(node, mv) => placed.push((node, mv)),
                Resolved::Several(moves) if unclear.is_none() && self.open(node) => {
                    unclear = Some((node, moves));
                }
                _ => {}
            }
        }
        if !placed.is_empty() {
            let nodes: Vec<NodeId> = placed
                .into_iter()
                .filter_map(|(node, mv)| self.tree.add(node, mv, false))
                .collect();
            if !nodes.is_empty() {
                return Fit::Placed(nodes);
            }
        }
        unclear.map_or(Fit::No, |(node, moves)| Fit::Unclear(node, moves))
    }

    /// Whether new moves may be written at `node`: what the member played stays played.
    fn open(&self, node: NodeId) -> bool {
        let played = self.tree.node(node).played && node != self.tree.cursor();
        !played || self.turn(node) != self.solver
    }

    fn allowed(&self, node: NodeId, mv: Move) -> bool {
        self.open(node) || self.tree.child(node, mv).is_some()
    }

    /// Whether the writer gives only their own moves, so that this one follows a defence left out.
    fn may_assume(&self, written: &WrittenMove) -> bool {
        let [head] = self.frontier[..] else {
            return false;
        };
        if self.turn(head) == self.solver || self.placed == 0 || self.assumed >= MOST_ASSUMED {
            return false;
        }
        // A defence that only nearly exists is a mistake in the defence, not one left out.
        let position = &self.tree.node(head).position;
        let near = written
            .shapes
            .iter()
            .filter(|shape| shape.rank == EXACT)
            .any(|shape| super::resolve::reachable(position, shape) && shape.castles.is_none());
        let numbered = self.first_label.is_some() && self.label.is_none();
        !near && (!numbered || self.then) && matches!(self.brk, Break::None | Break::Line)
    }

    /// Whether the first move in a bracket is another of the solver's where one is written already.
    fn other_in_bracket(&mut self, candidates: &[Vec<NodeId>], written: &WrittenMove) -> bool {
        if self.brk != Break::Paren || self.outer.is_empty() || self.placed == 0 {
            return false;
        }
        for &node in candidates.iter().flatten() {
            self.tries += 1;
            let here = self.tree.node(node);
            if let Resolved::One(mv) = resolve(&here.position, self.last_arrival(node), written) {
                let other = !here.children.is_empty() && self.tree.child(node, mv).is_none();
                return other && self.turn(node) == self.solver;
            }
        }
        false
    }

    /// Places the move after every defence after which it is possible.
    fn assume(&mut self, node: NodeId, written: &WrittenMove) -> Option<Vec<NodeId>> {
        self.assumed += 1;
        let position = self.tree.node(node).position.clone();
        let mut found = Vec::new();
        for defence in position.legal_moves() {
            self.tries += 1;
            let mut after = position.clone();
            after.play_unchecked(defence);
            if let Resolved::One(mv) = resolve(&after, Some(arrival(defence)), written) {
                found.push((defence, mv));
            }
        }
        let nodes: Vec<NodeId> = found
            .into_iter()
            .filter_map(|(defence, mv)| {
                let between = self.tree.add(node, defence, true)?;
                self.tree.add(between, mv, false)
            })
            .collect();
        (!nodes.is_empty()).then_some(nodes)
    }

    fn place(&mut self, placed: Vec<NodeId>) {
        let Some(&head) = placed.first() else { return };
        let before = self.tree.node(head).ply - 1;
        if let Some((number, black)) = self.label {
            let half = 2 * number as usize + usize::from(black);
            self.first_label.get_or_insert((half, before));
        }
        if self.brk != Break::None || self.stretch.is_none() {
            self.stretch = Some((before, self.stretch.is_none()));
        }
        let same_ply = self
            .frontier
            .first()
            .is_some_and(|&node| self.tree.node(node).ply == before + 1);
        let defence = self.turn(head) == self.solver;
        if self.brk == Break::Or && same_ply && defence {
            // "Kg8 or Kh8, then ..." goes on from both.
            self.frontier.extend(placed);
        } else {
            self.frontier = placed;
        }
        if self.placed == 0 {
            // Moves mentioned before the first that could be meant were talk.
            self.troubles.clear();
        }
        self.placed += 1;
        self.label = None;
        self.brk = Break::None;
        self.stopped = false;
        self.any = false;
        self.then = false;
        self.prose = 0;
        if self.shadow.as_ref().is_some_and(|shadow| !shadow.defence) {
            self.shadow = None;
        }
    }

    fn impossible(&mut self, piece: &Piece, node: NodeId, written: &WrittenMove) {
        let last = self.last_arrival(node);
        let position = self.tree.node(node).position.clone();
        let shape = match resolve(&position, last, written) {
            Resolved::None(shape) => shape,
            _ => written
                .shapes
                .first()
                .copied()
                .unwrap_or(Shape::castling(None)),
        };
        let mut why = reason::why_not(&position, &shape);
        let theirs = |other: &Chess, mv: Move| matches!(resolve(other, None, written), Resolved::One(found) if found == mv);
        let wrong_side = shape
            .from()
            .is_some_and(|from| position.board().color_at(from) == Some(!position.turn()));
        if !wrong_side
            && reason::is_opponents(&position, theirs)
            && !super::resolve::reachable(&position, &shape)
        {
            why = Because::TheirMove {
                theirs: (!position.turn()).into(),
                side: position.turn().into(),
            };
        }
        let legal = legal_of(&position, &shape);
        let mut possible = bare_sans(&position, &legal);
        possible.sort();
        self.trouble(piece, TroubleKind::Illegal, Some(why), possible, Some(node));
    }

    fn trouble(
        &mut self,
        piece: &Piece,
        kind: TroubleKind,
        reason: Option<Because>,
        possible: Vec<String>,
        node: Option<NodeId>,
    ) {
        let node = node
            .or(self.frontier.first().copied())
            .unwrap_or(self.tree.cursor());
        let written: String = self.text[piece.start..piece.end].iter().collect();
        self.troubles.push(Trouble {
            kind,
            written: written.trim().to_owned(),
            at: node,
            reason,
            possible,
        });
        self.stopped = true;
        self.label = None;
        self.brk = Break::None;
    }
}

/// Whether words stand before and behind an item.
fn in_words(pieces: &[Piece], i: usize) -> bool {
    let word = |at: usize| {
        pieces
            .get(at)
            .is_some_and(|piece| matches!(piece.item, Item::Word(_)))
    };
    i.checked_sub(1).is_some_and(word) && word(i + 1)
}

/// A word for taking with nobody named to do it, such as "takes g8 away": where it fits nowhere it is no
/// move. `first` is the character it begins with.
fn is_bare_capture(written: &WrittenMove, first: char) -> bool {
    first.is_alphabetic()
        && !matches!(first, 'x' | 'X')
        && written
            .shapes
            .iter()
            .all(|shape| shape.role.is_none() && shape.takes && shape.from_file.is_none())
}

enum Fit {
    Placed(Vec<NodeId>),
    Unclear(NodeId, Vec<Move>),
    No,
}
