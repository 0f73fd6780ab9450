//! Commands as registered, and what a client makes of them: the options of an interaction built from
//! the names a person picked, refused when the client would not have offered them.

use serde_json::{Map, Value, json};

use super::world::World;

/// Keeps the list and gives it back with ids.
pub fn register(world: &mut World, list: Vec<Value>) -> Value {
    let made: Vec<Value> = list
        .into_iter()
        .map(|mut command| {
            let id = world.ids.next();
            command["id"] = json!(id.to_string());
            command["application_id"] = json!(world.bot.to_string());
            command["version"] = json!(id.to_string());
            for (key, default) in [
                ("type", json!(1)),
                ("default_member_permissions", Value::Null),
                ("description", json!("")),
                ("nsfw", json!(false)),
            ] {
                if command[key].is_null() {
                    command[key] = default;
                }
            }
            // Sent as a number or as text, always given back as text.
            if let Some(bits) = command["default_member_permissions"].as_u64() {
                command["default_member_permissions"] = json!(bits.to_string());
            }
            command
        })
        .collect();
    world.commands = made.clone();
    json!(made)
}

/// What a person gives for an option.
#[derive(Clone, Debug)]
pub enum Given {
    /// Text, or the value of a choice.
    Text(String),
    /// A whole number.
    Number(i64),
    /// Yes or no.
    Flag(bool),
    /// A user.
    User(u64),
    /// A channel.
    Channel(u64),
    /// A file, by its id in the world.
    File(u64),
}

/// A command line as the client sends it.
#[derive(Clone, Debug)]
pub struct Built {
    /// Id of the command.
    pub id: Value,
    /// Its name.
    pub name: String,
    /// Options, nested as the command is.
    pub options: Value,
}

/// Builds the options of `line` ("group sub-command") from what was given.
/// `focused` is the option being typed, for autocomplete.
///
/// # Errors
/// Says why a client would not have let the person send this.
pub fn build(
    world: &World,
    line: &str,
    given: &[(&str, Given)],
    focused: Option<&str>,
) -> Result<Built, String> {
    let mut words = line.split_whitespace();
    let name = words.next().ok_or("no command")?;
    let command = world
        .commands
        .iter()
        .find(|command| {
            command["name"] == name && matches!(command["type"].as_u64(), None | Some(1))
        })
        .ok_or_else(|| format!("no command \"{name}\" is registered"))?;
    let (mut at, mut path) = (command, Vec::new());
    for word in words {
        at = list(&at["options"])
            .iter()
            .find(|option| option["name"] == word && matches!(option["type"].as_u64(), Some(1 | 2)))
            .ok_or_else(|| format!("no sub-command \"{word}\" in \"{line}\""))?;
        path.push(at);
    }
    if list(&at["options"])
        .iter()
        .any(|o| matches!(o["type"].as_u64(), Some(1 | 2)))
    {
        return Err(format!("\"{line}\" needs a sub-command"));
    }
    let mut options = Vec::new();
    for (key, value) in given {
        let option = list(&at["options"])
            .iter()
            .find(|option| option["name"] == *key)
            .ok_or_else(|| format!("\"{line}\" has no option \"{key}\""))?;
        let mut filled = fill(option, value, focused == Some(*key))
            .map_err(|why| format!("\"{line}\", option \"{key}\": {why}"))?;
        if focused == Some(*key) {
            if option["autocomplete"] != true {
                return Err(format!("option \"{key}\" offers no autocomplete"));
            }
            filled["focused"] = json!(true);
        }
        options.push(filled);
    }
    if focused.is_none() {
        for option in list(&at["options"])
            .iter()
            .filter(|option| option["required"] == true)
        {
            if !given.iter().any(|(key, _)| option["name"] == *key) {
                return Err(format!("\"{line}\" needs option {}", option["name"]));
            }
        }
    }
    let mut built = json!(options);
    for part in path.iter().rev() {
        built = json!([{"name": part["name"], "type": part["type"], "options": built}]);
    }
    Ok(Built {
        id: command["id"].clone(),
        name: name.into(),
        options: built,
    })
}

/// A command of a message's menu, by its English name: its id, and its name in the client's language.
pub fn menu(world: &World, name: &str, locale: &str) -> Option<(Value, String)> {
    let mut commands = world.commands.iter();
    let command = commands.find(|command| command["name"] == name && command["type"] == 3)?;
    Some((command["id"].clone(), name_shown(command, locale)))
}

/// A command line as a client in a language shows it: each part by its name there.
pub fn line_shown(world: &World, line: &str, locale: &str) -> String {
    let words: Vec<&str> = line.split_whitespace().collect();
    let parts = (1..=words.len()).map(|depth| {
        part(world, &words[..depth]).map_or_else(
            || words[depth - 1].to_owned(),
            |part| name_shown(part, locale),
        )
    });
    parts.collect::<Vec<_>>().join(" ")
}

/// An option of a command as a client in a language shows it.
pub fn option_shown(world: &World, line: &str, option: &str, locale: &str) -> String {
    let words: Vec<&str> = line.split_whitespace().chain([option]).collect();
    part(world, &words).map_or_else(|| option.to_owned(), |part| name_shown(part, locale))
}

/// The name of the choice that has this value, for an option that has choices, as a client in a language
/// shows it.
pub fn choice_shown(
    world: &World,
    line: &str,
    option: &str,
    value: &Value,
    locale: &str,
) -> Option<String> {
    let words: Vec<&str> = line.split_whitespace().chain([option]).collect();
    let choices = list(&part(world, &words)?["choices"]);
    let choice = choices.iter().find(|choice| choice["value"] == *value)?;
    Some(name_shown(choice, locale))
}

/// What a path of names leads to: a command, one below it, or an option.
fn part<'w>(world: &'w World, path: &[&str]) -> Option<&'w Value> {
    let named = |at: &Value, name: &str| at["name"] == name;
    let (first, rest) = path.split_first()?;
    let mut commands = world.commands.iter();
    let mut at = commands.find(|command| named(command, first))?;
    for word in rest {
        at = list(&at["options"]).iter().find(|part| named(part, word))?;
    }
    Some(at)
}

fn name_shown(part: &Value, locale: &str) -> String {
    let there = part["name_localizations"][locale].as_str();
    there
        .or_else(|| part["name"].as_str())
        .unwrap_or_default()
        .to_owned()
}

fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

fn fill(option: &Value, given: &Given, typing: bool) -> Result<Value, String> {
    let value = match (option["type"].as_u64(), given) {
        (Some(3), Given::Text(text)) => {
            let choices = list(&option["choices"]);
            if !choices.is_empty() && !choices.iter().any(|choice| choice["value"] == *text) {
                return Err(format!("\"{text}\" is not one of its choices"));
            }
            let length = text.chars().count() as u64;
            let most = option["max_length"].as_u64().unwrap_or(6000);
            if !typing && (length > most || length < option["min_length"].as_u64().unwrap_or(0)) {
                return Err(format!("{length} characters are not allowed"));
            }
            json!(text)
        }
        (Some(4), Given::Number(number)) => {
            let choices = list(&option["choices"]);
            if !choices.is_empty() && !choices.iter().any(|choice| choice["value"] == *number) {
                return Err(format!("{number} is not one of its choices"));
            }
            let under = option["min_value"]
                .as_i64()
                .is_some_and(|least| *number < least);
            if under
                || option["max_value"]
                    .as_i64()
                    .is_some_and(|most| *number > most)
            {
                return Err(format!("{number} is out of bounds"));
            }
            json!(number)
        }
        (Some(4), Given::Text(text)) if typing => json!(text),
        (Some(10), Given::Number(number)) => json!(number),
        (Some(5), Given::Flag(flag)) => json!(flag),
        (Some(6), Given::User(id))
        | (Some(7), Given::Channel(id))
        | (Some(11), Given::File(id)) => {
            json!(id.to_string())
        }
        (kind, given) => return Err(format!("{given:?} does not fit type {kind:?}")),
    };
    let mut filled = Map::new();
    filled.insert("name".into(), option["name"].clone());
    filled.insert("type".into(), option["type"].clone());
    filled.insert("value".into(), value);
    Ok(Value::Object(filled))
}
