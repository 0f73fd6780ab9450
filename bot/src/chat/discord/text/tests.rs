//! Texts fit where they go, in every language.

use super::{super::fit, *};
use crate::{
    desk::KindName,
    words::{english, tags, words},
};

/// No text is longer than what takes it, in any language.
fn fit(most: usize, texts: &[&dyn erased::Say]) {
    for tag in tags() {
        for text in texts {
            let said = text.said_in(words(tag));
            let length = said.chars().count();
            assert!((1..=most).contains(&length), "{tag}: {length}: {said}");
        }
    }
}

/// Texts of several subjects in one list.
mod erased {
    use serde::Serialize;

    use crate::words::Words;

    pub trait Say {
        fn said_in(&self, words: &Words) -> String;
    }

    impl<T: Serialize> Say for T {
        fn said_in(&self, words: &Words) -> String {
            words.say(self)
        }
    }
}

#[test]
fn labels_of_buttons_fit() {
    let (kind, number) = (KindName::Words, 99_999);
    fit(
        fit::LABEL,
        &[
            &Study::ButtonMyProgress,
            &Study::ButtonYesGiveUp,
            &Study::ButtonYesErase,
            &Study::ButtonPrevious,
            &Study::ButtonNext,
            &Study::ButtonPreviousPart,
            &Study::ButtonNextPart,
            &Talk::ButtonItIsMyAnswer,
            &Talk::ButtonAnswerTo { kind, number },
            &Talk::ButtonSendTo { kind, number },
            &Talk::ButtonSayToAll,
            &Talk::ButtonMayStay,
            &Talk::ButtonDropIt,
            &Talk::ButtonDecide,
            &Coach::ButtonKeepOld,
            &Coach::ButtonTakeNew,
            &Coach::ButtonKeepBoth,
            &Coach::ButtonQueue,
            &Coach::ButtonQueueAgain,
            &Coach::ButtonQueueAnyway,
            &Coach::ButtonQueueAnywayAgain,
            &Coach::ButtonEarlier,
            &Coach::ButtonLater,
            &Coach::ButtonLookAt,
            &Coach::ButtonPostNow,
            &Coach::ButtonTakeOut,
            &Coach::ButtonRight,
            &Coach::ButtonNotRight,
            &Coach::ButtonWords,
            &Coach::ButtonEdit,
            &Coach::ButtonWordsAgain,
            &Coach::ButtonWordsAnyway,
            &Coach::ButtonMark,
            &Coach::ButtonMarkAgain,
            &Coach::ButtonOverruleRight,
            &Coach::ButtonOverruleNotRight,
            &Coach::ButtonAnswerPrivately,
            &Coach::ButtonNoAnswer,
        ],
    );
    // Every button of the FTL, so that none is forgotten above.
    for id in crate::words::ids().filter(|id| id.starts_with("button-")) {
        for tag in tags() {
            let length = words(tag).text(id).chars().count();
            assert!((1..=fit::LABEL).contains(&length), "{tag}: {id}");
        }
    }
}

#[test]
fn forms_menus_and_threads_fit() {
    fit(
        fit::FORM,
        &[
            &Study::FormAnswer,
            &Study::FormAnswerMoves,
            &Study::FormAnswerWords,
            &Coach::FormPrivate,
            &Coach::FormPrivateWords,
            &Coach::FormVerdict,
            &Coach::FormVerdictPoints,
            &Coach::FormVerdictWords,
            &Coach::FormMark,
            &Coach::FormWords,
            &Coach::FormWordsAnyway,
            &Coach::FormEdit,
            &Coach::FormEditText,
            &Coach::FormEditTask,
            &Coach::FormWithPost,
            &Coach::FormAtReveal,
            &Coach::FormQuestion,
            &Coach::FormQuestionWords,
            &Coach::FormQuestionReveal,
            &Coach::FormSay,
            &Coach::FormSayWords,
            &Coach::FormFen,
            &Coach::FormTopic,
        ],
    );
    let (number, topic) = (99_999, Label::of("Back-rank mates"));
    let kind = KindName::Words;
    fit(
        fit::OPTION,
        &[
            &Study::FormAnswerExample,
            &Coach::WeekPick,
            &Coach::PositionChoice {
                number,
                task: Label::of("#12"),
            },
            &Coach::PostChoice { kind, number },
            &Posting::ThreadName { kind, number },
            &Posting::ThreadNameTopic {
                kind,
                number,
                topic,
            },
        ],
    );
}

#[test]
fn the_bars_before_verdicts_can_be_made_equally_long() {
    use crate::desk::Verdict::{Illegal, OnTheWay, Solved, Unclear, Unreadable, Wrong};
    for verdict in [Solved, OnTheWay, Wrong, Illegal, Unclear, Unreadable] {
        fit(30, &[&Talk::VerdictWord { verdict }]);
    }
    fit(30, &[&Talk::KeptWord, &Talk::MarkedWord]);
}

#[test]
fn posts_and_reveals_are_known_by_headings_that_differ() {
    let mut all = Vec::new();
    for number in [1, 11] {
        for tag in tags() {
            for kind in [KindName::Problem, KindName::Question, KindName::Words] {
                all.push(words(tag).say(&Posting::PostHeading { kind, number }));
            }
            all.push(words(tag).say(&Posting::RevealHeading { number }));
            all.push(words(tag).say(&Posting::QuestionIsClosed { number }));
        }
    }
    for one in &all {
        let begun = all.iter().filter(|other| other.starts_with(one.as_str()));
        assert_eq!(begun.count(), 1, "{one}");
    }
}

#[test]
fn peoples_words_are_made_plain_and_moves_take_the_readers_letters() {
    let name = Plain::of("**Ana** <@1>");
    let said = english().say(&Group::CoachAdded { name });
    assert_eq!(
        said,
        "\\*\\*Ana\\*\\* \\<@\u{200b}1> coaches this group now."
    );
    let line = Moves::of("1.Nf3 Kh8 2.Qb8#");
    let said = words("de").say(&Study::OnYourBoard { line });
    assert_eq!(said, "Auf deinem Brett: 1.Sf3 Kh8 2.Db8#");
    assert_eq!(pattern(words("de"), "back-rank"), "Grundreihenmatt");
    assert_eq!(pattern(words("es"), "The club's own"), "The club's own");
    assert_eq!(topic(words("de"), None), "kein Thema");
    assert_eq!(topic(words("de"), Some("Opfer")), "Opfer");
}
