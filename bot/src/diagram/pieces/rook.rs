//! Rook: plinth, a stout tower, cornice, battlements.

use super::Part;
use super::lathe::{Lathe, plinth, ring};

pub(super) fn parts() -> Vec<Part> {
    let tower = Lathe::from(22.0, 81.0)
        .curve((19.5, 74.0), (16.5, 68.0), (15.5, 48.0))
        .turned();
    let battlements = Lathe::from(15.5, 48.0)
        // The cornice steps out under the wall.
        .line(21.5, 41.5)
        .line(21.5, 21.5)
        // Outer merlon, gap, half of the middle merlon.
        .line(12.5, 21.5)
        .line(12.5, 28.5)
        .line(5.5, 28.5)
        .line(5.5, 21.5)
        .turned();
    vec![
        Part::body(plinth(28.0)),
        Part::body(tower),
        Part::body(battlements),
        Part::line(ring(22.0, 81.0, 0.0)),
        Part::line(ring(15.5, 48.0, 0.0)),
        Part::line(ring(21.5, 41.0, 0.0)),
    ]
}
