//! Pawn: plinth, short stem, collar, ball.

use super::Part;
use super::lathe::{Lathe, ball, plinth, ring};

pub(super) fn parts() -> Vec<Part> {
    let stem = Lathe::from(21.5, 83.0)
        // A wide foot sweeps in quickly, then rises to the neck.
        .curve((15.5, 78.0), (9.5, 73.0), (8.5, 59.0))
        .turned();
    let collar = Lathe::from(12.0, 62.0)
        .curve((18.5, 61.0), (18.5, 56.0), (12.0, 55.0))
        .turned();
    vec![
        Part::body(plinth(26.0)),
        Part::body(stem),
        Part::body(ball(42.0, 14.5)),
        Part::body(collar),
        Part::line(ring(20.5, 83.0, 0.0)),
        Part::line(ring(11.0, 55.0, 0.4)),
        Part::fine(ring(8.5, 62.5, 0.4)),
    ]
}
