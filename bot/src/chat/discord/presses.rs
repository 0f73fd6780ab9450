//! Buttons, menus and forms: which press does what.

use poise::serenity_prelude as serenity;
use serenity::{
    ActionRowComponent, ButtonStyle, ChannelId, ComponentInteraction, ComponentInteractionDataKind,
    CreateActionRow, CreateInputText, CreateModal, InputTextStyle, ModalInteraction,
};

use super::{
    buttons::{self, HeldPress, Press, Pressed, WeekPress},
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
    let Some(pressed) = Pressed::read(&press.data.custom_id) else {
        return;
    };
    let asked = Asked::Press(press);
    match pressed {
        // Reports and long answers are in memory; their ids carry a number where others carry a channel.
        Pressed::Page { report, at } => {
            private::in_place(house, press, turn_page(house, asked, report, at)).await;
        }
        Pressed::Same { report, at, choice } => {
            private::in_place(house, press, settle_same(house, asked, report, at, choice)).await;
        }
        Pressed::Part { answer, at } => {
            let parts = house
                .parts(answer)
                .filter(|parts| parts.user == asked.user().id);
            private::in_place(house, press, async {
                match parts {
                    Some(parts) => Ok(private::part(&(answer, parts), at)),
                    None => said("The rest of this is put away; please ask for it once more."),
                }
            })
            .await;
        }
        Pressed::In(channel, wanted) => {
            let place = house::place(ChannelId::new(channel.max(1)));
            match wanted {
                Press::Answer(post) => private::form(house, asked, answer_form(&place, post)).await,
                Press::Judge { reply, right } => {
                    private::form(house, asked, words_form(&place, reply, right)).await;
                }
                Press::ReplyTo(reply) => {
                    private::form(house, asked, private_form(&place, reply)).await;
                }
                wanted if opens_a_message(wanted) => {
                    private::privately(house, asked, done(house, press, &place, wanted)).await;
                }
                wanted => private::in_place(house, press, done(house, press, &place, wanted)).await,
            }
        }
    }
}

/// Whether what comes of a press is a message of its own; else it takes the place of the pressed one.
fn opens_a_message(press: Press) -> bool {
    match press {
        Press::Answer(_)
        | Press::Hint(_)
        | Press::TakeHint(_)
        | Press::Mine(_)
        | Press::Board(_)
        | Press::GiveUp(_)
        | Press::Judge { .. }
        | Press::ReplyTo(_)
        | Press::Queue { .. }
        | Press::Held(_, HeldPress::Look) => true,
        Press::ReallyGiveUp(_)
        | Press::To(_)
        | Press::Mean { .. }
        | Press::EraseMe
        | Press::EraseMember(_)
        | Press::NoAnswer(_)
        | Press::Homework(_)
        | Press::Week(..)
        | Press::Held(..) => false,
    }
}

/// Does what was asked for in a group, and gives what to show for it.
async fn done(
    house: &House,
    press: &ComponentInteraction,
    place: &Place,
    wanted: Press,
) -> Answer<Letter> {
    let asked = Asked::Press(press);
    let user = asked.user();
    let person = asked.person(house, place).await;
    let desk = &house.desk;
    match wanted {
        Press::Hint(post) => study::hint_offer(house, place, &person, post).await,
        Press::TakeHint(post) => study::hint(house, place, &person, post).await,
        Press::Mine(post) => study::standing(house, place, &person, Some(post)).await,
        Press::Board(post) => study::own_board(house, place, &person, post).await,
        Press::GiveUp(post) => Ok(really_quit(place, post)),
        Press::ReallyGiveUp(post) => study::gave_up(house, place, &person, post).await,
        Press::To(post) => {
            let Some((message, text)) = house.take_waiting(user.id) else {
                return said(
                    "That message is gone from my memory; please write your answer again.",
                );
            };
            let source = message.to_string();
            study::answered(house, place, &person, post, &source, &text).await
        }
        Press::Mean { reply, reading } => {
            let (sheet, text) = desk.mean(place, &person, reply, reading).await?;
            let mut letter = sheets::verdict::letter(place, &sheet);
            letter.text = format!("\"{}\"\n{}", words::plain(&text), letter.text);
            Ok(letter)
        }
        Press::EraseMe => study::erased(house, place, &person).await,
        Press::EraseMember(member) => {
            let users = desk.erase_member(place, &person, member).await?;
            held::erase(house, place, &users).await?;
            Ok(Letter::text(
                "Everything that was kept of them in this group is erased.",
            ))
        }
        Press::NoAnswer(reply) => {
            desk.no_answer_needed(place, &person, reply).await?;
            answers::open(house, place, &person, 0).await
        }
        Press::Homework(at) => answers::open(house, place, &person, at).await,
        Press::Queue {
            position,
            anyway,
            again,
        } => {
            match again {
                true => desk.enqueue_again(place, &person, position, anyway).await?,
                false => desk.enqueue(place, &person, position, anyway).await?,
            };
            week(house, place, &person, None).await
        }
        Press::Week(what, item) => week_press(house, place, &person, what, item, press).await,
        Press::Held(message, HeldPress::Look) => held::look(house, user.id, message).await,
        Press::Held(message, choice) => {
            held::chosen(house, user.id, message, choice, &person).await
        }
        // Forms, which are opened and not answered.
        Press::Answer(_) | Press::Judge { .. } | Press::ReplyTo(_) => said(OLD_FORM),
    }
}

/// Said of a form that nothing is done with any more.
const OLD_FORM: &str = "This form is from an older version; please begin again.";

/// A form.
pub async fn sent(house: &House, form: &ModalInteraction) {
    let Some(Pressed::In(channel, wanted)) = Pressed::read(&form.data.custom_id) else {
        return;
    };
    let place = house::place(ChannelId::new(channel.max(1)));
    let asked = Asked::Form(form);
    private::privately(house, asked, async {
        let person = asked.person(house, &place).await;
        match wanted {
            Press::Answer(post) => {
                let (source, text) = (asked.id().to_string(), field(form, "moves"));
                study::answered(house, &place, &person, post, &source, &text).await
            }
            Press::Judge { reply, right } => {
                let verdict = match right {
                    true => Verdict::Solved,
                    false => Verdict::Wrong,
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
                    .judge_by_hand(&place, &person, reply, verdict, points, &words)
                    .await?;
                answers::open(house, &place, &person, 0).await
            }
            Press::ReplyTo(reply) => {
                let words = field(form, "words");
                house
                    .desk
                    .answer_privately(&place, &person, reply, &words)
                    .await?;
                answers::open(house, &place, &person, 0).await
            }
            _ => said(OLD_FORM),
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
    CreateModal::new(Press::Answer(post).id(place), "Your answer")
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
    CreateModal::new(Press::ReplyTo(reply).id(place), "Your answer in private")
        .components(vec![CreateActionRow::InputText(words)])
}

fn words_form(place: &Place, reply: i64, right: bool) -> CreateModal {
    let points = if right { "5" } else { "0" };
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
    let id = Press::Judge { reply, right }.id(place);
    CreateModal::new(id, "Your verdict").components(vec![
        CreateActionRow::InputText(points),
        CreateActionRow::InputText(words),
    ])
}

pub fn really_quit(place: &Place, post: i64) -> Letter {
    Letter::text("Give this one up? You cannot answer it any more then, and the solution stays sealed until the reveal.").row(
        CreateActionRow::Buttons(vec![buttons::button(
            Press::ReallyGiveUp(post).id(place),
            "Yes, give it up",
            ButtonStyle::Danger,
        )]),
    )
}

async fn turn_page(house: &House, asked: Asked<'_>, number: u64, at: usize) -> Answer<Letter> {
    let report = house
        .report(number)
        .filter(|report| report.coach == asked.user().id.to_string());
    match report {
        Some(report) => {
            let queue = house.desk.queue(&report.place).await?;
            Ok(sheets::report::page(number, &report, at, &queue))
        }
        None => said(
            "This report is put away; the positions are kept. Use /coach shelf, or check the file again.",
        ),
    }
}

/// The coach's choice about a position of a report that was kept otherwise before.
async fn settle_same(
    house: &House,
    asked: Asked<'_>,
    number: u64,
    at: usize,
    choice: SameChoice,
) -> Answer<Letter> {
    let report = house
        .report(number)
        .filter(|report| report.coach == asked.user().id.to_string());
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
    turn_page(house, asked, number, at).await
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
    what: WeekPress,
    item: i64,
    press: &ComponentInteraction,
) -> Answer<Letter> {
    let desk = &house.desk;
    let queue = desk.queue(place).await?;
    let at = queue.iter().position(|queued| queued.id == item);
    let moved = |to: usize| async move { desk.reorder(place, coach, item, to).await };
    match (what, at) {
        (WeekPress::Pick, _) => {
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
        (WeekPress::Earlier, Some(at)) => {
            moved(at.saturating_sub(1)).await?;
            week(house, place, coach, Some(item)).await
        }
        (WeekPress::Later, Some(at)) => {
            moved((at + 1).min(queue.len().saturating_sub(1))).await?;
            week(house, place, coach, Some(item)).await
        }
        (WeekPress::Out, Some(_)) => {
            desk.dequeue(place, coach, item).await?;
            week(house, place, coach, None).await
        }
        (WeekPress::Post, Some(_)) => {
            desk.post_now(place, coach, Some(item)).await?;
            Ok(Letter::text("It goes out now."))
        }
        (WeekPress::Look, Some(at)) => {
            let mode = desk.settings(place).await?.mode;
            let sheet = desk.preview(place, coach, queue[at].position).await?;
            let mut letter = sheets::post::preview(&sheet, mode, house.opens_threads(place));
            letter.rows = week(house, place, coach, Some(item)).await?.rows;
            Ok(letter)
        }
    }
}
