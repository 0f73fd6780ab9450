//! How a proof is written out: numbered lines for reading, and moves as the values of facts.

use shakmaty::{Chess, Color, Move, Position, san::SanPlus};

use crate::{
    Branch, Solution,
    fact::{And, Line},
    line,
};

/// The most variations a report writes out.
pub(super) const MOST_VARIATIONS: usize = 60;

/// The most other continuations that are named at one place.
const MOST_DUALS: usize = 3;

/// SAN of one move, with check and mate sign.
pub(super) fn san(position: &Chess, mv: Move) -> String {
    SanPlus::from_move(position.clone(), mv).to_string()
}

/// A move with the number that its place in the game gives it: "12.Nf3", "12...Nf6".
pub(super) fn in_place(before: &Chess, mv: Move) -> String {
    line::numbered(before.turn(), before.fullmoves().get(), &[san(before, mv)])
}

/// The answer to a first move, as it is written behind it: "Nf6" behind "1.Qh5", "2.Nf3" behind "1...Qh4".
pub(super) fn answer(after: &Chess, mv: Move) -> String {
    let san = san(after, mv);
    match after.turn() {
        Color::White => line::numbered(Color::White, 2, &[san]),
        Color::Black => san,
    }
}

/// A numbered line that starts at move 1, as solutions are printed.
pub(super) fn numbered(position: &Chess, moves: &[Move]) -> String {
    line::numbered(position.turn(), 1, &line::sans(position, moves))
}

/// Moves in SAN as a value: "Qh7, Rd8+ and Nf6".
pub(super) fn list(sans: &[String]) -> And<Line> {
    And {
        and: sans.iter().cloned().map(Line::from).collect(),
    }
}

/// Every variation of a solution as a numbered line, main line first. After each defence the first
/// continuation is followed; other continuations stand behind it in brackets. Deeper defences that
/// meet with the same answer as one already shown are left out.
pub(super) fn variations(position: &Chess, solution: &Solution) -> Vec<String> {
    let mut out = Vec::new();
    for key in &solution.keys {
        let mut walk = Walk {
            position,
            out: &mut out,
            line: vec![key.mv],
            notes: Vec::new(),
        };
        walk.follow(key, 0);
    }
    out
}

struct Walk<'a> {
    position: &'a Chess,
    out: &'a mut Vec<String>,
    line: Vec<Move>,
    /// Duals on the way: at which place of the line, and which moves.
    notes: Vec<(usize, Vec<Move>)>,
}

impl Walk<'_> {
    fn follow(&mut self, branch: &Branch, depth: usize) {
        if self.out.len() >= MOST_VARIATIONS {
            return;
        }
        if branch.defences.is_empty() {
            self.write();
            return;
        }
        let mut answers = Vec::new();
        for defence in &branch.defences {
            let Some(first) = defence.continuations.first() else {
                continue;
            };
            if depth > 0 && answers.contains(&first.mv) {
                continue;
            }
            answers.push(first.mv);
            self.line.push(defence.mv);
            let duals: Vec<Move> = defence.continuations[1..].iter().map(|b| b.mv).collect();
            let noted = !duals.is_empty();
            if noted {
                self.notes.push((self.line.len(), duals));
            }
            self.line.push(first.mv);
            self.follow(first, depth + 1);
            self.line.truncate(self.line.len() - 2);
            if noted {
                self.notes.pop();
            }
        }
    }

    fn write(&mut self) {
        let mut sans = line::sans(self.position, &self.line);
        for (at, duals) in &self.notes {
            let mut here = self.position.clone();
            for &mv in &self.line[..*at] {
                here.play_unchecked(mv);
            }
            let some = duals.iter().take(MOST_DUALS).map(|mv| san(&here, *mv));
            let mut some: Vec<String> = some.collect();
            // A line of moves is in no language.
            if duals.len() > MOST_DUALS {
                some.push("…".to_owned());
            }
            if let Some(place) = sans.get_mut(*at) {
                place.push_str(&format!(" ({})", some.join(", ")));
            }
        }
        self.out
            .push(line::numbered(self.position.turn(), 1, &sans));
    }
}
