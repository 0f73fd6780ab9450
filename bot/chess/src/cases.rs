//! How many cases the property tests of this floor try.

use proptest::prelude::ProptestConfig;

/// As many as `PROPTEST_CASES` in the environment asks for, else `usual`.
///
/// proptest lets a number set in the source win over the environment; here it is the other way.
pub(crate) fn cases(usual: u32) -> ProptestConfig {
    /// What proptest tries when nobody says otherwise.
    const UNASKED: u32 = 256;
    let mut config = ProptestConfig::default();
    if config.cases == UNASKED {
        config.cases = usual;
    }
    config
}
