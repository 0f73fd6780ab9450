//! A loopback Discord: REST and gateway as the published API (v10) describes them, refusing what
//! Discord would refuse, so that the real client can be driven end to end on one machine.
//!
//! - [`world`] is what it remembers; [`people`] is what people do to it.
//! - [`server`] takes requests: [`faults`] and [`rates`] first, then [`openapi`], then [`routes`], then
//!   the [`log`].
//! - [`gateway`] is the event stream.
//! - [`limits`], [`command_limits`] and [`permissions`] are the published rules.
//! - [`text`] writes messages down for people and snapshots, [`chronicle`] whole conversations.

pub mod chronicle;
pub mod command_limits;
pub mod commands;
pub mod errors;
pub mod faults;
pub mod gateway;
pub mod ids;
pub mod interactions;
pub mod json;
pub mod limits;
pub mod log;
pub mod messages;
pub mod openapi;
pub mod people;
pub mod permissions;
pub mod rates;
pub mod routes;
pub mod server;
pub mod text;
pub mod threads;
pub mod world;

use std::{
    collections::BTreeMap,
    sync::{Arc, MutexGuard},
    time::Duration,
};

use self::{
    gateway::Out,
    ids::Ids,
    people::Someone,
    server::Shared,
    world::{Channel, ChannelKind, Guild, Member, Overwrite, Role, User, World},
};
use crate::tongue::Tongue;

/// A running loopback Discord; ends with its last clone's runtime.
#[derive(Clone, Debug)]
pub struct Discord {
    shared: Arc<Shared>,
    /// Where it listens, for `SEALED_MOVE_DISCORD_API`.
    pub url: String,
    /// The token it accepts.
    pub token: String,
}

impl Discord {
    /// Starts one on a free port, with an application but no server yet.
    ///
    /// # Panics
    /// When no port of the loopback can be had.
    pub async fn start() -> Self {
        let listener = tokio::net::TcpListener::bind("127.0.0.1:0")
            .await
            .expect("a free port");
        let url = format!("http://{}", listener.local_addr().expect("an address"));
        let ids = Ids::default();
        let bot = ids.next();
        // The form of a real token (three parts with dots), so that code that looks at it is not misled.
        let token = format!("bG9vcGJhY2s.{bot:x}.only-good-on-this-machine");
        let me = User {
            id: bot,
            name: "sealed-move".into(),
            shown: "Sealed Move".into(),
            bot: true,
            takes_direct: false,
            locale: "en-GB".into(),
        };
        let world = World {
            ids,
            url: url.clone(),
            token: token.clone(),
            bot,
            granted_intents: gateway::MESSAGE_CONTENT,
            heartbeat_ms: 41_250,
            users: BTreeMap::from([(bot, me)]),
            guilds: BTreeMap::new(),
            channels: BTreeMap::new(),
            messages: BTreeMap::new(),
            files: BTreeMap::new(),
            interactions: BTreeMap::new(),
            commands: Vec::new(),
            nonces: std::collections::HashMap::new(),
            sessions: gateway::Sessions::default(),
            rates: rates::Rates::default(),
            faults: faults::Faults::default(),
            log: Vec::new(),
            tongue: Tongue::default(),
            chronicle: chronicle::Chronicle::default(),
            violations: Vec::new(),
            openapi: openapi::OpenApi::load(),
        };
        let shared = Shared::new(world);
        let router = server::router(Arc::clone(&shared));
        tokio::spawn(async move { axum::serve(listener, router).await });
        Self { shared, url, token }
    }

    /// The world, locked: look, change, and let go before waiting.
    pub fn world(&self) -> MutexGuard<'_, World> {
        self.shared.world()
    }

    /// A person with an account.
    pub fn person(&self, shown: &str) -> Someone {
        let mut world = self.world();
        let id = world.ids.next();
        let name = shown
            .to_lowercase()
            .replace(|c: char| !c.is_ascii_alphanumeric(), "_");
        let locale = world.tongue.locale().into();
        world.users.insert(
            id,
            User {
                id,
                name,
                shown: shown.into(),
                bot: false,
                takes_direct: true,
                locale,
            },
        );
        Someone {
            id,
            shared: Arc::clone(&self.shared),
        }
    }

    /// A server with an owner, into which the bot was invited as the README says.
    pub fn server(&self, name: &str, owner: &Someone) -> u64 {
        let mut world = self.world();
        let id = world.ids.next();
        let bots_role = world.ids.next();
        let bot = world.bot;
        let roles = vec![
            Role {
                id,
                name: "@everyone".into(),
                permissions: permissions::ORDINARY & !permissions::MENTION_EVERYONE,
            },
            Role {
                id: bots_role,
                name: "Sealed Move".into(),
                permissions: permissions::AS_INVITED,
            },
        ];
        let members = BTreeMap::from([
            (owner.id, Member::default()),
            (
                bot,
                Member {
                    nick: None,
                    roles: vec![bots_role],
                },
            ),
        ]);
        world.guilds.insert(
            id,
            Guild {
                id,
                name: name.into(),
                owner: owner.id,
                roles,
                members,
            },
        );
        gateway::guild_event(&mut world, "GUILD_CREATE", id);
        id
    }

    /// A text channel.
    pub fn channel(&self, guild: u64, name: &str) -> u64 {
        let mut world = self.world();
        let id = world.ids.next();
        world.channels.insert(
            id,
            Channel {
                id,
                kind: ChannelKind::Text,
                guild: Some(guild),
                parent: None,
                name: name.into(),
                owner: 0,
                overwrites: Vec::new(),
                archived: false,
                locked: false,
            },
        );
        gateway::channel_event(&mut world, "CHANNEL_CREATE", id);
        id
    }

    /// Someone comes into a server.
    pub fn join(&self, guild: u64, someone: &Someone) {
        if let Some(guild) = self.world().guilds.get_mut(&guild) {
            guild.members.insert(someone.id, Member::default());
        }
    }

    /// Gives or takes permissions of the bot in one channel.
    pub fn overwrite_bot(&self, channel: u64, allow: u64, deny: u64) {
        let mut world = self.world();
        let bot = world.bot;
        if let Some(channel) = world.channels.get_mut(&channel) {
            channel.overwrites.retain(|rule| rule.of != bot);
            channel.overwrites.push(Overwrite {
                of: bot,
                user: true,
                allow,
                deny,
            });
        }
        gateway::channel_event(&mut world, "CHANNEL_UPDATE", channel);
    }

    /// Does something to every gateway connection.
    pub fn gateway(&self, what: Out) {
        self.world().sessions.to_all(&what);
        self.shared.ring();
    }

    /// Decides about the request that is held.
    pub fn decide(&self, fate: faults::Fate) {
        self.world().faults.decide(fate);
        self.shared.ring();
    }

    /// Tells the chronicle of a turn of events.
    pub fn event(&self, text: &str) {
        self.world().chronicle.event(text);
    }

    /// The conversation so far, as text.
    pub fn chronicle(&self) -> String {
        let world = self.world();
        world.chronicle.written(&world)
    }

    /// Waits until something holds.
    ///
    /// # Panics
    /// When it does not within twenty seconds.
    pub async fn until<T>(&self, what: &str, holds: impl Fn(&World) -> Option<T>) -> T {
        people::until(&self.shared, Duration::from_secs(20), what, holds).await
    }

    /// Waits longer.
    ///
    /// # Panics
    /// When it does not hold in the time given.
    pub async fn until_within<T>(
        &self,
        patience: Duration,
        what: &str,
        holds: impl Fn(&World) -> Option<T>,
    ) -> T {
        people::until(&self.shared, patience, what, holds).await
    }

    /// What the bot did against the rules: faults noted on the way, and interactions left without an
    /// answer for more than three seconds.
    pub fn violations(&self) -> Vec<String> {
        let world = self.world();
        let mut all = world.violations.clone();
        all.extend(
            world
                .interactions
                .values()
                .filter(|interaction| interaction.answered == world::Answered::No)
                .filter(|interaction| interaction.at.elapsed() > interactions::FIRST_ANSWER)
                .map(|interaction| format!("{} was never answered", interaction.what)),
        );
        all
    }
}
