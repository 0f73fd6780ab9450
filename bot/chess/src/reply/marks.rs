//! What chats and keyboards write in signs, put into words before a reply is read: text that is struck
//! out goes, a star before a word corrects what stands before it, crosses and ticks say no and yes.

/// The text with such signs replaced.
pub(super) fn spelled_out(text: &str) -> String {
    let mut text = without_struck(text)
        .replace("i.p.v.", "in plaats van")
        .replace("50/50", "not sure")
        .replace("50-50", "not sure");
    // One arrow sets a move in the place of another, or plays on; several draw a line.
    for arrow in ["->", "=>", "→"] {
        let with = if text.matches(arrow).count() == 1 {
            " but "
        } else {
            " "
        };
        text = text.replace(arrow, with);
    }
    let chars = mended(&text.chars().collect::<Vec<char>>());
    let mut out = String::with_capacity(text.len());
    for (i, &c) in chars.iter().enumerate() {
        match c {
            '*' if corrects(&chars, i) => out.push_str(" correction "),
            '❌' | '✗' | '✘' | '🚫' | '👎' => {
                let first = chars[..i].iter().rev().find(|c| **c != ' ');
                out.push_str(match first {
                    None | Some('\n') => " not ",
                    Some(_) => " fails. ",
                });
            }
            '✅' | '✔' | '👍' => out.push_str(" , "),
            '>' if compares(&chars, i) => out.push_str(" better than "),
            '&' => out.push_str(" and "),
            c => out.push(c),
        }
    }
    out
}

/// Slips of the keyboard that leave no doubt: a piece letter twice, a blank within a square or within
/// castling, a capture sign hanging on a word.
fn mended(chars: &[char]) -> Vec<char> {
    let at = |i: usize| chars.get(i).copied().unwrap_or(' ');
    let before = |i: usize, back: usize| i.checked_sub(back).map_or(' ', at);
    let rank = |c: char| ('1'..='8').contains(&c);
    let file = |c: char| ('a'..='h').contains(&c);
    let zero = |c: char| matches!(c, '0' | 'O');
    let mut out = Vec::with_capacity(chars.len());
    for (i, &c) in chars.iter().enumerate() {
        let twice = c.is_uppercase()
            && c == at(i + 1)
            && !before(i, 1).is_alphanumeric()
            && file(at(i + 2))
            && rank(at(i + 3));
        let in_square = c == ' '
            && file(before(i, 1))
            && (before(i, 2).is_uppercase() || (before(i, 2) == 'x' && before(i, 3) != ' '))
            && !before(i, 4).is_alphanumeric()
            && rank(at(i + 1))
            && !at(i + 2).is_alphanumeric()
            && !matches!(at(i + 2), '.' | ')' | ':');
        let in_castling = c == ' '
            && ((zero(before(i, 1)) && at(i + 1) == '-' && at(i + 2) == ' ' && zero(at(i + 3)))
                || (zero(at(i + 1))
                    && before(i, 1) == '-'
                    && before(i, 2) == ' '
                    && zero(before(i, 3))));
        if twice || in_square || in_castling {
            continue;
        }
        let hangs = c == 'x'
            && file(at(i + 1))
            && rank(at(i + 2))
            && (1..=3).all(|back| before(i, back).is_alphabetic());
        if hangs {
            out.push(' ');
        }
        out.push(c);
    }
    out
}

/// Whether the sign stands alone between two words: "Rxd8+ > Rd7".
fn compares(chars: &[char], i: usize) -> bool {
    let space = |at: Option<usize>| at.and_then(|at| chars.get(at)) == Some(&' ');
    space(i.checked_sub(1)) && space(i.checked_add(1))
}

/// Whether the star at `i` stands before a word and is no part of bold or slanting text.
fn corrects(chars: &[char], i: usize) -> bool {
    let word = |c: Option<&char>| c.is_some_and(|c| c.is_alphanumeric());
    let before = i.checked_sub(1).and_then(|at| chars.get(at));
    if !word(chars.get(i + 1)) || before.is_some_and(|c| !c.is_whitespace()) {
        return false;
    }
    // A second star behind a word, within a bound, closes what this one opens.
    !chars[i + 1..]
        .iter()
        .take(400)
        .take_while(|c| **c != '\n')
        .any(|c| *c == '*')
}

/// What follows a word or a line between single tildes, as some chats strike it out; a tilde that stands
/// alone is the problemists' sign for any move.
fn lightly_struck(from: &str) -> Option<&str> {
    let inner = from.strip_prefix('~')?;
    let line = inner.split('\n').next().unwrap_or_default();
    let end = line.char_indices().take(80).find(|(_, c)| *c == '~')?.0;
    let word = |c: Option<char>| c.is_some_and(|c| !c.is_whitespace());
    let (struck, after) = (&inner[..end], &inner[end + 1..]);
    (word(struck.chars().next()) && word(struck.chars().last())).then_some(after)
}

/// Without what is struck out: between two tildes (`~~Rd7~~`), in `<s>` or `<del>`, or letter by letter.
fn without_struck(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    const PAIRS: [(&str, &str); 4] = [
        ("~~", "~~"),
        ("<s>", "</s>"),
        ("<del>", "</del>"),
        ("<strike>", "</strike>"),
    ];
    let last = PAIRS.map(|(_, close)| text.rfind(close).unwrap_or(0));
    while let Some(at) = rest.find(['~', '<']) {
        let (before, from) = rest.split_at(at);
        out.push_str(before);
        let here = text.len() - from.len();
        let struck = PAIRS.iter().enumerate().find_map(|(k, (open, close))| {
            let inner = from.strip_prefix(open)?;
            // Looked for only where one is known to follow, so that reading stays linear.
            let end = (last[k] >= here + open.len()).then(|| inner.find(close))??;
            Some(&inner[end + close.len()..])
        });
        let struck = struck.or_else(|| lightly_struck(from));
        match struck {
            Some(after) => {
                out.push(' ');
                rest = after;
            }
            None => {
                let mut chars = from.chars();
                out.extend(chars.next());
                rest = chars.as_str();
            }
        }
    }
    out.push_str(rest);
    if !out.contains(['\u{335}', '\u{336}', '\u{337}', '\u{338}']) {
        return out;
    }
    let chars: Vec<char> = out.chars().collect();
    let line = |c: Option<&char>| c.is_some_and(|c| ('\u{335}'..='\u{338}').contains(c));
    chars
        .iter()
        .enumerate()
        .filter(|(i, c)| !line(Some(c)) && !line(chars.get(i + 1)))
        .map(|(_, c)| *c)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_struck_out_goes_and_signs_become_words() {
        for (text, expected) in [
            ("~~Rd7~~ Rxd8+", "  Rxd8+"),
            ("<s>Rd7</s> Rxd8+", "  Rxd8+"),
            ("R\u{336}d\u{336}7\u{336} Rxd8+", " Rxd8+"),
            ("1.Nf7+ ~ 2.Nh6+", "1.Nf7+ ~ 2.Nh6+"),
            ("~~ Rd7", "~~ Rd7"),
            ("~Rd7~ Rxd8+", "  Rxd8+"),
            (
                "1.Rd7 ~ 2.Rd8#, 1...h6~ 2.Rd8#",
                "1.Rd7 ~ 2.Rd8#, 1...h6~ 2.Rd8#",
            ),
            ("Rd7 *Rxd8+", "Rd7  correction Rxd8+"),
            ("**Rxd8+** and *Rxd8*", "**Rxd8+** and *Rxd8*"),
            ("* Rxd8+", "* Rxd8+"),
            ("Rxd8+ > Rd7", "Rxd8+  better than  Rd7"),
            ("❌Rd7\n✅Rxd8+", " not Rd7\n , Rxd8+"),
            (
                "NNe7+ Ne 7 Qh7 2. 0 - 0 rookxd8",
                "Ne7+ Ne7 Qh7 2. 0-0 rook xd8",
            ),
        ] {
            assert_eq!(spelled_out(text), expected, "{text}");
        }
    }
}
