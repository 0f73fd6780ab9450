//! The floors of the house hold: a floor uses only the floors below it.

use std::{
    collections::{BTreeMap, BTreeSet},
    fs,
    path::{Path, PathBuf},
};

/// A folder, and what none of its files may name.
const RULES: &[(&str, &[&str])] = &[
    (
        "bot/chess/src",
        &[
            "sealed_move::",
            "sealed_move_diagram",
            "sealed_move_store",
            "tokio",
            "std::time",
            "std::fs",
            "std::net",
            "std::process",
            "chrono::",
            "async fn",
            "rusqlite",
            "serenity",
            "axum",
        ],
    ),
    (
        "bot/diagram/src",
        &[
            "sealed_move::",
            "sealed_move_store",
            "tokio",
            "std::time",
            "std::net",
            "std::process",
            "async fn",
            "rusqlite",
            "serenity",
            "axum",
            "Utc::now",
            "sealed_move_chess::judge",
            "sealed_move_chess::prove",
            "sealed_move_chess::read",
        ],
    ),
    (
        "bot/src/desk",
        &[
            "crate::chat",
            "crate::cli",
            "crate::words",
            "sealed_move_words",
            "serenity",
            "poise",
            "axum",
            "rusqlite",
            // It knows no chat by name.
            "\"room\"",
            "\"discord\"",
        ],
    ),
    (
        "bot/words/src",
        &[
            "sealed_move::",
            "sealed_move_chess",
            "sealed_move_store",
            "tokio",
            "std::time",
            "std::net",
            "std::process",
            "async fn",
            "rusqlite",
        ],
    ),
    (
        "bot/src/chat",
        &[
            "crate::cli",
            "sealed_move_store",
            "rusqlite",
            "crate::chess",
            "sealed_move_chess",
            "shakmaty",
        ],
    ),
    (
        "bot/src/chat/common",
        &["serenity", "poise", "axum", "chat::room", "chat::discord"],
    ),
    (
        "bot/src/chat/room",
        &["serenity", "poise", "crate::chat::discord"],
    ),
    ("bot/src/chat/discord", &["crate::chat::room"]),
];

#[test]
fn no_floor_reaches_up_or_sideways() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut broken = Vec::new();
    for (folder, banned) in RULES {
        let files = rust_files(&root.join(folder));
        assert!(!files.is_empty(), "no sources in {folder}");
        for file in files {
            let text = fs::read_to_string(&file).expect("readable source");
            for (number, line) in shipped(&text) {
                for word in *banned {
                    if line.contains(word) {
                        broken.push(format!(
                            "{}:{number}: {word}",
                            file.strip_prefix(&root).unwrap_or(&file).display()
                        ));
                    }
                }
            }
        }
    }
    for (folder, banned) in RULES {
        for file in rust_files(&root.join(folder)) {
            let text = fs::read_to_string(&file).expect("readable source");
            for path in uses(&text) {
                for word in banned.iter().filter(|word| path.contains(*word)) {
                    let file = file.strip_prefix(&root).unwrap_or(&file);
                    broken.push(format!("{}: {path} ({word})", file.display()));
                }
            }
        }
    }
    assert!(
        broken.is_empty(),
        "a floor reaches where it may not:\n{}",
        broken.join("\n")
    );
}

/// Where tasks may be spawned: by the supervisor, and by what a chat waits for before it ends.
const SPAWN: &[&str] = &["cli/supervisor.rs", "chat/tasks.rs"];

#[test]
fn every_task_is_owned() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../bot/src");
    let mut forgotten = Vec::new();
    for file in rust_files(&root) {
        let name = file.strip_prefix(&root).unwrap_or(&file);
        if SPAWN.iter().any(|allowed| name == Path::new(allowed)) {
            continue;
        }
        let text = fs::read_to_string(&file).expect("readable source");
        for (number, line) in shipped(&text) {
            let spawns = [
                "tokio::spawn",
                "task::spawn(",
                "JoinSet",
                "spawn_local",
                "Handle::current()",
            ];
            if spawns.iter().any(|word| line.contains(word)) {
                forgotten.push(format!("{}:{number}: {}", name.display(), line.trim()));
            }
        }
    }
    assert!(
        forgotten.is_empty(),
        "tasks nobody owns; return a future, or give it to `chat::Tasks`:\n{}",
        forgotten.join("\n")
    );
}

/// The packages below the bot, and what none of them may depend on.
const PACKAGES: &[(&str, &[&str])] = &[
    (
        "store",
        &[
            "shakmaty",
            "pgn-reader",
            "serenity",
            "poise",
            "axum",
            "sealed-move.workspace",
            "sealed-move-chess",
        ],
    ),
    (
        "bot/chess",
        &[
            "tokio",
            "serenity",
            "poise",
            "axum",
            "reqwest",
            "rusqlite",
            "chrono",
            "resvg",
            "sealed-move.workspace",
            "sealed-move-store",
            "sealed-move-diagram",
        ],
    ),
    (
        "bot/words",
        &[
            "tokio",
            "serenity",
            "axum",
            "reqwest",
            "rusqlite",
            "chrono",
            "sealed-move.workspace",
            "sealed-move-store",
            "sealed-move-chess",
        ],
    ),
    (
        "bot/diagram",
        &[
            "tokio",
            "serenity",
            "poise",
            "axum",
            "reqwest",
            "rusqlite",
            "pgn-reader",
            "sealed-move.workspace",
            "sealed-move-store",
        ],
    ),
];

#[test]
fn no_package_depends_on_what_stands_above_it() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    for (package, banned) in PACKAGES {
        let manifest = root.join(package).join("Cargo.toml");
        let manifest = fs::read_to_string(manifest).expect("a manifest");
        for word in *banned {
            assert!(!manifest.contains(word), "{package} depends on {word}");
        }
    }
}

/// The packages whose modules may not need one another in a circle.
const NO_CIRCLES: &[&str] = &["bot/chess", "bot/diagram"];

#[test]
fn no_modules_need_one_another_in_a_circle() {
    for package in NO_CIRCLES {
        let root = Path::new(env!("CARGO_MANIFEST_DIR"))
            .join("..")
            .join(package);
        let needs = needs(&root.join("src"), "lib.rs", "crate::", |path| {
            path[0].clone()
        });
        assert!(needs.len() > 10, "{package}: {needs:?}");
        assert!(
            needs.values().any(|needed| needed.len() > 2),
            "{package}: {needs:?}"
        );
        let circle = circle(&needs);
        assert!(
            circle.is_empty(),
            "{package}: a circle is among {circle:#?}"
        );
    }
}

/// Where the sources of the packages with more than one folder lie.
const SOURCES: &[&str] = &["bot/chess/src", "bot/diagram/src", "bot/src", "store/src"];

/// Files of one folder may need one another; files of two may not need one another in a circle. A folder's
/// root (`mod.rs`, or the file of its name) gathers what lies in it, so what only goes by a root does not count.
#[test]
fn no_files_of_two_folders_need_one_another_in_a_circle() {
    for source in SOURCES {
        let root = Path::new(env!("CARGO_MANIFEST_DIR"))
            .join("..")
            .join(source);
        let needs = file_needs(&root);
        assert!(needs.len() > 3, "{source}: {needs:?}");
        let reached: BTreeMap<&Module, BTreeSet<&Module>> = needs
            .keys()
            .map(|from| (from, reach(&needs, from)))
            .collect();
        let folder = |module: &Module| module[..module.len() - 1].to_vec();
        for (a, from_a) in &reached {
            for b in from_a {
                let back = reached.get(b).is_some_and(|from_b| from_b.contains(a));
                assert!(
                    !back || folder(a) == folder(b),
                    "{source}: {} and {} need one another",
                    a.join("::"),
                    b.join("::")
                );
            }
        }
    }
}

/// A module by its path from the package's root.
type Module = Vec<String>;

/// All that `from` needs, and what that needs in turn.
fn reach<'a>(needs: &'a BTreeMap<Module, BTreeSet<Module>>, from: &Module) -> BTreeSet<&'a Module> {
    let mut found = BTreeSet::new();
    let mut waiting: Vec<&Module> = needs.get(from).into_iter().flatten().collect();
    while let Some(next) = waiting.pop() {
        if found.insert(next) {
            waiting.extend(needs.get(next).into_iter().flatten());
        }
    }
    found
}

/// Which files each file below `root` names, but for folders' roots.
fn file_needs(root: &Path) -> BTreeMap<Module, BTreeSet<Module>> {
    let mut code: BTreeMap<Module, String> = BTreeMap::new();
    for file in rust_files(root) {
        let within = file.strip_prefix(root).expect("below the root");
        let mut module: Module = within
            .with_extension("")
            .iter()
            .map(|part| part.to_string_lossy().into_owned())
            .collect();
        if matches!(
            module.last().map(String::as_str),
            Some("mod" | "lib" | "main")
        ) {
            module.pop();
        }
        let text = fs::read_to_string(&file).expect("readable source");
        let lines: Vec<&str> = shipped(&text).map(|(_, line)| line).collect();
        code.insert(module, lines.join("\n"));
    }
    let is_root = |module: &Module| {
        let below = |other: &Module| other.len() > module.len() && other.starts_with(module);
        code.keys().any(below)
    };
    let mut needs = BTreeMap::new();
    for (module, text) in &code {
        if is_root(module) {
            continue;
        }
        let named = paths(text)
            .into_iter()
            .map(|path| home(&code, absolute(module, &path), 0))
            .filter(|needed| needed != module && code.contains_key(needed) && !is_root(needed))
            .collect();
        needs.insert(module.clone(), named);
    }
    needs
}

/// Where a path leads, seen from the package's root.
fn absolute(module: &Module, path: &[String]) -> Module {
    let mut at = module.clone();
    let mut rest = path;
    while let Some((first, further)) = rest.split_first() {
        match first.as_str() {
            "crate" => at.clear(),
            "super" => {
                at.pop();
            }
            "self" => {}
            _ => break,
        }
        rest = further;
    }
    at.extend(rest.iter().cloned());
    at
}

/// The file that a path leads to: the longest part of it that is one, or the file from which that gives the
/// next name out again.
fn home(code: &BTreeMap<Module, String>, path: Module, deep: u8) -> Module {
    let file = (0..=path.len())
        .rev()
        .map(|end| path[..end].to_vec())
        .find(|part| code.contains_key(part))
        .unwrap_or_default();
    let Some(name) = path.get(file.len()).filter(|_| deep < 8) else {
        return file;
    };
    let given_out = code[&file]
        .split("pub use ")
        .skip(1)
        .chain(code[&file].split("pub(super) use ").skip(1))
        .chain(code[&file].split("pub(crate) use ").skip(1))
        .filter_map(|exported| exported.split(';').next())
        .flat_map(tree)
        .find(|exported| exported.last() == Some(name) && exported.len() > 1);
    match given_out {
        Some(exported) => home(code, absolute(&file, &exported), deep + 1),
        None => file,
    }
}

/// Every path in the code that begins at the package's root, a parent, or the module itself.
fn paths(code: &str) -> Vec<Vec<String>> {
    ["crate::", "super::", "self::"]
        .iter()
        .flat_map(|begin| code.match_indices(begin))
        .filter(|(at, _)| {
            let before = &code[..*at];
            !before.ends_with("::") && !before.ends_with(|c: char| c.is_alphanumeric() || c == '_')
        })
        .flat_map(|(at, _)| tree(&code[at..]))
        .collect()
}

/// The paths of a tree such as `a::{b, c::{d, e}}`.
fn tree(text: &str) -> Vec<Vec<String>> {
    let text = text.trim_start();
    let end = text
        .find(|c: char| !c.is_alphanumeric() && c != '_')
        .unwrap_or(text.len());
    let name = text[..end].to_owned();
    let Some(rest) = text[end..].strip_prefix("::") else {
        return vec![vec![name]];
    };
    let below = match rest.trim_start().strip_prefix('{') {
        Some(list) => branches(list).into_iter().flat_map(tree).collect(),
        None => tree(rest),
    };
    below
        .into_iter()
        .map(|path| std::iter::once(name.clone()).chain(path).collect())
        .collect()
}

/// What stands between commas up to the brace that closes.
fn branches(list: &str) -> Vec<&str> {
    let (mut depth, mut begins, mut found) = (0, 0, Vec::new());
    for (at, c) in list.char_indices() {
        match c {
            '{' => depth += 1,
            '}' if depth == 0 => {
                found.push(&list[begins..at]);
                break;
            }
            '}' => depth -= 1,
            ',' if depth == 0 => {
                found.push(&list[begins..at]);
                begins = at + 1;
            }
            _ => {}
        }
    }
    found.retain(|branch| !branch.trim().is_empty());
    found
}

#[test]
fn a_circle_between_two_folders_is_found() {
    let folder = tempfile::tempdir().expect("a folder");
    let root = folder.path();
    let write = |file: &str, text: &str| {
        let path = root.join(file);
        fs::create_dir_all(path.parent().expect("a folder")).expect("made");
        fs::write(path, text).expect("written");
    };
    write("lib.rs", "mod a;\nmod b;\npub use b::two::Two;\n");
    write("a/mod.rs", "mod one;\npub use one::One;\n");
    write(
        "a/one.rs",
        "use crate::{Two, a::{self}};\npub struct One;\n",
    );
    write("b/mod.rs", "pub mod two;\n");
    write(
        "b/two.rs",
        "// use super::nothing;\nuse super::super::a::One;\npub struct Two;\n",
    );
    let needs = file_needs(root);
    let [one, two] = [["a", "one"], ["b", "two"]].map(|path| path.map(str::to_owned).to_vec());
    assert!(reach(&needs, &one).contains(&one), "{needs:?}");
    assert_eq!(needs[&two], BTreeSet::from([one]), "{needs:?}");
}

/// Calls of the desk's handles that one chat makes and the other does not, and why; first who makes it.
const ONE_SIDED: &[(&str, &str, &str)] = &[
    (
        "room",
        "add_device",
        "Discord knows people by their accounts",
    ),
    (
        "room",
        "diagram_of",
        "on Discord a report comes with its diagram",
    ),
    ("room", "board", "the browser editor's board"),
    (
        "room",
        "drafts",
        "a lesson is written in the browser; on Discord it comes as a file",
    ),
    ("room", "draft_sheet", "of the browser editor, as `drafts`"),
    ("room", "begin_draft", "of the browser editor, as `drafts`"),
    ("room", "open_lesson", "of the browser editor, as `drafts`"),
    ("room", "save_draft", "of the browser editor, as `drafts`"),
    ("room", "remove_draft", "of the browser editor, as `drafts`"),
    ("room", "export_draft", "of the browser editor, as `drafts`"),
    (
        "room",
        "take_in_draft",
        "of the browser editor, as `drafts`",
    ),
    (
        "room",
        "preview_draft",
        "of the browser editor, as `drafts`",
    ),
    ("room", "enter_as_coach", "by the room's link"),
    ("room", "only_coach", "by the room's link"),
    ("room", "note_deed", "a new link"),
    ("room", "hide", "Discord's moderation is its own"),
    ("room", "put_back", "Discord's moderation is its own"),
    ("room", "put_back_answer", "Discord's moderation is its own"),
    ("room", "watched_talk", "Discord shows its talk itself"),
    ("room", "mute", "Discord's moderation is its own"),
    ("room", "unmute", "Discord's moderation is its own"),
    ("room", "rename", "Discord has names for people"),
    ("room", "take_back", "on Discord a message is deleted"),
    (
        "room",
        "my_hints",
        "on Discord they stay in the conversation",
    ),
    ("room", "own", "Discord asks for a problem's by `own_post`"),
    (
        "room",
        "board_of_talk",
        "Discord has the message and asks by `board_of_words`",
    ),
    (
        "discord",
        "board_of_words",
        "the room names the line of talk, by `board_of_talk`",
    ),
    ("discord", "own_answer", "the room asks by `own`"),
    ("discord", "add_coach", "in the room by its link"),
    (
        "command line",
        "import_choosing",
        "the chats ask by `settle_same` after an import",
    ),
    ("discord", "remove_coach", "in the room by a new link"),
    (
        "discord",
        "member_known_as",
        "the room's list has their ids",
    ),
    ("discord", "edit_reply", "in the room nothing is edited"),
    ("discord", "withdraw_reply", "in the room by `take_back`"),
    ("discord", "aim", "the room names the post with every text"),
    ("discord", "answer", "a press on a reading that was offered"),
    (
        "discord",
        "ask_which_open",
        "the room names the post with every text",
    ),
    ("discord", "is_known", "each message comes once by the room"),
    ("discord", "own_post", "the room asks by `own`"),
    (
        "discord",
        "card_called",
        "in the room a card is chosen from the list",
    ),
    ("discord", "words_on", "the room has them with each report"),
    (
        "discord",
        "enqueue_found",
        "the room puts each into the week",
    ),
];

/// The coach's and the members' calls are the same set in both chats, but for what is said above.
#[test]
fn coaches_and_members_have_the_same_calls_in_both_chats() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../bot/src");
    let shipped_in = |folder: &str| -> String {
        let files = rust_files(&root.join(folder));
        let code = files.iter().map(|file| {
            let text = fs::read_to_string(file).expect("readable source");
            let lines: Vec<&str> = shipped(&text).map(|(_, line)| line).collect();
            lines.join("\n")
        });
        code.collect::<Vec<_>>().join("\n")
    };
    let common = shipped_in("chat/common");
    let chats = [("discord", "chat/discord"), ("room", "chat/room")]
        .map(|(name, folder)| (name, shipped_in(folder) + &common));
    let mut wrong = Vec::new();
    for (part, handle) in [("coach", "CoachDesk"), ("member", "MemberDesk")] {
        let code = shipped_in(&format!("desk/{part}"));
        let calls: BTreeSet<&str> = code
            .split(&format!("impl {handle}<'_> {{"))
            .skip(1)
            .filter_map(|body| body.split("\n}").next())
            .flat_map(|body| body.split("pub async fn ").skip(1))
            .filter_map(|call| call.split('(').next())
            .collect();
        assert!(calls.len() > 20, "{handle}: {calls:?}");
        for call in calls {
            let made = chats
                .iter()
                .filter(|(_, code)| code.contains(&format!(".{call}(")));
            let made: Vec<&str> = made.map(|(name, _)| *name).collect();
            let told = ONE_SIDED.iter().find(|(_, known, _)| *known == call);
            match (&made[..], told) {
                ([_, _], None) => {}
                ([chat], Some((by, _, _))) if chat == by => {}
                ([], Some(("command line", _, _))) => {}
                _ => wrong.push(format!("{handle}::{call}: by {made:?}, told {told:?}")),
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// The desk's parts, each a folder with a handle of that name that the desk gives.
const PARTS: &[&str] = &["coach", "member", "rounds"];

/// The files in the desk's own folder are what its parts use; none of them needs a part.
#[test]
fn no_folders_of_the_desk_need_one_another_in_a_circle() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../bot/src/desk");
    let own = "desk";
    let mut needs = needs(&root, "mod.rs", "crate::desk::", |path| match path {
        [_] => own.to_owned(),
        [folder, ..] => folder.clone(),
        [] => unreachable!("the root is no folder"),
    });
    for file in rust_files(&root) {
        let text = fs::read_to_string(&file).expect("readable source");
        let code: Vec<&str> = shipped(&text).map(|(_, line)| line).collect();
        let within = file.strip_prefix(&root).expect("below the root");
        let folder = within.parent().and_then(Path::to_str).unwrap_or_default();
        let folder = if folder.is_empty() { own } else { folder };
        for part in PARTS {
            // A call of a part's is asked of its handle.
            let asks = code.iter().any(|line| line.contains(&format!(".{part}()")));
            if asks && folder != *part {
                let needed = needs.entry(folder.to_owned()).or_default();
                needed.insert((*part).to_owned());
            }
        }
    }
    for part in PARTS {
        let needed = needs.get(*part).expect("a folder for the part");
        assert!(needed.contains(own), "{part}: {needs:?}");
    }
    let circle = circle(&needs);
    assert!(circle.is_empty(), "a circle is among {circle:#?}");
}

/// What is left of `needs` when modules that need nothing that is left have gone, again and again: circles,
/// and what needs them.
fn circle(needs: &BTreeMap<String, BTreeSet<String>>) -> BTreeMap<&String, &BTreeSet<String>> {
    let mut left: BTreeMap<&String, &BTreeSet<String>> = needs.iter().collect();
    loop {
        let free: Vec<&String> = left
            .iter()
            .filter(|(_, needed)| !needed.iter().any(|module| left.contains_key(module)))
            .map(|(module, _)| *module)
            .collect();
        if free.is_empty() {
            return left;
        }
        left.retain(|module, _| !free.contains(module));
    }
}

/// Which units below `root` each of them names. A file of the path `["a", "b"]` belongs to the unit that
/// `unit` says; `top` is the root's own file and `prefix` its path in the code. A name that the root gives
/// out belongs to where it comes from.
fn needs(
    root: &Path,
    top: &str,
    prefix: &str,
    unit: impl Fn(&[String]) -> String,
) -> BTreeMap<String, BTreeSet<String>> {
    let top = fs::read_to_string(root.join(top)).expect("the root's own file");
    // What the root gives out again belongs to the module it comes from.
    let mut home: BTreeMap<String, String> = BTreeMap::new();
    for exported in top.split("pub use ").skip(1) {
        let exported = exported.split(';').next().unwrap_or_default();
        if let Some((module, names)) = exported.split_once("::") {
            for name in names.split(|c: char| !c.is_alphanumeric() && c != '_') {
                home.insert(name.to_owned(), module.to_owned());
            }
        }
    }
    let mut needs: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    // The unit of each module that stands directly below the root.
    let mut units: BTreeMap<String, String> = BTreeMap::new();
    for file in rust_files(root) {
        let within = file.strip_prefix(root).expect("below the root");
        let mut path: Vec<String> = within
            .with_extension("")
            .iter()
            .map(|part| part.to_string_lossy().into_owned())
            .collect();
        if matches!(path.as_slice(), [only] if only == "lib" || only == "mod") {
            continue;
        }
        let module = path[0].clone();
        let unit = unit(&path);
        path.retain(|part| part != "mod");
        let text = fs::read_to_string(&file).expect("readable source");
        let code: Vec<&str> = shipped(&text).map(|(_, line)| line).collect();
        let mut named = named_after(&code.join("\n"), prefix);
        let up = "super::".repeat(path.len());
        named.extend(named_after(&code.join("\n"), &up));
        needs.entry(unit.clone()).or_default().extend(named);
        units.insert(module, unit);
    }
    for (unit, named) in &mut needs {
        *named = named
            .iter()
            .map(|name| home.get(name).unwrap_or(name))
            .filter_map(|module| units.get(module))
            .filter(|needed| *needed != unit)
            .cloned()
            .collect();
    }
    needs
}

/// The first names after `path` wherever it stands, those of a list in braces among them.
fn named_after(code: &str, path: &str) -> BTreeSet<String> {
    let word = |text: &str| -> String {
        text.chars()
            .take_while(|c| c.is_alphanumeric() || *c == '_')
            .collect()
    };
    let mut found = BTreeSet::new();
    for (at, _) in code.match_indices(path) {
        if code[..at].ends_with("::") || code[..at].ends_with(char::is_alphanumeric) {
            continue;
        }
        let rest = &code[at + path.len()..];
        let Some(list) = rest.strip_prefix('{') else {
            found.insert(word(rest));
            continue;
        };
        let (mut depth, mut begins) = (0, true);
        for (i, c) in list.char_indices() {
            match c {
                '{' => depth += 1,
                '}' if depth == 0 => break,
                '}' => depth -= 1,
                ',' if depth == 0 => begins = true,
                c if begins && depth == 0 && !c.is_whitespace() => {
                    found.insert(word(&list[i..]));
                    begins = false;
                }
                _ => {}
            }
        }
    }
    found
}

/// The lines of a source that are code and not its tests: comments are left out, and all from
/// `#[cfg(test)]` on, which by the house's custom stands at the end of a file.
fn shipped(text: &str) -> impl Iterator<Item = (usize, &str)> {
    text.lines()
        .enumerate()
        .take_while(|(_, line)| !line.starts_with("#[cfg(test)]"))
        .filter(|(_, line)| !line.trim_start().starts_with("//"))
        .map(|(i, line)| (i + 1, line))
}

/// What the shipped part of a file takes by `use`, each as a whole path: in the text a path may be opened over
/// several lines.
fn uses(text: &str) -> Vec<String> {
    let shipped: Vec<&str> = shipped(text).map(|(_, line)| line).collect();
    let file = syn::parse_file(&shipped.join("\n")).expect("a file of Rust");
    let mut all = Vec::new();
    for item in &file.items {
        if let syn::Item::Use(item) = item {
            opened(&item.tree, String::new(), &mut all);
        }
    }
    all
}

fn opened(tree: &syn::UseTree, before: String, all: &mut Vec<String>) {
    match tree {
        syn::UseTree::Path(path) => {
            opened(&path.tree, format!("{before}{}::", path.ident), all);
        }
        syn::UseTree::Group(group) => {
            for tree in &group.items {
                opened(tree, before.clone(), all);
            }
        }
        syn::UseTree::Name(name) => all.push(format!("{before}{}", name.ident)),
        syn::UseTree::Rename(name) => all.push(format!("{before}{}", name.ident)),
        syn::UseTree::Glob(_) => all.push(format!("{before}*")),
    }
}

#[test]
fn a_path_that_is_opened_over_several_lines_is_seen() {
    let text = "use crate::{\n    chess::{\n        fact::{Line, Theirs as Words},\n    },\n    desk::*,\n};\n\
        #[cfg(test)]\nmod tests { use crate::cli; }\n";
    assert_eq!(
        uses(text),
        [
            "crate::chess::fact::Line",
            "crate::chess::fact::Theirs",
            "crate::desk::*"
        ]
    );
}

/// Every source below a folder, but for files that hold tests only.
fn rust_files(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let path = entry.path();
        let name = entry.file_name().to_string_lossy().into_owned();
        match path.is_dir() {
            true if name == "tests" => {}
            true => found.extend(rust_files(&path)),
            false if name.ends_with(".rs") && !name.ends_with("tests.rs") => found.push(path),
            false => {}
        }
    }
    found
}
