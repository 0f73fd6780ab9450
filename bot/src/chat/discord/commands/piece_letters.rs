//! Whose piece letters are read first, as an option's choice: every language of replies there is.

use std::borrow::Cow;

use poise::{ChoiceParameter, CommandParameterChoice};

use super::localized::others;
use crate::{chat::common::text::LanguageName, desk::Language, words::english};

/// A language of replies.
#[derive(Clone, Copy, Debug)]
pub struct PieceLetters(pub Language);

impl ChoiceParameter for PieceLetters {
    fn list() -> Cow<'static, [CommandParameterChoice]> {
        let choices = Language::ALL.map(|language| CommandParameterChoice {
            name: LanguageName::listed(language, english()).into(),
            localizations: others(|words| Some(LanguageName::listed(language, words).into())),
            __non_exhaustive: (),
        });
        Cow::Owned(choices.into())
    }

    fn from_index(index: usize) -> Option<Self> {
        Language::ALL.get(index).copied().map(Self)
    }

    fn from_name(name: &str) -> Option<Self> {
        name.parse().ok().map(Self)
    }

    fn name(&self) -> &'static str {
        self.0.code()
    }

    fn localized_name(&self, _: &str) -> Option<&'static str> {
        None
    }
}
