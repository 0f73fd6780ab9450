//! Tests: pictures looked at once by a person and kept, against which every later drawing is held.
//!
//! A drawing may differ by the rounding of soft edges and no more. When a change is meant, look at
//! the new pictures and keep them:
//!
//! ```text
//! SEALED_MOVE_BLESS=1 cargo test -p sealed-move-diagram --lib diagram::golden
//! ```
//!
//! A picture that failed is written beside the build's temporary files, and the failure says where.

use std::path::{Path, PathBuf};

use resvg::tiny_skia::Pixmap;
use shakmaty::{Color, Position, Square};

use super::Style;
use super::board::Diagram;
use super::chart::{self, Chart, Day, Mastery, SolveRate, Theme, Week, WrongMove};
use super::film::Film;
use super::reveal::{Reveal, flights};
use super::sample::{english, line, position};
use super::sheet::{Item, Paper, Sheet, Shows};
use super::strip::Strip;
use super::text::{List, Pattern, Text, Tongue};
use super::{contact, raster};
use sealed_move_chess::scene::SceneMark;

/// The mean difference a picture may have, in steps of a channel.
const MEAN: f64 = 0.6;

/// A pixel this far off in any channel is plainly different, and so many of a thousand may be.
const FAR: u8 = 48;
const FAR_OF_1000: f64 = 1.5;

const BACK_RANK: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1";

/// Every piece, on both shades.
const MIDDLE: &str = "r1bqk2r/pp1n1ppp/2pbpn2/3p4/2PP4/2NBPN2/PP3PPP/R1BQK2R w KQkq - 0 1";

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("src/golden")
}

/// What is wrong with `got`, if anything.
fn difference(got: &Pixmap, wanted: &Pixmap) -> Option<String> {
    let size = |map: &Pixmap| (map.width(), map.height());
    if size(got) != size(wanted) {
        return Some(format!("is {:?}, was {:?}", size(got), size(wanted)));
    }
    let (mut sum, mut far) = (0u64, 0u64);
    for (a, b) in got.pixels().iter().zip(wanted.pixels()) {
        let off = [
            a.red().abs_diff(b.red()),
            a.green().abs_diff(b.green()),
            a.blue().abs_diff(b.blue()),
        ];
        sum += off.iter().map(|&d| u64::from(d)).sum::<u64>();
        far += u64::from(off.iter().any(|&d| d > FAR));
    }
    let pixels = got.pixels().len() as f64;
    let (mean, far) = (sum as f64 / (3.0 * pixels), 1000.0 * far as f64 / pixels);
    (mean > MEAN || far > FAR_OF_1000).then(|| {
        format!("differs by {mean:.2} in the mean, and plainly in {far:.2} of 1000 pixels")
    })
}

/// Holds a drawing against the kept picture `name`, or keeps it when told to.
fn hold(name: &str, got: &Pixmap) {
    let path = folder().join(format!("{name}.png"));
    let bytes = raster::pack(got).expect("packs");
    if std::env::var_os("SEALED_MOVE_BLESS").is_some() {
        std::fs::write(&path, bytes).expect("the golden folder can be written");
        return;
    }
    let Ok(kept) = std::fs::read(&path) else {
        panic!(
            "{} is missing; look at the picture and bless it",
            path.display()
        );
    };
    let wanted = Pixmap::decode_png(&kept).expect("a kept picture is a PNG");
    // Kept pictures went through a palette; so must the new one.
    let got = Pixmap::decode_png(&bytes).expect("a PNG");
    if let Some(what) = difference(&got, &wanted) {
        let new = std::env::temp_dir().join(format!("sealed-move-{name}.png"));
        std::fs::write(&new, bytes).expect("the temporary folder can be written");
        panic!("{name} {what}; the new one is {}", new.display());
    }
}

fn drawn(svg: &str, scale: f32) -> Pixmap {
    raster::pixels(svg, scale).expect("draws")
}

fn png(bytes: &[u8]) -> Pixmap {
    Pixmap::decode_png(bytes).expect("a PNG")
}

fn name(style: Style) -> String {
    format!("{style:?}").to_lowercase()
}

fn marked() -> Diagram {
    let mut diagram = Diagram::of(position("3R2k1/r4ppp/5N2/8/4b3/8/q4PPP/6K1 b - - 0 1"));
    diagram.bottom = Color::White;
    diagram.size = 360;
    diagram.last_move = Some((Square::D1, Square::D8));
    diagram.marks = vec![
        SceneMark::GuardedFlight(Square::F8),
        SceneMark::Guard(Square::D8, Square::F8),
        SceneMark::BlockedFlight(Square::F7),
        SceneMark::GuardedFlight(Square::H7),
        SceneMark::Guard(Square::F6, Square::H7),
        SceneMark::OpenFlight(Square::B5),
        SceneMark::Square(Square::C4),
        SceneMark::Refutation(Square::A7, Square::A3),
        SceneMark::Step(Square::E4, Square::B1, 1),
        SceneMark::Step(Square::G2, Square::G4, 2),
    ];
    diagram
}

#[test]
fn boards() {
    for style in Style::ALL {
        let mut diagram = Diagram::of(position(MIDDLE));
        diagram.style = style;
        diagram.size = 360;
        hold(
            &format!("board-{}", name(style)),
            &png(&diagram.png(&english()).expect("draws").bytes),
        );
        let mut diagram = marked();
        diagram.style = style;
        hold(
            &format!("marks-{}", name(style)),
            &png(&diagram.png(&english()).expect("draws").bytes),
        );
    }
}

#[test]
fn a_small_board_and_one_from_the_other_side() {
    let mut diagram = Diagram::of(position(MIDDLE));
    diagram.size = 120;
    hold(
        "board-small",
        &png(&diagram.png(&english()).expect("draws").bytes),
    );
    diagram.size = 300;
    diagram.bottom = Color::Black;
    hold(
        "board-turned",
        &png(&diagram.png(&english()).expect("draws").bytes),
    );
}

#[test]
fn reveals() {
    let start = position(BACK_RANK);
    let mut reveal = Reveal::of(&start, &line(&start, &["Rxd8+", "Rxd8", "Rxd8#"]));
    reveal.heading = Some(Text::PictureHeadingPattern {
        number: 14,
        patterns: List {
            list: vec![Pattern {
                pattern: "back-rank".into(),
            }],
        },
    });
    reveal.solution = vec![
        "1.Rxd8+ Rxd8 2.Rxd8#".into(),
        "Try: 1.Rd7? Rxd7! 2.Rxd7 h6, and there is a flight at h7.".into(),
    ];
    reveal.size = 420;
    for style in [Style::Print, Style::Dark] {
        reveal.style = style;
        let kept = format!("reveal-{}", name(style));
        hold(&kept, &drawn(&reveal.svg(&english()), 1.0));
        hold(&kept, &png(&reveal.png(&english()).expect("draws").bytes));
    }
}

#[test]
fn a_strip_and_a_film_on_its_way() {
    let start = position(BACK_RANK);
    let moves = line(&start, &["Rxd8+", "Rxd8", "Rxd8#"]);
    let mut strip = Strip::of(start.clone(), moves.clone());
    strip.board = 220;
    hold("strip", &drawn(&strip.svg(&english()), 1.0));

    let mut film = Film::of(start, moves);
    film.size = 240;
    film.style = Style::Light;
    let mut end = film.start.clone();
    for &mv in &film.line {
        end.play_unchecked(mv);
    }
    film.ending = flights(&end);
    let frames = film.frames(&english()).expect("draws");
    hold("film-on-its-way", &frames[3].0);
    hold("film-at-its-end", &frames[frames.len() - 1].0);
}

fn charts() -> Vec<(&'static str, Chart)> {
    let rate = |label: &str, solved, tried| SolveRate {
        label: label.into(),
        tried,
        solved,
    };
    let topic = |topic: &str, tried, solved, first_try| Mastery {
        topic: topic.into(),
        tried,
        solved,
        first_try,
    };
    let wrong = |from, to, san: &str, count| WrongMove {
        from,
        to,
        san: san.into(),
        count,
    };
    let took_part = [7, 9, 6, 8, 4, 9, 10, 7, 3, 8];
    let days = took_part
        .iter()
        .zip([2, 3, 4, 5, 6, 9, 10, 11, 12, 13])
        .enumerate()
        .map(|(i, (&tried, day))| Day {
            day,
            week: [((2, 11), (8, 11)), ((9, 11), (15, 11))].map(|(from, to)| Week { from, to })
                [i / 5],
            tried,
            solved: tried * (i + 3) / 14,
        })
        .collect();
    vec![
        (
            "solve-rates",
            chart::solve_rates(
                Text::ChartSolved,
                vec![
                    rate("No. 12 · Back rank", 0, 3),
                    rate("No. 13 · Smothered mate", 5, 8),
                    rate("No. 14 · Clearance", 9, 9),
                ],
            ),
        ),
        (
            "participation",
            chart::participation(Text::ChartParticipation, days),
        ),
        (
            "mastery",
            chart::mastery(
                Text::ChartMastery,
                vec![
                    topic("Smothered mate", 24, 8, 3),
                    topic("Back rank", 30, 27, 20),
                ],
            ),
        ),
        (
            "wrong-moves",
            chart::wrong_moves(
                Text::ChartWrong { number: 14 },
                position(BACK_RANK),
                Color::White,
                vec![
                    wrong(Square::D2, Square::D7, "Rd7", 5),
                    wrong(Square::H2, Square::H3, "h3", 2),
                ],
            ),
        ),
    ]
}

#[test]
fn charts_in_light_and_dark() {
    for (name, chart) in charts() {
        for theme in Theme::ALL {
            let theme_name = format!("{theme:?}").to_lowercase();
            hold(
                &format!("chart-{name}-{theme_name}"),
                &drawn(&chart.svg(theme, &english()), 0.5),
            );
        }
    }
}

fn printed() -> Sheet {
    let items = (0..3)
        .map(|i| Item {
            shows: Shows::Board(position([BACK_RANK, MIDDLE, BACK_RANK][i])),
            task: "White mates in two".into(),
            words: String::new(),
            remarks: Vec::new(),
            solution: vec![
                "1.Rxd8+ Rxd8 2.Rxd8#".into(),
                "1...Kf8 is no move here, for the king is in check from the rook on d8.".into(),
            ],
        })
        .collect();
    Sheet {
        title: "Week 48 · Back rank".into(),
        paper: Paper::A4,
        items,
    }
}

/// In a language whose words are half as long again nothing leaves the picture.
#[test]
fn longer_words_stay_within_every_picture() {
    use resvg::usvg::{Options, Tree};

    let longer = Tongue::new("en", |tag, text| {
        let said = sealed_move_words::words(tag).say(text);
        let more = said.chars().filter(|c| c.is_alphabetic()).count() * 2 / 5;
        format!("{said} {}", "lorem ".repeat(more / 6 + 1).trim_end())
    });
    let within = |what: &str, svg: &str| {
        let tree = Tree::from_str(svg, &Options::default()).expect("an SVG");
        let (size, drawn) = (tree.size(), tree.root().abs_bounding_box());
        assert!(
            drawn.left() >= -0.5
                && drawn.right() <= size.width() + 0.5
                && drawn.bottom() <= size.height() + 0.5,
            "{what}: {drawn:?} in {size:?}"
        );
    };
    for (name, chart) in charts() {
        within(name, &chart.svg(Theme::Light, &longer));
    }
    let start = position(BACK_RANK);
    let moves = line(&start, &["Rxd8+", "Rxd8", "Rxd8#"]);
    let mut reveal = Reveal::of(&start, &moves);
    reveal.heading = Some(Text::PictureHeading { number: 14 });
    for size in [240, 720] {
        reveal.size = size;
        within("a reveal", &reveal.svg(&longer));
    }
    within("a strip", &Strip::of(start, moves).svg(&longer));
    for page in printed().svg(&longer) {
        within("a sheet", &page);
    }
}

#[test]
fn printed_sheets() {
    let pages = printed().svg(&english());
    hold("sheet-positions", &drawn(&pages[0], 0.8));
    hold("sheet-solutions", &drawn(&pages[1], 0.8));
}

#[test]
fn the_contact_sheet() {
    hold("contact", &drawn(&contact::svg(&english()), 0.4));
}

/// The comparison would notice one pawn that stands elsewhere, and does not mind a soft edge.
#[test]
fn the_comparison_tells_a_moved_pawn() {
    let mut diagram = Diagram::of(position(MIDDLE));
    diagram.size = 360;
    let one = png(&diagram.png(&english()).expect("draws").bytes);
    let mut soft = one.clone();
    for pixel in soft.pixels_mut().iter_mut().step_by(97) {
        let v = pixel.red().saturating_sub(20);
        *pixel = resvg::tiny_skia::ColorU8::from_rgba(v, v, v, 255).premultiply();
    }
    assert_eq!(difference(&soft, &one), None);
    diagram.position = position(&MIDDLE.replace("PP3PPP", "P4PPP"));
    let other = png(&diagram.png(&english()).expect("draws").bytes);
    assert!(difference(&other, &one).is_some());
}

/// What is kept stays small.
#[test]
fn the_kept_pictures_stay_small() {
    let all: u64 = std::fs::read_dir(folder())
        .expect("the golden folder")
        .map(|entry| entry.and_then(|e| e.metadata()).map_or(0, |m| m.len()))
        .sum();
    assert!(all < 400_000, "{all} bytes");
}
