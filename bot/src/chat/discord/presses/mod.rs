//! Buttons, menus and forms that are sent: which press does what.
//!
//! The tables are here; what is done stands in a file for each subject: `at_post` what members ask for at
//! a post, `by_hand` what coaches do with replies, `homework` which answers are shown to the group, `in_week` what
//! they do with the week, `position_edit` a position written anew, `position_words` the words on one, `reports` the
//! pages of a check's report, `walks` lessons stepped through, `with_cards` topic cards, `erasing` what is no
//! longer to be kept. Each reads who asks by itself, so
//! that the promise of an answer goes out before anything else is done.

mod at_post;
mod by_hand;
mod erasing;
mod homework;
mod in_week;
mod position_edit;
mod position_words;
mod reports;
mod walks;
mod with_cards;

use std::future::Future;

use poise::serenity_prelude as serenity;
use serenity::{ChannelId, ComponentInteraction, CreateModal, MessageFlags, ModalInteraction};

use super::{
    buttons::{HeldPress, Press, Pressed},
    forms::{answer_form, mark_form, new_card_form, private_form, respond_form, verdict_form},
    house::{self, House},
    letter::Letter,
    oops::{Answer, said},
    private::{self, Asked},
    text::Study,
};
use crate::{
    desk::{Person, Place},
    words::Words,
};

/// A button or a menu.
pub async fn pressed(house: &House, press: &ComponentInteraction) {
    let asked = Asked::Press(press);
    // Reports and long answers are in memory; their ids carry a number where others carry a channel.
    match Pressed::read(&press.data.custom_id) {
        None => {}
        Some(Pressed::Page { report, at }) => {
            private::in_place(house, press, reports::page(house, asked, report, at)).await;
        }
        Some(Pressed::Same { report, at, choice }) => {
            let settled = reports::settle_same(house, asked, report, at, choice);
            private::in_place(house, press, settled).await;
        }
        Some(Pressed::Part { answer, at }) => {
            private::in_place(house, press, part(house, asked, answer, at)).await;
        }
        Some(Pressed::In(channel, wanted)) => {
            let place = house::place(ChannelId::new(channel.max(1)));
            let button = Button { house, press };
            pressed_in_group(button, button.at(&place), wanted).await;
        }
    }
}

/// Every button of a group: what it opens, and whether that is a form, a message of its own, or comes in
/// the place of the message that was pressed.
async fn pressed_in_group(button: Button<'_>, at: At<'_>, wanted: Press) {
    let place = at.place;
    match wanted {
        Press::Answer(post) => button.form(|words| answer_form(words, place, post)).await,
        Press::Respond(post) => button.form(|words| respond_form(words, place, post)).await,
        Press::Hint(post) => button.message(at_post::hint_offer(at, post)).await,
        Press::TakeHint(post) => button.message(at_post::hint(at, post)).await,
        Press::Mine(post) => button.message(at_post::standing(at, post)).await,
        Press::Board(post) => button.message(at_post::board(at, post)).await,
        Press::GiveUp(post) => button.message(at_post::really_give_up(at, post)).await,
        Press::ReallyGiveUp(post) => button.in_place(at_post::gave_up(at, post)).await,
        Press::To(post) => button.in_place(at_post::waiting_goes_to(at, post)).await,
        Press::Mean { reply, reading } => {
            button.in_place(at_post::mean(at, reply, reading)).await;
        }
        Press::Held(message, HeldPress::Look) => {
            button.message(at_post::held(at, message)).await;
        }
        Press::Held(message, choice) => {
            button
                .in_place(at_post::held_chosen(at, message, choice))
                .await;
        }

        Press::EraseMe => button.in_place(erasing::me(at)).await,
        Press::EraseMember(member) => button.in_place(erasing::member(at, member)).await,

        Press::Mark(reply) => button.form(|words| mark_form(words, place, reply)).await,
        Press::Groups(post) => {
            button
                .in_place(by_hand::groups(at, button.press, post))
                .await;
        }
        Press::Show { reply, .. } => button.form_of(homework::show_form(at, wanted, reply)).await,
        Press::NoLongerShow { post, reply } => {
            button
                .in_place(homework::no_longer_shown(at, post, reply))
                .await;
        }
        Press::Leave(reply, leave) => button.in_place(homework::leave(at, reply, leave)).await,
        Press::Lessons => button.in_place(walks::picked(at, button.press)).await,
        // From a reveal it comes as a message of its own, and then steps in its place.
        Press::Walk {
            lesson,
            part,
            at: to,
        } => {
            let walk = walks::at(at, lesson, part, to);
            match button.private() {
                true => button.in_place(walk).await,
                false => button.message(walk).await,
            }
        }
        Press::MyHomework(nth) => button.in_place(homework::mine(at, nth)).await,
        Press::Judge { right, .. } | Press::Overrule { right, .. } => {
            button
                .form(|words| verdict_form(words, place, wanted, right))
                .await;
        }
        Press::Replies { post, at: nth } => button.in_place(by_hand::replies(at, post, nth)).await,
        Press::ReplyTo(reply) => button.form(|words| private_form(words, place, reply)).await,
        Press::NoAnswer(reply) => button.in_place(by_hand::no_answer(at, reply)).await,
        Press::Homework(waiting) => button.in_place(by_hand::waiting(at, waiting)).await,

        Press::Queue {
            position,
            anyway,
            again,
        } => {
            button
                .message(in_week::enqueued(at, position, anyway, again))
                .await;
        }
        Press::EditPosition(position) => {
            button.form_of(position_edit::form(at, position)).await;
        }
        Press::Words(press, position) => {
            button
                .form_of(position_words::form(at, press, position))
                .await;
        }
        Press::Week(what, item) => {
            button
                .in_place(in_week::pressed(at, button.press, what, item))
                .await;
        }
        Press::PutBack(taken) => button.in_place(in_week::put_back(at, taken)).await,

        Press::Card(card) => button.message(with_cards::read(at, card)).await,
        Press::EditCard(card) => button.form_of(with_cards::edit(at, card)).await,
        Press::NewCard => button.form(|words| new_card_form(words, place)).await,
        Press::TakeBackCard(card) => button.in_place(with_cards::taken_back(at, card)).await,
        Press::QueueCard(card) => button.message(with_cards::enqueued(at, card)).await,

        // Commands open these forms, and no button does.
        Press::NewQuestion | Press::NewWords => button.message(form_old()).await,
    }
}

/// A form.
pub async fn sent(house: &House, form: &ModalInteraction) {
    let Some(Pressed::In(channel, wanted)) = Pressed::read(&form.data.custom_id) else {
        return;
    };
    let place = house::place(ChannelId::new(channel.max(1)));
    let asked = Asked::Form(form);
    let at = At {
        house,
        asked,
        place: &place,
    };
    private::privately(house, asked, sent_in_group(at, form, wanted)).await;
}

/// Every form of a group: what is done with what was filled in.
async fn sent_in_group(at: At<'_>, form: &ModalInteraction, wanted: Press) -> Answer<Letter> {
    match wanted {
        Press::Answer(post) => at_post::answered(at, post, form, "moves").await,
        Press::Respond(post) => at_post::answered(at, post, form, "words").await,

        Press::Mark(reply) => by_hand::marked(at, reply, form).await,
        Press::Show { post, reply } => homework::show(at, post, reply, form).await,
        Press::Judge { reply, right } => by_hand::judged(at, reply, right, form).await,
        Press::Overrule { post, reply, right } => {
            by_hand::overruled(at, post, reply, right, form).await
        }
        Press::ReplyTo(reply) => by_hand::answered_privately(at, reply, form).await,

        Press::NewQuestion => in_week::question(at, form).await,
        Press::NewWords => in_week::words_alone(at, form).await,
        Press::EditPosition(position) => position_edit::sent(at, position, form).await,
        Press::Words(press, position) => position_words::sent(at, press, position, form).await,

        Press::EditCard(card) => with_cards::edited(at, card, form).await,
        Press::NewCard => with_cards::written(at, form).await,

        // Buttons, which open no form.
        Press::Hint(_)
        | Press::TakeHint(_)
        | Press::Mine(_)
        | Press::Board(_)
        | Press::GiveUp(_)
        | Press::ReallyGiveUp(_)
        | Press::To(_)
        | Press::Mean { .. }
        | Press::Held(..)
        | Press::EraseMe
        | Press::EraseMember(_)
        | Press::NoAnswer(_)
        | Press::Homework(_)
        | Press::Groups(_)
        | Press::NoLongerShow { .. }
        | Press::Leave(..)
        | Press::MyHomework(_)
        | Press::Lessons
        | Press::Walk { .. }
        | Press::Replies { .. }
        | Press::Queue { .. }
        | Press::Card(_)
        | Press::TakeBackCard(_)
        | Press::QueueCard(_)
        | Press::PutBack(_)
        | Press::Week(..) => form_old().await,
    }
}

/// A button or a menu that was pressed.
#[derive(Clone, Copy)]
struct Button<'a> {
    house: &'a House,
    press: &'a ComponentInteraction,
}

impl<'a> Button<'a> {
    fn at(self, place: &'a Place) -> At<'a> {
        At {
            house: self.house,
            asked: Asked::Press(self.press),
            place,
        }
    }

    /// Whether the message that was pressed is for one person's eyes.
    fn private(self) -> bool {
        let flags = self.press.message.flags.unwrap_or_default();
        flags.contains(MessageFlags::EPHEMERAL)
    }

    /// Opens a form; nothing may be done before it.
    async fn form(self, form: impl FnOnce(&Words) -> CreateModal) {
        let asked = Asked::Press(self.press);
        let form = form(asked.words(self.house).await);
        private::form(self.house, asked, form).await;
    }

    /// Opens a form that shows what is kept; where that cannot be had, why.
    async fn form_of(self, work: impl Future<Output = Answer<CreateModal>>) {
        let asked = Asked::Press(self.press);
        match work.await {
            Ok(form) => private::form(self.house, asked, form).await,
            Err(error) => private::privately(self.house, asked, async { Err(error) }).await,
        }
    }

    /// Gives what is done as a message of its own.
    async fn message(self, work: impl Future<Output = Answer<Letter>>) {
        private::privately(self.house, Asked::Press(self.press), work).await;
    }

    /// Gives what is done in the place of the message that was pressed.
    async fn in_place(self, work: impl Future<Output = Answer<Letter>>) {
        private::in_place(self.house, self.press, work).await;
    }
}

/// Something asked for in a group.
#[derive(Clone, Copy)]
struct At<'a> {
    house: &'a House,
    asked: Asked<'a>,
    place: &'a Place,
}

impl At<'_> {
    /// Who asks, and the words for them.
    async fn reader(self) -> (Person, &'static Words) {
        let person = self.asked.person(self.house, self.place).await;
        let words = self.house.words_for(self.place, &person).await;
        (person, words)
    }
}

async fn form_old() -> Answer<Letter> {
    said(Study::FormOld)
}

/// Part `at` of a long answer.
async fn part(house: &House, asked: Asked<'_>, answer: u64, at: usize) -> Answer<Letter> {
    let parts = house
        .parts(answer)
        .filter(|parts| parts.user == asked.user().id);
    match parts {
        Some(parts) => Ok(private::part(&(answer, parts), at)),
        None => said(Study::RestPutAway),
    }
}
