//! The verdicts on replies to a mate problem, in facts and points.
//!
//! [`super`] finds out what is right, wrong and left out; here it is told to the member.

use shakmaty::{Chess, Move, Position};

use super::{Fault, Judge};
use crate::judge::{Judgement, Verdict, points, told};
use crate::reply::NodeId;
use crate::{
    fact::{Remark, Why},
    line, refute,
    scene::Scene,
};

impl Judge<'_, '_> {
    pub(super) fn wrong(&self, fault: Fault, share: f64) -> Judgement {
        let start = &self.case.problem.position;
        let Fault {
            moves,
            refutation,
            coach,
            left,
        } = fault;
        let at_first = moves.len() <= 1;
        let line_before = &moves[..moves.len() - 1];
        let wrong = || told::numbered_end(start, &moves, 1).into();
        let mut all = moves.clone();
        all.extend(&refutation.line);
        let answer = || told::numbered_end(start, &all, refutation.line.len()).into();
        let coachs = coach.as_ref().filter(|coach| !coach.line.is_empty());
        let shown = coachs.map_or(&refutation.line, |coach| &coach.line);
        let refutation_sans = line::sans(&refutation.after, shown);
        let slower = refutation.reasons.iter().find_map(|reason| match reason {
            refute::Reason::Slower { moves } => Some(*moves),
            _ => None,
        });
        let mut said = Vec::new();
        if line_before.len() > self.case.played.len() {
            said.push(Remark::RightSoFar {
                line: told::numbered(start, line_before).into(),
            });
        }
        let several = self.tree.node(self.tree.cursor()).children.len() > 1;
        if several && moves.len() == self.case.played.len() + 1 {
            said.push(Remark::EachHasToHold);
        }
        let why = || refutation.point.clone();
        said.push(match slower {
            Some(length) => Remark::MatesLate {
                line: wrong(),
                left: left.into(),
                moves: length.into(),
            },
            None if refutation.is_about_the_move() => Remark::FailsBecause {
                line: wrong(),
                why: why(),
            },
            None => Remark::Fails { line: wrong() },
        });
        if let Some(coach) = &coach {
            said.extend(coach.on_the_move(start));
        }
        let side = (!self.solver()).into();
        match (refutation.line.is_empty(), slower) {
            (true, _) => {}
            _ if coachs.is_some() => {
                let told = slower.is_some() || refutation.is_about_the_move();
                let why = if told { Why::default() } else { why() };
                said.extend(coachs.iter().flat_map(|c| c.variation(start, &moves, &why)));
            }
            (false, None) if refutation.is_about_the_move() => {
                if left > 1 {
                    said.push(Remark::ForExample { line: answer() });
                }
            }
            _ if refutation.point.is_empty() || refutation.is_about_the_move() => {
                said.push(Remark::Answers {
                    side,
                    line: answer(),
                });
            }
            _ => said.push(Remark::AnswersBecause {
                side,
                line: answer(),
                why: why(),
            }),
        }
        let line = if at_first || line_before.len() <= self.case.played.len() {
            self.case.line.to_vec()
        } else {
            line::sans(start, line_before)
        };
        let points = if at_first {
            0.0
        } else {
            let done = line_before.len().div_ceil(2);
            points::for_share(share.min(0.99)).max(points::for_moves(done.min(1), self.moves))
        };
        Judgement {
            verdict: Verdict::Wrong,
            moves: Vec::new(),
            points,
            refutation: refutation_sans,
            why: refutation.why,
            said,
            scene: Some(refutation.scene),
            line,
            readings: Vec::new(),
        }
    }

    pub(super) fn solved(&self, first: Option<NodeId>, remark: Option<Fault>) -> Judgement {
        let start = &self.case.problem.position;
        let main: Vec<Move> = {
            let mut moves = self.case.played.to_vec();
            moves.extend(self.tree.main_line());
            moves
        };
        let mut end = start.clone();
        for &mv in &main {
            end.play_unchecked(mv);
        }
        let first_move = first.map_or_else(Vec::new, |node| self.tree.moves_to(node));
        let key = told::numbered_end(start, &first_move, 1).into();
        let mated = end.is_checkmate();
        let moves = self.moves.into();
        let said = match (remark, mated, main.len()) {
            (Some(fault), ..) => Remark::KeyButNoMate {
                line: key,
                moves,
                other: told::numbered_end(start, &fault.moves, 1).into(),
            },
            (None, true, 1) => Remark::MoveMates { line: key },
            (None, true, _) => Remark::LineMates {
                line: told::numbered(start, &main).into(),
            },
            (None, false, _) if self.moves == 2 => Remark::KeyIsEnough { line: key, moves },
            (None, false, _) => Remark::LineHolds,
        };
        Judgement {
            verdict: Verdict::Solved,
            moves: Vec::new(),
            points: points::FULL,
            refutation: Vec::new(),
            why: Why::default(),
            said: vec![said],
            scene: mated.then(|| final_scene(&end, main.last().copied())),
            line: line::sans(start, &main),
            readings: Vec::new(),
        }
    }

    pub(super) fn on_the_way(&self, first: NodeId, missed: &[Move], share: f64) -> Judgement {
        let start = &self.case.problem.position;
        let main = {
            let mut moves = self.case.played.to_vec();
            moves.extend(self.tree.main_line());
            moves
        };
        let answer = told::numbered_end(start, missed, 1).into();
        let upto = &missed[..missed.len() - 1];
        let shared = main
            .iter()
            .zip(upto)
            .take_while(|(written, kept)| written == kept)
            .count();
        // A defence that was left out and filled in was not dealt with in so many words.
        let filled_in = self
            .tree
            .main_nodes()
            .get(shared.saturating_sub(self.case.played.len()))
            .is_some_and(|&node| self.tree.node(node).assumed);
        let right = || {
            let new = upto.len() - self.case.played.len();
            told::numbered_end(start, upto, new).into()
        };
        let said = if filled_in || main.get(shared) == missed.last() {
            Remark::RightBut {
                line: right(),
                answer,
            }
        } else if shared == upto.len() && main.len() <= upto.len() + 1 {
            Remark::RightAndAnswered {
                line: right(),
                side: (!self.solver()).into(),
                answer,
            }
        } else {
            // The line goes on past the point where the defence was missed.
            let dealt = told::numbered_end(start, &main[..(shared + 1).min(main.len())], 1);
            Remark::RightAfter {
                line: dealt.into(),
                answer,
            }
        };
        let _ = first;
        let mut position = start.clone();
        for &mv in missed {
            position.play_unchecked(mv);
        }
        let last = missed.last().copied();
        let done = missed.len() / 2;
        let points = if self.case.played.is_empty() {
            points::for_share(share.min(0.99))
        } else {
            points::for_moves(done, self.moves).min(4.5)
        };
        Judgement {
            verdict: Verdict::OnTheWay,
            moves: Vec::new(),
            points,
            refutation: Vec::new(),
            why: Why::default(),
            said: vec![said],
            scene: Some(Scene {
                position,
                last_move: last.and_then(|mv| Some((mv.from()?, mv.to()))),
                marks: Vec::new(),
            }),
            line: line::sans(start, missed),
            readings: Vec::new(),
        }
    }

    /// Only side lines of what was played came; the next move is still wanted.
    pub(super) fn only_variations(&self, _cursor: NodeId) -> Judgement {
        self.case
            .plain(Verdict::OnTheWay, vec![Remark::SideLinesRight])
    }
}

fn final_scene(end: &Chess, last: Option<Move>) -> Scene {
    Scene {
        position: end.clone(),
        last_move: last.and_then(|mv| Some((mv.from()?, mv.to()))),
        marks: Vec::new(),
    }
}
