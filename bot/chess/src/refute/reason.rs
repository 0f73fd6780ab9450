//! What a defence does on the board, as facts that can be checked one by one.

use std::cell::OnceCell;

use shakmaty::{Bitboard, Chess, Color, Move, Position, Rank, Role, Square, attacks};

use super::Sealed;
use crate::{Budget, prove};

/// A refutation as it stands on the board.
#[derive(Clone, Debug)]
pub struct Facts {
    /// Before the wrong move.
    pub before: Chess,
    /// The wrong move.
    pub mv: Move,
    /// After it; the defender is to move.
    pub after: Chess,
    /// The defence; none after stalemate.
    pub defence: Option<Move>,
    /// After the defence; the same as `after` when there is none.
    pub beyond: Chess,
    /// Moves the solver had, the wrong one included.
    pub left: u8,
    /// Whether the move threatens to mate in time, kept for the other defences to the same move.
    pub(super) threat: OnceCell<Option<bool>>,
}

/// One true statement about a refutation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reason {
    /// The wrong move stalemates.
    Stalemate,
    /// It mates after all, in this many moves counted from the wrong move.
    Slower {
        /// Moves it takes.
        moves: u8,
    },
    /// The defence is mate.
    MatesFirst,
    /// The defence takes a piece.
    Takes {
        /// What takes.
        by: Role,
        /// What is taken.
        what: Role,
        /// Where.
        on: Square,
        /// It is the piece that just moved.
        the_mover: bool,
        /// Whether it can be taken back, and if not, why.
        back: Back,
    },
    /// The king goes to a square that nothing guards.
    Flight {
        /// The square.
        to: Square,
        /// Who guarded it before the wrong move, and what became of the guard.
        lost_guard: Option<LostGuard>,
    },
    /// The king gets out by castling.
    Castles,
    /// The defence gives check.
    Check,
    /// A piece steps between the checking piece and the king.
    Interposes {
        /// What steps between.
        by: Role,
        /// Where.
        on: Square,
        /// It could be taken, but that is no mate.
        takeable: bool,
    },
    /// The wrong move threatens no mate in the moves left, even if the defender could pass.
    NoThreat,
    /// After the defence the threatened mate on this square is met by a guard.
    Guards {
        /// What guards it.
        by: Role,
        /// The square of the threat.
        square: Square,
    },
    /// After the defence the king has this square to go to when the threat is carried out.
    Luft {
        /// The square.
        square: Square,
        /// It was emptied by the defence.
        vacated: bool,
    },
    /// The defence shuts the line of the threat.
    Shuts {
        /// What stands in the way.
        by: Role,
        /// Where.
        on: Square,
    },
    /// The defence pins the piece that threatens.
    Pins {
        /// The piece pinned.
        what: Role,
        /// Where it stands.
        on: Square,
    },
    /// The defence meets the threat, in a way that may not be told.
    MeetsThreat,
    /// The wrong move is no check, and the last move had to be mate.
    NoCheck,
    /// Every check on the back rank can be answered.
    BackRankHolds {
        /// It was under attack by the wrong move.
        again: bool,
    },
}

/// Why a capture stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Back {
    /// It can be taken back.
    Possible,
    /// Nothing attacks the square.
    Nothing,
    /// This piece would, but is pinned.
    Pinned(Role, Square),
    /// The king would, but the square is guarded.
    Guarded,
    /// The solver is in check and has to see to that.
    InCheck,
}

/// What became of a guard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LostGuard {
    /// The piece that moved had guarded the square.
    Moved(Role),
    /// The piece that moved now stands in the guard's way.
    Blocked(Role, Square),
}

impl Facts {
    /// Plays everything out.
    pub fn new(before: &Chess, mv: Move, after: &Chess, defence: Option<Move>, left: u8) -> Self {
        let mut beyond = after.clone();
        if let Some(defence) = defence {
            beyond.play_unchecked(defence);
        }
        Self {
            before: before.clone(),
            mv,
            after: after.clone(),
            defence,
            beyond,
            left,
            threat: OnceCell::new(),
        }
    }

    /// Whether the solver would mate in the moves left if the defender passed; `None` where that is
    /// not soon known, or passing makes no sense.
    fn threatens(&self) -> Option<bool> {
        *self.threat.get_or_init(|| threatens(self))
    }

    /// The side that solves.
    pub fn solver(&self) -> Color {
        self.before.turn()
    }
}

impl Reason {
    /// How little a reason explains; 0 is the plainest.
    pub fn vagueness(&self) -> usize {
        match self {
            Self::Stalemate | Self::MatesFirst => 0,
            Self::Takes { .. } | Self::Flight { .. } | Self::Interposes { .. } | Self::Castles => 1,
            Self::Check | Self::Guards { .. } | Self::Luft { .. } => 2,
            Self::Shuts { .. } | Self::Pins { .. } => 2,
            Self::NoCheck | Self::BackRankHolds { .. } => 3,
            Self::NoThreat => 3,
            Self::MeetsThreat => 4,
            Self::Slower { .. } => 5,
        }
    }
}

/// What can truly be said of a refutation, the main thing first.
pub fn reasons(facts: &Facts, sealed: &Sealed) -> Vec<Reason> {
    let Some(defence) = facts.defence else {
        return vec![Reason::Stalemate];
    };
    if facts.beyond.is_checkmate() {
        return vec![Reason::MatesFirst];
    }
    let checked = facts.after.is_check();
    if facts.left == 1 && !checked {
        return vec![Reason::NoCheck];
    }
    let taken = capture(facts);
    let takes_mover = matches!(
        taken,
        Some(Reason::Takes {
            the_mover: true,
            ..
        })
    );
    // A quiet move that threatens nothing in time fails to anything; a capture elsewhere on the board
    // would be no reason.
    if !checked && !takes_mover && facts.threatens() == Some(false) {
        let mut found = vec![Reason::NoThreat];
        found.extend(back_rank_holds(facts).map(|_| Reason::BackRankHolds { again: false }));
        return found;
    }
    let mut found = Vec::new();
    if let Some(taken) = taken {
        found.push(taken);
    } else if defence.is_castle() {
        found.push(Reason::Castles);
    } else if defence.role() == Role::King {
        found.push(flight(facts, defence));
    } else if checked {
        found.push(Reason::Interposes {
            by: defence.role(),
            on: defence.to(),
            takeable: facts
                .beyond
                .legal_moves()
                .iter()
                .any(|mv| mv.is_capture() && mv.to() == defence.to()),
        });
    }
    if facts.beyond.is_check() {
        found.push(Reason::Check);
    }
    if found.is_empty() {
        found.extend(threat(facts, defence, sealed));
    }
    if let Some(again) = back_rank_holds(facts) {
        found.push(Reason::BackRankHolds { again });
    }
    found
}

/// The reason of a reply that takes something.
pub(super) fn capture(facts: &Facts) -> Option<Reason> {
    let reply = facts.defence?;
    Some(takes(facts, reply, reply.capture()?))
}

fn takes(facts: &Facts, defence: Move, what: Role) -> Reason {
    let on = match defence {
        Move::EnPassant { from, to } => Square::from_coords(to.file(), from.rank()),
        _ => defence.to(),
    };
    Reason::Takes {
        by: defence.role(),
        what,
        on,
        the_mover: on == super::scene::arrival(facts.mv),
        back: back(facts, defence),
    }
}

fn back(facts: &Facts, defence: Move) -> Back {
    let beyond = &facts.beyond;
    let (us, to) = (beyond.turn(), defence.to());
    let legal = beyond.legal_moves();
    if legal.iter().any(|mv| mv.is_capture() && mv.to() == to) {
        return Back::Possible;
    }
    if beyond.is_check() {
        return Back::InCheck;
    }
    let board = beyond.board();
    let takers = board.attacks_to(to, us, board.occupied());
    let Some(taker) = takers.first() else {
        return Back::Nothing;
    };
    match board.role_at(taker) {
        Some(Role::King) => Back::Guarded,
        Some(role) => Back::Pinned(role, taker),
        None => Back::Nothing,
    }
}

/// The pieces of `by` that attack `square` when the king on `king` does not stand in the way.
fn guards(position: &Chess, square: Square, by: Color, king: Option<Square>) -> Bitboard {
    let board = position.board();
    let mut occupied = board.occupied();
    if let Some(king) = king {
        occupied.discard(king);
    }
    board.attacks_to(square, by, occupied)
}

fn flight(facts: &Facts, defence: Move) -> Reason {
    let to = defence.to();
    let solver = facts.solver();
    let king = defence.from();
    let lost = guards(&facts.before, to, solver, king)
        .into_iter()
        .find_map(|guard| {
            let role = facts.before.board().role_at(guard)?;
            if Some(guard) == facts.mv.from() && !facts.mv.is_castle() {
                return Some(LostGuard::Moved(role));
            }
            let between = attacks::between(guard, to);
            let blocked = between.contains(super::scene::arrival(facts.mv))
                && facts.after.board().role_at(guard) == Some(role);
            blocked.then_some(LostGuard::Blocked(role, guard))
        });
    // A square that was occupied or out of the king's reach before is no flight that was lost.
    let open_before = facts.before.board().role_at(to).is_none();
    Reason::Flight {
        to,
        lost_guard: lost.filter(|_| open_before),
    }
}

fn threatens(facts: &Facts) -> Option<bool> {
    let left = facts.left.saturating_sub(1);
    let passed = facts.after.clone().swap_turn().ok()?;
    if left == 1 {
        return Some(!mates_in_one(&passed).is_empty());
    }
    let budget = Budget::unlimited()
        .nodes(super::SLOWER_NODES / 4)
        .table_bytes(1 << 20);
    let found = prove::shortest_mate(&passed, left, &budget).ok()?;
    Some(found.is_some())
}

fn mates_in_one(position: &Chess) -> Vec<Move> {
    position
        .legal_moves()
        .into_iter()
        .filter(|&mv| {
            let mut next = position.clone();
            next.play_unchecked(mv);
            next.is_checkmate()
        })
        .collect()
}

/// How a quiet defence meets the threat of a quiet move.
fn threat(facts: &Facts, defence: Move, sealed: &Sealed) -> Option<Reason> {
    if facts.left != 2 {
        return facts.threatens().map(|_| Reason::MeetsThreat);
    }
    let passed = facts.after.clone().swap_turn().ok()?;
    let mates = mates_in_one(&passed);
    let first = *mates.first()?;
    let met: Vec<Option<Reason>> = mates
        .iter()
        .map(|&mate| how_met(facts, defence, mate))
        .collect();
    let same = met.iter().all(|reason| *reason == met[0]);
    let named = sealed.may_name(first.to());
    match met[0] {
        Some(reason) if same && (named || !matches!(reason, Reason::Guards { .. })) => Some(reason),
        _ => Some(Reason::MeetsThreat),
    }
}

/// Why `mate`, which would be mate if the defender passed, is none after the defence.
fn how_met(facts: &Facts, defence: Move, mate: Move) -> Option<Reason> {
    let beyond = &facts.beyond;
    let from = mate.from()?;
    let role = mate.role();
    if !beyond.is_legal(mate) {
        let board = beyond.board();
        if mate.is_castle() || board.role_at(from) != Some(role) {
            return None;
        }
        let (on, by) = (
            super::scene::arrival(defence),
            board.role_at(super::scene::arrival(defence))?,
        );
        if attacks::between(from, mate.to()).contains(on) {
            return Some(Reason::Shuts { by, on });
        }
        let king = board.king_of(beyond.turn())?;
        let pinned = !beyond.is_check()
            && role != Role::King
            && board.attacks_from(on).contains(from)
            && attacks::between(king, on).contains(from)
            && (attacks::between(king, on) & board.occupied()) == Bitboard::from_square(from);
        return pinned.then_some(Reason::Pins {
            what: role,
            on: from,
        });
    }
    let mut mated = beyond.clone();
    mated.play_unchecked(mate);
    if !mated.is_check() {
        // The line of a discovered or distant check is shut.
        let king = mated.board().king_of(mated.turn())?;
        let on = super::scene::arrival(defence);
        let by = mated.board().role_at(on)?;
        return attacks::between(mate.to(), king)
            .contains(on)
            .then_some(Reason::Shuts { by, on });
    }
    let answers = mated.legal_moves();
    let moved = super::scene::arrival(defence);
    if let Some(taking) = answers
        .iter()
        .find(|mv| mv.is_capture() && mv.to() == mate.to() && mv.from() == Some(moved))
    {
        return Some(Reason::Guards {
            by: taking.role(),
            square: mate.to(),
        });
    }
    if let Some(king) = answers
        .iter()
        .find(|mv| mv.role() == Role::King && !mv.is_capture())
    {
        let square = king.to();
        return Some(Reason::Luft {
            square,
            vacated: defence.from() == Some(square),
        });
    }
    None
}

/// Whether the defender's king stands shut in on its first rank and every check there can be
/// answered by taking the checking piece or stepping between; then, whether the wrong move had
/// attacked that defence.
fn back_rank_holds(facts: &Facts) -> Option<bool> {
    let beyond = &facts.beyond;
    let (solver, defender) = (beyond.turn(), !beyond.turn());
    let board = beyond.board();
    let king = board.king_of(defender)?;
    let home = defender.fold_wb(Rank::First, Rank::Eighth);
    if king.rank() != home || beyond.is_check() {
        return None;
    }
    let second = defender.fold_wb(Rank::Second, Rank::Seventh);
    let ahead = attacks::king_attacks(king) & Bitboard::from_rank(second);
    let own = board.by_color(defender);
    let shut = ahead.into_iter().all(|square| own.contains(square));
    // A rank behind pieces that can step aside is no back rank; two pawns at least make it one.
    if !shut || (ahead & board.pawns()).count() < 2 {
        return None;
    }
    let guard = |position: &Chess| {
        let board = position.board();
        (board.rooks_and_queens() & board.by_color(defender)) & Bitboard::from_rank(home)
    };
    let mut strikes = 0;
    for mv in beyond.legal_moves() {
        if mv.to().rank() != home || !matches!(mv.role(), Role::Rook | Role::Queen) {
            continue;
        }
        let mut next = beyond.clone();
        next.play_unchecked(mv);
        if !next.is_check() {
            continue;
        }
        strikes += 1;
        let answered = next
            .legal_moves()
            .iter()
            .any(|answer| answer.role() != Role::King);
        if !answered {
            return None;
        }
    }
    let was = facts.before.board();
    let had_heavy = was.rooks_and_queens() & was.by_color(solver);
    if guard(beyond).is_empty() || had_heavy.is_empty() {
        return None;
    }
    let arrival = super::scene::arrival(facts.mv);
    let attacked = facts.after.board().attacks_from(arrival) & guard(&facts.after);
    let took_it = facts
        .defence
        .is_some_and(|d| d.is_capture() && d.to() == arrival);
    // Behind the piece that took, something must be left that would strike on the rank.
    let behind = || {
        let occupied = board.occupied() & !Bitboard::from_square(arrival);
        (board.rooks_and_queens() & board.by_color(solver))
            .into_iter()
            .filter_map(|from| Some(attacks::attacks(from, board.piece_at(from)?, occupied)))
            .any(|reach| (reach & Bitboard::from_rank(home)).any())
    };
    let again = took_it && (attacked.any() || facts.after.is_check()) && behind();
    // Where nothing can strike on the rank, its defence is a point only if the move was aimed at it.
    (again || strikes > 0).then_some(again)
}
