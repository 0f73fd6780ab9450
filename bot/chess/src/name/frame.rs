//! The surroundings of a mated king, turned so that a pattern needs to be written once only.
//!
//! In a [`Frame`] the mated king is always Black's and the eighth rank is always his own first rank;
//! a White king is turned over first. From there a pattern is looked at in a [`Symmetry`]: its mirror
//! image across the files, or all eight turnings of the board. Who guards what is settled on the board
//! as it stands and carried over, so that a pawn keeps the squares it really takes.

use shakmaty::{Bitboard, Board, Color, File, Rank, Role, Square};

/// A flight of the king with the enemy pieces that take it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Flight {
    /// The square: empty, or held by an enemy piece that could be captured.
    pub square: Square,
    /// The squares of its guards; empty when the king may go there.
    pub guards: Bitboard,
}

/// How a pattern may be turned and still be the same pattern.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Symmetry {
    /// As it is and mirrored from one wing to the other: the king's own first rank or a pawn matters.
    Wings,
    /// Turned and mirrored in every way: pieces only, on any edge.
    Board,
}

/// What stands around a king, and who takes his flights.
#[derive(Clone, Debug)]
pub(super) struct Frame {
    /// Every piece, the king in question Black.
    pub board: Board,
    /// The king's square.
    pub king: Square,
    /// The pieces that check him.
    pub checkers: Bitboard,
    /// His flights with their guards.
    pub flights: Vec<Flight>,
    /// Neighbouring squares held by his own pieces.
    pub blocked: Bitboard,
}

impl Frame {
    /// The surroundings of the king of `color`; `None` when there is no such king.
    ///
    /// The king himself does not shelter a square behind him (the rook's ray goes on through the
    /// king), and a pinned piece guards as well as a free one.
    pub fn of_king(board: &Board, color: Color) -> Option<Self> {
        let king = board.king_of(color)?;
        let beyond = board.occupied().without(king);
        let around = shakmaty::attacks::king_attacks(king);
        let blocked = around & board.by_color(color);
        let flights = (around & !blocked)
            .into_iter()
            .map(|square| Flight {
                square,
                guards: board.attacks_to(square, !color, beyond),
            })
            .collect();
        Some(Self {
            board: board.clone(),
            king,
            checkers: board.attacks_to(king, !color, board.occupied()),
            flights,
            blocked,
        })
    }

    /// The same surroundings with the king turned into Black's.
    pub fn as_black(&self, color: Color) -> Self {
        match color {
            Color::Black => self.clone(),
            Color::White => {
                let mut turned = self.turned(Turn::UpsideDown);
                turned.board.swap_colors();
                turned
            }
        }
    }

    /// The views in which a pattern of this symmetry is to be looked for.
    pub fn views(&self, symmetry: Symmetry) -> Vec<Self> {
        let mut views = vec![self.clone(), self.turned(Turn::Wings)];
        if symmetry == Symmetry::Board {
            // The four mirror images, then the same four on the other pair of edges.
            for turn in [Turn::UpsideDown, Turn::Diagonal] {
                let more: Vec<_> = views.iter().map(|view| view.turned(turn)).collect();
                views.extend(more);
            }
        }
        views
    }

    fn turned(&self, turn: Turn) -> Self {
        let mut board = self.board.clone();
        match turn {
            Turn::UpsideDown => board.flip_vertical(),
            Turn::Wings => board.flip_horizontal(),
            Turn::Diagonal => board.flip_diagonal(),
        }
        Self {
            board,
            king: turn.square(self.king),
            checkers: turn.squares(self.checkers),
            flights: self
                .flights
                .iter()
                .map(|flight| Flight {
                    square: turn.square(flight.square),
                    guards: turn.squares(flight.guards),
                })
                .collect(),
            blocked: turn.squares(self.blocked),
        }
    }
}

#[derive(Clone, Copy)]
enum Turn {
    UpsideDown,
    Wings,
    Diagonal,
}

impl Turn {
    fn square(self, square: Square) -> Square {
        match self {
            Self::UpsideDown => square.flip_vertical(),
            Self::Wings => square.flip_horizontal(),
            Self::Diagonal => square.flip_diagonal(),
        }
    }

    fn squares(self, squares: Bitboard) -> Bitboard {
        squares.into_iter().map(|s| self.square(s)).collect()
    }
}

/// Words for patterns. Offsets count from the king: files to the right, then ranks upwards, so that
/// `(0, -1)` is the square in front of a king on his own first rank.
impl Frame {
    /// The square at an offset from the king; `None` beyond the edge.
    pub fn at(&self, files: i32, ranks: i32) -> Option<Square> {
        let file = self.king.file().offset(files)?;
        let rank = self.king.rank().offset(ranks)?;
        Some(Square::from_coords(file, rank))
    }

    /// The offset of a square from the king.
    pub fn offset(&self, square: Square) -> (i32, i32) {
        let (file, rank) = square.coords();
        let (king_file, king_rank) = self.king.coords();
        (
            file.to_u32() as i32 - king_file.to_u32() as i32,
            rank.to_u32() as i32 - king_rank.to_u32() as i32,
        )
    }

    /// The only checking piece, with its square; `None` in a double check.
    pub fn checker(&self) -> Option<(Square, Role)> {
        let square = self.checkers.single_square()?;
        Some((square, self.board.role_at(square)?))
    }

    /// The only checking piece when it is a rook or a queen.
    pub fn heavy_checker(&self) -> Option<Square> {
        self.checker()
            .filter(|(_, role)| matches!(role, Role::Rook | Role::Queen))
            .map(|(square, _)| square)
    }

    /// The only checking piece when it is of this role.
    pub fn checker_of(&self, role: Role) -> Option<Square> {
        self.checker()
            .filter(|(_, checker)| *checker == role)
            .map(|(square, _)| square)
    }

    /// Whether the mating side has a piece of this role at an offset.
    pub fn has(&self, role: Role, files: i32, ranks: i32) -> bool {
        self.at(files, ranks)
            .is_some_and(|square| self.mating(role).contains(square))
    }

    /// The mating side's pieces of a role.
    pub fn mating(&self, role: Role) -> Bitboard {
        self.board.white() & self.board.by_role(role)
    }

    /// The mating side's rooks and queens.
    pub fn heavy(&self) -> Bitboard {
        self.mating(Role::Rook) | self.mating(Role::Queen)
    }

    /// Whether the king's own piece stands at an offset.
    pub fn own(&self, files: i32, ranks: i32) -> bool {
        self.at(files, ranks)
            .is_some_and(|square| self.blocked.contains(square))
    }

    /// The guards of the flight at an offset; none when that is no flight.
    pub fn guards(&self, files: i32, ranks: i32) -> Bitboard {
        self.at(files, ranks)
            .map_or(Bitboard::EMPTY, |square| self.guards_of(square))
    }

    /// The guards of a flight; none when the square is no flight.
    pub fn guards_of(&self, square: Square) -> Bitboard {
        self.flights
            .iter()
            .find(|flight| flight.square == square)
            .map_or(Bitboard::EMPTY, |flight| flight.guards)
    }

    /// Whether the square at an offset is a flight.
    pub fn flight(&self, files: i32, ranks: i32) -> bool {
        self.at(files, ranks)
            .is_some_and(|square| self.flights.iter().any(|flight| flight.square == square))
    }

    /// Whether the flight at an offset is taken by one of `pieces`.
    pub fn taken(&self, files: i32, ranks: i32, pieces: Bitboard) -> bool {
        self.guards(files, ranks).intersects(pieces)
    }

    /// Whether every flight is taken by one of `pieces`, whoever else takes it too.
    pub fn all_taken(&self, pieces: Bitboard) -> bool {
        self.flights
            .iter()
            .all(|flight| flight.guards.intersects(pieces))
    }

    /// Whether the piece takes at least one flight.
    pub fn takes_one(&self, piece: Square) -> bool {
        self.flights
            .iter()
            .any(|flight| flight.guards.contains(piece))
    }

    /// Of a row of neighbours, how many are on the board and how many of those are the king's own pieces.
    pub fn row(&self, offsets: [(i32, i32); 3]) -> (usize, usize) {
        let there = offsets
            .into_iter()
            .filter(|&(files, ranks)| self.at(files, ranks).is_some());
        let (mut squares, mut own) = (0, 0);
        for (files, ranks) in there {
            squares += 1;
            own += usize::from(self.own(files, ranks));
        }
        (squares, own)
    }

    /// Whether the king stands on the eighth rank of the frame.
    pub fn on_top_edge(&self) -> bool {
        self.king.rank() == Rank::Eighth
    }

    /// Whether the king stands in the corner h8 of the frame.
    pub fn in_corner(&self) -> bool {
        self.king == Square::H8
    }

    /// Whether the king stands on the h-file of the frame.
    pub fn on_right_edge(&self) -> bool {
        self.king.file() == File::H
    }

    /// Whether the king stands in any corner.
    pub fn in_any_corner(&self) -> bool {
        Bitboard::CORNERS.contains(self.king)
    }
}
