//! The help of every command in the reader's language, from `console-help.ftl` by the command's path:
//! `help` is the program, `help-queue-add` the command `queue add`. The message says in a sentence what the
//! command is for; its attributes are `long` (what `--help` says instead), `after` (examples), `arg-NAME` for an
//! option or argument, and `arg-NAME-is-VALUE` for a value out of a list. What several commands have in common
//! stands in `help-shared`.
//!
//! The names of commands, options and values are the contract, and the same in every language. The comments in
//! the sources are for those who read these.

use clap::{Arg, ArgAction, Command};

use super::text::{List, Offered};
use crate::words::Words;

/// The message that all commands share.
const SHARED: &str = "help-shared";

/// Where the options stand that every command has, behind its own.
const LAST: usize = 900;

/// Fills in what is shown in the help of a command and of all commands below it.
pub(super) fn localized(command: Command, words: &Words) -> Command {
    let mut command = filled(command, "help", words);
    // Names of commands above stand in a usage, so it is known only now.
    command.build();
    usage_in(&mut command, words);
    command
}

fn filled(mut command: Command, id: &str, words: &Words) -> Command {
    let below: Vec<String> = command
        .get_subcommands()
        .map(|below| below.get_name().to_owned())
        .collect();
    for name in &below {
        let id = format!("{id}-{name}");
        command = command.mut_subcommand(name, |below| filled(below, &id, words));
    }
    // The library's own flags speak English only.
    command = command
        .disable_help_flag(true)
        .disable_version_flag(true)
        .arg(
            Arg::new("help")
                .short('h')
                .long("help")
                .action(ArgAction::Help)
                .display_order(LAST + 1),
        );
    if command.get_version().is_some() {
        let version = Arg::new("version").short('V').long("version");
        command = command.arg(version.action(ArgAction::Version).display_order(LAST + 1));
    }
    let template = template(&command, words);
    let about = words.text(id);
    let long = words.attribute(id, "long").unwrap_or_else(|| about.clone());
    command = command
        .mut_args(|arg| argument(arg, id, words))
        .about(about)
        .long_about(long)
        .help_template(template);
    match words.attribute(id, "after") {
        Some(after) => command.after_help(after),
        None => command,
    }
}

/// What an attribute says, for the command itself or for all.
fn said(words: &Words, id: &str, attribute: &str) -> Option<String> {
    let own = words.attribute(id, attribute);
    own.or_else(|| words.attribute(SHARED, attribute))
}

fn argument(mut arg: Arg, id: &str, words: &Words) -> Arg {
    let key = key(&arg);
    let mut help = said(words, id, &key).unwrap_or_default();
    if arg.get_action().takes_values() {
        let values: Vec<Offered> = arg
            .get_possible_values()
            .iter()
            .map(|value| Offered::OptionValue {
                name: value.get_name().to_owned(),
                meaning: said(words, id, &value_key(&key, value.get_name())).unwrap_or_default(),
            })
            .collect();
        let usual: Vec<String> = arg
            .get_default_values()
            .iter()
            .map(|value| value.to_string_lossy().into_owned())
            .collect();
        let mut notes = Vec::new();
        if !values.is_empty() {
            let values = List { list: values };
            notes.push(Offered::OneOfValues { values });
        }
        if !usual.is_empty() {
            let value = usual.join(" ");
            notes.push(Offered::UsualValue { value });
        }
        if let Some(name) = arg.get_env() {
            let name = name.to_string_lossy().into_owned();
            notes.push(Offered::EnvironmentName { name });
        }
        for note in notes {
            help = format!("{help} {}", words.say(&note));
        }
        let names: Vec<String> = match arg.get_value_names() {
            Some(names) => names.iter().map(ToString::to_string).collect(),
            None => vec![arg.get_id().as_str().to_uppercase()],
        };
        let names = names.into_iter().map(|name| placeholder(words, &name));
        arg = arg
            .value_names(names.collect::<Vec<_>>())
            .hide_default_value(true)
            .hide_possible_values(true)
            .hide_env(true);
    }
    match arg.is_global_set() {
        true => arg.display_order(LAST),
        false => arg,
    }
    .help(help)
}

/// The attribute that tells what an argument is for.
fn key(arg: &Arg) -> String {
    format!("arg-{}", arg.get_id().as_str().replace('_', "-"))
}

fn value_key(arg: &str, value: &str) -> String {
    format!("{arg}-is-{value}")
}

/// What stands for a value in a usage.
fn placeholder(words: &Words, name: &str) -> String {
    words
        .attribute(SHARED, &format!("value-{name}"))
        .unwrap_or_else(|| name.to_owned())
}

/// How a help is laid out: as the library does it, with headings of our own.
fn template(command: &Command, words: &Words) -> String {
    let styles = command.get_styles();
    let (header, usage) = (styles.get_header(), styles.get_usage());
    let text = |attribute: &str| words.attribute(SHARED, attribute).unwrap_or_default();
    let mut template = format!(
        "{{about-with-newline}}\n{usage}{}{usage:#} {{usage}}",
        text("heading-usage")
    );
    let parts = [
        (command.has_subcommands(), "commands", "{subcommands}"),
        (
            command.get_positionals().next().is_some(),
            "arguments",
            "{positionals}",
        ),
        (true, "options", "{options}"),
    ];
    for (_, name, tag) in parts.iter().filter(|(there, ..)| *there) {
        let heading = text(&format!("heading-{name}"));
        template.push_str(&format!("\n\n{header}{heading}{header:#}\n{tag}"));
    }
    template + "{after-help}"
}

/// Puts the placeholders of the library's own usage into the reader's language.
fn usage_in(command: &mut Command, words: &Words) {
    let usage = command.render_usage().to_string();
    let usage = without_heading(&usage);
    let ours =
        ["[OPTIONS]", "[COMMAND]", "<COMMAND>"]
            .iter()
            .fold(usage.to_owned(), |usage, theirs| {
                let name = theirs.trim_matches(['[', ']', '<', '>']);
                let shown = theirs.replace(name, &placeholder(words, name));
                usage.replace(theirs, &shown)
            });
    if ours != usage {
        *command = std::mem::take(command).override_usage(ours);
    }
    for below in command.get_subcommands_mut() {
        usage_in(below, words);
    }
}

/// A usage without the library's own heading.
pub(super) fn without_heading(usage: &str) -> &str {
    usage.strip_prefix("Usage: ").unwrap_or(usage).trim()
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use clap::CommandFactory;

    use super::*;
    use crate::{
        cli::Cli,
        words::{source, tags, words},
    };

    /// What a command and those below it ask for: the message, and the attribute where it is one.
    fn asked(command: &Command, id: &str, all: &mut BTreeSet<(String, Option<String>)>) {
        all.insert((id.to_owned(), None));
        for arg in command.get_arguments() {
            let key = key(arg);
            if arg.get_action().takes_values() {
                for value in arg.get_possible_values() {
                    let value = value_key(&key, value.get_name());
                    all.insert((id.to_owned(), Some(value)));
                }
            }
            all.insert((id.to_owned(), Some(key)));
        }
        for below in command.get_subcommands() {
            asked(below, &format!("{id}-{}", below.get_name()), all);
        }
    }

    /// Every message of a language's help, and every attribute of one.
    fn there(tag: &str) -> BTreeSet<(String, Option<String>)> {
        let source = source(tag, &["console-help.ftl"]);
        let mut message = String::new();
        let mut all = BTreeSet::new();
        for line in source.lines() {
            if let Some((attribute, _)) = line
                .strip_prefix("    .")
                .and_then(|rest| rest.split_once(" ="))
            {
                all.insert((message.clone(), Some(attribute.to_owned())));
            } else if let Some((id, _)) = line.split_once(" =")
                && line.starts_with("help")
            {
                message = id.to_owned();
                all.insert((message.clone(), None));
            }
        }
        all
    }

    #[test]
    fn every_command_option_and_value_has_its_text_in_every_language() {
        let mut all = BTreeSet::new();
        asked(&Cli::command(), "help", &mut all);
        assert!(all.len() > 100, "{}", all.len());
        for (id, attribute) in &all {
            for tag in tags() {
                let said = match attribute {
                    Some(attribute) => said(words(tag), id, attribute),
                    None => there(tag)
                        .contains(&(id.clone(), None))
                        .then(|| words(tag).text(id)),
                };
                let said = said.unwrap_or_else(|| panic!("{tag}: {id} {attribute:?}"));
                assert!(!said.is_empty(), "{tag}: {id} {attribute:?}");
            }
        }
    }

    #[test]
    fn no_text_is_unused_and_the_languages_have_the_same() {
        let mut all = BTreeSet::new();
        asked(&Cli::command(), "help", &mut all);
        let english = there("en");
        for (id, attribute) in &english {
            let Some(attribute) = attribute else {
                assert!(id == SHARED || all.contains(&(id.clone(), None)), "{id}");
                continue;
            };
            let layout = ["heading-", "value-"]
                .iter()
                .any(|start| attribute.starts_with(start));
            let used = match id == SHARED {
                true => {
                    layout
                        || ["arg-help", "arg-version"].contains(&attribute.as_str())
                        || all
                            .iter()
                            .any(|(_, asked)| asked.as_ref() == Some(attribute))
                }
                false => {
                    ["long", "after"].contains(&attribute.as_str())
                        || all.contains(&(id.clone(), Some(attribute.clone())))
                }
            };
            assert!(used, "{id}.{attribute}");
        }
        for tag in tags() {
            assert_eq!(there(tag), english, "{tag}");
        }
    }

    #[test]
    fn nothing_of_the_librarys_english_is_left_in_another_language() {
        fn look(command: &mut Command, path: &str, left: &mut Vec<String>) {
            let help = command.render_long_help().to_string();
            for theirs in [
                "Usage:",
                "Options:",
                "[OPTIONS]",
                "[default",
                "[possible",
                "[env",
            ] {
                if help.contains(theirs) {
                    left.push(format!("{path}: {theirs}"));
                }
            }
            for below in command.get_subcommands_mut() {
                let path = format!("{path} {}", below.get_name());
                look(below, &path, left);
            }
        }
        for tag in tags().filter(|tag| *tag != "en") {
            let mut left = Vec::new();
            look(&mut localized(Cli::command(), words(tag)), tag, &mut left);
            assert!(left.is_empty(), "{left:?}");
        }
    }
}
