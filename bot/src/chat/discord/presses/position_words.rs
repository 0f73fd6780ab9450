//! A coach's words on a position that waits or is kept: the form for them, and that form sent. Words that
//! tell a move are given back, with a way to change them and one to send them all the same.

use poise::serenity_prelude as serenity;
use serenity::{ButtonStyle, CreateActionRow, CreateModal, ModalInteraction};

use super::At;
use crate::{
    chat::discord::{
        buttons::{self, Press, WordsPress},
        forms::{field, words_form},
        house::Draft,
        letter::Letter,
        oops::Answer,
        private, sheets,
        text::Coach,
    },
    desk::{PositionId, Refusal, Telling},
};

/// The form, with what was typed and refused where that is asked for, else with the words that are kept.
pub async fn form(at: At<'_>, press: WordsPress, position: PositionId) -> Answer<CreateModal> {
    let (coach, words) = at.reader().await;
    let kept = at
        .house
        .desk
        .coach()
        .words_on(at.place, &coach, position)
        .await?;
    let kept = Draft {
        with_post: kept.with_post,
        at_reveal: kept.at_reveal,
    };
    let begun = match press {
        WordsPress::Kept => kept,
        WordsPress::Typed | WordsPress::Anyway => {
            at.house.draft(at.asked.user().id, position).unwrap_or(kept)
        }
    };
    Ok(words_form(words, at.place, (press, position), begun))
}

/// The words that the form holds are kept; gives them as they are then.
pub async fn sent(
    at: At<'_>,
    press: WordsPress,
    position: PositionId,
    form: &ModalInteraction,
) -> Answer<Letter> {
    let (coach, words) = at.reader().await;
    let telling = match press {
        WordsPress::Kept | WordsPress::Typed => Telling::Refused,
        WordsPress::Anyway => Telling::Meant,
    };
    let typed = Draft {
        with_post: field(form, "post"),
        at_reveal: field(form, "reveal"),
    };
    let desk = at.house.desk.coach();
    let Draft {
        with_post,
        at_reveal,
    } = &typed;
    let kept = desk
        .set_words(at.place, &coach, position, with_post, at_reveal, telling)
        .await;
    match kept {
        Err(error) if matches!(error.why(), Refusal::WordsTellMove { .. }) => {
            let letter = private::given_back(at.asked, words, &error.into());
            at.house.keep_draft(at.asked.user().id, position, typed);
            let way = |press, label: Coach, style| {
                let id = Press::Words(press, position).id(at.place);
                buttons::button(id, &words.say(&label), style)
            };
            return Ok(letter.row(CreateActionRow::Buttons(vec![
                way(
                    WordsPress::Typed,
                    Coach::ButtonWordsAgain,
                    ButtonStyle::Primary,
                ),
                way(
                    WordsPress::Anyway,
                    Coach::ButtonWordsAnyway,
                    ButtonStyle::Danger,
                ),
            ])));
        }
        kept => kept?,
    }
    let now = desk.words_on(at.place, &coach, position).await?;
    at.house.words_in_reports(at.place, position, &now);
    let mut parts = vec![words.say(&Coach::WordsKept)];
    parts.extend(sheets::report::coach_words(words, &now));
    Ok(Letter::text(parts.join("\n\n")))
}
