//! Tests: what can be seen, computed from the pixels.
//!
//! Contrast is that of WCAG 2.2 (relative luminance, 1.4.3 and 1.4.11): 3:1 for shapes, 4.5:1 for
//! words. Everything is measured again as people with a colour-vision deficiency see it, by the
//! matrices of Machado, Oliveira and Fernandes (2009) at full severity (from memory).

use std::collections::HashMap;

use resvg::tiny_skia::Pixmap;
use shakmaty::{Bitboard, Board, CastlingMode, Chess, Color, Piece, Role, Setup, Square};

use super::Style;
use super::board::{Diagram, legend::Sign, pixels};
use super::canvas::{Canvas, Paint, Words};
use super::chart::{self, Theme};
use super::sample::english;
use super::text::Text;
use super::{palette, raster};
use sealed_move_chess::scene::SceneMark;

type Rgb = [f64; 3];

/// How a colour is seen: linear light in, linear light out.
const SIGHTS: [(&str, [Rgb; 3]); 4] = [
    (
        "full colour",
        [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
    ),
    (
        "protanopia",
        [
            [0.152286, 1.052583, -0.204868],
            [0.114503, 0.786281, 0.099216],
            [-0.003882, -0.048116, 1.051998],
        ],
    ),
    (
        "deuteranopia",
        [
            [0.367322, 0.860646, -0.227968],
            [0.280085, 0.672501, 0.047413],
            [-0.011820, 0.042940, 0.968881],
        ],
    ),
    (
        "tritanopia",
        [
            [1.255528, -0.076749, -0.178779],
            [-0.078411, 0.930809, 0.147602],
            [0.004733, 0.691367, 0.303900],
        ],
    ),
];

fn linear(channel: u8) -> f64 {
    let c = f64::from(channel) / 255.0;
    if c <= 0.04045 {
        c / 12.92
    } else {
        ((c + 0.055) / 1.055).powf(2.4)
    }
}

/// Relative luminance as seen with `sight`.
fn luminance(rgb: [u8; 3], sight: &[Rgb; 3]) -> f64 {
    let light = rgb.map(linear);
    let seen = |row: &Rgb| -> f64 {
        row.iter()
            .zip(light)
            .map(|(m, l)| m * l)
            .sum::<f64>()
            .clamp(0.0, 1.0)
    };
    0.2126 * seen(&sight[0]) + 0.7152 * seen(&sight[1]) + 0.0722 * seen(&sight[2])
}

fn contrast(a: f64, b: f64) -> f64 {
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

/// A part of a picture.
struct Patch {
    wide: usize,
    pixels: Vec<[u8; 3]>,
}

impl Patch {
    fn of(map: &Pixmap, (x, y): (f32, f32), side: f32) -> Self {
        let (x, y, side) = (x as usize, y as usize, side as usize);
        let wide = map.width() as usize;
        let pixels = (y..y + side)
            .flat_map(|row| &map.pixels()[row * wide + x..row * wide + x + side])
            .map(|p| [p.red(), p.green(), p.blue()])
            .collect();
        Self { wide: side, pixels }
    }

    /// The shade of a hatched square is that of its mean light.
    fn mean(&self, sight: &[Rgb; 3]) -> f64 {
        let sum: f64 = self.pixels.iter().map(|&p| luminance(p, sight)).sum();
        sum / self.pixels.len() as f64
    }

    /// Colours of the pixels that differ from `ground`, the commonest first, with their share.
    fn added(&self, ground: &Self) -> Vec<([u8; 3], f64)> {
        let mut counts: HashMap<[u8; 3], usize> = HashMap::new();
        let mut all = 0;
        for (a, b) in self.pixels.iter().zip(&ground.pixels) {
            if a != b {
                *counts.entry(*a).or_default() += 1;
                all += 1;
            }
        }
        let mut out: Vec<_> = counts
            .into_iter()
            .map(|(rgb, n)| (rgb, n as f64 / f64::from(all.max(1))))
            .collect();
        out.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
        out
    }
}

/// A position of `pieces` and two kings at the rim that nothing on d4 or e4 can check.
fn set(pieces: &[(Square, Piece)]) -> Chess {
    let mut board = Board::empty();
    board.set_piece_at(Square::A6, Color::White.king());
    board.set_piece_at(Square::H3, Color::Black.king());
    for &(square, piece) in pieces {
        if piece.role == Role::King {
            let own = board.king_of(piece.color).expect("a king");
            board.discard_piece_at(own);
        }
        board.set_piece_at(square, piece);
    }
    let setup = Setup {
        board,
        ..Setup::empty()
    };
    setup
        .position::<Chess>(CastlingMode::Standard)
        .expect("a position")
}

fn diagram(position: Chess, style: Style, size: u32) -> Diagram {
    let mut diagram = Diagram::of(position);
    diagram.bottom = Color::White;
    diagram.style = style;
    diagram.size = size;
    diagram
}

fn drawn(diagram: &Diagram) -> Pixmap {
    pixels::draw_bare(diagram, Bitboard::EMPTY).expect("draws")
}

fn all_pieces() -> impl Iterator<Item = Piece> {
    Color::ALL
        .into_iter()
        .flat_map(|color| Role::ALL.into_iter().map(move |role| role.of(color)))
}

/// E4 is a light square, D4 a dark one; both are far from the kings.
const SHADES: [Square; 2] = [Square::E4, Square::D4];

/// Sizes of pictures whose squares are 24 to 112 pixels.
const SIZES: [u32; 3] = [206, 420, 960];

#[test]
fn the_matrices_keep_white_white() {
    for (name, sight) in SIGHTS {
        for row in sight {
            assert!((row.iter().sum::<f64>() - 1.0).abs() < 1e-3, "{name}");
        }
        assert!((luminance([255; 3], &sight) - 1.0).abs() < 1e-3, "{name}");
    }
    let (_, full) = SIGHTS[0];
    let black_on_white = contrast(luminance([0; 3], &full), luminance([255; 3], &full));
    assert!((black_on_white - 21.0).abs() < 1e-9);
}

/// Wherever a piece's drawing ends, an edge of 3:1 against the square is within the width of the
/// clear rim around him.
#[test]
fn every_man_stands_out_from_its_square() {
    for style in Style::ALL {
        for size in SIZES {
            let empty = diagram(set(&[]), style, size);
            let layout = empty.layout();
            let ground = drawn(&empty);
            for piece in all_pieces() {
                for square in SHADES {
                    let drawn = drawn(&diagram(set(&[(square, piece)]), style, size));
                    let corner = layout.corner(square);
                    let below = Patch::of(&ground, corner, layout.square);
                    let with = Patch::of(&drawn, corner, layout.square);
                    for (name, sight) in &SIGHTS {
                        outlined(&with, &below, sight, &|| {
                            format!("{style:?} {size} {piece:?} {square} {name}")
                        });
                    }
                }
            }
        }
    }
}

fn outlined(with: &Patch, below: &Patch, sight: &[Rgb; 3], what: &dyn Fn() -> String) {
    let shade = below.mean(sight);
    let side = with.wide;
    // The clear rim and the soft pixels on both sides of it.
    let reach = (side as f64 * 0.03).ceil() as usize + 2;
    let changed: Vec<bool> = with
        .pixels
        .iter()
        .zip(&below.pixels)
        .map(|(a, b)| a != b)
        .collect();
    let outside = outside(&changed, side);
    let seen: Vec<bool> = with
        .pixels
        .iter()
        .zip(&changed)
        .map(|(&p, &changed)| changed && contrast(luminance(p, sight), shade) >= 3.0)
        .collect();
    let mut rim = 0;
    for y in 1..side - 1 {
        for x in 1..side - 1 {
            let here = y * side + x;
            let at_rim = [here - 1, here + 1, here - side, here + side]
                .iter()
                .any(|&i| outside[i]);
            if !changed[here] || !at_rim {
                continue;
            }
            rim += 1;
            let near = (y.saturating_sub(reach)..(y + reach + 1).min(side)).any(|v| {
                (x.saturating_sub(reach)..(x + reach + 1).min(side)).any(|u| seen[v * side + u])
            });
            assert!(near, "{}: no edge near {x}, {y}", what());
        }
    }
    assert!(rim > side, "{}: only {rim} pixels of rim", what());
}

/// What can be reached from the square's rim without crossing the drawing; white paper inside a
/// white piece is no outside.
fn outside(changed: &[bool], side: usize) -> Vec<bool> {
    let mut out = vec![false; changed.len()];
    let mut next: Vec<usize> = (0..side)
        .flat_map(|i| [i, (side - 1) * side + i, i * side, i * side + side - 1])
        .collect();
    while let Some(here) = next.pop() {
        if changed[here] || std::mem::replace(&mut out[here], true) {
            continue;
        }
        let (x, y) = (here % side, here / side);
        next.extend((x > 0).then(|| here - 1));
        next.extend((x + 1 < side).then(|| here + 1));
        next.extend((y > 0).then(|| here - side));
        next.extend((y + 1 < side).then(|| here + side));
    }
    out
}

#[test]
fn white_and_black_men_are_told_apart_and_weigh_the_same() {
    for style in Style::ALL {
        for size in SIZES {
            let empty = diagram(set(&[]), style, size);
            let layout = empty.layout();
            let ground = drawn(&empty);
            for role in Role::ALL {
                let mut bodies = Vec::new();
                let mut areas = Vec::new();
                for color in Color::ALL {
                    let piece = role.of(color);
                    let map = drawn(&diagram(set(&[(Square::D4, piece)]), style, size));
                    let corner = layout.corner(Square::D4);
                    let with = Patch::of(&map, corner, layout.square);
                    let below = Patch::of(&ground, corner, layout.square);
                    bodies.push(with.pixels[middle(&with, role)]);
                    areas.push(
                        with.pixels
                            .iter()
                            .zip(&below.pixels)
                            .filter(|(a, b)| a != b)
                            .count() as f64,
                    );
                }
                for (name, sight) in &SIGHTS {
                    let ratio = contrast(luminance(bodies[0], sight), luminance(bodies[1], sight));
                    assert!(ratio >= 3.0, "{style:?} {size} {role:?} {name}: {ratio:.2}");
                }
                // White on white paper differs from the ground by its lines alone, so areas are
                // compared where the square is tinted.
                if matches!(style, Style::Light | Style::Dark) {
                    let share = areas[0] / areas[1];
                    assert!(
                        (0.97..1.03).contains(&share),
                        "{style:?} {role:?}: {share:.3}"
                    );
                }
            }
        }
    }
}

/// A pixel well inside the body of any piece.
fn middle(patch: &Patch, role: Role) -> usize {
    let at = |x: f64, y: f64| {
        let side = patch.wide as f64;
        (y * side) as usize * patch.wide + (x * side) as usize
    };
    match role {
        Role::Pawn => at(0.5, 0.42),
        Role::Knight => at(0.55, 0.6),
        _ => at(0.5, 0.7),
    }
}

/// At 24 pixels any two of the twelve pieces differ plainly, on the same square.
#[test]
fn the_twelve_men_are_told_apart_at_24_pixels() {
    for style in Style::ALL {
        let empty = diagram(set(&[]), style, SIZES[0]);
        let layout = empty.layout();
        assert_eq!(layout.square, 24.0);
        for square in SHADES {
            let pieces: Vec<(Piece, Vec<f64>)> = all_pieces()
                .map(|piece| {
                    let map = drawn(&diagram(set(&[(square, piece)]), style, SIZES[0]));
                    let patch = Patch::of(&map, layout.corner(square), layout.square);
                    let (_, full) = &SIGHTS[0];
                    let light = patch.pixels.iter().map(|&p| luminance(p, full)).collect();
                    (piece, light)
                })
                .collect();
            for (i, (a, light_a)) in pieces.iter().enumerate() {
                for (b, light_b) in &pieces[..i] {
                    let differ = light_a
                        .iter()
                        .zip(light_b)
                        .filter(|(x, y)| contrast(**x, **y) >= 2.0)
                        .count();
                    // 4 % of the square: 23 pixels. White and black kings differ in far more; the
                    // nearest pair is a king and a queen of one colour.
                    assert!(
                        differ * 25 >= light_a.len(),
                        "{style:?} {square}: {a:?} and {b:?} differ in {differ} pixels"
                    );
                }
            }
        }
    }
}

fn every_mark(at: Square, from: Square) -> Vec<SceneMark> {
    vec![
        SceneMark::OpenFlight(at),
        SceneMark::GuardedFlight(at),
        SceneMark::BlockedFlight(at),
        SceneMark::Square(at),
        SceneMark::Refutation(from, at),
        SceneMark::Step(from, at, 1),
        SceneMark::Guard(from, at),
    ]
}

/// Whatever a mark crosses (either shade, a white or a black piece), a fifth of it at least stands out
/// from that by 3:1.
#[test]
fn every_mark_stands_out_from_what_it_lies_on() {
    for style in Style::ALL {
        for square in SHADES {
            for piece in [None, Some(Color::White.rook()), Some(Color::Black.rook())] {
                let pieces: Vec<(Square, Piece)> = piece.map(|m| (square, m)).into_iter().collect();
                let plain = diagram(set(&pieces), style, 720);
                let layout = plain.layout();
                let ground = drawn(&plain);
                let empty = drawn(&diagram(set(&[]), style, 720));
                let corner = layout.corner(square);
                let below = Patch::of(&ground, corner, layout.square);
                let shade = Patch::of(&empty, corner, layout.square);
                // A line right across the square, and signs on it.
                let from = Square::from_coords(square.file(), shakmaty::Rank::First);
                for mark in every_mark(square, from) {
                    let mut marked = plain.clone();
                    marked.marks = vec![mark];
                    let with = Patch::of(&drawn(&marked), corner, layout.square);
                    let added = with.added(&below);
                    assert!(!added.is_empty(), "{style:?} {square} {piece:?} {mark:?}");
                    for (name, sight) in &SIGHTS {
                        let ground = shade.mean(sight);
                        let clear: f64 = added
                            .iter()
                            .filter(|(rgb, _)| contrast(luminance(*rgb, sight), ground) >= 3.0)
                            .map(|(_, share)| share)
                            .sum();
                        assert!(
                            clear >= 0.2,
                            "{style:?} {square} {piece:?} {mark:?} {name}: {clear:.2}"
                        );
                    }
                }
            }
        }
    }
}

/// Where a mark lies over a piece, core and casing are 3:1 apart, so one of them always shows.
#[test]
fn core_and_casing_of_every_mark_are_far_apart() {
    for style in Style::ALL {
        let palette = palette::of(style);
        for ink in [
            palette.last,
            palette.refutation,
            palette.step,
            palette.open,
            palette.guard,
            palette.blocked,
            palette.spot,
        ] {
            // As painted, not as written.
            let mut canvas = Canvas::new(2.0, 1.0, Words::Outlined);
            canvas.rect(0.0, 0.0, 1.0, 1.0, Paint::fill(ink));
            canvas.rect(1.0, 0.0, 1.0, 1.0, Paint::fill(palette.casing));
            let map = raster::pixels(&canvas.finish(""), 1.0).expect("draws");
            let [a, b] = [0, 1].map(|i| {
                let p = map.pixels()[i];
                [p.red(), p.green(), p.blue()]
            });
            for (name, sight) in &SIGHTS {
                let ratio = contrast(luminance(a, sight), luminance(b, sight));
                assert!(ratio >= 3.0, "{style:?} {ink} {name}: {ratio:.2}");
            }
        }
    }
}

/// The last move is framed plainly on either shade.
#[test]
fn the_last_move_stands_out() {
    for style in Style::ALL {
        let plain = diagram(set(&[]), style, 720);
        let mut moved = plain.clone();
        moved.last_move = Some((Square::E4, Square::D4));
        let layout = plain.layout();
        let (before, after) = (drawn(&plain), drawn(&moved));
        for square in SHADES {
            let corner = layout.corner(square);
            let below = Patch::of(&before, corner, layout.square);
            let with = Patch::of(&after, corner, layout.square);
            for (name, sight) in &SIGHTS {
                let shade = below.mean(sight);
                let clear: f64 = with
                    .added(&below)
                    .iter()
                    .filter(|(rgb, _)| contrast(luminance(*rgb, sight), shade) >= 3.0)
                    .map(|(_, share)| share)
                    .sum();
                assert!(clear >= 0.25, "{style:?} {square} {name}: {clear:.2}");
            }
        }
    }
}

/// Drawn in one ink, no two signs look alike: shape alone tells them apart.
#[test]
fn signs_are_told_apart_by_shape_alone() {
    let mut one_ink = *palette::of(Style::Print);
    for ink in [
        &mut one_ink.last,
        &mut one_ink.refutation,
        &mut one_ink.step,
        &mut one_ink.open,
        &mut one_ink.guard,
        &mut one_ink.blocked,
        &mut one_ink.spot,
    ] {
        *ink = "#000000";
    }
    let masks: Vec<(Sign, Vec<bool>)> = Sign::ALL
        .into_iter()
        .map(|sign| {
            let mut canvas = Canvas::new(60.0, 60.0, Words::Outlined);
            canvas.rect(0.0, 0.0, 60.0, 60.0, Paint::fill("#ffffff"));
            sign.draw(&mut canvas, (15.0, 15.0), 30.0, &one_ink);
            let map = raster::pixels(&canvas.finish(""), 1.0).expect("draws");
            (sign, map.pixels().iter().map(|p| p.red() < 128).collect())
        })
        .collect();
    for (i, (a, mask_a)) in masks.iter().enumerate() {
        for (b, mask_b) in &masks[..i] {
            let pairs = || mask_a.iter().zip(mask_b);
            let either = pairs().filter(|(x, y)| **x || **y).count() as f64;
            let both = pairs().filter(|(x, y)| **x && **y).count() as f64;
            assert!(
                both / either < 0.62,
                "{a:?} and {b:?}: {:.2}",
                both / either
            );
        }
    }
}

/// Words and figures of charts against their page, and of boards against theirs.
#[test]
fn words_and_bars_are_readable() {
    for theme in Theme::ALL {
        let topics = vec![chart::Mastery {
            topic: "Back rank".into(),
            tried: 10,
            solved: 6,
            first_try: 3,
        }];
        let svg = chart::mastery(Text::ChartMastery, topics).svg(theme, &english());
        let map = raster::pixels(&svg, 1.0).expect("draws");
        let inks = theme.inks();
        let page = painted(&map, inks.page);
        for (ink, least) in [
            (inks.ink, 4.5),
            (inks.quiet, 4.5),
            (inks.strong, 3.0),
            (inks.soft, 3.0),
        ] {
            let ink_rgb = painted(&map, ink);
            for (name, sight) in &SIGHTS {
                let ratio = contrast(luminance(ink_rgb, sight), luminance(page, sight));
                assert!(ratio >= least, "{theme:?} {ink} {name}: {ratio:.2}");
            }
        }
    }
    for style in Style::ALL {
        let palette = palette::of(style);
        let map = drawn(&diagram(Chess::default(), style, 720));
        let (ink, page) = (painted(&map, palette.ink), painted(&map, palette.page));
        for (name, sight) in &SIGHTS {
            let ratio = contrast(luminance(ink, sight), luminance(page, sight));
            assert!(ratio >= 4.5, "{style:?} {name}: {ratio:.2}");
        }
    }
}

/// The colour `written` as it is found in the picture; it must be there.
fn painted(map: &Pixmap, written: &str) -> [u8; 3] {
    let value = u32::from_str_radix(&written[1..], 16).expect("a colour");
    let rgb = [(value >> 16) as u8, (value >> 8) as u8, value as u8];
    let count = map
        .pixels()
        .iter()
        .filter(|p| [p.red(), p.green(), p.blue()] == rgb)
        .count();
    assert!(count > 20, "{written} is not in the picture");
    rgb
}
