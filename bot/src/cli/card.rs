//! `card`: what a mating pattern is about, what tells it from its relatives, and an example.

use std::{
    io::{self, Write},
    path::{Path, PathBuf},
};

use clap::Args;
use serde_json::{Value, json};
use shakmaty::{Position, fen::Fen};

use super::{
    Outcome,
    output::json_line,
    text::{Failure, List, OrFail, failure, path, theirs},
    tongue::readers,
};
use crate::{
    chat::{
        common::{
            card::{Part, Told, pattern},
            text::Tasked,
        },
        pictures,
    },
    chess::{
        Stipulation,
        card::{Card as Page, card, cards},
        fact::Line,
        line::numbered,
        name::{meant, names},
    },
    diagram::{Text as OnPicture, reveal::Reveal, text::Pattern},
    words::{Words, english},
};

/// Read what a mating pattern is about: definition, what to look for, what tells it from its relatives, an
/// example with its solution, and where it is from. Without a name, the patterns there are cards of.
#[derive(Debug, Args)]
pub struct CardArgs {
    /// Mating pattern, by its name or title
    #[arg(value_name = "NAME")]
    name: Option<String>,
    /// One JSON object a card
    #[arg(long)]
    json: bool,
    /// Write the picture of the example's end there, as PNG or SVG by the file's ending
    #[arg(long, value_name = "FILE", requires = "name")]
    out: Option<PathBuf>,
}

impl CardArgs {
    pub(super) fn run(self) -> anyhow::Result<Outcome> {
        let mut out = io::stdout().lock();
        let Some(name) = &self.name else {
            list(&mut out, self.json)?;
            return Ok(Outcome::Fine);
        };
        let page = meant(name)
            .and_then(card)
            .or_fail(|| Failure::NotAPattern {
                topic: theirs(name),
                patterns: List {
                    list: names().map(theirs).collect(),
                },
            })?;
        if let Some(file) = &self.out {
            draw(&page, file)?;
        }
        match self.json {
            true => json_line(&mut out, &object(&page))?,
            false => write!(out, "{}", told(readers(), &page))?,
        }
        Ok(Outcome::Fine)
    }
}

/// Every card: its name, and what it is called.
fn list(out: &mut impl Write, json: bool) -> anyhow::Result<()> {
    for page in cards() {
        match json {
            true => json_line(out, &object(&page))?,
            false => writeln!(
                out,
                "{:<14} {}",
                page.pattern,
                pattern(readers(), page.pattern)
            )?,
        }
    }
    Ok(())
}

/// A card as programs read it; its words are English.
fn object(page: &Page) -> Value {
    let told = Told::ours(english(), page);
    let example = &page.example;
    json!({
        "card": page.pattern,
        "title": told.title,
        "definition": told.definition,
        "look": told.look,
        "relatives": told.relatives,
        "fen": Fen::from_position(&example.position, shakmaty::EnPassantMode::Legal).to_string(),
        "stipulation": task(page).to_string(),
        "line": example.line,
        "source": page.source,
    })
}

fn task(page: &Page) -> Stipulation {
    let moves = page.example.line.len().div_ceil(2);
    Stipulation::Mate(u8::try_from(moves).unwrap_or(u8::MAX))
}

/// A card as people read it.
fn told(words: &Words, page: &Page) -> String {
    let told = Told::ours(words, page);
    let example = &page.example;
    let turn = example.position.turn();
    let relatives: Vec<String> = told
        .relatives
        .iter()
        .map(|relative| {
            format!(
                "  {} ({})\n    {}",
                relative.title, relative.card, relative.apart
            )
        })
        .collect();
    let solution = Line::from(numbered(turn, 1, &example.line));
    format!(
        "{}\n{}\n\n{}\n  {}\n\n{}\n{}\n\n{}\n  {}\n  {}\n  {}\n\n{}\n",
        told.title,
        told.definition,
        words.say(&Part::CardWhatToLookFor),
        told.look,
        words.say(&Part::CardRelatives),
        relatives.join("\n"),
        words.say(&Part::CardExample),
        example.fen,
        words.say(&Tasked::of(turn.into(), task(page))),
        words.say(&solution),
        told.source,
    )
}

/// The end of the example with guards and flights marked.
fn draw(page: &Page, file: &Path) -> anyhow::Result<()> {
    let example = &page.example;
    let drawing = Reveal {
        heading: Some(OnPicture::PictureExample {
            pattern: Pattern {
                pattern: page.pattern.to_owned(),
            },
        }),
        solution: vec![numbered(example.position.turn(), 1, &example.line)],
        ..Reveal::of(&example.position, &example.moves())
    };
    let tongue = pictures::tongue(readers());
    let ending = file.extension().and_then(|ending| ending.to_str());
    let bytes = match ending.map(str::to_lowercase).as_deref() {
        Some("png") => drawing.png(&tongue)?.bytes,
        Some("svg") => drawing.svg(&tongue).into_bytes(),
        _ => return Err(failure(Failure::EndingOfBoard { file: path(file) })),
    };
    std::fs::write(file, bytes).or_fail(|| Failure::FileUnwritable { file: path(file) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::{tags, words};

    #[test]
    fn a_card_has_all_its_parts_in_every_language() {
        let page = card("boden").expect("a card");
        let english = told(english(), &page);
        for part in [
            "Boden's mate\nTwo bishops mate on crossing diagonals",
            "What to look for\n  A king castled long",
            "Mate by two bishops (double-bishop)\n    In Boden's mate the two bishops' diagonals cross",
            "Black to move and mate in two.\n  1...Qxc3+ 2.bxc3 Ba3#",
            "Renaud and Kahn",
        ] {
            assert!(english.contains(part), "{part}: {english}");
        }
        assert!(told(words("de"), &page).contains("1...Dxc3+ 2.bxc3 La3#"));
        for tag in tags() {
            assert_eq!(
                told(words(tag), &page).lines().count(),
                english.lines().count()
            );
        }
    }

    #[test]
    fn programs_get_the_facts() {
        let object = object(&card("arabian").expect("a card"));
        assert_eq!(object["card"], "arabian");
        assert_eq!(object["stipulation"], "#2");
        assert_eq!(object["line"], json!(["Nf6+", "Kh8", "Rh7#"]));
        assert_eq!(object["source"], "renaud-kahn");
        let relatives = object["relatives"].as_array().expect("a list");
        let names: Vec<&str> = relatives
            .iter()
            .filter_map(|one| one["card"].as_str())
            .collect();
        assert_eq!(names, ["anastasia", "hook", "vukovic"]);
    }
}
