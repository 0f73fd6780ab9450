//! What is told of the reasons: two statements at most.

use shakmaty::{Role, Square};

use super::reason::{Back, Facts, LostGuard, Reason};
use super::{balance, exchange};
use crate::fact::{At, Because, Why};
use crate::{Budget, Stipulation, prove};

/// All that is told of a wrong move.
pub(super) fn whole(facts: &Facts, reasons: &[Reason]) -> Why {
    let why = point(facts, reasons);
    let slower = reasons.iter().find_map(|reason| match reason {
        Reason::Slower { moves } => Some((*moves).into()),
        _ => None,
    });
    match slower {
        None => why.into(),
        Some(moves) if why.is_empty() => Because::MatesTooLate { moves }.into(),
        Some(moves) => Because::MatesInTheEnd {
            why: why.into(),
            moves,
        }
        .into(),
    }
}

/// The same without what is said of a mate that comes too late.
pub(super) fn point(facts: &Facts, reasons: &[Reason]) -> Vec<Because> {
    let mut said: Vec<Because> = Vec::new();
    let spoken = reasons
        .iter()
        .filter(|reason| !matches!(reason, Reason::Slower { .. }));
    let mut place = Place {
        first: true,
        alone: spoken.count() == 1,
        late: reasons.iter().any(|r| matches!(r, Reason::Slower { .. })),
    };
    for reason in reasons {
        if said.len() == 2 {
            break;
        }
        said.extend(because(facts, *reason, place));
        place.first = said.is_empty();
    }
    // One statement is enough where the first says two things already.
    if said.first().is_some_and(says_two_things) {
        said.truncate(1);
    }
    said
}

fn says_two_things(because: &Because) -> bool {
    matches!(
        because,
        Because::MatesFirst { .. }
            | Because::TakesUnanswered { .. }
            | Because::TakesPinned { .. }
            | Because::TakesGuarded { .. }
            | Because::TakesNoMate { .. }
            | Because::TakesNoMateInTime { .. }
            | Because::GivesCheck { .. }
            | Because::StepsBetweenNoMate { .. }
            | Because::MeetsThreat
            | Because::MeetsThreatIn { .. }
    )
}

/// Where a statement stands.
#[derive(Clone, Copy)]
struct Place {
    /// It comes first.
    first: bool,
    /// No other can follow it.
    alone: bool,
    /// It will be said that the move mates in the end.
    late: bool,
}

/// One reason.
fn because(facts: &Facts, reason: Reason, place: Place) -> Option<Because> {
    let defender = (!facts.solver()).into();
    Some(match reason {
        Reason::Slower { .. } => return None,
        Reason::Stalemate => Because::Stalemate { side: defender },
        Reason::MatesFirst => Because::MatesFirst { side: defender },
        Reason::Takes {
            by,
            what,
            on,
            the_mover,
            back,
        } => taking(facts, by, what, on, the_mover, back, place),
        Reason::Flight { to, lost_guard } => {
            let to = At(to);
            match lost_guard {
                None => Because::KingGetsOut { to },
                Some(LostGuard::Moved(role)) => Because::KingGetsOutGuardMoved {
                    to,
                    guard: role.into(),
                },
                Some(LostGuard::Blocked(role, square)) => Because::KingGetsOutGuardShut {
                    to,
                    guard: role.into(),
                    stands: At(square),
                },
            }
        }
        Reason::Castles => Because::KingCastlesOut,
        Reason::Check if place.first => Because::GivesCheck {
            side: facts.solver().into(),
        },
        Reason::Check => Because::ComesWithCheck,
        Reason::Interposes { by, on, takeable } => {
            let (by, on) = (by.into(), At(on));
            match (takeable, facts.left) {
                (true, 2..) => Because::StepsBetweenNoMate { by, on },
                _ => Because::StepsBetween { by, on },
            }
        }
        Reason::NoThreat => match facts.left {
            0..=2 => Because::ThreatensNothing { side: defender },
            left => Because::ThreatensNothingIn {
                side: defender,
                moves: (left - 1).into(),
            },
        },
        Reason::Guards { by, square } => Because::NowGuards {
            by: by.into(),
            square: At(square),
        },
        Reason::Luft {
            square,
            vacated: true,
        } => Because::ClearsForKing { square: At(square) },
        Reason::Luft { square, .. } => Because::KingWillHave { square: At(square) },
        Reason::Shuts { by, on } => Because::ShutsLine {
            by: by.into(),
            on: At(on),
        },
        Reason::Pins { what, on } => Because::PinsYour {
            what: what.into(),
            on: At(on),
        },
        Reason::MeetsThreat => match facts.left {
            0..=2 => Because::MeetsThreat,
            left => Because::MeetsThreatIn {
                moves: (left - 1).into(),
            },
        },
        Reason::NoCheck => Because::NoCheck { side: defender },
        Reason::BackRankHolds { again: true } => Because::BackRankAgain,
        Reason::BackRankHolds { again: false } => Because::BackRankStays,
    })
}

/// Whether the solver has nothing to show for the queen that the defence took: neither piece nor pawn,
/// whatever is played next, and no mate in two.
fn nothing_for_the_queen(facts: &Facts) -> bool {
    let had = balance(&facts.before, facts.solver());
    if had - exchange::settled(&facts.beyond, facts.solver()) < QUEEN_FOR_NOTHING
        || had - exchange::after_any_move(&facts.beyond) < QUEEN_FOR_NOTHING
    {
        return false;
    }
    let budget = Budget::unlimited().nodes(MATE_NODES).table_bytes(1 << 20);
    matches!(prove::shortest_mate(&facts.beyond, 2, &budget), Ok(None))
}

/// How much work may go into seeing that a lost queen was not given up for mate.
const MATE_NODES: u64 = 20_000;
/// What a queen must cost, in pawns and all captures counted, to be lost for nothing.
const QUEEN_FOR_NOTHING: i32 = 8;

fn taking(
    facts: &Facts,
    by: Role,
    what: Role,
    on: Square,
    mover: bool,
    back: Back,
    place: Place,
) -> Because {
    let lost = || what == Role::Queen && !place.late && nothing_for_the_queen(facts);
    let king = by == Role::King;
    let (by, what, on) = (by.into(), what.into(), At(on));
    match back {
        _ if king => Because::KingTakes { what, on, mover },
        Back::Nothing if lost() => Because::TakesForNothing {
            by,
            what,
            on,
            mover,
        },
        Back::Nothing => Because::TakesUnanswered {
            by,
            what,
            on,
            mover,
        },
        Back::Pinned(role, square) => Because::TakesPinned {
            by,
            what,
            on,
            mover,
            pinned: role.into(),
            stands: At(square),
        },
        Back::Guarded => Because::TakesGuarded {
            by,
            what,
            on,
            mover,
        },
        // That the capture holds was proved, so taking back is no mate in the moves that are left.
        Back::Possible if place.alone && facts.left == 2 => Because::TakesNoMate {
            by,
            what,
            on,
            mover,
        },
        Back::Possible if place.alone && (3..=Stipulation::LONGEST).contains(&facts.left) => {
            Because::TakesNoMateInTime {
                by,
                what,
                on,
                mover,
            }
        }
        Back::InCheck | Back::Possible => Because::Takes {
            by,
            what,
            on,
            mover,
        },
    }
}
