//! Rook: plinth, a stout tower, cornice, battlements.

use super::Part;
use super::lathe::{Lathe, plinth, ring};

pub(super) fn parts() -> Vec<Part> {
    let tower = Lathe::from(25.5, 83.0)
        .curve((20.5, 78.0), (18.0, 71.0), (17.0, 48.0))
        .turned();
    let battlements = Lathe::from(17.0, 48.0)
        // The cornice steps out under the wall.
        .line(24.5, 40.5)
        .line(25.0, 19.0)
        // Outer merlon, gap, half of the middle merlon.
        .line(14.8, 19.0)
        .line(14.8, 27.0)
        .line(6.6, 27.0)
        .line(6.6, 19.0)
        .turned();
    vec![
        Part::body(plinth(30.0)),
        Part::body(tower),
        Part::body(battlements),
        Part::line(ring(24.5, 83.0, 0.0)),
        Part::line(ring(17.0, 48.0, 0.0)),
        Part::line(ring(23.5, 40.5, 0.0)),
    ]
}
