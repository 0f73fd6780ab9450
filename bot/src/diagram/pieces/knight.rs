//! Knight: plinth and a carved horse's head, looking left.

use super::Part;
use super::lathe::{disc, plinth};

pub(super) fn parts() -> Vec<Part> {
    let head = "M30 81\
        C29.5 70 36 64 43.5 57.5\
        C46 55 47.5 52.5 47.5 49.5\
        C43.5 53.5 39 54.5 35 54.5\
        C32.5 58.5 29.5 61 26.5 61\
        C21.5 61 17 56.5 18 51.5\
        C19.5 46.5 24.5 41 28 33.5\
        C29.5 29.5 32 26 36 23.5\
        L36.5 12.5\
        C40.5 14.5 43.5 17.5 45 20.5\
        C61 21.5 74.5 36 76 58\
        C76.5 66 75.5 74 73 81Z";
    vec![
        Part::body(plinth(28.0)),
        Part::body(head),
        // Nostril, eye, mouth, mane.
        Part::spot(disc(23.5, 52.0, 1.9)),
        Part::spot(disc(36.5, 34.5, 2.6)),
        Part::line("M45 20.5C57 25 66 38 67 58C67.2 64 66.5 70 65 75"),
        Part::fine("M26.5 57.5C28.5 57 30 56 31 54.5"),
    ]
}
