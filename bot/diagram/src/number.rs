//! Numbers as they stand in SVG.

/// A number with at most two decimals, as short as it can be written.
pub(super) fn num(x: f32) -> String {
    let rounded = (x * 100.0).round() / 100.0;
    if rounded == 0.0 {
        return "0".into();
    }
    format!("{rounded}")
}
