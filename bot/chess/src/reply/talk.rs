//! Telling an answer from talk: a message among others is an answer only when it plainly is.
//!
//! What counts is what stands around the moves. Moves alone, or with a greeting, are an answer; so is
//! a move announced as one's answer. A question, a memory, a move that is not meant, or a move in the
//! middle of other words is talk. When in doubt it is talk: an answer left unread costs the member a
//! second message, while talk taken for an answer may cost points.

use super::TroubleKind;
use super::build::Built;
use super::phrase::{Item, Piece};
use super::words::Word;

/// Whether the message is plainly an answer.
pub(super) fn is_answer(pieces: &[Piece], built: &Built) -> bool {
    let count = |is: &dyn Fn(&Item) -> bool| pieces.iter().filter(|p| is(&p.item)).count();
    let moves = count(&|item| matches!(item, Item::Move { not: false, .. }));
    if moves == 0 {
        return false;
    }
    let dropped = count(&|item| matches!(item, Item::Move { not: true, .. }));
    let asks = count(&|item| matches!(item, Item::Question));
    let other = count(&|item| {
        matches!(
            item,
            Item::Word(Word::Other | Word::Man(_) | Word::But | Word::Better | Word::Before)
                | Item::Garbled
        )
    });
    let aside = count(&|item| {
        matches!(
            item,
            Item::Word(
                Word::Aside
                    | Word::Fails
                    | Word::Works
                    | Word::Because
                    | Word::Former
                    | Word::Seems
                    | Word::Hedge
                    | Word::Else
            )
        )
    });
    let question_words =
        count(&|item| matches!(item, Item::Word(Word::Asks | Word::Tag | Word::For)));
    let nots = count(&|item| {
        matches!(
            item,
            Item::Word(Word::Not | Word::Deny | Word::Instead | Word::Unlike)
        )
    });
    let readable = built.placed > 0;
    if !readable {
        // Only bare moves that fail are worth a reason; anything else was not meant for us.
        let near = built
            .troubles
            .iter()
            .all(|t| t.kind != TroubleKind::Garbled);
        return near && other + aside + question_words + asks + nots + dropped == 0;
    }
    if asks > 0 || dropped > 0 {
        return false;
    }
    // "If Rd7 then Rxd7" supposes a move and plays none.
    let first = pieces
        .iter()
        .position(|piece| matches!(piece.item, Item::Move { .. }))
        .unwrap_or(0);
    if pieces[..first]
        .iter()
        .any(|piece| matches!(piece.item, Item::If))
    {
        return false;
    }
    let words = other + aside + nots + question_words;
    if words == 0 {
        return true;
    }
    if claimed(pieces) {
        return aside + nots <= 1 && other <= 6;
    }
    // A numbered line of several moves is an answer even with a few words around it.
    let numbered = pieces.windows(2).any(|pair| {
        matches!(pair[0].item, Item::Number { number: 1, .. })
            && matches!(pair[1].item, Item::Move { .. })
    });
    let line = built.tree.main_line().len();
    numbered && line >= 2 && aside + nots == 0 && other <= 8 && question_words == 0
}

/// Whether the first move is announced: "my answer is ...", "I play ...".
fn claimed(pieces: &[Piece]) -> bool {
    let Some(first) = pieces
        .iter()
        .position(|piece| matches!(piece.item, Item::Move { .. }))
    else {
        return false;
    };
    let before = &pieces[..first];
    let Some(claim) = before
        .iter()
        .rposition(|piece| matches!(piece.item, Item::Word(Word::Claim | Word::Answer)))
    else {
        return false;
    };
    // "Don't play Rd7" announces nothing.
    if before[..claim].iter().any(|piece| {
        matches!(
            piece.item,
            Item::Word(
                Word::Not
                    | Word::Deny
                    | Word::Aside
                    | Word::Former
                    | Word::Hedge
                    | Word::Asks
                    | Word::Fails
            ) | Item::If
        )
    }) {
        return false;
    }
    // Between the announcement and the move only small words may stand.
    before[claim + 1..].iter().all(|piece| {
        matches!(
            piece.item,
            Item::Word(
                Word::Filler
                    | Word::Hail
                    | Word::So
                    | Word::Asks
                    | Word::Claim
                    | Word::Answer
                    | Word::To
                    | Word::On
            ) | Item::Number { .. }
                | Item::Comma
                | Item::Line
                | Item::Dots
        )
    })
}
