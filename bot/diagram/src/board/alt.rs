//! A diagram in words: enough to set the position up, and what is pointed out on it.

use std::fmt::Write;

use shakmaty::{CastlingSide, Chess, Color, EnPassantMode, Position, Role, Square};

use super::super::pieces::{side, word};
use super::Diagram;
use sealed_move_chess::scene::SceneMark;

/// The longest alt text that every chat takes.
pub(in super::super) const LONGEST: usize = 1_024;

const ORDER: [Role; 6] = [
    Role::King,
    Role::Queen,
    Role::Rook,
    Role::Bishop,
    Role::Knight,
    Role::Pawn,
];

pub(super) fn alt(diagram: &Diagram) -> String {
    let mut out = men(&diagram.position);
    if let Some((from, to)) = diagram.last_move {
        let _ = write!(out, " Last move {from} to {to}.");
    }
    out.push_str(&pointed_out(diagram));
    cut(out)
}

/// Shortens `text` to what a chat takes, at a word's end.
pub(in super::super) fn cut(text: String) -> String {
    if text.chars().count() <= LONGEST {
        return text;
    }
    let head: String = text.chars().take(LONGEST - 1).collect();
    let end = head.rfind(' ').unwrap_or(head.len());
    format!("{}…", &head[..end])
}

/// The position by men and squares, with castling rights and en passant where there are any.
pub(in super::super) fn men(position: &Chess) -> String {
    let mut out = String::new();
    for color in [Color::White, Color::Black] {
        let groups: Vec<String> = ORDER
            .into_iter()
            .filter_map(|role| group(position, color, role))
            .collect();
        let _ = write!(out, "{}: {}. ", side(color), groups.join(", "));
    }
    for color in [Color::White, Color::Black] {
        let castles = position.castles();
        let king = castles.has(color, CastlingSide::KingSide);
        let queen = castles.has(color, CastlingSide::QueenSide);
        let where_to = match (king, queen) {
            (true, true) => "on both sides",
            (true, false) => "on the king's side",
            (false, true) => "on the queen's side",
            (false, false) => continue,
        };
        let _ = write!(out, "{} may castle {where_to}. ", side(color));
    }
    if let Some(square) = position.ep_square(EnPassantMode::Legal) {
        let _ = write!(out, "En passant is possible on {square}. ");
    }
    let _ = write!(out, "{} to move.", side(position.turn()));
    out
}

/// "rooks d1 and d2", or nothing.
fn group(position: &Chess, color: Color, role: Role) -> Option<String> {
    let squares: Vec<String> = (position.board().by_color(color) & position.board().by_role(role))
        .into_iter()
        .map(|s| s.to_string())
        .collect();
    let plural = if squares.len() > 1 { "s" } else { "" };
    (!squares.is_empty()).then(|| format!("{}{plural} {}", word(role), listed(&squares)))
}

/// "a", "a and b", "a, b, c".
fn listed(items: &[String]) -> String {
    match items {
        [a, b] => format!("{a} and {b}"),
        _ => items.join(", "),
    }
}

fn pointed_out(diagram: &Diagram) -> String {
    let mut out = String::new();
    let marks = &diagram.marks;
    let squares = |pick: fn(&SceneMark) -> Option<Square>| -> Vec<String> {
        marks
            .iter()
            .filter_map(pick)
            .map(|s| s.to_string())
            .collect()
    };
    for mark in marks {
        if let SceneMark::Refutation(from, to) = mark {
            let _ = write!(out, " Arrow for the refutation: {from} to {to}.");
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
        let steps: Vec<String> = steps
            .iter()
            .map(|(number, from, to)| format!("{number}, {from} to {to}"))
            .collect();
        let _ = write!(out, " Numbered arrows: {}.", steps.join("; "));
    }
    let open = squares(|m| match *m {
        SceneMark::OpenFlight(s) => Some(s),
        _ => None,
    });
    if !open.is_empty() {
        let _ = write!(out, " Open flights: {}.", listed(&open));
    }
    let guarded: Vec<String> = marks
        .iter()
        .filter_map(|mark| match *mark {
            SceneMark::GuardedFlight(s) => Some(guarded_by(diagram, s)),
            _ => None,
        })
        .collect();
    if !guarded.is_empty() {
        let _ = write!(out, " Guarded flights: {}.", guarded.join("; "));
    }
    let blocked = squares(|m| match *m {
        SceneMark::BlockedFlight(s) => Some(s),
        _ => None,
    });
    if !blocked.is_empty() {
        let _ = write!(out, " Blocked by own men: {}.", listed(&blocked));
    }
    // Guards of squares that carry no sign of their own.
    for mark in marks {
        if let SceneMark::Guard(from, to) = *mark
            && !marks.contains(&SceneMark::GuardedFlight(to))
        {
            let _ = write!(out, " {} guards {to}.", capital(&man(diagram, from)));
        }
    }
    let looked_at = squares(|m| match *m {
        SceneMark::Square(s) => Some(s),
        _ => None,
    });
    if !looked_at.is_empty() {
        let _ = write!(out, " Marked: {}.", listed(&looked_at));
    }
    out
}

fn guarded_by(diagram: &Diagram, flight: Square) -> String {
    let guards: Vec<String> = diagram
        .marks
        .iter()
        .filter_map(|mark| match *mark {
            SceneMark::Guard(from, to) if to == flight => Some(man(diagram, from)),
            _ => None,
        })
        .collect();
    if guards.is_empty() {
        flight.to_string()
    } else {
        format!("{flight} by {}", guards.join(" and "))
    }
}

/// "rook d8".
fn man(diagram: &Diagram, square: Square) -> String {
    match diagram.position.board().role_at(square) {
        Some(role) => format!("{} {square}", word(role)),
        None => square.to_string(),
    }
}

fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars
        .next()
        .map(|c| c.to_uppercase().chain(chars).collect())
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample::position;

    #[test]
    fn rights_that_matter_are_told() {
        let text = men(&position("r3k2r/8/8/4Pp2/8/8/8/R3K3 w Qk f6 0 1"));
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
        let text = diagram.alt();
        assert!(
            text.ends_with(
                "Black to move. Last move d1 to d8. Numbered arrows: 1, d1 to d8; 2, a1 to a2. \
                 Guarded flights: f8 by rook d8. Blocked by own men: f7 and g7."
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
            let text = men(&wanted);
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
                        .find(|&r| token.trim_end_matches('s') == word(r))
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
        let text = diagram.alt();
        assert!(text.chars().count() <= LONGEST && text.ends_with('…'));
    }
}
