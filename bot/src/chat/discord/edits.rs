//! Messages that were edited or deleted: see the desk's rules; what was decided stands.

use poise::serenity_prelude::{ChannelId, MessageId};

use super::{
    held,
    house::{self, House},
    letter::Letter,
    sheets,
    talk::{Spoken, among_others, nonce, respond, to_us, without_name},
    tell::tell,
    text::Talk,
    which_post::open_for,
};
use crate::desk::{DeskError, Edited, Place, PostId, Withdrawn};

/// A message was edited.
pub async fn edited(house: &House, spoken: Spoken) {
    if let Err(error) = take_edit(house, &spoken).await {
        tracing::error!(message = %spoken.id, "an edit could not be dealt with: {error}");
    }
}

async fn take_edit(house: &House, spoken: &Spoken) -> Result<(), DeskError> {
    held::forget(house, spoken.id).await;
    let (text, _) = without_name(&spoken.text, house.me);
    let source = spoken.id.to_string();
    let places = if spoken.direct {
        house.groups().into_iter().map(house::place).collect()
    } else {
        match house.group_of(spoken.channel).await {
            Some((place, _)) => vec![place],
            None => return Ok(()),
        }
    };
    for place in places {
        let person = house.person(&place, spoken.user, &spoken.name).await;
        match house
            .desk
            .member()
            .edit_reply(&place, &person, &source, &text)
            .await?
        {
            Edited::Unknown if spoken.direct => {}
            Edited::Unknown => return among_others(house, spoken).await,
            Edited::Judged(sheet) if spoken.direct => {
                let letter = sheets::verdict::letter(&place, &sheet);
                tell(house, spoken.user, &letter, &nonce("e", spoken)).await;
                return Ok(());
            }
            Edited::Judged(sheet) => return respond(house, &place, &person, spoken, &sheet).await,
            Edited::Stands(_) => {
                let words = house.words_for(&place, &person).await;
                let letter = Letter::text(words.say(&Talk::EditStands));
                tell(house, spoken.user, &letter, &nonce("e", spoken)).await;
                return Ok(());
            }
            // Nothing is kept of it any more, and others may read it.
            Edited::Talk if !spoken.direct => return among_others(house, spoken).await,
            Edited::Talk => return Ok(()),
        }
    }
    if !spoken.direct || house.change_waiting(spoken.user, spoken.id, &text) {
        return Ok(());
    }
    // What was no answer and is one now is heard; of other changes nothing is said.
    let open = open_for(house, spoken.user).await?;
    let posts: Vec<(Place, PostId)> = open
        .into_iter()
        .map(|(place, row)| (place, row.post))
        .collect();
    let user = spoken.user.to_string();
    if house
        .desk
        .member()
        .aim(&posts, &user, &text)
        .await?
        .is_empty()
    {
        return Ok(());
    }
    to_us(house, spoken).await
}

/// A message was deleted.
pub async fn deleted(house: &House, channel: ChannelId, id: MessageId, direct: bool) {
    if house.was_hidden(id) {
        return;
    }
    held::forget(house, id).await;
    let places = if direct {
        house.groups().into_iter().map(house::place).collect()
    } else {
        match house.group_of(channel).await {
            Some((place, _)) => vec![place],
            None => return,
        }
    };
    for place in places {
        match house
            .desk
            .member()
            .withdraw_reply(&place, &id.to_string())
            .await
        {
            Ok(Withdrawn::Unknown) => {}
            Ok(Withdrawn::Stands | Withdrawn::Gone) => return,
            Err(error) => {
                tracing::error!(message = %id, "a deletion could not be dealt with: {error}");
                return;
            }
        }
    }
}
