//! What a step is made of: its stops with what leads up to each, what is asked, what is shown.

use shakmaty::{Chess, Position};

use super::{Holds, MOST_AT_ONCE, MOST_WORDS, Part, stop_mark};
use crate::{
    Stipulation,
    comments::{Comment, Goes, Note, shown},
    fact::number,
    read::{Entry, Fault, Game, GameNode, GameTree, Written, without_commands},
    write,
};

/// What is wrong, with its line in the file.
type Misread = (usize, Fault);

/// A stop in the tree of a step.
struct Stop<'a> {
    /// The moves from the start.
    path: Vec<&'a GameNode>,
    /// The position that they lead to.
    board: Chess,
    /// The move asked for is the one of this place among them.
    at: usize,
    /// The moves given here.
    among: &'a GameTree,
    task: Option<Stipulation>,
}

/// The parts of a step of the lesson `title`. `topic` is the lesson's, for a step that names none.
pub(super) fn of(
    file: &str,
    title: &str,
    topic: Option<&str>,
    game: &Game,
) -> Result<Vec<Part>, Misread> {
    let task = start_task(game)?;
    let stops = stops(game, task)?;
    let maker = Maker {
        file,
        title,
        topic: game.tag("Topic").or(topic).map(str::to_owned),
        game,
    };
    let mut parts = stops
        .iter()
        .enumerate()
        .map(|(n, stop)| maker.stop(stop, n, &stops))
        .collect::<Result<Vec<_>, _>>()?;
    if stops.is_empty() && task.is_some() {
        parts.push(maker.bare(task)?);
    }
    parts.extend(maker.rest(!parts.is_empty())?);
    Ok(parts)
}

/// The task of a step's start, where a tag gives it; `?` gives none.
fn start_task(game: &Game) -> Result<Option<Stipulation>, Misread> {
    let tag = ["Task", "Stipulation"]
        .into_iter()
        .find_map(|name| Some((name, game.tag(name)?)));
    match tag {
        None => Ok(None),
        Some((name, value)) => match value.parse() {
            Ok(task) => Ok(Some(task)),
            Err(why) => Err((
                game.line,
                Fault::TagNoTask {
                    tag: name.into(),
                    why,
                },
            )),
        },
    }
}

/// The stops of a step: those of the main line first, then those of its variations. With a task of its own
/// the start is one.
fn stops(game: &Game, task: Option<Stipulation>) -> Result<Vec<Stop<'_>>, Misread> {
    let mut found = Vec::new();
    // What is still to be looked at, the next one last.
    let mut open: Vec<Place<'_>> = Vec::new();
    push(&mut open, &[], &game.start, &game.tree);
    while let Some((mut path, board, among, at)) = open.pop() {
        let node = &among.nodes[at];
        let mark = match node.comment.as_deref().map(without_commands) {
            Some(comment) => stop_mark(&comment)
                .transpose()
                .map_err(|problem| (node.line, problem))?,
            None => None,
        };
        let first = path.is_empty() && at == 0;
        let own = task.filter(|_| first);
        if mark.is_some() || own.is_some() {
            found.push(Stop {
                path: path.clone(),
                board: board.clone(),
                at,
                among,
                task: mark.and_then(|(task, _)| task).or(own),
            });
        }
        path.push(node);
        let mut after = board;
        after.play_unchecked(node.mv);
        push(&mut open, &path, &after, &node.next);
    }
    Ok(found)
}

/// A move of a tree: the moves before it, the position they lead to, the moves given there, and which of them.
type Place<'a> = (Vec<&'a GameNode>, Chess, &'a GameTree, usize);

fn push<'a>(open: &mut Vec<Place<'a>>, path: &[&'a GameNode], board: &Chess, among: &'a GameTree) {
    for at in (0..among.nodes.len()).rev() {
        open.push((path.to_vec(), board.clone(), among, at));
    }
}

struct Maker<'a> {
    file: &'a str,
    title: &'a str,
    topic: Option<String>,
    game: &'a Game,
}

impl Maker<'_> {
    fn name(&self, part: usize) -> String {
        let step = match self.game.tag("Id") {
            Some(id) => id.to_owned(),
            None => format!("{}:{}", self.file, self.game.line),
        };
        match part {
            0 => step,
            more => format!("{step}, {}", more + 1),
        }
    }

    fn opening(&self) -> Vec<Comment> {
        let comments = self.game.comments.iter();
        comments
            .flat_map(|text| Comment::read(text, Goes::WithPost))
            .collect()
    }

    /// The step's own words, for a part that is no stop: those that go out at once, and those for the reveal.
    fn own_words(&self) -> (String, String) {
        let (later, now): (Vec<_>, Vec<_>) = self
            .opening()
            .into_iter()
            .partition(|comment| comment.goes == Goes::AtReveal);
        let joined = |comments: Vec<Comment>| {
            let words: Vec<String> = comments.into_iter().map(|comment| comment.text).collect();
            words.join("\n")
        };
        (joined(now), joined(later))
    }

    /// A part with a task and no moves: what solves it is for the check to find.
    fn bare(&self, task: Option<Stipulation>) -> Result<Part, Misread> {
        let comments = self.opening();
        Ok(Part {
            lead: Vec::new(),
            holds: Holds::Stop(Box::new(self.entry(
                0,
                self.game.start.clone(),
                task,
                comments,
                GameTree::default(),
            ))),
        })
    }

    fn stop(&self, stop: &Stop<'_>, n: usize, all: &[Stop<'_>]) -> Result<Part, Misread> {
        let line = stop.among.nodes[stop.at].line;
        // What was said on the way to an earlier stop went out with it.
        let before = all[..n]
            .iter()
            .filter(|other| other.path.len() < stop.path.len() && leads(other, stop))
            .map(|other| other.path.len() + 1)
            .max();
        let mut comments = match before {
            None => self.opening(),
            Some(_) => Vec::new(),
        };
        let (way, waits) = way(&stop.path, before.unwrap_or(0));
        comments.extend(waits);
        let mut nodes = vec![cut(&stop.among.nodes[stop.at])];
        // Words at the head of a variation stand before the move asked for.
        if let Some(words) = nodes[0].before.take() {
            comments.extend(Comment::read(&words, Goes::WithPost));
        }
        nodes.extend(
            stop.among
                .nodes
                .iter()
                .enumerate()
                .filter(|(at, node)| *at != stop.at && !is_stop(node))
                .map(|(_, node)| cut(node)),
        );
        Ok(Part {
            lead: self.lead(&way, &said(&comments), line)?,
            holds: Holds::Stop(Box::new(self.entry(
                n,
                stop.board.clone(),
                stop.task,
                comments,
                GameTree { nodes },
            ))),
        })
    }

    fn entry(
        &self,
        n: usize,
        position: Chess,
        stipulation: Option<Stipulation>,
        comments: Vec<Comment>,
        tree: GameTree,
    ) -> Entry {
        let id = self.name(n);
        let mut tags = vec![("Id".to_owned(), id.clone())];
        tags.extend(stipulation.map(|task| ("Task".to_owned(), task.to_string())));
        tags.extend(self.topic.clone().map(|topic| ("Topic".to_owned(), topic)));
        let words: Vec<String> = comments.iter().map(Comment::written).collect();
        Entry {
            id,
            line: self.game.line,
            text: write::game(&tags, &position, &words, &tree),
            warnings: match n {
                0 => self.game.warnings.clone(),
                _ => Vec::new(),
            },
            stipulation,
            best: tree.nodes.first().map(|node| node.mv).into_iter().collect(),
            avoid: Vec::new(),
            topic: self.topic.clone(),
            comments,
            odd_lines: match n {
                0 => self.game.odd_lines.clone(),
                _ => Vec::new(),
            },
            position,
            variations: (!tree.nodes.is_empty()).then_some(tree),
        }
    }

    /// Moves that are shown beside `words`, no more of them than go out at once.
    fn lead(&self, moves: &GameTree, words: &str, line: usize) -> Result<Vec<Note>, Misread> {
        let (notes, cut) = shown(&self.game.start, moves);
        let long: usize = notes
            .iter()
            .flat_map(|note| [&note.before, &note.moves, &note.after])
            .map(|text| text.chars().count() + 1)
            .sum();
        let over = long + words.chars().count() > MOST_AT_ONCE;
        if cut || (over && !notes.is_empty()) {
            let most = number(MOST_AT_ONCE);
            return Err((line, Fault::LeadTooLong { most }));
        }
        Ok(notes)
    }

    /// What a step holds besides its stops: a question, or what is shown where nothing is asked.
    fn rest(&self, after_stops: bool) -> Result<Option<Part>, Misread> {
        let game = self.game;
        let asked = game.tag("Question").map(str::to_owned);
        let open = game
            .tags
            .iter()
            .any(|(tag, value)| tag.eq_ignore_ascii_case("Task") && value.trim() == "?");
        let (own, later) = self.own_words();
        let homework_no = game
            .tag("Homework")
            .is_some_and(|value| value.eq_ignore_ascii_case("no"));
        let asks = asked.is_some()
            || open
            || game.says_yes("Homework")
            || (!after_stops && !homework_no && self.last_words().trim_end().ends_with('?'));
        // What is no question has no reveal, and says all at once.
        let (own, later) = match asks {
            true => (own, later),
            false => (joined(&own, &later), String::new()),
        };
        if after_stops && !asks {
            return Ok(None);
        }
        let lead = match after_stops {
            true => Vec::new(),
            false => self.lead(&game.tree, &own, game.line)?,
        };
        let (words, at_reveal) = match (asked, game.tag("Words")) {
            // The opening words of a step with stops went out with the first.
            (Some(question), _) if after_stops => (question, String::new()),
            (Some(question), _) => match own.is_empty() {
                true => (question, later),
                false if asks && game.tree.nodes.is_empty() => (question, joined(&own, &later)),
                false => (format!("{own}\n{question}"), later),
            },
            (None, _) if after_stops => {
                return Err((game.line, Fault::QuestionLacksWords));
            }
            (None, Some(words)) => (words.to_owned(), later),
            (None, None) if own.is_empty() && !lead.is_empty() => (self.title.to_owned(), later),
            (None, None) => (own, later),
        };
        if words.trim().is_empty() {
            let problem = match asks {
                true => Fault::QuestionLacksWords,
                false => Fault::StepEmpty,
            };
            return Err((game.line, problem));
        }
        for text in [&words, &at_reveal] {
            if text.chars().count() > MOST_WORDS {
                let most = number(MOST_WORDS);
                return Err((game.line, Fault::PartTooLong { most }));
            }
        }
        let board = match asks {
            true => self.end(),
            false => game.start.clone(),
        };
        let written = Written {
            id: self.name(0),
            line: game.line,
            words,
            position: Some(board).filter(|board| *board != Chess::default()),
            topic: self.topic.clone(),
            at_reveal,
        };
        Ok(Some(Part {
            lead,
            holds: match asks {
                true => Holds::Question(written),
                false => Holds::Words(written),
            },
        }))
    }

    /// The words at the end of the main line; those of the step where it has no moves.
    fn last_words(&self) -> String {
        let mut last = None;
        let mut tree = &self.game.tree;
        while let Some(node) = tree.nodes.first() {
            last = Some(node);
            tree = &node.next;
        }
        match last {
            Some(node) => without_commands(node.comment.as_deref().unwrap_or_default()),
            None => self.own_words().0,
        }
    }

    /// The position at the end of the main line.
    fn end(&self) -> Chess {
        let mut board = self.game.start.clone();
        let mut tree = &self.game.tree;
        while let Some(node) = tree.nodes.first() {
            board.play_unchecked(node.mv);
            tree = &node.next;
        }
        board
    }
}

/// The words among comments that go out with a stop.
fn said(comments: &[Comment]) -> String {
    let now = comments
        .iter()
        .filter(|comment| comment.goes != Goes::AtReveal);
    now.map(|comment| comment.text.as_str())
        .collect::<Vec<_>>()
        .join("\n")
}

fn joined(one: &str, other: &str) -> String {
    let both = [one, other].into_iter().filter(|text| !text.is_empty());
    both.collect::<Vec<_>>().join("\n")
}

fn is_stop(node: &GameNode) -> bool {
    let comment = node.comment.as_deref().map(without_commands);
    comment.is_some_and(|comment| stop_mark(&comment).is_some())
}

/// Whether the move that one stop asks for is on the way to another.
fn leads(one: &Stop<'_>, other: &Stop<'_>) -> bool {
    let asked = &one.among.nodes[one.at];
    other
        .path
        .get(one.path.len())
        .is_some_and(|node| std::ptr::eq(*node, asked))
}

/// The moves of a way as a line of their own, with the words beside those from `from` on, and the words among
/// them that wait for the reveal.
fn way(path: &[&GameNode], from: usize) -> (GameTree, Vec<Comment>) {
    let mut tree = GameTree::default();
    let mut waits = Vec::new();
    for (at, node) in path.iter().enumerate().rev() {
        let mut said = |text: Option<&String>| {
            let mut now = Vec::new();
            for comment in text
                .filter(|_| at >= from)
                .into_iter()
                .flat_map(|text| Comment::read(text, Goes::WithPost))
            {
                match comment.goes {
                    Goes::AtReveal => waits.push(comment),
                    Goes::WithPost | Goes::WithPostAnyway => now.push(comment.text),
                }
            }
            Some(now.join(" ")).filter(|text| !text.is_empty())
        };
        let (before, comment) = (said(node.before.as_ref()), said(node.comment.as_ref()));
        tree = GameTree {
            nodes: vec![GameNode {
                before,
                comment,
                next: tree,
                nags: node.nags.clone(),
                ..**node
            }],
        };
    }
    waits.reverse();
    (tree, waits)
}

/// A move of a stop's own line, without the mark, and without what later stops ask for.
fn cut(node: &GameNode) -> GameNode {
    let comment =
        node.comment
            .as_ref()
            .map(|comment| match stop_mark(&without_commands(comment)) {
                Some(Ok((_, words))) => words,
                Some(Err(_)) | None => comment.clone(),
            });
    let nodes = match node.next.nodes.iter().any(is_stop) {
        true => Vec::new(),
        false => node.next.nodes.iter().map(cut).collect(),
    };
    GameNode {
        comment: comment.filter(|text| !text.is_empty()),
        before: node.before.clone(),
        nags: node.nags.clone(),
        next: GameTree { nodes },
        ..*node
    }
}
