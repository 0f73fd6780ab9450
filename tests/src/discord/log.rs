//! A record of every request, with who can see what it put up: for reading, for counting refusals, and
//! for the test that nothing is given away.

use std::time::Instant;

use serde_json::Value;

/// Who can see what a request puts up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Audience {
    /// Nobody but the bot: it only asked, or took something away.
    Nobody,
    /// One person.
    Only(u64),
    /// Whoever can read this channel.
    Channel(u64),
    /// Anyone on Discord, as with the names of commands.
    Anyone,
}

/// One request.
#[derive(Clone, Debug)]
pub struct LogEntry {
    /// When.
    pub at: Instant,
    /// Method.
    pub method: String,
    /// Path without `/api/v10`, with tokens of interactions left out.
    pub path: String,
    /// Query.
    pub query: String,
    /// Body as JSON, the `payload_json` of a form with files.
    pub body: Value,
    /// Files that came with it.
    pub files: Vec<SentFile>,
    /// Status of the answer.
    pub status: u16,
    /// The answer.
    pub answer: Value,
    /// Who can see what it put up.
    pub audience: Audience,
}

/// A file in a request.
#[derive(Clone, Debug)]
pub struct SentFile {
    /// Name of the form's field, such as `files[0]`.
    pub field: String,
    /// File name.
    pub name: String,
    /// Content type as sent.
    pub kind: String,
    /// Content.
    pub bytes: Vec<u8>,
}

impl LogEntry {
    /// Every text in the body and in the files' names.
    pub fn texts(&self) -> Vec<String> {
        let mut out: Vec<String> = self.files.iter().map(|file| file.name.clone()).collect();
        collect(&self.body, &mut out);
        out
    }
}

fn collect(value: &Value, out: &mut Vec<String>) {
    match value {
        Value::String(text) => out.push(text.clone()),
        Value::Array(items) => items.iter().for_each(|item| collect(item, out)),
        // A nonce is for the machines alone, and its digits may look like anything.
        Value::Object(map) => map
            .iter()
            .filter(|(key, _)| *key != "nonce")
            .for_each(|(_, item)| collect(item, out)),
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}
