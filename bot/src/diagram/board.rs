//! The diagram of a position.

use shakmaty::{Chess, Color, Square};

use super::{DiagramError, Picture};
use crate::chess::scene::{Scene, SceneMark};

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

/// A board to draw.
#[derive(Clone, Debug)]
pub struct Diagram {
    /// The position.
    pub position: Chess,
    /// Who sits at the bottom.
    pub bottom: Color,
    /// Look.
    pub style: Style,
    /// From and to of the last move.
    pub last_move: Option<(Square, Square)>,
    /// What is pointed out.
    pub marks: Vec<SceneMark>,
    /// Width of the board in pixels, 120 to 2,400.
    pub size: u32,
}

impl Diagram {
    /// The position as posted: the side to move at the bottom, no marks, 720 pixels.
    pub fn of(position: Chess) -> Self {
        use shakmaty::Position;
        let bottom = position.turn();
        Self {
            position,
            bottom,
            style: Style::default(),
            last_move: None,
            marks: Vec::new(),
            size: 720,
        }
    }

    /// A scene as seen from `bottom`.
    pub fn scene(scene: &Scene, bottom: Color) -> Self {
        Self {
            position: scene.position.clone(),
            bottom,
            style: Style::default(),
            last_move: scene.last_move,
            marks: scene.marks.clone(),
            size: 720,
        }
    }

    /// The diagram as a standalone SVG.
    pub fn svg(&self) -> String {
        todo!()
    }

    /// The diagram as PNG with its alt text.
    ///
    /// # Errors
    /// When the renderer refuses the size.
    pub fn png(&self) -> Result<Picture, DiagramError> {
        todo!()
    }

    /// Words from which the position and its marks can be set up without the picture.
    pub fn alt(&self) -> String {
        todo!()
    }
}
