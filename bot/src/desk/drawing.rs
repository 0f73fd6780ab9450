//! Boards drawn in the group's style, in somebody's language, off the async threads.

use shakmaty::{Chess, Position as _};

use super::{
    Desk, DeskError, Picture, Settings,
    error::{Done, bad_request},
    problems::Posed,
    refusal::Refusal,
    text,
};
use crate::chess::{self, line::moves};
use crate::diagram::{Diagram, Style, Tongue, reveal::landing};

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

    /// Draws the board after a line from a position, in the group's style.
    ///
    /// # Errors
    /// When the line cannot be played there.
    pub(super) async fn draw_after(
        &self,
        posed: &Posed,
        line: &[String],
        settings: &Settings,
        language: &str,
    ) -> Done<Picture> {
        let (start, line, style) = (posed.board.clone(), line.to_vec(), settings.style);
        let tongue = self.tongue(language);
        self.inner
            .quick
            .run("drawing a line's end", 10.0, move |_| {
                Ok(after(start, &line, style)?.png(&tongue)?)
            })
            .await?
    }

    /// The same, and nothing where the line cannot be played.
    pub(super) async fn draw_after_if_playable(
        &self,
        posed: &Posed,
        line: &[String],
        settings: &Settings,
        language: &str,
    ) -> Done<Option<Picture>> {
        match self.draw_after(posed, line, settings, language).await {
            Ok(picture) => Ok(Some(picture)),
            Err(DeskError::BadRequest(_)) => Ok(None),
            Err(error) => Err(error),
        }
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
    // A mate is looked at from the side of whoever gives it.
    let bottom = match board.is_checkmate() {
        true => !board.turn(),
        false => board.turn(),
    };
    Diagram {
        style: settings.style,
        bottom,
        ..Diagram::of(board)
    }
}

/// The board after a line from a position.
fn after(start: Chess, line: &[String], style: Style) -> Done<Diagram> {
    let played = moves(&start, line);
    if let Some(san) = line.get(played.len()) {
        return bad_request(Refusal::LineFails {
            at: text::name(san).into(),
        });
    }
    let last_move = played
        .last()
        .and_then(|&mv| Some((mv.from()?, landing(mv))));
    let bottom = start.turn();
    let mut board = start;
    for mv in played {
        board.play_unchecked(mv);
    }
    Ok(Diagram {
        style,
        bottom,
        last_move,
        ..Diagram::of(board)
    })
}
