//! What a writer takes back in the same breath: "Rd7, no wait, Rxd8+" and "Rd7 fails to Rxd7, so Rxd8+"
//! offer one move, not two.
//!
//! Works on the items before they become a tree. Where it is not plain that something is taken back,
//! all is kept, and each move offered has to hold.

use super::phrase::{Item, Piece};
use super::words::Word;

/// The items without what is taken back; then, where the text does not say how far back a correction
/// reaches, the same with all before it taken back, for when the first makes no sense.
pub(super) fn readings(pieces: Vec<Piece>) -> (Vec<Piece>, Option<Vec<Piece>>) {
    let pieces = without_failures(pieces);
    let Some((marker, after)) = correction(&pieces) else {
        return (pieces, None);
    };
    let label = |piece: &Piece| match piece.item {
        Item::Number { number, black } => Some((number, black)),
        _ => None,
    };
    // A number says which move is meant; without one it is the last.
    let before = &pieces[..marker];
    let nearest = match pieces[marker..after].iter().find_map(label) {
        Some(number) => before.iter().rposition(|p| label(p) == Some(number)),
        None => before.iter().rposition(is_move),
    };
    let first = before.iter().position(|piece| {
        is_move(piece) || matches!(piece.item, Item::Number { .. } | Item::Dots | Item::Open)
    });
    // Small words and the number of the move that replaces the other stay.
    let rest = pieces[marker..]
        .iter()
        .position(|piece| is_move(piece) || label(piece).is_some())
        .map_or(after, |at| marker + at);
    let without = |cut: usize| [&pieces[..cut], &pieces[rest..]].concat();
    match (nearest, first) {
        (Some(nearest), Some(first)) if nearest != first => {
            (without(nearest), Some(without(first)))
        }
        (Some(cut), _) | (None, Some(cut)) => (without(cut), None),
        (None, None) => (pieces, None),
    }
}

fn is_move(piece: &Piece) -> bool {
    matches!(piece.item, Item::Move { not: false, .. })
}

/// The last words that take back what stands before them, with the move that comes instead.
fn correction(pieces: &[Piece]) -> Option<(usize, usize)> {
    let first = pieces.iter().position(is_move)?;
    (first + 1..pieces.len()).rev().find_map(|marker| {
        if !matches!(pieces[marker].item, Item::Word(Word::TakesBack)) {
            return None;
        }
        // "Then wait for Kh8" takes nothing back.
        let opening = pieces[..marker]
            .iter()
            .rfind(|piece| !matches!(piece.item, Item::Word(Word::Filler)))?;
        let begins = matches!(
            opening.item,
            Item::Move { .. }
                | Item::Comma
                | Item::Line
                | Item::Semi
                | Item::Or
                | Item::Question
                | Item::Word(Word::Not | Word::TakesBack | Word::Then)
        );
        let small = |item: &Item| {
            matches!(
                item,
                Item::Comma
                    | Item::Line
                    | Item::Number { .. }
                    | Item::Dots
                    | Item::Word(
                        Word::Filler | Word::Not | Word::TakesBack | Word::Then | Word::Claim
                    )
            )
        };
        let next = pieces[marker + 1..].iter().position(is_move)?;
        let after = marker + 1 + next;
        let plain = pieces[marker + 1..after].iter().all(|p| small(&p.item));
        (begins && plain).then_some((marker, after))
    })
}

/// Without moves of which the writer says that they fail, and without the refutation named for it; all
/// of it where no other move is left.
fn without_failures(pieces: Vec<Piece>) -> Vec<Piece> {
    let mut kept = Vec::with_capacity(pieces.len());
    let mut i = 0;
    while i < pieces.len() {
        let failed = is_move(&pieces[i]).then(|| failure(&pieces, i)).flatten();
        match failed {
            Some(end) => i = end,
            None => {
                kept.push(pieces[i].clone());
                i += 1;
            }
        }
    }
    if kept.iter().any(is_move) {
        kept
    } else {
        pieces
    }
}

/// Where the words end which say that the move at `i` fails, the answer to it included.
fn failure(pieces: &[Piece], i: usize) -> Option<usize> {
    let word = |at: usize| match pieces.get(at).map(|piece| &piece.item) {
        Some(Item::Word(word)) => Some(*word),
        _ => None,
    };
    let mut at = i + 1;
    while matches!(word(at), Some(Word::Asks | Word::Filler | Word::Not)) {
        at += 1;
    }
    let denied = word(at - 1) == Some(Word::Not);
    match word(at) {
        Some(Word::Fails) if !denied => {}
        Some(Word::Works) if denied => {}
        _ => return None,
    }
    at += 1;
    let end = at;
    let because = |at: usize| {
        matches!(word(at), Some(Word::Because | Word::To))
            || matches!(pieces.get(at).map(|p| &p.item), Some(Item::Or | Item::If))
    };
    if !because(at) {
        return Some(end);
    }
    while because(at)
        || matches!(
            pieces.get(at).map(|p| &p.item),
            Some(Item::Number { .. } | Item::Dots)
        )
    {
        at += 1;
    }
    Some(if pieces.get(at).is_some_and(is_move) {
        at + 1
    } else {
        end
    })
}
