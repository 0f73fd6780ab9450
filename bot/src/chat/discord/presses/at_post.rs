//! What members ask for at a post: answers, hints, their own standing; and what becomes of words that
//! wait for theirs.

use poise::serenity_prelude as serenity;
use serenity::{ButtonStyle, CreateActionRow, ModalInteraction};

use super::At;
use crate::{
    chat::discord::{
        buttons::{self, HeldPress, Press},
        commands::study,
        forms::field,
        held,
        letter::Letter,
        oops::{Answer, said},
        sheets,
        text::{Plain, Study, Talk},
    },
    desk::{PostId, ReplyId},
};

/// What the next hint takes.
pub async fn hint_offer(at: At<'_>, post: PostId) -> Answer<Letter> {
    let (person, _) = at.reader().await;
    study::hint_offer(at.house, at.place, &person, post).await
}

/// The next hint.
pub async fn hint(at: At<'_>, post: PostId) -> Answer<Letter> {
    let (person, _) = at.reader().await;
    study::hint(at.house, at.place, &person, post).await
}

/// How the member stands.
pub async fn standing(at: At<'_>, post: PostId) -> Answer<Letter> {
    let (person, words) = at.reader().await;
    study::standing(at.house, words, at.place, &person, Some(post)).await
}

/// The member's own board.
pub async fn board(at: At<'_>, post: PostId) -> Answer<Letter> {
    let (person, words) = at.reader().await;
    study::own_board(at.house, words, at.place, &person, post).await
}

/// Asks whether the post is to be given up.
pub async fn really_give_up(at: At<'_>, post: PostId) -> Answer<Letter> {
    let (_, words) = at.reader().await;
    let yes = buttons::button(
        Press::ReallyGiveUp(post).id(at.place),
        &words.say(&Study::ButtonYesGiveUp),
        ButtonStyle::Danger,
    );
    Ok(Letter::text(words.say(&Study::GiveUpAsked)).row(CreateActionRow::Buttons(vec![yes])))
}

/// Gives the post up.
pub async fn gave_up(at: At<'_>, post: PostId) -> Answer<Letter> {
    let (person, words) = at.reader().await;
    study::gave_up(at.house, words, at.place, &person, post).await
}

/// Takes the answer that stands in the field of a form.
pub async fn answered(
    at: At<'_>,
    post: PostId,
    form: &ModalInteraction,
    name: &str,
) -> Answer<Letter> {
    let (source, text) = (at.asked.id().to_string(), field(form, name));
    let (person, words) = at.reader().await;
    study::answered(at.house, words, at.place, &person, post, &source, &text).await
}

/// Takes the text that waits for its post as an answer to this one.
pub async fn waiting_goes_to(at: At<'_>, post: PostId) -> Answer<Letter> {
    let (person, words) = at.reader().await;
    let Some((message, text)) = at.house.take_waiting(at.asked.user().id) else {
        return said(Study::AnswerForgotten);
    };
    let source = message.to_string();
    study::answered(at.house, words, at.place, &person, post, &source, &text).await
}

/// Takes a doubtful reply the way its writer says.
pub async fn mean(at: At<'_>, reply: ReplyId, reading: usize) -> Answer<Letter> {
    let (person, words) = at.reader().await;
    let member = at.house.desk.member();
    let (sheet, text) = member.mean(at.place, &person, reply, reading).await?;
    let mut letter = sheets::verdict::letter(at.place, &sheet);
    let quote = Plain::of(&text);
    letter.text = format!(
        "{}\n{}",
        words.say(&Talk::QuotedAnswer { quote }),
        letter.text
    );
    Ok(letter)
}

/// The question about a message that waits for its writer's word.
pub async fn held(at: At<'_>, message: i64) -> Answer<Letter> {
    let (_, words) = at.reader().await;
    held::look(at.house, words, at.asked.user().id, message).await
}

/// The writer's word about it.
pub async fn held_chosen(at: At<'_>, message: i64, choice: HeldPress) -> Answer<Letter> {
    let (person, words) = at.reader().await;
    let user = at.asked.user().id;
    held::chosen(at.house, words, user, message, choice, &person).await
}
