//! Letters that go to one person directly, and messages that go out of sight.

use chrono::{DateTime, TimeDelta, Utc};
use poise::serenity_prelude as serenity;
use serenity::{GetMessages, UserId};

use super::{
    fit,
    house::{self, House},
    letter::Letter,
    missed,
    oops::{brief, code, codes},
    talk::Spoken,
    way::{LOOK_BACK, refused},
};
use crate::desk::{Place, ReplyId};

/// Takes a message out of sight, where we may.
pub async fn hide(house: &House, place: &Place, spoken: &Spoken) -> bool {
    // A thread has the permissions of its channel.
    let allowed = house::channel(place)
        .and_then(|channel| house.permissions_in(channel))
        .is_none_or(|have| have.contains(serenity::Permissions::MANAGE_MESSAGES));
    if !allowed {
        return false;
    }
    house.note_hidden(spoken.id);
    match house
        .http
        .delete_message(spoken.channel, spoken.id, None)
        .await
    {
        Ok(()) => true,
        Err(error) => {
            if code(&error) != Some(codes::MISSING_PERMISSIONS) {
                tracing::warn!(
                    "an answer could not be taken out of sight: {}",
                    brief(&error)
                );
            }
            false
        }
    }
}

/// Sends a letter to a person directly; false when they take none, or it cannot be sent now.
pub async fn tell(house: &House, user: UserId, letter: &Letter, nonce: &str) -> bool {
    match deliver(house, user, letter, nonce).await {
        Ok(there) => there,
        Err(error) => {
            tracing::warn!("a direct message could not be sent: {}", brief(&error));
            false
        }
    }
}

/// Sends a letter to a person directly; false when they take none. A verdict is in the outbox before it is
/// sent and until it is there, or will never be.
///
/// # Errors
/// When trying again may help.
pub async fn deliver(
    house: &House,
    user: UserId,
    letter: &Letter,
    nonce: &str,
) -> serenity::Result<bool> {
    let pages = letter.clone().pages();
    if let (Some(reply), Some(last)) = (letter.tells, pages.last())
        && let Err(error) = house
            .desk
            .rounds()
            .verdict_on_its_way(reply, &last.text)
            .await
    {
        tracing::error!("that a verdict is on its way cannot be written down: {error}");
    }
    let sent = async {
        let channel = house.direct_with(user).await?;
        for (i, page) in pages.iter().enumerate() {
            let nonce = format!("{nonce}-{i}");
            channel
                .send_message(&house.http, page.message(&nonce))
                .await?;
        }
        Ok::<_, serenity::Error>(())
    };
    let there = match sent.await {
        Ok(()) => true,
        Err(error) if refused(&error) => {
            if code(&error) != Some(codes::NO_DIRECT_MESSAGES) {
                tracing::warn!("a direct message could not be sent: {}", brief(&error));
            }
            false
        }
        Err(error) => return Err(error),
    };
    if let Some(reply) = letter.tells {
        arrived(house, reply).await;
    }
    Ok(there)
}

/// A verdict has reached its writer.
pub async fn arrived(house: &House, reply: ReplyId) {
    if let Err(error) = house.desk.rounds().verdict_arrived(reply).await {
        tracing::error!("that a verdict has arrived cannot be written down: {error}");
    }
}

/// How much Discord's clock may be behind ours.
const CLOCKS_DIFFER: TimeDelta = TimeDelta::minutes(1);

/// Whether a person was told something directly in this text, since then.
///
/// # Errors
/// When that cannot be seen now.
pub async fn was_told(
    house: &House,
    user: UserId,
    text: &str,
    since: DateTime<Utc>,
) -> serenity::Result<bool> {
    let since = missed::first_id_at((since - CLOCKS_DIFFER).timestamp_millis());
    let latest = async {
        let channel = house.direct_with(user).await?;
        let latest = GetMessages::new().limit(LOOK_BACK);
        channel.messages(&house.http, latest).await
    };
    let text = fit::short(text, fit::MESSAGE);
    match latest.await {
        Ok(latest) => Ok(latest.iter().any(|message| {
            message.author.id == house.me
                && message.id >= since
                && message.content.trim() == text.trim()
        })),
        Err(error) if refused(&error) => Ok(false),
        Err(error) => Err(error),
    }
}
