//! Which of several equally good defences is played against a member, and which of a coach's own lines.
//!
//! The choice hangs on a number that the caller gives and on the moves that lead here, on nothing
//! else: asked again, it is the same.

use shakmaty::{Move, uci::UciMove};

/// Puts the chosen one of `equal` first and leaves the rest in order; with `choice` 0 all stay.
pub(super) fn lead_with<T>(equal: &mut [T], choice: u64, path: &[Move]) {
    if choice == 0 || equal.len() < 2 {
        return;
    }
    let mut mixed = mix(choice);
    for mv in path {
        for byte in UciMove::from_standard(*mv).to_string().bytes() {
            mixed = mix(mixed ^ u64::from(byte));
        }
    }
    let at = (mixed % equal.len() as u64) as usize;
    equal[..=at].rotate_right(1);
}

/// Which of `ways` is taken, from 0, after `earlier` forks with so many ways each: numbers that follow one
/// another take the ways of the first fork in turn, and those that meet there the ways of the next.
pub(super) fn in_turn(choice: u64, earlier: impl Iterator<Item = usize>, ways: usize) -> usize {
    let step = |ways: usize| u64::try_from(ways).unwrap_or(1).max(1);
    let left = earlier.fold(choice, |left, ways| left / step(ways));
    usize::try_from(left % step(ways)).unwrap_or(0)
}

/// One step of SplitMix64 (Steele, Lea and Flood, 2014; constants from memory): near numbers come out
/// far apart.
fn mix(value: u64) -> u64 {
    let z = value.wrapping_add(0x9e37_79b9_7f4a_7c15);
    let z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    let z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^ (z >> 31)
}

#[cfg(test)]
mod tests {
    use super::*;
    use shakmaty::{Chess, Position};

    #[test]
    fn numbers_in_a_row_take_every_way_equally_often() {
        let mut met = std::collections::BTreeMap::new();
        for choice in 7..19 {
            let first = in_turn(choice, [].into_iter(), 2);
            let second = in_turn(choice, [2].into_iter(), 3);
            *met.entry((first, second)).or_insert(0) += 1;
        }
        assert_eq!(met.len(), 6);
        assert!(met.values().all(|&times| times == 2), "{met:?}");
        assert_eq!(in_turn(5, [].into_iter(), 0), 0);
        assert_eq!(in_turn(0, [2, 3].into_iter(), 4), 0);
    }

    #[test]
    fn the_same_number_chooses_the_same_and_all_are_chosen_by_some() {
        let path = [Chess::default().legal_moves()[0]];
        let led = |choice: u64, path: &[Move]| {
            let mut equal = [1, 2, 3];
            lead_with(&mut equal, choice, path);
            equal
        };
        assert_eq!(led(0, &path), [1, 2, 3]);
        let mut seen = [0; 4];
        for choice in 1..=300 {
            let chosen = led(choice, &path);
            assert_eq!(chosen, led(choice, &path));
            seen[chosen[0]] += 1;
            let mut sorted = chosen;
            sorted.sort_unstable();
            assert_eq!(sorted, [1, 2, 3], "nothing is lost");
            assert!(chosen[1] < chosen[2], "the rest stay in order");
        }
        assert!(seen[1..].iter().all(|&times| times > 60), "{seen:?}");
        assert!((1..50).any(|choice| led(choice, &path) != led(choice, &[])));
    }
}
