//! Which request does what; the work is in the files beside this one.

use serde_json::{Value, json};

use super::{
    command_limits, commands, errors::Refusal, interactions, json, log::Audience, log::SentFile,
    messages, threads, world::World,
};

/// A request, read.
#[derive(Clone, Copy, Debug)]
pub struct Call<'a> {
    /// Method.
    pub method: &'a str,
    /// Path behind `/api/v10/`, cut at its slashes.
    pub segments: &'a [&'a str],
    /// Query.
    pub query: &'a str,
    /// Body.
    pub body: &'a Value,
    /// Files.
    pub files: &'a [SentFile],
}

impl Call<'_> {
    /// A query parameter.
    pub fn param(&self, name: &str) -> Option<&str> {
        self.query
            .split('&')
            .filter_map(|pair| pair.split_once('='))
            .find(|(key, _)| *key == name)
            .map(|(_, value)| value)
    }
}

/// What came of a request.
#[derive(Clone, Debug)]
pub struct Done {
    /// Status.
    pub status: u16,
    /// Answer.
    pub value: Value,
    /// Who sees what it put up.
    pub audience: Audience,
}

impl Done {
    /// An answer to a question.
    pub fn told(value: Value) -> Result<Self, Refusal> {
        Ok(Self {
            status: 200,
            value,
            audience: Audience::Nobody,
        })
    }

    /// Done, nothing to say.
    pub fn quietly(audience: Audience) -> Result<Self, Refusal> {
        Ok(Self {
            status: 204,
            value: Value::Null,
            audience,
        })
    }

    /// Something was put up.
    pub fn shown(value: Value, audience: Audience) -> Result<Self, Refusal> {
        Ok(Self {
            status: 200,
            value,
            audience,
        })
    }
}

/// Requests whose path carries its own secret.
pub fn needs_no_token(segments: &[&str]) -> bool {
    matches!(
        segments,
        ["interactions", ..] | ["webhooks", _, _, ..] | ["gateway"]
    )
}

/// Carries out a request.
///
/// # Errors
/// The refusal Discord would give.
pub fn carry_out(world: &mut World, call: &Call<'_>) -> Result<Done, Refusal> {
    match (call.method, call.segments) {
        ("GET", ["gateway"]) => Done::told(json!({"url": gateway_url(world)})),
        ("GET", ["gateway", "bot"]) => Done::told(json!({
            "url": gateway_url(world), "shards": world.sessions.shards,
            "session_start_limit": {
                "total": 1000, "remaining": world.sessions.starts_left, "reset_after": 86_400_000,
                "max_concurrency": 1,
            },
        })),
        ("GET", ["users", "@me"]) => {
            let mut me = json::user_by_id(world, world.bot);
            me["mfa_enabled"] = json!(true);
            me["verified"] = json!(true);
            me["locale"] = json!("en-GB");
            me["flags"] = json!(0);
            Done::told(me)
        }
        ("GET", ["users", id]) => {
            let id = number(id)?;
            let user = world
                .users
                .get(&id)
                .ok_or_else(|| Refusal::new(404, 10013, "Unknown User"))?;
            Done::told(json::user(user))
        }
        ("GET", ["oauth2" | "applications", .., "@me"]) => Done::told(application(world)),
        ("POST", ["users", "@me", "channels"]) => threads::open_direct(world, call),
        ("GET", ["guilds", guild]) => {
            let guild = own_guild(world, guild)?;
            Done::told(json::guild_over_rest(world, guild))
        }
        ("GET", ["guilds", guild, "members", user]) => {
            let guild = own_guild(world, guild)?;
            let user = number(user)?;
            if !guild.members.contains_key(&user) {
                return Err(Refusal::new(404, 10007, "Unknown Member"));
            }
            Done::told(json::member(world, guild, user))
        }
        ("GET", ["guilds", guild, "roles"]) => {
            let guild = own_guild(world, guild)?;
            Done::told(json::guild_over_rest(world, guild)["roles"].clone())
        }
        ("GET", ["guilds", guild, "channels"]) => {
            let guild = own_guild(world, guild)?.clone();
            Done::told(json::guild(world, &guild)["channels"].clone())
        }
        (method @ ("GET" | "PUT" | "POST"), ["applications", app, "commands"]) => {
            if number(app)? != world.bot {
                return Err(Refusal::new(
                    403,
                    20012,
                    "You are not authorized to perform this action on this application",
                ));
            }
            match method {
                "PUT" => {
                    let list = call.body.as_array().cloned().unwrap_or_default();
                    command_limits::commands(&list)?;
                    Done::shown(commands::register(world, list), Audience::Anyone)
                }
                "POST" => {
                    let mut list = world.commands.clone();
                    list.retain(|old| old["name"] != call.body["name"]);
                    list.push(call.body.clone());
                    command_limits::commands(&list)?;
                    Done::shown(commands::register(world, list), Audience::Anyone)
                }
                _ => Done::told(json!(world.commands)),
            }
        }
        (_, ["interactions", id, token, "callback"]) if call.method == "POST" => {
            interactions::answer(world, call, number(id)?, token)
        }
        (method, ["webhooks", app, token, rest @ ..]) => {
            if number(app)? != world.bot {
                return Err(Refusal::new(404, 10015, "Unknown Webhook"));
            }
            interactions::follow(world, call, method, token, rest)
        }
        ("GET", ["channels", channel]) => threads::look(world, number(channel)?),
        ("PATCH", ["channels", channel]) => threads::change(world, call, number(channel)?),
        ("POST", ["channels", channel, "typing"]) => threads::typing(world, number(channel)?),
        ("PUT", ["channels", channel, "thread-members", "@me"]) => {
            threads::join(world, number(channel)?)
        }
        ("POST", ["channels", channel, "messages", message, "threads"]) => {
            threads::start(world, call, number(channel)?, number(message)?)
        }
        (
            "PUT" | "DELETE",
            [
                "channels",
                channel,
                "messages",
                message,
                "reactions",
                emoji,
                "@me",
            ],
        ) => messages::react(world, call, number(channel)?, number(message)?, emoji),
        ("POST", ["channels", channel, "messages"]) => {
            messages::create(world, call, number(channel)?)
        }
        ("GET", ["channels", channel, "messages"]) => {
            messages::list_call(world, call, number(channel)?)
        }
        ("GET", ["channels", channel, "messages", message]) => {
            messages::get(world, number(channel)?, number(message)?)
        }
        ("PATCH", ["channels", channel, "messages", message]) => {
            messages::edit(world, call, number(channel)?, number(message)?)
        }
        ("DELETE", ["channels", channel, "messages", message]) => {
            messages::delete(world, number(channel)?, number(message)?)
        }
        _ => {
            let path = call.segments.join("/");
            world.violation(format!(
                "{} /{path}: the loopback knows no such route",
                call.method
            ));
            Err(Refusal::new(404, 0, "404: Not Found"))
        }
    }
}

fn gateway_url(world: &World) -> String {
    format!("{}/gateway-socket", world.url.replacen("http", "ws", 1))
}

fn application(world: &World) -> Value {
    let owner = world
        .users
        .values()
        .find(|user| !user.bot)
        .map_or(Value::Null, json::user);
    json!({
        "id": world.bot.to_string(), "name": "Sealed Move", "icon": null, "description": "",
        "bot_public": true, "bot_require_code_grant": false, "verify_key": "0".repeat(64),
        "team": null, "owner": owner, "flags": 0, "summary": "",
    })
}

fn own_guild<'a>(world: &'a World, id: &str) -> Result<&'a super::world::Guild, Refusal> {
    world
        .guilds
        .get(&number(id)?)
        .filter(|guild| guild.members.contains_key(&world.bot))
        .ok_or_else(|| Refusal::new(404, 10004, "Unknown Guild"))
}

/// An id in a path.
pub fn number(text: &str) -> Result<u64, Refusal> {
    text.parse().map_err(|_| {
        Refusal::form(&[super::errors::Fault::other(
            "id",
            "NUMBER_TYPE_COERCE",
            format!("Value \"{text}\" is not snowflake."),
        )])
    })
}
