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

use chrono::{DateTime, TimeDelta, Utc};
use futures::StreamExt as _;
use poise::serenity_prelude as serenity;
use serenity::{ChannelId, GetMessages, MessageId, MessageType, ReactionType, UserId};

use super::{
    KEY,
    buttons::{self, Press},
    held,
    house::{self, House, Where},
    letter::Letter,
    missed,
    oops::{brief, code, codes},
    sheets,
    text::{And, Answerable, Label, Or, Plain, Study, Talk},
    way::{LOOK_BACK, refused},
    words,
};
use crate::chat::common::public;
use crate::desk::{
    AskedBack, Came, DeskError, Edited, Kind, OpenPost, Outcome, Person, Place, PostId, PostRow,
    ReplyId, Taken, Verdict, VerdictSheet, Why, Withdrawn,
};
use crate::words::{Words, english};

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
            let letter = Letter::text(words::plain(&speaking(house, &spoken, &[]).await.say(&why)));
            tell(house, spoken.user, &letter, &nonce("x", &spoken)).await;
        }
        Err(error) => {
            tracing::error!(message = %spoken.id, "a message could not be dealt with: {error}");
        }
    }
}

/// The text without our own name, and whether our name was in it.
fn without_name(text: &str, me: UserId) -> (String, bool) {
    let (plain, nick) = (format!("<@{me}>"), format!("<@!{me}>"));
    let named = text.contains(&plain) || text.contains(&nick);
    let text = text.replace(&plain, " ").replace(&nick, " ");
    (text.trim().to_owned(), named)
}

async fn among_others(house: &House, spoken: &Spoken) -> Result<(), DeskError> {
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
        Came::Talk if named => match (chosen, house.desk.ask_which_open(&place).await?) {
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
async fn respond(
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

/// Takes a message out of sight, where we may.
pub async fn hide(house: &House, place: &Place, spoken: &Spoken) -> bool {
    // A thread has the permissions of its channel.
    let allowed = house::channel(place)
        .and_then(|channel| house.permissions_in(channel))
        .is_none_or(|have| have.contains(serenity::Permissions::MANAGE_MESSAGES));
    if !allowed {
        return false;
    }
    house.note_hidden(spoken.id);
    match house
        .http
        .delete_message(spoken.channel, spoken.id, None)
        .await
    {
        Ok(()) => true,
        Err(error) => {
            if code(&error) != Some(codes::MISSING_PERMISSIONS) {
                tracing::warn!(
                    "an answer could not be taken out of sight: {}",
                    brief(&error)
                );
            }
            false
        }
    }
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

/// Sends a letter to a person directly; false when they take none, or it cannot be sent now.
pub async fn tell(house: &House, user: UserId, letter: &Letter, nonce: &str) -> bool {
    match deliver(house, user, letter, nonce).await {
        Ok(there) => there,
        Err(error) => {
            tracing::warn!("a direct message could not be sent: {}", brief(&error));
            false
        }
    }
}

/// Sends a letter to a person directly; false when they take none. A verdict is in the outbox before it is
/// sent and until it is there, or will never be.
///
/// # Errors
/// When trying again may help.
pub async fn deliver(
    house: &House,
    user: UserId,
    letter: &Letter,
    nonce: &str,
) -> serenity::Result<bool> {
    let pages = letter.clone().pages();
    if let (Some(reply), Some(last)) = (letter.tells, pages.last())
        && let Err(error) = house.desk.verdict_on_its_way(reply, &last.text).await
    {
        tracing::error!("that a verdict is on its way cannot be written down: {error}");
    }
    let sent = async {
        let channel = house.direct_with(user).await?;
        for (i, page) in pages.iter().enumerate() {
            let nonce = format!("{nonce}-{i}");
            channel
                .send_message(&house.http, page.message(&nonce))
                .await?;
        }
        Ok::<_, serenity::Error>(())
    };
    let there = match sent.await {
        Ok(()) => true,
        Err(error) if refused(&error) => {
            if code(&error) != Some(codes::NO_DIRECT_MESSAGES) {
                tracing::warn!("a direct message could not be sent: {}", brief(&error));
            }
            false
        }
        Err(error) => return Err(error),
    };
    if let Some(reply) = letter.tells {
        arrived(house, reply).await;
    }
    Ok(there)
}

/// A verdict has reached its writer.
pub async fn arrived(house: &House, reply: ReplyId) {
    if let Err(error) = house.desk.verdict_arrived(reply).await {
        tracing::error!("that a verdict has arrived cannot be written down: {error}");
    }
}

/// How much Discord's clock may be behind ours.
const CLOCKS_DIFFER: TimeDelta = TimeDelta::minutes(1);

/// Whether a person was told something directly in this text, since then.
///
/// # Errors
/// When that cannot be seen now.
pub async fn was_told(
    house: &House,
    user: UserId,
    text: &str,
    since: DateTime<Utc>,
) -> serenity::Result<bool> {
    let since = missed::first_id_at((since - CLOCKS_DIFFER).timestamp_millis());
    let latest = async {
        let channel = house.direct_with(user).await?;
        let latest = GetMessages::new().limit(LOOK_BACK);
        channel.messages(&house.http, latest).await
    };
    let text = words::short(text, words::MESSAGE);
    match latest.await {
        Ok(latest) => Ok(latest.iter().any(|message| {
            message.author.id == house.me
                && message.id >= since
                && message.content.trim() == text.trim()
        })),
        Err(error) if refused(&error) => Ok(false),
        Err(error) => Err(error),
    }
}

/// A direct message: always an answer, to an open post of its sender's groups.
async fn to_us(house: &House, spoken: &Spoken) -> Result<(), DeskError> {
    let (text, _) = without_name(&spoken.text, house.me);
    if text.is_empty() {
        return Ok(());
    }
    // Read back after a start, or told twice: it was dealt with then, and what is owed for it is in the outbox.
    let source = spoken.id.to_string();
    if house
        .desk
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
                .answer(place, &person, row.post, &source, &text)
                .await
            {
                Ok(sheet) => {
                    let mut letter = sheets::verdict::letter(place, &sheet);
                    if open.len() > 1 {
                        let words = house.words_for(place, &person).await;
                        let head = named(house, words, &open, place, row).await?;
                        letter.text = format!("**{}**\n{}", words::plain(&head), letter.text);
                    }
                    letter
                }
                Err(error) => {
                    let words = house.words_for(place, &person).await;
                    Letter::text(words::plain(&crate::chat::said::refused(&error, words)))
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
        None => english(),
    }
}

/// Of the posts open for someone, those that a text is for: the only one, the one in whose position its
/// moves are legal, or all that it may be for.
pub async fn aimed(
    house: &House,
    user: UserId,
    open: &[(Place, PostRow)],
    text: &str,
) -> Result<Vec<(Place, PostRow)>, DeskError> {
    if open.len() < 2 {
        return Ok(open.to_vec());
    }
    let posts: Vec<(Place, PostId)> = open
        .iter()
        .map(|(place, row)| (place.clone(), row.post))
        .collect();
    let fitting = house.desk.aim(&posts, &user.to_string(), text).await?;
    if fitting.is_empty() {
        return Ok(open.to_vec());
    }
    Ok(open
        .iter()
        .filter(|(place, row)| {
            fitting
                .iter()
                .any(|(p, post)| p == place && *post == row.post)
        })
        .cloned()
        .collect())
}

/// Asks which of several posts is meant, with a button for each that asks for `press` at it.
pub async fn which_one(
    house: &House,
    words: &Words,
    several: &[(Place, PostRow)],
    press: fn(PostId) -> Press,
) -> Result<Letter, DeskError> {
    let one_group = several.iter().all(|(place, _)| *place == several[0].0);
    let mut letter = Letter::text(words.say(&match one_group {
        true => Talk::WhichPosition,
        false => Talk::WhichGroup,
    }));
    for five in several.chunks(5).take(5) {
        let mut row = Vec::new();
        for (place, post) in five {
            let label = named(house, words, several, place, post).await?;
            row.push(buttons::button(
                press(post.post).id(place),
                &label,
                serenity::ButtonStyle::Primary,
            ));
        }
        letter = letter.row(serenity::CreateActionRow::Buttons(row));
    }
    Ok(letter)
}

/// Asks about an answer whose moves fit other posts than the one it was sent to; its text waits in the
/// meantime.
pub fn elsewhere(
    house: &House,
    words: &Words,
    place: &Place,
    user: UserId,
    source: MessageId,
    text: &str,
    asked: &AskedBack,
) -> Letter {
    house.let_wait(user, source, text.to_owned());
    let quote = words.say(&Talk::QuotedAnswer {
        quote: Plain::quote(text),
    });
    let question = asked_back(words, asked.why, &asked.posts, true);
    let mut letter = Letter::text(format!("{quote}\n{question}"));
    for five in asked.posts.chunks(5).take(5) {
        let row = five
            .iter()
            .map(|post| {
                buttons::button(
                    Press::To(post.post).id(place),
                    &words.say(&Talk::ButtonSendTo {
                        kind: post.holds.name(),
                        number: post.number,
                    }),
                    serenity::ButtonStyle::Primary,
                )
            })
            .collect();
        letter = letter.row(serenity::CreateActionRow::Buttons(row));
    }
    letter
}

/// The question about a message of which nothing was kept yet; `hidden` where nobody else sees it.
pub fn asked_back(words: &Words, why: Why, posts: &[OpenPost], hidden: bool) -> String {
    let numbers = || posts.iter().map(|post| post.number).collect();
    let asks = |post: &OpenPost| post.holds == Kind::Question;
    words.say(&match (why, posts) {
        (Why::MayTell, [only]) if asks(only) => Talk::MayBeAnAnswer {
            number: only.number,
            hidden,
        },
        (Why::Several, several) if several.iter().any(asks) => Talk::CouldAnswer {
            posts: Or {
                or: several.iter().map(Answerable::from).collect(),
            },
        },
        (Why::MayTell, _) => Talk::MayTellMove {
            numbers: Or { or: numbers() },
            hidden,
        },
        (Why::Elsewhere, [only]) => Talk::FitsAnother {
            number: only.number,
        },
        (Why::Elsewhere | Why::Several, _) => Talk::FitsSeveral {
            numbers: And { and: numbers() },
        },
    })
}

/// A post as it is told apart from the others: by its number and topic, or by its group.
async fn named(
    house: &House,
    words: &Words,
    among: &[(Place, PostRow)],
    place: &Place,
    post: &PostRow,
) -> Result<String, DeskError> {
    let (kind, number) = (post.kind.name(), post.number);
    if among.iter().all(|(other, _)| other == place) {
        let sign = match (&post.topic, &post.kind) {
            (Some(topic), _) => topic.as_str(),
            (None, Kind::Problem { stipulation }) => stipulation.as_str(),
            (None, Kind::Question | Kind::Words) => "",
        };
        return Ok(words.say(&match sign {
            "" => Talk::PostNamed { kind, number },
            sign => Talk::PostOn {
                kind,
                number,
                topic: Label::of(sign),
            },
        }));
    }
    let group = Label::of(&house.desk.settings(place).await?.name);
    Ok(words.say(&Talk::PostOfGroup {
        group,
        kind,
        number,
    }))
}

/// How many servers are asked whether somebody new is on them.
const MOST_ASKED: usize = 200;
/// How many of them at a time.
const ASKED_AT_ONCE: usize = 8;
/// How many open posts of a group count.
const MOST_OPEN: usize = 10;

/// Open posts of the groups a person belongs to: those they have answered in, and those on whose servers
/// they were seen. Of somebody new the servers that have a post open are asked, once in a while.
pub async fn open_for(house: &House, user: UserId) -> Result<Vec<(Place, PostRow)>, DeskError> {
    let known = house.desk.open_for(KEY, &user.to_string()).await?;
    let mut places: Vec<Place> = known.into_iter().map(|(place, _)| place).collect();
    let newcomer = places.is_empty();
    let seen = house.seen_on(user);
    if newcomer || !seen.is_empty() {
        let mut unsure = Vec::new();
        for (server, channels) in house.servers_with_groups() {
            if !newcomer && !seen.contains(&server) {
                continue;
            }
            let mut open = Vec::new();
            for channel in channels {
                let place = house::place(channel);
                if !places.contains(&place) && !open_posts(house, &place).await?.is_empty() {
                    open.push(place);
                }
            }
            match seen.contains(&server) {
                true => places.extend(open),
                false if !open.is_empty() => unsure.push((server, open)),
                false => {}
            }
        }
        let servers: Vec<serenity::GuildId> = unsure.iter().map(|(server, _)| *server).collect();
        let mut ask = house.not_asked(user, &servers);
        if ask.len() > MOST_ASKED {
            tracing::warn!(
                servers = ask.len(),
                "somebody new is looked for on some only"
            );
            ask.truncate(MOST_ASKED);
        }
        let found: Vec<serenity::GuildId> = futures::stream::iter(ask.clone())
            .map(|server| async move {
                let member = house.http.get_member(server, user).await;
                member.is_ok().then_some(server)
            })
            .buffer_unordered(ASKED_AT_ONCE)
            .filter_map(std::future::ready)
            .collect()
            .await;
        house.note_asked(user, &ask);
        for server in found {
            house.note_seen(user, Some(server));
            places.extend(
                unsure
                    .iter()
                    .filter(|(asked, _)| *asked == server)
                    .flat_map(|(_, open)| open.clone()),
            );
        }
    }
    let mut all = Vec::new();
    for place in places {
        for row in open_posts(house, &place).await? {
            all.push((place.clone(), row));
        }
    }
    // In an order that does not change from one look to the next.
    all.sort_by_key(|(place, row)| (house::channel(place), row.number));
    Ok(all)
}

/// The open posts of a group by number, of the latest ones.
pub async fn open_posts(house: &House, place: &Place) -> Result<Vec<PostRow>, DeskError> {
    let mut rows = house.desk.posts(place, MOST_OPEN).await?;
    rows.retain(|row| row.open);
    rows.sort_by_key(|row| row.number);
    Ok(rows)
}

/// A message was edited.
pub async fn edited(house: &House, spoken: Spoken) {
    if let Err(error) = take_edit(house, &spoken).await {
        tracing::error!(message = %spoken.id, "an edit could not be dealt with: {error}");
    }
}

async fn take_edit(house: &House, spoken: &Spoken) -> Result<(), DeskError> {
    held::forget(house, spoken.id).await;
    let (text, _) = without_name(&spoken.text, house.me);
    let source = spoken.id.to_string();
    let places = if spoken.direct {
        house.groups().into_iter().map(house::place).collect()
    } else {
        match house.group_of(spoken.channel).await {
            Some((place, _)) => vec![place],
            None => return Ok(()),
        }
    };
    for place in places {
        let person = house.person(&place, spoken.user, &spoken.name).await;
        match house
            .desk
            .edit_reply(&place, &person, &source, &text)
            .await?
        {
            Edited::Unknown if spoken.direct => {}
            Edited::Unknown => return among_others(house, spoken).await,
            Edited::Judged(sheet) if spoken.direct => {
                let letter = sheets::verdict::letter(&place, &sheet);
                tell(house, spoken.user, &letter, &nonce("e", spoken)).await;
                return Ok(());
            }
            Edited::Judged(sheet) => return respond(house, &place, &person, spoken, &sheet).await,
            Edited::Stands(_) => {
                let words = house.words_for(&place, &person).await;
                let letter = Letter::text(words.say(&Talk::EditStands));
                tell(house, spoken.user, &letter, &nonce("e", spoken)).await;
                return Ok(());
            }
            // Nothing is kept of it any more, and others may read it.
            Edited::Talk if !spoken.direct => return among_others(house, spoken).await,
            Edited::Talk => return Ok(()),
        }
    }
    if !spoken.direct || house.change_waiting(spoken.user, spoken.id, &text) {
        return Ok(());
    }
    // What was no answer and is one now is heard; of other changes nothing is said.
    let open = open_for(house, spoken.user).await?;
    let posts: Vec<(Place, PostId)> = open
        .into_iter()
        .map(|(place, row)| (place, row.post))
        .collect();
    let user = spoken.user.to_string();
    if house.desk.aim(&posts, &user, &text).await?.is_empty() {
        return Ok(());
    }
    to_us(house, spoken).await
}

/// The same message heard twice is answered once; an edit of it anew.
pub fn nonce(kind: &str, spoken: &Spoken) -> String {
    use std::hash::{Hash, Hasher};
    let mut hasher = std::hash::DefaultHasher::new();
    (spoken.id.get(), &spoken.text).hash(&mut hasher);
    format!("{kind}{:x}", hasher.finish())
}

/// A message was deleted.
pub async fn deleted(house: &House, channel: ChannelId, id: MessageId, direct: bool) {
    if house.was_hidden(id) {
        return;
    }
    held::forget(house, id).await;
    let places = if direct {
        house.groups().into_iter().map(house::place).collect()
    } else {
        match house.group_of(channel).await {
            Some((place, _)) => vec![place],
            None => return,
        }
    };
    for place in places {
        match house.desk.withdraw_reply(&place, &id.to_string()).await {
            Ok(Withdrawn::Unknown) => {}
            Ok(Withdrawn::Stands | Withdrawn::Gone) => return,
            Err(error) => {
                tracing::error!(message = %id, "a deletion could not be dealt with: {error}");
                return;
            }
        }
    }
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
