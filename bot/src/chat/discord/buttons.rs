//! Buttons and menus: what they are called and what they carry. An id is `verb:channel:number…`, where
//! the channel is the group's, so that a button works in a direct message too.

use poise::serenity_prelude as serenity;
use serenity::{ButtonStyle, CreateActionRow, CreateButton};

use super::words;
use crate::desk::{Place, Verdict, VerdictSheet};

/// What a button does, read back from its id.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pressed {
    /// The verb.
    pub verb: String,
    /// The group's channel.
    pub channel: u64,
    /// What it is about.
    pub about: i64,
    /// What else it carries.
    pub more: Option<String>,
}

/// An id.
pub fn id(verb: &str, place: &Place, about: i64) -> String {
    format!("{verb}:{}:{about}", place.channel)
}

/// Reads an id; `None` for one that is not ours.
pub fn read(id: &str) -> Option<Pressed> {
    let mut parts = id.splitn(4, ':');
    Some(Pressed {
        verb: parts.next()?.to_owned(),
        channel: parts.next()?.parse().ok()?,
        about: parts.next()?.parse().ok()?,
        more: parts.next().map(str::to_owned),
    })
}

/// A button.
pub fn button(id: String, label: &str, style: ButtonStyle) -> CreateButton {
    CreateButton::new(id)
        .label(words::short(label, words::LABEL))
        .style(style)
}

/// Under an open post.
pub fn under_post(place: &Place, post: i64) -> CreateActionRow {
    CreateActionRow::Buttons(vec![
        button(id("answer", place, post), "Answer", ButtonStyle::Primary),
        button(id("hint", place, post), "Hint", ButtonStyle::Secondary),
        button(
            id("mine", place, post),
            "My progress",
            ButtonStyle::Secondary,
        ),
    ])
}

/// The one that stays when a post is closed.
pub fn progress_only(place: &Place, post: i64) -> CreateActionRow {
    let progress = button(
        id("mine", place, post),
        "My progress",
        ButtonStyle::Secondary,
    );
    CreateActionRow::Buttons(vec![progress])
}

/// Takes a hint; the label says what it costs.
pub fn take_hint(place: &Place, post: i64, what: &str, price: &str) -> CreateButton {
    let label = match price {
        "" => what.to_owned(),
        price => format!("{what} ({price})"),
    };
    button(id("hint-take", place, post), &label, ButtonStyle::Secondary)
}

/// Under a verdict, as far as there is something left to do.
pub fn under_verdict(place: &Place, sheet: &VerdictSheet) -> Option<CreateActionRow> {
    let again = match sheet.verdict {
        Verdict::OnTheWay if sheet.your_move => "Next move",
        Verdict::Wrong | Verdict::Illegal | Verdict::Unclear | Verdict::Unreadable => {
            "Answer again"
        }
        Verdict::OnTheWay | Verdict::Solved => return None,
    };
    if sheet.over {
        return None;
    }
    Some(CreateActionRow::Buttons(vec![
        button(id("answer", place, sheet.post), again, ButtonStyle::Primary),
        take_hint(place, sheet.post, "Hint", &sheet.hint_label),
        button(
            id("quit", place, sheet.post),
            "Give up",
            ButtonStyle::Secondary,
        ),
    ]))
}

/// The ways a doubtful reply may be meant, a button each. An id names the reply and the reading's place,
/// from which the reading is found again.
pub fn readings(place: &Place, sheet: &VerdictSheet) -> Vec<CreateActionRow> {
    let buttons: Vec<CreateButton> = sheet
        .readings
        .iter()
        .enumerate()
        .map(|(i, line)| {
            let id = format!("{}:{i}", id("mean", place, sheet.reply));
            button(id, &format!("I mean {line}"), ButtonStyle::Primary)
        })
        .collect();
    // Five rows are allowed, and one is for what else can be done.
    buttons
        .chunks(5)
        .take(4)
        .map(|five| CreateActionRow::Buttons(five.to_vec()))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chat::discord::house::place;

    #[test]
    fn ids_are_read_back_and_fit() {
        let place = place(serenity::ChannelId::new(u64::MAX));
        let id = id("answer", &place, i64::MAX);
        assert!(id.len() <= 100);
        let pressed = read(&id).expect("ours");
        assert_eq!(
            (pressed.verb.as_str(), pressed.channel, pressed.about),
            ("answer", u64::MAX, i64::MAX)
        );
        assert_eq!(read("somebody else's"), None);
    }
}
