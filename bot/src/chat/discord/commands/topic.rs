//! `/coach topic`: sets what a position, or what waits in the week, is about.

use super::{Answer, Ctx, choose_subject, choose_topic, for_coach, subject::Subject};
use crate::chat::discord::{
    letter::Letter,
    sheets,
    text::{Coach, Plain},
};
use crate::desk::TopicName;

/// Set the topic of a position, or of what waits in the week
#[poise::command(slash_command)]
pub async fn topic(
    ctx: Ctx<'_>,
    #[autocomplete = "choose_subject"] position: i64,
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
        let coaching = house.desk.coach();
        let check = match Subject::of(position) {
            Subject::Position(position) => {
                coaching.set_topic(&place, &coach, position, topic).await?
            }
            Subject::Written(item) => {
                coaching.set_item_topic(&place, &coach, item, topic).await?;
                None
            }
        };
        let mut parts = vec![words.say(&said)];
        parts.extend(check.and_then(|check| sheets::report::topic_check(words, &check)));
        Ok(Letter::text(parts.join(
            "
",
        )))
    })
    .await
}
