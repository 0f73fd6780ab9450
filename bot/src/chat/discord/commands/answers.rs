//! `/coach answers`: replies that wait for the coach's hand, or all to one post, one at a time.

use poise::serenity_prelude as serenity;
use serenity::{
    ButtonStyle, CreateActionRow, CreateButton, CreateSelectMenu, CreateSelectMenuKind,
    CreateSelectMenuOption,
};

use super::{Answer, Ctx, choose_post, for_coach};
use crate::{
    chat::discord::{
        buttons::{self, Press, Way},
        fit,
        house::House,
        letter::Letter,
        text::{Coach, Decimal, Label, Moment, Plain, Study, number},
    },
    desk::{
        AnswerGroup, Begins, Content, ExampleRow, Kind, Leave, Outcome, Person, Place, PostId,
        RepliesTo, ReplyId, ReplyRow, Settled,
    },
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
            Some(post) if house.desk.kind(&place, post).await? == Kind::Question => {
                groups(house, words, &place, &coach, post).await
            }
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

/// The answers to a question by the first move found in them: how many begin with each, and a menu of them.
pub async fn groups(
    house: &House,
    words: &'static Words,
    place: &Place,
    coach: &Person,
    post: PostId,
) -> Answer<Letter> {
    let asked = house
        .desk
        .coach()
        .answers_by_move(place, coach, post)
        .await?;
    let sheet = house.desk.post(place, post).await?;
    if asked.groups.is_empty() {
        return Ok(Letter::text(words.say(&Coach::NoAnswerYet {
            kind: sheet.content.kind().name(),
            number: asked.number,
        })));
    }
    let mut lines = vec![words.say(&Coach::AnswersByMove {
        number: asked.number,
        answered: number(asked.answered),
        waiting: number(asked.waiting),
    })];
    let mut options = Vec::new();
    let mut first = 0;
    for group in &asked.groups {
        let label = begins(words, &group.begins);
        let count = number(group.answers.len());
        lines.push(words.say(&Coach::AnswerGroup {
            begins: Plain::of(&label),
            answers: count,
            waiting: number(group.waiting),
        }));
        // A menu has room for so many.
        if options.len() < 25 {
            let label = words.say(&Coach::AnswerGroupChoice {
                begins: Label::of(&label),
                answers: count,
            });
            let label = fit::short(&label, fit::OPTION);
            options.push(CreateSelectMenuOption::new(label, first.to_string()));
        }
        first += group.answers.len();
    }
    let menu = CreateSelectMenu::new(
        Press::Groups(post).id(place),
        CreateSelectMenuKind::String { options },
    )
    .placeholder(words.say(&Coach::AnswerGroupPick));
    let letter = Letter::text(lines.join("\n"));
    let letter = match sheet.content.picture() {
        Some(picture) => letter.picture("position", picture, words),
        None => letter,
    };
    Ok(letter.row(CreateActionRow::SelectMenu(menu)))
}

/// What answers have in common, in the coach's words.
fn begins(words: &Words, begins: &Begins) -> String {
    match begins {
        Begins::Move { san } => words.moves(san),
        Begins::NoMove => words.say(&Coach::BeginsNoMove),
        Begins::Replaced => words.say(&Coach::BeginsReplaced),
    }
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
    let sheet = house.desk.post(place, post).await?;
    // Answers to a question come in the order of their groups.
    let rows: Vec<(ReplyRow, Option<String>)> = match sheet.content.kind() {
        Kind::Question => {
            let asked = house
                .desk
                .coach()
                .answers_by_move(place, coach, post)
                .await?;
            let in_group = |group: AnswerGroup| {
                let label = begins(words, &group.begins);
                let answers = group.answers.into_iter();
                answers.map(move |row| (row, Some(label.clone())))
            };
            asked.groups.into_iter().flat_map(in_group).collect()
        }
        Kind::Problem { .. } | Kind::Words => {
            let rows = house.desk.coach().replies(place, coach, post).await?;
            rows.into_iter().map(|row| (row, None)).collect()
        }
    };
    let kind = sheet.content.kind().name();
    if rows.is_empty() {
        return Ok(Letter::text(words.say(&Coach::NoAnswerYet {
            kind,
            number: sheet.number,
        })));
    }
    let at = match shown {
        Shown::Nth(at) => at.min(rows.len() - 1),
        Shown::Reply(reply) => rows
            .iter()
            .position(|(row, _)| row.reply == reply)
            .unwrap_or(0),
    };
    let (row, group) = &rows[at];
    let head = words.say(&Coach::AnswerToPost {
        at: number(at + 1),
        of: number(rows.len()),
        kind,
        number: sheet.number,
        when: Moment::of(row.received_at),
    });
    let mut head = format!("{head}\n{}", stands(words, row));
    let mut acts = acts(words, place, post, row);
    if let Some(begins) = group {
        let begins = Plain::of(begins);
        head = format!("{head}\n{}", words.say(&Coach::AnswerInGroup { begins }));
        let id = Press::Groups(post).id(place);
        let label = words.say(&Coach::ButtonGroups);
        acts.push(buttons::button(id, &label, ButtonStyle::Secondary));
    }
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
        RepliesTo::Question => {
            let shown = row.example.as_ref().map(|example| example.leave);
            let mut row = vec![act(Press::Mark(reply), mark, ButtonStyle::Success)];
            row.extend(match shown {
                None => Some(act(
                    Press::Show { post, reply },
                    Coach::ButtonShow,
                    ButtonStyle::Primary,
                )),
                // Whoever said no is not asked again.
                Some(Some(Leave::Refused)) => None,
                Some(_) => Some(act(
                    Press::NoLongerShow { post, reply },
                    Coach::ButtonNoLongerShow,
                    ButtonStyle::Secondary,
                )),
            });
            row
        }
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
    let shown = match &row.example {
        None => String::new(),
        Some(ExampleRow {
            leave,
            words: beside,
        }) => {
            let stands = words.say(&Coach::ExampleIs { leave: *leave });
            match beside.is_empty() {
                true => format!("\n\n{stands}"),
                false => {
                    let said = Plain::of(beside);
                    format!(
                        "\n\n{stands}\n{}",
                        words.say(&Coach::ExampleBeside { said })
                    )
                }
            }
        }
    };
    let text = format!(
        "{head}\n{}\n\n> {}{said}{shown}",
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
