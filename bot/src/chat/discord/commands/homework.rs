//! `/study homework`: the questions that a member answered, one at a time, with what the coach made of each; and
//! whether an answer may be shown to the group.

use poise::serenity_prelude as serenity;
use serenity::{ButtonStyle, CreateActionRow, CreateButton};

use super::{Answer, Ctx, member, privately};
use crate::{
    chat::{
        discord::{
            buttons::{self, Press, Way},
            fit,
            house::House,
            letter::Letter,
            sheets::reveal,
            text::{Plain, Study, number},
        },
        said::in_words,
    },
    desk::{Leave, LeaveAsked, OwnAnswer, OwnExample, Person, Place},
    words::Words,
};

/// The most characters of an answer that is quoted.
const QUOTED: usize = 900;

/// See your own answers to questions, and what your coach made of them
#[poise::command(slash_command)]
pub async fn homework(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        let words = ctx.data().words_for(&place, &person).await;
        open(ctx.data(), words, &place, &person, 0).await
    })
    .await
}

/// Question `at` of those that the member answered, the latest first.
pub async fn open(
    house: &House,
    words: &'static Words,
    place: &Place,
    person: &Person,
    at: usize,
) -> Answer<Letter> {
    let all = house.desk.member().my_homework(place, person).await?;
    if all.is_empty() {
        return Ok(Letter::text(words.say(&Study::NoHomework)));
    }
    let at = at.min(all.len() - 1);
    let one = &all[at];
    let head = words.say(&Study::HomeworkHead {
        at: number(at + 1),
        of: number(all.len()),
        number: one.number,
    });
    let asked = fit::plain(&fit::short(&one.asked.replace('\n', " "), 300));
    let mut letter = Letter::text(format!("{head}\n{asked}\n\n{}", own(words, &one.own)));
    letter.rows = leave_rows(words, place, &one.own.examples);
    let turn = |way, label: Study, next: Option<usize>| {
        let label = words.say(&label);
        let id = |at| Press::MyHomework(at).id(place);
        buttons::turn(id, way, &label, at, next)
    };
    Ok(letter.row(CreateActionRow::Buttons(vec![
        turn(Way::Back, Study::ButtonPrevious, at.checked_sub(1)),
        turn(
            Way::On,
            Study::ButtonNext,
            Some(at + 1).filter(|next| *next < all.len()),
        ),
    ])))
}

/// A member's own answer: what they wrote, what the coach made of it, and what others allow to be seen.
pub fn own(words: &Words, own: &OwnAnswer) -> String {
    let mut parts = Vec::new();
    let quote = |text: &str| {
        let plain = fit::plain(&fit::short(text, QUOTED));
        plain.replace('\n', "\n> ")
    };
    if own.reply.is_some() {
        let said = fit::plain(&in_words(&own.said));
        parts.push(match own.answer.is_empty() {
            true => format!("{}\n{said}", words.say(&Study::YourAnswerDeleted)),
            false => format!("> {}\n{said}", quote(&own.answer)),
        });
    }
    if own.waiting {
        parts.push(words.say(&Study::WaitsForCoach));
    }
    if !own.words.is_empty() {
        let said = Plain::of(&own.words);
        parts.push(words.say(&Study::CoachSaidPrivately { said }));
    }
    if !own.earlier.is_empty() {
        let earlier = own.earlier.iter().rev().take(3);
        let earlier: Vec<String> = earlier
            .map(|text| {
                format!(
                    "> {}",
                    fit::plain(&fit::short(&text.replace('\n', " "), 200))
                )
            })
            .collect();
        let head = words.say(&Study::EarlierAnswers);
        parts.push(format!("{head}\n{}", earlier.join("\n")));
    }
    for example in &own.examples {
        parts.push(words.say(&stands(example)));
    }
    if !own.others.is_empty() {
        parts.push(words.say(&Study::OthersAnswers));
        parts.extend(own.others.iter().map(|other| reveal::example(words, other)));
    }
    parts.join("\n\n")
}

/// How it stands with an answer that the coach would show.
fn stands(example: &OwnExample) -> Study {
    let quote = Plain::quote(&example.text);
    match example.example.leave {
        None => Study::LeaveOpen { quote },
        Some(leave) => Study::LeaveIs { quote, leave },
    }
}

/// Buttons under each answer that the coach would show; one message has room for three.
pub fn leave_rows(words: &Words, place: &Place, examples: &[OwnExample]) -> Vec<CreateActionRow> {
    let rows = examples.iter().rev().take(3);
    rows.map(|example| CreateActionRow::Buttons(leaves(words, place, example)))
        .collect()
}

/// What a writer may say, but for what they have said.
fn leaves(words: &Words, place: &Place, example: &OwnExample) -> Vec<CreateButton> {
    let kept = example.example.leave;
    let choices = [
        (Leave::Named, Study::ButtonLeaveNamed, ButtonStyle::Primary),
        (
            Leave::Nameless,
            Study::ButtonLeaveNameless,
            ButtonStyle::Primary,
        ),
        (
            Leave::Refused,
            Study::ButtonLeaveRefused,
            ButtonStyle::Secondary,
        ),
    ];
    choices
        .into_iter()
        .filter(|(leave, ..)| kept != Some(*leave))
        .map(|(leave, label, style)| {
            let id = Press::Leave(example.reply, leave).id(place);
            buttons::button(id, &words.say(&label), style)
        })
        .collect()
}

/// The question to a writer whether their answer may be shown.
pub fn leave_asked(words: &Words, place: &Place, asked: &LeaveAsked) -> Letter {
    let example = OwnExample {
        reply: asked.reply,
        text: asked.text.clone(),
        example: crate::desk::ExampleRow {
            words: asked.words.clone(),
            leave: None,
        },
    };
    let quote = fit::plain(&fit::short(&asked.text, QUOTED)).replace('\n', "\n> ");
    let mut parts = vec![
        words.say(&Study::MayItBeShown {
            number: asked.number,
        }),
        format!("> {quote}"),
    ];
    if !asked.words.is_empty() {
        let said = Plain::of(&asked.words);
        parts.push(words.say(&Study::CoachBeside { said }));
    }
    parts.push(words.say(&Study::LeaveCaution));
    Letter::text(parts.join("\n")).row(CreateActionRow::Buttons(leaves(words, place, &example)))
}

/// What a writer has said, and what else they may say.
pub fn leave_is(words: &Words, place: &Place, example: &OwnExample) -> Letter {
    let text = format!(
        "{}\n{}",
        words.say(&stands(example)),
        words.say(&Study::LeaveCaution)
    );
    let rows = CreateActionRow::Buttons(leaves(words, place, example));
    Letter::text(text).row(rows)
}
