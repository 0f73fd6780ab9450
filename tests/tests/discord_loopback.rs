//! Proves the loopback Discord itself, with the real client library: what it lets through, what it
//! refuses, and how its gateway behaves.

use std::{
    sync::{Arc, Mutex},
    time::Duration,
};

use sealed_move_tests::discord::{
    Discord,
    commands::Given,
    faults::Trouble,
    gateway::{self, Out},
    permissions as may,
};
use serenity::{
    all::{
        ActionRowComponent, ButtonStyle, ChannelId, CommandOptionType, Context, CreateActionRow,
        CreateAllowedMentions, CreateAttachment, CreateButton, CreateCommand, CreateCommandOption,
        CreateInputText, CreateInteractionResponse, CreateInteractionResponseMessage,
        CreateMessage, CreateModal, CreateThread, EditInteractionResponse, EventHandler,
        GatewayIntents, Http, HttpBuilder, InputTextStyle, Interaction, Message, MessageId,
        MessageUpdateEvent, Ready, ResumedEvent, UserId,
    },
    async_trait,
};

/// A small bot that writes down what it hears and answers a command, a button and a modal.
#[derive(Clone, Default)]
struct Scribe(Arc<Mutex<Vec<String>>>);

impl Scribe {
    fn note(&self, text: impl Into<String>) {
        self.0.lock().expect("unpoisoned").push(text.into());
    }

    fn notes(&self) -> Vec<String> {
        self.0.lock().expect("unpoisoned").clone()
    }
}

#[async_trait]
impl EventHandler for Scribe {
    async fn ready(&self, _: Context, ready: Ready) {
        self.note(format!("ready {}", ready.user.name));
    }
    async fn guild_create(&self, _: Context, guild: serenity::all::Guild, _: Option<bool>) {
        let (channels, roles) = (guild.channels.len(), guild.roles.len());
        self.note(format!("{}: {channels} channel, {roles} roles", guild.name));
    }
    async fn resume(&self, _: Context, _: ResumedEvent) {
        self.note("resumed");
    }
    async fn message(&self, _: Context, message: Message) {
        self.note(format!("{}: {}", message.author.name, message.content));
    }
    async fn message_update(
        &self,
        _: Context,
        _: Option<Message>,
        _: Option<Message>,
        event: MessageUpdateEvent,
    ) {
        self.note(format!("edited: {}", event.content.unwrap_or_default()));
    }
    async fn message_delete(
        &self,
        _: Context,
        _: ChannelId,
        _: MessageId,
        _: Option<serenity::all::GuildId>,
    ) {
        self.note("deleted");
    }
    async fn interaction_create(&self, ctx: Context, interaction: Interaction) {
        let say = |text: &str| {
            CreateInteractionResponseMessage::new()
                .content(text)
                .ephemeral(true)
        };
        match interaction {
            Interaction::Command(command) => {
                let wait = !command.data.options.is_empty();
                if wait {
                    let defer = CreateInteractionResponse::Defer(say(""));
                    command
                        .create_response(&ctx.http, defer)
                        .await
                        .expect("deferred");
                    command
                        .edit_response(&ctx.http, EditInteractionResponse::new().content("worked"))
                        .await
                        .expect("edited");
                } else {
                    let button = CreateButton::new("b")
                        .label("Answer")
                        .style(ButtonStyle::Primary);
                    let response =
                        say("press").components(vec![CreateActionRow::Buttons(vec![button])]);
                    command
                        .create_response(&ctx.http, CreateInteractionResponse::Message(response))
                        .await
                        .expect("answered");
                }
            }
            Interaction::Component(press) => {
                let input = CreateInputText::new(InputTextStyle::Short, "Move", "move");
                let modal = CreateModal::new("m", "Your answer")
                    .components(vec![CreateActionRow::InputText(input)]);
                press
                    .create_response(&ctx.http, CreateInteractionResponse::Modal(modal))
                    .await
                    .expect("modal");
            }
            Interaction::Modal(modal) => {
                let ActionRowComponent::InputText(input) = &modal.data.components[0].components[0]
                else {
                    panic!("a text input comes back");
                };
                let text = format!("got {}", input.value.clone().unwrap_or_default());
                modal
                    .create_response(&ctx.http, CreateInteractionResponse::Message(say(&text)))
                    .await
                    .expect("answered");
            }
            _ => {}
        }
    }
}

fn http(discord: &Discord, token: &str) -> Http {
    // The library's own limiter ignores where it is pointed, so it is off: see the bot's own gate.
    let http = HttpBuilder::new(token)
        .proxy(&discord.url)
        .ratelimiter_disabled(true)
        .build();
    http.set_application_id(discord.world().bot.into());
    http
}

async fn client(discord: &Discord, scribe: &Scribe, intents: GatewayIntents) -> serenity::Client {
    serenity::client::ClientBuilder::new_with_http(http(discord, &discord.token), intents)
        .event_handler(scribe.clone())
        .await
        .expect("a client")
}

fn intents() -> GatewayIntents {
    GatewayIntents::non_privileged() | GatewayIntents::MESSAGE_CONTENT
}

/// Waits until the scribe has written `line`.
async fn noted(scribe: &Scribe, line: &str) {
    for _ in 0..600 {
        if scribe.notes().iter().any(|note| note == line) {
            return;
        }
        tokio::time::sleep(Duration::from_millis(25)).await;
    }
    panic!("\"{line}\" was not noted in {:?}", scribe.notes());
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn the_real_client_converses_and_resumes() {
    let discord = Discord::start().await;
    discord.world().heartbeat_ms = 1_000;
    let coach = discord.person("Coach");
    let member = discord.person("Member");
    let guild = discord.server("Club", &coach);
    let channel = discord.channel(guild, "study");
    discord.join(guild, &member);
    let scribe = Scribe::default();
    let mut client = client(&discord, &scribe, intents()).await;
    let http = Arc::clone(&client.http);
    let running = tokio::spawn(async move { client.start().await });
    noted(&scribe, "ready sealed-move").await;
    noted(&scribe, "Club: 1 channel, 2 roles").await;

    let option = CreateCommandOption::new(CommandOptionType::String, "word", "A word");
    let commands = vec![
        CreateCommand::new("try")
            .description("Tries")
            .add_option(option),
    ];
    http.create_global_commands(&commands)
        .await
        .expect("registered");

    let first = member.say(channel, "hello");
    noted(&scribe, "member: hello").await;
    member.edit(first, "hello again");
    noted(&scribe, "edited: hello again").await;
    member.delete(first);
    noted(&scribe, "deleted").await;

    let seen = member
        .command(channel, "try", &[("word", Given::Text("x".into()))])
        .await;
    assert_eq!((seen.text().as_str(), seen.private()), ("worked", true));
    let seen = member.command(channel, "try", &[]).await;
    let opened = member.press(seen.message(), "Answer").await;
    let seen = member.submit(&opened, &["Rd8+"]).await;
    assert_eq!((seen.text().as_str(), seen.private()), ("got Rd8+", true));

    // The line drops; what is said meanwhile comes with the resume, and once more where asked for.
    discord.world().sessions.closed_for_now = true;
    discord.gateway(Out::Drop);
    member.say(channel, "while you were away");
    {
        let mut world = discord.world();
        world.sessions.repeat_on_resume = 1;
        world.sessions.closed_for_now = false;
    }
    noted(&scribe, "member: while you were away").await;
    noted(&scribe, "resumed").await;
    discord.gateway(Out::Send(serde_json::json!({"op": 7, "d": null})));
    discord
        .until("a second resume", |world| {
            (world.sessions.resumed == 2).then_some(())
        })
        .await;
    discord
        .until("heartbeats", |world| {
            (world.sessions.heartbeats >= 2).then_some(())
        })
        .await;
    assert_eq!(discord.world().sessions.identified, 1);
    running.abort();
    assert_eq!(discord.violations(), Vec::<String>::new());
}

#[tokio::test]
async fn bad_tokens_and_ungranted_intents_are_closed_out() {
    let discord = Discord::start().await;
    discord.world().granted_intents = 0;
    let scribe = Scribe::default();
    let mut ungranted = client(&discord, &scribe, intents()).await;
    let error = ungranted
        .start()
        .await
        .expect_err("closed with 4014")
        .to_string();
    assert!(error.to_lowercase().contains("intents"), "{error}");
    let error = http(&discord, "wrong.token.here")
        .get_current_user()
        .await
        .expect_err("401");
    assert!(error.to_string().contains("401"), "{error}");
}

#[tokio::test]
async fn without_the_content_intent_talk_is_empty_but_for_the_exceptions() {
    let discord = Discord::start().await;
    discord.world().granted_intents = 0;
    let member = discord.person("Member");
    let guild = discord.server("Club", &member);
    let channel = discord.channel(guild, "study");
    let scribe = Scribe::default();
    let mut client = client(&discord, &scribe, GatewayIntents::non_privileged()).await;
    let http = Arc::clone(&client.http);
    let running = tokio::spawn(async move { client.start().await });
    noted(&scribe, "ready sealed-move").await;
    let own = ChannelId::new(channel)
        .say(&http, "position")
        .await
        .expect("sent");
    member.say(channel, "secret talk");
    member.say(channel, &format!("<@{}> named", discord.world().bot));
    member.reply(channel, own.id.get(), "quiet reply", false);
    member.reply(channel, own.id.get(), "loud reply", true);
    member.direct("direct");
    noted(&scribe, "member: direct").await;
    let notes = scribe.notes();
    let heard: Vec<&str> = notes
        .iter()
        .filter_map(|note| note.strip_prefix("member: "))
        .collect();
    let bot = discord.world().bot;
    assert_eq!(
        heard.iter().filter(|text| text.is_empty()).count(),
        2,
        "{heard:?}"
    );
    for text in [format!("<@{bot}> named").as_str(), "loud reply", "direct"] {
        assert!(heard.contains(&text), "{text} in {heard:?}");
    }
    let read = ChannelId::new(channel)
        .messages(&http, serenity::all::GetMessages::new().limit(10))
        .await
        .expect("read back");
    assert!(read.iter().all(|message| message.content != "secret talk"));
    running.abort();
}

#[tokio::test]
async fn refuses_what_discord_refuses() {
    let discord = Discord::start().await;
    discord.world().rates.on = false;
    let member = discord.person("Member");
    let guild = discord.server("Club", &member);
    let channel = discord.channel(guild, "study");
    let http = http(&discord, &discord.token);
    let place = ChannelId::new(channel);
    let refused = |error: serenity::Error| error.to_string();

    // Sent once: the same nonce gives the first message back.
    let nonce = || {
        CreateMessage::new()
            .content("position 1")
            .nonce(serenity::all::Nonce::String("post-1".into()))
            .enforce_nonce(true)
    };
    let one = place.send_message(&http, nonce()).await.expect("sent");
    let two = place
        .send_message(&http, nonce())
        .await
        .expect("given back");
    assert_eq!(one.id, two.id);

    // A file with alt text, and a thread that carries the message's id.
    let file = CreateAttachment::bytes(vec![1, 2, 3], "position-1.png").description("White: Kg1");
    let sent = place
        .send_message(&http, CreateMessage::new().add_file(file))
        .await
        .expect("sent");
    assert_eq!(sent.attachments[0].filename, "position-1.png");
    let stored = discord
        .world()
        .files
        .values()
        .next()
        .cloned()
        .expect("kept");
    assert_eq!(stored.description.as_deref(), Some("White: Kg1"));
    let thread = place
        .create_thread_from_message(&http, sent.id, CreateThread::new("Talk"))
        .await
        .expect("made");
    assert_eq!(thread.id.get(), sent.id.get());
    let again = place
        .create_thread_from_message(&http, sent.id, CreateThread::new("Talk"))
        .await;
    assert!(refused(again.expect_err("twice")).contains("already been created"));

    // Permissions by channel.
    discord.overwrite_bot(channel, 0, may::ATTACH_FILES);
    let file = CreateAttachment::bytes(vec![1], "a.png");
    let error = place
        .send_message(&http, CreateMessage::new().add_file(file))
        .await;
    assert!(refused(error.expect_err("no files")).contains("Missing Permissions"));
    discord.overwrite_bot(channel, 0, may::VIEW_CHANNEL);
    let error = place.say(&http, "hello").await;
    assert!(refused(error.expect_err("unseen")).contains("Missing Access"));
    discord.overwrite_bot(channel, 0, 0);

    // Another's message: neither edited nor, without the permission, taken away.
    let theirs = member.say(channel, "mine");
    let error = place.delete_message(&http, theirs).await;
    assert!(refused(error.expect_err("not ours")).contains("Missing Permissions"));
    discord.overwrite_bot(channel, may::MANAGE_MESSAGES, 0);
    place
        .delete_message(&http, theirs)
        .await
        .expect("allowed now");

    // Direct messages, open and closed.
    let direct = UserId::new(member.id)
        .create_dm_channel(&http)
        .await
        .expect("opened");
    direct.id.say(&http, "hello").await.expect("sent");
    member.take_direct(false);
    let error = direct.id.say(&http, "hello").await;
    assert!(refused(error.expect_err("closed")).contains("Cannot send messages to this user"));

    // Notifying: only what is allowed.
    let text = format!("<@{}> @everyone", member.id);
    let quiet = CreateMessage::new()
        .content(&text)
        .allowed_mentions(CreateAllowedMentions::new());
    let quiet = place
        .send_message(&http, quiet)
        .await
        .expect("sent")
        .id
        .get();
    let loud = place.say(&http, &text).await.expect("sent").id.get();
    let world = discord.world();
    assert!(world.messages[&quiet].pings.is_empty());
    assert!(world.messages[&loud].pings.contains(&member.id));
    assert!(
        !world.messages[&loud].pings_many,
        "the bot may not call everyone"
    );
    assert_eq!(world.violations, Vec::<String>::new());
}

#[tokio::test]
async fn rate_limits_and_trouble_come_as_planned() {
    let discord = Discord::start().await;
    let member = discord.person("Member");
    let guild = discord.server("Club", &member);
    let channel = discord.channel(guild, "study");
    let client = reqwest::Client::new();
    let send = || {
        client
            .post(format!(
                "{}/api/v10/channels/{channel}/messages",
                discord.url
            ))
            .header("authorization", format!("Bot {}", discord.token))
            .header("user-agent", "DiscordBot (test, 1)")
            .json(&serde_json::json!({"content": "x"}))
            .send()
    };
    for left in (0..5).rev() {
        let answer = send().await.expect("answered");
        assert_eq!(
            answer.headers()["x-ratelimit-remaining"],
            left.to_string().as_str()
        );
    }
    let refused = send().await.expect("answered");
    assert_eq!(refused.status(), 429);
    assert!(refused.headers().contains_key("retry-after"));
    let body: serde_json::Value = refused.json().await.expect("json");
    assert!(
        body["retry_after"]
            .as_f64()
            .is_some_and(|s| s > 0.0 && s <= 5.0),
        "{body}"
    );

    discord
        .world()
        .faults
        .plan("POST", "/messages", 1, Trouble::Status(503));
    assert_eq!(send().await.expect("answered").status(), 503);
    assert!(discord.world().faults.spent());
}

#[tokio::test]
async fn late_answers_and_second_answers_are_refused() {
    let discord = Discord::start().await;
    let member = discord.person("Member");
    let guild = discord.server("Club", &member);
    let channel = discord.channel(guild, "study");
    let http = http(&discord, &discord.token);
    http.create_global_commands(&vec![CreateCommand::new("try").description("Tries")])
        .await
        .expect("registered");
    let answer = |id: u64, token: String| {
        let http = &http;
        async move {
            let message = CreateInteractionResponseMessage::new().content("x");
            http.create_interaction_response(
                id.into(),
                &token,
                &CreateInteractionResponse::Message(message),
                Vec::new(),
            )
            .await
        }
    };
    let token = |id: u64| discord.world().interactions[&id].token.clone();
    let prompt = member.send_command(channel, "try", &[]);
    let late = member.send_command(channel, "try", &[]);
    answer(prompt, token(prompt)).await.expect("in time");
    let twice = answer(prompt, token(prompt))
        .await
        .expect_err("twice")
        .to_string();
    assert!(twice.contains("already been acknowledged"), "{twice}");
    if let Some(interaction) = discord.world().interactions.get_mut(&late) {
        interaction.at -= Duration::from_millis(3001);
    }
    let error = answer(late, token(late))
        .await
        .expect_err("late")
        .to_string();
    assert!(error.contains("Unknown interaction"), "{error}");
    assert_eq!(discord.violations(), ["runs /try was never answered"]);
    assert_eq!(
        gateway::MESSAGE_CONTENT,
        GatewayIntents::MESSAGE_CONTENT.bits()
    );
}
