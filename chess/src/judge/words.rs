//! What a member is told. Plain and short; never more of the solution than the member wrote.

use shakmaty::{Chess, Move, Position};

use crate::line;
use crate::reply::{Doubt, MOST_CHARACTERS, Trouble, TroubleKind};

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

/// Nothing is claimed as the answer.
pub(super) fn not_claimed(doubt: Doubt, readings: &[String]) -> String {
    let offer = match readings {
        [] => "Write the move you would play.".to_owned(),
        [one] => format!(
            "If {one} is your answer, send just that; if not, write the move you would play."
        ),
        several => format!(
            "If one of these is your answer, send just that: {}.",
            listed(several)
        ),
    };
    let taken = match doubt {
        Doubt::Asked => "I take that as a question, not as an answer",
        Doubt::Unsure => "I take that as a thought, not as an answer",
        Doubt::Rejected => "I find no move in that which you say is your answer",
    };
    format!("{taken}: nothing was judged, and it costs nothing. {offer}")
}

/// The reply can be taken in several ways.
pub(super) fn several_ways(readings: &[String]) -> String {
    match readings {
        [] | [_] => {
            "I can take that in more than one way, so nothing was judged, and it costs nothing. \
             Send just the moves of your answer."
                .to_owned()
        }
        several => format!(
            "I can take that in more than one way, so nothing was judged, and it costs nothing. Do you mean {}?",
            listed(several)
        ),
    }
}

/// "1.Ne7+, 1.Rh3 or 1.Qxh7+".
fn listed(lines: &[String]) -> String {
    match lines {
        [] => String::new(),
        [one] => one.clone(),
        [start @ .., last] => format!("{} or {last}", start.join(", ")),
    }
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
