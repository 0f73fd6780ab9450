//! Why a move neither wins nor holds: the answer, as far as its point shows and no further, and a
//! statement that is true of the board.

use std::ops::RangeInclusive;

use shakmaty::{Bitboard, Chess, Color, Move, Position, Role, Square};

use super::opinion::{By, Opinion};
use crate::Stipulation;
use crate::fact::{And, At, Because, Centipawns, Material, Side, Target, Why};
use crate::judge::Case;
use crate::pieces::worth;
use crate::refute::{self, balance, settled};
use crate::search::Score;

/// Most half-moves of an answer that are shown.
const LONGEST: usize = 7;
/// A mate in so many moves is the point, whatever else the answer does.
const SOON: i32 = 3;
/// A loss of this many pawns' worth is worth a word.
const LOSS: i32 = 2;

/// What is shown of a wrong move.
#[derive(Clone, Debug, Default)]
pub(super) struct Shown {
    /// The answer, and what follows until the point is plain.
    pub(super) line: Vec<Move>,
    /// The position after it.
    pub(super) beyond: Option<Chess>,
    /// The reason; empty when there is none to show.
    pub(super) why: Why,
}

/// Why nothing is said, for the coach.
pub(super) fn left_open(case: &Case<'_>, opinion: &Opinion) -> Why {
    let side = case.problem.position.turn().into();
    match (opinion.by, opinion.score) {
        (By::Search(depth), Some(Score::Cp(value))) => Because::SearchStands {
            depth,
            side,
            value: Centipawns { centipawns: -value },
        }
        .into(),
        (By::Search(depth), _) => Because::SearchShallow { depth }.into(),
        _ => Why::default(),
    }
}

/// The answer to the wrong move `mv`, which led from `before` to `after`, with its reason.
pub(super) fn explain(
    case: &Case<'_>,
    before: &Chess,
    mv: Move,
    after: &Chess,
    opinion: &Opinion,
) -> Shown {
    let draws = case.problem.stipulation == Stipulation::Draw;
    let scene = Board {
        before,
        mv,
        after,
        line: &opinion.line,
        draws,
    };
    let (count, why) = scene.point(opinion.score);
    let line = opinion.line[..count.min(opinion.line.len())].to_vec();
    let beyond = play(after, &line);
    Shown {
        line,
        beyond: Some(beyond),
        why: why.into(),
    }
}

pub(super) fn play(from: &Chess, line: &[Move]) -> Chess {
    let mut at = from.clone();
    for &mv in line {
        at.play_unchecked(mv);
    }
    at
}

/// How many half-moves of an answer show the point, and the reason.
type Point = (usize, Vec<Because>);

/// A point with one reason.
fn one(count: usize, why: Because) -> Option<Point> {
    Some((count, vec![why]))
}

/// The wrong move and the best play after it.
struct Board<'a> {
    before: &'a Chess,
    mv: Move,
    after: &'a Chess,
    line: &'a [Move],
    draws: bool,
}

impl Board<'_> {
    fn solver(&self) -> Color {
        self.before.turn()
    }

    /// How many half-moves of the answer show the point, and the reason.
    fn point(&self, score: Option<Score>) -> Point {
        if self.after.is_stalemate() {
            let side = self.defender();
            return (0, vec![Because::Stalemate { side }]);
        }
        if !self.draws && self.after.has_insufficient_material(self.solver()) {
            return (0, vec![Because::YouCannotMate]);
        }
        let Some(&first) = self.line.first() else {
            return (0, Vec::new());
        };
        let found = self
            .mated(score, 1..=SOON)
            .or_else(|| self.game_over())
            .or_else(|| self.for_ever(score))
            .or_else(|| self.taken(first))
            .or_else(|| self.won_soon(first))
            .or_else(|| self.promotes())
            .or_else(|| self.mated(score, SOON + 1..=i32::MAX))
            .or_else(|| self.pawn_taken(first))
            .or_else(|| self.no_more_checks(first))
            .or_else(|| self.face_to_face(first))
            .or_else(|| self.steps_out(first))
            .or_else(|| self.stands(first));
        found.unwrap_or((1, Vec::new()))
    }

    /// The side that solves, as a fact.
    fn side(&self) -> Side {
        self.solver().into()
    }

    /// The other side.
    fn defender(&self) -> Side {
        (!self.solver()).into()
    }

    /// The defender mates in so many moves.
    fn mated(&self, score: Option<Score>, within: RangeInclusive<i32>) -> Option<Point> {
        let Some(Score::Mate(moves)) = score else {
            return None;
        };
        let side = self.defender();
        if !within.contains(&moves) {
            return None;
        }
        if moves == 1 {
            return one(1, Because::MatesFirst { side });
        }
        let plies = usize::try_from(2 * moves - 1).ok()?;
        let whole = plies <= 5
            && self.line.len() >= plies
            && play(self.after, &self.line[..plies]).is_checkmate();
        let moves = u8::try_from(moves).unwrap_or(u8::MAX).into();
        one(
            if whole { plies } else { 1 },
            Because::MatesIn { side, moves },
        )
    }

    /// The answer leads to stalemate, or leaves too little to mate with.
    fn game_over(&self) -> Option<Point> {
        if self.draws {
            return None;
        }
        for plies in 1..=self.line.len().min(5) {
            let at = play(self.after, &self.line[..plies]);
            if at.is_stalemate() {
                let side = at.turn().into();
                return one(plies, Because::IsStalemated { side });
            }
            if at.has_insufficient_material(self.solver()) {
                let side = self.side();
                return one(plies, Because::CannotMate { side });
            }
        }
        None
    }

    /// The defender gives check for ever.
    fn for_ever(&self, score: Option<Score>) -> Option<Point> {
        if self.draws || !matches!(score, Some(Score::Cp(0))) {
            return None;
        }
        let mut seen: Vec<Chess> = vec![self.after.clone()];
        let mut at = self.after.clone();
        for (place, &mv) in self.line.iter().enumerate().take(8) {
            at.play_unchecked(mv);
            if place % 2 == 0 && !at.is_check() {
                return None;
            }
            let again =
                |earlier: &Chess| earlier.turn() == at.turn() && earlier.board() == at.board();
            if seen.iter().any(again) {
                let side = self.defender();
                return one(place + 1, Because::ChecksForEver { side });
            }
            seen.push(at.clone());
        }
        None
    }

    /// The answer takes the piece that moved, or more than a pawn: shown with what is taken after it,
    /// until that is over.
    fn taken(&self, first: Move) -> Option<Point> {
        let what = first.capture()?;
        let the_mover = first.to() == refute::arrived(self.mv);
        if what == Role::Pawn && !the_mover {
            return None;
        }
        let count = self.exchange();
        if let Some((tally, even)) = self.tally(count) {
            // A piece that took something and is taken is not lost for nothing.
            let why = if count > 1 || even {
                vec![tally]
            } else if self.mv.is_capture() && the_mover {
                let (by, what) = (first.role().into(), what.into());
                vec![Because::TakesIt { by, what }, tally]
            } else {
                refute::capture_told(self.before, self.mv, self.after, first)?
            };
            return Some((count, why));
        }
        // A queen for a queen is no reason.
        if first.role() == what {
            return None;
        }
        let why = refute::capture_told(self.before, self.mv, self.after, first)?;
        Some((1, why))
    }

    /// A pawn elsewhere is taken with check: a small thing, said when there is nothing else to say.
    fn pawn_taken(&self, first: Move) -> Option<Point> {
        let checks = play(self.after, &[first]).is_check();
        if first.capture()? != Role::Pawn || !checks {
            return None;
        }
        let by = first.role().into();
        one(1, Because::TakesPawnWithCheck { by })
    }

    /// How many half-moves of the answer are captures, or the moves that a check forces in between.
    fn exchange(&self) -> usize {
        let takes = |at: usize| self.line.get(at).is_some_and(|mv| mv.is_capture());
        let mut count = 1;
        while count < LONGEST {
            if takes(count) {
                count += 1;
            } else if takes(count + 1)
                && count % 2 == 1
                && count + 2 <= LONGEST
                && play(self.after, &self.line[..count]).is_check()
            {
                count += 2;
            } else {
                break;
            }
        }
        count
    }

    /// What both sides have lost from the wrong move to so many half-moves later; nothing while there is
    /// more to take. Whether it comes out even is said beside it.
    fn tally(&self, count: usize) -> Option<(Because, bool)> {
        let mut lost: Vec<Role> = Vec::new();
        let mut won: Vec<Role> = self.mv.capture().into_iter().collect();
        for (place, mv) in self.line[..count].iter().enumerate() {
            let list = if place % 2 == 0 { &mut lost } else { &mut won };
            list.extend(mv.capture());
        }
        let end = play(self.after, &self.line[..count]);
        let left = balance(&end, self.solver());
        if settled(&end, self.solver()) != left {
            return None;
        }
        let side = self.side();
        // The same pieces on both sides are no loss.
        lost.retain(|role| match won.iter().position(|other| other == role) {
            Some(place) => {
                won.swap_remove(place);
                false
            }
            None => true,
        });
        match left - balance(self.before, self.solver()) {
            ..=-1 => {
                let lost = counted(&lost);
                let costs = match counted(&won) {
                    won if won.and.is_empty() => Because::Costs { side, lost },
                    won => Because::CostsFor { side, lost, won },
                };
                Some((costs, false))
            }
            0 if !self.draws => Some((Because::ExchangeIsEven, true)),
            _ if left < 0 => Some((Because::StillBehind { side }, true)),
            _ => None,
        }
    }

    /// A quiet answer that wins something two half-moves later.
    fn won_soon(&self, first: Move) -> Option<Point> {
        let &[_, reply, third, ..] = self.line else {
            return None;
        };
        let what = third.capture()?;
        if reply.is_capture() || first.is_promotion() {
            return None;
        }
        let end = play(self.after, &self.line[..3]);
        let gain = -(settled(&end, self.solver()) - balance(self.after, self.solver()));
        if gain < LOSS {
            return None;
        }
        if first.is_capture() {
            return self.tally(3).map(|(tally, _)| (3, vec![tally]));
        }
        let answered = play(self.after, &[first]);
        let falls = Because::ThenFalls {
            what: what.into(),
            on: At(third.to()),
        };
        let attacked = targets(&answered, refute::arrived(first));
        let why = if answered.is_check() {
            vec![Because::ComesWithCheck, falls]
        } else if attacked.count() >= 2 && attacked.contains(third.to()) {
            let targets = targets_on(&answered, attacked);
            vec![Because::AttacksAtOnce { targets }]
        } else {
            vec![falls]
        };
        Some((3, why))
    }

    /// A pawn of the defender gets through.
    fn promotes(&self) -> Option<Point> {
        let place = self
            .line
            .iter()
            .take(LONGEST)
            .step_by(2)
            .position(|mv| mv.is_promotion())?;
        let count = 2 * place + 1;
        let into = self.line[count - 1].promotion()?;
        let end = play(self.after, &self.line[..count]);
        let kept = settled(&end, self.solver()) < balance(self.after, self.solver()) - LOSS;
        let piece = into.into();
        kept.then(|| (count, vec![Because::PawnBecomes { piece }]))
    }

    /// A check was given to hold the draw, and after the answer there is none left.
    fn no_more_checks(&self, first: Move) -> Option<Point> {
        if !self.draws || !self.after.is_check() {
            return None;
        }
        let beyond = play(self.after, &[first]);
        let check = |mv| play(&beyond, &[mv]).is_check();
        let left = beyond.legal_moves().into_iter().any(check);
        let side = self.side();
        (!left).then(|| (1, vec![Because::NoMoreChecks { side }]))
    }

    /// With kings and pawns alone: the answer leaves the solver to move with the kings opposed.
    fn face_to_face(&self, first: Move) -> Option<Point> {
        let beyond = play(self.after, &[first]);
        let board = beyond.board();
        if board.occupied() != board.kings() | board.pawns() || first.role() != Role::King {
            return None;
        }
        let (own, other) = (board.king_of(Color::White)?, board.king_of(Color::Black)?);
        let opposed = own.file() == other.file() && own.rank().distance(other.rank()) == 2
            || own.rank() == other.rank() && own.file().distance(other.file()) == 2;
        let side = self.side();
        opposed.then(|| (1, vec![Because::KingsOpposed { side }]))
    }

    /// A piece that the wrong move attacked gets away.
    fn steps_out(&self, first: Move) -> Option<Point> {
        let beyond = play(self.after, &[first]);
        let from = first.from()?;
        let attackers = |position: &Chess, square: Square| {
            let board = position.board();
            board.attacks_to(square, self.solver(), board.occupied())
        };
        let away = first.role() != Role::King
            && !first.is_castle()
            && !beyond.is_check()
            && !self.after.is_check()
            && attackers(self.after, from).contains(refute::arrived(self.mv))
            && attackers(&beyond, first.to()).is_empty();
        let by = first.role().into();
        let why = match first.is_capture() {
            true => Because::TakesPawnAndStepsOut { by },
            false => Because::StepsOut { by },
        };
        away.then(|| (1, vec![why]))
    }

    /// With nothing else to say: how the pieces stand when the answer is made and nothing more is taken.
    fn stands(&self, first: Move) -> Option<Point> {
        let beyond = play(self.after, &[first]);
        let left = balance(&beyond, self.solver());
        if settled(&beyond, self.solver()) != left {
            return None;
        }
        let why = match left {
            ..=-2 => Because::StillBehind { side: self.side() },
            0 if !self.draws => Because::MaterialLevel,
            _ => return None,
        };
        one(1, why)
    }
}

/// The pieces of the other side that the piece on `from` attacks and that are worth more or unguarded.
fn targets(position: &Chess, from: Square) -> Bitboard {
    let board = position.board();
    let Some(attacker) = board.piece_at(from) else {
        return Bitboard::EMPTY;
    };
    let foes = board.attacks_from(from) & board.by_color(!attacker.color);
    foes.into_iter()
        .filter(|&square| {
            let guarded = board
                .attacks_to(square, !attacker.color, board.occupied())
                .any();
            board.role_at(square).is_some_and(|role| {
                let more = attacker.role != Role::King && worth(role) > worth(attacker.role);
                role != Role::Pawn && (more || !guarded || role == Role::King)
            })
        })
        .collect()
}

/// What stands on these squares.
fn targets_on(position: &Chess, at: Bitboard) -> And<Target> {
    let target = |square| {
        Some(Target {
            piece: position.board().role_at(square)?.into(),
            on: At(square),
        })
    };
    And {
        and: at.into_iter().filter_map(target).collect(),
    }
}

/// Pieces counted by kind, the most valuable first.
fn counted(roles: &[Role]) -> And<Material> {
    let order = [
        Role::Queen,
        Role::Rook,
        Role::Bishop,
        Role::Knight,
        Role::Pawn,
    ];
    let material = |role: Role| {
        let number = roles.iter().filter(|&&other| other == role).count();
        (number > 0).then(|| Material {
            piece: role.into(),
            number: u8::try_from(number).unwrap_or(u8::MAX).into(),
        })
    };
    And {
        and: order.into_iter().filter_map(material).collect(),
    }
}
