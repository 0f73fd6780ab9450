//! A place of a lesson that is stepped through: the move with the coach's words, and buttons to the places around.

use poise::serenity_prelude as serenity;
use serenity::{ButtonStyle, CreateActionRow, CreateButton};

use crate::{
    chat::discord::{
        buttons::{self, Press},
        fit,
        letter::Letter,
        text::{And, Label, Moment, Moves, Plain, Study, Tasked, number},
    },
    desk::{LessonWalk, Place, ToCome, WalkPart, WalkPlace},
    words::Words,
};

/// Side lines that have a button; Discord has five in a row, and one leads out again.
const MOST_SIDE_LINES: usize = 4;

/// The most characters of words beside a move.
const MOST_BESIDE: usize = 700;

/// A place of part `nth`, without its board.
pub fn letter(words: &Words, place: &Place, walk: &LessonWalk, nth: usize, at: usize) -> Letter {
    let part = &walk.parts[nth];
    let here = part.places.get(at);
    let mut parts = vec![words.say(&Study::WalkHead {
        title: Plain::of(&walk.title),
        step: part.at.step,
        steps: walk.steps,
        number: part.number,
    })];
    let mut say = |text: &str| {
        if !text.is_empty() {
            parts.push(fit::plain(&fit::short(text, MOST_BESIDE)));
        }
    };
    if at == 0 {
        say(&part.words);
    }
    if let Some(here) = here {
        say(&here.words_before);
        if !here.written.is_empty() {
            parts.push(moved(words, here));
        }
    }
    let mut say = |text: &str| {
        if !text.is_empty() {
            parts.push(fit::plain(&fit::short(text, MOST_BESIDE)));
        }
    };
    if let Some(here) = here {
        say(&here.words_after);
    }
    // What was said at the reveal comes behind the move that was asked for.
    if here.is_none_or(|here| here.next.is_empty() || !leads_to_asked(part, at)) {
        say(&part.at_reveal);
    }
    if let Some((side, task)) = part.task.filter(|_| part.asked_at == Some(at)) {
        parts.push(words.say(&Tasked::of(side, task)));
    }
    let rest = to_come(words, &walk.to_come);
    if !rest.is_empty() && nth + 1 == walk.parts.len() {
        parts.push(format!("-# {rest}"));
    }
    let mut letter = Letter::text(parts.join("\n\n"));
    let to = |nth: usize, at: usize| Press::Walk {
        lesson: walk.lesson,
        part: walk.parts[nth].at,
        at,
    };
    let turn = |way: &str, label: Study, to: Option<Press>| {
        turn(
            place,
            way,
            &words.say(&label),
            to,
            Press::Walk {
                lesson: walk.lesson,
                part: part.at,
                at,
            },
        )
    };
    if let Some(here) = here {
        letter = letter.row(CreateActionRow::Buttons(vec![
            turn("first", Study::ButtonFirst, (at > 0).then(|| to(nth, 0))),
            turn("back", Study::ButtonBack, here.before.map(|at| to(nth, at))),
            turn(
                "on",
                Study::ButtonForward,
                here.next.first().map(|at| to(nth, *at)),
            ),
            turn(
                "last",
                Study::ButtonLast,
                Some(end(part, at))
                    .filter(|end| *end != at)
                    .map(|at| to(nth, at)),
            ),
        ]));
        let side: Vec<CreateButton> = here
            .next
            .iter()
            .skip(1)
            .take(MOST_SIDE_LINES)
            .enumerate()
            .map(|(n, next)| {
                let label = Study::ButtonSideLine {
                    line: Label::of(&words.moves(&part.places[*next].written)),
                };
                turn(&format!("side{n}"), label, Some(to(nth, *next)))
            })
            .chain(
                branch(part, at)
                    .map(|out| turn("leave", Study::ButtonLeaveSideLine, Some(to(nth, out)))),
            )
            .collect();
        if !side.is_empty() {
            letter = letter.row(CreateActionRow::Buttons(side));
        }
    }
    if walk.parts.len() > 1 {
        letter = letter.row(CreateActionRow::Buttons(vec![
            turn(
                "part-back",
                Study::ButtonPreviousStep,
                nth.checked_sub(1).map(|nth| to(nth, 0)),
            ),
            turn(
                "part-on",
                Study::ButtonNextStep,
                Some(nth + 1)
                    .filter(|next| *next < walk.parts.len())
                    .map(|nth| to(nth, 0)),
            ),
        ]));
    }
    letter
}

/// A button to another place, off where there is none. Its id says which way it leads, for no two buttons of a
/// message may have one id.
fn turn(place: &Place, way: &str, label: &str, to: Option<Press>, here: Press) -> CreateButton {
    let id = format!("{}:{way}", to.unwrap_or(here).id(place));
    buttons::button(id, label, ButtonStyle::Secondary).disabled(to.is_none())
}

/// The move as it is printed, and in words.
fn moved(words: &Words, here: &WalkPlace) -> String {
    let told: Vec<String> = here.moved.iter().map(|fact| words.say(fact)).collect();
    let written = words.say(&Moves::of(&here.written));
    format!("**{written}**\n-# {}", told.join(" "))
}

/// The end of the main line from a place on.
fn end(part: &WalkPart, at: usize) -> usize {
    let mut at = at;
    while let Some(next) = part.places[at].next.first() {
        at = *next;
    }
    at
}

/// Where the side line that a place is in leaves the line that it belongs to.
fn branch(part: &WalkPart, at: usize) -> Option<usize> {
    let mut at = at;
    while let Some(before) = part.places[at].before {
        if part.places[before].next.first() != Some(&at) {
            return Some(before);
        }
        at = before;
    }
    None
}

/// Whether a place is on the way to the one where the move was asked for.
fn leads_to_asked(part: &WalkPart, at: usize) -> bool {
    let mut on_the_way = part.asked_at;
    while let Some(place) = on_the_way {
        if place == at {
            return true;
        }
        on_the_way = part.places[place].before;
    }
    false
}

/// What of a lesson is not revealed: that it is, and when, and nothing of what it holds.
pub fn to_come(words: &Words, to_come: &ToCome) -> String {
    let mut said = Vec::new();
    if !to_come.open.is_empty() {
        let numbers = to_come.open.iter().map(|open| Plain::of(&open.to_string()));
        said.push(words.say(&Study::LessonOpen {
            count: number(to_come.open.len()),
            numbers: And {
                and: numbers.collect(),
            },
        }));
    }
    if to_come.parts > 0 {
        let count = number(to_come.parts);
        said.push(words.say(&match to_come.next {
            Some(next) => Study::LessonComes {
                count,
                at: Moment::of(next),
            },
            None => Study::LessonLater { count },
        }));
    }
    said.join(" ")
}
