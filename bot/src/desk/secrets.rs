//! What in the week would give away the answer to a problem whose reveal is still to come, and so waits for it
//! (`content_waits`): words, questions and cards, against problems of the week and open ones. What tells is
//! decided in `chess::lesson`. The parts of one lesson are held against one another when it is taken in, with all
//! that leads up to them.
//!
//! Words are read as replies are, which takes a while, so this is done off the async threads, before the write
//! that puts something into the week.

use sealed_move_store::{
    CardShown, Content, ContentId, Db, Group, LessonId, Position, PostState, Tx, Waits as Waiting,
    Written,
};

use super::{
    Desk,
    checking::report,
    content,
    drawing::board_of,
    error::{DeskError, Done},
    problems::Posed,
};
use crate::chess::{
    card::positions,
    lesson::{Secret, Shows},
};

/// The answer to a problem.
///
/// # Errors
/// When its report cannot be read.
pub(super) fn secret_of(posed: &Posed) -> Done<Secret> {
    let report = report(&posed.position.check.report)?;
    Ok(Secret::of_position(
        &posed.board,
        &report.keys,
        &report.line,
    ))
}

/// Something on its way into the week, or in it.
#[derive(Clone, Debug)]
pub(super) enum Piece {
    /// A problem.
    Problem(Secret),
    /// Words, with what they show.
    Words(Shows),
}

impl Piece {
    pub(super) fn problem(position: Position) -> Done<Self> {
        Ok(Self::Problem(secret_of(&Posed::of(position)?)?))
    }

    pub(super) fn words(written: &Written, at_reveal: &str) -> Self {
        let beside = written.fen.as_deref().and_then(board_of);
        let words = [written.words.clone(), at_reveal.to_owned()];
        Self::Words(Shows::of_words(words, beside.as_ref()))
    }

    /// A card that was put into the week.
    fn card(written: &Written, shown: CardShown) -> Done<Self> {
        let line: Vec<String> = serde_json::from_value(shown.line)
            .map_err(|error| DeskError::damaged(format!("a card's line: {error}")))?;
        let start = written.fen.as_deref().and_then(board_of);
        let all = start.map_or(Vec::new(), |start| positions(&start, &line));
        // The program's words name no move; a coach's may.
        let words = shown.by_coach.then(|| written.words.clone());
        Ok(Self::Words(Shows::of_example(words, &all)))
    }

    /// An item of content, whatever it is.
    pub(super) fn of(db: &Db<'_>, content: ContentId, holds: &Content) -> Done<Option<Self>> {
        Ok(match holds {
            Content::Problem { position_id, .. } => match db.position(*position_id)? {
                Some(position) => Some(Self::problem(position)?),
                None => None,
            },
            Content::Question { asked, at_reveal } => Some(Self::words(asked, at_reveal)),
            Content::Words(written) => Some(match db.card_shown(content)? {
                Some(shown) => Self::card(written, shown)?,
                None => Self::words(written, ""),
            }),
        })
    }

    /// Whether these words tell that problem.
    fn tells(&self, problem: &Self) -> bool {
        match (self, problem) {
            (Self::Words(shows), Self::Problem(secret)) => secret.told_by(shows),
            _ => false,
        }
    }
}

/// What something new stands beside: all that waits in the week, and the problems that are open.
pub(super) struct Beside(Vec<(ContentId, Piece)>);

impl Beside {
    pub(super) fn of(db: &Db<'_>, group: &Group) -> Done<Self> {
        let mut all = Vec::new();
        for item in db.queue(group.id)? {
            let piece = match &item.holds {
                Waiting::Problem(problem) => match db.position(problem.position_id)? {
                    Some(position) => Piece::problem(position)?,
                    None => continue,
                },
                Waiting::Question { asked, at_reveal } => Piece::words(asked, at_reveal),
                Waiting::Words(written) => match db.card_shown(item.content_id)? {
                    Some(shown) => Piece::card(written, shown)?,
                    None => Piece::words(written, ""),
                },
            };
            all.push((item.content_id, piece));
        }
        for state in [PostState::Intended, PostState::Open, PostState::Closing] {
            for post in db.posts_in(group.id, state)? {
                if let content::Held::Problem(posed) = content::held(db, &post)? {
                    all.push((post.content_id, Piece::Problem(secret_of(&posed)?)));
                }
            }
        }
        Ok(Self(all))
    }

    /// Without the parts of a lesson, which are held against one another already.
    pub(super) fn without(mut self, db: &Db<'_>, lesson: LessonId) -> Done<Self> {
        let parts = db.lesson_parts(lesson)?;
        self.0
            .retain(|(content, _)| parts.iter().all(|part| part.content_id != *content));
        Ok(self)
    }
}

/// What waits for what, once something new is in the week.
#[derive(Clone, Debug, Default)]
pub(super) struct Holds {
    /// For whose reveals the new one waits.
    waits_for: Vec<ContentId>,
    /// What waits for the reveal of the new one.
    kept_by_it: Vec<ContentId>,
}

impl Holds {
    fn of(new: &Piece, beside: &Beside) -> Self {
        let which = |tells: &dyn Fn(&Piece) -> bool| {
            let found = beside.0.iter().filter(|(_, other)| tells(other));
            found.map(|(content, _)| *content).collect()
        };
        Self {
            waits_for: which(&|other| new.tells(other)),
            kept_by_it: which(&|other| other.tells(new)),
        }
    }

    /// Writes down that they wait, for a new item of content. What is gone by now waits for nothing.
    pub(super) fn keep(&self, tx: &Tx<'_>, new: ContentId) -> Done<()> {
        for other in &self.waits_for {
            if tx.content(*other)?.is_some() && *other != new {
                tx.let_content_wait(new, *other)?;
            }
        }
        for other in &self.kept_by_it {
            if tx.content(*other)?.is_some() && *other != new {
                tx.let_content_wait(*other, new)?;
            }
        }
        Ok(())
    }
}

impl Desk {
    /// What each of these new pieces would tell of what it stands beside, and what tells of it.
    pub(super) async fn holds(&self, new: Vec<Piece>, beside: Beside) -> Done<Vec<Holds>> {
        let words = |piece: &Piece| matches!(piece, Piece::Words(_));
        if !new
            .iter()
            .chain(beside.0.iter().map(|(_, one)| one))
            .any(words)
        {
            return Ok(vec![Holds::default(); new.len()]);
        }
        let seconds = self.inner.options.check_seconds;
        self.inner
            .checks
            .run("reading words of the week", seconds, move |_| {
                let holds = new.iter().map(|new| Holds::of(new, &beside));
                holds.collect()
            })
            .await
    }
}
