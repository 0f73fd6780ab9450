//! Every pattern in order, with its title, its definition in our words, and where its name is from.
//!
//! Names and pictures are those of the literature, recalled from memory: Renaud and Kahn, *The Art of
//! the Checkmate*; Vuković, *The Art of Attack in Chess*. The sentences are ours, and so is the exact
//! border of each picture wherever the books show examples rather than draw one.

use super::{
    bishops,
    frame::{Frame, Symmetry},
    general, knights, lines, queens, rooks,
};

/// Where a name is from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Source {
    RenaudKahn,
    Vukovic,
    Trade,
}

/// A mating pattern.
struct Pattern {
    name: &'static str,
    title: &'static str,
    definition: &'static str,
    source: Source,
    symmetry: Symmetry,
    fits: fn(&Frame) -> bool,
    /// Patterns that are special cases of this one: where one of them fits, this one goes unsaid.
    special_cases: &'static [&'static str],
}

/// The most particular first.
static TABLE: &[Pattern] = &[
    Pattern {
        name: "arabian",
        title: "Arabian mate",
        definition: "A rook mates the king in the corner from the edge square next to him. A knight two squares off on the corner's diagonal holds the rook and takes the last flight.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: rooks::arabian,
        special_cases: &[],
    },
    Pattern {
        name: "anastasia",
        title: "Anastasia's mate",
        definition: "A rook or queen mates along the edge. On the next line one of the king's own men is in his way, and a knight, two squares beyond that man, takes the other squares of the line.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: rooks::anastasia,
        special_cases: &[],
    },
    Pattern {
        name: "hook",
        title: "Hook mate",
        definition: "A rook mates from the square next to the king. A knight beside the king holds the rook, a pawn holds the knight, and one of the king's own men blocks him.",
        source: Source::Vukovic,
        symmetry: Symmetry::Board,
        fits: rooks::hook,
        special_cases: &[],
    },
    Pattern {
        name: "vukovic",
        title: "Vuković's mate",
        definition: "The king is on the edge, the rook stands protected in front of him and mates, and the knight straight behind the rook takes the squares on both sides of the king.",
        source: Source::Vukovic,
        symmetry: Symmetry::Board,
        fits: rooks::vukovic,
        special_cases: &[],
    },
    Pattern {
        name: "boden",
        title: "Boden's mate",
        definition: "Two bishops mate on crossing diagonals: one checks, the other takes the flights that are left, and the king's own men block the rest.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: bishops::boden,
        special_cases: &[],
    },
    Pattern {
        name: "legal",
        title: "Legal's mate",
        definition: "Two knights and a bishop, all three needed and nobody else, mate a king who has hardly left home and is hemmed in by his own men.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: bishops::legal,
        special_cases: &[],
    },
    Pattern {
        name: "blackburne",
        title: "Blackburne's mate",
        definition: "A bishop mates from the square diagonally in front of the king, held there by a knight, while the other bishop rakes the squares beside it.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: bishops::blackburne,
        special_cases: &[],
    },
    Pattern {
        name: "reti",
        title: "Réti's mate",
        definition: "A bishop mates from the square next to the king, held by a rook or queen along its line, while four or more of the king's own men stand in his way.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: bishops::reti,
        special_cases: &[],
    },
    Pattern {
        name: "greco",
        title: "Greco's mate",
        definition: "A rook or queen mates the cornered king down the edge file. A bishop takes the square beside him on the first rank, and his own man blocks the square between.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: rooks::greco,
        special_cases: &[],
    },
    Pattern {
        name: "morphy",
        title: "Morphy's mate",
        definition: "A bishop mates the cornered king along the long diagonal. A rook takes the file beside him, and his own man stands in front of him.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: bishops::morphy,
        special_cases: &[],
    },
    Pattern {
        name: "pillsbury",
        title: "Pillsbury's mate",
        definition: "A rook mates down the file of the castled king, and a bishop takes the corner beside him, where his own man leaves no other way out.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: rooks::pillsbury,
        special_cases: &[],
    },
    Pattern {
        name: "opera",
        title: "Opera mate",
        definition: "A rook mates on the first rank from next to the king. A bishop holds it and on the same diagonal takes the square in front of the king; his own men do the rest.",
        source: Source::Trade,
        symmetry: Symmetry::Wings,
        fits: rooks::opera,
        special_cases: &[],
    },
    Pattern {
        name: "mayet",
        title: "Mayet's mate",
        definition: "A rook mates in the corner next to the castled king, held from afar by a bishop that also takes the square in front of him.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: rooks::mayet,
        special_cases: &[],
    },
    Pattern {
        name: "anderssen",
        title: "Anderssen's mate",
        definition: "A rook or queen mates in the corner next to the castled king, held by a pawn or bishop that stands safely in front of him.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: rooks::anderssen,
        special_cases: &[],
    },
    Pattern {
        name: "blind-swine",
        title: "Blind swine mate",
        definition: "Two rooks on the second rank from the king's side of the board: one mates in front of the king, the other protects it.",
        source: Source::Trade,
        symmetry: Symmetry::Wings,
        fits: lines::blind_swine,
        special_cases: &[],
    },
    Pattern {
        name: "smothered",
        title: "Smothered mate",
        definition: "A knight mates a king who cannot move at all, because his own men stand on every square around him.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: knights::smothered,
        special_cases: &[],
    },
    Pattern {
        name: "suffocation",
        title: "Suffocation mate",
        definition: "A knight mates the king on the edge, a bishop takes the flights his own men leave him, and they block the rest.",
        source: Source::Trade,
        symmetry: Symmetry::Board,
        fits: knights::suffocation,
        special_cases: &[],
    },
    Pattern {
        name: "corner",
        title: "Corner mate",
        definition: "A knight mates the king in the corner. A rook or queen takes the line beside him, and his own man blocks the other side.",
        source: Source::Trade,
        symmetry: Symmetry::Board,
        fits: knights::corner,
        special_cases: &[],
    },
    Pattern {
        name: "damiano",
        title: "Damiano's mate",
        definition: "The queen mates from diagonally in front of the king on his first rank, held by a pawn two squares straight ahead of him, which also takes the way out on the other side.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: queens::damiano,
        special_cases: &[],
    },
    Pattern {
        name: "lolli",
        title: "Lolli's mate",
        definition: "The queen breaks into the castled position and mates in front of the king, held by a pawn that has come as far as his third rank.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: queens::lolli,
        special_cases: &[],
    },
    Pattern {
        name: "max-lange",
        title: "Max Lange's mate",
        definition: "The king has stepped up beside the corner. The queen mates from behind him on his first rank, held by a bishop next to her that also takes the way out.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: queens::max_lange,
        special_cases: &[],
    },
    Pattern {
        name: "dovetail",
        title: "Dovetail mate",
        definition: "The queen mates from diagonally next to the king. The only two squares around him that she does not reach hold his own men. Also called Cozio's mate.",
        source: Source::Trade,
        symmetry: Symmetry::Board,
        fits: queens::dovetail,
        special_cases: &[],
    },
    Pattern {
        name: "swallow-tail",
        title: "Swallow's tail mate",
        definition: "The queen mates face to face with the king. The only two squares around him that she does not reach, behind him to the left and right, hold his own men. Also called the guéridon.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: queens::swallow_tail,
        special_cases: &[],
    },
    Pattern {
        name: "epaulette",
        title: "Epaulette mate",
        definition: "The king on the edge has his own men on both shoulders and is mated from straight in front by a queen or rook at a distance.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: lines::epaulette,
        special_cases: &[],
    },
    Pattern {
        name: "double-bishop",
        title: "Mate by two bishops",
        definition: "Two bishops mate side by side on parallel diagonals: one checks, the other takes the flight that is left, and the king's own men block the rest.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: bishops::double_bishop,
        special_cases: &[],
    },
    Pattern {
        name: "ladder",
        title: "Ladder mate",
        definition: "Two heavy pieces on neighbouring lines: one checks the king along the edge, the other takes the whole line next to it.",
        source: Source::Trade,
        symmetry: Symmetry::Board,
        fits: lines::ladder,
        special_cases: &[],
    },
    Pattern {
        name: "back-rank",
        title: "Back-rank mate",
        definition: "A rook or queen mates along the king's own first rank, because his own men in front of him leave him no way up: at most one of those squares is free of them, and that one is taken.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: lines::back_rank,
        special_cases: &[],
    },
    Pattern {
        name: "corridor",
        title: "Corridor mate",
        definition: "A rook or queen mates along a file or a rank that is not the king's first. On each side the edge or his own men close the corridor: at most one square of a side is free of them, and that one is taken.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: lines::corridor,
        special_cases: &["back-rank", "anastasia", "greco", "arabian"],
    },
    Pattern {
        name: "kiss",
        title: "Kiss of the queen",
        definition: "The queen mates from the square next to the king, protected by another piece.",
        source: Source::Trade,
        symmetry: Symmetry::Board,
        fits: queens::kiss,
        special_cases: &[
            "damiano",
            "lolli",
            "max-lange",
            "dovetail",
            "swallow-tail",
            "anderssen",
        ],
    },
    Pattern {
        name: "double-check",
        title: "Mate by double check",
        definition: "Two pieces give check at once, and the king, who alone could answer, has no square.",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: general::double_check,
        special_cases: &[],
    },
    Pattern {
        name: "pawn",
        title: "Mate by a pawn",
        definition: "The mating check comes from a pawn.",
        source: Source::Trade,
        symmetry: Symmetry::Board,
        fits: general::pawn,
        special_cases: &[],
    },
];

/// Names of the patterns that fit a mate, the most particular first. The mated king is Black's in `frame`.
pub(super) fn fitting(frame: &Frame) -> Vec<&'static str> {
    let wings = frame.views(Symmetry::Wings);
    let board = frame.views(Symmetry::Board);
    let fitting: Vec<&Pattern> = TABLE
        .iter()
        .filter(|pattern| {
            let views = match pattern.symmetry {
                Symmetry::Wings => &wings,
                Symmetry::Board => &board,
            };
            views.iter().any(pattern.fits)
        })
        .collect();
    let there = |name: &&str| fitting.iter().any(|pattern| pattern.name == *name);
    fitting
        .iter()
        .filter(|pattern| !pattern.special_cases.iter().any(there))
        .map(|pattern| pattern.name)
        .collect()
}

fn find(pattern: &str) -> Option<&'static Pattern> {
    TABLE.iter().find(|known| known.name == pattern)
}

/// Names of all patterns, the most particular first.
pub fn names() -> impl Iterator<Item = &'static str> {
    TABLE.iter().map(|pattern| pattern.name)
}

/// A pattern's title as printed over a diagram; the name itself when it is not one of [`names`].
///
/// ```
/// assert_eq!(sealed_move_chess::name::title("boden"), "Boden's mate");
/// ```
pub fn title(pattern: &str) -> &str {
    find(pattern).map_or(pattern, |known| known.title)
}

/// What makes a mate one of this pattern, in a sentence or two; empty when it is not one of [`names`].
pub fn definition(pattern: &str) -> &str {
    find(pattern).map_or("", |known| known.definition)
}

/// The literature a pattern's name is from, or `trade use`; empty when it is not one of [`names`].
pub fn source(pattern: &str) -> &str {
    find(pattern).map_or("", |known| match known.source {
        Source::RenaudKahn => "Renaud and Kahn, The Art of the Checkmate",
        Source::Vukovic => "Vuković, The Art of Attack in Chess",
        Source::Trade => "trade use",
    })
}

#[cfg(test)]
pub(super) fn turns_freely(pattern: &str) -> bool {
    find(pattern).is_some_and(|known| known.symmetry == Symmetry::Board)
}
