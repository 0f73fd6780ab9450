//! The pages and their parts, built into the binary. Hand-written but for `fluent/`; nothing is fetched from
//! elsewhere. Whoever asks for a page gets it in their language, by what the messages of `room.ftl` and
//! `room-coach.ftl` say; the scripts fetch the same messages under `/words/`.

use axum::{
    Router,
    extract::{Path, State},
    http::{HeaderMap, StatusCode, header},
    response::{Html, IntoResponse, Redirect, Response},
    routing::get,
};

use super::{Shared, trouble};
use crate::diagram::{Style, single};
use crate::words::{Words, source, tags};

const MEMBER: &str = include_str!("assets/member.html");
const COACH: &str = include_str!("assets/coach.html");
const ENTRANCE: &str = include_str!("assets/entrance.html");
const REFUSED: &str = include_str!("assets/refused.html");

const CSS: &str = "text/css; charset=utf-8";
const JS: &str = "text/javascript; charset=utf-8";
const SVG: &str = "image/svg+xml";
const FTL: &str = "text/plain; charset=utf-8";

/// Every part of the pages: name, media type, content.
const PARTS: &[(&str, &str, &str)] = &[
    ("ink.css", CSS, include_str!("assets/ink.css")),
    ("parts.css", CSS, include_str!("assets/parts.css")),
    ("coach.css", CSS, include_str!("assets/coach.css")),
    ("seal.svg", SVG, include_str!("assets/seal.svg")),
    ("entrance.js", JS, include_str!("assets/entrance.js")),
    ("build.js", JS, include_str!("assets/build.js")),
    ("ask.js", JS, include_str!("assets/ask.js")),
    ("when.js", JS, include_str!("assets/when.js")),
    ("shut-out.js", JS, include_str!("assets/shut-out.js")),
    ("naming.js", JS, include_str!("assets/naming.js")),
    ("live.js", JS, include_str!("assets/live.js")),
    ("views.js", JS, include_str!("assets/views.js")),
    ("cards.js", JS, include_str!("assets/cards.js")),
    ("lessons.js", JS, include_str!("assets/lessons.js")),
    ("on-board.js", JS, include_str!("assets/on-board.js")),
    ("post.js", JS, include_str!("assets/post.js")),
    ("talk.js", JS, include_str!("assets/talk.js")),
    ("tables.js", JS, include_str!("assets/tables.js")),
    ("member.js", JS, include_str!("assets/member.js")),
    ("composer.js", JS, include_str!("assets/composer.js")),
    ("mine.js", JS, include_str!("assets/mine.js")),
    ("coach.js", JS, include_str!("assets/coach.js")),
    ("coach-cards.js", JS, include_str!("assets/coach-cards.js")),
    ("coach-chats.js", JS, include_str!("assets/coach-chats.js")),
    ("coach-week.js", JS, include_str!("assets/coach-week.js")),
    ("coach-check.js", JS, include_str!("assets/coach-check.js")),
    (
        "coach-lessons.js",
        JS,
        include_str!("assets/coach-lessons.js"),
    ),
    (
        "coach-members.js",
        JS,
        include_str!("assets/coach-members.js"),
    ),
    ("coach-posts.js", JS, include_str!("assets/coach-posts.js")),
    (
        "coach-summary.js",
        JS,
        include_str!("assets/coach-summary.js"),
    ),
    (
        "coach-settings.js",
        JS,
        include_str!("assets/coach-settings.js"),
    ),
    ("carry.js", JS, include_str!("assets/carry.js")),
    ("words.js", JS, include_str!("assets/words.js")),
    ("language.js", JS, include_str!("assets/language.js")),
    ("typed.js", JS, include_str!("assets/typed.js")),
    ("board.js", JS, include_str!("assets/board.js")),
    ("setup.js", JS, include_str!("assets/setup.js")),
    ("tree.js", JS, include_str!("assets/tree.js")),
    ("moves.js", JS, include_str!("assets/moves.js")),
    ("step.js", JS, include_str!("assets/step.js")),
    (
        "coach-drafts.js",
        JS,
        include_str!("assets/coach-drafts.js"),
    ),
    ("coach-edit.js", JS, include_str!("assets/coach-edit.js")),
    ("editor.css", CSS, include_str!("assets/editor.css")),
];

/// Project Fluent's library for browsers (`@fluent/bundle`), as its package has it.
const FLUENT: &[(&str, &str, &str)] = &[
    ("ast.js", JS, include_str!("assets/fluent/ast.js")),
    ("builtins.js", JS, include_str!("assets/fluent/builtins.js")),
    ("bundle.js", JS, include_str!("assets/fluent/bundle.js")),
    ("index.js", JS, include_str!("assets/fluent/index.js")),
    ("memoizer.js", JS, include_str!("assets/fluent/memoizer.js")),
    ("resolver.js", JS, include_str!("assets/fluent/resolver.js")),
    ("resource.js", JS, include_str!("assets/fluent/resource.js")),
    ("scope.js", JS, include_str!("assets/fluent/scope.js")),
    ("types.js", JS, include_str!("assets/fluent/types.js")),
    ("LICENSE", FTL, include_str!("assets/fluent/LICENSE")),
];

/// The files of a language that the pages' scripts speak from.
const SPOKEN: &[&str] = &[
    "base.ftl",
    "patterns.ftl",
    "room.ftl",
    "room-coach.ftl",
    "room-editor.ftl",
];

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route("/", get(member))
        .route("/coach", get(coach))
        .route("/entrance", get(entrance))
        .route("/entrance/coach", get(coachs_entrance))
        .route(
            "/favicon.ico",
            get(|| async { Redirect::to("/parts/seal.svg") }),
        )
        .route("/parts/{name}", get(part))
        .route("/parts/fluent/{name}", get(fluent))
        .route("/parts/pieces/{name}", get(piece))
        .route("/words/{name}", get(spoken))
}

/// A page in somebody's language: `{{id}}` becomes what the message of this id says, `{{lang}}` the
/// language's tag.
fn filled(page: &str, words: &Words) -> Html<String> {
    let mut out = String::with_capacity(page.len() * 2);
    let mut parts = page.split("{{");
    out.push_str(parts.next().unwrap_or_default());
    for part in parts {
        let (id, rest) = part.split_once("}}").unwrap_or((part, ""));
        match id {
            "lang" => out.push_str(words.tag()),
            id => out.push_str(&escaped(&words.text(id))),
        }
        out.push_str(rest);
    }
    Html(out)
}

/// Text as it stands in an element or between the quotes of an attribute.
fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}

/// The answer for those who have no (right) link.
pub(super) async fn refused(room: &Shared, headers: &HeaderMap) -> Response {
    let page = filled(REFUSED, room.words(headers).await);
    (StatusCode::FORBIDDEN, page).into_response()
}

async fn entrance(State(room): State<Shared>, headers: HeaderMap) -> Html<String> {
    filled(ENTRANCE, room.words(&headers).await)
}

async fn coachs_entrance(State(room): State<Shared>, headers: HeaderMap) -> Html<String> {
    let page = ENTRANCE.replace("href=\"/\"", "href=\"/coach\"");
    filled(&page, room.words(&headers).await)
}

async fn member(State(room): State<Shared>, headers: HeaderMap) -> Response {
    if !room.door.visitor(&headers).invited {
        return refused(&room, &headers).await;
    }
    filled(MEMBER, room.words(&headers).await).into_response()
}

async fn coach(State(room): State<Shared>, headers: HeaderMap) -> Response {
    if !room.door.visitor(&headers).coach {
        return refused(&room, &headers).await;
    }
    filled(COACH, room.words(&headers).await).into_response()
}

async fn part(Path(name): Path<String>) -> Response {
    one_of(PARTS, &name).await
}

async fn fluent(Path(name): Path<String>) -> Response {
    one_of(FLUENT, &name).await
}

/// A piece by its letters, such as `wn.svg`, for the editor's board.
async fn piece(Path(name): Path<String>) -> Response {
    let mut all = single::all();
    match all.find(|(known, _)| name.strip_suffix(".svg") == Some(known)) {
        Some((_, piece)) => served(SVG, single::svg(piece, Style::Light)),
        None => trouble::nothing_here().await.into_response(),
    }
}

async fn one_of(parts: &[(&str, &'static str, &'static str)], name: &str) -> Response {
    match parts.iter().find(|(known, ..)| *known == name) {
        Some((_, media_type, content)) => served(media_type, *content),
        None => trouble::nothing_here().await.into_response(),
    }
}

/// The words of a language, for the pages' scripts.
async fn spoken(Path(name): Path<String>) -> Response {
    let known = name
        .strip_suffix(".ftl")
        .filter(|tag| tags().any(|known| known == *tag));
    match known {
        Some(tag) => served(FTL, source(tag, SPOKEN)),
        None => trouble::nothing_here().await.into_response(),
    }
}

fn served(media_type: &'static str, content: impl IntoResponse) -> Response {
    let headers = [
        (header::CONTENT_TYPE, media_type),
        (header::CACHE_CONTROL, "no-cache"),
    ];
    (headers, content).into_response()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::words;

    #[test]
    fn a_page_is_filled_in_a_language_and_escaped() {
        let page = "<html lang=\"{{lang}}\"><p title=\"{{room-drop}}\">{{room-coach}}</p>";
        assert_eq!(
            filled(page, words("de")).0,
            "<html lang=\"de\"><p title=\"Verwerfen\">Trainer</p>"
        );
        assert_eq!(
            escaped("a < b & \"c\" > d"),
            "a &lt; b &amp; &quot;c&quot; &gt; d"
        );
    }

    #[test]
    fn nothing_is_left_to_fill_on_any_page() {
        for tag in tags() {
            for page in [MEMBER, COACH, ENTRANCE, REFUSED] {
                let Html(page) = filled(page, words(tag));
                assert!(
                    !page.contains("{{") && !page.contains("}}"),
                    "{tag}: {page}"
                );
                assert!(
                    page.contains(&format!("<html lang=\"{tag}\">")),
                    "{tag}: {page}"
                );
            }
        }
    }
}
