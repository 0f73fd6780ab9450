//! Messages among others and direct ones: which are answers, and who hears what of it.
//!
//! The rules, as members are told them:
//! - In the group's channel, in a post's thread, and in a reply to the post, a message is taken when it
//!   plainly is an answer; talk is left alone, except that what may tell a move of a sealed post waits
//!   for its writer's word, see `held`. A direct message, or one that calls the bot by name, is
//!   always taken as an answer.
//! - In a sealed group the verdict goes to the member directly, and the message is taken out of sight
//!   where that is allowed. Where it is not, nothing the bot shows says whether the move was right.
//! - In an open group the verdict's word comes behind spoiler marks.
//! - Edits and deletions: see the desk's rules; what was decided stands.

use poise::serenity_prelude as serenity;
use serenity::{ChannelId, MessageId, MessageType, ReactionType, UserId};

use super::{
    buttons::{self, Press},
    fit, held,
    house::{self, House, Where},
    letter::Letter,
    oops::brief,
    sheets,
    tell::{hide, tell},
    text::{Plain, Study, Talk},
    which_post::{aimed, named, open_for, which_one},
};
use crate::chat::common::public;
use crate::desk::{
    Came, DeskError, Kind, Outcome, Person, Place, PostId, PostRow, Taken, Verdict, VerdictSheet,
    Why,
};
use crate::words::Words;

/// Put under an answer whose sender cannot be told: the same whatever the verdict.
const TAKEN: &str = "📨";

/// Something said, as far as it matters here.
#[derive(Clone, Debug)]
pub struct Spoken {
    /// The message.
    pub id: MessageId,
    /// Where.
    pub channel: ChannelId,
    /// Whether it is a direct message.
    pub direct: bool,
    /// Who.
    pub user: UserId,
    /// Their name here.
    pub name: String,
    /// What.
    pub text: String,
    /// The message it answers.
    pub answers: Option<MessageId>,
}

impl Spoken {
    /// From a new message; `None` for what no person said.
    pub fn new(message: &serenity::Message) -> Option<Self> {
        let ordinary = matches!(
            message.kind,
            MessageType::Regular | MessageType::InlineReply
        );
        if message.author.bot || message.webhook_id.is_some() || !ordinary {
            return None;
        }
        let nick = message
            .member
            .as_ref()
            .and_then(|member| member.nick.as_deref());
        Some(Self {
            id: message.id,
            channel: message.channel_id,
            direct: message.guild_id.is_none(),
            user: message.author.id,
            name: house::shown(&message.author, nick),
            text: message.content.clone(),
            answers: message
                .message_reference
                .as_ref()
                .and_then(|reference| reference.message_id),
        })
    }

    /// From an edit; `None` where it holds no new text.
    pub fn edited(event: &serenity::MessageUpdateEvent) -> Option<Self> {
        let author = event.author.as_ref().filter(|author| !author.bot)?;
        event.edited_timestamp?;
        let nick = event
            .member
            .as_ref()
            .and_then(Option::as_ref)
            .and_then(|m| m.nick.as_deref());
        let reference = event.message_reference.as_ref().and_then(Option::as_ref);
        Some(Self {
            id: event.id,
            channel: event.channel_id,
            direct: event.guild_id.is_none(),
            user: author.id,
            name: house::shown(author, nick),
            text: event.content.clone()?,
            answers: reference.and_then(|reference| reference.message_id),
        })
    }
}

/// A message was written.
pub async fn said(house: &House, spoken: Spoken) {
    house.posts_arrived().await;
    house.note_heard(spoken.channel, spoken.id);
    let done = if spoken.direct {
        house.meet(spoken.user, spoken.channel).await;
        to_us(house, &spoken).await
    } else {
        among_others(house, &spoken).await
    };
    match done {
        Ok(()) => {}
        // One whom a coach has shut out is told so; nothing of it is taken.
        Err(DeskError::NotAllowed(why)) => {
            let letter = Letter::text(fit::plain(&speaking(house, &spoken, &[]).await.say(&why)));
            tell(house, spoken.user, &letter, &nonce("x", &spoken)).await;
        }
        Err(error) => {
            tracing::error!(message = %spoken.id, "a message could not be dealt with: {error}");
        }
    }
}

/// The text without our own name, and whether our name was in it.
pub fn without_name(text: &str, me: UserId) -> (String, bool) {
    let (plain, nick) = (format!("<@{me}>"), format!("<@!{me}>"));
    let named = text.contains(&plain) || text.contains(&nick);
    let text = text.replace(&plain, " ").replace(&nick, " ");
    (text.trim().to_owned(), named)
}

pub async fn among_others(house: &House, spoken: &Spoken) -> Result<(), DeskError> {
    let Some((place, at)) = house.group_of(spoken.channel).await else {
        return Ok(());
    };
    let (text, named) = without_name(&spoken.text, house.me);
    if text.is_empty() {
        return Ok(());
    }
    let person = Person {
        user: spoken.user.to_string(),
        name: spoken.name.clone(),
        language: None,
    };
    if held::knows(house, spoken.id).await? {
        return Ok(());
    }
    let source = spoken.id.to_string();
    let chosen = match post_meant(house, &place, spoken, at).await? {
        Meant::Post(post) => match house.desk.kind(&place, post).await? {
            Kind::Problem { .. } => Some(post),
            // In its thread people talk; what replies to the question itself answers it.
            Kind::Question if spoken.answers.is_none() => None,
            Kind::Question => {
                let taken = house
                    .desk
                    .member()
                    .answer_to(&place, &person, post, &source, &text)
                    .await?;
                return match taken {
                    Taken::Answer(sheet) => respond(house, &place, &person, spoken, &sheet).await,
                    Taken::AskedBack(asked) => {
                        held::hold(house, &place, &person, spoken, text, asked).await
                    }
                };
            }
            Kind::Words => {
                let words = house.words_for(&place, &person).await;
                let letter = Letter::text(words.say(&Talk::ThereToBeRead));
                tell(house, spoken.user, &letter, &nonce("w", spoken)).await;
                None
            }
        },
        Meant::Open => None,
        Meant::None => return Ok(()),
    };
    let came = house
        .desk
        .member()
        .take(&place, &person, chosen, &source, &text)
        .await?;
    let meant = match came {
        Came::Answer(sheet) => return respond(house, &place, &person, spoken, &sheet).await,
        // Heard again after a replay, or read back: it was dealt with then.
        Came::Again(_) => return Ok(()),
        // Called by name, it is an answer: to the only post it may be about, or the latest.
        Came::AskedBack(asked) if named && asked.why == Why::MayTell => {
            match asked.posts.as_slice() {
                [only] => Some(only.post),
                _ => chosen,
            }
        }
        Came::AskedBack(asked) => {
            return held::hold(house, &place, &person, spoken, text, asked).await;
        }
        Came::Talk if named => match (chosen, house.desk.member().ask_which_open(&place).await?) {
            (None, Some(asked)) => {
                return held::hold(house, &place, &person, spoken, text, asked).await;
            }
            _ => chosen,
        },
        Came::Talk => return Ok(()),
    };
    let post = match meant {
        Some(post) => Some(post),
        None => house.desk.open_post(&place).await?.map(|sheet| sheet.post),
    };
    let Some(post) = post else { return Ok(()) };
    match house
        .desk
        .member()
        .answer_to(&place, &person, post, &source, &text)
        .await?
    {
        Taken::Answer(sheet) => respond(house, &place, &person, spoken, &sheet).await,
        Taken::AskedBack(asked) => held::hold(house, &place, &person, spoken, text, asked).await,
    }
}

/// The post that a message is about.
#[derive(Clone, Copy, Debug)]
enum Meant {
    Post(PostId),
    Open,
    None,
}

async fn post_meant(
    house: &House,
    place: &Place,
    spoken: &Spoken,
    at: Where,
) -> Result<Meant, DeskError> {
    if let Some(answered) = spoken.answers
        && let Some(post) = house.desk.find_post(place, &answered.to_string()).await?
    {
        return Ok(Meant::Post(post));
    }
    Ok(match at {
        Where::Channel => Meant::Open,
        // Of a thread that is none of ours, nothing is an answer.
        Where::Thread => match house
            .desk
            .find_post(place, &spoken.channel.to_string())
            .await?
        {
            Some(post) => Meant::Post(post),
            None => Meant::None,
        },
    })
}

/// A name as others may read it: one that could tell a move of an open post is left out.
pub async fn shown_name(house: &House, place: &Place, name: &str) -> Option<Plain> {
    let shown = public::name_is(&house.desk, place, name).await;
    shown.then(|| Plain::of(name))
}

/// Tells what came of an answer that was written where others read.
pub async fn respond(
    house: &House,
    place: &Place,
    person: &Person,
    spoken: &Spoken,
    sheet: &VerdictSheet,
) -> Result<(), DeskError> {
    let open = public::answers_are(&house.desk, place).await?;
    let says_a_move = sheet.outcome != Outcome::Judged(Verdict::Unreadable);
    let hidden = says_a_move && hide(house, place, spoken).await;
    // What was answered to a question is for its writer and the coach, whatever the group does.
    let judged = sheet.outcome.verdict().is_some();
    match open && judged && says_a_move {
        true => in_public(house, place, person, spoken, sheet, hidden).await,
        false => in_private(house, place, person, spoken, sheet, hidden).await,
    }
    Ok(())
}

async fn in_private(
    house: &House,
    place: &Place,
    person: &Person,
    spoken: &Spoken,
    sheet: &VerdictSheet,
    hidden: bool,
) {
    let mut letter = sheets::verdict::letter(place, sheet);
    if sheet.outcome != Outcome::Judged(Verdict::Unreadable) {
        let words = house.words_for(place, person).await;
        let (said, _) = without_name(&spoken.text, house.me);
        let quote = Plain::quote(&said);
        let head = words.say(&match hidden {
            true => Talk::TakenOutOfSight { quote },
            false => Talk::PleaseDelete { quote },
        });
        letter.text = format!("{head}\n\n{}", letter.text);
    }
    if tell(house, spoken.user, &letter, &nonce("v", spoken)).await {
        return;
    }
    // Nobody else may learn the verdict, so what is said here is the same whatever it was.
    if hidden {
        let words = house.words_of_group(place).await;
        let text = match shown_name(house, place, &person.name).await {
            Some(name) => Talk::AnswerSealed { name },
            None => Talk::AnswerSealedOfSomebody,
        };
        let letter =
            Letter::text(words.say(&text)).row(buttons::progress_only(words, place, sheet.post));
        let message = letter.message(&nonce("t", spoken));
        if let Err(error) = spoken.channel.send_message(&house.http, message).await {
            tracing::warn!("a member could not be told: {}", brief(&error));
        }
    } else if sheet.outcome != Outcome::Judged(Verdict::Unreadable) {
        let sign = ReactionType::Unicode(TAKEN.into());
        if let Err(error) = house
            .http
            .create_reaction(spoken.channel, spoken.id, &sign)
            .await
        {
            tracing::warn!("a member could not be told: {}", brief(&error));
        }
    }
}

/// The verdict's word behind spoiler marks, and the whole behind a button for its member.
async fn in_public(
    house: &House,
    place: &Place,
    person: &Person,
    spoken: &Spoken,
    sheet: &VerdictSheet,
    hidden: bool,
) {
    let words = house.words_of_group(place).await;
    let letter = Letter::text(sheets::verdict::public(words, &person.name, sheet))
        .row(buttons::progress_only(words, place, sheet.post));
    let mut message = letter.message(&nonce("o", spoken));
    if !hidden {
        let reference = serenity::MessageReference::from((spoken.channel, spoken.id));
        message = message.reference_message(reference.fail_if_not_exists(false));
    }
    if let Err(error) = spoken.channel.send_message(&house.http, message).await {
        tracing::warn!("a verdict could not be shown: {}", brief(&error));
    }
    let full = sheets::verdict::letter(place, sheet);
    tell(house, spoken.user, &full, &nonce("v", spoken)).await;
}

/// A direct message: always an answer, to an open post of its sender's groups.
pub async fn to_us(house: &House, spoken: &Spoken) -> Result<(), DeskError> {
    let (text, _) = without_name(&spoken.text, house.me);
    if text.is_empty() {
        return Ok(());
    }
    // Read back after a start, or told twice: it was dealt with then, and what is owed for it is in the outbox.
    let source = spoken.id.to_string();
    if house
        .desk
        .member()
        .is_known(&house::place(spoken.channel), &source)
        .await?
    {
        return Ok(());
    }
    let open = open_for(house, spoken.user).await?;
    let nonce = nonce("d", spoken);
    let meant = aimed(house, spoken.user, &open, &text).await?;
    let letter = match meant.as_slice() {
        [] => Letter::text(
            speaking(house, spoken, &[])
                .await
                .say(&Study::NothingOpenToYou),
        ),
        [(place, row)] => {
            let person = house.person(place, spoken.user, &spoken.name).await;
            match house
                .desk
                .member()
                .answer(place, &person, row.post, &source, &text)
                .await
            {
                Ok(sheet) => {
                    let mut letter = sheets::verdict::letter(place, &sheet);
                    if open.len() > 1 {
                        let words = house.words_for(place, &person).await;
                        let head = named(house, words, &open, place, row).await?;
                        letter.text = format!("**{}**\n{}", fit::plain(&head), letter.text);
                    }
                    letter
                }
                Err(error) => {
                    let words = house.words_for(place, &person).await;
                    Letter::text(fit::plain(&crate::chat::said::refused(&error, words)))
                }
            }
        }
        several => {
            house.let_wait(spoken.user, spoken.id, text);
            let words = speaking(house, spoken, several).await;
            which_one(house, words, several, Press::To).await?
        }
    };
    tell(house, spoken.user, &letter, &nonce).await;
    Ok(())
}

/// The words for who wrote a direct message: those of the first group that it may be for, or that they are known
/// to belong to.
async fn speaking(house: &House, spoken: &Spoken, posts: &[(Place, PostRow)]) -> &'static Words {
    let place = match posts.first() {
        Some((place, _)) => Some(place.clone()),
        None => house.group_with(spoken.user).await,
    };
    match place {
        Some(place) => {
            let person = house.person(&place, spoken.user, &spoken.name).await;
            house.words_for(&place, &person).await
        }
        None => house.words_for_stranger().await,
    }
}

/// The same message heard twice is answered once; an edit of it anew.
pub fn nonce(kind: &str, spoken: &Spoken) -> String {
    use std::hash::{Hash, Hasher};
    let mut hasher = std::hash::DefaultHasher::new();
    (spoken.id.get(), &spoken.text).hash(&mut hasher);
    format!("{kind}{:x}", hasher.finish())
}
#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn our_name_is_no_part_of_an_answer() {
        let me = UserId::new(7);
        assert_eq!(without_name("<@7> Rd8+", me), ("Rd8+".into(), true));
        assert_eq!(without_name("Rd8+ <@!7>", me), ("Rd8+".into(), true));
        assert_eq!(without_name("Rd8+ <@8>", me), ("Rd8+ <@8>".into(), false));
    }

    #[test]
    fn nonces_fit_and_tell_edits_apart() {
        let spoken = |text: &str| Spoken {
            id: MessageId::new(u64::MAX),
            channel: ChannelId::new(1),
            direct: false,
            user: UserId::new(1),
            name: String::new(),
            text: text.into(),
            answers: None,
        };
        let (a, b) = (nonce("e", &spoken("Rd8+")), nonce("e", &spoken("Rd7")));
        assert!(a != b && a.len() + 2 <= 25, "{a}");
        assert_eq!(a, nonce("e", &spoken("Rd8+")));
        assert!(format!("d{}-9", u64::MAX).len() <= 25);
    }
}
