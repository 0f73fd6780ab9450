//! A message on its way out: text, pictures with their words, buttons. Laid out once, sent by whichever
//! of Discord's ways fits: into a channel, as the answer to an interaction, as an edit.

use poise::serenity_prelude as serenity;
use serenity::{
    CreateActionRow, CreateAllowedMentions, CreateAttachment, CreateMessage, EditAttachments,
    EditInteractionResponse, MessageFlags, Nonce,
};

use super::fit;
use crate::{
    chat::pictures,
    desk::{Picture, PictureKind, Place, ReplyId},
    words::Words,
};

/// A message.
#[derive(Clone, Default)]
pub struct Letter {
    /// Text; cut to Discord's limit at the last moment, so split long ones with [`Letter::pages`].
    pub text: String,
    /// Files.
    pub files: Vec<Enclosure>,
    /// Rows of buttons and menus.
    pub rows: Vec<CreateActionRow>,
    /// Whether an edit leaves the files that are there.
    pub keeps_files: bool,
    /// The reply whose verdict it tells its writer.
    pub tells: Option<ReplyId>,
    /// The notes to the coaches that it holds, up to that id.
    pub notes: Option<(Place, i64)>,
}

/// A file in a letter.
#[derive(Clone)]
pub struct Enclosure {
    /// File name; says nothing of what is inside.
    pub name: String,
    /// Content.
    pub bytes: Vec<u8>,
    /// What it shows, for those who do not see it.
    pub alt: Option<String>,
}

impl Enclosure {
    /// A picture under a neutral name, `base.png` or `base.gif`.
    pub fn picture(base: &str, picture: &Picture, words: &Words) -> Self {
        let ending = match picture.kind {
            PictureKind::Png => "png",
            PictureKind::Gif => "gif",
        };
        Self {
            name: format!("{base}.{ending}"),
            bytes: picture.bytes.clone(),
            alt: Some(pictures::alt(picture, words)),
        }
    }

    fn attachment(&self) -> CreateAttachment {
        let file = CreateAttachment::bytes(self.bytes.clone(), self.name.clone());
        match &self.alt {
            Some(alt) => file.description(alt.clone()),
            None => file,
        }
    }
}

/// Nobody is notified, whatever the text says.
pub fn quiet() -> CreateAllowedMentions {
    CreateAllowedMentions::new()
}

impl Letter {
    /// Text only.
    pub fn text(text: impl Into<String>) -> Self {
        Self {
            text: text.into(),
            ..Self::default()
        }
    }

    /// With a picture.
    pub fn picture(mut self, base: &str, picture: &Picture, words: &Words) -> Self {
        self.files.push(Enclosure::picture(base, picture, words));
        self
    }

    /// With a file of text.
    pub fn file(mut self, name: &str, bytes: Vec<u8>) -> Self {
        self.files.push(Enclosure {
            name: name.to_owned(),
            bytes,
            alt: None,
        });
        self
    }

    /// With a row of buttons or a menu.
    pub fn row(mut self, row: CreateActionRow) -> Self {
        self.rows.push(row);
        self
    }

    /// As many letters as the text needs; files go with the first, buttons with the last.
    pub fn pages(self) -> Vec<Self> {
        let texts = fit::pages(&self.text, fit::MESSAGE);
        if texts.len() <= 1 {
            return vec![self];
        }
        let last = texts.len() - 1;
        let (mut files, mut rows) = (Some(self.files), Some(self.rows));
        texts
            .into_iter()
            .enumerate()
            .map(|(i, text)| Self {
                text,
                files: files.take().unwrap_or_default(),
                rows: if i == last {
                    rows.take().unwrap_or_default()
                } else {
                    Vec::new()
                },
                keeps_files: self.keeps_files,
                tells: None,
                notes: None,
            })
            .collect()
    }

    /// The pictures' words put into the text, where pictures may not be sent.
    pub fn in_words(mut self) -> Self {
        for file in std::mem::take(&mut self.files) {
            if let Some(alt) = file.alt {
                self.text.push_str("\n\n");
                self.text.push_str(&fit::plain(&alt));
            }
        }
        self
    }

    fn content(&self) -> String {
        fit::short(&self.text, fit::MESSAGE)
    }

    fn attachments(&self) -> impl Iterator<Item = CreateAttachment> + '_ {
        self.files.iter().map(Enclosure::attachment)
    }

    /// A new message, sent once: under the same nonce Discord makes no second one.
    pub fn message(&self, nonce: &str) -> CreateMessage {
        CreateMessage::new()
            .content(self.content())
            .add_files(self.attachments())
            .components(self.rows.clone())
            .allowed_mentions(quiet())
            .flags(MessageFlags::SUPPRESS_EMBEDS)
            .nonce(Nonce::String(nonce.to_owned()))
            .enforce_nonce(true)
    }

    /// The text that takes the place of a promised answer; earlier files go, unless they are kept.
    pub fn edit(&self) -> EditInteractionResponse {
        let edit = EditInteractionResponse::new()
            .content(self.content())
            .components(self.rows.clone())
            .allowed_mentions(quiet());
        if self.keeps_files {
            return edit;
        }
        let files = self
            .attachments()
            .fold(EditAttachments::new(), EditAttachments::add);
        edit.attachments(files)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn files_go_with_the_first_page_and_buttons_with_the_last() {
        let row = CreateActionRow::Buttons(Vec::new());
        let letter = Letter::text("word ".repeat(900))
            .file("a.txt", vec![1])
            .row(row);
        let pages = letter.pages();
        assert_eq!(pages.len(), 3);
        assert_eq!(
            pages.iter().map(|p| p.files.len()).collect::<Vec<_>>(),
            [1, 0, 0]
        );
        assert_eq!(
            pages.iter().map(|p| p.rows.len()).collect::<Vec<_>>(),
            [0, 0, 1]
        );
        assert!(pages.iter().all(|p| p.text.chars().count() <= fit::MESSAGE));
    }

    #[test]
    fn every_way_of_sending_notifies_nobody() {
        let letter = Letter::text("@everyone <@1>");
        for sent in [
            serde_json::to_value(letter.message("n")).expect("json"),
            serde_json::to_value(letter.edit()).expect("json"),
        ] {
            assert_eq!(
                sent["allowed_mentions"]["parse"],
                serde_json::json!([]),
                "{sent}"
            );
        }
    }
}
