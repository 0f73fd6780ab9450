//! An error in the words of whoever reads it. What this floor, the desk and the store say of it is in words; what
//! the system or a library says stays as it is.

use std::error::Error as StdError;

use sealed_move_store::StoreError;

use super::{
    settings_fault::SettingsError,
    text::{Failed, Failure, Text, path, theirs},
};
use crate::{
    chat::said,
    chess::PositionError,
    desk::{DeskError, endgames::EndgamesError},
    words::Words,
};

/// An error with what led to it.
pub(super) fn told(error: &anyhow::Error, words: &Words) -> String {
    let mut causes: Vec<String> = error.chain().map(|cause| one(cause, words)).collect();
    let last = causes.pop().unwrap_or_default();
    causes.into_iter().rev().fold(last, |cause, what| {
        words.say(&Text::BecauseOf { what, cause })
    })
}

fn one(error: &(dyn StdError + 'static), words: &Words) -> String {
    if let Some(failed) = error.downcast_ref::<Failed>() {
        return words.say(&failed.what);
    }
    if let Some(refused) = error.downcast_ref::<DeskError>() {
        return said::refused(refused, words);
    }
    if let Some(wrong) = error.downcast_ref::<SettingsError>() {
        return wrong.told(words);
    }
    if let Some(wrong) = error.downcast_ref::<PositionError>() {
        return words.say(wrong);
    }
    let known = match error.downcast_ref::<StoreError>() {
        Some(error) => of_store(error),
        None => error.downcast_ref::<EndgamesError>().map(of_tables),
    };
    known.map_or_else(|| error.to_string(), |what| words.say(&what))
}

/// What a person can do something about; the rest tells of the program's own mistakes.
fn of_store(error: &StoreError) -> Option<Failure> {
    Some(match error {
        StoreError::Newer {
            path: file,
            found,
            known,
        } => Failure::StoreIsNewer {
            file: path(file),
            found: *found,
            known: *known,
        },
        StoreError::NotAStore { path: file, why } => Failure::NotAStore {
            file: path(file),
            why: theirs(why),
        },
        StoreError::ReadOnly { path: file, why } => Failure::StoreReadOnly {
            file: path(file),
            why: theirs(why),
        },
        StoreError::CannotOpen { path: file, why } => Failure::StoreNotOpened {
            file: path(file),
            why: theirs(why),
        },
        StoreError::Full { path: file } => Failure::StoreDiskFull { file: path(file) },
        StoreError::Busy { path: file } => Failure::StoreBusy { file: path(file) },
        StoreError::Exists { path: file } => Failure::FileExists { file: path(file) },
        StoreError::Damaged(what) => Failure::StoreDamaged { what: theirs(what) },
        StoreError::Stopped => Failure::StoreStopped,
        _ => return None,
    })
}

fn of_tables(error: &EndgamesError) -> Failure {
    match error {
        EndgamesError::Unreadable(folder, why) => Failure::TablesUnreadable {
            folder: theirs(folder),
            why: theirs(why),
        },
        EndgamesError::None(folder) => Failure::NoTables {
            folder: theirs(folder),
        },
    }
}

#[cfg(test)]
mod tests {
    use std::{io, path::PathBuf};

    use super::*;
    use crate::{
        cli::text::OrFail,
        words::{english, words},
    };

    #[test]
    fn each_cause_is_told_in_the_readers_words_and_the_systems_stay() {
        let missing = io::Error::other("no such thing");
        let error = Err::<(), _>(missing)
            .or_fail(|| Failure::FileUnreadable {
                file: theirs("week.epd"),
            })
            .expect_err("failed");
        let told_in = |tag| told(&error, words(tag));
        assert_eq!(told_in("en"), "week.epd could not be read: no such thing");
        assert_eq!(told_in("de"), "week.epd war nicht zu lesen: no such thing");
        assert_eq!(told_in("es"), "no se pudo leer week.epd: no such thing");
    }

    #[test]
    fn english_says_of_the_store_what_its_error_says() {
        let path = || PathBuf::from("club.sqlite");
        let why = || "no room".to_owned();
        for error in [
            StoreError::Newer {
                path: path(),
                found: 9,
                known: 8,
            },
            StoreError::NotAStore {
                path: path(),
                why: why(),
            },
            StoreError::ReadOnly {
                path: path(),
                why: why(),
            },
            StoreError::CannotOpen {
                path: path(),
                why: why(),
            },
            StoreError::Full { path: path() },
            StoreError::Busy { path: path() },
            StoreError::Exists { path: path() },
            StoreError::Damaged(why()),
            StoreError::Stopped,
        ] {
            let plain = error.to_string();
            let error = anyhow::Error::new(error);
            assert_eq!(told(&error, english()), plain);
            assert_ne!(told(&error, words("de")), plain);
        }
    }
}
