//! Mates along a line by rook or queen, with the king's own pieces or a second heavy piece closing it in.

use shakmaty::Role;

use super::frame::Frame;

const FRONT: [(i32, i32); 3] = [(-1, -1), (0, -1), (1, -1)];
const BEHIND: [(i32, i32); 3] = [(-1, 1), (0, 1), (1, 1)];

/// On a side of the king's line: beyond the edge, or his own pieces on all squares but one at most, and
/// on one at least.
fn closed(frame: &Frame, side: [(i32, i32); 3]) -> bool {
    let (squares, own) = frame.row(side);
    squares == 0 || (own >= 1 && own + 1 >= squares)
}

/// King on his own first rank, checked along it by rook or queen, his own pieces in front of him.
pub(super) fn back_rank(frame: &Frame) -> bool {
    frame.on_top_edge()
        && frame
            .heavy_checker()
            .is_some_and(|checker| checker.rank() == frame.king.rank())
        && closed(frame, FRONT)
}

/// The same on a file or another rank.
pub(super) fn corridor(frame: &Frame) -> bool {
    frame
        .heavy_checker()
        .is_some_and(|checker| checker.rank() == frame.king.rank())
        && closed(frame, FRONT)
        && closed(frame, BEHIND)
}

/// King on the edge, one heavy piece checks along it, another takes the whole next line.
pub(super) fn ladder(frame: &Frame) -> bool {
    let Some(checker) = frame.heavy_checker() else {
        return false;
    };
    if !frame.on_top_edge()
        || checker.rank() != frame.king.rank()
        || frame.offset(checker).0.abs() < 2
    {
        return false;
    }
    frame
        .heavy()
        .into_iter()
        .filter(|second| frame.offset(*second).1 == -1)
        .any(|second| {
            FRONT
                .into_iter()
                .filter(|&(files, ranks)| frame.at(files, ranks).is_some())
                .all(|(files, ranks)| frame.guards(files, ranks).contains(second))
        })
}

/// King on the edge between two of his own pieces, checked from straight in front, at a distance.
pub(super) fn epaulette(frame: &Frame) -> bool {
    frame.on_top_edge()
        && frame.own(-1, 0)
        && frame.own(1, 0)
        && frame.heavy_checker().is_some_and(|checker| {
            let (files, ranks) = frame.offset(checker);
            files == 0 && ranks <= -2
        })
        && FRONT
            .into_iter()
            .all(|(files, ranks)| frame.flight(files, ranks))
}

/// Two rooks side by side on the rank in front of the king's first rank, one of them giving check.
pub(super) fn blind_swine(frame: &Frame) -> bool {
    frame.on_top_edge()
        && frame
            .checker_of(Role::Rook)
            .is_some_and(|rook| frame.offset(rook) == (0, -1))
        && (frame.guards(0, -1) & frame.mating(Role::Rook))
            .into_iter()
            .any(|second| frame.offset(second).1 == -1)
}
