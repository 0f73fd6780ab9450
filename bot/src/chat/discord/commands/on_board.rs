//! The command in a message's own menu: the moves written there on a small board, for whoever asks.

use poise::serenity_prelude as serenity;
use serenity::Message;

use super::{Answer, Ctx, group, privately};
use crate::{
    chat::discord::{
        house::House,
        letter::Letter,
        private::Asked,
        talk::without_name,
        text::{Moves, Study},
    },
    desk::{Person, Place, PostId},
    words::Words,
};

/// The moves of a message on a small board
#[poise::command(context_menu_command = "Show on a board", guild_only)]
pub async fn show_on_a_board(ctx: Ctx<'_>, message: Message) -> Answer<()> {
    privately(ctx, async {
        let house: &House = ctx.data();
        let (place, _) = group(ctx).await?;
        let person = Asked::Command(ctx.interaction).person(house, &place).await;
        let words = house.words_for(&place, &person).await;
        let post = meant(house, &place, &message).await?;
        let (text, _) = without_name(&message.content, house.me);
        shown(house, words, &place, &person, post, &text).await
    })
    .await
}

/// The post that a message is about: of the thread it stands in, or of what it replies to.
async fn meant(house: &House, place: &Place, message: &Message) -> Answer<Option<PostId>> {
    let reference = message.message_reference.as_ref();
    let replies_to = reference.and_then(|reference| reference.message_id);
    let candidates = [
        replies_to.map(|id| id.to_string()),
        Some(message.channel_id.to_string()),
    ];
    for reference in candidates.into_iter().flatten() {
        if let Some(post) = house.desk.find_post(place, &reference).await? {
            return Ok(Some(post));
        }
    }
    Ok(None)
}

async fn shown(
    house: &House,
    words: &Words,
    place: &Place,
    person: &Person,
    post: Option<PostId>,
    text: &str,
) -> Answer<Letter> {
    let member = house.desk.member();
    let board = member
        .board_of_words(place, person, text, post, words.tag())
        .await?;
    let line = Moves::of(&board.line);
    let said = words.say(&match board.before.is_empty() {
        true => Study::OnBoard {
            number: board.number,
            line,
        },
        false => Study::OnBoardAfter {
            number: board.number,
            before: Moves::of(&board.before),
            line,
        },
    });
    Ok(Letter::text(said).picture("board", &board.picture, words))
}
