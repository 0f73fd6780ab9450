//! The verdicts on replies to a mate problem, in words and points.
//!
//! [`super`] finds out what is right, wrong and left out; here it is told to the member.

use shakmaty::{Chess, Move, Position};

use super::{Fault, Judge};
use crate::judge::{Judgement, Verdict, points, words};
use crate::reply::NodeId;
use crate::{line, men, refute, scene::Scene};

impl Judge<'_, '_> {
    pub(super) fn wrong(&self, fault: Fault, share: f64) -> Judgement {
        let start = &self.case.problem.position;
        let Fault {
            moves,
            refutation,
            left,
        } = fault;
        let at_first = moves.len() <= 1;
        let line_before = &moves[..moves.len() - 1];
        let move_text = words::numbered_end(start, &moves, 1);
        let mut all = moves.clone();
        all.extend(&refutation.line);
        let answer = words::numbered_end(start, &all, refutation.line.len());
        let refutation_sans = line::sans(&refutation.after, &refutation.line);
        let slower = refutation.reasons.iter().find_map(|reason| match reason {
            refute::Reason::Slower { moves } => Some(*moves),
            _ => None,
        });
        let mut text = String::new();
        if line_before.len() > self.case.played.len() {
            text.push_str(&format!(
                "{} is right so far. ",
                words::numbered(start, line_before)
            ));
        }
        let several = self.tree.node(self.tree.cursor()).children.len() > 1;
        if several && moves.len() == self.case.played.len() + 1 {
            text.push_str("Of several moves offered each has to hold. ");
        }
        match slower {
            Some(length) => text.push_str(&format!(
                "{move_text} mates, but not in {}: it takes {}.",
                refute::number(left),
                refute::number(length)
            )),
            None if refutation.is_about_the_move() => {
                text.push_str(&format!("{move_text} does not work: {}.", refutation.point));
            }
            None => text.push_str(&format!("{move_text} does not work.")),
        }
        let defender = men::side(!self.solver());
        let why = &refutation.point;
        match (refutation.line.is_empty(), slower) {
            (true, _) => {}
            (false, None) if refutation.is_about_the_move() => {
                if left > 1 {
                    text.push_str(&format!(" For example {answer}."));
                }
            }
            _ if why.is_empty() || refutation.is_about_the_move() => {
                text.push_str(&format!(" {defender} answers {answer}."));
            }
            _ => text.push_str(&format!(" {defender} answers {answer}: {why}.")),
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
            message: text,
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
        let key = words::numbered_end(start, &first_move, 1);
        let mated = end.is_checkmate();
        let mut text = match (mated, main.len()) {
            (true, 1) => format!("Yes: {key} is mate."),
            (true, _) => format!("Solved. {} is mate.", words::numbered(start, &main)),
            (false, _) if self.moves == 2 => format!(
                "Yes, {key} is the key. In a {} the key is all that is asked.",
                words::kind(self.moves)
            ),
            (false, _) => "Solved. Your line holds against every defence.".to_owned(),
        };
        if let Some(fault) = remark {
            text = format!(
                "Yes, {key} is the key, and in a {} the key is all that is asked. But look again at {}: that is not mate.",
                words::kind(self.moves),
                words::numbered_end(start, &fault.moves, 1)
            );
        }
        Judgement {
            verdict: Verdict::Solved,
            moves: Vec::new(),
            points: points::FULL,
            refutation: Vec::new(),
            why: String::new(),
            message: text,
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
        let defender = men::side(!self.solver());
        let answer = words::numbered_end(start, missed, 1);
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
        let text = if filled_in || main.get(shared) == missed.last() {
            let right = words::numbered_end(start, upto, upto.len() - self.case.played.len());
            format!("{right} is right. But what about {answer}? Your move.")
        } else if shared == upto.len() && main.len() <= upto.len() + 1 {
            let right = words::numbered_end(start, upto, upto.len() - self.case.played.len());
            format!("{right} is right. {defender} answers {answer}. Your move.")
        } else {
            // The line goes on past the point where the defence was missed.
            let dealt = words::numbered_end(start, &main[..(shared + 1).min(main.len())], 1);
            format!("Your line is right after {dealt}. What about {answer}? Your move.")
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
            why: String::new(),
            message: text,
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
        self.case.plain(
            Verdict::OnTheWay,
            "Those side lines are right. Now go on from the position on the board. Your move."
                .to_owned(),
        )
    }
}

fn final_scene(end: &Chess, last: Option<Move>) -> Scene {
    Scene {
        position: end.clone(),
        last_move: last.and_then(|mv| Some((mv.from()?, mv.to()))),
        marks: Vec::new(),
    }
}
