//! Pawn: plinth, short stem, collar, ball.

use super::Part;
use super::lathe::{Lathe, ball, plinth, ring};

pub(super) fn parts() -> Vec<Part> {
    let stem = Lathe::from(17.5, 81.0)
        // A quick sweep in from the foot, then up to the neck.
        .curve((15.0, 74.0), (9.5, 70.0), (8.0, 56.0))
        .turned();
    let collar = Lathe::from(11.0, 58.5)
        .curve((16.5, 57.5), (16.5, 53.5), (11.0, 52.5))
        .turned();
    vec![
        Part::body(plinth(24.0)),
        Part::body(stem),
        Part::body(ball(41.5, 12.5)),
        Part::body(collar),
        Part::line(ring(18.0, 81.0, 0.0)),
    ]
}
