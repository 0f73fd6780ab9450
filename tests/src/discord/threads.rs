//! Channels over REST: threads begun from a message, put away and locked; direct conversations.

use serde_json::json;

use super::{
    errors::{Fault, Refusal},
    gateway,
    ids::id_of,
    json,
    log::Audience,
    messages::{audience, seen},
    permissions as may,
    routes::{Call, Done},
    world::{Channel, ChannelKind, Message, World},
};

/// `POST /channels/{id}/messages/{message}/threads`
pub fn start(world: &mut World, call: &Call<'_>, id: u64, message: u64) -> Result<Done, Refusal> {
    let channel = seen(world, id)?.clone();
    let name = call.body["name"].as_str().unwrap_or_default().to_string();
    if !(1..=100).contains(&name.chars().count()) {
        return Err(Refusal::form(&[Fault::length("name", 1, 100)]));
    }
    if let Some(minutes) = call.body["auto_archive_duration"].as_u64()
        && ![60, 1440, 4320, 10080].contains(&minutes)
    {
        return Err(Refusal::form(&[Fault::other(
            "auto_archive_duration",
            "BASE_TYPE_CHOICES",
            "Value must be one of {60, 1440, 4320, 10080}.",
        )]));
    }
    if channel.kind != ChannelKind::Text {
        return Err(Refusal::new(
            400,
            50024,
            "Cannot execute action on this channel type",
        ));
    }
    if !world
        .messages
        .get(&message)
        .is_some_and(|m| m.channel == id && m.only.is_none())
    {
        return Err(Refusal::unknown_message());
    }
    if !world.bot_may(&channel, may::CREATE_PUBLIC_THREADS) {
        return Err(Refusal::missing_permissions());
    }
    if world.channels.contains_key(&message) {
        return Err(Refusal::new(
            400,
            160_004,
            "A thread has already been created for this message",
        ));
    }
    let thread = Channel {
        id: message,
        kind: ChannelKind::Thread,
        guild: channel.guild,
        parent: Some(id),
        name,
        owner: world.bot,
        overwrites: Vec::new(),
        archived: false,
        locked: false,
    };
    world.channels.insert(message, thread);
    let first = world.ids.next();
    world.messages.insert(
        first,
        Message {
            id: first,
            channel: message,
            author: world.bot,
            kind: 21,
            reference: Some(message),
            ..Message::default()
        },
    );
    world.note_thread(message);
    gateway::thread_event(world, "THREAD_CREATE", message);
    let value = json::channel(world, &world.channels[&message]);
    Ok(Done {
        status: 201,
        value,
        audience: audience(world, id),
    })
}

/// `GET /channels/{id}`
pub fn look(world: &World, id: u64) -> Result<Done, Refusal> {
    Done::told(json::channel(world, seen(world, id)?))
}

/// `PATCH /channels/{id}`: puts a thread away, locks or renames it.
pub fn change(world: &mut World, call: &Call<'_>, id: u64) -> Result<Done, Refusal> {
    let channel = seen(world, id)?.clone();
    if channel.kind != ChannelKind::Thread {
        return if world.bot_may(&channel, may::MANAGE_CHANNELS) {
            Done::told(json::channel(world, &channel))
        } else {
            Err(Refusal::missing_permissions())
        };
    }
    let manages = world.bot_may(&channel, may::MANAGE_THREADS);
    let locks = !call.body["locked"].is_null();
    if !manages && (locks || channel.owner != world.bot) {
        return Err(Refusal::missing_permissions());
    }
    if let Some(thread) = world.channels.get_mut(&id) {
        if let Some(archived) = call.body["archived"].as_bool() {
            thread.archived = archived;
        }
        if let Some(locked) = call.body["locked"].as_bool() {
            thread.locked = locked;
        }
        if let Some(name) = call.body["name"].as_str() {
            thread.name = name.into();
        }
    }
    gateway::thread_event(world, "THREAD_UPDATE", id);
    let parent = channel.parent.unwrap_or(id);
    Done::shown(
        json::channel(world, &world.channels[&id]),
        Audience::Channel(parent),
    )
}

/// `POST /channels/{id}/typing`
pub fn typing(world: &World, id: u64) -> Result<Done, Refusal> {
    seen(world, id)?;
    Done::quietly(Audience::Nobody)
}

/// `PUT /channels/{id}/thread-members/@me`
pub fn join(world: &World, id: u64) -> Result<Done, Refusal> {
    let channel = seen(world, id)?;
    if channel.kind != ChannelKind::Thread {
        return Err(Refusal::new(
            400,
            50024,
            "Cannot execute action on this channel type",
        ));
    }
    Done::quietly(Audience::Nobody)
}

/// `POST /users/@me/channels`
pub fn open_direct(world: &mut World, call: &Call<'_>) -> Result<Done, Refusal> {
    let user = id_of(&call.body["recipient_id"])
        .filter(|id| world.users.get(id).is_some_and(|user| !user.bot))
        .ok_or_else(|| Refusal::new(400, 50033, "Invalid Recipient(s)"))?;
    let channel = world.open_direct(user);
    let value = json::channel(world, &world.channels[&channel]);
    Done::told(json!(value))
}
