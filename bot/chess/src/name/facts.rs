//! What is told of a mate on the board: its name, then what each piece does, a fact each.

// What a fact says stands beside its name; its values are named after what they are.
#![allow(missing_docs)]

use std::collections::BTreeMap;

use serde::Serialize;
use shakmaty::Square;

use super::Naming;
use crate::fact::{And, At, Count, Pattern, Piece};

/// A statement about a king who is mated, or is not.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Seen {
    /// The side to move has a move, or is not in check.
    NoMate,
    /// No pattern with a name fits.
    MateUnnamed,
    /// One pattern fits.
    MateNamed { pattern: Pattern },
    /// Several do; the most particular comes first.
    MateNamedAlso {
        pattern: Pattern,
        others: And<Pattern>,
    },
    /// A piece checks and does nothing else.
    ChecksKing { piece: Piece, on: At },
    /// It also takes flights.
    ChecksKingAndGuards {
        piece: Piece,
        on: At,
        flights: And<At>,
    },
    /// A piece takes flights without giving check.
    GuardsFlights {
        piece: Piece,
        on: At,
        flights: And<At>,
    },
    /// Neighbouring squares that the king's own pieces hold.
    OwnMenBlock { squares: And<At>, number: Count },
}

impl Naming {
    /// What is to be told of it, the name first and the checking pieces before the others:
    ///
    /// ```
    /// use sealed_move_chess::{name::name, parse_fen};
    ///
    /// let read = parse_fen("3R2k1/5ppp/8/8/8/8/8/6K1 b - - 0 1").unwrap();
    /// let facts = serde_json::to_value(name(&read.position).facts()).unwrap();
    /// assert_eq!(
    ///     facts,
    ///     serde_json::json!([
    ///         { "is": "mate-named", "pattern": { "pattern": "back-rank" } },
    ///         {
    ///             "is": "checks-king-and-guards",
    ///             "piece": { "piece": "rook" },
    ///             "on": "d8",
    ///             "flights": { "and": ["f8", "h8"] },
    ///         },
    ///         { "is": "own-men-block", "squares": { "and": ["f7", "g7", "h7"] }, "number": { "count": 3 } },
    ///     ])
    /// );
    /// ```
    pub fn facts(&self) -> Vec<Seen> {
        if !self.mate {
            return vec![Seen::NoMate];
        }
        let mut facts = vec![self.named()];
        let mut takes: BTreeMap<Square, Vec<At>> = BTreeMap::new();
        for (flight, guards) in &self.guards {
            let flights = squares(std::slice::from_ref(flight));
            for guard in squares(guards) {
                takes.entry(guard.0).or_default().extend(&flights);
            }
        }
        for on in squares(&self.checkers) {
            let piece = self.pieces.get(&on.0).copied().into();
            facts.push(match takes.remove(&on.0) {
                Some(and) => Seen::ChecksKingAndGuards {
                    piece,
                    on,
                    flights: And { and },
                },
                None => Seen::ChecksKing { piece, on },
            });
        }
        facts.extend(takes.into_iter().map(|(guard, and)| Seen::GuardsFlights {
            piece: self.pieces.get(&guard).copied().into(),
            on: At(guard),
            flights: And { and },
        }));
        let blocked = squares(&self.blocked);
        if !blocked.is_empty() {
            facts.push(Seen::OwnMenBlock {
                // A king has eight neighbouring squares.
                number: Count::from(blocked.len() as u8),
                squares: And { and: blocked },
            });
        }
        facts
    }

    fn named(&self) -> Seen {
        let pattern = |name: &String| Pattern {
            pattern: name.clone(),
        };
        match self.patterns.split_first() {
            None => Seen::MateUnnamed,
            Some((first, [])) => Seen::MateNamed {
                pattern: pattern(first),
            },
            Some((first, others)) => Seen::MateNamedAlso {
                pattern: pattern(first),
                others: And {
                    and: others.iter().map(pattern).collect(),
                },
            },
        }
    }
}

/// Squares by their names; all that [`Naming`] holds are some.
fn squares(names: &[String]) -> Vec<At> {
    let square = |name: &String| name.parse().ok().map(At);
    names.iter().filter_map(square).collect()
}
