//! Where words go out, what they give away, and how they stand beside their moves.

use super::*;
use crate::{
    Budget, check,
    fact::{Line, Theirs},
    read::read_file,
};

/// A mate in two of our own: 1.Rxd8+ Rxd8 2.Rxd8#.
const FEN: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1";

fn comments(game: &str) -> Comments {
    let file = format!("[FEN \"{FEN}\"]\n[Task \"#2\"]\n\n{game} *\n");
    let mut entries = read_file("f", file.as_bytes());
    let entry = entries.remove(0).expect("readable");
    check::check(
        &entry,
        &check::CheckOptions::default(),
        &Budget::unlimited(),
    )
    .comments
}

fn told(words: &str) -> Option<String> {
    let position = crate::parse_fen(FEN).expect("a position").position;
    let line = ["Rxd8+", "Rxd8", "Rxd8#"].map(str::to_owned);
    gives_away(&position, &line[..1], &line, words)
}

#[test]
fn words_go_out_where_they_are_marked_for() {
    let words = comments(
        "{Look at the last rank.} {[reveal] A rook for a rook.} {[POST] Two moves only. [Reveal]: And then mate.} 1.Rxd8+ {[%seen 3] Now the rank is bare.} Rxd8 2.Rxd8#",
    );
    assert_eq!(words.with_post, "Look at the last rank.\nTwo moves only.");
    assert_eq!(words.at_reveal, "A rook for a rook.\nAnd then mate.");
    assert_eq!(words.notes[0].after, "Now the rank is bare.");
    assert!(words.held.is_empty() && words.warnings().is_empty());
}

#[test]
fn words_that_tell_a_move_are_held_until_the_reveal() {
    for told in [
        "Find 1.Rxd8+ and the rest.",
        "The rook takes d8 first, of course",
        "Not h3, but Rxd8!",
        "Why is Rd7 wrong?",
        "Consider d2-d8",
        "\u{2656}xd8 is tempting",
        "Td8 schl\u{e4}gt",
        "Everything happens on d8, and it is a rook that starts it.",
        "Is it Kf1 or something better",
    ] {
        let words = comments(&format!("{{{told}}} 1.Rxd8+ Rxd8 2.Rxd8#"));
        assert_eq!(words.with_post, "", "{told}");
        assert_eq!(words.at_reveal, told);
        let [Withheld::WordsHeld { line, words }] = &words.warnings()[..] else {
            panic!("{:?}", words.warnings());
        };
        assert_eq!(words, &Theirs::from(told));
        assert_eq!(
            Some(Line::from(self::told(told).expect("a move"))),
            Some(line.clone())
        );
        let meant = comments(&format!("{{[post] {told}}} 1.Rxd8+ Rxd8 2.Rxd8#"));
        assert_eq!(
            (meant.with_post.as_str(), meant.at_reveal.as_str()),
            (told, "")
        );
    }
}

#[test]
fn words_that_tell_no_move_go_out() {
    for words in [
        "Look at the back rank.",
        "The pawns on f7, g7 and h7 shut their own king in.",
        "Count the defenders of d8 before you begin.",
        "White has two moves. What holds Black together?",
        "After Friday's lesson this should take a minute; the 8th rank is the theme.",
        "From the club championship 2019, board 3.",
    ] {
        assert_eq!(told(words), None, "{words}");
    }
}

#[test]
fn later_moves_of_the_solution_are_told_too() {
    // A mate by check and double check of our own; none of its later moves can be played at once.
    let position = crate::parse_fen("5r1k/5Npp/8/8/2Q5/8/6PP/7K b - - 0 1")
        .expect("a position")
        .position;
    let line = ["Kg8", "Nh6+", "Kh8", "Qg8+", "Rxg8", "Nf7#"].map(str::to_owned);
    assert_eq!(
        gives_away(&position, &[], &line, "In the end it is Kh8"),
        Some("Kh8".into())
    );
    assert_eq!(
        gives_away(&position, &[], &line, "In the end it is nothing"),
        None
    );
}

#[test]
fn words_stand_beside_their_moves() {
    let words = comments(
        "1.Rxd8+ $1 {A rook for a rook.} (1.Rd7 $2 {Too slow.} Rxd7 (1...Rab8 {worse}) 2.Rxd7 g6) ({Nor} 1.h3 $6) Rxd8 2.Rxd8# $18",
    );
    assert_eq!(
        lines(&words.notes, str::to_owned),
        [
            "1.Rxd8+! A rook for a rook.",
            "(1.Rd7? Too slow. 1...Rxd7 (1...Rab8 worse) 2.Rxd7 g6)",
            "(Nor 1.h3?!)",
            "1...Rxd8 2.Rxd8# +-",
        ]
    );
    // Moves without words or signs say nothing that the solution does not.
    assert!(comments("1.Rxd8+ Rxd8 2.Rxd8# (2.h3)").notes.is_empty());
}

#[test]
fn what_is_kept_is_bounded_and_what_is_not_is_said() {
    let long = "word ".repeat(300);
    let words = comments(&format!("{{{long}}} 1.Rxd8+ Rxd8 2.Rxd8#"));
    assert_eq!(
        (words.with_post.as_str(), words.at_reveal.as_str()),
        ("", long.trim())
    );
    let quoted = format!("{}…", long[..80].trim_end());
    let held = Withheld::LongWordsHeld {
        most: 1_000,
        words: quoted.into(),
    };
    assert_eq!(words.warnings(), [held]);
    let longer = "word ".repeat(4_000);
    let words = comments(&format!(
        "{{[reveal] {longer}}} 1.Rxd8+ {{{longer}}} Rxd8 2.Rxd8# {{end}}"
    ));
    assert!(characters(&words.at_reveal) <= MOST_AT_REVEAL);
    assert!(words.cut && words.notes.is_empty());
    let cut = Withheld::WordsCut {
        most: 4_000,
        beside: 12_000,
    };
    assert_eq!(words.warnings(), [cut]);
}
