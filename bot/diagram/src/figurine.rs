//! Moves in figurine notation: the letters of SAN replaced by small drawings of the pieces, as printed
//! chess does, so that no language's letters are needed.

use shakmaty::{Color, Role};

use super::canvas::{Canvas, Hand};
use super::palette::Palette;
use super::pieces::{self, Coat, Cut};

/// A stretch of a line of notation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Bit<'a> {
    Text(&'a str),
    Piece(Role),
}

/// Width of the field a figurine is drawn in, as a part of the font size.
const FIELD: f32 = 0.98;

/// Room a figurine takes in the line, as a part of the font size.
const ADVANCE: f32 = 0.78;

/// Splits one word of notation, such as `12.Rxd8+` or `e8=Q#`, into text and pieces. A word that is no
/// move stays text: a letter counts only where a move in SAN has it.
pub(super) fn split(word: &str) -> Vec<Bit<'_>> {
    let mut bits = Vec::new();
    let lead = word
        .find(|c: char| !(c.is_ascii_digit() || "([.…".contains(c)))
        .unwrap_or(word.len());
    let (number, rest) = word.split_at(lead);
    if !number.is_empty() {
        bits.push(Bit::Text(number));
    }
    let mut rest = rest;
    if let Some(role) = rest.chars().next().and_then(role)
        && is_piece_move(&rest[1..])
    {
        bits.push(Bit::Piece(role));
        rest = &rest[1..];
    }
    if let Some(at) = rest.find('=')
        && let Some(role) = rest[at + 1..].chars().next().and_then(role)
        && role != Role::King
        && rest[..at].ends_with(['1', '8'])
    {
        bits.push(Bit::Text(&rest[..=at]));
        bits.push(Bit::Piece(role));
        rest = &rest[at + 2..];
    }
    if !rest.is_empty() {
        bits.push(Bit::Text(rest));
    }
    bits
}

fn role(letter: char) -> Option<Role> {
    match letter {
        'K' => Some(Role::King),
        'Q' => Some(Role::Queen),
        'R' => Some(Role::Rook),
        'B' => Some(Role::Bishop),
        'N' => Some(Role::Knight),
        _ => None,
    }
}

/// Whether what follows a piece letter is the rest of a move: file, rank or both to tell pieces apart,
/// a capture sign, and the square.
fn is_piece_move(rest: &str) -> bool {
    let head: Vec<u8> = rest
        .bytes()
        .take_while(|b| matches!(b, b'a'..=b'h' | b'1'..=b'8' | b'x'))
        .collect();
    let squares: Vec<u8> = head.iter().copied().filter(|&b| b != b'x').collect();
    let square = |pair: &[u8]| pair[0].is_ascii_lowercase() && pair[1].is_ascii_digit();
    match squares.len() {
        2 => square(&squares),
        3 => square(&squares[1..]),
        4 => square(&squares[..2]) && square(&squares[2..]),
        _ => false,
    }
}

/// How wide a word is.
fn width(word: &str, hand: &Hand<'_>) -> f32 {
    split(word)
        .into_iter()
        .map(|bit| match bit {
            Bit::Text(text) => hand.width(text),
            Bit::Piece(_) => hand.size * ADVANCE,
        })
        .sum()
}

/// How wide a line of words is.
pub(super) fn line_width(line: &str, hand: &Hand<'_>) -> f32 {
    let words: Vec<f32> = line.split_whitespace().map(|w| width(w, hand)).collect();
    let gaps = words.len().saturating_sub(1) as f32;
    words.iter().sum::<f32>() + gaps * hand.width(" ")
}

/// Breaks `text` into lines of at most `room`; every line but the first has `indent` less. A word
/// longer than a line stands alone.
pub(super) fn wrapped(text: &str, hand: &Hand<'_>, room: f32, indent: f32) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    for word in text.split_whitespace() {
        let room = if lines.is_empty() {
            room
        } else {
            room - indent
        };
        let longer = if line.is_empty() {
            word.to_owned()
        } else {
            format!("{line} {word}")
        };
        if !line.is_empty() && line_width(&longer, hand) > room {
            lines.push(std::mem::replace(&mut line, word.to_owned()));
        } else {
            line = longer;
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

/// Sets one line at `x` with its baseline at `y`.
pub(super) fn set(
    canvas: &mut Canvas,
    line: &str,
    (mut x, y): (f32, f32),
    hand: Hand<'_>,
    palette: &Palette,
) {
    let space = hand.width(" ");
    // Runs of plain words are set in one go, so that they stay text where text is wanted.
    let mut run = String::new();
    let mut run_at = x;
    for (i, word) in line.split_whitespace().enumerate() {
        if i > 0 {
            run.push(' ');
            x += space;
        }
        for bit in split(word) {
            match bit {
                Bit::Text(text) => {
                    if run.is_empty() {
                        run_at = x;
                    }
                    run.push_str(text);
                    x += hand.width(text);
                }
                Bit::Piece(role) => {
                    flush(canvas, &mut run, run_at, y, hand);
                    if canvas.live() {
                        // Under the drawing and in the page's colour: for whoever copies the line
                        // or has it read aloud.
                        let letter = role.upper_char().to_string();
                        let unseen = Hand {
                            ink: palette.page,
                            ..hand
                        };
                        canvas.text(&letter, x, y, unseen);
                    }
                    figurine(canvas, role, (x, y), hand.size, palette);
                    x += hand.size * ADVANCE;
                    run_at = x;
                }
            }
        }
        if run.is_empty() {
            run_at = x;
        }
    }
    flush(canvas, &mut run, run_at, y, hand);
}

fn flush(canvas: &mut Canvas, run: &mut String, x: f32, y: f32, hand: Hand<'_>) {
    if !run.trim().is_empty() {
        let lead = run.len() - run.trim_start().len();
        let x = x + hand.width(&run[..lead]);
        canvas.text(run.trim(), x, y, hand);
    }
    run.clear();
}

/// One piece on the baseline, drawn open as printers do for both sides.
fn figurine(canvas: &mut Canvas, role: Role, (x, y): (f32, f32), size: f32, palette: &Palette) {
    let side = size * FIELD;
    let coat = Coat {
        body: palette.page,
        edge: palette.ink,
        line: palette.ink,
        halo: "",
    };
    let left = x - (FIELD - ADVANCE) / 2.0 * size;
    let top = y - pieces::FOOT / 100.0 * side;
    pieces::draw(
        canvas,
        role.of(Color::White),
        (left, top),
        side,
        coat,
        Cut::for_square(side),
    );
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_of_moves_become_men_and_words_stay_words() {
        use Bit::{Piece, Text};
        let cases: &[(&str, &[Bit<'_>])] = &[
            ("1.Rd8+", &[Text("1."), Piece(Role::Rook), Text("d8+")]),
            (
                "1...Nbxd2",
                &[Text("1..."), Piece(Role::Knight), Text("bxd2")],
            ),
            ("R1a3", &[Piece(Role::Rook), Text("1a3")]),
            ("Qh4xe1#", &[Piece(Role::Queen), Text("h4xe1#")]),
            ("(Kg8", &[Text("("), Piece(Role::King), Text("g8")]),
            ("exd8=N#", &[Text("exd8="), Piece(Role::Knight), Text("#")]),
            ("O-O", &[Text("O-O")]),
            ("e4", &[Text("e4")]),
            ("Black", &[Text("Black")]),
            ("Rook", &[Text("Rook")]),
            ("Be", &[Text("Be")]),
            ("Bach", &[Text("Bach")]),
            ("Née", &[Text("Née")]),
            ("a=Q", &[Text("a=Q")]),
        ];
        for (word, bits) in cases {
            assert_eq!(&split(word), bits, "{word}");
        }
    }

    #[test]
    fn lines_are_broken_within_the_room() {
        let hand = Hand::new(20.0, "#000");
        let text = "1.Rxd8+ Rxd8 2.Rxd8# (1...Kf8 2.Rxf8#) and so on until the line must break";
        let lines = wrapped(text, &hand, 200.0, 20.0);
        assert!(lines.len() > 2);
        assert_eq!(lines.join(" "), text);
        for (i, line) in lines.iter().enumerate() {
            let room = if i == 0 { 200.0 } else { 180.0 };
            assert!(line_width(line, &hand) <= room, "{line}");
        }
    }
}
