//! The command line from outside: the outputs that scripts rely on, exit statuses, and bad input.

use sealed_move_tests::{every_command, sealed_move, sealed_move_in};
use serde_json::json;

/// Composed for the documentation: a rook's mate on the back rank in two.
const BACK_RANK: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1";

#[test]
fn check_writes_the_object_scripts_rely_on() {
    let ran = sealed_move(
        &["check", "--json", "-"],
        format!("{} id \"w1\"; dm 2;\n", &BACK_RANK[..BACK_RANK.len() - 4]).as_bytes(),
    );
    assert_eq!(ran.status, 0, "{ran:?}");
    let [line] = &ran.json()[..] else {
        panic!("{ran:?}")
    };
    let names: Vec<_> = line
        .as_object()
        .expect("an object")
        .keys()
        .map(String::as_str)
        .collect();
    let mut wanted = [
        "id",
        "fen",
        "stipulation",
        "verdict",
        "keys",
        "line",
        "patterns",
        "proved",
        "nodes",
        "seconds",
        "message",
    ];
    assert_eq!(names.len(), wanted.len(), "{names:?}");
    wanted.sort_unstable();
    let mut names = names;
    names.sort_unstable();
    assert_eq!(names, wanted);
    assert_eq!(line["id"], "w1");
    assert_eq!(line["fen"], BACK_RANK);
    assert_eq!(line["stipulation"], "#2");
    assert_eq!(line["verdict"], "sound");
    assert_eq!(line["keys"], json!(["Rxd8+"]));
    assert_eq!(line["line"], json!(["Rxd8+", "Rxd8", "Rxd8#"]));
    assert_eq!(line["patterns"], json!(["back-rank"]));
    assert_eq!(line["proved"], true);
    assert_eq!(line["message"], "");
}

#[test]
fn check_keeps_the_order_of_the_files_and_says_what_is_wrong() {
    let input = "8/8/8/8/8/8/8/K7 w - - id \"no king\";\n\
                 6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - - id \"one\"; dm 1;\n\
                 6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - - id \"short\"; dm 2;\n\
                 7k/8/8/8/8/8/8/K7 w - - id \"none\"; dm 2;\n\
                 3k4/8/3K4/8/8/8/7R/R7 w - - id \"cooked\"; dm 1;\n";
    let ran = sealed_move(&["check", "--json", "-"], input.as_bytes());
    assert_eq!(ran.status, 1, "{ran:?}");
    let verdicts: Vec<_> = ran
        .json()
        .iter()
        .map(|line| {
            format!(
                "{}: {}",
                line["id"].as_str().unwrap_or("?"),
                line["verdict"].as_str().unwrap_or("?")
            )
        })
        .collect();
    assert_eq!(
        verdicts,
        [
            "no king: illegal",
            "one: sound",
            "short: short",
            "none: unsound",
            "cooked: several-keys"
        ]
    );
    for line in ran.json().iter().filter(|line| line["verdict"] != "sound") {
        assert_ne!(line["message"], "", "{line}");
    }
}

#[test]
fn grade_answers_as_documented() {
    let grade = |reply: &str| {
        let ran = sealed_move(
            &[
                "grade",
                "--json",
                "--position",
                BACK_RANK,
                "--stipulation",
                "#2",
                reply,
            ],
            b"",
        );
        (ran.status, ran.json().remove(0))
    };
    let (status, line) = grade("Rd7");
    assert_eq!(status, 1);
    assert_eq!(line["moves"], json!(["Rd7"]));
    assert_eq!(line["verdict"], "wrong");
    assert_eq!(line["points"], 0.0);
    assert_eq!(line["refutation"][0], "Rxd7");
    assert_ne!(line["why"], "");
    let (status, line) = grade("Rxd8+");
    assert_eq!(
        (status, &line["verdict"], &line["points"]),
        (0, &json!("solved"), &json!(5.0))
    );
    assert_eq!(grade("Rd9").1["verdict"], "unreadable");
    assert_eq!(grade("Rd2h6").1["verdict"], "illegal");
}

/// A sacrifice of our own: accepted, White mates on g7; declined, White has a knight more.
const SACRIFICE: &str = "[FEN \"r6k/pp3p1p/7P/8/1Pnq4/P4PQ1/6P1/2R4K w - - 0 1\"]\n[Task \"+\"]\n\n\
    1.Rxc4! (1.Qg7+? {The ending is level.} Qxg7 2.hxg7+ Kxg7) Qxc4 (1...Qa1+ 2.Kh2 +-) 2.Qg7# *\n";

#[test]
fn grade_goes_along_the_lines_of_a_file() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("lesson.pgn");
    std::fs::write(&file, SACRIFICE).expect("written");
    let file = file.to_str().expect("a name").to_owned();
    let grade = |line: &str, reply: &str| {
        let args = ["grade", "--json", "--pgn", &file, "--line", line, reply];
        let ran = sealed_move(&args, b"");
        (ran.status, ran.json().remove(0))
    };
    for (line, answer) in [("0", "1...Qxc4"), ("1", "1...Qa1+"), ("2", "1...Qxc4")] {
        let (status, said) = grade(line, "Rxc4");
        assert_eq!((status, &said["verdict"]), (0, &json!("on-the-way")));
        let told = said["message"].as_str().unwrap_or_default();
        assert!(told.contains(answer), "{line}: {told}");
    }
    let (status, said) = grade("0", "Qg7+");
    assert_eq!((status, &said["verdict"]), (1, &json!("wrong")));
    assert_eq!(said["refutation"], json!(["Qxg7", "hxg7+", "Kxg7"]));
    let told = said["message"].as_str().unwrap_or_default();
    assert!(
        told.contains("Your coach on 1.Qg7+: “The ending is level.”"),
        "{told}"
    );

    // Either a file or a position with its task.
    for args in [
        &["grade", "--pgn", &file, "--position", BACK_RANK, "Rd7"][..],
        &["grade", "--position", BACK_RANK, "Rd7"],
        &[
            "grade",
            "--line",
            "1",
            "--position",
            BACK_RANK,
            "--stipulation",
            "#2",
            "Rd7",
        ],
    ] {
        let ran = sealed_move(args, b"");
        assert_eq!(ran.status, 2, "{args:?}: {ran:?}");
    }
    std::fs::write(&file, "[FEN \"8/8/8/8 w\"]\n[Task \"+\"]\n\n*\n").expect("written");
    let ran = sealed_move(&["grade", "--pgn", &file, "Rd7"], b"");
    assert_eq!(ran.status, 2, "{ran:?}");
    assert!(ran.err.contains("lesson.pgn, line 1:"), "{ran:?}");
    std::fs::write(&file, "[Words \"No lesson.\"]\n\n*\n").expect("written");
    let ran = sealed_move(&["grade", "--pgn", &file, "Rd7"], b"");
    assert!(
        ran.status == 2 && ran.err.contains("holds no position with a task"),
        "{ran:?}"
    );
}

#[test]
fn grade_reads_the_reply_from_standard_input() {
    let args = [
        "grade",
        "--json",
        "--position",
        BACK_RANK,
        "--stipulation",
        "#2",
        "-",
    ];
    assert_eq!(
        sealed_move(&args, b"1.Rxd8+ Rxd8 2.Rxd8#\n").json()[0]["verdict"],
        "solved"
    );
    let long = vec![b'N'; 50_000];
    let ran = sealed_move(&args, &long);
    assert_eq!(ran.json()[0]["verdict"], "unreadable");
}

#[test]
fn name_writes_checkers_guards_and_blocks() {
    let ran = sealed_move(
        &["name", "--json", "3R2k1/5ppp/8/8/8/8/8/6K1 b - - 0 1"],
        b"",
    );
    assert_eq!(ran.status, 0);
    assert_eq!(
        ran.json()[0],
        json!({
            "mate": true, "patterns": ["back-rank"], "checkers": ["d8"],
            "guards": {"f8": ["d8"], "h8": ["d8"]}, "blocked": ["f7", "g7", "h7"],
        })
    );
    assert_eq!(
        sealed_move(&["name", "6k1/8/8/8/8/8/8/3R2K1 b - - 0 1"], b"").status,
        1
    );
}

#[test]
fn bad_input_is_answered_with_place_and_remedy() {
    let folder = tempfile::tempdir().expect("a folder");
    let missing = folder.path().join("missing.epd");
    let missing = missing.to_str().expect("a name");
    for (args, input, status, words) in [
        (vec!["check", missing], &b""[..], 2, "missing.epd"),
        (
            vec!["check", "-"],
            &b"this is no position\n"[..],
            1,
            "input, line 1",
        ),
        (vec!["check", "-"], &[0u8; 4096][..], 1, "zero"),
        (
            vec!["check", "--seconds", "0", "-"],
            &b""[..],
            2,
            "--seconds",
        ),
        (
            vec!["name", "8/8/8/8/8/8/8/8 w - -"],
            &b""[..],
            2,
            "board is empty",
        ),
        (
            vec!["name", "4k3/8/8/8/8/8/8/r2KR3 w - -"],
            &b""[..],
            2,
            "in check",
        ),
        (
            vec!["name", "P3k3/8/8/8/8/8/8/4K3 w - -"],
            &b""[..],
            2,
            "a8",
        ),
        (
            vec!["diagram", "4k3/8/8/8/8/8/8/4K3 w - -", "--out", "board.bmp"],
            &b""[..],
            2,
            ".png or .svg",
        ),
        (
            vec![
                "grade",
                "--position",
                "4k3/8/8/8/8/8/8/4K3 w - -",
                "--stipulation",
                "mate",
                "x",
            ],
            &b""[..],
            2,
            "#1",
        ),
        (
            vec!["queue", "--store", missing, "--config", missing],
            &b""[..],
            2,
            "missing.epd",
        ),
    ] {
        let ran = sealed_move(&args, input);
        assert_eq!(ran.status, status, "{args:?}: {ran:?}");
        assert!(
            (ran.err.clone() + &ran.out).contains(words),
            "{args:?} should say {words}: {ran:?}"
        );
        assert!(!ran.err.contains("panicked"), "{ran:?}");
    }
}

#[test]
fn ten_megabytes_of_pgn_are_read() {
    let game =
        "[Event \"Club\"]\n[Result \"1-0\"]\n\n1. e4 e5 2. Bc4 Nc6 3. Qh5 Nf6 4. Qxf7# 1-0\n\n";
    let input = game.repeat(10_000_000 / game.len() + 1);
    let ran = sealed_move(&["check", "--json", "-"], input.as_bytes());
    assert!(ran.status <= 1, "{}", ran.err);
    let too_large = vec![b' '; (16 << 20) + 1];
    let ran = sealed_move(&["check", "-"], &too_large);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("larger than 16 MB"), "{}", ran.err);
}

#[test]
fn diagrams_are_written_by_the_files_ending() {
    let folder = tempfile::tempdir().expect("a folder");
    for (name, start) in [("b.png", &b"\x89PNG"[..]), ("b.svg", &b"<"[..])] {
        let out = folder.path().join(name);
        let ran = sealed_move(
            &[
                "diagram",
                BACK_RANK,
                "--out",
                out.to_str().expect("a name"),
                "--words",
            ],
            b"",
        );
        assert_eq!(ran.status, 0, "{ran:?}");
        assert!(std::fs::read(&out).expect("written").starts_with(start));
        assert!(
            ran.out.contains("g1") && ran.out.contains("White to move"),
            "{}",
            ran.out
        );
    }
}

/// A line is drawn as wide as it is asked for, and what does not go with it is refused rather than left out.
#[test]
fn a_line_is_drawn_as_asked_or_refused() {
    let folder = tempfile::tempdir().expect("a folder");
    let draw = |name: &str, more: &[&str]| {
        let out = folder.path().join(name);
        let _ = std::fs::remove_file(&out);
        let file = out.to_str().expect("a name");
        let mut args = vec!["diagram", BACK_RANK, "--line", "Rxd8+ Rxd8 Rxd8#"];
        args.extend(["--out", file]);
        args.extend(more);
        (sealed_move(&args, b""), std::fs::read(&out).ok())
    };
    let png = |bytes: &[u8]| u32::from_be_bytes(bytes[16..20].try_into().expect("four bytes"));
    let gif = |bytes: &[u8]| u32::from(u16::from_le_bytes([bytes[6], bytes[7]]));
    let wide = |name: &str, size: &str| {
        let (ran, drawn) = draw(name, &["--size", size]);
        assert_eq!(ran.status, 0, "{ran:?}");
        let drawn = drawn.expect("written");
        if name.ends_with("gif") {
            gif(&drawn)
        } else {
            png(&drawn)
        }
    };
    assert_eq!(wide("line.gif", "120"), 120);
    assert_eq!(wide("line.gif", "720"), 720);
    // Boards side by side: twice as wide, but for rounding.
    let (narrow, broad) = (wide("line.png", "240"), wide("line.png", "480"));
    assert!(
        narrow > 240 && narrow.abs_diff(broad / 2) <= 8,
        "{narrow}, {broad}"
    );

    for (name, more, told) in [
        ("line.gif", ["--size", "721"], "at most 720 pixels"),
        ("line.png", ["--size", "481"], "at most 480 pixels"),
        ("line.svg", ["--size", "2400"], "at most 480 pixels"),
        ("line.png", ["--arrow", "d1d8"], "--arrow"),
        ("line.png", ["--mark", "h7"], "--mark"),
        ("line.gif", ["--last", "e2e4"], "--last"),
    ] {
        let (ran, drawn) = draw(name, &more);
        assert_eq!((ran.status, drawn), (2, None), "{more:?}: {}", ran.err);
        assert!(ran.err.contains(told), "{more:?}: {}", ran.err);
        if !told.starts_with("--") {
            continue;
        }
        assert!(ran.err.contains("--line"), "{more:?}: {}", ran.err);
    }

    // A sheet shows every size and style, and takes none.
    let sheet = folder.path().join("sheet.png");
    let sheet = sheet.to_str().expect("a name");
    let ran = sealed_move(
        &["diagram", "--sheet", "--out", sheet, "--size", "300"],
        b"",
    );
    assert_eq!(ran.status, 2, "{ran:?}");
    assert!(ran.err.contains("--size"), "{}", ran.err);
}

#[test]
fn help_teaches_every_command() {
    let commands = every_command();
    // What the README teaches, with one that stands below another.
    for taught in [
        "serve",
        "demo",
        "check",
        "import",
        "queue",
        "queue question",
        "grade",
        "name",
        "find",
        "diagram",
        "leaderboard",
        "summary",
        "backup",
        "restore",
        "engine",
    ] {
        let words: Vec<String> = taught.split(' ').map(str::to_owned).collect();
        assert!(commands.contains(&words), "{taught} is not in the help");
    }
    for command in &commands {
        let mut args: Vec<&str> = command.iter().map(String::as_str).collect();
        args.push("--help");
        let help = sealed_move(&args, b"");
        assert!(
            help.out.contains("Usage: "),
            "{}: {help:?}",
            command.join(" ")
        );
    }
}

/// A lesson with words in every place, two of which tell a move before its time.
const LESSON: &str = "[Id \"w1\"]\n[Topic \"Back rank\"]\n[Task \"#2\"]\n[FEN \"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1\"]\n\n\
    {Look at the last rank.} {It begins with Rxd8+.} {[reveal] Rooks before pawns.} 1.Rxd8+ $1 {A rook for a rook.} \
    (1.Rd7 $2 {Too slow.} Rxd7) Rxd8 2.Rxd8# *\n";

#[test]
fn check_tells_the_coachs_words_apart_and_warns_of_those_that_tell() {
    let ran = sealed_move(&["check", "--json", "-"], LESSON.as_bytes());
    let line = &ran.json()[0];
    assert_eq!(ran.status, 0, "{ran:?}");
    assert_eq!(line["words"]["with_post"], "Look at the last rank.");
    assert_eq!(
        line["words"]["at_reveal"],
        "It begins with Rxd8+.\nRooks before pawns."
    );
    assert_eq!(line["words"]["notes"][0]["moves"], "1.Rxd8+!");
    assert_eq!(line["words"]["notes"][0]["after"], "A rook for a rook.");
    let warning = line["warnings"][0].as_str().expect("a warning");
    assert!(
        warning.contains("(Rxd8+)") && warning.contains("[post]"),
        "{warning}"
    );
    let fact = &line["warning_facts"][0];
    assert_eq!(
        (&fact["is"], &fact["line"]["line"]),
        (&json!("words-held"), &json!("Rxd8+"))
    );
    let told = sealed_move(&["check", "-"], LESSON.as_bytes()).out;
    for part in [
        "words with the post:\n        Look at the last rank.",
        "1.Rxd8+! A rook for a rook.",
        "(1.Rd7? Too slow. 1...Rxd7)",
    ] {
        assert!(told.contains(part), "{part}: {told}");
    }
}

/// One that does not show its topic, one whose main line alone shows it, and one with a topic that is a label.
const TOPICS: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - id \"none\"; dm 2; c0 \"Smothered mate\";\n\
    1k6/pp6/8/B7/5r2/8/1N3Q2/1K6 w - - id \"main\"; dm 2; c0 \"Grundreihenmatt\";\n\
    6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - - id \"label\"; dm 1; c0 \"Deflection\";\n";

#[test]
fn check_holds_a_topic_against_the_final_pictures() {
    let check = |more: &[&str]| {
        let args = [&["check", "--json"], more, &["-"]].concat();
        let ran = sealed_move(&args, TOPICS.as_bytes());
        let lines = ran.json();
        let verdicts: Vec<String> = lines
            .iter()
            .map(|line| {
                line["topic_check"]["verdict"]
                    .as_str()
                    .unwrap_or("?")
                    .to_owned()
            })
            .collect();
        assert!(
            lines.iter().all(|line| line["verdict"] == "sound"),
            "{ran:?}"
        );
        (ran.status, verdicts.join(" "), lines)
    };
    let (status, verdicts, lines) = check(&[]);
    assert_eq!(
        (status, verdicts.as_str()),
        (0, "not-verified verified label")
    );
    assert_eq!(lines[0]["topic"], "Smothered mate");
    let none = &lines[0]["topic_check"];
    assert_eq!(none["pattern"], "smothered");
    assert_eq!(
        none["message"],
        "Topic not verified, Smothered mate: the main line 1.Rxd8+ Rxd8 2.Rxd8# ends with 2.Rxd8# in \
         another picture, Back-rank mate."
    );
    assert_eq!(none["facts"][0]["last"], json!({ "line": "2.Rxd8#" }));
    let main = &lines[1]["topic_check"];
    assert_eq!(main["facts"][0]["showing"], 1);
    assert_eq!(main["facts"][0]["lines"], 2);
    assert_eq!(main["facts"][1]["last"], json!({ "line": "2.Qc7#" }));
    assert_eq!(lines[2]["topic_check"]["message"], "");

    // With the option, what does not show its topic is found wanting.
    let (status, verdicts, _) = check(&["--topic-on", "main-line"]);
    assert_eq!(
        (status, verdicts.as_str()),
        (1, "not-verified verified label")
    );
    let (status, verdicts, lines) = check(&["--topic-on", "every-line"]);
    assert_eq!(
        (status, verdicts.as_str()),
        (1, "not-verified not-verified label")
    );
    assert_eq!(lines[1]["topic_check"]["facts"][0]["whose"], "full");

    let told = sealed_move(&["check", "-"], TOPICS.as_bytes());
    assert_eq!(told.status, 0, "{told:?}");
    for part in [
        "    Topic verified: Back-rank mate is on the board after 2.Qf8#, at the end of the main line \
         (in 1 of 2 full-length lines).\n    The line 1.Qxf4+ Kc8 2.Qc7# ends with 2.Qc7# in another \
         picture, Kiss of the queen.\n",
        "3 positions, all sound\n1 position does not show the topic it names, see \"not verified\"\n",
    ] {
        assert!(told.out.contains(part), "{part}: {}", told.out);
    }
    let strict = sealed_move(
        &["check", "--topic-on", "main-line", "-"],
        TOPICS.as_bytes(),
    );
    let tally = "3 positions, 3 sound, 1 to look at\n1 position does not show the topic it names";
    assert!(strict.out.contains(tally), "{}", strict.out);
    let german = sealed_move_in("de_DE.UTF-8", &["check", "-"], TOPICS.as_bytes()).out;
    assert!(
        german.contains(
            "Thema nicht bestätigt, Ersticktes Matt: Die Hauptvariante 1.Txd8+ Txd8 2.Txd8#"
        ),
        "{german}"
    );
}

#[test]
fn import_and_the_week_tell_of_a_topic_that_is_not_shown() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = |name: &str| folder.path().join(name).display().to_string();
    let (store, config, file) = (path("g.sqlite"), path("none.toml"), path("topics.epd"));
    std::fs::write(&file, TOPICS).expect("written");
    std::fs::write(&config, "").expect("written");
    let run = |args: &[&str]| {
        let mut all = args.to_vec();
        all.extend(["--store", &store, "--config", &config]);
        sealed_move(&all, b"")
    };
    let first = run(&["import", "--queue", "--json", &file]);
    assert_eq!(first.status, 0, "{first:?}");
    let lines = first.json();
    assert_eq!(lines[0]["topic"], "Smothered mate");
    assert_eq!(lines[0]["topic_check"]["verdict"], "not-verified");
    let strict = run(&["import", "--topic-on", "every-line", &file]);
    assert_eq!(strict.status, 1, "{strict:?}");
    assert!(
        strict.out.contains(
            "Topic not verified, Back-rank mate: the full-length line 1.Qxf4+ Kc8 2.Qc7#"
        ),
        "{}",
        strict.out
    );

    let marked = |ran: &sealed_move_tests::Ran| ran.out.matches("[topic not verified]").count();
    let week = run(&["queue"]);
    assert_eq!(marked(&week), 1, "{}", week.out);
    assert!(
        week.out.contains("Smothered mate [topic not verified]"),
        "{}",
        week.out
    );
    let listed = run(&["queue", "--json"]).json();
    let verdicts: Vec<_> = listed
        .iter()
        .map(|item| &item["topic_check"]["verdict"])
        .collect();
    assert_eq!(verdicts, ["not-verified", "verified", "label"]);

    // Another topic is held against what was proved then.
    let position = lines[0]["position"].to_string();
    let named = run(&["queue", "topic", &position, "Back rank"]);
    assert_eq!((named.status, marked(&named)), (0, 0), "{}", named.out);
    // One that is given to all replaces the file's own.
    let given = run(&["import", "--json", "--topic", "Cozio's mate", &file]).json();
    assert!(
        given
            .iter()
            .all(|line| line["topic_check"]["pattern"] == "dovetail"),
        "{given:?}"
    );
    assert_eq!(marked(&run(&["queue"])), 3);
}

#[test]
fn what_is_wrong_with_a_file_names_line_rank_and_field() {
    let file = b"r2r2k/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - dm 2;\r\nr2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - id \"Mat\xe9\"; dm 2;\r\nr2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - id \"\0\"; dm 2;\r\nr2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 white - - dm 2;\r\n";
    let lines = sealed_move(&["check", "--json", "-"], file).json();
    let verdicts: Vec<_> = lines.iter().map(|line| line["verdict"].as_str()).collect();
    assert_eq!(
        verdicts,
        [
            Some("illegal"),
            Some("sound"),
            Some("illegal"),
            Some("illegal")
        ]
    );
    for (at, part) in [
        (0, "line 1: rank 8 of the FEN, \"r2r2k\", has 7 squares"),
        (2, "line 3: the line holds a NUL byte"),
        (3, "line 4: field 2 of the FEN"),
    ] {
        let message = lines[at]["message"].as_str().expect("a message");
        assert!(message.contains(part), "{message}");
    }
    let fact = &lines[0]["message_facts"][0];
    assert_eq!(
        (&fact["is"], &fact["row"]),
        (&json!("unreadable"), &json!(1))
    );
    assert_eq!(fact["what"]["why"]["is"], "fen-squares");
    assert_eq!(lines[1]["id"], "Maté");
    let said = lines[1]["warnings"][0].as_str().expect("said");
    assert!(
        said.contains("line 2") && said.contains("Windows-1252"),
        "{said}"
    );
}

#[test]
fn reading_makes_no_store() {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join("none.toml"), "").expect("written");
    let path = |name: &str| folder.path().join(name).display().to_string();
    let (store, config) = (path("club.sqlite"), path("none.toml"));
    for command in ["summary", "leaderboard", "queue"] {
        let ran = sealed_move(&[command, "--store", &store, "--config", &config], b"");
        assert_eq!(ran.status, 2, "{command}: {ran:?}");
        assert!(
            ran.err.contains("there is no store at"),
            "{command}: {ran:?}"
        );
        assert!(ran.err.contains("--store"), "{command}: {ran:?}");
    }
    let left: Vec<_> = std::fs::read_dir(folder.path())
        .expect("read")
        .map(|entry| entry.expect("an entry").file_name())
        .collect();
    assert_eq!(left, ["none.toml"]);
}

#[test]
fn the_same_position_is_shown_and_kept_as_the_coach_says() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = |name: &str| folder.path().join(name).display().to_string();
    let (store, config) = (path("g.sqlite"), path("none.toml"));
    std::fs::write(path("lesson.pgn"), LESSON).expect("written");
    std::fs::write(path("none.toml"), "").expect("written");
    std::fs::write(
        path("autumn.epd"),
        "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - id \"w9\"; dm 2; c0 \"Exchanges\"; c1 \"Two against two.\";\n",
    )
    .expect("written");
    let run = |args: &[&str]| {
        let mut all = args.to_vec();
        all.extend(["--store", &store, "--config", &config]);
        sealed_move(&all, b"")
    };
    assert_eq!(run(&["import", &path("lesson.pgn")]).status, 0);
    let again = run(&["import", &path("lesson.pgn")]);
    assert_eq!(again.status, 0, "{}", again.out);
    let other = run(&["import", &path("autumn.epd")]);
    assert_eq!(other.status, 1, "{}", other.out);
    for part in [
        "lesson.pgn: w1",
        "Exchanges",
        "stays as it is",
        "--same both",
    ] {
        assert!(other.out.contains(part), "{part}: {}", other.out);
    }
    let json = |args: &[&str]| {
        let ran = run(args);
        (ran.status, ran.json().remove(0))
    };
    let (status, line) = json(&["import", "--json", "--same", "keep", &path("autumn.epd")]);
    assert_eq!((status, line["topic"].as_str()), (0, Some("Back rank")));
    assert_eq!(line["same"]["differs"], json!(["name", "topic", "words"]));
    let (status, line) = json(&["import", "--json", "--same", "both", &path("autumn.epd")]);
    assert_eq!((status, line["topic"].as_str()), (0, Some("Back rank")));
    assert_eq!(line["further_topics"], json!(["Exchanges"]));
    let position = line["position"].to_string();
    let (status, line) = json(&["import", "--json", "--same", "new", &path("autumn.epd")]);
    assert_eq!((status, line["topic"].as_str()), (0, Some("Exchanges")));
    assert_eq!(line["words"]["at_reveal"], "Two against two.");

    let telling = run(&["queue", "words", &position, "--post", "Begin with Rxd8+"]);
    assert_eq!(telling.status, 2);
    assert!(
        telling.err.contains("tell a move (Rxd8+)"),
        "{}",
        telling.err
    );
    let meant = run(&[
        "queue",
        "words",
        &position,
        "--post",
        "Begin with Rxd8+",
        "--anyway",
    ]);
    assert_eq!(meant.status, 0, "{}", meant.err);
    assert!(
        meant
            .out
            .contains("words with the post:\n        Begin with Rxd8+"),
        "{}",
        meant.out
    );
    assert!(meant.out.contains("Two against two."), "{}", meant.out);
}

#[test]
fn questions_and_words_wait_in_the_week_and_are_told_apart() {
    let folder = tempfile::tempdir().expect("a folder");
    let store = folder.path().join("store.sqlite");
    let store = store.to_str().expect("text");
    let run = |args: &[&str]| {
        let mut all = vec!["--store", store];
        all.extend_from_slice(args);
        sealed_move(&all, b"")
    };
    let week = folder.path().join("week.pgn");
    std::fs::write(
        &week,
        "[Topic \"Plans\"]\n[Question \"What does White want?\"]\n[FEN \"6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1\"]\n\n*\n\n\
         [Words \"No lesson on Monday.\"]\n\n*\n\n\
         [Task \"#1\"]\n[FEN \"6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 1\"]\n\n1. Ra8# *\n",
    )
    .expect("written");
    let week = week.to_str().expect("text");
    let checked = run(&["check", "--json", week]);
    assert_eq!(checked.status, 0, "{checked:?}");
    let kinds: Vec<_> = checked
        .json()
        .iter()
        .map(|line| line["kind"].clone())
        .collect();
    assert_eq!(kinds, [json!("question"), json!("words"), json!(null)]);
    let imported = run(&["import", "--queue", week]);
    assert_eq!(imported.status, 0, "{imported:?}");
    let asked = run(&[
        "queue", "question", "Why?", "--topic", "Plans", "--reveal", "Because.",
    ]);
    assert_eq!(asked.status, 0, "{asked:?}");
    let said = run(&[
        "queue",
        "--json",
        "say",
        "Read this.",
        "--on",
        "2099-12-01T18:00",
    ]);
    assert_eq!(said.status, 0, "{said:?}");
    let rows = said.json();
    let row = |kind: &str, words: &str| {
        rows.iter()
            .any(|row| row["kind"] == kind && row["words"] == words)
    };
    assert_eq!(rows.len(), 5);
    // In the order of the file.
    let first: Vec<_> = rows[..3].iter().map(|row| row["kind"].clone()).collect();
    assert_eq!(
        first,
        [json!("question"), json!("words"), json!("problem")],
        "{rows:?}"
    );
    assert!(
        row("question", "What does White want?") && row("question", "Why?"),
        "{rows:?}"
    );
    assert!(
        row("words", "No lesson on Monday.") && row("words", "Read this."),
        "{rows:?}"
    );
    assert!(
        rows.iter()
            .any(|row| row["kind"] == "problem" && row["stipulation"] == "#1")
    );
    assert!(
        rows.iter()
            .any(|row| row["words"] == "Read this." && row["fixed"] == true)
    );
    // What cannot be is refused with the reason, and nothing of it waits.
    for (args, why) in [
        (&["queue", "question", " "][..], "no words"),
        (
            &["queue", "say", "Hi", "--fen", "8/8/8/8/8/8/8/8 w - -"][..],
            "cannot be set up",
        ),
        (
            &["queue", "say", "Hi", "--on", "2001-01-01T18:00"][..],
            "past",
        ),
    ] {
        let ran = run(args);
        assert_eq!(ran.status, 2, "{ran:?}");
        assert!(ran.err.contains(why), "{ran:?}");
    }
    assert_eq!(run(&["queue", "--json"]).json().len(), 5);
    let pdf = folder.path().join("week.pdf");
    let printed = run(&["queue", "print", pdf.to_str().expect("text")]);
    assert_eq!(printed.status, 0, "{printed:?}");
    assert!(std::fs::read(&pdf).expect("written").starts_with(b"%PDF"));
}

/// A mate in one, and one that takes a move more than its task says.
const TWO: &str = "6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - - id \"one\"; dm 1;\n\
    7k/8/8/8/8/8/8/K7 w - - id \"none\"; dm 2;\n";

#[test]
fn a_german_reader_is_answered_in_german() {
    let run = |args: &[&str], input: &str| sealed_move_in("de_AT.UTF-8", args, input.as_bytes());
    let checked = run(&["check", "-"], TWO);
    assert_eq!(checked.status, 1, "{checked:?}");
    for part in [
        "one  #1  korrekt",
        "Schlüsselzug: Td8#",
        "none  #2  unlösbar",
        "2 Stellungen, 1 korrekt, 1 zum Ansehen",
    ] {
        assert!(checked.out.contains(part), "{part}: {}", checked.out);
    }
    let named = run(&["name", "3R2k1/5ppp/8/8/8/8/8/6K1 b - - 0 1"], "");
    assert_eq!(named.status, 0, "{named:?}");
    for part in [
        "Grundreihenmatt.",
        "Schach gibt der Turm auf d8 und nimmt dem König f8 und h8.",
    ] {
        assert!(named.out.contains(part), "{part}: {}", named.out);
    }
    let help = run(&["check", "--help"], "");
    assert_eq!(help.status, 0, "{help:?}");
    for part in [
        "Aufruf: sealed-move check [OPTIONEN] <DATEI>",
        "Optionen:",
        "[Vorgabe: 10]",
    ] {
        assert!(help.out.contains(part), "{part}: {}", help.out);
    }
    for theirs in ["Usage", "Options", "default"] {
        assert!(!help.out.contains(theirs), "{theirs}: {}", help.out);
    }
    let misused = run(&["check", "--secnods", "3", "-"], "");
    assert_eq!(misused.status, 2, "{misused:?}");
    assert!(
        misused
            .err
            .contains("ein Argument „--secnods“ gibt es hier nicht")
            && misused.err.contains("„--seconds“"),
        "{misused:?}"
    );
}

#[test]
fn a_spanish_reader_is_answered_in_spanish() {
    let run = |args: &[&str], input: &str| sealed_move_in("es_MX.UTF-8", args, input.as_bytes());
    let checked = run(&["check", "-"], TWO);
    assert_eq!(checked.status, 1, "{checked:?}");
    for part in [
        "one  #1  correcta",
        "clave: Td8#",
        "none  #2  sin solución",
        "2 posiciones, 1 correcta, 1 por revisar",
    ] {
        assert!(checked.out.contains(part), "{part}: {}", checked.out);
    }
    let missing = run(&["check", "/nowhere/at/all.epd"], "");
    assert_eq!(missing.status, 2, "{missing:?}");
    assert!(
        missing.err.contains("no se pudo leer /nowhere/at/all.epd"),
        "{missing:?}"
    );
    let graded = run(
        &[
            "grade",
            "--language",
            "spanish",
            "--position",
            BACK_RANK,
            "--stipulation",
            "#2",
            "Td7",
        ],
        "",
    );
    assert_eq!(graded.status, 1, "{graded:?}");
    assert!(
        graded.out.contains("fallado, 0 de 5 puntos") && graded.out.contains("Txd7"),
        "{graded:?}"
    );
}

#[test]
fn what_scripts_read_is_the_same_in_every_language() {
    let of = |locale: &str| {
        let ran = sealed_move_in(locale, &["check", "--json", "-"], TWO.as_bytes());
        let without_time = |mut line: serde_json::Value| {
            line["seconds"] = json!(0);
            line
        };
        ran.json().into_iter().map(without_time).collect::<Vec<_>>()
    };
    let english = of("C");
    assert_eq!(english.len(), 2);
    for locale in ["de_DE.UTF-8", "es_ES.UTF-8"] {
        assert_eq!(of(locale), english, "{locale}");
    }
}
