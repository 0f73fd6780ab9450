//! Messages over REST: sent once with a nonce, read back, edited, taken away; and whom they notify.

use std::{
    collections::HashSet,
    time::{Duration, Instant},
};

use serde_json::{Value, json};

use super::{
    errors::Refusal,
    gateway::{self, Event},
    ids::{self, id_of},
    json, limits,
    log::{Audience, SentFile},
    permissions as may,
    routes::{Call, Done},
    world::{Channel, ChannelKind, File, Message, World},
};

/// For how long a nonce is remembered.
pub const NONCE_WINDOW: Duration = Duration::from_secs(300);

/// The channel, when the bot can see it.
pub fn seen(world: &World, id: u64) -> Result<&Channel, Refusal> {
    let channel = world.channel(id).ok_or_else(Refusal::unknown_channel)?;
    if channel.kind != ChannelKind::Direct && !world.bot_may(channel, may::VIEW_CHANNEL) {
        return Err(Refusal::missing_access());
    }
    Ok(channel)
}

/// Who reads what is put into a channel.
pub fn audience(world: &World, channel: u64) -> Audience {
    match world.channel(channel) {
        Some(c) if c.kind == ChannelKind::Direct => Audience::Only(c.owner),
        _ => Audience::Channel(channel),
    }
}

/// `POST /channels/{id}/messages`
pub fn create(world: &mut World, call: &Call<'_>, id: u64) -> Result<Done, Refusal> {
    let channel = seen(world, id)?.clone();
    let body = call.body;
    let send = if channel.kind == ChannelKind::Thread {
        may::SEND_MESSAGES_IN_THREADS
    } else {
        may::SEND_MESSAGES
    };
    let mut needed = send;
    if body["embeds"]
        .as_array()
        .is_some_and(|embeds| !embeds.is_empty())
    {
        needed |= may::EMBED_LINKS;
    }
    if !call.files.is_empty() {
        needed |= may::ATTACH_FILES;
    }
    if !world.bot_may(&channel, needed) {
        return Err(Refusal::missing_permissions());
    }
    if channel.kind == ChannelKind::Direct
        && !world
            .users
            .get(&channel.owner)
            .is_some_and(|user| user.takes_direct)
    {
        return Err(Refusal::new(
            403,
            50007,
            "Cannot send messages to this user",
        ));
    }
    if channel.locked && !world.bot_may(&channel, may::MANAGE_THREADS) {
        return Err(Refusal::new(400, 50083, "Thread is archived"));
    }
    limits::message(body, call.files, true)?;
    let reference = id_of(&body["message_reference"]["message_id"]);
    if let Some(reference) = reference {
        if !world.bot_may(&channel, may::READ_MESSAGE_HISTORY) {
            return Err(Refusal::new(
                400,
                160_002,
                "Cannot reply without permission to read message history",
            ));
        }
        let there = world
            .messages
            .get(&reference)
            .is_some_and(|m| m.channel == id && m.only.is_none());
        if !there && body["message_reference"]["fail_if_not_exists"] != false {
            return Err(Refusal::form(&[super::errors::Fault::other(
                "message_reference",
                "REPLIES_UNKNOWN_MESSAGE",
                "Unknown message",
            )]));
        }
    }
    let nonce = match &body["nonce"] {
        Value::Null => None,
        Value::String(text) => Some(text.clone()),
        other => Some(other.to_string()),
    };
    world
        .nonces
        .retain(|_, (when, _)| when.elapsed() < NONCE_WINDOW);
    if let (Some(nonce), true) = (&nonce, body["enforce_nonce"] == true)
        && let Some((_, earlier)) = world.nonces.get(&(id, nonce.clone()))
        && let Some(message) = world.messages.get(earlier)
    {
        // Not created again: the first one is given back, and nobody sees anything new.
        return Done::told(json::message(world, message, true));
    }
    let made = world.ids.next();
    let (attachments, _) = store_files(world, body, call.files);
    let mut message = Message {
        id: made,
        channel: id,
        author: world.bot,
        content: body["content"].as_str().unwrap_or_default().into(),
        embeds: list(&body["embeds"]),
        components: list(&body["components"]),
        attachments,
        flags: body["flags"].as_u64().unwrap_or(0),
        kind: if reference.is_some() { 19 } else { 0 },
        reference,
        nonce: (!body["nonce"].is_null()).then(|| body["nonce"].clone()),
        ..Message::default()
    };
    notify(world, &channel, &mut message, &body["allowed_mentions"]);
    if let Some(nonce) = nonce {
        world.nonces.insert((id, nonce), (Instant::now(), made));
    }
    if let Some(channel) = world.channels.get_mut(&id) {
        channel.archived = false;
    }
    world.messages.insert(made, message);
    world.note_shown(made, false);
    gateway::message_event(world, Event::Create, made);
    let message = &world.messages[&made];
    Done::shown(json::message(world, message, true), audience(world, id))
}

/// Keeps the files of a request; gives their ids, and the ids of earlier ones that are to stay.
pub fn store_files(world: &mut World, body: &Value, files: &[SentFile]) -> (Vec<u64>, Vec<u64>) {
    let listed = list(&body["attachments"]);
    let mut fresh = Vec::new();
    for file in files {
        let about = listed
            .iter()
            .find(|item| id_of(&item["id"]).is_some_and(|id| file.field == format!("files[{id}]")));
        let id = world.ids.next();
        let kind = if file.kind.is_empty() {
            "application/octet-stream"
        } else {
            &file.kind
        };
        world.files.insert(
            id,
            File {
                id,
                name: file.name.clone(),
                description: about
                    .and_then(|item| item["description"].as_str())
                    .map(str::to_string),
                kind: kind.to_string(),
                bytes: file.bytes.clone(),
                told_size: None,
            },
        );
        fresh.push(id);
    }
    let kept = listed
        .iter()
        .filter_map(|item| id_of(&item["id"]))
        .filter(|id| world.files.contains_key(id) && !fresh.contains(id))
        .collect();
    (fresh, kept)
}

/// A list that may be absent.
pub fn list(value: &Value) -> Vec<Value> {
    value.as_array().cloned().unwrap_or_default()
}

/// Works out whom a message names and whom it notifies.
pub fn notify(world: &World, channel: &Channel, message: &mut Message, allowed: &Value) {
    let readers = world.readers(channel);
    let parses = |kind: &str| match &allowed["parse"] {
        Value::Array(kinds) => kinds.iter().any(|k| k == kind),
        _ => allowed.is_null(),
    };
    let listed: HashSet<u64> = list(&allowed["users"]).iter().filter_map(id_of).collect();
    let named = named_in(&message.content);
    message.mentions = named
        .iter()
        .copied()
        .filter(|id| world.users.contains_key(id))
        .filter(|id| parses("users") || listed.contains(id))
        .collect();
    message.pings = message
        .mentions
        .iter()
        .copied()
        .filter(|id| readers.contains(id) || *id == world.bot)
        .collect();
    let wakes_author = if allowed.is_null() {
        true
    } else {
        allowed["replied_user"] == true
    };
    if let Some(answered) = message.reference.and_then(|id| world.messages.get(&id))
        && wakes_author
        && answered.author != message.author
    {
        message.mentions.push(answered.author);
        message.pings.insert(answered.author);
    }
    let may_all = may::in_channel(world, channel, message.author) & may::MENTION_EVERYONE != 0;
    let cries = message.content.contains("@everyone") || message.content.contains("@here");
    message.pings_many = may_all
        && (cries && parses("everyone") || message.content.contains("<@&") && parses("roles"));
}

fn named_in(text: &str) -> Vec<u64> {
    text.split("<@")
        .skip(1)
        .filter_map(|rest| rest.split_once('>'))
        .filter_map(|(id, _)| id.trim_start_matches('!').parse().ok())
        .collect()
}

/// Whether the bot is told what a message says.
pub fn readable(world: &World, message: &Message, by_intent: bool) -> bool {
    by_intent
        || message.author == world.bot
        || message.mentions.contains(&world.bot)
        || world
            .channel(message.channel)
            .is_some_and(|channel| channel.kind == ChannelKind::Direct)
}

/// `GET /channels/{id}/messages`
pub fn list_params(call: &Call<'_>) -> Result<(usize, Option<u64>, Option<u64>), Refusal> {
    let limit = call
        .param("limit")
        .map_or(Some(50), |text| text.parse().ok());
    match limit {
        Some(limit @ 1..=100) => Ok((
            limit,
            call.param("after").and_then(|id| id.parse().ok()),
            call.param("before").and_then(|id| id.parse().ok()),
        )),
        _ => Err(Refusal::form(&[super::errors::Fault::other(
            "limit",
            "NUMBER_TYPE_MAX",
            "int value should be between 1 and 100.",
        )])),
    }
}

/// Reads a channel back, newest first.
pub fn list_of(
    world: &World,
    channel: u64,
    limit: usize,
    after: Option<u64>,
    before: Option<u64>,
) -> Vec<Value> {
    let by_intent = world.granted_intents & gateway::MESSAGE_CONTENT != 0;
    let fits = |message: &&Message| {
        message.channel == channel
            && message.only.is_none()
            && after.is_none_or(|id| message.id > id)
            && before.is_none_or(|id| message.id < id)
    };
    let found: Vec<&Message> = if after.is_some() {
        // `after` gives the ones next to it, but still newest first.
        let mut found: Vec<_> = world.messages.values().filter(fits).take(limit).collect();
        found.reverse();
        found
    } else {
        world
            .messages
            .values()
            .rev()
            .filter(fits)
            .take(limit)
            .collect()
    };
    found
        .into_iter()
        .map(|message| json::message(world, message, readable(world, message, by_intent)))
        .collect()
}

/// `GET /channels/{id}/messages`
pub fn list_call(world: &World, call: &Call<'_>, id: u64) -> Result<Done, Refusal> {
    let channel = seen(world, id)?;
    let (limit, after, before) = list_params(call)?;
    if !world.bot_may(channel, may::READ_MESSAGE_HISTORY) {
        return Done::told(json!([]));
    }
    Done::told(json!(list_of(world, id, limit, after, before)))
}

fn own_place(world: &World, channel: u64, id: u64) -> Result<&Message, Refusal> {
    seen(world, channel)?;
    world
        .messages
        .get(&id)
        .filter(|message| message.channel == channel && message.only.is_none())
        .ok_or_else(Refusal::unknown_message)
}

/// `GET /channels/{id}/messages/{message}`
pub fn get(world: &World, channel: u64, id: u64) -> Result<Done, Refusal> {
    let message = own_place(world, channel, id)?;
    if !world.bot_may(seen(world, channel)?, may::READ_MESSAGE_HISTORY) {
        return Err(Refusal::missing_permissions());
    }
    let by_intent = world.granted_intents & gateway::MESSAGE_CONTENT != 0;
    Done::told(json::message(
        world,
        message,
        readable(world, message, by_intent),
    ))
}

/// `PATCH /channels/{id}/messages/{message}`
pub fn edit(world: &mut World, call: &Call<'_>, channel: u64, id: u64) -> Result<Done, Refusal> {
    let message = own_place(world, channel, id)?;
    if message.author != world.bot {
        return Err(Refusal::new(
            403,
            50005,
            "Cannot edit a message authored by another user",
        ));
    }
    limits::message(call.body, call.files, false)?;
    apply_edit(world, call, id);
    world.note_shown(id, true);
    gateway::message_event(world, Event::Update, id);
    let shown = json::message(world, &world.messages[&id], true);
    Done::shown(shown, audience(world, channel))
}

/// Changes a message as an edit says: what is absent stays.
pub fn apply_edit(world: &mut World, call: &Call<'_>, id: u64) {
    let (fresh, kept) = store_files(world, call.body, call.files);
    let names_files = !call.body["attachments"].is_null();
    let body = call.body;
    let Some(message) = world.messages.get_mut(&id) else {
        return;
    };
    if let Some(map) = body.as_object() {
        if map.contains_key("content") {
            message.content = body["content"].as_str().unwrap_or_default().into();
        }
        if map.contains_key("embeds") {
            message.embeds = list(&body["embeds"]);
        }
        if map.contains_key("components") {
            message.components = list(&body["components"]);
        }
    }
    if names_files {
        message.attachments.retain(|file| kept.contains(file));
    }
    message.attachments.extend(fresh);
    message.edited = Some(ids::now_ms());
    message.loading = false;
}

/// `DELETE /channels/{id}/messages/{message}`
pub fn delete(world: &mut World, channel: u64, id: u64) -> Result<Done, Refusal> {
    let message = own_place(world, channel, id)?;
    let place = seen(world, channel)?;
    if message.author != world.bot
        && (place.kind == ChannelKind::Direct || !world.bot_may(place, may::MANAGE_MESSAGES))
    {
        return Err(Refusal::missing_permissions());
    }
    if let Some(gone) = world.messages.remove(&id) {
        world.note_taken_away(&gone);
    }
    gateway::deleted_event(world, channel, id);
    Done::quietly(Audience::Nobody)
}

/// `PUT` and `DELETE /channels/{id}/messages/{message}/reactions/{emoji}/@me`
pub fn react(
    world: &mut World,
    call: &Call<'_>,
    channel: u64,
    id: u64,
    emoji: &str,
) -> Result<Done, Refusal> {
    own_place(world, channel, id)?;
    let place = seen(world, channel)?;
    let needed = may::READ_MESSAGE_HISTORY | may::ADD_REACTIONS;
    if call.method == "PUT" && !world.bot_may(place, needed) {
        return Err(Refusal::missing_permissions());
    }
    let bot = world.bot;
    let emoji = decode(emoji);
    if let Some(message) = world.messages.get_mut(&id) {
        message
            .reactions
            .retain(|(e, user)| !(*e == emoji && *user == bot));
        if call.method == "PUT" {
            message.reactions.push((emoji.clone(), bot));
        }
    }
    if call.method == "PUT" {
        world.note_sign(id, &emoji);
    }
    Done::quietly(audience(world, channel))
}

/// Undoes percent-encoding.
fn decode(text: &str) -> String {
    let mut bytes = Vec::new();
    let mut rest = text.as_bytes();
    while let Some((&first, tail)) = rest.split_first() {
        let byte = (first == b'%')
            .then(|| tail.get(..2))
            .flatten()
            .and_then(|hex| std::str::from_utf8(hex).ok())
            .and_then(|hex| u8::from_str_radix(hex, 16).ok());
        match byte {
            Some(byte) => {
                bytes.push(byte);
                rest = &tail[2..];
            }
            None => {
                bytes.push(first);
                rest = tail;
            }
        }
    }
    String::from_utf8_lossy(&bytes).into_owned()
}
