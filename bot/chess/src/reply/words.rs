//! The words members use for pieces, moves and what they think of them, by language.
//!
//! Each language has a table of its own in a file of its name. Which tables a reply is read by is decided
//! for the whole reply: the group's language and English always, another one where words of the reply are
//! its own and neither of those two's. So "come on" makes no capture in an English sentence because
//! "come" does in a Spanish one. Small marks over letters may be left out.

mod czech;
mod dutch;
mod english;
mod french;
mod german;
mod hungarian;
mod italian;
mod polish;
mod portuguese;
mod russian;
mod spanish;
mod turkish;

use std::collections::HashMap;
use std::sync::OnceLock;

use shakmaty::{CastlingSide, Role};

use super::scan::{Kind, Token};
use crate::Language;

/// Words of one meaning, parted by `|`; several words in a row are one entry.
pub(super) type Entry = (Word, &'static str);

/// Most words of an entry.
const LONGEST: usize = 5;

/// What a word means to the reader.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Word {
    /// A piece.
    Man(Role),
    /// Capturing.
    Takes,
    /// Capturing, between a piece and a square; begins a question or a request elsewhere.
    For,
    /// Going somewhere.
    To,
    /// Standing somewhere.
    On,
    /// Check is claimed.
    Check,
    /// Mate is claimed.
    Mate,
    /// Castling, perhaps with the side.
    Castles(Option<CastlingSide>),
    /// A side of castling.
    Wing(CastlingSide),
    /// Belongs to a wing word: "king side".
    Side,
    /// Promoting.
    Promotes,
    /// En passant.
    EnPassant,
    /// With which piece: "with the queen".
    With,
    /// A piece is put somewhere: "sac the queen on h7".
    Puts,
    /// The king's or the queen's one of two like pieces: "queen's knight".
    WingOf(CastlingSide),
    /// One of two like pieces in one word: "Königsspringer".
    WingMan(CastlingSide, Role),
    /// Whatever the defence.
    Any,
    /// Another move instead of the last one.
    Or,
    /// What follows is a variation.
    If,
    /// The next move in order.
    Then,
    /// The next move is not meant.
    Not,
    /// No, or not, in languages that have one word for both.
    Deny,
    /// No: what was written before is not meant.
    No,
    /// What was written before is taken back when another move follows.
    TakesBack,
    /// The next move is what the answer is not: "rather than".
    Instead,
    /// The last move is what the answer is not, where that is said behind it.
    Unlike,
    /// Something else than before follows.
    But,
    /// The next move comes later.
    Before,
    /// A move was thought of.
    Former,
    /// A move looks like something.
    Seems,
    /// A move is not sure.
    Hedge,
    /// A move is right, or better than another.
    Better,
    /// A move comes before the last one: "but first".
    First,
    /// What follows is concluded.
    So,
    /// Something other than the last move is spoken of.
    Else,
    /// A greeting, or a sound.
    Hail,
    /// Asks for a yes behind a move.
    Tag,
    /// A move fails.
    Fails,
    /// A move does what it should.
    Works,
    /// A reason follows.
    Because,
    /// An answer is announced.
    Claim,
    /// The answer is called so: "the solution is".
    Answer,
    /// The writer gives up.
    Quits,
    /// The game or another day is spoken of, or it is supposed.
    Aside,
    /// A question is asked.
    Asks,
    /// Says nothing to the chess.
    Filler,
    /// Not known.
    Other,
}

/// The tables of a language, by the words without marks and capitals.
fn table(language: Language) -> &'static HashMap<String, Word> {
    static TABLES: OnceLock<Vec<HashMap<String, Word>>> = OnceLock::new();
    let all = TABLES.get_or_init(|| {
        let mut tables = Vec::with_capacity(Language::ALL.len());
        for language in Language::ALL {
            let mut table = HashMap::new();
            for &(word, names) in entries(language) {
                for name in names.split('|') {
                    let key: Vec<String> = name
                        .split([' ', '-'])
                        .filter(|part| !part.is_empty())
                        .map(folded)
                        .collect();
                    table.entry(key.join(" ")).or_insert(word);
                }
            }
            tables.push(table);
        }
        tables
    });
    let at = Language::ALL.iter().position(|l| *l == language);
    &all[at.unwrap_or(0)]
}

fn entries(language: Language) -> &'static [Entry] {
    match language {
        Language::English => english::WORDS,
        Language::German => german::WORDS,
        Language::French => french::WORDS,
        Language::Spanish => spanish::WORDS,
        Language::Italian => italian::WORDS,
        Language::Portuguese => portuguese::WORDS,
        Language::Dutch => dutch::WORDS,
        Language::Russian => russian::WORDS,
        Language::Polish => polish::WORDS,
        Language::Czech => czech::WORDS,
        Language::Hungarian => hungarian::WORDS,
        Language::Turkish => turkish::WORDS,
    }
}

/// A word in small letters without marks.
fn folded(word: &str) -> String {
    word.chars()
        .flat_map(char::to_lowercase)
        .filter(|c| !('\u{300}'..='\u{36f}').contains(c))
        .map(|c| match c {
            'à' | 'á' | 'â' | 'ã' | 'ä' | 'å' | 'ą' => 'a',
            'ç' | 'ć' | 'č' => 'c',
            'ď' => 'd',
            'è' | 'é' | 'ê' | 'ë' | 'ę' | 'ě' => 'e',
            'ğ' => 'g',
            'ì' | 'í' | 'î' | 'ï' | 'ı' => 'i',
            'ł' => 'l',
            'ñ' | 'ń' | 'ň' => 'n',
            'ò' | 'ó' | 'ô' | 'õ' | 'ö' | 'ő' => 'o',
            'ř' => 'r',
            'ś' | 'š' | 'ş' => 's',
            'ť' => 't',
            'ù' | 'ú' | 'û' | 'ü' | 'ű' | 'ů' => 'u',
            'ý' | 'ÿ' => 'y',
            'ź' | 'ż' | 'ž' => 'z',
            'ё' => 'е',
            c => c,
        })
        .collect()
}

/// The meaning of a word by every table, the first that has it; for reading a single word.
pub(super) fn meaning(word: &str) -> Word {
    let word = folded(word);
    Language::ALL
        .iter()
        .filter_map(|language| table(*language).get(&word).copied())
        .find(|meaning| *meaning != Word::Other)
        .unwrap_or(Word::Other)
}

/// The meaning of a word that one language gives it.
pub(super) fn meaning_in(language: Language, word: &str) -> Option<Word> {
    table(language).get(&folded(word)).copied()
}

/// Gives the words among `tokens` the meaning they have in the languages the reply is written in, and
/// makes one token of several words that mean something together.
pub(super) fn understand(tokens: Vec<Token>, text: &[char], own: Language) -> Vec<Token> {
    let words: Vec<Option<String>> = tokens.iter().map(|token| word_of(token, text)).collect();
    let scope = Scope::of(&words, own);
    let mut out = Vec::with_capacity(tokens.len());
    let mut i = 0;
    while i < tokens.len() {
        let Some(first) = &words[i] else {
            out.push(tokens[i].clone());
            i += 1;
            continue;
        };
        let mut run = 1;
        while run < LONGEST
            && i + run < tokens.len()
            && words[i + run].is_some()
            && text[tokens[i + run - 1].end..tokens[i + run].start]
                .iter()
                .all(|c| matches!(c, ' ' | '-'))
        {
            run += 1;
        }
        let phrase = |from: usize, to: usize| {
            let parts: Vec<&str> = words[i + from..i + to]
                .iter()
                .flatten()
                .map(String::as_str)
                .collect();
            scope.phrase(&parts.join(" "))
        };
        let several = (2..=run)
            .rev()
            .find_map(|count| Some((count, phrase(0, count)?)));
        // "but not sure" is "but" and "not sure", and no "but not".
        let several = several.filter(|&(count, _)| {
            let longer = (1..count).flat_map(|from| (count + 1..=run).map(move |to| (from, to)));
            !longer
                .into_iter()
                .any(|(from, to)| matches!(phrase(from, to), Some(Word::Hedge | Word::Fails)))
        });
        if let Some((count, word)) = several {
            out.push(Token {
                kind: Kind::Word(word),
                start: tokens[i].start,
                end: tokens[i + count - 1].end,
                stop: tokens[i + count - 1].stop,
            });
            i += count;
            continue;
        }
        let word = scope.word(first);
        out.push(Token {
            kind: match tokens[i].kind {
                Kind::Letter(letter, _) => Kind::Letter(letter, word),
                Kind::Files(from, to, _) => Kind::Files(from, to, word),
                _ => Kind::Word(word),
            },
            ..tokens[i].clone()
        });
        i += 1;
    }
    out
}

/// The word a token is, without marks and capitals.
fn word_of(token: &Token, text: &[char]) -> Option<String> {
    if !matches!(
        token.kind,
        Kind::Word(_) | Kind::Letter(..) | Kind::Files(..)
    ) {
        return None;
    }
    let written = &text[token.start..token.end];
    let word = |c: &char| c.is_alphabetic() || *c == '\'' || ('\u{300}'..='\u{36f}').contains(c);
    written
        .iter()
        .all(word)
        .then(|| folded(&written.iter().collect::<String>()))
}

/// The languages a reply is read in, the likeliest first, with how many of its words speak for each.
struct Scope {
    languages: Vec<(Language, usize)>,
    own: Language,
}

impl Scope {
    fn of(words: &[Option<String>], own: Language) -> Self {
        let home = [own, Language::English];
        let known = |language: Language, word: &str| {
            table(language)
                .get(word)
                .is_some_and(|meaning| *meaning != Word::Other)
        };
        let mut seen: Vec<&str> = words.iter().flatten().map(String::as_str).collect();
        seen.sort_unstable();
        seen.dedup();
        let mut languages: Vec<(Language, usize)> = Vec::new();
        for language in home.into_iter().chain(Language::ALL) {
            if languages.iter().any(|&(l, _)| l == language) {
                continue;
            }
            let all = seen.iter().filter(|word| known(language, word)).count();
            if home.contains(&language) {
                languages.push((language, all));
                continue;
            }
            let proper = seen
                .iter()
                .filter(|word| {
                    word.chars().count() > 2
                        && known(language, word)
                        && home.iter().all(|home| !table(*home).contains_key(**word))
                })
                .count();
            if proper > 0 {
                languages.push((language, all));
            }
        }
        languages.sort_by_key(|&(_, count)| std::cmp::Reverse(count));
        Self { languages, own }
    }

    fn phrase(&self, words: &str) -> Option<Word> {
        self.languages
            .iter()
            .find_map(|&(language, _)| table(language).get(words).copied())
    }

    fn word(&self, word: &str) -> Word {
        let found = self.languages.iter().find_map(|&(language, count)| {
            let meaning = table(language).get(word).copied()?;
            let home = language == self.own || language == Language::English;
            // A single word of another language makes no capture.
            let weak = !home && count < 2 && matches!(meaning, Word::Takes | Word::For);
            (!weak).then_some(meaning)
        });
        found.unwrap_or(Word::Other)
    }
}
