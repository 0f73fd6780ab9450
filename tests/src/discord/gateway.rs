//! The gateway: hello, identify, heartbeats, events numbered in order, resume with what was missed,
//! reconnect, invalid session, and the published close codes.

use std::{
    collections::{HashMap, VecDeque},
    sync::Arc,
    time::{Duration, Instant},
};

use axum::{
    extract::{
        State,
        ws::{CloseFrame, Message as Frame, WebSocket, WebSocketUpgrade},
    },
    response::Response,
};
use serde_json::{Value, json};
use tokio::sync::mpsc;

use super::{
    json, messages,
    server::Shared,
    world::{ChannelKind, World},
};

/// Servers and their channels.
pub const GUILDS: u64 = 1;
/// Privileged: who is in a server.
pub const GUILD_MEMBERS: u64 = 1 << 1;
/// Privileged: who is online.
pub const PRESENCES: u64 = 1 << 8;
/// Messages of servers.
pub const GUILD_MESSAGES: u64 = 1 << 9;
/// Direct messages.
pub const DIRECT_MESSAGES: u64 = 1 << 12;
/// Privileged: what people write.
pub const MESSAGE_CONTENT: u64 = 1 << 15;

/// All gateway sessions.
#[derive(Debug)]
pub struct Sessions {
    by_id: HashMap<String, Session>,
    /// How many shards are recommended.
    pub shards: u64,
    /// Starts left today.
    pub starts_left: u32,
    last_identify: Option<Instant>,
    /// Identifies accepted so far.
    pub identified: usize,
    /// Resumes accepted so far.
    pub resumed: usize,
    /// Heartbeats received so far.
    pub heartbeats: usize,
    /// How many events that the client has seen are sent again at the next resume.
    pub repeat_on_resume: u64,
    /// Whether new connections are turned away.
    pub closed_for_now: bool,
    /// Whether heartbeats go unanswered.
    pub mute_heartbeats: bool,
    counter: u64,
}

impl Default for Sessions {
    fn default() -> Self {
        Self {
            by_id: HashMap::new(),
            shards: 1,
            starts_left: 1000,
            last_identify: None,
            identified: 0,
            resumed: 0,
            heartbeats: 0,
            repeat_on_resume: 0,
            closed_for_now: false,
            mute_heartbeats: false,
            counter: 0,
        }
    }
}

#[derive(Debug)]
struct Session {
    intents: u64,
    shard: (u64, u64),
    seq: u64,
    events: VecDeque<(u64, Value)>,
    out: Option<mpsc::UnboundedSender<Out>>,
}

/// What goes down a connection.
#[derive(Clone, Debug)]
pub enum Out {
    /// A payload.
    Send(Value),
    /// A close with its code.
    Close(u16, &'static str),
    /// The line goes dead without a word.
    Drop,
}

impl Sessions {
    /// Sends the same to every connection: a payload, a close, or nothing ever again.
    pub fn to_all(&mut self, what: &Out) {
        for session in self.by_id.values_mut() {
            if let Some(out) = &session.out {
                let _ = out.send(what.clone());
            }
            if !matches!(what, Out::Send(_)) {
                session.out = None;
            }
        }
    }

    /// Sends the same to the connections of one shard.
    pub fn to_shard(&mut self, shard: u64, what: &Out) {
        for session in self.by_id.values_mut().filter(|s| s.shard.0 == shard) {
            if let Some(out) = &session.out {
                let _ = out.send(what.clone());
            }
            if !matches!(what, Out::Send(_)) {
                session.out = None;
            }
        }
    }

    /// The shards that have identified themselves, as number and total.
    pub fn shards_up(&self) -> Vec<(u64, u64)> {
        let mut up: Vec<_> = self.by_id.values().map(|session| session.shard).collect();
        up.sort_unstable();
        up
    }

    /// Forgets when somebody identified last, as if that were long ago: a bot started anew is let in at once.
    pub fn let_in(&mut self) {
        self.last_identify = None;
    }

    /// Cuts every line and forgets every session, so that none can be resumed.
    pub fn lose(&mut self) {
        self.to_all(&Out::Drop);
        self.by_id.clear();
    }

    /// How many connections are up.
    pub fn connected(&self) -> usize {
        self.by_id
            .values()
            .filter(|session| session.out.is_some())
            .count()
    }
}

/// Sends an event to the sessions that asked for its kind and serve its server.
/// `data` is made for each session, with whether it may read what people write.
fn dispatch(
    world: &mut World,
    guild: Option<u64>,
    intent: u64,
    name: &str,
    data: &dyn Fn(&World, bool) -> Value,
) {
    let with = data(world, true);
    let without = data(world, false);
    for session in world.sessions.by_id.values_mut() {
        if session.intents & intent != intent || !serves(session.shard, guild) {
            continue;
        }
        let d = if session.intents & MESSAGE_CONTENT != 0 {
            &with
        } else {
            &without
        };
        session.push(name, d.clone());
    }
}

/// The published formula; what belongs to no server goes to shard 0.
fn serves((id, total): (u64, u64), guild: Option<u64>) -> bool {
    guild.map_or(0, |guild| (guild >> 22) % total.max(1)) == id
}

impl Session {
    fn push(&mut self, name: &str, data: Value) {
        self.seq += 1;
        let payload = json!({"op": 0, "s": self.seq, "t": name, "d": data});
        self.events.push_back((self.seq, payload.clone()));
        if self.events.len() > 1000 {
            self.events.pop_front();
        }
        if let Some(out) = &self.out
            && out.send(Out::Send(payload)).is_err()
        {
            self.out = None;
        }
    }
}

/// What happened to a message.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Event {
    /// It was written.
    Create,
    /// It was changed.
    Update,
}

/// Tells of a message; private ones only the person's own client hears of, so they are left out.
pub fn message_event(world: &mut World, event: Event, id: u64) {
    let Some(message) = world.messages.get(&id).cloned() else {
        return;
    };
    if message.only.is_some() {
        return;
    }
    let Some(channel) = world.channel(message.channel).cloned() else {
        return;
    };
    let intent = if channel.kind == ChannelKind::Direct {
        DIRECT_MESSAGES
    } else {
        GUILD_MESSAGES
    };
    if channel.kind != ChannelKind::Direct
        && !world.bot_may(&channel, super::permissions::VIEW_CHANNEL)
    {
        return;
    }
    let name = if event == Event::Create {
        "MESSAGE_CREATE"
    } else {
        "MESSAGE_UPDATE"
    };
    dispatch(world, channel.guild, intent, name, &|world, by_intent| {
        let mut data = json::message(
            world,
            &message,
            messages::readable(world, &message, by_intent),
        );
        if let Some(guild) = channel.guild.and_then(|id| world.guilds.get(&id)) {
            data["guild_id"] = json!(guild.id.to_string());
            if guild.members.contains_key(&message.author) {
                data["member"] = json::partial_member(guild, message.author);
            }
        }
        data
    });
}

/// Tells that a message is gone.
pub fn deleted_event(world: &mut World, channel: u64, id: u64) {
    let Some(place) = world.channel(channel).cloned() else {
        return;
    };
    let intent = if place.kind == ChannelKind::Direct {
        DIRECT_MESSAGES
    } else {
        GUILD_MESSAGES
    };
    dispatch(world, place.guild, intent, "MESSAGE_DELETE", &|_, _| {
        let mut data = json!({"id": id.to_string(), "channel_id": channel.to_string()});
        if let Some(guild) = place.guild {
            data["guild_id"] = json!(guild.to_string());
        }
        data
    });
}

/// Tells of a thread.
pub fn thread_event(world: &mut World, name: &str, id: u64) {
    let Some(thread) = world.channel(id).cloned() else {
        return;
    };
    dispatch(world, thread.guild, GUILDS, name, &|world, _| {
        json::channel(world, &thread)
    });
}

/// Tells of a server the bot has come into, or that changed.
pub fn guild_event(world: &mut World, name: &str, id: u64) {
    let Some(guild) = world.guilds.get(&id).cloned() else {
        return;
    };
    dispatch(world, Some(id), GUILDS, name, &|world, _| {
        json::guild(world, &guild)
    });
}

/// Tells of a channel that is new, changed or gone.
pub fn channel_event(world: &mut World, name: &str, id: u64) {
    let Some(channel) = world.channel(id).cloned() else {
        return;
    };
    dispatch(world, channel.guild, GUILDS, name, &|world, _| {
        json::channel(world, &channel)
    });
}

/// Sends an interaction; it needs no intent.
pub fn interaction_event(world: &mut World, guild: Option<u64>, data: &Value) {
    dispatch(world, guild, 0, "INTERACTION_CREATE", &|_, _| data.clone());
}

/// A connection comes in.
pub async fn connect(State(shared): State<Arc<Shared>>, upgrade: WebSocketUpgrade) -> Response {
    upgrade.on_upgrade(move |socket| async move {
        converse(shared, socket).await;
    })
}

/// What the loop does next.
enum Next {
    Go,
    Close(u16, &'static str),
}

struct Connection {
    shared: Arc<Shared>,
    session: Option<String>,
    out: mpsc::UnboundedSender<Out>,
    received: VecDeque<Instant>,
    last_heartbeat: Instant,
}

async fn converse(shared: Arc<Shared>, mut socket: WebSocket) {
    let (out, mut outgoing) = mpsc::unbounded_channel();
    let (interval, turned_away) = {
        let world = shared.world();
        (world.heartbeat_ms, world.sessions.closed_for_now)
    };
    if turned_away {
        return;
    }
    let hello = json!({"op": 10, "s": null, "t": null, "d": {"heartbeat_interval": interval}});
    if send(&mut socket, &hello).await.is_err() {
        return;
    }
    let mut connection = Connection {
        shared,
        session: None,
        out,
        received: VecDeque::new(),
        last_heartbeat: Instant::now(),
    };
    let patience = Duration::from_millis(interval) * 2;
    loop {
        let next = tokio::select! {
            incoming = socket.recv() => match incoming {
                Some(Ok(Frame::Text(text))) => connection.hear(text.as_str()),
                Some(Ok(Frame::Binary(_))) => Next::Close(4002, "Error while decoding payload."),
                Some(Ok(Frame::Ping(_) | Frame::Pong(_))) => Next::Go,
                Some(Ok(Frame::Close(frame))) => {
                    // A close with 1000 or 1001 ends the session; any other leaves it to be resumed.
                    let ends = frame.is_none_or(|frame| matches!(frame.code, 1000 | 1001));
                    connection.leave(ends);
                    return;
                }
                Some(Err(_)) | None => {
                    connection.leave(false);
                    return;
                }
            },
            outgoing = outgoing.recv() => match outgoing {
                Some(Out::Send(payload)) => {
                    if send(&mut socket, &payload).await.is_err() {
                        connection.leave(false);
                        return;
                    }
                    Next::Go
                }
                Some(Out::Close(code, why)) => Next::Close(code, why),
                Some(Out::Drop) | None => {
                    connection.leave(false);
                    return;
                }
            },
            () = tokio::time::sleep_until((connection.last_heartbeat + patience).into()) => {
                connection.shared.world().violation("no heartbeat came in time");
                Next::Close(4009, "Session timed out.")
            }
        };
        if let Next::Close(code, why) = next {
            let frame = CloseFrame {
                code,
                reason: why.into(),
            };
            let _ = socket.send(Frame::Close(Some(frame))).await;
            connection.leave(matches!(code, 4004 | 4010..=4014));
            // Let the other side answer the close before the line goes.
            let _ = tokio::time::timeout(Duration::from_secs(1), socket.recv()).await;
            return;
        }
    }
}

async fn send(socket: &mut WebSocket, payload: &Value) -> Result<(), axum::Error> {
    socket.send(Frame::Text(payload.to_string().into())).await
}

impl Connection {
    /// The line is gone; the session stays unless it ended.
    fn leave(&mut self, ends: bool) {
        let Some(id) = self.session.take() else {
            return;
        };
        let mut world = self.shared.world();
        if ends {
            world.sessions.by_id.remove(&id);
        } else if let Some(session) = world.sessions.by_id.get_mut(&id)
            && session
                .out
                .as_ref()
                .is_some_and(|out| out.same_channel(&self.out))
        {
            session.out = None;
        }
        drop(world);
        self.shared.ring();
    }

    fn hear(&mut self, text: &str) -> Next {
        let now = Instant::now();
        self.received.push_back(now);
        while self
            .received
            .front()
            .is_some_and(|at| now - *at > Duration::from_secs(60))
        {
            self.received.pop_front();
        }
        if self.received.len() > 120 {
            return Next::Close(4008, "You are being rate limited.");
        }
        let Ok(payload) = serde_json::from_str::<Value>(text) else {
            return Next::Close(4002, "Error while decoding payload.");
        };
        let next = match payload["op"].as_u64() {
            Some(1) => {
                self.last_heartbeat = now;
                let mut world = self.shared.world();
                world.sessions.heartbeats += 1;
                if !world.sessions.mute_heartbeats {
                    let _ = self.out.send(Out::Send(
                        json!({"op": 11, "s": null, "t": null, "d": null}),
                    ));
                }
                Next::Go
            }
            Some(2) => self.identify(&payload["d"]),
            Some(6) => self.resume(&payload["d"]),
            Some(3 | 4 | 8) if self.session.is_none() => Next::Close(4003, "Not authenticated."),
            // Presence, voice and member requests: taken note of, nothing comes of them here.
            Some(3 | 4 | 8) => Next::Go,
            _ => Next::Close(4001, "Unknown opcode."),
        };
        self.shared.ring();
        next
    }

    fn identify(&mut self, data: &Value) -> Next {
        if self.session.is_some() {
            return Next::Close(4005, "Already authenticated.");
        }
        let mut world = self.shared.world();
        // The documentation writes the token bare here, without "Bot ", though it is tolerated.
        let token = data["token"].as_str().unwrap_or_default();
        if token.trim_start_matches("Bot ") != world.token {
            return Next::Close(4004, "Authentication failed.");
        }
        let Some(intents) = data["intents"].as_u64().filter(|bits| bits >> 26 == 0) else {
            return Next::Close(4013, "Invalid intent(s).");
        };
        let privileged = GUILD_MEMBERS | PRESENCES | MESSAGE_CONTENT;
        if intents & privileged & !world.granted_intents != 0 {
            return Next::Close(4014, "Disallowed intent(s).");
        }
        let shard = match (data["shard"][0].as_u64(), data["shard"][1].as_u64()) {
            (Some(id), Some(total)) if id < total => (id, total),
            (None, None) => (0, 1),
            _ => return Next::Close(4010, "Invalid shard."),
        };
        let soon = world
            .sessions
            .last_identify
            .is_some_and(|at| at.elapsed() < Duration::from_millis(4900));
        world.sessions.last_identify = Some(Instant::now());
        if soon {
            // Not counted against the bot: one that was started anew cannot know of the last time.
            let _ = self.out.send(Out::Send(
                json!({"op": 9, "s": null, "t": null, "d": false}),
            ));
            return Next::Go;
        }
        world.sessions.starts_left = world.sessions.starts_left.saturating_sub(1);
        world.sessions.identified += 1;
        world.sessions.counter += 1;
        let id = format!("{:032x}", world.sessions.counter);
        let guilds: Vec<u64> = world
            .guilds
            .values()
            .filter(|guild| guild.members.contains_key(&world.bot) && serves(shard, Some(guild.id)))
            .map(|guild| guild.id)
            .collect();
        let mut me = json::user_by_id(&world, world.bot);
        me["mfa_enabled"] = json!(true);
        me["verified"] = json!(true);
        let ready = json!({
            "v": 10, "user": me, "session_id": id, "shard": [shard.0, shard.1],
            "resume_gateway_url": format!("{}/gateway-socket", world.url.replacen("http", "ws", 1)),
            "guilds": guilds.iter().map(|id| json!({"id": id.to_string(), "unavailable": true})).collect::<Vec<_>>(),
            "application": {"id": world.bot.to_string(), "flags": 0},
            "private_channels": [], "relationships": [], "user_settings": {},
        });
        let mut session = Session {
            intents,
            shard,
            seq: 0,
            events: VecDeque::new(),
            out: Some(self.out.clone()),
        };
        session.push("READY", ready);
        if intents & GUILDS != 0 {
            for guild in guilds {
                session.push("GUILD_CREATE", json::guild(&world, &world.guilds[&guild]));
            }
        }
        world.sessions.by_id.insert(id.clone(), session);
        self.session = Some(id);
        Next::Go
    }

    fn resume(&mut self, data: &Value) -> Next {
        let mut world = self.shared.world();
        let token = data["token"].as_str().unwrap_or_default();
        if token.trim_start_matches("Bot ") != world.token {
            return Next::Close(4004, "Authentication failed.");
        }
        let id = data["session_id"].as_str().unwrap_or_default().to_string();
        let repeat = world.sessions.repeat_on_resume;
        let Some(session) = world.sessions.by_id.get_mut(&id) else {
            let _ = self.out.send(Out::Send(
                json!({"op": 9, "s": null, "t": null, "d": false}),
            ));
            return Next::Go;
        };
        let Some(seq) = data["seq"].as_u64().filter(|seq| *seq <= session.seq) else {
            return Next::Close(4007, "Invalid seq.");
        };
        // Events the client has seen are sent again where a test asks for it; READY never is.
        let from = seq.saturating_sub(repeat).max(1);
        for (_, payload) in session.events.iter().filter(|(s, _)| *s > from.min(seq)) {
            let _ = self.out.send(Out::Send(payload.clone()));
        }
        session.out = Some(self.out.clone());
        session.push("RESUMED", json!({}));
        world.sessions.repeat_on_resume = 0;
        world.sessions.resumed += 1;
        self.session = Some(id);
        Next::Go
    }
}
