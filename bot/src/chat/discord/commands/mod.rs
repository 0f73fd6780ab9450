//! The slash commands, one file each. Members' are under `/study`, coaches' under `/coach`; every answer
//! is private.

mod add_coach;
pub mod answers;
pub mod card;
mod check;
mod close;
mod export;
pub mod homework;
mod language;
mod leaderboard;
mod lesson;
pub mod lessons;
mod localized;
mod member;
mod move_to;
mod on_board;
mod pause;
mod piece_letters;
mod post_now;
mod preview;
mod question;
mod queue;
mod rights;
mod say;
mod set_up;
mod settings;
mod shelf;
pub mod study;
mod subject;
mod summary;
mod time;
mod topic;
pub mod week;

use std::{future::Future, sync::Arc};

use poise::serenity_prelude::{self as serenity, AutocompleteChoice, CreateAutocompleteResponse};

use super::{
    buttons::Press,
    fit,
    house::{self, House, Where},
    letter::Letter,
    oops::{Answer, Oops, said},
    private::{self, Asked},
    text::{self, Coach, Group, Label, Study},
    which_post,
};
use crate::{
    desk::{Person, Place, PostId, PostRow, Queued},
    words::{Words, english},
};
use subject::Subject;

/// What a command is called with.
pub type Ctx<'a> = poise::ApplicationContext<'a, Arc<House>, Oops>;

/// Every command, with its names and descriptions in every language.
pub fn all() -> Vec<poise::Command<Arc<House>, Oops>> {
    let mut all = vec![
        coach(),
        lesson::lesson(),
        study::study(),
        on_board::show_on_a_board(),
    ];
    localized::fill(&mut all);
    all
}

/// For coaches: positions, the week, and how the group is doing
#[poise::command(
    slash_command,
    guild_only,
    subcommand_required,
    subcommands(
        "set_up::set_up",
        "settings::settings",
        "add_coach::add_coach",
        "add_coach::remove_coach",
        "rights::permissions",
        "check::check",
        "shelf::shelf",
        "queue::queue",
        "question::question",
        "say::say",
        "week::week",
        "move_to::move_to",
        "time::time",
        "topic::topic",
        "preview::preview",
        "post_now::post_now",
        "pause::pause",
        "pause::resume",
        "close::close",
        "answers::answers",
        "member::member",
        "leaderboard::leaderboard",
        "summary::summary",
        "export::export"
    )
)]
async fn coach(_: Ctx<'_>) -> Answer<()> {
    // Discord offers only the sub-commands.
    Ok(())
}

/// The same, as Discord is told of them.
pub fn to_register() -> Vec<serenity::CreateCommand> {
    localized::to_register(&all())
}

/// Promises a private answer, does the work, gives it.
pub async fn privately(ctx: Ctx<'_>, work: impl Future<Output = Answer<Letter>>) -> Answer<()> {
    private::privately(ctx.data(), Asked::Command(ctx.interaction), work).await;
    Ok(())
}

/// The group of the channel a command is given in.
pub async fn group(ctx: Ctx<'_>) -> Answer<(Place, Where)> {
    match ctx.data().group_of(ctx.interaction.channel_id).await {
        Some(found) => Ok(found),
        None => said(Study::NoGroupHere),
    }
}

/// The group and the person, who must coach it.
pub async fn coaching(ctx: Ctx<'_>) -> Answer<(Place, Person)> {
    let (place, _) = group(ctx).await?;
    let person = Asked::Command(ctx.interaction)
        .person(ctx.data(), &place)
        .await;
    if !ctx.data().desk.is_coach(&place, &person.user).await? {
        return said(Group::CoachesOnly);
    }
    Ok((place, person))
}

/// Opens a form for a coach; anybody else is told who can.
pub async fn form_for_coach(
    ctx: Ctx<'_>,
    form: fn(&Words, &Place) -> serenity::CreateModal,
) -> Answer<()> {
    match coaching(ctx).await {
        Ok((place, coach)) => {
            let house = ctx.data();
            let form = form(house.words_for(&place, &coach).await, &place);
            private::form(house, Asked::Command(ctx.interaction), form).await;
            Ok(())
        }
        Err(error) => privately(ctx, async { Err(error) }).await,
    }
}

/// As [`privately`], for a coach; words that could not be told before come along.
pub async fn for_coach<'a, F>(
    ctx: Ctx<'a>,
    work: impl FnOnce(&'a House, Place, Person, &'static Words) -> F,
) -> Answer<()>
where
    F: Future<Output = Answer<Letter>>,
{
    privately(ctx, async {
        let (place, coach) = coaching(ctx).await?;
        let house: &House = ctx.data();
        let notes = house.desk.notes_for_coaches(&place).await?;
        let words = house.words_for(&place, &coach).await;
        let mut letter = work(house, place.clone(), coach, words).await?;
        if let Some(last) = notes.last() {
            let texts: Vec<String> = notes.iter().map(|note| words.say(&note.notice)).collect();
            let texts = fit::plain(&texts.join("\n"));
            letter.text = format!("{texts}\n\n{}", letter.text);
            letter.notes = Some((place, last.id));
        }
        Ok(letter)
    })
    .await
}

/// The group and the member of a command; in a direct message, of the one group with an open post.
pub async fn member(ctx: Ctx<'_>) -> Answer<(Place, Person)> {
    let asked = Asked::Command(ctx.interaction);
    let place = if ctx.interaction.guild_id.is_some() {
        group(ctx).await?.0
    } else {
        let open = which_post::open_for(ctx.data(), asked.user().id).await?;
        match open.as_slice() {
            [(place, _), rest @ ..] if rest.iter().all(|(other, _)| other == place) => {
                place.clone()
            }
            [] => {
                return said(Study::NothingOpenForYou);
            }
            _ => {
                return said(Study::SeveralGroupsOpen);
            }
        }
    };
    let person = asked.person(ctx.data(), &place).await;
    Ok((place, person))
}

/// The post meant by a command: of the thread it is given in, else the one that is open; where several
/// are, the one in whose position the text's moves are legal, or the question which one, with buttons
/// that ask for `press`.
pub async fn post_meant(
    ctx: Ctx<'_>,
    words: &Words,
    place: &Place,
    text: Option<&str>,
    press: fn(PostId) -> Press,
) -> Answer<Result<PostId, Letter>> {
    let house = ctx.data();
    let channel = ctx.interaction.channel_id.to_string();
    if let Some(post) = house.desk.find_post(place, &channel).await? {
        return Ok(Ok(post));
    }
    let mut open: Vec<(Place, PostRow)> = which_post::open_posts(house, place)
        .await?
        .into_iter()
        .map(|row| (place.clone(), row))
        .collect();
    if let Some(text) = text {
        open = which_post::aimed(house, ctx.interaction.user.id, &open, text).await?;
    }
    match open.as_slice() {
        [] => said(Study::NothingOpen),
        [(_, row)] => Ok(Ok(row.post)),
        several => Ok(Err(
            which_post::which_one(house, words, several, press).await?
        )),
    }
}

/// The one open post, for a coach's command that names none.
pub async fn one_post(ctx: Ctx<'_>, place: &Place) -> Answer<PostId> {
    // The question which one is not asked: a command has an option for it.
    match post_meant(ctx, english(), place, None, Press::Answer).await? {
        Ok(post) => Ok(post),
        Err(_) => said(Coach::PickPosition),
    }
}

/// Choices of positions on the shelf and in the week, for coaches only.
pub async fn choose_position(ctx: Ctx<'_>, typed: &str) -> CreateAutocompleteResponse {
    let mut choices = subjects(ctx).await;
    choices.retain(|(_, subject)| matches!(subject, Subject::Position(_)));
    offered(choices, typed)
}

/// The same, and the questions and words in the week.
pub async fn choose_subject(ctx: Ctx<'_>, typed: &str) -> CreateAutocompleteResponse {
    offered(subjects(ctx).await, typed)
}

async fn subjects(ctx: Ctx<'_>) -> Vec<(String, Subject)> {
    let Ok((place, coach)) = coaching(ctx).await else {
        return Vec::new();
    };
    let words = ctx.data().words_for(&place, &coach).await;
    let desk = &ctx.data().desk;
    let mut choices = Vec::new();
    for (i, item) in desk
        .coach()
        .queue(&place)
        .await
        .unwrap_or_default()
        .iter()
        .enumerate()
    {
        let subject = match &item.holds {
            Queued::Problem { position, .. } => Subject::Position(*position),
            Queued::Question { .. } | Queued::Words { .. } => Subject::Written(item.id),
        };
        choices.push((super::sheets::week::label(words, i, item), subject));
    }
    for position in desk
        .coach()
        .shelf(&place, &coach, 100)
        .await
        .unwrap_or_default()
    {
        let Some(id) = position.position else {
            continue;
        };
        let task = position
            .report
            .stipulation
            .map(|task| task.to_string())
            .unwrap_or_default();
        let verdict = super::sheets::report::soundness(words, position.report.verdict);
        let topic = text::topic(words, position.topic.as_deref());
        let label = format!("{} · {task} · {topic} · {verdict}", position.report.id);
        choices.push((fit::short(&label, fit::OPTION), Subject::Position(id)));
    }
    choices
}

/// Choices of what waits in the week, for coaches only.
pub async fn choose_item(ctx: Ctx<'_>, typed: &str) -> CreateAutocompleteResponse {
    let Ok((place, coach)) = coaching(ctx).await else {
        return CreateAutocompleteResponse::new();
    };
    let words = ctx.data().words_for(&place, &coach).await;
    let queue = ctx
        .data()
        .desk
        .coach()
        .queue(&place)
        .await
        .unwrap_or_default();
    let choices = queue
        .iter()
        .enumerate()
        .map(|(i, item)| (super::sheets::week::label(words, i, item), item.id))
        .collect();
    offered(choices, typed)
}

/// Choices of posts, the open ones first.
pub async fn choose_post(ctx: Ctx<'_>, typed: &str) -> CreateAutocompleteResponse {
    let Ok((place, coach)) = coaching(ctx).await else {
        return CreateAutocompleteResponse::new();
    };
    let words = ctx.data().words_for(&place, &coach).await;
    let mut posts = ctx.data().desk.posts(&place, 100).await.unwrap_or_default();
    posts.sort_by_key(|row| (!row.open, std::cmp::Reverse(row.number)));
    let choices = posts
        .into_iter()
        .map(|row| {
            let head = words.say(&match row.kind.task() {
                Some(task) => Coach::PositionChoice {
                    number: row.number,
                    task: Label::of(task),
                },
                None => Coach::PostChoice {
                    kind: row.kind.name(),
                    number: row.number,
                },
            });
            let mut parts = vec![head, text::topic(words, row.topic.as_deref())];
            if row.open {
                parts.push(words.say(&Coach::StillOpen));
            }
            let label = parts.join(" · ");
            (fit::short(&label, fit::OPTION), row.post)
        })
        .collect();
    offered(choices, typed)
}

/// Choices of topics by name.
pub async fn choose_topic(ctx: Ctx<'_>, typed: &str) -> CreateAutocompleteResponse {
    let Ok((place, _)) = group(ctx).await else {
        return CreateAutocompleteResponse::new();
    };
    let typed = typed.to_lowercase();
    let topics = ctx.data().desk.topics(&place).await.unwrap_or_default();
    let choices = topics
        .into_iter()
        .filter(|topic| topic.to_lowercase().contains(&typed))
        .take(25)
        .map(AutocompleteChoice::from)
        .collect();
    CreateAutocompleteResponse::new().set_choices(choices)
}

fn offered<I: Into<i64>>(choices: Vec<(String, I)>, typed: &str) -> CreateAutocompleteResponse {
    let typed = typed.to_lowercase();
    let choices = choices
        .into_iter()
        .filter(|(label, _)| label.to_lowercase().contains(&typed))
        .take(25)
        .map(|(label, id)| AutocompleteChoice::new(label, id.into()))
        .collect();
    CreateAutocompleteResponse::new().set_choices(choices)
}

/// A person named in an option.
pub async fn named(ctx: Ctx<'_>, user: &serenity::User) -> Person {
    let nick = match ctx.interaction.guild_id {
        Some(guild) => ctx.data().http.get_member(guild, user.id).await.ok(),
        None => None,
    };
    Person {
        user: user.id.to_string(),
        name: house::shown(
            user,
            nick.as_ref().and_then(|member| member.nick.as_deref()),
        ),
        language: None,
    }
}
