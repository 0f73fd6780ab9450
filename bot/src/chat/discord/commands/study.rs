//! `/study`: what members ask for. Each answer is for the one who asks.

use std::sync::Arc;

use poise::serenity_prelude as serenity;
use serde_json::json;
use serenity::{ButtonStyle, CreateActionRow, MessageId, UserId};

use super::{
    Answer, Ctx, card, homework, language, leaderboard, lessons, member, post_meant, privately,
};
use crate::{
    chat::{
        common::text::points_rules,
        discord::{
            buttons::{self, Press},
            fit, held,
            house::House,
            letter::Letter,
            oops::Oops,
            private::Asked,
            sheets::{tables, verdict},
            text::{Decimal, Plain, Study},
            which_post,
        },
        said::{in_words, words_of},
    },
    desk::{DeskError, Kind, OwnState, Person, Place, PostId, Taken},
    words::Words,
};

/// For members: answer, hints, your own standing
#[poise::command(
    slash_command,
    interaction_context = "Guild|BotDm",
    subcommand_required,
    subcommands(
        "answer",
        "hint_command",
        "board",
        "give_up",
        "progress",
        "homework::homework",
        "leaderboard::leaderboard",
        "card::card",
        "lessons::lesson",
        "points",
        "my_data",
        "erase_me",
        "language::language",
        "help"
    )
)]
pub async fn study(_: Ctx<'_>) -> Answer<()> {
    // Discord offers only the sub-commands.
    Ok(())
}

/// Answer the open position
#[poise::command(slash_command)]
async fn answer(ctx: Ctx<'_>, moves: String) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        let words = ctx.data().words_for(&place, &person).await;
        let source = ctx.interaction.id;
        match post_meant(ctx, words, &place, Some(&moves), Press::To).await? {
            Ok(post) => {
                let source = source.to_string();
                answered(ctx.data(), words, &place, &person, post, &source, &moves).await
            }
            Err(question) => {
                let waits = MessageId::new(source.get());
                ctx.data().let_wait(ctx.interaction.user.id, waits, moves);
                Ok(question)
            }
        }
    })
    .await
}

/// Takes an answer and gives the verdict.
pub async fn answered(
    house: &House,
    words: &Words,
    place: &Place,
    person: &Person,
    post: PostId,
    source: &str,
    text: &str,
) -> Answer<Letter> {
    let taken = house
        .desk
        .member()
        .answer_to(place, person, post, source, text)
        .await?;
    match taken {
        Taken::Answer(sheet) => Ok(verdict::letter(place, &sheet)),
        Taken::AskedBack(asked) => {
            let (Ok(user), Ok(message)) = (person.user.parse(), source.parse()) else {
                return Ok(Letter::text(which_post::asked_back(
                    words,
                    asked.why,
                    &asked.posts,
                    true,
                )));
            };
            let (user, message) = (UserId::new(user), MessageId::new(message));
            Ok(which_post::elsewhere(
                house, words, place, user, message, text, &asked,
            ))
        }
    }
}

/// Get the next hint: the piece, then the idea, then the move
#[poise::command(slash_command, rename = "hint")]
async fn hint_command(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        let words = ctx.data().words_for(&place, &person).await;
        match post_meant(ctx, words, &place, None, Press::Hint).await? {
            Ok(post) => hint_offer(ctx.data(), &place, &person, post).await,
            Err(question) => Ok(question),
        }
    })
    .await
}

/// What the next hint takes, and a button to take it; one that takes nothing is given at once.
pub async fn hint_offer(
    house: &House,
    place: &Place,
    person: &Person,
    post: PostId,
) -> Answer<Letter> {
    let own = house.desk.member().own_post(place, person, post).await?;
    if !own.hint_costs || !own.live {
        return hint(house, place, person, post).await;
    }
    let take = buttons::take_hint(place, post, "button-take-it", &own.hint_label);
    Ok(Letter::text(fit::plain(&in_words(&own.hint_price)))
        .row(CreateActionRow::Buttons(vec![take])))
}

/// The next hint.
pub async fn hint(house: &House, place: &Place, person: &Person, post: PostId) -> Answer<Letter> {
    let sheet = house.desk.member().hint(place, person, post).await?;
    let own = words_of(&sheet.said.language);
    let mut row = vec![buttons::button(
        Press::Answer(post).id(place),
        &own.text("button-answer"),
        ButtonStyle::Primary,
    )];
    if sheet.more {
        let label = &sheet.price_label;
        row.push(buttons::take_hint(
            place,
            post,
            "button-another-hint",
            label,
        ));
    }
    let text = own.say(&json!({
        "is": "hint-is",
        "number": sheet.number,
        "step": sheet.step,
        "hint": in_words(&sheet.said),
    }));
    let text = fit::plain(&text);
    Ok(Letter::text(text).row(CreateActionRow::Buttons(row)))
}

/// See the board as your line stands
#[poise::command(slash_command)]
async fn board(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        let words = ctx.data().words_for(&place, &person).await;
        match post_meant(ctx, words, &place, None, Press::Board).await? {
            Ok(post) => own_board(ctx.data(), words, &place, &person, post).await,
            Err(question) => Ok(question),
        }
    })
    .await
}

/// The board as a member's line stands.
pub async fn own_board(
    house: &House,
    words: &Words,
    place: &Place,
    person: &Person,
    post: PostId,
) -> Answer<Letter> {
    let picture = house.desk.member().my_board(place, person, post).await?;
    let own = house.desk.member().own_post(place, person, post).await?;
    let head = match own.state {
        Some(OwnState::Solved) => Study::YourBoardSolved {
            points: Decimal::of(own.points),
        },
        Some(OwnState::GivenUp) => Study::YourBoardGivenUp,
        Some(OwnState::Playing) | None => Study::YourBoard,
    };
    let letter = Letter::text(words.say(&head)).picture("board", &picture, words);
    if !own.live {
        return Ok(letter);
    }
    let answer = buttons::button(
        Press::Answer(post).id(place),
        &words.text("button-answer"),
        ButtonStyle::Primary,
    );
    Ok(letter.row(CreateActionRow::Buttons(vec![answer])))
}

/// Give the open position up
#[poise::command(slash_command, rename = "give-up")]
async fn give_up(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        let words = ctx.data().words_for(&place, &person).await;
        match post_meant(ctx, words, &place, None, Press::GiveUp).await? {
            Ok(post) => gave_up(ctx.data(), words, &place, &person, post).await,
            Err(question) => Ok(question),
        }
    })
    .await
}

/// Gives the post up, and shows the board as the member leaves it.
pub async fn gave_up(
    house: &House,
    words: &Words,
    place: &Place,
    person: &Person,
    post: PostId,
) -> Answer<Letter> {
    let said = house.desk.member().give_up(place, person, post).await?;
    let own = house.desk.member().own_post(place, person, post).await?;
    let letter = Letter::text(fit::plain(&in_words(&said)));
    Ok(match own.board {
        Some(board) => letter.picture("board", &board, words),
        None => letter,
    })
}

/// See your own standing
#[poise::command(slash_command)]
async fn progress(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        let words = ctx.data().words_for(&place, &person).await;
        standing(ctx.data(), words, &place, &person, None).await
    })
    .await
}

/// A member's standing; asked at a post, with the last verdict on it and the board.
pub async fn standing(
    house: &House,
    words: &Words,
    place: &Place,
    person: &Person,
    post: Option<PostId>,
) -> Answer<Letter> {
    let progress = house.desk.member().progress(place, person).await?;
    let mut text = tables::progress(words, &progress);
    let mut board = None;
    if let Some(post) = post
        && house.desk.kind(place, post).await? == Kind::Question
    {
        let own = house.desk.member().own_answer(place, person, post).await?;
        let mut letter = Letter::text(match own.reply {
            Some(_) => format!("{}\n\n{text}", homework::own(words, &own)),
            None => text,
        });
        letter.rows = homework::leave_rows(words, place, &own.examples);
        return Ok(letter);
    }
    if let Some(post) = post {
        let replies = house.desk.member().my_replies(place, person, post).await?;
        if let Some(last) = replies.last().filter(|last| !last.said.is_empty()) {
            let head = words.say(&match last.text.is_empty() {
                true => Study::YourLastAnswerDeleted,
                false => Study::YourLastAnswer {
                    quote: Plain::quote(&last.text),
                },
            });
            text = format!("{head}\n{}\n\n{text}", fit::plain(&in_words(&last.said)));
        }
        let told = house.desk.member().my_words(place, person).await?;
        if let Some(word) = told
            .iter()
            .rev()
            .find(|word| replies.iter().any(|reply| reply.reply == word.reply))
        {
            text = format!("{}\n\n{text}", verdict::answered(words, word));
        }
        if !progress.line.is_empty() {
            board = house.desk.member().my_board(place, person, post).await.ok();
        }
    }
    let letter = Letter::text(text);
    Ok(match board {
        Some(board) => letter.picture("board", &board, words),
        None => letter,
    })
}

/// How points are counted here
#[poise::command(slash_command)]
async fn points(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        let house = ctx.data();
        let words = house.words_for(&place, &person).await;
        let settings = house.desk.settings(&place).await?;
        Ok(Letter::text(points_rules(words, &settings).join("\n\n")))
    })
    .await
}

/// See and take away everything that is kept of you
#[poise::command(slash_command, rename = "my-data")]
async fn my_data(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        let house = ctx.data();
        let words = house.words_for(&place, &person).await;
        let kept = match house.desk.member().kept_of_me(&place, &person).await {
            // Of somebody new a message may wait and nothing else be kept.
            Err(DeskError::NotFound(_)) if held::waits(house, &place, &person.user).await? => {
                serde_json::json!({})
            }
            kept => kept?,
        };
        let kept = held::with_waiting(house, &place, &person.user, kept).await?;
        let text = serde_json::to_vec_pretty(&kept).map_err(Oops::unwritten)?;
        Ok(Letter::text(words.say(&Study::KeptOfYou)).file("kept-of-me.json", text))
    })
    .await
}

/// Have everything erased that is kept of you
#[poise::command(slash_command, rename = "erase-me")]
async fn erase_me(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        let words = ctx.data().words_for(&place, &person).await;
        let yes = buttons::button(
            Press::EraseMe.id(&place),
            &words.say(&Study::ButtonYesErase),
            ButtonStyle::Danger,
        );
        Ok(Letter::text(words.say(&Study::ErasureAsked)).row(CreateActionRow::Buttons(vec![yes])))
    })
    .await
}

/// Erases, and says so.
pub async fn erased(
    house: &House,
    words: &Words,
    place: &Place,
    person: &Person,
) -> Answer<Letter> {
    match house.desk.member().erase_me(place, person).await {
        Err(DeskError::NotFound(_)) if held::waits(house, place, &person.user).await? => {}
        erased => erased?,
    }
    held::erase(house, place, std::slice::from_ref(&person.user)).await?;
    Ok(Letter::text(words.say(&Study::ErasedYou)))
}

/// How this works
#[poise::command(slash_command)]
async fn help(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async {
        let words = Asked::Command(ctx.interaction).words(ctx.data()).await;
        Ok(Letter::text(help_text(words, ctx.data())))
    })
    .await
}

fn help_text(words: &Words, house: &Arc<House>) -> String {
    let paragraphs = [
        Study::HelpAnswering {
            content: house.content,
        },
        Study::HelpOutcome,
        Study::HelpLines,
        Study::HelpPoints,
        Study::HelpCards,
        Study::HelpEditing,
        Study::HelpData,
        Study::HelpLanguage,
    ];
    paragraphs.map(|text| words.say(&text)).join("\n")
}
