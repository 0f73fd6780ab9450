//! The demo's material: an invented study group with positions of our own making and three past weeks.
//!
//! The files lie beside this crate and are built in, so that the demo needs nothing but the binary.
//! Whoever fills a store from them reads each in its own format:
//!
//! - [`GROUP`]: TOML; the group, its members, and the order in which its positions are posted.
//! - [`POSITION_FILES`]: EPD and PGN as a coach would hand them in. Each position has an `id`, a task,
//!   a topic and a word for the reveal; the ids are unique over all files.
//! - [`LESSON_FILES`]: PGN, a game for each step of a lesson.
//! - [`PAST`]: tab-separated; what members wrote to each past post, in order of time.

/// The group: `name`, `about`, `zone` (IANA), `past` and `queue` (ids of positions in order), and
/// `members` with `user` and `name`.
pub const GROUP: &str = include_str!("../group.toml");

/// Files of positions: name and content.
pub const POSITION_FILES: &[(&str, &str)] = &[
    ("back-rank.epd", include_str!("../positions/back-rank.epd")),
    ("smothered.epd", include_str!("../positions/smothered.epd")),
    ("anastasia.epd", include_str!("../positions/anastasia.epd")),
    ("boden.pgn", include_str!("../positions/boden.pgn")),
    ("arabian.epd", include_str!("../positions/arabian.epd")),
    (
        "deflection.epd",
        include_str!("../positions/deflection.epd"),
    ),
    (
        "won-and-drawn.pgn",
        include_str!("../positions/won-and-drawn.pgn"),
    ),
];

/// Files of lessons: name and content, a game of PGN for each step. They wait behind the positions of the queue.
pub const LESSON_FILES: &[(&str, &str)] = &[(
    "crossing-lines.pgn",
    include_str!("../lessons/crossing-lines.pgn"),
)];

/// What was written in the past weeks, one line each after a heading: the `position` that was posted,
/// hours and minutes `after` it went out, the `member` (or `coach`), `how` (`answer`, `hint`, `give-up`
/// or `talk`) and the `text`.
pub const PAST: &str = include_str!("../past.tsv");
