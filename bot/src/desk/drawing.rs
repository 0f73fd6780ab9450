//! Boards drawn in the group's style, in somebody's language, off the async threads.

use shakmaty::{Chess, Position as _};

use super::{
    Desk, Picture, Settings,
    error::{Done, bad_request},
    problems::Posed,
    refusal::Refusal,
    text,
};
use crate::chess::{self, line::moves};
use crate::diagram::{Diagram, Tongue, reveal::landing};

impl Desk {
    /// Draws a diagram off the async threads; `language` is that of its legend.
    pub(super) async fn draw(&self, diagram: Diagram, language: &str) -> Done<Picture> {
        let tongue = self.tongue(language);
        Ok(self
            .inner
            .quick
            .run("drawing a diagram", 10.0, move |_| diagram.png(&tongue))
            .await??)
    }

    /// Draws a board without marks in the group's style.
    pub(super) async fn draw_plain(&self, board: Chess, settings: &Settings) -> Done<Picture> {
        self.draw(diagram(board, settings), settings.language.tag())
            .await
    }

    /// Draws the position of a card's example in the group's style; `language` is that of its words.
    pub(super) async fn draw_card(
        &self,
        board: Chess,
        settings: &Settings,
        language: &str,
    ) -> Done<Picture> {
        self.draw(diagram(board, settings), language).await
    }

    /// How a language says what stands in pictures.
    pub(super) fn tongue(&self, language: &str) -> Tongue {
        Tongue::new(language, self.inner.options.pictures)
    }
}

/// The board of a FEN, where it can be set up.
pub(super) fn board_of(fen: &str) -> Option<Chess> {
    chess::parse_fen(fen).ok().map(|read| read.position)
}

/// The diagram of a post in the group's style.
fn diagram(board: Chess, settings: &Settings) -> Diagram {
    Diagram {
        style: settings.style,
        ..Diagram::of(board)
    }
}

/// The board after a line from a position.
pub(super) fn board(posed: &Posed, line: &[String], settings: &Settings) -> Done<Diagram> {
    let mut board = posed.board.clone();
    let bottom = board.turn();
    let played = moves(&board, line);
    if let Some(san) = line.get(played.len()) {
        return bad_request(Refusal::LineFails {
            at: text::name(san).into(),
        });
    }
    let last_move = played
        .last()
        .and_then(|&mv| Some((mv.from()?, landing(mv))));
    for mv in played {
        board.play_unchecked(mv);
    }
    let mut diagram = diagram(board, settings);
    diagram.bottom = bottom;
    diagram.last_move = last_move;
    Ok(diagram)
}
