//! What a member is told, as facts. Plain and short; never more of the solution than the member wrote.

use shakmaty::{Chess, Move, Position};

use crate::fact::{List, Or, Remark};
use crate::line;
use crate::reply::{Doubt, Trouble, TroubleKind};

/// Most possible moves that are listed.
const MOST_LISTED: usize = 14;
/// Most characters of the member's own that are repeated.
const MOST_QUOTED: usize = 40;

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

/// Nothing is claimed as the answer.
pub(super) fn not_claimed(doubt: Doubt, readings: &[String]) -> Vec<Remark> {
    let taken = match doubt {
        Doubt::Asked => Remark::TakenAsQuestion,
        Doubt::Unsure => Remark::TakenAsThought,
        Doubt::Rejected => Remark::NothingClaimed,
    };
    let offer = match readings {
        [] => Remark::WriteYourMove,
        [one] => Remark::SendJustThat {
            reading: one.clone(),
        },
        several => Remark::SendOneOf {
            readings: Or {
                or: several.to_vec(),
            },
        },
    };
    vec![taken, offer]
}

/// The reply can be taken in several ways.
pub(super) fn several_ways(readings: &[String]) -> Remark {
    match readings {
        [] | [_] => Remark::SeveralWays,
        several => Remark::SeveralWaysOf {
            readings: Or {
                or: several.to_vec(),
            },
        },
    }
}

/// Something that is no legal move; `followed` is the line up to there, if there is one.
pub(super) fn trouble(trouble: &Trouble, followed: Option<String>) -> Vec<Remark> {
    let written = || {
        let quoted: String = trouble.written.chars().take(MOST_QUOTED).collect();
        quoted.into()
    };
    let moves = || trouble.possible.iter().cloned().map(Into::into).collect();
    let mut said = Vec::new();
    said.extend(followed.map(|line| Remark::Followed { line: line.into() }));
    match trouble.kind {
        TroubleKind::Illegal => {
            said.push(match &trouble.reason {
                None => Remark::Impossible { written: written() },
                Some(reason) => Remark::ImpossibleBecause {
                    written: written(),
                    why: reason.clone().into(),
                },
            });
            if (1..=MOST_LISTED).contains(&trouble.possible.len()) {
                said.push(Remark::PossibleThere {
                    moves: List { list: moves() },
                });
            }
        }
        TroubleKind::Unclear if trouble.possible.len() == 2 => said.push(Remark::Ambiguous {
            written: written(),
            moves: Or { or: moves() },
        }),
        TroubleKind::Unclear => said.push(Remark::AmbiguousAmong {
            written: written(),
            moves: List { list: moves() },
        }),
        TroubleKind::Garbled => said.push(Remark::Garbled { written: written() }),
    }
    said
}
