//! King: plinth, tall stem, collar, a swelling crown under a low dome, and the cross.

use super::super::number::num;
use super::Part;
use super::lathe::{AXIS, Lathe, plinth, ring};

/// A cross whose arms widen a little outwards, standing on y = `foot`.
fn cross(foot: f32) -> String {
    // Half-width of an arm at its end and at the middle, reach of the arms, height.
    let (end, waist, reach, height) = (4.8, 3.4, 9.4, 19.5);
    let middle = foot - height * 0.56;
    let right: [(f32, f32); 7] = [
        (end, foot),
        (waist, middle + waist),
        (reach, middle + end),
        (reach, middle - end),
        (waist, middle - waist),
        (end, foot - height),
        (0.0, foot - height),
    ];
    let points = right
        .iter()
        .map(|&(dx, y)| (AXIS + dx, y))
        .chain(right.iter().rev().skip(1).map(|&(dx, y)| (AXIS - dx, y)));
    let mut d = String::new();
    for (i, (x, y)) in points.enumerate() {
        d.push(if i == 0 { 'M' } else { 'L' });
        d.push_str(&format!("{} {}", num(x), num(y)));
    }
    d.push('Z');
    d
}

pub(super) fn parts() -> Vec<Part> {
    let stem = Lathe::from(27.0, 83.0)
        .curve((20.0, 78.5), (13.5, 73.0), (12.0, 57.0))
        .turned();
    let crown = Lathe::from(13.0, 52.5)
        // Nearly straight walls, a rounded shoulder, a dome.
        .curve((14.0, 46.0), (18.5, 38.0), (21.5, 33.5))
        .curve((22.8, 31.2), (22.2, 29.4), (20.0, 28.4))
        .curve((14.5, 25.8), (7.0, 24.5), (0.0, 24.5))
        .turned();
    let collar = Lathe::from(15.5, 60.0)
        .curve((23.5, 59.0), (23.5, 53.0), (15.5, 52.0))
        .turned();
    vec![
        Part::body(plinth(31.5)),
        Part::body(stem),
        Part::body(cross(25.5)),
        Part::body(crown),
        Part::body(collar),
        Part::line(ring(26.0, 83.0, 0.0)),
        Part::line(ring(14.5, 52.0, 0.4)),
        Part::fine(ring(12.0, 60.5, 0.4)),
        // Rim of the crown under its dome, and a band.
        Part::line(ring(21.0, 32.0, 1.5)),
        Part::fine(ring(15.8, 43.5, 1.0)),
    ]
}
