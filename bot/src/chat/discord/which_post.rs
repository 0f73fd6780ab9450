//! Which post somebody means, where several are open: those their moves fit, and what they are asked.

use futures::StreamExt as _;
use poise::serenity_prelude as serenity;
use serenity::{MessageId, UserId};

use super::{
    KEY,
    buttons::{self, Press},
    house::{self, House},
    letter::Letter,
    text::{And, Answerable, Label, Or, Plain, Talk},
};
use crate::{
    desk::{AskedBack, DeskError, Kind, OpenPost, Place, PostId, PostRow, Why},
    words::Words,
};

/// Of the posts open for someone, those that a text is for: the only one, the one in whose position its
/// moves are legal, or all that it may be for.
pub async fn aimed(
    house: &House,
    user: UserId,
    open: &[(Place, PostRow)],
    text: &str,
) -> Result<Vec<(Place, PostRow)>, DeskError> {
    if open.len() < 2 {
        return Ok(open.to_vec());
    }
    let posts: Vec<(Place, PostId)> = open
        .iter()
        .map(|(place, row)| (place.clone(), row.post))
        .collect();
    let fitting = house
        .desk
        .member()
        .aim(&posts, &user.to_string(), text)
        .await?;
    if fitting.is_empty() {
        return Ok(open.to_vec());
    }
    Ok(open
        .iter()
        .filter(|(place, row)| {
            fitting
                .iter()
                .any(|(p, post)| p == place && *post == row.post)
        })
        .cloned()
        .collect())
}

/// Asks which of several posts is meant, with a button for each that asks for `press` at it.
pub async fn which_one(
    house: &House,
    words: &Words,
    several: &[(Place, PostRow)],
    press: fn(PostId) -> Press,
) -> Result<Letter, DeskError> {
    let one_group = several.iter().all(|(place, _)| *place == several[0].0);
    let mut letter = Letter::text(words.say(&match one_group {
        true => Talk::WhichPosition,
        false => Talk::WhichGroup,
    }));
    for five in several.chunks(5).take(5) {
        let mut row = Vec::new();
        for (place, post) in five {
            let label = named(house, words, several, place, post).await?;
            row.push(buttons::button(
                press(post.post).id(place),
                &label,
                serenity::ButtonStyle::Primary,
            ));
        }
        letter = letter.row(serenity::CreateActionRow::Buttons(row));
    }
    Ok(letter)
}

/// Asks about an answer whose moves fit other posts than the one it was sent to; its text waits in the
/// meantime.
pub fn elsewhere(
    house: &House,
    words: &Words,
    place: &Place,
    user: UserId,
    source: MessageId,
    text: &str,
    asked: &AskedBack,
) -> Letter {
    house.let_wait(user, source, text.to_owned());
    let quote = words.say(&Talk::QuotedAnswer {
        quote: Plain::quote(text),
    });
    let question = asked_back(words, asked.why, &asked.posts, true);
    let mut letter = Letter::text(format!("{quote}\n{question}"));
    for five in asked.posts.chunks(5).take(5) {
        let row = five
            .iter()
            .map(|post| {
                buttons::button(
                    Press::To(post.post).id(place),
                    &words.say(&Talk::ButtonSendTo {
                        kind: post.holds.name(),
                        number: post.number,
                    }),
                    serenity::ButtonStyle::Primary,
                )
            })
            .collect();
        letter = letter.row(serenity::CreateActionRow::Buttons(row));
    }
    letter
}

/// The question about a message of which nothing was kept yet; `hidden` where nobody else sees it.
pub fn asked_back(words: &Words, why: Why, posts: &[OpenPost], hidden: bool) -> String {
    let numbers = || posts.iter().map(|post| post.number).collect();
    let asks = |post: &OpenPost| post.holds == Kind::Question;
    words.say(&match (why, posts) {
        (Why::MayTell, [only]) if asks(only) => Talk::MayBeAnAnswer {
            number: only.number,
            hidden,
        },
        (Why::Several, several) if several.iter().any(asks) => Talk::CouldAnswer {
            posts: Or {
                or: several.iter().map(Answerable::from).collect(),
            },
        },
        (Why::MayTell, _) => Talk::MayTellMove {
            numbers: Or { or: numbers() },
            hidden,
        },
        (Why::Elsewhere, [only]) => Talk::FitsAnother {
            number: only.number,
        },
        (Why::Elsewhere | Why::Several, _) => Talk::FitsSeveral {
            numbers: And { and: numbers() },
        },
    })
}

/// A post as it is told apart from the others: by its number and topic, or by its group.
pub async fn named(
    house: &House,
    words: &Words,
    among: &[(Place, PostRow)],
    place: &Place,
    post: &PostRow,
) -> Result<String, DeskError> {
    let (kind, number) = (post.kind.name(), post.number);
    if among.iter().all(|(other, _)| other == place) {
        let sign = post.topic.as_deref().or(post.kind.task());
        let sign = sign.unwrap_or_default();
        return Ok(words.say(&match sign {
            "" => Talk::PostNamed { kind, number },
            sign => Talk::PostOn {
                kind,
                number,
                topic: Label::of(sign),
            },
        }));
    }
    let group = Label::of(&house.desk.settings(place).await?.name);
    Ok(words.say(&Talk::PostOfGroup {
        group,
        kind,
        number,
    }))
}

/// How many servers are asked whether somebody new is on them.
const MOST_ASKED: usize = 200;

/// How many of them at a time.
const ASKED_AT_ONCE: usize = 8;

/// How many open posts of a group count.
const MOST_OPEN: usize = 10;

/// Open posts of the groups a person belongs to: those they have answered in, and those on whose servers
/// they were seen. Of somebody new the servers that have a post open are asked, once in a while.
pub async fn open_for(house: &House, user: UserId) -> Result<Vec<(Place, PostRow)>, DeskError> {
    let known = house.desk.open_for(KEY, &user.to_string()).await?;
    let mut places: Vec<Place> = known.into_iter().map(|(place, _)| place).collect();
    let newcomer = places.is_empty();
    let seen = house.seen_on(user);
    if newcomer || !seen.is_empty() {
        let mut unsure = Vec::new();
        for (server, channels) in house.servers_with_groups() {
            if !newcomer && !seen.contains(&server) {
                continue;
            }
            let mut open = Vec::new();
            for channel in channels {
                let place = house::place(channel);
                if !places.contains(&place) && !open_posts(house, &place).await?.is_empty() {
                    open.push(place);
                }
            }
            match seen.contains(&server) {
                true => places.extend(open),
                false if !open.is_empty() => unsure.push((server, open)),
                false => {}
            }
        }
        let servers: Vec<serenity::GuildId> = unsure.iter().map(|(server, _)| *server).collect();
        let mut ask = house.not_asked(user, &servers);
        if ask.len() > MOST_ASKED {
            tracing::warn!(
                servers = ask.len(),
                "somebody new is looked for on some only"
            );
            ask.truncate(MOST_ASKED);
        }
        let found: Vec<serenity::GuildId> = futures::stream::iter(ask.clone())
            .map(|server| async move {
                let member = house.http.get_member(server, user).await;
                member.is_ok().then_some(server)
            })
            .buffer_unordered(ASKED_AT_ONCE)
            .filter_map(std::future::ready)
            .collect()
            .await;
        house.note_asked(user, &ask);
        for server in found {
            house.note_seen(user, Some(server));
            places.extend(
                unsure
                    .iter()
                    .filter(|(asked, _)| *asked == server)
                    .flat_map(|(_, open)| open.clone()),
            );
        }
    }
    let mut all = Vec::new();
    for place in places {
        for row in open_posts(house, &place).await? {
            all.push((place.clone(), row));
        }
    }
    // In an order that does not change from one look to the next.
    all.sort_by_key(|(place, row)| (house::channel(place), row.number));
    Ok(all)
}

/// The open posts of a group by number, of the latest ones.
pub async fn open_posts(house: &House, place: &Place) -> Result<Vec<PostRow>, DeskError> {
    let mut rows = house.desk.posts(place, MOST_OPEN).await?;
    rows.retain(|row| row.open);
    rows.sort_by_key(|row| row.number);
    Ok(rows)
}
