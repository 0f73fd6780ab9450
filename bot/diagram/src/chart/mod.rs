//! Charts for leaderboard and summary: drawn for a phone's width, in light and dark, every number
//! also in words.
//!
//! Each function here takes plain figures and gives a [`Chart`]; [`frame`] is the one layer they all
//! draw on (page, title, scale, key), and each chart has a file of its own. Nothing here knows where
//! the figures come from.

mod board;
mod days;
mod frame;
mod interval;
mod rows;

use shakmaty::{Chess, Color, Square};

use super::board::{LONGEST, cut};
use super::{DiagramError, Picture, PictureKind, raster};

pub use frame::Theme;
pub use interval::wilson;

/// How a position went: its label, and how many of those who tried it solved it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SolveRate {
    /// Such as "No. 12 · Back rank".
    pub label: String,
    /// Members who tried.
    pub tried: usize,
    /// Of those, members who solved it.
    pub solved: usize,
}

/// One day on which the group met.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Day {
    /// Short name of the day, such as "Mo" or "24".
    pub label: String,
    /// Name of its week, such as "17–23 Nov"; days of one week follow each other.
    pub week: String,
    /// Members who took part.
    pub tried: usize,
    /// Of those, members who solved it.
    pub solved: usize,
}

/// How a topic stands, counted in replies of members to posts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mastery {
    /// The topic.
    pub topic: String,
    /// Posts tried, over all members.
    pub tried: usize,
    /// Of those, solved.
    pub solved: usize,
    /// Of those, solved at the first try.
    pub first_try: usize,
}

/// One line of the leaderboard.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    /// Rank; equal points share one.
    pub rank: usize,
    /// The member's name.
    pub name: String,
    /// Points.
    pub points: f64,
    /// Posts solved.
    pub solved: usize,
    /// Posts tried.
    pub tried: usize,
}

/// A wrong first move that came up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WrongMove {
    /// From.
    pub from: Square,
    /// To.
    pub to: Square,
    /// SAN, English letters.
    pub san: String,
    /// How many members chose it.
    pub count: usize,
}

#[derive(Clone, Debug)]
enum Figures {
    SolveRates(Vec<SolveRate>),
    Participation(Vec<Day>),
    Mastery(Vec<Mastery>),
    Leaderboard(Vec<Standing>),
    WrongMoves {
        position: Box<Chess>,
        bottom: Color,
        moves: Vec<WrongMove>,
    },
}

/// A chart ready to be drawn.
#[derive(Clone, Debug)]
pub struct Chart {
    title: String,
    figures: Figures,
}

/// Solve rate by position, with the interval that so few members leave open (Wilson, 95 %).
pub fn solve_rates(title: &str, rows: Vec<SolveRate>) -> Chart {
    Chart::new(title, Figures::SolveRates(rows))
}

/// Who took part and who solved, by day, with the mean of each week.
pub fn participation(title: &str, days: Vec<Day>) -> Chart {
    Chart::new(title, Figures::Participation(days))
}

/// Topics by mastery, in the order given: that of the list and the table beside the chart.
pub fn mastery(title: &str, topics: Vec<Mastery>) -> Chart {
    Chart::new(title, Figures::Mastery(topics))
}

/// The leaderboard, in the order given.
pub fn leaderboard(title: &str, rows: Vec<Standing>) -> Chart {
    Chart::new(title, Figures::Leaderboard(rows))
}

/// The commonest wrong first moves of one position, on its board; at most four are shown.
pub fn wrong_moves(
    title: &str,
    position: Chess,
    bottom: Color,
    mut moves: Vec<WrongMove>,
) -> Chart {
    moves.sort_by_key(|m| std::cmp::Reverse(m.count));
    moves.truncate(board::MOST);
    Chart::new(
        title,
        Figures::WrongMoves {
            position: Box::new(position),
            bottom,
            moves,
        },
    )
}

impl Chart {
    fn new(title: &str, figures: Figures) -> Self {
        Self {
            title: title.into(),
            figures,
        }
    }

    /// The chart as standalone SVG, 720 units wide.
    pub fn svg(&self, theme: Theme) -> String {
        let canvas = match &self.figures {
            Figures::SolveRates(rows) => rows::solve_rates(&self.title, rows, theme),
            Figures::Mastery(topics) => rows::mastery(&self.title, topics, theme),
            Figures::Leaderboard(standings) => rows::leaderboard(&self.title, standings, theme),
            Figures::Participation(days) => days::participation(&self.title, days, theme),
            Figures::WrongMoves {
                position,
                bottom,
                moves,
            } => board::wrong_moves(&self.title, position, *bottom, moves, theme),
        };
        canvas.finish(&self.alt())
    }

    /// The chart as PNG.
    ///
    /// # Errors
    /// When the renderer refuses.
    pub fn png(&self, theme: Theme) -> Result<Picture, DiagramError> {
        Ok(Picture {
            bytes: raster::png(&self.svg(theme))?,
            kind: PictureKind::Png,
            alt: self.alt(),
        })
    }

    /// Every figure of the chart in words; where that is more than a chat takes, those that stand first,
    /// each of them whole, and how many more there are.
    pub fn alt(&self) -> String {
        let lines: Vec<String> = match &self.figures {
            Figures::SolveRates(rows) => rows.iter().map(rows::solve_rate_words).collect(),
            Figures::Mastery(topics) => topics.iter().map(rows::mastery_words).collect(),
            Figures::Leaderboard(standings) => standings.iter().map(rows::standing_words).collect(),
            Figures::Participation(days) => days::words(days),
            Figures::WrongMoves { moves, .. } => moves.iter().map(board::words).collect(),
        };
        let between = match self.figures {
            Figures::Participation(_) => ". ",
            _ => "; ",
        };
        let title = self.title.trim_end_matches('.');
        let board = match &self.figures {
            Figures::WrongMoves { position, .. } => format!(" {}", super::board::men(position)),
            _ => String::new(),
        };
        if lines.is_empty() {
            return cut(format!("{title}: nothing yet.{board}"));
        }
        let with = |first: usize| {
            let more = match lines.len() - first {
                0 => String::new(),
                left => format!("{between}{left} more in the table"),
            };
            format!("{title}. {}{more}.{board}", lines[..first].join(between))
        };
        let fitting = (1..=lines.len())
            .rev()
            .map(with)
            .find(|alt| alt.chars().count() <= LONGEST);
        fitting.unwrap_or_else(|| cut(with(1)))
    }
}

/// "1 member", "3 members".
fn members(count: usize) -> String {
    match count {
        1 => "1 member".into(),
        n => format!("{n} members"),
    }
}

#[cfg(test)]
mod tests;
