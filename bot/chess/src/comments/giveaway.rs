//! Whether words that are to go out with a post tell a move of it.
//!
//! Read as a reply is read, so in any notation and language that members may use; and, where that
//! reader leaves aside what is only mentioned, a few words at a time. Naming the piece that makes a key
//! together with the square it goes to is enough. A pawn's square alone, as in "the pawn on e4", is no
//! move unless it is in the solution: prose is full of squares.

use shakmaty::{Chess, Move, Position, Role, san::SanPlus};

use super::super::{Language, line, reply};

/// The most words that are read together.
const TOGETHER: usize = 6;

/// The most half-moves of the solution that words are held against.
const DEEP: usize = 24;

/// The first move that words tell, in SAN: a legal move of the position, or one of the solution
/// (`keys`, and the solver's moves of `line`, in SAN).
pub fn gives_away(
    position: &Chess,
    keys: &[String],
    line: &[String],
    text: &str,
) -> Option<String> {
    Secrets::of(position, keys, line).told_by(text)
}

/// What is still to be found from a position on, each move with the position it is made in.
pub(crate) struct Secrets {
    /// Where the solver is to move.
    pub(crate) start: Chess,
    /// The moves that are right at once.
    pub(crate) keys: Vec<(Chess, Move)>,
    /// Those that come later.
    pub(crate) later: Vec<(Chess, Move)>,
    /// A move that is possible at once and no secret: who reads the words has played it, and it is wrong.
    pub(crate) tried: Option<Move>,
}

impl Secrets {
    fn of(start: &Chess, keys: &[String], solution: &[String]) -> Self {
        let key = |san: &String| {
            line::moves(start, std::slice::from_ref(san))
                .first()
                .copied()
        };
        let mut position = start.clone();
        let mut later = Vec::new();
        for (at, mv) in line::moves(start, solution)
            .into_iter()
            .take(DEEP)
            .enumerate()
        {
            if at > 0 && at % 2 == 0 {
                later.push((position.clone(), mv));
            }
            position.play_unchecked(mv);
        }
        let mut keys: Vec<Move> = keys.iter().filter_map(key).collect();
        // What was found short of a key is as good a secret.
        if keys.is_empty() {
            keys.extend(solution.first().and_then(key));
        }
        Self {
            start: start.clone(),
            keys: keys.into_iter().map(|mv| (start.clone(), mv)).collect(),
            later,
            tried: None,
        }
    }

    /// The first move that words tell, in SAN.
    pub(crate) fn told_by(&self, text: &str) -> Option<String> {
        // Braces would hide what stands in them from the reader of replies.
        let text = text.replace(['{', '}'], " ");
        text.split(['\n', ';'])
            .flat_map(|part| part.split_inclusive(". "))
            .find_map(|sentence| in_sentence(&self.start, self, sentence))
    }

    /// Whether one of these moves, in whatever position it is made, brings the same piece to the same
    /// square as one that is still to be found.
    pub(crate) fn shown_by(&self, moves: &[Move]) -> bool {
        let arrives = |mv: Move| (mv.role(), landing(mv));
        let mut secret = self.keys.iter().chain(&self.later);
        secret.any(|(_, mv)| moves.iter().any(|shown| arrives(*shown) == arrives(*mv)))
    }

    fn has_key(&self, mv: Move) -> bool {
        self.keys.iter().any(|(_, key)| *key == mv)
    }
}

fn in_sentence(position: &Chess, solution: &Secrets, sentence: &str) -> Option<String> {
    let words: Vec<&str> = sentence.split_whitespace().collect();
    if let Some(mv) = first_move(position, solution, sentence) {
        return Some(san(position, mv));
    }
    for from in 0..words.len() {
        for to in from + 1..=words.len().min(from + TOGETHER) {
            let some = words[from..to].join(" ");
            // Every move has a square, a castling sign or a word for it.
            if let Some(mv) = first_move(position, solution, &some) {
                return Some(san(position, mv));
            }
        }
    }
    let later = solution.later.iter().find(|(before, mv)| {
        let to = landing(*mv).to_string();
        words.iter().any(|word| {
            squares_of(word).any(|square| square == to)
                && word.chars().count() > 2
                && reads_as(before, word) == Some(*mv)
        })
    });
    if let Some((before, mv)) = later {
        return Some(san(before, *mv));
    }
    let man_and_square = |before: &Chess, mv: Move| {
        let to = landing(mv).to_string();
        before.turn() == position.turn()
            && names(&words, mv.role())
            && words
                .iter()
                .any(|word| squares_of(word).any(|square| square == to))
    };
    solution
        .keys
        .iter()
        .find(|(before, mv)| man_and_square(before, *mv))
        .map(|(before, mv)| san(before, *mv))
}

/// The move that words tell when they are read as a reply.
fn first_move(position: &Chess, solution: &Secrets, words: &str) -> Option<Move> {
    let mv = reads_as(position, words).filter(|mv| solution.tried != Some(*mv))?;
    let bare = mv.role() == Role::Pawn && !mv.is_capture() && mv.promotion().is_none();
    (!bare || solution.has_key(mv) || says_pawn_moves(words)).then_some(mv)
}

/// Whether a pawn's quiet move is written as one: numbered, from square to square, or with a sign.
fn says_pawn_moves(words: &str) -> bool {
    let numbered = words.split_whitespace().any(|word| {
        let rest = word.trim_start_matches(|c: char| c.is_ascii_digit());
        rest.len() < word.len() && rest.starts_with('.')
    });
    let squares = words.split_whitespace().flat_map(squares_of).count();
    numbered || squares > 1 && words.split_whitespace().count() == 1 || words.contains(['!', '='])
}

fn reads_as(position: &Chess, words: &str) -> Option<Move> {
    let words: String = words.chars().take(reply::MOST_CHARACTERS).collect();
    let reading = reply::read(position, &[], &words, Language::English).ok()?;
    let start = reading.tree.node(reading.tree.cursor());
    let first = start.children.first()?;
    let node = reading.tree.node(*first);
    node.mv.filter(|_| !node.assumed)
}

/// The squares written in a word.
fn squares_of(word: &str) -> impl Iterator<Item = String> + '_ {
    let bytes = word.as_bytes();
    (1..bytes.len()).filter_map(move |at| {
        let (file, rank) = (bytes[at - 1].to_ascii_lowercase(), bytes[at]);
        (matches!(file, b'a'..=b'h') && matches!(rank, b'1'..=b'8'))
            .then(|| format!("{}{}", char::from(file), char::from(rank)))
    })
}

/// Where the piece that moves ends up; the king's square where castling is.
fn landing(mv: Move) -> shakmaty::Square {
    match mv.castling_side() {
        Some(side) => shakmaty::Square::from_coords(side.king_to_file(), mv.to().rank()),
        None => mv.to(),
    }
}

fn names(words: &[&str], role: Role) -> bool {
    words.iter().any(|word| {
        let word = word
            .trim_matches(|c: char| !c.is_alphanumeric())
            .to_lowercase();
        let bare = word.split('\'').next().unwrap_or_default();
        reply::man_named(bare) == Some(role)
            || bare.strip_suffix('s').and_then(reply::man_named) == Some(role)
    })
}

fn san(position: &Chess, mv: Move) -> String {
    SanPlus::from_move(position.clone(), mv).to_string()
}
