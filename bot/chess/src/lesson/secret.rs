//! What something that is shown would give away of a problem whose answer is sealed: a part of a lesson, words
//! or a card in the week, a card that a member reads.
//!
//! Three things tell a problem's answer: words that name its move, moves that are played from its position, and
//! a picture of what comes after it, mirrored or with the colours turned as well. What would tell waits until
//! the problem is revealed. In doubt it waits.

use shakmaty::{Board, Chess, Position};

use super::{Holds, Part};
use crate::{
    card::alike,
    comments::{HeldBack, Note, WhyHeld, gives_away},
    line,
    read::{Entry, GameTree},
};

/// The most half-moves of a stop's lines behind which a picture is recognised.
const DEEP: usize = 24;

/// The answer to a problem.
#[derive(Clone, Debug)]
pub struct Secret {
    position: Chess,
    keys: Vec<String>,
    line: Vec<String>,
    /// Boards that its lines lead to.
    later: Vec<Board>,
}

impl Secret {
    /// Of a stop whose check found these keys and this line, in SAN.
    pub fn of(entry: &Entry, keys: &[String], line: &[String]) -> Self {
        let mut secret = Self::of_position(&entry.position, keys, line);
        if let Some(tree) = &entry.variations {
            walk(&entry.position, tree, 0, &mut secret.later);
        }
        secret
    }

    /// Of a position whose check found these keys and this line, in SAN.
    pub fn of_position(start: &Chess, keys: &[String], line: &[String]) -> Self {
        let mut later = Vec::new();
        follow(start, &line::moves(start, line), &mut later);
        for key in keys {
            follow(
                start,
                &line::moves(start, std::slice::from_ref(key)),
                &mut later,
            );
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
        let own = self.position.board();
        let comes_later = |board: &Board| self.later.iter().any(|later| alike(later, board));
        let words =
            |text: &String| gives_away(&self.position, &self.keys, &self.line, text).is_some();
        shows.boards.iter().any(comes_later)
            || shows.goes_on.iter().any(|board| alike(board, own))
            || shows.words.iter().any(words)
    }
}

/// What something shows, when it goes out and at its reveal.
#[derive(Clone, Debug, Default)]
pub struct Shows {
    words: Vec<String>,
    /// Boards that are drawn or that its moves come through.
    boards: Vec<Board>,
    /// Boards from which a move is shown, or of which it is said what they show.
    goes_on: Vec<Board>,
}

impl Shows {
    /// Of a part; `start` is where its lead begins.
    pub fn of(part: &Part, start: &Chess) -> Self {
        let mut shows = Self::default();
        let mut at = start.clone();
        for note in &part.lead {
            shows.words.push(note.before.clone());
            shows.words.push(note.after.clone());
            // Variations of an example are followed by their text only; the main line on the board.
            if note.depth == 0 {
                shows.play(&mut at, &note.moves);
            }
        }
        match &part.holds {
            Holds::Stop(entry) => {
                shows.boards.push(board(&entry.position));
                let comments = entry.comments.iter();
                shows
                    .words
                    .extend(comments.map(|comment| comment.text.clone()));
                if let Some(tree) = &entry.variations {
                    shows.goes_on.push(board(&entry.position));
                    walk(&entry.position, tree, 0, &mut shows.boards);
                    said(tree, &mut shows.words);
                }
            }
            Holds::Question(written) | Holds::Words(written) => {
                shows.boards.extend(written.position.as_ref().map(board));
                shows.words.push(written.words.clone());
                shows.words.push(written.at_reveal.clone());
            }
        }
        shows.words.retain(|text| !text.trim().is_empty());
        shows
    }

    /// Of words, with or without a position beside them.
    pub fn of_words(words: impl IntoIterator<Item = String>, beside: Option<&Chess>) -> Self {
        let words = words.into_iter().filter(|text| !text.trim().is_empty());
        Self {
            words: words.collect(),
            boards: beside.into_iter().map(board).collect(),
            goes_on: Vec::new(),
        }
    }

    /// Of an example of a topic: whatever position it comes through, its first among them, is told with what it
    /// is an example of.
    pub fn of_example(words: impl IntoIterator<Item = String>, positions: &[Chess]) -> Self {
        let boards: Vec<Board> = positions.iter().map(board).collect();
        Self {
            goes_on: boards.clone(),
            boards,
            ..Self::of_words(words, None)
        }
    }

    /// What the check adds to a stop: its solution goes out with its reveal.
    pub fn and_solution(&mut self, position: &Chess, line: &[String]) {
        self.goes_on.push(board(position));
        follow(position, &line::moves(position, line), &mut self.boards);
    }

    fn play(&mut self, at: &mut Chess, moves: &str) {
        for word in moves.split_whitespace() {
            let san = word.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.');
            let Some(mv) = line::moves(at, &[san.trim_end_matches(['!', '?']).to_owned()])
                .first()
                .copied()
            else {
                continue;
            };
            self.goes_on.push(board(at));
            at.play_unchecked(mv);
            self.boards.push(board(at));
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

fn board(position: &Chess) -> Board {
    position.board().clone()
}

fn follow(start: &Chess, moves: &[shakmaty::Move], into: &mut Vec<Board>) {
    let mut at = start.clone();
    for mv in moves.iter().take(DEEP) {
        at.play_unchecked(*mv);
        into.push(board(&at));
    }
}

fn walk(from: &Chess, tree: &GameTree, depth: usize, into: &mut Vec<Board>) {
    if depth >= DEEP {
        return;
    }
    for node in &tree.nodes {
        let mut at = from.clone();
        at.play_unchecked(node.mv);
        into.push(board(&at));
        walk(&at, &node.next, depth + 1, into);
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
