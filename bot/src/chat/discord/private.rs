//! Answers for one pair of eyes: to a command, a button or a form. Promised at once, since the first
//! answer is due within three seconds, and given when the work is done.

use std::future::Future;

use poise::serenity_prelude as serenity;
use serenity::{
    Builder, CommandInteraction, ComponentInteraction, CreateInteractionResponse,
    CreateInteractionResponseMessage, InteractionId, ModalInteraction, User,
};

use super::{
    house::{self, House},
    letter::Letter,
    oops::{Answer, Oops, brief},
};
use crate::desk::Person;

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

    /// The person, under the name shown here, or the one the group knows them by.
    pub async fn person(self, house: &House, place: &crate::desk::Place) -> Person {
        match self.nick() {
            Some(nick) => Person {
                user: self.user().id.to_string(),
                name: nick.to_owned(),
            },
            None => {
                let name = house::shown(self.user(), None);
                house.person(place, self.user().id, &name).await
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
    let letter = letter_of(work.await);
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
    let letter = letter_of(work.await);
    if promised {
        give(house, asked, letter).await;
    }
}

/// Opens a form; nothing may be done before it.
pub async fn form(house: &House, asked: Asked<'_>, form: serenity::CreateModal) {
    respond(house, asked, CreateInteractionResponse::Modal(form)).await;
}

fn letter_of(done: Answer<Letter>) -> Letter {
    done.unwrap_or_else(|error| {
        if let Oops::Discord(error) = &error {
            tracing::warn!("an answer could not be given: {}", brief(error));
        }
        Letter::text(error.to_string())
    })
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

/// Puts the letter in the place of what was promised, with further private messages as it needs them.
pub async fn give(house: &House, asked: Asked<'_>, letter: Letter) {
    for (i, page) in letter.pages().iter().enumerate() {
        let sent = if i == 0 {
            page.edit()
                .execute(&house.http, asked.token())
                .await
                .map(drop)
        } else {
            let followup = page.followup();
            followup
                .execute(&house.http, (None, asked.token()))
                .await
                .map(drop)
        };
        if let Err(error) = sent {
            tracing::warn!("an answer could not be given: {}", brief(&error));
            return;
        }
    }
}
