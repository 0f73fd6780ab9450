//! The demo's positions: each sound, with the key its file promises, and showing what its topic says.

use std::collections::BTreeMap;

use sealed_move_demo_data::POSITION_FILES;
use shakmaty::{Chess, Color, Position, san::SanPlus};

use super::script::Script;
use crate::chess::{
    Branch, Budget, Stipulation,
    check::{CheckOptions, Soundness, TopicOn, TopicState, check, topic_check},
    name, prove,
    read::{Entry, read_file},
};
use crate::words::english;

fn entries() -> Vec<Entry> {
    POSITION_FILES
        .iter()
        .flat_map(|(file, text)| read_file(file, text.as_bytes()))
        .map(|entry| entry.unwrap_or_else(|error| panic!("{error}")))
        .collect()
}

/// Topics that are motifs, not patterns of mate.
const MOTIFS: [&str; 3] = ["Deflection", "Knight fork", "Stalemate"];

/// The pattern that a topic promises; a motif promises none.
fn promised(topic: &str) -> Option<&'static str> {
    let pattern = name::names().find(|name| english().text(&format!("pattern-{name}")) == topic);
    assert_eq!(pattern, name::meant(topic), "{topic}");
    assert!(pattern.is_some() || MOTIFS.contains(&topic), "{topic}");
    pattern
}

#[test]
fn every_position_is_sound_with_the_key_its_file_gives() {
    let entries = entries();
    assert!(entries.len() >= 24, "{}", entries.len());
    for entry in &entries {
        let report = check(entry, &CheckOptions::default(), &Budget::unlimited());
        assert_eq!(report.verdict, Soundness::Sound, "{}: {report:?}", entry.id);
        let mate = matches!(entry.stipulation, Some(Stipulation::Mate(_)));
        assert_eq!(report.proved, mate, "{}", entry.id);
        assert!(
            report.warnings.is_empty(),
            "{}: {:?}",
            entry.id,
            report.warnings
        );
        let [best] = entry.best.as_slice() else {
            panic!("{}: the file gives {} keys", entry.id, entry.best.len());
        };
        let best = SanPlus::from_move(entry.position.clone(), *best).to_string();
        assert_eq!(report.keys, [best], "{}", entry.id);
        assert!(!entry.comments.is_empty(), "{}: no comment", entry.id);
    }
}

#[test]
fn every_full_length_line_ends_in_the_promised_picture() {
    for entry in entries() {
        let topic = entry.topic.as_deref().expect("a topic");
        let Some(pattern) = promised(topic) else {
            continue;
        };
        let Some(Stipulation::Mate(moves)) = entry.stipulation else {
            panic!("{}: no mate is asked for", entry.id);
        };
        let proof = prove::mate(&entry.position, moves, &Budget::unlimited()).expect("proved");
        assert!(proof.solution.complete, "{}", entry.id);
        let mut ends = Vec::new();
        for key in &proof.solution.keys {
            finals(&entry.position, key, moves, &mut ends);
        }
        assert!(!ends.is_empty(), "{}", entry.id);
        for end in ends {
            let naming = name::name(&end);
            assert!(
                naming.patterns.iter().any(|found| found == pattern),
                "{}: {:?}",
                entry.id,
                naming.patterns
            );
        }
    }
}

#[test]
fn every_topic_that_means_a_pattern_is_verified_on_every_line() {
    let mut verified = 0;
    for entry in entries() {
        let report = check(&entry, &CheckOptions::default(), &Budget::unlimited());
        let topic = entry.topic.as_deref().expect("a topic");
        let wanted = match promised(topic) {
            Some(_) => TopicState::Verified,
            None => TopicState::Label,
        };
        for on in [TopicOn::MainLine, TopicOn::EveryLine] {
            let shown = topic_check(&report, topic, on);
            assert_eq!(shown.verdict, wanted, "{}: {shown:?}", entry.id);
        }
        verified += usize::from(wanted == TopicState::Verified);
    }
    assert!(verified >= 20, "{verified}");
}

/// Final positions of the lines under `branch` that take all `moves` moves against a defence that
/// leaves nothing quicker.
fn finals(position: &Chess, branch: &Branch, moves: u8, ends: &mut Vec<Chess>) {
    let mut after = position.clone();
    after.play_unchecked(branch.mv);
    if moves == 1 {
        ends.push(after);
        return;
    }
    for defence in &branch.defences {
        let mut next = after.clone();
        next.play_unchecked(defence.mv);
        let quicker = moves > 2
            && prove::shortest_mate(&next, moves - 2, &Budget::unlimited())
                .expect("unlimited")
                .is_some();
        if quicker {
            continue;
        }
        for continuation in &defence.continuations {
            finals(&next, continuation, moves - 1, ends);
        }
    }
}

/// The motif: the key calls a piece away from what it guarded. Put back where it came from, it would
/// spoil the mate.
#[test]
fn every_deflection_deflects() {
    let mut tried = 0;
    for entry in entries() {
        if entry.topic.as_deref() != Some("Deflection") {
            continue;
        }
        tried += 1;
        let Some(Stipulation::Mate(moves)) = entry.stipulation else {
            panic!("{}: no mate is asked for", entry.id);
        };
        let proof = prove::mate(&entry.position, moves, &Budget::unlimited()).expect("proved");
        let key = &proof.solution.keys[0];
        let taking: Vec<_> = key
            .defences
            .iter()
            .filter(|defence| defence.mv.to() == key.mv.to())
            .collect();
        assert!(!taking.is_empty(), "{}: nobody is called", entry.id);
        for defence in taking {
            let mut end = entry.position.clone();
            end.play_unchecked(key.mv);
            end.play_unchecked(defence.mv);
            let mut at = &defence.continuations[0];
            end.play_unchecked(at.mv);
            while let Some(next) = at.defences.first() {
                end.play_unchecked(next.mv);
                at = &next.continuations[0];
                end.play_unchecked(at.mv);
            }
            assert!(end.is_checkmate(), "{}", entry.id);
            let mut setup = end.to_setup(shakmaty::EnPassantMode::Legal);
            let home = defence.mv.from().expect("a move from somewhere");
            let piece = setup
                .board
                .remove_piece_at(defence.mv.to())
                .expect("it stands there");
            assert!(setup.board.piece_at(home).is_none(), "{}", entry.id);
            setup.board.set_piece_at(home, piece);
            let spoilt: Chess = setup
                .position(shakmaty::CastlingMode::Standard)
                .unwrap_or_else(|error| panic!("{}: {error}", entry.id));
            assert!(!spoilt.is_checkmate(), "{}: it was not needed", entry.id);
        }
    }
    assert!(tried >= 4);
}

#[test]
fn topics_colours_and_lengths_are_mixed() {
    let mut topics: BTreeMap<String, usize> = BTreeMap::new();
    let mut lengths: BTreeMap<u8, usize> = BTreeMap::new();
    let mut others = Vec::new();
    let mut white = 0;
    let entries = entries();
    for entry in &entries {
        match entry.stipulation {
            Some(Stipulation::Mate(moves)) => {
                *lengths.entry(moves).or_default() += 1;
                let topic = entry.topic.clone().unwrap_or_default();
                *topics.entry(topic).or_default() += 1;
            }
            other => others.push(other),
        }
        white += usize::from(entry.position.turn() == Color::White);
    }
    assert!(
        topics.len() >= 4 && topics.values().all(|n| *n >= 4),
        "{topics:?}"
    );
    assert!(
        topics
            .keys()
            .filter(|topic| promised(topic).is_some())
            .count()
            >= 3
    );
    assert!(topics.keys().any(|topic| promised(topic).is_none()));
    assert_eq!(lengths.keys().copied().collect::<Vec<_>>(), [2, 3, 4]);
    assert_eq!(others, [Some(Stipulation::Win), Some(Stipulation::Draw)]);
    assert!(
        white >= entries.len() / 3 && white <= entries.len() * 2 / 3,
        "{white}"
    );
}

#[test]
fn the_script_posts_every_position_once() {
    let script = Script::read().expect("the script is read");
    let mut ids: Vec<String> = entries().into_iter().map(|entry| entry.id).collect();
    let mut posted: Vec<String> = script
        .group
        .past
        .iter()
        .chain(&script.group.queue)
        .cloned()
        .collect();
    ids.sort();
    posted.sort();
    assert_eq!(ids, posted);
    assert_eq!(script.group.past.len(), 21, "three weeks");
    assert!(script.group.queue.len() > 7);
}
