//! Every pattern in order, with its test and where its name is from. Its title and its definition are words,
//! and stand with those under its name.
//!
//! Names and pictures are those of the literature, recalled from memory: Renaud and Kahn, *The Art of
//! the Checkmate*; Vuković, *The Art of Attack in Chess*. The exact border of each picture is ours wherever
//! the books show examples rather than draw one.

use serde::Serialize;

use super::{
    bishops,
    frame::{Frame, Symmetry},
    general, knights, lines, queens, rooks,
};

/// Where a name and its picture are from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Source {
    /// Renaud and Kahn, *The Art of the Checkmate*.
    RenaudKahn,
    /// Vuković, *The Art of Attack in Chess*.
    Vukovic,
    /// What players and coaches say.
    Trade,
}

/// A mating pattern.
struct Pattern {
    name: &'static str,
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
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: rooks::arabian,
        special_cases: &[],
    },
    Pattern {
        name: "anastasia",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: rooks::anastasia,
        special_cases: &[],
    },
    Pattern {
        name: "hook",
        source: Source::Vukovic,
        symmetry: Symmetry::Board,
        fits: rooks::hook,
        special_cases: &[],
    },
    Pattern {
        name: "vukovic",
        source: Source::Vukovic,
        symmetry: Symmetry::Board,
        fits: rooks::vukovic,
        special_cases: &[],
    },
    Pattern {
        name: "boden",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: bishops::boden,
        special_cases: &[],
    },
    Pattern {
        name: "balestra",
        source: Source::Trade,
        symmetry: Symmetry::Board,
        fits: bishops::balestra,
        special_cases: &[],
    },
    Pattern {
        name: "legal",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: bishops::legal,
        special_cases: &[],
    },
    Pattern {
        name: "blackburne",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: bishops::blackburne,
        special_cases: &[],
    },
    Pattern {
        name: "reti",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: bishops::reti,
        special_cases: &[],
    },
    Pattern {
        name: "greco",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: rooks::greco,
        special_cases: &[],
    },
    Pattern {
        name: "morphy",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: bishops::morphy,
        special_cases: &[],
    },
    Pattern {
        name: "pillsbury",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: rooks::pillsbury,
        special_cases: &[],
    },
    Pattern {
        name: "opera",
        source: Source::Trade,
        symmetry: Symmetry::Wings,
        fits: rooks::opera,
        special_cases: &[],
    },
    Pattern {
        name: "mayet",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: rooks::mayet,
        special_cases: &[],
    },
    Pattern {
        name: "anderssen",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: rooks::anderssen,
        special_cases: &[],
    },
    Pattern {
        name: "blind-swine",
        source: Source::Trade,
        symmetry: Symmetry::Wings,
        fits: lines::blind_swine,
        special_cases: &[],
    },
    Pattern {
        name: "smothered",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: knights::smothered,
        special_cases: &[],
    },
    Pattern {
        name: "suffocation",
        source: Source::Trade,
        symmetry: Symmetry::Board,
        fits: knights::suffocation,
        special_cases: &[],
    },
    Pattern {
        name: "corner",
        source: Source::Trade,
        symmetry: Symmetry::Board,
        fits: knights::corner,
        special_cases: &[],
    },
    Pattern {
        name: "damiano",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: queens::damiano,
        special_cases: &[],
    },
    Pattern {
        name: "lolli",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: queens::lolli,
        special_cases: &[],
    },
    Pattern {
        name: "max-lange",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: queens::max_lange,
        special_cases: &[],
    },
    Pattern {
        name: "dovetail",
        source: Source::Trade,
        symmetry: Symmetry::Board,
        fits: queens::dovetail,
        special_cases: &[],
    },
    Pattern {
        name: "swallow-tail",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: queens::swallow_tail,
        special_cases: &[],
    },
    Pattern {
        name: "epaulette",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: lines::epaulette,
        special_cases: &[],
    },
    Pattern {
        name: "double-bishop",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: bishops::double_bishop,
        special_cases: &[],
    },
    Pattern {
        name: "ladder",
        source: Source::Trade,
        symmetry: Symmetry::Board,
        fits: lines::ladder,
        special_cases: &[],
    },
    Pattern {
        name: "back-rank",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Wings,
        fits: lines::back_rank,
        special_cases: &[],
    },
    Pattern {
        name: "corridor",
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: lines::corridor,
        special_cases: &["back-rank", "anastasia", "greco", "arabian"],
    },
    Pattern {
        name: "kiss",
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
        source: Source::RenaudKahn,
        symmetry: Symmetry::Board,
        fits: general::double_check,
        special_cases: &[],
    },
    Pattern {
        name: "pawn",
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

/// Where a pattern's name and picture are from; `None` when it is not one of [`names`].
pub fn source(pattern: &str) -> Option<Source> {
    find(pattern).map(|known| known.source)
}

#[cfg(test)]
pub(super) fn turns_freely(pattern: &str) -> bool {
    find(pattern).is_some_and(|known| known.symmetry == Symmetry::Board)
}
