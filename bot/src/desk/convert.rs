//! Between the desk's values and the store's. A verdict and what a check said are the store's words for
//! values of chess, which it does not know; a language and a board's style are words to it.

use sealed_move_store as store;
use serde::{Serialize, de::DeserializeOwned};

use super::{
    Outcome, Settings, Soundness, Verdict,
    error::{DeskError, Done},
};
use crate::chess::Language;

pub(super) fn verdict(verdict: Verdict) -> store::Verdict {
    match verdict {
        Verdict::Solved => store::Verdict::Solved,
        Verdict::OnTheWay => store::Verdict::OnTheWay,
        Verdict::Wrong => store::Verdict::Wrong,
        Verdict::Illegal => store::Verdict::Illegal,
        Verdict::Unclear => store::Verdict::Unclear,
        Verdict::Unreadable => store::Verdict::Unreadable,
    }
}

pub(super) fn kept_verdict(verdict: store::Verdict) -> Outcome {
    Outcome::Judged(match verdict {
        store::Verdict::Solved => Verdict::Solved,
        store::Verdict::OnTheWay => Verdict::OnTheWay,
        store::Verdict::Wrong => Verdict::Wrong,
        store::Verdict::Illegal => Verdict::Illegal,
        store::Verdict::Unclear => Verdict::Unclear,
        store::Verdict::Unreadable => Verdict::Unreadable,
        store::Verdict::Marked => return Outcome::Marked,
    })
}

pub(super) fn soundness(soundness: Soundness) -> store::Soundness {
    match soundness {
        Soundness::Sound => store::Soundness::Sound,
        Soundness::SeveralKeys => store::Soundness::SeveralKeys,
        Soundness::Short => store::Soundness::Short,
        Soundness::Unsound => store::Soundness::Unsound,
        Soundness::Illegal => store::Soundness::Illegal,
        Soundness::Undecided => store::Soundness::Undecided,
    }
}

pub(super) fn kept_soundness(soundness: store::Soundness) -> Soundness {
    match soundness {
        store::Soundness::Sound => Soundness::Sound,
        store::Soundness::SeveralKeys => Soundness::SeveralKeys,
        store::Soundness::Short => Soundness::Short,
        store::Soundness::Unsound => Soundness::Unsound,
        store::Soundness::Illegal => Soundness::Illegal,
        store::Soundness::Undecided => Soundness::Undecided,
    }
}

pub(super) fn settings(settings: &Settings) -> store::GroupSettings {
    store::GroupSettings {
        name: settings.name.clone(),
        zone: settings.zone,
        post_times: settings.post_times.clone(),
        days: settings.days,
        open_minutes: settings.open_minutes,
        mode: settings.mode,
        language: word(&settings.language),
        style: word(&settings.style),
        scale: settings.points,
        wrong_cost: settings.wrong_cost,
        hint_cost: settings.hint_cost,
        defences: settings.defences,
    }
}

/// What a group writes in.
pub(super) fn language(kept: &store::GroupSettings) -> Done<Language> {
    from_word(&kept.language).ok_or_else(|| unknown("language", &kept.language))
}

pub(super) fn kept_settings(kept: &store::GroupSettings) -> Done<Settings> {
    Ok(Settings {
        name: kept.name.clone(),
        zone: kept.zone,
        post_times: kept.post_times.clone(),
        days: kept.days,
        open_minutes: kept.open_minutes,
        mode: kept.mode,
        language: language(kept)?,
        style: from_word(&kept.style).ok_or_else(|| unknown("board style", &kept.style))?,
        points: kept.scale,
        wrong_cost: kept.wrong_cost,
        hint_cost: kept.hint_cost,
        defences: kept.defences,
    })
}

fn unknown(what: &str, value: &str) -> DeskError {
    DeskError::damaged(format!(
        "it holds a {what} that this program does not know, \"{value}\""
    ))
}

/// The serde name of a plain enum's value.
fn word<T: Serialize>(value: &T) -> String {
    match serde_json::to_value(value) {
        Ok(serde_json::Value::String(word)) => word,
        _ => String::new(),
    }
}

fn from_word<T: DeserializeOwned>(word: &str) -> Option<T> {
    serde_json::from_value(word.into()).ok()
}

#[cfg(test)]
mod tests {
    use super::super::{Defences, Language, Mode, Scale, Style, TimeOfDay, Weekdays};
    use super::*;
    use crate::desk::refusal::StoreFault;

    #[test]
    fn settings_survive_the_store() {
        let set = Settings {
            name: "Club".into(),
            zone: chrono_tz::Europe::Lisbon,
            post_times: TimeOfDay::of(7, 5).into(),
            days: Weekdays::from([chrono::Weekday::Tue]),
            mode: Mode::Open,
            language: Language::Hungarian,
            style: Style::Contrast,
            defences: Defences::Differ,
            points: Scale::Tournament,
            ..Settings::default()
        };
        assert_eq!(kept_settings(&settings(&set)).expect("readable"), set);
        let spoiled: [fn(&mut store::GroupSettings); 2] = [
            |kept| kept.language = "atlantean".into(),
            |kept| kept.style = "coral".into(),
        ];
        for spoil in spoiled {
            let mut kept = settings(&set);
            spoil(&mut kept);
            let unknown = kept_settings(&kept).expect_err("unknown");
            assert!(
                matches!(unknown, DeskError::Store(StoreFault::Damaged)),
                "{unknown:?}"
            );
        }
    }

    #[test]
    fn every_word_has_its_twin() {
        for kept in store::Verdict::ALL {
            let outcome = kept_verdict(*kept);
            assert_eq!(word(&outcome), kept.as_str());
            match outcome {
                Outcome::Judged(judged) => assert_eq!(verdict(judged), *kept),
                Outcome::Kept | Outcome::Marked => assert_eq!(*kept, store::Verdict::Marked),
            }
        }
        for kept in store::Soundness::ALL {
            assert_eq!(soundness(kept_soundness(*kept)), *kept);
            assert_eq!(word(&kept_soundness(*kept)), kept.as_str());
        }
    }
}
