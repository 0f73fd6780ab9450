//! The looks of a board.

/// Look of the board.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize,
)]
#[serde(rename_all = "lowercase")]
pub enum Style {
    /// A printed page: white, with fine hatching for the dark squares.
    #[default]
    Print,
    /// A calm tint for light screens.
    Light,
    /// A calm tint for dark screens.
    Dark,
    /// High contrast.
    Contrast,
}

impl Style {
    /// Every style.
    pub const ALL: [Self; 4] = [Self::Print, Self::Light, Self::Dark, Self::Contrast];
}
