//! A diagram in words: enough to set the position up, and what is pointed out on it.

use shakmaty::{CastlingSide, Chess, Color, EnPassantMode, Position, Role, Square};

use super::super::text::{And, Flight, Guard, List, Pieces, Squares, Step, Text, Wings, number};
use super::Diagram;
use sealed_move_chess::{fact::At, scene::SceneMark};

const ORDER: [Role; 6] = [
    Role::King,
    Role::Queen,
    Role::Rook,
    Role::Bishop,
    Role::Knight,
    Role::Pawn,
];

pub(super) fn alt(diagram: &Diagram) -> Vec<Text> {
    let mut facts = placement(&diagram.position);
    if let Some((from, to)) = diagram.last_move {
        facts.push(Text::AltLastMove {
            from: At(from),
            to: At(to),
        });
    }
    facts.extend(pointed_out(diagram));
    facts
}

/// The position by pieces and squares, with castling rights and en passant where there are any.
pub(in super::super) fn placement(position: &Chess) -> Vec<Text> {
    let mut facts = Vec::new();
    for color in [Color::White, Color::Black] {
        facts.push(Text::AltSide {
            side: color.into(),
            pieces: List {
                list: ORDER
                    .into_iter()
                    .filter_map(|role| pieces(position, color, role))
                    .collect(),
            },
        });
    }
    for color in [Color::White, Color::Black] {
        let castles = position.castles();
        let king = castles.has(color, CastlingSide::KingSide);
        let queen = castles.has(color, CastlingSide::QueenSide);
        let wings = match (king, queen) {
            (true, true) => Wings::Both,
            (true, false) => Wings::Short,
            (false, true) => Wings::Long,
            (false, false) => continue,
        };
        facts.push(Text::AltCastles {
            side: color.into(),
            wings,
        });
    }
    if let Some(square) = position.ep_square(EnPassantMode::Legal) {
        facts.push(Text::AltEnPassant { on: At(square) });
    }
    facts.push(Text::AltToMove {
        side: position.turn().into(),
    });
    facts
}

/// "rooks d1 and d2", or nothing.
fn pieces(position: &Chess, color: Color, role: Role) -> Option<Pieces> {
    let there = position.board().by_color(color) & position.board().by_role(role);
    Some(Pieces::AltPieces {
        piece: role.into(),
        number: number(there.count()),
        squares: squares(there)?,
    })
}

/// Squares, where there are any.
fn squares(squares: impl IntoIterator<Item = Square>) -> Option<Squares> {
    let all: Vec<At> = squares.into_iter().map(At).collect();
    match all.len() {
        0 => None,
        2 => Some(Squares::Two(And { and: all })),
        _ => Some(Squares::Row(List { list: all })),
    }
}

fn pointed_out(diagram: &Diagram) -> Vec<Text> {
    let mut facts = Vec::new();
    let marks = &diagram.marks;
    let marked = |pick: fn(&SceneMark) -> Option<Square>| squares(marks.iter().filter_map(pick));
    for mark in marks {
        if let SceneMark::Refutation(from, to) = *mark {
            facts.push(Text::AltRefutation {
                from: At(from),
                to: At(to),
            });
        }
    }
    let mut steps: Vec<(u8, Square, Square)> = marks
        .iter()
        .filter_map(|mark| match *mark {
            SceneMark::Step(from, to, number) => Some((number, from, to)),
            _ => None,
        })
        .collect();
    steps.sort_by_key(|step| step.0);
    if !steps.is_empty() {
        let step = |(number, from, to): (u8, Square, Square)| Step::AltStep {
            number: number.into(),
            from: At(from),
            to: At(to),
        };
        facts.push(Text::AltSteps {
            steps: List {
                list: steps.into_iter().map(step).collect(),
            },
        });
    }
    let open = marked(|m| match *m {
        SceneMark::OpenFlight(s) => Some(s),
        _ => None,
    });
    facts.extend(open.map(|squares| Text::AltOpen { squares }));
    let guarded: Vec<Flight> = marks
        .iter()
        .filter_map(|mark| match *mark {
            SceneMark::GuardedFlight(s) => Some(flight(diagram, s)),
            _ => None,
        })
        .collect();
    if !guarded.is_empty() {
        facts.push(Text::AltGuarded {
            flights: List { list: guarded },
        });
    }
    let blocked = marked(|m| match *m {
        SceneMark::BlockedFlight(s) => Some(s),
        _ => None,
    });
    facts.extend(blocked.map(|squares| Text::AltBlocked { squares }));
    // Guards of squares that carry no sign of their own.
    for mark in marks {
        if let SceneMark::Guard(from, to) = *mark
            && !marks.contains(&SceneMark::GuardedFlight(to))
        {
            facts.push(Text::AltGuards {
                piece: diagram.position.board().role_at(from).into(),
                from: At(from),
                to: At(to),
            });
        }
    }
    let looked_at = marked(|m| match *m {
        SceneMark::Square(s) => Some(s),
        _ => None,
    });
    facts.extend(looked_at.map(|squares| Text::AltMarked { squares }));
    facts
}

fn flight(diagram: &Diagram, flight: Square) -> Flight {
    let guards: Vec<Guard> = diagram
        .marks
        .iter()
        .filter_map(|mark| match *mark {
            SceneMark::Guard(from, to) if to == flight => Some(Guard::AltGuard {
                piece: diagram.position.board().role_at(from).into(),
                on: At(from),
            }),
            _ => None,
        })
        .collect();
    let on = At(flight);
    if guards.is_empty() {
        Flight::AltFlight { on }
    } else {
        Flight::AltFlightBy {
            on,
            guards: And { and: guards },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        sample::{english, position},
        text::Alt,
    };

    fn said(facts: Vec<Text>) -> String {
        Alt::Facts(facts).in_words(&english())
    }

    #[test]
    fn rights_that_matter_are_told() {
        let text = said(placement(&position(
            "r3k2r/8/8/4Pp2/8/8/8/R3K3 w Qk f6 0 1",
        )));
        assert!(
            text.contains("White may castle on the queen's side."),
            "{text}"
        );
        assert!(
            text.contains("Black may castle on the king's side."),
            "{text}"
        );
        assert!(
            text.ends_with("En passant is possible on f6. White to move."),
            "{text}"
        );
    }

    #[test]
    fn marks_are_told_with_the_guard_of_each_flight() {
        let mut diagram = Diagram::of(position("3R2k1/5ppp/8/8/8/8/5PPP/6K1 b - - 0 1"));
        diagram.last_move = Some((Square::D1, Square::D8));
        diagram.marks = vec![
            SceneMark::GuardedFlight(Square::F8),
            SceneMark::Guard(Square::D8, Square::F8),
            SceneMark::BlockedFlight(Square::F7),
            SceneMark::BlockedFlight(Square::G7),
            SceneMark::Step(Square::A1, Square::A2, 2),
            SceneMark::Step(Square::D1, Square::D8, 1),
        ];
        let text = diagram.alt().in_words(&english());
        assert!(
            text.ends_with(
                "Black to move. Last move d1 to d8. Numbered arrows: 1 from d1 to d8, 2 from a1 to a2. \
                 Guarded flights: f8 by rook d8. Blocked by own pieces: f7 and g7."
            ),
            "{text}"
        );
    }

    /// The position can be rebuilt from the words alone, and is the same.
    #[test]
    fn the_words_set_up_the_position() {
        for fen in [
            "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w - - 0 1",
            "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 b - - 0 1",
            "8/8/8/2k5/3q4/8/1K6/8 w - - 0 1",
        ] {
            let wanted = position(fen);
            let mut board = shakmaty::Board::empty();
            let text = said(placement(&wanted));
            for sentence in text.split(". ") {
                let Some((who, rest)) = sentence.split_once(": ") else {
                    continue;
                };
                let color = if who == "White" {
                    Color::White
                } else {
                    Color::Black
                };
                let mut role = Role::King;
                for token in rest.replace(',', " ").split_whitespace() {
                    if let Some(named) = ORDER
                        .into_iter()
                        .find(|&r| token.trim_end_matches('s') == format!("{r:?}").to_lowercase())
                    {
                        role = named;
                    } else if let Ok(square) = token.parse::<Square>() {
                        board.set_piece_at(square, role.of(color));
                    }
                }
            }
            assert_eq!(&board, wanted.board(), "{text}");
        }
    }

    #[test]
    fn alt_text_fits_a_chat() {
        let mut diagram = Diagram::of(Chess::default());
        diagram.marks = Square::ALL.into_iter().map(SceneMark::Square).collect();
        diagram.marks.extend(
            Square::ALL
                .into_iter()
                .map(|s| SceneMark::Guard(Square::A1, s)),
        );
        let text = diagram.alt().in_words(&english());
        assert!(text.chars().count() <= 1_024 && text.ends_with('…'));
    }
}
