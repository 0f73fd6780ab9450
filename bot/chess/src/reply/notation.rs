//! One written move: its letters, squares, signs and endings, in every notation.
//!
//! A written move yields *shapes*: everything it may mean by its letters alone, each with a rank that
//! says how literally the text was taken. The position decides later which one holds.

use shakmaty::{CastlingSide, Color, File, Rank, Role, Square};

use super::letters;
use super::scan::{Kind, Scanner};
use super::words::{self, Word};
use crate::Language;

/// Taken exactly as the group's language and the PGN standard write it.
pub(super) const EXACT: u8 = 0;
/// English capital letters in a group of another language.
pub(super) const ENGLISH: u8 = 1;
/// Small letters for pieces, pawn captures without `x`.
pub(super) const SLOPPY: u8 = 2;
/// Another language's capital letters, or a capital letter for a file.
pub(super) const FOREIGN: u8 = 3;
/// Another language's small letters.
pub(super) const GUESS: u8 = 4;

/// Where a move goes, as far as it was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Target {
    /// A square.
    Square(Square),
    /// Takes something on this file (`exd`).
    File(File),
    /// Takes a piece of this kind (`QxR`).
    Man(Role),
    /// Takes a piece of this kind on one of these files (`QxKBP`), a bit for each.
    ManOn(Role, u8),
    /// Takes whatever came last (`pawn takes`).
    Last,
    /// Takes en passant.
    Passant,
    /// Promotes, wherever that may be.
    Promotes,
}

/// From which side ranks are counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Ranks {
    /// From White's, as in algebraic notation.
    White,
    /// From the mover's, as in descriptive notation.
    Mover,
}

/// One thing a written move may mean.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Shape {
    /// The piece that moves; any when not said.
    pub role: Option<Role>,
    /// File it comes from.
    pub from_file: Option<File>,
    /// Rank it comes from.
    pub from_rank: Option<Rank>,
    /// Where it goes.
    pub to: Target,
    /// What the pawn becomes.
    pub promotion: Option<Role>,
    /// A capture was written.
    pub takes: bool,
    /// Castling; the side when said. `to` is then meaningless.
    pub castles: Option<Option<CastlingSide>>,
    /// Which of two like pieces: the king's or the queen's.
    pub wing: Option<CastlingSide>,
    /// How `from_rank` and the rank of `to` are counted.
    pub ranks: Ranks,
    /// How literally the text was taken; lower is better.
    pub rank: u8,
}

impl Shape {
    /// A move of `role` to `to`, nothing more said.
    pub fn to(role: Option<Role>, to: Target, rank: u8) -> Self {
        Self {
            role,
            from_file: None,
            from_rank: None,
            to,
            promotion: None,
            takes: false,
            castles: None,
            wing: None,
            ranks: Ranks::White,
            rank,
        }
    }

    /// The shape with its ranks counted from White's side.
    pub fn seen_by(&self, mover: Color) -> Self {
        let flipped = self.ranks == Ranks::Mover && mover.is_black();
        let mut seen = *self;
        seen.ranks = Ranks::White;
        if flipped {
            seen.from_rank = self.from_rank.map(Rank::flip_vertical);
            if let Target::Square(to) = self.to {
                seen.to = Target::Square(to.flip_vertical());
            }
        }
        seen
    }

    /// Castling to `side`, or to whichever side is possible.
    pub fn castling(side: Option<CastlingSide>) -> Self {
        Self {
            castles: Some(side),
            ..Self::to(Some(Role::King), Target::Last, EXACT)
        }
    }

    /// The square it comes from, when said in full.
    pub fn from(&self) -> Option<Square> {
        Some(Square::from_coords(self.from_file?, self.from_rank?))
    }

    /// A lone square such as `d5`, which may also be half of a move written in two.
    pub fn lone_square(&self) -> Option<Square> {
        match self.to {
            Target::Square(square)
                if self.role == Some(Role::Pawn)
                    && self.from_file.is_none()
                    && self.promotion.is_none() =>
            {
                Some(square)
            }
            _ => None,
        }
    }
}

/// A move as written.
#[derive(Clone, Debug)]
pub(super) struct WrittenMove {
    /// What it may mean.
    pub shapes: Vec<Shape>,
    /// Check was written.
    pub check: bool,
    /// Mate was written.
    pub mate: bool,
    /// A capital letter that can only be a piece letter, in lower case.
    pub initial: Option<char>,
}

impl WrittenMove {
    pub(super) fn shape(shape: Shape) -> Self {
        Self {
            shapes: vec![shape],
            check: false,
            mate: false,
            initial: None,
        }
    }
}

impl Scanner<'_> {
    pub(super) fn castling(&self, i: usize) -> Option<(Option<Kind>, usize)> {
        let zero = |c: char| matches!(c, 'O' | 'o' | '0' | 'О' | 'о');
        if !zero(self.at(i)) || (i > 0 && self.at(i - 1).is_alphabetic()) {
            return None;
        }
        let (mut count, mut dashes, mut end) = (1, 0, i + 1);
        while count < 4 {
            let spaced = self.at(end) == ' ' && self.at(end + 1) == '-' && self.at(end + 2) == ' ';
            let dash = usize::from(self.at(end) == '-') + 3 * usize::from(spaced);
            if !zero(self.at(end + dash)) {
                break;
            }
            count += 1;
            dashes += dash.min(1);
            end += dash + 1;
        }
        let small = self.text[i..end].iter().any(|&c| matches!(c, 'o' | 'о'));
        let side = match (count, dashes) {
            (2, 1) => CastlingSide::KingSide,
            (3, 2) => CastlingSide::QueenSide,
            (2, 0) if !small => CastlingSide::KingSide,
            (3, 0) if !small => CastlingSide::QueenSide,
            _ => return None,
        };
        let mut written = WrittenMove::shape(Shape::castling(Some(side)));
        let end = self.ending(end, &mut written)?;
        Some((Some(Kind::Move(written)), end))
    }

    /// A move that begins at `i` and ends where a word ends.
    pub(super) fn written(&self, i: usize) -> Option<(WrittenMove, usize)> {
        let mut found: Vec<(Shape, usize)> = Vec::new();
        for (role, rank, length) in self.men(i) {
            self.rest(i, i + length, role, rank, &mut found);
        }
        self.descriptive(i, &mut found);
        let mut best: Option<(WrittenMove, usize, usize)> = None;
        for (shape, end) in found {
            if let Some((written, _, bare)) = &mut best {
                if *bare == end {
                    if !written.shapes.contains(&shape) {
                        written.shapes.push(shape);
                    }
                    continue;
                }
                if *bare > end {
                    continue;
                }
            }
            let mut written = WrittenMove::shape(shape);
            if let Some(last) = self.ending(end, &mut written) {
                best = Some((written, last, end));
            }
        }
        let (mut written, end, _) = best?;
        written.shapes.sort_by_key(|shape| shape.rank);
        written.initial = self.initial(i, &written);
        Some((written, end))
    }

    /// The capital letter at `i` when it cannot be a file.
    fn initial(&self, i: usize, written: &WrittenMove) -> Option<char> {
        let c = self.at(i);
        if !c.is_uppercase() || written.shapes.iter().any(|s| s.castles.is_some()) {
            return None;
        }
        let pawn = letters::file(c).is_some_and(|file| {
            written.shapes.iter().any(|shape| match shape.to {
                Target::Square(to) => to.file().distance(file) <= 1,
                _ => true,
            })
        });
        let lower = c.to_lowercase().next()?;
        (!pawn).then_some(lower)
    }

    /// The pieces that the letters at `i` may name, with rank and length; a move without one comes last.
    fn men(&self, i: usize) -> Vec<(Option<Role>, u8, usize)> {
        let mut men: Vec<(Option<Role>, u8, usize)> = Vec::new();
        if let Some(role) = letters::figurine(self.at(i)) {
            return vec![(Some(role), EXACT, 1)];
        }
        // Most characters of most texts begin no piece's letter in any language.
        let Some(first) = lower(self.at(i)).filter(|&c| letters::begins(c)) else {
            return vec![(None, EXACT, 0)];
        };
        let second = lower(self.at(i + 1));
        let capital = self.at(i).is_uppercase();
        let mut known = false;
        let near = [self.first, self.own, Language::English];
        for (at, language) in near.into_iter().chain(Language::ALL).enumerate() {
            if at >= near.len() && known {
                break;
            }
            for &(letter, role) in letters::letters(language) {
                let mut rest = letter.chars();
                if rest.next() != Some(first) {
                    continue;
                }
                let length = match (rest.next(), second) {
                    (None, _) => 1,
                    (Some(wanted), Some(found)) if wanted == found => 2,
                    _ => continue,
                };
                known |= (1..near.len()).contains(&at);
                let rank = match (at, capital) {
                    (0, true) => EXACT,
                    (1..=2, true) => ENGLISH,
                    (0..=2, false) => SLOPPY,
                    (_, true) => FOREIGN,
                    (_, false) => GUESS,
                };
                if !men.iter().any(|&(r, _, n)| r == Some(role) && n == length) {
                    men.push((Some(role), rank, length));
                }
            }
        }
        // A letter typed twice: "NNe7".
        if capital && self.at(i + 1) == self.at(i) {
            let doubled: Vec<_> = men.iter().filter(|(_, _, n)| *n == 1).copied().collect();
            men.extend(
                doubled
                    .into_iter()
                    .map(|(role, rank, _)| (role, rank.max(SLOPPY), 2)),
            );
        }
        men.push((None, EXACT, 0));
        men
    }

    pub(super) fn square(&self, i: usize) -> Option<Square> {
        let file = letters::file(self.at(i))?;
        let rank = Rank::from_char(self.at(i + 1))?;
        Some(Square::from_coords(file, rank))
    }

    /// Capture signs and dashes at `i`, with a space on either side: where they end, whether there
    /// were any, and whether they say that something is taken.
    pub(super) fn signs(&self, i: usize) -> (usize, bool, bool) {
        let begin = i + usize::from(self.at(i) == ' ');
        let end = self.run_of(begin, |c| matches!(c, 'x' | 'X' | ':' | '-'));
        if end == begin || end - begin > 2 {
            return (i, false, false);
        }
        let takes = self.text[begin..end].iter().any(|&c| c != '-');
        (end + usize::from(self.at(end) == ' '), true, takes)
    }

    /// Everything that can follow the piece's letter.
    fn rest(
        &self,
        begin: usize,
        i: usize,
        role: Option<Role>,
        rank: u8,
        found: &mut Vec<(Shape, usize)>,
    ) {
        let (at, signed, took) = self.signs(i);
        if role.is_none() && signed && !took {
            return;
        }
        // "N(b1)-d2"
        let wrapped = usize::from(role.is_some() && self.at(at) == '(');
        let from = at + wrapped;
        let unwrap = |end: usize| match (wrapped, self.at(end)) {
            (0, _) => Some(end),
            (_, ')') => Some(end + 1),
            _ => None,
        };
        let capital_file = self.at(begin).is_uppercase() && role.is_none();
        let pawn = role.is_none().then_some(Role::Pawn).or(role);

        if let (Some(square), Some(end)) = (self.square(from), unwrap(from + 2)) {
            let (to_at, _, takes) = self.signs(end);
            if let Some(to) = self.square(to_at) {
                let shape = Shape {
                    from_file: Some(square.file()),
                    from_rank: Some(square.rank()),
                    takes: took || takes,
                    ..Shape::to(role, Target::Square(to), rank)
                };
                self.promotions(shape, to_at + 2, found);
            }
        }
        if let (Some(file), Some(end)) = (letters::file(self.at(from)), unwrap(from + 1)) {
            let (to_at, signed_after, takes) = self.signs(end);
            let spaced = self.at(end) == ' ';
            // "b x c3" is a capture; "b c3" and "b - c3" are not one move of a pawn.
            let plausible = role.is_some() || takes || (!spaced && !signed_after);
            if let Some(to) = self.square(to_at).filter(|_| plausible) {
                let rank = match role {
                    Some(_) => rank,
                    None if capital_file => FOREIGN,
                    None if to.file() == file => GUESS,
                    None if takes => EXACT,
                    None => SLOPPY,
                };
                let shape = Shape {
                    from_file: Some(file),
                    takes: took || takes,
                    ..Shape::to(pawn, Target::Square(to), rank)
                };
                self.promotions(shape, to_at + 2, found);
            } else if let Some(to) = letters::file(self.at(to_at))
                && role.is_none()
                && to.distance(file) == 1
                // "ed" may be a word, "ed+" and "ed=Q" are not.
                && (takes || (!signed_after && matches!(self.at(to_at + 1), '+' | '#' | '=')))
            {
                let shape = Shape {
                    from_file: Some(file),
                    takes: true,
                    ..Shape::to(Some(Role::Pawn), Target::File(to), SLOPPY)
                };
                self.promotions(shape, to_at + 1, found);
            }
        }
        if let (Some(row), Some(end), Some(_)) =
            (Rank::from_char(self.at(from)), unwrap(from + 1), role)
        {
            let (to_at, _, takes) = self.signs(end);
            if let Some(to) = self.square(to_at) {
                let shape = Shape {
                    from_rank: Some(row),
                    takes: took || takes,
                    ..Shape::to(role, Target::Square(to), rank)
                };
                self.promotions(shape, to_at + 2, found);
            }
        }
        // "Ne 7"
        if let (Some(file), Some(row), ' ') = (
            letters::file(self.at(at)),
            Rank::from_char(self.at(at + 2)),
            self.at(at + 1),
        ) && role.is_some()
            && self.at(begin).is_uppercase()
            && !matches!(self.at(at + 3), '.' | ')' | '-' | ':')
        {
            let to = Target::Square(Square::from_coords(file, row));
            let shape = Shape {
                takes: took,
                ..Shape::to(role, to, rank.max(FOREIGN))
            };
            found.push((shape, at + 3));
        }
        if let Some(to) = self.square(at) {
            // Without a letter it is a pawn's move, except after a bare capture sign.
            let role = if took && role.is_none() { None } else { pawn };
            let rank = if took && role.is_none() { SLOPPY } else { rank };
            let shape = Shape {
                takes: took,
                ..Shape::to(role, Target::Square(to), rank)
            };
            self.promotions(shape, at + 2, found);
        } else if took && role.is_some() {
            for (victim, how, length) in self.men(at) {
                if let Some(victim) = victim {
                    let shape = Shape {
                        takes: true,
                        ..Shape::to(role, Target::Man(victim), rank.max(how).max(SLOPPY))
                    };
                    self.promotions(shape, at + length, found);
                }
            }
        }
    }

    /// `shape` with each promotion that can be read at `i`, and without one.
    pub(super) fn promotions(&self, shape: Shape, i: usize, found: &mut Vec<(Shape, usize)>) {
        // What is taken may stand on the last rank: "PxR(Q)".
        let last = match shape.to {
            Target::Square(to) => matches!(to.rank(), Rank::First | Rank::Eighth),
            Target::Man(_) | Target::ManOn(..) => matches!(self.at(i), '(' | '/'),
            _ => false,
        };
        let equals = self.at(i) == '=' || (self.at(i) == ' ' && self.at(i + 1) == '=');
        if (last || equals) && matches!(shape.role, None | Some(Role::Pawn)) {
            let spaced = usize::from(self.at(i) == ' ' && self.at(i + 1) == '=');
            let mut at = i + spaced;
            let equals = usize::from(matches!(self.at(at), '=' | '/'));
            at += equals;
            at += usize::from(equals == 1 && self.at(at) == ' ');
            let open = usize::from(self.at(at) == '(');
            at += open;
            let word = self
                .role_word(at)
                .map(|(role, length)| (Some(role), EXACT, length));
            for (role, rank, length) in self.men(at).into_iter().chain(word) {
                let Some(role) = role.filter(|r| !matches!(r, Role::King | Role::Pawn)) else {
                    continue;
                };
                if open == 1 && self.at(at + length) != ')' {
                    continue;
                }
                // The small letter is how UCI writes it.
                let rank = if rank == SLOPPY { EXACT } else { rank };
                let shape = Shape {
                    promotion: Some(role),
                    rank: shape.rank.max(rank),
                    ..shape
                };
                found.push((shape, at + length + open));
            }
        }
        found.push((shape, i));
    }

    /// The piece that a whole word at `i` names: "Queen" in "e8=Queen".
    fn role_word(&self, i: usize) -> Option<(Role, usize)> {
        let end = self.run_of(i, char::is_alphabetic);
        if !(3..=12).contains(&(end - i)) {
            return None;
        }
        let word: String = self.text[i..end].iter().collect();
        match words::meaning(&word.to_lowercase()) {
            Word::Man(role) => Some((role, end - i)),
            _ => None,
        }
    }

    /// Reads what may stand behind a move, and checks that the word ends there.
    fn ending(&self, i: usize, written: &mut WrittenMove) -> Option<usize> {
        let mut end = i;
        for (text, check, mate) in [
            ("ch", true, false),
            ("mate", false, true),
            ("matt", false, true),
            ("mat", false, true),
            ("e.p.", false, false),
            ("ep", false, false),
            ("x", false, false),
        ] {
            let length = text.chars().count();
            let same = text
                .chars()
                .enumerate()
                .all(|(k, l)| self.at(i + k).to_ascii_lowercase() == l);
            if same && !self.at(i + length).is_alphanumeric() {
                written.check |= check;
                written.mate |= mate;
                end = i + length;
                break;
            }
        }
        if self.at(end).is_alphanumeric() {
            return None;
        }
        loop {
            match self.at(end) {
                '+' | '†' => written.check = true,
                '#' | '‡' | '≠' => written.mate = true,
                ':' if !self.at(end + 1).is_alphanumeric() => {
                    for shape in &mut written.shapes {
                        shape.takes = true;
                    }
                }
                // A single question mark may be a question; `!?` and the like are signs.
                '?' if !matches!(self.at(end + 1), '!' | '?')
                    && !matches!(self.at(end - 1), '!' | '?') =>
                {
                    break;
                }
                '=' if self.at(end + 1).is_alphanumeric() => return None,
                '!' | '?' | '=' | '±' | '∓' | '⩲' | '⩱' | '∞' | '□' => {}
                _ => break,
            }
            end += 1;
        }
        Some(end)
    }
}

/// The small letter of a character, where that is one letter.
fn lower(c: char) -> Option<char> {
    let mut letters = c.to_lowercase();
    let first = letters.next()?;
    letters.next().is_none().then_some(first)
}
