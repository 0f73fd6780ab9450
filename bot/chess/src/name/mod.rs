//! Names the mate on the board.
//!
//! Pure geometry: where the king stands, who checks him, who takes each flight, what his own men
//! block. [`frame`] lays that out, the families of patterns ([`lines`], [`knights`], [`bishops`],
//! [`rooks`], [`queens`], [`general`]) recognise it, and [`table`] puts them in order with a title and
//! a definition for people. Takes a position, gives a [`Naming`]; touches nothing else.

mod bishops;
mod frame;
mod general;
mod knights;
mod lines;
mod queens;
mod rooks;
mod table;

use std::collections::BTreeMap;

use serde::Serialize;
use shakmaty::{Chess, Position, Role, Square};

use frame::Frame;
pub use table::{definition, names, source, title};

/// What is to be said of the mate on the board; serialises to the object that `name --json` writes.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Naming {
    /// Whether the side to move is mated at all.
    pub mate: bool,
    /// Names of the patterns that fit, the most particular first; none for a mate without a name.
    pub patterns: Vec<String>,
    /// Squares of the checking pieces.
    pub checkers: Vec<String>,
    /// For each flight of the king to move, the squares of the pieces that take it. A flight is a
    /// neighbouring square that is empty or holds an enemy man; one that the king may go to is not
    /// listed, so that in a mate every flight is.
    pub guards: BTreeMap<String, Vec<String>>,
    /// Neighbouring squares blocked by the king's own men.
    pub blocked: Vec<String>,
    /// The pieces on the squares named above, for [`Naming::sentence`].
    #[serde(skip)]
    men: BTreeMap<String, Role>,
}

/// Names the mate on the board; `mate` is false and `patterns` empty when there is none.
///
/// ```
/// use sealed_move_chess::{name::name, parse_fen};
///
/// let read = parse_fen("3R2k1/5ppp/8/8/8/8/8/6K1 b - - 0 1").unwrap();
/// let naming = name(&read.position);
/// assert_eq!(naming.patterns, ["back-rank"]);
/// assert_eq!(naming.checkers, ["d8"]);
/// assert_eq!(naming.guards["h8"], ["d8"]); // the rook looks through the king
/// assert_eq!(naming.blocked, ["f7", "g7", "h7"]);
/// ```
pub fn name(position: &Chess) -> Naming {
    let Some(frame) = Frame::of_king(position.board(), position.turn()) else {
        return Naming::default();
    };
    let mate = position.is_checkmate();
    let patterns = if mate {
        table::fitting(&frame.as_black(position.turn()))
    } else {
        Vec::new()
    };
    let mut men = BTreeMap::new();
    let mut squares = |set: shakmaty::Bitboard| -> Vec<String> {
        set.into_iter()
            .map(|square: Square| {
                if let Some(role) = position.board().role_at(square) {
                    men.insert(square.to_string(), role);
                }
                square.to_string()
            })
            .collect()
    };
    Naming {
        mate,
        patterns: patterns.into_iter().map(str::to_owned).collect(),
        checkers: squares(frame.checkers),
        guards: frame
            .flights
            .iter()
            .filter(|flight| flight.guards.any())
            .map(|flight| (flight.square.to_string(), squares(flight.guards)))
            .collect(),
        blocked: squares(frame.blocked),
        men,
    }
}

impl Naming {
    /// The same for people, in a sentence or a few:
    ///
    /// ```
    /// use sealed_move_chess::{name::name, parse_fen};
    ///
    /// let read = parse_fen("3R2k1/5ppp/8/8/8/8/8/6K1 b - - 0 1").unwrap();
    /// assert_eq!(
    ///     name(&read.position).sentence(),
    ///     "Back-rank mate. The rook on d8 gives check and takes f8 and h8; \
    ///      the king's own men block f7, g7 and h7."
    /// );
    /// ```
    pub fn sentence(&self) -> String {
        if !self.mate {
            return "No mate: the side to move still has a move, or is not in check.".to_owned();
        }
        let mut text = match self.patterns.split_first() {
            None => "Mate, by no pattern with a name. ".to_owned(),
            Some((first, rest)) => {
                let mut text = title(first).to_owned();
                if !rest.is_empty() {
                    let rest: Vec<String> = rest.iter().map(|p| lower_first(title(p))).collect();
                    text.push_str(&format!(" (also {})", listed(&rest)));
                }
                text.push_str(". ");
                text
            }
        };
        text.push_str(&self.work().join("; "));
        text.push('.');
        text
    }

    /// What each piece does, the checking ones first: one clause a piece.
    fn work(&self) -> Vec<String> {
        let mut takes: BTreeMap<&str, Vec<String>> = BTreeMap::new();
        for (flight, guards) in &self.guards {
            for guard in guards {
                takes.entry(guard).or_default().push(flight.clone());
            }
        }
        let mut clauses = Vec::new();
        for checker in &self.checkers {
            let clause = format!("{} gives check", self.piece(checker));
            clauses.push(match takes.remove(checker.as_str()) {
                Some(flights) => format!("{clause} and takes {}", listed(&flights)),
                None => clause,
            });
        }
        for (guard, flights) in takes {
            clauses.push(format!("{} takes {}", self.piece(guard), listed(&flights)));
        }
        if !self.blocked.is_empty() {
            let men = if self.blocked.len() == 1 {
                "man blocks"
            } else {
                "men block"
            };
            clauses.push(format!("the king's own {men} {}", listed(&self.blocked)));
        }
        if let Some(first) = clauses.first_mut() {
            *first = upper_first(first);
        }
        clauses
    }

    fn piece(&self, square: &str) -> String {
        let role = match self.men.get(square) {
            Some(Role::Pawn) => "pawn",
            Some(Role::Knight) => "knight",
            Some(Role::Bishop) => "bishop",
            Some(Role::Rook) => "rook",
            Some(Role::Queen) => "queen",
            Some(Role::King) => "king",
            None => "piece",
        };
        format!("the {role} on {square}")
    }
}

/// `a`, `a and b`, `a, b and c`.
fn listed(items: &[String]) -> String {
    match items {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

fn upper_first(text: &str) -> String {
    let mut chars = text.chars();
    chars
        .next()
        .map_or_else(String::new, |c| c.to_uppercase().chain(chars).collect())
}

/// Lower case at the start unless the title begins with a person's name.
fn lower_first(title: &str) -> String {
    if title
        .split_whitespace()
        .next()
        .is_some_and(|word| word.ends_with("'s"))
    {
        return title.to_owned();
    }
    let mut chars = title.chars();
    chars
        .next()
        .map_or_else(String::new, |c| c.to_lowercase().chain(chars).collect())
}

#[cfg(test)]
mod tests;
