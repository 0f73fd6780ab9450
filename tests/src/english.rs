//! What the judge says, in English sentences.

use sealed_move_chess::judge::Judgement;
use sealed_move_words::english;

/// The sentences of a judgement.
pub trait InEnglish {
    /// The whole answer to the member.
    fn message(&self) -> String;
    /// The reason, without a full stop.
    fn reason(&self) -> String;
}

impl InEnglish for Judgement {
    fn message(&self) -> String {
        english().tell(&self.said)
    }

    fn reason(&self) -> String {
        english().say(&self.why)
    }
}
