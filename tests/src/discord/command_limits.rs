//! The published limits of application commands.

use std::collections::HashSet;

use serde_json::Value;

use super::errors::{Fault, Refusal};

/// Checks a whole list of global commands.
///
/// # Errors
/// The refusal Discord would give.
pub fn commands(list: &[Value]) -> Result<(), Refusal> {
    let mut faults = Vec::new();
    if list.len() > 100 {
        return Err(Refusal::new(
            400,
            30032,
            "Maximum number of application commands reached (100)",
        ));
    }
    let mut names = HashSet::new();
    for (i, command) in list.iter().enumerate() {
        let place = i.to_string();
        let slash = matches!(command["type"].as_u64(), None | Some(1));
        if slash {
            name(&mut faults, command, &place);
            described(&mut faults, command, &place);
            options(&mut faults, command, &place, 0);
        }
        if !names.insert((
            command["type"].as_u64().unwrap_or(1),
            command["name"].to_string(),
        )) {
            faults.push(Fault::other(
                format!("{place}.name"),
                "APPLICATION_COMMANDS_DUPLICATE_NAME",
                "Application command names must be unique",
            ));
        }
        if size(command) > 8000 {
            faults.push(Fault::other(
                place,
                "APPLICATION_COMMAND_TOO_LARGE",
                "Command exceeds maximum size (8000)",
            ));
        }
    }
    if faults.is_empty() {
        Ok(())
    } else {
        Err(Refusal::form(&faults))
    }
}

/// Names, descriptions and values of a command together, in characters; of a text in several languages the
/// longest.
pub fn size(command: &Value) -> usize {
    let own: usize = ["name", "description"]
        .iter()
        .map(|key| longest(command, key))
        .sum();
    let value = |choice: &Value| {
        choice["value"]
            .as_str()
            .map_or(0, |text| text.chars().count())
    };
    let choices: usize = list(&command["choices"])
        .iter()
        .map(|choice| longest(choice, "name") + value(choice))
        .sum();
    own + choices + list(&command["options"]).iter().map(size).sum::<usize>()
}

/// A text and what it is in other languages, with their locales; the text itself has none.
fn in_all<'a>(of: &'a Value, key: &str) -> Vec<(&'a str, &'a str)> {
    let others = of[format!("{key}_localizations")].as_object();
    let others = others.into_iter().flatten();
    let others = others.map(|(locale, text)| (locale.as_str(), text.as_str().unwrap_or_default()));
    let own = ("", of[key].as_str().unwrap_or_default());
    std::iter::once(own).chain(others).collect()
}

fn longest(of: &Value, key: &str) -> usize {
    let lengths = in_all(of, key)
        .into_iter()
        .map(|(_, text)| text.chars().count());
    lengths.max().unwrap_or_default()
}

fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

/// `^[-_'\p{L}\p{N}]{1,32}$` in lower case.
fn name(faults: &mut Vec<Fault>, of: &Value, place: &str) {
    let fits = |text: &str| {
        (1..=32).contains(&text.chars().count())
            && text
                .chars()
                .all(|c| c.is_alphanumeric() || "-_'".contains(c))
            && text.to_lowercase() == text
    };
    if !in_all(of, "name").into_iter().all(|(_, text)| fits(text)) {
        faults.push(Fault::other(
            format!("{place}.name"),
            "APPLICATION_COMMAND_INVALID_NAME",
            "Command name is invalid",
        ));
    }
}

fn described(faults: &mut Vec<Fault>, of: &Value, place: &str) {
    let fits = |text: &str| (1..=100).contains(&text.chars().count());
    if !in_all(of, "description")
        .into_iter()
        .all(|(_, text)| fits(text))
    {
        faults.push(Fault::length(format!("{place}.description"), 1, 100));
    }
}

fn options(faults: &mut Vec<Fault>, of: &Value, place: &str, depth: usize) {
    let listed = list(&of["options"]);
    if listed.len() > 25 {
        faults.push(Fault::length(format!("{place}.options"), 0, 25));
    }
    let nested = |option: &Value| matches!(option["type"].as_u64(), Some(1 | 2));
    if listed.iter().any(nested) && !listed.iter().all(nested) {
        faults.push(Fault::other(
            format!("{place}.options"),
            "APPLICATION_COMMAND_OPTIONS_TYPE_INVALID",
            "Sub-command and sub-command group option types are mutually exclusive to all other types",
        ));
    }
    let mut names = HashSet::new();
    let mut optional_seen = false;
    for (i, option) in listed.iter().enumerate() {
        let place = format!("{place}.options.{i}");
        name(faults, option, &place);
        described(faults, option, &place);
        if !in_all(option, "name")
            .into_iter()
            .all(|name| names.insert(name))
        {
            faults.push(Fault::other(
                format!("{place}.name"),
                "APPLICATION_COMMAND_OPTIONS_NAME_INVALID",
                "Option name is duplicated",
            ));
        }
        match option["type"].as_u64() {
            Some(1) if depth < 2 => options(faults, option, &place, depth + 1),
            Some(2) if depth < 1 => {
                if list(&option["options"]).is_empty() {
                    faults.push(Fault::required(format!("{place}.options")));
                }
                options(faults, option, &place, depth + 1);
            }
            Some(3..=11) => {
                let required = option["required"] == true;
                if required && optional_seen {
                    faults.push(Fault::other(
                        format!("{place}.required"),
                        "APPLICATION_COMMAND_OPTIONS_REQUIRED_INVALID",
                        "Required options must be placed before non-required options",
                    ));
                }
                optional_seen |= !required;
                let choices = list(&option["choices"]);
                if choices.len() > 25 {
                    faults.push(Fault::length(format!("{place}.choices"), 0, 25));
                }
                if !choices.is_empty() && option["autocomplete"] == true {
                    faults.push(Fault::other(
                        format!("{place}.autocomplete"),
                        "APPLICATION_COMMAND_OPTIONS_AUTOCOMPLETE_INVALID",
                        "Autocomplete and choices exclude each other",
                    ));
                }
                for (j, choice) in choices.iter().enumerate() {
                    let fits = |text: &str| (1..=100).contains(&text.chars().count());
                    if !in_all(choice, "name")
                        .into_iter()
                        .all(|(_, text)| fits(text))
                    {
                        faults.push(Fault::length(format!("{place}.choices.{j}.name"), 1, 100));
                    }
                }
            }
            _ => faults.push(Fault::other(
                format!("{place}.type"),
                "APPLICATION_COMMAND_OPTIONS_TYPE_INVALID",
                "Options cannot be nested here, or the type is unknown",
            )),
        }
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    #[test]
    fn names_orders_and_depth_are_checked() {
        let one = |command: Value| commands(&[command]);
        assert!(one(json!({"name": "study", "description": "d"})).is_ok());
        assert!(one(json!({"name": "Study", "description": "d"})).is_err());
        assert!(one(json!({"name": "two words", "description": "d"})).is_err());
        assert!(one(json!({"name": "study", "description": ""})).is_err());
        let in_german = |name: &str| json!({"name": "study", "description": "d", "name_localizations": {"de": name}});
        assert!(one(in_german("lernen")).is_ok() && one(in_german("Lernen")).is_err());
        let option = |name: &str, required: bool| json!({"name": name, "description": "d", "type": 3, "required": required});
        assert!(one(json!({"name": "s", "description": "d", "options": [option("a", false), option("b", true)]})).is_err());
        assert!(one(json!({"name": "s", "description": "d", "options": [option("a", true), option("b", false)]})).is_ok());
        let choices: Vec<Value> = (0..26)
            .map(|i| json!({"name": i.to_string(), "value": "v"}))
            .collect();
        assert!(
            one(json!({"name": "s", "description": "d", "options": [
            {"name": "a", "description": "d", "type": 3, "choices": choices}]}))
            .is_err()
        );
    }
}
