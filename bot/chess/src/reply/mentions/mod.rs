//! Whether a text that others would read may give a move away, however it is written.
//!
//! Not the reader's question, which is what its writer claims, but a guard's: in doubt it says yes, since
//! a false alarm costs its writer one press and a leak costs everybody the position. A square that a
//! legal move goes to is enough, with whatever stands before it, a room or a table too, since "her majesty
//! visits room H7" tells it as well; so is a piece with a square, a direction or what a move does;
//! castling, promoting and capturing where the position allows it; and squares spelled out, in descriptive
//! notation, or scattered over several words.
//!
//! [`fold`] makes characters plain, `vocabulary.txt` has the words of each language.

mod fold;
mod squares;
#[cfg(test)]
mod tests;
mod vocabulary;

use std::collections::VecDeque;

use shakmaty::{Bitboard, CastlingMode, Chess, File, Move, Position, Role, Square, uci::UciMove};

use self::{
    fold::{Token, Word},
    vocabulary::{Sense, means, senses},
};
use crate::{Branch, Solution};

/// Most characters that are looked at; what is longer is taken to hold a move.
const MOST_CHARACTERS: usize = 20_000;
/// Most positions of a solution after the solver's moves; what lies deeper is found by the writer's own line.
const MOST_POSITIONS: usize = 2_000;
/// Most small words between a piece and what is said of it.
const MOST_BETWEEN: usize = 4;

/// The legal moves of some positions, as far as a text can tell them.
///
/// ```
/// use sealed_move_chess::reply::mentions::Moves;
/// use shakmaty::Chess;
///
/// let mut moves = Moves::default();
/// moves.add(&Chess::default());
/// assert!(moves.may_be_told_by("perhaps the k n i g h t, f 3"));
/// assert!(!moves.may_be_told_by("good morning"));
/// ```
#[derive(Clone, Debug, Default)]
pub struct Moves {
    /// Squares that moves go to.
    to: Bitboard,
    /// Kinds of pieces that can move.
    movers: Vec<Role>,
    /// Who can take what.
    captures: Vec<(Role, Role)>,
    /// Files from which and to which pawns can take.
    pawn_captures: Vec<(File, File)>,
    castles: bool,
    promotes: bool,
    en_passant: bool,
}

impl Moves {
    /// Adds the legal moves of a position.
    pub fn add(&mut self, position: &Chess) {
        for mv in position.legal_moves() {
            self.add_move(mv);
        }
    }

    /// Adds the legal moves at every position of a line, before its first move and after each.
    pub fn add_along(&mut self, start: &Chess, line: &[Move]) {
        let mut at = start.clone();
        self.add(&at);
        for &mv in line {
            if !at.is_legal(mv) {
                return;
            }
            at.play_unchecked(mv);
            self.add(&at);
        }
    }

    /// Adds the legal moves at every position of a solution, as far as there is room.
    pub fn add_solution(&mut self, start: &Chess, solution: &Solution) {
        let mut waiting: VecDeque<(Chess, &Branch)> = solution
            .keys
            .iter()
            .map(|key| (start.clone(), key))
            .collect();
        let mut room = MOST_POSITIONS;
        while let Some((mut at, branch)) = waiting.pop_front() {
            if room == 0 {
                return;
            }
            room -= 1;
            at.play_unchecked(branch.mv);
            self.add(&at);
            for defence in &branch.defences {
                let mut after = at.clone();
                after.play_unchecked(defence.mv);
                self.add(&after);
                waiting.extend(
                    defence
                        .continuations
                        .iter()
                        .map(|next| (after.clone(), next)),
                );
            }
        }
    }

    fn add_move(&mut self, mv: Move) {
        self.to.add(mv.to());
        note(&mut self.movers, mv.role());
        if let Some(taken) = mv.capture() {
            note(&mut self.captures, (mv.role(), taken));
        }
        self.promotes |= mv.promotion().is_some();
        self.en_passant |= mv.is_en_passant();
        if mv.is_castle() {
            self.castles = true;
            // Written as the king's move, too.
            if let UciMove::Normal { to, .. } = mv.to_uci(CastlingMode::Standard) {
                self.to.add(to);
            }
        }
        if let (Role::Pawn, true, Some(from)) = (mv.role(), mv.is_capture(), mv.from()) {
            note(&mut self.pawn_captures, (from.file(), mv.to().file()));
        }
    }

    /// Whether one of the moves may be told by `text`.
    pub fn may_be_told_by(&self, text: &str) -> bool {
        if self.movers.is_empty() {
            return false;
        }
        if text.char_indices().nth(MOST_CHARACTERS).is_some() {
            return true;
        }
        fold::views(text).iter().any(|tokens| self.told(tokens))
    }

    fn told(&self, tokens: &[Token]) -> bool {
        let few = tokens.len() <= 4;
        (0..tokens.len()).any(|at| {
            let rest = &tokens[at..];
            self.square_told(tokens, at)
                || self.descriptive(rest)
                || self.capture(rest, few)
                || self.special(rest)
                || self.piece_told(tokens, at)
                || line_told(rest)
        })
    }

    /// A square that a move goes to.
    fn square_told(&self, tokens: &[Token], at: usize) -> bool {
        let led = at > 0 && leads(&tokens[at - 1]);
        squares::told(&tokens[at..], led)
            .into_iter()
            .any(|square| self.to.contains(square))
    }

    /// `Q-R7`, `Kt-KB3`: the square seen from either side.
    fn descriptive(&self, rest: &[Token]) -> bool {
        let (Some(Token::Word(first)), second) = (rest.first(), rest.get(1)) else {
            return false;
        };
        let joined = match second {
            Some(Token::Word(second)) if first.text.len() <= 2 => {
                format!("{}{}", first.text, second.text)
            }
            _ => String::new(),
        };
        [&first.text, &joined]
            .into_iter()
            .flat_map(|text| squares::descriptive(text))
            .any(|square| self.to.contains(square))
    }

    /// `exd`, `QxP`, `Txd` and the like; `ed` where little else is said.
    fn capture(&self, rest: &[Token], few: bool) -> bool {
        let Some(Token::Word(word)) = rest.first() else {
            return false;
        };
        let pair = |from: &str, to: &str| -> bool {
            let file = |text: &str| match text.as_bytes() {
                [c] => File::from_char(char::from(*c)),
                _ => None,
            };
            match (file(from), file(to)) {
                (Some(from), Some(to)) => self.pawn_captures.contains(&(from, to)),
                _ => false,
            }
        };
        let text = word.text.as_str();
        if let Some((taker, taken)) = text.split_once('x')
            && (text != "txt" || word.capital)
            && !taker.is_empty()
            && taker.len() <= 2
        {
            let taken = squares::without_sign(taken);
            if pair(taker, taken) {
                return true;
            }
            // "RP" is the rook's pawn.
            let man = match taken.strip_prefix(['k', 'q', 'r', 'b', 'n']) {
                Some("p") => "p",
                _ => taken,
            };
            let (takers, takens) = (squares::roles(taker), squares::roles(man));
            return self
                .captures
                .iter()
                .any(|(a, b)| takers.contains(a) && takens.contains(b));
        }
        if few && text.len() == 2 && text.is_ascii() && word.text != "be" {
            return pair(&text[..1], &text[1..]);
        }
        // Parted by spaces: "b x c".
        match rest {
            [Token::Word(a), Token::Word(x), Token::Word(b), ..] if x.text == "x" => {
                pair(&a.text, &b.text)
                    || self.captures.iter().any(|(taker, taken)| {
                        squares::roles(&a.text).contains(taker)
                            && squares::roles(&b.text).contains(taken)
                    })
            }
            _ => false,
        }
    }

    /// Castling, promoting and taking en passant, where that is possible.
    fn special(&self, rest: &[Token]) -> bool {
        let Some(Token::Word(word)) = rest.first() else {
            return false;
        };
        let text = word.text.as_str();
        let zeros = |token: Option<&Token>| matches!(token, Some(Token::Word(word)) if word.text == "o" || word.text == "0");
        self.castles
            && (means(text, Sense::Castles)
                || matches!(text, "oo" | "ooo")
                || zeros(rest.first()) && zeros(rest.get(1)))
            || self.promotes && means(text, Sense::Promotes)
            || self.en_passant
                && (means(text, Sense::Passant)
                    || text == "e"
                        && matches!(rest.get(1), Some(Token::Word(word)) if word.text == "p"))
    }

    /// A piece, with where it goes or what it does.
    fn piece_told(&self, tokens: &[Token], at: usize) -> bool {
        let roles = men(tokens, at);
        if roles.is_empty() {
            return false;
        }
        let moves = roles.iter().any(|role| self.movers.contains(role));
        let concerned = moves
            || roles
                .iter()
                .any(|role| self.captures.iter().any(|(_, taken)| taken == role));
        let after = past_small(&tokens[at + 1..]);
        let back: Vec<Token> = tokens[..at].iter().rev().cloned().collect();
        let before = past_small(&back);
        // "give up the queen"
        let before = match before {
            [first, second, ..] if goes(first) && acts(second) => &before[1..],
            _ => before,
        };
        if concerned && after.first().is_some_and(acts) {
            return true;
        }
        // "the queen gives it all": what the queen does, not where the pupil goes.
        if concerned && before.first().is_some_and(acts) {
            return true;
        }
        if moves && (after.first().is_some_and(goes) || before.first().is_some_and(goes_alone)) {
            return true;
        }
        // "queen to rook seven"
        let mut said = after;
        let mut files = 0;
        while let [Token::Word(word), rest @ ..] = said {
            if files < 2 && senses(&word.text).any(|sense| matches!(sense, Sense::Man(_))) {
                files += 1;
                said = past_small(rest);
                continue;
            }
            return moves && files > 0 && squares::number(&word.text).is_some();
        }
        false
    }
}

fn note<T: PartialEq>(list: &mut Vec<T>, value: T) {
    if !list.contains(&value) {
        list.push(value);
    }
}

/// The pieces that a token names.
fn men(tokens: &[Token], at: usize) -> Vec<Role> {
    let word = match &tokens[at] {
        Token::Figure(role) => return vec![*role],
        Token::Word(word) => word,
        Token::Check | Token::Arrow => return Vec::new(),
    };
    // A person's name, and what belongs to one: "Mr King", "Queen's Gambit".
    if let Some(Token::Word(before)) = at.checked_sub(1).and_then(|at| tokens.get(at))
        && matches!(
            before.text.as_str(),
            "mr" | "mrs" | "ms" | "miss" | "dr" | "sir" | "frau" | "herr"
        )
    {
        return Vec::new();
    }
    if let Some(Token::Word(after)) = tokens.get(at + 1)
        && matches!(after.text.as_str(), "s" | "gambit" | "indian" | "of")
    {
        return Vec::new();
    }
    let named: Vec<Role> = senses(&word.text)
        .filter_map(|sense| match sense {
            Sense::Man(role) => Some(role),
            _ => None,
        })
        .collect();
    if !named.is_empty() {
        return named;
    }
    // A letter by itself has to be a capital, for "r" and "n" are words of chats.
    let letter = word.text.chars().count() == 1 && word.capital || word.text == "kt";
    match word.text.as_str() {
        _ if !letter => Vec::new(),
        // Words in some language.
        "a" | "e" | "i" | "o" | "c" | "s" | "d" | "p" | "и" | "а" | "с" | "к" | "в" => {
            Vec::new()
        }
        text => squares::roles(text),
    }
}

/// What follows the small words.
fn past_small(tokens: &[Token]) -> &[Token] {
    let small = tokens
        .iter()
        .take(MOST_BETWEEN)
        .take_while(|token| match token {
            Token::Word(word) => {
                means(&word.text, Sense::Small)
                    && !means(&word.text, Sense::Act)
                    && !means(&word.text, Sense::Where)
            }
            _ => false,
        })
        .count();
    &tokens[small..]
}

fn is(token: &Token, sense: Sense) -> bool {
    matches!(token, Token::Word(word) if means(&word.text, sense))
}

/// What a move does.
fn acts(token: &Token) -> bool {
    matches!(token, Token::Check) || is(token, Sense::Act)
}

/// Where a move goes.
fn goes(token: &Token) -> bool {
    matches!(token, Token::Arrow) || is(token, Sense::Where)
}

/// A direction that can stand before the piece: "up, the rook", but not "back the queen".
fn goes_alone(token: &Token) -> bool {
    matches!(token, Token::Arrow)
}

/// Whether a word makes the next one more likely to be a square.
fn leads(token: &Token) -> bool {
    match token {
        Token::Word(Word { text, .. }) => {
            senses(text).any(|sense| matches!(sense, Sense::Man(_) | Sense::Act))
        }
        Token::Figure(_) | Token::Arrow => true,
        Token::Check => false,
    }
}

/// "Sac on the h file", "mate in the corner".
fn line_told(rest: &[Token]) -> bool {
    if !rest.first().is_some_and(acts) {
        return false;
    }
    let mut rest = past_small(&rest[1..]);
    // "the h file"
    if let [Token::Word(word), after @ ..] = rest
        && word.text.len() == 1
    {
        rest = after;
    }
    // "back rank"
    if let [first, second, ..] = rest
        && is(first, Sense::Where)
        && is(second, Sense::Line)
    {
        return true;
    }
    rest.first().is_some_and(|token| is(token, Sense::Line))
}

/// The rank counted from either side.
fn seen_from_both(file: File, rank: u8) -> [Square; 2] {
    let rank = shakmaty::Rank::new(u32::from(rank.clamp(1, 8)) - 1);
    [
        Square::from_coords(file, rank),
        Square::from_coords(file, rank.flip_vertical()),
    ]
}
