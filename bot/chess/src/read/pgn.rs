//! Games in PGN: tags, and the tree of moves with its comments and glyphs.
//!
//! Tags read beside those of the standard are our own: `Task` (or `Stipulation`) with `#3`, `+` or
//! `=`, `Topic`, and `Id`; and in a game without moves `Question` and `Words`, which make it no problem. A game without a `FEN` tag starts from the initial position.

use std::{collections::HashMap, mem, ops::ControlFlow};

use pgn_reader::{Nag, RawComment, Reader, Skip, Visitor};
use shakmaty::{
    Chess, Color, Move, Position,
    san::{San, SanError, SanPlus, Suffix},
};

use super::movetext::{RawGame, split};
use super::{
    Comment, Entry, Fault, GameNode, GameTree, Goes, Item, OddLine, ReadError, Written,
    decode::Decoded,
};
use crate::{Stipulation, Warning, fact::number, parse_fen};

/// The most moves a game may have, variations counted.
const MOST_MOVES: usize = 20_000;

/// The most half-moves a line may have.
const LONGEST_LINE: usize = 1_200;

/// A game as the file gives it.
#[derive(Clone, Debug)]
pub struct Game {
    /// Line of its first tag or move, from 1.
    pub line: usize,
    /// Tags in the file's order: name and value.
    pub tags: Vec<(String, String)>,
    /// Where it starts.
    pub start: Chess,
    /// Whether a `FEN` tag says where it starts.
    pub has_fen: bool,
    /// What is odd about the start.
    pub warnings: Vec<Warning>,
    /// The moves.
    pub tree: GameTree,
    /// Comments before the first move.
    pub comments: Vec<String>,
    /// Lines of it that were not in the file's encoding.
    pub odd_lines: Vec<OddLine>,
}

impl Game {
    /// Whether a tag is there that says anything but `no`.
    pub fn says_yes(&self, name: &str) -> bool {
        self.tag(name)
            .is_some_and(|value| !value.eq_ignore_ascii_case("no"))
    }

    /// The value of a tag; `?` and the empty text stand for no value.
    pub fn tag(&self, name: &str) -> Option<&str> {
        self.tags
            .iter()
            .find(|(tag, _)| tag.eq_ignore_ascii_case(name))
            .map(|(_, value)| value.trim())
            .filter(|value| !value.is_empty() && !value.starts_with('?'))
    }
}

/// Reads every game of a file.
pub(super) fn read_games(file: &str, decoded: &Decoded) -> Vec<Result<Game, ReadError>> {
    split(&decoded.text)
        .into_iter()
        .map(|raw| read_game(file, raw, decoded))
        .collect()
}

/// Reads every game of a file as a position with its solution, a question, or words alone.
pub(super) fn read_entries(file: &str, decoded: &Decoded) -> Vec<Result<Item, ReadError>> {
    let raws = split(&decoded.text);
    if let Some(error) = whole_games(file, &raws) {
        return vec![Err(error)];
    }
    // The event names a position only where no other game of the file has the same one.
    let mut events: HashMap<String, usize> = HashMap::new();
    for event in raws.iter().filter_map(|raw| tag(raw, "Event")) {
        *events.entry(event).or_default() += 1;
    }
    let ids: Vec<Option<String>> = raws
        .iter()
        .map(|raw| {
            tag(raw, "Id")
                .or_else(|| tag(raw, "Event").filter(|event| events.get(event) == Some(&1)))
        })
        .collect();
    raws.into_iter()
        .zip(ids)
        .map(|(raw, id)| item(file, raw, id, decoded))
        .collect()
}

fn item(
    file: &str,
    raw: RawGame,
    id: Option<String>,
    decoded: &Decoded,
) -> Result<Item, ReadError> {
    let value = |name: &str| {
        let mut tags = raw.tags.iter();
        tags.find(|(tag, ..)| tag.eq_ignore_ascii_case(name))
            .map(|(_, value, _)| value.trim().to_owned())
            .filter(|value| !value.is_empty())
    };
    let question = value("Question").filter(|question| question != "?");
    let words = value("Words").filter(|words| words != "?");
    let open = value("Task").is_some_and(|task| task == "?");
    let tagged = match (&question, &words) {
        (Some(_), _) => Some("Question"),
        (None, Some(_)) => Some("Words"),
        (None, None) => None,
    };
    let refused = |problem: Fault| ReadError {
        file: file.to_owned(),
        line: raw.line,
        id: id.clone(),
        text: String::new(),
        problem: problem.into(),
    };
    // What is meant by both is not guessed.
    if let (Some(tag), false) = (tagged, raw.lines.is_empty()) {
        return Err(refused(Fault::TagBesideMoves { tag: tag.into() }));
    }
    let empty = |name: &str| {
        let mut tags = raw.tags.iter();
        tags.any(|(tag, value, _)| tag.eq_ignore_ascii_case(name) && value.trim().is_empty())
    };
    if tagged.is_none()
        && !open
        && raw.lines.is_empty()
        && let Some(tag) = ["Question", "Words"].into_iter().find(|tag| empty(tag))
    {
        return Err(refused(Fault::TagEmpty { tag: tag.into() }));
    }
    if !raw.lines.is_empty() || (tagged.is_none() && !open) {
        return entry(file, raw, id, decoded).map(|entry| Item::Problem(Box::new(entry)));
    }
    let line = raw.line;
    let game = read_game(file, raw, decoded).map_err(|error| ReadError {
        id: id.clone(),
        ..error
    })?;
    let comments = game.comments.join("\n");
    let written = |words: String, at_reveal: String| Written {
        id: id.clone().unwrap_or_else(|| format!("{file}:{line}")),
        line,
        words,
        position: Some(game.start.clone()).filter(|start| *start != Chess::default()),
        topic: game
            .tag("Topic")
            .or_else(|| game.tag("Event"))
            .map(str::to_owned),
        at_reveal,
    };
    match (question, words) {
        (Some(question), _) => Ok(Item::Question(written(question, comments))),
        (None, Some(words)) => Ok(Item::Words(written(words, String::new()))),
        (None, None) if !comments.trim().is_empty() => {
            Ok(Item::Question(written(comments, String::new())))
        }
        (None, None) => Err(ReadError {
            file: file.to_owned(),
            line,
            id,
            text: String::new(),
            problem: Box::new(Fault::QuestionLacksWords),
        }),
    }
}

/// A file of nothing but whole games says one thing wrong, not one for each game.
fn whole_games(file: &str, raws: &[RawGame]) -> Option<ReadError> {
    let whole = |raw: &RawGame| {
        !raw.lines.is_empty() && tag(raw, "FEN").is_none() && tag(raw, "Task").is_none()
    };
    let first = raws.first()?;
    (raws.len() > 1 && raws.iter().all(whole)).then(|| ReadError {
        file: file.to_owned(),
        line: first.line,
        id: None,
        text: String::new(),
        problem: Box::new(Fault::FileHoldsGames {
            games: number(raws.len()),
        }),
    })
}

fn entry(
    file: &str,
    raw: RawGame,
    id: Option<String>,
    decoded: &Decoded,
) -> Result<Entry, ReadError> {
    let task = raw
        .tags
        .iter()
        .find(|(name, ..)| {
            name.eq_ignore_ascii_case("Task") || name.eq_ignore_ascii_case("Stipulation")
        })
        .map(|(name, value, line)| (name.clone(), value.clone(), *line));
    let name_it = |error: ReadError| ReadError {
        id: id.clone(),
        ..error
    };
    let text = raw.text.clone();
    let game = read_game(file, raw, decoded).map_err(name_it)?;
    let refuse = |line, text: &str, problem: Fault| ReadError {
        file: file.to_owned(),
        line,
        id: id.clone(),
        text: text.to_owned(),
        problem: problem.into(),
    };
    if !game.has_fen || game.start == Chess::default() {
        return Err(refuse(game.line, "", Fault::GameFromTheStart));
    }
    let stipulation = match task {
        None => None,
        Some((name, value, line)) => Some(value.parse::<Stipulation>().map_err(|why| {
            refuse(
                line,
                game.tag("FEN").unwrap_or_default(),
                Fault::TagNoTask {
                    tag: name.into(),
                    why,
                },
            )
        })?),
    };
    Ok(Entry {
        id: id
            .clone()
            .unwrap_or_else(|| format!("{file}:{}", game.line)),
        line: game.line,
        text,
        warnings: game.warnings.clone(),
        stipulation,
        best: game
            .tree
            .nodes
            .first()
            .map(|node| node.mv)
            .into_iter()
            .collect(),
        avoid: Vec::new(),
        topic: game
            .tag("Topic")
            .or_else(|| game.tag("Event"))
            .map(str::to_owned),
        comments: game
            .comments
            .iter()
            .flat_map(|text| Comment::read(text, Goes::WithPost))
            .collect(),
        odd_lines: game.odd_lines,
        position: game.start,
        variations: (!game.tree.nodes.is_empty()).then_some(game.tree),
    })
}

fn tag(raw: &RawGame, name: &str) -> Option<String> {
    raw.tags
        .iter()
        .find(|(tag, ..)| tag.eq_ignore_ascii_case(name))
        .map(|(_, value, _)| value.trim().to_owned())
        .filter(|value| !value.is_empty() && !value.starts_with('?'))
}

fn read_game(file: &str, raw: RawGame, decoded: &Decoded) -> Result<Game, ReadError> {
    let refuse = |line, text: &str, problem: Fault| ReadError {
        file: file.to_owned(),
        line,
        id: None,
        text: text.to_owned(),
        problem: problem.into(),
    };
    let fen = raw
        .tags
        .iter()
        .find(|(name, ..)| name.eq_ignore_ascii_case("FEN"));
    let mut warnings = Vec::new();
    let start = match fen {
        None => Chess::default(),
        Some((_, value, line)) => {
            let read = parse_fen(value)
                .map_err(|why| refuse(*line, value, Fault::TagNoPosition { why }))?;
            warnings = read.warnings;
            read.position
        }
    };
    let fen_text = fen.map(|(_, value, _)| value.as_str()).unwrap_or_default();
    // A token that cannot be read may stand after an illegal move; the first trouble is reported.
    let tree = read_tree(&start, &raw);
    let trouble = match (&tree, &raw.problem) {
        (Err(illegal), Some(unreadable)) => Some(if illegal.0 <= unreadable.0 {
            illegal
        } else {
            unreadable
        }),
        (Err(trouble), None) | (Ok(_), Some(trouble)) => Some(trouble),
        (Ok(_), None) => None,
    };
    if let Some((line, problem)) = trouble {
        // What is lost of a line is why the rest of it makes no sense.
        let problem = match decoded.lost(*line) {
            Some(what) => Fault::LineLost { what },
            None => problem.clone(),
        };
        return Err(refuse(*line, fen_text, problem));
    }
    let (tree, comments) = tree.unwrap_or_default();
    Ok(Game {
        odd_lines: decoded.odd_in(raw.line..=raw.last_line).to_vec(),
        line: raw.line,
        has_fen: fen.is_some(),
        tags: raw
            .tags
            .into_iter()
            .map(|(name, value, _)| (name, value))
            .collect(),
        start,
        warnings,
        tree,
        comments,
    })
}

type Misread = (usize, Fault);

fn read_tree(start: &Chess, raw: &RawGame) -> Result<(GameTree, Vec<String>), Misread> {
    let mut reader = Reader::new(raw.movetext.as_bytes());
    let mut builder = Builder { start, raw };
    match reader.read_game(&mut builder) {
        Ok(Some(output)) => output,
        Ok(None) => Ok((GameTree::default(), Vec::new())),
        Err(_) => Err((raw.line, Fault::GameUnread)),
    }
}

struct Builder<'a> {
    start: &'a Chess,
    raw: &'a RawGame,
}

/// A move while the tree is being built; node 0 is the start and holds no move.
struct Flat {
    mv: Option<Move>,
    parent: usize,
    /// Half-moves from the start.
    depth: usize,
    after: Chess,
    nags: Vec<u8>,
    mate_sign: bool,
    before: String,
    comment: String,
    line: usize,
    next: Vec<usize>,
}

struct Growing {
    nodes: Vec<Flat>,
    /// The last move of the line being read.
    at: usize,
    /// Where the lines around this variation stand.
    outer: Vec<usize>,
    /// Moves read, null moves and those behind them counted.
    read: usize,
    /// Above 0 while the rest of a variation behind a null move is passed over.
    passing: usize,
    /// What is passed over, as it is written: it is no line of legal moves, but words it is.
    passed: String,
    /// A variation has begun, and no move of it has come yet.
    opening: bool,
    /// Words at the beginning of a variation, for its first move.
    before: String,
    comment: Vec<u8>,
}

impl Growing {
    /// Adds words to those behind a move; at the start each comment keeps a line of its own.
    fn add_words(&mut self, at: usize, words: &str) {
        let into = &mut self.nodes[at].comment;
        if !into.is_empty() && !words.is_empty() {
            into.push(if at == 0 { '\n' } else { ' ' });
        }
        into.push_str(words);
    }

    /// Words that stand at the beginning of a variation in which no move came are on the move that the
    /// variation stands behind.
    fn settle_opening(&mut self) {
        self.opening = false;
        let words = mem::take(&mut self.before);
        if let Some(outer) = self.outer.last().copied() {
            self.add_words(outer, &words);
        }
    }

    fn pass(&mut self, written: &str) {
        if !self.passed.is_empty() && !self.passed.ends_with('(') && written != ")" {
            self.passed.push(' ');
        }
        self.passed.push_str(written);
    }
}

impl Visitor for Builder<'_> {
    type Tags = ();
    type Movetext = Growing;
    type Output = Result<(GameTree, Vec<String>), Misread>;

    fn begin_tags(&mut self) -> ControlFlow<Self::Output, ()> {
        ControlFlow::Continue(())
    }

    fn begin_movetext(&mut self, _: ()) -> ControlFlow<Self::Output, Growing> {
        ControlFlow::Continue(Growing {
            nodes: vec![Flat {
                mv: None,
                parent: 0,
                depth: 0,
                after: self.start.clone(),
                nags: Vec::new(),
                mate_sign: false,
                before: String::new(),
                comment: String::new(),
                line: self.raw.line,
                next: Vec::new(),
            }],
            at: 0,
            outer: Vec::new(),
            read: 0,
            passing: 0,
            passed: String::new(),
            opening: false,
            before: String::new(),
            comment: Vec::new(),
        })
    }

    fn san(&mut self, growing: &mut Growing, san: SanPlus) -> ControlFlow<Self::Output> {
        let line = self
            .raw
            .lines
            .get(growing.read)
            .copied()
            .unwrap_or(self.raw.line);
        growing.read += 1;
        if growing.passing > 0 {
            growing.pass(&san.to_string());
            return ControlFlow::Continue(());
        }
        let trouble = |problem| ControlFlow::Break(Err((line, problem)));
        let before = &growing.nodes[growing.at];
        if matches!(san.san, San::Null) {
            if growing.outer.is_empty() {
                return trouble(Fault::NullMove);
            }
            growing.passing = 1;
            growing.passed = "--".to_owned();
            return ControlFlow::Continue(());
        }
        let mv = match san.san.to_move(&before.after) {
            Ok(mv) => mv,
            Err(error) => {
                let line = numbered(&before.after, &san).into();
                return trouble(match error {
                    SanError::IllegalSan => Fault::MoveNotLegal { line },
                    SanError::AmbiguousSan => Fault::MoveNotClear { line },
                });
            }
        };
        if growing.nodes.len() > MOST_MOVES {
            let most = number(MOST_MOVES);
            return trouble(Fault::GameTooLong { most });
        }
        if before.depth >= LONGEST_LINE {
            let most = number(LONGEST_LINE);
            return trouble(Fault::MovesTooLong { most });
        }
        let mut after = before.after.clone();
        after.play_unchecked(mv);
        let depth = before.depth + 1;
        let new = growing.nodes.len();
        growing.nodes.push(Flat {
            mv: Some(mv),
            parent: growing.at,
            depth,
            after,
            nags: Vec::new(),
            mate_sign: san.suffix == Some(Suffix::Checkmate),
            before: mem::take(&mut growing.before),
            comment: String::new(),
            line,
            next: Vec::new(),
        });
        growing.nodes[growing.at].next.push(new);
        growing.at = new;
        growing.opening = false;
        ControlFlow::Continue(())
    }

    fn nag(&mut self, growing: &mut Growing, nag: Nag) -> ControlFlow<Self::Output> {
        if growing.passing == 0 && growing.at != 0 && !growing.opening {
            let nags = &mut growing.nodes[growing.at].nags;
            if !nags.contains(&nag.0) {
                nags.push(nag.0);
            }
        }
        ControlFlow::Continue(())
    }

    fn partial_comment(
        &mut self,
        growing: &mut Growing,
        comment: RawComment<'_>,
    ) -> ControlFlow<Self::Output> {
        growing.comment.extend_from_slice(comment.as_bytes());
        ControlFlow::Continue(())
    }

    fn comment(
        &mut self,
        growing: &mut Growing,
        comment: RawComment<'_>,
    ) -> ControlFlow<Self::Output> {
        let mut bytes = mem::take(&mut growing.comment);
        bytes.extend_from_slice(comment.as_bytes());
        let text = String::from_utf8_lossy(&bytes);
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        if growing.passing > 0 {
            growing.pass(&text);
        } else if growing.opening {
            if !growing.before.is_empty() && !text.is_empty() {
                growing.before.push(' ');
            }
            growing.before.push_str(&text);
        } else {
            growing.add_words(growing.at, &text);
        }
        ControlFlow::Continue(())
    }

    fn begin_variation(&mut self, growing: &mut Growing) -> ControlFlow<Self::Output, Skip> {
        if growing.passing > 0 {
            growing.passing += 1;
            growing.pass("(");
            return ControlFlow::Continue(Skip(false));
        }
        if growing.opening {
            growing.settle_opening();
        }
        if growing.at == 0 {
            let line = self
                .raw
                .lines
                .get(growing.read)
                .copied()
                .unwrap_or(self.raw.line);
            return ControlFlow::Break(Err((line, Fault::VariationTooSoon)));
        }
        growing.outer.push(growing.at);
        growing.at = growing.nodes[growing.at].parent;
        growing.opening = true;
        ControlFlow::Continue(Skip(false))
    }

    fn end_variation(&mut self, growing: &mut Growing) -> ControlFlow<Self::Output> {
        if growing.passing > 1 {
            growing.passing -= 1;
            growing.pass(")");
            return ControlFlow::Continue(());
        }
        if growing.passing == 1 {
            growing.passing = 0;
            let passed = mem::take(&mut growing.passed);
            // At the beginning of a variation there is no move of its own yet for it to stand behind.
            if growing.opening {
                if !growing.before.is_empty() {
                    growing.before.push(' ');
                }
                growing.before.push_str(&passed);
            } else {
                growing.add_words(growing.at, &passed);
            }
        }
        if growing.opening {
            growing.settle_opening();
        }
        if let Some(outer) = growing.outer.pop() {
            growing.at = outer;
        }
        ControlFlow::Continue(())
    }

    fn end_game(&mut self, mut growing: Growing) -> Self::Output {
        let comments = growing.nodes[0]
            .comment
            .lines()
            .map(str::to_owned)
            .collect();
        // Children come after their parents, so walking backwards each subtree is ready in time.
        let mut ready: Vec<Option<GameTree>> = Vec::new();
        ready.resize_with(growing.nodes.len(), || None);
        for at in (0..growing.nodes.len()).rev() {
            let children = mem::take(&mut growing.nodes[at].next);
            let nodes = children
                .into_iter()
                .filter_map(|child| {
                    let flat = &mut growing.nodes[child];
                    Some(GameNode {
                        mv: flat.mv?,
                        nags: mem::take(&mut flat.nags),
                        mate_sign: flat.mate_sign,
                        before: Some(mem::take(&mut flat.before)).filter(|text| !text.is_empty()),
                        comment: Some(mem::take(&mut flat.comment)).filter(|text| !text.is_empty()),
                        line: flat.line,
                        next: ready[child].take().unwrap_or_default(),
                    })
                })
                .collect();
            ready[at] = Some(GameTree { nodes });
        }
        let tree = ready[0].take().unwrap_or_default();
        Ok((tree, comments))
    }
}

/// A move with the number that its place in the game gives it: "12.Nf3", "12...Nf6".
fn numbered(before: &Chess, san: &SanPlus) -> String {
    let dots = if before.turn() == Color::White {
        "."
    } else {
        "..."
    };
    format!("{}{dots}{san}", before.fullmoves())
}
