//! Properties of the reader: what is written in any notation is read back, and no text upsets it.

use proptest::prelude::*;
use shakmaty::{Chess, Color, Move, Position, Role, san::SanPlus, uci::UciMove};

use super::letters::letters;
use super::{MOST_CHARACTERS, TooLong, Tree, read};
use crate::Language;

fn man(role: Role) -> &'static str {
    match role {
        Role::Pawn => "pawn",
        Role::Knight => "knight",
        Role::Bishop => "bishop",
        Role::Rook => "rook",
        Role::Queen => "queen",
        Role::King => "king",
    }
}

/// A position some random moves into a game, and a legal move in it.
fn some_move() -> impl Strategy<Value = (Chess, Move)> {
    prop::collection::vec(any::<prop::sample::Index>(), 1..90).prop_map(|choices| {
        let mut position = Chess::default();
        let mut last = None;
        for choice in choices {
            let legal = position.legal_moves();
            if legal.is_empty() {
                break;
            }
            let mv = legal[choice.index(legal.len())];
            last = Some((position.clone(), mv));
            position.play_unchecked(mv);
        }
        last.expect("the first position has moves")
    })
}

fn first(position: &Chess, text: &str, language: Language) -> Option<Move> {
    let reading = read(position, &[], text, language).ok()?;
    reading.tree.main_line().first().copied()
}

/// The move that a text means if it is read as two squares, whatever their case.
fn from_square_to_square(position: &Chess, text: &str) -> Option<Move> {
    let squares = text.trim_end_matches(['+', '#']).to_lowercase();
    let uci: UciMove = squares.parse().ok()?;
    uci.to_move(position).ok()
}

fn letter(language: Language, role: Role) -> String {
    letters(language)
        .iter()
        .find(|&&(_, r)| r == role)
        .map_or_else(String::new, |(l, _)| {
            let mut chars = l.chars();
            let head = chars.next().map(|c| c.to_uppercase().to_string());
            head.unwrap_or_default() + chars.as_str()
        })
}

/// A figurine of either colour.
fn figurine(role: Role, color: Color) -> char {
    match (color, role) {
        (Color::White, Role::Pawn) => '♙',
        (Color::White, Role::Knight) => '♘',
        (Color::White, Role::Bishop) => '♗',
        (Color::White, Role::Rook) => '♖',
        (Color::White, Role::Queen) => '♕',
        (Color::White, Role::King) => '♔',
        (Color::Black, Role::Pawn) => '♟',
        (Color::Black, Role::Knight) => '♞',
        (Color::Black, Role::Bishop) => '♝',
        (Color::Black, Role::Rook) => '♜',
        (Color::Black, Role::Queen) => '♛',
        (Color::Black, Role::King) => '♚',
    }
}

/// SAN with its English letters put into other words by `with`.
fn translated(san: &str, with: impl Fn(Role) -> String) -> String {
    if san.starts_with('O') {
        return san.to_owned();
    }
    san.chars()
        .map(|c| match c {
            'K' => with(Role::King),
            'Q' => with(Role::Queen),
            'R' => with(Role::Rook),
            'B' => with(Role::Bishop),
            'N' => with(Role::Knight),
            c => c.to_string(),
        })
        .collect()
}

proptest! {
    #![proptest_config(crate::cases::cases(400))]

    #[test]
    fn san_is_read_back((position, mv) in some_move()) {
        let san = SanPlus::from_move(position.clone(), mv);
        for text in [san.to_string(), san.san.to_string(), format!("1.{san}!?"), format!("||{san}||")] {
            prop_assert_eq!(first(&position, &text, Language::English), Some(mv), "{}", text);
        }
    }

    #[test]
    fn uci_and_long_algebraic_are_read_back((position, mv) in some_move()) {
        let uci = UciMove::from_standard(mv).to_string();
        prop_assert_eq!(first(&position, &uci, Language::English), Some(mv), "{}", uci);
        let (from, rest) = uci.split_at(2);
        let (to, promotion) = rest.split_at(2);
        let letter = match mv.role() {
            Role::Pawn => String::new(),
            role => role.upper_char().to_string(),
        };
        let sign = if mv.is_capture() { "x" } else { "-" };
        let becomes = if promotion.is_empty() {
            String::new()
        } else {
            format!("={}", promotion.to_uppercase())
        };
        let long = format!("{letter}{from}{sign}{to}{becomes}");
        prop_assert_eq!(first(&position, &long, Language::English), Some(mv), "{}", long);
        let bare = format!("{from}{sign}{to}{promotion}");
        prop_assert_eq!(first(&position, &bare, Language::English), Some(mv), "{}", bare);
    }

    #[test]
    fn every_language_and_figurines_are_read_back((position, mv) in some_move()) {
        let san = SanPlus::from_move(position.clone(), mv).to_string();
        for language in Language::ALL {
            let text = translated(&san, |role| letter(language, role));
            let read = first(&position, &text, language);
            // "H8h6" is a Hungarian knight's move, and "h8h6" as a telephone begins a message: that may be
            // asked back, and is never taken for the other move.
            let other = from_square_to_square(&position, &text).filter(|&other| other != mv);
            let asked = read.is_none() && other.is_some();
            prop_assert!(asked || read == Some(mv), "{:?} {}", language, text);
            // English is understood in every group, but for letters that mean another piece there.
            if !matches!(language, Language::French | Language::Spanish | Language::Italian
                | Language::Portuguese | Language::Hungarian | Language::Turkish)
            {
                prop_assert_eq!(first(&position, &san, language), Some(mv), "{:?} {}", language, san);
            }
        }
        for color in Color::ALL {
            let text = translated(&san, |role| figurine(role, color).to_string());
            prop_assert_eq!(first(&position, &text, Language::English), Some(mv), "{}", text);
        }
    }

    #[test]
    fn words_are_read_back((position, mv) in some_move()) {
        let text = match mv {
            Move::Castle { king, rook } if rook > king => "castles short".to_owned(),
            Move::Castle { .. } => "castles long".to_owned(),
            _ => {
                let from = mv.from().expect("no drops");
                let verb = if mv.is_capture() { "takes" } else { "to" };
                let promotes = mv.promotion().map_or_else(String::new, |role| {
                    format!(" promotes to a {}", man(role))
                });
                format!("{} on {from} {verb} {}{promotes}", man(mv.role()), mv.to())
            }
        };
        prop_assert_eq!(first(&position, &text, Language::English), Some(mv), "{}", text);
    }

    #[test]
    fn whole_games_are_read_back(choices in prop::collection::vec(any::<prop::sample::Index>(), 1..60)) {
        let mut position = Chess::default();
        let (mut moves, mut text) = (Vec::new(), String::new());
        for (ply, choice) in choices.iter().enumerate() {
            let legal = position.legal_moves();
            if legal.is_empty() {
                break;
            }
            let mv = legal[choice.index(legal.len())];
            if ply % 2 == 0 {
                text.push_str(&format!("{}.", ply / 2 + 1));
            }
            text.push_str(&format!("{} ", SanPlus::from_move_and_play_unchecked(&mut position, mv)));
            moves.push(mv);
        }
        let reading = read(&Chess::default(), &[], &text, Language::English).expect("short");
        prop_assert_eq!(reading.tree.main_line(), moves);
        prop_assert!(reading.troubles.is_empty());
    }

    #[test]
    fn no_text_upsets_the_reader(text in "\\PC{0,400}", language in 0..Language::ALL.len()) {
        sane(&text, Language::ALL[language])?;
    }

    #[test]
    fn nothing_that_looks_like_chess_upsets_it(
        words in prop::collection::vec(
            prop::sample::select(vec![
                "Nf3", "e4", "e5", "1.", "1...", "2.", "31. ...", "(", ")", "[", "]", "{", "}", ";", "/", "\n",
                "~", "any", "or", "if", "not", "O-O", "0-0-0", "takes", "knight", "rook", "to", "on", "castles",
                "king", "side", "check", "mate", "?", "!?", "e8=Q", "exd5", "bc5", "♘", "QxR", "Dd3", "Кf3", "N",
                "b", "x", "+", "#", "then", ",", "...", "…", "$3", "<", ">", "my answer is", "Nb1-d2", "e7e8q",
            ]),
            0..120,
        ),
        gap in prop::sample::select(vec!["", " "]),
        language in 0..Language::ALL.len(),
    ) {
        sane(&words.join(gap), Language::ALL[language])?;
    }
}

/// What holds of every reading: legal moves only, and no more nodes than allowed.
fn sane(text: &str, language: Language) -> Result<(), TestCaseError> {
    let start = Chess::default();
    match read(&start, &[], text, language) {
        Err(TooLong) => prop_assert!(text.chars().count() > MOST_CHARACTERS),
        Ok(reading) => {
            prop_assert!(reading.tree.nodes().len() <= Tree::MOST);
            for (id, node) in reading.tree.nodes().iter().enumerate() {
                let (Some(parent), Some(mv)) = (node.parent, node.mv) else {
                    prop_assert_eq!(id, 0);
                    continue;
                };
                prop_assert!(parent < id);
                prop_assert!(reading.tree.node(parent).position.is_legal(mv));
            }
        }
    }
    Ok(())
}

#[test]
fn the_longest_replies_stay_bounded() {
    let start = Chess::default();
    for unit in [
        "a",
        "1.",
        "(",
        ")",
        "e4 ",
        "Nf3 Ng1 ",
        "~ ",
        "a4 ~ ",
        "; Nf3 ",
        "{",
        "<",
        "Nf3 Nf6 Ng1 Ng8 ",
        "or e4 ",
        "1.e4 ~ 2.d4 ~ ",
        "knight takes ",
        "QxRxB",
        "Nf3/",
        "0-0-",
        "e8=(",
        "♘",
        "if e4 ",
    ] {
        let text: String = unit.chars().cycle().take(MOST_CHARACTERS).collect();
        let reading = read(&start, &[], &text, Language::English).expect("at the limit");
        assert!(reading.tree.nodes().len() <= Tree::MOST, "{unit}");
        assert!(reading.troubles.len() <= 12, "{unit}");
        let longer = text + "e";
        assert_eq!(
            read(&start, &[], &longer, Language::English).err(),
            Some(TooLong)
        );
    }
}

#[test]
fn a_piece_letter_that_is_a_file_is_asked_about_where_both_are_moves() {
    // Two knights of Black's go to h6, and so does the rook on h8.
    let fen = "r3kbnr/3qppp1/ppppb1P1/7p/3PP1n1/NP3P2/P1P3BP/1RBQK1NR b kq - 0 1";
    let position = crate::parse_fen(fen).expect("a position").position;
    assert_eq!(first(&position, "H8h6", Language::Hungarian), None);
    let knight = first(&position, "Hgh6", Language::Hungarian);
    assert!(knight.is_none(), "both knights stand on the g-file");
    let rook = first(&position, "h8h6", Language::Hungarian);
    assert!(rook.is_some_and(|mv| mv.role() == Role::Rook));
    let knight = first(&position, "Hg8-h6", Language::Hungarian);
    assert!(knight.is_some_and(|mv| mv.role() == Role::Knight));
}
