//! What a step becomes, what is refused, and that what is written is read again.

use shakmaty::{EnPassantMode, fen::Fen};

use super::*;
use crate::{Stipulation, comments::lines};

const BODEN: &str = "1nkr1r2/p2pp2p/1p3qp1/2p2p2/5B2/P2QPN2/2P1B1PP/4R2K w - - 0 1";
const BACK_RANK: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1";

fn lesson(text: &str) -> Lesson {
    read_lesson("l.pgn", text.as_bytes())
}

fn steps(text: &str) -> Vec<Step> {
    lesson(text)
        .steps
        .into_iter()
        .map(|step| step.unwrap_or_else(|error| panic!("{error}")))
        .collect()
}

fn one(text: &str) -> Step {
    let mut all = steps(text);
    assert_eq!(all.len(), 1);
    all.remove(0)
}

fn refused(text: &str) -> (usize, Fault) {
    let error = lesson(text).steps.remove(0).expect_err("refused");
    (error.line, *error.problem)
}

/// A part in a line: what it is, the task, where it stands, and what is said before.
fn told(part: &Part) -> String {
    let board = |position: &Chess| {
        Fen::from_position(position, EnPassantMode::Legal)
            .to_string()
            .split(' ')
            .next()
            .unwrap_or_default()
            .to_owned()
    };
    match &part.holds {
        Holds::Stop(entry) => format!(
            "stop {} at {}: {}",
            entry
                .stipulation
                .map_or("?".into(), |task| task.to_string()),
            board(&entry.position),
            entry
                .best
                .iter()
                .map(|mv| shakmaty::san::SanPlus::from_move(entry.position.clone(), *mv))
                .map(|san| san.to_string())
                .collect::<Vec<_>>()
                .join(" ")
        ),
        Holds::Question(written) => format!("question: {}", written.words),
        Holds::Words(written) => format!("words: {}", written.words),
    }
}

fn all_told(step: &Step) -> Vec<String> {
    step.parts.iter().map(told).collect()
}

#[test]
fn a_step_is_what_its_tags_moves_and_words_make_it() {
    let fen = |rest: &str| format!("[FEN \"{BACK_RANK}\"]\n{rest}");
    let cases = [
        // Words, with and without a picture.
        (
            "{What a corridor is.} *".to_owned(),
            "words: What a corridor is.",
        ),
        (
            fen("\n{Look at the eighth rank.} *"),
            "words: Look at the eighth rank.",
        ),
        (fen("[Words \"Shut in.\"]\n\n*"), "words: Shut in."),
        // An example.
        (
            fen("\n{It goes like this.} 1. Rxd8+ Rxd8 2. Rxd8# *"),
            "words: It goes like this.",
        ),
        // A stop by its mark, by the task of the start, and with no moves at all.
        (
            fen("\n1. Rxd8+ {[stop]} Rxd8 2. Rxd8# *"),
            "stop ? at r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1: Rxd8+",
        ),
        (
            fen("\n1. Rxd8+ {[Stop #2]: take} *"),
            "stop #2 at r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1: Rxd8+",
        ),
        (
            fen("[Task \"#2\"]\n\n1. Rxd8+ *"),
            "stop #2 at r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1: Rxd8+",
        ),
        (
            fen("[Task \"+\"]\n\n*"),
            "stop + at r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1: ",
        ),
        // Questions.
        (
            "{Who has mated like that?} *".to_owned(),
            "question: Who has mated like that?",
        ),
        (
            fen("[Question \"What does White want?\"]\n\n*"),
            "question: What does White want?",
        ),
        (
            fen("[Homework \"yes\"]\n\n{Find a game of your own.} *"),
            "question: Find a game of your own.",
        ),
        (fen("[Task \"?\"]\n\n{Tell us.} *"), "question: Tell us."),
        (
            fen("\n{Then this.} 1. Rd3 Rxd3 {Where did White go wrong?} *"),
            "question: Then this.",
        ),
        // No is no.
        (fen("[Homework \"no\"]\n\n{Read.} *"), "words: Read."),
        // Something else in brackets is no mark.
        (fen("\n{See.} 1. Rxd8+ {[stopped] here} *"), "words: See."),
    ];
    for (text, expected) in cases {
        assert_eq!(all_told(&one(&text)), [expected], "{text}");
    }
}

#[test]
fn a_game_from_the_first_move_leads_up_to_its_stops() {
    let step = one(
        "[Lesson \"Pins\"]\n\n{An old trap.} 1. e4 e5 2. Nf3 d6 {Solid.} 3. Bc4 Bg4 {A pin. What is it worth?} 4. Nc3 g6 \
         5. Nxe5 {[stop +] The pin was none.} 5... Bxd1 (5... dxe5 6. Qxg4 {a pawn up}) 6. Bxf7+ {[stop #2] Out he comes.} \
         6... Ke7 7. Nd5# {Three pieces.} *",
    );
    let parts = &step.parts;
    assert_eq!(parts.len(), 2);
    let first = parts[0].stop().expect("there");
    assert_eq!(first.stipulation, Some(Stipulation::Win));
    let comments: Vec<&str> = first.comments.iter().map(|c| c.text.as_str()).collect();
    assert_eq!(comments, ["An old trap."]);
    assert_eq!(
        lines(&parts[0].lead, str::to_owned),
        [
            "1.e4 e5 2.Nf3 d6 Solid.",
            "3.Bc4 Bg4 A pin. What is it worth?",
            "4.Nc3 g6"
        ]
    );
    // The first one's own line ends before the second one's answer, and keeps what is said of the move.
    let tree = first.variations.as_ref().expect("there");
    assert_eq!(tree.nodes[0].comment.as_deref(), Some("The pin was none."));
    let replies = &tree.nodes[0].next.nodes;
    assert_eq!(replies.len(), 2);
    assert!(replies[0].next.nodes.is_empty(), "6.Bxf7+ is asked later");
    assert_eq!(replies[1].next.nodes.len(), 1, "6.Qxg4 is not");
    // The second one is led up to by all the moves; what was said before goes without saying.
    let second = parts[1].stop().expect("there");
    assert_eq!(second.stipulation, Some(Stipulation::Mate(2)));
    assert!(second.comments.is_empty());
    assert_eq!(
        lines(&parts[1].lead, str::to_owned),
        ["1.e4 e5 2.Nf3 d6 3.Bc4 Bg4 4.Nc3 g6 5.Nxe5 Bxd1"]
    );
    assert_eq!(second.id, "l.pgn:1, 2");
}

#[test]
fn a_stop_may_stand_in_a_side_line_and_comes_after_the_main_line() {
    let step = one(
        "[FEN \"6k1/5ppp/8/8/8/8/r4PPP/1R4K1 w - - 0 1\"]\n\n1. h3 Ra1 ({Declined.} 1... h6 2. Rb8+ {[stop +]}) 2. Rxa1 {[stop +]} *",
    );
    assert_eq!(
        all_told(&step),
        [
            "stop + at 6k1/5ppp/8/8/8/7P/5PP1/rR4K1: Rxa1",
            "stop + at 6k1/5pp1/7p/8/8/7P/r4PP1/1R4K1: Rb8+"
        ]
    );
    assert_eq!(
        lines(&step.parts[1].lead, str::to_owned),
        ["1.h3", "Declined. 1...h6"]
    );
}

#[test]
fn a_step_may_ask_in_words_after_its_stops() {
    let step = one(&format!(
        "[FEN \"{BODEN}\"]\n[Question \"Where else have you seen it?\"]\n\n{{Cross them.}} 1. Qa6+ {{[stop #2]}} Nxa6 2. Bxa6# *"
    ));
    assert_eq!(
        all_told(&step),
        [
            "stop #2 at 1nkr1r2/p2pp2p/1p3qp1/2p2p2/5B2/P2QPN2/2P1B1PP/4R2K: Qa6+",
            "question: Where else have you seen it?"
        ]
    );
}

#[test]
fn what_is_wrong_is_told_with_its_line_and_the_other_steps_stand() {
    let fen = |rest: &str| format!("[FEN \"{BACK_RANK}\"]\n{rest}");
    let (line, fault) = refused(&fen("\n1. Rxd8+ Rxd8\n2. Rxd8# {[stop #x]} *"));
    assert_eq!(line, 4);
    assert!(matches!(fault, Fault::StopNoTask { .. }));
    let (line, fault) = refused(&fen("[Task \"#0\"]\n\n1. Rxd8+ *"));
    assert_eq!(line, 1);
    assert!(matches!(fault, Fault::TagNoTask { .. }));
    assert!(matches!(refused(&fen("\n*")).1, Fault::StepEmpty));
    assert!(matches!(
        refused(&fen("[Homework \"yes\"]\n\n*")).1,
        Fault::QuestionLacksWords
    ));
    let long = "word ".repeat(201);
    assert!(matches!(
        refused(&format!("{{{long}}} *")).1,
        Fault::PartTooLong { most: 1_000 }
    ));
    let long = "word ".repeat(310);
    assert!(matches!(
        refused(&fen(&format!(
            "\n1. h3 {{{long}}} h6 2. Rxd8+ {{[stop]}} *"
        )))
        .1,
        Fault::LeadTooLong { most: 1_400 }
    ));
    let lesson = lesson(&format!(
        "{{One.}} *\n\n{}\n\n{{Three.}} *\n",
        fen("\n1. Rd9 *")
    ));
    let fine: Vec<bool> = lesson.steps.iter().map(Result::is_ok).collect();
    assert_eq!(fine, [true, false, true]);
    let many = "{x} *\n\n".repeat(MOST_STEPS + 1);
    let all = read_lesson("l.pgn", many.as_bytes()).steps;
    assert_eq!(all.len(), MOST_STEPS + 1);
    assert!(
        matches!(&all[MOST_STEPS], Err(error) if matches!(*error.problem, Fault::LessonTooLong { .. }))
    );
}

#[test]
fn title_and_topic_are_the_lessons_own() {
    let text = "[Event \"Wednesday\"]\n\n{One.} *\n\n[Lesson \"Crossing lines\"]\n[Topic \"Boden's mate\"]\n[Id \"two\"]\n[Contrast \"yes\"]\n\n{Two.} *\n";
    let lesson = lesson(text);
    assert_eq!(lesson.title.as_deref(), Some("Crossing lines"));
    assert_eq!(lesson.topic.as_deref(), Some("Boden's mate"));
    let steps: Vec<Step> = lesson.steps.into_iter().flatten().collect();
    assert_eq!((steps[0].contrast, steps[1].contrast), (false, true));
    assert_eq!(steps[1].id.as_deref(), Some("two"));
    let topic = |step: &Step| match &step.parts[0].holds {
        Holds::Words(written) => written.topic.clone(),
        _ => None,
    };
    assert_eq!(
        topic(&steps[0]).as_deref(),
        Some("Boden's mate"),
        "the lesson's"
    );
    let lesson = read_lesson("l.pgn", b"[Event \"Wednesday\"]\n\n{One.} *");
    assert_eq!(lesson.title.as_deref(), Some("Wednesday"));
}

/// What general tools write: nested variations, glyphs, comments with commands of programs, a byte order
/// mark, and lines that end as on another system.
const RICH: &str = "\u{feff}[Event \"A \\\"rich\\\" lesson\"]\r\n[Site \"?\"]\r\n[Lesson \"Rich\"]\r\n[FEN \"1nkr1r2/p2pp2p/1p3qp1/2p2p2/5B2/P2QPN2/2P1B1PP/4R2K w - - 0 1\"]\r\n[SetUp \"1\"]\r\n\r\n{ Two bishops. } { [reveal] Not yet. }\r\n1. Qa6+ $3 { [stop #2] [%clk 0:01:00] [%eval 9] Asks the knight. } ( { Greedy: } 1. Qxd7+ $2 { Lets him out. } 1... Rxd7 ( 1... Kxd7 $14 { runs ( as well ) } 2. Ne5+ ( 2. Bb5+ ; a line comment\r\n Ke6 ) 2... Ke6 ) 2. Bb5 $18 ) ( 1. h3 ) 1... Nxa6 2. Bxa6# $146 1-0\r\n\r\n% a line for programs\r\n[FEN \"8/8/8/8/8/5k2/5p2/5K2 b - - 0 9\"]\r\n\r\n{Black to move.} 9... Kg3 {is %50 wrong} ({or} 9... Ke3 {[almost]}) 10. -- *\r\n";

#[test]
fn a_lesson_that_is_written_is_read_again_the_same() {
    let text = RICH.replace(" 10. -- *", " *");
    let lesson = lesson(&text);
    let kept: Vec<String> = lesson
        .steps
        .iter()
        .map(|step| step.as_ref().expect("readable").game.clone())
        .collect();
    let out = written("Rich", None, &kept).expect("there");
    assert!(out.lines().all(|line| line.chars().count() <= 79), "{out}");
    assert!(out.contains("[%clk 0:01:00]"), "kept, and shown to nobody");
    let again = read_lesson("l.pgn", out.as_bytes());
    assert_eq!(again.title.as_deref(), Some("Rich"));
    let kept_again: Vec<String> = again
        .steps
        .iter()
        .map(|step| step.as_ref().expect("readable").game.clone())
        .collect();
    assert_eq!(written("Rich", None, &kept_again).expect("there"), out);
    for (step, again) in lesson
        .steps
        .iter()
        .flatten()
        .zip(again.steps.iter().flatten())
    {
        assert_eq!(shape(step), shape(again));
    }
}

/// All of a step but lines of the file.
pub(crate) fn shape(step: &Step) -> String {
    let mut out = format!("{:?} {}", step.contrast, step.parts.len());
    for part in &step.parts {
        out.push_str(&format!("\n{} {:?}", told(part), part.lead));
        if let Holds::Stop(entry) = &part.holds {
            let words: Vec<_> = entry.comments.iter().map(|c| (&c.text, c.goes)).collect();
            out.push_str(&format!("{words:?}"));
            if let Some(tree) = &entry.variations {
                grown(tree, &mut out);
            }
        }
    }
    out
}

fn grown(tree: &crate::read::GameTree, out: &mut String) {
    for node in &tree.nodes {
        out.push_str(&format!(
            "({:?} {:?} {:?} {:?}",
            node.mv, node.nags, node.before, node.comment
        ));
        grown(&node.next, out);
        out.push(')');
    }
}

#[test]
fn a_stop_can_be_checked_again_from_what_is_kept_of_it() {
    let step = one(&format!(
        "[FEN \"{BODEN}\"]\n[Topic \"Boden\"]\n\n{{Cross. [reveal] So.}} 1. Qa6+ {{[stop #2] The queen asks.}} (1. h3 $2) 1... Nxa6 2. Bxa6# *"
    ));
    let entry = step.parts[0].stop().expect("there");
    let again = crate::read::read_file("kept", entry.text.as_bytes());
    let again = again[0].as_ref().expect("readable");
    assert_eq!(again.position, entry.position);
    assert_eq!(again.stipulation, entry.stipulation);
    assert_eq!(again.comments, entry.comments);
    assert_eq!(again.topic, entry.topic);
    let (mut one, mut two) = (String::new(), String::new());
    grown(entry.variations.as_ref().expect("there"), &mut one);
    grown(again.variations.as_ref().expect("there"), &mut two);
    assert_eq!(one, two);
}

#[test]
fn what_tells_a_stop_waits_for_it() {
    let sealed = one(&format!(
        "[FEN \"{BODEN}\"]\n\n1. Qa6+ {{[stop #2]}} Nxa6 2. Bxa6# *"
    ));
    let entry = sealed.parts[0].stop().expect("there");
    let (keys, line) = (
        vec!["Qa6+".to_owned()],
        ["Qa6+", "Nxa6", "Bxa6#"].map(str::to_owned).to_vec(),
    );
    let secret = Secret::of(entry, &keys, &line);
    let tells = |text: &str| {
        let lesson = lesson(text);
        let game = read_games("l.pgn", text.as_bytes())
            .remove(0)
            .expect("readable");
        let step = lesson.steps[0].as_ref().expect("readable");
        let mut parts = step.parts.iter();
        parts.any(|part| secret.told_by(&Shows::of(part, &game.start)))
    };
    // The final picture of it, or one on the way.
    assert!(tells(
        "[FEN \"2kr1r2/p2pp2p/Bp3qp1/2p2p2/5B2/P3PN2/2P3PP/4R2K b - - 0 2\"]\n\n{Look.} *"
    ));
    // A step that goes on from it, whatever its counters.
    assert!(tells(
        "[FEN \"2kr1r2/p2pp2p/np3qp1/2p2p2/5B2/P3PN2/2P1B1PP/4R2K w - - 7 9\"]\n\n1. Bxa6# {[stop #1]} *"
    ));
    // An example that plays it, and words that say it.
    assert!(tells(&format!("[FEN \"{BODEN}\"]\n\n{{Again.}} 1. Qa6+ *")));
    assert!(tells("{The queen goes to a6 with check.} *"));
    // Other words, another picture, and the position itself once more as a picture.
    assert!(!tells("{Two bishops make a cross.} *"));
    assert!(!tells(&format!(
        "[FEN \"{BACK_RANK}\"]\n\n1. Rxd8+ {{[stop #2]}} Rxd8 2. Rxd8# *"
    )));
    assert!(!tells(&format!(
        "[FEN \"{BODEN}\"]\n\n{{Where are the bishops?}} *"
    )));
}

#[test]
fn words_on_the_way_that_tell_the_move_are_held() {
    let step = one(
        "[FEN \"6k1/5ppp/8/8/8/8/r4PPP/1R4K1 w - - 0 1\"]\n\n1. h3 {He prepares Rb8, and mates.} h6 {Air.} 2. Rb8+ {[stop +]} *",
    );
    let mut lead = step.parts[0].lead.clone();
    let position = step.parts[0].stop().expect("there").position.clone();
    let held = guard(&mut lead, &position, &["Rb8+".to_owned()], &[]);
    assert_eq!(held.len(), 1);
    assert_eq!(held[0].words, "He prepares Rb8, and mates.");
    assert_eq!(lines(&lead, str::to_owned), ["1.h3", "1...h6 Air."]);
}
