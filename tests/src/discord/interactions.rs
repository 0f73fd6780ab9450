//! Answers to interactions: due within three seconds, once; afterwards, for fifteen minutes, edits and
//! further messages through the interaction's own webhook.

use std::time::Duration;

use serde_json::{Value, json};

use super::{
    errors::Refusal,
    gateway::{self, Event},
    json, limits,
    log::Audience,
    messages,
    routes::{Call, Done},
    world::{Answered, InteractionKind, Message, World},
};

/// For how long the first answer is waited for.
pub const FIRST_ANSWER: Duration = Duration::from_secs(3);

/// For how long a token is good after that.
pub const TOKEN_LIFE: Duration = Duration::from_secs(15 * 60);

/// The flag of a message that one person sees.
pub const PRIVATE: u64 = 64;

/// Flags an answer may carry: no embeds, private, silent.
const ALLOWED_FLAGS: u64 = 4 | PRIVATE | 1 << 12;

/// `POST /interactions/{id}/{token}/callback`
pub fn answer(world: &mut World, call: &Call<'_>, id: u64, token: &str) -> Result<Done, Refusal> {
    let unknown = || Refusal::new(404, 10062, "Unknown interaction");
    let interaction = world
        .interactions
        .get(&id)
        .filter(|interaction| interaction.token == token)
        .ok_or_else(unknown)?
        .clone();
    if interaction.answered != Answered::No {
        return Err(Refusal::new(
            400,
            40060,
            "Interaction has already been acknowledged.",
        ));
    }
    let took = interaction.at.elapsed();
    if took > FIRST_ANSWER {
        return Err(unknown());
    }
    let data = &call.body["data"];
    let kind = call.body["type"].as_u64().unwrap_or(0);
    let on_message = interaction.on.is_some();
    let fits = match (kind, interaction.kind) {
        (8, kind) => kind == InteractionKind::Autocomplete,
        (_, InteractionKind::Autocomplete) => false,
        (4 | 5, _) => true,
        (6 | 7, _) => on_message,
        (9, kind) => kind != InteractionKind::Modal,
        _ => false,
    };
    if !fits {
        return Err(Refusal::form(&[super::errors::Fault::other(
            "type",
            "INTERACTION_CALLBACK_TYPE_INVALID",
            format!("Type {kind} does not answer a {:?}", interaction.kind),
        )]));
    }
    let flags = data["flags"].as_u64().unwrap_or(0);
    if matches!(kind, 4 | 5) && flags & !ALLOWED_FLAGS != 0 {
        return Err(Refusal::form(&[super::errors::Fault::other(
            "data.flags",
            "INVALID_FLAGS",
            "These flags cannot be set",
        )]));
    }
    let (answered, original, audience) = match kind {
        4 | 5 => {
            let loading = kind == 5;
            if !loading {
                limits::message(data, call.files, true)?;
            }
            let inner = Call {
                body: data,
                ..*call
            };
            let id = put_up(world, &inner, &interaction.clone(), flags, loading);
            let audience = audience_of(world, id);
            let answered = if loading {
                Answered::Deferred
            } else {
                Answered::Message
            };
            (answered, Some(id), audience)
        }
        6 => {
            // The change is promised; until it comes the message counts as waiting for it.
            if let Some(message) = interaction.on.and_then(|on| world.messages.get_mut(&on)) {
                message.loading = true;
            }
            (Answered::Update, interaction.on, Audience::Nobody)
        }
        7 => {
            limits::message(data, call.files, false)?;
            let on = interaction.on.ok_or_else(unknown)?;
            messages::apply_edit(
                world,
                &Call {
                    body: data,
                    ..*call
                },
                on,
            );
            gateway::message_event(world, Event::Update, on);
            (Answered::Update, Some(on), audience_of(world, on))
        }
        8 => {
            limits::choices(&data["choices"])?;
            (
                Answered::Choices(data["choices"].clone()),
                None,
                Audience::Only(interaction.user),
            )
        }
        _ => {
            limits::modal(data)?;
            (
                Answered::Modal(data.clone()),
                None,
                Audience::Only(interaction.user),
            )
        }
    };
    if let Some(interaction) = world.interactions.get_mut(&id) {
        interaction.answered = answered;
        interaction.took = Some(took);
        interaction.original = original;
    }
    match (kind, original) {
        (4 | 7, Some(message)) => world.note_answer(id, message),
        (8, _) => world.note_choices(id, &data["choices"]),
        (9, _) => world.note_form(id, data),
        _ => {}
    }
    if call.param("with_response") == Some("true") {
        let message = original.and_then(|id| world.messages.get(&id));
        let value = json!({
            "interaction": {"id": id.to_string(), "type": interaction.kind as u8},
            "resource": {"type": kind, "message": message.map(|m| json::message(world, m, true))},
        });
        return Done::shown(value, audience);
    }
    Done::quietly(audience)
}

fn audience_of(world: &World, message: u64) -> Audience {
    match world.messages.get(&message) {
        Some(message) => message.only.map_or_else(
            || messages::audience(world, message.channel),
            Audience::Only,
        ),
        None => Audience::Nobody,
    }
}

/// Puts up a message of an interaction.
fn put_up(
    world: &mut World,
    call: &Call<'_>,
    interaction: &super::world::Interaction,
    flags: u64,
    loading: bool,
) -> u64 {
    let body = call.body;
    let id = world.ids.next();
    let (attachments, _) = messages::store_files(world, body, call.files);
    let mut message = Message {
        id,
        channel: interaction.channel,
        author: world.bot,
        content: body["content"].as_str().unwrap_or_default().into(),
        embeds: messages::list(&body["embeds"]),
        components: messages::list(&body["components"]),
        attachments,
        flags: flags | if loading { 128 } else { 0 },
        kind: if interaction.kind == InteractionKind::Command {
            20
        } else {
            19
        },
        reference: interaction.on,
        only: (flags & PRIVATE != 0).then_some(interaction.user),
        interaction: Some(interaction.id),
        loading,
        ..Message::default()
    };
    if let Some(channel) = world.channel(interaction.channel).cloned() {
        let reference = message.reference.take();
        messages::notify(world, &channel, &mut message, &body["allowed_mentions"]);
        message.reference = reference;
        if message.only.is_some() {
            message.pings.retain(|user| *user == interaction.user);
            message.pings_many = false;
        }
    }
    world.messages.insert(id, message);
    gateway::message_event(world, Event::Create, id);
    id
}

/// `/webhooks/{application}/{token}/…`
pub fn follow(
    world: &mut World,
    call: &Call<'_>,
    method: &str,
    token: &str,
    rest: &[&str],
) -> Result<Done, Refusal> {
    let gone = || Refusal::new(404, 10015, "Unknown Webhook");
    let interaction = world
        .interactions
        .values()
        .find(|interaction| interaction.token == token)
        .ok_or_else(gone)?
        .clone();
    if interaction.answered == Answered::No {
        return Err(gone());
    }
    if interaction.at.elapsed() > TOKEN_LIFE {
        return Err(Refusal::new(401, 50027, "Invalid Webhook Token"));
    }
    match (method, rest) {
        ("POST", []) => {
            limits::message(call.body, call.files, true)?;
            let waiting = interaction.original.filter(|id| {
                world
                    .messages
                    .get(id)
                    .is_some_and(|message| message.loading)
            });
            let id = if let (Some(id), Answered::Deferred) = (waiting, &interaction.answered) {
                // The first further message takes the place of the promised one, as private as that.
                messages::apply_edit(world, call, id);
                settle(world, id);
                id
            } else {
                let flags = call.body["flags"].as_u64().unwrap_or(0);
                let id = put_up(world, call, &interaction, flags, false);
                if let Some(interaction) = world.interactions.get_mut(&interaction.id) {
                    interaction.followups.push(id);
                }
                id
            };
            world.note_answer(interaction.id, id);
            Done::shown(
                json::message(world, &world.messages[&id], true),
                audience_of(world, id),
            )
        }
        (method, ["messages", which]) => {
            let id = if *which == "@original" {
                interaction.original
            } else {
                which.parse().ok().filter(|id| {
                    interaction.followups.contains(id) || interaction.original == Some(*id)
                })
            };
            let id = id
                .filter(|id| world.messages.contains_key(id))
                .ok_or_else(Refusal::unknown_message)?;
            match method {
                "GET" => Done::told(json::message(world, &world.messages[&id], true)),
                "PATCH" => {
                    limits::message(call.body, call.files, false)?;
                    messages::apply_edit(world, call, id);
                    settle(world, id);
                    world.note_answer(interaction.id, id);
                    gateway::message_event(world, Event::Update, id);
                    Done::shown(
                        json::message(world, &world.messages[&id], true),
                        audience_of(world, id),
                    )
                }
                "DELETE" => {
                    let channel = world.messages[&id].channel;
                    world.messages.remove(&id);
                    gateway::deleted_event(world, channel, id);
                    Done::quietly(Audience::Nobody)
                }
                _ => Err(Refusal::new(405, 0, "405: Method Not Allowed")),
            }
        }
        _ => Err(Refusal::new(404, 0, "404: Not Found")),
    }
}

/// A promised message has come.
fn settle(world: &mut World, id: u64) {
    if let Some(message) = world.messages.get_mut(&id) {
        message.flags &= !128;
        message.loading = false;
        message.edited = None;
    }
}

/// A value for tests: what a modal's fields are called, with their labels.
pub fn modal_fields(modal: &Value) -> Vec<(String, String)> {
    messages::list(&modal["components"])
        .iter()
        .flat_map(|row| messages::list(&row["components"]))
        .map(|input| {
            let text = |key: &str| input[key].as_str().unwrap_or_default().to_string();
            (text("custom_id"), text("label"))
        })
        .collect()
}
