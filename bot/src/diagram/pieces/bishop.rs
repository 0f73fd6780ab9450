//! Bishop: plinth, slender stem, double collar, mitre with its cut, bead.

use super::Part;
use super::lathe::{Lathe, ball, plinth, ring};

pub(super) fn parts() -> Vec<Part> {
    let stem = Lathe::from(19.0, 81.0)
        .curve((15.5, 75.0), (10.0, 70.0), (9.0, 57.0))
        .turned();
    let mitre = Lathe::from(10.0, 54.0)
        // Belly of the mitre, then in to the point.
        .curve((17.5, 48.0), (19.5, 38.0), (12.0, 28.0))
        .curve((8.5, 23.5), (4.0, 20.5), (0.0, 17.5))
        .turned();
    let collar = Lathe::from(13.0, 59.5)
        .curve((18.0, 58.5), (18.0, 54.0), (13.0, 53.0))
        .turned();
    vec![
        Part::body(plinth(26.0)),
        Part::body(stem),
        Part::body(ball(14.0, 4.0)),
        Part::body(mitre),
        Part::body(collar),
        // The cut runs in from the right shoulder.
        Part::line("M60 28.5L51.5 41"),
        Part::line(ring(19.0, 81.0, 0.0)),
    ]
}
