//! What members step through of a lesson: what was shown of its parts, at their posts and at their reveals, and
//! nothing of any other part. It is made of the parts that are revealed, never of the step as it was written, which
//! holds what comes later.

use std::collections::HashMap;

use chrono::{DateTime, Utc};
use sealed_move_store::{Content, Db, Group, Lesson, LessonPart, LessonStep, PartPost, PostState};
use shakmaty::{Chess, Color, EnPassantMode, Position as _, fen::Fen};

use super::{
    CoachWords, Kind, KindName, LessonId, PostId, Side,
    checking::report,
    drawing::board_of,
    error::{DeskError, Done, not_found},
    handle::position_of,
    problems::Posed,
    queue::plan_of,
    refusal::Refusal,
    reveal,
};
use crate::{
    chess::{
        Stipulation,
        comments::Note,
        lesson::read_step,
        walk::{Moved, Walk},
    },
    diagram::{Alt, Diagram, reveal::landing},
};

/// A lesson in the members' list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LessonListed {
    /// Its id.
    pub lesson: LessonId,
    /// Its title.
    pub title: String,
    /// Its topic.
    pub topic: Option<String>,
    /// How many of its parts are revealed.
    pub revealed: usize,
    /// What else there is to say of it.
    pub to_come: ToCome,
}

/// What of a lesson is not revealed. Says nothing of what it holds.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ToCome {
    /// Numbers of its posts that are open.
    pub open: Vec<i64>,
    /// How many parts were not posted yet.
    pub parts: usize,
    /// When the next of them goes out, where that is planned.
    pub next: Option<DateTime<Utc>>,
}

/// A lesson to be stepped through.
#[derive(Clone, Debug)]
pub struct LessonWalk {
    /// Its id.
    pub lesson: LessonId,
    /// Its title.
    pub title: String,
    /// Its topic.
    pub topic: Option<String>,
    /// How many steps it has in all.
    pub steps: i64,
    /// The parts that are revealed, in order; never empty.
    pub parts: Vec<WalkPart>,
    /// What is not.
    pub to_come: ToCome,
}

/// Which part of a lesson.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PartAt {
    /// The step, from 1.
    pub step: i64,
    /// Its place in the step, from 1.
    pub part: i64,
}

/// A part of a lesson that is revealed.
#[derive(Clone, Debug)]
pub struct WalkPart {
    /// Which.
    pub at: PartAt,
    /// Its post.
    pub post: PostId,
    /// Number of the post.
    pub number: i64,
    /// What it is.
    pub kind: KindName,
    /// Of a stop: who moves, and the task.
    pub task: Option<(Side, Stipulation)>,
    /// The words that went out with it; may be empty.
    pub words: String,
    /// The coach's words at its reveal; may be empty.
    pub at_reveal: String,
    /// The places to step through; without a board none, else the start first.
    pub places: Vec<WalkPlace>,
    /// The place at which its move was asked for.
    pub asked_at: Option<usize>,
}

/// A place to step to.
#[derive(Clone, Debug)]
pub struct WalkPlace {
    /// The place before.
    pub before: Option<usize>,
    /// The places after, the main move first.
    pub next: Vec<usize>,
    /// The move that leads here as it is printed, with English letters; empty at the start.
    pub written: String,
    /// The same in words.
    pub moved: Vec<Moved>,
    /// The coach's words before the move; may be empty.
    pub words_before: String,
    /// The coach's words behind the move; may be empty.
    pub words_after: String,
    /// The board in words.
    pub alt: Alt,
    /// The board, to be drawn.
    board: Diagram,
}

impl WalkPlace {
    /// The board, to be drawn.
    pub(super) fn board(&self) -> &Diagram {
        &self.board
    }
}

/// A part as the store has it, and as it was shown.
struct Revealed {
    at: PartAt,
    post: PostId,
    number: i64,
    lead: Vec<Note>,
    holds: Holds,
}

enum Holds {
    Stop {
        posed: Box<Posed>,
        words: CoachWords,
        solution: Vec<String>,
    },
    Written {
        kind: KindName,
        words: String,
        at_reveal: String,
        board: Option<Chess>,
    },
}

/// What a walk is made of.
pub(super) struct Told {
    lesson: Lesson,
    steps: Vec<LessonStep>,
    parts: Vec<Revealed>,
    to_come: ToCome,
}

/// The lessons of a group of which something is revealed, the latest first.
pub(super) fn listed(db: &Db<'_>, group: &Group, now: DateTime<Utc>) -> Done<Vec<LessonListed>> {
    let mut all = Vec::new();
    for lesson in db.lessons(group.id)? {
        let parts = db.lesson_parts(lesson.id)?;
        let seen = seen_of(db, &lesson, &parts)?;
        let revealed = seen.iter().filter(|seen| **seen).count();
        if revealed > 0 {
            all.push(LessonListed {
                lesson: lesson.id,
                title: lesson.title,
                topic: lesson.topic,
                revealed,
                to_come: to_come(db, group, (&parts[..], &seen[..]), now)?,
            });
        }
    }
    Ok(all)
}

/// What is revealed of a lesson.
///
/// # Errors
/// When there is no such lesson, or nothing of it is revealed.
pub(super) fn told(db: &Db<'_>, group: &Group, lesson: LessonId, now: DateTime<Utc>) -> Done<Told> {
    let Some(lesson) = db
        .lesson(lesson)?
        .filter(|lesson| lesson.group_id == group.id)
    else {
        return not_found(Refusal::NoLesson);
    };
    let parts = db.lesson_parts(lesson.id)?;
    let seen = seen_of(db, &lesson, &parts)?;
    let revealed: Vec<Revealed> = parts
        .iter()
        .zip(&seen)
        .filter(|(_, seen)| **seen)
        .map(|(part, _)| revealed(db, group, part))
        .collect::<Done<_>>()?;
    if revealed.is_empty() {
        return not_found(Refusal::NoLesson);
    }
    Ok(Told {
        to_come: to_come(db, group, (&parts[..], &seen[..]), now)?,
        steps: db.lesson_steps(lesson.id)?,
        parts: revealed,
        lesson,
    })
}

/// The parts that the group has seen with their reveals, as this lesson has them. One that was posted before the
/// lesson was there went out without its words, and one that waits to go out again is sealed again.
fn seen_of(db: &Db<'_>, lesson: &Lesson, parts: &[LessonPart]) -> Done<Vec<bool>> {
    let seen = |part: &LessonPart| {
        let closed = part.post.filter(|post| post.state == PostState::Closed);
        let (Some(closed), None) = (closed, part.item) else {
            return Ok(false);
        };
        let post = db.post(closed.id)?;
        Ok(post.is_some_and(|post| post.intended_at >= lesson.created_at))
    };
    parts.iter().map(seen).collect()
}

fn is_open(post: &PartPost) -> bool {
    matches!(post.state, PostState::Open | PostState::Closing)
}

fn to_come(
    db: &Db<'_>,
    group: &Group,
    (parts, seen): (&[LessonPart], &[bool]),
    now: DateTime<Utc>,
) -> Done<ToCome> {
    let open = parts.iter().filter_map(|part| part.post);
    let open = open.filter(is_open);
    let waiting: Vec<_> = parts.iter().filter_map(|part| part.item).collect();
    let next = match waiting.is_empty() {
        true => None,
        false => {
            let plan = plan_of(db, group, &db.queue(group.id)?, now)?;
            let due = plan.due.iter().filter(|due| waiting.contains(&due.item));
            due.map(|due| due.at).min()
        }
    };
    Ok(ToCome {
        open: open.map(|post| post.number).collect(),
        parts: parts
            .iter()
            .zip(seen)
            .filter(|(part, seen)| !**seen && !part.post.is_some_and(|post| is_open(&post)))
            .count(),
        next,
    })
}

fn revealed(db: &Db<'_>, group: &Group, part: &LessonPart) -> Done<Revealed> {
    let Some(post) = part.post else {
        return not_found(Refusal::NoLesson);
    };
    let holds = match &part.content {
        Content::Problem { position_id, .. } => {
            let posed = Posed::of(position_of(db, group, *position_id)?)?;
            let report = report(&posed.position.check.report)?;
            Holds::Stop {
                words: CoachWords::kept(&posed.position)?,
                solution: reveal::solution(posed.board.turn(), &report),
                posed: Box::new(posed),
            }
        }
        Content::Question { asked, at_reveal } => Holds::Written {
            kind: Kind::of(&part.content).name(),
            words: asked.words.clone(),
            at_reveal: at_reveal.clone(),
            board: asked.fen.as_deref().and_then(board_of),
        },
        Content::Words(written) => Holds::Written {
            kind: Kind::of(&part.content).name(),
            words: written.words.clone(),
            at_reveal: String::new(),
            board: written.fen.as_deref().and_then(board_of),
        },
    };
    Ok(Revealed {
        at: PartAt {
            step: part.step,
            part: part.part,
        },
        post: post.id,
        number: post.number,
        lead: serde_json::from_value(part.lead.clone()).map_err(|error| {
            DeskError::damaged(format!("a lesson in it cannot be read ({error})"))
        })?,
        holds,
    })
}

impl Told {
    /// Lays the parts out on boards. Takes time: for the pool.
    pub(super) fn walk(self) -> LessonWalk {
        let starts = self.starts();
        let parts = self.parts.into_iter();
        LessonWalk {
            parts: parts
                .map(|part| {
                    let start = starts.get(&part.at.step);
                    part.walk(start)
                })
                .collect(),
            lesson: self.lesson.id,
            title: self.lesson.title,
            topic: self.lesson.topic,
            steps: self.lesson.steps,
            to_come: self.to_come,
        }
    }

    /// Where the moves begin that lead up to a part, by its step. Only the first position of a step is read.
    fn starts(&self) -> HashMap<i64, Chess> {
        let led = |step: &i64| {
            let mut parts = self.parts.iter();
            parts.any(|part| part.at.step == *step && !part.lead.is_empty())
        };
        self.steps
            .iter()
            .filter(|step| led(&step.step))
            .filter_map(|step| {
                let read = read_step("lesson", &self.lesson.title, &step.game);
                Some((step.step, read.ok()?.start))
            })
            .collect()
    }
}

impl Revealed {
    fn walk(self, start: Option<&Chess>) -> WalkPart {
        let lead = start.filter(|_| !self.lead.is_empty()).map(|start| {
            let mut walk = Walk::new(start, start.fullmoves().get());
            walk.add_notes(0, &self.lead);
            walk
        });
        let (kind, task, words, at_reveal, walk, asked_at, bottom) = match self.holds {
            Holds::Stop {
                posed,
                words,
                solution,
            } => {
                let board = posed.board;
                // The moves lead up to the position, unless the lesson was changed since.
                let (mut walk, at) = match lead {
                    Some(walk) if leads_to(&walk, &board) => {
                        let at = walk.end(0);
                        (walk, at)
                    }
                    _ => (Walk::new(&board, 1), 0),
                };
                walk.count_from(at, 1);
                walk.add_notes(at, &words.notes);
                for line in &solution {
                    walk.add_line(at, line);
                }
                (
                    KindName::Problem,
                    Some((board.turn().into(), posed.task)),
                    words.with_post,
                    words.at_reveal,
                    Some(walk),
                    Some(at),
                    board.turn(),
                )
            }
            Holds::Written {
                kind,
                words,
                at_reveal,
                board,
            } => {
                let walk = lead.or_else(|| board.map(|board| Walk::new(&board, 1)));
                let bottom = walk.as_ref().map(|walk| walk.places()[0].position.turn());
                let asked_at = match kind {
                    KindName::Question => walk.as_ref().map(|walk| walk.end(0)),
                    KindName::Problem | KindName::Words => None,
                };
                let bottom = bottom.unwrap_or(Color::White);
                (kind, None, words, at_reveal, walk, asked_at, bottom)
            }
        };
        WalkPart {
            at: self.at,
            post: self.post,
            number: self.number,
            kind,
            task,
            words,
            at_reveal,
            places: walk.map_or_else(Vec::new, |walk| places(&walk, bottom)),
            asked_at,
        }
    }
}

/// Whether the main line of a walk ends in a position, whatever its clocks say.
fn leads_to(walk: &Walk, board: &Chess) -> bool {
    let placed = |board: &Chess| {
        let fen = Fen::from_position(board, EnPassantMode::Legal).to_string();
        fen.split(' ').take(4).collect::<Vec<_>>().join(" ")
    };
    placed(&walk.places()[walk.end(0)].position) == placed(board)
}

fn places(walk: &Walk, bottom: Color) -> Vec<WalkPlace> {
    let all = walk.places();
    all.iter()
        .map(|place| {
            let board = Diagram {
                bottom,
                last_move: place.mv.and_then(|mv| Some((mv.from()?, landing(mv)))),
                size: BOARD,
                ..Diagram::of(place.position.clone())
            };
            WalkPlace {
                before: place.before,
                next: place.next.clone(),
                written: place.written.clone(),
                moved: match place.before {
                    Some(before) => place.moved(&all[before].position),
                    None => Vec::new(),
                },
                words_before: place.words_before.clone(),
                words_after: place.words_after.clone(),
                alt: board.alt(),
                board,
            }
        })
        .collect()
}

/// Width of a board in pixels.
const BOARD: u32 = 560;
