//! What a part of a lesson would give away of another whose answer is sealed.
//!
//! Three things tell a stop's answer: words that name its move, moves that are played from its position, and
//! a picture of what comes after it. What would tell waits until the other is revealed. In doubt it waits.

use shakmaty::{Chess, EnPassantMode, Position, fen::Fen};

use super::{Holds, Part};
use crate::{
    comments::{HeldBack, Note, WhyHeld, gives_away},
    line,
    read::{Entry, GameTree},
};

/// The most half-moves of a stop's lines behind which a picture is recognised.
const DEEP: usize = 24;

/// The answer to a stop.
#[derive(Clone, Debug)]
pub struct Secret {
    position: Chess,
    keys: Vec<String>,
    line: Vec<String>,
    /// Placements that its lines lead to.
    later: Vec<String>,
}

impl Secret {
    /// Of a stop whose check found these keys and this line, in SAN.
    pub fn of(entry: &Entry, keys: &[String], line: &[String]) -> Self {
        let start = &entry.position;
        let mut later = Vec::new();
        follow(start, &line::moves(start, line), &mut later);
        for key in keys {
            follow(
                start,
                &line::moves(start, std::slice::from_ref(key)),
                &mut later,
            );
        }
        if let Some(tree) = &entry.variations {
            walk(start, tree, 0, &mut later);
        }
        Self {
            position: start.clone(),
            keys: keys.to_vec(),
            line: line.to_vec(),
            later,
        }
    }

    /// Whether something that is shown tells it.
    pub fn told_by(&self, shows: &Shows) -> bool {
        let own = placement(&self.position);
        let words =
            |text: &String| gives_away(&self.position, &self.keys, &self.line, text).is_some();
        shows.boards.iter().any(|board| self.later.contains(board))
            || shows.goes_on.contains(&own)
            || shows.words.iter().any(words)
    }
}

/// What a part shows, when it goes out and at its reveal.
#[derive(Clone, Debug, Default)]
pub struct Shows {
    words: Vec<String>,
    /// Placements that are drawn or that its moves come through.
    boards: Vec<String>,
    /// Placements from which a move is shown.
    goes_on: Vec<String>,
}

impl Shows {
    /// Of a part; `start` is where its lead begins.
    pub fn of(part: &Part, start: &Chess) -> Self {
        let mut shows = Self::default();
        let mut board = start.clone();
        for note in &part.lead {
            shows.words.push(note.before.clone());
            shows.words.push(note.after.clone());
            // Variations of an example are followed by their text only; the main line on the board.
            if note.depth == 0 {
                shows.play(&mut board, &note.moves);
            }
        }
        match &part.holds {
            Holds::Stop(entry) => {
                shows.boards.push(placement(&entry.position));
                let comments = entry.comments.iter();
                shows
                    .words
                    .extend(comments.map(|comment| comment.text.clone()));
                if let Some(tree) = &entry.variations {
                    shows.goes_on.push(placement(&entry.position));
                    walk(&entry.position, tree, 0, &mut shows.boards);
                    said(tree, &mut shows.words);
                }
            }
            Holds::Question(written) | Holds::Words(written) => {
                shows
                    .boards
                    .extend(written.position.as_ref().map(placement));
                shows.words.push(written.words.clone());
                shows.words.push(written.at_reveal.clone());
            }
        }
        shows.words.retain(|text| !text.trim().is_empty());
        shows
    }

    /// What the check adds to a stop: its solution goes out with its reveal.
    pub fn and_solution(&mut self, position: &Chess, line: &[String]) {
        self.goes_on.push(placement(position));
        follow(position, &line::moves(position, line), &mut self.boards);
    }

    fn play(&mut self, board: &mut Chess, moves: &str) {
        for word in moves.split_whitespace() {
            let san = word.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.');
            let Some(mv) = line::moves(board, &[san.trim_end_matches(['!', '?']).to_owned()])
                .first()
                .copied()
            else {
                continue;
            };
            self.goes_on.push(placement(board));
            board.play_unchecked(mv);
            self.boards.push(placement(board));
        }
    }
}

/// Takes the words out of a lead that tell a move of the stop it leads up to; they are held for the reveal.
pub fn guard(
    lead: &mut [Note],
    position: &Chess,
    keys: &[String],
    line: &[String],
) -> Vec<HeldBack> {
    let mut held = Vec::new();
    for note in lead {
        for words in [&mut note.before, &mut note.after] {
            if let Some(mv) = gives_away(position, keys, line, words) {
                held.push(HeldBack {
                    words: std::mem::take(words),
                    why: WhyHeld::Gives(mv),
                });
            }
        }
    }
    held
}

/// Board, side to move, castling and en passant, as a FEN has them.
fn placement(position: &Chess) -> String {
    let fen = Fen::from_position(position, EnPassantMode::Legal).to_string();
    fen.split(' ').take(4).collect::<Vec<_>>().join(" ")
}

fn follow(start: &Chess, moves: &[shakmaty::Move], into: &mut Vec<String>) {
    let mut board = start.clone();
    for mv in moves.iter().take(DEEP) {
        board.play_unchecked(*mv);
        into.push(placement(&board));
    }
}

fn walk(from: &Chess, tree: &GameTree, depth: usize, into: &mut Vec<String>) {
    if depth >= DEEP {
        return;
    }
    for node in &tree.nodes {
        let mut board = from.clone();
        board.play_unchecked(node.mv);
        into.push(placement(&board));
        walk(&board, &node.next, depth + 1, into);
    }
}

fn said(tree: &GameTree, into: &mut Vec<String>) {
    let mut open = vec![tree];
    while let Some(tree) = open.pop() {
        for node in &tree.nodes {
            into.extend(node.before.clone());
            into.extend(node.comment.clone());
            open.push(&node.next);
        }
    }
}
