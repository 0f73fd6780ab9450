//! A language that nobody speaks: every letter wears a mark and vowels are doubled, so that a text which is
//! written elsewhere than in the FTL shows, and one that has no room for a longer language is cut. It takes the
//! place of every language where the environment sets `SEALED_MOVE_PSEUDO_LANGUAGE`.

use std::sync::LazyLock;

use fluent_syntax::{
    ast::{Entry, Expression, InlineExpression, Pattern, PatternElement},
    parser,
    serializer::serialize,
};

const ASKED_FOR: &str = "SEALED_MOVE_PSEUDO_LANGUAGE";

/// Whether it is spoken in this process.
pub(crate) fn is_spoken() -> bool {
    static SPOKEN: LazyLock<bool> =
        LazyLock::new(|| std::env::var_os(ASKED_FOR).is_some_and(|asked| !asked.is_empty()));
    *SPOKEN
}

/// A text in it.
///
/// ```
/// assert_eq!(sealed_move_words::pseudo("Post it now"), "Ƥooşŧ iŧ ƞooẇ");
/// ```
pub fn pseudo(text: &str) -> String {
    fluent_pseudo::transform(text, false, true).into_owned()
}

/// A file in it. What is no text of its own stays: signs, numbers that stand for a rule, the names of Discord's
/// commands, and how long their descriptions are, for Discord bounds these.
pub(crate) fn resource(source: &str) -> String {
    let mut parsed = parser::parse(source.to_owned()).unwrap_or_else(|(parsed, _)| parsed);
    for entry in &mut parsed.body {
        let Entry::Message(message) = entry else {
            continue;
        };
        let id = message.id.name.as_str();
        let of_command = ["command-", "menu-"]
            .iter()
            .any(|start| id.starts_with(start));
        let kept = of_command || ["decimal-sign", "thousands-sign", "thousands-from"].contains(&id);
        let speak: fn(&str) -> String = match of_command {
            true => |text| fluent_pseudo::transform(text, false, false).into_owned(),
            false => pseudo,
        };
        if let Some(value) = message.value.as_mut().filter(|_| !kept) {
            pattern(value, speak);
        }
        for attribute in &mut message.attributes {
            let name = attribute.id.name.as_str();
            if !of_command
                || ["description", "-about"]
                    .iter()
                    .any(|end| name.ends_with(end))
            {
                pattern(&mut attribute.value, speak);
            }
        }
    }
    serialize(&parsed)
}

fn pattern(pattern: &mut Pattern<String>, speak: fn(&str) -> String) {
    for element in &mut pattern.elements {
        match element {
            PatternElement::TextElement { value } => *value = speak(value),
            PatternElement::Placeable { expression } => self::expression(expression, speak),
        }
    }
}

fn expression(expression: &mut Expression<String>, speak: fn(&str) -> String) {
    match expression {
        Expression::Select { variants, .. } => {
            for variant in variants {
                pattern(&mut variant.value, speak);
            }
        }
        Expression::Inline(InlineExpression::Placeable { expression }) => {
            self::expression(expression, speak);
        }
        Expression::Inline(_) => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_change_and_what_they_are_made_of_stays() {
        let source = "decimal-sign = ,\ncommand-coach = coach\n    .description = Ask\nboth = { $n ->\n    [one] one { $what }\n   *[other] No { other }\n}\n";
        assert_eq!(
            resource(source),
            "decimal-sign = ,\ncommand-coach = coach\n    .description = Aşķ\nboth =\n    { $n ->\n        [one] ooƞee { $what }\n       *[other] Ƞoo { other }\n    }\n"
        );
    }
}
