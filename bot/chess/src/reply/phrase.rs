//! From tokens to items: words that make up a move become one, and what stands around moves is kept
//! for whoever has to tell an answer from talk.

use shakmaty::{CastlingSide, File, Rank, Role, Square};

use super::letters;
use super::notation::{EXACT, SLOPPY, Shape, Target, WrittenMove};
use super::scan::{Kind, Token};
use super::words::Word;
use crate::Language;

/// A part of a reply.
#[derive(Clone, Debug)]
pub(super) enum Item {
    /// A move; `not` when the writer says that it is not meant.
    Move { written: WrittenMove, not: bool },
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
    file: Option<File>,
    wing: Option<CastlingSide>,
    rank: u8,
}

impl Mover {
    /// A piece said in words.
    fn of(role: Option<Role>, rank: u8) -> Self {
        Self {
            role,
            file: None,
            wing: None,
            rank,
        }
    }
}

impl Phrases<'_> {
    fn kind(&self, i: usize) -> Option<&Kind> {
        self.tokens.get(i).map(|token| &token.kind)
    }

    fn word(&self, i: usize) -> Option<Word> {
        match self.kind(i)? {
            Kind::Word(word) | Kind::Letter(_, word) | Kind::Files(_, _, word) => Some(*word),
            _ => None,
        }
    }

    /// A letter standing alone that names a file.
    fn lone_file(&self, i: usize) -> Option<File> {
        match self.kind(i)? {
            Kind::Letter(letter, _) => letters::file(*letter),
            _ => None,
        }
    }

    fn man(&self, i: usize) -> Option<Role> {
        match self.word(i)? {
            Word::Man(role) => Some(role),
            _ => None,
        }
    }

    /// Whether a sentence ends with the word before `i`: "that gives up the rook. Bxd8+". After the short
    /// forms of old books the stop ends none: "Kt. takes P".
    fn ends_sentence(&self, i: usize) -> bool {
        i.checked_sub(1)
            .and_then(|before| self.tokens.get(before))
            .is_some_and(|token| token.stop && token.end - token.start > 3)
    }

    /// Whether the dots at `i` end what was said, "after hours of coffee... Ne7+", and put no move after
    /// White's.
    fn trails_off(&self, i: usize) -> bool {
        let Some(before) = i.checked_sub(1).map(|at| &self.tokens[at]) else {
            return false;
        };
        let Some(next) = self.tokens.get(i + 1) else {
            return false;
        };
        match (&before.kind, &next.kind) {
            (Kind::Number { .. }, _) => false,
            (_, Kind::Word(Word::TakesBack | Word::No | Word::Deny)) => true,
            (Kind::Word(_), _) => {
                before.end == self.tokens[i].start && next.start > self.tokens[i].end
            }
            _ => false,
        }
    }

    /// The place after the small words at `i`.
    fn past_fillers(&self, mut i: usize) -> usize {
        let most = i + 3;
        while i < most && matches!(self.word(i), Some(Word::Filler | Word::To | Word::On)) {
            i += 1;
        }
        i
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
                    written = WrittenMove::shape(Shape {
                        from_file: Some(from.file()),
                        from_rank: Some(from.rank()),
                        ..Shape::to(None, Target::Square(to), EXACT)
                    });
                    next = i + 3;
                } else if let Some((stood, end)) = self.standing(i) {
                    (written, next) = (stood, end);
                } else if self.square(i).is_some()
                    && self.word(next) == Some(Word::With)
                    && let Some((role, end)) = self.instrument(next)
                {
                    // "on d8 with the queen"
                    for shape in &mut written.shapes {
                        shape.role = Some(role);
                    }
                    next = end;
                }
                return self.finish(i, next, written);
            }
            Kind::Files(from, to, word) => {
                let (from, to, word) = (*from, *to, *word);
                if !self.alone(i, word) {
                    return self.plain(i, word);
                }
                let shape = Shape {
                    from_file: Some(from),
                    takes: true,
                    ..Shape::to(Some(Role::Pawn), Target::File(to), SLOPPY)
                };
                return self.finish(i, i + 1, WrittenMove::shape(shape));
            }
            Kind::Word(word @ (Word::Man(_) | Word::WingOf(_) | Word::WingMan(..))) => {
                let word = *word;
                let Some((mover, after)) = self.named(i) else {
                    return self.plain(i, word);
                };
                if !self.ends_sentence(after)
                    && let Some((written, next)) = self.spoken(after, &[mover], false)
                {
                    return self.finish(i, next, written);
                }
                if let Some((written, next)) = self.new_man(i) {
                    return self.finish(i, next, written);
                }
                match word {
                    Word::Man(_) => Item::Word(word),
                    _ => Item::Word(Word::Filler),
                }
            }
            Kind::Letter(letter, word)
                if letters::file(*letter).is_some() && self.man(i + 1).is_some() =>
            {
                let word = *word;
                let file = self.lone_file(i);
                let Some((mover, after)) = self.named(i + 1) else {
                    return self.plain(i, word);
                };
                // "a knight" may be any; "the a knight" is the one of that file.
                let before = i.checked_sub(1).and_then(|at| self.word(at));
                let article = matches!(word, Word::To | Word::Then | Word::Or | Word::Filler)
                    && before != Some(Word::Filler);
                let mut movers = vec![Mover { file, ..mover }];
                if article {
                    movers.push(mover);
                }
                if !self.ends_sentence(after)
                    && let Some((written, next)) = self.spoken(after, &movers, false)
                {
                    return self.finish(i, next, written);
                }
                return self.plain(i, word);
            }
            Kind::Letter(letter, word) => {
                let (letter, word) = (*letter, *word);
                let movers = self.movers(letter);
                // "r b7": a small letter that is no file and no word is a piece's as well.
                let small = word != Word::Other
                    || letters::file(letter).is_some()
                    || self.square(i + 1).is_none();
                let alone = !letter.is_uppercase() && small;
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
            Kind::Dots if self.trails_off(i) => Item::Comma,
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

    /// A word that does not begin with a piece.
    fn plain(&mut self, i: usize, word: Word) -> usize {
        let item = match word {
            Word::Takes => {
                let nobody = Mover::of(None, SLOPPY);
                let follows = self
                    .out
                    .iter()
                    .rev()
                    .find(|piece| !matches!(piece.item, Item::Comma | Item::Number { .. }))
                    .is_some_and(|piece| matches!(piece.item, Item::Move { .. }));
                if let Some((written, next)) = self.either_man(i) {
                    return self.finish(i, next, written);
                }
                if let Some((mut written, mut next)) = self.spoken(i, &[nobody], false) {
                    let passant = self.passant(next).is_some();
                    let with = self.instrument(next);
                    if let Some((role, after)) = with {
                        for shape in &mut written.shapes {
                            shape.role = Some(role);
                        }
                        next = after;
                    }
                    let last = written.shapes.iter().any(|s| s.to == Target::Last);
                    // "I take with the knight: Nxd5" announces the move that comes.
                    let more = &self.tokens[next.min(self.tokens.len())..];
                    let whole = !more.iter().any(|t| matches!(t.kind, Kind::Move(_)));
                    if follows || !last || (with.is_some() && whole) || passant {
                        return self.finish(i, next, written);
                    }
                }
                Item::Word(word)
            }
            Word::Puts => match self.put(i + 1) {
                Some((written, next)) => return self.finish(i, next, written),
                None => Item::Word(Word::Filler),
            },
            Word::Promotes => match self.promoting(i) {
                Some((written, next)) => return self.finish(i, next, written),
                None => Item::Word(word),
            },
            // In Czech the word for it also says "by the way".
            Word::EnPassant if !self.after_move() && self.own != Language::Czech => {
                let shape = Shape {
                    takes: true,
                    ..Shape::to(Some(Role::Pawn), Target::Passant, EXACT)
                };
                return self.finish(i, i + 1, WrittenMove::shape(shape));
            }
            Word::With => Item::Word(Word::Then),
            Word::WingOf(_) | Word::WingMan(..) => Item::Word(Word::Filler),
            Word::Castles(_) => {
                let (side, next) = self.wing(i);
                return self.finish(i, next, WrittenMove::shape(Shape::castling(side)));
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
            Some(Word::Wing(side) | Word::WingOf(side)) => Some(side),
            Some(Word::Man(Role::King)) => Some(CastlingSide::KingSide),
            Some(Word::Man(Role::Queen)) => Some(CastlingSide::QueenSide),
            _ => None,
        };
        // "castles K", "castles QR"
        if let Some(Kind::Letter(letter, _)) = self.kind(i + 1) {
            match letter {
                'K' => return (Some(CastlingSide::KingSide), i + 2),
                'Q' => return (Some(CastlingSide::QueenSide), i + 2),
                _ => {}
            }
        }
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
                    movers.push(Mover::of(Some(role), rank));
                }
            }
        }
        if let Some(file) = letters::file(letter) {
            movers.push(Mover {
                file: Some(file),
                ..Mover::of(Some(Role::Pawn), SLOPPY)
            });
        }
        movers
    }

    /// Reads what a piece does, from the token after it: "takes d5", "on b4 to d5", "takes rook".
    /// With `verb` a word that says so must come first.
    fn spoken(&self, begin: usize, movers: &[Mover], verb: bool) -> Option<(WrittenMove, usize)> {
        if movers.is_empty() {
            return None;
        }
        let mut i = begin;
        // "avec la tour je prends d8"
        if matches!(self.kind(i), Some(Kind::Word(Word::Filler)))
            && self.word(i + 1) == Some(Word::Takes)
        {
            i += 1;
        }
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
            && (stands == 1 || (goes(i + 1) && !self.closes(i + 1)) || self.square(i + 1).is_some())
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
                Some(Word::To | Word::Puts) => moved = true,
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
                    // A letter alone may be a bishop's: "b to c4" is no pawn's move.
                    if mover.file.is_some() && mover.rank != EXACT && !takes {
                        continue;
                    }
                    let best = target.shapes.iter().map(|shape| shape.rank).min();
                    for shape in &target.shapes {
                        let bare = matches!(shape.role, None | Some(Role::Pawn));
                        // "the rook Bxd8": where the letter is first a piece's, no file stands there.
                        let first = Some(shape.rank) == best;
                        if !bare || !first || shape.castles.is_some() {
                            continue;
                        }
                        shapes.push(Shape {
                            role: mover.role,
                            from_file: mover.file.or(from_file).or(shape.from_file),
                            from_rank: from_rank.or(shape.from_rank),
                            takes: takes || shape.takes,
                            wing: mover.wing,
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
                    WrittenMove {
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
            // "e takes d", "the e pawn takes d"
            Some(Kind::Letter(letter, _)) if takes && self.pawns(movers).is_some() => {
                let pawns = self.pawns(movers).unwrap_or_default();
                let to = letters::file(*letter)?;
                next = i + 1;
                self.shapes_to(&pawns, Target::File(to), from_file, from_rank, &mut shapes);
            }
            _ if takes => self.shapes_to(movers, Target::Last, from_file, from_rank, &mut shapes),
            _ => return None,
        }
        let written = WrittenMove {
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
        from_file: Option<File>,
        from_rank: Option<Rank>,
        shapes: &mut Vec<Shape>,
    ) {
        shapes.extend(movers.iter().map(|mover| Shape {
            from_file: mover.file.or(from_file),
            from_rank,
            takes: true,
            wing: mover.wing,
            ..Shape::to(mover.role, to, mover.rank)
        }));
    }

    /// The pawns of a file among the movers.
    fn pawns(&self, movers: &[Mover]) -> Option<Vec<Mover>> {
        let pawn = |mover: &&Mover| mover.role == Some(Role::Pawn) && mover.file.is_some();
        let pawns: Vec<Mover> = movers.iter().filter(pawn).copied().collect();
        (!pawns.is_empty()).then_some(pawns)
    }

    /// A piece named by words at `i`, and where they end: "knight", "queen's knight", "tour du roi".
    fn named(&self, i: usize) -> Option<(Mover, usize)> {
        match self.word(i)? {
            Word::WingMan(wing, role) => Some((
                Mover {
                    wing: Some(wing),
                    ..Mover::of(Some(role), EXACT)
                },
                i + 1,
            )),
            Word::WingOf(wing) => Some((
                Mover {
                    wing: Some(wing),
                    ..Mover::of(Some(self.man(i + 1)?), EXACT)
                },
                i + 2,
            )),
            Word::Man(role) => {
                let mover = Mover::of(Some(role), EXACT);
                let owner = self.past_fillers(i + 1);
                let wing = match self.man(owner).filter(|_| owner > i + 1) {
                    Some(Role::King) => CastlingSide::KingSide,
                    Some(Role::Queen) => CastlingSide::QueenSide,
                    _ => return Some((mover, i + 1)),
                };
                let goes = matches!(self.word(owner + 1), Some(Word::Takes | Word::To))
                    || self.square(owner + 1).is_some();
                let sided = matches!(role, Role::Rook | Role::Knight | Role::Bishop | Role::Pawn);
                // "rook to queen eight" speaks of a square.
                if goes && sided && !matches!(self.word(i + 1), Some(Word::To)) {
                    let wing = Some(wing);
                    return Some((Mover { wing, ..mover }, owner + 1));
                }
                Some((mover, i + 1))
            }
            _ => None,
        }
    }

    /// "f5 knight to d6": a piece told by where it stands.
    fn standing(&self, i: usize) -> Option<(WrittenMove, usize)> {
        let from = self.square(i)?;
        let role = self.man(i + 1)?;
        matches!(self.word(i + 2), Some(Word::To | Word::Takes)).then_some(())?;
        let (mut written, next) = self.spoken(i + 2, &[Mover::of(Some(role), EXACT)], true)?;
        for shape in &mut written.shapes {
            (shape.from_file, shape.from_rank) = (Some(from.file()), Some(from.rank()));
        }
        Some((written, next))
    }

    /// The piece with which something is done, "with the queen", and where the words end.
    fn instrument(&self, i: usize) -> Option<(Role, usize)> {
        let (at, said) = match self.word(i) {
            Some(Word::With) => (self.past_fillers(i + 1), true),
            _ => (i, false),
        };
        // Where nouns have a case for it the piece alone says as much: "взять на d8 ферзём".
        let cased = matches!(
            self.own,
            Language::Russian | Language::Polish | Language::Czech | Language::Hungarian
        );
        let role = match self.kind(at)? {
            Kind::Word(Word::Man(role)) if said || cased => *role,
            Kind::Letter(letter, _) if said && letter.is_uppercase() => self
                .movers(*letter)
                .iter()
                .find_map(|mover| mover.role.filter(|role| *role != Role::Pawn))?,
            _ => return None,
        };
        let acts = match self.word(at + 1) {
            Some(Word::Takes) => !self.closes(at + 1),
            Some(Word::To | Word::On) => true,
            _ => self.square(at + 1).is_some(),
        };
        (!acts).then_some((role, at + 1))
    }

    /// "взять ладьёй на d8": where nouns have cases, a piece between the verb and the square may take or
    /// be taken, and endings are not told apart here.
    fn either_man(&self, i: usize) -> Option<(WrittenMove, usize)> {
        let cased = matches!(
            self.own,
            Language::Russian | Language::Polish | Language::Czech | Language::Hungarian
        );
        let role = self.man(i + 1).filter(|_| cased)?;
        let at = self.past_fillers(i + 2);
        let to = Target::Square(self.square(at).filter(|_| at > i + 2)?);
        let takes = |role| Shape {
            takes: true,
            ..Shape::to(role, to, EXACT)
        };
        let mut written = WrittenMove::shape(takes(Some(role)));
        if let Some((other, next)) = self.instrument(at + 1) {
            written = WrittenMove::shape(takes(Some(other)));
            return Some((written, next));
        }
        Some((written, at + 1))
    }

    /// "sac the queen on h7", after the verb.
    fn put(&self, i: usize) -> Option<(WrittenMove, usize)> {
        let at = self.past_fillers(i);
        let (mover, after) = self.named(at)?;
        matches!(self.word(after), Some(Word::On | Word::To)).then_some(())?;
        let to = self.square(after + 1)?;
        let shape = Shape::to(mover.role, Target::Square(to), EXACT);
        let wing = mover.wing;
        Some((WrittenMove::shape(Shape { wing, ..shape }), after + 2))
    }

    /// "promote to a queen", "promote on e8 to a knight", "promotes the pawn to a rook".
    fn promoting(&self, i: usize) -> Option<(WrittenMove, usize)> {
        if self.after_move() {
            return None;
        }
        let mut at = self.past_fillers(i + 1);
        if self.man(at) == Some(Role::Pawn) {
            at = self.past_fillers(at + 1);
        }
        let mut to = Target::Promotes;
        if let Some(square) = self.square(at) {
            to = Target::Square(square);
            at = self.past_fillers(at + 1);
        }
        let role = self.piece_made(at)?;
        let mut next = at + 1;
        if to == Target::Promotes
            && matches!(self.word(next), Some(Word::On | Word::To))
            && let Some(square) = self.square(next + 1)
        {
            to = Target::Square(square);
            next += 2;
        }
        let shape = Shape {
            promotion: Some(role),
            ..Shape::to(Some(Role::Pawn), to, EXACT)
        };
        Some((WrittenMove::shape(shape), next))
    }

    /// "pawn makes a queen": a pawn at `i` that is said to become something.
    fn new_man(&self, i: usize) -> Option<(WrittenMove, usize)> {
        let pawn = self.man(i) == Some(Role::Pawn);
        (pawn && self.word(i + 1) == Some(Word::Promotes)).then_some(())?;
        self.promoting(i + 1)
    }

    /// What a pawn may become, at `i`.
    fn piece_made(&self, i: usize) -> Option<Role> {
        self.man(i)
            .filter(|role| !matches!(role, Role::King | Role::Pawn))
    }

    /// Where words for "en passant" that begin at `i` end.
    fn passant(&self, i: usize) -> Option<usize> {
        let at = self.past_fillers(i);
        (self.word(at) == Some(Word::EnPassant)).then_some(at + 1)
    }

    /// Whether the last thing said, but for small words, is a move.
    fn after_move(&self) -> bool {
        self.out
            .iter()
            .rev()
            .find(|piece| {
                !matches!(
                    piece.item,
                    Item::Comma | Item::Word(Word::Filler | Word::To | Word::On | Word::Then)
                )
            })
            .is_some_and(|piece| matches!(piece.item, Item::Move { .. }))
    }

    /// Whether two files stand as a move does: between moves, numbers and signs, not in prose.
    fn alone(&self, i: usize, word: Word) -> bool {
        let before = i.checked_sub(1).and_then(|at| self.kind(at));
        let after = self.kind(i + 1);
        let plain = word == Word::Other;
        let sign = |kind: Option<&Kind>| match kind {
            Some(Kind::Word(word) | Kind::Letter(_, word)) => {
                plain
                    && matches!(
                        word,
                        Word::Then
                            | Word::Claim
                            | Word::Answer
                            | Word::Check
                            | Word::Mate
                            | Word::EnPassant
                            | Word::Filler
                            | Word::Not
                            | Word::TakesBack
                    )
            }
            _ => true,
        };
        // "de d8" is a word and a square.
        let from = !plain && matches!(after, Some(Kind::Move(_)));
        sign(before) && sign(after) && !from
    }

    /// Takes in what is said behind a move (promotion, check, mate) and stores it.
    fn finish(&mut self, begin: usize, mut next: usize, mut written: WrittenMove) -> usize {
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
                // "dis ch", "double check"
                (_, Some(Word::Filler)) if self.word(next + 1) == Some(Word::Check) => {}
                // "Kh8 schlagen": the verb comes last.
                (_, Some(Word::Takes)) if self.closes(next) => {
                    for shape in &mut written.shapes {
                        shape.takes = true;
                    }
                }
                // In Turkish one word is the king and check.
                (_, Some(Word::Man(Role::King)))
                    if self.own == Language::Turkish && self.square(next + 1).is_none() =>
                {
                    written.check = true;
                }
                _ => match self.passant(next) {
                    Some(after) => {
                        for shape in &mut written.shapes {
                            shape.takes = true;
                            if matches!(shape.to, Target::Last | Target::Man(Role::Pawn)) {
                                shape.to = Target::Passant;
                            }
                        }
                        next = after;
                        continue;
                    }
                    None => break,
                },
            }
            next += 1;
        }
        let not = self.negated();
        self.push(Item::Move { written, not }, begin, next);
        next
    }

    /// Whether a word for capture at `i` only ends what was said, as a verb does in some languages.
    fn closes(&self, i: usize) -> bool {
        let last = matches!(
            self.own,
            Language::German | Language::Dutch | Language::Turkish | Language::Hungarian
        );
        let on = matches!(self.kind(i + 1), Some(Kind::Move(_) | Kind::Letter(..)))
            || match self.word(i + 1) {
                // In Turkish one word is the king and check.
                Some(Word::Man(Role::King)) if self.own == Language::Turkish => {
                    self.square(i + 2).is_some()
                }
                Some(Word::Man(_) | Word::To | Word::On | Word::Filler) => true,
                _ => false,
            };
        last && !on
    }

    fn promotion(&self, i: usize, written: &WrittenMove) -> Option<(Role, usize)> {
        let open = |shape: &Shape| {
            shape.role.is_none_or(|role| role == Role::Pawn)
                && shape.promotion.is_none()
                && matches!(shape.to, Target::Square(to) if matches!(to.rank(), Rank::First | Rank::Eighth))
        };
        if !written.shapes.iter().all(open) || written.shapes.is_empty() {
            return None;
        }
        let mut at = i;
        while at < i + 7
            && (matches!(
                self.word(at),
                Some(Word::Promotes | Word::To | Word::Filler | Word::Then | Word::On | Word::With)
            ) || matches!(self.kind(at), Some(Kind::Comma)))
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
