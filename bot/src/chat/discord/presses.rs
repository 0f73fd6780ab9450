//! Buttons, menus and forms that are sent: which press does what.

use poise::serenity_prelude as serenity;
use serenity::{
    ButtonStyle, ChannelId, ComponentInteraction, ComponentInteractionDataKind, CreateActionRow,
    ModalInteraction,
};

use super::{
    buttons::{self, HeldPress, Press, Pressed, WeekPress},
    commands::{answers, study},
    forms::{answer_form, field, mark_form, points_of, private_form, respond_form, words_form},
    held,
    house::{self, House},
    letter::Letter,
    oops::{Answer, said},
    private::{self, Asked},
    sheets,
    text::{Coach, Group, Plain, Study, Talk},
};
use crate::{
    desk::{ItemId, Person, Place, PostId, SameChoice, Verdict},
    words::Words,
};

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
                    None => said(Study::RestPutAway),
                }
            })
            .await;
        }
        Pressed::In(channel, wanted) => {
            let place = house::place(ChannelId::new(channel.max(1)));
            match wanted {
                Press::Answer(post) => {
                    let words = asked.words(house).await;
                    private::form(house, asked, answer_form(words, &place, post)).await;
                }
                Press::Respond(post) => {
                    let words = asked.words(house).await;
                    private::form(house, asked, respond_form(words, &place, post)).await;
                }
                Press::Mark(reply) => {
                    let words = asked.words(house).await;
                    private::form(house, asked, mark_form(words, &place, reply)).await;
                }
                Press::Judge { reply, right } => {
                    let words = asked.words(house).await;
                    private::form(house, asked, words_form(words, &place, reply, right)).await;
                }
                Press::ReplyTo(reply) => {
                    let words = asked.words(house).await;
                    private::form(house, asked, private_form(words, &place, reply)).await;
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
        | Press::Respond(_)
        | Press::Mark(_)
        | Press::NewQuestion
        | Press::NewWords
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
    let words = house.words_for(place, &person).await;
    let desk = &house.desk;
    match wanted {
        Press::Hint(post) => study::hint_offer(house, place, &person, post).await,
        Press::TakeHint(post) => study::hint(house, place, &person, post).await,
        Press::Mine(post) => study::standing(house, words, place, &person, Some(post)).await,
        Press::Board(post) => study::own_board(house, words, place, &person, post).await,
        Press::GiveUp(post) => Ok(really_quit(words, place, post)),
        Press::ReallyGiveUp(post) => study::gave_up(house, words, place, &person, post).await,
        Press::To(post) => {
            let Some((message, text)) = house.take_waiting(user.id) else {
                return said(Study::AnswerForgotten);
            };
            let source = message.to_string();
            study::answered(house, words, place, &person, post, &source, &text).await
        }
        Press::Mean { reply, reading } => {
            let (sheet, text) = desk.member().mean(place, &person, reply, reading).await?;
            let mut letter = sheets::verdict::letter(place, &sheet);
            let quote = Plain::of(&text);
            letter.text = format!(
                "{}\n{}",
                words.say(&Talk::QuotedAnswer { quote }),
                letter.text
            );
            Ok(letter)
        }
        Press::EraseMe => study::erased(house, words, place, &person).await,
        Press::EraseMember(member) => {
            let users = desk.coach().erase_member(place, &person, member).await?;
            held::erase(house, place, &users).await?;
            Ok(Letter::text(words.say(&Group::ErasedMember)))
        }
        Press::NoAnswer(reply) => {
            desk.coach().no_answer_needed(place, &person, reply).await?;
            answers::open(house, words, place, &person, 0).await
        }
        Press::Homework(at) => answers::open(house, words, place, &person, at).await,
        Press::Queue {
            position,
            anyway,
            again,
        } => {
            match again {
                true => {
                    desk.coach()
                        .enqueue_again(place, &person, position, anyway)
                        .await?
                }
                false => {
                    desk.coach()
                        .enqueue(place, &person, position, anyway)
                        .await?
                }
            };
            week(house, words, place, &person, None).await
        }
        Press::Week(what, item) => {
            week_press(house, words, place, &person, what, item, press).await
        }
        Press::Held(message, HeldPress::Look) => held::look(house, words, user.id, message).await,
        Press::Held(message, choice) => {
            held::chosen(house, words, user.id, message, choice, &person).await
        }
        // Forms, which are opened and not answered.
        Press::Answer(_)
        | Press::Respond(_)
        | Press::Mark(_)
        | Press::NewQuestion
        | Press::NewWords
        | Press::Judge { .. }
        | Press::ReplyTo(_) => said(Study::FormOld),
    }
}

/// A form.
pub async fn sent(house: &House, form: &ModalInteraction) {
    let Some(Pressed::In(channel, wanted)) = Pressed::read(&form.data.custom_id) else {
        return;
    };
    let place = house::place(ChannelId::new(channel.max(1)));
    let asked = Asked::Form(form);
    private::privately(house, asked, async {
        let person = asked.person(house, &place).await;
        let words = house.words_for(&place, &person).await;
        match wanted {
            Press::Answer(post) => {
                let (source, text) = (asked.id().to_string(), field(form, "moves"));
                study::answered(house, words, &place, &person, post, &source, &text).await
            }
            Press::Respond(post) => {
                let (source, text) = (asked.id().to_string(), field(form, "words"));
                study::answered(house, words, &place, &person, post, &source, &text).await
            }
            Press::Mark(reply) => {
                let points = points_of(&field(form, "points"))?;
                let told = field(form, "words");
                house
                    .desk
                    .coach()
                    .mark_answer(&place, &person, reply, points, &told)
                    .await?;
                answers::open(house, words, &place, &person, 0).await
            }
            Press::NewQuestion => {
                let item = house
                    .desk
                    .coach()
                    .enqueue_question(
                        &place,
                        &person,
                        &field(form, "words"),
                        Some(&field(form, "fen")),
                        Some(&field(form, "topic")),
                        &field(form, "reveal"),
                    )
                    .await?;
                week(house, words, &place, &person, Some(item)).await
            }
            Press::NewWords => {
                let item = house
                    .desk
                    .coach()
                    .enqueue_words(
                        &place,
                        &person,
                        &field(form, "words"),
                        Some(&field(form, "fen")),
                        Some(&field(form, "topic")),
                    )
                    .await?;
                week(house, words, &place, &person, Some(item)).await
            }
            Press::Judge { reply, right } => {
                let verdict = match right {
                    true => Verdict::Solved,
                    false => Verdict::Wrong,
                };
                let points = points_of(&field(form, "points"))?;
                let told = field(form, "words");
                house
                    .desk
                    .coach()
                    .judge_by_hand(&place, &person, reply, verdict, points, &told)
                    .await?;
                answers::open(house, words, &place, &person, 0).await
            }
            Press::ReplyTo(reply) => {
                let told = field(form, "words");
                house
                    .desk
                    .coach()
                    .answer_privately(&place, &person, reply, &told)
                    .await?;
                answers::open(house, words, &place, &person, 0).await
            }
            _ => said(Study::FormOld),
        }
    })
    .await;
}

/// Asks whether a post is to be given up.
fn really_quit(words: &Words, place: &Place, post: PostId) -> Letter {
    let yes = buttons::button(
        Press::ReallyGiveUp(post).id(place),
        &words.say(&Study::ButtonYesGiveUp),
        ButtonStyle::Danger,
    );
    Letter::text(words.say(&Study::GiveUpAsked)).row(CreateActionRow::Buttons(vec![yes]))
}

async fn turn_page(house: &House, asked: Asked<'_>, number: u64, at: usize) -> Answer<Letter> {
    let report = house
        .report(number)
        .filter(|report| report.coach == asked.user().id.to_string());
    match report {
        Some(report) => {
            let queue = house.desk.coach().queue(&report.place).await?;
            let words = asked.words(house).await;
            Ok(sheets::report::page(words, number, &report, at, &queue))
        }
        None => said(Coach::ReportPutAway),
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
        return said(Coach::ReportUnchanged);
    };
    let coach = asked.person(house, &report.place).await;
    let settled = house
        .desk
        .coach()
        .settle_same(&report.place, &coach, &position, choice)
        .await?;
    house.settle_in_report(number, at, settled);
    turn_page(house, asked, number, at).await
}

/// The week as it is now.
pub async fn week(
    house: &House,
    words: &Words,
    place: &Place,
    coach: &Person,
    picked: Option<ItemId>,
) -> Answer<Letter> {
    let queue = house.desk.coach().queue(place).await?;
    let paused = house.desk.coach().paused(place).await?;
    if !house.desk.is_coach(place, &coach.user).await? {
        return said(Group::CoachesOnly);
    }
    Ok(sheets::week::letter(words, place, &queue, paused, picked))
}

async fn week_press(
    house: &House,
    words: &Words,
    place: &Place,
    coach: &Person,
    what: WeekPress,
    item: ItemId,
    press: &ComponentInteraction,
) -> Answer<Letter> {
    let desk = &house.desk;
    let queue = desk.coach().queue(place).await?;
    let at = queue.iter().position(|queued| queued.id == item);
    let moved = |to: usize| async move { desk.coach().reorder(place, coach, item, to).await };
    match (what, at) {
        (WeekPress::Pick, _) => {
            let picked = match &press.data.kind {
                ComponentInteractionDataKind::StringSelect { values } => {
                    values.first().and_then(|value| value.parse().ok())
                }
                _ => None,
            };
            week(house, words, place, coach, picked).await
        }
        (_, None) => {
            let mut letter = week(house, words, place, coach, None).await?;
            let gone = words.say(&Coach::WaitsNoLonger);
            letter.text = format!("{gone}\n\n{}", letter.text);
            Ok(letter)
        }
        (WeekPress::Earlier, Some(at)) => {
            moved(at.saturating_sub(1)).await?;
            week(house, words, place, coach, Some(item)).await
        }
        (WeekPress::Later, Some(at)) => {
            moved((at + 1).min(queue.len().saturating_sub(1))).await?;
            week(house, words, place, coach, Some(item)).await
        }
        (WeekPress::Out, Some(_)) => {
            desk.coach().dequeue(place, coach, item).await?;
            week(house, words, place, coach, None).await
        }
        (WeekPress::Post, Some(_)) => {
            desk.coach().post_now(place, coach, Some(item)).await?;
            Ok(Letter::text(words.say(&Coach::GoesOutNow)))
        }
        (WeekPress::Look, Some(_)) => {
            let mode = desk.settings(place).await?.mode;
            let sheet = desk.coach().preview_item(place, coach, item).await?;
            // As members will see it, so in the group's language.
            let all = house.words_of_group(place).await;
            let mut letter = sheets::post::preview(all, &sheet, mode, house.opens_threads(place));
            letter.rows = week(house, words, place, coach, Some(item)).await?.rows;
            Ok(letter)
        }
    }
}
