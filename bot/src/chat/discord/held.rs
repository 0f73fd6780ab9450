//! Messages that wait for their writer's word: what may tell a move, and what fits another post than the
//! one it was written to.
//!
//! Such a message is taken out of sight where that is allowed, and its writer is asked in private; where it
//! is not, the writer is asked to delete it, and nothing that others see says what is in it. What waits
//! is kept by the desk, see [`Waiting`].

use poise::serenity_prelude as serenity;
use serde_json::{Value, json};
use serenity::{ButtonStyle, ChannelId, CreateActionRow, MessageId, ReactionType, UserId};

use super::{
    KEY,
    buttons::{self, HeldPress, Press},
    fit,
    house::House,
    letter::Letter,
    oops::{Answer, brief, said},
    sheets,
    talk::{self, Spoken, nonce},
    tell,
    text::{Plain, Talk},
    which_post::asked_back,
};
use crate::{
    chat::{
        common::answer::{self, Asked},
        said::explained,
    },
    desk::{AskedBack, DeskError, Person, Place, Taken, Waiting, Why},
    words::Words,
};

/// Put under a message that may not be hidden and whose writer cannot be asked.
const HUSH: &str = "🤫";
/// Buttons in a row.
const IN_A_ROW: usize = 5;

/// Forgets what waits of earlier runs and is not worth asking about any more.
pub async fn sweep(house: &House) {
    if let Err(error) = house.desk.rounds().sweep_waiting(KEY).await {
        tracing::warn!("messages that wait could not be looked through: {error}");
    }
}

/// Forgets the words of a message that was edited or deleted.
pub async fn forget(house: &House, message: MessageId) {
    let message = message.to_string();
    if let Err(error) = house.desk.forget_waiting(KEY, &message).await {
        tracing::warn!("a message that waits could not be forgotten: {error}");
    }
}

/// Forgets all that waits of people who are erased.
pub async fn erase(house: &House, place: &Place, users: &[String]) -> Result<(), DeskError> {
    house.desk.forget_waiting_of(place, users).await
}

/// Whether something waits of a person.
pub async fn waits(house: &House, place: &Place, user: &str) -> Result<bool, DeskError> {
    Ok(!house.desk.waiting_of(place, user).await?.is_empty())
}

/// Puts what waits of a person into what is kept of them.
pub async fn with_waiting(
    house: &House,
    place: &Place,
    user: &str,
    kept: Value,
) -> Result<Value, DeskError> {
    let mut kept = explained(kept);
    let waiting = house.desk.waiting_of(place, user).await?.into_iter();
    let waiting: Vec<Value> = waiting
        .map(|it| json!({ "text": it.text, "written_at": it.since }))
        .collect();
    if let Some(kept) = kept.as_object_mut() {
        kept.insert("waits_for_your_word".into(), waiting.into());
    }
    Ok(kept)
}

/// Whether a message was asked about before.
pub async fn knows(house: &House, message: MessageId) -> Result<bool, DeskError> {
    house.desk.was_asked_about(KEY, &message.to_string()).await
}

/// Takes a message out of sight, as far as that is allowed, and asks its writer.
pub async fn hold(
    house: &House,
    place: &Place,
    person: &Person,
    spoken: &Spoken,
    text: String,
    asked: AskedBack,
) -> Result<(), DeskError> {
    sweep(house).await;
    let waiting = Waiting {
        message: spoken.id.to_string(),
        channel: spoken.channel.to_string(),
        user: spoken.user.to_string(),
        place: place.clone(),
        text,
        why: asked.why,
        posts: asked.posts,
        hidden: false,
        since: house.desk.now(),
    };
    // Remembered before it is taken away: a crash in between loses nothing that was typed.
    house.desk.let_wait(&waiting).await?;
    let hidden = tell::hide(house, place, spoken).await;
    let waiting = Waiting { hidden, ..waiting };
    if hidden {
        house.desk.let_wait(&waiting).await?;
    }
    let words = house.words_for(place, person).await;
    let letter = question(words, &waiting);
    if tell::tell(house, spoken.user, &letter, &nonce("h", spoken)).await {
        return Ok(());
    }
    // Others read this, so it is the same whatever the message says.
    if !hidden {
        let sign = ReactionType::Unicode(HUSH.into());
        if let Err(error) = house
            .http
            .create_reaction(spoken.channel, spoken.id, &sign)
            .await
        {
            tracing::warn!("a member could not be asked: {}", brief(&error));
        }
        return Ok(());
    }
    let words = house.words_of_group(place).await;
    let look = buttons::button(
        Press::Held(id(&waiting), HeldPress::Look).id(place),
        &words.say(&Talk::ButtonDecide),
        ButtonStyle::Primary,
    );
    let text = match talk::shown_name(house, place, &person.name).await {
        Some(name) => Talk::WaitsForWord { name },
        None => Talk::WaitsForWordOfSomebody,
    };
    let letter = Letter::text(words.say(&text)).row(CreateActionRow::Buttons(vec![look]));
    let message = letter.message(&nonce("k", spoken));
    if let Err(error) = spoken.channel.send_message(&house.http, message).await {
        tracing::warn!("a member could not be asked: {}", brief(&error));
    }
    Ok(())
}

fn id(waiting: &Waiting) -> i64 {
    waiting.message.parse().unwrap_or_default()
}

/// The question for the writer alone, with their text in full.
fn question(words: &Words, waiting: &Waiting) -> Letter {
    let place = &waiting.place;
    let quote = Plain::of(&waiting.text);
    let head = words.say(&match waiting.hidden {
        true => Talk::TakenOutOfSight { quote },
        false => Talk::PleaseDelete { quote },
    });
    let asked = asked_back(words, waiting.why, &waiting.posts, waiting.hidden);
    let mut letter = Letter::text(format!("{head}\n\n{asked}"));
    let mut row = Vec::new();
    let only = waiting.posts.len() == 1;
    for post in &waiting.posts {
        let (kind, number) = (post.holds.name(), post.number);
        let label = words.say(&match (waiting.why, only) {
            (Why::MayTell, true) => Talk::ButtonItIsMyAnswer,
            (Why::MayTell, false) => Talk::ButtonAnswerTo { kind, number },
            _ => Talk::ButtonSendTo { kind, number },
        });
        let id = Press::Held(id(waiting), HeldPress::Answer(post.post)).id(place);
        row.push(buttons::button(id, &label, ButtonStyle::Primary));
    }
    if waiting.why == Why::MayTell {
        let label = words.say(&match waiting.hidden {
            true => Talk::ButtonSayToAll,
            false => Talk::ButtonMayStay,
        });
        let id = Press::Held(id(waiting), HeldPress::Say).id(place);
        row.push(buttons::button(id, &label, ButtonStyle::Secondary));
    }
    row.push(buttons::button(
        Press::Held(id(waiting), HeldPress::Drop).id(place),
        &words.say(&Talk::ButtonDropIt),
        ButtonStyle::Secondary,
    ));
    // Two choices besides the posts; five rows of five are allowed.
    for buttons in row.chunks(IN_A_ROW).take(5) {
        letter = letter.row(CreateActionRow::Buttons(buttons.to_vec()));
    }
    letter
}

async fn waiting_of(
    house: &House,
    user: UserId,
    message: i64,
) -> Result<Option<Waiting>, DeskError> {
    let waiting = house.desk.waiting(KEY, &message.to_string()).await?;
    Ok(waiting.filter(|it| it.user == user.to_string()))
}

async fn settled(house: &House, waiting: &Waiting) -> Result<(), DeskError> {
    house.desk.waits_no_longer(KEY, &waiting.message).await
}

/// The question, for a writer who could not be asked directly.
pub async fn look(house: &House, words: &Words, user: UserId, message: i64) -> Answer<Letter> {
    match waiting_of(house, user, message).await? {
        Some(waiting) => Ok(question(words, &waiting)),
        None => said(Talk::HeldNone),
    }
}

/// The writer's choice.
pub async fn chosen(
    house: &House,
    words: &Words,
    user: UserId,
    message: i64,
    choice: HeldPress,
    person: &Person,
) -> Answer<Letter> {
    let Some(waiting) = waiting_of(house, user, message).await? else {
        return said(Talk::HeldGone);
    };
    let place = &waiting.place;
    let left = match waiting.hidden {
        true => String::new(),
        false => format!("\n\n{}", words.say(&Talk::StillThere)),
    };
    match choice {
        HeldPress::Answer(post) => {
            let source = waiting.message.clone();
            let (desk, text) = (&house.desk, &waiting.text);
            let asked = match waiting.why {
                Why::MayTell => Asked::AndSure,
                Why::Elsewhere | Why::Several => Asked::NotYet,
            };
            let taken = answer::give(desk, place, person, post, &source, text, asked);
            match taken.await? {
                Taken::Answer(sheet) => {
                    settled(house, &waiting).await?;
                    let mut letter = sheets::verdict::letter(place, &sheet);
                    letter.text.push_str(&left);
                    Ok(letter)
                }
                Taken::AskedBack(asked) => {
                    let again = Waiting {
                        why: asked.why,
                        posts: asked.posts,
                        ..waiting
                    };
                    house.desk.let_wait(&again).await?;
                    Ok(question(words, &again))
                }
            }
        }
        HeldPress::Say if waiting.hidden => {
            settled(house, &waiting).await?;
            let all = house.words_of_group(place).await;
            let name = match talk::shown_name(house, place, &person.name).await {
                Some(name) => all.say(&name),
                None => all.say(&Talk::SomeMember),
            };
            let letter = Letter::text(format!("**{name}**: {}", fit::plain(&waiting.text)));
            let channel = ChannelId::new(waiting.channel.parse().unwrap_or(1));
            for (i, page) in letter.pages().iter().enumerate() {
                let nonce = format!("s{:x}-{i}", id(&waiting));
                channel
                    .send_message(&house.http, page.message(&nonce))
                    .await?;
            }
            Ok(Letter::text(words.say(&Talk::HeldSaid)))
        }
        HeldPress::Say => {
            settled(house, &waiting).await?;
            Ok(Letter::text(words.say(&Talk::HeldStays)))
        }
        _ => {
            settled(house, &waiting).await?;
            let dropped = words.say(&Talk::HeldDropped);
            Ok(Letter::text(format!("{dropped}{left}")))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        chat::discord::house,
        desk::{Kind, OpenPost},
        words::english,
    };

    fn waiting(message: u64) -> Waiting {
        Waiting {
            message: message.to_string(),
            channel: "2".into(),
            user: "3".into(),
            place: house::place(ChannelId::new(u64::MAX)),
            text: "perhaps Qh7".into(),
            why: Why::MayTell,
            posts: (0..12)
                .map(|n| OpenPost {
                    post: crate::desk::PostId::of(i64::MAX - n),
                    number: n,
                    topic: None,
                    holds: Kind::Question,
                })
                .collect(),
            hidden: true,
            since: chrono::DateTime::UNIX_EPOCH,
        }
    }

    #[test]
    fn buttons_fit_into_rows_and_ids() {
        let letter = question(english(), &waiting(i64::MAX as u64));
        assert_eq!(letter.rows.len(), 3);
        let json = serde_json::to_value(letter.message("n")).expect("json");
        for row in json["components"].as_array().expect("rows") {
            for button in row["components"].as_array().expect("buttons") {
                let id = button["custom_id"].as_str().expect("an id");
                assert!(
                    id.len() <= 100 && buttons::Pressed::read(id).is_some(),
                    "{id}"
                );
            }
        }
    }
}
