//! `/coach topic`: sets what a position is about.

use super::{Answer, Ctx, choose_position, choose_topic, for_coach};
use crate::chat::discord::{
    letter::Letter,
    sheets,
    text::{Coach, Plain},
};
use crate::desk::{PositionId, TopicName};

/// Set a position's topic
#[poise::command(slash_command)]
pub async fn topic(
    ctx: Ctx<'_>,
    #[autocomplete = "choose_position"] position: i64,
    #[autocomplete = "choose_topic"]
    #[max_length = 80]
    topic: Option<String>,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let topic = TopicName::filled_in(topic.as_deref())?;
        let said = match &topic {
            Some(topic) => Coach::TopicSet {
                topic: Plain::of(topic.as_str()),
            },
            None => Coach::TopicTaken,
        };
        let check = house
            .desk
            .coach()
            .set_topic(&place, &coach, PositionId::of(position), topic)
            .await?;
        let mut parts = vec![words.say(&said)];
        parts.extend(check.and_then(|check| sheets::report::topic_check(words, &check)));
        Ok(Letter::text(parts.join("\n")))
    })
    .await
}
