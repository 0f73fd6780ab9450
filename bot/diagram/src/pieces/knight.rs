//! Knight: plinth and a carved horse's head, looking left.

use super::Part;
use super::lathe::{disc, plinth};

pub(super) fn parts() -> Vec<Part> {
    // Breast and throat; jaw and chin; lips and nose; face; two ears; the cropped mane in five
    // locks along the crest; the back.
    let head = "M26.5 83\
        C26 75 29.5 69 34.5 63.5\
        C39 58.5 45 55 46 48.5\
        C43 52 38.5 54 34 54.5\
        C31.5 55 30.5 57.5 28.5 59.5\
        C26 62 22 62 19.5 60\
        C16 58.5 13.5 55.5 14 51.5\
        C14.5 45 23 39 25.5 31.5\
        C27 27 29.5 23 33.5 20.5\
        L32.5 8.5\
        C36.5 10.5 39 13.5 40 16\
        L44.5 10.5\
        C46.5 13 47.3 16 47 18.5\
        C51.5 18 55.5 20 58 23.5\
        C62.5 24.5 66 27.5 67.5 32\
        C71.5 34 74 38 74.5 42.5\
        C77.5 45.5 79 49.5 78.8 54\
        C80.3 62 79.5 74 76 83Z";
    vec![
        Part::body(plinth(30.0)),
        Part::body(head),
        // Nostril and eye.
        Part::spot(disc(19.8, 52.0, 2.0)),
        Part::spot("M32 34.5C33 31 37 30 40 31.5C39 35 35.5 36.5 32 34.5Z"),
        // Mouth.
        Part::fine("M17.3 57.4C20 57.8 22.8 57.2 25 55.6"),
        // Inner edge of the mane, and the cuts between its locks.
        Part::line("M48.5 27C58 31.5 65.5 41 67.5 52C69 60 69 66 68 72"),
        Part::fine("M58 23.5L54.5 30.5M67.5 32L61.5 37M74.5 42.5L66 45.5M78.8 54L68.5 55"),
    ]
}
