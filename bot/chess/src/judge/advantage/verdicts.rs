//! What is said of a reply to a win or a draw.

use shakmaty::{Move, Position};

use super::opinion::{self, By, Opinion, Says};
use super::plain::End;
use super::{Missing, Walk, why};
use crate::judge::coach::{self, OnWrong};
use crate::judge::{Judgement, Verdict, points, told};
use crate::{
    fact::{Remark, Task, Why},
    line,
    reply::NodeId,
    scene::{Scene, SceneMark},
};

impl Walk<'_, '_> {
    /// Neither right nor wrong: the coach decides.
    pub(super) fn open(&self, moves: &[Move], opinion: Option<&Opinion>) -> Judgement {
        let case = self.case;
        let line = told::numbered_end(&case.problem.position, moves, 1).into();
        let task = case.problem.stipulation.into();
        let said = vec![Remark::NotCertain { line, task }];
        let mut judgement = case.plain(Verdict::Unclear, said);
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
        let coach = coach::on_wrong(case, moves).filter(|coach| self.refutes(coach, node, opinion));
        let coachs = coach.as_ref().filter(|coach| !coach.line.is_empty());
        let along = coachs.map(|coach| Opinion {
            line: coach.line.clone(),
            score: None,
            ..*opinion
        });
        let shown = match last.first() {
            Some(&mv) => {
                let opinion = along.as_ref().unwrap_or(opinion);
                why::explain(case, &position, mv, after, opinion)
            }
            None => why::Shown::default(),
        };
        let why::Shown {
            line: mut answer,
            mut beyond,
            why,
        } = shown;
        if let Some(coach) = coachs {
            answer.clone_from(&coach.line);
            beyond = Some(why::play(after, &answer));
        }
        let mut said = Vec::new();
        if before.len() > case.played.len() {
            let right = told::numbered_end(start, before, before.len() - case.played.len());
            said.push(Remark::RightSoFar { line: right.into() });
        }
        let several = self.tree.node(self.tree.cursor()).children.len() > 1;
        if several && before.len() == case.played.len() {
            said.push(Remark::EachHasToHold);
        }
        let task = Task::from(case.problem.stipulation);
        let wrong = told::numbered_end(start, moves, 1).into();
        let mut all = moves.to_vec();
        all.extend(&answer);
        let answered = told::numbered_end(start, &all, answer.len()).into();
        let side = (!start.turn()).into();
        match (answer.is_empty(), why.is_empty()) {
            (true, false) => said.push(Remark::DoesNotBecause {
                line: wrong,
                task,
                why: why.clone(),
            }),
            _ => said.push(Remark::DoesNot { line: wrong, task }),
        }
        if let Some(coach) = &coach {
            said.extend(coach.on_the_move(start));
        }
        match (answer.is_empty(), why.is_empty()) {
            (true, _) => {}
            _ if coachs.is_some() => {
                said.extend(
                    coachs
                        .iter()
                        .flat_map(|coach| coach.variation(start, moves, &why)),
                );
            }
            (false, true) => said.push(Remark::Answers {
                side,
                line: answered,
            }),
            (false, false) => said.push(Remark::AnswersBecause {
                side,
                line: answered,
                why: why.clone(),
            }),
        }
        match opinion.by {
            By::Rules => {}
            By::Tables => said.push(Remark::ByTables { task }),
            By::Search(depth) => said.push(Remark::BySearch { depth }),
        }
        let points = match before.len() {
            0 => 0.0,
            _ => self.points(before),
        };
        Judgement {
            verdict: Verdict::Wrong,
            moves: Vec::new(),
            points,
            refutation: line::sans(after, &answer),
            why,
            said,
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

    /// Whether the coach's variation for the wrong move that leads to `node` surely keeps the solver from
    /// the task, at its first move and at its end; words alone do.
    fn refutes(&self, coach: &OnWrong, node: NodeId, wrong: &Opinion) -> bool {
        let Some(defence) = coach.defence() else {
            return true;
        };
        let mut before = self.path(node);
        let mut position = self.tree.node(node).position.clone();
        let mut fails = true;
        for (place, &mv) in coach.line.iter().enumerate() {
            before.push(position.clone());
            position.play_unchecked(mv);
            // The best defence was found to hold; the coach's may be another.
            if place == 0 && wrong.line.first() != Some(&defence) {
                fails = opinion::fails(self.case, &before, &position);
            }
        }
        if !fails || coach.line.len() < 2 {
            return fails;
        }
        match position.turn() == self.case.problem.position.turn() {
            true => opinion::fails(self.case, &before, &position),
            false => opinion::opinion(self.case, &before, &position).says == Says::Bad,
        }
    }

    /// The line to `node` is as much as is asked.
    pub(super) fn solved(&self, node: NodeId, other: Option<By>, end: End) -> Judgement {
        let case = self.case;
        let start = &case.problem.position;
        let moves = self.tree.moves_to(node);
        let whole = told::numbered(start, &moves).into();
        let last = told::numbered_end(start, &moves, 1).into();
        let task = case.problem.stipulation.into();
        let said = match end {
            End::Mate => Remark::LineMates { line: whole },
            End::Stalemate => Remark::StalemateDraws { line: last },
            End::NoMaterial => Remark::TooLittleLeft {
                line: last,
                side: (!start.turn()).into(),
            },
            End::Repeats => Remark::ComesAgain { line: last, task },
            End::Gained | End::Enough => match other {
                None => Remark::LineDoes { line: whole, task },
                Some(By::Tables) => Remark::DoesTooByTables { line: last, task },
                Some(By::Rules) => Remark::DoesToo { line: last, task },
                Some(By::Search(depth)) => Remark::DoesTooBySearch {
                    line: last,
                    task,
                    depth,
                },
            },
        };
        Judgement {
            verdict: Verdict::Solved,
            moves: Vec::new(),
            points: points::FULL,
            refutation: Vec::new(),
            why: Why::default(),
            said: vec![said],
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
        let answer = told::numbered_end(start, moves, 1).into();
        let said = match missing.instead {
            Some(other) => {
                let mut dealt = right.to_vec();
                dealt.push(other);
                Remark::RightAfter {
                    line: told::numbered_end(start, &dealt, 1).into(),
                    answer,
                }
            }
            None => {
                let shown = right.len().saturating_sub(case.played.len());
                Remark::RightAndAnswered {
                    line: told::numbered_end(start, right, shown).into(),
                    side: (!start.turn()).into(),
                    answer,
                }
            }
        };
        let mut position = start.clone();
        for &mv in moves {
            position.play_unchecked(mv);
        }
        Judgement {
            verdict: Verdict::OnTheWay,
            moves: Vec::new(),
            points: self.points(moves),
            refutation: Vec::new(),
            why: Why::default(),
            said: vec![said],
            scene: Some(Scene {
                position,
                last_move: defence.and_then(|mv| Some((mv.from()?, mv.to()))),
                marks: Vec::new(),
            }),
            line: line::sans(start, moves),
            readings: Vec::new(),
        }
    }

    /// Points for the right moves of a line that is not complete and ends with a defence.
    fn points(&self, moves: &[Move]) -> f64 {
        let done = moves.len() / 2;
        let asked = self.coachs_length(moves).unwrap_or_else(|| {
            let line = self.case.problem.solution.main_line();
            self.aim.asked(&self.case.problem.position, &line)
        });
        let of = u8::try_from(asked.max(done + 1)).unwrap_or(u8::MAX);
        points::for_moves(done, of)
    }
}
