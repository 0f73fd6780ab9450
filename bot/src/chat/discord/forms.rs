//! The forms that people fill in, and what they wrote there.

use poise::serenity_prelude as serenity;
use serenity::{
    ActionRowComponent, CreateActionRow, CreateInputText, CreateModal, InputTextStyle,
    ModalInteraction,
};

use super::{
    buttons::{Press, WordsPress},
    house::Draft,
    oops::{Answer, said},
    text::{Coach, Plain, Study},
};
use crate::{
    chat::common::card::Told,
    desk::values::Line,
    desk::{
        CardSheet, DeskError, LONGEST_DEFINITION, LONGEST_LOOK, NewCard, Place, Points, PositionId,
        PositionToEdit, PostId, ReplyId,
    },
    words::Words,
};

/// The most characters an answer's field takes; Discord's own bound.
const LONGEST_ANSWER: u16 = 4_000;

/// The most characters of a question, of words alone or of words to a reply: the desk's own bound.
const LONGEST_WRITTEN: u16 = 1_000;

/// The most characters of a coach's private answer: the desk's own bound.
const LONGEST_PRIVATE: u16 = 1_500;

/// The most characters of a coach's words at a reveal: the desk's own bound, and Discord's.
const LONGEST_AT_REVEAL: u16 = 4_000;

/// The points that a right answer is worth.
const FULL: &str = "5";

/// Points as somebody typed them.
fn points_of(typed: &str) -> Answer<Points> {
    match typed.trim().replace(',', ".").parse::<f64>() {
        Ok(points) => Ok(points.try_into().map_err(DeskError::from)?),
        Err(_) => said(Coach::NoPoints {
            written: Plain::of(typed),
        }),
    }
}

pub fn field(form: &ModalInteraction, id: &str) -> String {
    form.data
        .components
        .iter()
        .flat_map(|row| &row.components)
        .find_map(|part| match part {
            ActionRowComponent::InputText(input) if input.custom_id == id => input.value.clone(),
            _ => None,
        })
        .unwrap_or_default()
}

pub fn answer_form(words: &Words, place: &Place, post: PostId) -> CreateModal {
    let input = CreateInputText::new(
        InputTextStyle::Short,
        words.say(&Study::FormAnswerMoves),
        "moves",
    )
    .placeholder(words.say(&Study::FormAnswerExample))
    .required(true)
    .max_length(LONGEST_ANSWER);
    CreateModal::new(Press::Answer(post).id(place), words.say(&Study::FormAnswer))
        .components(vec![CreateActionRow::InputText(input)])
}

/// An answer to a question.
pub fn respond_form(words: &Words, place: &Place, post: PostId) -> CreateModal {
    let label = words.say(&Study::FormAnswerWords);
    let text = CreateInputText::new(InputTextStyle::Paragraph, label, "words")
        .required(true)
        .max_length(LONGEST_ANSWER);
    let id = Press::Respond(post).id(place);
    CreateModal::new(id, words.say(&Study::FormAnswer))
        .components(vec![CreateActionRow::InputText(text)])
}

/// What the coach wrote into the form for a mark or a verdict.
pub struct Assessment {
    /// Points for the reply.
    pub points: Points,
    /// Words to its writer.
    pub told: String,
}

impl Assessment {
    /// Reads it; points that are no number, or off the scale, are refused.
    pub fn read(form: &ModalInteraction) -> Answer<Self> {
        Ok(Self {
            points: points_of(&field(form, "points"))?,
            told: field(form, "words"),
        })
    }
}

/// The fields of an assessment: points, begun with some, and words.
fn assessment_fields(words: &Words, points: &str) -> Vec<CreateActionRow> {
    let label = words.say(&Coach::FormVerdictPoints);
    let points = CreateInputText::new(InputTextStyle::Short, label, "points")
        .value(points)
        .max_length(5);
    let label = words.say(&Coach::FormVerdictWords);
    let told = CreateInputText::new(InputTextStyle::Paragraph, label, "words")
        .required(false)
        .max_length(LONGEST_WRITTEN);
    [points, told].map(CreateActionRow::InputText).into()
}

/// The coach's mark on an answer to a question.
pub fn mark_form(words: &Words, place: &Place, reply: ReplyId) -> CreateModal {
    let id = Press::Mark(reply).id(place);
    CreateModal::new(id, words.say(&Coach::FormMark)).components(assessment_fields(words, FULL))
}

/// The coach's words beside an answer that is to be shown; `press` is what sends it.
pub fn show_form(words: &Words, place: &Place, press: Press, begun: &str) -> CreateModal {
    let field = CreateInputText::new(
        InputTextStyle::Paragraph,
        words.say(&Coach::FormShowWords),
        "words",
    )
    .value(begun)
    .required(false)
    .max_length(LONGEST_WRITTEN);
    CreateModal::new(press.id(place), words.say(&Coach::FormShow))
        .components(vec![CreateActionRow::InputText(field)])
}

/// The coach's verdict on a reply to a problem, the first or another one; `press` is what sends it.
pub fn verdict_form(words: &Words, place: &Place, press: Press, right: bool) -> CreateModal {
    let points = if right { FULL } else { "0" };
    let id = press.id(place);
    CreateModal::new(id, words.say(&Coach::FormVerdict))
        .components(assessment_fields(words, points))
}

/// What a question and words alone have alike.
pub fn written_fields(words: &Words, label: Coach) -> Vec<CreateActionRow> {
    let text = CreateInputText::new(InputTextStyle::Paragraph, words.say(&label), "words")
        .required(true)
        .max_length(LONGEST_WRITTEN);
    let label = words.say(&Coach::FormFen);
    let fen = CreateInputText::new(InputTextStyle::Short, label, "fen")
        .required(false)
        .max_length(100);
    let label = words.say(&Coach::FormTopic);
    let topic = CreateInputText::new(InputTextStyle::Short, label, "topic")
        .required(false)
        .max_length(80);
    [text, fen, topic].map(CreateActionRow::InputText).into()
}

/// A coach's words on a position, begun with some.
pub fn words_form(
    words: &Words,
    place: &Place,
    (press, position): (WordsPress, PositionId),
    begun: Draft,
) -> CreateModal {
    let title = match press {
        WordsPress::Kept | WordsPress::Typed => Coach::FormWords,
        WordsPress::Anyway => Coach::FormWordsAnyway,
    };
    let fields = [
        (
            Coach::FormWithPost,
            "post",
            begun.with_post,
            LONGEST_WRITTEN,
        ),
        (
            Coach::FormAtReveal,
            "reveal",
            begun.at_reveal,
            LONGEST_AT_REVEAL,
        ),
    ]
    .map(|(label, id, value, most)| {
        let field = CreateInputText::new(InputTextStyle::Paragraph, words.say(&label), id)
            .required(false)
            .value(value)
            .max_length(most);
        CreateActionRow::InputText(field)
    });
    let id = Press::Words(press, position).id(place);
    CreateModal::new(id, words.say(&title)).components(fields.into())
}

/// The most characters of a position's text in a form; Discord's own bound.
pub const LONGEST_EDIT: u16 = 4_000;

/// A position to be written anew: its text, its task and its topic, begun with what is kept.
pub fn edit_form(
    words: &Words,
    place: &Place,
    position: PositionId,
    kept: &PositionToEdit,
) -> CreateModal {
    let label = words.say(&Coach::FormEditText);
    let text = CreateInputText::new(InputTextStyle::Paragraph, label, "text")
        .value(&kept.text)
        .required(true)
        .max_length(LONGEST_EDIT);
    let label = words.say(&Coach::FormEditTask);
    let task = CreateInputText::new(InputTextStyle::Short, label, "task")
        .value(&kept.step.task)
        .required(false)
        .max_length(5);
    let label = words.say(&Coach::FormTopic);
    let topic = CreateInputText::new(InputTextStyle::Short, label, "topic")
        .value(&kept.step.topic)
        .required(false)
        .max_length(80);
    let fields = [text, task, topic].map(CreateActionRow::InputText);
    let id = Press::EditPosition(position).id(place);
    CreateModal::new(id, words.say(&Coach::FormEdit)).components(fields.into())
}

/// A new question.
pub fn question_form(words: &Words, place: &Place) -> CreateModal {
    let mut fields = written_fields(words, Coach::FormQuestionWords);
    let label = words.say(&Coach::FormQuestionReveal);
    let reveal = CreateInputText::new(InputTextStyle::Paragraph, label, "reveal")
        .required(false)
        .max_length(LONGEST_WRITTEN);
    fields.push(CreateActionRow::InputText(reveal));
    let id = Press::NewQuestion.id(place);
    CreateModal::new(id, words.say(&Coach::FormQuestion)).components(fields)
}

/// New words alone.
pub fn say_form(words: &Words, place: &Place) -> CreateModal {
    let id = Press::NewWords.id(place);
    CreateModal::new(id, words.say(&Coach::FormSay))
        .components(written_fields(words, Coach::FormSayWords))
}

/// What a coach writes on a card, beginning with what is on it.
fn card_fields(words: &Words, written: &NewCard) -> Vec<CreateActionRow> {
    let long = |label: Study, id: &str, value: &str, most: usize, needed: bool| {
        CreateInputText::new(InputTextStyle::Paragraph, words.say(&label), id)
            .value(value)
            .required(needed)
            .max_length(u16::try_from(most).unwrap_or(u16::MAX))
    };
    let line = |label: Study, id: &str, value: &str, most: u16| {
        CreateInputText::new(InputTextStyle::Short, words.say(&label), id)
            .value(value)
            .required(false)
            .max_length(most)
    };
    let NewCard {
        definition,
        look,
        fen,
        moves,
    } = written;
    let (what, watch) = (Study::FormCardDefinition, Study::FormCardLook);
    [
        long(what, "definition", definition, LONGEST_DEFINITION, true),
        long(watch, "look", look, LONGEST_LOOK, false),
        line(Study::FormCardFen, "fen", fen, 100),
        line(Study::FormCardMoves, "moves", moves, 300),
    ]
    .map(CreateActionRow::InputText)
    .into()
}

/// A coach's copy of a card. The program's own example need not be copied.
pub fn card_form(words: &Words, place: &Place, sheet: &CardSheet) -> CreateModal {
    let told = Told::of(words, sheet);
    let own = sheet.example.as_ref().filter(|_| sheet.words.by_coach());
    let written = NewCard {
        definition: told.definition,
        look: told.look,
        fen: own.map_or(String::new(), |example| example.fen.clone()),
        moves: own.map_or(String::new(), |example| {
            words.say(&Line::from(example.solution.clone()))
        }),
    };
    let id = Press::EditCard(sheet.link.card).id(place);
    CreateModal::new(id, words.say(&Study::FormCard)).components(card_fields(words, &written))
}

/// The card of a topic.
pub fn new_card_form(words: &Words, place: &Place) -> CreateModal {
    let label = words.say(&Coach::FormTopic);
    let topic = CreateInputText::new(InputTextStyle::Short, label, "topic")
        .required(true)
        .max_length(80);
    let mut fields = vec![CreateActionRow::InputText(topic)];
    fields.extend(card_fields(words, &NewCard::default()));
    CreateModal::new(Press::NewCard.id(place), words.say(&Study::FormCard)).components(fields)
}

/// What was written on a card.
pub fn card_of(form: &ModalInteraction) -> NewCard {
    NewCard {
        definition: field(form, "definition"),
        look: field(form, "look"),
        fen: field(form, "fen"),
        moves: field(form, "moves"),
    }
}

/// A private answer without a verdict.
pub fn private_form(words: &Words, place: &Place, reply: ReplyId) -> CreateModal {
    let field = CreateInputText::new(
        InputTextStyle::Paragraph,
        words.say(&Coach::FormPrivateWords),
        "words",
    )
    .required(true)
    .max_length(LONGEST_PRIVATE);
    CreateModal::new(
        Press::ReplyTo(reply).id(place),
        words.say(&Coach::FormPrivate),
    )
    .components(vec![CreateActionRow::InputText(field)])
}
