//! What is wrong with the arguments of a call, in the reader's language. The library that reads them tells in
//! English only; the kinds that people meet are told in our words here, the others stay as they are.

use std::{error::Error as _, num};

use clap::{
    Error,
    error::{ContextKind, ContextValue, ErrorKind},
};

use super::{
    help::without_heading,
    text::{List, Misuse, theirs},
    tongue::readers,
};
use crate::{chess::StipulationError, words::Words};

/// The whole of what is printed; `None` where the library's own words stand.
pub(super) fn told(error: &Error, words: &Words) -> Option<String> {
    let mut parts = vec![format!("sealed-move: {}", words.say(&wrong(error, words)?))];
    let tips = tips(error);
    if !tips.is_empty() {
        let tips = tips.iter().map(|tip| format!("  {}", words.say(tip)));
        parts.push(tips.collect::<Vec<_>>().join("\n"));
    }
    if let Some(ContextValue::StyledStr(usage)) = error.get(ContextKind::Usage) {
        let usage = usage.to_string();
        let usage = without_heading(&usage).to_owned();
        parts.push(words.say(&Misuse::UsageIs { usage }));
    }
    parts.push(words.say(&Misuse::HelpSaysMore));
    Some(parts.join("\n\n"))
}

fn wrong(error: &Error, words: &Words) -> Option<Misuse> {
    let one = |kind| match error.get(kind)? {
        ContextValue::String(text) => Some(theirs(text)),
        _ => None,
    };
    let several = |kind| match error.get(kind) {
        Some(ContextValue::Strings(texts)) => texts.iter().map(theirs).collect(),
        Some(ContextValue::String(text)) => vec![theirs(text)],
        _ => Vec::new(),
    };
    let argument = one(ContextKind::InvalidArg);
    Some(match error.kind() {
        ErrorKind::UnknownArgument => Misuse::UnknownArgument {
            argument: argument?,
        },
        ErrorKind::MissingRequiredArgument => Misuse::ArgumentMissing {
            arguments: List {
                list: several(ContextKind::InvalidArg),
            },
        },
        ErrorKind::InvalidSubcommand => Misuse::UnknownCommand {
            command: one(ContextKind::InvalidSubcommand)?,
        },
        ErrorKind::MissingSubcommand => Misuse::NoCommandGiven {
            command: one(ContextKind::InvalidSubcommand)?,
            commands: List {
                list: several(ContextKind::ValidSubcommand),
            },
        },
        ErrorKind::ArgumentConflict => {
            let (argument, list) = (argument?, several(ContextKind::PriorArg));
            match list.is_empty() || list == [argument.clone()] {
                true => Misuse::ArgumentTwice { argument },
                false => Misuse::ArgumentConflict {
                    argument,
                    others: List { list },
                },
            }
        }
        ErrorKind::InvalidValue => {
            let (argument, value) = (argument?, error.get(ContextKind::InvalidValue)?);
            let list = several(ContextKind::ValidValue);
            match value {
                ContextValue::String(value) if value.is_empty() => {
                    Misuse::ValueMissing { argument }
                }
                ContextValue::String(value) => Misuse::ValueNotOffered {
                    value: theirs(value),
                    argument,
                    values: List { list },
                },
                _ => return None,
            }
        }
        ErrorKind::ValueValidation => Misuse::ValueUnfit {
            value: one(ContextKind::InvalidValue)?,
            argument: argument?,
            detail: detail(error, words),
        },
        _ => return None,
    })
}

/// What a value's reader said of it; of a number or a day the reader is a library's.
fn detail(error: &Error, words: &Words) -> String {
    let Some(source) = error.source() else {
        return words.say(&Misuse::NotReadable);
    };
    if source.is::<num::ParseIntError>() || source.is::<num::ParseFloatError>() {
        return words.say(&Misuse::NotANumber);
    }
    if source.is::<chrono::ParseError>() {
        return words.say(&Misuse::NotADay);
    }
    if let Some(error) = source.downcast_ref::<StipulationError>() {
        return words.say(error);
    }
    source.to_string()
}

fn tips(error: &Error) -> Vec<Misuse> {
    let meant = [
        ContextKind::SuggestedSubcommand,
        ContextKind::SuggestedArg,
        ContextKind::SuggestedValue,
    ];
    let mut names = Vec::new();
    for kind in meant {
        match error.get(kind) {
            Some(ContextValue::String(name)) => names.push(name.clone()),
            Some(ContextValue::Strings(several)) => names.extend(several.iter().cloned()),
            _ => {}
        }
    }
    let mut tips: Vec<Misuse> = names
        .iter()
        .map(|name| Misuse::PerhapsMeant { name: theirs(name) })
        .collect();
    // Of the library's further tips one matters here: how to give a value that begins with a dash.
    if let (Some(ContextValue::StyledStrs(further)), Some(ContextValue::String(argument))) = (
        error.get(ContextKind::Suggested),
        error.get(ContextKind::InvalidArg),
    ) && further.iter().any(|tip| tip.to_string().contains("'-- "))
    {
        let argument = theirs(argument);
        tips.push(Misuse::AfterTwoDashes { argument });
    }
    tips
}

/// A reader of whole numbers between two bounds, for an argument.
pub(super) fn between<T: TryFrom<u64>>(
    least: u64,
    most: u64,
) -> impl Fn(&str) -> Result<T, String> + Clone + Send + Sync + 'static {
    move |text| {
        let number: Option<u64> = text.parse().ok();
        number
            .filter(|number| (least..=most).contains(number))
            .and_then(|number| T::try_from(number).ok())
            .ok_or_else(|| {
                readers().say(&Misuse::NotBetween {
                    least: least.to_string(),
                    most: most.to_string(),
                })
            })
    }
}

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    use super::*;
    use crate::{
        cli::Cli,
        words::{tags, words},
    };

    fn error(args: &[&str]) -> Error {
        let args = ["sealed-move"].iter().chain(args);
        Cli::command()
            .try_get_matches_from(args)
            .expect_err("wrong")
    }

    #[test]
    fn what_people_get_wrong_is_told_in_every_language() {
        for args in [
            &["check", "--secnods", "3", "x.epd"][..],
            &["check"],
            &["chekc"],
            &["check", "--seconds", "soon", "x.epd"],
            &["find", "--longest", "99", "x.pgn"],
            &["import", "--same", "newer", "x.epd"],
            &["import", "--topic"],
            &["import", "--again", "x.epd"],
            &["leaderboard", "--json", "--csv"],
            &["queue", "pause", "--until", "soon"],
            &[
                "grade",
                "--position",
                "8/8/8/8/8/5k2/5p2/5K2 w - -",
                "--stipulation",
                "#99",
                "Kf2",
            ],
            &["serve", "--port", "99999999"],
            &["demo", "--port", "-1"],
        ] {
            let told: Vec<String> = tags()
                .map(|tag| told(&error(args), words(tag)).unwrap_or_else(|| panic!("{args:?}")))
                .collect();
            for (at, text) in told.iter().enumerate() {
                assert!(!told[..at].contains(text), "{args:?}: {text}");
                assert!(text.contains("--help"), "{text}");
            }
        }
    }

    #[test]
    fn a_number_keeps_its_bounds() {
        let parse = between::<u8>(1, 6);
        assert_eq!(parse("6"), Ok(6));
        for text in ["0", "7", "-1", "six", ""] {
            assert!(parse(text).is_err_and(|said| said.contains('6')), "{text}");
        }
    }
}
