//! From tokens to items: words that make up a move become one, and what stands around moves is kept
//! for whoever has to tell an answer from talk.

use shakmaty::{CastlingSide, Rank, Role, Square};

use super::letters;
use super::notation::{EXACT, SLOPPY, Shape, Target, Written};
use super::scan::{Kind, Token};
use super::words::Word;
use crate::chess::judge::Language;

/// A part of a reply.
#[derive(Clone, Debug)]
pub(super) enum Item {
    /// A move; `not` when the writer says that it is not meant.
    Move { written: Written, not: bool },
    /// A move number.
    Number { number: u32, black: bool },
    /// It is Black's move.
    Dots,
    /// A variation begins.
    Open,
    /// It ends.
    Close,
    /// A line ends.
    Line,
    /// `;`
    Semi,
    /// A comma.
    Comma,
    /// Another move instead of the last.
    Or,
    /// Whatever the defence.
    Any,
    /// A variation begins in words.
    If,
    /// Looks like a move, and is none.
    Garbled,
    /// A question mark.
    Question,
    /// A word that is no part of a move.
    Word(Word),
}

/// An item and where it stands, in characters.
#[derive(Clone, Debug)]
pub(super) struct Piece {
    pub item: Item,
    pub start: usize,
    pub end: usize,
}

/// Groups tokens into items.
pub(super) fn group(tokens: &[Token], own: Language) -> Vec<Piece> {
    let mut phrases = Phrases {
        tokens,
        own,
        out: Vec::with_capacity(tokens.len()),
    };
    let mut i = 0;
    while i < tokens.len() {
        i = phrases.step(i);
    }
    phrases.out
}

struct Phrases<'a> {
    tokens: &'a [Token],
    own: Language,
    out: Vec<Piece>,
}

/// Who moves, as far as a word or a letter says.
#[derive(Clone, Copy)]
struct Mover {
    role: Option<Role>,
    file: Option<shakmaty::File>,
    rank: u8,
}

impl Phrases<'_> {
    fn kind(&self, i: usize) -> Option<&Kind> {
        self.tokens.get(i).map(|token| &token.kind)
    }

    fn word(&self, i: usize) -> Option<Word> {
        match self.kind(i)? {
            Kind::Word(word) | Kind::Letter(_, word) => Some(*word),
            _ => None,
        }
    }

    fn square(&self, i: usize) -> Option<Square> {
        match self.kind(i)? {
            Kind::Move(written) => written.shapes.iter().find_map(Shape::lone_square),
            _ => None,
        }
    }

    fn push(&mut self, item: Item, from: usize, to: usize) {
        let start = self.tokens[from].start;
        let end = self.tokens[to.max(from + 1) - 1].end;
        self.out.push(Piece { item, start, end });
    }

    fn step(&mut self, i: usize) -> usize {
        let item = match &self.tokens[i].kind {
            Kind::Move(written) => {
                let mut written = written.clone();
                let mut next = i + 1;
                // "e2 to e4", "d4 takes e5"
                if let (Some(from), Some(Word::To | Word::Takes), Some(to)) =
                    (self.square(i), self.word(i + 1), self.square(i + 2))
                {
                    written = Written::shape(Shape {
                        from_file: Some(from.file()),
                        from_rank: Some(from.rank()),
                        ..Shape::to(None, Target::Square(to), EXACT)
                    });
                    next = i + 3;
                }
                return self.finish(i, next, written);
            }
            Kind::Word(Word::Man(role)) => {
                let mover = Mover {
                    role: Some(*role),
                    file: None,
                    rank: EXACT,
                };
                if let Some((written, next)) = self.spoken(i + 1, &[mover], false) {
                    return self.finish(i, next, written);
                }
                Item::Word(Word::Man(*role))
            }
            Kind::Letter(letter, word) => {
                let (letter, word) = (*letter, *word);
                let movers = self.movers(letter);
                let alone = !letter.is_uppercase();
                if let Some((written, next)) = self.spoken(i + 1, &movers, alone) {
                    return self.finish(i, next, written);
                }
                return self.plain(i, word);
            }
            Kind::Word(word) => return self.plain(i, *word),
            Kind::Number {
                number,
                black,
                dotted,
            } => {
                let label = *dotted || matches!(self.kind(i + 1), Some(Kind::Move(_) | Kind::Dots));
                if label {
                    Item::Number {
                        number: *number,
                        black: *black,
                    }
                } else {
                    Item::Word(Word::Other)
                }
            }
            Kind::Dots => Item::Dots,
            Kind::Open => Item::Open,
            Kind::Close => Item::Close,
            Kind::Line => Item::Line,
            Kind::Semi => Item::Semi,
            Kind::Slash => Item::Or,
            Kind::Comma => Item::Comma,
            Kind::Question => Item::Question,
            Kind::Check => Item::Word(Word::Check),
            Kind::Mate => Item::Word(Word::Mate),
            Kind::Garbled => Item::Garbled,
        };
        self.push(item, i, i + 1);
        i + 1
    }

    /// A word that does not begin with a man.
    fn plain(&mut self, i: usize, word: Word) -> usize {
        let item = match word {
            Word::Takes => {
                let nobody = Mover {
                    role: None,
                    file: None,
                    rank: SLOPPY,
                };
                let follows = self
                    .out
                    .iter()
                    .rev()
                    .find(|piece| !matches!(piece.item, Item::Comma | Item::Number { .. }))
                    .is_some_and(|piece| matches!(piece.item, Item::Move { .. }));
                if let Some((written, next)) = self.spoken(i, &[nobody], false) {
                    let last = written.shapes.iter().any(|s| s.to == Target::Last);
                    if follows || !last {
                        return self.finish(i, next, written);
                    }
                }
                Item::Word(word)
            }
            Word::Castles(_) => {
                let (side, next) = self.wing(i);
                return self.finish(i, next, Written::shape(Shape::castling(side)));
            }
            Word::Or => Item::Or,
            Word::Any => Item::Any,
            Word::If => Item::If,
            _ => Item::Word(word),
        };
        self.push(item, i, i + 1);
        i + 1
    }

    /// The side a castling word at `i` speaks of, said before or after it.
    fn wing(&mut self, i: usize) -> (Option<CastlingSide>, usize) {
        let of = |word: Option<Word>| match word {
            Some(Word::Wing(side)) => Some(side),
            Some(Word::Man(Role::King)) => Some(CastlingSide::KingSide),
            Some(Word::Man(Role::Queen)) => Some(CastlingSide::QueenSide),
            _ => None,
        };
        let before = |k: usize| i.checked_sub(k).and_then(|at| self.word(at));
        let spoken = match before(1) {
            Some(Word::Side) => of(before(2)).map(|side| (side, 2)),
            word @ Some(Word::Wing(_)) => of(word).map(|side| (side, 1)),
            _ => None,
        };
        if let Some((side, count)) = spoken {
            let keep = self.out.len().saturating_sub(count);
            self.out.truncate(keep);
            return (Some(side), i + 1);
        }
        let mut at = i + 1;
        while at <= i + 3 && matches!(self.word(at), Some(Word::To | Word::Filler | Word::On)) {
            at += 1;
        }
        match of(self.word(at)) {
            Some(side) => {
                let more = usize::from(self.word(at + 1) == Some(Word::Side));
                (Some(side), at + 1 + more)
            }
            None => (None, i + 1),
        }
    }

    /// What a letter standing alone may move: a piece by its letter, or the pawn of a file.
    fn movers(&self, letter: char) -> Vec<Mover> {
        let mut movers = Vec::new();
        for language in [self.own, Language::English] {
            for &(name, role) in letters::letters(language) {
                let same = name.chars().count() == 1 && letter.to_lowercase().eq(name.chars());
                if same && !movers.iter().any(|m: &Mover| m.role == Some(role)) {
                    let rank = if letter.is_uppercase() { EXACT } else { SLOPPY };
                    movers.push(Mover {
                        role: Some(role),
                        file: None,
                        rank,
                    });
                }
            }
        }
        if let Some(file) = letters::file(letter) {
            movers.push(Mover {
                role: Some(Role::Pawn),
                file: Some(file),
                rank: SLOPPY,
            });
        }
        movers
    }

    /// Reads what a man does, from the token after it: "takes d5", "on b4 to d5", "takes rook".
    /// With `verb` a word that says so must come first.
    fn spoken(&self, begin: usize, movers: &[Mover], verb: bool) -> Option<(Written, usize)> {
        if movers.is_empty() {
            return None;
        }
        let mut i = begin;
        let (mut from_file, mut from_rank) = (None, None);
        let goes = |i: usize| matches!(self.word(i), Some(Word::Takes | Word::To));
        // "rook a to d1"
        if let Some(Kind::Letter(letter, _)) = self.kind(i)
            && let Some(file) = letters::file(*letter)
            && (goes(i + 1) || self.square(i + 1).is_some())
            && !goes(i)
        {
            from_file = Some(file);
            i += 1;
        }
        // "knight on b4 takes d5", "knight b4 takes d5", "rook d2 d7"
        let stands = usize::from(matches!(self.word(i), Some(Word::On)));
        if let Some(square) = self.square(i + stands)
            && (stands == 1 || goes(i + 1) || self.square(i + 1).is_some())
        {
            (from_file, from_rank) = (Some(square.file()), Some(square.rank()));
            i += stands + 1;
        }
        let (mut takes, mut moved) = (false, false);
        for _ in 0..4 {
            match self.word(i) {
                Some(Word::Takes) if !takes => (takes, moved) = (true, true),
                // "torre por d8"
                Some(Word::For) if !takes && self.square(i + 1).is_some() => {
                    (takes, moved) = (true, true);
                }
                Some(Word::To) => moved = true,
                Some(Word::Filler | Word::On) if moved => {}
                _ => break,
            }
            i += 1;
        }
        if verb && !moved {
            return None;
        }
        let mut shapes = Vec::new();
        let mut next = i;
        match self.kind(i) {
            Some(Kind::Move(target)) => {
                for mover in movers {
                    if mover.file.is_some() && !takes {
                        continue;
                    }
                    for shape in &target.shapes {
                        let bare = matches!(shape.role, None | Some(Role::Pawn));
                        if !bare || shape.castles.is_some() {
                            continue;
                        }
                        shapes.push(Shape {
                            role: mover.role,
                            from_file: mover.file.or(from_file).or(shape.from_file),
                            from_rank: from_rank.or(shape.from_rank),
                            takes: takes || shape.takes,
                            rank: mover.rank,
                            ..*shape
                        });
                    }
                }
                if shapes.is_empty() {
                    return None;
                }
                next = i + 1;
                return Some((
                    Written {
                        shapes,
                        check: target.check,
                        mate: target.mate,
                        initial: None,
                    },
                    next,
                ));
            }
            Some(Kind::Word(Word::Man(victim))) if takes => {
                let stands = usize::from(matches!(self.word(i + 1), Some(Word::On)));
                let to = match self.square(i + 1 + stands).filter(|_| stands == 1) {
                    Some(square) => {
                        next = i + 3;
                        Target::Square(square)
                    }
                    None => {
                        next = i + 1;
                        Target::Man(*victim)
                    }
                };
                self.shapes_to(movers, to, from_file, from_rank, &mut shapes);
            }
            _ if takes => self.shapes_to(movers, Target::Last, from_file, from_rank, &mut shapes),
            _ => return None,
        }
        let written = Written {
            shapes,
            check: false,
            mate: false,
            initial: None,
        };
        Some((written, next))
    }

    fn shapes_to(
        &self,
        movers: &[Mover],
        to: Target,
        from_file: Option<shakmaty::File>,
        from_rank: Option<Rank>,
        shapes: &mut Vec<Shape>,
    ) {
        shapes.extend(movers.iter().map(|mover| Shape {
            from_file: mover.file.or(from_file),
            from_rank,
            takes: true,
            ..Shape::to(mover.role, to, mover.rank)
        }));
    }

    /// Takes in what is said behind a move (promotion, check, mate) and stores it.
    fn finish(&mut self, begin: usize, mut next: usize, mut written: Written) -> usize {
        if let Some((role, after)) = self.promotion(next, &written) {
            for shape in &mut written.shapes {
                shape.promotion = Some(role);
            }
            next = after;
        }
        loop {
            match (self.kind(next), self.word(next)) {
                (Some(Kind::Check), _) | (_, Some(Word::Check)) => written.check = true,
                (Some(Kind::Mate), _) | (_, Some(Word::Mate)) => written.mate = true,
                (_, Some(Word::EnPassant)) => {}
                _ => break,
            }
            next += 1;
        }
        let not = self.negated();
        self.push(Item::Move { written, not }, begin, next);
        next
    }

    fn promotion(&self, i: usize, written: &Written) -> Option<(Role, usize)> {
        let open = |shape: &Shape| {
            shape.role.is_none_or(|role| role == Role::Pawn)
                && shape.promotion.is_none()
                && matches!(shape.to, Target::Square(to) if matches!(to.rank(), Rank::First | Rank::Eighth))
        };
        if !written.shapes.iter().all(open) || written.shapes.is_empty() {
            return None;
        }
        let mut at = i;
        while at < i + 4
            && matches!(
                self.word(at),
                Some(Word::Promotes | Word::To | Word::Filler | Word::Then | Word::On)
            )
        {
            at += 1;
        }
        match self.word(at) {
            Some(Word::Man(role)) if !matches!(role, Role::King | Role::Pawn) => {
                let acts = matches!(self.word(at + 1), Some(Word::Takes | Word::To | Word::On))
                    || self.square(at + 1).is_some();
                (!acts).then_some((role, at + 1))
            }
            _ => None,
        }
    }

    /// Whether the words just before say that the move to come is not meant.
    fn negated(&self) -> bool {
        let mut before = self.out.iter().rev().map(|piece| &piece.item);
        match before.next() {
            Some(Item::Word(Word::Not)) => true,
            Some(Item::Word(Word::Filler | Word::To) | Item::Or) => {
                matches!(before.next(), Some(Item::Word(Word::Not)))
            }
            _ => false,
        }
    }
}
