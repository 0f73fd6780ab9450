//! SVG to pixels, and pixels to a small PNG.
//!
//! A diagram has few colours: most pixels are one of a dozen, the rest are the soft edges between
//! them. So a picture is written in grey when it is grey, else with a palette of at most 256 colours
//! (the rare edge shades beyond that go to their nearest neighbour), which makes it a third of the
//! size of a true-colour file.

use std::collections::HashMap;

use resvg::tiny_skia::{Pixmap, Transform};
use resvg::usvg;

use super::DiagramError;

/// The widest and highest picture we draw, in pixels.
const LIMIT: u32 = 6_000;

fn refused(what: impl std::fmt::Display) -> DiagramError {
    DiagramError::Render(what.to_string())
}

/// Draws `svg` at its own size times `scale`.
pub(super) fn pixels(svg: &str, scale: f32) -> Result<Pixmap, DiagramError> {
    let tree = usvg::Tree::from_str(svg, &usvg::Options::default()).map_err(refused)?;
    let size = tree.size();
    let (w, h) = (size.width() * scale, size.height() * scale);
    let (w, h) = (w.round() as u32, h.round() as u32);
    if w == 0 || h == 0 || w > LIMIT || h > LIMIT {
        return Err(refused(format!(
            "a picture of {w} by {h} pixels; ask for 1 to {LIMIT} each way"
        )));
    }
    let mut map = Pixmap::new(w, h).ok_or_else(|| refused("no room for the picture"))?;
    resvg::render(
        &tree,
        Transform::from_scale(scale, scale),
        &mut map.as_mut(),
    );
    Ok(map)
}

/// Draws `svg` at its own size and packs it.
pub(super) fn png(svg: &str) -> Result<Vec<u8>, DiagramError> {
    pack(&pixels(svg, 1.0)?)
}

/// The colours of a picture, at most 256, and each pixel's place among them.
pub(super) struct Indexed {
    pub palette: Vec<[u8; 3]>,
    pub pixels: Vec<u8>,
}

/// Packs opaque pixels into a PNG.
pub(super) fn pack(map: &Pixmap) -> Result<Vec<u8>, DiagramError> {
    let grey = map
        .pixels()
        .iter()
        .all(|p| p.red() == p.green() && p.green() == p.blue());
    let mut out = Vec::new();
    let mut encoder = png::Encoder::new(&mut out, map.width(), map.height());
    encoder.set_depth(png::BitDepth::Eight);
    encoder.set_compression(png::Compression::Default);
    encoder.set_filter(png::FilterType::NoFilter);
    let data: Vec<u8> = if grey {
        encoder.set_color(png::ColorType::Grayscale);
        map.pixels().iter().map(|p| p.red()).collect()
    } else {
        let indexed = index(map);
        encoder.set_color(png::ColorType::Indexed);
        encoder.set_palette(indexed.palette.concat());
        indexed.pixels
    };
    let mut writer = encoder.write_header().map_err(refused)?;
    writer.write_image_data(&data).map_err(refused)?;
    writer.finish().map_err(refused)?;
    Ok(out)
}

/// The pixels of `map` by palette: the most frequent colours, everything else to the nearest.
pub(super) fn index(map: &Pixmap) -> Indexed {
    let colour = |p: &resvg::tiny_skia::PremultipliedColorU8| [p.red(), p.green(), p.blue()];
    let mut counts: HashMap<[u8; 3], u32> = HashMap::new();
    let mut last = ([0; 3], 0);
    for p in map.pixels() {
        let c = colour(p);
        if c == last.0 {
            last.1 += 1;
        } else {
            if last.1 > 0 {
                *counts.entry(last.0).or_default() += last.1;
            }
            last = (c, 1);
        }
    }
    *counts.entry(last.0).or_default() += last.1;
    let mut by_count: Vec<([u8; 3], u32)> = counts.into_iter().collect();
    by_count.sort_by(|a, b| b.1.cmp(&a.1).then(a.0.cmp(&b.0)));
    let palette = choose(&by_count);
    let mut place: HashMap<[u8; 3], u8> = HashMap::with_capacity(by_count.len());
    for (c, _) in &by_count {
        place.insert(*c, nearest(&palette, *c).0);
    }
    let mut last = ([0; 3], place.get(&[0; 3]).copied().unwrap_or(0));
    let pixels = map
        .pixels()
        .iter()
        .map(|p| {
            let c = colour(p);
            if c != last.0 {
                last = (c, place[&c]);
            }
            last.1
        })
        .collect();
    Indexed { palette, pixels }
}

/// At most 256 colours for a picture: by frequency, skipping one that has a close neighbour already.
fn choose(by_count: &[([u8; 3], u32)]) -> Vec<[u8; 3]> {
    if by_count.len() <= 256 {
        return by_count.iter().map(|(c, _)| *c).collect();
    }
    let mut palette: Vec<[u8; 3]> = Vec::with_capacity(256);
    // A first pass keeps colours well apart so that the whole range is covered, a second fills up.
    for apart in [300, 60, 0] {
        for (c, _) in by_count {
            if palette.len() == 256 {
                return palette;
            }
            if palette.is_empty() || nearest(&palette, *c).1 > apart {
                palette.push(*c);
            }
        }
    }
    palette
}

fn nearest(palette: &[[u8; 3]], c: [u8; 3]) -> (u8, u32) {
    let mut best = (0, u32::MAX);
    for (i, p) in palette.iter().enumerate() {
        let distance = (0..3)
            .map(|k| {
                let d = i32::from(p[k]) - i32::from(c[k]);
                (d * d) as u32
            })
            .sum();
        if distance < best.1 {
            best = (i as u8, distance);
            if distance == 0 {
                break;
            }
        }
    }
    best
}
