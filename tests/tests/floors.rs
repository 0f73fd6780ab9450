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
        let needs = needs(&root.join("src"));
        assert!(needs.len() > 10, "{package}: {needs:?}");
        assert!(
            needs.values().any(|needed| needed.len() > 2),
            "{package}: {needs:?}"
        );
        // Modules that need nothing that is left go, until only circles are left.
        let mut left: BTreeMap<&String, BTreeSet<&String>> = needs
            .iter()
            .map(|(module, needed)| (module, needed.iter().collect()))
            .collect();
        loop {
            let free: Vec<&String> = left
                .iter()
                .filter(|(_, needed)| !needed.iter().any(|module| left.contains_key(*module)))
                .map(|(module, _)| *module)
                .collect();
            if free.is_empty() {
                break;
            }
            left.retain(|module, _| !free.contains(module));
        }
        assert!(left.is_empty(), "{package}: a circle is among {left:#?}");
    }
}

/// Which top modules of a package each of them names.
fn needs(root: &Path) -> BTreeMap<String, BTreeSet<String>> {
    let lib = fs::read_to_string(root.join("lib.rs")).expect("the package's root");
    // What the root gives out again belongs to the module it comes from.
    let mut home: BTreeMap<String, String> = BTreeMap::new();
    for exported in lib.split("pub use ").skip(1) {
        let exported = exported.split(';').next().unwrap_or_default();
        if let Some((module, names)) = exported.split_once("::") {
            for name in names.split(|c: char| !c.is_alphanumeric() && c != '_') {
                home.insert(name.to_owned(), module.to_owned());
            }
        }
    }
    let mut needs: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for file in rust_files(root) {
        let within = file.strip_prefix(root).expect("below the root");
        let path: Vec<String> = within
            .with_extension("")
            .iter()
            .map(|part| part.to_string_lossy().into_owned())
            .filter(|part| part != "mod")
            .collect();
        let module = path[0].clone();
        if module != "lib" {
            let text = fs::read_to_string(&file).expect("readable source");
            let code: Vec<&str> = shipped(&text).map(|(_, line)| line).collect();
            let mut named = named_after(&code.join("\n"), "crate::");
            let up = "super::".repeat(path.len());
            named.extend(named_after(&code.join("\n"), &up));
            needs.entry(module).or_default().extend(named);
        }
    }
    let modules: BTreeSet<String> = needs.keys().cloned().collect();
    for (module, named) in &mut needs {
        *named = named
            .iter()
            .map(|name| home.get(name).unwrap_or(name).clone())
            .filter(|name| name != module && modules.contains(name))
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
