//! What is pointed out: frames, arrows, guard lines and the signs of flights.
//!
//! Each meaning has a shape of its own, so that colour is never the only difference:
//! corner ticks and a frame for the last move; a broad arrow for the refutation; slimmer arrows with
//! numbers for a line; a ring for an open flight; a cross for a guarded one; a pair of brackets for
//! one blocked by the king's own piece; a dashed line from a guard; a lozenge for a square to look at.

use shakmaty::{Position, Square};

use super::super::canvas::{Canvas, Hand, Paint};
use super::super::lettering::CAP;
use super::super::number::num;
use super::super::palette::Palette;
use super::{Diagram, Layout};
use sealed_move_chess::scene::SceneMark;

type Point = (f32, f32);

/// Marks that lie under the pieces.
pub(super) fn below(canvas: &mut Canvas, layout: &Layout, diagram: &Diagram, palette: &Palette) {
    if let Some((from, to)) = diagram.last_move {
        ticks(canvas, layout.corner(from), layout.square, palette);
        frame(canvas, layout.corner(to), layout.square, palette);
    }
    for mark in &diagram.marks {
        match *mark {
            SceneMark::Guard(from, to) => {
                let empty = diagram.position.board().piece_at(to).is_none();
                guard_line(canvas, layout, from, to, empty, palette);
            }
            SceneMark::Square(square) => {
                lozenge(canvas, layout.centre(square), layout.square, palette);
            }
            _ => {}
        }
    }
}

/// Marks that lie over the pieces.
pub(super) fn above(canvas: &mut Canvas, layout: &Layout, diagram: &Diagram, palette: &Palette) {
    let s = layout.square;
    for mark in &diagram.marks {
        match *mark {
            SceneMark::OpenFlight(square) => {
                let (at, size) = sign_place(layout, diagram, square);
                open(canvas, at, size, palette);
            }
            SceneMark::GuardedFlight(square) => {
                let (at, size) = sign_place(layout, diagram, square);
                guarded(canvas, at, size, palette);
            }
            SceneMark::BlockedFlight(square) => {
                blocked(canvas, layout.centre(square), s, palette);
            }
            _ => {}
        }
    }
    let mut numbers: Vec<(Point, u8)> = Vec::new();
    for mark in &diagram.marks {
        match *mark {
            SceneMark::Step(from, to, number) => {
                let (start, end) = ends(layout, diagram, from, to);
                arrow(canvas, start, end, s * 0.075, palette.step, palette.casing);
                numbers.push((free_place(start, end, s, &numbers), number));
            }
            SceneMark::Refutation(from, to) => {
                let (start, end) = ends(layout, diagram, from, to);
                arrow(
                    canvas,
                    start,
                    end,
                    s * 0.13,
                    palette.refutation,
                    palette.casing,
                );
            }
            _ => {}
        }
    }
    for (at, number) in numbers {
        disc(canvas, at, s, number, palette);
    }
}

/// Start and tip of an arrow: clear of the pieces on both squares.
fn ends(layout: &Layout, diagram: &Diagram, from: Square, to: Square) -> (Point, Point) {
    let s = layout.square;
    let gap = |square: Square, empty: f32, occupied: f32| {
        if diagram.position.board().piece_at(square).is_some() {
            s * occupied
        } else {
            s * empty
        }
    };
    shortened(
        layout.centre(from),
        layout.centre(to),
        gap(from, 0.16, 0.38),
        gap(to, 0.04, 0.3),
    )
}

fn shortened(a: Point, b: Point, at_a: f32, at_b: f32) -> (Point, Point) {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let length = dx.hypot(dy).max(0.01);
    let (ux, uy) = (dx / length, dy / length);
    (
        (a.0 + ux * at_a, a.1 + uy * at_a),
        (b.0 - ux * at_b, b.1 - uy * at_b),
    )
}

/// A place for a number on an arrow, away from the other numbers.
fn free_place(start: Point, end: Point, s: f32, taken: &[(Point, u8)]) -> Point {
    let at = |t: f32| {
        (
            start.0 + (end.0 - start.0) * t,
            start.1 + (end.1 - start.1) * t,
        )
    };
    let clear = |p: Point| {
        taken
            .iter()
            .map(|(q, _)| (p.0 - q.0).hypot(p.1 - q.1))
            .fold(f32::MAX, f32::min)
    };
    [0.42, 0.25, 0.6, 0.1]
        .into_iter()
        .map(at)
        .find(|&p| clear(p) > s * 0.36)
        .unwrap_or_else(|| at(0.42))
}

/// An arrow with a clear edge around it.
pub(super) fn arrow(
    canvas: &mut Canvas,
    start: Point,
    tip: Point,
    thick: f32,
    core: &str,
    casing: &str,
) {
    let (dx, dy) = (tip.0 - start.0, tip.1 - start.1);
    let length = dx.hypot(dy).max(0.01);
    let (ux, uy) = (dx / length, dy / length);
    let (half, barb) = (thick / 2.0, thick * 1.55);
    let head = (thick * 2.7).min(length * 0.7);
    // Along and across the arrow to the page.
    let at = |along: f32, across: f32| {
        format!(
            "{} {}",
            num(start.0 + ux * along - uy * across),
            num(start.1 + uy * along + ux * across)
        )
    };
    // The barbs sweep back a little behind the neck.
    let (neck, back) = (length - head, length - head * 1.12);
    let d = format!(
        "M{}L{}L{}L{}L{}L{}L{}Z",
        at(0.0, -half * 0.7),
        at(neck, -half),
        at(back, -barb),
        at(length, 0.0),
        at(back, barb),
        at(neck, half),
        at(0.0, half * 0.7),
    );
    canvas.path(&d, Paint::stroke(casing, (thick * 0.5).max(2.4)));
    canvas.path(&d, Paint::fill(core));
}

fn disc(canvas: &mut Canvas, (x, y): Point, s: f32, number: u8, palette: &Palette) {
    let r = s * 0.165;
    canvas.circle(x, y, r + (s * 0.02).max(1.0), Paint::fill(palette.casing));
    canvas.circle(x, y, r, Paint::fill(palette.step));
    let size = r * 1.55;
    canvas.text(
        &number.to_string(),
        x,
        y + size * CAP / 2.0,
        Hand::new(size, palette.casing).bold().middle(),
    );
}

/// Ticks in the four corners of the square a piece has left.
pub(super) fn ticks(canvas: &mut Canvas, (x, y): Point, s: f32, palette: &Palette) {
    let w = (s * 0.05).max(1.2);
    let inset = w * 0.9;
    let arm = s * 0.2;
    let (l, t, r, b) = (x + inset, y + inset, x + s - inset, y + s - inset);
    let d = format!(
        "M{l} {ta}V{t}H{la}M{ra} {t}H{r}V{ta}M{r} {ba}V{b}H{ra}M{la} {b}H{l}V{ba}",
        l = num(l),
        t = num(t),
        r = num(r),
        b = num(b),
        la = num(l + arm),
        ra = num(r - arm),
        ta = num(t + arm),
        ba = num(b - arm),
    );
    canvas.path(&d, Paint::stroke(palette.casing, w * 1.8));
    canvas.path(&d, Paint::stroke(palette.last, w));
}

/// A frame around the square a piece has come to.
pub(super) fn frame(canvas: &mut Canvas, (x, y): Point, s: f32, palette: &Palette) {
    let w = (s * 0.05).max(1.2);
    let inset = w * 0.9;
    for (color, width) in [(palette.casing, w * 1.8), (palette.last, w)] {
        canvas.rect(
            x + inset,
            y + inset,
            s - 2.0 * inset,
            s - 2.0 * inset,
            Paint::stroke(color, width),
        );
    }
}

fn guard_line(
    canvas: &mut Canvas,
    layout: &Layout,
    from: Square,
    to: Square,
    empty: bool,
    palette: &Palette,
) {
    let s = layout.square;
    let (a, b) = shortened(
        layout.centre(from),
        layout.centre(to),
        s * 0.2,
        if empty { s * 0.26 } else { s * 0.34 },
    );
    dashes(canvas, a, b, s, palette);
}

/// A dashed line with a clear edge.
pub(super) fn dashes(canvas: &mut Canvas, a: Point, b: Point, s: f32, palette: &Palette) {
    let w = (s * 0.05).max(1.2);
    canvas.line(a, b, Paint::stroke(palette.casing, w * 2.0));
    canvas.line(
        a,
        b,
        Paint::stroke(palette.guard, w).dashed(s * 0.13, s * 0.06),
    );
}

/// Where the sign of a flight goes: the middle of an empty square, the corner of another.
fn sign_place(layout: &Layout, diagram: &Diagram, square: Square) -> (Point, f32) {
    let (x, y) = layout.centre(square);
    let s = layout.square;
    if diagram.position.board().piece_at(square).is_some() {
        ((x + s * 0.33, y - s * 0.33), s * 0.6)
    } else {
        ((x, y), s)
    }
}

/// The sign of an open flight: a ring.
pub(super) fn open(canvas: &mut Canvas, (x, y): Point, s: f32, palette: &Palette) {
    let r = s * 0.19;
    canvas.circle(x, y, r, Paint::stroke(palette.casing, s * 0.13));
    canvas.circle(x, y, r, Paint::stroke(palette.open, s * 0.075));
}

/// The sign of a guarded flight: a cross.
pub(super) fn guarded(canvas: &mut Canvas, (x, y): Point, s: f32, palette: &Palette) {
    let r = s * 0.15;
    let d = format!(
        "M{} {}l{d} {d}m0 -{d}l-{d} {d}",
        num(x - r),
        num(y - r),
        d = num(2.0 * r)
    );
    canvas.path(&d, Paint::stroke(palette.casing, s * 0.14));
    canvas.path(&d, Paint::stroke(palette.guard, s * 0.08));
}

/// The sign of a blocked flight: brackets to both sides of the piece.
pub(super) fn blocked(canvas: &mut Canvas, (x, y): Point, s: f32, palette: &Palette) {
    let (half, high, arm) = (s * 0.43, s * 0.33, s * 0.1);
    let d = format!(
        "M{} {t}H{}V{b}H{}M{} {t}H{}V{b}H{}",
        num(x - half + arm),
        num(x - half),
        num(x - half + arm),
        num(x + half - arm),
        num(x + half),
        num(x + half - arm),
        t = num(y - high),
        b = num(y + high),
    );
    canvas.path(&d, Paint::stroke(palette.casing, s * 0.1));
    canvas.path(&d, Paint::stroke(palette.blocked, s * 0.055));
}

/// The sign of a square to look at: a lozenge.
pub(super) fn lozenge(canvas: &mut Canvas, (x, y): Point, s: f32, palette: &Palette) {
    let r = s * 0.44;
    let d = format!(
        "M{} {y}L{x} {}L{} {y}L{x} {}Z",
        num(x - r),
        num(y - r),
        num(x + r),
        num(y + r),
        x = num(x),
        y = num(y)
    );
    canvas.path(&d, Paint::stroke(palette.casing, s * 0.1));
    canvas.path(&d, Paint::stroke(palette.spot, s * 0.055));
}
