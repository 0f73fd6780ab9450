//! Messages that wait for their writer's word: what may tell a move, and what fits another post than the
//! one it was written to.
//!
//! Such a message is taken out of sight where that is allowed, and its writer is asked in private; where it
//! is not, the writer is asked to delete it, and nothing that others see says what is in it. What waits
//! is remembered over a restart, since the question is, and forgotten with the answer, with the last of its
//! posts, when its writer is erased, and at the latest after [`LONGEST`].

use std::collections::VecDeque;

use chrono::{DateTime, TimeDelta, Utc};
use poise::serenity_prelude as serenity;
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};
use serenity::{ButtonStyle, ChannelId, CreateActionRow, MessageId, ReactionType, UserId};

use super::{
    buttons::{self, HeldPress, Press},
    house::House,
    letter::Letter,
    oops::{Answer, brief, said},
    sheets,
    talk::{self, Spoken, nonce},
    words,
};
use crate::{
    chat::said::explained,
    desk::{AskedBack, DeskError, OpenPost, Person, Place, Taken, Why},
};

/// The key under which waiting messages are remembered.
const KEY: &str = "discord:held";
/// How long one waits at the most.
const LONGEST: TimeDelta = TimeDelta::days(2);
/// How many wait at the most; the oldest goes.
const MOST: usize = 500;
/// Put under a message that may not be hidden and whose writer cannot be asked.
const HUSH: &str = "🤫";
/// Buttons in a row.
const IN_A_ROW: usize = 5;

/// A message that waits.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct Waiting {
    message: u64,
    /// Where it was written.
    channel: u64,
    user: u64,
    place: Place,
    text: String,
    why: Why,
    question: String,
    posts: Vec<OpenPost>,
    /// Whether it was taken out of sight.
    hidden: bool,
    since: DateTime<Utc>,
}

impl Waiting {
    fn is_of(&self, place: &Place, user: &str) -> bool {
        self.place == *place && self.user.to_string() == user
    }
}

/// All that wait, and the ids of those that were settled, which are not asked about again.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
pub struct Shelf {
    waiting: VecDeque<Waiting>,
    settled: VecDeque<u64>,
}

impl Shelf {
    /// Whether a message waits or is settled.
    fn knows(&self, message: u64) -> bool {
        self.settled.contains(&message) || self.waiting.iter().any(|it| it.message == message)
    }

    fn put(&mut self, waiting: Waiting) {
        self.waiting.retain(|it| it.message != waiting.message);
        self.settled.retain(|id| *id != waiting.message);
        self.waiting.push_back(waiting);
        while self.waiting.len() > MOST {
            self.waiting.pop_front();
        }
    }

    /// Forgets the words of those that `gone` says are done with.
    fn settle(&mut self, gone: impl Fn(&Waiting) -> bool) -> bool {
        let before = self.waiting.len();
        let done: Vec<u64> = self
            .waiting
            .iter()
            .filter(|it| gone(it))
            .map(|it| it.message)
            .collect();
        self.waiting.retain(|it| !done.contains(&it.message));
        self.settled.extend(done);
        while self.settled.len() > MOST {
            self.settled.pop_front();
        }
        before != self.waiting.len()
    }
}

/// Recalls what waits.
pub async fn recall(house: &House) {
    let kept = house.desk.remembered(KEY).await.ok().flatten();
    if let Some(shelf) = kept.and_then(|text| serde_json::from_str(&text).ok()) {
        house.with_shelf(|own| *own = shelf);
    }
    sweep(house).await;
}

async fn remember(house: &House) {
    let shelf = house.with_shelf(|shelf| shelf.clone());
    let Ok(text) = serde_json::to_string(&shelf) else {
        return;
    };
    if let Err(error) = house.desk.remember(KEY, &text).await {
        tracing::warn!("messages that wait could not be remembered: {error}");
    }
}

/// Forgets what waits no longer: too old, or all its posts closed.
async fn sweep(house: &House) {
    let old = house.desk.now() - LONGEST;
    let waiting = house.with_shelf(|shelf| shelf.waiting.clone());
    let mut done = Vec::new();
    for it in waiting {
        let open = talk::open_posts(house, &it.place).await;
        let closed = open.is_ok_and(|open| {
            !it.posts
                .iter()
                .any(|post| open.iter().any(|row| row.post == post.post))
        });
        if closed || it.since < old {
            done.push(it.message);
        }
    }
    if house.with_shelf(|shelf| shelf.settle(|it| done.contains(&it.message))) {
        remember(house).await;
    }
}

/// Forgets the words of a message that was edited or deleted.
pub async fn forget(house: &House, message: MessageId) {
    let changed = house.with_shelf(|shelf| {
        let changed = shelf.settle(|it| it.message == message.get());
        shelf.settled.retain(|id| *id != message.get());
        changed
    });
    if changed {
        remember(house).await;
    }
}

/// Forgets all that waits of people who are erased.
pub async fn erase(house: &House, place: &Place, users: &[String]) {
    let theirs = |it: &Waiting| users.iter().any(|user| it.is_of(place, user));
    if house.with_shelf(|shelf| shelf.settle(theirs)) {
        remember(house).await;
    }
}

/// Whether something waits of a person.
pub fn waits(house: &House, place: &Place, user: &str) -> bool {
    house.with_shelf(|shelf| shelf.waiting.iter().any(|it| it.is_of(place, user)))
}

/// Puts what waits of a person into what is kept of them.
pub fn with_waiting(house: &House, place: &Place, user: &str, kept: Value) -> Value {
    let mut kept = explained(kept);
    let waiting: Vec<Value> = house.with_shelf(|shelf| {
        let theirs = shelf.waiting.iter().filter(|it| it.is_of(place, user));
        theirs
            .map(|it| json!({ "text": it.text, "written_at": it.since }))
            .collect()
    });
    if let Some(kept) = kept.as_object_mut() {
        kept.insert("waits_for_your_word".into(), waiting.into());
    }
    kept
}

/// Whether a message was asked about before.
pub fn knows(house: &House, message: MessageId) -> bool {
    house.with_shelf(|shelf| shelf.knows(message.get()))
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
        message: spoken.id.get(),
        channel: spoken.channel.get(),
        user: spoken.user.get(),
        place: place.clone(),
        text,
        why: asked.why,
        question: asked.message,
        posts: asked.posts,
        hidden: false,
        since: house.desk.now(),
    };
    // Remembered before it is taken away: a crash in between loses nothing that was typed.
    house.with_shelf(|shelf| shelf.put(waiting.clone()));
    remember(house).await;
    let hidden = talk::hide(house, place, spoken).await;
    let waiting = Waiting { hidden, ..waiting };
    house.with_shelf(|shelf| shelf.put(waiting.clone()));
    remember(house).await;
    if talk::tell(house, spoken.user, &question(&waiting), &nonce("h", spoken)).await {
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
    let name = talk::shown_name(house, place, &person.name).await;
    let look = buttons::button(
        Press::Held(id(&waiting), HeldPress::Look).id(place),
        "Decide",
        ButtonStyle::Primary,
    );
    let letter = Letter::text(format!(
        "{name}, your message waits for your word, and nobody else sees it until then. Press Decide to say what it is to be."
    ))
    .row(CreateActionRow::Buttons(vec![look]));
    let message = letter.message(&nonce("k", spoken));
    if let Err(error) = spoken.channel.send_message(&house.http, message).await {
        tracing::warn!("a member could not be asked: {}", brief(&error));
    }
    Ok(())
}

fn id(waiting: &Waiting) -> i64 {
    i64::try_from(waiting.message).unwrap_or_default()
}

/// The question for the writer alone, with their text in full.
fn question(waiting: &Waiting) -> Letter {
    let place = &waiting.place;
    let quote = words::plain(&waiting.text);
    let head = match waiting.hidden {
        true => {
            "You wrote this where the others can read it, so I have taken it out of sight for you:"
        }
        false => {
            "You wrote this where the others can read it, and I may not take it away. Please delete it, so that they can think for themselves:"
        }
    };
    let mut letter = Letter::text(format!("{head} ||{quote}||\n\n{}", waiting.question));
    let mut row = Vec::new();
    let only = waiting.posts.len() == 1;
    for post in &waiting.posts {
        let label = match (waiting.why, only) {
            (Why::MayTell, true) => "It is my answer".to_owned(),
            (Why::MayTell, false) => format!("Answer to position {}", post.number),
            _ => format!("Send it to position {}", post.number),
        };
        let id = Press::Held(id(waiting), HeldPress::Answer(post.post)).id(place);
        row.push(buttons::button(id, &label, ButtonStyle::Primary));
    }
    if waiting.why == Why::MayTell {
        let label = match waiting.hidden {
            true => "Say it to all",
            false => "It may stay",
        };
        let id = Press::Held(id(waiting), HeldPress::Say).id(place);
        row.push(buttons::button(id, label, ButtonStyle::Secondary));
    }
    row.push(buttons::button(
        Press::Held(id(waiting), HeldPress::Drop).id(place),
        "Drop it",
        ButtonStyle::Secondary,
    ));
    // Two choices besides the posts; five rows of five are allowed.
    for buttons in row.chunks(IN_A_ROW).take(5) {
        letter = letter.row(CreateActionRow::Buttons(buttons.to_vec()));
    }
    letter
}

/// What is said of a message that waits no longer.
const GONE: &str = "That message waits no longer: it was settled, changed, or its position has closed. Write it again if you like.";

fn waiting_of(house: &House, user: UserId, message: i64) -> Option<Waiting> {
    house.with_shelf(|shelf| {
        shelf
            .waiting
            .iter()
            .find(|it| it.user == user.get() && id(it) == message)
            .cloned()
    })
}

async fn settled(house: &House, waiting: &Waiting) {
    house.with_shelf(|shelf| shelf.settle(|it| it.message == waiting.message));
    remember(house).await;
}

/// The question, for a writer who could not be asked directly.
pub fn look(house: &House, user: UserId, message: i64) -> Answer<Letter> {
    match waiting_of(house, user, message) {
        Some(waiting) => Ok(question(&waiting)),
        None => said("No message of yours waits here."),
    }
}

/// The writer's choice.
pub async fn chosen(
    house: &House,
    user: UserId,
    message: i64,
    choice: HeldPress,
    person: &Person,
) -> Answer<Letter> {
    let Some(waiting) = waiting_of(house, user, message) else {
        return said(GONE);
    };
    let place = &waiting.place;
    let left = match waiting.hidden {
        true => "",
        false => "\n\nThe message is still there for all to read; please delete it.",
    };
    match choice {
        HeldPress::Answer(post) => {
            let source = waiting.message.to_string();
            let (desk, text) = (&house.desk, &waiting.text);
            let taken = match waiting.why {
                Why::MayTell => desk.answer_surely(place, person, post, &source, text).await,
                Why::Elsewhere | Why::Several => {
                    desk.answer_to(place, person, post, &source, text).await
                }
            }?;
            match taken {
                Taken::Answer(sheet) => {
                    settled(house, &waiting).await;
                    let mut letter = sheets::verdict::letter(place, &sheet);
                    letter.text.push_str(left);
                    Ok(letter)
                }
                Taken::AskedBack(asked) => {
                    let again = Waiting {
                        why: asked.why,
                        question: asked.message,
                        posts: asked.posts,
                        ..waiting
                    };
                    house.with_shelf(|shelf| shelf.put(again.clone()));
                    remember(house).await;
                    Ok(question(&again))
                }
            }
        }
        HeldPress::Say if waiting.hidden => {
            settled(house, &waiting).await;
            let name = talk::shown_name(house, place, &person.name).await;
            let letter = Letter::text(format!("**{name}**: {}", words::plain(&waiting.text)));
            for (i, page) in letter.pages().iter().enumerate() {
                let nonce = format!("s{:x}-{i}", waiting.message);
                ChannelId::new(waiting.channel)
                    .send_message(&house.http, page.message(&nonce))
                    .await?;
            }
            Ok(Letter::text("Said to all, in your name."))
        }
        HeldPress::Say => {
            settled(house, &waiting).await;
            Ok(Letter::text("It stays where you wrote it."))
        }
        _ => {
            settled(house, &waiting).await;
            Ok(Letter::text(format!(
                "Dropped; nothing is kept of it.{left}"
            )))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chat::discord::house;

    fn waiting(message: u64) -> Waiting {
        Waiting {
            message,
            channel: 2,
            user: 3,
            place: house::place(ChannelId::new(u64::MAX)),
            text: "perhaps Qh7".into(),
            why: Why::MayTell,
            question: "What is it to be?".into(),
            posts: (0..12)
                .map(|n| OpenPost {
                    post: i64::MAX - n,
                    number: n,
                    topic: None,
                })
                .collect(),
            hidden: true,
            since: DateTime::UNIX_EPOCH,
        }
    }

    #[test]
    fn what_is_settled_keeps_no_words_and_is_not_asked_again() {
        let mut shelf = Shelf::default();
        shelf.put(waiting(1));
        shelf.put(waiting(2));
        assert!(shelf.settle(|it| it.message == 1));
        assert!(shelf.knows(1) && shelf.knows(2));
        assert_eq!(shelf.waiting.len(), 1);
        let kept = serde_json::to_string(&shelf).expect("json");
        assert_eq!(kept.matches("Qh7").count(), 1, "{kept}");
    }

    #[test]
    fn buttons_fit_into_rows_and_ids() {
        let letter = question(&waiting(i64::MAX as u64));
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
