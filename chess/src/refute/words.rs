//! Reasons in words: clauses that make one sentence.

use shakmaty::{Role, Square};

use super::reason::{Back, Facts, LostGuard, Reason};
use super::{balance, exchange};
use crate::men::{man, side};
use crate::{Budget, Stipulation, prove};

/// The reasons as one sentence, without the line and without a full stop; empty for none.
pub(super) fn sentence(facts: &Facts, reasons: &[Reason]) -> String {
    let text = point(facts, reasons);
    let slower = reasons.iter().find_map(|reason| match reason {
        Reason::Slower { moves } => Some(*moves),
        _ => None,
    });
    match slower {
        None => text,
        Some(moves) if text.is_empty() => {
            format!("it mates too, but only in {}", number(moves))
        }
        Some(moves) => format!("{text}; it mates in the end, but only in {}", number(moves)),
    }
}

/// The same without what is said of a mate that comes too late.
pub(super) fn point(facts: &Facts, reasons: &[Reason]) -> String {
    let mut clauses: Vec<String> = Vec::new();
    let spoken = reasons
        .iter()
        .filter(|reason| !matches!(reason, Reason::Slower { .. }));
    let mut place = Place {
        first: true,
        alone: spoken.count() == 1,
        late: reasons.iter().any(|r| matches!(r, Reason::Slower { .. })),
    };
    for reason in reasons {
        if clauses.len() == 2 {
            break;
        }
        clauses.extend(clause(facts, *reason, place));
        place.first = clauses.is_empty();
    }
    // Two clauses at most, and one where the first has said two things already.
    if clauses
        .first()
        .is_some_and(|first| first.contains(", and "))
    {
        clauses.truncate(1);
    }
    clauses.join(", and ")
}

/// A small number in words.
pub(crate) fn number(n: u8) -> String {
    const WORDS: [&str; 11] = [
        "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
    ];
    WORDS
        .get(usize::from(n))
        .map_or_else(|| n.to_string(), |word| (*word).to_owned())
}

/// Where a clause stands.
#[derive(Clone, Copy)]
struct Place {
    /// It opens the sentence.
    first: bool,
    /// No other clause can follow it.
    alone: bool,
    /// The sentence will say that the move mates in the end.
    late: bool,
}

/// One reason.
fn clause(facts: &Facts, reason: Reason, place: Place) -> Option<String> {
    let defender = side(!facts.solver());
    Some(match reason {
        Reason::Slower { .. } => return None,
        Reason::Stalemate => {
            format!("it is stalemate, for {defender} is not in check and has no move")
        }
        Reason::MatesFirst => format!("that is mate, and it is {defender} who gives it"),
        Reason::Takes {
            by,
            what,
            on,
            the_mover,
            back,
        } => taking(facts, by, what, on, the_mover, back, place),
        Reason::Flight { to, lost_guard } => match lost_guard {
            None => format!("the king gets out to {to}, which none of your men guards"),
            Some(LostGuard::Moved(role)) => format!(
                "the king gets out to {to}, which your {} guarded until it moved",
                man(role)
            ),
            Some(LostGuard::Blocked(role, square)) => format!(
                "the king gets out to {to}, for the move shuts out your {} on {square} that guarded it",
                man(role)
            ),
        },
        Reason::Castles => "the king castles out of the attack".to_owned(),
        Reason::Check if place.first => format!(
            "it gives check, and {} has to see to that first",
            side(facts.solver())
        ),
        Reason::Check => "it comes with check".to_owned(),
        Reason::Interposes { by, on, takeable } => {
            let then = match (takeable, facts.left) {
                (true, 2..) => ", and taking it is not mate",
                _ => "",
            };
            format!("the {} steps between on {on}{then}", man(by))
        }
        Reason::NoThreat => match facts.left {
            0..=2 => format!("it threatens no mate, so {defender} has time"),
            left => format!(
                "it does not threaten mate in {}, so {defender} has time",
                number(left - 1)
            ),
        },
        Reason::Guards { by, square } => {
            format!(
                "the {} now guards {square}, where the mate was threatened",
                man(by)
            )
        }
        Reason::Luft {
            square,
            vacated: true,
        } => format!("it clears {square} for the king"),
        Reason::Luft { square, .. } => {
            format!("the king will have {square} to go to when you carry out the threat")
        }
        Reason::Shuts { by, on } => {
            format!("the {} on {on} shuts the line of your threat", man(by))
        }
        Reason::Pins { what, on } => format!("it pins your {} on {on}", man(what)),
        Reason::MeetsThreat => match facts.left {
            0..=2 => "that meets the threat, and there is no other mate".to_owned(),
            left => format!(
                "that meets the threat, and there is no other mate in {}",
                number(left - 1)
            ),
        },
        Reason::NoCheck => format!("it gives no check, so {defender} is not mated"),
        Reason::BackRankHolds { again: true } => "the back rank is defended again".to_owned(),
        Reason::BackRankHolds { again: false } => "the back rank stays defended".to_owned(),
    })
}

/// Whether the solver has nothing to show for the queen that the defence took: no men, whatever is
/// played next, and no mate in two.
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
    the_mover: bool,
    back: Back,
    place: Place,
) -> String {
    let taken = if the_mover {
        match what {
            Role::Queen => "the queen".to_owned(),
            _ => "it".to_owned(),
        }
    } else {
        format!("the {} on {on}", man(what))
    };
    let act = format!("the {} takes {taken}", man(by));
    let lost = || what == Role::Queen && !place.late && nothing_for_the_queen(facts);
    match back {
        _ if by == Role::King => format!("{act}, for none of your men guards {on}"),
        Back::Nothing if lost() => format!("{act} for nothing"),
        Back::Nothing => format!("{act}, and nothing takes back"),
        Back::Pinned(role, square) => format!(
            "{act}, and your {} on {square} is pinned and may not take back",
            man(role)
        ),
        Back::Guarded => format!("{act}, and your king may not take back on a guarded square"),
        // That the capture holds was proved, so taking back is no mate in the moves that are left.
        Back::Possible if place.alone => match facts.left {
            2 => format!("{act}, and taking back is not mate"),
            3..=Stipulation::LONGEST => format!("{act}, and taking back does not mate in time"),
            _ => act,
        },
        Back::InCheck | Back::Possible => act,
    }
}
