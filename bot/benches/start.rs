//! From starting the program to the first post before the group.
//!
//! Measures whole processes, several times, and prints medians with their ratio in the same run: `serve`
//! on a fresh, empty store until its room is open (the baseline), and `demo` until its first post is
//! open, three past weeks having been imported, posted, answered, judged and revealed before.

use std::{
    io::{BufRead, BufReader},
    path::Path,
    process::{Child, ChildStdout, Command, Stdio},
    time::{Duration, Instant},
};

use sealed_move_store::{ChatKey, PostState, Store};

const RUNS: usize = 5;

fn main() {
    let mut serve = Vec::new();
    let mut demo = Vec::new();
    for _ in 0..RUNS {
        serve.push(measure("serve", |_| ()));
        demo.push(measure("demo", wait_for_open_post));
    }
    let (serve, demo) = (median(serve), median(demo));
    println!(
        "serve on an empty store, until the room is open: {:>8.1} ms",
        millis(serve)
    );
    println!(
        "demo, until the first post is open:              {:>8.1} ms",
        millis(demo)
    );
    println!(
        "ratio demo / serve:                              {:>8.2}",
        millis(demo) / millis(serve)
    );
}

/// Starts the program, waits until its room is open and then for `ready`; the time it took.
fn measure(command: &str, ready: impl Fn(&Path)) -> Duration {
    let folder = tempfile::tempdir().expect("a folder");
    let store = folder.path().join("bench.sqlite");
    let began = Instant::now();
    let mut child = Command::new(env!("CARGO_BIN_EXE_sealed-move"))
        .arg(command)
        .args(["--port", "0", "--store"])
        .arg(&store)
        .env("LC_ALL", "C")
        .env_remove("DISCORD_TOKEN")
        .env_remove("DISCORD_TOKEN_FILE")
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .expect("started");
    // Held until the end: a program whose output nobody takes any more ends.
    let _out = wait_for_links(&mut child);
    ready(&store);
    let took = began.elapsed();
    child.kill().expect("stopped");
    child.wait().expect("ended");
    took
}

/// Reads what the program says up to its links; what follows is to be had from the reader.
fn wait_for_links(child: &mut Child) -> BufReader<ChildStdout> {
    let mut out = BufReader::new(child.stdout.take().expect("piped"));
    let mut line = String::new();
    while !line.starts_with("For the coach") {
        line.clear();
        let read = out.read_line(&mut line).expect("readable");
        assert!(read > 0, "the program ended before it printed its links");
    }
    out
}

fn wait_for_open_post(store: &Path) {
    let store = Store::open(store).expect("the store");
    loop {
        let open = store.read_blocking(|db| {
            let groups = db.groups_of(ChatKey::of("room"))?;
            groups
                .iter()
                .map(|group| db.posts_in(group.id, PostState::Open))
                .collect::<Result<Vec<_>, _>>()
        });
        if open
            .expect("readable")
            .iter()
            .any(|posts| !posts.is_empty())
        {
            return;
        }
        std::thread::sleep(Duration::from_millis(2));
    }
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort();
    times[times.len() / 2]
}

fn millis(time: Duration) -> f64 {
    time.as_secs_f64() * 1000.0
}
