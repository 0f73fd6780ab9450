//! `/coach answers`: replies that wait for the coach's hand, or all to one post, one at a time.

use poise::serenity_prelude as serenity;
use serenity::{ButtonStyle, CreateActionRow, CreateButton};

use super::{Answer, Ctx, choose_post, for_coach};
use crate::{
    chat::discord::{
        buttons::{self, Press, Way},
        fit,
        house::House,
        letter::Letter,
        text::{Coach, Decimal, Moment, Plain, Study, number},
    },
    desk::{Content, Outcome, Person, Place, PostId, RepliesTo, ReplyId, ReplyRow, Settled},
    words::Words,
};

/// Answer by hand what I could not judge, or overrule what I did
#[poise::command(slash_command)]
pub async fn answers(
    ctx: Ctx<'_>,
    #[autocomplete = "choose_post"] position: Option<i64>,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        match position.map(PostId::of) {
            None => open(house, words, &place, &coach, 0).await,
            Some(post) => to_post(house, words, &place, &coach, post, Shown::Nth(0)).await,
        }
    })
    .await
}

/// The waiting reply at `at`, with what can be done with it.
pub async fn open(
    house: &House,
    words: &'static Words,
    place: &Place,
    coach: &Person,
    at: usize,
) -> Answer<Letter> {
    let rows = house.desk.coach().homework(place, coach).await?;
    if rows.is_empty() {
        return Ok(Letter::text(words.say(&Coach::NoAnswerWaits)));
    }
    let at = at.min(rows.len() - 1);
    let row = &rows[at];
    let content = house.desk.post(place, row.post).await?.content;
    let head = words.say(&Coach::AnswerWaits {
        at: number(at + 1),
        of: number(rows.len()),
        kind: content.kind().name(),
        number: row.number,
        when: Moment::of(row.reply.received_at),
    });
    let mut acts = acts(words, place, row.post, &row.reply);
    acts.extend(turns(words, place, Press::Homework, at, rows.len()));
    Ok(letter(words, place, &content, &row.reply, head, acts))
}

/// Which of the replies to a post is shown.
#[derive(Clone, Copy)]
pub enum Shown {
    /// By its place among them, from 0.
    Nth(usize),
    /// This one; the first where it is gone.
    Reply(ReplyId),
}

/// A reply to a post, whatever became of it, with what can be done with it.
pub async fn to_post(
    house: &House,
    words: &'static Words,
    place: &Place,
    coach: &Person,
    post: PostId,
    shown: Shown,
) -> Answer<Letter> {
    let rows = house.desk.coach().replies(place, coach, post).await?;
    let sheet = house.desk.post(place, post).await?;
    let kind = sheet.content.kind().name();
    if rows.is_empty() {
        return Ok(Letter::text(words.say(&Coach::NoAnswerYet {
            kind,
            number: sheet.number,
        })));
    }
    let at = match shown {
        Shown::Nth(at) => at.min(rows.len() - 1),
        Shown::Reply(reply) => rows.iter().position(|row| row.reply == reply).unwrap_or(0),
    };
    let row = &rows[at];
    let head = words.say(&Coach::AnswerToPost {
        at: number(at + 1),
        of: number(rows.len()),
        kind,
        number: sheet.number,
        when: Moment::of(row.received_at),
    });
    let head = format!("{head}\n{}", stands(words, row));
    let mut acts = acts(words, place, post, row);
    let turned = |at| Press::Replies { post, at };
    acts.extend(turns(words, place, turned, at, rows.len()));
    Ok(letter(words, place, &sheet.content, row, head, acts))
}

/// How a reply stands with the coach.
fn stands(words: &Words, row: &ReplyRow) -> String {
    let points = Decimal::of(row.points);
    words.say(&match (row.settled, row.verdict, row.by_coach) {
        (Settled::Judged, Some(Outcome::Judged(verdict)), false) => {
            Coach::AnswerJudged { verdict, points }
        }
        (Settled::Judged, Some(Outcome::Judged(verdict)), true) => {
            Coach::AnswerRuled { verdict, points }
        }
        (Settled::Judged, _, _) => Coach::AnswerMarked { points },
        (Settled::Answered, _, _) => Coach::AnsweredInPrivate {
            words: Plain::of(row.coach_words.as_deref().unwrap_or_default()),
        },
        (Settled::NeedsNone, _, _) => Coach::AnswerNeedsNone,
        (Settled::Unjudged, _, _) => Coach::AnswerUndecided,
    })
}

/// Buttons for a verdict or a mark: the first one, or another in its place.
fn acts(words: &Words, place: &Place, post: PostId, row: &ReplyRow) -> Vec<CreateButton> {
    let reply = row.reply;
    let act = |press: Press, label: Coach, style| {
        buttons::button(press.id(place), &words.say(&label), style)
    };
    let decided = row.settled == Settled::Judged;
    let verdict = |right| match decided {
        true => Press::Overrule { post, reply, right },
        false => Press::Judge { reply, right },
    };
    let (right, not_right, mark) = match decided {
        true => (
            Coach::ButtonOverruleRight,
            Coach::ButtonOverruleNotRight,
            Coach::ButtonMarkAgain,
        ),
        false => (Coach::ButtonRight, Coach::ButtonNotRight, Coach::ButtonMark),
    };
    match row.to {
        RepliesTo::Problem => vec![
            act(verdict(true), right, ButtonStyle::Success),
            act(verdict(false), not_right, ButtonStyle::Danger),
        ],
        RepliesTo::Question => vec![act(Press::Mark(reply), mark, ButtonStyle::Success)],
    }
}

/// Buttons to the reply before and the one after.
fn turns(
    words: &Words,
    place: &Place,
    to: impl Fn(usize) -> Press,
    at: usize,
    of: usize,
) -> [CreateButton; 2] {
    let turn = |way, label: Study, next: Option<usize>| {
        let label = words.say(&label);
        buttons::turn(|at| to(at).id(place), way, &label, at, next)
    };
    [
        turn(Way::Back, Study::ButtonPrevious, at.checked_sub(1)),
        turn(
            Way::On,
            Study::ButtonNext,
            Some(at + 1).filter(|next| *next < of),
        ),
    ]
}

/// A reply under its heading, with what it answers.
fn letter(
    words: &'static Words,
    place: &Place,
    content: &Content,
    row: &ReplyRow,
    head: String,
    acts: Vec<CreateButton>,
) -> Letter {
    let said = match row.said.is_empty() {
        true => String::new(),
        false => {
            let said = Plain::of(&words.tell(&row.said.facts));
            format!("\n\n{}", words.say(&Coach::IsSaid { said }))
        }
    };
    let text = format!(
        "{head}\n{}\n\n> {}{said}",
        fit::plain(&row.name),
        fit::plain(&fit::short(&row.text.replace('\n', " "), 900)),
    );
    let text = match content {
        Content::Problem { .. } => text,
        Content::Question(asked) | Content::Words(asked) => {
            let asked = fit::short(&asked.words.replace('\n', " "), 300);
            let asked = Plain::of(&asked);
            format!("{text}\n\n{}", words.say(&Coach::IsAsked { asked }))
        }
    };
    let letter = match content.picture() {
        Some(picture) => Letter::text(text).picture("position", picture, words),
        None => Letter::text(text),
    };
    let letter = letter.row(CreateActionRow::Buttons(acts));
    // What is decided is settled.
    let settle = settling(words, place, row);
    match settle.is_empty() {
        true => letter,
        false => letter.row(CreateActionRow::Buttons(settle)),
    }
}

/// Buttons that settle a reply without a verdict.
fn settling(words: &Words, place: &Place, row: &ReplyRow) -> Vec<CreateButton> {
    let act = |press: Press, label: Coach| {
        buttons::button(press.id(place), &words.say(&label), ButtonStyle::Secondary)
    };
    let privately = || act(Press::ReplyTo(row.reply), Coach::ButtonAnswerPrivately);
    match row.settled {
        Settled::Judged => Vec::new(),
        Settled::Answered | Settled::NeedsNone => vec![privately()],
        Settled::Unjudged => vec![
            privately(),
            act(Press::NoAnswer(row.reply), Coach::ButtonNoAnswer),
        ],
    }
}
