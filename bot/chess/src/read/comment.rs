//! A comment as a file gives it: where its parts go out, by the marks in it.

/// When words go out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Goes {
    /// With the post, unless they give a move away.
    WithPost,
    /// With the post, whatever they say: the coach's explicit word.
    WithPostAnyway,
    /// At the reveal.
    AtReveal,
}

/// Words on a position as a whole.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Comment {
    /// The words.
    pub text: String,
    /// When they go out.
    pub goes: Goes,
}

/// Marks in a comment, each for what follows it.
const MARKS: [(&str, Goes); 2] = [
    ("[post]", Goes::WithPostAnyway),
    ("[reveal]", Goes::AtReveal),
];

impl Comment {
    /// The comment with its mark, as [`Comment::read`] reads it of words that go out with the post.
    pub fn written(&self) -> String {
        let mark = MARKS.iter().find(|(_, goes)| *goes == self.goes);
        mark.map_or_else(
            || self.text.clone(),
            |(mark, _)| format!("{mark} {}", self.text),
        )
    }

    /// The parts of a comment as the file gives it: what stands before the first mark goes out as
    /// `goes` says, and what follows `[post]` or `[reveal]` as that says.
    ///
    /// ```
    /// use sealed_move_chess::comments::{Comment, Goes};
    ///
    /// let parts = Comment::read("Look at the back rank. [reveal] The rook goes first.", Goes::WithPost);
    /// assert_eq!(parts[0].text, "Look at the back rank.");
    /// assert_eq!(parts[1].goes, Goes::AtReveal);
    /// ```
    pub fn read(text: &str, goes: Goes) -> Vec<Self> {
        let text = without_commands(text);
        // Only ASCII is folded, so that places in both are the same.
        let folded = text.to_ascii_lowercase();
        let mut parts = Vec::new();
        let (mut from, mut goes) = (0, goes);
        loop {
            let next = MARKS
                .iter()
                .filter_map(|(mark, goes)| Some((from + folded[from..].find(mark)?, mark, goes)))
                .min_by_key(|(at, ..)| *at);
            let end = next.map_or(text.len(), |(at, ..)| at);
            let words = text[from..end].trim();
            if !words.is_empty() {
                parts.push(Self {
                    text: words.to_owned(),
                    goes,
                });
            }
            let Some((at, mark, next)) = next else {
                return parts;
            };
            from = at + mark.len();
            from += usize::from(text[from..].starts_with(':'));
            goes = *next;
        }
    }
}

/// A comment without what programs write into it for one another, `[%…]`: it is nobody's words.
pub(crate) fn without_commands(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find("[%") {
        let Some(end) = rest[at..].find(']') else {
            break;
        };
        out.push_str(&rest[..at]);
        rest = &rest[at + end + 1..];
    }
    out.push_str(rest);
    out.trim().to_owned()
}
