//! What is no longer to be kept of a person, once that was said twice.

use super::At;
use crate::{
    chat::discord::{commands::study, held, letter::Letter, oops::Answer, text::Group},
    desk::MemberId,
};

/// Everything of who asks.
pub async fn me(at: At<'_>) -> Answer<Letter> {
    let (person, words) = at.reader().await;
    study::erased(at.house, words, at.place, &person).await
}

/// Everything of another member, by a coach.
pub async fn member(at: At<'_>, member: MemberId) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let desk = at.house.desk.coach();
    let users = desk.erase_member(at.place, &coach, member).await?;
    held::erase(at.house, at.place, &users).await?;
    Ok(Letter::text(words.say(&Group::ErasedMember)))
}
