//! What stands in pictures, and the words that replace them, in the reader's language.

use crate::{
    desk::Picture,
    diagram::{Text, Tongue},
    words::{Words, words},
};

/// What a language says of a picture: its BCP 47 tag, and the text.
pub fn say(tag: &str, text: &Text) -> String {
    words(tag).say(text)
}

/// The language for pictures.
pub fn tongue(words: &Words) -> Tongue {
    Tongue::new(words.tag(), say)
}

/// The words that replace a picture.
pub fn alt(picture: &Picture, words: &Words) -> String {
    picture.alt.in_words(&tongue(words))
}
