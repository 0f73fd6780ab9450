//! `/study`: what members ask for. Each answer is for the one who asks.

use std::sync::Arc;

use poise::serenity_prelude as serenity;
use serde_json::json;
use serenity::{ButtonStyle, CreateActionRow, MessageId, UserId};

use super::{Answer, Ctx, leaderboard, member, post_meant, privately};
use crate::{
    chat::{
        discord::{
            buttons::{self, Press},
            held,
            house::House,
            letter::Letter,
            oops::{Oops, said},
            sheets::{tables, verdict},
            talk, words,
        },
        said::{in_words, words_of},
    },
    desk::{DeskError, Person, Place, Taken},
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
        "leaderboard::leaderboard",
        "points",
        "my_data",
        "erase_me",
        "help"
    )
)]
pub async fn study(_: Ctx<'_>) -> Answer<()> {
    // Discord offers only the sub-commands.
    Ok(())
}

/// Answer the open position
#[poise::command(slash_command)]
async fn answer(
    ctx: Ctx<'_>,
    #[description = "Your move, or the whole line, such as Nf3 or 1.Qh7+ Kf8 2.Qh8#"] moves: String,
) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        let source = ctx.interaction.id;
        match post_meant(ctx, &place, Some(&moves), Press::To).await? {
            Ok(post) => {
                let source = source.to_string();
                answered(ctx.data(), &place, &person, post, &source, &moves).await
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
    place: &Place,
    person: &Person,
    post: i64,
    source: &str,
    text: &str,
) -> Answer<Letter> {
    let taken = house
        .desk
        .answer_to(place, person, post, source, text)
        .await?;
    match taken {
        Taken::Answer(sheet) => Ok(verdict::letter(place, &sheet)),
        Taken::AskedBack(asked) => {
            let (Ok(user), Ok(message)) = (person.user.parse(), source.parse()) else {
                return said(asked.message);
            };
            let question = (asked.message.as_str(), asked.posts.as_slice());
            let (user, message) = (UserId::new(user), MessageId::new(message));
            Ok(talk::elsewhere(house, place, user, message, text, question))
        }
    }
}

/// Get the next hint: the piece, then the idea, then the move
#[poise::command(slash_command, rename = "hint")]
async fn hint_command(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        match post_meant(ctx, &place, None, Press::Hint).await? {
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
    post: i64,
) -> Answer<Letter> {
    let own = house.desk.own_post(place, person, post).await?;
    if !own.hint_costs || !own.live {
        return hint(house, place, person, post).await;
    }
    let take = buttons::take_hint(place, post, "button-take-it", &own.hint_label);
    Ok(Letter::text(words::plain(&in_words(&own.hint_price)))
        .row(CreateActionRow::Buttons(vec![take])))
}

/// The next hint.
pub async fn hint(house: &House, place: &Place, person: &Person, post: i64) -> Answer<Letter> {
    let sheet = house.desk.hint(place, person, post).await?;
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
    let text = words::plain(&text);
    Ok(Letter::text(text).row(CreateActionRow::Buttons(row)))
}

/// See the board as your line stands
#[poise::command(slash_command)]
async fn board(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        match post_meant(ctx, &place, None, Press::Board).await? {
            Ok(post) => own_board(ctx.data(), &place, &person, post).await,
            Err(question) => Ok(question),
        }
    })
    .await
}

/// The board as a member's line stands.
pub async fn own_board(house: &House, place: &Place, person: &Person, post: i64) -> Answer<Letter> {
    let picture = house.desk.my_board(place, person, post).await?;
    let own = house.desk.own_post(place, person, post).await?;
    let letter = Letter::text(words::plain(format!("Your board: {}", own.ended).trim()))
        .picture("board", &picture);
    if !own.live {
        return Ok(letter);
    }
    let answer = buttons::button(
        Press::Answer(post).id(place),
        "Answer",
        ButtonStyle::Primary,
    );
    Ok(letter.row(CreateActionRow::Buttons(vec![answer])))
}

/// Give the open position up
#[poise::command(slash_command, rename = "give-up")]
async fn give_up(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        match post_meant(ctx, &place, None, Press::GiveUp).await? {
            Ok(post) => gave_up(ctx.data(), &place, &person, post).await,
            Err(question) => Ok(question),
        }
    })
    .await
}

/// Gives the post up, and shows the board as the member leaves it.
pub async fn gave_up(house: &House, place: &Place, person: &Person, post: i64) -> Answer<Letter> {
    let said = house.desk.give_up(place, person, post).await?;
    let letter = Letter::text(words::plain(&said));
    let own = house.desk.own_post(place, person, post).await?;
    Ok(match own.board {
        Some(board) => letter.picture("board", &board),
        None => letter,
    })
}

/// See your own standing
#[poise::command(slash_command)]
async fn progress(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        standing(ctx.data(), &place, &person, None).await
    })
    .await
}

/// A member's standing; asked at a post, with the last verdict on it and the board.
pub async fn standing(
    house: &House,
    place: &Place,
    person: &Person,
    post: Option<i64>,
) -> Answer<Letter> {
    let progress = house.desk.progress(place, person).await?;
    let mut text = tables::progress(&progress);
    let mut board = None;
    if let Some(post) = post {
        let replies = house.desk.my_replies(place, person, post).await?;
        if let Some(last) = replies.last().filter(|last| !last.said.is_empty()) {
            let quote = words::plain(&words::short(&last.text.replace('\n', " "), 200));
            let head = match quote.as_str() {
                "" => "Your last answer here, whose words you have deleted:".to_owned(),
                quote => format!("Your last answer here: \"{quote}\""),
            };
            text = format!("{head}\n{}\n\n{text}", words::plain(&in_words(&last.said)));
        }
        let told = house.desk.my_words(place, person).await?;
        if let Some(word) = told
            .iter()
            .rev()
            .find(|word| replies.iter().any(|reply| reply.reply == word.reply))
        {
            text = format!("{}\n\n{text}", verdict::answered(word));
        }
        if !progress.line.is_empty() {
            board = house.desk.my_board(place, person, post).await.ok();
        }
    }
    let letter = Letter::text(text);
    Ok(match board {
        Some(board) => letter.picture("board", &board),
        None => letter,
    })
}

/// How points are counted here
#[poise::command(slash_command)]
async fn points(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async {
        let (place, _) = member(ctx).await?;
        let scale = ctx.data().desk.scale(&place).await?;
        Ok(Letter::text(words::plain(&scale.join("\n\n"))))
    })
    .await
}

/// See and take away everything that is kept of you
#[poise::command(slash_command, rename = "my-data")]
async fn my_data(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async {
        let (place, person) = member(ctx).await?;
        let house = ctx.data();
        let kept = match house.desk.kept_of_me(&place, &person).await {
            // Of somebody new a message may wait and nothing else be kept.
            Err(DeskError::NotFound(_)) if held::waits(house, &place, &person.user).await? => {
                serde_json::json!({})
            }
            kept => kept?,
        };
        let kept = held::with_waiting(house, &place, &person.user, kept).await?;
        let text = serde_json::to_vec_pretty(&kept).map_err(|e| Oops::Said(e.to_string()))?;
        Ok(Letter::text(
            "Everything that is kept of you in this group. To have it erased, use /study erase-me.",
        )
        .file("kept-of-me.json", text))
    })
    .await
}

/// Have everything erased that is kept of you
#[poise::command(slash_command, rename = "erase-me")]
async fn erase_me(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async {
        let (place, _) = member(ctx).await?;
        let yes = buttons::button(
            Press::EraseMe.id(&place),
            "Yes, erase everything",
            ButtonStyle::Danger,
        );
        Ok(Letter::text("Erase your name, answers, hints and points in this group? This cannot be undone. Messages that you wrote on Discord yourself stay until you delete them.")
            .row(CreateActionRow::Buttons(vec![yes])))
    })
    .await
}

/// Erases, and says so.
pub async fn erased(house: &House, place: &Place, person: &Person) -> Answer<Letter> {
    match house.desk.erase_me(place, person).await {
        Err(DeskError::NotFound(_)) if held::waits(house, place, &person.user).await? => {}
        erased => erased?,
    }
    held::erase(house, place, std::slice::from_ref(&person.user)).await?;
    Ok(Letter::text(
        "Everything that was kept of you in this group is erased.",
    ))
}

/// How this works
#[poise::command(slash_command)]
async fn help(ctx: Ctx<'_>) -> Answer<()> {
    privately(ctx, async { Ok(Letter::text(help_text(ctx.data()))) }).await
}

fn help_text(house: &Arc<House>) -> String {
    let hears = if house.content {
        "write it into the position's thread or this channel"
    } else {
        "call me by name with it"
    };
    format!(
        "**Answering.** Press Answer under the position, use /study answer, write to me directly, reply to the position's message, or {hears}. Any usual notation will do: Nf3, e2-e4, e8=Q, a whole line, or the letters of your language.\n\
**What comes of it.** In a sealed group you alone see the verdict; in an open one the others find it behind a spoiler mark. A move that you write where others read is taken as your answer, and hidden where I may. Talk is left alone; what may give a move away I hide where I may, and ask you in private what it is to be: your answer, a word to all, or nothing.\n\
**A longer line** is played out with you move by move. Hints come in three steps for each move of yours: the piece, the idea, the move.\n\
**Points.** /study points says how they are counted here.\n\
**Editing or deleting.** What was decided stands. A message in which I found no move may be edited, and is read again.\n\
**Your data.** /study my-data shows everything that is kept of you, /study erase-me erases it."
    )
}
