//! The club room: an embedded web chat on loopback.
