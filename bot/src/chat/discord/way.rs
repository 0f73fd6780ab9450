//! A post or a reveal on its way: several requests, each made once. Every one that is done is written down
//! before the next is made. After a crash, or trouble at the other end, the errand comes again and goes on
//! at the first step missing; that one may have got through, so it is looked for before it is made.

use std::future::Future;

use poise::serenity_prelude as serenity;
use serenity::{ChannelId, CreateThread, EditMessage, GetMessages, Message, MessageId};

use super::{
    fit,
    house::House,
    letter::Letter,
    oops::{brief, code, codes, status},
    text::Fault,
};
use crate::{
    chat::ChatError,
    desk::{Errand, Sentence, Step},
};

/// How many of the latest messages of a channel are looked through.
pub const LOOK_BACK: u8 = 100;

/// By what a message of ours is known again. Discord does not give a nonce back later.
pub enum KnownBy {
    /// Its first words, in whatever language.
    Headings(Vec<String>),
    /// All of its text.
    Text,
}

/// The way of one errand.
pub struct Way<'a> {
    house: &'a House,
    errand: &'a Errand,
    channel: ChannelId,
    /// Whether the next step that is missing may have got through.
    unsure: bool,
}

impl<'a> Way<'a> {
    /// The way of an errand into a channel; `again` when an earlier attempt at it was made.
    pub fn new(house: &'a House, errand: &'a Errand, channel: ChannelId, again: bool) -> Self {
        Self {
            house,
            errand,
            channel,
            unsure: again,
        }
    }

    /// The group's channel.
    pub fn channel(&self) -> ChannelId {
        self.channel
    }

    /// Whether pictures are known not to be allowed here.
    pub fn in_words(&self) -> bool {
        self.errand.done(Step::InWords).is_some()
    }

    /// Records that pictures are not allowed here.
    pub async fn go_in_words(&self) -> Result<(), ChatError> {
        self.record(Step::InWords, None).await
    }

    /// Sends a message that the errand is nothing without; gives its id.
    ///
    /// # Errors
    /// What Discord said, or that the store cannot be written.
    pub async fn send(
        &mut self,
        step: Step,
        letter: &Letter,
        nonce: &str,
        known_by: KnownBy,
    ) -> Result<MessageId, Failed> {
        if let Some(id) = self.id_of(step) {
            return Ok(MessageId::new(id));
        }
        let found = match std::mem::take(&mut self.unsure) {
            true => self.find(self.channel, letter, &known_by, None).await?,
            false => None,
        };
        let id = match found {
            Some(message) => message.id,
            None => {
                let sent = self
                    .channel
                    .send_message(&self.house.http, letter.message(nonce));
                sent.await?.id
            }
        };
        self.record(step, Some(id.get()))
            .await
            .map_err(Failed::Store)?;
        Ok(id)
    }

    /// Sends a further message, after `first`. Where it may not be sent the errand does without.
    pub async fn send_more(
        &mut self,
        step: Step,
        into: ChannelId,
        letter: &Letter,
        nonce: &str,
        first: MessageId,
    ) -> Result<(), ChatError> {
        if self.errand.done(step).is_some() {
            return Ok(());
        }
        let found = match std::mem::take(&mut self.unsure) {
            true => self.find(into, letter, &KnownBy::Text, Some(first)).await,
            false => Ok(None),
        };
        let sent = match found {
            Ok(Some(message)) => Ok(message.id.get()),
            Ok(None) => {
                let sent = into.send_message(&self.house.http, letter.message(nonce));
                sent.await.map(|message| message.id.get())
            }
            Err(error) => Err(error),
        };
        self.settle(step, sent.map(Some), |why| Fault::PartMissing { why })
            .await?;
        Ok(())
    }

    /// Opens the thread for talk at a message; `None` where there may be none.
    pub async fn open_thread(
        &mut self,
        message: MessageId,
        name: String,
    ) -> Result<Option<ChannelId>, ChatError> {
        if let Some(done) = self.errand.done(Step::Thread) {
            let id = done.reference.as_deref().and_then(|id| id.parse().ok());
            return Ok(id.filter(|id: &u64| *id > 0).map(ChannelId::new));
        }
        // A thread that begins at a message has the message's id.
        let id = message.get();
        let has_thread = async || {
            let message = self.channel.message(&self.house.http, message).await;
            message.is_ok_and(|message| message.thread.is_some())
        };
        let opened = if self.unsure && has_thread().await {
            Ok(id)
        } else {
            let thread = CreateThread::new(name);
            let made = self
                .channel
                .create_thread_from_message(&self.house.http, message, thread)
                .await;
            match made {
                Ok(thread) => Ok(thread.id.get()),
                Err(error) if code(&error) == Some(codes::THREAD_EXISTS) => Ok(id),
                // The request may have been carried out without our hearing of it.
                Err(error) if !refused(&error) && has_thread().await => {
                    tracing::debug!("the thread is there all the same: {}", brief(&error));
                    Ok(id)
                }
                Err(error) => Err(error),
            }
        };
        self.unsure = false;
        let thread = self
            .settle(Step::Thread, opened.map(Some), |why| Fault::ThreadMissing {
                why,
            })
            .await?;
        Ok(thread.map(ChannelId::new))
    }

    /// Changes a message of ours. Doing it twice does no harm.
    pub async fn edit(
        &mut self,
        step: Step,
        message: MessageId,
        edit: EditMessage,
    ) -> Result<(), ChatError> {
        if self.errand.done(step).is_some() {
            return Ok(());
        }
        self.unsure = false;
        let edited = self.channel.edit_message(&self.house.http, message, edit);
        let edited = edited.await.map(|_| None);
        self.settle(step, edited, |why| Fault::ButtonsStay { why })
            .await?;
        Ok(())
    }

    /// The id that came of a step.
    fn id_of(&self, step: Step) -> Option<u64> {
        let reference = self.errand.done(step)?.reference.as_deref()?;
        reference.parse().ok().filter(|id| *id > 0)
    }

    /// A message of ours like `letter`, among the latest of a channel (after `after`).
    fn find<'b>(
        &'b self,
        channel: ChannelId,
        letter: &Letter,
        known_by: &KnownBy,
        after: Option<MessageId>,
    ) -> impl Future<Output = serenity::Result<Option<Message>>> + use<'a, 'b> {
        let me = self.house.me;
        let text = fit::short(&letter.text, fit::MESSAGE).trim().to_owned();
        let headings = match known_by {
            KnownBy::Headings(headings) => Some(headings.clone()),
            KnownBy::Text => None,
        };
        let latest = GetMessages::new().limit(LOOK_BACK);
        async move {
            let latest = channel.messages(&self.house.http, latest).await?;
            Ok(latest.into_iter().find(|message| {
                message.author.id == me
                    && after.is_none_or(|after| message.id > after)
                    && match &headings {
                        Some(headings) => headings
                            .iter()
                            .any(|heading| message.content.starts_with(heading)),
                        None => message.content.trim() == text,
                    }
            }))
        }
    }

    /// Records a step that the errand can do without: done, or refused for good. Trouble that may pass
    /// lets the errand come again.
    async fn settle(
        &self,
        step: Step,
        outcome: serenity::Result<Option<u64>>,
        without: fn(String) -> Fault,
    ) -> Result<Option<u64>, ChatError> {
        let came = match outcome {
            Ok(came) => came,
            Err(error) if refused(&error) => {
                let fault = without(brief(&error));
                tracing::warn!(channel = %self.channel, ?fault, "a step cannot be done");
                None
            }
            Err(error) => {
                return Err(ChatError::Later(Sentence::of(without(brief(&error)))));
            }
        };
        self.record(step, came).await?;
        Ok(came)
    }

    async fn record(&self, step: Step, came: Option<u64>) -> Result<(), ChatError> {
        let reference = came.map(|id| id.to_string());
        let recorded = self
            .house
            .desk
            .rounds()
            .step_done(self.errand, step, reference.as_deref());
        recorded.await.map_err(|error| ChatError::of_desk(&error))
    }
}

/// Why the message that an errand is nothing without could not be sent.
pub enum Failed {
    /// Discord says why.
    Discord(serenity::Error),
    /// It is sent, and that could not be written down.
    Store(ChatError),
}

impl From<serenity::Error> for Failed {
    fn from(error: serenity::Error) -> Self {
        Self::Discord(error)
    }
}

/// Whether Discord has answered that it will not, however often it is asked.
pub fn refused(error: &serenity::Error) -> bool {
    matches!(status(error), Some(400..500)) && !matches!(status(error), Some(401 | 408 | 429))
}
