//! What the end-to-end tests share: the built binary, a loopback Discord, and a Python that knows the
//! rules of chess.
//!
//! Nothing is skipped: what is missing fails with the remedy, which is to start the tests by `tests/run`.

pub mod browser;
pub mod club;
pub mod discord;
pub mod english;
pub mod leaks;
pub mod lines;
pub mod pictures;
pub mod room;
pub mod tongue;

use std::{
    io::Write,
    path::{Path, PathBuf},
    process::{Command, Output, Stdio},
    sync::atomic::{AtomicBool, Ordering},
};

/// The built binary: the one `SEALED_MOVE_BIN` names, else the newest of this workspace's builds.
///
/// # Panics
/// When there is none.
pub fn binary() -> PathBuf {
    if let Some(named) = std::env::var_os("SEALED_MOVE_BIN") {
        return named.into();
    }
    let target = workspace().join("target");
    ["release", "debug"]
        .iter()
        .map(|profile| target.join(profile).join("sealed-move"))
        .filter_map(|path| Some((path.metadata().ok()?.modified().ok()?, path)))
        .max()
        .map(|(_, path)| path)
        .expect("the binary is not built; run tests/run, or cargo build first")
}

/// The workspace's folder.
pub fn workspace() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .parent()
        .expect("tests/ stands in the workspace")
}

/// A file of `tests/data/`, as text.
///
/// # Panics
/// When it cannot be read.
pub fn data(name: &str) -> String {
    let path = workspace().join("tests/data").join(name);
    std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// A Python with the `chess` package.
pub fn python() -> Command {
    Command::new(std::env::var_os("SEALED_MOVE_TEST_PYTHON").unwrap_or_else(|| "python3".into()))
}

/// Runs a script of `tests/python/` with `input` on its standard input, and returns what it wrote.
///
/// # Panics
/// When it fails, with what it said.
pub fn python_script(script: &str, args: &[&str], input: &str) -> String {
    let mut command = python();
    command
        .arg(workspace().join("tests/python").join(script))
        .args(args);
    let output = with_input(&mut command, input.as_bytes());
    assert!(
        output.status.success(),
        "{script} failed; if the chess package is missing, start the tests by tests/run:\n{}",
        String::from_utf8_lossy(&output.stderr)
    );
    String::from_utf8(output.stdout).expect("the script writes UTF-8")
}

/// What a run of the binary gave.
#[derive(Debug)]
pub struct Ran {
    /// Exit status.
    pub status: i32,
    /// Standard output.
    pub out: String,
    /// Standard error.
    pub err: String,
}

impl Ran {
    /// The lines of standard output, each read as JSON.
    ///
    /// # Panics
    /// When one is no JSON.
    pub fn json(&self) -> Vec<serde_json::Value> {
        let read = |line| {
            serde_json::from_str(line)
                .unwrap_or_else(|error| panic!("{error}: {line}\n{}", self.err))
        };
        self.out.lines().map(read).collect()
    }
}

static PSEUDO: AtomicBool = AtomicBool::new(false);

/// From here on the binary speaks a language that nobody does, in which whatever is written elsewhere than among
/// its words shows.
pub fn speak_pseudo_language() {
    PSEUDO.store(true, Ordering::SeqCst);
}

/// The binary, without a token, and speaking English whatever the machine's language is.
///
/// # Panics
/// When there is none.
pub fn command() -> Command {
    let mut command = Command::new(binary());
    command
        .env("LC_ALL", "C")
        .env_remove("DISCORD_TOKEN")
        .env_remove("DISCORD_TOKEN_FILE");
    if PSEUDO.load(Ordering::SeqCst) {
        command.env("SEALED_MOVE_PSEUDO_LANGUAGE", "1");
    }
    command
}

/// Runs the binary with `args` and `input`.
///
/// # Panics
/// When it cannot be started, or ends by a signal.
pub fn sealed_move(args: &[&str], input: &[u8]) -> Ran {
    ran(command().args(args), input)
}

/// The same for somebody whose environment sets `LANG` to `locale`, and nothing else of the kind.
///
/// # Panics
/// When it cannot be started, or ends by a signal.
pub fn sealed_move_in(locale: &str, args: &[&str], input: &[u8]) -> Ran {
    let mut command = command();
    for other in ["LC_ALL", "LC_MESSAGES", "LANGUAGE"] {
        command.env_remove(other);
    }
    ran(command.env("LANG", locale).args(args), input)
}

/// The words of every command of the binary, as its own help lists them; the first has none.
///
/// # Panics
/// When the help of one cannot be shown.
pub fn every_command() -> Vec<Vec<String>> {
    let mut commands = vec![Vec::new()];
    let mut next = 0;
    while let Some(words) = commands.get(next).cloned() {
        next += 1;
        let mut args: Vec<&str> = words.iter().map(String::as_str).collect();
        args.push("--help");
        let ran = ran(
            command()
                .env_remove("SEALED_MOVE_PSEUDO_LANGUAGE")
                .args(args),
            b"",
        );
        assert_eq!(ran.status, 0, "{ran:?}");
        let listed = ran.out.split_once("\nCommands:\n").map_or("", |(_, rest)| {
            rest.split_once("\n\n").map_or(rest, |(listed, _)| listed)
        });
        // A name stands two columns in, what is said of it further right.
        let names = listed.lines().filter_map(|line| {
            let name = line.strip_prefix("  ")?.split(' ').next()?;
            (!name.is_empty()).then(|| name.to_owned())
        });
        for name in names.filter(|name| name != "help") {
            commands.push(words.iter().cloned().chain([name]).collect());
        }
    }
    commands
}

/// Runs a command with `input` on its standard input.
///
/// # Panics
/// When it cannot be started, or ends by a signal.
pub fn ran(command: &mut Command, input: &[u8]) -> Ran {
    let output = with_input(command, input);
    Ran {
        status: output.status.code().expect("ends by itself"),
        out: String::from_utf8_lossy(&output.stdout).into_owned(),
        err: String::from_utf8_lossy(&output.stderr).into_owned(),
    }
}

fn with_input(command: &mut Command, input: &[u8]) -> Output {
    let mut child = command
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap_or_else(|error| panic!("{command:?} could not be started: {error}"));
    let mut stdin = child.stdin.take().expect("piped");
    std::thread::scope(|scope| {
        // A child that ends before it has read everything closes the pipe; that is no failure of the test.
        scope.spawn(move || drop(stdin.write_all(input)));
        child.wait_with_output().expect("waited for")
    })
}
