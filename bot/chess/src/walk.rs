//! A line with its side lines, to be stepped through move by move: made of what was shown of it, which is notes
//! ([`Note`]) and numbered lines.

use serde::{Deserialize, Serialize};
use shakmaty::{Chess, Color, Move, Position, Role, san::SanPlus};

use crate::{
    comments::Note,
    fact::{At, Piece, Side},
};

/// The most places of a walk; what goes beyond is left out.
pub const MOST: usize = 600;

/// A line with its side lines.
#[derive(Clone, Debug)]
pub struct Walk {
    places: Vec<WalkPlace>,
}

/// A position in it, with the move that leads there.
#[derive(Clone, Debug)]
pub struct WalkPlace {
    /// The place before; none at the start, which is place 0.
    pub before: Option<usize>,
    /// The places after, the main move first.
    pub next: Vec<usize>,
    /// The position.
    pub position: Chess,
    /// The move that leads here.
    pub mv: Option<Move>,
    /// The same as it is printed: numbered, in SAN, with the coach's signs, such as `3...Rxd8!`. Empty at the start.
    pub written: String,
    /// The coach's words before the move; may be empty.
    pub words_before: String,
    /// The coach's words behind the move; may be empty.
    pub words_after: String,
    /// Its number, and whose move it is, as lines here count.
    ply: Ply,
}

/// Where a move stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Ply {
    number: u32,
    turn: Color,
}

impl Ply {
    fn next(self) -> Self {
        Self {
            number: self.number + u32::from(self.turn.is_black()),
            turn: !self.turn,
        }
    }
}

/// A move in words, a fact each.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Moved {
    /// A piece goes from one square to another.
    PieceGoes {
        /// Whose.
        side: Side,
        /// Which.
        piece: Piece,
        /// From there.
        from: At,
        /// To there.
        to: At,
    },
    /// A piece takes another.
    PieceTakes {
        /// Whose.
        side: Side,
        /// Which.
        piece: Piece,
        /// From there.
        from: At,
        /// To there.
        to: At,
        /// What stood there, or beside it where a pawn takes in passing.
        taken: Piece,
    },
    /// The king castles.
    KingCastles {
        /// Whose.
        side: Side,
        /// Whether on the king's side.
        short: bool,
    },
    /// The pawn becomes a piece.
    PawnPromotes {
        /// Which.
        piece: Piece,
    },
    /// It gives check.
    WalkCheck,
    /// It gives mate.
    WalkMate,
}

impl Walk {
    /// A walk that begins at `start`; its moves are numbered from `first` on.
    pub fn new(start: &Chess, first: u32) -> Self {
        let ply = Ply {
            number: first,
            turn: start.turn(),
        };
        Self {
            places: vec![WalkPlace {
                before: None,
                next: Vec::new(),
                position: start.clone(),
                mv: None,
                written: String::new(),
                words_before: String::new(),
                words_after: String::new(),
                // Of the move that comes next.
                ply,
            }],
        }
    }

    /// Every place; those before come first.
    pub fn places(&self) -> &[WalkPlace] {
        &self.places
    }

    /// The end of the main line from `at` on.
    pub fn end(&self, at: usize) -> usize {
        let mut at = at;
        while let Some(next) = self.places[at].next.first() {
            at = *next;
        }
        at
    }

    /// Begins to count anew at a place, as the solution of a stop does.
    pub fn count_from(&mut self, at: usize, first: u32) {
        self.places[at].ply.number = first;
    }

    /// Adds a coach's notes at a place. A move that cannot be played there ends them.
    ///
    /// ```
    /// use sealed_move_chess::{comments::Note, walk::Walk};
    /// use shakmaty::Chess;
    ///
    /// let note = |depth, begins, moves: &str| Note {
    ///     depth,
    ///     begins,
    ///     moves: moves.into(),
    ///     ..Note::default()
    /// };
    /// let mut walk = Walk::new(&Chess::default(), 1);
    /// let notes = [note(0, true, "1.e4!"), note(1, true, "1.d4 d5"), note(0, false, "1...e5")];
    /// walk.add_notes(0, &notes);
    /// let written = |at: usize| walk.places()[at].written.as_str();
    /// let first: Vec<&str> = walk.places()[0].next.iter().map(|at| written(*at)).collect();
    /// assert_eq!(first, ["1.e4!", "1.d4"]);
    /// assert_eq!(written(walk.end(0)), "1...e5");
    /// ```
    pub fn add_notes(&mut self, at: usize, notes: &[Note]) {
        // By depth: the last place of the line that is written there.
        let mut ends: Vec<usize> = Vec::new();
        for note in notes {
            let depth = usize::from(note.depth);
            let from = match (depth, note.begins) {
                (0, true) => Some(at),
                // A variation stands behind the move that it is instead of.
                (_, true) => depth
                    .checked_sub(1)
                    .and_then(|above| ends.get(above))
                    .and_then(|end| self.places[*end].before),
                (_, false) => ends.get(depth).copied(),
            };
            let Some(from) = from else { return };
            ends.truncate(depth);
            let Some(last) = self.play(from, &note.moves) else {
                return;
            };
            let first = self.first_after(from, last);
            put(&mut self.places[first].words_before, &note.before);
            put(&mut self.places[last].words_after, &note.after);
            ends.resize(depth, last);
            ends.push(last);
        }
    }

    /// Adds a numbered line such as `1.Rxd8+ Rxd8 2.Rxd8#` at a place, as far as it can be played.
    pub fn add_line(&mut self, at: usize, line: &str) {
        self.play(at, line);
    }

    /// Plays moves as they are printed; gives where they lead, or nothing where the first cannot be played or there
    /// is no room.
    fn play(&mut self, from: usize, moves: &str) -> Option<usize> {
        let mut at = from;
        for word in moves.split_whitespace() {
            let Some((san, signs)) = taken_apart(word) else {
                // A sign of its own, behind its move.
                if at != from && !self.places[at].written.ends_with(word) {
                    let written = &mut self.places[at].written;
                    written.push(' ');
                    written.push_str(word);
                }
                continue;
            };
            let Some(next) = self.step(at, san, signs) else {
                break;
            };
            at = next;
        }
        (at != from).then_some(at)
    }

    fn step(&mut self, at: usize, san: &str, signs: &str) -> Option<usize> {
        let from = &self.places[at];
        let mv = san
            .parse::<SanPlus>()
            .ok()?
            .san
            .to_move(&from.position)
            .ok()?;
        let known = from.next.iter().copied();
        if let Some(known) = known.into_iter().find(|to| self.places[*to].mv == Some(mv)) {
            return Some(known);
        }
        if self.places.len() >= MOST {
            return None;
        }
        let ply = from.ply;
        let mut position = from.position.clone();
        let san = SanPlus::from_move_and_play_unchecked(&mut position, mv);
        let dots = if ply.turn.is_white() { "." } else { "..." };
        let to = self.places.len();
        self.places.push(WalkPlace {
            before: Some(at),
            next: Vec::new(),
            position,
            mv: Some(mv),
            written: format!("{}{dots}{san}{signs}", ply.number),
            words_before: String::new(),
            words_after: String::new(),
            ply: ply.next(),
        });
        self.places[at].next.push(to);
        Some(to)
    }

    /// The first place behind `from` on the way to `last`.
    fn first_after(&self, from: usize, last: usize) -> usize {
        let mut at = last;
        while let Some(before) = self.places[at].before.filter(|before| *before != from) {
            at = before;
        }
        at
    }
}

impl WalkPlace {
    /// The move in words; nothing at the start.
    pub fn moved(&self, before: &Chess) -> Vec<Moved> {
        let Some(mv) = self.mv else {
            return Vec::new();
        };
        let side = Side::from(before.turn());
        let mut facts = vec![match (mv, mv.from()) {
            (Move::Castle { king, rook }, _) => Moved::KingCastles {
                side,
                short: rook > king,
            },
            (_, Some(from)) => {
                let (piece, from, to) = (Piece::from(mv.role()), At(from), At(mv.to()));
                match mv.capture() {
                    Some(taken) => Moved::PieceTakes {
                        side,
                        piece,
                        from,
                        to,
                        taken: taken.into(),
                    },
                    None => Moved::PieceGoes {
                        side,
                        piece,
                        from,
                        to,
                    },
                }
            }
            // No piece is dropped on the board in chess.
            (_, None) => return Vec::new(),
        }];
        let promoted: Option<Role> = mv.promotion();
        facts.extend(promoted.map(|role| Moved::PawnPromotes { piece: role.into() }));
        if self.position.is_checkmate() {
            facts.push(Moved::WalkMate);
        } else if self.position.is_check() {
            facts.push(Moved::WalkCheck);
        }
        facts
    }
}

/// Adds words to those that are there, once.
fn put(into: &mut String, words: &str) {
    if words.is_empty() || into.contains(words) {
        return;
    }
    if !into.is_empty() {
        into.push(' ');
    }
    into.push_str(words);
}

/// The move of a printed word such as `1...Rxd8!?`, and the signs behind it; nothing where it is no move.
fn taken_apart(word: &str) -> Option<(&str, &str)> {
    let numbered = word.trim_start_matches(|c: char| c.is_ascii_digit());
    let word = match numbered.starts_with('.') {
        true => numbered.trim_start_matches('.'),
        false => word,
    };
    let san = word.trim_end_matches(['!', '?', '□']);
    let is_move = san.starts_with(|c: char| c.is_ascii_alphabetic()) && san.len() > 1;
    is_move.then(|| (san, &word[san.len()..]))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        comments::shown,
        parse_fen,
        read::{GameTree, read_games},
    };

    fn game(text: &str) -> (Chess, GameTree) {
        let game = read_games("a.pgn", text.as_bytes())
            .remove(0)
            .expect("a game");
        (game.start, game.tree)
    }

    /// Every line of a tree as SAN, the main one first.
    fn lines(walk: &Walk, at: usize, so_far: &str, out: &mut Vec<String>) {
        let place = &walk.places()[at];
        let line = format!("{so_far} {}", place.written);
        if place.next.is_empty() {
            out.push(line.trim().to_owned());
        }
        for next in &place.next {
            lines(walk, *next, &line, out);
        }
    }

    const RICH: &str = r#"[FEN "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 20"]

1. Rxd8+ $1 { Either way. } ( 1. Rd7 $2 { gives it back } 1... Rxd7 ( 1... Rab8 $6 2. Rxd8+ $18 ) ( 1... h6 ) 2. h3 )
( { Or } 1. h3 $4 ) 1... Rxd8 2. Rxd8# { Mate. } ( { Not } 2. g3 ) *
"#;

    #[test]
    fn what_notes_hold_is_walked_as_it_was_written() {
        let (start, tree) = game(RICH);
        let (notes, cut) = shown(&start, &tree);
        assert!(!cut);
        let mut walk = Walk::new(&start, 20);
        walk.add_notes(0, &notes);
        let mut all = Vec::new();
        lines(&walk, 0, "", &mut all);
        assert_eq!(
            all,
            [
                "20.Rxd8+! 20...Rxd8 21.Rxd8#",
                "20.Rxd8+! 20...Rxd8 21.g3",
                "20.Rd7? 20...Rxd7 21.h3",
                "20.Rd7? 20...Rab8?! 21.Rxd8+ +-",
                "20.Rd7? 20...h6",
                "20.h3??",
            ]
        );
        let by = |written: &str| {
            let found = walk.places().iter().find(|place| place.written == written);
            found.expect(written).clone()
        };
        assert_eq!(by("20.Rxd8+!").words_after, "Either way.");
        assert_eq!(by("20.Rd7?").words_after, "gives it back");
        assert_eq!(by("20.h3??").words_before, "Or");
        assert_eq!(by("21.g3").words_before, "Not");
        assert_eq!(by("21.Rxd8#").words_after, "Mate.");
    }

    /// Whatever tree a game has, the walk of its notes has the same lines.
    #[test]
    fn nested_variations_keep_their_places() {
        for text in [
            "1. e4 (1. d4 d5 (1... Nf6 2. c4 (2. Nf3 g6) 2... e6) 2. c4) (1. c4) 1... e5 (1... c5 2. Nf3) 2. Nf3 *",
            "1. e4 e5 2. Nf3 Nc6 (2... d6 3. d4 (3. Bc4 Be7 (3... Bg4)) 3... exd4) (2... Nf6) 3. Bb5 a6 *",
        ] {
            let (start, tree) = game(text);
            let (notes, _) = shown(&start, &tree);
            let mut walk = Walk::new(&start, 1);
            walk.add_notes(0, &notes);
            fn same(walk: &Walk, at: usize, tree: &GameTree) {
                let place = &walk.places()[at];
                let moves: Vec<_> = place.next.iter().map(|to| walk.places()[*to].mv).collect();
                let wanted: Vec<_> = tree.nodes.iter().map(|node| Some(node.mv)).collect();
                assert_eq!(moves, wanted, "after {:?}", place.written);
                for (to, node) in place.next.iter().zip(&tree.nodes) {
                    same(walk, *to, &node.next);
                }
            }
            same(&walk, 0, &tree);
        }
    }

    #[test]
    fn lines_join_what_is_there_and_bad_moves_end_them() {
        let start = parse_fen("r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1")
            .expect("a position")
            .position;
        let mut walk = Walk::new(&start, 1);
        walk.add_line(0, "1.Rxd8+ Rxd8 2.Rxd8#");
        walk.add_line(0, "1.Rxd8+ Rxd8 2.h3 Qh1");
        walk.add_line(0, "1.Qa1");
        walk.add_line(0, "± nonsense 7 8. ...");
        let mut all = Vec::new();
        lines(&walk, 0, "", &mut all);
        assert_eq!(all, ["1.Rxd8+ 1...Rxd8 2.Rxd8#", "1.Rxd8+ 1...Rxd8 2.h3"]);
        assert_eq!(walk.places()[walk.end(0)].written, "2.Rxd8#");
        // No more than there is room for.
        let mut text = String::new();
        for n in 1..=400 {
            text.push_str(&format!("{n}.Kf1 Kf8 {n}.Kg1 Kg8 "));
        }
        walk.add_line(0, &text);
        assert_eq!(walk.places().len(), MOST);
    }

    #[test]
    fn a_move_is_told_by_piece_and_squares() {
        let told = |fen: &str, line: &str| {
            let start = parse_fen(fen).expect("a position").position;
            let mut walk = Walk::new(&start, 1);
            walk.add_line(0, line);
            let at = walk.end(0);
            let before = walk.places()[at].before.expect("a move");
            walk.places()[at].moved(&walk.places()[before].position)
        };
        let (d2, d8) = (At(shakmaty::Square::D2), At(shakmaty::Square::D8));
        let white = Side::from(Color::White);
        let rook = Piece::from(Role::Rook);
        let back_rank = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1";
        assert_eq!(
            told(back_rank, "1.Rxd8+"),
            [
                Moved::PieceTakes {
                    side: white,
                    piece: rook,
                    from: d2,
                    to: d8,
                    taken: rook
                },
                Moved::WalkCheck
            ]
        );
        assert_eq!(
            told(back_rank, "1.Rxd8+ Rxd8 2.Rxd8#").last(),
            Some(&Moved::WalkMate)
        );
        let castles = "r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1";
        for (line, short) in [("1.O-O", true), ("1.O-O-O", false)] {
            assert_eq!(
                told(castles, line),
                [Moved::KingCastles { side: white, short }],
                "{line}"
            );
        }
        let promotes = told("7k/P7/8/8/8/8/8/K7 w - - 0 1", "1.a8=N");
        let knight = Piece::from(Role::Knight);
        assert_eq!(
            promotes.last(),
            Some(&Moved::PawnPromotes { piece: knight })
        );
    }
}
