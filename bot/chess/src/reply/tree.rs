//! The moves of a reply as a tree: the main line first, variations where they branch off.

use shakmaty::{Chess, Move, Position};

/// Index of a node in a [`Tree`].
pub type NodeId = usize;

/// A position reached in the reply.
#[derive(Clone, Debug)]
pub struct Node {
    /// The move that led here; none at the start of the problem.
    pub mv: Option<Move>,
    /// The node before it.
    pub parent: Option<NodeId>,
    /// The nodes after it, in the order written.
    pub children: Vec<NodeId>,
    /// The position here.
    pub position: Chess,
    /// Half-moves since the start of the problem.
    pub ply: usize,
    /// True when the writer left this defence out and it was filled in.
    pub assumed: bool,
    /// True when it had been played before the reply.
    pub played: bool,
}

/// Every move of a reply, from the start of the problem. Node 0 is the start; what had been played
/// before the reply is part of it.
#[derive(Clone, Debug)]
pub struct Tree {
    nodes: Vec<Node>,
    cursor: NodeId,
}

impl Tree {
    /// Most nodes a reply can have; what goes beyond is not read.
    pub const MOST: usize = 1_500;

    /// A tree that holds only what was played.
    pub fn new(start: &Chess, played: &[Move]) -> Self {
        let mut tree = Self {
            nodes: vec![Node {
                mv: None,
                parent: None,
                children: Vec::new(),
                position: start.clone(),
                ply: 0,
                assumed: false,
                played: true,
            }],
            cursor: 0,
        };
        for &mv in played {
            if !tree.nodes[tree.cursor].position.is_legal(mv) {
                break;
            }
            if let Some(next) = tree.add(tree.cursor, mv, false) {
                tree.nodes[next].played = true;
                tree.cursor = next;
            }
        }
        tree
    }

    /// The node at which the reply begins.
    pub fn cursor(&self) -> NodeId {
        self.cursor
    }

    /// A node.
    pub fn node(&self, id: NodeId) -> &Node {
        &self.nodes[id]
    }

    /// All nodes; parents come before children.
    pub fn nodes(&self) -> &[Node] {
        &self.nodes
    }

    /// The moves from the start of the problem to a node.
    pub fn moves_to(&self, id: NodeId) -> Vec<Move> {
        let mut moves: Vec<Move> = self
            .path(id)
            .into_iter()
            .filter_map(|n| self.nodes[n].mv)
            .collect();
        moves.shrink_to_fit();
        moves
    }

    /// The nodes from the start to `id`, both included.
    pub fn path(&self, id: NodeId) -> Vec<NodeId> {
        let mut path = vec![id];
        let mut at = id;
        while let Some(parent) = self.nodes[at].parent {
            path.push(parent);
            at = parent;
        }
        path.reverse();
        path
    }

    /// The main line of the reply, from the cursor on: the first move written at every turn. Where the
    /// writer left defences out, the one that their own moves lead furthest after.
    pub fn main_line(&self) -> Vec<Move> {
        self.main_nodes()
            .into_iter()
            .filter_map(|id| self.nodes[id].mv)
            .collect()
    }

    /// The nodes of [`Tree::main_line`].
    pub fn main_nodes(&self) -> Vec<NodeId> {
        let mut heights = vec![0usize; self.nodes.len()];
        for (id, node) in self.nodes.iter().enumerate().rev() {
            if let Some(parent) = node.parent {
                heights[parent] = heights[parent].max(heights[id] + 1);
            }
        }
        let mut line = Vec::new();
        let mut at = self.cursor;
        while let Some(&first) = self.nodes[at].children.first() {
            let next = if self.nodes[first].assumed {
                let deepest = |best: NodeId, &id: &NodeId| {
                    if heights[id] > heights[best] {
                        id
                    } else {
                        best
                    }
                };
                self.nodes[at].children.iter().fold(first, deepest)
            } else {
                first
            };
            line.push(next);
            at = next;
        }
        line
    }

    /// Whether another tree holds the same moves, whatever order they were written in.
    pub(super) fn same_as(&self, other: &Self) -> bool {
        let moves = |node: &Node| (node.parent, node.mv, node.assumed);
        self.nodes.len() == other.nodes.len()
            && self
                .nodes
                .iter()
                .zip(&other.nodes)
                .all(|(own, other)| moves(own) == moves(other))
    }

    /// The tree with `keep` as the only child of `at`, and for each old node its new place.
    pub(super) fn with_only(&self, at: NodeId, keep: NodeId) -> (Self, Vec<Option<NodeId>>) {
        let mut moved: Vec<Option<NodeId>> = Vec::with_capacity(self.nodes.len());
        let mut nodes: Vec<Node> = Vec::new();
        for (id, node) in self.nodes.iter().enumerate() {
            let parent = node.parent.map(|parent| moved[parent]);
            let left_out = matches!(parent, Some(None)) || (node.parent == Some(at) && id != keep);
            if left_out {
                moved.push(None);
                continue;
            }
            let new = nodes.len();
            let parent = parent.flatten();
            nodes.push(Node {
                parent,
                children: Vec::new(),
                ..node.clone()
            });
            if let Some(parent) = parent {
                nodes[parent].children.push(new);
            }
            moved.push(Some(new));
        }
        let cursor = moved[self.cursor].unwrap_or(0);
        (Self { nodes, cursor }, moved)
    }

    /// The node after `mv` at `id`, new or not; `None` when the tree is full.
    pub(super) fn add(&mut self, id: NodeId, mv: Move, assumed: bool) -> Option<NodeId> {
        if let Some(known) = self.child(id, mv) {
            self.nodes[known].assumed &= assumed;
            return Some(known);
        }
        if self.nodes.len() >= Self::MOST {
            return None;
        }
        let mut position = self.nodes[id].position.clone();
        position.play_unchecked(mv);
        let new = self.nodes.len();
        self.nodes.push(Node {
            mv: Some(mv),
            parent: Some(id),
            children: Vec::new(),
            position,
            ply: self.nodes[id].ply + 1,
            assumed,
            played: false,
        });
        self.nodes[id].children.push(new);
        Some(new)
    }

    /// The child of `id` by `mv`.
    pub fn child(&self, id: NodeId, mv: Move) -> Option<NodeId> {
        self.nodes[id]
            .children
            .iter()
            .copied()
            .find(|&child| self.nodes[child].mv == Some(mv))
    }
}
