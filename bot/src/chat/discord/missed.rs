//! What was said while no one listened: after a start, and after a session that could not be resumed,
//! the channels and threads of open posts, and the direct conversations, are read back. A message heard
//! before counts once, so reading too much does no harm.

use poise::serenity_prelude as serenity;
use serenity::{ChannelId, GetMessages, MessageId};

use super::{
    KEY,
    house::{self, House},
    oops::brief,
    talk::{self, Spoken},
};

/// How many pages of a hundred are read back of one channel.
const MOST_PAGES: usize = 20;
/// How many open posts of a group are looked after.
const MOST_POSTS: usize = 10;

/// Reads back everything that may hold an answer.
pub async fn read_back(house: &House) {
    for channel in house.groups() {
        let place = house::place(channel);
        let Ok(rows) = house.desk.posts(&place, MOST_POSTS).await else {
            continue;
        };
        let mut posts = Vec::new();
        for row in rows.iter().filter(|row| row.open) {
            if let Ok(sheet) = house.desk.post(&place, row.post).await {
                posts.push((row.opened_at, sheet));
            }
        }
        // From the post's own message on: it is seen a moment before it is written down as open.
        let since = posts.iter().map(|(opened, sheet)| {
            id(sheet.message.as_deref()).unwrap_or(first_id_at(opened.timestamp_millis()).get())
        });
        let Some(since) = since.min().map(MessageId::new) else {
            continue;
        };
        read_channel(house, channel, since, false).await;
        for thread in posts
            .iter()
            .filter_map(|(_, sheet)| id(sheet.thread.as_deref()))
        {
            read_channel(house, ChannelId::new(thread), since, false).await;
        }
    }
    for (user, channel) in house.direct() {
        let open = house.desk.open_for(KEY, &user.to_string()).await;
        let oldest = open
            .ok()
            .and_then(|open| open.iter().map(|(_, row)| row.opened_at).min());
        if let Some(oldest) = oldest {
            read_channel(house, channel, first_id_at(oldest.timestamp_millis()), true).await;
        }
    }
}

fn id(text: Option<&str>) -> Option<u64> {
    text?.parse().ok().filter(|id| *id > 0)
}

/// The smallest id that a message of that moment can have: ids count milliseconds from 2015.
pub fn first_id_at(millis: i64) -> MessageId {
    const EPOCH: i64 = 1_420_070_400_000;
    MessageId::new(((millis - EPOCH).max(1) as u64) << 22)
}

async fn read_channel(house: &House, channel: ChannelId, since: MessageId, direct: bool) {
    let mut after = house
        .last_heard(channel)
        .map_or(since, |last| last.max(since));
    for _ in 0..MOST_PAGES {
        let page = channel
            .messages(&house.http, GetMessages::new().after(after).limit(100))
            .await;
        let mut page = match page {
            Ok(page) => page,
            Err(error) => {
                tracing::warn!(%channel, "cannot be read back: {}", brief(&error));
                return;
            }
        };
        page.sort_by_key(|message| message.id);
        let Some(last) = page.last().map(|message| message.id) else {
            return;
        };
        let full = page.len() == 100;
        for message in &page {
            if let Some(mut spoken) = Spoken::new(message) {
                // REST does not say which server a message is of.
                spoken.direct = direct;
                talk::said(house, spoken).await;
            }
        }
        if !full {
            return;
        }
        after = last;
    }
}

/// Recalls the direct conversations of earlier runs.
pub async fn recall_direct(house: &House) {
    let kept = match house.desk.direct_channels(KEY).await {
        Ok(kept) => kept,
        Err(error) => {
            tracing::warn!("direct conversations could not be recalled: {error}");
            return;
        }
    };
    for (user, channel) in kept {
        if let (Some(user), Some(channel)) = (id(Some(&user)), id(Some(&channel))) {
            house.note_direct(user.into(), channel.into());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ids_are_made_of_moments() {
        // The example of Discord's documentation, and its moment.
        let id = first_id_at(1_462_015_105_796);
        assert_eq!(id.get() >> 22, 175_928_847_299_117_063 >> 22);
    }
}
