//! `/coach topic`: sets what a position is about.

use super::{Answer, Ctx, choose_position, choose_topic, for_coach};
use crate::chat::discord::{letter::Letter, words};

/// Set a position's topic
#[poise::command(slash_command)]
pub async fn topic(
    ctx: Ctx<'_>,
    #[description = "Which"]
    #[autocomplete = "choose_position"]
    position: i64,
    #[description = "The topic; leave it out to take it away"]
    #[autocomplete = "choose_topic"]
    #[max_length = 80]
    topic: Option<String>,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach| async move {
        house
            .desk
            .set_topic(&place, &coach, position, topic.as_deref())
            .await?;
        Ok(Letter::text(match topic {
            Some(topic) => format!("Its topic is \"{}\" now.", words::plain(&topic)),
            None => "It has no topic now.".into(),
        }))
    })
    .await
}
