//! Leaderboard and summary as CSV: RFC 4180, with a heading line, and safe to open in a spreadsheet.

use csv::{Terminator, WriterBuilder};

use crate::desk::{
    Leaderboard, Summary,
    error::{DeskError, Done},
    refusal::Refusal,
    text,
};

/// Which of the summary's tables; a CSV file holds one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SummaryTable {
    /// A line for each member.
    Members,
    /// A line for each post.
    Posts,
    /// A line for each topic.
    Topics,
}

impl Leaderboard {
    /// The leaderboard as CSV.
    ///
    /// # Errors
    /// Only when memory gives out.
    pub fn csv(&self) -> Done<String> {
        let rows = self.rows.iter().map(|row| {
            vec![
                row.rank.to_string(),
                safe(&row.name),
                text::points(row.points),
                row.solved.to_string(),
                row.tried.to_string(),
                row.answered.to_string(),
            ]
        });
        write(
            &["rank", "name", "points", "solved", "tried", "answered"],
            rows,
        )
    }
}

impl Summary {
    /// One of the summary's tables as CSV.
    ///
    /// # Errors
    /// Only when memory gives out.
    pub fn csv(&self, table: SummaryTable) -> Done<String> {
        match table {
            SummaryTable::Members => write(
                &[
                    "name",
                    "tried",
                    "solved",
                    "first_try",
                    "points",
                    "hints",
                    "answered",
                ],
                self.members.iter().map(|m| {
                    vec![
                        safe(&m.name),
                        m.tried.to_string(),
                        m.solved.to_string(),
                        m.first_try.to_string(),
                        text::points(m.points),
                        m.hints.to_string(),
                        m.answered.to_string(),
                    ]
                }),
            ),
            SummaryTable::Posts => write(
                &[
                    "number",
                    "topic",
                    "stipulation",
                    "tried",
                    "solved",
                    "first_try",
                    "commonest_wrong",
                    "chosen_by",
                    "refutation",
                    "kind",
                ],
                self.posts.iter().map(|p| {
                    let wrong = p.common_wrong.first();
                    vec![
                        p.number.to_string(),
                        safe(p.topic.as_deref().unwrap_or_default()),
                        safe(p.kind.task().unwrap_or_default()),
                        p.tried.to_string(),
                        p.solved.to_string(),
                        p.first_try.to_string(),
                        safe(wrong.map_or("", |w| &w.san)),
                        wrong.map_or_else(String::new, |w| w.count.to_string()),
                        safe(wrong.map_or("", |w| &w.refutation)),
                        p.kind.word().to_owned(),
                    ]
                }),
            ),
            SummaryTable::Topics => write(
                &[
                    "topic",
                    "posts",
                    "tried",
                    "solved",
                    "first_try",
                    "questions",
                    "answered",
                ],
                self.topics.iter().map(|t| {
                    vec![
                        safe(t.name()),
                        t.posts.to_string(),
                        t.tried.to_string(),
                        t.solved.to_string(),
                        t.first_try.to_string(),
                        t.questions.to_string(),
                        t.answered.to_string(),
                    ]
                }),
            ),
        }
    }
}

fn write(heading: &[&str], rows: impl Iterator<Item = Vec<String>>) -> Done<String> {
    let failed = |error: &dyn std::fmt::Display| {
        tracing::error!("a table could not be written: {error}");
        DeskError::BadRequest(Refusal::TableFails)
    };
    let mut writer = WriterBuilder::new()
        .terminator(Terminator::CRLF)
        .from_writer(Vec::new());
    writer.write_record(heading).map_err(|e| failed(&e))?;
    for row in rows {
        writer.write_record(row).map_err(|e| failed(&e))?;
    }
    let bytes = writer.into_inner().map_err(|e| failed(&e))?;
    String::from_utf8(bytes).map_err(|e| failed(&e))
}

/// A text that no spreadsheet takes for a formula: one that begins as a formula might gets an apostrophe in
/// front, which spreadsheets take for "this is text". The stipulations `+` and `=` begin so, and so may a
/// member's name. Common practice.
fn safe(text: &str) -> String {
    let formula = text
        .trim_start_matches([' ', '\u{a0}', '\u{feff}'])
        .starts_with([
            '=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠', '−',
        ]);
    if formula {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::desk::{CommonWrong, Kind, LeaderboardRow, SummaryPost};

    fn board(names: &[&str]) -> Leaderboard {
        Leaderboard {
            topic: None,
            rows: names
                .iter()
                .map(|name| LeaderboardRow {
                    rank: 1,
                    name: (*name).to_owned(),
                    points: 2.5,
                    solved: 1,
                    tried: 2,
                    answered: 0,
                })
                .collect(),
        }
    }

    /// Fields with comma, quote or line break are quoted, quotes doubled, lines end in CRLF (RFC 4180,
    /// section 2).
    #[test]
    fn tables_follow_the_standard() {
        let csv = board(&["Ana", "Silva, Bo", "the \"rook\""])
            .csv()
            .expect("a table");
        assert_eq!(
            csv,
            "rank,name,points,solved,tried,answered\r\n\
             1,Ana,2.5,1,2,0\r\n\
             1,\"Silva, Bo\",2.5,1,2,0\r\n\
             1,\"the \"\"rook\"\"\",2.5,1,2,0\r\n"
        );
    }

    #[test]
    fn no_name_becomes_a_formula() {
        for name in ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", " =1", "＝1"] {
            let csv = board(&[name]).csv().expect("a table");
            let mut reader = csv::Reader::from_reader(csv.as_bytes());
            let row = reader.records().next().expect("a row").expect("a record");
            assert_eq!(&row[1], format!("'{name}"));
        }
        assert_eq!(safe("Ana-Maria"), "Ana-Maria");
        assert_eq!(safe("#2"), "#2");
        assert_eq!(safe("="), "'=");
    }

    #[test]
    fn a_post_has_its_commonest_wrong_move() {
        let summary = Summary {
            posts: vec![SummaryPost {
                number: 7,
                topic: None,
                kind: Kind::Problem {
                    stipulation: "+".into(),
                },
                tried: 3,
                solved: 1,
                first_try: 0,
                common_wrong: vec![CommonWrong {
                    san: "Rd7".into(),
                    count: 2,
                    refutation: "1...Rxd7".into(),
                    why: crate::desk::Said::default(),
                }],
            }],
            ..Summary::default()
        };
        let csv = summary.csv(SummaryTable::Posts).expect("a table");
        assert!(
            csv.ends_with("\r\n7,,'+,3,1,0,Rd7,2,1...Rxd7,problem\r\n"),
            "{csv}"
        );
        let none = summary.csv(SummaryTable::Members).expect("a table");
        assert_eq!(
            none,
            "name,tried,solved,first_try,points,hints,answered\r\n"
        );
    }

    proptest! {
        /// Whatever a name holds, the table reads back as written and no field begins a formula.
        #[test]
        fn any_name_reads_back(name in any::<String>()) {
            let csv = board(&[&name]).csv().expect("a table");
            let mut reader = csv::Reader::from_reader(csv.as_bytes());
            let row = reader.records().next().expect("a row").expect("a record");
            prop_assert_eq!(row.len(), 6);
            prop_assert_eq!(row[1].strip_prefix('\'').filter(|n| *n == name).unwrap_or(&row[1]), name.as_str());
            prop_assert!(!row[1].starts_with(['=', '+', '-', '@']));
        }
    }
}
