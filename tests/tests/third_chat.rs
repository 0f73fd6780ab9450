//! A week's work in a chat that the program does not know, added by one line: the post, the answers, hint,
//! reveal, the coach's queue and summary, and the command line on its group.

use std::{
    path::Path,
    process::{Command, Output, Stdio},
    time::Duration,
};

use tempfile::TempDir;
use tokio::{
    io::{AsyncBufReadExt, AsyncWriteExt, BufReader, Lines},
    net::{
        TcpStream,
        tcp::{OwnedReadHalf, OwnedWriteHalf},
    },
    process::{Child, Command as Process},
    time::timeout,
};

const PROGRAM: &str = env!("CARGO_BIN_EXE_sealed-move-lines");

/// How long a line may take.
const PATIENCE: Duration = Duration::from_secs(30);

const WEEK: &str = "\
6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - dm 1; id \"one\"; c0 \"Back rank\";
6k1/5ppp/8/8/8/8/5PPP/1R4K1 w - - dm 1; id \"two\"; c0 \"Back rank\";
";

fn command(folder: &Path) -> Command {
    let mut command = Command::new(PROGRAM);
    command
        .env("LC_ALL", "C")
        .env_remove("DISCORD_TOKEN")
        .env_remove("DISCORD_TOKEN_FILE")
        .arg("--config")
        .arg(folder.join("sealed-move.toml"))
        .arg("--store")
        .arg(folder.join("store.sqlite"));
    command
}

fn run(folder: &Path, args: &[&str]) -> Output {
    command(folder).args(args).output().expect("it runs")
}

/// Starts serving; gives the process and where its lines are.
async fn serve(folder: &Path) -> (Child, String) {
    let mut child = Process::from(command(folder))
        .arg("serve")
        .stdout(Stdio::piped())
        .kill_on_drop(true)
        .spawn()
        .expect("it starts");
    let mut lines = BufReader::new(child.stdout.take().expect("piped")).lines();
    let address = loop {
        let line = timeout(PATIENCE, lines.next_line()).await.expect("in time");
        let line = line.expect("readable").expect("it goes on");
        if let Some(address) = line.strip_prefix("Lines: ") {
            break address.to_owned();
        }
    };
    // What it says later must find a reader.
    tokio::spawn(async move { while let Ok(Some(_)) = lines.next_line().await {} });
    (child, address)
}

/// Somebody at the table.
struct Someone {
    input: Lines<BufReader<OwnedReadHalf>>,
    output: OwnedWriteHalf,
    /// Every line so far.
    heard: Vec<String>,
}

impl Someone {
    async fn called(name: &str, address: &str) -> Self {
        let stream = TcpStream::connect(address).await.expect("connected");
        let (input, output) = stream.into_split();
        let mut someone = Self {
            input: BufReader::new(input).lines(),
            output,
            heard: Vec::new(),
        };
        someone.says(name).await;
        // Seated once the table answers.
        someone.says("hint").await;
        someone.hears("hint").await;
        someone
    }

    async fn says(&mut self, line: &str) {
        self.output
            .write_all(format!("{line}\n").as_bytes())
            .await
            .expect("written");
    }

    /// Waits until a post that was heard takes answers: it does once it is known to have gone out.
    async fn sees_open(&mut self, number: i64) {
        let open = format!("No. {number} is open.");
        loop {
            self.says("open").await;
            if self.hears(" is open.").await == open {
                return;
            }
        }
    }

    /// Waits for a line with these words; gives it.
    async fn hears(&mut self, words: &str) -> String {
        loop {
            let line = timeout(PATIENCE, self.input.next_line())
                .await
                .unwrap_or_else(|_| panic!("never: {words}; only {:#?}", self.heard));
            let line = line.expect("readable").expect("the line holds");
            self.heard.push(line.clone());
            if line.contains(words) {
                return line;
            }
        }
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_week_in_a_chat_that_was_added() {
    let folder = TempDir::new().expect("a folder");
    let folder = folder.path();
    std::fs::write(folder.join("week.epd"), WEEK).expect("written");
    std::fs::write(
        folder.join("sealed-move.toml"),
        "[room]\nopen = false\n\n[group]\nname = \"Table\"\ndays = 0\n\n[lines]\nopen = true\n",
    )
    .expect("written");
    let (mut child, address) = serve(folder).await;
    let week = folder.join("week.epd");
    let imported = run(folder, &["import", "--queue", week.to_str().expect("text")]);
    assert!(imported.status.success(), "{imported:?}");

    let mut coach = Someone::called("Rosalind", &address).await;
    let mut ana = Someone::called("Ana", &address).await;
    let mut bruno = Someone::called("Bruno", &address).await;

    coach.says("queue").await;
    let row = coach.hears("one").await;
    assert!(row.contains("Back rank") && row.contains("Sound"), "{row}");
    coach.hears("2 in the week").await;
    // For coaches only; from others it is talk.
    ana.says("queue").await;
    coach.hears("Ana: queue").await;

    coach.says("post").await;
    for someone in [&mut coach, &mut ana, &mut bruno] {
        someone.hears("Position 1 (Back rank): White to move").await;
    }

    ana.sees_open(1).await;
    ana.says("answer Ra7").await;
    ana.hears("Ra7").await;
    ana.says("hint").await;
    ana.hears("rook").await;
    // Written among others, and plainly an answer.
    bruno.says("Ra8#").await;
    bruno.hears("5 of 5 points").await;
    bruno.says("Good evening").await;
    ana.hears("Bruno: Good evening").await;
    ana.says("answer Ra8").await;
    ana.hears("3 of 5 points").await;
    let before: Vec<String> = [&coach, &bruno, &ana]
        .iter()
        .flat_map(|someone| someone.heard.clone())
        .collect();
    let theirs = |line: &&String| line.contains("Ra8") && !line.contains("points");
    assert_eq!(before.iter().find(theirs), None, "sealed until the reveal");
    assert!(!bruno.heard.iter().any(|line| line.contains("Ra7")));

    coach.says("close").await;
    for someone in [&mut coach, &mut ana, &mut bruno] {
        someone.hears("Position 1: the solution").await;
        someone.hears("1.Ra8#").await;
        someone.hears("Solved by 2 of 2: Bruno, Ana").await;
    }
    coach.says("summary").await;
    let mut part = [
        coach.hears("takes part").await,
        coach.hears("takes part").await,
    ];
    part.sort();
    assert_eq!(part, ["Ana takes part", "Bruno takes part"]);
    coach.hears("to say what to teach next").await;

    // The command line finds the group of a chat that it only knows by its key.
    let board = run(folder, &["leaderboard"]);
    let text = String::from_utf8_lossy(&board.stdout).into_owned();
    assert!(board.status.success() && text.contains("Bruno"), "{text}");

    // A power cut: nothing that was told is told again.
    child.start_kill().expect("killed");
    child.wait().await.expect("gone");
    let (_child, address) = serve(folder).await;
    let mut ana = Someone::called("Ana", &address).await;
    ana.says("Here again").await;
    ana.hears("Ana: Here again").await;
    let again = ana.heard.iter().find(|line| line.contains("Ra"));
    assert_eq!(again, None, "told once");
}

#[test]
fn without_a_chat_each_says_what_it_lacks() {
    let folder = TempDir::new().expect("a folder");
    std::fs::write(
        folder.path().join("sealed-move.toml"),
        "[room]\nopen = false\n",
    )
    .expect("written");
    let ran = run(folder.path(), &["serve"]);
    let error = String::from_utf8_lossy(&ran.stderr).into_owned();
    assert_eq!(ran.status.code(), Some(2));
    assert!(
        error.contains(
            "There is no chat to run. The club room is closed in the settings. No DISCORD_TOKEN is set. The table is closed in the settings."
        ),
        "{error}"
    );
}

#[test]
fn a_setting_that_the_chat_does_not_know_is_named_with_its_line() {
    let folder = TempDir::new().expect("a folder");
    std::fs::write(
        folder.path().join("sealed-move.toml"),
        "[room]\nopen = false\n\n[lines]\nprot = 1\n",
    )
    .expect("written");
    let ran = run(folder.path(), &["serve"]);
    let error = String::from_utf8_lossy(&ran.stderr).into_owned();
    assert_eq!(ran.status.code(), Some(2));
    assert!(
        error.contains("prot") && error.contains("line 5"),
        "{error}"
    );
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_question_in_a_chat_that_was_added() {
    let folder = TempDir::new().expect("a folder");
    let folder = folder.path();
    std::fs::write(
        folder.join("sealed-move.toml"),
        "[room]\nopen = false\n\n[group]\nname = \"Table\"\ndays = 0\n\n[lines]\nopen = true\n",
    )
    .expect("written");
    let (_child, address) = serve(folder).await;
    let mut coach = Someone::called("Rosalind", &address).await;
    let mut ana = Someone::called("Ana", &address).await;
    let mut bruno = Someone::called("Bruno", &address).await;

    coach.says("question What does White want?").await;
    coach.hears("in the week").await;
    coach.says("say No lesson on Monday.").await;
    coach.hears("in the week").await;
    coach.says("queue").await;
    coach.hears("a question: What does White want?").await;
    coach.hears("to be read: No lesson on Monday.").await;
    coach.says("post").await;
    for someone in [&mut ana, &mut bruno] {
        someone
            .hears("Question 1 (no topic): What does White want?")
            .await;
    }
    ana.sees_open(1).await;
    ana.says("answer Perhaps Rd8").await;
    ana.hears("Your coach reads it").await;
    ana.says("answer The open file").await;
    ana.hears("Your coach reads it").await;
    bruno.says("answer No idea").await;
    bruno.hears("Your coach reads it").await;
    bruno.says("Good evening").await;
    ana.hears("Bruno: Good evening").await;
    ana.says("hint").await;
    ana.hears("There are no hints for it").await;

    coach.says("waiting").await;
    coach.hears("Ana: The open file").await;
    coach.hears("2 waiting").await;
    coach.says("mark 3.5 Which one?").await;
    coach.hears("It is marked.").await;
    ana.hears("3.5 of 5 points").await;
    coach.says("waiting").await;
    coach.hears("1 waiting").await;
    coach.says("close").await;
    for someone in [&mut ana, &mut bruno] {
        someone.hears("Question 1 is closed.").await;
        someone.hears("Answered by Ana, Bruno").await;
    }
    assert!(!bruno.heard.iter().any(|line| line.contains("file")));
    assert!(!ana.heard.iter().any(|line| line.contains("No idea")));
    coach.says("post").await;
    ana.hears("To be read (no topic): No lesson on Monday.")
        .await;
    coach.says("summary").await;
    coach.hears("0 problems, 1 questions").await;
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn an_answer_goes_to_the_post_that_is_named_where_several_are_open() {
    let folder = TempDir::new().expect("a folder");
    let folder = folder.path();
    std::fs::write(folder.join("week.epd"), WEEK).expect("written");
    std::fs::write(
        folder.join("sealed-move.toml"),
        "[room]\nopen = false\n\n[group]\nname = \"Table\"\ndays = 0\n\n[lines]\nopen = true\n",
    )
    .expect("written");
    let (_child, address) = serve(folder).await;
    let week = folder.join("week.epd");
    let imported = run(folder, &["import", "--queue", week.to_str().expect("text")]);
    assert!(imported.status.success(), "{imported:?}");
    let mut coach = Someone::called("Rosalind", &address).await;
    let mut ana = Someone::called("Ana", &address).await;
    for number in [1, 2] {
        coach.says("post").await;
        ana.hears(&format!("Position {number} (Back rank)")).await;
        ana.sees_open(number).await;
    }

    // Without a number it is for the latest; these moves fit the other one, so nothing is charged.
    ana.says("answer Ra8").await;
    ana.hears("Is it your answer to 1?").await;
    ana.says("answer No. 1: Ra8").await;
    ana.hears("5 of 5 points").await;
    ana.says("answer No. 3: Rb8").await;
    ana.hears("There is no such post.").await;
    ana.says("answer").await;
    ana.hears("nothing to judge").await;
    ana.says("answer Rb8").await;
    ana.hears("5 of 5 points").await;
}
