//! The table of written replies: what each must be read as. See `table.txt` for how it is laid out.

use std::collections::BTreeMap;

use shakmaty::Chess;

use super::{Reading, TroubleKind, read};
use crate::{Language, line::sans, parse_fen};

const TABLE: &str = include_str!("table.txt");

/// A reading in one line: every line of the tree, `|` between them, defences filled in in brackets,
/// then what went wrong.
pub(super) fn shown(start: &Chess, reading: &Reading) -> String {
    let tree = &reading.tree;
    let mut lines = Vec::new();
    let cursor = tree.node(tree.cursor()).ply;
    for (id, node) in tree.nodes().iter().enumerate() {
        if !node.children.is_empty() || (node.played && node.mv.is_some()) || id == 0 {
            continue;
        }
        let names = sans(start, &tree.moves_to(id));
        let words: Vec<String> = tree
            .path(id)
            .iter()
            .skip(1)
            .zip(names)
            .skip(cursor)
            .map(|(&node, san)| match tree.node(node).assumed {
                true => format!("[{san}]"),
                false => san,
            })
            .collect();
        lines.push(words.join(" "));
    }
    for trouble in &reading.troubles {
        lines.push(match trouble.kind {
            TroubleKind::Illegal => {
                let why = sealed_move_words::english().say(&trouble.reason);
                format!("illegal {}: {why}", trouble.written)
            }
            TroubleKind::Unclear => {
                format!(
                    "unclear {}: {}",
                    trouble.written,
                    trouble.possible.join(" ")
                )
            }
            TroubleKind::Garbled => format!("garbled {}", trouble.written),
        });
    }
    lines.join(" | ")
}

fn language(name: &str) -> Language {
    serde_json::from_value(serde_json::Value::String(name.to_owned()))
        .unwrap_or_else(|_| panic!("no language {name}"))
}

#[test]
fn every_written_reply_is_read_as_the_table_says() {
    let mut positions: BTreeMap<&str, Chess> = BTreeMap::new();
    let mut rows: BTreeMap<(&str, &str), usize> = BTreeMap::new();
    let mut wrong = Vec::new();
    for (number, line) in TABLE.lines().enumerate() {
        if line.trim().is_empty() || line.starts_with('#') {
            continue;
        }
        let fields: Vec<&str> = line.split('\t').collect();
        if let ["position", name, fen] = fields[..] {
            let read = parse_fen(fen).unwrap_or_else(|e| panic!("line {}: {e}", number + 1));
            positions.insert(name, read.position);
            continue;
        }
        let [kind, tongue, name, text, expected] = fields[..] else {
            panic!("line {}: five fields are wanted: {line}", number + 1);
        };
        *rows.entry((kind, tongue)).or_default() += 1;
        let start = positions
            .get(name)
            .unwrap_or_else(|| panic!("line {}: no position {name}", number + 1));
        let text = text.replace("\\n", "\n");
        let reading = read(start, &[], &text, language(tongue)).expect("short");
        let found = shown(start, &reading);
        if found != expected {
            wrong.push(format!(
                "line {}: {text:?} ({tongue}, {name})\n   wanted {expected}\n   found  {found}",
                number + 1
            ));
        }
    }
    let total: usize = rows.values().sum();
    println!("{total} rows: {rows:?}");
    assert!(
        wrong.is_empty(),
        "{} wrong:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
    assert!(total >= 400, "the table has {total} rows");
}
