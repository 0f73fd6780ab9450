//! What commands, options and choices are called and for, in every language: from `discord-commands.ftl`,
//! by the command's path. English names are the contract; Discord shows a language's own where its client
//! speaks that language, and sends the English ones back.

use std::{borrow::Cow, sync::Arc};

use poise::{Command, CommandParameterChoice, serenity_prelude::CreateCommand};

use crate::{
    chat::discord::{house::House, oops::Oops},
    words::{Words, english, tags, words},
};

/// The languages of Discord's clients.
/// <https://discord.com/developers/docs/reference#locales>
const LOCALES: [&str; 32] = [
    "id", "da", "de", "en-GB", "en-US", "es-ES", "es-419", "fr", "hr", "it", "lt", "hu", "nl",
    "no", "pl", "pt-BR", "ro", "fi", "sv-SE", "vi", "tr", "cs", "el", "bg", "ru", "uk", "hi", "th",
    "zh-CN", "ja", "zh-TW", "ko",
];

type Text = Cow<'static, str>;
type Texts = Cow<'static, [(Text, Text)]>;

/// Fills in names and descriptions.
pub fn fill(commands: &mut [Command<Arc<House>, Oops>]) {
    for command in commands {
        fill_one(command, "command");
    }
}

fn fill_one(command: &mut Command<Arc<House>, Oops>, above: &str) {
    if command.context_menu_action.is_some() {
        return fill_menu(command);
    }
    let id = format!("{above}-{}", command.name);
    command.description = of(english(), &id, "description");
    command.name_localizations = others(|words| Some(words.text(&id).into()));
    command.description_localizations = others(|words| of(words, &id, "description"));
    for option in &mut command.parameters {
        let name = format!("option-{}", option.name);
        let about = format!("{name}-about");
        option.description = of(english(), &id, &about);
        option.name_localizations = others(|words| of(words, &id, &name));
        option.description_localizations = others(|words| of(words, &id, &about));
        // A choice whose name stands elsewhere has brought it along in every language.
        let unnamed = |choice: &&mut CommandParameterChoice| choice.localizations.is_empty();
        for choice in option.choices.to_mut().iter_mut().filter(unnamed) {
            let key = format!("choice-{}-{}", option.name, choice.name.to_lowercase());
            choice.localizations = others(|words| of(words, &id, &key));
            if let Some(name) = of(english(), &id, &key) {
                choice.name = name;
            }
        }
    }
    for below in &mut command.subcommands {
        fill_one(below, &id);
    }
}

/// The commands as Discord is told of them. The library leaves out what a menu's command is called elsewhere.
pub fn to_register(commands: &[Command<Arc<House>, Oops>]) -> Vec<CreateCommand> {
    let slash = commands.iter().filter_map(Command::create_as_slash_command);
    let menus = commands.iter().filter_map(|command| {
        let others = command.name_localizations.iter();
        others.fold(
            command.create_as_context_menu_command(),
            |made, (locale, name)| {
                made.map(|made| made.name_localized(locale.as_ref(), name.as_ref()))
            },
        )
    });
    slash.chain(menus).collect()
}

/// A command in a message's own menu: it has a name alone, written as a title.
fn fill_menu(command: &mut Command<Arc<House>, Oops>) {
    let id = format!("menu-{}", command.name.replace('_', "-"));
    command.context_menu_name = Some(english().text(&id).into());
    command.name_localizations = others(|words| Some(words.text(&id).into()));
}

fn of(words: &Words, id: &str, attribute: &str) -> Option<Text> {
    words.attribute(id, attribute).map(Cow::Owned)
}

/// A text in every language but English, by the locales whose clients speak it.
pub fn others(text: impl Fn(&Words) -> Option<Text>) -> Texts {
    let mut all = Vec::new();
    for tag in tags().filter(|tag| *tag != english().tag()) {
        let Some(text) = text(words(tag)) else {
            continue;
        };
        let speaks = |locale: &&&str| locale.split('-').next() == Some(tag);
        let locales = LOCALES.iter().filter(speaks);
        all.extend(locales.map(|locale| (Cow::Borrowed(*locale), text.clone())));
    }
    Cow::Owned(all)
}

#[cfg(test)]
mod tests {
    use std::collections::HashSet;

    use serde_json::{Value, json};

    use super::*;
    use crate::{
        chat::{common::text::LanguageName, discord::commands::piece_letters::PieceLetters},
        desk::Language,
    };
    use poise::ChoiceParameter;

    /// The commands as they are registered.
    fn registered() -> Vec<Value> {
        let commands = to_register(&crate::chat::discord::commands::all());
        let json = serde_json::to_value(commands).expect("JSON");
        json.as_array().expect("commands").clone()
    }

    fn list(value: &Value) -> &[Value] {
        value.as_array().map_or(&[], Vec::as_slice)
    }

    /// The languages that each text has to be in besides English.
    const WANTED: [&str; 3] = ["de", "es-ES", "es-419"];

    fn in_all(of: &Value, key: &str, path: &str) -> Vec<(String, String)> {
        let mut all = vec![("en".to_owned(), of[key].as_str().expect(path).to_owned())];
        let others = &of[format!("{key}_localizations")];
        for locale in WANTED {
            let text = others[locale]
                .as_str()
                .unwrap_or_else(|| panic!("{path} has no {key} in {locale}"));
            all.push((locale.to_owned(), text.to_owned()));
        }
        all
    }

    fn fits(text: &str, most: usize, path: &str) {
        let length = text.chars().count();
        assert!((1..=most).contains(&length), "{path}: {length}: {text}");
    }

    /// Names of one level differ, fit and are written as Discord wants them.
    fn look(of: &[Value], above: &str) {
        let mut names = HashSet::new();
        for one in of {
            let path = format!("{above} {}", one["name"].as_str().unwrap_or_default());
            for (locale, name) in in_all(one, "name", &path) {
                fits(&name, 32, &path);
                let written = name
                    .chars()
                    .all(|c| c.is_alphanumeric() || "-_".contains(c));
                assert!(written && name.to_lowercase() == name, "{path}: {name}");
                assert!(
                    names.insert((locale.clone(), name.clone())),
                    "{path}: {locale}: {name} twice"
                );
            }
            for (_, description) in in_all(one, "description", &path) {
                fits(&description, 100, &path);
                assert!(!description.starts_with("A slash command"), "{path}");
            }
            let mut choices = HashSet::new();
            for choice in list(&one["choices"]) {
                for (locale, name) in in_all(choice, "name", &path) {
                    fits(&name, 100, &path);
                    assert!(
                        choices.insert((locale, name.clone())),
                        "{path}: {name} twice"
                    );
                }
            }
            look(list(&one["options"]), &path);
        }
    }

    /// As Discord counts: of each text the longest there is.
    fn size(of: &Value) -> usize {
        let longest = |of: &Value, key: &str| {
            let others = of[format!("{key}_localizations")].as_object();
            let others = others.into_iter().flat_map(|texts| texts.values());
            others
                .chain([&of[key]])
                .map(|text| text.as_str().map_or(0, |text| text.chars().count()))
                .max()
                .unwrap_or_default()
        };
        let choices = list(&of["choices"])
            .iter()
            .map(|choice| longest(choice, "name") + 1);
        longest(of, "name")
            + longest(of, "description")
            + choices.sum::<usize>()
            + list(&of["options"]).iter().map(size).sum::<usize>()
    }

    #[test]
    fn every_text_is_there_in_every_language_and_fits() {
        let commands = registered();
        assert_eq!(commands.len(), 4);
        let (menus, commands): (Vec<Value>, Vec<Value>) =
            commands.into_iter().partition(|one| one["type"] == 3);
        for menu in &menus {
            for (_, name) in in_all(menu, "name", "a menu") {
                fits(&name, 32, "a menu");
            }
        }
        look(&commands, "");
        for command in &commands {
            assert!(
                size(command) <= 8_000,
                "{}: {}",
                command["name"],
                size(command)
            );
        }
    }

    #[test]
    fn every_language_of_replies_can_be_chosen() {
        let commands = registered();
        let below = |of: &Value, name: &str| {
            let found = list(&of["options"]).iter().find(|one| one["name"] == name);
            found.expect("an option").clone()
        };
        let coach = commands.iter().find(|command| command["name"] == "coach");
        let settings = below(coach.expect("a command"), "settings");
        let choices = below(&settings, "language")["choices"].clone();
        let named = |name: fn(&Value) -> &Value| -> Vec<&str> {
            let choices = list(&choices).iter();
            choices.filter_map(|choice| name(choice).as_str()).collect()
        };
        for (tag, names) in [
            ("en", named(|choice| &choice["name"])),
            ("de", named(|choice| &choice["name_localizations"]["de"])),
        ] {
            let wanted = Language::ALL.map(|language| LanguageName::listed(language, words(tag)));
            assert_eq!(names, wanted);
        }
        for (at, language) in Language::ALL.into_iter().enumerate() {
            let chosen = PieceLetters::from_index(at).expect("a choice");
            assert_eq!(chosen.0, language);
        }
    }

    #[test]
    fn english_names_are_the_contract() {
        fn paths(of: &Value, above: &str, all: &mut Vec<String>) {
            let path = format!("{above}-{}", of["name"].as_str().expect("a name"));
            if list(&of["options"])
                .iter()
                .all(|option| option["type"] != json!(1) && option["type"] != json!(2))
            {
                all.push(path);
                return;
            }
            all.push(path.clone());
            for below in list(&of["options"]) {
                paths(below, &path, all);
            }
        }
        let mut all = Vec::new();
        for command in registered().iter().filter(|one| one["type"] != 3) {
            paths(command, "command", &mut all);
        }
        for id in crate::words::ids().filter(|id| id.starts_with("command-")) {
            assert!(all.iter().any(|path| path == id), "{id} names no command");
            let name = english().text(id);
            assert!(id.ends_with(&format!("-{name}")), "{id} is called {name}");
        }
    }
}
