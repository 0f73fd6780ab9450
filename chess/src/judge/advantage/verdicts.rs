//! What is said of a reply to a win or a draw.

use shakmaty::{Move, Position};

use super::opinion::{By, Opinion};
use super::plain::End;
use super::{Missing, Walk, why};
use crate::judge::{Case, Judgement, Verdict, points, words};
use crate::{
    Stipulation, line,
    scene::{Scene, SceneMark},
};
use crate::{men::side, reply::NodeId};

/// "wins", "holds".
fn does(case: &Case<'_>) -> &'static str {
    match case.problem.stipulation {
        Stipulation::Draw => "holds",
        _ => "wins",
    }
}

impl Walk<'_, '_> {
    /// Neither right nor wrong: the coach decides.
    pub(super) fn open(&self, moves: &[Move], opinion: Option<&Opinion>) -> Judgement {
        let case = self.case;
        let what = words::numbered_end(&case.problem.position, moves, 1);
        let does = does(case);
        let mut judgement = case.plain(
            Verdict::Unclear,
            format!(
                "I cannot say for certain whether {what} {does}, so I call it neither right nor wrong. \
                 Your coach will look at it."
            ),
        );
        if let Some(opinion) = opinion {
            judgement.why = why::left_open(case, opinion);
        }
        judgement
    }

    /// The solver's move that leads to `node` fails.
    pub(super) fn wrong(&self, node: NodeId, moves: &[Move], opinion: &Opinion) -> Judgement {
        let case = self.case;
        let start = &case.problem.position;
        let after = &self.tree.node(node).position;
        let (before, last) = moves.split_at(moves.len() - 1);
        let position = self.path(node).pop().unwrap_or_else(|| start.clone());
        let shown = match last.first() {
            Some(&mv) => why::explain(case, &position, mv, after, opinion),
            None => why::Shown::default(),
        };
        let why::Shown {
            line: answer,
            beyond,
            why,
        } = shown;
        let mut text = String::new();
        if before.len() > case.played.len() {
            let right = words::numbered_end(start, before, before.len() - case.played.len());
            text.push_str(&format!("{right} is right so far. "));
        }
        let several = self.tree.node(self.tree.cursor()).children.len() > 1;
        if several && before.len() == case.played.len() {
            text.push_str("Of several moves offered each has to hold. ");
        }
        let not = match case.problem.stipulation {
            Stipulation::Draw => "does not hold",
            _ => "does not win",
        };
        let move_text = words::numbered_end(start, moves, 1);
        let mut all = moves.to_vec();
        all.extend(&answer);
        let answered = words::numbered_end(start, &all, answer.len());
        let defender = side(!start.turn());
        match (answer.is_empty(), why.is_empty()) {
            (true, true) => text.push_str(&format!("{move_text} {not}.")),
            (true, false) => text.push_str(&format!("{move_text} {not}: {why}.")),
            (false, true) => {
                text.push_str(&format!(
                    "{move_text} {not}. {defender} answers {answered}."
                ));
            }
            (false, false) => text.push_str(&format!(
                "{move_text} {not}. {defender} answers {answered}: {why}."
            )),
        }
        match opinion.by {
            By::Rules => {}
            By::Tables => text.push_str(match case.problem.stipulation {
                Stipulation::Draw => " (Lost, by the endgame tables.)",
                _ => " (No win, by the endgame tables.)",
            }),
            By::Search(depth) => {
                text.push_str(&format!(" (Judged by search, {depth} half-moves deep.)"));
            }
        }
        let points = match before.len() {
            0 => 0.0,
            played => self.points(played / 2),
        };
        Judgement {
            verdict: Verdict::Wrong,
            moves: Vec::new(),
            points,
            refutation: line::sans(after, &answer),
            why,
            message: text,
            scene: Some(Scene {
                position: beyond.unwrap_or_else(|| after.clone()),
                last_move: answer
                    .last()
                    .or(last.first())
                    .and_then(|mv| Some((mv.from()?, mv.to()))),
                marks: answer
                    .first()
                    .and_then(|mv| Some(SceneMark::Refutation(mv.from()?, mv.to())))
                    .into_iter()
                    .collect(),
            }),
            line: if before.len() <= case.played.len() {
                case.line.to_vec()
            } else {
                line::sans(start, before)
            },
            readings: Vec::new(),
        }
    }

    /// The line to `node` is as much as is asked.
    pub(super) fn solved(&self, node: NodeId, other: Option<By>, end: End) -> Judgement {
        let case = self.case;
        let start = &case.problem.position;
        let moves = self.tree.moves_to(node);
        let whole = words::numbered(start, &moves);
        let last = words::numbered_end(start, &moves, 1);
        let does = does(case);
        let ended = match end {
            End::Mate => format!("Solved. {whole} is mate."),
            End::Stalemate => format!("Solved. {last} is stalemate, and that is a draw."),
            End::NoMaterial => format!(
                "Solved. After {last} {} has not enough left to mate.",
                side(!start.turn())
            ),
            End::Repeats => format!("Solved. After {last} the position has come again: it {does}."),
            End::Gained | End::Enough => match other {
                None => format!("Solved. {whole} {does}."),
                Some(By::Tables) => {
                    format!("Yes, {last} {does} too, by the endgame tables. That counts in full.")
                }
                Some(By::Rules) => format!("Yes, {last} {does} too. That counts in full."),
                Some(By::Search(depth)) => format!(
                    "Yes, {last} {does} too, judged by search, {depth} half-moves deep. That counts in full."
                ),
            },
        };
        Judgement {
            verdict: Verdict::Solved,
            moves: Vec::new(),
            points: points::FULL,
            refutation: Vec::new(),
            why: String::new(),
            message: ended,
            scene: None,
            line: line::sans(start, &moves),
            readings: Vec::new(),
        }
    }

    /// Right so far: a defence is still to be dealt with.
    pub(super) fn on_the_way(&self, missing: &Missing) -> Judgement {
        let case = self.case;
        let start = &case.problem.position;
        let moves = &missing.line;
        let defence = moves.last().copied();
        let right = &moves[..moves.len().saturating_sub(1)];
        let answer = words::numbered_end(start, moves, 1);
        let message = match missing.instead {
            Some(other) => {
                let mut dealt = right.to_vec();
                dealt.push(other);
                let dealt = words::numbered_end(start, &dealt, 1);
                format!("Your line is right after {dealt}. What about {answer}? Your move.")
            }
            None => {
                let shown = right.len().saturating_sub(case.played.len());
                format!(
                    "{} is right. {} answers {answer}. Your move.",
                    words::numbered_end(start, right, shown),
                    side(!start.turn())
                )
            }
        };
        let mut position = start.clone();
        for &mv in moves {
            position.play_unchecked(mv);
        }
        Judgement {
            verdict: Verdict::OnTheWay,
            moves: Vec::new(),
            points: self.points(moves.len() / 2),
            refutation: Vec::new(),
            why: String::new(),
            message,
            scene: Some(Scene {
                position,
                last_move: defence.and_then(|mv| Some((mv.from()?, mv.to()))),
                marks: Vec::new(),
            }),
            line: line::sans(start, moves),
            readings: Vec::new(),
        }
    }

    /// Points for so many right moves, when the line is not complete.
    fn points(&self, done: usize) -> f64 {
        let line = self.case.problem.solution.main_line();
        let asked = self.aim.asked(&self.case.problem.position, &line);
        let of = u8::try_from(asked.max(done + 1)).unwrap_or(u8::MAX);
        points::for_moves(done, of)
    }
}
