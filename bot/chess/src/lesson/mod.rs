//! A lesson as a file gives it: a game of PGN for each step, and in each what is shown, asked and answered.
//!
//! | in the file | in the lesson |
//! | --- | --- |
//! | comments before the first move | words that open the step |
//! | a move whose comment begins with `[stop]` | a stop: members are asked for this move; `[stop #2]` gives its task |
//! | tag `Task` | the start of the step is a stop |
//! | moves without a stop | an example, shown with its variations and words |
//! | no moves | words, with the position as a picture |
//! | tag `Question`, tag `Homework "yes"`, or no stop and words that end with a question mark | an open question; `[reveal]` in its words as in those of a position |
//! | tag `Homework "no"` | no question, however its words end |
//! | tag `Contrast "yes"` | a position that looks like the topic and is not |
//! | tags `Lesson`, `Topic`, `Id` | the lesson's title, the topic, the step's name |
//!
//! The moves before a stop lead up to it and go out with it. What follows is the coach's own line on it, as
//! far as the next stop. A bad step is an error in its place and does not stop the others.

mod draft;
mod parts;
mod secret;

use shakmaty::Chess;

use crate::{
    Stipulation,
    comments::Note,
    fact::number,
    read::{Entry, Fault, Game, ReadError, Written, read_games},
    write,
};

pub use draft::{Draft, DraftKind, DraftMove, DraftStep};
pub use secret::{Secret, Shows, guard};

/// The most characters of words that open a step or ask a question.
pub const MOST_WORDS: usize = 1_000;

/// The most characters that go out at once: words, and moves with the words beside them.
pub const MOST_AT_ONCE: usize = 1_400;

/// The most steps of a lesson.
pub const MOST_STEPS: usize = 100;

/// A lesson of a file.
#[derive(Clone, Debug)]
pub struct Lesson {
    /// Tag `Lesson` of its first step that has one, else `Event` of the first step.
    pub title: Option<String>,
    /// Tag `Topic` of its first step that has one.
    pub topic: Option<String>,
    /// The steps in order.
    pub steps: Vec<Result<Step, ReadError>>,
}

/// One step: a game of the file.
#[derive(Clone, Debug)]
pub struct Step {
    /// Tag `Id`, where there is one.
    pub id: Option<String>,
    /// Line in the file, from 1.
    pub line: usize,
    /// The whole step as PGN, written by [`write::game`].
    pub game: String,
    /// Where it starts.
    pub start: Chess,
    /// Whether the topic is meant to fail here.
    pub contrast: bool,
    /// What goes out, in order; never empty.
    pub parts: Vec<Part>,
}

/// What goes out at once.
#[derive(Clone, Debug)]
pub struct Part {
    /// The moves that lead up to it, or the example that is shown, with the words beside them.
    pub lead: Vec<Note>,
    /// What it is.
    pub holds: Holds,
}

/// What a part is.
#[derive(Clone, Debug)]
pub enum Holds {
    /// A stop.
    Stop(Box<Entry>),
    /// An open question.
    Question(Written),
    /// Words, with or without a position.
    Words(Written),
}

impl Part {
    /// The stop, where it is one.
    pub fn stop(&self) -> Option<&Entry> {
        match &self.holds {
            Holds::Stop(entry) => Some(entry),
            Holds::Question(_) | Holds::Words(_) => None,
        }
    }
}

/// Reads a file as one lesson; see the module for what stands where.
///
/// ```
/// use sealed_move_chess::lesson::read_lesson;
///
/// let text = r#"[Lesson "The open file"]
/// [FEN "6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - - 0 1"]
///
/// {Look at the king.} 1. Rd8# {[stop #1] The pawns shut him in.} *
/// "#;
/// let lesson = read_lesson("file.pgn", text.as_bytes());
/// assert_eq!(lesson.title.as_deref(), Some("The open file"));
/// let step = lesson.steps[0].as_ref().unwrap();
/// assert_eq!(step.parts[0].stop().unwrap().stipulation.unwrap().to_string(), "#1");
/// ```
pub fn read_lesson(file: &str, bytes: &[u8]) -> Lesson {
    let mut games = read_games(file, bytes);
    let kept = |name: &str, games: &[Result<Game, ReadError>]| {
        let mut games = games.iter().flatten();
        games.find_map(|game| game.tag(name).map(str::to_owned))
    };
    let title = kept("Lesson", &games).or_else(|| {
        let first = games.iter().flatten().next()?;
        first.tag("Event").map(str::to_owned)
    });
    let topic = kept("Topic", &games);
    let over = (games.len() > MOST_STEPS).then(|| {
        let line = games[MOST_STEPS].as_ref().map_or(1, |game| game.line);
        let most = number(MOST_STEPS);
        Err(fault(file, line, None, Fault::LessonTooLong { most }))
    });
    games.truncate(MOST_STEPS);
    let titled = title.clone().unwrap_or_else(|| file.to_owned());
    let steps = games
        .into_iter()
        .map(|game| step(file, &titled, topic.as_deref(), game?))
        .chain(over)
        .collect();
    Lesson {
        title,
        topic,
        steps,
    }
}

/// One step of a lesson, for a step that was kept as PGN.
///
/// # Errors
/// As the file would be refused; `line` counts from the step's first line.
pub fn read_step(name: &str, title: &str, game: &str) -> Result<Step, ReadError> {
    match read_games(name, game.as_bytes()).into_iter().next() {
        Some(game) => step(name, title, None, game?),
        None => Err(fault(name, 1, None, Fault::FileHoldsNothing)),
    }
}

/// A whole lesson as one file: its steps as they are kept, each with the lesson's title and, where it names
/// no topic of its own, the lesson's.
///
/// # Errors
/// When a step cannot be read.
pub fn written(title: &str, topic: Option<&str>, steps: &[String]) -> Result<String, ReadError> {
    let mut out = String::new();
    for step in steps {
        for game in read_games(title, step.as_bytes()) {
            let mut game = game?;
            if let (Some(topic), None) = (topic, game.tag("Topic")) {
                set_tag(&mut game.tags, "Topic", topic);
            }
            set_tag(&mut game.tags, "Lesson", title);
            if !out.is_empty() {
                out.push('\n');
            }
            out.push_str(&write::game(
                &game.tags,
                &game.start,
                &game.comments,
                &game.tree,
            ));
        }
    }
    Ok(out)
}

fn set_tag(tags: &mut Vec<(String, String)>, name: &str, value: &str) {
    tags.retain(|(tag, _)| !tag.eq_ignore_ascii_case(name));
    tags.insert(0, (name.to_owned(), value.to_owned()));
}

fn step(file: &str, title: &str, topic: Option<&str>, game: Game) -> Result<Step, ReadError> {
    let id = game.tag("Id").map(str::to_owned);
    let (line, contrast) = (game.line, game.says_yes("Contrast"));
    let parts = parts::of(file, title, topic, &game)
        .map_err(|(line, problem)| fault(file, line, id.clone(), problem))?;
    Ok(Step {
        start: game.start.clone(),
        id,
        line,
        game: write::game(&game.tags, &game.start, &game.comments, &game.tree),
        contrast,
        parts,
    })
}

fn fault(file: &str, line: usize, id: Option<String>, problem: Fault) -> ReadError {
    ReadError {
        file: file.to_owned(),
        line,
        id,
        text: String::new(),
        problem: Box::new(problem),
    }
}

/// What a comment says behind the mark of a stop, and the task that the mark gives; `None` where it has no
/// such mark.
fn stop_mark(comment: &str) -> Option<Result<(Option<Stipulation>, String), Fault>> {
    let text = comment.trim_start();
    let after = text
        .get(..5)
        .filter(|mark| mark.eq_ignore_ascii_case("[stop"))
        .map(|_| &text[5..])?;
    let (task, words) = after.split_once(']')?;
    if !task.is_empty() && !task.starts_with(char::is_whitespace) {
        return None;
    }
    let words = words.trim_start_matches(':').trim().to_owned();
    match task.trim() {
        "" => Some(Ok((None, words))),
        task => Some(match task.parse() {
            Ok(task) => Ok((Some(task), words)),
            Err(why) => Err(Fault::StopNoTask { why }),
        }),
    }
}

#[cfg(test)]
mod tests;
