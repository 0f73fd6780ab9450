//! The permissions a group's channel must give, what each is for, and what is done without it.

use poise::serenity_prelude::{self as serenity, Permissions};

/// A permission, its name in Discord's own settings, and what goes without it.
pub struct Needed {
    /// The bit.
    pub bit: Permissions,
    /// Its name.
    pub name: &'static str,
    /// What happens where it is missing.
    pub without: &'static str,
}

/// Everything that is made use of.
pub const NEEDED: [Needed; 7] = [
    Needed {
        bit: Permissions::VIEW_CHANNEL,
        name: "View Channel",
        without: "I cannot post, and hear no answers but by command and direct message",
    },
    Needed {
        bit: Permissions::SEND_MESSAGES,
        name: "Send Messages",
        without: "I cannot post",
    },
    Needed {
        bit: Permissions::ATTACH_FILES,
        name: "Attach Files",
        without: "positions come in words, without a diagram",
    },
    Needed {
        bit: Permissions::CREATE_PUBLIC_THREADS,
        name: "Create Public Threads",
        without: "posts come without a thread for talk",
    },
    Needed {
        bit: Permissions::SEND_MESSAGES_IN_THREADS,
        name: "Send Messages in Threads",
        without: "I say nothing in the threads",
    },
    Needed {
        bit: Permissions::READ_MESSAGE_HISTORY,
        name: "Read Message History",
        without: "answers written while I was away are missed",
    },
    Needed {
        bit: Permissions::ADD_REACTIONS,
        name: "Add Reactions",
        without: "I cannot show that an answer has been taken where its sender takes no direct messages",
    },
];

/// Wanted where moves written in public are to be taken out of sight.
pub const HIDES: Needed = Needed {
    bit: Permissions::MANAGE_MESSAGES,
    name: "Manage Messages",
    without: "moves that members write in public stay where everyone sees them",
};

/// What is missing of what is made use of.
pub fn missing(have: Permissions) -> Vec<&'static Needed> {
    NEEDED
        .iter()
        .filter(|needed| !have.contains(needed.bit))
        .collect()
}

/// What is missing in a channel, in words with where to grant it; empty when nothing is.
pub fn in_words(have: Permissions, channel: serenity::ChannelId) -> String {
    let missing = missing(have);
    let mut lines: Vec<String> = missing
        .iter()
        .map(|needed| format!("- **{}**: without it {}.", needed.name, needed.without))
        .collect();
    if !have.contains(HIDES.bit) {
        lines.push(format!(
            "- **{}**, only if you want it: without it {}.",
            HIDES.name, HIDES.without
        ));
    }
    if lines.is_empty() {
        return String::new();
    }
    let head = if missing.is_empty() {
        "I have all I need here. One more permission can be granted"
    } else {
        "I am missing permissions here. They are granted"
    };
    format!(
        "{head} under <#{channel}> → Edit Channel → Permissions → my role:\n{}",
        lines.join("\n")
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_missing_permission_is_named_with_its_place() {
        let channel = serenity::ChannelId::new(5);
        let all = NEEDED
            .iter()
            .fold(HIDES.bit, |bits, needed| bits | needed.bit);
        assert_eq!(in_words(all, channel), "");
        let text = in_words(all - Permissions::ATTACH_FILES, channel);
        assert!(
            text.contains("Attach Files")
                && text.contains("<#5>")
                && !text.contains("Send Messages")
        );
        assert_eq!(missing(Permissions::empty()).len(), NEEDED.len());
    }
}
