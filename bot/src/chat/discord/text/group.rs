//! What a coach is told of the group: setting it up, its settings, permissions, coaches and members.

use chrono::Weekday;
use serde::Serialize;

use super::{And, Decimal, Moment, Plain};
use crate::{
    chat::common::text::LanguageName,
    desk::{Deed, Defences, Mode, Style},
};

/// A sentence or a few, or a button.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Group {
    // Setting up.
    CoachesOnly,
    SetUpMayNot,
    SetUpNoChannel,
    NoName,
    SetUp {
        name: Plain,
        channel: String,
    },
    SetUpBot,
    CoachesToo {
        name: Plain,
    },
    WithoutContent,
    SetUpNext,

    // Settings.
    SettingsAre,
    SettingsChanged,
    GoesOut {
        days: Days,
        times: And<String>,
        zone: String,
        open: OpenFor,
    },
    RepliesAre {
        mode: Mode,
    },
    PointsTournament {
        hint: Decimal,
    },
    PointsFree,
    PointsEach {
        each: Decimal,
    },
    PointsClub {
        wrong: Decimal,
        hint: Decimal,
    },
    DefencesAre {
        defences: Defences,
    },
    LettersAndLook {
        language: LanguageName,
        style: Style,
    },
    NoZone {
        written: Plain,
    },
    NoTimeOfDay {
        written: Plain,
    },
    NoDays {
        written: Plain,
    },
    NoSpan {
        written: Plain,
    },

    // Permissions, by their names in Discord's own settings.
    PermissionsAll,
    PermissionsMissing {
        channel: String,
    },
    PermissionsOneMore {
        channel: String,
    },
    WithoutViewChannel,
    WithoutSendMessages,
    WithoutAttachFiles,
    WithoutCreateThreads,
    WithoutSendInThreads,
    WithoutReadHistory,
    WithoutAddReactions,
    WithoutManageMessages,

    // Coaches and members.
    BotCannotCoach,
    CoachAdded {
        name: Plain,
    },
    CoachRemoved {
        name: Plain,
    },
    MembersHead,
    MemberRow {
        name: Plain,
        answers: u32,
    },
    MemberRowCoach {
        name: Plain,
        answers: u32,
    },
    MemberRowRemoved {
        name: Plain,
        answers: u32,
        since: Moment,
    },
    DeedsHead,
    DeedWord {
        deed: Deed,
    },
    ErasedCoach,
    MemberRemoved {
        name: Plain,
    },
    MemberBack {
        name: Plain,
    },
    MembersMerged {
        name: Plain,
    },
    KeptOfMember {
        name: Plain,
    },
    EraseMemberAsked {
        name: Plain,
    },
    ErasedMember,
}

/// Days on which positions go out, part of a sentence.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
// A variant is a message's name, and these stand among all others.
#[allow(clippy::enum_variant_names)]
pub enum Days {
    DaysEvery,
    DaysNone,
    DaysFromTo { first: Day, last: Day },
    DaysOn { days: And<Day> },
}

/// A day of the week.
#[derive(Clone, Copy, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Day {
    Monday,
    Tuesday,
    Wednesday,
    Thursday,
    Friday,
    Saturday,
    Sunday,
}

impl From<Weekday> for Day {
    fn from(day: Weekday) -> Self {
        match day {
            Weekday::Mon => Self::Monday,
            Weekday::Tue => Self::Tuesday,
            Weekday::Wed => Self::Wednesday,
            Weekday::Thu => Self::Thursday,
            Weekday::Fri => Self::Friday,
            Weekday::Sat => Self::Saturday,
            Weekday::Sun => Self::Sunday,
        }
    }
}

/// How long positions stay open, part of a sentence.
#[derive(Clone, Copy, Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
// A variant is a message's name, and these stand among all others.
#[allow(clippy::enum_variant_names)]
pub enum OpenFor {
    OpenDays { number: u32 },
    OpenHours { number: u32 },
    OpenMinutes { number: u32 },
}
