//! Bytes to text: UTF-8, UTF-16 with its mark, and the Latin alphabet of older files.

use super::LARGEST_FILE;

/// Decodes a file and makes every line end a single line feed.
///
/// UTF-8 is taken as such, with or without its mark; UTF-16 needs the mark; anything else is read as
/// ISO 8859-1 (the PGN standard's own alphabet), with the printable characters that Windows puts in
/// its unused places.
///
/// # Errors
/// Says why the bytes are not text, and what to do.
pub(super) fn decode(bytes: &[u8]) -> Result<String, String> {
    if bytes.len() > LARGEST_FILE {
        return Err(format!(
            "the file has {} MB; the most that is read at once is {} MB, so split it",
            bytes.len() >> 20,
            LARGEST_FILE >> 20
        ));
    }
    let text = match bytes {
        [0xef, 0xbb, 0xbf, rest @ ..] => utf8_or_latin(rest)?,
        [0xff, 0xfe, rest @ ..] => utf16(rest, u16::from_le_bytes)?,
        [0xfe, 0xff, rest @ ..] => utf16(rest, u16::from_be_bytes)?,
        _ => utf8_or_latin(bytes)?,
    };
    Ok(text.replace("\r\n", "\n").replace('\r', "\n"))
}

fn utf8_or_latin(bytes: &[u8]) -> Result<String, String> {
    if bytes.contains(&0) {
        let zeros = bytes.iter().filter(|byte| **byte == 0).count();
        return Err(if zeros * 3 >= bytes.len() && zeros < bytes.len() {
            "the file looks like UTF-16 without its mark; save it as UTF-8".to_owned()
        } else {
            "the file is not text (it holds zero bytes); give a text file in EPD, PGN or FEN"
                .to_owned()
        });
    }
    Ok(match std::str::from_utf8(bytes) {
        Ok(text) => text.to_owned(),
        Err(_) => bytes.iter().map(|byte| latin(*byte)).collect(),
    })
}

fn utf16(bytes: &[u8], join: fn([u8; 2]) -> u16) -> Result<String, String> {
    let broken =
        || "the file begins as UTF-16 but goes on as something else; save it as UTF-8".to_owned();
    if !bytes.len().is_multiple_of(2) {
        return Err(broken());
    }
    let units = bytes.chunks_exact(2).map(|pair| join([pair[0], pair[1]]));
    let text: String = char::decode_utf16(units)
        .collect::<Result<_, _>>()
        .map_err(|_| broken())?;
    if text.contains('\0') {
        return Err(broken());
    }
    Ok(text)
}

/// What Windows files put where ISO 8859-1 has control characters (code page 1252).
const WINDOWS: [char; 32] = [
    '€', '\u{fffd}', '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', '\u{fffd}', 'Ž',
    '\u{fffd}', '\u{fffd}', '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', '\u{fffd}',
    'ž', 'Ÿ',
];

fn latin(byte: u8) -> char {
    match byte {
        0x80..=0x9f => WINDOWS[usize::from(byte - 0x80)],
        _ => char::from(byte),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_the_usual_encodings() {
        assert_eq!(decode(b"a\r\nb\rc\n").as_deref(), Ok("a\nb\nc\n"));
        assert_eq!(decode(b"\xef\xbb\xbfMat\xc3\xa9").as_deref(), Ok("Maté"));
        assert_eq!(
            decode(b"Mat\xe9 \x96 \x93oui\x94").as_deref(),
            Ok("Maté – “oui”")
        );
        assert_eq!(decode(b"\xff\xfeM\0a\0\xe9\0").as_deref(), Ok("Maé"));
        assert_eq!(decode(b"\xfe\xff\0M\0a\0\xe9").as_deref(), Ok("Maé"));
    }

    #[test]
    fn refuses_what_is_no_text_and_says_what_to_do() {
        for (bytes, part) in [
            (vec![0; 1000], "not text"),
            (b"P\0G\0N\0".to_vec(), "UTF-16 without its mark"),
            (b"\xff\xfeM\0a".to_vec(), "save it as UTF-8"),
            (b"\xff\xfe\x00\xd8M\0".to_vec(), "save it as UTF-8"),
            (vec![b' '; LARGEST_FILE + 1], "split it"),
        ] {
            let error = decode(&bytes).expect_err("no text");
            assert!(error.contains(part), "{error}");
        }
    }
}
