//! The published limits of messages, embeds, components and modals. A body outside them is refused in
//! the form Discord uses.

use std::collections::HashSet;

use serde_json::Value;

use super::{
    errors::{Fault, Refusal},
    log::SentFile,
};

/// The most all files of one message may weigh, in bytes, on a server without boosts.
pub const UPLOAD: usize = 10 << 20;

fn chars(value: &Value) -> usize {
    value.as_str().map_or(0, |text| text.chars().count())
}

/// Checks the length of a text that may be absent.
fn within(faults: &mut Vec<Fault>, value: &Value, place: &str, least: usize, most: usize) {
    if value.is_null() {
        return;
    }
    if !value.is_string() {
        faults.push(Fault::other(place, "BASE_TYPE_STRING", "Must be a string."));
    } else if !(least..=most).contains(&chars(value)) {
        faults.push(Fault::length(place, least, most));
    }
}

/// The items of a list that may be absent.
fn items(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

/// Checks the body of a message: new, edited, or the answer to an interaction.
///
/// # Errors
/// The refusal Discord would give.
pub fn message(body: &Value, files: &[SentFile], must_say_something: bool) -> Result<(), Refusal> {
    let mut faults = Vec::new();
    within(&mut faults, &body["content"], "content", 0, 2000);
    let embeds = items(&body["embeds"]);
    if embeds.len() > 10 {
        faults.push(Fault::length("embeds", 0, 10));
    }
    let mut total = 0;
    for (i, embed) in embeds.iter().enumerate() {
        total += self::embed(&mut faults, embed, &format!("embeds.{i}"), files);
    }
    if total > 6000 {
        faults.push(Fault::other(
            "embeds",
            "MAX_EMBED_SIZE_EXCEEDED",
            "Embed size exceeds maximum size of 6000",
        ));
    }
    rows(&mut faults, items(&body["components"]), Rows::Message);
    attachments(&mut faults, items(&body["attachments"]), files)?;
    if let Some(nonce) = body["nonce"].as_str()
        && nonce.chars().count() > 25
    {
        faults.push(Fault::length("nonce", 0, 25));
    }
    mentions(&mut faults, &body["allowed_mentions"]);
    if !faults.is_empty() {
        return Err(Refusal::form(&faults));
    }
    let says = chars(&body["content"]) > 0
        || !embeds.is_empty()
        || !files.is_empty()
        || !items(&body["components"]).is_empty();
    if must_say_something && !says {
        return Err(Refusal::new(400, 50006, "Cannot send an empty message"));
    }
    Ok(())
}

fn embed(faults: &mut Vec<Fault>, embed: &Value, place: &str, files: &[SentFile]) -> usize {
    within(faults, &embed["title"], &format!("{place}.title"), 0, 256);
    within(
        faults,
        &embed["description"],
        &format!("{place}.description"),
        0,
        4096,
    );
    within(
        faults,
        &embed["footer"]["text"],
        &format!("{place}.footer.text"),
        0,
        2048,
    );
    within(
        faults,
        &embed["author"]["name"],
        &format!("{place}.author.name"),
        0,
        256,
    );
    let fields = items(&embed["fields"]);
    if fields.len() > 25 {
        faults.push(Fault::length(format!("{place}.fields"), 0, 25));
    }
    let mut total = chars(&embed["title"])
        + chars(&embed["description"])
        + chars(&embed["footer"]["text"])
        + chars(&embed["author"]["name"]);
    for (i, field) in fields.iter().enumerate() {
        let place = format!("{place}.fields.{i}");
        for (key, most) in [("name", 256), ("value", 1024)] {
            if chars(&field[key]) == 0 {
                faults.push(Fault::required(format!("{place}.{key}")));
            }
            within(faults, &field[key], &format!("{place}.{key}"), 1, most);
            total += chars(&field[key]);
        }
    }
    for key in ["image", "thumbnail"] {
        let url = embed[key]["url"].as_str().unwrap_or_default();
        if let Some(name) = url.strip_prefix("attachment://") {
            // An edit may refer to a file that was sent before, so only a new one can be missing.
            if !files.is_empty() && !files.iter().any(|file| file.name == name) {
                faults.push(Fault::other(
                    format!("{place}.{key}.url"),
                    "ATTACHMENT_NOT_FOUND",
                    format!("The attachment {name} could not be found"),
                ));
            }
        } else if !url.is_empty() && !url.starts_with("https://") && !url.starts_with("http://") {
            faults.push(Fault::other(
                format!("{place}.{key}.url"),
                "URL_TYPE_INVALID_SCHEME",
                "Scheme must be one of ('http', 'https').",
            ));
        }
    }
    total
}

fn attachments(
    faults: &mut Vec<Fault>,
    listed: &[Value],
    files: &[SentFile],
) -> Result<(), Refusal> {
    if files.len() > 10 || listed.len() > 10 {
        faults.push(Fault::length("attachments", 0, 10));
    }
    if files.iter().map(|file| file.bytes.len()).sum::<usize>() > UPLOAD {
        return Err(Refusal::new(413, 40005, "Request entity too large"));
    }
    let mut fields = HashSet::new();
    for file in files {
        let number = file
            .field
            .strip_prefix("files[")
            .and_then(|rest| rest.strip_suffix(']'))
            .and_then(|number| number.parse::<u64>().ok());
        if number.is_none() || !fields.insert(number) {
            faults.push(Fault::other(
                "files",
                "FILE_FIELD",
                format!(
                    "The form's field \"{}\" is not files[n], or comes twice",
                    file.field
                ),
            ));
        }
    }
    for (i, attachment) in listed.iter().enumerate() {
        let place = format!("attachments.{i}");
        if super::ids::id_of(&attachment["id"]).is_none() {
            faults.push(Fault::required(format!("{place}.id")));
        }
        within(
            faults,
            &attachment["description"],
            &format!("{place}.description"),
            0,
            1024,
        );
        within(
            faults,
            &attachment["filename"],
            &format!("{place}.filename"),
            1,
            1024,
        );
    }
    Ok(())
}

fn mentions(faults: &mut Vec<Fault>, allowed: &Value) {
    for kind in items(&allowed["parse"]) {
        let kind = kind.as_str().unwrap_or_default();
        if !["users", "roles", "everyone"].contains(&kind) {
            faults.push(Fault::other(
                "allowed_mentions.parse",
                "BASE_TYPE_CHOICES",
                "Value must be one of {'users', 'everyone', 'roles'}.",
            ));
        }
        if items(&allowed[kind]).iter().any(|_| kind != "everyone") {
            faults.push(Fault::other(
                "allowed_mentions.parse",
                "MESSAGE_ALLOWED_MENTIONS_PARSE_EXCLUSIVE",
                format!("parse:[\"{kind}\"] and {kind}: [ids...] are mutually exclusive."),
            ));
        }
    }
    for key in ["users", "roles"] {
        if items(&allowed[key]).len() > 100 {
            faults.push(Fault::length(format!("allowed_mentions.{key}"), 0, 100));
        }
    }
}

/// Where rows of components stand.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Rows {
    Message,
    Modal,
}

fn rows(faults: &mut Vec<Fault>, rows: &[Value], on: Rows) {
    if rows.len() > 5 {
        faults.push(Fault::length("components", 1, 5));
    }
    let mut seen = HashSet::new();
    for (i, row) in rows.iter().enumerate() {
        let place = format!("components.{i}");
        if row["type"] != 1 {
            faults.push(Fault::other(
                format!("{place}.type"),
                "BASE_TYPE_CHOICES",
                "Only action rows stand at the top.",
            ));
            continue;
        }
        let inner = items(&row["components"]);
        let menus = inner.iter().filter(|c| c["type"] != 2).count();
        if inner.is_empty() || inner.len() > 5 || (menus > 0 && inner.len() > 1) {
            faults.push(Fault::length(
                format!("{place}.components"),
                1,
                if menus > 0 { 1 } else { 5 },
            ));
        }
        for (j, component) in inner.iter().enumerate() {
            let place = format!("{place}.components.{j}");
            match (component["type"].as_u64(), on) {
                (Some(2), Rows::Message) => button(faults, component, &place),
                (Some(3), Rows::Message) => menu(faults, component, &place),
                (Some(4), Rows::Modal) => text_input(faults, component, &place),
                _ => faults.push(Fault::other(
                    format!("{place}.type"),
                    "COMPONENT_TYPE_INVALID",
                    "The specified component type is invalid here.",
                )),
            }
            if let Some(id) = component["custom_id"].as_str()
                && !seen.insert(id.to_string())
            {
                faults.push(Fault::other(
                    format!("{place}.custom_id"),
                    "COMPONENT_CUSTOM_ID_DUPLICATED",
                    "Component custom id cannot be duplicated",
                ));
            }
        }
    }
}

fn custom_id(faults: &mut Vec<Fault>, component: &Value, place: &str) {
    if component["custom_id"].is_null() {
        faults.push(Fault::required(format!("{place}.custom_id")));
    }
    within(
        faults,
        &component["custom_id"],
        &format!("{place}.custom_id"),
        1,
        100,
    );
}

fn button(faults: &mut Vec<Fault>, button: &Value, place: &str) {
    within(faults, &button["label"], &format!("{place}.label"), 0, 80);
    if chars(&button["label"]) == 0 && button["emoji"].is_null() {
        faults.push(Fault::other(
            place,
            "BUTTON_COMPONENT_LABEL_OR_EMOJI_REQUIRED",
            "A button needs a label or an emoji.",
        ));
    }
    match button["style"].as_u64() {
        Some(1..=4) => custom_id(faults, button, place),
        Some(5) if button["custom_id"].is_null() && !button["url"].is_null() => {}
        _ => faults.push(Fault::other(
            format!("{place}.style"),
            "BASE_TYPE_CHOICES",
            "Value must be one of {1, 2, 3, 4, 5}.",
        )),
    }
}

fn menu(faults: &mut Vec<Fault>, menu: &Value, place: &str) {
    custom_id(faults, menu, place);
    within(
        faults,
        &menu["placeholder"],
        &format!("{place}.placeholder"),
        0,
        150,
    );
    let options = items(&menu["options"]);
    if options.is_empty() || options.len() > 25 {
        faults.push(Fault::length(format!("{place}.options"), 1, 25));
    }
    let mut values = HashSet::new();
    for (i, option) in options.iter().enumerate() {
        let place = format!("{place}.options.{i}");
        for key in ["label", "value"] {
            if option[key].is_null() {
                faults.push(Fault::required(format!("{place}.{key}")));
            }
            within(faults, &option[key], &format!("{place}.{key}"), 1, 100);
        }
        within(
            faults,
            &option["description"],
            &format!("{place}.description"),
            0,
            100,
        );
        if !values.insert(option["value"].as_str().unwrap_or_default().to_string()) {
            faults.push(Fault::other(
                format!("{place}.value"),
                "SELECT_COMPONENT_OPTION_VALUE_DUPLICATED",
                "The specified option value is already used",
            ));
        }
    }
}

fn text_input(faults: &mut Vec<Fault>, input: &Value, place: &str) {
    custom_id(faults, input, place);
    if input["label"].is_null() {
        faults.push(Fault::required(format!("{place}.label")));
    }
    within(faults, &input["label"], &format!("{place}.label"), 1, 45);
    within(
        faults,
        &input["placeholder"],
        &format!("{place}.placeholder"),
        0,
        100,
    );
    within(faults, &input["value"], &format!("{place}.value"), 0, 4000);
    let most = input["max_length"].as_u64().unwrap_or(4000);
    let least = input["min_length"].as_u64().unwrap_or(0);
    if !(1..=4000).contains(&most) || least > most {
        faults.push(Fault::other(
            format!("{place}.max_length"),
            "NUMBER_TYPE_MAX",
            "int value should be between 1 and 4000.",
        ));
    }
    if !matches!(input["style"].as_u64(), Some(1 | 2)) {
        faults.push(Fault::other(
            format!("{place}.style"),
            "BASE_TYPE_CHOICES",
            "Value must be one of {1, 2}.",
        ));
    }
}

/// Checks a modal.
///
/// # Errors
/// The refusal Discord would give.
pub fn modal(modal: &Value) -> Result<(), Refusal> {
    let mut faults = Vec::new();
    for (key, most) in [("title", 45), ("custom_id", 100)] {
        if modal[key].is_null() {
            faults.push(Fault::required(format!("data.{key}")));
        }
        within(&mut faults, &modal[key], &format!("data.{key}"), 1, most);
    }
    let rows = items(&modal["components"]);
    if rows.is_empty() {
        faults.push(Fault::length("data.components", 1, 5));
    }
    self::rows(&mut faults, rows, Rows::Modal);
    if faults.is_empty() {
        Ok(())
    } else {
        Err(Refusal::form(&faults))
    }
}

/// Checks the choices of an autocomplete answer.
///
/// # Errors
/// The refusal Discord would give.
pub fn choices(choices: &Value) -> Result<(), Refusal> {
    let mut faults = Vec::new();
    let listed = items(choices);
    if listed.len() > 25 {
        faults.push(Fault::length("data.choices", 0, 25));
    }
    for (i, choice) in listed.iter().enumerate() {
        let place = format!("data.choices.{i}");
        within(
            &mut faults,
            &choice["name"],
            &format!("{place}.name"),
            1,
            100,
        );
        if choice["value"].is_string() {
            within(
                &mut faults,
                &choice["value"],
                &format!("{place}.value"),
                1,
                100,
            );
        }
        for key in ["name", "value"] {
            if choice[key].is_null() {
                faults.push(Fault::required(format!("{place}.{key}")));
            }
        }
    }
    if faults.is_empty() {
        Ok(())
    } else {
        Err(Refusal::form(&faults))
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    fn places(result: Result<(), Refusal>) -> String {
        result
            .expect_err("refused")
            .errors
            .map_or_else(String::new, |e| e.to_string())
    }

    #[test]
    fn limits_are_exact() {
        let ok = |body: Value| message(&body, &[], true).is_ok();
        assert!(ok(json!({"content": "x".repeat(2000)})));
        assert!(!ok(json!({"content": "x".repeat(2001)})));
        assert!(!ok(json!({"content": ""})), "empty");
        assert!(ok(json!({"embeds": [{"description": "x".repeat(4096)}]})));
        assert!(!ok(
            json!({"embeds": [{"description": "x".repeat(4096)}, {"description": "x".repeat(1905)}]})
        ));
        let buttons = |n: usize| {
            let buttons: Vec<Value> = (0..n)
                .map(|i| json!({"type": 2, "style": 1, "label": "b", "custom_id": i.to_string()}))
                .collect();
            json!({"components": [{"type": 1, "components": buttons}]})
        };
        assert!(ok(buttons(5)));
        assert!(!ok(buttons(6)));
        let twice = json!({"components": [{"type": 1, "components": [
            {"type": 2, "style": 1, "label": "a", "custom_id": "x"},
            {"type": 2, "style": 1, "label": "b", "custom_id": "x"}]}]});
        assert!(places(message(&twice, &[], true)).contains("DUPLICATED"));
    }

    #[test]
    fn modals_and_choices_have_limits_too() {
        let modal_with = |title: &str, label: &str| {
            modal(
                &json!({"custom_id": "m", "title": title, "components": [{"type": 1, "components": [
                {"type": 4, "style": 1, "label": label, "custom_id": "t"}]}]}),
            )
        };
        assert!(modal_with("Your answer", "Move").is_ok());
        assert!(modal_with(&"x".repeat(46), "Move").is_err());
        assert!(modal_with("Your answer", &"x".repeat(46)).is_err());
        let many: Vec<Value> = (0..26)
            .map(|i| json!({"name": i.to_string(), "value": i}))
            .collect();
        assert!(choices(&json!(many)).is_err());
        assert!(choices(&json!(many[..25])).is_ok());
    }
}
