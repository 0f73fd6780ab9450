//! In which language a person is spoken to: the one they chose, else the one their client asks for, else the
//! group's.

use std::fmt;

use sealed_move_store::{Db, Group, Member};
use serde::{Deserialize, Serialize};

use super::{
    Desk, Person, Place, convert,
    error::{Done, bad_request},
    handle::{group_at, member},
    refusal::Refusal,
};
use crate::chess::Language;

/// The BCP 47 tag of a language that people are spoken to in.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct LanguageTag(String);

impl LanguageTag {
    /// A tag; `None` where it cannot be one: letters, digits and hyphens, 2 to 35 of them.
    ///
    /// ```
    /// use sealed_move::desk::LanguageTag;
    ///
    /// assert_eq!(LanguageTag::new("de-AT").map(|tag| tag.to_string()), Some("de-AT".to_owned()));
    /// assert_eq!(LanguageTag::new("*"), None);
    /// ```
    pub fn new(tag: &str) -> Option<Self> {
        let fits = (2..=35).contains(&tag.len())
            && tag.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-');
        fits.then(|| Self(tag.to_owned()))
    }

    /// The tag.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl Default for LanguageTag {
    fn default() -> Self {
        Language::default().into()
    }
}

impl From<Language> for LanguageTag {
    fn from(language: Language) -> Self {
        Self(language.tag().to_owned())
    }
}

/// The language of a tag, by whose letters a person's moves are read.
pub(super) fn spoken(tag: &LanguageTag) -> Language {
    let own = Language::ALL
        .into_iter()
        .find(|one| one.tag() == tag.as_str());
    own.unwrap_or_default()
}

impl From<&Self> for LanguageTag {
    fn from(tag: &Self) -> Self {
        tag.clone()
    }
}

impl TryFrom<String> for LanguageTag {
    type Error = String;

    fn try_from(tag: String) -> Result<Self, String> {
        Self::new(&tag).ok_or_else(|| format!("{tag:?} is no language's tag"))
    }
}

impl From<LanguageTag> for String {
    fn from(tag: LanguageTag) -> Self {
        tag.0
    }
}

impl fmt::Display for LanguageTag {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl Desk {
    /// The language in which a person is spoken to here. One who is no member yet may have a client that asks
    /// for one.
    ///
    /// # Errors
    /// When there is no group here.
    pub async fn language_of(&self, place: &Place, person: &Person) -> Done<LanguageTag> {
        let (place, person) = (place.clone(), person.clone());
        self.read(move |db| of_person(db, &group_at(db, &place)?, &person))
            .await
    }

    /// The language that a person chose, if they chose one.
    ///
    /// # Errors
    /// When there is no group here.
    pub async fn chosen_language(
        &self,
        place: &Place,
        person: &Person,
    ) -> Done<Option<LanguageTag>> {
        let (place, user) = (place.clone(), person.user.clone());
        self.read(move |db| {
            let group = group_at(db, &place)?;
            let member = db.member_by_user(group.id, &user)?;
            Ok(member.and_then(|member| LanguageTag::new(&member.language?)))
        })
        .await
    }

    /// From now on a person is spoken to in this language; with `None`, in the one their client asks for.
    /// Somebody new becomes a member.
    ///
    /// # Errors
    /// When a coach has shut them out, or they have no name yet.
    pub async fn choose_language(
        &self,
        place: &Place,
        person: &Person,
        language: Option<LanguageTag>,
    ) -> Done<()> {
        let now = self.now();
        let (place, person) = (place.clone(), person.clone());
        self.write(move |tx| {
            let group = group_at(tx, &place)?;
            if person.name.trim().is_empty() {
                return bad_request(Refusal::NameYourself);
            }
            let member = member(tx, &group, &person, now)?;
            Ok(tx.set_language(member, language.as_ref().map(LanguageTag::as_str))?)
        })
        .await
    }
}

/// The language in which a person is spoken to, by what their client asks for now.
pub(super) fn of_person(db: &Db<'_>, group: &Group, person: &Person) -> Done<LanguageTag> {
    let known = db.member_by_user(group.id, &person.user)?;
    let chosen = known.as_ref().and_then(|member| member.language.as_deref());
    match (chosen, &person.language) {
        (None, Some(client)) => Ok(client.clone()),
        _ => of_member(group, known.as_ref()),
    }
}

/// The language in which a member is spoken to, by what is kept of them.
pub(super) fn of_member(group: &Group, member: Option<&Member>) -> Done<LanguageTag> {
    let kept = member.and_then(|member| {
        let tag = member
            .language
            .as_deref()
            .or(member.client_language.as_deref())?;
        LanguageTag::new(tag)
    });
    match kept {
        Some(tag) => Ok(tag),
        None => Ok(convert::language(&group.settings)?.into()),
    }
}
