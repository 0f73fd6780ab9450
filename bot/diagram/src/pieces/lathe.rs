//! The two tools every piece is built with: a lathe for what is turned, a pen for what is carved.
//!
//! A piece stands in a field of 100 by 100 units, y downwards, its axis at x = 50 and its foot on
//! y = [`FOOT`]. A lathe profile is the right-hand half of a turned body, given from its foot
//! upwards as half-widths; the left half is its mirror image.

use std::fmt::Write;

use super::super::number::num;

/// Where pieces stand.
pub(in super::super) const FOOT: f32 = 91.0;

/// The axis of turned pieces.
pub(super) const AXIS: f32 = 50.0;

type Point = (f32, f32);

#[derive(Clone, Copy)]
enum Segment {
    Line(Point),
    Curve(Point, Point, Point),
}

/// A half profile under construction; x counts outwards from the axis.
pub(super) struct Lathe {
    start: Point,
    segments: Vec<Segment>,
}

impl Lathe {
    pub(super) fn from(half: f32, y: f32) -> Self {
        Self {
            start: (half, y),
            segments: Vec::new(),
        }
    }

    /// Straight on to half-width `half` at height `y`.
    pub(super) fn line(mut self, half: f32, y: f32) -> Self {
        self.segments.push(Segment::Line((half, y)));
        self
    }

    /// A cubic curve with its two control points.
    pub(super) fn curve(mut self, a: Point, b: Point, to: Point) -> Self {
        self.segments.push(Segment::Curve(a, b, to));
        self
    }

    /// Path data of the whole body: up the right side, down the mirrored left.
    pub(super) fn turned(&self) -> String {
        let right = |(x, y): Point| format!("{} {}", num(AXIS + x), num(y));
        let left = |(x, y): Point| format!("{} {}", num(AXIS - x), num(y));
        let mut d = format!("M{}", right(self.start));
        let mut ends = vec![self.start];
        for segment in &self.segments {
            match *segment {
                Segment::Line(to) => {
                    let _ = write!(d, "L{}", right(to));
                    ends.push(to);
                }
                Segment::Curve(a, b, to) => {
                    let _ = write!(d, "C{} {} {}", right(a), right(b), right(to));
                    ends.push(to);
                }
            }
        }
        if let Some(&top) = ends.last() {
            let _ = write!(d, "L{}", left(top));
        }
        for (segment, &to) in self.segments.iter().zip(&ends).rev() {
            let _ = match *segment {
                Segment::Line(_) => write!(d, "L{}", left(to)),
                Segment::Curve(a, b, _) => write!(d, "C{} {} {}", left(b), left(a), left(to)),
            };
        }
        d.push('Z');
        d
    }
}

/// A ring across a turned body, as its front edge is seen from a little above: from half-width
/// `half` at `y`, bowed down by `sag`.
pub(super) fn ring(half: f32, y: f32, sag: f32) -> String {
    format!(
        "M{} {}Q{} {} {} {}",
        num(AXIS - half),
        num(y),
        num(AXIS),
        num(y + 2.0 * sag),
        num(AXIS + half),
        num(y)
    )
}

/// A ball of radius `r` on the axis.
pub(super) fn ball(y: f32, r: f32) -> String {
    disc(AXIS, y, r)
}

/// A disc anywhere.
pub(super) fn disc(x: f32, y: f32, r: f32) -> String {
    format!(
        "M{} {}a{r} {r} 0 1 1 {d} 0a{r} {r} 0 1 1 {back} 0Z",
        num(x - r),
        num(y),
        r = num(r),
        d = num(2.0 * r),
        back = num(-2.0 * r)
    )
}

/// The plinth all pieces share, `half` wide: a slab with a rounded edge.
pub(super) fn plinth(half: f32) -> String {
    Lathe::from(half, FOOT)
        .curve(
            (half + 1.2, FOOT - 2.0),
            (half + 1.2, FOOT - 6.0),
            (half - 1.5, FOOT - 8.0),
        )
        .turned()
}
