//! The coach's own line with its variations, cut where words stand: each note is a few moves with the
//! words before and behind them.

use serde::{Deserialize, Serialize};
use shakmaty::{Chess, Color, Position, san::SanPlus};

use super::{MOST_IN_NOTES, characters, glyphs};
use crate::read::{GameNode, GameTree, without_commands};

/// Moves of a coach's line with the words beside them.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Note {
    /// 0 in the main line, 1 in its variations, 2 in theirs …
    pub depth: u8,
    /// Whether a variation begins here.
    pub begins: bool,
    /// Words before the moves.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub before: String,
    /// The moves, numbered from 1 as a solution is printed, with check, mate and annotation signs.
    pub moves: String,
    /// Words behind the moves.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub after: String,
}

/// The notes of a tree, and whether some had to be left out. A tree with neither words nor signs has
/// none where every variation is `proved`: its moves say nothing that the solution does not. Of a win or a
/// draw the solution is one line, and the coach's side lines are more.
pub(super) fn of(start: &Chess, tree: &GameTree, proved: bool) -> (Vec<Note>, bool) {
    if !says_anything(tree) && (proved || !branches(tree)) {
        return (Vec::new(), false);
    }
    let mut walk = Walk {
        notes: Vec::new(),
        room: MOST_IN_NOTES,
        cut: false,
    };
    walk.line(start, tree, Ply::first(start), 0);
    (walk.notes, walk.cut)
}

/// Moves that are shown as an example or lead up to a stop, whether or not words stand beside them, each with
/// the number that its place in the game gives it; and whether some had to be left out.
pub fn shown(start: &Chess, tree: &GameTree) -> (Vec<Note>, bool) {
    let mut walk = Walk {
        notes: Vec::new(),
        room: MOST_IN_NOTES,
        cut: false,
    };
    let first = Ply {
        number: start.fullmoves().get() as usize,
        turn: start.turn(),
    };
    walk.line(start, tree, first, 0);
    (walk.notes, walk.cut)
}

fn says_anything(tree: &GameTree) -> bool {
    let mut open = vec![tree];
    while let Some(tree) = open.pop() {
        for node in &tree.nodes {
            if node.comment.is_some() || node.before.is_some() || !node.nags.is_empty() {
                return true;
            }
            open.push(&node.next);
        }
    }
    false
}

fn branches(tree: &GameTree) -> bool {
    let mut line = Some(tree);
    while let Some(here) = line {
        if here.nodes.len() > 1 {
            return true;
        }
        line = here.nodes.first().map(|node| &node.next);
    }
    false
}

/// Where a move stands: its number, counted from the problem's first, and whose it is.
#[derive(Clone, Copy)]
struct Ply {
    number: usize,
    turn: Color,
}

impl Ply {
    fn first(start: &Chess) -> Self {
        Self {
            number: 1,
            turn: start.turn(),
        }
    }

    fn next(self) -> Self {
        Self {
            number: self.number + usize::from(self.turn.is_black()),
            turn: !self.turn,
        }
    }
}

struct Walk {
    notes: Vec<Note>,
    /// Characters that may still be kept.
    room: usize,
    cut: bool,
}

impl Walk {
    /// A line from its first move to its end, with what branches off behind each move.
    fn line(&mut self, from: &Chess, tree: &GameTree, ply: Ply, depth: u8) {
        // What begins a variation is taken here; its brothers are taken where the main move stands.
        let Some(first) = tree.nodes.first() else {
            return;
        };
        self.branch(from, first, &tree.nodes[1..], ply, depth);
    }

    fn branch(&mut self, from: &Chess, first: &GameNode, others: &[GameNode], ply: Ply, depth: u8) {
        let (mut position, mut ply) = (from.clone(), ply);
        let (mut node, mut others) = (first, others);
        let mut note = Note {
            depth,
            begins: true,
            ..Note::default()
        };
        loop {
            let before = words(node.before.as_deref());
            if !before.is_empty() {
                self.put(&mut note);
                note.before = before;
            }
            write_move(&mut note.moves, &position, node, ply);
            note.after = words(node.comment.as_deref());
            if !note.after.is_empty() || !others.is_empty() {
                self.put(&mut note);
            }
            for other in others {
                self.branch(&position, other, &[], ply, depth.saturating_add(1));
            }
            position.play_unchecked(node.mv);
            ply = ply.next();
            let Some(next) = node.next.nodes.first() else {
                break;
            };
            others = &node.next.nodes[1..];
            node = next;
        }
        self.put(&mut note);
    }

    /// Keeps a note that holds something, as long as there is room, and begins the next one.
    fn put(&mut self, note: &mut Note) {
        if note.moves.is_empty() && note.before.is_empty() {
            return;
        }
        let next = Note {
            depth: note.depth,
            ..Note::default()
        };
        let note = std::mem::replace(note, next);
        let long = characters(&note.before) + characters(&note.moves) + characters(&note.after);
        if self.cut || long > self.room {
            self.cut = true;
            return;
        }
        self.room -= long;
        self.notes.push(note);
    }
}

fn words(comment: Option<&str>) -> String {
    let text = without_commands(comment.unwrap_or_default());
    // Everything beside a move is for the reveal anyway.
    match text.get(..8) {
        Some(mark) if mark.eq_ignore_ascii_case("[reveal]") => text[8..].trim().to_owned(),
        _ => text,
    }
}

/// Writes a move behind those of its note.
fn write_move(out: &mut String, position: &Chess, node: &GameNode, ply: Ply) {
    let begins = out.is_empty();
    if !begins {
        out.push(' ');
    }
    match ply.turn {
        Color::White => out.push_str(&format!("{}.", ply.number)),
        Color::Black if begins => out.push_str(&format!("{}...", ply.number)),
        Color::Black => {}
    }
    out.push_str(&SanPlus::from_move(position.clone(), node.mv).to_string());
    let signs = |on_the_move: bool| {
        node.nags
            .iter()
            .filter(move |nag| glyphs::on_the_move(**nag) == on_the_move)
            .filter_map(|nag| glyphs::sign(*nag))
    };
    signs(true).for_each(|sign| out.push_str(sign));
    for sign in signs(false) {
        out.push(' ');
        out.push_str(sign);
    }
}

/// Notes as lines of text: the main line cut where words stand, each variation on a line of its own in
/// brackets, with its own variations in brackets inside. `moves` says how moves are written, which are given to
/// it with English letters.
pub fn lines(notes: &[Note], moves: impl Fn(&str) -> String) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    let mut first = true;
    // How many brackets are open in the last line.
    let mut open = 0_u8;
    for note in notes {
        let close = |out: &mut Vec<String>, open: &mut u8, upto: u8| {
            if let Some(line) = out.last_mut() {
                while *open > upto {
                    line.push(')');
                    *open -= 1;
                }
            }
        };
        if note.begins && note.depth > 0 {
            close(&mut out, &mut open, note.depth - 1);
        } else {
            close(&mut out, &mut open, note.depth);
        }
        let new_line = note.depth == 0 || (note.depth == 1 && note.begins) || first;
        if new_line {
            out.push(String::new());
        }
        first = false;
        let Some(line) = out.last_mut() else {
            continue;
        };
        if !line.is_empty() {
            line.push(' ');
        }
        if note.begins && note.depth > 0 {
            line.push('(');
            open += 1;
        }
        let written = moves(&note.moves);
        let parts = [&note.before, &written, &note.after];
        let parts: Vec<&str> = parts
            .into_iter()
            .map(String::as_str)
            .filter(|part| !part.is_empty())
            .collect();
        line.push_str(&parts.join(" "));
    }
    if let Some(line) = out.last_mut() {
        for _ in 0..open {
            line.push(')');
        }
    }
    out
}
