//! Errands: posts, reveals and words to people, each sent once. Before an errand that may have got
//! through is sent again, the channel is read back, since Discord remembers a nonce for minutes only.

use async_trait::async_trait;
use poise::serenity_prelude as serenity;
use serenity::{ChannelId, CreateThread, EditMessage, GetMessages, Message, UserId};

use super::{
    buttons,
    house::{self, House},
    letter::{Letter, quiet},
    missed,
    oops::{brief, code, codes, status},
    permissions, sheets, talk, words,
};
use crate::{
    chat::{Chat, ChatError},
    desk::{
        Answered, ChatName, Delivered, Errand, ErrandKind, Place, PostSheet, RevealSheet,
        VerdictSheet,
    },
};

/// The chat, as the round of errands sees it.
pub struct Discord {
    /// What it shares with the handlers of what comes in.
    pub house: std::sync::Arc<House>,
}

/// Where words to coaches wait that could not be told.
pub fn notes_key(place: &Place) -> String {
    format!("discord:notes:{}", place.channel)
}

#[async_trait]
impl Chat for Discord {
    fn name(&self) -> ChatName {
        ChatName::Discord
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
            return Err(ChatError::Never(format!(
                "\"{}\" is no channel of Discord",
                errand.place.channel
            )));
        };
        match &errand.kind {
            ErrandKind::Post { sheet, again } => {
                self.house.set_posting(true);
                let posted = self.post(&errand.place, channel, sheet, *again).await;
                if posted.is_err() {
                    self.house.set_posting(false);
                }
                posted
            }
            ErrandKind::Reveal { sheet, again } => {
                self.reveal(&errand.place, channel, sheet, *again).await
            }
            ErrandKind::TellCoach(notice) => self.tell_coaches(&errand.place, &notice.text).await,
            ErrandKind::AnswerMember(told) => self.answer_member(told).await,
            ErrandKind::TellMember { user, text, sheet } => {
                self.tell_member(user, text, sheet).await
            }
        }
    }
}

impl Discord {
    async fn post(
        &self,
        place: &Place,
        channel: ChannelId,
        sheet: &PostSheet,
        again: bool,
    ) -> Result<Delivered, ChatError> {
        let mode = self.house.desk.settings(place).await.map_err(later)?.mode;
        let letter = sheets::post::letter(place, sheet, mode, self.house.opens_threads(place));
        let earlier = match again {
            true => {
                self.earlier(channel, &sheets::post::heading(sheet.number))
                    .await?
            }
            false => None,
        };
        let message = match earlier {
            Some(message) => message,
            None => self.send(channel, &letter, &sheet.nonce).await?,
        };
        let thread = self.thread(channel, &message, sheet).await;
        Ok(Delivered {
            message: Some(message.id.to_string()),
            thread: thread.map(|id| id.to_string()),
        })
    }

    /// Sends a letter into a channel; in words where pictures are not allowed.
    async fn send(
        &self,
        channel: ChannelId,
        letter: &Letter,
        nonce: &str,
    ) -> Result<Message, ChatError> {
        let http = &self.house.http;
        let sent = channel.send_message(http, letter.message(nonce)).await;
        let sent = match sent {
            Err(error)
                if code(&error) == Some(codes::MISSING_PERMISSIONS) && !letter.files.is_empty() =>
            {
                let mut pages = letter.clone().in_words().pages();
                // The words of a picture may need a second message; the first one is the post.
                let rest = pages.split_off(1);
                let first = match pages.first_mut() {
                    Some(first) => first,
                    None => return Err(failed(&error, channel)),
                };
                if let Some(last) = rest.last() {
                    first.rows.extend(last.rows.clone());
                }
                let sent = channel.send_message(http, first.message(nonce)).await;
                if sent.is_ok() {
                    for (i, page) in rest.iter().enumerate() {
                        let page = Letter::text(page.text.clone());
                        let nonce = format!("{}-{i}", words_nonce(nonce));
                        if let Err(error) = channel.send_message(http, page.message(&nonce)).await {
                            tracing::warn!(%channel, "part of a post is missing: {}", brief(&error));
                        }
                    }
                }
                sent
            }
            sent => sent,
        };
        sent.map_err(|error| failed(&error, channel))
    }

    /// A message of ours that begins with `heading`, among the latest of the channel.
    async fn earlier(
        &self,
        channel: ChannelId,
        heading: &str,
    ) -> Result<Option<Message>, ChatError> {
        let latest = channel
            .messages(&self.house.http, GetMessages::new().limit(100))
            .await
            .map_err(|error| failed(&error, channel))?;
        Ok(latest.into_iter().find(|message| {
            message.author.id == self.house.me && message.content.starts_with(heading)
        }))
    }

    /// The thread for talk; a post does without where it may not be made.
    async fn thread(
        &self,
        channel: ChannelId,
        message: &Message,
        sheet: &PostSheet,
    ) -> Option<ChannelId> {
        // A thread that begins at a message has the message's id.
        let id = ChannelId::new(message.id.get());
        if message.thread.is_some() {
            return Some(id);
        }
        let thread = CreateThread::new(sheets::post::thread_name(sheet));
        match channel
            .create_thread_from_message(&self.house.http, message.id, thread)
            .await
        {
            Ok(thread) => Some(thread.id),
            Err(error) if code(&error) == Some(codes::THREAD_EXISTS) => Some(id),
            Err(error) => {
                tracing::warn!(%channel, "the post has no thread: {}", brief(&error));
                None
            }
        }
    }

    async fn reveal(
        &self,
        place: &Place,
        channel: ChannelId,
        sheet: &RevealSheet,
        again: bool,
    ) -> Result<Delivered, ChatError> {
        let post = &sheet.post;
        let thread = post.thread.as_deref().and_then(|id| id.parse::<u64>().ok());
        let thread = thread.filter(|id| *id > 0).map(ChannelId::new);
        let earlier = match again {
            true => {
                self.earlier(channel, &sheets::reveal::heading(post.number))
                    .await?
            }
            false => None,
        };
        let message = match earlier {
            Some(message) => message,
            None => {
                let mut pages = sheets::reveal::letter(sheet).pages();
                let rest = pages.split_off(1.min(pages.len()));
                let first = pages.pop().unwrap_or_default();
                let message = self
                    .send(channel, &first, &format!("r{}-0", post.post))
                    .await?;
                for (i, page) in rest.iter().enumerate() {
                    let nonce = format!("r{}-{}", post.post, i + 1);
                    let into = thread.unwrap_or(channel);
                    if let Err(error) = into
                        .send_message(&self.house.http, page.message(&nonce))
                        .await
                    {
                        tracing::warn!(%channel, "part of a reveal is missing: {}", brief(&error));
                    }
                }
                message
            }
        };
        self.close(place, channel, sheet).await;
        if let Some(thread) = thread {
            let word = Letter::text(sheets::reveal::THREAD_WORD);
            let word = word.message(&format!("w{}", post.post));
            if let Err(error) = thread.send_message(&self.house.http, word).await {
                tracing::warn!(%thread, "the thread could not be opened for talk: {}", brief(&error));
            }
        }
        Ok(Delivered {
            message: Some(message.id.to_string()),
            thread: None,
        })
    }

    /// The post takes no more answers; its buttons say so.
    async fn close(&self, place: &Place, channel: ChannelId, sheet: &RevealSheet) {
        let Some(message) = sheet
            .post
            .message
            .as_deref()
            .and_then(|id| id.parse::<u64>().ok())
        else {
            return;
        };
        let edit = EditMessage::new()
            .content(words::short(
                &sheets::post::closed(&sheet.post),
                words::MESSAGE,
            ))
            .components(vec![buttons::progress_only(place, sheet.post.post)])
            .allowed_mentions(quiet());
        let edited = channel
            .edit_message(&self.house.http, message.max(1), edit)
            .await;
        if let Err(error) = edited {
            tracing::warn!(%channel, "the closed post keeps its buttons: {}", brief(&error));
        }
    }

    /// Tells every coach; where none can be reached, the words wait for the next coach command.
    async fn tell_coaches(&self, place: &Place, text: &str) -> Result<Delivered, ChatError> {
        let desk = &self.house.desk;
        let group = desk.settings(place).await.map_err(later)?.name;
        let coaches = desk.coaches(place).await.map_err(later)?;
        let letter = Letter::text(format!(
            "**{}**: {}",
            words::plain(&group),
            words::plain(text)
        ));
        let nonce = format!("c{}", desk.now().timestamp_millis());
        let mut reached = false;
        for coach in coaches {
            if let Some(user) = user(&coach.user) {
                reached |= talk::tell(&self.house, user, &letter, &nonce).await;
            }
        }
        if !reached {
            let key = notes_key(place);
            let earlier = desk
                .remembered(&key)
                .await
                .map_err(later)?
                .unwrap_or_default();
            let notes = format!("{earlier}\n{text}");
            // The latest ones matter most; old ones give way.
            let start = notes.char_indices().rev().nth(3_000).map_or(0, |(i, _)| i);
            desk.remember(&key, notes[start..].trim())
                .await
                .map_err(later)?;
        }
        Ok(Delivered::default())
    }

    /// A coach's private answer; one who takes no direct messages finds it under My progress.
    async fn answer_member(&self, told: &Answered) -> Result<Delivered, ChatError> {
        if let Some(user) = user(&told.user) {
            let letter = Letter::text(sheets::verdict::answered(&told.row));
            let at = self.house.desk.now().timestamp() % 100_000;
            let nonce = format!("a{}.{at}", told.row.reply);
            talk::tell(&self.house, user, &letter, &nonce).await;
        }
        Ok(Delivered::default())
    }

    async fn tell_member(
        &self,
        member: &str,
        text: &str,
        sheet: &VerdictSheet,
    ) -> Result<Delivered, ChatError> {
        if let Some(user) = user(member) {
            let mut letter = sheets::verdict::told(sheet);
            if !text.is_empty() {
                let quote = words::plain(&words::short(&text.replace('\n', " "), 200));
                letter.text = format!("On your answer \"{quote}\":\n{}", letter.text);
            }
            let nonce = format!(
                "l{}.{}",
                sheet.reply,
                self.house.desk.now().timestamp() % 100_000
            );
            // One who takes no direct messages sees it under My progress.
            talk::tell(&self.house, user, &letter, &nonce).await;
        }
        Ok(Delivered::default())
    }
}

/// The nonce of further parts: never longer than Discord takes.
fn words_nonce(nonce: &str) -> String {
    nonce.chars().take(20).collect()
}

fn user(id: &str) -> Option<UserId> {
    id.parse::<u64>().ok().filter(|id| *id > 0).map(UserId::new)
}

fn later(error: crate::desk::DeskError) -> ChatError {
    ChatError::Later(error.to_string())
}

/// Why a message could not be put into a channel, in words for the coach.
fn failed(error: &serenity::Error, channel: ChannelId) -> ChatError {
    let where_ = format!("<#{channel}> → Edit Channel → Permissions");
    match (code(error), status(error)) {
        (Some(codes::MISSING_ACCESS), _) => ChatError::Later(format!(
            "I cannot see the channel; give my role \"{}\" under {where_}.",
            permissions::NEEDED[0].name
        )),
        (Some(codes::MISSING_PERMISSIONS), _) => ChatError::Later(format!(
            "I may not write there; give my role \"{}\" under {where_}.",
            permissions::NEEDED[1].name
        )),
        (Some(codes::UNKNOWN_CHANNEL), _) => {
            ChatError::Never("The channel is gone. Run /coach set-up in another one.".into())
        }
        (_, Some(500..) | None) => {
            ChatError::Later("Discord cannot be reached at the moment.".into())
        }
        _ => ChatError::Later(format!("Discord refuses it: {}.", brief(error))),
    }
}
