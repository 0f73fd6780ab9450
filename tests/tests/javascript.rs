//! The scripts of the club room's pages, held to a type checker and a linter.
//!
//! Both run on a copy of the scripts, with the rules of `tests/javascript` beside it and the node
//! modules that `SEALED_MOVE_TEST_NODE_MODULES` names.

use std::{
    fs,
    path::{Path, PathBuf},
    process::Command,
};

use sealed_move_tests::workspace;
use tempfile::TempDir;

/// A tool's name and its arguments.
type Checker = (&'static str, &'static [&'static str]);

const TYPES: Checker = ("tsc", &["--project", ".", "--pretty", "false"]);
const LINT: Checker = (
    "eslint",
    &[
        "--max-warnings",
        "0",
        "--ignore-pattern",
        "assets/fluent",
        "assets",
    ],
);

/// The pages' scripts, where they are kept.
fn scripts() -> Vec<PathBuf> {
    let folder = workspace().join("bot/src/chat/room/assets");
    let found: Vec<PathBuf> = fs::read_dir(folder)
        .expect("the folder of the pages")
        .map(|entry| entry.expect("a readable folder").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "js"))
        .collect();
    assert!(!found.is_empty(), "no scripts");
    found
}

/// Where the node modules are.
fn modules() -> PathBuf {
    let named = std::env::var_os("SEALED_MOVE_TEST_NODE_MODULES").unwrap_or_else(|| {
        panic!("SEALED_MOVE_TEST_NODE_MODULES names no folder; start the tests with tests/run, which makes it")
    });
    named.into()
}

/// Project Fluent's library for browsers, in its package.
fn fluent() -> PathBuf {
    modules().join("@fluent/bundle/esm")
}

/// A folder with the scripts and all that their checking needs.
fn copy() -> TempDir {
    let copy = TempDir::new().expect("a folder");
    let root = copy.path();
    std::os::unix::fs::symlink(modules(), root.join("node_modules")).expect("a link");
    for rules in ["package.json", "tsconfig.json", "eslint.config.js"] {
        let from = workspace().join("tests/javascript").join(rules);
        fs::copy(from, root.join(rules)).expect("the rules");
    }
    fs::create_dir(root.join("assets")).expect("a folder");
    for script in scripts() {
        let name = script.file_name().expect("a name");
        fs::copy(&script, root.join("assets").join(name)).expect("a script");
    }
    // The package has its types beside it; what is shipped is held equal to it below.
    std::os::unix::fs::symlink(fluent(), root.join("assets/fluent")).expect("a link");
    copy
}

/// Whether the checker is content, and what it prints.
fn check(root: &Path, (tool, arguments): Checker) -> (bool, String) {
    let out = Command::new(root.join("node_modules/.bin").join(tool))
        .args(arguments)
        .current_dir(root)
        .output()
        .unwrap_or_else(|error| panic!("{tool} does not start ({error}); tests/run installs it"));
    let said = [out.stdout, out.stderr].map(|part| String::from_utf8_lossy(&part).into_owned());
    (out.status.success(), said.concat())
}

#[test]
fn scripts_pass_the_type_checker_and_the_linter() {
    let copy = copy();
    for checker in [TYPES, LINT] {
        let (content, said) = check(copy.path(), checker);
        assert!(content && said.is_empty(), "{}:\n{said}", checker.0);
    }
}

#[test]
fn a_planted_mistake_is_found_and_named() {
    let planted: &[(Checker, &str, &str)] = &[
        // A field that the element does not have.
        (
            TYPES,
            "byId(\"text\").valeu = \"\";",
            "'valeu' does not exist",
        ),
        // A misspelt call.
        (
            TYPES,
            "conplain(new Error(\"x\"));",
            "Cannot find name 'conplain'",
        ),
        // What may be missing, used unasked.
        (
            TYPES,
            "document.querySelector(\"p\").remove();",
            "possibly 'null'",
        ),
        // Text from people put together as markup.
        (
            LINT,
            "byId(\"say\").innerHTML = state.me.name;",
            "no-restricted-properties",
        ),
        (LINT, "if (state.me == 1) begin();", "eqeqeq"),
        (
            LINT,
            "export const never = 1; { const never = 2; begin(never); }",
            "no-shadow",
        ),
    ];
    for (checker, line, message) in planted {
        let copy = copy();
        let page = copy.path().join("assets/coach.js");
        let text = fs::read_to_string(&page).expect("the coach's page");
        fs::write(&page, format!("{text}{line}\n")).expect("a script");
        let (content, said) = check(copy.path(), *checker);
        assert!(!content, "{} finds nothing in {line}", checker.0);
        assert!(
            said.contains("coach.js") && said.contains(message),
            "{line}:\n{said}"
        );
    }
}

/// An editor that opens one script alone checks it by this line.
#[test]
fn every_script_asks_to_be_type_checked() {
    for script in scripts() {
        let text = fs::read_to_string(&script).expect("a script");
        assert!(
            text.starts_with("// @ts-check\n"),
            "{} does not begin with // @ts-check",
            script.display()
        );
    }
}

/// What of the library for browsers is shipped is what its package has, with the licence beside it.
#[test]
fn the_shipped_library_is_the_packages_own() {
    let shipped = workspace().join("bot/src/chat/room/assets/fluent");
    let scripts = |folder: &Path| {
        let entries = fs::read_dir(folder).expect("a folder");
        let mut names: Vec<_> = entries
            .map(|entry| entry.expect("a readable folder").file_name())
            .filter(|name| {
                Path::new(name)
                    .extension()
                    .is_some_and(|ending| ending == "js")
            })
            .collect();
        names.sort();
        names
    };
    assert_eq!(scripts(&shipped), scripts(&fluent()));
    for name in scripts(&shipped) {
        let [ours, theirs] = [shipped.join(&name), fluent().join(&name)]
            .map(|path| fs::read_to_string(path).expect("a script"));
        assert!(ours == theirs, "{} is not the package's", name.display());
    }
    let licence = fs::read_to_string(shipped.join("LICENSE")).expect("the licence");
    assert!(licence.contains("Apache License") && licence.contains("Version 2.0, January 2004"));
    let package = fs::read_to_string(modules().join("@fluent/bundle/package.json"));
    assert!(
        package
            .expect("the package")
            .contains("\"license\": \"Apache-2.0\"")
    );
}
