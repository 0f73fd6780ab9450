//! The colours of each board style.
//!
//! One family runs through all of them: the violet of old ink and the red of sealing wax on paper.
//! Every mark has a core and a clear casing, so that whichever shade it crosses, one of the two
//! stands out by at least 3:1 (WCAG 2.2, 1.4.11 non-text contrast); the tests of this module compute
//! it, and for the common colour-vision deficiencies too.

use shakmaty::Color;

use super::Style;
use super::pieces::Coat;

/// The colours of a style.
#[derive(Clone, Copy, Debug)]
pub(super) struct Palette {
    /// Around the board.
    pub page: &'static str,
    /// Words and coordinates.
    pub ink: &'static str,
    /// Frame of the board.
    pub frame: &'static str,
    /// Light squares.
    pub light: &'static str,
    /// Dark squares, under their hatching.
    pub dark: &'static str,
    /// Hatching of the dark squares.
    pub hatch: &'static str,
    /// White pieces.
    pub white: Coat,
    /// Black pieces.
    pub black: Coat,
    /// Last move.
    pub last: &'static str,
    /// Refutation.
    pub refutation: &'static str,
    /// Moves of a line.
    pub step: &'static str,
    /// Open flights.
    pub open: &'static str,
    /// Guards and the flights they take.
    pub guard: &'static str,
    /// Blocked flights.
    pub blocked: &'static str,
    /// A square to look at.
    pub spot: &'static str,
    /// Clear edge around every mark.
    pub casing: &'static str,
}

impl Palette {
    pub(super) fn coat(&self, color: Color) -> Coat {
        match color {
            Color::White => self.white,
            Color::Black => self.black,
        }
    }
}

const PRINT: Palette = Palette {
    page: "#ffffff",
    ink: "#111111",
    frame: "#111111",
    light: "#ffffff",
    dark: "#ffffff",
    hatch: "#555555",
    white: Coat {
        body: "#ffffff",
        edge: "#111111",
        line: "#111111",
        halo: "#ffffff",
    },
    black: Coat {
        body: "#111111",
        edge: "#111111",
        line: "#ffffff",
        halo: "#ffffff",
    },
    last: "#3d3d3d",
    refutation: "#a8202c",
    step: "#1f3f7a",
    open: "#00605c",
    guard: "#5a2d7a",
    blocked: "#3d3d3d",
    spot: "#7a4a00",
    casing: "#ffffff",
};

const LIGHT: Palette = Palette {
    page: "#fcf9fc",
    ink: "#2a1c30",
    frame: "#4b3a52",
    light: "#faf5f9",
    dark: "#dccbdd",
    hatch: "#c9b3cc",
    white: Coat {
        body: "#ffffff",
        edge: "#2a1c30",
        line: "#2a1c30",
        halo: "",
    },
    black: Coat {
        body: "#2a1c30",
        edge: "#2a1c30",
        line: "#fdf6fb",
        halo: "",
    },
    last: "#5b3f66",
    refutation: "#a8202c",
    step: "#1f3f7a",
    open: "#00605c",
    guard: "#5a2d7a",
    blocked: "#4b3a52",
    spot: "#7a4a00",
    casing: "#ffffff",
};

const DARK: Palette = Palette {
    page: "#1c1520",
    ink: "#e9dfec",
    frame: "#8d7a95",
    light: "#5d4a63",
    dark: "#43334a",
    hatch: "#372a3d",
    white: Coat {
        body: "#f6eef6",
        edge: "#f6eef6",
        line: "#1c1520",
        halo: "",
    },
    black: Coat {
        body: "#17101b",
        edge: "#d9c6de",
        line: "#d9c6de",
        halo: "",
    },
    last: "#d3bfdb",
    refutation: "#ff9d8c",
    step: "#a9c8ff",
    open: "#79e0d2",
    guard: "#d9b3ff",
    blocked: "#e6d9ea",
    spot: "#ffcf70",
    casing: "#17101b",
};

const CONTRAST: Palette = Palette {
    page: "#ffffff",
    ink: "#000000",
    frame: "#000000",
    light: "#ffffff",
    dark: "#9082a8",
    hatch: "#9082a8",
    white: Coat {
        body: "#ffffff",
        edge: "#000000",
        line: "#000000",
        halo: "",
    },
    black: Coat {
        body: "#000000",
        edge: "#000000",
        line: "#ffffff",
        halo: "#ffffff",
    },
    last: "#000000",
    refutation: "#8a0012",
    step: "#001f66",
    open: "#003b36",
    guard: "#3f0a5c",
    blocked: "#000000",
    spot: "#4a2a00",
    casing: "#ffffff",
};

/// The palette of a style.
pub(super) fn of(style: Style) -> &'static Palette {
    match style {
        Style::Print => &PRINT,
        Style::Light => &LIGHT,
        Style::Dark => &DARK,
        Style::Contrast => &CONTRAST,
    }
}
