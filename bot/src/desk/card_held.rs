//! Which cards would tell of a post that is open; what tells is decided in `chess::lesson`, as for everything else
//! that is shown. A card's example is told with the pattern that it shows, and so is every position it comes
//! through. That a pattern has a card tells nothing: every pattern has one, and a post's topic is shown with it.

use sealed_move_store::{Db, Group, PostState};
use shakmaty::Position as _;

use super::{
    CardWords,
    cards::Known,
    content::{self, Held},
    error::Done,
    secrets::secret_of,
};
use crate::chess::{
    lesson::{Secret, Shows},
    line::numbered,
};

/// A problem whose reveal is still to come.
#[derive(Clone, Debug)]
pub(super) struct OpenProblem {
    number: i64,
    secret: Secret,
}

/// The problems of a group whose reveal is still to come.
pub(super) fn open_problems(db: &Db<'_>, group: &Group) -> Done<Vec<OpenProblem>> {
    let mut open = Vec::new();
    for state in [PostState::Intended, PostState::Open] {
        for post in db.posts_in(group.id, state)? {
            if let Held::Problem(posed) = content::held(db, &post)? {
                open.push(OpenProblem {
                    number: post.number,
                    secret: secret_of(&posed)?,
                });
            }
        }
    }
    Ok(open)
}

/// Numbers of the posts of which a card would tell. Reads a coach's words as replies are read, which takes a
/// while: to be run off the async threads.
pub(super) fn tells_of(known: &Known, open: &[OpenProblem]) -> Vec<i64> {
    let shows = shows(known);
    open.iter()
        .filter(|post| post.secret.told_by(&shows))
        .map(|post| post.number)
        .collect()
}

/// What a card shows: its example, and a coach's words with those beside the example's moves.
pub(super) fn shows(known: &Known) -> Shows {
    let line = known.example.as_ref().map_or(String::new(), |example| {
        numbered(example.position.turn(), 1, &example.line)
    });
    let words = match &known.words {
        CardWords::Coachs { definition, look } => Some(format!("{definition}\n{look}\n{line}")),
        CardWords::Ours(_) => None,
    };
    let example = known.example.as_ref();
    let positions = example.map_or(Vec::new(), |example| example.positions());
    Shows::of_example(words, &positions)
}
