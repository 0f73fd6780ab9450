//! A board to enter moves on: the position that moves lead to, and what can be played there.

use serde::Serialize;
use shakmaty::{
    CastlingMode, Chess, EnPassantMode, Position, fen::Fen, san::SanPlus, uci::UciMove,
};

use crate::{Language, PositionError, Warning, card::one_move, fact::Side, parse_fen};

/// The most half-moves that a line may have.
pub const LONGEST: usize = 1_200;

/// A position that moves have led to.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Played {
    /// Its FEN.
    pub fen: String,
    /// Who is to move.
    pub side: Side,
    /// Whether that side is in check.
    pub check: bool,
    /// The moves that led to it, in SAN with English letters.
    pub line: Vec<String>,
    /// Where the last of them came from and went to; a king that castles goes two squares.
    pub last: Option<(String, String)>,
    /// What can be played.
    pub legal: Vec<Legal>,
    /// What is odd about the position that the moves start from.
    #[serde(skip)]
    pub warnings: Vec<Warning>,
}

/// A move that can be played.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Legal {
    /// In SAN with English letters.
    pub san: String,
    /// The square it comes from.
    pub from: String,
    /// The square it goes to; a king that castles goes two squares.
    pub to: String,
    /// What a pawn becomes, as a small English letter.
    pub promotion: Option<char>,
}

/// Why moves lead nowhere.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotPlayed {
    /// The position cannot be set up.
    Position(PositionError),
    /// This is no move, or no legal one, after so many that are.
    Move {
        /// As it was written.
        written: String,
        /// How many moves before it could be played.
        after: usize,
    },
    /// There are more than [`LONGEST`].
    TooLong,
}

/// Plays `line` (SAN) from a FEN, which is empty for the initial position, and then what was `typed`: a move as
/// people of a language write it.
///
/// ```
/// use sealed_move_chess::{Language, play};
///
/// let line = ["e4".to_owned(), "e5".to_owned()];
/// let stands = play::stand("", &line, Some(("Sf3", Language::German))).unwrap();
/// assert_eq!(stands.line, ["e4", "e5", "Nf3"]);
/// assert_eq!(stands.last, Some(("g1".into(), "f3".into())));
/// ```
///
/// # Errors
/// When the position cannot be set up, or a move cannot be played.
pub fn stand(
    fen: &str,
    line: &[String],
    typed: Option<(&str, Language)>,
) -> Result<Played, NotPlayed> {
    let (mut at, warnings) = match fen.trim() {
        "" => (Chess::default(), Vec::new()),
        fen => {
            let read = parse_fen(fen).map_err(NotPlayed::Position)?;
            (read.position, read.warnings)
        }
    };
    if line.len() + usize::from(typed.is_some()) > LONGEST {
        return Err(NotPlayed::TooLong);
    }
    let refused = |written: &str, after| NotPlayed::Move {
        written: written.to_owned(),
        after,
    };
    let mut played = Vec::with_capacity(line.len() + 1);
    let mut last = None;
    for written in line {
        let san = written.parse::<SanPlus>();
        let mv = san.ok().and_then(|san| san.san.to_move(&at).ok());
        let mv = mv.ok_or_else(|| refused(written, played.len()))?;
        last = Some(squares(&mv));
        played.push(SanPlus::from_move_and_play_unchecked(&mut at, mv).to_string());
    }
    if let Some((written, language)) = typed {
        let mv = one_move(&at, written.trim(), language);
        let mv = mv.ok_or_else(|| refused(written.trim(), played.len()))?;
        last = Some(squares(&mv));
        played.push(SanPlus::from_move_and_play_unchecked(&mut at, mv).to_string());
    }
    let legal = at.legal_moves().into_iter().map(|mv| {
        let (from, to) = squares(&mv);
        Legal {
            san: SanPlus::from_move(at.clone(), mv).to_string(),
            promotion: mv.promotion().map(|role| role.char()),
            from,
            to,
        }
    });
    Ok(Played {
        fen: Fen::from_position(&at, EnPassantMode::Legal).to_string(),
        side: at.turn().into(),
        check: at.is_check(),
        legal: legal.collect(),
        line: played,
        last,
        warnings,
    })
}

/// Where a move comes from and goes to, as UCI has it.
fn squares(mv: &shakmaty::Move) -> (String, String) {
    match mv.to_uci(CastlingMode::Standard) {
        UciMove::Normal { from, to, .. } => (from.to_string(), to.to_string()),
        UciMove::Put { .. } | UciMove::Null => Default::default(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_can_be_played_is_listed_with_its_squares() {
        let fen = "4k3/P7/8/8/8/8/8/4K2R w K - 0 1";
        let stands = stand(fen, &[], None).expect("a position");
        let of = |san: &str| {
            let found = stands.legal.iter().find(|legal| legal.san == san);
            found.map(|legal| (legal.from.as_str(), legal.to.as_str(), legal.promotion))
        };
        assert_eq!(of("O-O"), Some(("e1", "g1", None)));
        assert_eq!(of("a8=N"), Some(("a7", "a8", Some('n'))));
        assert_eq!(stands.legal.iter().filter(|l| l.from == "a7").count(), 4);
        // By the rules: five moves of the king and castling, nine of the rook, four of the pawn.
        assert_eq!(stands.legal.len(), 19);
        assert_eq!((stands.fen.as_str(), stands.check), (fen, false));
        assert_eq!(stands.last, None);
    }

    #[test]
    fn what_leads_nowhere_is_named() {
        let line = |moves: &[&str]| moves.iter().map(|s| (*s).to_owned()).collect::<Vec<_>>();
        assert_eq!(
            stand("", &line(&["e4", "e4"]), None),
            Err(NotPlayed::Move {
                written: "e4".into(),
                after: 1
            })
        );
        assert_eq!(
            stand("", &line(&["e4"]), Some((" Ke9 ", Language::English))),
            Err(NotPlayed::Move {
                written: "Ke9".into(),
                after: 1
            })
        );
        assert!(matches!(
            stand("8/8", &[], None),
            Err(NotPlayed::Position(_))
        ));
        let long = vec!["e4".to_owned(); LONGEST + 1];
        assert_eq!(stand("", &long, None), Err(NotPlayed::TooLong));
        let mate = line(&["f3", "e5", "g4", "Qh4#"]);
        let stands = stand("", &mate, None).expect("fool's mate");
        assert!(stands.check && stands.legal.is_empty());
    }
}
