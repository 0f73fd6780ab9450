//! A sheet of SVG being written: shapes, groups and words, each a few characters of markup.
//!
//! Everything goes in as numbers and colours of ours; the only foreign text is what [`Canvas::text`]
//! and the description take, and both are escaped or drawn as outlines.

use std::fmt::Write;

use super::lettering::{self, Anchor, Weight};
use super::number::num;

/// `text` with the characters that mean something to XML written as entities, controls left out.
pub(super) fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            '\n' | '\t' => out.push(' '),
            c if c.is_control() || matches!(c, '\u{FFFE}' | '\u{FFFF}') => {}
            c => out.push(c),
        }
    }
    out
}

/// Whether words become outlines or stay text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Words {
    /// Paths: the picture stands alone.
    Outlined,
    /// Text elements: for print, where words should be found and copied.
    Live,
}

/// How a shape is painted; an empty colour paints nothing.
#[derive(Clone, Copy, Debug)]
pub(super) struct Paint<'a> {
    pub fill: &'a str,
    pub stroke: &'a str,
    pub width: f32,
    /// Dash and gap, or none.
    pub dash: Option<(f32, f32)>,
}

impl<'a> Paint<'a> {
    pub(super) fn fill(fill: &'a str) -> Self {
        Self {
            fill,
            stroke: "",
            width: 0.0,
            dash: None,
        }
    }

    pub(super) fn stroke(stroke: &'a str, width: f32) -> Self {
        Self {
            fill: "",
            stroke,
            width,
            dash: None,
        }
    }

    pub(super) fn dashed(self, dash: f32, gap: f32) -> Self {
        Self {
            dash: Some((dash, gap)),
            ..self
        }
    }

    fn attributes(&self) -> String {
        let mut out = String::new();
        let fill = if self.fill.is_empty() {
            "none"
        } else {
            self.fill
        };
        let _ = write!(out, " fill=\"{fill}\"");
        if !self.stroke.is_empty() {
            let _ = write!(
                out,
                " stroke=\"{}\" stroke-width=\"{}\" stroke-linejoin=\"round\"",
                self.stroke,
                num(self.width)
            );
            match self.dash {
                None => out.push_str(" stroke-linecap=\"round\""),
                Some((dash, gap)) => {
                    let _ = write!(out, " stroke-dasharray=\"{} {}\"", num(dash), num(gap));
                }
            }
        }
        out
    }
}

/// How a line of words is set.
#[derive(Clone, Copy, Debug)]
pub(super) struct Hand<'a> {
    pub size: f32,
    pub weight: Weight,
    pub anchor: Anchor,
    pub ink: &'a str,
}

impl<'a> Hand<'a> {
    pub(super) fn new(size: f32, ink: &'a str) -> Self {
        Self {
            size,
            weight: Weight::Regular,
            anchor: Anchor::Start,
            ink,
        }
    }

    pub(super) fn bold(self) -> Self {
        Self {
            weight: Weight::Semibold,
            ..self
        }
    }

    pub(super) fn middle(self) -> Self {
        Self {
            anchor: Anchor::Middle,
            ..self
        }
    }

    pub(super) fn end(self) -> Self {
        Self {
            anchor: Anchor::End,
            ..self
        }
    }

    pub(super) fn width(&self, text: &str) -> f32 {
        lettering::width(text, self.weight, self.size)
    }
}

/// The sheet.
pub(super) struct Canvas {
    pub width: f32,
    pub height: f32,
    words: Words,
    body: String,
}

impl Canvas {
    pub(super) fn new(width: f32, height: f32, words: Words) -> Self {
        Self {
            width,
            height,
            words,
            body: String::with_capacity(32 * 1024),
        }
    }

    /// Whether words stay words.
    pub(super) fn live(&self) -> bool {
        self.words == Words::Live
    }

    /// A rectangle; one without width or height (the bar of a zero) is nothing to draw.
    pub(super) fn rect(&mut self, x: f32, y: f32, w: f32, h: f32, paint: Paint<'_>) {
        if w <= 0.0 || h <= 0.0 {
            return;
        }
        let _ = write!(
            self.body,
            "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"{}/>",
            num(x),
            num(y),
            num(w),
            num(h),
            paint.attributes()
        );
    }

    pub(super) fn circle(&mut self, x: f32, y: f32, r: f32, paint: Paint<'_>) {
        let _ = write!(
            self.body,
            "<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>",
            num(x),
            num(y),
            num(r),
            paint.attributes()
        );
    }

    pub(super) fn line(&mut self, from: (f32, f32), to: (f32, f32), paint: Paint<'_>) {
        let d = format!(
            "M{} {}L{} {}",
            num(from.0),
            num(from.1),
            num(to.0),
            num(to.1)
        );
        self.path(&d, paint);
    }

    pub(super) fn path(&mut self, d: &str, paint: Paint<'_>) {
        let _ = write!(self.body, "<path d=\"{d}\"{}/>", paint.attributes());
    }

    /// Words with their baseline at `y`.
    pub(super) fn text(&mut self, text: &str, x: f32, y: f32, hand: Hand<'_>) {
        match self.words {
            Words::Outlined => {
                let d = lettering::outline(text, hand.weight, hand.size, hand.anchor, x, y);
                if !d.is_empty() {
                    self.path(&d, Paint::fill(hand.ink));
                }
            }
            Words::Live => {
                let (family, weight) = match hand.weight {
                    Weight::Regular => (lettering::FAMILY, 400),
                    Weight::Semibold => (lettering::SEMIBOLD_FAMILY, 600),
                };
                let anchor = match hand.anchor {
                    Anchor::Start => "start",
                    Anchor::Middle => "middle",
                    Anchor::End => "end",
                };
                let _ = write!(
                    self.body,
                    "<text x=\"{}\" y=\"{}\" font-family=\"{}\" font-size=\"{}\" font-weight=\"{weight}\" text-anchor=\"{anchor}\" fill=\"{}\" xml:space=\"preserve\">{}</text>",
                    num(x),
                    num(y),
                    family,
                    num(hand.size),
                    hand.ink,
                    escape(&lettering::showable(text))
                );
            }
        }
    }

    /// Everything `draw` adds is moved to `x`, `y` and scaled.
    pub(super) fn placed(&mut self, x: f32, y: f32, scale: f32, draw: impl FnOnce(&mut Self)) {
        let _ = write!(
            self.body,
            "<g transform=\"translate({} {}) scale({})\">",
            num(x),
            num(y),
            (scale * 1e5).round() / 1e5
        );
        draw(self);
        self.body.push_str("</g>");
    }

    /// The finished document; `description` is for readers who do not see it.
    pub(super) fn finish(self, description: &str) -> String {
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}\" height=\"{h}\" viewBox=\"0 0 {w} {h}\" role=\"img\"><desc>{}</desc>{}</svg>\n",
            escape(description),
            self.body,
            w = num(self.width),
            h = num(self.height),
        )
    }
}
