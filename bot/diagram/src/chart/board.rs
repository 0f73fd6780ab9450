//! The commonest wrong moves on their board: an arrow each, numbered by how often they were chosen,
//! and a list under it.

use shakmaty::{Chess, Color};

use super::super::canvas::{Canvas, Hand, Paint};
use super::super::text::{Text, Tongue, number};
use super::super::{Style, board::Diagram};
use super::super::{figurine, palette};
use super::WrongMove;
use super::frame::{MARGIN, SIZE, Theme, WIDTH, nothing, page};
use sealed_move_chess::scene::SceneMark;

/// The most moves shown.
pub(super) const MOST: usize = 4;

const ROW: f32 = 46.0;

pub(super) fn wrong_moves(
    title: &str,
    position: &Chess,
    bottom: Color,
    moves: &[WrongMove],
    theme: Theme,
    tongue: &Tongue,
) -> Canvas {
    let inks = theme.inks();
    if moves.is_empty() {
        return nothing(title, &inks, tongue);
    }
    let mut diagram = Diagram::of(position.clone());
    diagram.bottom = bottom;
    diagram.size = (WIDTH - 2.0 * MARGIN) as u32;
    diagram.style = match theme {
        Theme::Light => Style::Light,
        Theme::Dark => Style::Dark,
    };
    diagram.marks = moves
        .iter()
        .zip(1..)
        .map(|(m, number)| SceneMark::Step(m.from, m.to, number))
        .collect();
    let layout = diagram.layout();
    let palette = palette::of(diagram.style);
    let list = moves.len() as f32 * ROW + 20.0;
    let (mut canvas, head) = page(title, layout.height + 14.0 + list, &inks);
    let below = head + layout.height + 14.0;
    canvas.placed(MARGIN, head, 1.0, |canvas| {
        diagram.draw(canvas, &layout, palette);
    });
    let most = moves.iter().map(|m| m.count).max().unwrap_or(1).max(1);
    let hand = Hand::new(SIZE, inks.ink);
    let (from, to) = (MARGIN + 190.0, WIDTH - MARGIN - 150.0);
    for (i, wrong) in moves.iter().enumerate() {
        let y = below + i as f32 * ROW + 30.0;
        canvas.circle(MARGIN + 15.0, y - 8.0, 15.0, Paint::fill(palette.step));
        canvas.text(
            &(i + 1).to_string(),
            MARGIN + 15.0,
            y - 1.0,
            Hand::new(21.0, palette.casing).bold().middle(),
        );
        figurine::set(&mut canvas, &wrong.san, (MARGIN + 44.0, y), hand, palette);
        let wide = (to - from) * wrong.count as f32 / most as f32;
        canvas.rect(from, y - 17.0, wide, 18.0, Paint::fill(inks.strong));
        let words = tongue.say(&Text::ChartMembers {
            number: number(wrong.count),
        });
        canvas.text(&words, WIDTH - MARGIN, y, hand.end());
    }
    canvas
}

pub(super) fn wrong(wrong: &WrongMove) -> Text {
    Text::AltWrong {
        line: wrong.san.as_str().into(),
        number: number(wrong.count),
    }
}
