//! Files good and bad, and whatever bytes may come.

use proptest::prelude::*;
use shakmaty::{Color, Position, san::SanPlus};

use super::Goes;
use super::*;
use crate::{PositionError, fact::number};

fn one(text: &str) -> Result<Entry, ReadError> {
    let mut all = read_file("f", text.as_bytes());
    assert_eq!(all.len(), 1, "{all:?}");
    all.remove(0)
}

fn sans(entry: &Entry, moves: &[Move]) -> Vec<String> {
    moves
        .iter()
        .map(|mv| SanPlus::from_move(entry.position.clone(), *mv).to_string())
        .collect()
}

/// The words on a position as a whole, with when they go out.
fn said(entry: &Entry) -> Vec<(&str, Goes)> {
    entry
        .comments
        .iter()
        .map(|comment| (comment.text.as_str(), comment.goes))
        .collect()
}

const BACK_RANK: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - -";

#[test]
fn reads_an_epd_record_with_all_its_opcodes() {
    let entry = one(&format!(
        "{BACK_RANK} bm Rxd8+; am Rd7 h3; dm 2; id \"week; 1\"; c0 \"back rank\"; c1 \"first\"; c9 \"last\"; ce 300; hmvc 7; fmvn 31;"
    ))
    .expect("readable");
    assert_eq!(entry.id, "week; 1");
    assert_eq!(entry.stipulation, Some(Stipulation::Mate(2)));
    assert_eq!(sans(&entry, &entry.best), ["Rxd8+"]);
    assert_eq!(sans(&entry, &entry.avoid), ["Rd7", "h3"]);
    assert_eq!(entry.topic.as_deref(), Some("back rank"));
    assert_eq!(
        said(&entry),
        [("first", Goes::AtReveal), ("last", Goes::AtReveal)]
    );
    assert_eq!(entry.position.halfmoves(), 7);
    assert_eq!(entry.position.fullmoves().get(), 31);
}

#[test]
fn reads_six_fields_before_opcodes_and_bare_fens() {
    let entry = one(&format!("{BACK_RANK} 3 20 bm d2d8")).expect("readable");
    assert_eq!(sans(&entry, &entry.best), ["Rxd8+"]);
    assert_eq!(entry.position.halfmoves(), 3);
    assert_eq!(entry.id, "f:1");
    let all = read_file(
        "days.txt",
        format!("# a remark\n\n{BACK_RANK} 0 1\n{BACK_RANK}\n").as_bytes(),
    );
    let ids: Vec<_> = all
        .iter()
        .flatten()
        .map(|entry| entry.id.as_str())
        .collect();
    assert_eq!(ids, ["days.txt:3", "days.txt:4"]);
}

/// The example record of the PGN standard, section 16.2.3 (the position after 1.e4, with
/// centipawn evaluation and other operations that are not for us).
#[test]
fn reads_the_record_of_the_standard() {
    let entry = one("rnbqkbnr/pppp1ppp/8/4p3/4P3/8/PPPP1PPP/RNBQKBNR w KQkq - acd 5; bm Nf3 Nc3; ce 12; pv Nf3 Nc6; id \"open.1\";").expect("readable");
    assert_eq!(sans(&entry, &entry.best), ["Nf3", "Nc3"]);
}

#[test]
fn a_draw_is_stated_by_the_task_opcode() {
    let entry = one("8/8/8/8/8/5k2/5p2/5K2 w - - task \"=\";").expect("readable");
    assert_eq!(entry.stipulation, Some(Stipulation::Draw));
}

#[test]
fn a_bad_line_is_an_error_in_its_place() {
    let text = format!(
        "{BACK_RANK} id \"good\";\n{BACK_RANK} bm Rxd9; id \"bad\";\n8/8/8/8/8/8/8/K7 w - -\n{BACK_RANK} dm 99;\n{BACK_RANK} c1 \"open;\n{BACK_RANK} id \"last\";"
    );
    let all = read_file("f.epd", text.as_bytes());
    let lines: Vec<_> = all
        .iter()
        .map(|result| {
            result
                .as_ref()
                .map(|e| e.line)
                .map_err(|e| (e.line, e.id.clone()))
        })
        .collect();
    assert_eq!(
        lines,
        [
            Ok(1),
            Err((2, Some("bad".to_owned()))),
            Err((3, None)),
            Err((4, None)),
            Err((5, None)),
            Ok(6)
        ]
    );
    let says = |at: usize, problem: Fault| {
        let error = all[at].as_ref().expect_err("bad");
        assert_eq!((error.file.as_str(), &*error.problem), ("f.epd", &problem));
    };
    let (code, written) = ("bm".into(), "Rxd9".into());
    says(1, Fault::OperandUnread { code, written });
    let why = PositionError::NoKing {
        side: Color::Black.into(),
    };
    says(2, Fault::NoPositionHere { why });
    says(3, Fault::LengthWanted { most: 20 });
    let code = "c1".into();
    says(4, Fault::QuotationNotClosed { code });
    assert!(
        all[2]
            .as_ref()
            .is_err_and(|e| e.text.starts_with("8/8/8/8/8/8/8/K7 w - -"))
    );
}

#[test]
fn illegal_and_ambiguous_moves_are_told_apart() {
    let error = one("4k3/8/8/8/8/8/4K3/R6R w - - bm Rd1;").expect_err("two rooks");
    let (code, written) = ("bm".into(), "Rd1".into());
    assert_eq!(*error.problem, Fault::OperandNotClear { code, written });
    let error = one("4k3/8/8/8/8/8/4K3/R6R w - - bm Rb2;").expect_err("no such move");
    let (code, written) = ("bm".into(), "Rb2".into());
    assert_eq!(*error.problem, Fault::OperandNotLegal { code, written });
}

const LESSON: &str = r##"[Event "Lesson 4"]
[Id "lesson-4"]
[Topic "back rank"]
[Task "#2"]
[SetUp "1"]
[FEN "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1"]

{Find the shortest way.} 1.Rxd8+! {A rook for a rook,
and the rank is bare} (1. Rd7? Rxd7 (1...Rab8 2.Rxd8+ $18) 2.Rxd7 g6 ; luft
)
1... Rxd8

2.Rxd8# 1-0

[Event "Lesson 5"]
[FEN "8/8/8/8/8/5k2/5p2/5K2 w - - 0 1"]

*
"##;

#[test]
fn reads_a_lesson_in_pgn() {
    let all = read_file("lesson.pgn", LESSON.as_bytes());
    assert_eq!(all.len(), 2);
    let entry = all[0].as_ref().expect("readable");
    assert_eq!(entry.id, "lesson-4");
    assert_eq!(entry.line, 1);
    assert_eq!(entry.topic.as_deref(), Some("back rank"));
    assert_eq!(entry.stipulation, Some(Stipulation::Mate(2)));
    assert_eq!(said(entry), [("Find the shortest way.", Goes::WithPost)]);
    assert_eq!(sans(entry, &entry.best), ["Rxd8+"]);
    let tree = entry.variations.as_ref().expect("moves");
    assert_eq!(tree.nodes.len(), 2);
    let key = &tree.nodes[0];
    assert_eq!(key.nags, [1]);
    assert_eq!(
        key.comment.as_deref(),
        Some("A rook for a rook, and the rank is bare")
    );
    assert_eq!(key.next.nodes[0].line, 11);
    let mate = &key.next.nodes[0].next.nodes[0];
    assert!(mate.mate_sign);
    assert_eq!(mate.line, 13);
    let wrong = &tree.nodes[1];
    assert_eq!(wrong.nags, [2]);
    assert_eq!(wrong.next.nodes.len(), 2);
    assert_eq!(wrong.next.nodes[1].next.nodes[0].nags, [18]);
    assert_eq!(
        wrong.next.nodes[0].next.nodes[0].next.nodes[0]
            .comment
            .as_deref(),
        Some("luft")
    );
    let second = all[1].as_ref().expect("readable");
    assert_eq!(second.id, "Lesson 5");
    assert!(second.variations.is_none());
}

#[test]
fn errors_in_a_game_name_line_and_move() {
    let game =
        |moves: &str| format!("[FEN \"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1\"]\n\n{moves}\n");
    let not_legal = |line: &str| Fault::MoveNotLegal { line: line.into() };
    let written = |written: &str| written.into();
    for (moves, line, problem) in [
        ("1.Rxd8+ Rxd8\n2.Rxd7#", 4, not_legal("2.Rxd7#")),
        ("1.Rxd8+\nRxc8", 4, not_legal("1...Rxc8")),
        (
            "1.Rxd8+ Rxd8\n\n2.Hxd8#",
            5,
            Fault::MoveUnread {
                written: written("Hxd8#"),
            },
        ),
        ("1.Rxd8+ {never closed\n2.x", 3, Fault::CommentNotClosed),
        ("1.Rxd8+\n(1.Rd7", 4, Fault::BracketNotClosed),
        ("1.Rxd8+ )", 3, Fault::BracketNotOpened),
        ("(1.Rd7) 1.Rxd8+", 3, Fault::VariationTooSoon),
        ("-- Rxd8", 3, Fault::NullMove),
        (
            "1.Rxd8+ $999",
            3,
            Fault::GlyphUnknown {
                written: written("$999"),
            },
        ),
    ] {
        let error = one(&game(moves)).expect_err(moves);
        assert_eq!((error.line, *error.problem), (line, problem), "{moves}");
    }
    let error = one("[FEN \"8/8/8/8/8/8/8/K7 w - -\"]\n\n*").expect_err("no king");
    let why = PositionError::NoKing {
        side: Color::Black.into(),
    };
    assert_eq!(*error.problem, Fault::TagNoPosition { why });
    let error = one("[Event \"x\"]\n[Task \"mate\"]\n[FEN \"8/8/8/8/8/5k2/5p2/5K2 w - -\"]\n\n*")
        .expect_err("no task");
    let (tag, why) = (
        "Task".into(),
        "mate".parse::<Stipulation>().expect_err("no task"),
    );
    assert_eq!(
        (error.line, *error.problem),
        (2, Fault::TagNoTask { tag, why })
    );
    let error = one("[Event \"x\"]\n\n1.e4 e5 *").expect_err("a whole game");
    assert_eq!(*error.problem, Fault::GameFromTheStart);
    let error = one("[Event x]\n[FEN \"8/8/8/8/8/5k2/5p2/5K2 w - -\"]\n\n*").expect_err("bad tag");
    let written = "[Event x]".into();
    assert_eq!(*error.problem, Fault::TagUnread { written });
}

#[test]
fn one_bad_game_does_not_spoil_the_next() {
    let text = format!(
        "[FEN \"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1\"]\n\n1.Rxd8+ {{never closed\n\n{LESSON}"
    );
    let all = read_file("f", text.as_bytes());
    assert_eq!(all.len(), 3);
    assert!(all[0].as_ref().is_err_and(|error| error.line == 3));
    assert!(all[1].as_ref().is_ok_and(|entry| entry.line == 5));
}

#[test]
fn signs_figurines_and_zeros_are_understood() {
    let entry = one("[FEN \"r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1\"]\n\n1.0-0-0+- 0-0 2.♖h8+?! Kxh8 ± 3.Rh1+ (3.-- Kg7 (3...Ra1 {x}) 4.Rh1) *").expect("readable");
    let tree = entry.variations.as_ref().expect("moves");
    assert_eq!(tree.nodes[0].nags, [18]);
    let third = &tree.nodes[0].next.nodes[0].next.nodes[0];
    assert_eq!(third.nags, [6]);
    assert_eq!(third.next.nodes[0].nags, [16]);
    assert_eq!(third.next.nodes[0].next.nodes.len(), 1);
}

#[test]
fn games_come_with_and_without_a_position() {
    let games = read_games(
        "g.pgn",
        b"1.e4 e5 2.Qh5 Nc6 3.Bc4 Nf6 4.Qxf7# 1-0\n\n1.d4 *",
    );
    assert_eq!(games.len(), 2);
    let first = games[0].as_ref().expect("readable");
    assert!(!first.has_fen);
    assert_eq!(games[1].as_ref().expect("readable").line, 3);
    assert!(read_games("g", BACK_RANK.as_bytes())[0].is_err());
}

#[test]
fn what_is_neither_says_what_is_expected() {
    for bytes in [&b""[..], b"hello there", b"\0\0\0\0", b"<html>"] {
        let all = read_file("f", bytes);
        assert_eq!(all.len(), 1);
        assert!(all[0].is_err());
    }
}

/// Megabytes of nested brackets, of comments, and of moves: bounded work, an answer for each.
#[test]
fn large_files_are_read_in_bounded_work() {
    for unit in [
        "(",
        "{x} ",
        "1.e4 (1.d4 ",
        "[A \"b\"]\n",
        "; x\n",
        "$1 ",
        "{",
        "[",
        "\n[FEN \"x",
    ] {
        let mut text = "[Event \"x\"]\n\n1.e4 e5 ".to_owned();
        text.push_str(&unit.repeat((1 << 20) / unit.len()));
        let all = read_file("f", text.as_bytes());
        assert!(!all.is_empty(), "{unit}");
    }
}

proptest! {
    #![proptest_config(crate::cases::cases(400))]

    #[test]
    fn any_bytes_are_read_or_refused(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        prop_assert!(!read_file("f", &bytes).is_empty());
        prop_assert!(!read_games("f", &bytes).is_empty());
    }

    #[test]
    fn any_pgn_like_text_is_read_or_refused(
        words in proptest::collection::vec(
            prop::sample::select(vec![
                "[FEN \"8/8/8/8/8/5k2/5p2/5K2 w - - 0 1\"]", "[Task \"#2\"]", "[Task \"", "[", "]",
                "\n", "\n\n", " ", "1.", "Kxf2", "Kg1", "e4", "e5", "Nf3", "--", "(", ")", "{", "}",
                ";", "%", "$3", "$", "!?", "*", "1-0", "+-", "0-0", "…", "é", "♘f3", "\"", "\\",
            ]), 0..60),
    ) {
        let text = words.concat();
        for result in read_file("f", text.as_bytes()) {
            let lines = text.lines().count().max(1);
            match result {
                Ok(entry) => prop_assert!((1..=lines).contains(&entry.line)),
                Err(error) => prop_assert!((1..=lines + 1).contains(&error.line), "{error}"),
            }
        }
    }

    #[test]
    fn any_epd_like_text_is_read_or_refused(
        words in proptest::collection::vec(
            prop::sample::select(vec![
                "8/8/8/8/8/5k2/5p2/5K2", "w", "b", "-", "KQkq", "e3", "0", "1", "bm", "dm", "id",
                "Kxf2", "\"", "\"x\"", ";", " ", "\t", "c0", "c12", "é", "99999999999999999999",
            ]), 0..40),
    ) {
        let text = format!("8/8/8/8/8/5k2/5p2/5K2 w - - {}", words.join(" "));
        prop_assert!(!read_file("f", text.as_bytes()).is_empty());
        prop_assert!(!read_file("f", words.concat().as_bytes()).is_empty());
    }

    /// A record written out and read again is the same record, but for what programs write into comments.
    #[test]
    fn ids_and_comments_come_back(id in "[ -!#-~]{1,20}", comment in "[ -!#-~é♘]{0,40}") {
        prop_assume!(!id.trim().is_empty());
        prop_assume!(!comment.contains("[%"));
        let entry = one(&format!("{BACK_RANK} id \"{id}\"; c3 \"{comment}\";"))
            .map_err(|error| TestCaseError::fail(error.to_string()))?;
        prop_assert_eq!(entry.id, id);
        let said: Vec<&str> = entry.comments.iter().map(|c| c.text.as_str()).collect();
        let trimmed = comment.trim();
        prop_assert_eq!(said, if trimmed.is_empty() { vec![] } else { vec![trimmed] });
    }
}

#[test]
fn a_strange_first_line_loses_none_of_the_others() {
    let position = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - dm 2; id \"ok\";";
    let read = read_file("week.epd", format!("My week:\n{position}\n").as_bytes());
    let [Err(strange), Ok(entry)] = read.as_slice() else {
        panic!("{read:?}");
    };
    assert_eq!((strange.line, entry.line), (1, 2));
    assert_eq!(entry.id, "ok");
    let game = "[FEN \"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1\"]\n[Task \"#2\"]\n\n1.Rxd8+ *\n";
    let read = read_file("week.pgn", format!("My week:\n\n{game}").as_bytes());
    let good = read.iter().flatten().count();
    assert_eq!(good, 1, "{read:?}");
    let read = read_file("week.txt", b"My week:\nnothing but words\n");
    let [Err(strange)] = read.as_slice() else {
        panic!("{read:?}");
    };
    let written = "My".into();
    assert_eq!(*strange.problem, Fault::FileBeginsStrangely { written });
}

/// Every place a comment can stand in keeps it with its move, whichever way it is written.
#[test]
fn comments_stay_with_the_move_they_belong_to() {
    let entry = one(
        "[FEN \"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1\"]\n\n{One.} ; Two.\n1. {Three.} Rxd8+ $1 {Four.} \
         {Five.} ( {Six.} 1. Rd7 $2 {Seven.} Rxd7 ) {Eight.} (1. h3 -- {Nine.} (2. g3 {Ten.}) 2. Rxd8) \
         1... Rxd8 ; Eleven.\n2. Rxd8# 1-0 {Twelve.}\n",
    )
    .expect("readable");
    assert_eq!(
        said(&entry),
        [
            ("One.", Goes::WithPost),
            ("Two.", Goes::WithPost),
            ("Three.", Goes::WithPost)
        ]
    );
    let tree = entry.variations.expect("moves");
    let [key, wrong, slow] = tree.nodes.as_slice() else {
        panic!("{tree:?}");
    };
    assert_eq!(key.comment.as_deref(), Some("Four. Five. Eight."));
    assert_eq!(key.nags, [1]);
    assert_eq!(wrong.before.as_deref(), Some("Six."));
    assert_eq!(wrong.comment.as_deref(), Some("Seven."));
    // A null move is no line of moves; what stands behind it is words.
    assert_eq!(slow.comment.as_deref(), Some("-- Nine. (g3 Ten.) Rxd8"));
    let reply = &key.next.nodes[0];
    assert_eq!(reply.comment.as_deref(), Some("Eleven."));
    assert_eq!(reply.next.nodes[0].comment.as_deref(), Some("Twelve."));
}

#[test]
fn words_before_a_variations_first_move_are_not_those_before_the_game() {
    let entry = one("[FEN \"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1\"]\n\n1. Rxd8+ ({The greedy move is} 1. Rd7) ({Only words.}) Rxd8 2. Rxd8# *")
        .expect("readable");
    assert!(entry.comments.is_empty(), "{:?}", entry.comments);
    let tree = entry.variations.expect("moves");
    assert_eq!(tree.nodes[1].before.as_deref(), Some("The greedy move is"));
    assert_eq!(tree.nodes[0].comment.as_deref(), Some("Only words."));
}

#[test]
fn remarks_between_games_are_nobodys() {
    let game =
        "[FEN \"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1\"]\n[Task \"#2\"]\n\n1.Rxd8+ 1-0\n";
    let all = read_file(
        "f",
        format!("; My week\n{game}\n; Wednesday\n{game}").as_bytes(),
    );
    assert_eq!(all.len(), 2, "{all:?}");
    for (entry, line) in all.iter().zip([2, 8]) {
        let entry = entry.as_ref().expect("readable");
        assert_eq!((entry.line, entry.comments.len()), (line, 0));
        let key = &entry.variations.as_ref().expect("moves").nodes[0];
        assert_eq!(key.comment, None);
    }
}

#[test]
fn an_epd_has_words_for_the_post_too() {
    let entry = one(&format!(
        "{BACK_RANK} dm 2; post \"Look at the back rank.\"; c1 \"A rook for a rook.\"; c2 \"[post] It is short.\";"
    ))
    .expect("readable");
    assert_eq!(
        said(&entry),
        [
            ("Look at the back rank.", Goes::WithPost),
            ("A rook for a rook.", Goes::AtReveal),
            ("It is short.", Goes::WithPostAnyway)
        ]
    );
}

/// A byte that is no text costs its own line, by its true number, whatever ends the lines.
#[test]
fn a_damaged_line_costs_itself_only() {
    for end in ["\n", "\r\n", "\r"] {
        let mut file = format!("{BACK_RANK} id \"one\";{end}").into_bytes();
        file.extend(format!("{BACK_RANK} id \"t\0o\";{end}").bytes());
        file.extend(format!("# a remark with a \0 in it{end}").bytes());
        file.extend(BACK_RANK.bytes());
        file.extend(b" id \"Mat\xe9\";");
        file.extend(end.bytes());
        file.extend(BACK_RANK.bytes());
        file.extend(b" id \"x\x81\";");
        file.extend(end.bytes());
        file.extend(format!("{BACK_RANK} id \"Maté\";").bytes());
        let all = read_file("w.epd", &file);
        let [Ok(one), Err(nul), Ok(latin), Err(byte), Ok(last)] = all.as_slice() else {
            panic!("{all:?}");
        };
        assert_eq!((one.line, one.id.as_str()), (1, "one"));
        assert_eq!((latin.line, latin.id.as_str()), (4, "Maté"));
        let what = Oddity::ReadAsWindows;
        assert_eq!(latin.odd_lines, [OddLine { line: 4, what }]);
        assert_eq!((last.line, last.id.as_str()), (6, "Maté"));
        assert!(last.odd_lines.is_empty());
        assert_eq!((nul.line, byte.line), (2, 5));
        let before = |id: &str| number(format!("{BACK_RANK} id \"{id}").len());
        let what = Oddity::NulByte {
            before: before("t"),
        };
        assert_eq!(*nul.problem, Fault::LineLost { what });
        let what = Oddity::StrangeByte {
            byte: Byte(0x81),
            before: before("x"),
        };
        assert_eq!(*byte.problem, Fault::LineLost { what });
    }
}

#[test]
fn a_damaged_game_costs_itself_only() {
    let game = |id: &str, moves: &str| {
        format!(
            "[Id \"{id}\"]\n[FEN \"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1\"]\n[Task \"#2\"]\n\n{moves}\n\n"
        )
    };
    let good = "1.Rxd8+ Rxd8 2.Rxd8# 1-0";
    let file = [
        game("a", good),
        game("b", "1.Rx\0d8+ Rxd8 2.Rxd8# 1-0"),
        game("c", "{A word with a \0 in it.} 1.Rxd8+ Rxd8 2.Rxd8# 1-0"),
        "\0\0\n".to_owned(),
        game("d", good),
    ]
    .concat();
    let all = read_file("w.pgn", file.as_bytes());
    let [Ok(a), Err(b), Ok(c), Err(alone), Ok(d)] = all.as_slice() else {
        panic!("{all:?}");
    };
    assert_eq!((a.id.as_str(), d.id.as_str(), d.line), ("a", "d", 20));
    assert_eq!((b.id.as_deref(), b.line), (Some("b"), 11));
    let what = Oddity::NulByte { before: 4 };
    assert_eq!(*b.problem, Fault::LineLost { what });
    assert_eq!(said(c), [("A word with a \u{fffd} in it.", Goes::WithPost)]);
    let what = Oddity::NulByte { before: 15 };
    assert_eq!(c.odd_lines, [OddLine { line: 17, what }]);
    assert_eq!(alone.line, 19);
}

#[test]
fn promotions_without_a_sign_are_read() {
    const PAWN: &str = "3n4/4P3/8/8/8/7k/8/K7 w - -";
    for (written, san) in [
        ("e8Q", "e8=Q"),
        ("e8(Q)", "e8=Q"),
        ("e8/Q", "e8=Q"),
        ("e8=Q", "e8=Q"),
        ("e8N", "e8=N"),
        ("exd8(R)", "exd8=R"),
        ("exd8Q!", "exd8=Q"),
    ] {
        let entry = one(&format!("{PAWN} bm {written};")).expect(written);
        assert_eq!(sans(&entry, &entry.best), [san], "{written}");
        let entry = one(&format!(
            "[FEN \"{PAWN} 0 1\"]\n\n1. {written} Kg3 (1... Kg2) *"
        ))
        .expect(written);
        assert_eq!(sans(&entry, &entry.best), [san], "{written}");
        let key = &entry.variations.as_ref().expect("moves").nodes[0];
        assert_eq!(key.next.nodes.len(), 2, "{written}");
    }
}

#[test]
fn whole_games_are_pointed_to_find() {
    let game = "[White \"A\"]\n[Black \"B\"]\n\n1.e4 e5 2.Nf3 Nc6 3.Bb5 a6 4.Ba4 Nf6 1/2-1/2\n\n";
    let all = read_file("club.pgn", game.repeat(40).as_bytes());
    let [Err(error)] = all.as_slice() else {
        panic!("{} answers", all.len());
    };
    assert_eq!(*error.problem, Fault::FileHoldsGames { games: 40 });
    let set = "[FEN \"rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1\"]\n\n1.e4 e5 *\n";
    for alone in [game, set] {
        let error = one(alone).expect_err("a whole game");
        assert_eq!(*error.problem, Fault::GameFromTheStart);
    }
    // Games among positions cost themselves only.
    let mixed = read_file("f", format!("{game}{LESSON}").as_bytes());
    assert_eq!(mixed.iter().filter(|entry| entry.is_ok()).count(), 2);
}

#[test]
fn a_fens_counters_are_no_operations() {
    for (line, why) in [
        (
            format!("{BACK_RANK} x 1"),
            PositionError::FenHalfMoves {
                written: "x".into(),
            },
        ),
        (
            format!("{BACK_RANK} 0 one"),
            PositionError::FenMoveNumber {
                written: "one".into(),
            },
        ),
        (
            "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 dm 2;".to_owned(),
            PositionError::FenTurn {
                written: "dm".into(),
            },
        ),
    ] {
        let error = one(&line).expect_err(&line);
        assert_eq!(*error.problem, Fault::NoPositionHere { why });
    }
    assert!(one(&format!("{BACK_RANK} bm Rxd8+")).is_ok());
    assert!(one(&format!("{BACK_RANK} 3 bm Rxd8+")).is_ok());
}

/// What a file holds, in a word each.
fn kinds(name: &str, text: &str) -> Vec<String> {
    read_items(name, text.as_bytes())
        .into_iter()
        .map(|item| match item {
            Ok(Item::Problem(_)) => "problem".to_owned(),
            Ok(Item::Question(of)) => format!(
                "question {:?} {:?} {:?} {}",
                of.words,
                of.topic,
                of.at_reveal,
                of.position.is_some()
            ),
            Ok(Item::Words(of)) => format!("words {:?} {}", of.words, of.position.is_some()),
            Err(error) => error.problem.to_string(),
        })
        .collect()
}

#[test]
fn questions_and_words_stand_in_files_beside_problems() {
    let pgn = "[Topic \"Plans\"]\n[Question \"What does White want?\"]\n[FEN \"6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1\"]\n\n{The back rank.} *\n\n\
               [Words \"No lesson on Monday.\"]\n\n*\n\n\
               [Task \"?\"]\n[FEN \"rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1\"]\n\n{Why do you play?} *\n\n\
               [Task \"#1\"]\n[FEN \"6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1\"]\n\n1. Ra8# *\n\n\
               [Task \"?\"]\n\n*\n";
    let read = kinds("week.pgn", pgn);
    assert_eq!(
        &read[..4],
        [
            "question \"What does White want?\" Some(\"Plans\") \"The back rank.\" true",
            "words \"No lesson on Monday.\" false",
            "question \"Why do you play?\" None \"\" false",
            "problem",
        ]
    );
    assert_eq!(read[4], Fault::QuestionLacksWords.to_string());
    for (tag, line) in [("Question", 1), ("Words", 5)] {
        let pgn = format!(
            "{}[{tag} \"Why?\"]\n[FEN \"6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1\"]\n\n1. Ra8# *\n",
            "[Words \"Hello\"]\n\n*\n\n".repeat((line - 1) / 4)
        );
        let read = kinds("week.pgn", &pgn);
        let last = read.last().expect("an item");
        let beside = Fault::TagBesideMoves { tag: tag.into() };
        assert_eq!(last, &beside.to_string());
        let empty = kinds("week.pgn", &format!("[{tag} \" \"]\n\n*\n"));
        let told = Fault::TagEmpty { tag: tag.into() };
        assert_eq!(empty, [told.to_string()]);
    }
    // Those who ask for positions get these alone, with what is wrong in the file.
    assert_eq!(read_file("week.pgn", pgn.as_bytes()).len(), 2);
    let epd = "6k1/5ppp/8/8/8/8/8/R5K1 w - - question \"Why?\"; c0 \"Plans\"; c1 \"Open file.\";\n\
               6k1/5ppp/8/8/8/8/8/R5K1 w - - dm 1;\n6k1/5ppp/8/8/8/8/8/R5K1 w - - question \"\";\n";
    let read = kinds("week.epd", epd);
    assert_eq!(
        &read[..2],
        [
            "question \"Why?\" Some(\"Plans\") \"Open file.\" true",
            "problem"
        ]
    );
    assert_eq!(read[2], Fault::QuestionWantsWords.to_string());
}
