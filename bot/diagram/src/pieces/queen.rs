//! Queen: plinth, tall stem, collar, a flared coronet with five points, bead.

use super::Part;
use super::lathe::{Lathe, ball, plinth, ring};

pub(super) fn parts() -> Vec<Part> {
    let stem = Lathe::from(27.0, 83.0)
        .curve((20.0, 78.5), (13.0, 73.0), (11.0, 57.0))
        .turned();
    let coronet = Lathe::from(12.5, 52.5)
        // The bell opens slowly, then flares.
        .curve((13.5, 43.0), (20.0, 34.0), (31.0, 21.0))
        // Scallops between the points.
        .curve((25.2, 29.6), (19.4, 30.8), (15.0, 18.0))
        .curve((10.7, 30.2), (4.8, 29.2), (0.0, 17.0))
        .turned();
    let collar = Lathe::from(15.0, 60.0)
        .curve((23.0, 59.0), (23.0, 53.0), (15.0, 52.0))
        .turned();
    vec![
        Part::body(plinth(31.5)),
        Part::body(stem),
        Part::body(ball(12.8, 5.2)),
        Part::body(coronet),
        Part::body(collar),
        Part::line(ring(26.0, 83.0, 0.0)),
        Part::line(ring(14.0, 52.0, 0.4)),
        Part::fine(ring(11.0, 60.5, 0.4)),
        Part::fine(ring(16.5, 42.5, 1.4)),
    ]
}
