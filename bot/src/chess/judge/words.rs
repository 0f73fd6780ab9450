//! What a member is told. Plain and short; never more of the solution than the member wrote.

use shakmaty::{Chess, Move, Position};

use crate::chess::line;
use crate::chess::reply::{MOST_CHARACTERS, Trouble, TroubleKind};

/// Most possible moves that are listed.
const MOST_LISTED: usize = 14;

/// Moves from the start of the problem, numbered from 1.
pub(super) fn numbered(start: &Chess, moves: &[Move]) -> String {
    line::numbered(start.turn(), 1, &line::sans(start, moves))
}

/// The last `count` moves of a line from the start of the problem, numbered as they stand in it.
pub(super) fn numbered_end(start: &Chess, moves: &[Move], count: usize) -> String {
    let sans = line::sans(start, moves);
    let skip = sans.len().saturating_sub(count);
    let flip = skip % 2 == 1;
    let turn = if flip { !start.turn() } else { start.turn() };
    // White's move after Black's opens a new number.
    let half = skip + usize::from(start.turn().is_black());
    let first = 1 + u32::try_from(half / 2).unwrap_or(0);
    line::numbered(turn, first, &sans[skip..])
}

pub(super) fn too_long() -> String {
    format!(
        "That is too long to read: I look at {MOST_CHARACTERS} characters at most. Send the moves alone."
    )
}

pub(super) fn no_move() -> String {
    "I find no move in that, so nothing has changed. Write one any way you like: letters and squares, \
     from square to square, or in words."
        .to_owned()
}

pub(super) fn undecided(what: &str) -> String {
    format!("I could not settle {what} in the time I have. Your coach will look at it.")
}

pub(super) fn trouble(trouble: &Trouble, followed: &str) -> String {
    let quoted: String = trouble.written.chars().take(40).collect();
    let upto = match followed {
        "" => String::new(),
        line => format!("I followed you up to {line}. "),
    };
    let listed = |moves: &[String]| moves.join(", ");
    match trouble.kind {
        TroubleKind::Illegal => {
            let legal = match trouble.possible.len() {
                0 => String::new(),
                n if n > MOST_LISTED => String::new(),
                _ => format!(" Possible there: {}.", listed(&trouble.possible)),
            };
            match trouble.reason.as_str() {
                "" => format!("{upto}\u{201c}{quoted}\u{201d} is not possible.{legal}"),
                reason => {
                    format!("{upto}\u{201c}{quoted}\u{201d} is not possible: {reason}.{legal}")
                }
            }
        }
        TroubleKind::Unclear => {
            let choices = match trouble.possible.as_slice() {
                [one, other] => format!("{one} or {other}"),
                several => listed(several),
            };
            format!(
                "{upto}\u{201c}{quoted}\u{201d} could be more than one move: {choices}. Which do you mean?"
            )
        }
        TroubleKind::Garbled => {
            format!(
                "{upto}I could not read \u{201c}{quoted}\u{201d} as a move. Please write it again."
            )
        }
    }
}

/// "two-mover", "three-mover", "mate in 7".
pub(super) fn kind(moves: u8) -> String {
    match moves {
        2 => "two-mover".into(),
        3 => "three-mover".into(),
        4 => "four-mover".into(),
        n => format!("mate in {n}"),
    }
}
