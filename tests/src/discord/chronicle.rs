//! The whole conversation of a scenario, written down as it would be read aloud: who said, ran or
//! pressed what, and under each what the bot then showed, to whom.
//!
//! The world tells of every act of a person and of everything the bot puts up, changes or takes away;
//! here it becomes text at that very moment, since later it may be changed or gone. What the bot shows
//! is put under the act that brought it about: an answer under its command or button, a verdict under
//! the message it is the verdict on, everything else under the last thing anyone did. So two runs
//! write the same, though messages that cross may come in another order. Ids, moments and tokens give
//! way to words ([`super::text`]).

use std::collections::{BTreeMap, HashSet};

use serde_json::Value;

use super::{
    text,
    world::{Channel, ChannelKind, Message, World},
};

/// Everything that happened, in order.
#[derive(Debug, Default)]
pub struct Chronicle {
    acts: Vec<Act>,
    /// People whose doings are no part of the scene.
    offstage: HashSet<u64>,
    /// Under which heading many people act at once, while they do.
    crowd: Option<String>,
}

/// Something a person did, or a turn of events, and what the bot showed upon it.
#[derive(Debug)]
struct Act {
    cause: Cause,
    who: Option<u64>,
    heading: String,
    shown: Vec<Shown>,
    crowd: Option<String>,
}

/// What an act is known by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Cause {
    Interaction(u64),
    Message(u64),
    Event,
}

/// Something the bot showed.
#[derive(Debug)]
struct Shown {
    what: What,
    /// Whether it belongs to the act itself, and so comes before what else happened meanwhile.
    own: bool,
    text: String,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum What {
    Message(u64),
    Form,
    Choices,
    Gone(u64),
    Sign(u64),
    Thread(u64),
}

impl Chronicle {
    /// Leaves out what someone does, and what the bot answers.
    pub fn leave_out(&mut self, user: u64) {
        self.offstage.insert(user);
    }

    /// From here on many act at once: those who act and are answered alike are written down once, with
    /// their number. `None` ends it.
    pub fn crowd(&mut self, heading: Option<&str>) {
        self.crowd = heading.map(str::to_string);
    }

    /// A turn of events that no person brought about.
    pub fn event(&mut self, text: &str) {
        self.push(Cause::Event, None, format!("— {text} —"));
    }

    /// Strikes out a command that only waited for something.
    pub fn strike_out(&mut self, interaction: u64) {
        self.acts
            .retain(|act| act.cause != Cause::Interaction(interaction));
    }

    fn push(&mut self, cause: Cause, who: Option<u64>, heading: String) {
        if who.is_some_and(|who| self.offstage.contains(&who)) {
            return;
        }
        self.acts.push(Act {
            cause,
            who,
            heading,
            shown: Vec::new(),
            crowd: self.crowd.clone(),
        });
    }

    fn by(&mut self, cause: Cause) -> Option<&mut Act> {
        self.acts.iter_mut().rev().find(|act| act.cause == cause)
    }

    /// The act that a direct message to someone belongs to: what they wrote last, unless they have
    /// done something else since; else whatever happened last.
    fn for_letter(&mut self, user: u64) -> Option<(&mut Act, bool)> {
        if self.offstage.contains(&user) {
            return None;
        }
        let theirs = self.acts.iter().rposition(|act| act.who == Some(user));
        let spoken = theirs.filter(|at| matches!(self.acts[*at].cause, Cause::Message(_)));
        let at = spoken.or_else(|| self.acts.len().checked_sub(1))?;
        Some((&mut self.acts[at], spoken.is_some()))
    }

    /// The chronicle as text.
    pub fn written(&self, world: &World) -> String {
        let mut out = Vec::new();
        let mut at = 0;
        while let Some(act) = self.acts.get(at) {
            match &act.crowd {
                None => {
                    out.push(act.written());
                    at += 1;
                }
                Some(heading) => {
                    let length = self.acts[at..]
                        .iter()
                        .take_while(|other| other.crowd.as_ref() == Some(heading))
                        .count();
                    out.push(folded(heading, &self.acts[at..at + length], world));
                    at += length;
                }
            }
        }
        out.join("\n\n")
    }
}

/// Those who did and saw alike, counted.
fn folded(heading: &str, acts: &[Act], world: &World) -> String {
    let mut by_person: BTreeMap<u64, Vec<String>> = BTreeMap::new();
    for act in acts {
        if let Some(who) = act.who {
            by_person.entry(who).or_default().push(act.written());
        }
    }
    let mut kinds: BTreeMap<String, usize> = BTreeMap::new();
    for (who, acts) in by_person {
        let name = world.name_in(None, who);
        let text = acts.join("\n\n").replace(&name, "⟨member⟩");
        *kinds.entry(text).or_default() += 1;
    }
    let mut out = vec![format!("— {heading} —")];
    out.extend(
        kinds
            .into_iter()
            .map(|(text, count)| format!("— {count} members: —\n\n{text}")),
    );
    out.join("\n\n")
}

impl Act {
    fn written(&self) -> String {
        let mut out = vec![self.heading.clone()];
        let (own, other): (Vec<&Shown>, Vec<&Shown>) = self.shown.iter().partition(|s| s.own);
        for shown in own.into_iter().chain(other) {
            let lines: Vec<String> = shown
                .text
                .lines()
                .enumerate()
                .map(|(i, line)| match (i, line) {
                    (0, line) => format!("    ◀ {line}"),
                    (_, "") => String::new(),
                    (_, line) => format!("      {line}"),
                })
                .collect();
            out.push(lines.join("\n"));
        }
        if self.shown.is_empty() && matches!(self.cause, Cause::Interaction(_)) {
            out.push("    (no answer comes)".into());
        }
        out.join("\n")
    }

    /// Puts something under the act; what was there of the same thing gives way.
    fn show(&mut self, what: What, own: bool, text: String) {
        match self.shown.iter_mut().find(|shown| shown.what == what) {
            Some(shown) => shown.text = text,
            None => self.shown.push(Shown { what, own, text }),
        }
    }
}

/// Where something is, in words.
fn place(world: &World, channel: &Channel) -> String {
    let server = channel
        .guild
        .filter(|_| world.guilds.len() > 1)
        .and_then(|id| world.guilds.get(&id))
        .map(|guild| format!(" of {}", guild.name))
        .unwrap_or_default();
    match channel.kind {
        ChannelKind::Text => format!("in #{}{server}", channel.name),
        ChannelKind::Thread => format!("in the thread \"{}\"{server}", channel.name),
        ChannelKind::Direct => "to the bot directly".into(),
    }
}

fn place_of(world: &World, channel: u64) -> String {
    world
        .channel(channel)
        .map(|channel| place(world, channel))
        .unwrap_or_default()
}

/// Who sees a message of the bot's.
fn audience(world: &World, message: &Message) -> String {
    match (message.only, world.channel(message.channel)) {
        (Some(user), _) => format!("to {} alone", world.name_in(None, user)),
        (None, Some(c)) if c.kind == ChannelKind::Direct => {
            format!("to {} directly", world.name_in(None, c.owner))
        }
        (None, Some(c)) => format!("{}, for all to see", place(world, c)),
        (None, None) => "nowhere".into(),
    }
}

/// The first words of a message, to know it by.
fn quoted(world: &World, message: &Message) -> String {
    let first = message.content.lines().next().unwrap_or_default();
    let short: String = first.chars().take(60).collect();
    let dots = if short.len() < first.len() { "…" } else { "" };
    format!("\"{}{dots}\"", text::tidy(world, &short))
}

impl World {
    /// Someone wrote a message.
    pub fn note_said(&mut self, id: u64) {
        let Some(message) = self.messages.get(&id) else {
            return;
        };
        let (who, name) = (message.author, self.name_in(None, message.author));
        let answered = message
            .reference
            .and_then(|id| self.messages.get(&id))
            .map(|answered| format!(" in reply to {}", quoted(self, answered)))
            .unwrap_or_default();
        let heading = format!(
            "▶ {name} writes {}{answered}: {}",
            place_of(self, message.channel),
            text::tidy(self, &message.content)
        );
        self.chronicle.push(Cause::Message(id), Some(who), heading);
    }

    /// Someone changed a message that read `before`.
    pub fn note_edited(&mut self, id: u64, before: &str) {
        let Some(message) = self.messages.get(&id) else {
            return;
        };
        let heading = format!(
            "▶ {} changes \"{before}\" to: {}",
            self.name_in(None, message.author),
            text::tidy(self, &message.content)
        );
        let who = Some(message.author);
        self.chronicle.push(Cause::Message(id), who, heading);
    }

    /// Someone took a message back.
    pub fn note_withdrawn(&mut self, gone: &Message) {
        let heading = format!(
            "▶ {} deletes \"{}\"",
            self.name_in(None, gone.author),
            text::tidy(self, &gone.content)
        );
        let who = Some(gone.author);
        self.chronicle.push(Cause::Message(gone.id), who, heading);
    }

    /// Someone ran, pressed, picked, typed or sent off something.
    pub fn note_asked(&mut self, interaction: u64) {
        let Some(asked) = self.interactions.get(&interaction) else {
            return;
        };
        let heading = format!(
            "▶ {}, {}, {}",
            self.name_in(None, asked.user),
            match self.channel(asked.channel) {
                Some(channel) if channel.kind == ChannelKind::Direct => "in direct messages".into(),
                Some(channel) => place(self, channel),
                None => String::new(),
            },
            text::tidy(self, &asked.what)
        );
        let who = Some(asked.user);
        self.chronicle
            .push(Cause::Interaction(interaction), who, heading);
    }

    /// The bot's answer to an interaction, now as it stands.
    pub fn note_answer(&mut self, interaction: u64, message: u64) {
        let Some(shown) = self.messages.get(&message) else {
            return;
        };
        let changes = self
            .interactions
            .get(&interaction)
            .is_some_and(|asked| asked.on == Some(message));
        let head = if changes {
            "changes the message ".to_string()
        } else {
            String::new()
        };
        let text = format!(
            "{head}{}\n{}",
            audience(self, shown),
            text::body(self, shown)
        );
        if let Some(act) = self.chronicle.by(Cause::Interaction(interaction)) {
            act.show(What::Message(message), true, text);
        }
    }

    /// A form opens for someone.
    pub fn note_form(&mut self, interaction: u64, modal: &Value) {
        let text = text::modal(modal);
        if let Some(act) = self.chronicle.by(Cause::Interaction(interaction)) {
            act.show(What::Form, true, text);
        }
    }

    /// Choices are offered to someone who types.
    pub fn note_choices(&mut self, interaction: u64, choices: &Value) {
        let names: Vec<String> = super::messages::list(choices)
            .iter()
            .filter_map(|choice| choice["name"].as_str().map(str::to_string))
            .collect();
        let text = match names.as_slice() {
            [] => "offers nothing".to_string(),
            names => format!("offers: {}", names.join(" / ")),
        };
        if let Some(act) = self.chronicle.by(Cause::Interaction(interaction)) {
            act.show(What::Choices, true, text);
        }
    }

    /// The bot wrote into a channel, a thread or a direct conversation, or changed what it wrote.
    pub fn note_shown(&mut self, id: u64, changed: bool) {
        let Some(message) = self.messages.get(&id) else {
            return;
        };
        let answered = message.reference.and_then(|id| self.messages.get(&id));
        let head = match (changed, answered) {
            (true, _) => format!("changes {} ", quoted(self, message)),
            (false, Some(answered)) => format!("in reply to {} ", quoted(self, answered)),
            (false, None) => String::new(),
        };
        let text = format!(
            "{head}{}\n{}",
            audience(self, message),
            text::body(self, message)
        );
        let reader = self
            .channel(message.channel)
            .filter(|channel| channel.kind == ChannelKind::Direct)
            .map(|channel| channel.owner);
        let reference = message.reference;
        let script = &mut self.chronicle;
        let act = match (reference, reader) {
            (Some(answered), _) if script.by(Cause::Message(answered)).is_some() => {
                script.by(Cause::Message(answered)).map(|act| (act, true))
            }
            (_, Some(reader)) => script.for_letter(reader),
            _ => script.acts.last_mut().map(|act| (act, false)),
        };
        if let Some((act, own)) = act {
            act.show(What::Message(id), own, text);
        }
    }

    /// The bot took a message out of sight.
    pub fn note_taken_away(&mut self, gone: &Message) {
        let name = self.name_in(None, gone.author);
        let text = match gone.author == self.bot {
            true => format!("takes its own message away: {}", quoted(self, gone)),
            false => format!("takes {name}'s message out of sight"),
        };
        self.note_at(gone.id, What::Gone(gone.id), text);
    }

    /// The bot put a sign under a message.
    pub fn note_sign(&mut self, message: u64, emoji: &str) {
        let text = format!("puts {emoji} under the message, for all to see");
        self.note_at(message, What::Sign(message), text);
    }

    /// The bot opened a thread.
    pub fn note_thread(&mut self, id: u64) {
        let Some(thread) = self.channel(id) else {
            return;
        };
        let text = format!("opens the thread \"{}\" under it", thread.name);
        if let Some(act) = self.chronicle.acts.last_mut() {
            act.show(What::Thread(id), false, text);
        }
    }

    fn note_at(&mut self, message: u64, what: What, text: String) {
        if let Some(act) = self.chronicle.by(Cause::Message(message)) {
            act.show(what, true, text);
        } else if let Some(act) = self.chronicle.acts.last_mut() {
            act.show(what, false, text);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::discord::Discord;

    fn act(cause: Cause, who: u64, heading: &str) -> Act {
        Act {
            cause,
            who: Some(who),
            heading: heading.into(),
            shown: Vec::new(),
            crowd: None,
        }
    }

    #[test]
    fn what_belongs_to_an_act_comes_before_what_happened_meanwhile() {
        let mut act = act(Cause::Interaction(1), 7, "▶ Ana runs /x");
        assert!(act.written().contains("(no answer comes)"));
        act.show(What::Message(2), false, "in #study\na post".into());
        act.show(What::Message(3), true, "to Ana alone\n\nfirst".into());
        act.show(What::Message(3), true, "to Ana alone\n\nsecond".into());
        assert_eq!(
            act.written(),
            "▶ Ana runs /x\n    ◀ to Ana alone\n\n      second\n    ◀ in #study\n      a post"
        );
    }

    #[test]
    fn a_letter_goes_under_the_message_it_answers_though_others_spoke_since() {
        let mut script = Chronicle::default();
        script.push(Cause::Message(1), Some(7), "▶ Ana writes".into());
        script.push(Cause::Message(2), Some(8), "▶ Ben writes".into());
        let found = |script: &mut Chronicle, user| {
            script
                .for_letter(user)
                .map(|(act, own)| (act.heading.clone(), own))
        };
        assert_eq!(found(&mut script, 7), Some(("▶ Ana writes".into(), true)));
        // One who pressed something since is told of something else.
        script.push(Cause::Interaction(3), Some(7), "▶ Ana presses".into());
        script.push(Cause::Interaction(4), Some(9), "▶ the coach judges".into());
        assert_eq!(
            found(&mut script, 7),
            Some(("▶ the coach judges".into(), false))
        );
        script.leave_out(7);
        assert_eq!(found(&mut script, 7), None);
    }

    #[tokio::test]
    async fn a_crowd_that_does_alike_is_counted() {
        let discord = Discord::start().await;
        let people: Vec<u64> = (0..12)
            .map(|i| discord.person(&format!("Member {i}")).id)
            .collect();
        let mut world = discord.world();
        world.chronicle.crowd(Some("all at once"));
        for (i, id) in people.iter().enumerate() {
            let move_ = if i % 4 == 0 { "Rd7" } else { "Rd8" };
            let heading = format!("▶ Member {i} writes: {move_}");
            world
                .chronicle
                .push(Cause::Message(i as u64), Some(*id), heading);
        }
        world.chronicle.crowd(None);
        let text = world.chronicle.written(&world);
        assert_eq!(
            text,
            "— all at once —\n\n— 3 members: —\n\n▶ ⟨member⟩ writes: Rd7\n\n— 9 members: —\n\n▶ ⟨member⟩ writes: Rd8"
        );
    }
}
