//! Buttons and menus: what they are called and what they carry.

use poise::serenity_prelude as serenity;
use serenity::{ButtonStyle, CreateActionRow, CreateButton};

use serde_json::json;

use super::{
    fit,
    text::{Coach, Study},
};
use crate::{
    chat::said::{in_words, words_of},
    desk::{
        CardId, Content, ItemId, Leave, LessonId, MemberId, Outcome, PartAt, Place, PositionId,
        PostId, PostSheet, ReplyId, Said, SameChoice, TakenOutId, Verdict, VerdictSheet,
    },
    words::Words,
};

/// What a press, a choice or a form asks for, read back from the id it carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pressed {
    /// Something in a group, which is named by its channel, so that a button works in a direct message
    /// too.
    In(u64, Press),
    /// A page of report number so and so, which is kept in memory.
    Page {
        /// The report.
        report: u64,
        /// The page, from 0.
        at: usize,
    },
    /// What becomes of a position of a report that was kept otherwise before.
    Same {
        /// The report.
        report: u64,
        /// The position's place in it, from 0.
        at: usize,
        /// The coach's choice.
        choice: SameChoice,
    },
    /// A part of a long answer, which is kept in memory.
    Part {
        /// The answer.
        answer: u64,
        /// The part, from 0.
        at: usize,
    },
}

/// What is asked for in a group.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Press {
    /// The form for an answer to a post, or that form sent.
    Answer(PostId),
    /// The form for an answer to a question, or that form sent.
    Respond(PostId),
    /// What the next hint at a post takes.
    Hint(PostId),
    /// The next hint at a post.
    TakeHint(PostId),
    /// How a member stands at a post.
    Mine(PostId),
    /// A member's own board at a post.
    Board(PostId),
    /// Giving a post up, to be asked about first.
    GiveUp(PostId),
    /// Giving a post up, said twice.
    ReallyGiveUp(PostId),
    /// What waits is meant for this post.
    To(PostId),
    /// Reading so and so, from 0, is what a reply means.
    Mean {
        /// The reply.
        reply: ReplyId,
        /// The reading.
        reading: usize,
    },
    /// Everything of the member is to be erased, said twice.
    EraseMe,
    /// Everything of another member is to be erased, said twice.
    EraseMember(MemberId),
    /// The form for the coach's verdict on a reply, or that form sent.
    Judge {
        /// The reply.
        reply: ReplyId,
        /// Whether the coach finds it right.
        right: bool,
    },
    /// The form for another verdict on a reply that was decided, or that form sent.
    Overrule {
        /// The post that was answered.
        post: PostId,
        /// The reply.
        reply: ReplyId,
        /// Whether the coach finds it right.
        right: bool,
    },
    /// Reply so and so of those to a post, from 0.
    Replies {
        /// The post.
        post: PostId,
        /// The reply's place.
        at: usize,
    },
    /// The form for the coach's mark on an answer to a question, or that form sent.
    Mark(ReplyId),
    /// The answers to a question by their first moves; with what was picked, the first one of a group.
    Groups(PostId),
    /// The form for the coach's words beside an answer that is to be shown, or that form sent.
    Show {
        /// The post that was answered.
        post: PostId,
        /// The answer.
        reply: ReplyId,
    },
    /// An answer is not to be shown after all.
    NoLongerShow {
        /// The post that was answered.
        post: PostId,
        /// The answer.
        reply: ReplyId,
    },
    /// What an answer's writer says to its being shown.
    Leave(ReplyId, Leave),
    /// The lessons to be stepped through; with what was picked, that one.
    Lessons,
    /// A place of a lesson.
    Walk {
        /// The lesson.
        lesson: LessonId,
        /// The part.
        part: PartAt,
        /// The place, from 0.
        at: usize,
    },
    /// Question so and so of those that a member answered, from 0.
    MyHomework(usize),
    /// The form for a question, sent.
    NewQuestion,
    /// The form for words alone, sent.
    NewWords,
    /// The form for a private answer to a reply, or that form sent.
    ReplyTo(ReplyId),
    /// A reply needs no answer.
    NoAnswer(ReplyId),
    /// Reply so and so of those that wait for the coach, from 0.
    Homework(usize),
    /// A position goes into the week.
    Queue {
        /// The position.
        position: PositionId,
        /// Though it does not hold.
        anyway: bool,
        /// Though it was posted before.
        again: bool,
    },
    /// The form in which a position is written anew, or that form sent.
    EditPosition(PositionId),
    /// The form for a coach's words on a position, or that form sent.
    Words(WordsPress, PositionId),
    /// Something with an entry of the week.
    Week(WeekPress, ItemId),
    /// What was taken out of the week is put back.
    PutBack(TakenOutId),
    /// A topic card.
    Card(CardId),
    /// The form for a coach's copy of a card, or that form sent.
    EditCard(CardId),
    /// The form for the card of a topic, or that form sent.
    NewCard,
    /// A coach's card is taken back.
    TakeBackCard(CardId),
    /// A card goes into the week.
    QueueCard(CardId),
    /// Something with a message that waits for its writer's word; by the message's id.
    Held(i64, HeldPress),
}

/// What is asked for with an entry of the week.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum WeekPress {
    /// The menu; what was picked comes with it.
    Pick,
    Earlier,
    Later,
    Look,
    Post,
    Out,
}

/// With what the form for a coach's words on a position opens, and what it sends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WordsPress {
    /// With the words that are kept.
    Kept,
    /// With what was typed and refused.
    Typed,
    /// With what was typed and refused, to be sent although it tells a move.
    Anyway,
}

/// What becomes of a message that waits for its writer's word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeldPress {
    /// The question once more.
    Look,
    /// It is an answer to this post.
    Answer(PostId),
    /// It is said to all.
    Say,
    /// It is dropped.
    Drop,
}

/// Verbs of the week.
const WEEK: [(WeekPress, &str); 6] = [
    (WeekPress::Pick, "week-pick"),
    (WeekPress::Earlier, "week-earlier"),
    (WeekPress::Later, "week-later"),
    (WeekPress::Look, "week-look"),
    (WeekPress::Post, "week-post"),
    (WeekPress::Out, "week-out"),
];

/// Verbs of the form for words on a position.
const WORDS: [(WordsPress, &str); 3] = [
    (WordsPress::Kept, "position-words"),
    (WordsPress::Typed, "position-words-again"),
    (WordsPress::Anyway, "position-words-anyway"),
];

/// Verbs of an answer's writer, who is asked whether it may be shown.
const LEAVES: [(Leave, &str); 3] = [
    (Leave::Named, "leave-named"),
    (Leave::Nameless, "leave-nameless"),
    (Leave::Refused, "leave-refused"),
];

/// Choices about a position that was kept otherwise before.
const SAME: [(SameChoice, &str); 3] = [
    (SameChoice::Keep, "keep"),
    (SameChoice::New, "new"),
    (SameChoice::Both, "both"),
];

/// The word of a choice in one of the lists above.
fn word_of<T: PartialEq>(list: &[(T, &'static str)], wanted: &T) -> &'static str {
    let found = list.iter().find(|(choice, _)| choice == wanted);
    found.map_or("", |(_, word)| word)
}

impl Press {
    /// The id of a button for it: `verb:channel:number`, and what else it carries behind a further colon.
    /// Ids stand under old posts for ever; what they were is in the tests.
    pub fn id(self, place: &Place) -> String {
        self.in_channel(&place.channel)
    }

    fn in_channel(self, channel: &str) -> String {
        let (verb, about, more) = match self {
            Self::Answer(post) => ("answer", post.get(), None),
            Self::Respond(post) => ("respond", post.get(), None),
            Self::Mark(reply) => ("mark", reply.get(), None),
            Self::Groups(post) => ("groups", post.get(), None),
            Self::Show { post, reply } => ("show", reply.get(), Some(post.to_string())),
            Self::NoLongerShow { post, reply } => ("show-no", reply.get(), Some(post.to_string())),
            Self::Leave(reply, leave) => (word_of(&LEAVES, &leave), reply.get(), None),
            Self::MyHomework(at) => ("my-homework", number(at), None),
            Self::Lessons => ("lessons", 0, None),
            Self::Walk { lesson, part, at } => {
                let more = format!("{}.{}.{at}", part.step, part.part);
                ("walk", lesson.get(), Some(more))
            }
            Self::NewQuestion => ("new-question", 0, None),
            Self::NewWords => ("new-words", 0, None),
            Self::Hint(post) => ("hint", post.get(), None),
            Self::TakeHint(post) => ("hint-take", post.get(), None),
            Self::Mine(post) => ("mine", post.get(), None),
            Self::Board(post) => ("board", post.get(), None),
            Self::GiveUp(post) => ("quit", post.get(), None),
            Self::ReallyGiveUp(post) => ("quit-yes", post.get(), None),
            Self::To(post) => ("to", post.get(), None),
            Self::Mean { reply, reading } => ("mean", reply.get(), Some(reading.to_string())),
            Self::EraseMe => ("erase-yes", 0, None),
            Self::EraseMember(member) => ("erase-member", member.get(), None),
            Self::Judge { reply, right } => {
                let word = if right { "solved" } else { "wrong" };
                ("words", reply.get(), Some(word.to_owned()))
            }
            Self::Overrule { post, reply, right } => {
                let verb = if right {
                    "overrule-solved"
                } else {
                    "overrule-wrong"
                };
                (verb, reply.get(), Some(post.to_string()))
            }
            Self::Replies { post, at } => ("replies", post.get(), Some(at.to_string())),
            Self::ReplyTo(reply) => ("reply-to", reply.get(), None),
            Self::NoAnswer(reply) => ("no-answer", reply.get(), None),
            Self::Homework(at) => ("homework", number(at), None),
            Self::Queue {
                position,
                anyway,
                again,
            } => {
                let verb = match (again, anyway) {
                    (false, false) => "queue",
                    (false, true) => "queue-anyway",
                    (true, false) => "queue-again",
                    (true, true) => "queue-again-anyway",
                };
                (verb, position.get(), None)
            }
            Self::Card(card) => ("card", 0, Some(card.to_string())),
            Self::EditCard(card) => ("card-edit", 0, Some(card.to_string())),
            Self::NewCard => ("card-new", 0, None),
            Self::TakeBackCard(card) => ("card-back", 0, Some(card.to_string())),
            Self::QueueCard(card) => ("card-queue", 0, Some(card.to_string())),
            Self::EditPosition(position) => ("position-edit", position.get(), None),
            Self::Words(press, position) => (word_of(&WORDS, &press), position.get(), None),
            Self::Week(press, item) => (word_of(&WEEK, &press), item.get(), None),
            Self::PutBack(taken) => ("week-back", taken.get(), None),
            Self::Held(message, HeldPress::Look) => ("held-look", message, None),
            Self::Held(message, HeldPress::Answer(post)) => {
                ("held-answer", message, Some(post.to_string()))
            }
            Self::Held(message, HeldPress::Say) => ("held-say", message, None),
            Self::Held(message, HeldPress::Drop) => ("held-drop", message, None),
        };
        let id = format!("{verb}:{channel}:{about}");
        match more {
            Some(more) => format!("{id}:{more}"),
            None => id,
        }
    }

    fn read(verb: &str, about: i64, more: Option<&str>) -> Option<Self> {
        Some(match verb {
            "answer" => Self::Answer(PostId::of(about)),
            "respond" => Self::Respond(PostId::of(about)),
            "mark" => Self::Mark(ReplyId::of(about)),
            "groups" => Self::Groups(PostId::of(about)),
            "show" => Self::Show {
                post: more?.parse().ok()?,
                reply: ReplyId::of(about),
            },
            "show-no" => Self::NoLongerShow {
                post: more?.parse().ok()?,
                reply: ReplyId::of(about),
            },
            "lessons" => Self::Lessons,
            "walk" => {
                // A button that turns says which way behind it.
                let mut parts = more?.split(':').next()?.split('.');
                let mut next = || parts.next();
                Self::Walk {
                    lesson: LessonId::of(about),
                    part: PartAt {
                        step: next()?.parse().ok()?,
                        part: next()?.parse().ok()?,
                    },
                    at: next()?.parse().ok()?,
                }
            }
            "my-homework" => Self::MyHomework(usize::try_from(about).ok()?),
            "new-question" => Self::NewQuestion,
            "new-words" => Self::NewWords,
            "hint" => Self::Hint(PostId::of(about)),
            "hint-take" => Self::TakeHint(PostId::of(about)),
            "mine" => Self::Mine(PostId::of(about)),
            "board" => Self::Board(PostId::of(about)),
            "quit" => Self::GiveUp(PostId::of(about)),
            "quit-yes" => Self::ReallyGiveUp(PostId::of(about)),
            "to" => Self::To(PostId::of(about)),
            "mean" => Self::Mean {
                reply: ReplyId::of(about),
                reading: more?.parse().ok()?,
            },
            "erase-yes" => Self::EraseMe,
            "erase-member" => Self::EraseMember(MemberId::of(about)),
            "words" => Self::Judge {
                reply: ReplyId::of(about),
                right: more == Some("solved"),
            },
            "overrule-solved" | "overrule-wrong" => Self::Overrule {
                post: more?.parse().ok()?,
                reply: ReplyId::of(about),
                right: verb.ends_with("-solved"),
            },
            "replies" => Self::Replies {
                post: PostId::of(about),
                // A button that turns says which way behind it.
                at: more?.split(':').next()?.parse().ok()?,
            },
            "reply-to" => Self::ReplyTo(ReplyId::of(about)),
            "no-answer" => Self::NoAnswer(ReplyId::of(about)),
            "homework" => Self::Homework(usize::try_from(about).ok()?),
            "queue" | "queue-anyway" | "queue-again" | "queue-again-anyway" => Self::Queue {
                position: PositionId::of(about),
                anyway: verb.ends_with("-anyway"),
                again: verb.starts_with("queue-again"),
            },
            "position-edit" => Self::EditPosition(PositionId::of(about)),
            "card" => Self::Card(more?.parse().ok()?),
            "card-edit" => Self::EditCard(more?.parse().ok()?),
            "card-new" => Self::NewCard,
            "card-back" => Self::TakeBackCard(more?.parse().ok()?),
            "card-queue" => Self::QueueCard(more?.parse().ok()?),
            "week-back" => Self::PutBack(TakenOutId::of(about)),
            "held-look" => Self::Held(about, HeldPress::Look),
            "held-answer" => Self::Held(about, HeldPress::Answer(more?.parse().ok()?)),
            "held-say" => Self::Held(about, HeldPress::Say),
            "held-drop" => Self::Held(about, HeldPress::Drop),
            verb => {
                let words = WORDS.iter().find(|(_, word)| *word == verb);
                let leave = LEAVES.iter().find(|(_, word)| *word == verb);
                let week = WEEK.iter().find(|(_, word)| *word == verb);
                match (words, leave, week) {
                    (Some((press, _)), _, _) => Self::Words(*press, PositionId::of(about)),
                    (_, Some((leave, _)), _) => Self::Leave(ReplyId::of(about), *leave),
                    (_, _, Some((press, _))) => Self::Week(*press, ItemId::of(about)),
                    (None, None, None) => return None,
                }
            }
        })
    }
}

impl Pressed {
    /// The id of a button for it.
    pub fn id(self) -> String {
        match self {
            Self::In(channel, press) => press.in_channel(&channel.to_string()),
            Self::Page { report, at } => format!("page:{report}:{at}"),
            Self::Same { report, at, choice } => {
                format!("same:{report}:{at}:{}", word_of(&SAME, &choice))
            }
            Self::Part { answer, at } => format!("part:{answer}:{at}"),
        }
    }

    /// Reads an id; `None` for one that is not ours, or of an older version and no longer known.
    pub fn read(id: &str) -> Option<Self> {
        let mut parts = id.splitn(4, ':');
        let (verb, first) = (parts.next()?, parts.next()?.parse().ok()?);
        let (about, more) = (parts.next()?.parse::<i64>().ok()?, parts.next());
        let at = usize::try_from(about);
        Some(match verb {
            "page" => Self::Page {
                report: first,
                at: at.ok()?,
            },
            "same" => Self::Same {
                report: first,
                at: at.ok()?,
                choice: SAME.iter().find(|(_, word)| Some(*word) == more)?.0,
            },
            "part" => Self::Part {
                answer: first,
                at: at.ok()?,
            },
            verb => Self::In(first, Press::read(verb, about, more)?),
        })
    }
}

fn number(at: usize) -> i64 {
    i64::try_from(at).unwrap_or(i64::MAX)
}

/// Which way a button turns pages.
#[derive(Clone, Copy, Debug)]
pub enum Way {
    /// To the one before.
    Back,
    /// To the next one.
    On,
}

/// A button that turns a page, off where there is none to turn to. Its id says which way it turns, for
/// no two buttons of a message may have one id.
pub fn turn(
    id: impl Fn(usize) -> String,
    way: Way,
    label: &str,
    at: usize,
    to: Option<usize>,
) -> CreateButton {
    let turns = match way {
        Way::Back => "back",
        Way::On => "on",
    };
    let id = format!("{}:{turns}", id(to.unwrap_or(at)));
    button(id, label, ButtonStyle::Secondary).disabled(to.is_none())
}

/// The way from a reveal, for all to press, into the lesson that its post is a part of.
pub fn step_through(
    words: &Words,
    place: &Place,
    lesson: LessonId,
    part: PartAt,
) -> CreateActionRow {
    let id = Press::Walk {
        lesson,
        part,
        at: 0,
    }
    .id(place);
    let label = words.say(&Study::ButtonStepThrough);
    CreateActionRow::Buttons(vec![button(id, &label, ButtonStyle::Secondary)])
}

/// A button.
pub fn button(id: String, label: &str, style: ButtonStyle) -> CreateButton {
    CreateButton::new(id)
        .label(fit::short(label, fit::LABEL))
        .style(style)
}

/// The words of a position that waits or is kept, to be changed.
pub fn words_on(words: &Words, place: &Place, position: PositionId) -> CreateButton {
    let id = Press::Words(WordsPress::Kept, position).id(place);
    button(id, &words.say(&Coach::ButtonWords), ButtonStyle::Secondary)
}

/// A position that waits or is kept, to be written anew.
pub fn edit_of(words: &Words, place: &Place, position: PositionId) -> CreateButton {
    let id = Press::EditPosition(position).id(place);
    button(id, &words.say(&Coach::ButtonEdit), ButtonStyle::Secondary)
}

/// Under an open post; none under words alone, which take no answers.
pub fn under_post(words: &Words, place: &Place, sheet: &PostSheet) -> Option<CreateActionRow> {
    let post = sheet.post;
    let answer = |press: Press| {
        let label = words.text("button-answer");
        button(press.id(place), &label, ButtonStyle::Primary)
    };
    let mine = button(
        Press::Mine(post).id(place),
        &words.say(&Study::ButtonMyProgress),
        ButtonStyle::Secondary,
    );
    let buttons = match &sheet.content {
        Content::Problem { .. } => vec![
            answer(Press::Answer(post)),
            button(
                Press::Hint(post).id(place),
                &words.text("button-hint"),
                ButtonStyle::Secondary,
            ),
            mine,
        ],
        Content::Question(_) => vec![answer(Press::Respond(post)), mine],
        Content::Words(_) => return None,
    };
    Some(CreateActionRow::Buttons(buttons))
}

/// The one that stays when a post is closed.
pub fn progress_only(words: &Words, place: &Place, post: PostId) -> CreateActionRow {
    let progress = button(
        Press::Mine(post).id(place),
        &words.say(&Study::ButtonMyProgress),
        ButtonStyle::Secondary,
    );
    CreateActionRow::Buttons(vec![progress])
}

/// Takes a hint; what the button is called is the message `what`, and beside it stands what it costs.
pub fn take_hint(place: &Place, post: PostId, what: &str, price: &Said) -> CreateButton {
    let words = words_of(&price.language);
    let what = words.text(what);
    let label = match price.is_empty() {
        true => what,
        false => words.say(&json!({ "is": "priced", "what": what, "price": in_words(price) })),
    };
    button(
        Press::TakeHint(post).id(place),
        &label,
        ButtonStyle::Secondary,
    )
}

/// Under a verdict, as far as there is something left to do.
pub fn under_verdict(place: &Place, sheet: &VerdictSheet) -> Option<CreateActionRow> {
    let again = match sheet.outcome {
        Outcome::Judged(Verdict::OnTheWay) if sheet.your_move => "button-next-move",
        Outcome::Judged(
            Verdict::Wrong | Verdict::Illegal | Verdict::Unclear | Verdict::Unreadable,
        ) => "button-answer-again",
        Outcome::Judged(Verdict::OnTheWay | Verdict::Solved) => return None,
        // The last answer counts, as long as answers are taken.
        Outcome::Kept if !sheet.over => {
            let words = words_of(&sheet.said.language);
            return Some(CreateActionRow::Buttons(vec![button(
                Press::Respond(sheet.post).id(place),
                &words.text("button-answer-again"),
                ButtonStyle::Secondary,
            )]));
        }
        Outcome::Kept | Outcome::Marked => return None,
    };
    if sheet.over {
        return None;
    }
    let words = words_of(&sheet.said.language);
    Some(CreateActionRow::Buttons(vec![
        button(
            Press::Answer(sheet.post).id(place),
            &words.text(again),
            ButtonStyle::Primary,
        ),
        take_hint(place, sheet.post, "button-hint", &sheet.hint_label),
        button(
            Press::GiveUp(sheet.post).id(place),
            &words.text("button-give-up"),
            ButtonStyle::Secondary,
        ),
    ]))
}

/// The ways a doubtful reply may be meant, a button each. An id names the reply and the reading's place,
/// from which the reading is found again.
pub fn readings(place: &Place, sheet: &VerdictSheet) -> Vec<CreateActionRow> {
    let words = words_of(&sheet.said.language);
    let buttons: Vec<CreateButton> = sheet
        .readings
        .iter()
        .enumerate()
        .map(|(i, line)| {
            let press = Press::Mean {
                reply: sheet.reply,
                reading: i,
            };
            button(
                press.id(place),
                &words.say(&json!({ "is": "button-i-mean", "reading": line })),
                ButtonStyle::Primary,
            )
        })
        .collect();
    // Five rows are allowed, and one is for what else can be done.
    buttons
        .chunks(5)
        .take(4)
        .map(|five| CreateActionRow::Buttons(five.to_vec()))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{chat::discord::house::place, desk::TopicId};

    /// Each kind of press with its id. Those under posts and in direct messages stand there for ever.
    fn every() -> Vec<(Pressed, &'static str)> {
        let within = |press| Pressed::In(7, press);
        let queue = |anyway, again| {
            within(Press::Queue {
                position: PositionId::of(5),
                anyway,
                again,
            })
        };
        let mut all = vec![
            (within(Press::Answer(PostId::of(5))), "answer:7:5"),
            (within(Press::Respond(PostId::of(5))), "respond:7:5"),
            (within(Press::Mark(ReplyId::of(5))), "mark:7:5"),
            (within(Press::Groups(PostId::of(5))), "groups:7:5"),
            (
                within(Press::Show {
                    post: PostId::of(9),
                    reply: ReplyId::of(5),
                }),
                "show:7:5:9",
            ),
            (
                within(Press::NoLongerShow {
                    post: PostId::of(9),
                    reply: ReplyId::of(5),
                }),
                "show-no:7:5:9",
            ),
            (
                within(Press::Leave(ReplyId::of(5), Leave::Named)),
                "leave-named:7:5",
            ),
            (
                within(Press::Leave(ReplyId::of(5), Leave::Nameless)),
                "leave-nameless:7:5",
            ),
            (
                within(Press::Leave(ReplyId::of(5), Leave::Refused)),
                "leave-refused:7:5",
            ),
            (within(Press::MyHomework(5)), "my-homework:7:5"),
            (within(Press::Lessons), "lessons:7:0"),
            (
                within(Press::Walk {
                    lesson: LessonId::of(5),
                    part: PartAt { step: 2, part: 1 },
                    at: 13,
                }),
                "walk:7:5:2.1.13",
            ),
            (within(Press::NewQuestion), "new-question:7:0"),
            (within(Press::NewWords), "new-words:7:0"),
            (within(Press::Hint(PostId::of(5))), "hint:7:5"),
            (within(Press::TakeHint(PostId::of(5))), "hint-take:7:5"),
            (within(Press::Mine(PostId::of(5))), "mine:7:5"),
            (within(Press::Board(PostId::of(5))), "board:7:5"),
            (within(Press::GiveUp(PostId::of(5))), "quit:7:5"),
            (within(Press::ReallyGiveUp(PostId::of(5))), "quit-yes:7:5"),
            (within(Press::To(PostId::of(5))), "to:7:5"),
            (
                within(Press::Mean {
                    reply: ReplyId::of(5),
                    reading: 1,
                }),
                "mean:7:5:1",
            ),
            (within(Press::EraseMe), "erase-yes:7:0"),
            (
                within(Press::EraseMember(MemberId::of(5))),
                "erase-member:7:5",
            ),
            (
                within(Press::Judge {
                    reply: ReplyId::of(5),
                    right: true,
                }),
                "words:7:5:solved",
            ),
            (
                within(Press::Judge {
                    reply: ReplyId::of(5),
                    right: false,
                }),
                "words:7:5:wrong",
            ),
            (
                within(Press::Overrule {
                    post: PostId::of(9),
                    reply: ReplyId::of(5),
                    right: true,
                }),
                "overrule-solved:7:5:9",
            ),
            (
                within(Press::Overrule {
                    post: PostId::of(9),
                    reply: ReplyId::of(5),
                    right: false,
                }),
                "overrule-wrong:7:5:9",
            ),
            (
                within(Press::Replies {
                    post: PostId::of(5),
                    at: 2,
                }),
                "replies:7:5:2",
            ),
            (within(Press::ReplyTo(ReplyId::of(5))), "reply-to:7:5"),
            (within(Press::NoAnswer(ReplyId::of(5))), "no-answer:7:5"),
            (within(Press::Homework(5)), "homework:7:5"),
            (queue(false, false), "queue:7:5"),
            (queue(true, false), "queue-anyway:7:5"),
            (queue(false, true), "queue-again:7:5"),
            (queue(true, true), "queue-again-anyway:7:5"),
            (within(Press::Held(5, HeldPress::Look)), "held-look:7:5"),
            (
                within(Press::Held(5, HeldPress::Answer(PostId::of(9)))),
                "held-answer:7:5:9",
            ),
            (within(Press::Held(5, HeldPress::Say)), "held-say:7:5"),
            (within(Press::Held(5, HeldPress::Drop)), "held-drop:7:5"),
            (
                within(Press::Card(CardId::Pattern("boden"))),
                "card:7:0:boden",
            ),
            (
                within(Press::Card(CardId::Topic(TopicId::of(5)))),
                "card:7:0:topic-5",
            ),
            (
                within(Press::EditCard(CardId::Pattern("max-lange"))),
                "card-edit:7:0:max-lange",
            ),
            (within(Press::NewCard), "card-new:7:0"),
            (within(Press::PutBack(TakenOutId::of(5))), "week-back:7:5"),
            (
                within(Press::TakeBackCard(CardId::Topic(TopicId::of(5)))),
                "card-back:7:0:topic-5",
            ),
            (
                within(Press::QueueCard(CardId::Pattern("boden"))),
                "card-queue:7:0:boden",
            ),
            (Pressed::Page { report: 7, at: 5 }, "page:7:5"),
            (Pressed::Part { answer: 7, at: 5 }, "part:7:5"),
            (
                Pressed::Same {
                    report: 7,
                    at: 5,
                    choice: SameChoice::Both,
                },
                "same:7:5:both",
            ),
        ];
        for (press, id) in [
            (WeekPress::Pick, "week-pick:7:5"),
            (WeekPress::Earlier, "week-earlier:7:5"),
            (WeekPress::Later, "week-later:7:5"),
            (WeekPress::Look, "week-look:7:5"),
            (WeekPress::Post, "week-post:7:5"),
            (WeekPress::Out, "week-out:7:5"),
        ] {
            all.push((within(Press::Week(press, ItemId::of(5))), id));
        }
        for (press, id) in [
            (WordsPress::Kept, "position-words:7:5"),
            (WordsPress::Typed, "position-words-again:7:5"),
            (WordsPress::Anyway, "position-words-anyway:7:5"),
        ] {
            all.push((within(Press::Words(press, PositionId::of(5))), id));
        }
        let edit = Press::EditPosition(PositionId::of(5));
        all.push((within(edit), "position-edit:7:5"));
        all
    }

    #[test]
    fn every_press_is_read_back_from_the_id_it_always_had() {
        for (press, id) in every() {
            assert_eq!(press.id(), id);
            assert_eq!(Pressed::read(id), Some(press), "{id}");
        }
    }

    #[test]
    fn ids_fit_and_strange_ones_ask_for_nothing() {
        let place = place(serenity::ChannelId::new(u64::MAX));
        let id = Press::Held(i64::MAX, HeldPress::Answer(PostId::of(i64::MAX))).id(&place);
        assert!(id.len() <= 100, "{id}");
        for strange in [
            "somebody else's",
            "answer:7",
            "answer:x:5",
            "answer:7:x",
            "dance:7:5",
            "mean:7:5",
            "same:7:5:none",
            "page:7:-1",
            "held-answer:7:5:x",
            "card:7:0",
            "card:7:0:no-such-thing",
            "overrule-solved:7:5",
            "replies:7:5:x:back",
            "show:7:5",
            "walk:7:5:2.1",
            "walk:7:5:2.x.1:on",
            "my-homework:7:-1",
        ] {
            assert_eq!(Pressed::read(strange), None, "{strange}");
        }
    }

    #[test]
    fn two_ways_to_turn_have_two_ids() {
        let id = |at| Pressed::Page { report: 1, at }.id();
        let ids = [Way::Back, Way::On].map(|way| {
            let button = serde_json::to_value(turn(id, way, "Turn", 0, None)).expect("JSON");
            button["custom_id"].as_str().expect("an id").to_owned()
        });
        assert_ne!(ids[0], ids[1]);
        assert_eq!(Pressed::read(&ids[0]), Pressed::read("page:1:0"));
        let replies = Press::Replies {
            post: PostId::of(5),
            at: 2,
        };
        let replies = Pressed::In(7, replies);
        let turned = Pressed::read(&format!("{}:on", replies.id()));
        assert_eq!(turned, Some(replies));
    }
}
