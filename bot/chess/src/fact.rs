//! Facts: what is said of a reply, typed, and in no language.
//!
//! Each fact goes out as a JSON object with its name under `is` and its values beside it, and is put into
//! words by whoever shows it. The store keeps these objects, so a name or a value once given keeps its
//! meaning; [`VERSION`] tells a reader of old ones which they are.

// What a fact says stands beside its name; its values are named after what they are.
#![allow(missing_docs)]

use std::fmt;

use serde::{Deserialize, Deserializer, Serialize, Serializer, de};
use shakmaty::{Color, File, Role, Square};

/// The version of the facts below. It grows when one of them changes its meaning.
pub const VERSION: u32 = 1;

/// A kind of piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Piece {
    piece: Kind,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
enum Kind {
    Pawn,
    Knight,
    Bishop,
    Rook,
    Queen,
    King,
    /// Whichever it is.
    Any,
}

impl Piece {
    /// Whichever piece it is.
    pub const ANY: Self = Self { piece: Kind::Any };
}

impl From<Role> for Piece {
    fn from(role: Role) -> Self {
        let piece = match role {
            Role::Pawn => Kind::Pawn,
            Role::Knight => Kind::Knight,
            Role::Bishop => Kind::Bishop,
            Role::Rook => Kind::Rook,
            Role::Queen => Kind::Queen,
            Role::King => Kind::King,
        };
        Self { piece }
    }
}

impl From<Option<Role>> for Piece {
    fn from(role: Option<Role>) -> Self {
        role.map_or(Self::ANY, Self::from)
    }
}

/// White or Black.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Side {
    side: Which,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
enum Which {
    White,
    Black,
}

impl From<Color> for Side {
    fn from(color: Color) -> Self {
        Self {
            side: color.fold_wb(Which::White, Which::Black),
        }
    }
}

/// A square, in algebraic notation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct At(pub Square);

impl Serialize for At {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&self.0)
    }
}

impl<'de> Deserialize<'de> for At {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        text.parse().map(Self).map_err(de::Error::custom)
    }
}

/// A file, by its letter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OnFile(pub File);

impl Serialize for OnFile {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&self.0.char())
    }
}

/// A small number that may be written as a word.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Count {
    count: u32,
}

impl<N: Into<u32>> From<N> for Count {
    fn from(count: N) -> Self {
        Self {
            count: count.into(),
        }
    }
}

/// A number with decimals, such as points, a mean or seconds: counted as it is, and written to the hundredth.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Decimal {
    points: f64,
}

impl Decimal {
    /// So many, rounded to the hundredth.
    pub fn of(number: impl Into<f64>) -> Self {
        Self {
            points: (number.into() * 100.0).round() / 100.0,
        }
    }
}

impl<N: Into<f64>> From<N> for Decimal {
    fn from(number: N) -> Self {
        Self::of(number)
    }
}

/// What a position is worth, in hundredths of a pawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Centipawns {
    pub centipawns: i32,
}

/// Moves in SAN, numbered or not; shown with the reader's piece letters.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Line {
    line: String,
}

impl From<String> for Line {
    fn from(line: String) -> Self {
        Self { line }
    }
}

impl From<&str> for Line {
    fn from(line: &str) -> Self {
        line.to_owned().into()
    }
}

/// Words of a person, shown as they are.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Theirs {
    theirs: String,
}

impl From<String> for Theirs {
    fn from(theirs: String) -> Self {
        Self { theirs }
    }
}

impl fmt::Display for Theirs {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.theirs)
    }
}

impl From<&str> for Theirs {
    fn from(theirs: &str) -> Self {
        theirs.to_owned().into()
    }
}

/// Several things, all of them: "a, b and c".
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct And<T> {
    pub and: Vec<T>,
}

/// Several things, one of them: "a, b or c".
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Or<T> {
    pub or: Vec<T>,
}

/// Several things in a row: "a, b, c".
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct List<T> {
    pub list: Vec<T>,
}

/// Statements that make one reason: "a, and b".
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Why {
    pub why: Vec<Because>,
}

impl Why {
    /// Whether there is nothing to say.
    pub fn is_empty(&self) -> bool {
        self.why.is_empty()
    }
}

impl From<Because> for Why {
    fn from(because: Because) -> Self {
        Self { why: vec![because] }
    }
}

impl From<Vec<Because>> for Why {
    fn from(why: Vec<Because>) -> Self {
        Self { why }
    }
}

/// A number of things as a fact takes it.
pub fn number(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}

/// A fact for the log, as it is kept: people read it in their own language.
pub(crate) fn terse(fact: &impl Serialize, f: &mut fmt::Formatter<'_>) -> fmt::Result {
    f.write_str(&serde_json::to_string(fact).unwrap_or_default())
}

/// What the task asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Task {
    Mate,
    Win,
    Draw,
}

/// A side of the board to castle to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Wing {
    Short,
    Long,
}

/// One true statement about the board: why a move fails, or why it is none.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Because {
    // A mate that is prevented.
    /// It mates after all, too late; before that, what the defence does.
    MatesInTheEnd { why: Why, moves: Count },
    /// It mates after all, too late, and no more is known.
    MatesTooLate { moves: Count },
    /// The wrong move stalemates.
    Stalemate { side: Side },
    /// The defence is mate.
    MatesFirst { side: Side },
    /// The king takes, and nothing guards the square.
    KingTakes { what: Piece, on: At, mover: bool },
    /// A capture; `mover` where what is taken is the piece that just moved.
    Takes {
        by: Piece,
        what: Piece,
        on: At,
        mover: bool,
    },
    /// The queen is taken, and nothing is had for her.
    TakesForNothing {
        by: Piece,
        what: Piece,
        on: At,
        mover: bool,
    },
    /// Nothing takes back.
    TakesUnanswered {
        by: Piece,
        what: Piece,
        on: At,
        mover: bool,
    },
    /// What would take back is pinned.
    TakesPinned {
        by: Piece,
        what: Piece,
        on: At,
        mover: bool,
        pinned: Piece,
        stands: At,
    },
    /// The king would take back, and may not.
    TakesGuarded {
        by: Piece,
        what: Piece,
        on: At,
        mover: bool,
    },
    /// Taking back had to be mate at once, and is not.
    TakesNoMate {
        by: Piece,
        what: Piece,
        on: At,
        mover: bool,
    },
    /// Taking back does not mate in the moves that are left.
    TakesNoMateInTime {
        by: Piece,
        what: Piece,
        on: At,
        mover: bool,
    },
    /// The king goes where nothing guards.
    KingGetsOut { to: At },
    /// The piece that moved had guarded the square.
    KingGetsOutGuardMoved { to: At, guard: Piece },
    /// The piece that moved shuts the guard out.
    KingGetsOutGuardShut { to: At, guard: Piece, stands: At },
    /// The king castles out of it.
    KingCastlesOut,
    /// The defence gives check, as the first thing said of it.
    GivesCheck { side: Side },
    /// It gives check, too.
    ComesWithCheck,
    /// A piece steps between.
    StepsBetween { by: Piece, on: At },
    /// A piece steps between, and taking it is not mate.
    StepsBetweenNoMate { by: Piece, on: At },
    /// The wrong move threatens no mate.
    ThreatensNothing { side: Side },
    /// It threatens no mate in time.
    ThreatensNothingIn { side: Side, moves: Count },
    /// The square of the threatened mate is guarded now.
    NowGuards { by: Piece, square: At },
    /// The defence empties a square for the king.
    ClearsForKing { square: At },
    /// The king will have a square.
    KingWillHave { square: At },
    /// The line of the threat is shut.
    ShutsLine { by: Piece, on: At },
    /// The piece that threatens is pinned.
    PinsYour { what: Piece, on: At },
    /// The threat is met, in a way that may not be told.
    MeetsThreat,
    /// The same, where more than one move is left.
    MeetsThreatIn { moves: Count },
    /// The last move had to be mate, and is no check.
    NoCheck { side: Side },
    /// The back rank was attacked, and holds.
    BackRankAgain,
    /// The back rank holds.
    BackRankStays,

    // A win or a draw that is missed.
    /// The solver has too little left.
    YouCannotMate,
    /// A side has too little left.
    CannotMate { side: Side },
    /// A side mates in so many moves.
    MatesIn { side: Side, moves: Count },
    /// A side is stalemated.
    IsStalemated { side: Side },
    /// A side checks for ever.
    ChecksForEver { side: Side },
    /// The piece that moved is taken.
    TakesIt { by: Piece, what: Piece },
    /// A pawn is taken with check.
    TakesPawnWithCheck { by: Piece },
    /// What a side loses.
    Costs { side: Side, lost: And<Material> },
    /// What a side loses, and gets for it.
    CostsFor {
        side: Side,
        lost: And<Material>,
        won: And<Material>,
    },
    /// As much was taken on both sides.
    ExchangeIsEven,
    /// A side is behind, as it was.
    StillBehind { side: Side },
    /// Both have as much.
    MaterialLevel,
    /// A piece is lost after the answer.
    ThenFalls { what: Piece, on: At },
    /// Several pieces are attacked at once.
    AttacksAtOnce { targets: And<Target> },
    /// A pawn becomes something.
    PawnBecomes { piece: Piece },
    /// A side that checked has none left.
    NoMoreChecks { side: Side },
    /// The kings are opposed, and a side has to give way.
    KingsOpposed { side: Side },
    /// A piece leaves the attack.
    StepsOut { by: Piece },
    /// A piece leaves the attack and takes a pawn.
    TakesPawnAndStepsOut { by: Piece },
    /// What search thinks, where it is not sure.
    SearchStands {
        depth: u32,
        side: Side,
        value: Centipawns,
    },
    /// Search did not come deep.
    SearchShallow { depth: u32 },

    // A move that is none.
    /// The other side's move.
    TheirMove { theirs: Side, side: Side },
    /// It stands there already.
    StandsThere { piece: Piece, on: At },
    /// Its own side is in the way.
    OwnPieceThere { square: At, side: Side, own: Piece },
    /// Something stands between.
    InTheWay {
        stone: Piece,
        at: At,
        piece: Piece,
        from: At,
    },
    /// It does not go there.
    DoesNotReach { piece: Piece, from: At, to: At },
    /// None of that kind goes there.
    NoneReaches { piece: Piece, to: At },
    /// None of that kind can take such a piece.
    NoneTakes { piece: Piece, victim: Piece },
    /// No pawn can take on a file.
    NoPawnTakesOnFile { file: OnFile },
    /// No capture in passing.
    NoEnPassant,
    /// No promotion.
    NoPromotion,
    /// None of that kind can take there.
    NoneTakesThere { piece: Piece },
    /// The square is empty.
    NothingOn { square: At },
    /// What stands there is the other side's.
    NotYours {
        piece: Piece,
        on: At,
        theirs: Side,
        side: Side,
    },
    /// Another kind stands there.
    OtherKind { on: At, piece: Piece, named: Piece },
    /// A side has none of that kind.
    HasNone { side: Side, piece: Piece },
    /// None on a file.
    HasNoneOnFile {
        side: Side,
        piece: Piece,
        file: OnFile,
    },
    /// None on a rank.
    HasNoneOnRank { side: Side, piece: Piece, rank: u32 },
    /// Nothing more can be said.
    NotPossible,
    /// The king would step into a guard.
    SquareGuarded { piece: Piece, from: At, square: At },
    /// The king would be in check.
    KingInCheckOn { square: At },
    /// Only the king may move.
    DoubleCheck,
    /// A check is not met.
    InCheck { side: Side, piece: Piece, from: At },
    /// It is pinned.
    Pinned {
        piece: Piece,
        on: At,
        by: Piece,
        from: At,
    },
    /// No king can be promoted to.
    NoNewKing,
    /// Not on the last rank.
    NotLastRank { square: At },
    /// The king would be left in check.
    LeavesKingInCheck,
    /// A pawn of that file takes on the files beside it only.
    PawnTakesElsewhere { file: OnFile, to: At },
    /// Nothing is there to take.
    NothingToTake { to: At },
    /// No pawn of a file goes there.
    NoPawnOfFile { file: OnFile, to: At },
    /// A pawn is blocked.
    PawnBlocked { from: At, stone: Piece, at: At },
    /// No pawn goes there.
    NoPawnReaches { side: Side, to: At },
    /// Neither castling goes, each for a reason of its own.
    NeitherCastles { short: Why, long: Why },
    /// The right is lost, or was never there.
    MayNotCastle { side: Side, wing: Wing },
    /// Out of check.
    CastlingOutOfCheck,
    /// Something stands between.
    CastlingBlocked { stone: Piece, at: At },
    /// A square of the king's way is guarded.
    CastlingGuarded { square: At, piece: Piece, from: At },
    /// Nothing more can be said.
    CastlingNotPossible,
}

/// So many of a kind: "two pawns".
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "is", rename = "material")]
pub struct Material {
    pub piece: Piece,
    pub number: Count,
}

/// A piece that is attacked: "the queen on d1".
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "is", rename = "target")]
pub struct Target {
    pub piece: Piece,
    pub on: At,
}

/// One sentence to a member about their reply.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Remark {
    // Right.
    /// The move is mate.
    MoveMates { line: Line },
    /// The line is mate.
    LineMates { line: Line },
    /// The key, which is all that is asked.
    KeyIsEnough { line: Line, moves: Count },
    /// The key, but what was written after it is no mate.
    KeyButNoMate {
        line: Line,
        moves: Count,
        other: Line,
    },
    /// The line holds against all.
    LineHolds,
    /// The last move stalemates, and that draws.
    StalemateDraws { line: Line },
    /// The other side cannot mate any more.
    TooLittleLeft { line: Line, side: Side },
    /// The position has come again.
    ComesAgain { line: Line, task: Task },
    /// The line meets the task.
    LineDoes { line: Line, task: Task },
    /// Another move than the solution's does, too.
    DoesToo { line: Line, task: Task },
    /// By endgame tables.
    DoesTooByTables { line: Line, task: Task },
    /// By search.
    DoesTooBySearch { line: Line, task: Task, depth: u32 },

    // Right so far.
    /// As far as this.
    RightSoFar { line: Line },
    /// A defence was left out.
    RightBut { line: Line, answer: Line },
    /// The defence is played.
    RightAndAnswered {
        line: Line,
        side: Side,
        answer: Line,
    },
    /// Another defence than the one dealt with.
    RightAfter { line: Line, answer: Line },
    /// Only side lines came.
    SideLinesRight,
    /// The next move is wanted.
    GoOn,

    // Wrong.
    /// Several first moves were written.
    EachHasToHold,
    /// It mates too late.
    MatesLate {
        line: Line,
        left: Count,
        moves: Count,
    },
    /// It fails.
    Fails { line: Line },
    /// It fails, for a reason of its own.
    FailsBecause { line: Line, why: Why },
    /// One way to see that.
    ForExample { line: Line },
    /// The answer.
    Answers { side: Side, line: Line },
    /// The answer, and what it does.
    AnswersBecause { side: Side, line: Line, why: Why },
    /// It does not meet the task.
    DoesNot { line: Line, task: Task },
    /// It does not meet the task, for a reason of its own.
    DoesNotBecause { line: Line, task: Task, why: Why },
    /// On what that rests.
    ByTables { task: Task },
    /// On what that rests.
    BySearch { depth: u32 },

    // Of the coach.
    /// The coach's own variation for a wrong move.
    CoachShows { line: Line },
    /// The same, with the program's reason where the coach has no words.
    CoachShowsBecause { line: Line, why: Why },
    /// The coach's words on a move.
    CoachOnMove { line: Line, words: Theirs },

    // Left open.
    /// Whether a move meets the task is not certain.
    NotCertain { line: Line, task: Task },
    /// There was no time to find out.
    NotSettled { line: Line },
    /// A question, no answer.
    TakenAsQuestion,
    /// A thought, no answer.
    TakenAsThought,
    /// No move is claimed.
    NothingClaimed,
    /// What to do: write a move.
    WriteYourMove,
    /// What to do: send this.
    SendJustThat { reading: String },
    /// What to do: send one of these.
    SendOneOf { readings: Or<String> },
    /// It can be taken in several ways, which are not told.
    SeveralWays,
    /// It can be taken in these ways.
    SeveralWaysOf { readings: Or<String> },

    // Not read.
    /// Too long.
    TooLong { most: u32 },
    /// Longer than any solution; so many characters of it are kept.
    LongerThanAnySolution { most: u32 },
    /// It names no move.
    NoMove,
    /// How far it could be followed.
    Followed { line: Line },
    /// It is not possible.
    Impossible { written: Theirs },
    /// It is not possible, because.
    ImpossibleBecause { written: Theirs, why: Why },
    /// What would be possible.
    PossibleThere { moves: List<Line> },
    /// It could be more than one move.
    Ambiguous { written: Theirs, moves: Or<Line> },
    /// It could be more than two moves.
    AmbiguousAmong { written: Theirs, moves: List<Line> },
    /// It could not be read.
    Garbled { written: Theirs },
}

/// One sentence of a hint.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Hint {
    /// The only one of its kind.
    LookAt {
        piece: Piece,
    },
    /// One of several.
    LookAtOn {
        piece: Piece,
        on: At,
    },
    CheckGivesUp,
    CheckCaptures,
    CheckPlain,
    QuietGivesUp,
    CaptureNoCheck,
    QuietMove,
    /// Squares it takes from the king.
    TakesFlights {
        squares: And<At>,
    },
    /// The pattern at the end.
    PictureAtTheEnd {
        pattern: Pattern,
    },
    /// The move itself, the first one.
    FirstMoveIs {
        line: Line,
    },
    /// The move itself, a later one.
    NextMoveIs {
        line: Line,
    },
}

/// A mating pattern, by its name.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Pattern {
    pub pattern: String,
}
