//! How sheets look in a log: ids and kinds only. What a sheet says of a solution, and what a member
//! wrote, is for the eyes it was made for.

use std::fmt::{Debug, Formatter, Result};

use super::{ErrandKind, PostSheet, ReplyRow, RevealSheet, VerdictSheet};

impl Debug for PostSheet {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        f.debug_struct("PostSheet")
            .field("post", &self.post)
            .field("number", &self.number)
            .field("nonce", &self.nonce)
            .field("kind", &self.content.kind())
            .field("closes_at", &self.closes_at)
            .finish_non_exhaustive()
    }
}

impl Debug for RevealSheet {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        f.debug_struct("RevealSheet")
            .field("post", &self.post)
            .finish_non_exhaustive()
    }
}

impl Debug for VerdictSheet {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        f.debug_struct("VerdictSheet")
            .field("reply", &self.reply)
            .field("post", &self.post)
            .finish_non_exhaustive()
    }
}

impl Debug for ReplyRow {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        f.debug_struct("ReplyRow")
            .field("reply", &self.reply)
            .finish_non_exhaustive()
    }
}

impl Debug for ErrandKind {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        match self {
            Self::Post { sheet, again } => f
                .debug_struct("Post")
                .field("sheet", sheet)
                .field("again", again)
                .finish(),
            Self::Reveal { sheet, again } => f
                .debug_struct("Reveal")
                .field("sheet", sheet)
                .field("again", again)
                .finish(),
            Self::TellCoach(_) => f.write_str("TellCoach"),
            Self::AnswerMember(told) => f
                .debug_struct("AnswerMember")
                .field("reply", &told.row.reply)
                .finish_non_exhaustive(),
            Self::AskLeave(asked) => f
                .debug_struct("AskLeave")
                .field("reply", &asked.reply)
                .finish_non_exhaustive(),
            Self::Example(sheet) => f
                .debug_struct("Example")
                .field("reply", &sheet.reply)
                .finish_non_exhaustive(),
            Self::TellMember { sheet, .. } => f
                .debug_struct("TellMember")
                .field("sheet", sheet)
                .finish_non_exhaustive(),
        }
    }
}
