//! `/coach time`: fixes when a waiting position goes out, or frees it.

use chrono::{NaiveDateTime, NaiveTime};

use super::{Answer, Ctx, choose_item, for_coach, said, week};
use crate::chat::discord::{
    fit,
    text::{Coach, Plain},
};
use crate::desk::ItemId;

/// Fix when a waiting position goes out, or free it
#[poise::command(slash_command)]
pub async fn time(
    ctx: Ctx<'_>,
    #[autocomplete = "choose_item"] position: i64,
    when: Option<String>,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let when = when.as_deref().map(local).transpose()?;
        house
            .desk
            .coach()
            .fix_time(&place, &coach, ItemId::of(position), when)
            .await?;
        week::open(house, words, &place, &coach, Some(ItemId::of(position))).await
    })
    .await
}

/// Reads a local date with a time; a date alone is its first minute.
pub fn local(text: &str) -> Answer<NaiveDateTime> {
    let text = text.trim();
    let read = ["%Y-%m-%d %H:%M", "%Y-%m-%dT%H:%M"]
        .iter()
        .find_map(|form| NaiveDateTime::parse_from_str(text, form).ok())
        .or_else(|| {
            let date = chrono::NaiveDate::parse_from_str(text, "%Y-%m-%d").ok()?;
            Some(date.and_time(NaiveTime::MIN))
        });
    match read {
        Some(read) => Ok(read),
        None => said(Coach::NoDate {
            written: Plain::of(&fit::short(text, 40)),
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dates_are_read_with_and_without_a_time() {
        assert_eq!(
            local("2026-12-01 18:00").expect("read").to_string(),
            "2026-12-01 18:00:00"
        );
        assert_eq!(
            local("2026-12-01T18:00").expect("read"),
            local("2026-12-01 18:00").expect("read")
        );
        assert_eq!(
            local("2026-12-01").expect("read").to_string(),
            "2026-12-01 00:00:00"
        );
        assert!(local("tomorrow").is_err());
    }
}
