//! EPD records and bare FENs, one a line.
//!
//! Of the opcodes of the PGN standard (section 16.2.5) `bm`, `am`, `dm`, `id`, `c0` to `c9`, `hmvc`
//! and `fmvn` are read. Two are our own: `task "="` states a draw (or `"+"`, `"#3"`), and `post "…"`
//! holds words that go out with the post; the standard has no opcode for either. A third, `question "…"`, makes the
//! position no problem but one that a question is asked about. All others are passed over.

use shakmaty::{Chess, Move};

use super::{
    Comment, Entry, Fault, Goes, Item, ReadError, Written, decode::Decoded, excerpt, read_move,
};
use crate::{Stipulation, fact::number as amount, parse_fen};

/// The most characters a line may have.
const LONGEST_LINE: usize = 16 << 10;

/// Reads a file of lines. Empty lines and those that begin with `#`, `%` or `;` are remarks.
pub(super) fn read_lines(file: &str, decoded: &Decoded) -> Vec<Result<Item, ReadError>> {
    decoded
        .text
        .lines()
        .enumerate()
        .filter(|(_, line)| {
            let line = line.trim();
            !line.is_empty() && !line.starts_with(['#', '%', ';'])
        })
        .map(|(at, line)| {
            let number = at + 1;
            let read = read_line(file, number, line);
            // What is lost of a line may be what made it right: the line is not taken by halves.
            match (decoded.lost(number), read) {
                (Some(lost), read) => Err(ReadError {
                    file: file.to_owned(),
                    line: number,
                    id: match read {
                        Ok(Item::Problem(entry)) => Some(entry.id),
                        Ok(Item::Question(written) | Item::Words(written)) => Some(written.id),
                        Err(error) => error.id,
                    }
                    .filter(|id| *id != unnamed(file, number)),
                    text: String::new(),
                    problem: Box::new(Fault::LineLost { what: lost }),
                }),
                (None, Ok(Item::Problem(entry))) => Ok(Item::Problem(Box::new(Entry {
                    odd_lines: decoded.odd_in(number..=number).to_vec(),
                    ..*entry
                }))),
                (None, read) => read,
            }
        })
        .collect()
}

/// The id of a position that its file does not name.
fn unnamed(file: &str, line: usize) -> String {
    format!("{file}:{line}")
}

fn read_line(file: &str, number: usize, line: &str) -> Result<Item, ReadError> {
    let refuse = |id: Option<String>, text: &str, problem: Fault| ReadError {
        file: file.to_owned(),
        line: number,
        id,
        text: text.to_owned(),
        problem: problem.into(),
    };
    if line.len() > LONGEST_LINE {
        return Err(refuse(
            None,
            &excerpt(line),
            Fault::LineTooLong {
                most: amount(LONGEST_LINE),
            },
        ));
    }
    let (placement, rest) = split_position(line);
    let operations = operations(rest);
    // The id is wanted first, so that every other complaint can name it.
    let id = operations.as_ref().ok().and_then(|operations| {
        operations
            .iter()
            .find(|(code, _)| *code == "id")
            .and_then(|(_, operands)| operands.first().cloned())
            .filter(|id| !id.trim().is_empty())
    });
    let operations = operations.map_err(|problem| refuse(None, &placement, problem))?;
    let fen = with_clocks(&placement, &operations);
    let read =
        parse_fen(&fen).map_err(|why| refuse(id.clone(), &fen, Fault::NoPositionHere { why }))?;
    if let Some((_, operands)) = operations.iter().find(|(code, _)| *code == "question") {
        let of = |code: &str| {
            let mut found = operations.iter().filter(|(other, _)| *other == code);
            found.find_map(|(_, operands)| operands.first().cloned())
        };
        let words = operands.first().cloned().unwrap_or_default();
        if words.trim().is_empty() {
            return Err(refuse(id, &fen, Fault::QuestionWantsWords));
        }
        let reveal = (b'1'..=b'9').filter_map(|n| of(&format!("c{}", char::from(n))));
        return Ok(Item::Question(Written {
            id: id.unwrap_or_else(|| unnamed(file, number)),
            line: number,
            words,
            at_reveal: reveal.collect::<Vec<_>>().join("\n"),
            topic: of("c0"),
            position: Some(read.position).filter(|start| *start != Chess::default()),
        }));
    }
    let mut entry = Entry {
        id: id.clone().unwrap_or_else(|| unnamed(file, number)),
        line: number,
        text: line.to_owned(),
        position: read.position,
        warnings: read.warnings,
        ..Entry::default()
    };
    for (code, operands) in &operations {
        apply(&mut entry, code, operands).map_err(|problem| refuse(id.clone(), &fen, problem))?;
    }
    // A best move with no mate announced promises a win.
    if entry.stipulation.is_none() && !entry.best.is_empty() {
        entry.stipulation = Some(Stipulation::Win);
    }
    Ok(Item::Problem(Box::new(entry)))
}

fn apply(entry: &mut Entry, code: &str, operands: &[String]) -> Result<(), Fault> {
    match code {
        "bm" => entry.best = moves(&entry.position, code, operands)?,
        "am" => entry.avoid = moves(&entry.position, code, operands)?,
        "dm" => {
            let moves = operands
                .first()
                .and_then(|text| text.parse().ok())
                .filter(|moves| (1..=Stipulation::LONGEST).contains(moves));
            entry.stipulation = Some(Stipulation::Mate(moves.ok_or_else(|| {
                let most = Stipulation::LONGEST.into();
                Fault::LengthWanted { most }
            })?));
        }
        "task" => {
            let text = operands.first().map(String::as_str).unwrap_or_default();
            entry.stipulation = Some(text.parse().map_err(|why| Fault::OperationNoTask { why })?);
        }
        "c0" => entry.topic = operands.first().cloned(),
        "post" => comment(entry, operands, Goes::WithPost),
        _ if is_comment(code) => comment(entry, operands, Goes::AtReveal),
        _ => {}
    }
    Ok(())
}

fn comment(entry: &mut Entry, operands: &[String], goes: Goes) {
    if let Some(text) = operands.first() {
        entry.comments.extend(Comment::read(text, goes));
    }
}

fn is_comment(code: &str) -> bool {
    matches!(code.as_bytes(), [b'c', b'1'..=b'9'])
}

fn moves(position: &Chess, code: &str, operands: &[String]) -> Result<Vec<Move>, Fault> {
    if operands.is_empty() {
        return Err(Fault::OperationLacksMove { code: code.into() });
    }
    operands
        .iter()
        .map(|text| read_move(position, code, text))
        .collect()
}

/// Splits a record into its position (four fields, or six when the clocks follow as in a FEN) and
/// its operations.
fn split_position(line: &str) -> (String, &str) {
    let mut rest = line.trim();
    let mut fields = Vec::new();
    while fields.len() < 6 {
        rest = rest.trim_start();
        let end = rest.find(char::is_whitespace).unwrap_or(rest.len());
        let field = &rest[..end];
        if field.is_empty() {
            break;
        }
        let is_clock = field.bytes().all(|byte| byte.is_ascii_digit());
        if fields.len() >= 4 && !is_clock {
            break;
        }
        fields.push(field);
        rest = &rest[end..];
    }
    let rest = rest.trim();
    // A FEN whose counters are no numbers has no operations that they could be taken for.
    if fields.len() < 6 && is_rest_of_fen(fields.len(), rest) {
        return (line.trim().to_owned(), "");
    }
    (fields.join(" "), rest)
}

/// Whether what stands behind `fields` fields of a position is the rest of a FEN, one or two counters
/// that cannot be read, rather than an operation.
fn is_rest_of_fen(fields: usize, rest: &str) -> bool {
    let words: Vec<&str> = rest.split_whitespace().collect();
    let wanted = 6_usize.saturating_sub(fields);
    fields >= 4
        && words.len() == wanted
        && !rest.contains([';', '"'])
        && !OPCODES.contains(&words[0])
        && !is_comment(words[0])
}

/// The opcodes of the standard, and our own, that may stand behind the four fields.
const OPCODES: &[&str] = &[
    "acd",
    "acn",
    "acs",
    "am",
    "bm",
    "c0",
    "ce",
    "dm",
    "draw_accept",
    "draw_claim",
    "draw_offer",
    "draw_reject",
    "eco",
    "fmvn",
    "hmvc",
    "id",
    "nic",
    "noop",
    "pm",
    "post",
    "pv",
    "rc",
    "resign",
    "sm",
    "task",
    "tcgs",
    "tcri",
    "tcsi",
    "v0",
];

/// Adds the clocks that the operations `hmvc` and `fmvn` state, where the position has none.
fn with_clocks(placement: &str, operations: &[(&str, Vec<String>)]) -> String {
    if placement.split(' ').count() != 4 {
        return placement.to_owned();
    }
    let clock = |wanted: &str, default: u32| {
        operations
            .iter()
            .find(|(code, _)| *code == wanted)
            .and_then(|(_, operands)| operands.first())
            .and_then(|text| text.parse::<u32>().ok())
            .filter(|clock| *clock <= 9_999)
            .unwrap_or(default)
    };
    format!(
        "{placement} {} {}",
        clock("hmvc", 0),
        clock("fmvn", 1).max(1)
    )
}

/// The operations of a record: opcode and operands, strings without their quotes. The semicolon
/// after the last one may be missing.
fn operations(text: &str) -> Result<Vec<(&str, Vec<String>)>, Fault> {
    let mut found = Vec::new();
    let mut rest = text;
    loop {
        rest = rest.trim_start_matches(|c: char| c.is_whitespace() || c == ';');
        if rest.is_empty() {
            return Ok(found);
        }
        let end = rest
            .find(|c: char| c.is_whitespace() || c == ';')
            .unwrap_or(rest.len());
        let code = &rest[..end];
        if !code.starts_with(|c: char| c.is_ascii_alphabetic()) {
            let written = excerpt(code).into();
            return Err(Fault::OperationWanted { written });
        }
        rest = &rest[end..];
        let mut operands = Vec::new();
        loop {
            rest = rest.trim_start();
            if rest.is_empty() {
                break;
            }
            if let Some(after) = rest.strip_prefix(';') {
                rest = after;
                break;
            }
            if let Some(quoted) = rest.strip_prefix('"') {
                let Some(end) = quoted.find('"') else {
                    let code = excerpt(code).into();
                    return Err(Fault::QuotationNotClosed { code });
                };
                operands.push(quoted[..end].to_owned());
                rest = &quoted[end + 1..];
            } else {
                let end = rest
                    .find(|c: char| c.is_whitespace() || c == ';')
                    .unwrap_or(rest.len());
                operands.push(rest[..end].to_owned());
                rest = &rest[end..];
            }
        }
        found.push((code, operands));
    }
}
