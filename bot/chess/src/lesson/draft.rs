//! A lesson, or a position, as it is being written: what may be half finished, so that its position and moves are
//! text. It becomes PGN whatever it holds, and the reader of PGN says what is wrong with it.

use serde::{Deserialize, Serialize};
use shakmaty::{Chess, EnPassantMode, Position, fen::Fen, san::SanPlus};

use super::{read_lesson, stop_mark};
use crate::{
    comments::{Comment, Goes},
    read::{Entry, Fault, Game, GameNode, GameTree, ReadError, read_games, without_commands},
    write::{self, Words},
};

/// A lesson as it is being written.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Draft {
    /// Its title; may be empty.
    pub title: String,
    /// Its topic; may be empty.
    pub topic: String,
    /// Its steps, in order.
    pub steps: Vec<DraftStep>,
}

/// What a step is meant to be.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DraftKind {
    /// Words, with or without a position.
    #[default]
    Words,
    /// Moves that are shown.
    Example,
    /// Members are asked for a move, at the start or at moves that are marked.
    Stop,
    /// Members answer in their own words.
    Question,
}

/// A step of a draft. What its kind has no use for is kept, and not written.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct DraftStep {
    /// What it is meant to be.
    pub kind: DraftKind,
    /// Its name; may be empty.
    pub id: String,
    /// FEN of its position as it is typed; empty for the initial position.
    pub fen: String,
    /// Words that go out at first, a paragraph a line; of a question what is asked.
    pub words: String,
    /// Whether these words go out at first although they tell a move.
    pub anyway: bool,
    /// Words for the reveal.
    pub at_reveal: String,
    /// Of a step with stops, a question that goes out behind them.
    pub question: String,
    /// The task of the start, as it is typed.
    pub task: String,
    /// Its topic, where it is not the lesson's.
    pub topic: String,
    /// Whether the topic is meant to fail here.
    pub contrast: bool,
    /// The moves from its position.
    pub moves: Vec<DraftMove>,
    /// Other tags of the file that it came from: name and value.
    pub tags: Vec<(String, String)>,
}

/// A move of a draft.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct DraftMove {
    /// The move in SAN, with English letters.
    pub san: String,
    /// Words before it.
    pub before: String,
    /// Words after it.
    pub after: String,
    /// Numeric annotation glyphs.
    pub nags: Vec<u8>,
    /// Where members are asked for this move: the task, which may be empty.
    pub stop: Option<String>,
    /// Side lines that begin in its place.
    pub others: Vec<Vec<DraftMove>>,
}

impl Draft {
    /// A lesson as it is kept, a game a step, opened for writing.
    ///
    /// # Errors
    /// When a game cannot be read.
    pub fn of_games(title: &str, topic: Option<&str>, games: &[String]) -> Result<Self, ReadError> {
        let mut steps = Vec::new();
        for game in games {
            for read in read_games(title, game.as_bytes()) {
                let mut step = DraftStep::of(&read?);
                if Some(step.topic.as_str()) == topic {
                    step.topic.clear();
                }
                steps.push(step);
            }
        }
        Ok(Self {
            title: title.to_owned(),
            topic: topic.unwrap_or_default().to_owned(),
            steps,
        })
    }

    /// The draft as a file of PGN, which [`super::read_lesson`] reads, and the line of each step in it, from 1.
    ///
    /// ```
    /// use sealed_move_chess::lesson::{Draft, DraftKind, DraftMove, DraftStep, read_lesson};
    ///
    /// let key = DraftMove { san: "Ra8#".into(), stop: Some("#1".into()), ..DraftMove::default() };
    /// let step = DraftStep {
    ///     kind: DraftKind::Stop,
    ///     fen: "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1".into(),
    ///     moves: vec![key],
    ///     ..DraftStep::default()
    /// };
    /// let draft = Draft { title: "Back ranks".into(), steps: vec![step], ..Draft::default() };
    /// let (text, lines) = draft.written();
    /// let lesson = read_lesson("draft.pgn", text.as_bytes());
    /// assert_eq!(lesson.steps[0].as_ref().unwrap().line, lines[0]);
    /// assert_eq!(lesson.steps[0].as_ref().unwrap().parts.len(), 1);
    /// ```
    pub fn written(&self) -> (String, Vec<usize>) {
        let mut out = String::new();
        let mut lines = Vec::with_capacity(self.steps.len());
        for step in &self.steps {
            if !out.is_empty() {
                out.push('\n');
            }
            lines.push(out.matches('\n').count() + 1);
            let head = [("Lesson", self.title.as_str()), ("Topic", step.topic(self))];
            out.push_str(&step.written_under(&head, Marks::Written));
        }
        (out, lines)
    }
}

impl Draft {
    /// What is wrong with it: the step, from 1, and why it cannot be read.
    pub fn faults(&self) -> Vec<(usize, Fault)> {
        let (text, lines) = self.written();
        let step_of = |line: usize| lines.iter().rposition(|first| *first <= line).unwrap_or(0);
        let mut faults: Vec<(usize, Fault)> = self
            .steps
            .iter()
            .enumerate()
            .filter(|(_, step)| step.asks_nothing())
            .map(|(at, _)| (at, Fault::StepAsksNothing))
            .collect();
        let read = match self.steps.is_empty() {
            true => Vec::new(),
            false => read_lesson("", text.as_bytes()).steps,
        };
        for error in read.into_iter().filter_map(Result::err) {
            let at = step_of(error.line);
            if !faults.iter().any(|(known, _)| *known == at) {
                faults.push((at, *error.problem));
            }
        }
        faults.sort_by_key(|(at, _)| *at);
        faults
            .into_iter()
            .map(|(at, fault)| (at + 1, fault))
            .collect()
    }
}

impl DraftStep {
    /// A game opened for writing.
    pub fn of(game: &Game) -> Self {
        let tag = |name: &str| game.tag(name).unwrap_or_default().to_owned();
        let moves = moves_of(&game.start, &game.tree);
        let mut step = Self {
            id: tag("Id"),
            fen: match game.has_fen {
                true => Fen::from_position(&game.start, EnPassantMode::Legal).to_string(),
                false => String::new(),
            },
            task: match tag("Task") {
                task if task.is_empty() => tag("Stipulation"),
                task => task,
            },
            topic: tag("Topic"),
            contrast: game.says_yes("Contrast"),
            tags: other_tags(game),
            moves,
            ..Self::default()
        };
        step.say(
            game.comments
                .iter()
                .flat_map(|text| Comment::read(text, Goes::WithPost)),
        );
        step.settle(game, tag("Question"), tag("Words"));
        step
    }

    /// A position with its task and the coach's own lines opened for writing.
    pub fn of_entry(entry: &Entry) -> Self {
        let mut step = Self {
            kind: DraftKind::Stop,
            id: entry.id.clone(),
            fen: Fen::from_position(&entry.position, EnPassantMode::Legal).to_string(),
            task: entry
                .stipulation
                .map_or_else(String::new, |task| task.to_string()),
            topic: entry.topic.clone().unwrap_or_default(),
            moves: match &entry.variations {
                Some(tree) => moves_of(&entry.position, tree),
                None => best_of(entry),
            },
            ..Self::default()
        };
        step.say(entry.comments.iter().cloned());
        step
    }

    /// Takes words in by when they go out.
    fn say(&mut self, comments: impl Iterator<Item = Comment>) {
        for comment in comments {
            let into = match comment.goes {
                Goes::AtReveal => &mut self.at_reveal,
                Goes::WithPost => &mut self.words,
                Goes::WithPostAnyway => {
                    self.anyway = true;
                    &mut self.words
                }
            };
            if !into.is_empty() {
                into.push('\n');
            }
            into.push_str(&comment.text);
        }
    }

    /// Finds out which kind a game is, by what [`super::read_lesson`] makes of it.
    fn settle(&mut self, game: &Game, question: String, words: String) {
        let no = |value: &str| value.eq_ignore_ascii_case("no");
        let open = ["Task", "Stipulation"].iter().any(|name| {
            let mut tags = game.tags.iter();
            tags.any(|(tag, value)| tag.eq_ignore_ascii_case(name) && value.trim() == "?")
        });
        if !self.task.is_empty() || has_stops(&self.moves) {
            self.kind = DraftKind::Stop;
            self.question = question;
            return;
        }
        let last = match self.moves.last() {
            Some(last) => last.after.as_str(),
            None => self.words.as_str(),
        };
        let asks = !question.is_empty()
            || open
            || game.says_yes("Homework")
            || (!game.tag("Homework").is_some_and(no) && last.trim_end().ends_with('?'));
        let own = std::mem::take(&mut self.words);
        self.words = match (question.is_empty(), own.is_empty()) {
            (false, true) => question,
            (false, false) if self.moves.is_empty() => {
                self.at_reveal = joined(&own, &self.at_reveal);
                question
            }
            (false, false) => joined(&own, &question),
            (true, _) if !words.is_empty() => words,
            (true, _) => own,
        };
        self.kind = match (asks, self.moves.is_empty()) {
            (true, _) => DraftKind::Question,
            (false, false) => DraftKind::Example,
            (false, true) => DraftKind::Words,
        };
    }

    fn topic<'a>(&'a self, draft: &'a Draft) -> &'a str {
        match self.topic.trim().is_empty() {
            true => &draft.topic,
            false => &self.topic,
        }
    }

    /// The step as a position by itself, a game of PGN whose moves are the coach's own lines: without stops.
    pub fn as_position(&self) -> String {
        self.written_under(&[("Topic", &self.topic)], Marks::LeftOut)
    }

    /// Whether it is meant to ask for a move and nothing says which or what for.
    pub fn asks_nothing(&self) -> bool {
        self.kind == DraftKind::Stop && self.task.trim().is_empty() && self.moves.is_empty()
    }

    /// The step as a game of PGN, behind these tags; empty ones are left out.
    fn written_under(&self, head: &[(&str, &str)], marks: Marks) -> String {
        let stops = self.kind == DraftKind::Stop;
        let mut out = String::new();
        let mut tag = |name: &str, value: &str| {
            let value = value.trim();
            if !value.is_empty() {
                write::tag(&mut out, name, value);
            }
        };
        for (name, value) in head {
            tag(name, value);
        }
        tag("Id", &self.id);
        if stops {
            tag("Task", &self.task);
            tag("Question", &self.question);
        }
        if self.contrast {
            tag("Contrast", "yes");
        }
        match self.kind {
            DraftKind::Question => tag("Homework", "yes"),
            // Words that end with a question mark would else be one.
            DraftKind::Words | DraftKind::Example => tag("Homework", "no"),
            DraftKind::Stop => {}
        }
        for (name, value) in &self.tags {
            if is_name(name) {
                tag(name, value);
            }
        }
        if !self.fen.trim().is_empty() {
            tag("SetUp", "1");
            tag("FEN", &self.fen);
        }
        if !out.is_empty() {
            out.push('\n');
        }
        let mut words = Words::behind(out);
        let goes = match self.anyway {
            true => Goes::WithPostAnyway,
            false => Goes::WithPost,
        };
        for (text, goes) in [(&self.words, goes), (&self.at_reveal, Goes::AtReveal)] {
            for text in text.lines().map(str::trim).filter(|text| !text.is_empty()) {
                let text = text.to_owned();
                words.comment(&Comment { text, goes }.written());
            }
        }
        if self.kind != DraftKind::Words {
            let marked = stops && marks == Marks::Written;
            let asked_first = marked && self.task.trim().is_empty() && !has_stops(&self.moves);
            let count = Count::of(&self.fen);
            line(&mut words, count, &self.moves, (marked, asked_first));
        }
        words.end()
    }
}

/// Whether the marks of stops are written.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Marks {
    Written,
    LeftOut,
}

fn joined(one: &str, other: &str) -> String {
    match (one.is_empty(), other.is_empty()) {
        (_, true) => one.to_owned(),
        (true, _) => other.to_owned(),
        (false, false) => format!("{one}\n{other}"),
    }
}

/// Whether a line, or a side line of it, has a stop.
fn has_stops(moves: &[DraftMove]) -> bool {
    moves
        .iter()
        .any(|mv| mv.stop.is_some() || mv.others.iter().any(|line| has_stops(line)))
}

/// Tags of a game that the draft has no place of its own for.
fn other_tags(game: &Game) -> Vec<(String, String)> {
    const OWN: [&str; 11] = [
        "Lesson",
        "Topic",
        "Id",
        "Task",
        "Stipulation",
        "Contrast",
        "Question",
        "Words",
        "Homework",
        "FEN",
        "SetUp",
    ];
    let other = |name: &str| !OWN.iter().any(|own| own.eq_ignore_ascii_case(name));
    let tags = game.tags.iter().filter(|(name, _)| other(name));
    tags.cloned().collect()
}

/// Whether a text can be the name of a tag (PGN standard, section 8.1.1).
fn is_name(text: &str) -> bool {
    !text.is_empty() && text.chars().all(|c| c.is_ascii_alphanumeric() || c == '_')
}

/// The best moves that a file names without lines, the first of them with the others in its place.
fn best_of(entry: &Entry) -> Vec<DraftMove> {
    let mut best = entry.best.iter().map(|mv| DraftMove {
        san: SanPlus::from_move(entry.position.clone(), *mv).to_string(),
        ..DraftMove::default()
    });
    let Some(mut first) = best.next() else {
        return Vec::new();
    };
    first.others = best.map(|other| vec![other]).collect();
    vec![first]
}

fn moves_of(start: &Chess, tree: &GameTree) -> Vec<DraftMove> {
    let (mut at, mut tree) = (start.clone(), tree);
    let mut moves = Vec::new();
    while let Some((main, others)) = tree.nodes.split_first() {
        let mut mv = move_of(&at, main);
        for other in others {
            let mut after = at.clone();
            after.play_unchecked(other.mv);
            let mut line = vec![move_of(&at, other)];
            line.extend(moves_of(&after, &other.next));
            mv.others.push(line);
        }
        moves.push(mv);
        at.play_unchecked(main.mv);
        tree = &main.next;
    }
    moves
}

fn move_of(at: &Chess, node: &GameNode) -> DraftMove {
    let said = |text: &Option<String>| without_commands(text.as_deref().unwrap_or_default());
    let after = said(&node.comment);
    let (stop, after) = match stop_mark(&after) {
        Some(Ok((task, words))) => (
            Some(task.map_or_else(String::new, |task| task.to_string())),
            words,
        ),
        Some(Err(_)) | None => (None, after),
    };
    DraftMove {
        san: SanPlus::from_move(at.clone(), node.mv).to_string(),
        before: said(&node.before),
        after,
        nags: node.nags.clone(),
        stop,
        others: Vec::new(),
    }
}

/// Whose move it is, and its number, as far as a FEN says so.
#[derive(Clone, Copy)]
struct Count {
    number: u32,
    black: bool,
}

impl Count {
    fn of(fen: &str) -> Self {
        let mut fields = fen.split_whitespace();
        Self {
            black: fields.nth(1) == Some("b"),
            number: fields
                .nth(3)
                .and_then(|n| n.parse().ok())
                .unwrap_or(1)
                .max(1),
        }
    }

    fn next(self) -> Self {
        Self {
            number: self.number.saturating_add(u32::from(self.black)),
            black: !self.black,
        }
    }
}

/// A line with what branches off. `stops`: whether marks are written, and whether the first move gets one.
fn line(words: &mut Words, mut at: Count, moves: &[DraftMove], stops: (bool, bool)) {
    let (marked, mut asked) = stops;
    let mut numbered = false;
    for mv in moves {
        if !mv.before.trim().is_empty() {
            words.comment(&mv.before);
            numbered = false;
        }
        match (at.black, numbered) {
            (false, _) => words.put(&format!("{}.", at.number)),
            (true, false) => words.put(&format!("{}...", at.number)),
            (true, true) => {}
        }
        words.put(&plain(&mv.san));
        for nag in &mv.nags {
            words.put(&format!("${nag}"));
        }
        let stop = match (&mv.stop, asked) {
            (Some(task), _) => Some(task.trim()),
            (None, true) => Some(""),
            (None, false) => None,
        };
        asked = false;
        let said = match (stop.filter(|_| marked), mv.after.trim()) {
            (None, after) => after.to_owned(),
            (Some(""), after) => format!("[stop] {after}"),
            (Some(task), after) => format!("[stop {}] {after}", task.replace(']', "")),
        };
        if !said.is_empty() {
            words.comment(&said);
        }
        for other in &mv.others {
            words.open();
            line(words, at, other, (marked, false));
            words.close();
        }
        numbered = said.is_empty() && mv.others.is_empty();
        at = at.next();
    }
}

/// A move without what would end it in PGN.
fn plain(san: &str) -> String {
    let kept = san
        .chars()
        .filter(|c| c.is_alphanumeric() || matches!(c, '-' | '=' | '+' | '#'));
    match kept.collect::<String>() {
        san if san.is_empty() => "?".to_owned(),
        san => san,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lesson::{Holds, read_lesson};

    /// Words, two stops of one game with a side line, an example, words that end with a question mark and are no
    /// question, a question with words for its reveal, and a stop with nothing but its task.
    const LESSON: &str = r##"[Lesson "Crossing lines"]
[Topic "Boden's mate"]
[Annotator "Nobody"]

{Two bishops on two long diagonals.} {They cross.} *

[FEN "1nkr1r2/p2pp2p/1p3qp1/2p2p2/5B2/P2QPN2/2P1B1PP/4R2K w - - 0 1"]
[Id "crossing"]

{Look at the king on c8.} 1. Qa6+ {[stop #2] The queen asks the only piece that can answer.}
(1. Qxd7+ $2 {Taking what can be taken only lets the king out.} Rxd7) 1... Nxa6 2. Bxa6# {[stop] And now?} *

[FEN "6k1/5ppp/8/8/8/8/r4PPP/1R4K1 w - - 0 1"]
[Contrast "yes"]

1. h3 $1 {A quiet move.} h6 2. Rb8+ ({Or} 2. Rb7) 2... Kh7 {Air.} *

[Homework "no"]

{Ready?} *

[Homework "yes"]
[FEN "6k1/5ppp/8/8/8/8/r4PPP/1R4K1 w - - 0 1"]

{What has changed?} {[reveal] The king has air.} 1. h3 h6 *

[FEN "6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1"]
[Task "#1"]
[Question "And why?"]

{Mate.} *
"##;

    fn draft() -> Draft {
        let games = read_lesson("file.pgn", LESSON.as_bytes()).steps;
        let games: Vec<String> = games
            .into_iter()
            .map(|step| step.expect("read").game)
            .collect();
        Draft::of_games("Crossing lines", Some("Boden's mate"), &games).expect("opened")
    }

    #[test]
    fn a_lesson_is_opened_by_its_kinds_and_words() {
        let draft = draft();
        let kinds: Vec<DraftKind> = draft.steps.iter().map(|step| step.kind).collect();
        use DraftKind::{Example, Question, Stop, Words};
        assert_eq!(kinds, [Words, Stop, Example, Words, Question, Stop]);
        let [first, stops, example, ready, question, bare] = &draft.steps[..] else {
            panic!("six steps: {draft:?}");
        };
        assert_eq!(
            first.words,
            "Two bishops on two long diagonals.\nThey cross."
        );
        assert_eq!(first.tags, [("Annotator".to_owned(), "Nobody".to_owned())]);
        assert_eq!(first.topic, "");
        assert_eq!(stops.moves[0].stop.as_deref(), Some("#2"));
        assert_eq!(stops.moves[2].stop.as_deref(), Some(""));
        assert_eq!(stops.moves[0].others[0][0].nags, [2]);
        assert!(example.contrast);
        assert_eq!(example.moves[2].others[0][0].before, "Or");
        assert_eq!(ready.words, "Ready?");
        assert_eq!(question.at_reveal, "The king has air.");
        assert_eq!(
            (bare.task.as_str(), bare.question.as_str()),
            ("#1", "And why?")
        );
    }

    #[test]
    fn what_is_written_is_read_as_the_same_lesson() {
        let draft = draft();
        let (text, lines) = draft.written();
        let (old, new) = (
            read_lesson("file.pgn", LESSON.as_bytes()),
            read_lesson("file.pgn", text.as_bytes()),
        );
        assert_eq!((&new.title, &new.topic), (&old.title, &old.topic));
        assert_eq!(new.steps.len(), old.steps.len(), "{text}");
        let shape = |holds: &Holds| match holds {
            Holds::Stop(stop) => format!(
                "{:?} {:?} {:?} {}",
                stop.stipulation, stop.comments, stop.best, stop.text
            ),
            Holds::Question(of) => format!("? {} / {} {:?}", of.words, of.at_reveal, of.position),
            Holds::Words(of) => format!("{} {:?}", of.words, of.position),
        };
        for ((old, new), line) in old.steps.iter().zip(&new.steps).zip(lines) {
            let (old, new) = (old.as_ref().expect("read"), new.as_ref().expect("read"));
            assert_eq!(new.line, line);
            assert_eq!(new.contrast, old.contrast);
            assert_eq!(new.parts.len(), old.parts.len(), "{text}");
            for (old, new) in old.parts.iter().zip(&new.parts) {
                assert_eq!(new.lead, old.lead);
                // A step without a name is called after its line.
                let unnamed = |text: String| {
                    let named = text.split("[Id \"file.pgn").collect::<Vec<_>>();
                    named
                        .iter()
                        .map(|part| part.split_once("\"]").map_or(*part, |(_, rest)| rest))
                        .collect::<String>()
                };
                assert_eq!(unnamed(shape(&new.holds)), unnamed(shape(&old.holds)));
            }
        }
        let again = Draft::of_games(
            "Crossing lines",
            Some("Boden's mate"),
            std::slice::from_ref(&text),
        );
        assert_eq!(again.expect("opened"), draft);
    }

    #[test]
    fn what_is_half_finished_is_written_and_its_fault_is_named() {
        let bad = |fen: &str, san: &str| DraftStep {
            kind: DraftKind::Stop,
            fen: fen.into(),
            words: "Kept } {all the same.".into(),
            moves: vec![DraftMove {
                san: san.into(),
                ..DraftMove::default()
            }],
            ..DraftStep::default()
        };
        let draft = Draft {
            title: "Half \"done\"".into(),
            steps: vec![
                bad("8/8 w", "Ra8#"),
                bad("6k1/5ppp/8/8/8/8/8/R5K1 b - - 0 7", "Ra8#"),
                bad("6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1", "} (1. Ra8#"),
                bad("6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1", "Ra8#"),
            ],
            ..Draft::default()
        };
        let (text, lines) = draft.written();
        let read = read_lesson("draft.pgn", text.as_bytes());
        assert_eq!(read.title.as_deref(), Some("Half \"done\""));
        let faults: Vec<Option<usize>> = read
            .steps
            .iter()
            .map(|step| step.as_ref().err().map(|error| error.line))
            .collect();
        assert_eq!(faults.len(), 4, "{text}");
        for (at, fault) in faults.iter().enumerate().take(3) {
            let line = fault.expect("refused");
            assert_eq!(lines.iter().rposition(|first| *first <= line), Some(at));
        }
        let named: Vec<usize> = draft.faults().iter().map(|(step, _)| *step).collect();
        assert_eq!(named, [1, 2, 3]);
        let mut nothing = Draft::default();
        assert_eq!(nothing.faults(), []);
        nothing.steps.push(DraftStep::default());
        nothing.steps.push(DraftStep {
            kind: DraftKind::Stop,
            ..DraftStep::default()
        });
        assert_eq!(
            nothing.faults(),
            [(1, Fault::StepEmpty), (2, Fault::StepAsksNothing)]
        );
        assert!(text.contains("7... Ra8#"), "{text}");
        let last = read.steps[3].as_ref().expect("read");
        assert!(
            last.parts[0].stop().is_some(),
            "the first move is asked for"
        );
    }
}
