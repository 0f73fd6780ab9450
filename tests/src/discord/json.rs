//! Objects as the interface writes them: users, servers, channels, messages.

use serde_json::{Value, json};

use super::{
    ids, permissions,
    world::{
        Channel, ChannelKind, File, Guild, Interaction, InteractionKind, Message, Role, User, World,
    },
};

/// A user.
pub fn user(user: &User) -> Value {
    json!({
        "id": user.id.to_string(),
        "username": user.name,
        "global_name": user.shown,
        "discriminator": "0",
        "avatar": null,
        "bot": user.bot,
        "public_flags": 0,
    })
}

/// A user by id; a stand-in for one who has left.
pub fn user_by_id(world: &World, id: u64) -> Value {
    world.users.get(&id).map_or_else(
        || json!({"id": id.to_string(), "username": "gone", "discriminator": "0", "avatar": null, "global_name": null}),
        user,
    )
}

/// A role.
pub fn role(role: &Role, position: usize) -> Value {
    json!({
        "id": role.id.to_string(), "name": role.name, "color": 0,
        "colors": {"primary_color": 0, "secondary_color": null, "tertiary_color": null}, "hoist": false, "icon": null,
        "unicode_emoji": null, "position": position, "permissions": role.permissions.to_string(),
        "managed": position > 0, "mentionable": false, "flags": 0,
    })
}

/// A member of a server, with the user inside.
pub fn member(world: &World, guild: &Guild, id: u64) -> Value {
    let mut value = partial_member(guild, id);
    value["user"] = user_by_id(world, id);
    value
}

/// A member without the user, as it comes with a message.
pub fn partial_member(guild: &Guild, id: u64) -> Value {
    let member = guild.members.get(&id).cloned().unwrap_or_default();
    json!({
        "nick": member.nick, "avatar": null, "banner": null,
        "roles": member.roles.iter().map(u64::to_string).collect::<Vec<_>>(),
        "joined_at": ids::timestamp(guild.id), "premium_since": null, "deaf": false, "mute": false,
        "flags": 0, "pending": false, "communication_disabled_until": null,
    })
}

/// A channel.
pub fn channel(world: &World, channel: &Channel) -> Value {
    let last = world
        .messages
        .values()
        .rev()
        .find(|message| message.channel == channel.id && message.only.is_none())
        .map(|message| message.id.to_string());
    match channel.kind {
        ChannelKind::Direct => json!({
            "id": channel.id.to_string(), "type": 1, "last_message_id": last, "flags": 0,
            "recipients": [user_by_id(world, channel.owner)],
        }),
        ChannelKind::Text => json!({
            "id": channel.id.to_string(), "type": 0, "last_message_id": last, "flags": 0,
            "guild_id": channel.guild.map(|id| id.to_string()), "name": channel.name,
            "parent_id": null, "rate_limit_per_user": 0, "topic": null, "position": 0,
            "permission_overwrites": overwrites(channel), "nsfw": false,
        }),
        ChannelKind::Thread => json!({
            "id": channel.id.to_string(), "type": 11, "last_message_id": last, "flags": 0,
            "guild_id": channel.guild.map(|id| id.to_string()), "name": channel.name,
            "parent_id": channel.parent.map(|id| id.to_string()), "rate_limit_per_user": 0,
            "owner_id": channel.owner.to_string(), "message_count": 0, "member_count": 1,
            "total_message_sent": 0,
            "thread_metadata": {
                "archived": channel.archived, "auto_archive_duration": 1440,
                "archive_timestamp": ids::timestamp(channel.id), "locked": channel.locked,
                "create_timestamp": ids::timestamp(channel.id),
            },
        }),
    }
}

fn overwrites(channel: &Channel) -> Vec<Value> {
    channel
        .overwrites
        .iter()
        .map(|rule| {
            json!({
                "id": rule.of.to_string(), "type": u8::from(rule.user),
                "allow": rule.allow.to_string(), "deny": rule.deny.to_string(),
            })
        })
        .collect()
}

/// A server as the gateway sends it to a bot that is in it.
pub fn guild(world: &World, guild: &Guild) -> Value {
    let of = |kind| {
        world
            .channels
            .values()
            .filter(|c| c.guild == Some(guild.id) && c.kind == kind && !c.archived)
            .filter(|c| {
                permissions::in_channel(world, c, world.bot) & permissions::VIEW_CHANNEL != 0
            })
            .map(|c| channel(world, c))
            .collect::<Vec<_>>()
    };
    let mut value = guild_over_rest(world, guild);
    let more = json!({
        "joined_at": ids::timestamp(guild.id), "large": guild.members.len() > 250,
        "unavailable": false, "member_count": guild.members.len(), "voice_states": [],
        // Without the members intent a bot is told of itself alone.
        "members": [member(world, guild, world.bot)],
        "channels": of(ChannelKind::Text), "threads": of(ChannelKind::Thread),
        "presences": [], "stage_instances": [], "guild_scheduled_events": [], "soundboard_sounds": [],
    });
    if let (Value::Object(to), Value::Object(from)) = (&mut value, more) {
        to.extend(from);
    }
    value
}

/// A server as REST sends it.
pub fn guild_over_rest(_: &World, guild: &Guild) -> Value {
    json!({
        "id": guild.id.to_string(), "name": guild.name, "icon": null, "icon_hash": null,
        "splash": null, "discovery_splash": null, "owner_id": guild.owner.to_string(),
        "afk_channel_id": null, "afk_timeout": 300, "widget_enabled": false,
        "verification_level": 1, "default_message_notifications": 1, "explicit_content_filter": 0,
        "roles": guild.roles.iter().enumerate().map(|(i, r)| role(r, i)).collect::<Vec<_>>(),
        "emojis": [], "features": [], "mfa_level": 0, "application_id": null,
        "system_channel_id": null, "system_channel_flags": 0, "rules_channel_id": null,
        "max_presences": null, "max_members": 500_000, "vanity_url_code": null, "description": null,
        "banner": null, "premium_tier": 0, "premium_subscription_count": 0,
        "preferred_locale": "en-GB", "public_updates_channel_id": null, "nsfw_level": 0,
        "stickers": [], "premium_progress_bar_enabled": false, "safety_alerts_channel_id": null,
        "max_video_channel_users": 25, "max_stage_video_channel_users": 50, "nsfw": false,
        "region": "deprecated", "hub_type": null, "incidents_data": null,
    })
}

/// An attachment.
pub fn attachment(world: &World, file: &File) -> Value {
    let mut value = json!({
        "id": file.id.to_string(), "filename": file.name,
        "size": file.told_size.unwrap_or(file.bytes.len() as u64),
        "url": format!("{}/files/{}/{}", world.url, file.id, file.name),
        "proxy_url": format!("{}/files/{}/{}", world.url, file.id, file.name),
        "content_type": file.kind,
    });
    if let Some(description) = &file.description {
        value["description"] = json!(description);
    }
    if file.kind.starts_with("image/") {
        value["width"] = json!(720);
        value["height"] = json!(720);
    }
    value
}

/// A message; `content` is false where the receiver may not read what people write.
pub fn message(world: &World, message: &Message, with_content: bool) -> Value {
    let attachments: Vec<Value> = message
        .attachments
        .iter()
        .filter_map(|id| world.files.get(id))
        .map(|file| attachment(world, file))
        .collect();
    let shown = |value: Value, empty: Value| if with_content { value } else { empty };
    let mut value = json!({
        "id": message.id.to_string(), "channel_id": message.channel.to_string(),
        "author": user_by_id(world, message.author),
        "content": shown(json!(message.content), json!("")),
        "timestamp": ids::timestamp(message.id),
        "edited_timestamp": message.edited.map(ids::rfc3339),
        "tts": false, "mention_everyone": message.pings_many,
        "mentions": message.mentions.iter().map(|&id| user_by_id(world, id)).collect::<Vec<_>>(),
        "mention_roles": [],
        "attachments": shown(json!(attachments), json!([])),
        "embeds": shown(received_embeds(&message.embeds), json!([])),
        "components": shown(received_rows(&message.components), json!([])),
        "pinned": false, "type": message.kind, "flags": message.flags,
    });
    if let Some(nonce) = &message.nonce {
        value["nonce"] = nonce.clone();
    }
    if !message.reactions.is_empty() {
        let mut counted: Vec<Value> = Vec::new();
        for (emoji, _) in &message.reactions {
            if counted.iter().any(|r| r["emoji"]["name"] == json!(emoji)) {
                continue;
            }
            let count = message.reactions.iter().filter(|(e, _)| e == emoji).count();
            let me = message
                .reactions
                .iter()
                .any(|(e, u)| e == emoji && *u == world.bot);
            counted.push(json!({
                "count": count, "count_details": {"burst": 0, "normal": count}, "me": me,
                "me_burst": false, "emoji": {"id": null, "name": emoji}, "burst_colors": [],
            }));
        }
        value["reactions"] = json!(counted);
    }
    if let Some(reference) = message.reference {
        value["message_reference"] = json!({
            "type": 0, "message_id": reference.to_string(),
            "channel_id": world.messages.get(&reference).map_or(message.channel, |m| m.channel).to_string(),
        });
        if message.kind == 19 {
            value["referenced_message"] = world.messages.get(&reference).map_or(Value::Null, |m| {
                let mut inner = m.clone();
                inner.reference = None;
                self::message(world, &inner, with_content || m.author == world.bot)
            });
        }
    }
    if let Some(interaction) = message
        .interaction
        .and_then(|id| world.interactions.get(&id))
    {
        value["application_id"] = json!(world.bot.to_string());
        value["interaction_metadata"] = metadata(world, interaction);
    }
    // A thread made from a message has the message's id.
    if let Some(thread) = world.channels.get(&message.id) {
        value["thread"] = channel(world, thread);
    }
    value
}

/// What is told of the interaction that made a message.
fn metadata(world: &World, interaction: &Interaction) -> Value {
    let mut value = json!({
        "id": interaction.id.to_string(), "type": interaction.kind as u8,
        "user": user_by_id(world, interaction.user), "authorizing_integration_owners": {},
    });
    match (interaction.kind, interaction.on) {
        (InteractionKind::Component, Some(on)) => {
            value["interacted_message_id"] = json!(on.to_string())
        }
        (InteractionKind::Modal, on) => {
            let mut opener = value.clone();
            opener["type"] = json!(if on.is_some() { 3 } else { 2 });
            if let Some(on) = on {
                opener["interacted_message_id"] = json!(on.to_string());
            }
            value["triggering_interaction_metadata"] = opener;
        }
        _ => {}
    }
    value
}

/// Embeds as they come back: with their type, and pictures given as attachments resolved.
fn received_embeds(sent: &[Value]) -> Value {
    let embeds: Vec<Value> = sent
        .iter()
        .map(|embed| {
            let mut embed = embed.clone();
            if let Value::Object(map) = &mut embed {
                map.retain(|_, value| !value.is_null());
                map.insert("type".into(), json!("rich"));
            }
            embed
        })
        .collect();
    json!(embeds)
}

/// Rows of components as they come back: each with an id of its own.
fn received_rows(sent: &[Value]) -> Value {
    json!(sent)
}
