//! Every move of the demo's positions agreed with python-chess (PyPI `chess`), an independent rules
//! library: the files' own keys and variations, and every line of the proof.

use sealed_move::chess::{
    Branch, Budget, Stipulation, line, prove,
    read::{GameTree, read_file},
};
use sealed_move_tests::python_script;
use shakmaty::{Chess, EnPassantMode, Move, Position, fen::Fen};

struct Lines {
    id: String,
    start: Chess,
    out: String,
    count: usize,
}

impl Lines {
    fn write(&mut self, moves: &[Move]) {
        let mut end = self.start.clone();
        for &mv in moves {
            end.play_unchecked(mv);
        }
        let fen = Fen::from_position(&self.start, EnPassantMode::Legal).to_string();
        let line = serde_json::json!({
            "id": self.id,
            "fen": fen,
            "line": line::sans(&self.start, moves),
            "mate": end.is_checkmate(),
        });
        self.out.push_str(&format!("{line}\n"));
        self.count += 1;
    }

    fn proof(&mut self, branch: &Branch, moves: &mut Vec<Move>) {
        moves.push(branch.mv);
        if branch.defences.is_empty() {
            self.write(moves);
        }
        for defence in &branch.defences {
            moves.push(defence.mv);
            for continuation in &defence.continuations {
                self.proof(continuation, moves);
            }
            moves.pop();
        }
        moves.pop();
    }

    fn tree(&mut self, tree: &GameTree, moves: &mut Vec<Move>) {
        for node in &tree.nodes {
            moves.push(node.mv);
            if node.next.nodes.is_empty() {
                self.write(moves);
            }
            self.tree(&node.next, moves);
            moves.pop();
        }
    }
}

#[test]
fn python_chess_agrees_with_every_san_of_the_demo() {
    let mut all = String::new();
    let mut count = 0;
    for (file, text) in sealed_move_demo_data::POSITION_FILES {
        for entry in read_file(file, text.as_bytes()) {
            let entry = entry.expect("the demo's files are read");
            let mut lines = Lines {
                id: entry.id.clone(),
                start: entry.position.clone(),
                out: String::new(),
                count: 0,
            };
            if let Some(Stipulation::Mate(moves)) = entry.stipulation {
                let proof =
                    prove::mate(&entry.position, moves, &Budget::unlimited()).expect("unlimited");
                for key in &proof.solution.keys {
                    lines.proof(key, &mut Vec::new());
                }
            }
            for &best in &entry.best {
                lines.write(&[best]);
            }
            if let Some(tree) = &entry.variations {
                lines.tree(tree, &mut Vec::new());
            }
            assert!(lines.count >= 2, "{}", entry.id);
            count += lines.count;
            all.push_str(&lines.out);
        }
    }
    let said = python_script("demo_sans.py", &[], &all);
    let mut said: Vec<&str> = said.lines().collect();
    let last = said.pop().expect("a last line");
    assert!(
        said.is_empty(),
        "python-chess disagrees:\n{}",
        said.join("\n")
    );
    assert!(last.starts_with(&format!("{count} lines, ")), "{last}");
}
