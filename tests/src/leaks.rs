//! What nobody but its solver may see before the reveal, and how it is recognised: in any notation, in
//! words, or as a picture.

use crate::{
    discord::log::{Audience, LogEntry},
    pictures,
};

/// A problem of the scenarios.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Problem {
    /// Its key, to know its reveal by.
    pub key: &'static str,
    /// The solver's moves, from and to.
    pub moves: &'static [(&'static str, &'static str)],
    /// The kept picture of its post, the only one that may be seen before the reveal.
    pub picture: &'static str,
}

/// Every problem of the scenarios.
pub const PROBLEMS: [Problem; 2] = [
    Problem {
        key: "Rxd8",
        moves: &[("d2", "d8"), ("d1", "d8")],
        picture: "discord-post-back-rank",
    },
    Problem {
        key: "Nh6",
        moves: &[("f7", "h6"), ("c4", "g8"), ("h6", "f7")],
        picture: "discord-post-smothered",
    },
];

/// What a request shows to others that it should not, while `sealed` problems are.
pub fn leak(entry: &LogEntry, sealed: &[Problem]) -> Option<String> {
    if sealed.is_empty() || !matches!(entry.audience, Audience::Channel(_) | Audience::Anyone) {
        return None;
    }
    for file in &entry.files {
        let numbered = file
            .name
            .strip_prefix("position-")
            .and_then(|rest| rest.strip_suffix(".png"))
            .is_some_and(|n| !n.is_empty() && n.bytes().all(|b| b.is_ascii_digit()));
        if !numbered {
            return Some(format!("the file {}", file.name));
        }
        // While pictures are written anew there is nothing to hold this one against.
        let known = PROBLEMS.iter().chain(sealed);
        let posts: Vec<&str> = known.map(|problem| problem.picture).collect();
        if !pictures::rewriting() && !pictures::is_one_of(&file.bytes, &posts) {
            return Some(format!("a picture other than the post's, as {}", file.name));
        }
    }
    let texts = entry.texts();
    sealed
        .iter()
        .flat_map(|problem| problem.moves)
        .find_map(|(from, to)| texts.iter().find_map(|text| told(text, from, to)))
}

/// Where a text tells a move: by a piece's letter in any language or its figure, with or without where
/// it comes from; by both squares; or in words. A square alone tells nothing.
pub fn told(text: &str, from: &str, to: &str) -> Option<String> {
    let chars: Vec<char> = text.chars().collect();
    let square = |at: usize| -> Option<String> {
        let pair = chars.get(at..at + 2)?;
        Some(pair.iter().collect::<String>().to_lowercase())
    };
    let piece = |c: char| c.is_uppercase() || ('♔'..='♟').contains(&c);
    for at in 0..chars.len() {
        if square(at).as_deref() != Some(to)
            || chars.get(at + 2).is_some_and(char::is_ascii_alphanumeric)
        {
            continue;
        }
        let shown = || Some(chars[at.saturating_sub(8)..at + 2].iter().collect());
        let before: String = chars[..at].iter().collect::<String>().to_lowercase();
        if ["to ", "takes ", "takes on ", "captures ", "gets on "]
            .iter()
            .any(|word| before.ends_with(word))
        {
            return shown();
        }
        // Back over a sign of capture or a dash.
        let mut back = at;
        while back > 0
            && matches!(
                chars[back - 1],
                ' ' | 'x' | 'X' | ':' | '×' | '-' | '–' | '→'
            )
        {
            back -= 1;
        }
        if back >= 2 && square(back - 2).as_deref() == Some(from) {
            return shown();
        }
        // Back over where it comes from.
        if back > 0 && chars[back - 1].is_ascii_digit() {
            back -= 1;
        }
        if back > 0 && matches!(chars[back - 1], 'a'..='h') {
            back -= 1;
        }
        let alone = back < 2 || !chars[back - 2].is_alphanumeric();
        if back > 0 && piece(chars[back - 1]) && alone {
            return shown();
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_move_is_known_in_any_notation() {
        for text in [
            "Rxd8+",
            "1. Rd8!",
            "R2xd8",
            "Rd2xd8",
            "Rd2-d8",
            "Tdxd8",
            "Лxd8",
            "♖xd8",
            "♜ d8",
            "d2d8",
            "d2-d8",
            "D2xD8",
            "the rook takes d8",
            "rook to d8",
            "||Rd8||",
            "(Rxd8)",
        ] {
            assert!(told(text, "d2", "d8").is_some(), "{text}");
        }
        for text in [
            "rooks a8 and d8",
            "d8",
            "what of d8?",
            "the pawn on d8",
            "Rd7",
            "fd8c1",
            "2d2d81",
            "NASd8",
        ] {
            assert_eq!(told(text, "d2", "d8"), None, "{text}");
        }
    }
}
