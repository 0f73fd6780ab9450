//! Why a move neither wins nor holds: the answer, as far as its point shows and no further, and a
//! sentence that is true of the board.

use std::ops::RangeInclusive;

use shakmaty::{Bitboard, Chess, Color, Move, Position, Role, Square};

use super::opinion::{By, Opinion};
use crate::Stipulation;
use crate::judge::Case;
use crate::men::{man, side};
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
    /// The reason, without a full stop; empty when there is none to show.
    pub(super) why: String,
}

/// Why nothing is said, for the coach.
pub(super) fn left_open(case: &Case<'_>, opinion: &Opinion) -> String {
    let solver = side(case.problem.position.turn());
    match (opinion.by, opinion.score) {
        (By::Search(depth), Some(Score::Cp(value))) => format!(
            "judged by search, {depth} half-moves deep, {solver} stands at {:+.1}",
            f64::from(-value) / 100.0
        ),
        (By::Search(depth), _) => format!("the search came only {depth} half-moves deep"),
        _ => String::new(),
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
        why,
    }
}

fn play(from: &Chess, line: &[Move]) -> Chess {
    let mut at = from.clone();
    for &mv in line {
        at.play_unchecked(mv);
    }
    at
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
    fn point(&self, score: Option<Score>) -> (usize, String) {
        let defender = side(!self.solver());
        if self.after.is_stalemate() {
            let why = format!("it is stalemate, for {defender} is not in check and has no move");
            return (0, why);
        }
        if !self.draws && self.after.has_insufficient_material(self.solver()) {
            return (0, "what you have left cannot mate".to_owned());
        }
        let Some(&first) = self.line.first() else {
            return (0, String::new());
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
        found.unwrap_or((1, String::new()))
    }

    /// The defender mates in so many moves.
    fn mated(&self, score: Option<Score>, within: RangeInclusive<i32>) -> Option<(usize, String)> {
        let Some(Score::Mate(moves)) = score else {
            return None;
        };
        let defender = side(!self.solver());
        if !within.contains(&moves) {
            return None;
        }
        if moves == 1 {
            return Some((
                1,
                format!("that is mate, and it is {defender} who gives it"),
            ));
        }
        let plies = usize::try_from(2 * moves - 1).ok()?;
        let whole = plies <= 5
            && self.line.len() >= plies
            && play(self.after, &self.line[..plies]).is_checkmate();
        let why = format!(
            "{defender} mates in {}",
            refute::number(u8::try_from(moves).unwrap_or(u8::MAX))
        );
        Some((if whole { plies } else { 1 }, why))
    }

    /// The answer leads to stalemate, or leaves too little to mate with.
    fn game_over(&self) -> Option<(usize, String)> {
        if self.draws {
            return None;
        }
        let solver = side(self.solver());
        for plies in 1..=self.line.len().min(5) {
            let at = play(self.after, &self.line[..plies]);
            if at.is_stalemate() {
                return Some((plies, format!("{} is stalemated", side(at.turn()))));
            }
            if at.has_insufficient_material(self.solver()) {
                return Some((plies, format!("what {solver} has left cannot mate")));
            }
        }
        None
    }

    /// The defender gives check for ever.
    fn for_ever(&self, score: Option<Score>) -> Option<(usize, String)> {
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
                let defender = side(!self.solver());
                return Some((place + 1, format!("{defender} gives check for ever")));
            }
            seen.push(at.clone());
        }
        None
    }

    /// The answer takes the man that moved, or more than a pawn: shown with what is taken after it,
    /// until that is over.
    fn taken(&self, first: Move) -> Option<(usize, String)> {
        let what = first.capture()?;
        let the_mover = first.to() == refute::arrived(self.mv);
        if what == Role::Pawn && !the_mover {
            return None;
        }
        let count = self.exchange();
        if let Some((tally, even)) = self.tally(count) {
            // A man that took something and is taken is not lost for nothing.
            let why = if count > 1 || even {
                tally
            } else if self.mv.is_capture() && the_mover {
                format!("the {} takes it, and {tally}", man(first.role()))
            } else {
                refute::capture_clause(self.before, self.mv, self.after, first)?
            };
            return Some((count, why));
        }
        // A queen for a queen is no reason.
        if first.role() == what {
            return None;
        }
        let clause = refute::capture_clause(self.before, self.mv, self.after, first)?;
        Some((1, clause))
    }

    /// A pawn elsewhere is taken with check: a small thing, said when there is nothing else to say.
    fn pawn_taken(&self, first: Move) -> Option<(usize, String)> {
        let checks = play(self.after, &[first]).is_check();
        if first.capture()? != Role::Pawn || !checks {
            return None;
        }
        Some((
            1,
            format!("the {} takes a pawn with check", man(first.role())),
        ))
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
    fn tally(&self, count: usize) -> Option<(String, bool)> {
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
        let solver = side(self.solver());
        // The same men on both sides are no loss.
        lost.retain(|role| match won.iter().position(|other| other == role) {
            Some(place) => {
                won.swap_remove(place);
                false
            }
            None => true,
        });
        match left - balance(self.before, self.solver()) {
            ..=-1 if won.is_empty() => Some((format!("that costs {solver} {}", men(&lost)), false)),
            ..=-1 => Some((
                format!("that costs {solver} {} for {}", men(&lost), men(&won)),
                false,
            )),
            0 if !self.draws => Some(("the exchange is even, so nothing is won".to_owned(), true)),
            _ if left < 0 => Some((format!("{solver} is still behind after that"), true)),
            _ => None,
        }
    }

    /// A quiet answer that wins something two half-moves later.
    fn won_soon(&self, first: Move) -> Option<(usize, String)> {
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
            return self.tally(3).map(|(tally, _)| (3, tally));
        }
        let answered = play(self.after, &[first]);
        let falls = format!("the {} on {} falls", man(what), third.to());
        let attacked = targets(&answered, refute::arrived(first));
        let why = if answered.is_check() {
            format!("it comes with check, and then {falls}")
        } else if attacked.count() >= 2 && attacked.contains(third.to()) {
            format!("it attacks {} at once", squares(&answered, attacked))
        } else {
            format!("then {falls}")
        };
        Some((3, why))
    }

    /// A pawn of the defender gets through.
    fn promotes(&self) -> Option<(usize, String)> {
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
        kept.then(|| {
            (
                count,
                format!("the pawn gets through and becomes a {}", man(into)),
            )
        })
    }

    /// A check was given to hold the draw, and after the answer there is none left.
    fn no_more_checks(&self, first: Move) -> Option<(usize, String)> {
        if !self.draws || !self.after.is_check() {
            return None;
        }
        let beyond = play(self.after, &[first]);
        let check = |mv| play(&beyond, &[mv]).is_check();
        let left = beyond.legal_moves().into_iter().any(check);
        let solver = side(self.solver());
        (!left).then(|| (1, format!("after that {solver} has no check left")))
    }

    /// With kings and pawns alone: the answer leaves the solver to move with the kings opposed.
    fn face_to_face(&self, first: Move) -> Option<(usize, String)> {
        let beyond = play(self.after, &[first]);
        let board = beyond.board();
        if board.occupied() != board.kings() | board.pawns() || first.role() != Role::King {
            return None;
        }
        let (own, other) = (board.king_of(Color::White)?, board.king_of(Color::Black)?);
        let opposed = own.file() == other.file() && own.rank().distance(other.rank()) == 2
            || own.rank() == other.rank() && own.file().distance(other.file()) == 2;
        let solver = side(self.solver());
        opposed.then(|| {
            let why = format!("the kings face each other, and it is {solver} who has to give way");
            (1, why)
        })
    }

    /// A man that the wrong move attacked gets away.
    fn steps_out(&self, first: Move) -> Option<(usize, String)> {
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
        let way = match first.is_capture() {
            true => "takes a pawn and steps",
            false => "steps",
        };
        let why = || format!("the {} {way} out of the attack", man(first.role()));
        away.then(|| (1, why()))
    }

    /// With nothing else to say: how the men stand when the answer is made and nothing more is taken.
    fn stands(&self, first: Move) -> Option<(usize, String)> {
        let beyond = play(self.after, &[first]);
        let left = balance(&beyond, self.solver());
        if settled(&beyond, self.solver()) != left {
            return None;
        }
        let why = match left {
            ..=-2 => format!("{} is still behind after that", side(self.solver())),
            0 if !self.draws => "the material is level after that".to_owned(),
            _ => return None,
        };
        Some((1, why))
    }
}

/// The men of the other side that the man on `from` attacks and that are worth more or unguarded.
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
                role != Role::Pawn
                    && (worth(role) > worth(attacker.role) || !guarded || role == Role::King)
            })
        })
        .collect()
}

fn worth(role: Role) -> i32 {
    match role {
        Role::Pawn => 1,
        Role::Knight | Role::Bishop => 3,
        Role::Rook => 5,
        Role::Queen => 9,
        Role::King => 100,
    }
}

/// "the queen on d1 and the rook on f1".
fn squares(position: &Chess, at: Bitboard) -> String {
    let named: Vec<String> = at
        .into_iter()
        .filter_map(|square| {
            let role = position.board().role_at(square)?;
            Some(format!("the {} on {square}", man(role)))
        })
        .collect();
    list(&named)
}

/// "a rook and a pawn", "the queen", "two pawns".
fn men(roles: &[Role]) -> String {
    let order = [
        Role::Queen,
        Role::Rook,
        Role::Bishop,
        Role::Knight,
        Role::Pawn,
    ];
    let named: Vec<String> = order
        .into_iter()
        .filter_map(|role| {
            let count = roles.iter().filter(|&&other| other == role).count();
            match count {
                0 => None,
                1 if role == Role::Queen => Some("the queen".to_owned()),
                1 => Some(format!("a {}", man(role))),
                n => Some(format!(
                    "{} {}s",
                    refute::number(u8::try_from(n).unwrap_or(u8::MAX)),
                    man(role)
                )),
            }
        })
        .collect();
    list(&named)
}

fn list(named: &[String]) -> String {
    match named {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}
