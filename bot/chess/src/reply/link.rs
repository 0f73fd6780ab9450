//! What the words between two stretches of moves say of the one before and of the one after.

use super::phrase::Item;
use super::stance::{Said, is_small};
use super::words::Word;

/// Words that take back what stands before them.
#[derive(Clone, Copy, Debug)]
pub(super) struct TakenBack {
    /// Only where another move follows: "sorry" behind an answer takes nothing back.
    pub needs_more: bool,
}

/// What a link says.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Link {
    /// Of the stretch before it.
    pub before: Option<Said>,
    /// Of the stretch after it.
    pub after: Option<Said>,
    /// What stood before is taken back.
    pub back: Option<TakenBack>,
    /// What follows shows why what stands before is rejected.
    pub refutes: bool,
    /// A reason follows.
    pub because: bool,
    /// The two are set against each other.
    pub but: bool,
    /// What follows is said to be better.
    pub better_next: bool,
    /// Only commas and words that join.
    pub soft: bool,
    /// Nothing stands between the two.
    pub empty: bool,
    /// A comma is among them.
    pub comma: bool,
    /// What follows is concluded from what stands before.
    pub concludes: bool,
    /// It only says that something fails, with no move in its sentence: "It does not work."
    pub fails: bool,
    /// What follows is rejected by a word that a comma parts from it, so that it may speak of what stands
    /// before.
    pub parted: bool,
    /// It begins a question.
    pub asks: bool,
    /// It asks for a yes.
    pub tag: bool,
}

/// Whether the items only join two stretches, with no comma.
pub(super) fn joined(items: &[&Item]) -> bool {
    let joins = |item: &&Item| matches!(item, Item::Or | Item::Word(Word::Then | Word::Filler));
    !items.is_empty() && items.iter().all(joins)
}

/// Whether a word of the link asks.
pub(super) fn has_question(link: &[&Item]) -> bool {
    link.iter()
        .any(|item| matches!(item, Item::Word(Word::Asks | Word::Tag)))
}

/// Reads a link; `has` says whether a stretch stands before it and one after.
pub(super) fn read(items: &[&Item], has: (bool, bool)) -> Link {
    let (has_before, has_after) = has;
    let mut link = Link {
        soft: items.iter().all(|item| {
            matches!(
                item,
                Item::Comma
                    | Item::Dots
                    | Item::Or
                    | Item::Any
                    | Item::Number { .. }
                    | Item::Word(Word::Then | Word::Filler | Word::Any)
            )
        }),
        empty: items.is_empty(),
        comma: items
            .iter()
            .any(|item| matches!(item, Item::Comma | Item::Dots | Item::Any)),
        ..Link::default()
    };
    // True once something else than the stretch before is spoken of.
    let mut turned = !has_before;
    let (mut comma, mut then, mut failed) = (false, false, false);
    let (mut begun, mut or) = (false, false);
    let mut k = 0;
    while k < items.len() {
        let word = match items[k] {
            Item::Word(word) => *word,
            Item::Comma | Item::Dots => {
                comma = true;
                k += 1;
                continue;
            }
            Item::If => {
                // "looks good, but after ...": what comes shows why it is not.
                link.refutes |= link.but;
                turned |= has_after;
                then = true;
                k += 1;
                continue;
            }
            Item::Or => {
                or = has_before;
                k += 1;
                continue;
            }
            _ => {
                k += 1;
                begun = true;
                continue;
            }
        };
        let rest = &items[k + 1..];
        let next_word = rest.iter().find_map(|item| match item {
            Item::Word(Word::Filler | Word::Asks) => None,
            Item::Word(word) => Some(*word),
            _ => Some(Word::Other),
        });
        match word {
            Word::But => {
                link.but = true;
                (turned, then) = (has_after, false);
            }
            Word::First => {
                (link.but, turned) = (true, true);
                if has_after {
                    link.after = Some(Said::Preferred);
                }
            }
            Word::So => {
                link.concludes = true;
                turned = has_after || turned;
                link.refutes = false;
                failed = false;
                // "the king has no way out, so Rxd8+"
                link.after = link.after.filter(|said| *said != Said::Rejected);
            }
            Word::No => {
                let plain = rest.iter().all(|item| small(item));
                let close = k == 0 && has_before;
                if !then
                    && (plain || close || matches!(rest.first(), Some(Item::Comma | Item::Dots)))
                {
                    link.back = Some(TakenBack { needs_more: false });
                    (turned, link.after) = (true, None);
                }
            }
            Word::TakesBack => {
                let plain = rest.iter().all(|item| small(item));
                if plain && !then && link.back.is_none() {
                    link.back = Some(TakenBack { needs_more: true });
                    (turned, link.after) = (true, None);
                }
            }
            Word::Deny
                if has_before
                    && (rest.is_empty()
                        || matches!(
                            rest.first(),
                            Some(Item::Comma | Item::Dots | Item::Word(Word::TakesBack | Word::No))
                        )) =>
            {
                link.back = Some(TakenBack { needs_more: false });
                turned = true;
            }
            Word::Not | Word::Deny => match next_word {
                Some(Word::Works | Word::Better) => {
                    let skip = rest
                        .iter()
                        .position(|item| matches!(item, Item::Word(Word::Works | Word::Better)));
                    k += skip.unwrap_or(0) + 1;
                    link.fails |= !begun;
                    if !turned {
                        link.before = Some(Said::Rejected);
                        failed = true;
                    } else if has_after {
                        link.after = Some(Said::Rejected);
                    }
                }
                Some(Word::Check | Word::Mate) if !turned => {
                    link.before = Some(Said::Rejected);
                    failed = true;
                }
                Some(Word::Fails | Word::Hedge) if word == Word::Not => k += 1,
                _ if has_after => {
                    link.after = Some(Said::Rejected);
                    // "Wd6, a nie, Wxd8+": not the one before, perhaps.
                    link.parted = has_before && matches!(rest.first(), Some(Item::Comma));
                    turned = true;
                }
                _ => {}
            },
            Word::Instead | Word::Before => {
                // "took me ages over coffee... Ne7+": behind a comma something else comes.
                let parted = rest.iter().any(|item| matches!(item, Item::Comma));
                let comes = (word == Word::Instead && !parted)
                    || rest.iter().all(|item| {
                        small(item)
                            && !matches!(
                                item,
                                Item::Word(Word::But | Word::Then | Word::Claim | Word::Answer)
                            )
                    });
                if has_after && comes {
                    link.after = Some(Said::Rejected);
                    turned = true;
                }
            }
            Word::Unlike if has_before && !comma => {
                link.before = Some(Said::Rejected);
                turned = true;
            }
            Word::Fails => {
                link.fails |= items[..k].iter().all(|item| small(item));
                if !turned && !link.because {
                    link.before = Some(Said::Rejected);
                    failed = true;
                    comma = false;
                } else if has_after && !link.because && rest.iter().all(|item| small(item)) {
                    link.after = Some(Said::Rejected);
                }
            }
            Word::Works if !turned && link.before.is_none() && !link.because && !link.comma => {
                link.before = Some(Said::Preferred);
            }
            Word::Because => {
                link.because = true;
                if failed {
                    link.refutes = true;
                }
                turned = true;
            }
            Word::Better => {
                if !turned && !(has_after && (comma || then)) {
                    if link.before.is_none() {
                        link.before = Some(Said::Preferred);
                    }
                } else if has_after {
                    link.after = Some(Said::Preferred);
                    link.better_next = comma && !then;
                }
            }
            Word::Claim | Word::Answer if has_after && link.after != Some(Said::Rejected) => {
                link.after = Some(Said::Claimed);
                link.concludes |= word == Word::Answer && !has_before && !then;
                turned = true;
            }
            // "Rh3 h6 nothing. I give up"; not "I give up the queen".
            Word::Quits if rest.is_empty() && !has_after => {
                link.back = Some(TakenBack { needs_more: false });
            }
            Word::Former | Word::Seems => {
                if has_before && !turned && !(comma && has_after) {
                    if link.before.is_none() {
                        link.before = Some(Said::Former);
                    }
                } else if has_after && link.after.is_none() {
                    link.after = Some(Said::Former);
                }
            }
            // "Nf7+? or perhaps Qg8+": neither is sure.
            Word::Hedge if or && has_after => {
                link.after = Some(Said::Unsure);
                link.before = link.before.or(Some(Said::Unsure));
            }
            Word::Hedge => {
                if has_after && (comma || then || turned || !has_before) {
                    link.after = Some(Said::Unsure);
                } else if has_before && !then {
                    link.before = Some(Said::Unsure);
                } else if has_after {
                    link.after = Some(Said::Unsure);
                }
            }
            Word::Then => then = true,
            Word::Else => turned = true,
            Word::Tag => link.tag = true,
            Word::Asks => link.asks |= !begun,
            _ => {}
        }
        begun |= word != Word::Hail;
        k += 1;
    }
    // "fails to Kxh7": what comes next is the reason, unless a comma parts it.
    if failed && has_after && !link.but && link.after.is_none() && link.back.is_none() {
        let last = items
            .iter()
            .rposition(|item| matches!(item, Item::Word(Word::Fails | Word::Works | Word::Better)));
        let tail = last.map_or(&[][..], |at| &items[at + 1..]);
        let parted = tail
            .iter()
            .any(|item| matches!(item, Item::Comma | Item::Word(Word::So)));
        link.refutes |= !parted && tail.len() <= 3;
    } else if failed && (link.but || link.after.is_some()) {
        link.refutes = false;
    }
    if items
        .iter()
        .any(|item| matches!(item, Item::Word(Word::So)))
    {
        link.refutes = false;
        link.because = false;
    }
    link
}

fn small(item: &Item) -> bool {
    match item {
        Item::Word(word) => {
            is_small(*word)
                || matches!(
                    word,
                    Word::TakesBack
                        | Word::No
                        | Word::Not
                        | Word::Deny
                        | Word::Then
                        | Word::So
                        | Word::Better
                        | Word::Former
                        | Word::Instead
                        | Word::But
                )
        }
        Item::Comma | Item::Dots | Item::Line | Item::Number { .. } | Item::Or => true,
        _ => false,
    }
}
