//! Answers for one pair of eyes: to a command, a button or a form. Promised at once, since the first
//! answer is due within three seconds, and given when the work is done.

use std::{future::Future, sync::Arc};

use poise::serenity_prelude as serenity;
use serenity::{
    ActionRowComponent, Builder, ChannelId, CommandInteraction, ComponentInteraction,
    CreateActionRow, CreateInteractionResponse, CreateInteractionResponseMessage, InteractionId,
    ModalInteraction, User,
};

use super::{
    buttons::{self, Pressed, Way},
    fit,
    house::{self, House, Parts},
    letter::Letter,
    oops::{Answer, Oops, brief},
    tell,
    text::Study,
};
use crate::{
    desk::{LanguageTag, Person, Place},
    words::{Words, known, words as words_in},
};

/// Whatever a person can ask with.
#[derive(Clone, Copy)]
pub enum Asked<'a> {
    /// A slash command.
    Command(&'a CommandInteraction),
    /// A button or a menu.
    Press(&'a ComponentInteraction),
    /// A form sent off.
    Form(&'a ModalInteraction),
}

impl<'a> Asked<'a> {
    /// Id, which is unique and thus the source of an answer.
    pub fn id(self) -> InteractionId {
        match self {
            Self::Command(asked) => asked.id,
            Self::Press(asked) => asked.id,
            Self::Form(asked) => asked.id,
        }
    }

    fn token(self) -> &'a str {
        match self {
            Self::Command(asked) => &asked.token,
            Self::Press(asked) => &asked.token,
            Self::Form(asked) => &asked.token,
        }
    }

    /// Who asks.
    pub fn user(self) -> &'a User {
        match self {
            Self::Command(asked) => &asked.user,
            Self::Press(asked) => &asked.user,
            Self::Form(asked) => &asked.user,
        }
    }

    /// The name the person goes by here; `None` where only an account's name is known.
    fn nick(self) -> Option<&'a str> {
        match self {
            Self::Command(asked) => asked.member.as_ref().map(|m| m.display_name()),
            Self::Press(asked) => asked.member.as_ref().map(|m| m.display_name()),
            Self::Form(asked) => asked.member.as_ref().map(|m| m.display_name()),
        }
    }

    /// What was typed into a form, in the order of its fields, without what is soon typed again.
    fn typed(self) -> Vec<&'a str> {
        const SOON_TYPED: usize = 5;
        let Self::Form(form) = self else {
            return Vec::new();
        };
        let fields = form.data.components.iter().flat_map(|row| &row.components);
        fields
            .filter_map(|part| match part {
                ActionRowComponent::InputText(input) => input.value.as_deref(),
                _ => None,
            })
            .filter(|text| text.chars().count() > SOON_TYPED)
            .collect()
    }

    /// The language of the client, as Discord calls it.
    fn locale(self) -> &'a str {
        match self {
            Self::Command(asked) => &asked.locale,
            Self::Press(asked) => &asked.locale,
            Self::Form(asked) => &asked.locale,
        }
    }

    /// The group that is asked about, where that is plain: the one that a button or form names, else the
    /// channel's.
    async fn place(self, house: &House) -> Option<Place> {
        let (id, channel, guild) = match self {
            Self::Command(asked) => (None, asked.channel_id, asked.guild_id),
            Self::Press(asked) => (
                Some(&asked.data.custom_id),
                asked.channel_id,
                asked.guild_id,
            ),
            Self::Form(asked) => (
                Some(&asked.data.custom_id),
                asked.channel_id,
                asked.guild_id,
            ),
        };
        if let Some(Pressed::In(channel, _)) = id.and_then(|id| Pressed::read(id)) {
            return Some(house::place(ChannelId::new(channel.max(1))));
        }
        guild?;
        house.group_of(channel).await.map(|(place, _)| place)
    }

    /// The words for who asks: those of the group, where there is one, else of their client's language.
    pub async fn words(self, house: &House) -> &'static Words {
        match self.place(house).await {
            Some(place) => {
                let person = self.person(house, &place).await;
                house.words_for(&place, &person).await
            }
            None => words_in(self.locale()),
        }
    }

    /// The person, under the name shown here, or the one the group knows them by.
    pub async fn person(self, house: &House, place: &Place) -> Person {
        let language = known(self.locale()).and_then(LanguageTag::new);
        match self.nick() {
            Some(nick) => Person {
                user: self.user().id.to_string(),
                name: nick.to_owned(),
                language,
            },
            None => {
                let name = house::shown(self.user(), None);
                Person {
                    language,
                    ..house.person(place, self.user().id, &name).await
                }
            }
        }
    }
}

/// Promises a private answer, does the work, and gives it. What is typed is dealt with even when the
/// promise came too late for Discord.
pub async fn privately(
    house: &House,
    asked: Asked<'_>,
    work: impl Future<Output = Answer<Letter>>,
) {
    let promise =
        CreateInteractionResponse::Defer(CreateInteractionResponseMessage::new().ephemeral(true));
    let promised = respond(house, asked, promise).await;
    let letter = letter_of(house, asked, work.await).await;
    if promised {
        give(house, asked, letter).await;
    }
}

/// Changes the private message under a button once the work is done.
pub async fn in_place(
    house: &House,
    press: &ComponentInteraction,
    work: impl Future<Output = Answer<Letter>>,
) {
    let asked = Asked::Press(press);
    let promised = respond(house, asked, CreateInteractionResponse::Acknowledge).await;
    let letter = letter_of(house, asked, work.await).await;
    if promised {
        give(house, asked, letter).await;
    }
}

/// Opens a form; nothing may be done before it.
pub async fn form(house: &House, asked: Asked<'_>, form: serenity::CreateModal) {
    respond(house, asked, CreateInteractionResponse::Modal(form)).await;
}

async fn letter_of(house: &House, asked: Asked<'_>, done: Answer<Letter>) -> Letter {
    match done {
        Ok(letter) => letter,
        Err(error) => {
            if let Oops::Discord(error) = &error {
                tracing::warn!("an answer could not be given: {}", brief(error));
            }
            given_back(asked, asked.words(house).await, &error)
        }
    }
}

/// Why something could not be done, with what was typed for it.
pub fn given_back(asked: Asked<'_>, words: &Words, error: &Oops) -> Letter {
    let mut text = error.in_words(words);
    let typed = asked.typed();
    if !typed.is_empty() {
        text.push_str(&format!("\n\n{}", words.say(&Study::YouWrote)));
        for line in typed.iter().flat_map(|typed| typed.lines()) {
            text.push_str(&format!("\n> {}", fit::plain(line)));
        }
    }
    Letter::text(text)
}

async fn respond(house: &House, asked: Asked<'_>, response: CreateInteractionResponse) -> bool {
    let sent = response
        .execute(&house.http, (asked.id(), asked.token()))
        .await;
    if let Err(error) = &sent {
        tracing::warn!("an interaction could not be answered: {}", brief(error));
    }
    sent.is_ok()
}

/// Puts the letter in the place of what was promised. One that is too long for a message is read part by
/// part in the same message: a further message could not be sent again after trouble at the other end
/// without the fear of sending it twice, while a change can.
pub async fn give(house: &House, asked: Asked<'_>, letter: Letter) {
    let (tells, notes) = (letter.tells, letter.notes.clone());
    let letter = match fit::pages(&letter.text, fit::MESSAGE) {
        texts if texts.len() > 1 => {
            let parts = house.open_parts(Parts {
                user: asked.user().id,
                texts,
                rows: letter.rows,
                words: asked.words(house).await,
            });
            Letter {
                files: letter.files,
                keeps_files: false,
                ..part(&parts, 0)
            }
        }
        _ => letter,
    };
    let sent = letter.edit().execute(&house.http, asked.token()).await;
    if let Err(error) = sent {
        tracing::warn!("an answer could not be given: {}", brief(&error));
        return;
    }
    // Whether it got through cannot be asked later: one that a crash keeps from being noted here is told once
    // more, directly.
    if let Some(reply) = tells {
        tell::arrived(house, reply).await;
    }
    if let Some((place, last)) = notes
        && let Err(error) = house.desk.notes_read(&place, last).await
    {
        tracing::error!("notes that were read stay: {error}");
    }
}

/// Part `at` of a long answer; the files that came with the first stay.
pub fn part((number, parts): &(u64, Arc<Parts>), at: usize) -> Letter {
    let last = parts.texts.len().saturating_sub(1);
    let at = at.min(last);
    let answer = *number;
    let turn = |way, label: Study, to: Option<usize>| {
        let label = parts.words.say(&label);
        buttons::turn(|at| Pressed::Part { answer, at }.id(), way, &label, at, to)
    };
    let mut letter = Letter::text(parts.texts.get(at).cloned().unwrap_or_default());
    letter.keeps_files = true;
    letter.rows.clone_from(&parts.rows);
    // Five rows are allowed.
    letter.rows.truncate(4);
    letter.row(CreateActionRow::Buttons(vec![
        turn(Way::Back, Study::ButtonPreviousPart, at.checked_sub(1)),
        turn(
            Way::On,
            Study::ButtonNextPart,
            Some(at + 1).filter(|to| *to <= last),
        ),
    ]))
}
