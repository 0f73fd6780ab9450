//! `/coach settings`: looks at the group's settings and changes them; and how settings are read and
//! written in words.

use chrono::Weekday;
use chrono_tz::Tz;

use super::{Answer, Ctx, for_coach, piece_letters::PieceLetters, said, set_up::RepliesAre};
use crate::{
    chat::{
        common::text::LanguageName,
        discord::{
            fit,
            letter::Letter,
            text::{And, Day, Days, Decimal, Group, OpenFor, Plain},
        },
    },
    desk::{
        Defences, DeskError, Paid, Scale, Settings, Style, TimeOfDay, TimesOfDay, Weekdays, price,
    },
    words::{Words, english},
};

/// Whether members meet the same defences.
#[derive(Clone, Copy, Debug, poise::ChoiceParameter)]
#[allow(missing_docs)]
pub enum Met {
    #[name = "same"]
    Same,
    #[name = "differ"]
    Differ,
}

impl From<Met> for Defences {
    fn from(met: Met) -> Self {
        match met {
            Met::Same => Self::Same,
            Met::Differ => Self::Differ,
        }
    }
}

/// Scales of points.
#[derive(Clone, Copy, Debug, poise::ChoiceParameter)]
#[allow(missing_docs)]
pub enum Counted {
    #[name = "club"]
    Club,
    #[name = "tournament"]
    Tournament,
}

impl From<Counted> for Scale {
    fn from(counted: Counted) -> Self {
        match counted {
            Counted::Club => Self::Club,
            Counted::Tournament => Self::Tournament,
        }
    }
}

/// Looks of the board.
#[derive(Clone, Copy, Debug, poise::ChoiceParameter)]
#[allow(missing_docs)]
pub enum Look {
    #[name = "print"]
    Print,
    #[name = "light"]
    Light,
    #[name = "dark"]
    Dark,
    #[name = "contrast"]
    Contrast,
}

impl From<Look> for Style {
    fn from(look: Look) -> Self {
        match look {
            Look::Print => Self::Print,
            Look::Light => Self::Light,
            Look::Dark => Self::Dark,
            Look::Contrast => Self::Contrast,
        }
    }
}

/// Look at the group's settings, or change them
#[poise::command(slash_command)]
#[allow(clippy::too_many_arguments)]
pub async fn settings(
    ctx: Ctx<'_>,
    #[autocomplete = "super::set_up::choose_zone"] zone: Option<String>,
    time: Option<String>,
    days: Option<String>,
    #[rename = "open-for"] open_for: Option<String>,
    replies: Option<RepliesAre>,
    name: Option<String>,
    language: Option<PieceLetters>,
    look: Option<Look>,
    points: Option<Counted>,
    #[rename = "wrong-cost"] wrong_cost: Option<f64>,
    #[rename = "hint-cost"] hint_cost: Option<f64>,
    defences: Option<Met>,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let before = house.desk.settings(&place).await?;
        let mut wanted = before.clone();
        if let Some(text) = &zone {
            wanted.zone = self::zone(text)?;
        }
        change(
            words,
            &mut wanted,
            time.as_deref(),
            days.as_deref(),
            open_for.as_deref(),
        )?;
        if let Some(replies) = replies {
            wanted.mode = replies.into();
        }
        if let Some(name) = name {
            wanted.name = name;
        }
        if let Some(language) = language {
            wanted.language = language.0;
        }
        if let Some(look) = look {
            wanted.style = look.into();
        }
        if let Some(met) = defences {
            wanted.defences = met.into();
        }
        if let Some(points) = points {
            wanted.points = points.into();
        }
        if let Some(points) = wrong_cost {
            wanted.wrong_cost = price(Paid::Wrong, points)?;
        }
        if let Some(points) = hint_cost {
            wanted.hint_cost = price(Paid::Hint, points)?;
        }
        let head = if wanted == before {
            words.say(&Group::SettingsAre)
        } else {
            house
                .desk
                .coach()
                .change_settings(&place, &coach, wanted.clone())
                .await?;
            words.say(&Group::SettingsChanged)
        };
        Ok(Letter::text(format!(
            "{head}\n**{}**\n{}",
            fit::plain(&wanted.name),
            in_words(words, &wanted)
        )))
    })
    .await
}

/// Reads a zone's name.
pub fn zone(text: &str) -> Answer<Tz> {
    let wanted = text.trim().replace(' ', "_");
    match chrono_tz::TZ_VARIANTS
        .iter()
        .find(|zone| zone.name().eq_ignore_ascii_case(&wanted))
    {
        Some(zone) => Ok(*zone),
        None => said(Group::NoZone {
            written: Plain::of(&fit::short(text, 60)),
        }),
    }
}

/// Changes what was given.
pub fn change(
    words: &Words,
    settings: &mut Settings,
    time: Option<&str>,
    days: Option<&str>,
    open_for: Option<&str>,
) -> Answer<()> {
    if let Some(text) = time {
        settings.post_times = times(text)?;
    }
    if let Some(text) = days {
        settings.days = self::days(words, text)?;
    }
    if let Some(text) = open_for {
        settings.open_minutes = minutes(text)?;
    }
    Ok(())
}

/// Reads times of a day: `18:00`, `9, 18:30`, `9:00 18:00`.
fn times(text: &str) -> Answer<TimesOfDay> {
    let times = text
        .split(|c: char| matches!(c, ',' | ';' | '+' | '&') || c.is_whitespace())
        .filter(|word| !word.is_empty())
        .map(time);
    let times = TimesOfDay::of(times.collect::<Answer<Vec<_>>>()?);
    Ok(times.map_err(DeskError::from)?)
}

/// Reads a time of day: `18:00`, `7.30`, `9`.
fn time(text: &str) -> Answer<TimeOfDay> {
    let mut parts = text.trim().splitn(2, [':', '.', 'h']);
    let hour = parts.next().and_then(|hour| hour.trim().parse().ok());
    let minute = match parts.next().map(str::trim) {
        None | Some("") => Some(0),
        Some(minute) => minute.parse().ok(),
    };
    let time = hour
        .zip(minute)
        .and_then(|(hour, minute)| TimeOfDay::checked(hour, minute));
    match time {
        Some(time) => Ok(time),
        None => said(Group::NoTimeOfDay {
            written: Plain::of(&fit::short(text, 40)),
        }),
    }
}

/// The fewest letters that a day is known by.
const SHORTEST_DAY: usize = 2;

/// Reads days: `mon-fri`, `tue,thu`, `every day`; in the reader's language, or in English.
fn days(words: &Words, text: &str) -> Answer<Weekdays> {
    let text = text.to_lowercase();
    let day = |word: &str| {
        let word = word.trim().trim_end_matches('.');
        if word.chars().count() < SHORTEST_DAY {
            return None;
        }
        let known_by = |words: &Words, least: usize| {
            Weekdays::every_day().iter().find(|day| {
                let name = words.say(&Day::from(*day)).to_lowercase();
                let start: String = name.chars().take(least).collect();
                name.starts_with(word) || word.starts_with(&start)
            })
        };
        known_by(words, usize::MAX).or_else(|| known_by(english(), 3))
    };
    let every = words.say(&Days::DaysEvery).to_lowercase();
    if text.trim() == every || matches!(text.trim(), "every day" | "daily" | "all") {
        return Ok(Weekdays::every_day());
    }
    let mut wanted = Vec::new();
    for part in text
        .split([',', ' ', ';', '+', '&'])
        .filter(|part| !part.trim().is_empty())
    {
        let ends: Vec<Option<Weekday>> = part.split(['-', '–']).map(day).collect();
        match ends.as_slice() {
            [Some(one)] => wanted.push(*one),
            [Some(from), Some(to)] => {
                let run = std::iter::successors(Some(*from), |day| Some(day.succ()));
                wanted.extend(run.take_while(|day| day != to));
                wanted.push(*to);
            }
            _ => {
                return said(Group::NoDays {
                    written: Plain::of(&fit::short(&text, 60)),
                });
            }
        }
    }
    Ok(wanted.into_iter().collect())
}

/// Reads how long answers are taken: `23h`, `90m`, `2d`.
fn minutes(text: &str) -> Answer<u32> {
    let text = text.trim().to_lowercase();
    let split = text
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(text.len());
    let unit = match text[split..].trim() {
        "m" | "min" | "minutes" => 1,
        "" | "h" | "hours" => 60,
        "d" | "days" => 24 * 60,
        _ => 0,
    };
    match text[..split]
        .parse::<u32>()
        .ok()
        .and_then(|n| n.checked_mul(unit))
    {
        Some(minutes @ 1..=44_640) => Ok(minutes),
        _ => said(Group::NoSpan {
            written: Plain::of(&fit::short(&text, 40)),
        }),
    }
}

/// Days of the week: a run of three or more by its ends, others one by one.
fn days_in_words(days: Weekdays) -> Days {
    let days: Vec<Weekday> = days.iter().collect();
    let follows = |pair: &[Weekday]| pair[0].succ() == pair[1];
    match days.as_slice() {
        [] => Days::DaysNone,
        [_, _, _, _, _, _, _] => Days::DaysEvery,
        [first, _, .., last] if days.windows(2).all(follows) => Days::DaysFromTo {
            first: (*first).into(),
            last: (*last).into(),
        },
        days => Days::DaysOn {
            days: And {
                and: days.iter().map(|day| Day::from(*day)).collect(),
            },
        },
    }
}

/// Settings in words.
pub fn in_words(words: &Words, settings: &Settings) -> String {
    let open = match settings.open_minutes {
        m if m % (24 * 60) == 0 => OpenFor::OpenDays {
            number: m / (24 * 60),
        },
        m if m % 60 == 0 => OpenFor::OpenHours { number: m / 60 },
        number => OpenFor::OpenMinutes { number },
    };
    let (wrong, hint) = (settings.wrong_cost, settings.hint_cost);
    let points = match settings.points {
        Scale::Tournament => Group::PointsTournament {
            hint: Decimal::of(hint),
        },
        Scale::Club if wrong.is_zero() && hint.is_zero() => Group::PointsFree,
        Scale::Club if wrong == hint => Group::PointsEach {
            each: Decimal::of(wrong),
        },
        Scale::Club => Group::PointsClub {
            wrong: Decimal::of(wrong),
            hint: Decimal::of(hint),
        },
    };
    let lines = [
        Group::GoesOut {
            days: days_in_words(settings.days),
            times: And {
                and: settings
                    .post_times
                    .iter()
                    .map(|time| time.to_string())
                    .collect(),
            },
            zone: settings.zone.name().to_owned(),
            open,
        },
        Group::RepliesAre {
            mode: settings.mode,
        },
        points,
        Group::DefencesAre {
            defences: settings.defences,
        },
        Group::LettersAndLook {
            language: LanguageName::of(settings.language),
            style: settings.style,
        },
    ];
    lines.map(|line| words.say(&line)).join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_days_and_spans_are_read_as_people_write_them() {
        for (text, read) in [
            ("18:00", "18:00"),
            ("7.30", "07:30"),
            ("9", "09:00"),
            ("21h15", "21:15"),
        ] {
            assert_eq!(time(text).expect(text).to_string(), read);
        }
        for (text, read) in [
            ("18:00", "18:00"),
            ("18:00, 9", "09:00 18:00"),
            ("7.30 12;21h15", "07:30 12:00 21:15"),
        ] {
            assert_eq!(times(text).expect(text).to_string(), read);
        }
        assert!(times("").is_err() && times("9, 9:00").is_err() && times("9, noon").is_err());
        assert!(times("1 2 3 4 5 6 7").is_err());
        assert!(time("25:00").is_err() && time("noon").is_err() && time("18:60").is_err());
        for (text, bits) in [
            ("mon-fri", 0b001_1111),
            ("Tue, Thu", 0b000_1010),
            ("sat-mon", 0b110_0001),
            ("every day", 0b111_1111),
            ("Wednesday", 0b000_0100),
        ] {
            assert_eq!(days(english(), text).expect(text).bits(), bits);
        }
        assert!(days(english(), "someday").is_err() && days(english(), "m").is_err());
        // In the coach's language first, then in English.
        for (tag, text, bits) in [
            ("de", "mo-fr", 0b001_1111),
            ("de", "Di, Do", 0b000_1010),
            ("de", "jeden Tag", 0b111_1111),
            ("de", "tue", 0b000_0010),
            ("es", "lun-vie", 0b001_1111),
            ("es", "mar,jue", 0b000_1010),
            ("es", "do", 0b100_0000),
        ] {
            assert_eq!(
                days(crate::words::words(tag), text).expect(text).bits(),
                bits
            );
        }
        for (text, wanted) in [
            ("23h", 1380),
            ("90m", 90),
            ("2d", 2880),
            ("5", 300),
            ("1 h", 60),
        ] {
            assert_eq!(minutes(text).expect(text), wanted);
        }
        assert!(minutes("0m").is_err() && minutes("32d").is_err() && minutes("h").is_err());
        assert!(zone("europe/lisbon").is_ok() && zone("Atlantis").is_err());
    }
}
