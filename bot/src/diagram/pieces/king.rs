//! King: plinth, tall stem, collar, a swelling crown, and the cross.

use super::super::canvas::num;
use super::Part;
use super::lathe::{AXIS, Lathe, plinth, ring};

/// A cross with arms that widen outwards, standing on y = `foot`.
fn cross(foot: f32) -> String {
    let (arm, reach, height, thin) = (4.4, 8.0, 16.0, 2.2);
    let middle = foot - height * 0.56;
    let x = |dx: f32| num(AXIS + dx);
    format!(
        "M{} {f}L{} {}L{} {}L{} {}L{} {}L{} {t}L{} {t}L{} {}L{} {}L{} {}L{} {}L{} {f}Z",
        x(arm),
        x(thin),
        num(middle + thin),
        x(reach),
        num(middle + arm),
        x(reach),
        num(middle - arm),
        x(thin),
        num(middle - thin),
        x(arm),
        x(-arm),
        x(-thin),
        num(middle - thin),
        x(-reach),
        num(middle - arm),
        x(-reach),
        num(middle + arm),
        x(-thin),
        num(middle + thin),
        x(-arm),
        f = num(foot),
        t = num(foot - height),
    )
}

pub(super) fn parts() -> Vec<Part> {
    let stem = Lathe::from(21.0, 81.0)
        .curve((17.5, 74.0), (12.5, 70.0), (11.5, 51.0))
        .turned();
    let crown = Lathe::from(12.0, 47.0)
        // Widening walls, a rounded shoulder, a low dome.
        .curve((14.0, 39.0), (18.0, 33.0), (22.0, 28.5))
        .curve((17.0, 23.5), (8.0, 21.5), (0.0, 21.5))
        .turned();
    let collar = Lathe::from(14.5, 53.0)
        .curve((20.5, 52.0), (20.5, 47.0), (14.5, 46.0))
        .turned();
    vec![
        Part::body(plinth(29.0)),
        Part::body(stem),
        Part::body(cross(22.5)),
        Part::body(crown),
        Part::body(collar),
        Part::line(ring(21.0, 81.0, 0.0)),
    ]
}
