//! English descriptive notation: `Q-KR7ch`, `QxKBP`, `N-KB3`, `P-K4`, `KtxKtP`.
//!
//! A square is named for the piece that stands on its file at the start of the game, and its rank is
//! counted from the side of whoever moves. Source: the notation as printed in English books of the
//! first half of the twentieth century (common practice).

use shakmaty::{CastlingSide, File, Rank, Role, Square};

use super::notation::{EXACT, Ranks, SLOPPY, Shape, Target};
use super::scan::Scanner;

/// A name such as `K`, `QB` or `KRP`.
#[derive(Clone, Copy)]
struct Name {
    role: Role,
    side: Option<CastlingSide>,
    /// The pawn of the piece's file.
    pawn: bool,
    length: usize,
}

impl Name {
    /// The files it stands for; none for a pawn of any file.
    fn files(self) -> &'static [File] {
        use CastlingSide::{KingSide, QueenSide};
        match (self.role, self.side) {
            (Role::King, _) => &[File::E],
            (Role::Queen, _) => &[File::D],
            (Role::Rook, None) => &[File::A, File::H],
            (Role::Rook, Some(KingSide)) => &[File::H],
            (Role::Rook, Some(QueenSide)) => &[File::A],
            (Role::Knight, None) => &[File::B, File::G],
            (Role::Knight, Some(KingSide)) => &[File::G],
            (Role::Knight, Some(QueenSide)) => &[File::B],
            (Role::Bishop, None) => &[File::C, File::F],
            (Role::Bishop, Some(KingSide)) => &[File::F],
            (Role::Bishop, Some(QueenSide)) => &[File::C],
            (Role::Pawn, _) => &[],
        }
    }

    fn is_pawn(self) -> bool {
        self.pawn || self.role == Role::Pawn
    }
}

/// A square named so; two where the side is not said.
struct Place {
    files: &'static [File],
    rank: Rank,
    length: usize,
}

impl Scanner<'_> {
    /// Adds what the text at `i` may mean in descriptive notation.
    pub(super) fn descriptive(&self, i: usize, found: &mut Vec<(Shape, usize)>) {
        for man in self.names(i) {
            let (origin, end) = self.origin(i + man.length);
            let (at, signed, takes) = self.signs(end);
            if !signed {
                continue;
            }
            let rank = if self.at(i).is_uppercase() {
                EXACT
            } else {
                SLOPPY
            };
            let shape = Shape {
                takes,
                ranks: Ranks::Mover,
                wing: if man.is_pawn() { None } else { man.side },
                from_rank: origin.as_ref().map(|place| place.rank),
                ..Shape::to(Some(man.role), Target::Last, rank)
            };
            let shape = match man.is_pawn() {
                true => Shape {
                    role: Some(Role::Pawn),
                    ..shape
                },
                false => shape,
            };
            let from: &[File] = match &origin {
                Some(place) => place.files,
                None if man.is_pawn() => man.files(),
                None => &[],
            };
            let from: Vec<Option<File>> = match from {
                [] => vec![None],
                files => files.iter().copied().map(Some).collect(),
            };
            for (to, end) in self.targets(at, takes) {
                for &from_file in &from {
                    self.promotions(
                        Shape {
                            from_file,
                            to,
                            ..shape
                        },
                        end,
                        found,
                    );
                }
            }
        }
    }

    /// Names that may stand at `i`. A small `b` is a file.
    fn names(&self, i: usize) -> Vec<Name> {
        let mut names = Vec::new();
        let mut add = |side: Option<CastlingSide>, at: usize| {
            let Some((role, length)) = self.piece(at) else {
                return;
            };
            let file = role == Role::Bishop && self.at(at) == 'b';
            let sided = matches!(role, Role::Rook | Role::Knight | Role::Bishop);
            if (side.is_some() && !sided) || (side.is_none() && file) {
                return;
            }
            let length = at + length - i;
            for pawn in [false, true] {
                if !pawn || (role != Role::Pawn && matches!(self.at(i + length), 'P' | 'p')) {
                    names.push(Name {
                        role,
                        side,
                        pawn,
                        length: length + usize::from(pawn),
                    });
                }
            }
        };
        add(None, i);
        match self.at(i) {
            'K' | 'k' => add(Some(CastlingSide::KingSide), i + 1),
            'Q' | 'q' => add(Some(CastlingSide::QueenSide), i + 1),
            _ => {}
        }
        names
    }

    fn piece(&self, i: usize) -> Option<(Role, usize)> {
        Some(match (self.at(i), self.at(i + 1)) {
            ('K' | 'k', 'T' | 't') => (Role::Knight, 2),
            ('K' | 'k', _) => (Role::King, 1),
            ('Q' | 'q', _) => (Role::Queen, 1),
            ('R' | 'r', _) => (Role::Rook, 1),
            ('B' | 'b', _) => (Role::Bishop, 1),
            ('N' | 'n', _) => (Role::Knight, 1),
            ('P' | 'p', _) => (Role::Pawn, 1),
            _ => return None,
        })
    }

    /// Squares that may stand at `i`.
    fn places(&self, i: usize) -> Vec<Place> {
        self.names(i)
            .into_iter()
            .filter(|name| !name.is_pawn())
            .filter_map(|name| {
                Some(Place {
                    files: name.files(),
                    rank: Rank::from_char(self.at(i + name.length))?,
                    length: name.length + 1,
                })
            })
            .collect()
    }

    /// The square that a piece at `i` is said to stand on, `(KB3)`, `/KB3` or `/3`, and where that ends.
    fn origin(&self, i: usize) -> (Option<Place>, usize) {
        let close = match self.at(i) {
            '(' => ')',
            '/' => '/',
            _ => return (None, i),
        };
        let place = self.places(i + 1).into_iter().next().or_else(|| {
            Some(Place {
                files: &[],
                rank: Rank::from_char(self.at(i + 1))?,
                length: 1,
            })
        });
        match place {
            Some(place) => {
                let end = i + 1 + place.length;
                match (close, self.at(end)) {
                    (')', ')') => (Some(place), end + 1),
                    ('/', _) => (Some(place), end),
                    _ => (None, i),
                }
            }
            None => (None, i),
        }
    }

    /// What a move may go to or take, and where its name ends.
    fn targets(&self, i: usize, takes: bool) -> Vec<(Target, usize)> {
        let mut targets = Vec::new();
        for place in self.places(i) {
            for &file in place.files {
                let to = Target::Square(Square::from_coords(file, place.rank));
                targets.push((to, i + place.length));
            }
        }
        for name in self.names(i).into_iter().filter(|_| takes) {
            let role = if name.is_pawn() {
                Role::Pawn
            } else {
                name.role
            };
            let end = i + name.length;
            let (stands, after) = self.origin(end);
            match stands {
                Some(place) if !place.files.is_empty() => {
                    for &file in place.files {
                        let to = Target::Square(Square::from_coords(file, place.rank));
                        targets.push((to, after));
                    }
                }
                _ => {
                    let to = match (name.pawn, name.side) {
                        (false, None) => Target::Man(role),
                        (true, _) => Target::ManOn(role, mask(name.files())),
                        (false, Some(side)) => Target::ManOn(role, half(side)),
                    };
                    targets.push((to, end));
                }
            }
        }
        targets
    }
}

fn mask(files: &[File]) -> u8 {
    files.iter().fold(0, |mask, file| mask | 1 << file.to_u32())
}

fn half(side: CastlingSide) -> u8 {
    match side {
        CastlingSide::KingSide => 0b1111_0000,
        CastlingSide::QueenSide => 0b0000_1111,
    }
}
