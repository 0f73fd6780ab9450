//! How sure a rate is when few have tried.

/// The normal quantile for 95 % two-sided.
const Z: f64 = 1.959_964;

/// The Wilson score interval (E. B. Wilson, 1927) for `hits` out of `of`, at 95 %: lower and upper
/// bound of the rate, between 0 and 1. With nothing counted it is the whole range.
///
/// ```
/// use sealed_move_diagram::chart::wilson;
///
/// let (low, high) = wilson(8, 10);
/// assert!((low - 0.490).abs() < 0.001 && (high - 0.943).abs() < 0.001);
/// ```
pub fn wilson(hits: usize, of: usize) -> (f64, f64) {
    if of == 0 {
        return (0.0, 1.0);
    }
    let n = of as f64;
    let rate = hits.min(of) as f64 / n;
    let z2 = Z * Z;
    let middle = rate + z2 / (2.0 * n);
    let spread = Z * (rate * (1.0 - rate) / n + z2 / (4.0 * n * n)).sqrt();
    let scale = 1.0 + z2 / n;
    (
        ((middle - spread) / scale).clamp(0.0, 1.0),
        ((middle + spread) / scale).clamp(0.0, 1.0),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// R. G. Newcombe, "Two-sided confidence intervals for the single proportion", Statistics in
    /// Medicine 17 (1998), table I, method 3 (from memory).
    #[test]
    fn published_intervals() {
        for (hits, of, low, high) in [
            (81, 263, 0.2553, 0.3662),
            (15, 148, 0.0624, 0.1605),
            (0, 20, 0.0, 0.1611),
            (1, 29, 0.0061, 0.1718),
        ] {
            let got = wilson(hits, of);
            assert!(
                (got.0 - low).abs() < 5e-5 && (got.1 - high).abs() < 5e-5,
                "{hits} of {of}: {got:?}"
            );
        }
    }

    #[test]
    fn the_rate_lies_inside_and_more_tries_narrow_it() {
        for of in 1..60 {
            for hits in 0..=of {
                let (low, high) = wilson(hits, of);
                let rate = hits as f64 / of as f64;
                assert!(low <= rate + 1e-9 && rate <= high + 1e-9);
                let (low2, high2) = wilson(hits * 4, of * 4);
                assert!(high2 - low2 < high - low);
            }
        }
        assert_eq!(wilson(0, 0), (0.0, 1.0));
    }
}
