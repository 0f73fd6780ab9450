//! The ways to take a doubtful reply, each as a line that is read as exactly that when it is sent.

use shakmaty::{Chess, Color, Move, Position, san::SanPlus};

use super::Case;
use crate::Language;
use crate::reply::{self, NodeId, Tree};

/// Most ways that are offered.
const MOST: usize = 4;

/// The lines, without those that say the same or could not be read back.
pub(super) fn of(case: &Case<'_>, ways: &[&Tree]) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    for tree in ways {
        let nodes = tree.main_nodes();
        let line = [Spelling::Short, Spelling::Full]
            .into_iter()
            .map(|spelling| line(tree, &nodes, spelling))
            .find(|line| !line.is_empty() && read_back(case, line, tree));
        out.extend(line.filter(|line| !out.contains(line)));
    }
    out.truncate(MOST);
    out
}

/// How a move is written: as SAN has it, or with the square it comes from, which no language takes for
/// another piece's move.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Spelling {
    Short,
    Full,
}

/// The moves that the member wrote, numbered from the start of the problem. A mate is shown as a check,
/// for whether it is one was not said.
fn line(tree: &Tree, nodes: &[NodeId], spelling: Spelling) -> String {
    let start = tree.node(0).position.turn();
    let mut out = String::new();
    let mut written = false;
    for &id in nodes {
        let node = tree.node(id);
        let (Some(parent), Some(mv), false) = (node.parent, node.mv, node.assumed) else {
            written = false;
            continue;
        };
        let before = &tree.node(parent).position;
        let half = node.ply - 1 + usize::from(start == Color::Black);
        let black = before.turn() == Color::Black;
        if !out.is_empty() {
            out.push(' ');
        }
        match (black, written) {
            (false, _) => out.push_str(&format!("{}.", half / 2 + 1)),
            (true, false) => out.push_str(&format!("{}...", half / 2 + 1)),
            (true, true) => {}
        }
        out.push_str(&move_text(before, mv, spelling));
        written = true;
    }
    out
}

fn move_text(before: &Chess, mv: Move, spelling: Spelling) -> String {
    let short = SanPlus::from_move(before.clone(), mv).to_string();
    let short = short.replace('#', "+");
    match (spelling, mv) {
        (
            Spelling::Full,
            Move::Normal {
                role,
                from,
                capture,
                to,
                ..
            },
        ) if role != shakmaty::Role::Pawn => {
            let takes = if capture.is_some() { "x" } else { "" };
            let sign = if short.ends_with('+') { "+" } else { "" };
            format!("{}{from}{takes}{to}{sign}", role.upper_char())
        }
        _ => short,
    }
}

/// Whether every group reads the line as the moves it was made from.
fn read_back(case: &Case<'_>, line: &str, tree: &Tree) -> bool {
    let wanted = tree.main_line();
    Language::ALL.iter().all(|&language| {
        reply::read(&case.problem.position, case.played, line, language).is_ok_and(|reading| {
            reading.doubt.is_none()
                && reading.ways.is_empty()
                && reading.troubles.is_empty()
                && reading.tree.main_line() == wanted
        })
    })
}
