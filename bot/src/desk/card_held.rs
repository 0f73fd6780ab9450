//! Which cards would tell of a post that is open.
//!
//! A card tells of a post when its example shows a position that the post asks about or leads to (mirrored or
//! with the colours turned as well), or when a coach's words on it give a move of the post away. That a pattern
//! has a card tells nothing: every pattern has one, and a post's topic is shown with it.

use sealed_move_store::{Db, Group, PostState};
use shakmaty::{Board, Position as _};

use super::{
    CardWords, Report,
    cards::Known,
    checking::report,
    content::{self, Held},
    error::Done,
    problems::Posed,
};
use crate::chess::{
    card::{alike, positions},
    comments,
    line::numbered,
};

/// A problem whose reveal is still to come.
#[derive(Clone, Debug)]
pub(super) struct OpenProblem {
    number: i64,
    posed: Posed,
    report: Report,
}

impl OpenProblem {
    /// The boards that it shows or leads to.
    fn boards(&self) -> Vec<Board> {
        let line = &self.report.line;
        let all = positions(&self.posed.board, line).into_iter();
        all.map(|position| position.board().clone()).collect()
    }
}

/// The problems of a group whose reveal is still to come.
pub(super) fn open_problems(db: &Db<'_>, group: &Group) -> Done<Vec<OpenProblem>> {
    let mut open = Vec::new();
    for state in [PostState::Intended, PostState::Open] {
        for post in db.posts_in(group.id, state)? {
            if let Held::Problem(posed) = content::held(db, &post)? {
                open.push(OpenProblem {
                    number: post.number,
                    report: report(&posed.position.check.report)?,
                    posed: *posed,
                });
            }
        }
    }
    Ok(open)
}

/// Numbers of the posts of which a card would tell. Reads a coach's words as replies are read, which takes a
/// while: to be run off the async threads.
pub(super) fn tells_of(known: &Known, open: &[OpenProblem]) -> Vec<i64> {
    open.iter()
        .filter(|post| shows(known, post) || says(known, post))
        .map(|post| post.number)
        .collect()
}

/// Whether the example shows a position of the post.
fn shows(known: &Known, post: &OpenProblem) -> bool {
    let Some(example) = &known.example else {
        return false;
    };
    let asked = post.boards();
    example
        .positions()
        .iter()
        .any(|shown| asked.iter().any(|board| alike(shown.board(), board)))
}

/// Whether a coach's words give a move of the post away, those beside the example's moves among them.
fn says(known: &Known, post: &OpenProblem) -> bool {
    let CardWords::Coachs { definition, look } = &known.words else {
        return false;
    };
    let line = known.example.as_ref().map_or(String::new(), |example| {
        numbered(example.position.turn(), 1, &example.line)
    });
    let words = format!("{definition}\n{look}\n{line}");
    let Report { keys, line, .. } = &post.report;
    comments::gives_away(&post.posed.board, keys, line, &words).is_some()
}
