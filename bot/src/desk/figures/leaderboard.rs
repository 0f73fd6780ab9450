//! The leaderboard: order and ranks, and its words.

use std::cmp::Ordering;

use sealed_move_store::MemberPoints;

use crate::desk::{Leaderboard, LeaderboardRow, text};

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

impl LeaderboardRow {
    /// "2 of 3 solved", "1 question answered", or both with a comma.
    fn done(&self) -> String {
        let solved = format!("{} of {} solved", self.solved, self.tried);
        with_answered(solved, self.tried, self.answered)
    }
}

/// What somebody did at problems, and how many questions they answered, as far as they did either.
pub(super) fn with_answered(solved: String, tried: usize, answered: usize) -> String {
    let questions = match answered {
        0 => return solved,
        1 => "1 question answered".to_owned(),
        answered => format!("{answered} questions answered"),
    };
    match tried {
        0 => questions,
        _ => format!("{solved}, {questions}"),
    }
}

/// Order of names for people: case does not count unless nothing else differs.
pub(super) fn by_name(a: &str, b: &str) -> Ordering {
    a.to_lowercase()
        .cmp(&b.to_lowercase())
        .then_with(|| a.cmp(b))
}

impl Leaderboard {
    /// The leaderboard as lines of plain text, for a terminal or a chat. `period` is its span in words,
    /// as from [`crate::desk::Period::in_words`].
    pub fn text(&self, period: &str) -> String {
        let mut out = match &self.topic {
            Some(topic) => format!("Leaderboard, {topic}, {period}\n"),
            None => format!("Leaderboard, {period}\n"),
        };
        if self.rows.is_empty() {
            out.push_str("No points yet: they count when a post is closed.\n");
        }
        for row in &self.rows {
            let points = if row.points == 1.0 { "point" } else { "points" };
            out.push_str(&format!(
                "{}. {}: {} {points}, {}\n",
                row.rank,
                row.name,
                text::points(row.points),
                row.done(),
            ));
        }
        out
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn sum(member_id: i64, name: &str, points: f64) -> MemberPoints {
        MemberPoints {
            member_id,
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

    #[test]
    fn the_text_reads_as_a_list() {
        let board = ranked(
            Some("Back rank".into()),
            vec![sum(1, "Ana", 7.5), sum(2, "Bo", 1.0)],
        );
        assert_eq!(
            board.text("2 to 8 March 2026"),
            "Leaderboard, Back rank, 2 to 8 March 2026\n\
             1. Ana: 7.5 points, 1 of 2 solved\n\
             2. Bo: 1 point, 1 of 2 solved\n"
        );
        assert!(
            Leaderboard::default()
                .text("today")
                .contains("No points yet")
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
