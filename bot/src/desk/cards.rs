//! Topic cards: the program's own of each mating pattern, and those that a group's coaches wrote.
//!
//! A coach's card stands in the place of the program's of the same pattern, or is about a topic of the group
//! that the program has none of. The words of the program's stand above this floor, under the pattern's name;
//! here it is known that they are meant. Which cards would tell of an open post is found in [`super::card_held`];
//! a card is drawn by `card_drawing`.

use sealed_move_store::{CardOf, CardWords as KeptWords, Db, Group};

use super::{
    CardId, Picture, Side, TopicId,
    card_held::{self, OpenProblem},
    drawing::board_of,
    error::{DeskError, Done, not_found},
    refusal::Refusal,
};
use crate::chess::{
    Stipulation,
    card::{self, Example},
    fact::{Pattern, Theirs},
    name::{self, Source, meant},
};

/// The most characters of a coach's definition.
pub const LONGEST_DEFINITION: usize = 500;
/// The most characters of what a coach tells to look for.
pub const LONGEST_LOOK: usize = 400;

/// What a card is called.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[serde(untagged)]
pub enum CardName {
    /// As the pattern is.
    Pattern(Pattern),
    /// As the group's topic is.
    Topic(Theirs),
}

/// A card and what it is called, to be led to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CardLink {
    /// Which.
    pub card: CardId,
    /// What it is called.
    pub named: CardName,
}

/// A card in a list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CardRow {
    /// Which, and what it is called.
    pub link: CardLink,
    /// Whether it is a coach's.
    pub by_coach: bool,
    /// Numbers of the open posts of which it would tell. Members do not see a card while there are any.
    pub tells_of: Vec<i64>,
}

/// Whose words are on a card.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CardWords {
    /// The program's, which stand under the pattern's name, with where that is from.
    Ours(Source),
    /// A coach's.
    Coachs {
        /// What it is about.
        definition: String,
        /// What to look for; may be empty.
        look: String,
    },
}

impl CardWords {
    /// Whether they are a coach's.
    pub fn by_coach(&self) -> bool {
        matches!(self, Self::Coachs { .. })
    }
}

/// A card as it is shown.
#[derive(Clone)]
pub struct CardSheet {
    /// Which, and what it is called.
    pub link: CardLink,
    /// The words.
    pub words: CardWords,
    /// Patterns that are taken for it.
    pub relatives: Vec<&'static str>,
    /// The example, where there is one.
    pub example: Option<ShownExample>,
    /// As in [`CardRow`].
    pub tells_of: Vec<i64>,
}

/// A card's example.
#[derive(Clone)]
pub struct ShownExample {
    /// FEN of the position.
    pub fen: String,
    /// Who is to move.
    pub side: Side,
    /// What can be reached by force, where that is proved.
    pub task: Option<Stipulation>,
    /// The moves in SAN; may be none.
    pub line: Vec<String>,
    /// The same, numbered.
    pub solution: String,
    /// The position.
    pub start: Picture,
    /// Where the moves lead, with guards and flights marked, where there are moves.
    pub end: Option<Picture>,
}

/// A card as it is known: the program's, or a coach's with what the store keeps of it.
#[derive(Clone, Debug)]
pub(super) struct Known {
    pub link: CardLink,
    pub words: CardWords,
    pub relatives: Vec<&'static str>,
    pub example: Option<Example>,
}

impl Known {
    /// The program's card of a pattern.
    fn ours(pattern: &'static str) -> Option<Self> {
        let card = card::card(pattern)?;
        Some(Self {
            link: CardLink::of_pattern(pattern),
            words: CardWords::Ours(card.source),
            relatives: card.relatives,
            example: Some(card.example),
        })
    }

    /// What a coach wrote about `link`. A pattern's card without an example of its own has the program's.
    fn coachs(link: CardLink, words: KeptWords) -> Done<Self> {
        let ours = match link.card {
            CardId::Pattern(pattern) => card::card(pattern),
            CardId::Topic(_) => None,
        };
        let (relatives, our_example) = match ours {
            Some(card) => (card.relatives, Some(card.example)),
            None => (Vec::new(), None),
        };
        let example = match words.fen {
            None => our_example,
            Some(fen) => Some(Example {
                position: board_of(&fen)
                    .ok_or_else(|| DeskError::damaged("a card's position cannot be set up"))?,
                line: serde_json::from_value(words.line)
                    .map_err(|error| DeskError::damaged(format!("a card's line: {error}")))?,
                fen,
            }),
        };
        Ok(Self {
            link,
            words: CardWords::Coachs {
                definition: words.definition,
                look: words.look,
            },
            relatives,
            example,
        })
    }

    pub(super) fn by_coach(&self) -> bool {
        self.words.by_coach()
    }
}

impl CardLink {
    pub(super) fn of_pattern(pattern: &'static str) -> Self {
        Self {
            card: CardId::Pattern(pattern),
            named: CardName::Pattern(Pattern {
                pattern: pattern.to_owned(),
            }),
        }
    }

    fn of_topic(id: TopicId, name: &str) -> Self {
        Self {
            card: CardId::Topic(id),
            named: CardName::Topic(name.into()),
        }
    }
}

/// Every card of a group as its coaches see them: the patterns' in their order, then the topics' by name.
pub(super) fn all(db: &Db<'_>, group: &Group) -> Done<Vec<Known>> {
    let mut kept = db.cards(group.id)?;
    let mut of = |about: &CardOf| {
        let at = kept.iter().position(|card| card.about == *about)?;
        Some(kept.swap_remove(at).words)
    };
    let mut all = Vec::new();
    for pattern in name::names() {
        let link = CardLink::of_pattern(pattern);
        match of(&CardOf::Pattern(pattern.to_owned())) {
            Some(words) => all.push(Known::coachs(link, words)?),
            None => all.extend(Known::ours(pattern)),
        }
    }
    for topic in db.topics(group.id)? {
        if let Some(words) = of(&CardOf::Topic(topic.id)) {
            all.push(Known::coachs(
                CardLink::of_topic(topic.id, &topic.name),
                words,
            )?);
        }
    }
    Ok(all)
}

/// Every card as members see them: where a coach's card of a pattern would tell of an open post, the
/// program's own, so that not even its absence tells which pattern the post is.
pub(super) fn for_members(
    cards: Vec<(Known, Vec<i64>)>,
    open: &[OpenProblem],
) -> Vec<(Known, Vec<i64>)> {
    let ours = |known: &Known| match known.link.card {
        CardId::Pattern(pattern) => Known::ours(pattern),
        CardId::Topic(_) => None,
    };
    cards
        .into_iter()
        .map(|(known, tells_of)| match ours(&known) {
            Some(ours) if known.by_coach() && !tells_of.is_empty() => {
                let tells_of = card_held::tells_of(&ours, open);
                (ours, tells_of)
            }
            _ => (known, tells_of),
        })
        .collect()
}

/// The card of this id.
///
/// # Errors
/// When there is none.
pub(super) fn find<T>(cards: Vec<T>, card: CardId, id: impl Fn(&T) -> CardId) -> Done<T> {
    match cards.into_iter().find(|one| id(one) == card) {
        Some(found) => Ok(found),
        None => not_found(Refusal::NoCard),
    }
}

/// The cards that a reveal leads to: of the patterns in the final position, then of the post's topic.
pub(super) fn of_reveal(
    db: &Db<'_>,
    group: &Group,
    patterns: &[String],
    topic: Option<&str>,
) -> Done<Vec<CardLink>> {
    let known = |pattern: &String| name::names().find(|name| name == pattern);
    let mut cards: Vec<CardLink> = patterns
        .iter()
        .filter_map(known)
        .map(CardLink::of_pattern)
        .collect();
    let of_topic = match topic {
        Some(topic) => of_topic(db, group, topic)?,
        None => None,
    };
    cards.extend(of_topic.filter(|link| !cards.contains(link)));
    Ok(cards)
}

/// The card of a topic of this name: of the pattern that it means, else the one that a coach wrote about it.
pub(super) fn of_topic(db: &Db<'_>, group: &Group, topic: &str) -> Done<Option<CardLink>> {
    if let Some(pattern) = meant(topic) {
        return Ok(Some(CardLink::of_pattern(pattern)));
    }
    let Some(topic) = db.topic_by_name(group.id, topic)? else {
        return Ok(None);
    };
    let about = CardOf::Topic(topic.id);
    let there = db.cards(group.id)?.iter().any(|card| card.about == about);
    Ok(there.then(|| CardLink::of_topic(topic.id, &topic.name)))
}

impl CardRow {
    pub(super) fn of((known, tells_of): (Known, Vec<i64>)) -> Self {
        Self {
            by_coach: known.by_coach(),
            link: known.link,
            tells_of,
        }
    }
}
