//! The conversations that are kept in `snapshots` are held in every language: whatever they show in English,
//! they show in another language too, so that somebody has read it there.

use std::fs;

use sealed_move_tests::{tongue::Tongue, workspace};

/// Messages that in English read as part of another one, which is what is shown.
const TAKEN_FOR_OTHERS: &[&str] = &[
    "advice-begin",
    "figures-asked",
    "figures-who-took-part",
    "kept-word",
    "marked-word",
];

/// What people said and read in the conversations of a language.
fn kept(tongue: Tongue) -> String {
    let folder = workspace().join("tests/tests/snapshots");
    let mut text = String::new();
    for entry in fs::read_dir(folder).expect("the kept conversations") {
        let path = entry.expect("an entry").path();
        let name = path.file_stem().expect("a name").to_string_lossy();
        let other = Tongue::ALL.into_iter().find(|other| {
            let ending = other.kept_as("");
            !ending.is_empty() && name.ends_with(&ending)
        });
        if other.unwrap_or_default() == tongue && path.extension().is_some_and(|e| e == "snap") {
            let conversation = fs::read_to_string(&path).expect("readable");
            for line in conversation.lines() {
                text.push_str(line.trim_start());
                text.push('\n');
            }
        }
    }
    text
}

#[test]
fn what_is_shown_in_english_is_shown_in_every_language() {
    let english = Tongue::English.shown(&kept(Tongue::English));
    assert!(english.len() > 200, "{} messages are shown", english.len());
    for tongue in [Tongue::German, Tongue::Spanish] {
        let here = tongue.shown(&kept(tongue));
        let mut missing: Vec<_> = english.difference(&here).collect();
        missing.retain(|id| !TAKEN_FOR_OTHERS.contains(id));
        assert!(
            missing.is_empty(),
            "{} of {} are never shown in {tongue:?}: {missing:#?}",
            missing.len(),
            english.len()
        );
    }
}
