//! Buttons, menus and forms: which press does what.

use poise::serenity_prelude as serenity;
use serenity::{
    ActionRowComponent, ButtonStyle, ChannelId, ComponentInteraction, ComponentInteractionDataKind,
    CreateActionRow, CreateInputText, CreateModal, InputTextStyle, ModalInteraction,
};

use super::{
    buttons::{self, Pressed},
    commands::{answers, study},
    held,
    house::{self, House},
    letter::Letter,
    oops::{Answer, said},
    private::{self, Asked},
    sheets, words,
};
use crate::desk::{Person, Place, SameChoice, Verdict};

/// The most characters an answer's field takes; Discord's own bound.
const LONGEST_ANSWER: u16 = 4_000;

/// The most characters of a coach's private answer: the desk's own bound.
const LONGEST_PRIVATE: u16 = 1_500;

/// A button or a menu.
pub async fn pressed(house: &House, press: &ComponentInteraction) {
    let Some(pressed) = buttons::read(&press.data.custom_id) else {
        return;
    };
    let asked = Asked::Press(press);
    if pressed.verb == "page" {
        // Reports are in memory; their ids carry a report's number where others carry a channel.
        return private::in_place(house, press, turn_page(house, asked, &pressed)).await;
    }
    if pressed.verb == "same" {
        return private::in_place(house, press, settle_same(house, asked, &pressed)).await;
    }
    if pressed.verb == "part" {
        let parts = house
            .parts(pressed.channel)
            .filter(|parts| parts.user == asked.user().id);
        let at = pressed.about.max(0) as usize;
        return private::in_place(house, press, async {
            match parts {
                Some(parts) => Ok(private::part(&(pressed.channel, parts), at)),
                None => said("The rest of this is put away; please ask for it once more."),
            }
        })
        .await;
    }
    let place = house::place(ChannelId::new(pressed.channel.max(1)));
    let about = pressed.about;
    match pressed.verb.as_str() {
        "answer" => private::form(house, asked, answer_form(&place, about)).await,
        "words" => {
            private::form(
                house,
                asked,
                words_form(&place, about, pressed.more.as_deref()),
            )
            .await;
        }
        "reply-to" => private::form(house, asked, private_form(&place, about)).await,
        "no-answer" => {
            private::in_place(house, press, async {
                let coach = asked.person(house, &place).await;
                house.desk.no_answer_needed(&place, &coach, about).await?;
                answers::open(house, &place, &coach, 0).await
            })
            .await;
        }
        "erase-member" => {
            private::in_place(house, press, async {
                let coach = asked.person(house, &place).await;
                house.desk.erase_member(&place, &coach, about).await?;
                Ok(Letter::text(
                    "Everything that was kept of them in this group is erased.",
                ))
            })
            .await;
        }
        "hint" => {
            private::privately(house, asked, async {
                let person = asked.person(house, &place).await;
                study::hint_offer(house, &place, &person, about).await
            })
            .await;
        }
        "hint-take" => {
            private::privately(house, asked, async {
                let person = asked.person(house, &place).await;
                study::hint(house, &place, &person, about).await
            })
            .await;
        }
        "mine" => {
            private::privately(house, asked, async {
                let person = asked.person(house, &place).await;
                study::standing(house, &place, &person, Some(about)).await
            })
            .await;
        }
        "board" => {
            private::privately(house, asked, async {
                let person = asked.person(house, &place).await;
                study::own_board(house, &place, &person, about).await
            })
            .await;
        }
        "quit" => private::privately(house, asked, async { Ok(really_quit(&place, about)) }).await,
        "quit-yes" => {
            private::in_place(house, press, async {
                let person = asked.person(house, &place).await;
                study::gave_up(house, &place, &person, about).await
            })
            .await;
        }
        "erase-yes" => {
            private::in_place(house, press, async {
                let person = asked.person(house, &place).await;
                study::erased(house, &place, &person).await
            })
            .await;
        }
        "queue" | "queue-anyway" | "queue-again" | "queue-again-anyway" => {
            private::privately(house, asked, async {
                let coach = asked.person(house, &place).await;
                let (desk, anyway) = (&house.desk, pressed.verb.ends_with("-anyway"));
                match pressed.verb.starts_with("queue-again") {
                    true => desk.enqueue_again(&place, &coach, about, anyway).await?,
                    false => desk.enqueue(&place, &coach, about, anyway).await?,
                };
                week(house, &place, &coach, None).await
            })
            .await;
        }
        "homework" => {
            private::in_place(house, press, async {
                let coach = asked.person(house, &place).await;
                answers::open(house, &place, &coach, about).await
            })
            .await;
        }
        "to" => {
            private::in_place(house, press, async {
                let user = asked.user();
                let Some((message, text)) = house.take_waiting(user.id) else {
                    return said(
                        "That message is gone from my memory; please write your answer again.",
                    );
                };
                let person = asked.person(house, &place).await;
                let source = message.to_string();
                study::answered(house, &place, &person, about, &source, &text).await
            })
            .await;
        }
        "mean" => {
            private::in_place(house, press, async {
                let person = asked.person(house, &place).await;
                let reading = pressed.more.as_deref().and_then(|more| more.parse().ok());
                let (sheet, text) = house
                    .desk
                    .mean(&place, &person, about, reading.unwrap_or(usize::MAX))
                    .await?;
                let mut letter = sheets::verdict::letter(&place, &sheet);
                letter.text = format!("\"{}\"\n{}", words::plain(&text), letter.text);
                Ok(letter)
            })
            .await;
        }
        "held-look" => {
            private::privately(house, asked, async {
                held::look(house, asked.user().id, about)
            })
            .await;
        }
        verb @ ("held-answer" | "held-say" | "held-drop") => {
            private::in_place(house, press, async {
                let person = asked.person(house, &place).await;
                let post = pressed.more.as_deref().and_then(|more| more.parse().ok());
                held::chosen(house, asked.user().id, verb, about, post, &person).await
            })
            .await;
        }
        verb if verb.starts_with("week-") => {
            private::in_place(house, press, async {
                let coach = asked.person(house, &place).await;
                week_press(house, &place, &coach, verb, about, press).await
            })
            .await;
        }
        _ => {}
    }
}

/// A form.
pub async fn sent(house: &House, form: &ModalInteraction) {
    let Some(pressed) = buttons::read(&form.data.custom_id) else {
        return;
    };
    let place = house::place(ChannelId::new(pressed.channel.max(1)));
    let asked = Asked::Form(form);
    private::privately(house, asked, async {
        let person = asked.person(house, &place).await;
        match pressed.verb.as_str() {
            "answer" => {
                let text = field(form, "moves");
                study::answered(
                    house,
                    &place,
                    &person,
                    pressed.about,
                    &asked.id().to_string(),
                    &text,
                )
                .await
            }
            "words" => {
                let verdict = match pressed.more.as_deref() {
                    Some("solved") => Verdict::Solved,
                    _ => Verdict::Wrong,
                };
                let points = field(form, "points");
                let Ok(points) = points.trim().replace(',', ".").parse::<f64>() else {
                    return said(format!(
                        "\"{points}\" is no number of points; write one from 0 to 5, such as 2.5."
                    ));
                };
                let words = field(form, "words");
                house
                    .desk
                    .judge_by_hand(&place, &person, pressed.about, verdict, points, &words)
                    .await?;
                answers::open(house, &place, &person, 0).await
            }
            "reply-to" => {
                let words = field(form, "words");
                house
                    .desk
                    .answer_privately(&place, &person, pressed.about, &words)
                    .await?;
                answers::open(house, &place, &person, 0).await
            }
            _ => said("This form is from an older version; please begin again."),
        }
    })
    .await;
}

fn field(form: &ModalInteraction, id: &str) -> String {
    form.data
        .components
        .iter()
        .flat_map(|row| &row.components)
        .find_map(|part| match part {
            ActionRowComponent::InputText(input) if input.custom_id == id => input.value.clone(),
            _ => None,
        })
        .unwrap_or_default()
}

fn answer_form(place: &Place, post: i64) -> CreateModal {
    let input = CreateInputText::new(
        InputTextStyle::Short,
        "Your move, or the whole line",
        "moves",
    )
    .placeholder("Such as Nf3, e8=Q or 1.Qh7+ Kf8 2.Qh8#")
    .required(true)
    .max_length(LONGEST_ANSWER);
    CreateModal::new(buttons::id("answer", place, post), "Your answer")
        .components(vec![CreateActionRow::InputText(input)])
}

/// A private answer without a verdict.
fn private_form(place: &Place, reply: i64) -> CreateModal {
    let words = CreateInputText::new(
        InputTextStyle::Paragraph,
        "Only the member reads this",
        "words",
    )
    .required(true)
    .max_length(LONGEST_PRIVATE);
    CreateModal::new(
        buttons::id("reply-to", place, reply),
        "Your answer in private",
    )
    .components(vec![CreateActionRow::InputText(words)])
}

fn words_form(place: &Place, reply: i64, verdict: Option<&str>) -> CreateModal {
    let verdict = verdict.unwrap_or("wrong");
    let points = if verdict == "solved" { "5" } else { "0" };
    let points = CreateInputText::new(InputTextStyle::Short, "Points, 0 to 5", "points")
        .value(points)
        .max_length(5);
    let words = CreateInputText::new(
        InputTextStyle::Paragraph,
        "Words to the member, if you like",
        "words",
    )
    .required(false)
    .max_length(1_000);
    let id = format!("{}:{verdict}", buttons::id("words", place, reply));
    CreateModal::new(id, "Your verdict").components(vec![
        CreateActionRow::InputText(points),
        CreateActionRow::InputText(words),
    ])
}

pub fn really_quit(place: &Place, post: i64) -> Letter {
    Letter::text("Give this one up? You cannot answer it any more then, and the solution stays sealed until the reveal.").row(
        CreateActionRow::Buttons(vec![buttons::button(
            buttons::id("quit-yes", place, post),
            "Yes, give it up",
            ButtonStyle::Danger,
        )]),
    )
}

async fn turn_page(house: &House, asked: Asked<'_>, pressed: &Pressed) -> Answer<Letter> {
    let number = pressed.channel;
    let report = house
        .report(number)
        .filter(|report| report.coach == asked.user().id.to_string());
    match report {
        Some(report) => {
            let queue = house.desk.queue(&report.place).await?;
            Ok(sheets::report::page(
                number,
                &report,
                pressed.about.max(0) as usize,
                &queue,
            ))
        }
        None => said(
            "This report is put away; the positions are kept. Use /coach shelf, or check the file again.",
        ),
    }
}

/// The coach's choice about a position of a report that was kept otherwise before.
async fn settle_same(house: &House, asked: Asked<'_>, pressed: &Pressed) -> Answer<Letter> {
    let (number, at) = (pressed.channel, pressed.about.max(0) as usize);
    let report = house
        .report(number)
        .filter(|report| report.coach == asked.user().id.to_string());
    let choice = match pressed.more.as_deref() {
        Some("keep") => SameChoice::Keep,
        Some("new") => SameChoice::New,
        _ => SameChoice::Both,
    };
    let Some((report, position)) =
        report.and_then(|report| Some((report.clone(), report.positions.get(at)?.clone())))
    else {
        return said(
            "This report is put away; nothing was changed. Check the file again, then choose.",
        );
    };
    let coach = asked.person(house, &report.place).await;
    let settled = house
        .desk
        .settle_same(&report.place, &coach, &position, choice)
        .await?;
    house.settle_in_report(number, at, settled);
    turn_page(house, asked, pressed).await
}

/// The week as it is now.
pub async fn week(
    house: &House,
    place: &Place,
    coach: &Person,
    picked: Option<i64>,
) -> Answer<Letter> {
    let queue = house.desk.queue(place).await?;
    let paused = house.desk.paused(place).await?;
    if !house.desk.is_coach(place, &coach.user).await? {
        return said(super::commands::COACHES_ONLY);
    }
    Ok(sheets::week::letter(place, &queue, paused, picked))
}

async fn week_press(
    house: &House,
    place: &Place,
    coach: &Person,
    verb: &str,
    item: i64,
    press: &ComponentInteraction,
) -> Answer<Letter> {
    let desk = &house.desk;
    let queue = desk.queue(place).await?;
    let at = queue.iter().position(|queued| queued.id == item);
    let moved = |to: usize| async move { desk.reorder(place, coach, item, to).await };
    match (verb, at) {
        ("week-pick", _) => {
            let picked = match &press.data.kind {
                ComponentInteractionDataKind::StringSelect { values } => {
                    values.first().and_then(|value| value.parse().ok())
                }
                _ => None,
            };
            week(house, place, coach, picked).await
        }
        (_, None) => {
            let mut letter = week(house, place, coach, None).await?;
            letter.text.insert_str(0, "That one waits no longer.\n\n");
            Ok(letter)
        }
        ("week-earlier", Some(at)) => {
            moved(at.saturating_sub(1)).await?;
            week(house, place, coach, Some(item)).await
        }
        ("week-later", Some(at)) => {
            moved((at + 1).min(queue.len().saturating_sub(1))).await?;
            week(house, place, coach, Some(item)).await
        }
        ("week-out", Some(_)) => {
            desk.dequeue(place, coach, item).await?;
            week(house, place, coach, None).await
        }
        ("week-post", Some(_)) => {
            desk.post_now(place, coach, Some(item)).await?;
            Ok(Letter::text("It goes out now."))
        }
        ("week-look", Some(at)) => {
            let mode = desk.settings(place).await?.mode;
            let sheet = desk.preview(place, coach, queue[at].position).await?;
            let mut letter = sheets::post::preview(&sheet, mode, house.opens_threads(place));
            letter.rows = week(house, place, coach, Some(item)).await?.rows;
            Ok(letter)
        }
        _ => said("This button is from an older version; please begin again."),
    }
}
