//! Bytes to text, line by line: UTF-8, UTF-16 with its mark, and the Latin alphabet of older files.
//!
//! Lines are counted as an editor counts them: LF, CR and CRLF each end one, mixed as they come. What
//! is wrong with a line is noted with its number and costs no other line.

use std::ops::RangeInclusive;

use super::{
    LARGEST_FILE,
    fault::{Byte, Fault, Oddity},
};
use crate::fact::number;

/// A file as text, each line ended by a single line feed.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Decoded {
    /// The text; a character that could not be read stands in it as U+FFFD.
    pub(super) text: String,
    /// The lines that are not plain UTF-8 (or UTF-16, where the file is), in order.
    pub(super) odd: Vec<OddLine>,
}

/// A line of a file that is not in the file's own encoding.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OddLine {
    /// The line, from 1.
    pub line: usize,
    /// What is odd about it.
    pub what: Oddity,
}

impl Decoded {
    /// The odd lines among some of the file's.
    pub(super) fn odd_in(&self, lines: RangeInclusive<usize>) -> &[OddLine] {
        let from = self.odd.partition_point(|odd| odd.line < *lines.start());
        let to = self.odd.partition_point(|odd| odd.line <= *lines.end());
        &self.odd[from..to.max(from)]
    }

    /// What is lost of a line, where something is.
    pub(super) fn lost(&self, line: usize) -> Option<Oddity> {
        let odd = self.odd_in(line..=line).first()?;
        odd.what.loses().then_some(odd.what)
    }
}

/// Decodes a file.
///
/// UTF-8 is taken as such, with or without its mark; UTF-16 needs the mark. A line of another file that
/// is not UTF-8 is read as Windows-1252, of which the PGN standard's own alphabet, ISO 8859-1, is a
/// part. A line with a byte that is text in neither keeps U+FFFD in its place.
///
/// # Errors
/// Says why the bytes as a whole are not text, and what to do.
pub(super) fn decode(bytes: &[u8]) -> Result<Decoded, Fault> {
    if bytes.len() > LARGEST_FILE {
        return Err(Fault::FileOverLimit {
            size: number(bytes.len().div_ceil(1 << 20)),
            most: number(LARGEST_FILE >> 20),
        });
    }
    match bytes {
        [0xff, 0xfe, rest @ ..] => utf16(rest, u16::from_le_bytes),
        [0xfe, 0xff, rest @ ..] => utf16(rest, u16::from_be_bytes),
        _ => by_lines(bytes),
    }
}

/// The mark of Unicode files; files that were joined have it in their middle too.
const MARK: &[u8] = b"\xef\xbb\xbf";

fn by_lines(bytes: &[u8]) -> Result<Decoded, Fault> {
    let zeros = bytes.iter().filter(|byte| **byte == 0).count();
    if zeros > 0 && zeros * 3 >= bytes.len() {
        return Err(match zeros < bytes.len() {
            true => Fault::FileLacksMark,
            false => Fault::FileIsNoText,
        });
    }
    let mut out = Decoded {
        text: String::with_capacity(bytes.len()),
        odd: Vec::new(),
    };
    let mut rest = bytes;
    let mut line = 1;
    loop {
        let end = rest
            .iter()
            .position(|byte| matches!(byte, b'\n' | b'\r'))
            .unwrap_or(rest.len());
        let content = rest[..end].strip_prefix(MARK).unwrap_or(&rest[..end]);
        if let Some(what) = take_line(content, &mut out.text) {
            out.odd.push(OddLine { line, what });
        }
        rest = match &rest[end..] {
            [] => return Ok(out),
            [b'\r', b'\n', after @ ..] | [_, after @ ..] => after,
        };
        out.text.push('\n');
        line += 1;
    }
}

/// Reads one line to the end of `text`; what is odd about it.
fn take_line(content: &[u8], text: &mut String) -> Option<Oddity> {
    let lost = |at: usize| {
        let before = number(at);
        match content[at] {
            0 => Oddity::NulByte { before },
            byte => Oddity::StrangeByte {
                byte: Byte(byte),
                before,
            },
        }
    };
    if let Ok(utf8) = std::str::from_utf8(content) {
        let nul = utf8.bytes().position(|byte| byte == 0);
        match nul {
            None => text.push_str(utf8),
            Some(_) => text.extend(utf8.chars().map(|c| if c == '\0' { LOST } else { c })),
        }
        return nul.map(lost);
    }
    let bad = content
        .iter()
        .position(|byte| latin(*byte).is_none() || *byte == 0);
    text.extend(
        content
            .iter()
            .map(|byte| latin(*byte).filter(|c| *c != '\0').unwrap_or(LOST)),
    );
    Some(bad.map_or(Oddity::ReadAsWindows, lost))
}

/// What stands for a character that could not be read.
const LOST: char = char::REPLACEMENT_CHARACTER;

fn utf16(bytes: &[u8], join: fn([u8; 2]) -> u16) -> Result<Decoded, Fault> {
    let units = bytes.chunks_exact(2);
    let half = !units.remainder().is_empty();
    let units = units.map(|pair| join([pair[0], pair[1]]));
    let mut out = Decoded {
        text: String::with_capacity(bytes.len()),
        odd: Vec::new(),
    };
    let (mut line, mut broken) = (1, usize::from(half));
    let mut after_return = false;
    for unit in char::decode_utf16(units) {
        let c = match unit {
            Ok('\0') | Err(_) => {
                broken += 1;
                if out.odd.last().is_none_or(|odd| odd.line != line) {
                    out.odd.push(OddLine {
                        line,
                        what: Oddity::BrokenCharacter,
                    });
                }
                LOST
            }
            Ok(c) => c,
        };
        match c {
            '\n' if after_return => {}
            '\n' | '\r' => {
                out.text.push('\n');
                line += 1;
            }
            '\u{feff}' if out.text.is_empty() || out.text.ends_with('\n') => {}
            _ => out.text.push(c),
        }
        after_return = c == '\r';
    }
    if broken * 6 > bytes.len() {
        return Err(Fault::FileChangesEncoding);
    }
    if half && out.odd.last().is_none_or(|odd| odd.line != line) {
        out.odd.push(OddLine {
            line,
            what: Oddity::BrokenCharacter,
        });
    }
    Ok(out)
}

/// Windows' code page 1252: ISO 8859-1 with printable characters in its unused places, five of which
/// are unused there too. Source: the Unicode Consortium's mapping table CP1252.TXT.
fn latin(byte: u8) -> Option<char> {
    const WINDOWS: [char; 32] = [
        '€', '\0', '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', '\0', 'Ž', '\0', '\0',
        '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', '\0', 'ž', 'Ÿ',
    ];
    match byte {
        0x80..=0x9f => Some(WINDOWS[usize::from(byte - 0x80)]).filter(|c| *c != '\0'),
        _ => Some(char::from(byte)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn text(bytes: &[u8]) -> String {
        decode(bytes).expect("text").text
    }

    fn odd(bytes: &[u8]) -> Vec<(usize, Oddity)> {
        let decoded = decode(bytes).expect("text");
        decoded.odd.iter().map(|odd| (odd.line, odd.what)).collect()
    }

    #[test]
    fn reads_the_usual_encodings() {
        assert_eq!(text(b"a\r\nb\rc\n"), "a\nb\nc\n");
        assert_eq!(text(b"\xef\xbb\xbfMat\xc3\xa9"), "Maté");
        assert_eq!(text(b"Mat\xe9 \x96 \x93oui\x94"), "Maté – “oui”");
        assert_eq!(text(b"\xff\xfeM\0a\0\xe9\0"), "Maé");
        assert_eq!(text(b"\xfe\xff\0M\0a\0\xe9"), "Maé");
        assert_eq!(text(b"\xff\xfea\0\r\0\n\0b\0\r\0c\0\n\0d\0"), "a\nb\nc\nd");
    }

    /// Two files joined: the second's mark stands in the middle.
    #[test]
    fn a_mark_begins_no_line() {
        assert_eq!(text(b"\xef\xbb\xbfa\n\xef\xbb\xbfb"), "a\nb");
    }

    #[test]
    fn each_line_is_read_by_itself() {
        // One line of an older program among others in UTF-8, and every kind of line end.
        let file = b"Mat\xc3\xa9\r\nMat\xe9\rMat\xc3\xa9\n\nx\x81y\n";
        assert_eq!(text(file), "Maté\nMaté\nMaté\n\nx\u{fffd}y\n");
        assert_eq!(
            odd(file),
            [
                (2, Oddity::ReadAsWindows),
                (
                    5,
                    Oddity::StrangeByte {
                        byte: Byte(0x81),
                        before: 1
                    }
                )
            ]
        );
    }

    #[test]
    fn a_nul_costs_its_own_line() {
        let file = b"one good line\r\nab\0c\r\nanother good line\r\n\xe9\0 and one of both\n";
        assert_eq!(
            text(file),
            "one good line\nab\u{fffd}c\nanother good line\né\u{fffd} and one of both\n"
        );
        assert_eq!(
            odd(file),
            [
                (2, Oddity::NulByte { before: 2 }),
                (4, Oddity::NulByte { before: 1 })
            ]
        );
    }

    #[test]
    fn half_a_character_of_utf16_costs_its_own_line() {
        let mut file = b"\xff\xfe".to_vec();
        for unit in "good\nbad ".encode_utf16().chain([0xd800]) {
            file.extend(unit.to_le_bytes());
        }
        for unit in "\nand good again".encode_utf16() {
            file.extend(unit.to_le_bytes());
        }
        assert_eq!(text(&file), "good\nbad \u{fffd}\nand good again");
        assert_eq!(odd(&file), [(2, Oddity::BrokenCharacter)]);
        file.push(b'x');
        assert_eq!(
            odd(&file),
            [(2, Oddity::BrokenCharacter), (3, Oddity::BrokenCharacter)]
        );
    }

    #[test]
    fn refuses_what_is_no_text() {
        for (bytes, problem) in [
            (vec![0; 1000], Fault::FileIsNoText),
            (b"P\0G\0N\0".to_vec(), Fault::FileLacksMark),
            (b"\xff\xfeM\0a".to_vec(), Fault::FileChangesEncoding),
            (b"\xff\xfe\x00\xd8M\0".to_vec(), Fault::FileChangesEncoding),
            (
                vec![b' '; LARGEST_FILE + 1],
                Fault::FileOverLimit { size: 17, most: 16 },
            ),
        ] {
            assert_eq!(decode(&bytes), Err(problem));
        }
    }
}
