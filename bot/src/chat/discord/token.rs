//! The bot's token: read from the environment or a file, and shown to no one.

use std::path::PathBuf;

use super::text::{Fault, Plain};

/// A bot's token. Shows itself as dots, so that it cannot slip into a log.
#[derive(Clone, PartialEq, Eq)]
pub struct Token(String);

impl std::fmt::Debug for Token {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Token(…)")
    }
}

/// Why a token could not be read.
#[derive(Debug, thiserror::Error)]
pub enum TokenError {
    /// The file cannot be read.
    #[error("{path} cannot be read: {error}")]
    File {
        /// The file.
        path: PathBuf,
        /// Why.
        error: std::io::Error,
    },
    /// There is something, and it is no token.
    #[error("no token in {0:?}")]
    NoToken(Source),
}

/// Where a token is looked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Source {
    /// The environment variable itself.
    Variable,
    /// The file that another one names.
    File,
}

impl TokenError {
    /// What is said of it to whoever runs the bot.
    pub(super) fn fault(&self) -> Fault {
        match self {
            Self::File { path, error } => Fault::TokenFileUnreadable {
                path: Plain::already(path.display().to_string()),
                why: Plain::already(error.to_string()),
            },
            Self::NoToken(Source::Variable) => Fault::TokenUnfit,
            Self::NoToken(Source::File) => Fault::TokenFileUnfit,
        }
    }
}

impl Token {
    /// The token from `DISCORD_TOKEN`, else from the file that `DISCORD_TOKEN_FILE` names; `None` where
    /// neither is set, or is set to nothing.
    ///
    /// # Errors
    /// When the file cannot be read, or what is found is no token.
    pub fn from_environment() -> Result<Option<Self>, TokenError> {
        if let Some(text) = std::env::var_os("DISCORD_TOKEN").filter(|text| !text.is_empty()) {
            return match text.to_str().and_then(Self::parse) {
                Some(token) => Ok(Some(token)),
                None => Err(TokenError::NoToken(Source::Variable)),
            };
        }
        match std::env::var_os("DISCORD_TOKEN_FILE").filter(|path| !path.is_empty()) {
            Some(path) => Self::from_file(path.into()).map(Some),
            None => Ok(None),
        }
    }

    /// Whether the environment says where a token is, good or not.
    pub fn is_set() -> bool {
        ["DISCORD_TOKEN", "DISCORD_TOKEN_FILE"]
            .iter()
            .any(|name| std::env::var_os(name).is_some_and(|text| !text.is_empty()))
    }

    fn from_file(path: PathBuf) -> Result<Self, TokenError> {
        let text =
            std::fs::read_to_string(&path).map_err(|error| TokenError::File { path, error })?;
        Self::parse(&text).ok_or(TokenError::NoToken(Source::File))
    }

    /// A token out of a text, with or without `Bot ` before it.
    pub fn parse(text: &str) -> Option<Self> {
        let text = text.trim();
        let text = text.strip_prefix("Bot ").unwrap_or(text).trim();
        let fits = (20..=200).contains(&text.len())
            && text
                .bytes()
                .all(|b| b.is_ascii_alphanumeric() || b".-_=".contains(&b));
        fits.then(|| Self(text.to_owned()))
    }

    /// The token itself, for the client alone.
    pub(super) fn reveal(&self) -> &str {
        &self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tokens_are_read_and_never_shown() {
        let text = "not-a-real-token.made-up.for-this-test_only";
        let token = Token::parse(&format!(" Bot {text}\n")).expect("read");
        assert_eq!(token.reveal(), text);
        assert!(!format!("{token:?}").contains("made-up"));
        for wrong in [
            "",
            "short",
            "two words are no token at all",
            "with\nline.break.in.the.middle",
        ] {
            assert!(Token::parse(wrong).is_none(), "{wrong}");
        }
    }

    #[test]
    fn a_file_that_is_not_there_is_named() {
        let error = Token::from_file("/no/such/file".into()).expect_err("missing");
        assert!(error.to_string().contains("/no/such/file"));
    }
}
