//! Promotions as files in the wild write them: e8Q, e8(Q), e8/Q, e8=(Q), with or without a capture.

/// The move with the sign that SAN wants, where it is a promotion written without: "e8(Q)+" is "e8=Q+".
/// Where nothing of the kind is written, `None`.
pub(super) fn with_sign(word: &str) -> Option<String> {
    let bytes = word.as_bytes();
    // The last square that lies on the first or last rank; what follows names the piece.
    let at = (1..bytes.len())
        .rev()
        .find(|at| matches!(bytes[*at], b'1' | b'8') && matches!(bytes[*at - 1], b'a'..=b'h'))?;
    let (to, rest) = word.split_at(at + 1);
    let pawn = to.starts_with(|c: char| matches!(c, 'a'..='h'));
    let rest = rest.strip_prefix('=').unwrap_or(rest);
    let (piece, after) = match rest.strip_prefix('(') {
        Some(inner) => {
            let piece = inner.chars().next()?;
            (piece, inner[piece.len_utf8()..].strip_prefix(')')?)
        }
        None => {
            let inner = rest.strip_prefix('/').unwrap_or(rest);
            let piece = inner.chars().next()?;
            (piece, &inner[piece.len_utf8()..])
        }
    };
    let piece = piece.to_ascii_uppercase();
    let signs = after.chars().all(|c| matches!(c, '+' | '#' | '!' | '?'));
    (pawn && signs && matches!(piece, 'Q' | 'R' | 'B' | 'N'))
        .then(|| format!("{to}={piece}{after}"))
}

/// How many bytes of `rest` belong to the move `word` before it, because they are the piece it promotes
/// to, in brackets: "(Q)+" behind "e8".
pub(super) fn in_brackets(word: &str, rest: &str) -> Option<usize> {
    let square = word.strip_suffix('=').unwrap_or(word).as_bytes();
    let [.., b'a'..=b'h', b'1' | b'8'] = square else {
        return None;
    };
    if !matches!(square[0], b'a'..=b'h') {
        return None;
    }
    let inner = rest.trim_start_matches([' ', '\t']).strip_prefix('(')?;
    let mut chars = inner.chars();
    let piece = chars.next()?;
    if !"QRBNqrbn♕♖♗♘♛♜♝♞".contains(piece) {
        return None;
    }
    let after = chars.as_str().trim_start_matches(['\u{fe0e}', '\u{fe0f}']);
    let after = after.strip_prefix(')')?;
    let signs = after.len() - after.trim_start_matches(['+', '#']).len();
    Some(rest.len() - after.len() + signs)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_sign_is_put_where_it_is_left_out() {
        for (written, san) in [
            ("e8Q", "e8=Q"),
            ("e8q", "e8=Q"),
            ("e8(Q)", "e8=Q"),
            ("e8=(Q)#", "e8=Q#"),
            ("e8/Q+", "e8=Q+"),
            ("dxe8N+!?", "dxe8=N+!?"),
            ("a1R", "a1=R"),
            ("bxa1(B)", "bxa1=B"),
            ("e7-e8Q", "e7-e8=Q"),
        ] {
            assert_eq!(with_sign(written).as_deref(), Some(san), "{written}");
        }
        for none in [
            "e8", "Re8", "Re8Q", "e8K", "e8P", "e8(Q", "e8QQ", "e4Q", "Qa1", "O-O", "a8(Q)x", "é8Q",
        ] {
            assert_eq!(with_sign(none), None, "{none}");
        }
    }

    #[test]
    fn brackets_behind_a_promotion_are_part_of_it() {
        assert_eq!(in_brackets("e8", "(Q)+ Kd7"), Some(4));
        assert_eq!(in_brackets("dxe8=", "(N) x"), Some(3));
        assert_eq!(in_brackets("e8", " (Q) x"), Some(4));
        for (word, rest) in [
            ("e4", "(Q)"),
            ("Re8", "(Q)"),
            ("e8", "(Qd1)"),
            ("e8", "(1.Q)"),
        ] {
            assert_eq!(in_brackets(word, rest), None, "{word}{rest}");
        }
    }
}
