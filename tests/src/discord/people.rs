//! What people do, as their own clients would do it: write, answer, edit, delete, run commands, press
//! buttons, fill in modals; and what they then see.

use std::{
    sync::Arc,
    time::{Duration, Instant},
};

use serde_json::{Map, Value, json};

use super::{
    Discord,
    commands::{self, Given},
    gateway::{self, Event},
    ids, interactions, json, messages, permissions as may,
    server::Shared,
    world::{Answered, ChannelKind, File, Interaction, InteractionKind, Message, World},
};
use crate::tongue::Tongue;

/// A person at their own client.
#[derive(Clone, Debug)]
pub struct Someone {
    /// Id.
    pub id: u64,
    pub(super) shared: Arc<Shared>,
}

/// What a person sees as the answer to something they did.
#[derive(Clone, Debug)]
pub struct Seen {
    /// The interaction.
    pub interaction: u64,
    /// The message, and those that followed; empty for a modal.
    pub messages: Vec<Message>,
    /// The modal that opened.
    pub modal: Option<Value>,
}

impl Seen {
    /// All text of the answer: contents, embeds, labels left out.
    pub fn text(&self) -> String {
        self.messages
            .iter()
            .map(super::text::words)
            .collect::<Vec<_>>()
            .join("\n")
    }

    /// Whether every message is for the person alone.
    pub fn private(&self) -> bool {
        !self.messages.is_empty() && self.messages.iter().all(|message| message.only.is_some())
    }

    /// The last message's id.
    ///
    /// # Panics
    /// When there is none.
    pub fn message(&self) -> u64 {
        self.messages
            .last()
            .map(|m| m.id)
            .expect("a message was shown")
    }
}

/// A file a person attaches.
#[derive(Clone, Debug)]
pub struct Attach {
    /// Name.
    pub name: String,
    /// Content type the client gives.
    pub kind: String,
    /// Content.
    pub bytes: Vec<u8>,
    /// The size told to the bot, when it lies.
    pub told_size: Option<u64>,
}

impl Attach {
    /// A text file.
    pub fn text(name: &str, text: &str) -> Self {
        Self {
            name: name.into(),
            kind: "text/plain; charset=utf-8".into(),
            bytes: text.as_bytes().to_vec(),
            told_size: None,
        }
    }
}

/// For how long an answer is waited for before a test gives up.
const PATIENCE: Duration = Duration::from_secs(20);

impl Someone {
    /// Sets the language of the person's client.
    pub fn reads(&self, locale: &str) {
        if let Some(user) = self.shared.world().users.get_mut(&self.id) {
            locale.clone_into(&mut user.locale);
        }
    }

    /// Writes into a channel or thread; gives the message's id.
    pub fn say(&self, channel: u64, text: &str) -> u64 {
        self.write(channel, text, None, false)
    }

    /// Answers a message, notifying its author or not.
    pub fn reply(&self, channel: u64, to: u64, text: &str, ping: bool) -> u64 {
        self.write(channel, text, Some(to), ping)
    }

    /// Writes to the bot directly.
    pub fn direct(&self, text: &str) -> u64 {
        let channel = self.shared.world().open_direct(self.id);
        self.say(channel, text)
    }

    fn write(&self, channel: u64, text: &str, reference: Option<u64>, ping: bool) -> u64 {
        let mut world = self.shared.world();
        let id = world.ids.next();
        let mut message = Message {
            id,
            channel,
            author: self.id,
            content: world.tongue.moves(text),
            kind: if reference.is_some() { 19 } else { 0 },
            reference,
            ..Message::default()
        };
        let place = world.channels[&channel].clone();
        let allowed = json!({"parse": ["users", "roles", "everyone"], "replied_user": ping});
        messages::notify(&world, &place, &mut message, &allowed);
        world.messages.insert(id, message);
        world.note_said(id);
        gateway::message_event(&mut world, Event::Create, id);
        drop(world);
        self.shared.ring();
        id
    }

    /// Changes an own message. As everywhere, moves are given with English letters, and written in those of the
    /// world's language.
    pub fn edit(&self, message: u64, text: &str) {
        let mut world = self.shared.world();
        let text = world.tongue.moves(text);
        let mut before = String::new();
        if let Some(message) = world.messages.get_mut(&message) {
            before = std::mem::replace(&mut message.content, text);
            message.edited = Some(ids::now_ms());
        }
        world.note_edited(message, &before);
        gateway::message_event(&mut world, Event::Update, message);
        drop(world);
        self.shared.ring();
    }

    /// Takes an own message away.
    pub fn delete(&self, message: u64) {
        let mut world = self.shared.world();
        if let Some(gone) = world.messages.remove(&message) {
            world.note_withdrawn(&gone);
            gateway::deleted_event(&mut world, gone.channel, message);
        }
        drop(world);
        self.shared.ring();
    }

    /// Lets direct messages in, or not.
    pub fn take_direct(&self, takes: bool) {
        if let Some(user) = self.shared.world().users.get_mut(&self.id) {
            user.takes_direct = takes;
        }
    }

    /// Uploads a file for a command's option.
    pub fn upload(&self, attach: Attach) -> Given {
        let mut world = self.shared.world();
        let id = world.ids.next();
        world.files.insert(
            id,
            File {
                id,
                name: attach.name,
                description: None,
                kind: attach.kind,
                bytes: attach.bytes,
                told_size: attach.told_size,
            },
        );
        Given::File(id)
    }

    /// Runs a command such as `"study queue"` and waits for the whole answer.
    ///
    /// # Panics
    /// When the client would not have offered it, or no answer comes.
    pub async fn command(&self, channel: u64, line: &str, given: &[(&str, Given)]) -> Seen {
        let id = self.send_command(channel, line, given);
        self.answer_to(id).await
    }

    /// Runs a command without waiting.
    ///
    /// # Panics
    /// When the client would not have offered it.
    pub fn send_command(&self, channel: u64, line: &str, given: &[(&str, Given)]) -> u64 {
        let mut world = self.shared.world();
        let given: Vec<(&str, Given)> = given
            .iter()
            .map(|(key, value)| match value {
                Given::Text(text) => (*key, Given::Text(world.tongue.moves(text))),
                other => (*key, other.clone()),
            })
            .collect();
        let given = given.as_slice();
        let built = match commands::build(&world, line, given, None) {
            Ok(built) => built,
            Err(why) => panic!("{why}"),
        };
        let data = command_data(&world, &built, given);
        let locale = world.users[&self.id].locale.clone();
        let shown: Vec<String> = given
            .iter()
            .map(|(key, value)| {
                let name = commands::option_shown(&world, line, key, &locale);
                let value = given_in_words(&world, line, key, value, &locale);
                format!(" {name}: {value}")
            })
            .collect();
        let line = commands::line_shown(&world, line, &locale);
        let what = format!("runs /{line}{}", shown.concat());
        let id = send(
            &mut world,
            self.id,
            channel,
            InteractionKind::Command,
            data,
            None,
            what,
        );
        drop(world);
        self.shared.ring();
        id
    }

    /// Picks a command of a message's own menu, by its English name.
    ///
    /// # Panics
    /// When no such command is registered, or no answer comes.
    pub async fn menu(&self, message: u64, name: &str) -> Seen {
        let id = {
            let mut world = self.shared.world();
            let locale = world.users[&self.id].locale.clone();
            let Some((command, shown)) = commands::menu(&world, name, &locale) else {
                panic!("no menu has \"{name}\"")
            };
            let on = world.messages[&message].clone();
            let data = json!({
                "id": command, "name": name, "type": 3, "target_id": message.to_string(),
                "resolved": {"messages": {
                    message.to_string(): json::message(&world, &on, true)
                }},
            });
            let what = format!("picks \"{shown}\" in the menu of: {}", on.content);
            let kind = InteractionKind::Command;
            send(&mut world, self.id, on.channel, kind, data, None, what)
        };
        self.shared.ring();
        self.answer_to(id).await
    }

    /// Types into an option and gets the choices offered.
    ///
    /// # Panics
    /// When the option offers none, or no answer comes.
    pub async fn choices(
        &self,
        channel: u64,
        line: &str,
        option: &str,
        typed: &str,
    ) -> Vec<String> {
        let id = {
            let mut world = self.shared.world();
            let given = [(option, Given::Text(typed.into()))];
            let built = match commands::build(&world, line, &given, Some(option)) {
                Ok(built) => built,
                Err(why) => panic!("{why}"),
            };
            let data = command_data(&world, &built, &given);
            let locale = &world.users[&self.id].locale;
            let what = format!(
                "types into /{} {}: {typed}",
                commands::line_shown(&world, line, locale),
                commands::option_shown(&world, line, option, locale)
            );
            send(
                &mut world,
                self.id,
                channel,
                InteractionKind::Autocomplete,
                data,
                None,
                what,
            )
        };
        self.shared.ring();
        let choices = self
            .until("choices", |world| {
                match &world.interactions.get(&id)?.answered {
                    Answered::Choices(choices) => Some(choices.clone()),
                    _ => None,
                }
            })
            .await;
        messages::list(&choices)
            .iter()
            .map(|choice| {
                let value = &choice["value"];
                value
                    .as_str()
                    .map_or_else(|| value.to_string(), str::to_string)
            })
            .collect()
    }

    /// Presses the button that in English has this label, and waits for what comes.
    ///
    /// # Panics
    /// When there is no such button, or no answer comes.
    pub async fn press(&self, message: u64, label: &str) -> Seen {
        let id = self.send_press(message, label);
        self.answer_to(id).await
    }

    /// Presses the `nth` button, counted from 0, whose label has values in it, and waits for what comes.
    ///
    /// # Panics
    /// When there is no such button, or no answer comes.
    pub async fn press_nth(&self, message: u64, nth: usize) -> Seen {
        let id = self.send_press_on(message, |buttons, _| buttons.get(nth).cloned());
        self.answer_to(id).await
    }

    /// Presses a button without waiting.
    ///
    /// # Panics
    /// When there is no such button.
    pub fn send_press(&self, message: u64, label: &str) -> u64 {
        self.send_press_on(message, |buttons, world| {
            let labels = world.tongue.labels(label);
            let called = |button: &&Value| {
                let here = button["label"].as_str().unwrap_or_default();
                here == label || labels.contains(here)
            };
            buttons.iter().find(called).cloned()
        })
    }

    fn send_press_on(
        &self,
        message: u64,
        which: impl Fn(&[Value], &World) -> Option<Value>,
    ) -> u64 {
        let mut world = self.shared.world();
        let on = world
            .messages
            .get(&message)
            .cloned()
            .expect("the message is there");
        assert!(
            on.only.is_none_or(|only| only == self.id),
            "nobody else can press a private message's buttons"
        );
        let button = which(&buttons(&on), &world)
            .unwrap_or_else(|| panic!("no such button on {:?}", on.components));
        let label = button["label"].as_str().unwrap_or_default();
        assert!(
            button["disabled"] != true,
            "the button \"{label}\" is switched off"
        );
        let data = json!({"custom_id": button["custom_id"], "component_type": 2});
        let what = format!("presses [{label}]");
        let id = send(
            &mut world,
            self.id,
            on.channel,
            InteractionKind::Component,
            data,
            Some(message),
            what,
        );
        drop(world);
        self.shared.ring();
        id
    }

    /// Picks from a menu, by the labels of its options, and waits for what comes.
    ///
    /// # Panics
    /// When there is no menu with such an option, or no answer comes.
    pub async fn pick(&self, message: u64, label: &str) -> Seen {
        let id = {
            let mut world = self.shared.world();
            let on = world
                .messages
                .get(&message)
                .cloned()
                .expect("the message is there");
            let (menu, value) = on
                .components
                .iter()
                .flat_map(|row| messages::list(&row["components"]))
                .filter(|part| part["type"] == 3)
                .find_map(|menu| {
                    let option = messages::list(&menu["options"])
                        .into_iter()
                        .find(|option| {
                            option["label"].as_str().is_some_and(|l| l.contains(label))
                        })?;
                    Some((menu, option["value"].clone()))
                })
                .unwrap_or_else(|| panic!("no menu offers \"{label}\" on {:?}", on.components));
            let data =
                json!({"custom_id": menu["custom_id"], "component_type": 3, "values": [value]});
            send(
                &mut world,
                self.id,
                on.channel,
                InteractionKind::Component,
                data,
                Some(message),
                format!("picks \"{label}\" from the menu"),
            )
        };
        self.shared.ring();
        self.answer_to(id).await
    }

    /// Fills in the modal that was opened and sends it off; values go to the fields in order.
    ///
    /// # Panics
    /// When no modal is open, a value does not fit its field, or no answer comes.
    pub async fn submit(&self, seen: &Seen, values: &[&str]) -> Seen {
        let id = {
            let mut world = self.shared.world();
            let values: Vec<String> = values.iter().map(|v| world.tongue.moves(v)).collect();
            let opener = world
                .interactions
                .get(&seen.interaction)
                .cloned()
                .expect("known");
            let modal = seen.modal.clone().expect("a modal is open");
            let mut values = values.iter();
            let rows: Vec<Value> = messages::list(&modal["components"])
                .iter()
                .map(|row| {
                    let filled: Vec<Value> = messages::list(&row["components"])
                        .iter()
                        .map(|input| {
                            let value = values.next().map(String::as_str).unwrap_or_default();
                            let most = input["max_length"].as_u64().unwrap_or(4000) as usize;
                            assert!(value.chars().count() <= most, "the client stops at {most}");
                            json!({"type": 4, "custom_id": input["custom_id"], "value": value})
                        })
                        .collect();
                    json!({"type": 1, "components": filled})
                })
                .collect();
            let data = json!({"custom_id": modal["custom_id"], "components": rows});
            let what = format!("sends the form off: {}", seen_values(&rows));
            send(
                &mut world,
                self.id,
                opener.channel,
                InteractionKind::Modal,
                data,
                opener.on,
                what,
            )
        };
        self.shared.ring();
        self.answer_to(id).await
    }

    /// Waits for the answer to an interaction: a modal, or messages that are no longer promised only.
    ///
    /// # Panics
    /// When none comes, with what was asked and how things stand.
    pub async fn answer_to(&self, id: u64) -> Seen {
        self.until("an answer", |world| seen(world, id)).await
    }

    /// Waits until something holds.
    ///
    /// # Panics
    /// When it does not within a generous time.
    pub async fn until<T>(&self, what: &str, holds: impl Fn(&World) -> Option<T>) -> T {
        until(&self.shared, PATIENCE, what, holds).await
    }
}

/// The buttons under a message, in order.
fn buttons(message: &Message) -> Vec<Value> {
    let rows = message.components.iter();
    let mut parts: Vec<Value> = rows
        .flat_map(|row| messages::list(&row["components"]))
        .collect();
    parts.retain(|part| part["type"] == 2);
    parts
}

fn seen_values(rows: &[Value]) -> String {
    rows.iter()
        .flat_map(|row| messages::list(&row["components"]))
        .map(|input| input["value"].as_str().unwrap_or_default().to_string())
        .collect::<Vec<_>>()
        .join(" | ")
}

/// Waits until something holds in the world.
///
/// # Panics
/// When it does not in time; tells the last interactions and refusals, which usually say why.
pub async fn until<T>(
    shared: &Shared,
    patience: Duration,
    what: &str,
    holds: impl Fn(&World) -> Option<T>,
) -> T {
    let mut bell = shared.listen();
    let deadline = Instant::now() + patience;
    loop {
        if let Some(found) = holds(&shared.world()) {
            return found;
        }
        let rung = tokio::time::timeout_at(deadline.into(), bell.changed()).await;
        if rung.is_err() {
            let world = shared.world();
            let log: Vec<String> = world
                .log
                .iter()
                .rev()
                .take(8)
                .map(|entry| {
                    format!(
                        "{} {} -> {} {}",
                        entry.method, entry.path, entry.status, entry.body
                    )
                })
                .collect();
            let asked: Vec<String> = world
                .interactions
                .values()
                .rev()
                .take(4)
                .map(|i| format!("{} -> {:?}", i.what, i.answered))
                .collect();
            panic!(
                "waited for {what} in vain.\nlast interactions: {asked:#?}\nlast requests: {log:#?}\nviolations: {:#?}",
                world.violations
            );
        }
    }
}

/// What has come of an interaction, once it is complete.
pub fn seen(world: &World, id: u64) -> Option<Seen> {
    let interaction = world.interactions.get(&id)?;
    if let Answered::Modal(modal) = &interaction.answered {
        return Some(Seen {
            interaction: id,
            messages: Vec::new(),
            modal: Some(modal.clone()),
        });
    }
    if interaction.answered == Answered::No {
        return None;
    }
    let messages: Vec<Message> = interaction
        .original
        .iter()
        .chain(&interaction.followups)
        .filter_map(|id| world.messages.get(id).cloned())
        .collect();
    // News of work under way is not the answer yet.
    let under_way = |message: &Message| {
        let mut tongues = Tongue::ALL.into_iter();
        tongues.any(|tongue| tongue.reads(&message.content, "checking"))
    };
    if messages
        .iter()
        .any(|message| message.loading || under_way(message))
    {
        return None;
    }
    Some(Seen {
        interaction: id,
        messages,
        modal: None,
    })
}

/// An option's value as the client shows it.
fn given_in_words(world: &World, line: &str, key: &str, value: &Given, locale: &str) -> String {
    let chosen = |value: Value| commands::choice_shown(world, line, key, &value, locale);
    match value {
        Given::Text(text) => chosen(json!(text)).unwrap_or_else(|| text.clone()),
        Given::Number(number) => chosen(json!(number)).unwrap_or_else(|| number.to_string()),
        Given::Flag(flag) => flag.to_string(),
        Given::User(id) => format!("@{}", world.name_in(None, *id)),
        Given::Channel(id) => world
            .channel(*id)
            .map_or_else(String::new, |c| format!("#{}", c.name)),
        Given::File(id) => world.files.get(id).map_or_else(String::new, |file| {
            format!("{} ({} bytes)", file.name, file.bytes.len())
        }),
    }
}

/// The interaction's data for a command, with what its options refer to.
fn command_data(world: &World, built: &commands::Built, given: &[(&str, Given)]) -> Value {
    let (mut users, mut channels, mut files) = (Map::new(), Map::new(), Map::new());
    for (_, value) in given {
        match value {
            Given::User(id) => {
                users.insert(id.to_string(), json::user_by_id(world, *id));
            }
            Given::Channel(id) => {
                if let Some(channel) = world.channel(*id) {
                    let mut value = json::channel(world, channel);
                    value["permissions"] = json!("0");
                    channels.insert(id.to_string(), value);
                }
            }
            Given::File(id) => {
                if let Some(file) = world.files.get(id) {
                    files.insert(id.to_string(), json::attachment(world, file));
                }
            }
            Given::Text(_) | Given::Number(_) | Given::Flag(_) => {}
        }
    }
    json!({
        "id": built.id, "name": built.name, "type": 1, "options": built.options,
        "resolved": {"users": users, "channels": channels, "attachments": files},
    })
}

/// Makes an interaction and sends it.
fn send(
    world: &mut World,
    user: u64,
    channel: u64,
    kind: InteractionKind,
    data: Value,
    on: Option<u64>,
    what: String,
) -> u64 {
    let id = world.ids.next();
    let token = format!("interaction-token-{id}-{}", "x".repeat(40));
    let place = world.channels[&channel].clone();
    let mut value = json!({
        "id": id.to_string(), "application_id": world.bot.to_string(), "type": kind as u8,
        "token": token, "version": 1, "data": data, "channel_id": channel.to_string(),
        "channel": json::channel(world, &place), "locale": world.users[&user].locale, "entitlements": [],
        "authorizing_integration_owners": {"0": place.guild.unwrap_or(0).to_string()},
        "attachment_size_limit": 10_485_760,
        "app_permissions": may::in_channel(world, &place, world.bot).to_string(),
    });
    match place.guild.and_then(|id| world.guilds.get(&id)) {
        Some(guild) => {
            let mut member = json::member(world, guild, user);
            member["permissions"] =
                json!((may::in_channel(world, &place, user) & ((1 << 53) - 1)).to_string());
            value["member"] = member;
            value["guild_id"] = json!(guild.id.to_string());
            value["guild_locale"] = json!("en-GB");
            value["guild"] = json!({"id": guild.id.to_string(), "locale": "en-GB", "features": []});
            value["context"] = json!(0);
            value["channel"]["permissions"] = value["member"]["permissions"].clone();
        }
        None => {
            value["user"] = json::user_by_id(world, user);
            value["context"] = json!(1);
        }
    }
    if let Some(message) = on.and_then(|id| world.messages.get(&id)) {
        value["message"] = json::message(world, message, true);
    }
    world.interactions.insert(
        id,
        Interaction {
            id,
            token,
            kind,
            user,
            channel,
            at: Instant::now(),
            answered: Answered::No,
            took: None,
            original: None,
            followups: Vec::new(),
            on,
            what,
        },
    );
    world.note_asked(id);
    gateway::interaction_event(world, place.guild, &value);
    id
}

impl Discord {
    /// The labels and ids of a modal's fields.
    pub fn modal_fields(modal: &Value) -> Vec<(String, String)> {
        interactions::modal_fields(modal)
    }

    /// Whether a channel is a direct conversation.
    pub fn is_direct(&self, channel: u64) -> bool {
        self.world()
            .channel(channel)
            .is_some_and(|c| c.kind == ChannelKind::Direct)
    }
}
