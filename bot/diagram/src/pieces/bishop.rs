//! Bishop: plinth, slender stem, collar, a pointed mitre with its cut, bead.

use super::Part;
use super::lathe::{Lathe, ball, plinth, ring};

pub(super) fn parts() -> Vec<Part> {
    let stem = Lathe::from(23.5, 83.0)
        .curve((17.0, 78.5), (10.5, 74.0), (9.5, 60.0))
        .turned();
    let mitre = Lathe::from(10.5, 56.5)
        // Belly of the mitre, then in to the point.
        .curve((18.0, 52.0), (21.5, 43.5), (17.0, 34.0))
        .curve((13.5, 27.0), (7.0, 21.5), (0.0, 15.5))
        .turned();
    let collar = Lathe::from(13.0, 63.5)
        .curve((20.5, 62.5), (20.5, 57.0), (13.0, 56.0))
        .turned();
    vec![
        Part::body(plinth(28.5)),
        Part::body(stem),
        Part::body(ball(12.8, 5.0)),
        Part::body(mitre),
        Part::body(collar),
        // The cut runs in from the right shoulder.
        Part::line("M62.5 28.5L52.5 43"),
        Part::line(ring(22.5, 83.0, 0.0)),
        Part::line(ring(12.0, 56.0, 0.4)),
        Part::fine(ring(9.5, 64.0, 0.4)),
    ]
}
