//! The lines that people were shown last of what is talked about, so that the next move goes on from there.

use std::{
    collections::VecDeque,
    sync::{Mutex, PoisonError},
};

use super::PostId;

/// How many are remembered.
const REMEMBERED: usize = 500;

/// The lines that people were shown last, by post and the chat's id of the person. In memory alone: after a restart
/// moves are followed from the position and its lines again.
#[derive(Default)]
pub(super) struct LastShown(Mutex<VecDeque<Line>>);

/// A line in SAN, by post and the chat's id of the person.
type Line = ((PostId, String), Vec<String>);

impl LastShown {
    pub(super) fn of(&self, post: PostId, user: &str) -> Option<Vec<String>> {
        let kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let found = kept.iter().find(|((of, by), _)| *of == post && by == user);
        found.map(|(_, line)| line.clone())
    }

    pub(super) fn note(&self, post: PostId, user: &str, line: Vec<String>) {
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        kept.retain(|((of, by), _)| *of != post || by != user);
        kept.push_front(((post, user.to_owned()), line));
        kept.truncate(REMEMBERED);
    }
}
