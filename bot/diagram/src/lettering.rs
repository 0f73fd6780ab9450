//! Words set as outlines: text is shaped with the embedded font and written into the picture as
//! paths, so that a picture looks the same everywhere and needs no font of the machine.
//!
//! The font is Libertinus Serif (SIL Open Font License, see `font/OFL.txt`), cut down to the Latin,
//! Greek and Cyrillic letters that names and captions need.

use std::fmt::Write;
use std::sync::OnceLock;

use rustybuzz::ttf_parser::{GlyphId, OutlineBuilder};
use rustybuzz::{Face, UnicodeBuffer};

use super::number::num;

pub(super) const REGULAR: &[u8] = include_bytes!("font/LibertinusSerif-Regular.otf");
pub(super) const SEMIBOLD: &[u8] = include_bytes!("font/LibertinusSerif-Semibold.otf");

/// The font's family name, for pictures that keep text as text.
pub(super) const FAMILY: &str = "Libertinus Serif";

/// The semibold is a family of its own by its name table.
pub(super) const SEMIBOLD_FAMILY: &str = "Libertinus Serif Semibold";

/// Height of a capital letter, as a part of the font size.
pub(super) const CAP: f32 = 0.645;

/// Shown for a character the font does not hold.
const MISSING: char = '\u{25A1}';

/// How heavy the letters are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Weight {
    Regular,
    Semibold,
}

/// Where the given point lies on the text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Anchor {
    Start,
    Middle,
    End,
}

fn face(weight: Weight) -> &'static Face<'static> {
    static FACES: OnceLock<[Face<'static>; 2]> = OnceLock::new();
    let faces = FACES.get_or_init(|| {
        // The fonts are part of the program.
        #[allow(clippy::expect_used)]
        let read = |bytes| Face::from_slice(bytes, 0).expect("the embedded font is a font");
        [read(REGULAR), read(SEMIBOLD)]
    });
    match weight {
        Weight::Regular => &faces[0],
        Weight::Semibold => &faces[1],
    }
}

/// `text` without control characters, and with a box for whatever the font cannot show.
pub(super) fn showable(text: &str) -> String {
    let face = face(Weight::Regular);
    text.chars()
        .filter(|c| !c.is_control())
        .map(|c| {
            if face.glyph_index(c).is_some() {
                c
            } else {
                MISSING
            }
        })
        .collect()
}

fn shape(text: &str, weight: Weight) -> rustybuzz::GlyphBuffer {
    let mut buffer = UnicodeBuffer::new();
    buffer.push_str(&showable(text));
    buffer.guess_segment_properties();
    rustybuzz::shape(face(weight), &[], buffer)
}

/// How wide `text` is when set at `size`.
pub(super) fn width(text: &str, weight: Weight, size: f32) -> f32 {
    let units: i32 = shape(text, weight)
        .glyph_positions()
        .iter()
        .map(|p| p.x_advance)
        .sum();
    units as f32 * size / face(weight).units_per_em() as f32
}

/// Path data of `text` at `size`, its baseline at `y`.
pub(super) fn outline(
    text: &str,
    weight: Weight,
    size: f32,
    anchor: Anchor,
    x: f32,
    y: f32,
) -> String {
    let shaped = shape(text, weight);
    let face = face(weight);
    let scale = size / face.units_per_em() as f32;
    let total: i32 = shaped.glyph_positions().iter().map(|p| p.x_advance).sum();
    let shift = match anchor {
        Anchor::Start => 0.0,
        Anchor::Middle => total as f32 * scale / 2.0,
        Anchor::End => total as f32 * scale,
    };
    let mut pen = Pen {
        d: String::new(),
        x: x - shift,
        y,
        scale,
    };
    for (info, place) in shaped.glyph_infos().iter().zip(shaped.glyph_positions()) {
        let (home_x, home_y) = (pen.x, pen.y);
        pen.x += place.x_offset as f32 * scale;
        pen.y -= place.y_offset as f32 * scale;
        face.outline_glyph(GlyphId(info.glyph_id as u16), &mut pen);
        pen.x = home_x + place.x_advance as f32 * scale;
        pen.y = home_y;
    }
    pen.d
}

/// `text` cut to `room`, with an ellipsis where something was left out.
pub(super) fn fitted(text: &str, weight: Weight, size: f32, room: f32) -> String {
    if width(text, weight, size) <= room {
        return text.to_owned();
    }
    let mut chars: Vec<char> = text.chars().collect();
    while chars.pop().is_some() {
        let cut: String = chars.iter().collect::<String>().trim_end().to_owned() + "…";
        if width(&cut, weight, size) <= room {
            return cut;
        }
    }
    String::new()
}

/// `text` in lines no wider than `room`, broken between words; a word that has no room on a line of its own
/// is broken within. Nothing is left out.
pub(super) fn wrapped(text: &str, weight: Weight, size: f32, room: f32) -> Vec<String> {
    let fits = |line: &str| width(line, weight, size) <= room;
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    for word in text.split_whitespace() {
        let joined = match line.as_str() {
            "" => word.to_owned(),
            line => format!("{line} {word}"),
        };
        if fits(&joined) {
            line = joined;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        for letter in word.chars() {
            line.push(letter);
            if !fits(&line) && line.chars().count() > 1 {
                line.pop();
                lines.push(std::mem::take(&mut line));
                line.push(letter);
            }
        }
    }
    if !line.is_empty() || lines.is_empty() {
        lines.push(line);
    }
    lines
}

/// Writes glyph outlines as path data, y downwards.
struct Pen {
    d: String,
    x: f32,
    y: f32,
    scale: f32,
}

impl Pen {
    fn at(&mut self, x: f32, y: f32) {
        let (x, y) = (self.x + x * self.scale, self.y - y * self.scale);
        let _ = write!(self.d, "{} {} ", num(x), num(y));
    }
}

impl OutlineBuilder for Pen {
    fn move_to(&mut self, x: f32, y: f32) {
        self.d.push('M');
        self.at(x, y);
    }
    fn line_to(&mut self, x: f32, y: f32) {
        self.d.push('L');
        self.at(x, y);
    }
    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        self.d.push('Q');
        self.at(x1, y1);
        self.at(x, y);
    }
    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        self.d.push('C');
        self.at(x1, y1);
        self.at(x2, y2);
        self.at(x, y);
    }
    fn close(&mut self) {
        self.d.push('Z');
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_of_every_language_we_post_in_are_there() {
        let pangrams = [
            "Příliš žluťoučký kůň úpěl ďábelské ódy",
            "Zażółć gęślą jaźń ĄĆĘŁŃÓŚŹŻ",
            "Árvíztűrő tükörfúrógép ŐŰ",
            "Съешь же ещё этих мягких французских булок да выпей чаю ЁЙ",
            "Жебракують філософи при ґанку церкви, ще й їх сорочки",
            "Zwölf Boxkämpfer jagen Viktor quer über den großen Sylter Deich",
            "Voix ambiguë d’un cœur qui, au zéphyr, préfère les jattes de kiwis",
            "¿El pingüino Wenceslao hizo kilómetros? ¡Ñandú!",
            "Luís argüia à Júlia que «brações, fé, chá»",
            "Quel vituperabile xenofobo zelante assaggia il whisky: perché?",
            "Pijamalı hasta yağız şoföre çabucak güvendi; Șț Țț",
            "Ξεσκεπάζω την ψυχοφθόρα βδελυγμία",
        ];
        for text in pangrams {
            for weight in [Weight::Regular, Weight::Semibold] {
                let face = face(weight);
                let missing: String = text
                    .chars()
                    .filter(|&c| face.glyph_index(c).is_none())
                    .collect();
                assert!(missing.is_empty(), "{weight:?} lacks {missing:?}");
            }
        }
    }

    #[test]
    fn what_the_font_lacks_is_a_box_and_controls_vanish() {
        assert_eq!(showable("a\u{0}b\u{1b}[0m 张"), "ab[0m □");
    }

    #[test]
    fn text_is_fitted_by_its_measured_width() {
        let long = "Bartholomäus Wiesengrund-Żółkiewski";
        let cut = fitted(long, Weight::Regular, 20.0, 120.0);
        assert!(cut.ends_with('…') && width(&cut, Weight::Regular, 20.0) <= 120.0);
        assert_eq!(fitted("Ada", Weight::Regular, 20.0, 120.0), "Ada");
    }

    #[test]
    fn a_middle_anchor_centres() {
        let d = outline("H", Weight::Regular, 100.0, Anchor::Middle, 0.0, 0.0);
        let xs: Vec<f32> = d
            .split(['M', 'L', 'Z'])
            .filter_map(|p| p.split(' ').next()?.parse().ok())
            .collect();
        let (low, high) = xs
            .iter()
            .fold((f32::MAX, f32::MIN), |(l, h), &x| (l.min(x), h.max(x)));
        assert!((low + high).abs() < 3.0, "{low} {high}");
    }
}
