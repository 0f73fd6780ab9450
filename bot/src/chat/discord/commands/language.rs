//! `/study language`: in which language a member is spoken to.

use poise::serenity_prelude::{AutocompleteChoice, CreateAutocompleteResponse};

use super::{Answer, Ctx, member, privately, said};
use crate::{
    chat::discord::{
        fit as plain,
        letter::Letter,
        private::Asked,
        text::{Plain, Study},
    },
    desk::LanguageTag,
    words::{tags, words},
};

/// Chosen by who wants to be spoken to as their client is set.
const AS_CLIENT: &str = "client";

/// The languages that can be spoken, each in its own words, and the client's.
async fn choose_language(ctx: Ctx<'_>, typed: &str) -> CreateAutocompleteResponse {
    let own = Asked::Command(ctx.interaction).words(ctx.data()).await;
    let typed = typed.to_lowercase();
    let languages = tags().map(|tag| (words(tag).text("language"), tag));
    let client = (own.say(&Study::LanguageChoiceClient), AS_CLIENT);
    let choices = languages
        .chain([client])
        .filter(|(label, tag)| label.to_lowercase().contains(&typed) || *tag == typed)
        .take(25)
        .map(|(label, tag)| AutocompleteChoice::new(label, tag))
        .collect();
    CreateAutocompleteResponse::new().set_choices(choices)
}

/// Choose the language in which I speak to you
#[poise::command(slash_command)]
pub async fn language(
    ctx: Ctx<'_>,
    #[autocomplete = "choose_language"] language: String,
) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        let house = ctx.data();
        let Some(chosen) = chosen(&language) else {
            return said(Study::NoLanguage {
                written: Plain::of(&plain::short(&language, 40)),
            });
        };
        let tag = chosen.and_then(LanguageTag::new);
        house.desk.choose_language(&place, &person, tag).await?;
        let words = house.words_for(&place, &person).await;
        let language = Plain::of(&words.text("language"));
        Ok(Letter::text(words.say(&match chosen {
            Some(_) => Study::LanguageIs { language },
            None => Study::LanguageAsClient { language },
        })))
    })
    .await
}

/// The tag of a language that was picked or written out, the inner `None` for the client's; the outer one where
/// there is no such language.
fn chosen(written: &str) -> Option<Option<&'static str>> {
    let written = written.trim().to_lowercase();
    let is = |tag: &&str| *tag == written || words(tag).text("language").to_lowercase() == written;
    let client = |tag: &str| words(tag).say(&Study::LanguageChoiceClient).to_lowercase();
    if written == AS_CLIENT || tags().any(|tag| client(tag) == written) {
        return Some(None);
    }
    tags().find(is).map(Some)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn languages_are_known_by_tag_and_by_their_own_names() {
        for (written, tag) in [
            ("de", Some("de")),
            ("Deutsch", Some("de")),
            (" español ", Some("es")),
            ("English", Some("en")),
            ("client", None),
            ("as my Discord is set", None),
        ] {
            assert_eq!(chosen(written), Some(tag), "{written}");
        }
        assert_eq!(chosen("Klingon"), None);
    }
}
