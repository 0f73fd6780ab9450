//! The classifier on a corpus of invented messages: false takes and misses, counted.

use super::read;
use crate::{Language, parse_fen};

const CORPUS: &str = include_str!("talk.txt");

#[test]
fn answers_are_told_from_talk() {
    let (mut answers, mut talk) = (0, 0);
    let (mut false_takes, mut misses) = (Vec::new(), Vec::new());
    for line in CORPUS.lines().filter(|line| !line.starts_with('#')) {
        let fields: Vec<&str> = line.split('\t').collect();
        let [label, name, text] = fields[..] else {
            panic!("three fields are wanted: {line}");
        };
        let fen = match name {
            "rooks" => "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - -",
            "smothered" => "r6k/6pp/8/6N1/2Q5/8/8/6K1 w - -",
            other => panic!("no position {other}"),
        };
        let position = parse_fen(fen).expect("a position").position;
        let text = text.replace("\\n", "\n");
        let taken = read(&position, &[], &text, Language::English)
            .expect("short")
            .answer;
        match label {
            "a" => {
                answers += 1;
                if !taken {
                    misses.push(text);
                }
            }
            "t" => {
                talk += 1;
                if taken {
                    false_takes.push(text);
                }
            }
            other => panic!("no label {other}"),
        }
    }
    println!(
        "{answers} answers, {} missed: {misses:?}\n{talk} messages of talk, {} taken: {false_takes:?}",
        misses.len(),
        false_takes.len()
    );
    assert!(answers >= 80 && talk >= 100, "{answers} and {talk}");
    // Taking talk for an answer may cost points, so none of it is let through; a missed answer costs
    // a second message.
    assert!(false_takes.is_empty(), "talk taken: {false_takes:?}");
    assert!(misses.len() * 20 <= answers, "answers missed: {misses:?}");
}
