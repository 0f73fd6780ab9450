//! Members' names in a sheet.

use crate::{
    chat::discord::{
        fit,
        text::{Plain, Posting, number},
    },
    words::Words,
};

/// Members' names in a row, with how many are left out when it grows too long.
pub fn in_a_row(words: &Words, names: &[String], most: usize) -> Plain {
    let mut out = String::new();
    for (i, name) in names.iter().enumerate() {
        let name = fit::plain(name);
        let left = names.len() - i;
        if out.chars().count() + name.chars().count() + 2 > most {
            return Plain::already(words.say(&Posting::NamesAndMore {
                names: Plain::already(out),
                more: number(left),
            }));
        }
        if i > 0 {
            out.push_str(", ");
        }
        out.push_str(&name);
    }
    Plain::already(out)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::english;

    #[test]
    fn many_names_are_counted() {
        let list: Vec<String> = (0..50).map(|i| format!("Member {i}")).collect();
        let line = english().say(&in_a_row(english(), &list, 60));
        assert!(
            line.ends_with("more") && line.chars().count() < 80,
            "{line}"
        );
        let few = english().say(&in_a_row(english(), &list[..2], 60));
        assert_eq!(few, "Member 0, Member 1");
    }
}
