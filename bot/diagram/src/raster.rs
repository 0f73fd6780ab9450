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

/// Draws `svg` over what `map` shows already.
pub(super) fn onto(map: &mut Pixmap, svg: &str) -> Result<(), DiagramError> {
    let tree = usvg::Tree::from_str(svg, &usvg::Options::default()).map_err(refused)?;
    resvg::render(&tree, Transform::identity(), &mut map.as_mut());
    Ok(())
}

/// Draws `svg` at its own size and packs it.
pub(super) fn png(svg: &str) -> Result<Vec<u8>, DiagramError> {
    pack(&pixels(svg, 1.0)?)
}

/// `below` set under `above`; both have one width.
pub(super) fn stacked(above: &Pixmap, below: &Pixmap) -> Result<Pixmap, DiagramError> {
    let height = above.height() + below.height();
    let mut map =
        Pixmap::new(above.width(), height).ok_or_else(|| refused("no room for the picture"))?;
    let (top, bottom) = map.data_mut().split_at_mut(above.data().len());
    if bottom.len() != below.data().len() {
        return Err(refused("two pictures of different widths"));
    }
    top.copy_from_slice(above.data());
    bottom.copy_from_slice(below.data());
    Ok(map)
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
    encoder.set_compression(png::Compression::Balanced);
    encoder.set_filter(png::Filter::NoFilter);
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
    let (colours, places) = colours(map);
    let mut order: Vec<usize> = (0..colours.len()).collect();
    order.sort_by_key(|&i| (std::cmp::Reverse(colours[i].count), colours[i].rgb));
    let palette = choose(order.iter().map(|&i| colours[i].rgb), colours.len());
    let to: Vec<u8> = colours.iter().map(|c| palette.nearest(c.rgb).0).collect();
    Indexed {
        pixels: places.into_iter().map(|i| to[i as usize]).collect(),
        palette: palette.colours,
    }
}

/// A colour and how many pixels have it.
struct Counted {
    rgb: [u8; 3],
    count: u32,
}

/// The different colours of a picture, and for each pixel which one it has.
fn colours(map: &Pixmap) -> (Vec<Counted>, Vec<u32>) {
    let mut found: HashMap<[u8; 3], u32> = HashMap::new();
    let mut counted: Vec<Counted> = Vec::new();
    // Neighbours are mostly alike, and soft edges come in few shades: look there before hashing.
    let mut recent = [([0u8; 3], u32::MAX); 1024];
    let places = map
        .pixels()
        .iter()
        .map(|p| {
            let rgb = [p.red(), p.green(), p.blue()];
            let slot =
                (usize::from(rgb[0]) * 31 + usize::from(rgb[1]) * 17 + usize::from(rgb[2]) * 7)
                    % recent.len();
            let (last, mut place) = recent[slot];
            if last != rgb || place == u32::MAX {
                place = *found.entry(rgb).or_insert_with(|| {
                    counted.push(Counted { rgb, count: 0 });
                    counted.len() as u32 - 1
                });
                recent[slot] = (rgb, place);
            }
            counted[place as usize].count += 1;
            place
        })
        .collect();
    (counted, places)
}

/// At most 256 colours, with their channels apart so that the nearest is found quickly.
#[derive(Default)]
struct Palette {
    colours: Vec<[u8; 3]>,
    channels: [Vec<i32>; 3],
}

impl Palette {
    fn push(&mut self, rgb: [u8; 3]) {
        self.colours.push(rgb);
        for (channel, value) in self.channels.iter_mut().zip(rgb) {
            channel.push(value.into());
        }
    }

    /// The place of the nearest colour and the square of its distance.
    fn nearest(&self, rgb: [u8; 3]) -> (u8, i32) {
        let [r, g, b] = rgb.map(i32::from);
        let [reds, greens, blues] = &self.channels;
        let best = reds
            .iter()
            .zip(greens)
            .zip(blues)
            .enumerate()
            .map(|(i, ((x, y), z))| {
                let distance = (x - r) * (x - r) + (y - g) * (y - g) + (z - b) * (z - b);
                // Distance and place in one number: at most 3 * 255^2, and at most 255.
                (distance << 8) | i as i32
            })
            .min()
            .unwrap_or(i32::MAX);
        ((best & 0xff) as u8, best >> 8)
    }
}

/// At most 256 colours out of those given by frequency: a first pass keeps colours well apart, so
/// that the whole range is covered, the later ones fill up.
fn choose(by_frequency: impl Iterator<Item = [u8; 3]> + Clone, many: usize) -> Palette {
    let mut palette = Palette::default();
    let passes: &[i32] = if many <= 256 {
        &[-1]
    } else {
        &[4_000, 800, 150, 0]
    };
    for &apart in passes {
        for rgb in by_frequency.clone() {
            if palette.colours.len() == 256 {
                return palette;
            }
            if apart < 0 || palette.nearest(rgb).1 > apart {
                palette.push(rgb);
            }
        }
    }
    palette
}

#[cfg(test)]
mod tests {
    use super::*;

    fn picture(colours: impl Iterator<Item = [u8; 3]>, wide: u32) -> Pixmap {
        let colours: Vec<_> = colours.collect();
        let mut map = Pixmap::new(wide, colours.len() as u32 / wide).expect("a pixmap");
        for (pixel, [r, g, b]) in map.pixels_mut().iter_mut().zip(colours) {
            *pixel = resvg::tiny_skia::ColorU8::from_rgba(r, g, b, 255).premultiply();
        }
        map
    }

    #[test]
    fn few_colours_are_kept_exactly() {
        let wanted: Vec<[u8; 3]> = (0..200u8).map(|i| [i, 255 - i, i / 2]).collect();
        let map = picture(wanted.iter().copied(), 20);
        let indexed = index(&map);
        let got: Vec<[u8; 3]> = indexed
            .pixels
            .iter()
            .map(|&i| indexed.palette[usize::from(i)])
            .collect();
        assert_eq!(got, wanted);
    }

    #[test]
    fn many_colours_go_to_a_near_one() {
        // 4,096 colours, a grid over the whole cube: no palette of 256 can be nearer than this.
        let wanted: Vec<[u8; 3]> = (0..4_096u32)
            .map(|i| [i % 16, (i / 16) % 16, i / 256].map(|c| (c * 17) as u8))
            .collect();
        let indexed = index(&picture(wanted.iter().copied(), 64));
        assert!(indexed.palette.len() <= 256);
        for (rgb, &i) in wanted.iter().zip(&indexed.pixels) {
            let got = indexed.palette[usize::from(i)];
            let far = (0..3).map(|k| got[k].abs_diff(rgb[k])).max();
            assert!(far <= Some(120), "{rgb:?} became {got:?}");
        }
    }

    #[test]
    fn a_picture_survives_packing() {
        let grey = picture((0..=255u8).map(|v| [v, v, v]), 16);
        let coloured = picture((0..=255u8).map(|v| [v, 0, 255 - v]), 16);
        for map in [grey, coloured] {
            let back = Pixmap::decode_png(&pack(&map).expect("packs")).expect("a PNG");
            assert_eq!(back.data(), map.data());
        }
    }

    #[test]
    fn an_impossible_size_is_an_error_that_names_it() {
        let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"7000\" height=\"10\"/>";
        let error = pixels(svg, 1.0).expect_err("too wide").to_string();
        assert!(
            error.contains("7000 by 10") && error.contains("6000"),
            "{error}"
        );
    }
}
