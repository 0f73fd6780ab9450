//! Reads the demo's material into a script that can be played: who is in the group, what is posted in
//! which order, and what was written when. The material is built in, so an error here is a mistake in
//! it; it is named all the same, file and line, for whoever changes the demo.

use std::collections::HashMap;

use anyhow::{Context, bail};
use chrono::TimeDelta;
use sealed_move_demo_data::{GROUP, PAST};
use serde::Deserialize;

/// The demo's group and its three past weeks.
#[derive(Debug)]
pub(super) struct Script {
    /// The group.
    pub group: Group,
    /// What was written to each past post, by the position's id, in order of time.
    pub past: HashMap<String, Vec<ScriptLine>>,
}

/// The group, as its file has it.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Group {
    /// Its name.
    pub name: String,
    /// A sentence about it.
    #[allow(dead_code)]
    pub about: String,
    /// Its time zone.
    pub zone: chrono_tz::Tz,
    /// Ids of the positions posted so far, one a day, the last one yesterday.
    pub past: Vec<String>,
    /// Ids of those that wait, in order.
    pub queue: Vec<String>,
    /// Its members.
    pub members: Vec<Member>,
}

/// A member.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Member {
    /// The id in the chat.
    pub user: String,
    /// The name shown.
    pub name: String,
}

/// Something a member did.
#[derive(Debug)]
pub(super) struct ScriptLine {
    /// How long after the post.
    pub after: TimeDelta,
    /// Who: a member's id, or `coach`.
    pub member: String,
    /// What.
    pub deed: Deed,
}

/// What a member can do to a post.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Deed {
    /// Sends an answer.
    Answer(String),
    /// Asks for the next hint.
    Hint,
    /// Gives up.
    GiveUp,
    /// Says something to the others.
    Talk(String),
}

impl Script {
    /// Reads the built-in material.
    pub(super) fn read() -> anyhow::Result<Self> {
        let group: Group = toml::from_str(GROUP).context("group.toml of the demo")?;
        let mut past: HashMap<String, Vec<ScriptLine>> = HashMap::new();
        for (at, text) in PAST.lines().enumerate().skip(1) {
            let (position, line) =
                line(text).with_context(|| format!("past.tsv of the demo, line {}", at + 1))?;
            if !group.past.contains(&position) {
                bail!(
                    "past.tsv of the demo, line {}: {position} was not posted",
                    at + 1
                );
            }
            let known = line.member == "coach"
                || group
                    .members
                    .iter()
                    .any(|member| member.user == line.member);
            if !known {
                bail!(
                    "past.tsv of the demo, line {}: there is no member {}",
                    at + 1,
                    line.member
                );
            }
            past.entry(position).or_default().push(line);
        }
        for lines in past.values_mut() {
            lines.sort_by_key(|line| line.after);
        }
        Ok(Self { group, past })
    }
}

fn line(text: &str) -> anyhow::Result<(String, ScriptLine)> {
    let fields: Vec<&str> = text.split('\t').collect();
    let [position, after, member, how, words] = fields.as_slice() else {
        bail!("has {} fields, not five", fields.len());
    };
    let (hours, minutes) = after
        .split_once(':')
        .with_context(|| format!("{after} is no time such as 1:05"))?;
    let after = TimeDelta::hours(hours.parse()?) + TimeDelta::minutes(minutes.parse()?);
    let deed = match *how {
        "answer" => Deed::Answer((*words).to_owned()),
        "talk" => Deed::Talk((*words).to_owned()),
        "hint" => Deed::Hint,
        "give-up" => Deed::GiveUp,
        other => bail!("\"{other}\" is nothing a member does"),
    };
    Ok((
        (*position).to_owned(),
        ScriptLine {
            after,
            member: (*member).to_owned(),
            deed,
        },
    ))
}
