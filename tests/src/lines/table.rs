//! The table: who sits at it, what they say, and what they hear.

use std::{
    collections::HashMap,
    sync::{Arc, Mutex, MutexGuard, PoisonError},
    time::{SystemTime, UNIX_EPOCH},
};

use sealed_move::{
    chat::{
        ChatError, Shutdown,
        said::{in_words, refused},
    },
    desk::{
        AskedBack, Came, Desk, DeskError, Period, Person, Place, Points, PostId, Queued, ReplyId,
        Sentence, Taken, VerdictSheet,
    },
    words::english,
};
use tokio::{
    io::{AsyncBufReadExt, AsyncWriteExt, BufReader},
    net::TcpStream,
    sync::{mpsc, oneshot},
};

/// A line on its way to somebody.
pub(super) struct Line {
    text: String,
    /// The reply whose verdict it tells.
    tells: Option<ReplyId>,
    /// Told when it is written.
    written: Option<oneshot::Sender<()>>,
}

impl Line {
    /// A line of text.
    pub(super) fn plain(text: &str) -> Self {
        Self {
            text: text.replace(['\n', '\r'], " "),
            tells: None,
            written: None,
        }
    }

    fn verdict(sheet: &VerdictSheet) -> Self {
        Self {
            tells: Some(sheet.reply),
            ..Self::plain(&in_words(&sheet.said))
        }
    }
}

/// The table.
pub(super) struct Table {
    desk: Desk,
    place: Place,
    seats: Mutex<HashMap<String, mpsc::UnboundedSender<Line>>>,
}

impl Table {
    pub(super) fn new(desk: Desk, place: Place) -> Self {
        Self {
            desk,
            place,
            seats: Mutex::default(),
        }
    }

    fn seats(&self) -> MutexGuard<'_, HashMap<String, mpsc::UnboundedSender<Line>>> {
        self.seats.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Says a line to everyone who is there.
    pub(super) fn everyone(&self, text: &str) {
        for seat in self.seats().values() {
            let _ = seat.send(Line::plain(text));
        }
    }

    /// The group's coaches.
    pub(super) async fn coaches(&self) -> Result<Vec<String>, ChatError> {
        let coaches = self.desk.coaches(&self.place).await;
        match coaches {
            Ok(coaches) => Ok(coaches.into_iter().map(|coach| coach.user).collect()),
            Err(error) => Err(ChatError::of_desk(&error)),
        }
    }

    /// Says a line to one person; done when it is written.
    pub(super) async fn tell(&self, user: &str, line: Line) -> Result<(), ChatError> {
        let away = || ChatError::Later(Sentence::plain(format!("{user} is not at the table.")));
        let (written, done) = oneshot::channel();
        let line = Line {
            written: Some(written),
            ..line
        };
        let seat = self.seats().get(user).cloned().ok_or_else(away)?;
        seat.send(line).map_err(|_| away())?;
        done.await.map_err(|_| away())
    }

    /// One person at the table, from their name to the end of the line.
    pub(super) async fn seat(self: Arc<Self>, stream: TcpStream, mut shutdown: Shutdown) {
        let (input, mut output) = stream.into_split();
        let mut input = BufReader::new(input).lines();
        let Ok(Some(name)) = input.next_line().await else {
            return;
        };
        let person = Person {
            user: name.to_lowercase(),
            name,
            language: None,
        };
        let (sender, mut lines) = mpsc::unbounded_channel();
        self.seats().insert(person.user.clone(), sender.clone());
        loop {
            tokio::select! {
                Some(line) = lines.recv() => {
                    if output.write_all(format!("{}\n", line.text).as_bytes()).await.is_err() {
                        break;
                    }
                    if let Some(reply) = line.tells {
                        let _ = self.desk.rounds().verdict_arrived(reply).await;
                    }
                    if let Some(written) = line.written {
                        let _ = written.send(());
                    }
                }
                said = input.next_line() => {
                    let Ok(Some(said)) = said else { break };
                    let heard = self.heard(&person, said.trim()).await;
                    for line in heard.unwrap_or_else(|error| vec![Line::plain(&refused(&error, english()))]) {
                        let _ = sender.send(line);
                    }
                }
                () = shutdown.wait() => break,
            }
        }
        self.seats().remove(&person.user);
    }

    /// What comes of a line that somebody said.
    async fn heard(&self, person: &Person, said: &str) -> Result<Vec<Line>, DeskError> {
        let (desk, place) = (&self.desk, &self.place);
        let source = source(person);
        let coach = desk.is_coach(place, &person.user).await?;
        let latest = desk.open_post(place).await?;
        let open = latest.as_ref().map(|sheet| sheet.post);
        Ok(match (said.split_once(' ').unwrap_or((said, "")), open) {
            (("answer", text), Some(latest)) => {
                let (post, text) = match numbered(text) {
                    Some((number, text)) => (self.numbered(number).await?, text),
                    None => (Some(latest), text),
                };
                match post {
                    Some(post) => self.answered(person, post, &source, text).await?,
                    None => vec![Line::plain("There is no such post.")],
                }
            }
            (("answer", _), None) => vec![Line::plain("Nothing is open.")],
            (("open", ""), _) => vec![match latest {
                Some(sheet) => Line::plain(&format!("No. {} is open.", sheet.number)),
                None => Line::plain("Nothing is open."),
            }],
            (("hint", ""), Some(post)) => {
                vec![Line::plain(&in_words(
                    &desk.member().hint(place, person, post).await?.said,
                ))]
            }
            (("give", "up"), Some(post)) => {
                vec![Line::plain(&in_words(
                    &desk.member().give_up(place, person, post).await?,
                ))]
            }
            (("post", ""), _) if coach => {
                desk.coach().post_now(place, person, None).await?;
                vec![Line::plain("It goes out now.")]
            }
            (("close", ""), Some(post)) if coach => {
                desk.coach().close_now(place, person, post).await?;
                vec![Line::plain("It is closed.")]
            }
            (("queue", ""), _) if coach => {
                let queue = desk.coach().queue(place).await?;
                let rows = queue.iter().map(|item| {
                    let topic = item.topic.as_deref().unwrap_or("no topic");
                    Line::plain(&match &item.holds {
                        Queued::Problem { soundness, .. } => {
                            format!("{}: {topic}, {soundness:?}", item.source)
                        }
                        Queued::Question { words, .. } => format!("a question: {words}"),
                        Queued::Words { words, .. } => format!("to be read: {words}"),
                    })
                });
                rows.chain([Line::plain(&format!("{} in the week", queue.len()))])
                    .collect()
            }
            (("question", words), _) if coach && !words.is_empty() => {
                desk.coach()
                    .enqueue_question(place, person, words, None, None, "")
                    .await?;
                vec![Line::plain("The question is in the week.")]
            }
            (("say", words), _) if coach && !words.is_empty() => {
                desk.coach()
                    .enqueue_words(place, person, words, None, None)
                    .await?;
                vec![Line::plain("The words are in the week.")]
            }
            (("waiting", ""), _) if coach => {
                let waiting = desk.coach().homework(place, person).await?;
                let rows = waiting
                    .iter()
                    .map(|row| Line::plain(&format!("{}: {}", row.reply.name, row.reply.text)));
                rows.chain([Line::plain(&format!("{} waiting", waiting.len()))])
                    .collect()
            }
            (("mark", mark), _) if coach => {
                let (points, words) = mark.split_once(' ').unwrap_or((mark, ""));
                let waiting = desk.coach().homework(place, person).await?;
                match (points.parse::<Points>(), waiting.first()) {
                    (Ok(points), Some(row)) => {
                        desk.coach()
                            .mark_answer(place, person, row.reply.reply, points, words)
                            .await?;
                        vec![Line::plain("It is marked.")]
                    }
                    _ => vec![Line::plain("There is nothing to mark so.")],
                }
            }
            (("summary", ""), _) if coach => {
                let summary = desk.coach().summary(place, &Period::default()).await?;
                let rows = summary
                    .members
                    .iter()
                    .map(|member| Line::plain(&format!("{} takes part", member.name)));
                let kinds = format!(
                    "{} problems, {} questions",
                    summary.problems().count(),
                    summary.questions().count()
                );
                rows.chain([
                    Line::plain(&kinds),
                    Line::plain(&english().tell(&summary.advice)),
                ])
                .collect()
            }
            _ => self.among_others(person, said, &source).await?,
        })
    }

    /// An answer to a post that was chosen.
    async fn answered(
        &self,
        person: &Person,
        post: PostId,
        source: &str,
        text: &str,
    ) -> Result<Vec<Line>, DeskError> {
        let member = self.desk.member();
        let taken = member.answer_to(&self.place, person, post, source, text);
        Ok(match taken.await? {
            Taken::Answer(sheet) => vec![Line::verdict(&sheet)],
            Taken::AskedBack(asked) => vec![Line::plain(&asked_back(&asked))],
        })
    }

    /// The post of a number.
    async fn numbered(&self, number: i64) -> Result<Option<PostId>, DeskError> {
        let posts = self.desk.posts(&self.place, 100).await?;
        let found = posts.into_iter().find(|row| row.number == number);
        Ok(found.map(|row| row.post))
    }

    /// A line that may be an answer or may be talk.
    async fn among_others(
        &self,
        person: &Person,
        said: &str,
        source: &str,
    ) -> Result<Vec<Line>, DeskError> {
        let came = self
            .desk
            .member()
            .take(&self.place, person, None, source, said);
        Ok(match came.await? {
            Came::Answer(sheet) | Came::Again(sheet) => vec![Line::verdict(&sheet)],
            Came::AskedBack(asked) => vec![Line::plain(&asked_back(&asked))],
            Came::Talk => {
                self.everyone(&format!("{}: {said}", person.name));
                Vec::new()
            }
        })
    }
}

/// `No. 2: Ra8`: which post an answer is for, and the answer.
fn numbered(text: &str) -> Option<(i64, &str)> {
    let (number, answer) = text.strip_prefix("No. ")?.split_once(": ")?;
    Some((number.parse().ok()?, answer))
}

/// A line has no id of its own; no two of one person come in one nanosecond.
fn source(person: &Person) -> String {
    let since = SystemTime::now()
        .duration_since(UNIX_EPOCH)
        .unwrap_or_default();
    format!("{}-{}", person.user, since.as_nanos())
}

/// The question about a message that was not taken: which post it is for.
fn asked_back(asked: &AskedBack) -> String {
    let posts: Vec<String> = asked
        .posts
        .iter()
        .map(|post| post.number.to_string())
        .collect();
    format!("Is it your answer to {}?", posts.join(" or "))
}
