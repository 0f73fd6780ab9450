//! Pictures that people get to see, kept beside the snapshots and compared pixel by pixel.
//!
//! A drawing may differ by the rounding of soft edges and no more. When a change is meant, write them
//! anew with `INSTA_UPDATE=always`, as the texts, and look at each.

use std::{io::Cursor, path::PathBuf};

use crate::workspace;

/// The mean difference a picture may have, in steps of a channel.
const MEAN: f64 = 0.6;
/// A pixel this far off in any channel is plainly different, and so many of a thousand may be.
const FAR: u8 = 48;
const FAR_OF_1000: f64 = 1.5;

/// A picture's pixels.
struct Pixels {
    width: u32,
    height: u32,
    rgb: Vec<[u8; 3]>,
}

/// Whether snapshots are being written anew.
pub fn rewriting() -> bool {
    std::env::var("INSTA_UPDATE").is_ok_and(|update| update == "always")
}

fn path(name: &str) -> PathBuf {
    workspace().join(format!("tests/tests/snapshots/{name}.png"))
}

fn decode(bytes: &[u8]) -> Result<Pixels, String> {
    let mut decoder = png::Decoder::new(Cursor::new(bytes));
    decoder.set_transformations(png::Transformations::normalize_to_color8());
    let mut reader = decoder.read_info().map_err(|e| e.to_string())?;
    let size = reader.output_buffer_size().ok_or("too large a picture")?;
    let mut raw = vec![0; size];
    let frame = reader.next_frame(&mut raw).map_err(|e| e.to_string())?;
    raw.truncate(frame.buffer_size());
    let samples = frame.color_type.samples();
    let rgb = raw
        .chunks_exact(samples)
        .map(|p| match samples {
            1 | 2 => [p[0]; 3],
            _ => [p[0], p[1], p[2]],
        })
        .collect();
    Ok(Pixels {
        width: frame.width,
        height: frame.height,
        rgb,
    })
}

/// What tells two pictures apart, if anything does.
fn difference(got: &Pixels, wanted: &Pixels) -> Option<String> {
    if (got.width, got.height) != (wanted.width, wanted.height) {
        return Some(format!(
            "is {} × {}, was {} × {}",
            got.width, got.height, wanted.width, wanted.height
        ));
    }
    let (mut sum, mut far) = (0u64, 0u64);
    for (a, b) in got.rgb.iter().zip(&wanted.rgb) {
        let off = [0, 1, 2].map(|i| a[i].abs_diff(b[i]));
        sum += off.iter().map(|&d| u64::from(d)).sum::<u64>();
        far += u64::from(off.iter().any(|&d| d > FAR));
    }
    let pixels = got.rgb.len() as f64;
    let (mean, far) = (sum as f64 / (3.0 * pixels), 1000.0 * far as f64 / pixels);
    (mean > MEAN || far > FAR_OF_1000).then(|| {
        format!("differs by {mean:.2} in the mean, and plainly in {far:.2} of 1000 pixels")
    })
}

/// Holds a PNG against the kept picture `name`, or keeps it when snapshots are written anew.
///
/// # Panics
/// When it is no PNG, none is kept, or the two differ.
pub fn hold(name: &str, bytes: &[u8]) {
    let got = decode(bytes).unwrap_or_else(|error| panic!("{name} is no PNG: {error}"));
    let path = path(name);
    if rewriting() {
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        std::fs::write(&path, bytes).expect("the picture can be written");
        return;
    }
    let kept = std::fs::read(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    let kept = decode(&kept).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    if let Some(what) = difference(&got, &kept) {
        let new = std::env::temp_dir().join(format!("sealed-move-{name}.png"));
        std::fs::write(&new, bytes).expect("the temporary folder can be written");
        panic!("{name} {what}; the new one is {}", new.display());
    }
}

/// As [`hold`], for a picture with the days of the test on it: kept for looking at, and compared by its
/// size.
///
/// # Panics
/// When it is no PNG, none is kept, or it has another size.
pub fn hold_size(name: &str, bytes: &[u8]) {
    let got = decode(bytes).unwrap_or_else(|error| panic!("{name} is no PNG: {error}"));
    let path = path(name);
    let kept = std::fs::read(&path)
        .ok()
        .and_then(|kept| decode(&kept).ok());
    match kept {
        Some(kept) if (kept.width, kept.height) == (got.width, got.height) => {}
        _ if rewriting() => std::fs::write(&path, bytes).expect("the picture can be written"),
        _ => panic!("{name} has another size than {}", path.display()),
    }
}

/// Whether a PNG shows the same as one of the kept pictures.
///
/// # Panics
/// When one of them is not kept.
pub fn is_one_of(bytes: &[u8], names: &[&str]) -> bool {
    let Ok(got) = decode(bytes) else { return false };
    names.iter().any(|name| {
        let path = path(name);
        let kept =
            std::fs::read(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        decode(&kept).is_ok_and(|kept| difference(&got, &kept).is_none())
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(width: u32, rgb: Vec<[u8; 3]>) -> Pixels {
        Pixels {
            width,
            height: 1,
            rgb,
        }
    }

    #[test]
    fn rounding_passes_and_a_moved_man_does_not() {
        let white = || vec![[255; 3]; 1000];
        let mut soft = white();
        soft[3] = [250, 251, 252];
        assert_eq!(difference(&of(1000, soft), &of(1000, white())), None);
        let mut moved = white();
        moved[10..14].fill([0; 3]);
        assert!(difference(&of(1000, moved), &of(1000, white())).is_some());
        assert!(difference(&of(10, vec![[0; 3]; 10]), &of(1000, white())).is_some());
    }
}
