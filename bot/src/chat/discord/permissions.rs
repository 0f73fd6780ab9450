//! The permissions a group's channel must give, what each is for, and what is done without it.

use poise::serenity_prelude::{self as serenity, Permissions};

use super::text::Group;
use crate::words::Words;

/// A permission, and what goes without it.
pub struct Needed {
    /// The bit.
    pub bit: Permissions,
    /// What happens where it is missing.
    pub without: Group,
}

/// Everything that is made use of.
pub static NEEDED: [Needed; 7] = [
    Needed {
        bit: Permissions::VIEW_CHANNEL,
        without: Group::WithoutViewChannel,
    },
    Needed {
        bit: Permissions::SEND_MESSAGES,
        without: Group::WithoutSendMessages,
    },
    Needed {
        bit: Permissions::ATTACH_FILES,
        without: Group::WithoutAttachFiles,
    },
    Needed {
        bit: Permissions::CREATE_PUBLIC_THREADS,
        without: Group::WithoutCreateThreads,
    },
    Needed {
        bit: Permissions::SEND_MESSAGES_IN_THREADS,
        without: Group::WithoutSendInThreads,
    },
    Needed {
        bit: Permissions::READ_MESSAGE_HISTORY,
        without: Group::WithoutReadHistory,
    },
    Needed {
        bit: Permissions::ADD_REACTIONS,
        without: Group::WithoutAddReactions,
    },
];

/// Wanted where moves written in public are to be taken out of sight.
pub const HIDES: Permissions = Permissions::MANAGE_MESSAGES;

/// What is missing of what is made use of.
pub fn missing(have: Permissions) -> Vec<&'static Needed> {
    NEEDED
        .iter()
        .filter(|needed| !have.contains(needed.bit))
        .collect()
}

/// What is missing in a channel, in words with where to grant it; empty when nothing is.
pub fn in_words(words: &Words, have: Permissions, channel: serenity::ChannelId) -> String {
    let missing = missing(have);
    let channel = format!("<#{channel}>");
    let head = match missing.is_empty() {
        true => Group::PermissionsOneMore { channel },
        false => Group::PermissionsMissing { channel },
    };
    let mut lines = vec![words.say(&head)];
    lines.extend(missing.iter().map(|needed| words.say(&needed.without)));
    if !have.contains(HIDES) {
        lines.push(words.say(&Group::WithoutManageMessages));
    }
    match lines.len() {
        1 => String::new(),
        _ => lines.join("\n"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::english;

    #[test]
    fn each_missing_permission_is_named_with_its_place() {
        let channel = serenity::ChannelId::new(5);
        let all = NEEDED.iter().fold(HIDES, |bits, needed| bits | needed.bit);
        assert_eq!(in_words(english(), all, channel), "");
        let text = in_words(english(), all - Permissions::ATTACH_FILES, channel);
        assert!(
            text.contains("Attach Files")
                && text.contains("<#5>")
                && !text.contains("Send Messages")
        );
        assert_eq!(missing(Permissions::empty()).len(), NEEDED.len());
    }
}
