//! Names that cannot be taken for somebody else's: neither a coach's, nor another member's, nor the word
//! that marks a coach's rank.
//!
//! Two names are alike when a reader may mix them up: whatever the case, the accents, the spaces and
//! signs between letters, the characters that do not show, and the letters and digits of any script that
//! look like others. What looks like what is Unicode's list of confusables (Unicode Technical Standard
//! 39, section 4), by the crate `unicode-security`.

use sealed_move_store::{Db, Member};
use unicode_normalization::{UnicodeNormalization, char::is_combining_mark};
use unicode_security::skeleton;

use super::{
    GroupId, MemberId,
    error::{DeskError, Done},
    refusal::Refusal,
    text::{self, LONGEST_NAME},
};

/// The word that stands beside a coach's name. No name may hold it, so that nobody wears it by name.
pub(super) const RANK: &str = "coach";

/// Names that the program itself goes by, or that would be read as a part of it, in any language that the
/// pages are in: the mark of a coach is one.
const RESERVED: &[&str] = &[
    "admin",
    "administrator",
    "bot",
    "entrenador",
    "entrenadora",
    "everyone",
    "former member",
    "member",
    "moderator",
    "sealed move",
    "teacher",
    "trainer",
    "trainerin",
    "you",
];

/// What a group calls a coach who has not given a name.
pub(super) const NAMELESS_COACH: &str = "Coach";
/// What a group calls a member whose name is empty.
const NAMELESS: &str = "Member";

/// How a name looks. Two names that look alike have one of the two keys in common.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Look {
    /// Folded first, then reduced to its skeleton: finds other case, accents, other scripts.
    folded: String,
    /// Reduced first, with its case: finds a capital I that stands for a small l.
    drawn: String,
}

impl Look {
    fn of(name: &str) -> Self {
        Self {
            folded: bare(&fold(&reduced(&fold(name)))),
            // A capital L looks like neither an I nor an l, so it stays apart from both.
            drawn: bare(&fold(&reduced(name).replace('L', "\u{141}"))),
        }
    }

    fn like(&self, other: &Self) -> bool {
        self.folded == other.folded || self.drawn == other.drawn
    }

    fn holds(&self, word: &str) -> bool {
        self.folded.contains(word) || self.drawn.contains(word)
    }
}

/// The skeleton of a text: every character as the one it looks like.
fn reduced(text: &str) -> String {
    skeleton(&text.nfkc().collect::<String>()).collect()
}

/// Without case, accents, and what does not show.
fn fold(text: &str) -> String {
    text.nfkd()
        .filter(|&c| !is_combining_mark(c) && !invisible(c))
        .flat_map(char::to_lowercase)
        // What the change of case has brought along, as of a Turkish capital I.
        .filter(|&c| !is_combining_mark(c))
        .collect()
}

/// Letters and digits only; of a name that has none, everything but spaces.
fn bare(text: &str) -> String {
    let letters: String = text.chars().filter(|c| c.is_alphanumeric()).collect();
    if letters.is_empty() {
        text.chars().filter(|c| !c.is_whitespace()).collect()
    } else {
        letters
    }
}

/// Characters that take up no ink, beyond those that no name keeps.
fn invisible(c: char) -> bool {
    c.is_whitespace()
        || c.is_control()
        || matches!(c,
            '\u{ad}' | '\u{34f}' | '\u{61c}' | '\u{115f}' | '\u{1160}' | '\u{17b4}' | '\u{17b5}'
            | '\u{180b}'..='\u{180f}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}' | '\u{2800}' | '\u{3164}' | '\u{fe00}'..='\u{fe0f}'
            | '\u{feff}' | '\u{ffa0}' | '\u{fff0}'..='\u{fffb}' | '\u{e0000}'..='\u{e0fff}')
}

/// Why a name cannot be had.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Objection {
    /// Nothing in it shows.
    Blank,
    /// It holds the word that marks a coach, or a name that is the program's own.
    Reserved,
    /// Somebody in the group has it, or one that looks like it.
    Taken,
}

/// The other members of a group as a new name must differ from them.
struct Others(Vec<Look>);

impl Others {
    fn of(db: &Db<'_>, group: GroupId, except: Option<MemberId>) -> Done<Self> {
        Ok(Self(
            db.members(group)?
                .iter()
                .filter(|member| Some(member.id) != except)
                .map(|member| Look::of(&member.name))
                .collect(),
        ))
    }

    fn objection(&self, name: &str) -> Option<Objection> {
        let look = Look::of(name);
        if look.folded.is_empty() {
            return Some(Objection::Blank);
        }
        if look.holds(RANK) || RESERVED.iter().any(|word| Look::of(word).like(&look)) {
            return Some(Objection::Reserved);
        }
        let taken = self.0.iter().any(|other| other.like(&look));
        taken.then_some(Objection::Taken)
    }

    /// A free name close to the one that was wanted.
    fn variation(&self, wanted: &str) -> String {
        let stem = match self.objection(wanted) {
            None => return wanted.to_owned(),
            Some(Objection::Taken) => wanted.to_owned(),
            Some(Objection::Blank) => NAMELESS.to_owned(),
            Some(Objection::Reserved) => without_rank(wanted),
        };
        // There are more numbers than members.
        std::iter::once(stem.clone())
            .chain((2..).map(|number| numbered(&stem, number)))
            .find(|name| self.objection(name).is_none())
            .unwrap_or(stem)
    }
}

/// The name with a number behind it, within the bound.
fn numbered(stem: &str, number: u32) -> String {
    let end = format!(" {number}");
    let room = LONGEST_NAME - end.chars().count();
    let stem: String = stem.chars().take(room).collect();
    format!("{}{end}", stem.trim_end())
}

/// The words of a name that say nothing of a rank; "Member" when none is left.
fn without_rank(name: &str) -> String {
    let words: Vec<&str> = name
        .split_whitespace()
        .filter(|word| {
            let look = Look::of(word);
            !look.folded.is_empty()
                && !look.holds(RANK)
                && !RESERVED.iter().any(|word| Look::of(word).like(&look))
        })
        .collect();
    let left = words.join(" ");
    if left.is_empty() || Look::of(&left).holds(RANK) {
        NAMELESS.to_owned()
    } else {
        left
    }
}

/// The name as somebody asked for it, if they may have it. `member` is who they are already.
///
/// # Errors
/// [`DeskError::NameTaken`] with a name that is free.
pub(super) fn claim(
    db: &Db<'_>,
    group: GroupId,
    member: Option<&Member>,
    wanted: &str,
) -> Done<String> {
    let name = text::name(wanted);
    // What somebody has been called so far they may go on being called.
    if member.is_some_and(|member| member.name == name) {
        return Ok(name);
    }
    let others = Others::of(db, group, member.map(|member| member.id))?;
    let Some(objection) = others.objection(&name) else {
        return Ok(name);
    };
    let offer = others.variation(&name);
    let (wanted, free) = (name.into(), offer.clone().into());
    let why = match objection {
        Objection::Blank => Refusal::NameBlank { offer: free },
        Objection::Reserved => Refusal::NameReserved {
            name: wanted,
            offer: free,
        },
        Objection::Taken => Refusal::NameInUse {
            name: wanted,
            offer: free,
        },
    };
    Err(DeskError::NameTaken { why, offer })
}

/// A name for somebody whom the chat calls `wanted`: that, or a free one close to it. One who was given
/// such a name before keeps it.
pub(super) fn given(
    db: &Db<'_>,
    group: GroupId,
    member: Option<&Member>,
    wanted: &str,
) -> Done<String> {
    let name = text::name(wanted);
    let others = Others::of(db, group, member.map(|member| member.id))?;
    if others.objection(&name).is_none() {
        return Ok(name);
    }
    let stem = match others.objection(&name) {
        Some(Objection::Reserved) => without_rank(&name),
        _ => name.clone(),
    };
    if let Some(member) = member
        && let Some(rest) = member.name.strip_prefix(&stem)
        && (rest.is_empty() || rest.trim_start().chars().all(|c| c.is_ascii_digit()))
        && others.objection(&member.name).is_none()
    {
        return Ok(member.name.clone());
    }
    Ok(others.variation(&name))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn like(one: &str, other: &str) -> bool {
        Look::of(&text::name(one)).like(&Look::of(&text::name(other)))
    }

    /// Pairs written down before they were tried.
    #[test]
    fn names_that_look_alike_are_alike() {
        for (one, other) in [
            ("Ana", "Ana"),
            ("Ana", "ANA"),
            ("Ana", "ána"),
            ("Ana", "A n a"),
            ("Ana", "Ana."),
            ("Ana", "A-n-a"),
            ("Ana", "A\u{200b}na"),
            ("Ana", "An\u{fe0f}a"),
            ("Ana", "Ana\u{3164}"),
            ("Ana", "А\u{43d}а".replace('\u{43d}', "n").as_str()),
            ("Ana", "\u{410}n\u{430}"),
            ("Ana", "\u{391}na"),
            ("Ana", "\u{ff21}\u{ff4e}\u{ff41}"),
            ("Ana", "\u{1d400}\u{1d427}\u{1d41a}"),
            ("Ana", "\u{24b6}\u{24dd}\u{24d0}"),
            ("Oleg", "0leg"),
            ("Paolo", "Pa01o"),
            ("Ian", "lan"),
            ("Ian", "1an"),
            ("Alan", "AIan"),
            ("Alan", "aIan"),
            ("Milo", "MiIo"),
            ("Martha", "rnartha"),
            ("Søren", "Soren"),
            ("Łukasz", "Lukasz"),
            ("İpek", "Ipek"),
            ("ırmak", "irmak"),
            ("Zoë", "Zoe\u{308}"),
            ("José", "Jose"),
            ("♞", "♞\u{fe0f}"),
        ] {
            assert!(like(one, other), "{one:?} and {other:?}");
            assert!(like(other, one), "{other:?} and {one:?}");
        }
    }

    #[test]
    fn names_that_differ_are_told_apart() {
        for (one, other) in [
            ("Ana", "Anna"),
            ("Ana", "Ana 2"),
            ("Ana 2", "Ana 3"),
            ("Ian", "Jan"),
            ("Ian", "Lan"),
            ("Ben", "Bea"),
            ("Марія", "Марко"),
            ("李雷", "韩梅"),
            ("♞", "♜"),
            ("Rosa", "Ross"),
        ] {
            assert!(!like(one, other), "{one:?} and {other:?}");
        }
    }

    #[test]
    fn the_rank_is_nobodys_name() {
        let nobody = Others(Vec::new());
        for name in [
            "Coach",
            "coach kim",
            "THE COACH",
            "C o a c h",
            "c0ach",
            "Со\u{430}ch",
            "co\u{200b}ach",
            "Ｃoach",
            "co.ach",
            "Kim (coach)",
            "cóach",
            "You",
            "Y0U",
            "Sealed Move",
            "sealedmove",
            "Admin",
            "Bot",
        ] {
            let name = text::name(name);
            assert_eq!(nobody.objection(&name), Some(Objection::Reserved), "{name}");
            let offer = nobody.variation(&name);
            assert_eq!(nobody.objection(&offer), None, "{name}: {offer}");
        }
        assert_eq!(nobody.variation("coach Kim"), "Kim");
        assert_eq!(nobody.variation("Coach"), "Member 2");
        for blank in ["\u{3164}", "\u{2800}\u{2800}", "\u{34f}"] {
            assert_eq!(nobody.objection(blank), Some(Objection::Blank), "{blank:?}");
        }
        for fine in ["Ana", "Bo", "Roach", "Young", "Botond", "Yousef", "♞"] {
            assert_eq!(nobody.objection(fine), None, "{fine}");
        }
    }

    #[test]
    fn a_variation_fits_and_is_free() {
        let long = "A".repeat(LONGEST_NAME);
        let others = Others(vec![Look::of(&long), Look::of("Ana"), Look::of("Ana 2")]);
        assert_eq!(others.variation("Ana"), "Ana 3");
        assert_eq!(others.variation("Bea"), "Bea");
        let varied = others.variation(&long);
        assert_eq!(varied.chars().count(), LONGEST_NAME);
        assert_eq!(others.objection(&varied), None);
    }

    proptest! {
        #[test]
        fn any_name_has_a_free_variation(raw in any::<String>(), taken in prop::collection::vec(any::<String>(), 0..4)) {
            let name = text::name(&raw);
            let mut looks: Vec<Look> = taken.iter().map(|t| Look::of(&text::name(t))).collect();
            looks.push(Look::of(&name));
            let others = Others(looks);
            let offer = others.variation(&name);
            prop_assert_eq!(others.objection(&offer), None);
            prop_assert!((1..=LONGEST_NAME).contains(&offer.chars().count()));
        }

        #[test]
        fn a_name_looks_like_itself(raw in "\\PC{1,20}") {
            prop_assert!(like(&raw, &raw.to_uppercase().to_lowercase()) || !raw.is_ascii());
        }
    }
}
