//! Every pattern has a card; its example is sound, ends in the pattern, and is nobody else's.

use std::collections::BTreeSet;

use shakmaty::Position;

use super::*;
use crate::{
    Budget, Stipulation,
    check::{CheckOptions, Soundness, check},
    name::name,
    read::Entry,
};

#[test]
fn every_pattern_has_a_card_and_every_card_a_pattern() {
    let known: Vec<&str> = names().collect();
    let shown: Vec<&str> = cards().map(|card| card.pattern).collect();
    assert_eq!(shown, known);
    assert_eq!(table::EXAMPLES.len(), known.len());
    assert!(card("no such thing").is_none());
}

#[test]
fn relatives_are_mutual_and_told_once() {
    let mut pairs = BTreeSet::new();
    for &(one, other) in table::RELATIVES {
        assert!(one < other, "{one} {other}");
        assert!(pairs.insert((one, other)), "{one} {other} twice");
    }
    for card in cards() {
        assert!(!card.relatives.is_empty(), "{}", card.pattern);
        for relative in card.relatives {
            let theirs = super::card(relative).expect("a pattern").relatives;
            assert!(
                theirs.contains(&card.pattern),
                "{relative}: {}",
                card.pattern
            );
        }
    }
}

/// Our own example of each, proved: one key, mate in as many moves as the line has, and no other mate on the
/// last move that could be taken for the point.
#[test]
fn examples_are_sound_and_end_in_their_pattern() {
    for card in cards() {
        let Example { position, line, .. } = &card.example;
        let length = u8::try_from(line.len().div_ceil(2)).expect("short");
        assert!(length <= 2, "{}", card.pattern);
        let entry = Entry {
            position: position.clone(),
            stipulation: Some(Stipulation::Mate(length)),
            ..Entry::default()
        };
        let report = check(&entry, &CheckOptions::default(), &Budget::unlimited());
        assert_eq!(
            report.verdict,
            Soundness::Sound,
            "{}: {:?}",
            card.pattern,
            report.message
        );
        assert!(report.proved, "{}", card.pattern);
        assert_eq!(report.keys, [line[0].clone()], "{}", card.pattern);
        let positions = card.example.positions();
        assert_eq!(positions.len(), line.len() + 1, "{}", card.pattern);
        assert_eq!(crate::line::sans(position, &card.example.moves()), *line);
        let (end, before) = (&positions[line.len()], &positions[line.len() - 1]);
        let mates = before.legal_moves().into_iter().filter(|&mv| {
            let mut after = before.clone();
            after.play_unchecked(mv);
            after.is_checkmate()
        });
        assert_eq!(mates.count(), 1, "{}", card.pattern);
        let fitting = name(end).patterns;
        assert_eq!(fitting.first().map(String::as_str), Some(card.pattern));
        for relative in &card.relatives {
            assert!(
                !fitting.iter().any(|found| found == relative),
                "{}: its example is {relative}'s too, and tells nothing apart",
                card.pattern
            );
        }
    }
}

#[test]
fn no_two_examples_show_one_position() {
    let cards: Vec<Card> = cards().collect();
    for (at, card) in cards.iter().enumerate() {
        for other in &cards[at + 1..] {
            for one in card.example.positions() {
                for two in other.example.positions() {
                    assert!(
                        !alike(one.board(), two.board()),
                        "{} and {}",
                        card.pattern,
                        other.pattern
                    );
                }
            }
        }
    }
}

#[test]
fn every_image_is_alike_and_a_moved_piece_is_not() {
    for card in cards() {
        let board = card.example.position.board().clone();
        let mut images = vec![board.clone()];
        for at in 0..2 {
            let mut image = images[at].clone();
            match at {
                0 => image.flip_horizontal(),
                _ => {
                    image.flip_vertical();
                    image.swap_colors();
                }
            }
            images.push(image);
        }
        for image in &images {
            assert!(
                alike(&board, image) && alike(image, &board),
                "{}",
                card.pattern
            );
        }
        let mut upside_down = board.clone();
        upside_down.flip_vertical();
        assert!(
            !alike(&board, &upside_down),
            "pawns would run the other way"
        );
        let after = &card.example.positions()[1];
        assert!(!alike(&board, after.board()), "{}", card.pattern);
    }
}
