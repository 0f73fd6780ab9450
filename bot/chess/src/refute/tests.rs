//! Every reason given is held against the board by code that shares nothing with what found it.

use shakmaty::{Bitboard, Chess, Color, Move, Position, Rank, Role, Square, attacks};

use super::*;
use crate::parse_fen;

/// Positions from random play and a few of our own, with the length of the mate.
fn positions() -> Vec<(Chess, u8)> {
    let own = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - -\t#2\n\
               7k/5Q2/5K2/8/8/8/8/8 w - -\t#1\n\
               6k1/5p1p/5KpP/8/8/8/8/4R3 w - -\t#1\n\
               k7/8/1K6/8/8/8/8/7R w - -\t#1\n\
               5rk1/5p1p/5Qp1/8/8/7P/5PPK/4R3 w - -\t#2\n";
    include_str!("positions.txt")
        .lines()
        .chain(own.lines())
        .filter(|line| !line.starts_with('#'))
        .map(|line| {
            let (fen, task) = line.split_once('\t').expect("a tab");
            let moves = task.trim_start_matches('#').parse().expect("a number");
            (parse_fen(fen).expect("a position").position, moves)
        })
        .collect()
}

fn play(position: &Chess, mv: Move) -> Chess {
    position.clone().play(mv).expect("legal")
}

/// Plain search for a mate in `moves` of the side to move.
fn mates(position: &Chess, moves: u8) -> bool {
    moves > 0
        && position.legal_moves().into_iter().any(|mv| {
            let next = play(position, mv);
            next.is_checkmate()
                || (moves > 1 && !next.is_game_over() && all_mated(&next, moves - 1))
        })
}

fn all_mated(position: &Chess, moves: u8) -> bool {
    position
        .legal_moves()
        .into_iter()
        .all(|mv| mates(&play(position, mv), moves))
}

fn attackers(position: &Chess, square: Square, by: Color, without: Option<Square>) -> Bitboard {
    let mut occupied = position.board().occupied();
    if let Some(without) = without {
        occupied.discard(without);
    }
    position.board().attacks_to(square, by, occupied)
}

fn verify(before: &Chess, mv: Move, moves: u8, refutation: &Refutation) -> Result<(), String> {
    let ensure = |holds: bool, what: &str| if holds { Ok(()) } else { Err(what.to_owned()) };
    let after = play(before, mv);
    let (solver, defender) = (before.turn(), after.turn());
    let Some(&defence) = refutation.line.first() else {
        return ensure(after.is_stalemate(), "no line, and no stalemate");
    };
    let beyond = play(&after, defence);
    ensure(!mates(&beyond, moves - 1), "the defence does not hold")?;
    let passed = after.clone().swap_turn().ok();
    let threats: Vec<Move> = passed.as_ref().map_or_else(Vec::new, |passed| {
        passed
            .legal_moves()
            .into_iter()
            .filter(|&m| play(passed, m).is_checkmate())
            .collect()
    });
    for reason in &refutation.reasons {
        match *reason {
            Reason::Stalemate => ensure(after.is_stalemate(), "stalemate")?,
            Reason::Slower { moves: length } => {
                ensure(length > moves, "slower than the task")?;
                if length <= 3 {
                    ensure(all_mated(&after, length - 1), "mates in the length said")?;
                    ensure(!all_mated(&after, length - 2), "and not sooner")?;
                }
            }
            Reason::MatesFirst => ensure(beyond.is_checkmate(), "mate")?,
            Reason::Takes {
                by,
                what,
                on,
                the_mover,
                back,
            } => {
                ensure(defence.role() == by, "what takes")?;
                ensure(after.board().role_at(on) == Some(what), "what is taken")?;
                ensure(after.board().color_at(on) == Some(solver), "whose it is")?;
                ensure(
                    beyond.board().color_at(on) != Some(solver),
                    "that it is gone",
                )?;
                let moved = before.board().piece_at(on) != after.board().piece_at(on);
                ensure(the_mover == moved, "that it is the piece that moved")?;
                let retakes = beyond
                    .legal_moves()
                    .iter()
                    .any(|m| m.is_capture() && m.to() == defence.to());
                let guards = attackers(&beyond, defence.to(), solver, None);
                match back {
                    Back::Possible => ensure(retakes, "can be taken back")?,
                    Back::Nothing => ensure(!retakes && guards.is_empty(), "nothing takes back")?,
                    Back::InCheck => ensure(!retakes && beyond.is_check(), "in check")?,
                    Back::Guarded => {
                        let king = beyond.board().king_of(solver).expect("a king");
                        ensure(!retakes && guards.contains(king), "the king would")?;
                    }
                    Back::Pinned(role, square) => {
                        ensure(
                            !retakes && guards.contains(square),
                            "the pinned piece would",
                        )?;
                        ensure(beyond.board().role_at(square) == Some(role), "which piece")?;
                        ensure(!beyond.is_check(), "no check, a pin")?;
                        let king = beyond.board().king_of(solver).expect("a king");
                        let lined = beyond
                            .board()
                            .by_color(defender)
                            .into_iter()
                            .any(|p| attacks::between(p, king).contains(square));
                        ensure(lined, "somebody pins it")?;
                    }
                }
                if by == Role::King {
                    ensure(guards.is_empty(), "the king takes what is unguarded")?;
                }
            }
            Reason::Flight { to, lost_guard } => {
                ensure(
                    defence.role() == Role::King && defence.to() == to,
                    "the king goes",
                )?;
                ensure(
                    attackers(&beyond, to, solver, None).is_empty(),
                    "nothing guards",
                )?;
                let king = after.board().king_of(defender);
                match lost_guard {
                    None => {}
                    Some(LostGuard::Moved(role)) => {
                        let from = mv.from().expect("a square");
                        ensure(before.board().role_at(from) == Some(role), "which guard")?;
                        ensure(
                            attackers(before, to, solver, king).contains(from),
                            "that it guarded",
                        )?;
                    }
                    Some(LostGuard::Blocked(role, guard)) => {
                        ensure(after.board().role_at(guard) == Some(role), "which guard")?;
                        ensure(
                            attackers(before, to, solver, king).contains(guard),
                            "that it guarded",
                        )?;
                        ensure(
                            !attackers(&after, to, solver, king).contains(guard),
                            "that it is shut out",
                        )?;
                    }
                }
            }
            Reason::Castles => ensure(defence.is_castle(), "castling")?,
            Reason::Check => ensure(beyond.is_check(), "check")?,
            Reason::Interposes { by, on, takeable } => {
                let king = after.board().king_of(defender).expect("a king");
                let checker = after.checkers().first().expect("a check");
                ensure(defence.role() == by && defence.to() == on, "who")?;
                ensure(attacks::between(king, checker).contains(on), "between")?;
                let taken = beyond
                    .legal_moves()
                    .iter()
                    .any(|m| m.is_capture() && m.to() == on);
                ensure(taken == takeable, "takeable")?;
            }
            Reason::NoThreat => {
                let passed = passed.as_ref().ok_or("nobody can pass")?;
                ensure(!mates(passed, moves - 1), "no threat")?;
            }
            Reason::MeetsThreat => {
                let passed = passed.as_ref().ok_or("nobody can pass")?;
                ensure(mates(passed, moves - 1), "a threat")?;
            }
            Reason::Guards { by, square } => {
                ensure(
                    beyond.board().role_at(defence.to()) == Some(by),
                    "what guards",
                )?;
                let threat = threats.iter().find(|m| m.to() == square);
                let threat = *threat.ok_or("no mate was threatened there")?;
                let carried = play(&beyond, threat);
                let takes = carried
                    .legal_moves()
                    .iter()
                    .any(|m| m.to() == square && m.role() == by && m.is_capture());
                ensure(takes, "that it takes")?;
            }
            Reason::Luft { square, vacated } => {
                let free = threats.iter().any(|&threat| {
                    beyond.is_legal(threat)
                        && play(&beyond, threat)
                            .legal_moves()
                            .iter()
                            .any(|m| m.role() == Role::King && m.to() == square)
                });
                ensure(free, "that the king may go there")?;
                ensure(vacated == (defence.from() == Some(square)), "emptied")?;
            }
            Reason::Shuts { by, on } => {
                ensure(beyond.board().role_at(on) == Some(by), "what stands there")?;
                ensure(
                    defence.to() == on || defence.is_castle(),
                    "that it went there",
                )?;
                // Without the piece the threat is mate again.
                ensure(!threats.is_empty(), "a threat")?;
            }
            Reason::Pins { what, on } => {
                ensure(beyond.board().role_at(on) == Some(what), "what is pinned")?;
                ensure(beyond.board().color_at(on) == Some(solver), "whose it is")?;
                let king = beyond.board().king_of(solver).expect("a king");
                ensure(
                    attacks::between(defence.to(), king).contains(on),
                    "on the line to the king",
                )?;
            }
            Reason::NoCheck => ensure(!after.is_check() && moves == 1, "no check")?,
            Reason::BackRankHolds { .. } => {
                let king = beyond.board().king_of(defender).expect("a king");
                let home = defender.fold_wb(Rank::First, Rank::Eighth);
                ensure(king.rank() == home, "the king at home")?;
                for strike in beyond.legal_moves() {
                    let heavy = matches!(strike.role(), Role::Rook | Role::Queen);
                    if heavy && strike.to().rank() == home {
                        ensure(!play(&beyond, strike).is_checkmate(), "no mate there")?;
                    }
                }
            }
        }
    }
    Ok(())
}

#[test]
fn every_refutation_holds_and_every_reason_is_true() {
    let mut kinds: std::collections::BTreeMap<String, usize> = Default::default();
    let (mut wrong, mut silent) = (0, 0);
    for (position, moves) in positions() {
        let budget = Budget::unlimited();
        let proof = prove::mate(&position, moves, &budget).expect("unbounded");
        let keys: Vec<Move> = proof.solution.keys.iter().map(|key| key.mv).collect();
        let sealed = Sealed::of(&proof.solution);
        for mv in position.legal_moves() {
            let found = mate_move(&position, mv, moves, &sealed, &budget).expect("unbounded");
            assert_eq!(found.is_none(), keys.contains(&mv), "{mv} in {position:?}");
            let Some(refutation) = found else { continue };
            wrong += 1;
            silent += usize::from(refutation.why.is_empty());
            for reason in &refutation.reasons {
                let name = format!("{reason:?}");
                let name = name.split([' ', '{', '(']).next().unwrap_or_default();
                *kinds.entry(name.to_owned()).or_default() += 1;
            }
            if let Err(claim) = verify(&position, mv, moves, &refutation) {
                panic!(
                    "{mv} in #{moves} {}: not true: {claim} ({:?}; {})",
                    shakmaty::fen::Fen::from_position(&position, shakmaty::EnPassantMode::Legal),
                    refutation.reasons,
                    in_words(&refutation)
                );
            }
        }
    }
    println!("{wrong} wrong moves, {silent} without a reason, {kinds:?}");
    assert!(wrong > 1_000, "only {wrong} wrong moves were looked at");
    assert!(silent * 20 <= wrong, "{silent} of {wrong} have no reason");
    assert!(kinds.len() >= 10, "{kinds:?}");
}

fn in_words(refutation: &Refutation) -> String {
    sealed_move_words::english().say(&refutation.why)
}

/// What is said of a move, in words.
fn why(fen: &str, moves: u8, uci: &str) -> String {
    let position = parse_fen(fen).expect("a position").position;
    let uci: shakmaty::uci::UciMove = uci.parse().expect("UCI");
    let mv = uci.to_move(&position).expect("legal");
    let budget = Budget::unlimited();
    let proof = prove::mate(&position, moves, &budget).expect("unbounded");
    let sealed = Sealed::of(&proof.solution);
    let refutation = mate_move(&position, mv, moves, &sealed, &budget)
        .expect("unbounded")
        .expect("a wrong move");
    in_words(&refutation)
}

#[test]
fn the_back_rank_is_named_only_where_something_could_strike_there() {
    let two_rooks = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - -";
    assert_eq!(
        why(two_rooks, 2, "d2d7"),
        "the rook takes it, and the back rank is defended again"
    );
    // Fred Reinfeld, Win at Chess, 1945, no. 84, from memory: with the queen gone White strikes nowhere.
    let reinfeld = "r2q1r1k/2p1b1pp/p1n5/1p1Q1bN1/4n3/1BP1B3/PP3PPP/R4RK1 w - -";
    let said = why(reinfeld, 2, "d5f5");
    assert!(said.starts_with("the rook takes the queen"), "{said}");
    assert!(!said.contains("back rank"), "{said}");
}

#[test]
fn a_move_without_a_threat_is_called_that_and_nothing_else() {
    // Black's rook may take on f2; that his back rank holds is beside the point.
    let arabian = "5rk1/p1p2ppp/1p6/3Np3/1P5R/3P2RP/1r3PP1/6K1 w - -";
    assert_eq!(
        why(arabian, 2, "g1h2"),
        "it threatens no mate, so Black has time"
    );
    // Black's king has not castled, and what stands before it can step aside: no back rank.
    let alekhine = "r1bqk2r/p1pn1pp1/1p2pn1p/8/3P4/B1PB4/P1P1QPPP/R3K1NR w KQkq -";
    assert_eq!(
        why(alekhine, 2, "e2e3"),
        "it threatens no mate, so Black has time"
    );
}

#[test]
fn taking_back_is_spoken_of_where_it_is_possible() {
    let demo = "4r3/b1p2p1k/p2pq1pp/8/2P2P1B/QP1N1n1P/P2Pr1P1/1R1R3K b - -";
    assert_eq!(
        why(demo, 2, "e2e3"),
        "the pawn takes it, and taking back is not mate"
    );
}

#[test]
fn a_clause_holds_no_second_colon() {
    // The message puts a colon before the reason.
    let stalemate = "7k/8/5KQ1/8/8/8/8/8 w - -";
    let said = why(stalemate, 2, "g6f7");
    assert_eq!(
        said,
        "it is stalemate, for Black is not in check and has no move"
    );
}

/// Quiet moves that threaten mate, each with one way out; the positions are set up for the reason.
#[test]
fn a_threat_is_met_by_a_guard_by_luft_by_a_shut_line_and_by_a_pin() {
    let cases = [
        (
            // Only the bishop can look after g7 in time.
            "6k1/5p1p/3b1Pp1/8/8/8/3Q4/1K6 w - -",
            "d2h6",
            Reason::Guards {
                by: Role::Bishop,
                square: Square::G7,
            },
            "the bishop now guards g7, where the mate was threatened",
        ),
        (
            // The bishop takes f8 from the king.
            "6k1/5ppp/8/8/8/B7/8/R5K1 w - -",
            "a1e1",
            Reason::Luft {
                square: Square::F7,
                vacated: true,
            },
            "it clears f7 for the king",
        ),
        (
            "k7/8/1K6/8/7n/7R/8/8 w - -",
            "h3g3",
            Reason::Shuts {
                by: Role::Knight,
                on: Square::G6,
            },
            "the knight on g6 shuts the line of your threat",
        ),
        (
            "k7/8/1K6/3R4/5p2/8/8/2b5 w - -",
            "d5d4",
            Reason::Pins {
                what: Role::Rook,
                on: Square::D4,
            },
            "it pins your rook on d4",
        ),
    ];
    for (fen, uci, reason, words) in cases {
        let position = parse_fen(fen).expect("a position").position;
        let uci: shakmaty::uci::UciMove = uci.parse().expect("UCI");
        let mv = uci.to_move(&position).expect("legal");
        let refutation = mate_move(&position, mv, 2, &Sealed::default(), &Budget::unlimited())
            .expect("unbounded")
            .expect("a wrong move");
        assert!(
            refutation.reasons.contains(&reason),
            "{fen}: {:?}",
            refutation.reasons
        );
        assert!(
            in_words(&refutation).starts_with(words),
            "{fen}: {}",
            in_words(&refutation)
        );
        assert_eq!(verify(&position, mv, 2, &refutation), Ok(()), "{fen}");
    }
}

/// The answer to a wrong move of a published position; see `tests/data/published_mates.epd`.
fn answer(fen: &str, moves: u8, wrong: &str) -> (String, String) {
    let before = parse_fen(fen).expect("a position").position;
    let san: shakmaty::san::San = wrong.parse().expect("a move");
    let mv = san.to_move(&before).expect("legal");
    let refutation = mate_move(&before, mv, moves, &Sealed::default(), &Budget::unlimited())
        .expect("no bound")
        .expect("wrong");
    let defence = shakmaty::san::SanPlus::from_move(refutation.after.clone(), refutation.line[0]);
    (defence.to_string(), in_words(&refutation))
}

#[test]
fn no_queen_is_given_away_to_show_that_there_is_time() {
    // Reinfeld, Win at Chess, 9 (from memory): Qh7+ would hold the mate up as well.
    let fen = "3q1rk1/p4pp1/2pb3p/3p4/6Pr/1PNQ4/P1PB1PP1/4RRK1 b - - 0 1";
    let (defence, why) = answer(fen, 5, "Rxg4");
    assert_ne!(defence, "Qh7+");
    assert!(why.contains("so White has time"), "{why}");
}

#[test]
fn a_queen_is_lost_for_nothing_only_where_nothing_is_had_for_her() {
    // Greco, about 1620 (from memory): for the queen on h5 the pawn takes on h8 and promotes.
    let fen = "rn1qkb1r/p1ppp2p/1p3nP1/7Q/3P4/3B4/PPP2PbP/RNB1K1NR w KQkq - 0 1";
    let (_, why) = answer(fen, 2, "g7+");
    assert_eq!(
        why,
        "the knight takes the queen on h5, and nothing takes back"
    );
    // Damiano, 1512 (from memory).
    let fen = "rnbq1bnr/pppp2kp/8/5Qp1/2BPP2P/8/PPP2PP1/RNB1K2R w KQ - 0 1";
    let (_, why) = answer(fen, 2, "Qg6+");
    assert_eq!(why, "the pawn takes the queen for nothing");
    // Greco, about 1620 (from memory), a move later: the fork on f2 wins the queen back.
    let fen = "r1b2rk1/pppp1ppp/8/2b1P3/2B3n1/5N2/PP3qPP/RNBQR2K b - - 1 2";
    let (_, why) = answer(fen, 2, "Qxb2");
    assert_eq!(why, "the bishop takes the queen, and nothing takes back");
    // Nor for nothing where mate follows all the same.
    let fen = "5Q2/2R4p/1p1qpp2/7k/3P3P/3B2P1/5PK1/r7 w - - 1 2";
    let (_, why) = answer(fen, 2, "Qa8");
    assert!(why.contains("and nothing takes back"), "{why}");
}

#[test]
fn a_pawn_that_promotes_becomes_a_queen_where_that_does_as_well() {
    let guard = "7k/8/8/2p5/6K1/8/4R2p/R7 w - -";
    let (defence, why) = answer(guard, 2, "Re7");
    assert_eq!(defence, "h1=Q");
    assert_eq!(
        why,
        "the queen now guards a8, where the mate was threatened"
    );
}

#[test]
fn a_capture_elsewhere_gives_way_to_what_meets_the_threat() {
    // Esteban Canal - NN, Budapest, 1934 (from memory): the bishop comes too soon. The queen's taking
    // on g2 would hold as well.
    let fen = "2kr2nr/pp1n1ppp/2p1p3/8/1P1P1B2/2N2Q1P/1PPKBPP1/7q w - -";
    let (defence, why) = answer(fen, 2, "Ba6");
    assert_eq!(defence, "Ne7");
    assert_eq!(
        why,
        "the knight now guards c6, where the mate was threatened"
    );
}
