//! `/coach settings`: looks at the group's settings and changes them; and how settings are read and
//! written in words.

use chrono_tz::Tz;

use super::{Answer, Ctx, for_coach, said, set_up::Kept};
use crate::{
    chat::discord::{letter::Letter, words},
    desk::{Defences, Language, Mode, Scale, Settings, Style},
};

const DAYS: [&str; 7] = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

/// Languages that replies are read in.
#[derive(Clone, Copy, Debug, poise::ChoiceParameter)]
#[allow(missing_docs)]
pub enum Tongue {
    English,
    German,
    French,
    Spanish,
    Italian,
    Portuguese,
    Dutch,
    Russian,
    Polish,
    Czech,
    Hungarian,
    Turkish,
}

impl From<Tongue> for Language {
    fn from(tongue: Tongue) -> Self {
        match tongue {
            Tongue::English => Self::English,
            Tongue::German => Self::German,
            Tongue::French => Self::French,
            Tongue::Spanish => Self::Spanish,
            Tongue::Italian => Self::Italian,
            Tongue::Portuguese => Self::Portuguese,
            Tongue::Dutch => Self::Dutch,
            Tongue::Russian => Self::Russian,
            Tongue::Polish => Self::Polish,
            Tongue::Czech => Self::Czech,
            Tongue::Hungarian => Self::Hungarian,
            Tongue::Turkish => Self::Turkish,
        }
    }
}

/// Whether members meet the same defences.
#[derive(Clone, Copy, Debug, poise::ChoiceParameter)]
#[allow(missing_docs)]
pub enum Met {
    #[name = "same: every member meets the same defence"]
    Same,
    #[name = "differ: of defences that last equally long, members meet different ones"]
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
    #[name = "club: tries and hints take a little off, and whoever solves keeps something"]
    Club,
    #[name = "tournament: nothing after a wrong first move, as the federation has it"]
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
    #[name = "print: black on white, as in a book"]
    Print,
    #[name = "light"]
    Light,
    #[name = "dark"]
    Dark,
    #[name = "contrast: as strong as can be"]
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
    #[description = "Time zone, such as Europe/Lisbon"]
    #[autocomplete = "super::set_up::choose_zone"]
    zone: Option<String>,
    #[description = "When positions go out, such as 18:00"] time: Option<String>,
    #[description = "Days on which they do, such as mon-fri or tue,thu"] days: Option<String>,
    #[description = "How long answers are taken, such as 23h, 90m or 2d"]
    #[rename = "open-for"]
    open_for: Option<String>,
    #[description = "How replies are kept until the reveal"] replies: Option<Kept>,
    #[description = "Name of the group"] name: Option<String>,
    #[description = "Language of replies: piece letters, verdicts, hints"] language: Option<Tongue>,
    #[description = "Look of the diagrams"] look: Option<Look>,
    #[description = "How points are counted"] points: Option<Counted>,
    #[description = "Points off for each wrong first move, 0 to 5; for club"]
    #[rename = "wrong-cost"]
    wrong_cost: Option<f64>,
    #[description = "Points off for each hint, 0 to 5"]
    #[rename = "hint-cost"]
    hint_cost: Option<f64>,
    #[description = "Which defence I answer with when a line is played out"] defences: Option<Met>,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach| async move {
        let before = house.desk.settings(&place).await?;
        let mut wanted = before.clone();
        if let Some(text) = &zone {
            wanted.zone = self::zone(text)?;
        }
        change(
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
            wanted.language = language.into();
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
        wanted.wrong_cost = wrong_cost.unwrap_or(wanted.wrong_cost);
        wanted.hint_cost = hint_cost.unwrap_or(wanted.hint_cost);
        let head = if wanted == before {
            "As things are:"
        } else {
            house
                .desk
                .change_settings(&place, &coach, wanted.clone())
                .await?;
            "Changed. From now on:"
        };
        Ok(Letter::text(format!(
            "{head}\n**{}**\n{}",
            words::plain(&wanted.name),
            in_words(&wanted)
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
        None => said(format!(
            "\"{}\" is no time zone I know; pick one from the list that opens while you type, such as Europe/Lisbon.",
            words::plain(&words::short(text, 60))
        )),
    }
}

/// Changes what was given.
pub fn change(
    settings: &mut Settings,
    time: Option<&str>,
    days: Option<&str>,
    open_for: Option<&str>,
) -> Answer<()> {
    if let Some(text) = time {
        settings.post_time = self::time(text)?;
    }
    if let Some(text) = days {
        settings.days = self::days(text)?;
    }
    if let Some(text) = open_for {
        settings.open_minutes = minutes(text)?;
    }
    Ok(())
}

/// Reads a time of day: `18:00`, `7.30`, `9`.
fn time(text: &str) -> Answer<String> {
    let mut parts = text.trim().splitn(2, [':', '.', 'h']);
    let hour = parts.next().and_then(|hour| hour.trim().parse::<u8>().ok());
    let minute = match parts.next().map(str::trim) {
        None | Some("") => Some(0),
        Some(minute) => minute.parse::<u8>().ok(),
    };
    match (hour, minute) {
        (Some(hour @ 0..=23), Some(minute @ 0..=59)) => Ok(format!("{hour:02}:{minute:02}")),
        _ => said(format!(
            "\"{}\" is no time of day; write it as 18:00.",
            words::plain(&words::short(text, 40))
        )),
    }
}

/// Reads days: `mon-fri`, `tue,thu`, `every day`.
fn days(text: &str) -> Answer<u8> {
    let text = text.to_lowercase();
    let day = |word: &str| DAYS.iter().position(|day| word.trim().starts_with(day));
    if matches!(text.trim(), "every day" | "daily" | "all") {
        return Ok(0b111_1111);
    }
    let mut bits = 0;
    for part in text
        .split([',', ' ', ';', '+', '&'])
        .filter(|part| !part.trim().is_empty())
    {
        let ends: Vec<Option<usize>> = part.split(['-', '–']).map(day).collect();
        match ends.as_slice() {
            [Some(one)] => bits |= 1 << one,
            [Some(from), Some(to)] => {
                let mut at = *from;
                loop {
                    bits |= 1 << at;
                    if at == *to {
                        break;
                    }
                    at = (at + 1) % 7;
                }
            }
            _ => {
                return said(format!(
                    "\"{}\" are no days I know; write them as mon-fri, as tue,thu or as every day.",
                    words::plain(&words::short(&text, 60))
                ));
            }
        }
    }
    Ok(bits)
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
        _ => said(format!(
            "\"{}\" is no time I can keep a position open for; write it as 23h, 90m or 2d, 31 days at most.",
            words::plain(&words::short(&text, 40))
        )),
    }
}

/// Days of the week: a run of three or more by its ends, others one by one.
fn days_in_words(bits: u8) -> String {
    const NAMES: [&str; 7] = [
        "Monday",
        "Tuesday",
        "Wednesday",
        "Thursday",
        "Friday",
        "Saturday",
        "Sunday",
    ];
    let days: Vec<usize> = (0..7).filter(|i| bits >> i & 1 == 1).collect();
    match days.as_slice() {
        [first, .., last] if days.len() > 2 && last - first + 1 == days.len() => {
            format!("from {} to {}", NAMES[*first], NAMES[*last])
        }
        [rest @ .., last] if !rest.is_empty() => {
            let rest: Vec<&str> = rest.iter().map(|i| NAMES[*i]).collect();
            format!("on {} and {}", rest.join(", "), NAMES[*last])
        }
        days => format!("on {}", days.iter().map(|i| NAMES[*i]).collect::<String>()),
    }
}

/// Settings in words.
pub fn in_words(settings: &Settings) -> String {
    let cost = |points: f64| match points {
        0.0 => "nothing".to_owned(),
        points => words::counted(points, "point"),
    };
    let days = match settings.days {
        0b111_1111 => "every day".to_owned(),
        0 => "on no day (only when you post by hand)".to_owned(),
        bits => days_in_words(bits),
    };
    let open = match settings.open_minutes {
        m if m % (24 * 60) == 0 => words::counted(f64::from(m / (24 * 60)), "day"),
        m if m % 60 == 0 => words::counted(f64::from(m / 60), "hour"),
        m => words::counted(f64::from(m), "minute"),
    };
    let mode = match settings.mode {
        Mode::Sealed => "sealed: verdicts are private until the reveal",
        Mode::Open => "open: verdicts in public behind spoiler marks",
    };
    let (wrong, hint) = (cost(settings.wrong_cost), cost(settings.hint_cost));
    let points = match settings.points {
        Scale::Tournament => format!(
            "After a wrong first move there are none, as in tournaments; a hint takes {hint}."
        ),
        Scale::Club if settings.wrong_cost == 0.0 && settings.hint_cost == 0.0 => {
            "Wrong moves and hints take nothing.".to_owned()
        }
        Scale::Club => {
            let takes = match wrong == hint {
                true => format!("A wrong first move and a hint take {wrong} each"),
                false => format!("A wrong first move takes {wrong}, a hint {hint}"),
            };
            format!("{takes}; whoever solves it without being shown the move keeps at least 1.")
        }
    };
    let defences = match settings.defences {
        Defences::Same => "the same for everyone",
        Defences::Differ => "different from member to member",
    };
    let (language, style) = (settings.language, settings.style);
    format!(
        "A position goes out {days} at {} ({}), and stays open for {open}.\nReplies are {mode}.\nA position is worth 5 points. {points}\nDefences in a line are {defences}.\nPiece letters: {language:?}. Look of the diagrams: {}.",
        settings.post_time,
        settings.zone.name(),
        format!("{style:?}").to_lowercase(),
    )
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
            assert_eq!(time(text).expect(text), read);
        }
        assert!(time("25:00").is_err() && time("noon").is_err() && time("18:60").is_err());
        for (text, bits) in [
            ("mon-fri", 0b001_1111),
            ("Tue, Thu", 0b000_1010),
            ("sat-mon", 0b110_0001),
            ("every day", 0b111_1111),
            ("Wednesday", 0b000_0100),
        ] {
            assert_eq!(days(text).expect(text), bits);
        }
        assert!(days("someday").is_err());
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
