//! In which language a reader is spoken to, on the pages and in what they are answered.

use axum::http::{HeaderMap, header};

use super::Room;
use crate::words::{Words, english, tags, words};

impl Room {
    /// The words for whoever sent a request with these headers: in the language their browser asks for,
    /// where it is spoken; else in the group's.
    pub(super) async fn words(&self, headers: &HeaderMap) -> &'static Words {
        if let Some(tag) = asked_for(headers) {
            return words(tag);
        }
        match self.desk.settings(&self.place).await {
            Ok(settings) => words(settings.language.tag()),
            Err(error) => {
                tracing::error!("the group's language could not be looked up: {error}");
                english()
            }
        }
    }
}

/// The language that is spoken here and that a browser likes best (RFC 9110, section 12.5.4).
pub(super) fn asked_for(headers: &HeaderMap) -> Option<&'static str> {
    let asked = headers.get(header::ACCEPT_LANGUAGE)?.to_str().ok()?;
    let mut best: Option<(f32, &'static str)> = None;
    for range in asked.split(',').take(50) {
        let (range, weight) = range.split_once(";q=").unwrap_or((range, "1"));
        let weight: f32 = weight.trim().parse().unwrap_or(0.0);
        let primary = range.trim().split('-').next().unwrap_or_default();
        let Some(tag) = tags().find(|tag| tag.eq_ignore_ascii_case(primary)) else {
            continue;
        };
        if weight > best.map_or(0.0, |(before, _)| before) {
            best = Some((weight, tag));
        }
    }
    best.map(|(_, tag)| tag)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_language_is_the_one_a_browser_likes_best_of_those_spoken() {
        let asked = |value: &str| {
            let mut headers = HeaderMap::new();
            headers.insert(header::ACCEPT_LANGUAGE, value.parse().expect("header"));
            asked_for(&headers)
        };
        assert_eq!(asked("de-AT,de;q=0.9,en;q=0.8"), Some("de"));
        assert_eq!(asked("fi-FI, fi;q=0.9, es-MX;q=0.5, en;q=0.4"), Some("es"));
        assert_eq!(asked("en;q=0.2, ES;q=0.7"), Some("es"));
        for none in ["fi", "de;q=0", "", "*", "de;q=much"] {
            assert_eq!(asked(none), None, "{none}");
        }
        assert_eq!(asked_for(&HeaderMap::new()), None);
    }
}
