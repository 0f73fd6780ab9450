//! What the writer of a reply does with each move in it: claims it as the answer, rejects it, asks about
//! it, thinks of it, or takes it back.
//!
//! Works on the items before they become a tree. A reply is cut into sentences, a bracket being one of its
//! own, and a sentence into stretches of moves and the words between them ([`super::link`] says what
//! those words do to the stretch before and the one after). What is not surely claimed is marked, so that
//! the tree is built without it; where the text does not say how far something reaches, there is a plan
//! for each way to take it.

use shakmaty::Color;

use super::link::{self, Link};
use super::phrase::{Item, Piece};
use super::words::Word;

/// Most later claims that are looked at by themselves.
const MOST_GUARDS: usize = 4;

/// What the tree does with an item.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Mark {
    /// It is claimed, or no part of a move.
    Keep,
    /// It is left out.
    Drop,
    /// It is left out unless the defender plays it, for then it is a side line: the moves of one number
    /// belong together. With `loose` the line ends where a move does not go on from it.
    Aside { line: u16, loose: bool },
}

/// Why nothing is claimed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doubt {
    /// The writer asks.
    Asked,
    /// The writer is not sure.
    Unsure,
    /// The writer says only what is not meant.
    Rejected,
}

/// The ways to take a reply, the likeliest first; and why nothing is claimed, where nothing is: the only
/// plan then keeps the moves that are spoken of.
pub(super) struct Stance {
    pub plans: Vec<Vec<Mark>>,
    /// "Ne7+ outranks Qxh7+": a word that is not known may set the two against each other. A way to take it
    /// where the likeliest one leaves a defence out, which nobody does who goes on with the line.
    pub strange: Option<Vec<Mark>>,
    /// What may be all that is claimed, since words stand before it: looked at only where the likeliest way
    /// would be charged.
    pub guards: Vec<Vec<Mark>>,
    pub doubt: Option<Doubt>,
    /// How to take it when the plans turn out to claim nothing.
    pub otherwise: Option<Box<Stance>>,
}

/// What the writer says of a stretch of moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Said {
    Claimed,
    /// Claimed in so many words, or said to be better.
    Preferred,
    Rejected,
    /// Thought of, or looking like something.
    Former,
    Unsure,
    Asked,
}

impl Said {
    /// Whether it is claimed.
    fn claims(self) -> bool {
        matches!(self, Self::Claimed | Self::Preferred)
    }
}

/// Moves in a row with nothing but numbers between them.
struct Stretch {
    pieces: Vec<usize>,
    said: Said,
    /// Rejected by words before it, so that its end is where the moves no longer follow one another.
    loose: bool,
    /// The number of its sentence.
    sentence: usize,
    /// Its sentence stands in brackets.
    bracket: bool,
    /// Another way to take it: as claimed after all.
    open: bool,
    /// Rejected by a word that may speak of what stands before it.
    parted: bool,
    /// It is concluded from what stands before it, or called the answer in so many words.
    concludes: bool,
}

/// A word that takes back, with the stretch that stands before it and what it needs.
struct Back {
    /// How many stretches had been written.
    at: usize,
    needs_more: bool,
}

struct Sentence {
    items: Vec<usize>,
    bracket: bool,
    question: bool,
}

/// Finds out what is claimed. `text` is what the items stand in, `solver` whose move it is first.
pub(super) fn of(pieces: &[Piece], text: &[char], solver: Color) -> Stance {
    let mut reader = Reader {
        pieces,
        text,
        solver,
        stretches: Vec::new(),
        backs: Vec::new(),
    };
    for (number, sentence) in sentences(pieces, text).iter().enumerate() {
        reader.sentence(number, sentence);
    }
    reader.stance()
}

/// Cuts the items into sentences.
fn sentences(pieces: &[Piece], text: &[char]) -> Vec<Sentence> {
    let new = |bracket| Sentence {
        items: Vec::new(),
        bracket,
        question: false,
    };
    let mut open = vec![new(false)];
    let mut done: Vec<Sentence> = Vec::new();
    for (i, piece) in pieces.iter().enumerate() {
        let depth = open.len();
        let top = &mut open[depth - 1];
        let gap = match i.checked_sub(1) {
            Some(before) => &text[pieces[before].end.min(piece.start)..piece.start],
            None => &[][..],
        };
        // The stop of an abbreviation or of a number stands within its item.
        let after_word = i > 0 && !matches!(pieces[i - 1].item, Item::Number { .. } | Item::Open);
        let stops = gap.iter().any(|c| matches!(c, '.' | '!')) || exclaims(pieces, text, i);
        if after_word && stops && !top.items.is_empty() {
            let bracket = top.bracket;
            done.push(std::mem::replace(top, new(bracket)));
        }
        match piece.item {
            Item::Open if depth < 64 => open.push(new(true)),
            Item::Close if depth > 1 => done.extend(open.pop()),
            Item::Open | Item::Close => {}
            Item::Line | Item::Semi => {
                let bracket = top.bracket;
                done.push(std::mem::replace(top, new(bracket)));
            }
            Item::Question if !annotates(pieces, i) => {
                top.question = true;
                let bracket = top.bracket;
                done.push(std::mem::replace(top, new(bracket)));
            }
            _ => top.items.push(i),
        }
    }
    done.extend(open.into_iter().rev());
    done.retain(|sentence| !sentence.items.is_empty());
    done.sort_by_key(|sentence| sentence.items[0]);
    done
}

/// Whether the item at `i` begins a sentence behind a move that ends in an exclamation mark.
fn exclaims(pieces: &[Piece], text: &[char], i: usize) -> bool {
    let Some(before) = i.checked_sub(1).map(|at| &pieces[at]) else {
        return false;
    };
    is_move(before)
        && before
            .end
            .checked_sub(1)
            .is_some_and(|end| text[end] == '!')
        && match pieces[i].item {
            Item::Word(Word::Asks) => true,
            Item::Word(_) => text[pieces[i].start].is_uppercase(),
            _ => false,
        }
}

/// Whether the question mark at `i` stands right behind a move.
fn annotates(pieces: &[Piece], i: usize) -> bool {
    i.checked_sub(1).is_some_and(|before| {
        matches!(pieces[before].item, Item::Move { .. }) && pieces[before].end == pieces[i].start
    })
}

fn is_move(piece: &Piece) -> bool {
    matches!(piece.item, Item::Move { .. })
}

fn label(piece: &Piece) -> Option<(u32, bool)> {
    match piece.item {
        Item::Number { number, black } => Some((number, black)),
        _ => None,
    }
}

struct Reader<'a> {
    pieces: &'a [Piece],
    text: &'a [char],
    solver: Color,
    stretches: Vec<Stretch>,
    backs: Vec<Back>,
}

impl<'a> Reader<'a> {
    /// Reads a sentence: its stretches, and what the words between them say.
    fn sentence(&mut self, number: usize, sentence: &Sentence) {
        let (stretches, links) = self.cut(sentence);
        let first = self.stretches.len();
        let count = stretches.len();
        for pieces in stretches {
            self.stretches.push(Stretch {
                pieces,
                said: Said::Claimed,
                loose: false,
                sentence: number,
                bracket: sentence.bracket,
                open: false,
                parted: false,
                concludes: false,
            });
        }
        let mut asked = sentence.question;
        let concluded = |link: &Link| link.concludes || link.after == Some(Said::Preferred);
        for (k, words) in links.iter().enumerate() {
            let has = (k > 0, k < count);
            let link = link::read(words, has);
            if count == 0 && link.fails {
                // "Qxh7+ was my plan. It does not work."
                let before = self
                    .stretches
                    .last_mut()
                    .filter(|s| s.bracket == sentence.bracket);
                if let Some(before) = before {
                    before.said = Said::Rejected;
                }
            }
            self.apply(first, k, count, &link);
            if k < count && concluded(&link) {
                self.stretches[first + k].concludes = true;
            }
            if k < count {
                self.stretches[first + k].parted = link.parted;
            }
            if k > 0 && link.before == Some(Said::Preferred) {
                let before = first + k - 1;
                // "Rxd8+ Rxd8 just trades, g3 is stronger"; not "Ne7+ Kh8 and Qxh7+ is strong".
                let words = |item: &&Item| matches!(item, Item::Word(word) if !matches!(word, Word::Then | Word::Check | Word::Filler));
                self.stretches[before].concludes |=
                    k == 1 || self.between(before).iter().any(words);
            }
            asked |= link.tag && k == count || (k == 0 && link.asks);
        }
        // A mark right behind the last move, with words that ask, is a question too.
        let signed = self.stretches[first..].last().is_some_and(|stretch| {
            let last = stretch.pieces.last();
            last.is_some_and(|&i| matches!(self.pieces[i].item, Item::Question))
        });
        asked |= signed && links.iter().any(|link| link::has_question(link));
        if asked {
            for stretch in &mut self.stretches[first..] {
                if stretch.said != Said::Rejected {
                    stretch.said = Said::Asked;
                }
            }
        }
    }

    /// What the link before stretch `k` of the sentence that begins at `first` does.
    fn apply(&mut self, first: usize, k: usize, count: usize, link: &Link) {
        let here = first + k;
        let comma_only = link.soft && link.comma;
        if let Some(back) = link.back {
            self.backs.push(Back {
                at: here,
                needs_more: back.needs_more,
            });
        }
        if k > 0 {
            let before = here - 1;
            let was = self.stretches[before].said;
            if let Some(said) = link.before {
                let now = self.stretches[before].said;
                // "sorry, I was thinking of Ne7+": what corrects is no former thought.
                let corrects = self.backs.iter().any(|back| back.at == before);
                let firm = matches!(now, Said::Rejected | Said::Asked)
                    || (said == Said::Former && corrects);
                if !firm || said == Said::Rejected {
                    self.stretches[before].said = said;
                }
                if said == Said::Rejected {
                    self.stretches[before].loose &= now == Said::Rejected;
                }
                // What is said in one breath: "h3 and Rd7 fail", "h3 or Rd7, not sure".
                let mut at = before;
                while matches!(said, Said::Rejected | Said::Unsure)
                    && at > first
                    && link::joined(&self.between(at))
                {
                    at -= 1;
                    self.stretches[at].said = said;
                }
            }
            if k == count {
                return;
            }
            let now = self.stretches[before].said;
            // "could be Nf3+ could be Ne2+"
            if link.after.is_none() && (was, link.before) == (Said::Unsure, Some(Said::Unsure)) {
                self.stretches[here].said = Said::Unsure;
                return;
            }
            if let Some(said) = link.after {
                self.stretches[here].said = said;
                self.stretches[here].loose = said == Said::Rejected;
            } else if (link.refutes || link.because || (link.but && self.begins_with_defence(here)))
                && matches!(now, Said::Rejected | Said::Former)
            {
                self.stretches[here].said = Said::Rejected;
                self.stretches[here].loose = true;
            } else if link.soft && !comma_only {
                self.stretches[here].said = now;
                self.stretches[here].loose = link.empty;
            } else if comma_only && matches!(now, Said::Unsure | Said::Former) {
                self.stretches[here].said = now;
            }
            let after = self.stretches[here].said;
            if link.but && after.claims() {
                match now {
                    Said::Former => self.stretches[before].said = Said::Rejected,
                    Said::Claimed if after == Said::Preferred => {
                        self.stretches[before].said = Said::Rejected;
                    }
                    Said::Claimed => {
                        self.stretches[before].said = Said::Rejected;
                        self.stretches[before].open = true;
                    }
                    _ => {}
                }
            } else if link.better_next && now == Said::Claimed {
                self.stretches[before].said = Said::Rejected;
            }
        } else if k < count
            && let Some(said) = link.after
        {
            self.stretches[here].said = said;
            self.stretches[here].loose = said == Said::Rejected;
        }
    }

    /// Whether the numbers of a stretch say that the defender begins it.
    fn begins_with_defence(&self, stretch: usize) -> bool {
        let pieces = &self.stretches[stretch].pieces;
        let first = pieces.iter().position(|&i| is_move(&self.pieces[i]));
        first.is_some_and(|k| k > 0 && self.is_defence(pieces, k))
    }

    /// The items between a stretch and the one before it.
    fn between(&self, stretch: usize) -> Vec<&Item> {
        let from = self.stretches[stretch - 1]
            .pieces
            .last()
            .map_or(0, |at| at + 1);
        let to = self.stretches[stretch]
            .pieces
            .first()
            .copied()
            .unwrap_or(from);
        self.pieces[from.min(to)..to]
            .iter()
            .map(|p| &p.item)
            .collect()
    }

    /// The stretches of a sentence, and the items before, between and behind them.
    fn cut(&self, sentence: &Sentence) -> (Vec<Vec<usize>>, Vec<Vec<&'a Item>>) {
        let (mut stretches, mut links) = (Vec::new(), Vec::new());
        let (mut stretch, mut link): (Vec<usize>, Vec<&'a Item>) = (Vec::new(), Vec::new());
        let mut moves = false;
        for (k, &i) in sentence.items.iter().enumerate() {
            let item = &self.pieces[i].item;
            let within = match item {
                Item::Move { .. } => true,
                Item::Number { .. } | Item::Dots => {
                    // A number belongs to the move behind it.
                    let next = sentence.items[k + 1..].iter().find(|&&n| {
                        !matches!(self.pieces[n].item, Item::Number { .. } | Item::Dots)
                    });
                    next.is_some_and(|&n| is_move(&self.pieces[n]))
                }
                Item::Question => moves,
                _ => false,
            };
            if within {
                if !moves && stretch.is_empty() {
                    links.push(std::mem::take(&mut link));
                }
                moves |= matches!(item, Item::Move { .. });
                stretch.push(i);
            } else {
                if moves {
                    // "Ne7+ Qxh7+ helyett": the word behind speaks of the last move alone.
                    let last = stretch.iter().rposition(|&i| is_move(&self.pieces[i]));
                    if let (Item::Word(Word::Unlike), Some(last @ 1..)) = (item, last) {
                        let tail = stretch.split_off(last);
                        if stretch.iter().any(|&i| is_move(&self.pieces[i])) {
                            stretches.push(std::mem::take(&mut stretch));
                            links.push(Vec::new());
                        }
                        stretch.extend(tail);
                    }
                    stretches.push(std::mem::take(&mut stretch));
                    moves = false;
                }
                link.push(item);
            }
        }
        if moves {
            stretches.push(stretch);
        }
        links.push(link);
        (stretches, links)
    }

    /// Whether a sign behind the move at `i` calls it bad.
    fn doubted(&self, i: usize) -> bool {
        let piece = &self.pieces[i];
        let own: String = self.text[piece.start..piece.end].iter().collect();
        if own.contains("??") || own.contains("?!") {
            return true;
        }
        let next = self.pieces.get(i + 1);
        if next.is_some_and(|next| matches!(next.item, Item::Question) && next.start == piece.end) {
            return true;
        }
        let alone =
            |at: usize, is: fn(&Item) -> bool| self.pieces.get(at).is_some_and(|p| is(&p.item));
        if alone(i + 1, |item| matches!(item, Item::Open))
            && alone(i + 2, |item| matches!(item, Item::Question))
            && alone(i + 3, |item| matches!(item, Item::Close))
        {
            return true;
        }
        let to = next.map_or(self.text.len(), |next| next.start);
        let gap: String = self.text[piece.end..to.max(piece.end)]
            .iter()
            .take(12)
            .collect();
        gap.split_whitespace()
            .any(|word| matches!(word, "$2" | "$4" | "$6"))
    }

    /// Whether the move at `k` of a stretch is the defender's, as far as numbers and order say.
    fn is_defence(&self, stretch: &[usize], k: usize) -> bool {
        let moves_before = |from: usize| {
            stretch[from..k]
                .iter()
                .filter(|&&i| is_move(&self.pieces[i]))
                .count()
        };
        let numbered = (0..k)
            .rev()
            .find_map(|at| Some((at, label(&self.pieces[stretch[at]])?)));
        match numbered {
            Some((at, (_, black))) => {
                let dots = stretch[at..k]
                    .iter()
                    .any(|&i| matches!(self.pieces[i].item, Item::Dots));
                let color = Color::from_white(!(black || dots));
                let mover = if moves_before(at) % 2 == 0 {
                    color
                } else {
                    !color
                };
                mover != self.solver
            }
            None => moves_before(0) % 2 == 1,
        }
    }

    fn stance(mut self) -> Stance {
        let mut marks = vec![Mark::Keep; self.pieces.len()];
        let mut other: Option<Vec<Mark>> = None;
        let mut line = 0u16;
        // What is taken back.
        let backs = std::mem::take(&mut self.backs);
        for back in &backs {
            let claimed = |s: &Stretch| {
                matches!(
                    s.said,
                    Said::Claimed | Said::Preferred | Said::Unsure | Said::Former
                )
            };
            let next = self.stretches[back.at..].iter().position(claimed);
            if back.needs_more && next.is_none() {
                continue;
            }
            let number = next
                .and_then(|at| self.stretches[back.at + at].pieces.first())
                .and_then(|&i| label(&self.pieces[i]));
            let written: Vec<usize> = self.stretches[..back.at]
                .iter()
                .filter(|s| claimed(s))
                .flat_map(|s| s.pieces.iter().copied())
                .filter(|&i| marks[i] == Mark::Keep)
                .collect();
            let nearest = match number {
                Some(number) => written
                    .iter()
                    .rposition(|&i| label(&self.pieces[i]) == Some(number)),
                None => written.iter().rposition(|&i| is_move(&self.pieces[i])),
            };
            let first = written
                .iter()
                .position(|&i| is_move(&self.pieces[i]) || label(&self.pieces[i]).is_some());
            let Some(cut) = (if next.is_none() {
                first
            } else {
                nearest.or(first)
            }) else {
                continue;
            };
            let far = next.is_some()
                && number.is_none()
                && written[..cut].iter().any(|&i| is_move(&self.pieces[i]));
            if far {
                let mut whole = other.clone().unwrap_or_else(|| marks.clone());
                written.iter().for_each(|&i| whole[i] = Mark::Drop);
                other = Some(whole);
            }
            written[cut..].iter().for_each(|&i| marks[i] = Mark::Drop);
            if let Some(other) = &mut other {
                written[cut..].iter().for_each(|&i| other[i] = Mark::Drop);
            }
        }
        // Signs that call a move bad, where another claim follows or a bracket holds them.
        let count = self.stretches.len();
        let mut cuts: Vec<(usize, usize, usize)> = Vec::new();
        let mut maybe_cut: Option<(usize, usize)> = None;
        for s in 0..count {
            if !matches!(
                self.stretches[s].said,
                Said::Claimed | Said::Preferred | Said::Former
            ) {
                continue;
            }
            let pieces = self.stretches[s].pieces.clone();
            let claim_later = self.stretches[s + 1..]
                .iter()
                .any(|later| later.said.claims() && (!later.bracket || self.stretches[s].bracket));
            let mut k = 0;
            while k < pieces.len() {
                let at = pieces[k];
                k += 1;
                if !is_move(&self.pieces[at])
                    || !self.doubted(at)
                    || self.is_defence(&pieces, k - 1)
                {
                    continue;
                }
                // From the number of the move on to where the numbers go back.
                let from = (0..k - 1)
                    .rev()
                    .take_while(|&b| {
                        !is_move(&self.pieces[pieces[b]])
                            && !matches!(self.pieces[pieces[b]].item, Item::Question)
                    })
                    .last()
                    .unwrap_or(k - 1);
                let own = (0..k).rev().find_map(|b| label(&self.pieces[pieces[b]]));
                let restart = (k..pieces.len()).find(|&b| {
                    label(&self.pieces[pieces[b]])
                        .zip(own)
                        .is_some_and(|(new, own)| new <= own)
                });
                let end = restart.unwrap_or(pieces.len());
                let more = (k..end).any(|b| is_move(&self.pieces[pieces[b]]));
                if self.stretches[s].bracket || claim_later || restart.is_some() {
                    cuts.push((s, from, end));
                    k = end;
                } else if more && (0..from).any(|b| is_move(&self.pieces[pieces[b]])) {
                    maybe_cut = Some((s, from));
                    break;
                } else {
                    self.stretches[s].said = Said::Asked;
                    let mut at = s;
                    while at > 0
                        && self.stretches[at - 1].sentence == self.stretches[s].sentence
                        && self.between(at).iter().any(|item| matches!(item, Item::Or))
                    {
                        at -= 1;
                        self.stretches[at].said = Said::Asked;
                    }
                    break;
                }
            }
        }
        // A stretch that is cut from its first move on claims nothing.
        let doc_claims = |stretches: &[Stretch], marks: &[Mark], cuts: &[(usize, usize, usize)]| {
            stretches.iter().enumerate().any(|(s, stretch)| {
                stretch.said.claims()
                    && stretch.pieces.iter().enumerate().any(|(k, &i)| {
                        is_move(&self.pieces[i])
                            && marks[i] == Mark::Keep
                            && !cuts
                                .iter()
                                .any(|&(cs, from, to)| cs == s && (from..to).contains(&k))
                    })
            })
        };
        let mut otherwise = None;
        if !doc_claims(&self.stretches, &marks, &cuts) {
            let nothing = self.nothing(&marks);
            // What is rejected by a word before it may end in a claim: "not Qxh7+ Ne7+".
            let ends = |s: &Stretch| {
                s.loose
                    && s.pieces
                        .iter()
                        .filter(|&&i| is_move(&self.pieces[i]))
                        .count()
                        > 1
            };
            if !self.stretches.iter().any(ends) {
                return nothing;
            }
            otherwise = Some(Box::new(nothing));
        }
        // What is rejected, asked or thought of belongs to no answer.
        let mut runs: Option<(usize, u16)> = None;
        for stretch in &self.stretches {
            if stretch.said.claims() {
                runs = None;
                continue;
            }
            // Stretches of one rejection are one line.
            let goes_on =
                runs.is_some_and(|(sentence, _)| sentence == stretch.sentence) && stretch.loose;
            if !goes_on {
                line = line.saturating_add(1);
            }
            runs = Some((stretch.sentence, line));
            for &i in &stretch.pieces {
                if marks[i] == Mark::Keep {
                    marks[i] = Mark::Aside {
                        line,
                        loose: stretch.loose,
                    };
                }
                if let Some(other) = &mut other
                    && other[i] == Mark::Keep
                {
                    other[i] = Mark::Aside {
                        line,
                        loose: stretch.loose,
                    };
                }
            }
        }
        for &(s, from, to) in &cuts {
            line = line.saturating_add(1);
            for &i in &self.stretches[s].pieces[from..to] {
                marks[i] = Mark::Aside { line, loose: true };
                if let Some(other) = &mut other {
                    other[i] = Mark::Aside { line, loose: true };
                }
            }
        }
        let mut plans = vec![marks.clone()];
        plans.extend(other);
        if let Some((s, from)) = maybe_cut {
            let mut cut = marks.clone();
            for &i in &self.stretches[s].pieces[from..] {
                cut[i] = Mark::Drop;
            }
            plans.push(cut);
        }
        if self.stretches.iter().any(|s| s.open) {
            let mut kept = marks;
            for stretch in self.stretches.iter().filter(|s| s.open) {
                stretch.pieces.iter().for_each(|&i| kept[i] = Mark::Keep);
            }
            plans.push(kept);
        }
        // "Nf6+ is met by gxf6. Ne7+ is the key": the last conclusion may be all that is claimed.
        if let Some(last) = self
            .stretches
            .iter()
            .rposition(|s| s.concludes && s.said.claims())
        {
            let number = self.stretches[last]
                .pieces
                .first()
                .and_then(|&i| label(&self.pieces[i]));
            let before = self.stretches[..last]
                .iter()
                .filter(|s| s.said.claims())
                .flat_map(|s| &s.pieces);
            let mut only = plans[0].clone();
            before.for_each(|&i| only[i] = Mark::Drop);
            if number.is_none_or(|(number, _)| number == 1) && only != plans[0] {
                plans.push(only);
            }
        }
        let strange = (1..count).find(|&at| self.strangely_joined(at)).map(|at| {
            let mut only = plans[0].clone();
            let later = self.stretches[at..].iter().filter(|s| s.said.claims());
            later
                .flat_map(|s| &s.pieces)
                .for_each(|&i| only[i] = Mark::Drop);
            only
        });
        plans.truncate(4);
        let guards = self.guards(&plans[0]);
        Stance {
            plans,
            strange,
            guards,
            doubt: None,
            otherwise,
        }
    }

    /// Whether a stretch follows the solver's move before it with nothing between them but words that are
    /// unknown, or that lead to no move.
    fn strangely_joined(&self, at: usize) -> bool {
        let (before, here) = (&self.stretches[at - 1], &self.stretches[at]);
        let last = before
            .pieces
            .iter()
            .rposition(|&i| is_move(&self.pieces[i]));
        // "I prefer Ne7+ to Qxh7+"
        let unknown = |item: &&Item| matches!(item, Item::Word(Word::Other | Word::To));
        let between = self.between(at);
        before.said.claims()
            && here.said.claims()
            && before.sentence == here.sentence
            && here
                .pieces
                .first()
                .is_some_and(|&i| label(&self.pieces[i]).is_none())
            && last.is_some_and(|k| !self.is_defence(&before.pieces, k))
            && !between.is_empty()
            && between.iter().all(unknown)
    }

    /// Plans that begin with a later claim, where words stand between it and the first: "Qxh7+ first is the
    /// trap. Ne7+". The last one first.
    fn guards(&self, marks: &[Mark]) -> Vec<Vec<Mark>> {
        let Some(first) = self.stretches.iter().position(|s| s.said.claims()) else {
            return Vec::new();
        };
        // Where a claim may begin: its stretch, and its place in that.
        let mut starts: Vec<(usize, usize)> = Vec::new();
        let mut said = false;
        for at in first..self.stretches.len() {
            let here = &self.stretches[at];
            said |= at > first && has_words(self.between(at).into_iter());
            let number = here.pieces.first().and_then(|&i| label(&self.pieces[i]));
            let begins = number.is_none_or(|(number, _)| number == 1);
            if said && (here.said.claims() || here.parted) && !here.bracket && begins {
                starts.push((at, 0));
            }
            // "Rd7 (not sure) Rxd8+": in the defender's place, behind words in brackets.
            if here.said.claims() {
                let moves = |k: &usize| is_move(&self.pieces[here.pieces[*k]]);
                let places: Vec<usize> = (0..here.pieces.len()).filter(moves).collect();
                let within = places.windows(2).filter_map(|pair| {
                    let between = here.pieces[pair[0]] + 1..here.pieces[pair[1]];
                    let words = has_words(self.pieces[between].iter().map(|piece| &piece.item));
                    (words && self.is_defence(&here.pieces, pair[1])).then_some(pair[1])
                });
                starts.extend(within.map(|k| (at, k)));
            }
        }
        starts
            .into_iter()
            .rev()
            .take(MOST_GUARDS)
            .map(|(at, k)| {
                let mut only = marks.to_vec();
                let (dropped, kept) = self.stretches[at].pieces.split_at(k);
                kept.iter().for_each(|&i| only[i] = Mark::Keep);
                let earlier = self.stretches[..at].iter().filter(|s| s.said.claims());
                earlier
                    .flat_map(|s| &s.pieces)
                    .chain(dropped)
                    .for_each(|&i| only[i] = Mark::Drop);
                only
            })
            .collect()
    }

    /// Nothing is claimed: what is asked about is kept for the question, else what is thought of.
    fn nothing(&self, taken_back: &[Mark]) -> Stance {
        let any = |said: Said| {
            self.stretches
                .iter()
                .any(|s| s.said == said && s.pieces.iter().any(|&i| taken_back[i] == Mark::Keep))
        };
        let (doubt, keep): (Option<Doubt>, &[Said]) = if any(Said::Asked) {
            (
                Some(Doubt::Asked),
                &[Said::Asked, Said::Claimed, Said::Preferred],
            )
        } else if any(Said::Unsure) || any(Said::Former) {
            (Some(Doubt::Unsure), &[Said::Unsure, Said::Former])
        } else if self.stretches.is_empty() {
            (None, &[])
        } else {
            (Some(Doubt::Rejected), &[])
        };
        let mut marks = vec![Mark::Keep; self.pieces.len()];
        if !keep.is_empty() {
            for stretch in self.stretches.iter().filter(|s| !keep.contains(&s.said)) {
                stretch.pieces.iter().for_each(|&i| marks[i] = Mark::Drop);
            }
        }
        Stance {
            plans: vec![marks],
            strange: None,
            guards: Vec::new(),
            doubt,
            otherwise: None,
        }
    }
}

/// Whether words stand among the items that do more than join two moves.
fn has_words<'a>(mut items: impl Iterator<Item = &'a Item>) -> bool {
    items.any(|item| matches!(item, Item::Word(word) if !matches!(word, Word::Then | Word::Check)))
}

/// Whether a word is one that may stand anywhere without saying anything of a move.
pub(super) fn is_small(word: Word) -> bool {
    matches!(
        word,
        Word::Filler
            | Word::Hail
            | Word::To
            | Word::On
            | Word::Asks
            | Word::Claim
            | Word::Answer
            | Word::Check
            | Word::Mate
            | Word::Any
    )
}
