//! Charts for the summary: drawn for a phone's width, in light and dark, every number
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

use super::text::{Alt, Month, Text, Tongue, cut, fits, number};
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
    /// Day of the month.
    pub day: u32,
    /// Its week; days of one week follow each other.
    pub week: Week,
    /// Members who took part.
    pub tried: usize,
    /// Of those, members who solved it.
    pub solved: usize,
}

/// A week, from Monday to Sunday: day of the month and month, 1 to 12, of both.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Week {
    /// Monday.
    pub from: (u32, u32),
    /// Sunday.
    pub to: (u32, u32),
}

impl Week {
    /// Such as "17–23 Nov".
    fn text(self) -> Text {
        let [(from, first), (to, last)] = [self.from, self.to];
        Text::ChartWeek {
            from,
            first: (first != last).then_some(Month { month: first }),
            to,
            last: Month { month: last },
        }
    }
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
    WrongMoves {
        position: Box<Chess>,
        bottom: Color,
        moves: Vec<WrongMove>,
    },
}

/// A chart ready to be drawn.
#[derive(Clone, Debug)]
pub struct Chart {
    title: Text,
    figures: Figures,
}

/// Solve rate by position, with the interval that so few members leave open (Wilson, 95 %).
pub fn solve_rates(title: Text, rows: Vec<SolveRate>) -> Chart {
    Chart::new(title, Figures::SolveRates(rows))
}

/// Who took part and who solved, by day, with the mean of each week.
pub fn participation(title: Text, days: Vec<Day>) -> Chart {
    Chart::new(title, Figures::Participation(days))
}

/// Topics by mastery, in the order given: that of the list and the table beside the chart.
pub fn mastery(title: Text, topics: Vec<Mastery>) -> Chart {
    Chart::new(title, Figures::Mastery(topics))
}

/// The commonest wrong first moves of one position, on its board; at most four are shown.
pub fn wrong_moves(
    title: Text,
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
    fn new(title: Text, figures: Figures) -> Self {
        Self { title, figures }
    }

    /// The chart as standalone SVG, 720 units wide, its words in this language.
    pub fn svg(&self, theme: Theme, tongue: &Tongue) -> String {
        let title = tongue.say(&self.title);
        let canvas = match &self.figures {
            Figures::SolveRates(rows) => rows::solve_rates(&title, rows, theme, tongue),
            Figures::Mastery(topics) => rows::mastery(&title, topics, theme, tongue),
            Figures::Participation(days) => days::participation(&title, days, theme, tongue),
            Figures::WrongMoves {
                position,
                bottom,
                moves,
            } => board::wrong_moves(&title, position, *bottom, moves, theme, tongue),
        };
        canvas.finish(&self.alt(tongue))
    }

    /// The chart as PNG.
    ///
    /// # Errors
    /// When the renderer refuses.
    pub fn png(&self, theme: Theme, tongue: &Tongue) -> Result<Picture, DiagramError> {
        Ok(Picture {
            bytes: raster::png(&self.svg(theme, tongue))?,
            kind: PictureKind::Png,
            alt: Alt::Said(self.alt(tongue)),
        })
    }

    /// Every figure of the chart in words; where that is more than a chat takes, those that stand first,
    /// each of them whole, and how many more there are.
    pub fn alt(&self, tongue: &Tongue) -> String {
        let say = |text: &Text| tongue.say(text);
        let lines: Vec<String> = match &self.figures {
            Figures::SolveRates(rows) => rows.iter().map(|row| say(&rows::rate(row))).collect(),
            Figures::Mastery(topics) => topics.iter().map(|row| say(&rows::topic(row))).collect(),
            Figures::Participation(days) => days::words(days, tongue),
            Figures::WrongMoves { moves, .. } => {
                moves.iter().map(|row| say(&board::wrong(row))).collect()
            }
        };
        let between = match self.figures {
            Figures::Participation(_) => ". ",
            _ => "; ",
        };
        let title = say(&self.title);
        let board = match &self.figures {
            Figures::WrongMoves { position, .. } => {
                let facts = Alt::Facts(super::board::placement(position));
                format!(" {}", facts.in_words(tongue))
            }
            _ => String::new(),
        };
        if lines.is_empty() {
            let nothing = say(&Text::AltChartNothing { title });
            return cut(format!("{nothing}{board}"));
        }
        let with = |first: usize| {
            let more = match lines.len() - first {
                0 => String::new(),
                left => {
                    let more = number(left);
                    format!("{between}{}", say(&Text::AltChartMore { more }))
                }
            };
            format!("{title}. {}{more}.{board}", lines[..first].join(between))
        };
        let fitting = (1..=lines.len()).rev().map(with).find(|alt| fits(alt));
        fitting.unwrap_or_else(|| cut(with(1)))
    }
}

#[cfg(test)]
mod tests;
