//! The leaderboard: order and ranks.

use std::cmp::Ordering;

use sealed_move_store::MemberPoints;

use crate::desk::{Leaderboard, LeaderboardRow};

/// Puts sums in order: most points first, equal points by name whatever its case; equal points share a
/// rank, and the next one is skipped (1, 1, 3).
pub(super) fn ranked(topic: Option<String>, mut sums: Vec<MemberPoints>) -> Leaderboard {
    sums.sort_by(|a, b| {
        b.points
            .total_cmp(&a.points)
            .then_with(|| by_name(&a.name, &b.name))
            .then(a.member_id.cmp(&b.member_id))
    });
    let mut rows: Vec<LeaderboardRow> = Vec::with_capacity(sums.len());
    for sum in sums {
        let rank = match rows.last() {
            Some(above) if above.points == sum.points => above.rank,
            _ => rows.len() + 1,
        };
        rows.push(LeaderboardRow {
            rank,
            name: sum.name,
            points: sum.points,
            solved: sum.solved as usize,
            tried: sum.tried as usize,
            answered: sum.answered as usize,
        });
    }
    Leaderboard { topic, rows }
}

/// Order of names for people: case does not count unless nothing else differs.
pub(super) fn by_name(a: &str, b: &str) -> Ordering {
    a.to_lowercase()
        .cmp(&b.to_lowercase())
        .then_with(|| a.cmp(b))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn sum(member: i64, name: &str, points: f64) -> MemberPoints {
        MemberPoints {
            member_id: sealed_move_store::MemberId::of(member),
            name: name.into(),
            points,
            solved: 1,
            tried: 2,
            first_try: 0,
            answered: 0,
        }
    }

    #[test]
    fn ties_share_a_rank_and_the_next_is_skipped() {
        let board = ranked(
            None,
            vec![
                sum(1, "carla", 5.0),
                sum(2, "Bruno", 7.5),
                sum(3, "Ana", 5.0),
                sum(4, "Dora", 0.0),
                sum(5, "Ana", 5.0),
            ],
        );
        let rows: Vec<_> = board
            .rows
            .iter()
            .map(|r| (r.rank, r.name.as_str()))
            .collect();
        assert_eq!(
            rows,
            [
                (1, "Bruno"),
                (2, "Ana"),
                (2, "Ana"),
                (2, "carla"),
                (5, "Dora")
            ]
        );
    }

    proptest! {
        /// The order in which the store hands sums over changes nothing, and ranks say how many are ahead.
        #[test]
        fn ranks_count_those_ahead(points in prop::collection::vec(0u8..12, 0..30), turn in any::<prop::sample::Index>()) {
            let mut sums: Vec<_> = points
                .iter()
                .enumerate()
                .map(|(n, p)| sum(n as i64, ["Ana", "bo", "Bo", "Ça"][n % 4], f64::from(*p) / 2.0))
                .collect();
            let board = ranked(None, sums.clone());
            for row in &board.rows {
                let ahead = sums.iter().filter(|s| s.points > row.points).count();
                prop_assert_eq!(row.rank, ahead + 1);
            }
            if !sums.is_empty() {
                let by = turn.index(sums.len());
                sums.rotate_left(by);
            }
            prop_assert_eq!(ranked(None, sums), board);
        }
    }
}
