//! A third chat, of plain lines over TCP on this machine: proof that a chat is a folder and one line. Whoever
//! connects gives a name as the first line and is that person from then on, so it is for tests only.
//!
//! A line is an answer where it plainly is one, and talk else. `answer …` (to the latest post, or `answer No. 2: …`),
//! `hint`, `give up`, and of a coach `post`, `close`, `queue`, `summary` and `waiting` ask for just that; `question …` and `say …` put words into the
//! week, and `mark POINTS WORDS` marks the answer that has waited longest.

mod table;

use std::{net::Ipv4Addr, sync::Arc};

use async_trait::async_trait;
use sealed_move::{
    chat::{
        Chat, ChatError, Down, Report, Service, Shutdown, Tasks,
        common::text::{NoSolutionProved, Tasked},
        pictures,
        registry::{Home, Opener, Opening, Parts, Registration, Section, SettingsError},
        said::in_words,
    },
    desk::{
        ChatKey, Content, Delivered, Delivery, Desk, DeskError, Errand, ErrandKind, Manners, Names,
        Person, Place, Sentence, Settings, Shown,
    },
    words::english,
};
use serde::Deserialize;
use tokio::net::TcpListener;

use table::{Line, Table};

/// The key.
pub const KEY: ChatKey = ChatKey::of("lines");

/// The chat, for a registry.
pub fn registration() -> Registration {
    Registration {
        key: KEY,
        name: "The table",
        home: Some(home),
        configure,
    }
}

/// Its one group. People name themselves, and a verdict is a line that is sent.
fn home() -> Home {
    Home {
        place: Place {
            chat: KEY,
            channel: "table".into(),
        },
        manners: Manners {
            names: Names::ByMember,
            delivery: Delivery::Sent,
        },
        coach: Person {
            user: "rosalind".into(),
            name: "Rosalind".into(),
            language: None,
        },
    }
}

/// The table `[lines]` of the settings file.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields, default)]
struct LineSettings {
    /// Whether there is such a chat.
    open: bool,
    /// Its port; 0 for a free one.
    port: u16,
}

fn configure(section: Section<'_>) -> Result<Opener, SettingsError> {
    let settings: LineSettings = section.read()?;
    Ok(Box::new(move |parts: &Parts| match settings.open {
        true => Opening::On(Arc::new(LineService {
            desk: parts.desk.clone(),
            group: parts.group.clone(),
            port: settings.port,
        })),
        false => Opening::Off(Sentence::plain("The table is closed in the settings.")),
    }))
}

/// The chat as the supervisor runs it.
struct LineService {
    desk: Desk,
    group: Settings,
    port: u16,
}

#[async_trait]
impl Service for LineService {
    fn key(&self) -> ChatKey {
        KEY
    }

    async fn prepare(&self) -> Result<(), DeskError> {
        let home = home();
        if self.desk.places(KEY).await?.is_empty() {
            let group = self.group.clone();
            self.desk
                .found_group(&home.place, home.manners, None, group, &home.coach)
                .await?;
        }
        Ok(())
    }

    async fn run(&self, report: Report, mut shutdown: Shutdown) -> Result<(), Down> {
        let down = |error: std::io::Error| Down::ForNow(Sentence::plain(error));
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, self.port))
            .await
            .map_err(down)?;
        let address = listener.local_addr().map_err(down)?;
        let table = Arc::new(Table::new(self.desk.clone(), home().place));
        report.up(
            Arc::new(LineChat(Arc::clone(&table))),
            vec![Sentence::plain(format!("Lines: {address}"))],
        );
        let tasks = Tasks::default();
        let ended = loop {
            tokio::select! {
                accepted = listener.accept() => match accepted {
                    Ok((stream, _)) => {
                        drop(tasks.begin(Arc::clone(&table).seat(stream, shutdown.clone())));
                    }
                    Err(error) => break Err(down(error)),
                },
                () = shutdown.wait() => break Ok(()),
            }
        };
        tasks.finished().await;
        ended
    }
}

/// What goes out unasked.
struct LineChat(Arc<Table>);

#[async_trait]
impl Chat for LineChat {
    fn key(&self) -> ChatKey {
        KEY
    }

    async fn carry(&self, errand: &Errand) -> Result<Delivered, ChatError> {
        let table = &self.0;
        match &errand.kind {
            ErrandKind::Post { sheet, .. } => {
                let topic = sheet.topic.as_deref().unwrap_or("no topic");
                let number = sheet.number;
                match &sheet.content {
                    Content::Problem {
                        stipulation, side, ..
                    } => {
                        let task = english().say(&Tasked::of(*side, *stipulation));
                        table.everyone(&format!("Position {number} ({topic}): {task}"));
                    }
                    Content::Question(asked) => {
                        table.everyone(&format!("Question {number} ({topic}): {}", asked.words));
                    }
                    Content::Words(said) => {
                        table.everyone(&format!("To be read ({topic}): {}", said.words));
                    }
                }
                if let Some(picture) = sheet.content.picture() {
                    table.everyone(&pictures::alt(picture, english()));
                }
            }
            ErrandKind::Reveal { sheet, .. } => {
                let number = sheet.post.number;
                match &sheet.shows {
                    Shown::Solution(solution) => {
                        table.everyone(&format!("Position {number}: the solution"));
                        for line in &solution.solution {
                            table.everyone(line);
                        }
                        if solution.solution.is_empty() {
                            table.everyone(&english().say(&NoSolutionProved {}));
                        }
                        table.everyone(&format!(
                            "Solved by {} of {}: {}",
                            solution.solved.len(),
                            sheet.took_part,
                            solution.solved.join(", ")
                        ));
                    }
                    Shown::Answered {
                        at_reveal,
                        answered,
                        ..
                    } => {
                        table.everyone(&format!("Question {number} is closed. {at_reveal}"));
                        table.everyone(&format!("Answered by {}", answered.join(", ")));
                    }
                }
            }
            // A line that was sent cannot be looked for, so one that was perhaps sent is sent again.
            ErrandKind::TellCoach(notice) => {
                for coach in table.coaches().await? {
                    table
                        .tell(&coach, Line::plain(&english().say(notice)))
                        .await?;
                }
            }
            ErrandKind::TellMember { user, sheet, .. } => {
                table
                    .tell(user, Line::plain(&in_words(&sheet.said)))
                    .await?;
            }
            ErrandKind::AnswerMember(told) => {
                table.tell(&told.user, Line::plain(&told.row.words)).await?;
            }
            ErrandKind::AskLeave(asked) => {
                let line = format!("May this be shown to the group? {}", asked.text);
                table.tell(&asked.user, Line::plain(&line)).await?;
            }
            ErrandKind::Example(sheet) => {
                let shown = sheet.shown.as_ref().map(|shown| shown.text.as_str());
                let number = sheet.number;
                table.everyone(&format!(
                    "Question {number}: {}",
                    shown.unwrap_or("an answer was taken back")
                ));
            }
        }
        Ok(Delivered::default())
    }
}
