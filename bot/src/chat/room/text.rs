//! What the room itself says to a person, as facts: what could not be done, and what was. The messages are in
//! `room-trouble.ftl`; what the pages say stands in `room.ftl` and `room-coach.ftl`.

// What a fact says stands beside its name; its values are named after what they are.
#![allow(missing_docs)]

use serde::Serialize;

use crate::chat::common::text::Theirs;

/// A sentence or two for whoever asked.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub(super) enum Text {
    // At the door.
    /// No link was followed, or one that holds no longer.
    NoInvitation,
    /// A coach has removed the member.
    RemovedFromGroup,
    /// The members' page needs a name first.
    NamelessMember,
    /// The coach's page needs a name first.
    NamelessCoach,
    /// It takes the coach's link.
    NotByCoachLink,
    /// The request names a host that is not the room's.
    StrangeHost,
    /// The request comes from another site.
    StrangeOrigin,

    // Names and devices.
    /// Nothing was written for a name.
    NameEmpty,
    /// The same, for somebody else's name.
    NewNameEmpty,
    /// The name could tell a move of an open position.
    NameTellsMove,
    /// A code for another device that does not hold.
    CodeNotRight,
    /// Guessing is stopped for a while.
    TooManyCodes,
    /// The browser is a member's already.
    BrowserIsTaken { name: Theirs },

    /// The bot does not speak it.
    LanguageUnknown { asked: Theirs },

    // What was sent.
    /// Nothing.
    MessageEmpty,
    /// More than a reply may have.
    MessageTooLarge,
    /// More than a request may have.
    RequestTooLarge,
    /// It is no request of the pages'.
    RequestUnreadable { detail: String },
    /// It ended early.
    RequestBrokeOff,
    /// Faster than people write.
    TooFast,

    // Checking files.
    /// Nothing is in it.
    FileEmpty { name: Theirs },
    /// One file at a time.
    CheckGoingOn,
    /// It ended early.
    CheckBrokeOff,
    /// What there was to choose is there no longer.
    OtherVersionGone,
    /// No day and time.
    TimeUnreadable { written: Theirs },

    // The rest.
    /// An address that leads nowhere.
    NothingHere,
    /// A fault of the program's.
    FaultInside,
    /// The machine gives no random numbers.
    NoRandomNumbers,
    /// A member has erased everything.
    AllErased,

    // For whoever runs the bot.
    /// The settings close the room.
    RoomNotOpen,
    /// No socket at this address.
    CannotListen { address: String, why: Theirs },
    /// The public address is no web address.
    NotAWebAddress { address: Theirs },
    /// The machine gives no random numbers, and says why.
    NoSecretLinks { why: Theirs },
    /// The web server ended.
    ServerEnded { why: Theirs },
    /// Where members enter.
    MembersEnter { link: String },
    /// Where the coach enters.
    CoachEnters { link: String },
}
