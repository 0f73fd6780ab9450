//! Annotation glyphs as printed chess shows them.

/// The sign of a numeric annotation glyph, where the printed trade has one.
///
/// Numbers: PGN standard, section 10, and its common continuation to 146. Signs: those of the Chess
/// Informant's code system, from memory.
pub fn sign(nag: u8) -> Option<&'static str> {
    Some(match nag {
        1 => "!",
        2 => "?",
        3 => "!!",
        4 => "??",
        5 => "!?",
        6 => "?!",
        7 | 8 => "□",
        10..=12 => "=",
        13 => "∞",
        14 => "⩲",
        15 => "⩱",
        16 => "±",
        17 => "∓",
        18 | 20 => "+-",
        19 | 21 => "-+",
        22 | 23 => "⨀",
        32 | 33 => "⟳",
        36 | 37 => "↑",
        40 | 41 => "→",
        44 | 45 => "=∞",
        132 | 133 => "⇆",
        140 => "∆",
        146 => "N",
        _ => return None,
    })
}

/// Whether the sign stands right behind its move, rather than after a space.
pub(super) fn on_the_move(nag: u8) -> bool {
    matches!(nag, 1..=8)
}
