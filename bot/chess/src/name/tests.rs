//! Two positions or more that show each pattern, near misses that do not, and the symmetries.

use proptest::prelude::*;
use shakmaty::{
    Board, CastlingMode, Chess, Color, FromSetup, Piece, Role, Setup, Square, fen::Fen,
};

use super::*;
use crate::fact::{And, At};

/// Pattern, positions that show it, mates that nearly do.
const EXAMPLES: &[(&str, &[&str], &[&str])] = &[
    (
        "arabian",
        &["7k/7R/5N2/8/8/8/8/6K1 b - -", "6k1/8/8/8/8/2n5/8/Kr6 w - -"],
        &["7k/7R/8/6N1/8/1B6/8/6K1 b - -"],
    ),
    (
        "anastasia",
        &[
            "8/4N1pk/8/7R/8/8/8/6K1 b - -",
            "q5k1/8/8/8/8/8/1P1n4/K7 w - -",
        ],
        &["8/4N2k/8/7R/3B4/8/8/6K1 b - -"],
    ),
    (
        "hook",
        &[
            "5R2/5kp1/6N1/5P2/8/8/8/6K1 b - -",
            "6k1/8/8/8/2p5/1n6/1PK5/2r5 w - -",
        ],
        &["5R2/5kp1/6N1/2N4B/8/8/8/6K1 b - -"],
    ),
    (
        "vukovic",
        &[
            "4k3/4R3/3PN3/8/8/8/8/6K1 b - -",
            "8/8/8/2k5/Krn5/8/8/8 w - -",
        ],
        &["4k3/4R3/3P2N1/B7/8/8/8/6K1 b - -"],
    ),
    (
        "boden",
        &[
            "2kr4/3n4/B1p5/8/5B2/8/8/6K1 b - -",
            "6k1/8/8/5b2/8/b1P5/3N4/2KR4 w - -",
        ],
        &[
            "2kr4/3n4/B1p1N3/8/8/8/8/1R4K1 b - -",
            "7k/7p/8/8/8/1BB5/8/6K1 b - -",
        ],
    ),
    (
        "balestra",
        &[
            "5k2/8/4Q2B/8/8/8/8/6K1 b - -",
            "k7/8/8/8/8/b2q4/8/2K5 w - -",
        ],
        &[
            // The second diagonal is a bishop's: Boden's.
            "2kr4/3n4/B1p5/8/5B2/8/8/6K1 b - -",
            // The queen gives the check.
            "6k1/6Q1/8/8/8/1P6/PB6/6K1 b - -",
            // A rook takes two of the flights.
            "5k2/8/7B/8/2Q5/8/8/4R1K1 b - -",
        ],
    ),
    (
        "legal",
        &[
            // Legal against Saint Brie, Paris, about 1750; from memory.
            "rn1q1bnr/ppp1kBpp/3p4/3NN3/4P3/8/PPPP1PPP/R1BbK2R b KQ -",
            "r3kb1r/ppp2ppp/8/8/3nn3/3P4/PPP1Kb1P/RNBQ1BNR w kq -",
        ],
        &["1n1r1bnr/pppqkBpp/3p4/3N4/4P3/8/PPPP2PP/R1B2RK1 b - -"],
    ),
    (
        "blackburne",
        &[
            "5rk1/5p1B/8/6N1/8/8/1B6/6K1 b - -",
            "6k1/1b6/8/8/6n1/8/7b/5RK1 w - -",
        ],
        &["5rk1/5p1B/8/8/8/8/1B6/6KQ b - -"],
    ),
    (
        "reti",
        &[
            "1nbB4/1pk5/2p5/8/8/8/8/3R2K1 b - -",
            "4r1k1/8/8/8/8/5P2/5KP1/4bBN1 w - -",
        ],
        &["2bB4/Bpk5/2p5/8/8/8/8/3R2K1 b - -"],
    ),
    (
        "greco",
        &[
            "7k/6p1/8/7Q/8/1B6/8/6K1 b - -",
            "6kr/8/8/2b5/8/8/6P1/7K w - -",
        ],
        &["7k/4N1p1/8/7R/8/8/8/6K1 b - -"],
    ),
    (
        "morphy",
        &["7k/7p/5B2/8/8/8/8/6RK b - -", "6rk/1b6/8/8/8/8/7P/7K w - -"],
        &["7k/7p/8/8/8/1BB5/8/6K1 b - -"],
    ),
    (
        "pillsbury",
        &[
            "5rk1/5p1p/5B2/8/8/8/8/6RK b - -",
            "1r4k1/8/5b2/8/8/8/P1P5/1KR5 w - -",
        ],
        &["5rk1/5p1p/8/8/8/8/8/Q5RK b - -"],
    ),
    (
        "opera",
        &[
            "3Rkb1r/5ppp/8/6B1/8/8/8/6K1 b - -",
            "6k1/8/8/8/1b6/8/2P5/2BKr3 w - -",
        ],
        &["3Rkb1r/5ppp/2N5/8/8/8/8/3R2K1 b - -"],
    ),
    (
        "mayet",
        &[
            "5rkR/5p2/8/8/8/8/1B6/6K1 b - -",
            "6k1/1b6/8/8/8/8/5P2/5RKr w - -",
        ],
        &["5rkR/5pB1/5P2/8/8/8/8/6K1 b - -"],
    ),
    (
        "anderssen",
        &[
            "5rkR/5pB1/5P2/8/8/8/8/6K1 b - -",
            "6kR/5pP1/7K/8/8/8/8/8 b - -",
            "8/8/8/8/8/7k/5Pp1/5RKq w - -",
        ],
        &["5rkR/5p2/8/8/8/8/1B6/6K1 b - -"],
    ),
    (
        "blind-swine",
        &[
            "5rk1/6RR/8/8/8/8/8/6K1 b - -",
            "6k1/8/8/8/8/8/1rr5/1NKR4 w - -",
        ],
        &["5rk1/5pR1/5B2/8/8/8/8/6KR b - -"],
    ),
    (
        "smothered",
        &[
            "6rk/5Npp/8/8/8/8/8/6K1 b - -",
            "6k1/8/8/8/8/8/PPn5/KR6 w - -",
        ],
        &["6rk/5N1p/8/8/8/2B5/8/5K2 b - -"],
    ),
    (
        "suffocation",
        &[
            "5rk1/4Np1p/8/8/8/2B5/8/6K1 b - -",
            "6k1/1b6/8/8/8/7n/5P1P/5RK1 w - -",
        ],
        &["5rk1/4Np1p/8/8/8/2Q5/8/6K1 b - -"],
    ),
    (
        "corner",
        &[
            "7k/5N1p/8/8/8/8/8/6RK b - -",
            "1q4k1/8/8/8/8/8/P1n5/K7 w - -",
        ],
        &["7k/4NN1p/8/8/8/2B5/8/6K1 b - -"],
    ),
    (
        "damiano",
        &[
            "5rk1/6pQ/6P1/8/8/8/8/6K1 b - -",
            "6k1/8/8/8/8/1p6/q7/1KR5 w - -",
        ],
        &["5rk1/5ppQ/8/8/8/3B4/8/6K1 b - -"],
    ),
    (
        "lolli",
        &[
            "5rk1/5pQp/5P2/8/8/8/8/6K1 b - -",
            "6k1/8/8/8/8/7p/5PqP/5RK1 w - -",
        ],
        &["5rk1/5pQp/8/8/3B4/8/8/6K1 b - -"],
    ),
    (
        "max-lange",
        &[
            "6Q1/5Bpk/7p/8/8/8/8/6K1 b - -",
            "6k1/8/8/8/8/P7/KPb5/1q6 w - -",
        ],
        &["R5Q1/6pk/7p/8/5N2/8/8/6K1 b - -"],
    ),
    (
        "dovetail",
        &[
            "8/8/3p4/3kp3/2Q5/1P6/8/6K1 b - -",
            "6k1/8/8/7p/6q1/4PK2/5P2/8 w - -",
        ],
        &["8/8/3p4/3k4/2Q5/1P6/8/4R1K1 b - -"],
    ),
    (
        "swallow-tail",
        &[
            "8/3p1p2/4k3/4Q3/3P4/8/8/6K1 b - -",
            "6k1/8/8/2Pp4/3Kq3/2P5/8/8 w - -",
        ],
        &["8/3p4/4k3/4Q2B/3P4/8/8/6K1 b - -"],
    ),
    (
        "epaulette",
        &[
            "3rkr2/8/4Q3/8/8/8/8/6K1 b - -",
            "6k1/8/8/8/8/1q6/8/RKR5 w - -",
        ],
        &["3rk3/8/4Q2B/8/8/8/8/6K1 b - -"],
    ),
    (
        "double-bishop",
        &[
            "7k/7p/8/8/8/1BB5/8/6K1 b - -",
            "6k1/8/5b2/5b2/8/8/P7/K7 w - -",
        ],
        &["2kr4/3n4/B1p5/8/5B2/8/8/6K1 b - -"],
    ),
    (
        "ladder",
        &["R5k1/1R6/8/8/8/8/8/6K1 b - -", "k6r/6q1/8/8/8/7K/8/8 w - -"],
        &["R5k1/8/7K/8/8/8/8/5R2 b - -"],
    ),
    (
        "back-rank",
        &[
            "3R2k1/5ppp/8/8/8/8/8/6K1 b - -",
            "6k1/8/4b3/8/8/8/1PP5/1K2r3 w - -",
        ],
        &["3R2k1/6p1/8/6N1/8/8/8/6K1 b - -"],
    ),
    (
        "corridor",
        &[
            "7R/8/6p1/6pk/6p1/8/5K2/8 b - -",
            "6k1/8/8/8/1P6/KP6/1P6/r7 w - -",
        ],
        &[
            "7R/8/6p1/7k/5K2/8/8/8 b - -",
            "3R2k1/5ppp/8/8/8/8/8/6K1 b - -",
        ],
    ),
    (
        "kiss",
        &[
            "6k1/6Q1/6K1/8/8/8/8/8 b - -",
            "6k1/8/5b2/8/8/8/1q6/K7 w - -",
        ],
        &[
            "3rkr2/8/4Q3/8/8/8/8/6K1 b - -",
            "5rk1/6pQ/6P1/8/8/8/8/6K1 b - -",
        ],
    ),
    (
        "double-check",
        &[
            "2bkr3/2p5/8/6B1/8/8/8/3R2K1 b - -",
            "4r1k1/8/8/8/8/5n2/3P1P2/3QKB2 w - -",
        ],
        &["3R2k1/5ppp/8/8/8/8/8/6K1 b - -"],
    ),
    (
        "pawn",
        &["6bk/6P1/7K/8/8/8/8/8 b - -", "8/8/8/2k5/1p6/K7/2q5/8 w - -"],
        &["6kR/5pP1/7K/8/8/8/8/8 b - -"],
    ),
];

fn read(fen: &str) -> Chess {
    crate::parse_fen(fen)
        .unwrap_or_else(|error| panic!("{fen}: {error}"))
        .position
}

#[test]
fn every_pattern_is_found_in_its_examples_and_not_in_near_misses() {
    for (pattern, positive, near) in EXAMPLES {
        assert!(positive.len() >= 2 && !near.is_empty(), "{pattern}");
        for fen in *positive {
            let naming = name(&read(fen));
            assert!(naming.mate, "{pattern}: {fen} is no mate");
            assert_eq!(
                naming.patterns.first().map(String::as_str),
                Some(*pattern),
                "{fen}: {naming:?}"
            );
        }
        for fen in *near {
            let naming = name(&read(fen));
            assert!(naming.mate, "{pattern}: near miss {fen} is no mate");
            assert!(
                !naming.patterns.iter().any(|found| found == pattern),
                "{pattern} must not fit {fen}"
            );
        }
    }
}

#[test]
fn every_pattern_of_the_table_has_examples_and_a_source() {
    let tried: Vec<&str> = EXAMPLES.iter().map(|example| example.0).collect();
    assert_eq!(names().collect::<Vec<_>>(), tried);
    for pattern in names() {
        assert!(
            pattern.chars().all(|c| c.is_ascii_lowercase() || c == '-'),
            "{pattern}"
        );
        assert!(source(pattern).is_some(), "{pattern}");
    }
    assert_eq!(source("no such thing"), None);
}

#[test]
fn writes_the_object_that_scripts_rely_on() {
    let naming = name(&read("3R2k1/5ppp/8/8/8/8/8/6K1 b - - 0 1"));
    assert_eq!(
        serde_json::to_string(&naming).ok().as_deref(),
        Some(
            r#"{"mate":true,"patterns":["back-rank"],"checkers":["d8"],"guards":{"f8":["d8"],"h8":["d8"]},"blocked":["f7","g7","h7"]}"#
        )
    );
}

#[test]
fn a_mate_without_a_name_has_no_pattern() {
    // Rook at the edge, kings facing each other.
    let naming = name(&read("R5k1/8/6K1/8/8/8/8/8 b - -"));
    assert!(naming.mate);
    assert_eq!(naming.patterns, Vec::<String>::new());
    let at = |squares: &[Square]| And {
        and: squares.iter().copied().map(At).collect(),
    };
    assert_eq!(
        naming.facts(),
        [
            Seen::MateUnnamed,
            Seen::ChecksKingAndGuards {
                piece: Role::Rook.into(),
                on: At(Square::A8),
                flights: at(&[Square::F8, Square::H8]),
            },
            Seen::GuardsFlights {
                piece: Role::King.into(),
                on: At(Square::G6),
                flights: at(&[Square::F7, Square::G7, Square::H7]),
            },
        ]
    );
}

#[test]
fn check_and_stalemate_are_no_mate() {
    for fen in [
        "3R2k1/5pp1/8/8/8/8/8/6K1 b - -",
        "7k/5Q2/6K1/8/8/8/8/8 b - -",
        "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq -",
    ] {
        let naming = name(&read(fen));
        assert!(!naming.mate, "{fen}");
        assert!(naming.patterns.is_empty(), "{fen}");
        assert_eq!(naming.facts(), [Seen::NoMate], "{fen}");
    }
    // A flight the king may use has no entry.
    let naming = name(&read("3R2k1/5pp1/8/8/8/8/8/6K1 b - -"));
    assert!(!naming.guards.contains_key("h7"));
}

#[test]
fn a_pinned_guard_guards_and_a_capturable_man_is_a_flight() {
    // The knight on f6 is pinned to the king on f1 and holds the rook all the same.
    let naming = name(&read("5r1k/7R/5N2/8/8/8/8/5K2 b - -"));
    assert_eq!(naming.patterns, ["arabian"]);
    assert_eq!(naming.guards["h7"], ["f6"]);
    assert_eq!(naming.guards["g8"], ["f6"]);
}

fn setup(fen: &str) -> Setup {
    let mut setup = fen
        .parse::<Fen>()
        .unwrap_or_else(|error| panic!("{fen}: {error}"))
        .into_setup();
    setup.castling_rights = Bitboard::EMPTY;
    setup
}

fn turned(setup: &Setup, turn: fn(&mut Board), swap: bool) -> Option<Chess> {
    let mut setup = setup.clone();
    turn(&mut setup.board);
    if swap {
        setup.board.swap_colors();
        setup.turn = !setup.turn;
    }
    Chess::from_setup(setup, CastlingMode::Standard).ok()
}

fn patterns(position: Option<Chess>) -> Option<Vec<String>> {
    position.map(|position| name(&position).patterns)
}

#[test]
fn the_wing_and_the_colour_do_not_matter() {
    for fen in all() {
        let expected = Some(name(&read(fen)).patterns);
        for (turn, swap) in [
            (Board::flip_horizontal as fn(&mut Board), false),
            (Board::flip_vertical, true),
            (Board::rotate_180, true),
        ] {
            let found = patterns(turned(&setup(fen), turn, swap));
            assert_eq!(found, expected, "{fen}");
        }
    }
}

#[test]
fn pieces_make_the_same_picture_on_every_edge() {
    let turns: [fn(&mut Board); 6] = [
        Board::flip_vertical,
        Board::flip_diagonal,
        Board::flip_anti_diagonal,
        Board::rotate_90,
        Board::rotate_180,
        Board::rotate_270,
    ];
    let mut tried = 0;
    for (pattern, positive, _) in EXAMPLES {
        if !table::turns_freely(pattern) {
            continue;
        }
        for fen in positive.iter().filter(|fen| !has_pawns(fen)) {
            for turn in turns {
                let found = patterns(turned(&setup(fen), turn, false)).unwrap_or_default();
                assert!(found.iter().any(|name| name == pattern), "{pattern}: {fen}");
                tried += 1;
            }
        }
    }
    assert!(tried >= 50, "{tried} positions only");
}

fn has_pawns(fen: &str) -> bool {
    fen.split(' ')
        .next()
        .is_some_and(|board| board.contains(['p', 'P']))
}

fn all() -> impl Iterator<Item = &'static &'static str> {
    EXAMPLES
        .iter()
        .flat_map(|example| example.1.iter().chain(example.2))
}

fn piece() -> impl Strategy<Value = (Square, Piece)> {
    (8..56u32, 0..5usize, any::<bool>()).prop_map(|(square, role, white)| {
        let role = [
            Role::Pawn,
            Role::Knight,
            Role::Bishop,
            Role::Rook,
            Role::Queen,
        ][role];
        let color = Color::from_white(white);
        (Square::new(square), Piece { color, role })
    })
}

proptest! {
    /// Whatever else stands on the board, the mirror image is named alike, square by square.
    #[test]
    fn naming_commutes_with_mirroring(
        index in 0..1000usize,
        pieces in prop::collection::vec(piece(), 0..4),
    ) {
        let fens: Vec<_> = all().collect();
        let mut setup = setup(fens[index % fens.len()]);
        for (square, piece) in pieces {
            if setup.board.piece_at(square).is_none() {
                setup.board.set_piece_at(square, piece);
            }
        }
        let (Some(straight), Some(mirrored)) = (
            turned(&setup, |_| {}, false),
            turned(&setup, Board::rotate_180, true),
        ) else {
            return Ok(()); // the added pieces check the side not to move
        };
        let (straight, mirrored) = (name(&straight), name(&mirrored));
        let turn = |square: &String| -> String {
            square.parse::<Square>().map(|s| s.rotate_180().to_string()).unwrap_or_default()
        };
        let turn_all = |squares: &[String]| {
            let mut squares: Vec<String> = squares.iter().map(turn).collect();
            squares.sort();
            squares
        };
        let sorted = |squares: &[String]| {
            let mut squares = squares.to_vec();
            squares.sort();
            squares
        };
        prop_assert_eq!(straight.mate, mirrored.mate);
        prop_assert_eq!(&straight.patterns, &mirrored.patterns);
        prop_assert_eq!(turn_all(&straight.checkers), sorted(&mirrored.checkers));
        prop_assert_eq!(turn_all(&straight.blocked), sorted(&mirrored.blocked));
        let guards: BTreeMap<String, Vec<String>> =
            straight.guards.iter().map(|(f, g)| (turn(f), turn_all(g))).collect();
        let other: BTreeMap<String, Vec<String>> =
            mirrored.guards.iter().map(|(f, g)| (f.clone(), sorted(g))).collect();
        prop_assert_eq!(guards, other);
    }
}
