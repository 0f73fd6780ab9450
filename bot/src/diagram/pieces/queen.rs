//! Queen: plinth, tall stem, collar, a flared coronet with five points, bead.

use super::Part;
use super::lathe::{Lathe, ball, plinth, ring};

pub(super) fn parts() -> Vec<Part> {
    let stem = Lathe::from(21.0, 81.0)
        .curve((17.5, 74.0), (12.0, 70.0), (10.5, 51.0))
        .turned();
    let coronet = Lathe::from(12.0, 47.0)
        // The bell opens slowly, then flares.
        .curve((14.0, 39.0), (19.0, 31.0), (26.0, 23.0))
        // Scallops between the points.
        .curve((22.5, 27.0), (15.5, 27.0), (13.0, 19.5))
        .curve((11.0, 25.5), (3.0, 25.5), (0.0, 18.0))
        .turned();
    let collar = Lathe::from(14.0, 53.0)
        .curve((20.0, 52.0), (20.0, 47.0), (14.0, 46.0))
        .turned();
    vec![
        Part::body(plinth(29.0)),
        Part::body(stem),
        Part::body(ball(13.0, 4.5)),
        Part::body(coronet),
        Part::body(collar),
        Part::line(ring(21.0, 81.0, 0.0)),
        Part::fine(ring(16.5, 38.5, 1.5)),
    ]
}
