//! What is worth keeping between pictures: empty boards and single pieces, as pixels.
//!
//! A group sees one style at one size, so after the first picture almost everything is a copy. The
//! cache is bounded by bytes; what was asked for longest ago goes first.

use std::sync::{Arc, Mutex, PoisonError};

use resvg::tiny_skia::Pixmap;
use shakmaty::{Color, Piece};

use super::DiagramError;
use super::Style;

/// The most that is kept, in bytes.
const LIMIT: usize = 24 << 20;

/// What a kept picture shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Key {
    /// A board without pieces.
    Board {
        style: Style,
        size: u32,
        bottom: Color,
        turn: Color,
    },
    /// A piece on nothing, for squares of this many pixels.
    Piece {
        style: Style,
        square: u32,
        piece: Piece,
    },
}

/// Kept pictures, the latest used last.
struct Shelf {
    kept: Vec<(Key, Arc<Pixmap>)>,
    bytes: usize,
    limit: usize,
}

impl Shelf {
    const fn new(limit: usize) -> Self {
        Self {
            kept: Vec::new(),
            bytes: 0,
            limit,
        }
    }

    fn take(&mut self, key: Key) -> Option<Arc<Pixmap>> {
        let at = self.kept.iter().position(|(k, _)| *k == key)?;
        let entry = self.kept.remove(at);
        let map = entry.1.clone();
        self.kept.push(entry);
        Some(map)
    }

    fn put(&mut self, key: Key, map: Arc<Pixmap>) {
        let size = map.data().len();
        if size > self.limit || self.kept.iter().any(|(k, _)| *k == key) {
            return;
        }
        while self.bytes + size > self.limit && !self.kept.is_empty() {
            let (_, old) = self.kept.remove(0);
            self.bytes -= old.data().len();
        }
        self.bytes += size;
        self.kept.push((key, map));
    }
}

static SHELF: Mutex<Shelf> = Mutex::new(Shelf::new(LIMIT));

/// The picture for `key`, drawn by `draw` unless it is kept already.
pub(super) fn get(
    key: Key,
    draw: impl FnOnce() -> Result<Pixmap, DiagramError>,
) -> Result<Arc<Pixmap>, DiagramError> {
    // A panic elsewhere cannot leave the shelf half changed in a way that matters.
    let shelf = || SHELF.lock().unwrap_or_else(PoisonError::into_inner);
    if let Some(map) = shelf().take(key) {
        return Ok(map);
    }
    let map = Arc::new(draw()?);
    shelf().put(key, map.clone());
    Ok(map)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_shelf_never_holds_more_than_its_limit() {
        let one = || Arc::new(Pixmap::new(10, 10).expect("a pixmap"));
        let key = |square| Key::Piece {
            style: Style::Print,
            square,
            piece: Color::White.king(),
        };
        let mut shelf = Shelf::new(1_000);
        for square in 0..50 {
            shelf.put(key(square), one());
            // The first is used again and again, and so stays.
            assert!(shelf.take(key(0)).is_some());
            assert!(shelf.bytes <= 1_000);
            assert_eq!(
                shelf.bytes,
                shelf
                    .kept
                    .iter()
                    .map(|(_, m)| m.data().len())
                    .sum::<usize>()
            );
        }
        assert!(shelf.take(key(49)).is_some() && shelf.take(key(48)).is_none());
        shelf.put(key(99), Arc::new(Pixmap::new(100, 100).expect("a pixmap")));
        assert!(shelf.take(key(99)).is_none(), "too large to keep");
    }
}
