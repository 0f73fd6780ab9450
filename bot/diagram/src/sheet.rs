//! Sheets for the classroom: six positions to a page with lines for the answers, the solutions on
//! the last pages.
//!
//! Each page is an SVG; [`Sheet::pdf`] binds them into one PDF, with words as words, so that they
//! can be found and read aloud.

use std::sync::{Arc, OnceLock};

use krilla::Document;
use krilla::geom::Size;
use krilla::metadata::Metadata;
use krilla::page::PageSettings;
use krilla_svg::{SurfaceExt, SvgSettings};
use resvg::usvg;
use shakmaty::{Chess, Color, Position};

use super::Style;
use super::board::{Diagram, placement};
use super::canvas::{Canvas, Hand, Paint, Words};
use super::palette::{self, Palette};
use super::text::{Alt, Text, Tongue};
use super::{DiagramError, figurine, lettering};

/// Size of the paper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Paper {
    #[default]
    A4,
    Letter,
}

impl Paper {
    /// Width and height in points.
    fn points(self) -> (f32, f32) {
        match self {
            Self::A4 => (595.0, 842.0),
            Self::Letter => (612.0, 792.0),
        }
    }
}

/// What stands in the field of an item.
#[derive(Clone, Debug)]
pub enum Shows {
    /// A position.
    Board(Chess),
    /// No position: the words take its place.
    Words,
}

/// One item of a sheet.
#[derive(Clone, Debug)]
pub struct Item {
    /// What stands in its field.
    pub shows: Shows,
    /// The task, such as "White mates in two".
    pub task: String,
    /// The coach's words with the position, set under its task as far as there is room; often empty.
    pub words: String,
    /// Key and variations for the last page, moves in SAN with English letters.
    pub solution: Vec<String>,
    /// The coach's words behind the solution, a line each.
    pub remarks: Vec<String>,
}

/// A week's positions to print.
#[derive(Clone, Debug)]
pub struct Sheet {
    /// Above each page.
    pub title: String,
    /// Paper.
    pub paper: Paper,
    /// The positions, in order.
    pub items: Vec<Item>,
}

const COLUMNS: usize = 2;
const ROWS: usize = 3;
const MARGIN: f32 = 40.0;
const HEAD: f32 = 34.0;
const FOOT: f32 = 30.0;

/// Points of the answer lines' distance.
const LINE: f32 = 17.0;

/// The coach's words under a board: size and distance of the lines in points, and the most of them.
/// Longer words are set whole before the solution.
const SAID: f32 = 8.5;
const SAID_LINE: f32 = 10.5;
const MOST_SAID: usize = 3;

/// Words in the place of a board: size and distance of the lines in points, and how many characters surely
/// have room there. Longer ones are set whole before the solution.
const WRITTEN: f32 = 9.5;
const WRITTEN_LINE: f32 = 12.0;
const FIT: usize = 400;

impl Sheet {
    /// The pages as standalone SVG, measured in points; the last ones hold the solutions.
    pub fn svg(&self, tongue: &Tongue) -> Vec<String> {
        self.pages(Words::Outlined, tongue)
    }

    /// The pages as one PDF.
    ///
    /// # Errors
    /// When a page cannot be converted.
    pub fn pdf(&self, tongue: &Tongue) -> Result<Vec<u8>, DiagramError> {
        bind(&self.pages(Words::Live, tongue), self.paper, &self.title)
    }

    fn pages(&self, words: Words, tongue: &Tongue) -> Vec<String> {
        let mut canvases: Vec<(Canvas, String)> = self
            .items
            .chunks(COLUMNS * ROWS)
            .enumerate()
            .map(|(page, items)| self.positions(page * COLUMNS * ROWS, items, words, tongue))
            .collect();
        canvases.extend(self.solutions(words, tongue));
        let count = canvases.len();
        canvases
            .into_iter()
            .enumerate()
            .map(|(i, (mut canvas, alt))| {
                let (w, h) = self.paper.points();
                let hand = Hand::new(9.5, palette::of(Style::Print).ink).middle();
                canvas.text(&format!("{} / {count}", i + 1), w / 2.0, h - 22.0, hand);
                canvas.finish(&alt)
            })
            .collect()
    }

    fn page(&self, words: Words, what: &str) -> Canvas {
        let (w, h) = self.paper.points();
        let palette = palette::of(Style::Print);
        let mut canvas = Canvas::new(w, h, words);
        canvas.rect(0.0, 0.0, w, h, Paint::fill(palette.page));
        let hand = Hand::new(15.0, palette.ink).bold();
        let small = Hand::new(11.0, palette.ink).end();
        let room = w - 2.0 * MARGIN - small.width(what) - 20.0;
        let title = lettering::fitted(&self.title, hand.weight, hand.size, room);
        canvas.text(&title, MARGIN, MARGIN + 6.0, hand);
        canvas.text(what, w - MARGIN, MARGIN + 6.0, small);
        canvas.line(
            (MARGIN, MARGIN + 14.0),
            (w - MARGIN, MARGIN + 14.0),
            Paint::stroke(palette.ink, 0.6),
        );
        canvas
    }

    fn positions(
        &self,
        first: usize,
        items: &[Item],
        words: Words,
        tongue: &Tongue,
    ) -> (Canvas, String) {
        let (w, h) = self.paper.points();
        let palette = palette::of(Style::Print);
        let mut canvas = self.page(words, &tongue.say(&Text::SheetName));
        let cell_w = (w - 2.0 * MARGIN) / COLUMNS as f32;
        let cell_h = (h - MARGIN - HEAD - FOOT - 10.0) / ROWS as f32;
        let said: Vec<Vec<String>> = items.iter().map(|item| said(item, cell_w - 16.0)).collect();
        let most = said.iter().map(Vec::len).max().unwrap_or_default();
        let room = most.min(MOST_SAID) as f32 * SAID_LINE;
        // Room for the caption above, and the coach's words and two answer lines below.
        let side = (cell_h - 16.0 - 2.0 * LINE - room).min(cell_w - 16.0);
        let mut alt = String::new();
        for (i, item) in items.iter().enumerate() {
            let number = first + i + 1;
            let x = MARGIN + (i % COLUMNS) as f32 * cell_w;
            let y = MARGIN + HEAD - 4.0 + (i / COLUMNS) as f32 * cell_h;
            let words = &said[i];
            let left = (cell_w - side) / 2.0;
            canvas.placed(x + left, y, 1.0, |canvas| {
                let bottom = position(canvas, item, number, side, room, palette);
                for (line, text) in words.iter().take(MOST_SAID).enumerate() {
                    let cut = line + 1 == MOST_SAID && words.len() > MOST_SAID;
                    let text = if cut {
                        format!("{text} …")
                    } else {
                        text.clone()
                    };
                    let y = bottom + (line as f32 + 1.0) * SAID_LINE;
                    let hand = Hand::new(SAID, palette.ink);
                    figurine::set(canvas, &text, (8.0 - left, y), hand, palette);
                }
            });
            let named = tongue.say(&Text::AltSheetItem {
                number: super::text::number(number),
                task: item.task.clone(),
            });
            let shown = match &item.shows {
                Shows::Board(position) => Alt::Facts(placement(position)).in_words(tongue),
                Shows::Words => String::new(),
            };
            alt.push_str(&format!("{named} {shown} {} ", item.words));
        }
        (canvas, alt)
    }

    /// Pages with the solutions in two columns.
    fn solutions(&self, words: Words, tongue: &Tongue) -> Vec<(Canvas, String)> {
        let (w, h) = self.paper.points();
        let palette = palette::of(Style::Print);
        let gutter = 22.0;
        let room = (w - 2.0 * MARGIN - gutter) / 2.0;
        let (size, step) = (10.5, 15.0);
        let plain = Hand::new(size, palette.ink);
        let bold = plain.bold();
        let (top, bottom) = (MARGIN + HEAD + 4.0, h - FOOT - 16.0);
        let mut pages: Vec<(Canvas, String)> = Vec::new();
        // Start as at the end of a page, so that the first line opens one.
        let (mut column, mut y) = (1, bottom);
        for (i, item) in self.items.iter().enumerate() {
            let label = format!("{}.", i + 1);
            let mut lines: Vec<(String, Hand<'_>, f32)> = Vec::new();
            // What had no room under the board, or in its place.
            let cut = match item.shows {
                Shows::Board(_) => {
                    said(item, (w - 2.0 * MARGIN) / COLUMNS as f32 - 16.0).len() > MOST_SAID
                }
                Shows::Words => item.words.chars().count() > FIT,
            };
            if cut {
                let wrapped = figurine::wrapped(&item.words, &plain, room - 34.0, 0.0);
                lines.extend(wrapped.into_iter().map(|line| (line, plain, 34.0)));
            }
            for (k, text) in item.solution.iter().enumerate() {
                let hand = if k == 0 { bold } else { plain };
                let wrapped = figurine::wrapped(text, &hand, room - 24.0, 10.0);
                lines.extend(
                    wrapped
                        .into_iter()
                        .enumerate()
                        .map(|(n, line)| (line, hand, if n == 0 { 24.0 } else { 34.0 })),
                );
            }
            for text in &item.remarks {
                let wrapped = figurine::wrapped(text, &plain, room - 34.0, 0.0);
                lines.extend(wrapped.into_iter().map(|line| (line, plain, 34.0)));
            }
            for (k, (line, hand, indent)) in lines.iter().enumerate() {
                // A new column for what does not fit, and for an item that would leave one line.
                let want = if k == 0 && lines.len() > 1 { 2.0 } else { 1.0 };
                if y + want * step > bottom {
                    column += 1;
                    y = top;
                    if column > 1 {
                        column = 0;
                        let title = tongue.say(&Text::SheetSolutions);
                        pages.push((self.page(words, &title), format!("{title}. ")));
                    }
                }
                y += step;
                let x = MARGIN + column as f32 * (room + gutter);
                if let Some((canvas, alt)) = pages.last_mut() {
                    if k == 0 {
                        canvas.text(&label, x + 17.0, y, bold.end());
                        alt.push_str(&format!("{label} {} ", item.solution.join(" ")));
                    }
                    figurine::set(canvas, line, (x + indent, y), *hand, palette);
                }
            }
            if !lines.is_empty() {
                y += step * 0.45;
            }
        }
        pages
    }
}

/// The coach's words with a position, in lines `room` wide.
fn said(item: &Item, room: f32) -> Vec<String> {
    if matches!(item.shows, Shows::Words) {
        return Vec::new();
    }
    let hand = Hand::new(SAID, palette::of(Style::Print).ink);
    figurine::wrapped(&item.words, &hand, room - hand.width(" …"), 0.0)
}

/// One position: caption, board, `room` for words, answer lines, in a field `side` wide. Where the board
/// ends.
fn position(
    canvas: &mut Canvas,
    item: &Item,
    number: usize,
    side: f32,
    room: f32,
    palette: &Palette,
) -> f32 {
    let board = match &item.shows {
        Shows::Board(position) => position.clone(),
        // The field is laid out as one with a board in it.
        Shows::Words => Chess::default(),
    };
    let mut diagram = Diagram::of(board.clone());
    // Drawn at four times the size, so that whole-pixel measures are fine on paper.
    diagram.size = (side * 4.0) as u32;
    diagram.bottom = Color::White;
    if board.turn() == Color::Black {
        diagram.bottom = Color::Black;
    }
    let layout = diagram.layout();
    let scale = side / layout.width;
    let left = layout.left * scale;
    let bold = Hand::new(11.0, palette.ink).bold();
    let label = format!("{number}");
    canvas.text(&label, left, 10.0, bold);
    let task = lettering::fitted(
        &item.task,
        lettering::Weight::Regular,
        11.0,
        side - left - bold.width(&label) - 10.0,
    );
    let x = left + bold.width(&label) + 7.0;
    canvas.text(&task, x, 10.0, Hand::new(11.0, palette.ink));
    let bottom = 15.0 + layout.height * scale;
    let right = left + layout.side() * scale;
    match item.shows {
        Shows::Board(_) => canvas.placed(0.0, 15.0, scale, |canvas| {
            diagram.draw(canvas, &layout, palette);
        }),
        Shows::Words => {
            let hand = Hand::new(WRITTEN, palette.ink);
            let lines = figurine::wrapped(&item.words, &hand, right - left, 0.0);
            let fit = ((bottom - 30.0) / WRITTEN_LINE) as usize;
            for (line, text) in lines.iter().take(fit).enumerate() {
                let cut = line + 1 == fit && lines.len() > fit;
                let text = if cut {
                    format!("{text} …")
                } else {
                    text.clone()
                };
                let y = 30.0 + line as f32 * WRITTEN_LINE;
                figurine::set(canvas, &text, (left, y), hand, palette);
            }
        }
    }
    for line in 1..=2u8 {
        let y = bottom + room + f32::from(line) * LINE - 3.0;
        canvas.line((left, y), (right, y), Paint::stroke("#777777", 0.5));
    }
    bottom
}

/// Options with our font and no other.
fn options() -> &'static usvg::Options<'static> {
    static OPTIONS: OnceLock<usvg::Options<'static>> = OnceLock::new();
    OPTIONS.get_or_init(|| {
        let mut fonts = usvg::fontdb::Database::new();
        fonts.load_font_data(lettering::REGULAR.to_vec());
        fonts.load_font_data(lettering::SEMIBOLD.to_vec());
        usvg::Options {
            font_family: lettering::FAMILY.into(),
            fontdb: Arc::new(fonts),
            ..usvg::Options::default()
        }
    })
}

/// Binds pages of one size into a PDF.
fn bind(pages: &[String], paper: Paper, title: &str) -> Result<Vec<u8>, DiagramError> {
    let refused = |what: &dyn std::fmt::Display| DiagramError::Render(what.to_string());
    let (w, h) = paper.points();
    let size = Size::from_wh(w, h).ok_or_else(|| refused(&"paper without a size"))?;
    let mut document = Document::new();
    document.set_metadata(
        Metadata::new()
            .title(title.to_owned())
            .producer("Sealed Move".to_owned()),
    );
    for svg in pages {
        let svg = usvg::Tree::from_str(svg, options()).map_err(|e| refused(&e))?;
        let mut page = document.start_page_with(PageSettings::new(size));
        let mut surface = page.surface();
        surface
            .draw_svg(&svg, size, SvgSettings::default())
            .ok_or_else(|| refused(&"a page without content"))?;
        surface.finish();
        page.finish();
    }
    document.finish().map_err(|e| refused(&e))
}

#[cfg(test)]
mod tests {
    use super::super::sample::english;
    use super::*;

    fn sheet(items: usize, lines: usize) -> Sheet {
        Sheet {
            title: "Woche 7: Zwischenzug · Tydzień · Неделя".into(),
            paper: Paper::A4,
            items: (0..items)
                .map(|_| Item {
                    shows: Shows::Board(Chess::default()),
                    task: "White mates in two".into(),
                    words: "Look at the back rank first.".into(),
                    remarks: vec!["1.Qh5 The queen goes first.".into()],
                    solution: vec!["1.Qh5 g6 2.Qxf7# (1...Nf6 2.Qxf7#)".into(); lines],
                })
                .collect(),
        }
    }

    #[test]
    fn six_to_a_page_and_the_solutions_last() {
        for (items, lines, pages) in [(0, 1, 0), (1, 1, 2), (6, 2, 2), (7, 1, 3), (6, 60, 6)] {
            let svg = sheet(items, lines).svg(&english());
            let fits = svg.len();
            if lines < 10 {
                assert_eq!(fits, pages, "{items} items");
            } else {
                assert!(fits > 2, "long solutions go on to further pages");
            }
            if let Some(last) = svg.last() {
                assert!(last.contains("<desc>Solutions."));
                assert!(last.contains("1.Qh5"));
            }
        }
    }

    #[test]
    fn solutions_stay_off_the_pages_with_positions() {
        let svg = sheet(6, 1).svg(&english());
        assert!(!svg[0].contains("Qh5") && svg[1].contains("Qh5"));
    }

    #[test]
    fn words_for_the_post_stand_with_the_position_and_the_others_behind_the_solution() {
        let mut sheet = sheet(6, 1);
        sheet.items[2].words = "word ".repeat(200);
        let pages = sheet.pages(Words::Live, &english());
        assert_eq!(pages.len(), 2);
        assert!(pages[0].contains("back rank") && !pages[0].contains("The queen goes"));
        assert!(pages[1].contains("The queen goes"));
        // Words that have no room under their board are set whole before the solution.
        let whole = |page: &str| page.matches("word").count();
        assert!(whole(&pages[1]) >= 200, "{}", whole(&pages[1]));
    }

    #[test]
    fn the_pdf_has_every_page_and_our_font_only() {
        let pdf = sheet(7, 1).pdf(&english()).expect("a PDF");
        assert!(pdf.starts_with(b"%PDF-"));
        let text = String::from_utf8_lossy(&pdf);
        assert_eq!(text.matches("/Type/Page/").count(), 3);
        let fonts: Vec<&str> = text
            .match_indices("/BaseFont/")
            .map(|(i, m)| text[i + m.len()..].split('/').next().unwrap_or(""))
            .collect();
        // Each weight is embedded once, whatever the number of pages: a font and its descendant.
        assert_eq!(fonts.len(), 4, "{fonts:?}");
        assert!(fonts.iter().all(|f| f.contains("Libertinus")), "{fonts:?}");
        for weight in ["Regular", "Semibold"] {
            assert!(fonts.iter().any(|f| f.contains(weight)), "{fonts:?}");
        }
        assert!(pdf.len() < 400_000, "{}", pdf.len());
    }
}
