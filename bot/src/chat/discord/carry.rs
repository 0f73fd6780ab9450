//! Errands: posts, reveals and words to people, each sent once. Before an errand that may have got
//! through is sent again, the channel is read back, since Discord remembers a nonce for minutes only.

use async_trait::async_trait;
use poise::serenity_prelude as serenity;
use serenity::{ChannelId, EditMessage, GetMessages, MessageId, UserId};

use super::{
    KEY, buttons,
    commands::homework,
    fit,
    house::{self, House},
    letter::{Letter, quiet},
    missed,
    oops::{brief, code, codes, status},
    sheets, tell,
    text::{Fault, Plain, Posting, Talk},
    way::{Failed, KnownBy, LOOK_BACK, Way},
};
use crate::{
    chat::{Chat, ChatError, common::notes},
    desk::{
        Answered, ChatKey, Delivered, DeskError, Earlier, Errand, ErrandKind, ExampleSheet,
        LeaveAsked, Notice, PartAt, Person, Place, PostSheet, RevealSheet, Sentence, Shown, Step,
        VerdictSheet,
    },
    words::{Words, tags, words as words_of_tag},
};

/// The chat, as the round of errands sees it.
pub struct Discord {
    /// What it shares with the handlers of what comes in.
    pub house: std::sync::Arc<House>,
}

/// The messages that a picture's words need besides the first are numbered from here, apart from the pages of
/// a reveal.
const WORDS: u8 = 100;

#[async_trait]
impl Chat for Discord {
    fn key(&self) -> ChatKey {
        KEY
    }

    /// The desk has it written down: answers that came with a post find it open now, and those that
    /// came before a restart are read back.
    async fn settled(&self, errand: &Errand) {
        self.house.set_posting(false);
        if matches!(errand.kind, ErrandKind::Post { again: true, .. }) {
            missed::read_back(&self.house).await;
        }
    }

    async fn carry(&self, errand: &Errand) -> Result<Delivered, ChatError> {
        let Some(channel) = house::channel(&errand.place) else {
            let channel = Plain::already(errand.place.channel.clone());
            let fault = Fault::NoDiscordChannel { channel };
            return Err(ChatError::Never(Sentence::of(fault)));
        };
        match &errand.kind {
            ErrandKind::Post { sheet, again } => {
                let way = Way::new(&self.house, errand, channel, *again);
                self.house.set_posting(true);
                let posted = self.post(way, &errand.place, sheet).await;
                if posted.is_err() {
                    self.house.set_posting(false);
                }
                posted
            }
            ErrandKind::Reveal { sheet, again } => {
                let way = Way::new(&self.house, errand, channel, *again);
                self.reveal(way, &errand.place, sheet).await
            }
            ErrandKind::TellCoach(notice) => {
                let earlier = errand.earlier.as_ref();
                self.tell_coaches(&errand.place, notice, earlier).await
            }
            ErrandKind::AnswerMember(told) => {
                self.answer_member(&errand.place, told, errand.earlier.as_ref())
                    .await
            }
            ErrandKind::AskLeave(asked) => {
                self.ask_leave(&errand.place, asked, errand.earlier.as_ref())
                    .await
            }
            ErrandKind::Example(sheet) => self.example(channel, &errand.place, sheet).await,
            ErrandKind::TellMember { user, text, sheet } => {
                self.tell_member(&errand.place, user, text, sheet, errand.earlier.as_ref())
                    .await
            }
        }
    }
}

impl Discord {
    async fn post(
        &self,
        mut way: Way<'_>,
        place: &Place,
        sheet: &PostSheet,
    ) -> Result<Delivered, ChatError> {
        let mode = self.house.desk.settings(place).await.map_err(later)?.mode;
        let words = self.house.words_of_group(place).await;
        let threads = self.house.opens_threads(place);
        let letter = sheets::post::letter(words, place, sheet, mode, threads);
        let heading = sheets::post::headings(sheet);
        let message = self
            .send(&mut way, Step::Post, letter, &sheet.nonce, heading)
            .await?;
        let thread = match sheet.content.kind().takes_answers() {
            true => {
                let name = sheets::post::thread_name(words, sheet);
                way.open_thread(message, name).await?
            }
            // Nothing of it is sealed, so it is talked about where it stands.
            false => None,
        };
        Ok(Delivered {
            message: Some(message.to_string()),
            thread: thread.map(|id| id.to_string()),
        })
    }

    /// Sends the message that the errand is about; in words where pictures are not allowed, which may
    /// need a second message.
    async fn send(
        &self,
        way: &mut Way<'_>,
        step: fn(u8) -> Step,
        letter: Letter,
        nonce: &str,
        headings: Vec<String>,
    ) -> Result<MessageId, ChatError> {
        let known_by = || KnownBy::Headings(headings.clone());
        if !way.in_words() {
            match way.send(step(0), &letter, nonce, known_by()).await {
                Err(Failed::Discord(error))
                    if code(&error) == Some(codes::MISSING_PERMISSIONS)
                        && !letter.files.is_empty() =>
                {
                    way.go_in_words().await?;
                }
                sent => return sent.map_err(|failure| failed(failure, way.channel())),
            }
        }
        let mut pages = letter.in_words().pages();
        // The words of a picture may need a second message; the first one is the post.
        let rest = pages.split_off(1.min(pages.len()));
        let mut first = pages.pop().unwrap_or_default();
        if let Some(last) = rest.last() {
            first.rows.extend(last.rows.clone());
        }
        let id = way
            .send(step(0), &first, nonce, known_by())
            .await
            .map_err(|failure| failed(failure, way.channel()))?;
        for (n, page) in (WORDS..).zip(rest) {
            let page = Letter::text(page.text);
            let nonce = format!("{}-{}", words_nonce(nonce), n - WORDS);
            way.send_more(step(n), way.channel(), &page, &nonce, id)
                .await?;
        }
        Ok(id)
    }

    async fn reveal(
        &self,
        mut way: Way<'_>,
        place: &Place,
        sheet: &RevealSheet,
    ) -> Result<Delivered, ChatError> {
        let post = &sheet.post;
        let thread = id(post.thread.as_deref()).map(ChannelId::new);
        let words = self.house.words_of_group(place).await;
        let mut pages = sheets::reveal::letter(words, sheet).pages();
        let rest = pages.split_off(1.min(pages.len()));
        let mut first = pages.pop().unwrap_or_default();
        let cards = sheets::card::under_reveal(words, place, &sheet.cards);
        first.rows.extend(cards);
        if let Some((lesson, id)) = post.lesson.as_ref().and_then(|at| Some((at, at.lesson?))) {
            let part = PartAt {
                step: lesson.step,
                part: lesson.part,
            };
            let row = buttons::step_through(words, place, id, part);
            first.rows.push(row);
        }
        let heading = sheets::reveal::headings(sheet);
        let nonce = format!("r{}-0", post.post);
        let message = self
            .send(&mut way, Step::Reveal, first, &nonce, heading)
            .await?;
        for (n, page) in (1..).zip(&rest) {
            let nonce = format!("r{}-{n}", post.post);
            let into = thread.unwrap_or(way.channel());
            way.send_more(Step::Reveal(n), into, page, &nonce, message)
                .await?;
        }
        if let Some(posted) = id(post.message.as_deref()).map(MessageId::new) {
            way.edit(Step::Closing, posted, closing(words, place, sheet))
                .await?;
        }
        if let Some(thread) = thread {
            let word = Letter::text(words.say(&match &sheet.shows {
                Shown::Solution(_) => Posting::SolutionIsOut,
                Shown::Answered { .. } => Posting::QuestionIsOver,
            }));
            let nonce = format!("w{}", post.post);
            // In the thread, whose messages all come after the post.
            let after = MessageId::new(thread.get());
            way.send_more(Step::ThreadWord, thread, &word, &nonce, after)
                .await?;
        }
        Ok(Delivered {
            message: Some(message.to_string()),
            thread: None,
        })
    }

    /// Tells every coach; where none can be reached, the words wait for the next coach command.
    async fn tell_coaches(
        &self,
        place: &Place,
        notice: &Notice,
        earlier: Option<&Earlier>,
    ) -> Result<Delivered, ChatError> {
        let desk = &self.house.desk;
        let group = desk.settings(place).await.map_err(later)?.name;
        let coaches = desk.coaches(place).await.map_err(later)?;
        let text = |words: &Words| {
            let notice = fit::plain(&words.say(notice));
            format!("**{}**: {notice}", fit::plain(&group))
        };
        let nonce = format!("c{}", desk.now().timestamp_millis());
        let mut reached = false;
        for coach in coaches {
            let Some(user) = user(&coach.user) else {
                continue;
            };
            // An earlier attempt may have been in another language: the coach may have chosen one since.
            let mut told = false;
            for tag in tags().filter(|_| earlier.is_some()) {
                told |= self
                    .was_told(user, &text(words_of_tag(tag)), earlier)
                    .await?;
            }
            if !told {
                let letter = Letter::text(text(self.house.words_for(place, &coach).await));
                told = tell::tell(&self.house, user, &letter, &nonce).await;
            }
            reached |= told;
        }
        if !reached {
            notes::keep(desk, place, notice, earlier)
                .await
                .map_err(later)?;
        }
        Ok(Delivered::default())
    }

    /// A coach's private answer; one who takes no direct messages finds it under My progress.
    async fn answer_member(
        &self,
        place: &Place,
        told: &Answered,
        earlier: Option<&Earlier>,
    ) -> Result<Delivered, ChatError> {
        if let Some(user) = user(&told.user) {
            let words = self.house.words_for(place, &of(&told.user)).await;
            let letter = Letter::text(sheets::verdict::answered(words, &told.row));
            if self.was_told(user, &letter.text, earlier).await? {
                return Ok(Delivered::default());
            }
            let at = self.house.desk.now().timestamp() % 100_000;
            let nonce = format!("a{}.{at}", told.row.reply);
            self.deliver(user, &letter, &nonce).await?;
        }
        Ok(Delivered::default())
    }

    /// Asks a writer for their leave; one who takes no direct messages finds the question with their answer.
    async fn ask_leave(
        &self,
        place: &Place,
        asked: &LeaveAsked,
        earlier: Option<&Earlier>,
    ) -> Result<Delivered, ChatError> {
        if let Some(user) = user(&asked.user) {
            let words = self.house.words_for(place, &of(&asked.user)).await;
            let letter = homework::leave_asked(words, place, asked);
            if self.was_told(user, &letter.text, earlier).await? {
                return Ok(Delivered::default());
            }
            let at = self.house.desk.now().timestamp() % 100_000;
            let nonce = format!("q{}.{at}", asked.reply);
            self.deliver(user, &letter, &nonce).await?;
        }
        Ok(Delivered::default())
    }

    /// Puts an example behind its reveal, or changes the message in which it stands.
    async fn example(
        &self,
        channel: ChannelId,
        place: &Place,
        sheet: &ExampleSheet,
    ) -> Result<Delivered, ChatError> {
        let words = self.house.words_of_group(place).await;
        let into = id(sheet.thread.as_deref()).map_or(channel, ChannelId::new);
        let letter = sheets::reveal::example_letter(words, sheet);
        let stands = id(sheet.message.as_deref()).map(MessageId::new);
        let gone = |error: &serenity::Error| {
            matches!(
                code(error),
                Some(codes::UNKNOWN_MESSAGE | codes::UNKNOWN_CHANNEL)
            )
        };
        if let Some(message) = stands {
            let edit = EditMessage::new()
                .content(fit::short(&letter.text, fit::MESSAGE))
                .allowed_mentions(quiet());
            match into.edit_message(&self.house.http, message, edit).await {
                Ok(_) => return Ok(Delivered::default()),
                Err(error) if gone(&error) => {}
                Err(error) => return Err(failed(Failed::Discord(error), into)),
            }
        }
        if sheet.shown.is_none() {
            return Ok(Delivered::default());
        }
        let sent = async {
            // An earlier attempt may have got through, and only the channel tells.
            let latest = GetMessages::new().limit(LOOK_BACK);
            let latest = into.messages(&self.house.http, latest).await?;
            let text = fit::short(&letter.text, fit::MESSAGE);
            let ours = latest.into_iter().find(|message| {
                message.author.id == self.house.me && message.content.trim() == text.trim()
            });
            if let Some(there) = ours {
                return Ok(there.id);
            }
            let nonce = format!("x{}", sheet.reply);
            let sent = into.send_message(&self.house.http, letter.message(&nonce));
            Ok::<_, serenity::Error>(sent.await?.id)
        };
        let message = sent
            .await
            .map_err(|error| failed(Failed::Discord(error), into))?;
        Ok(Delivered {
            message: Some(message.to_string()),
            thread: None,
        })
    }

    /// Whether an earlier attempt at a word got through; it was sent in `text`, unless it says otherwise.
    async fn was_told(
        &self,
        user: UserId,
        text: &str,
        earlier: Option<&Earlier>,
    ) -> Result<bool, ChatError> {
        let Some(earlier) = earlier else {
            return Ok(false);
        };
        let text = earlier.sent_as.as_deref().unwrap_or(text);
        tell::was_told(&self.house, user, text, earlier.since)
            .await
            .map_err(|error| unsent(&error))
    }

    /// Sends a letter; whoever takes none sees it under My progress.
    async fn deliver(&self, user: UserId, letter: &Letter, nonce: &str) -> Result<(), ChatError> {
        tell::deliver(&self.house, user, letter, nonce)
            .await
            .map(drop)
            .map_err(|error| unsent(&error))
    }

    async fn tell_member(
        &self,
        place: &Place,
        member: &str,
        text: &str,
        sheet: &VerdictSheet,
        earlier: Option<&Earlier>,
    ) -> Result<Delivered, ChatError> {
        if let Some(user) = user(member) {
            let mut letter = sheets::verdict::told(sheet);
            if !text.is_empty() {
                let words = self.house.words_for(place, &of(member)).await;
                let quote = Plain::quote(text);
                let head = words.say(&Talk::OnYourAnswer { quote });
                letter.text = format!("{head}\n{}", letter.text);
            }
            let nonce = format!(
                "l{}.{}",
                sheet.reply,
                self.house.desk.now().timestamp() % 100_000
            );
            if !self.was_told(user, &letter.text, earlier).await? {
                self.deliver(user, &letter, &nonce).await?;
            }
        }
        Ok(Delivered::default())
    }
}

/// The post takes no more answers; its buttons say so.
fn closing(words: &Words, place: &Place, sheet: &RevealSheet) -> EditMessage {
    EditMessage::new()
        .content(fit::short(
            &sheets::post::closed(words, &sheet.post),
            fit::MESSAGE,
        ))
        .components(vec![buttons::progress_only(words, place, sheet.post.post)])
        .allowed_mentions(quiet())
}

fn id(text: Option<&str>) -> Option<u64> {
    text?.parse().ok().filter(|id| *id > 0)
}

/// The nonce of further parts: never longer than Discord takes.
fn words_nonce(nonce: &str) -> String {
    nonce.chars().take(20).collect()
}

/// A person of whom no more is known here; what is kept of a member tells their language.
fn of(user: &str) -> Person {
    Person {
        user: user.to_owned(),
        name: String::new(),
        language: None,
    }
}

fn user(id: &str) -> Option<UserId> {
    id.parse::<u64>().ok().filter(|id| *id > 0).map(UserId::new)
}

/// A word to a person that may get through later.
fn unsent(error: &serenity::Error) -> ChatError {
    let why = brief(error);
    ChatError::Later(Sentence::of(Fault::DirectUnsent { why }))
}

fn later(error: DeskError) -> ChatError {
    ChatError::of_desk(&error)
}

/// Why a message could not be put into a channel, in words for the coach.
fn failed(failure: Failed, channel: ChannelId) -> ChatError {
    let error = match failure {
        Failed::Discord(error) => error,
        Failed::Store(error) => return error,
    };
    let channel = format!("<#{channel}>");
    let fault = match (code(&error), status(&error)) {
        (Some(codes::MISSING_ACCESS), _) => Fault::ChannelUnseen { channel },
        (Some(codes::MISSING_PERMISSIONS), _) => Fault::ChannelMute { channel },
        (Some(codes::UNKNOWN_CHANNEL), _) => {
            return ChatError::Never(Sentence::of(Fault::ChannelGone));
        }
        (_, Some(500..) | None) => Fault::DiscordAway,
        _ => Fault::DiscordRefuses { why: brief(&error) },
    };
    ChatError::Later(Sentence::of(fault))
}
