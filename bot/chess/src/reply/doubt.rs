//! The several answers a tree may hold: two first moves, or two moves of the solver's at one point, of
//! which the text does not say which is meant.

use shakmaty::{Color, Position};

use super::tree::{NodeId, Tree};
use super::{Trouble, Way};

/// Most answers that are told apart.
const MOST: usize = 4;

/// Each answer by itself, where the tree holds more than one.
pub(super) fn answers(tree: &Tree, troubles: &[Trouble]) -> Vec<Way> {
    let solver = tree.node(0).position.turn();
    let Some(at) = parting(tree, solver) else {
        return Vec::new();
    };
    tree.node(at)
        .children
        .iter()
        .take(MOST)
        .map(|&keep| {
            let (tree, moved) = tree.with_only(at, keep);
            let troubles = troubles
                .iter()
                .filter_map(|trouble| {
                    let at = moved.get(trouble.at).copied().flatten()?;
                    Some(Trouble {
                        at,
                        ..trouble.clone()
                    })
                })
                .collect();
            Way {
                tree,
                troubles,
                parts: true,
            }
        })
        .collect()
}

/// The first node of the main line at which the solver has several moves.
fn parting(tree: &Tree, solver: Color) -> Option<NodeId> {
    let several = |node: NodeId| {
        let here = tree.node(node);
        here.position.turn() == solver && here.children.len() > 1
    };
    std::iter::once(tree.cursor())
        .chain(tree.main_nodes())
        .find(|&node| several(node))
}
