//! Cards drawn: the example's position, and where its moves lead with guards and flights marked.

use shakmaty::Position as _;

use super::{
    CardLink, CardName, CardSheet, Desk, Settings, ShownExample,
    card_held::{OpenProblem, tells_of},
    cards::Known,
    error::Done,
};
use crate::{
    chess::{
        Stipulation,
        card::Example,
        line::{moves, numbered},
    },
    diagram::{Text, reveal::Reveal},
};

/// Width of a card's pictures in pixels.
const PICTURE: u32 = 720;

impl Desk {
    /// Every card of a group with the open posts of which it would tell, and those posts.
    pub(super) async fn cards_and_posts(
        &self,
        cards: Vec<Known>,
        open: Vec<OpenProblem>,
    ) -> Done<(Vec<(Known, Vec<i64>)>, Vec<OpenProblem>)> {
        let seconds = self.inner.options.check_seconds;
        self.inner
            .checks
            .run("reading cards", seconds, move |_| {
                let cards = cards
                    .into_iter()
                    .map(|known| {
                        let tells_of = tells_of(&known, &open);
                        (known, tells_of)
                    })
                    .collect();
                (cards, open)
            })
            .await
    }

    /// A card with its pictures drawn in the group's style, their words in this language.
    pub(super) async fn card_sheet(
        &self,
        settings: &Settings,
        (known, tells_of): (Known, Vec<i64>),
        language: &str,
    ) -> Done<CardSheet> {
        let proved = !known.by_coach();
        let example = match known.example {
            Some(example) => Some(
                self.example_sheet(settings, &known.link, example, proved, language)
                    .await?,
            ),
            None => None,
        };
        Ok(CardSheet {
            link: known.link,
            words: known.words,
            relatives: known.relatives,
            example,
            tells_of,
        })
    }

    async fn example_sheet(
        &self,
        settings: &Settings,
        link: &CardLink,
        example: Example,
        proved: bool,
        language: &str,
    ) -> Done<ShownExample> {
        let turn = example.position.turn();
        let solution = numbered(turn, 1, &example.line);
        let end = match example.line.is_empty() {
            true => None,
            false => {
                let drawing = Reveal {
                    style: settings.style,
                    size: PICTURE,
                    heading: Some(link.heading()),
                    solution: vec![solution.clone()],
                    ..Reveal::of(&example.position, &moves(&example.position, &example.line))
                };
                Some(self.draw_reveal(drawing, language).await?)
            }
        };
        let moves = u8::try_from(example.line.len().div_ceil(2)).ok();
        Ok(ShownExample {
            side: turn.into(),
            task: moves.filter(|_| proved).map(Stipulation::Mate),
            start: self.draw_card(example.position, settings, language).await?,
            fen: example.fen,
            line: example.line,
            solution,
            end,
        })
    }
}

impl CardLink {
    /// What stands above the solution in the picture.
    fn heading(&self) -> Text {
        match &self.named {
            CardName::Pattern(pattern) => Text::PictureExample {
                pattern: pattern.clone(),
            },
            CardName::Topic(topic) => Text::PictureExampleTopic {
                topic: topic.clone(),
            },
        }
    }
}
