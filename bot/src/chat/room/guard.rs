//! The guard: requests that come from where they should not, and the headers of every answer.
//!
//! A name that an attacker points at this machine (DNS rebinding) is refused by the `Host` header; a
//! form or script of another site by `Origin`, on top of the cookies being strict; a member who writes
//! faster than people do by [`super::pace`].

use std::{net::IpAddr, panic::AssertUnwindSafe, time::Instant};

use axum::{
    extract::{Request, State},
    http::{HeaderMap, HeaderValue, Method, StatusCode, header, uri::Authority},
    middleware::Next,
    response::{IntoResponse, Response},
};
use futures::FutureExt;

use super::{Shared, text::Text, trouble::Trouble};

/// Only what we serve ourselves; pictures of verdicts come inside the answer.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; \
     connect-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'none'; \
     frame-ancestors 'none'";

pub(super) async fn watch(State(room): State<Shared>, request: Request, next: Next) -> Response {
    let public = room.door.public();
    let reader = request.headers().clone();
    let passed = inspect(request.method(), request.headers(), public)
        .map_err(|why| Trouble::new(StatusCode::FORBIDDEN, why))
        .and_then(|()| pace(&room, &request));
    let mut response = match passed {
        // A fault in one answer is that answer's alone, and whoever asked is told.
        Ok(()) => AssertUnwindSafe(next.run(request))
            .catch_unwind()
            .await
            .unwrap_or_else(|_| Trouble::inside().into_response()),
        Err(trouble) => trouble.into_response(),
    };
    if let Some(trouble) = Trouble::of_answer(&mut response) {
        response = trouble.told(room.words(&reader).await);
    }
    let headers = response.headers_mut();
    for (name, value) in [
        (header::CONTENT_SECURITY_POLICY, POLICY),
        (header::REFERRER_POLICY, "no-referrer"),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::X_FRAME_OPTIONS, "DENY"),
    ] {
        headers.insert(name, HeaderValue::from_static(value));
    }
    headers
        .entry(header::CACHE_CONTROL)
        .or_insert(HeaderValue::from_static("no-store"));
    response
}

/// Holds up a member who writes too fast; the coach is never held up.
fn pace(room: &Shared, request: &Request) -> Result<(), Trouble> {
    if !writes(request.method()) {
        return Ok(());
    }
    let visitor = room.door.visitor(request.headers());
    let Some(user) = visitor.user.filter(|_| !visitor.coach) else {
        return Ok(());
    };
    room.pace
        .count(&user, Instant::now())
        .map_err(|_| Trouble::too_fast())
}

fn writes(method: &Method) -> bool {
    !matches!(*method, Method::GET | Method::HEAD)
}

fn inspect(method: &Method, headers: &HeaderMap, public: Option<&str>) -> Result<(), Text> {
    let host = headers
        .get(header::HOST)
        .and_then(|host| host.to_str().ok())
        .unwrap_or_default();
    if !is_ours(host, public) {
        return Err(Text::StrangeHost);
    }
    if !writes(method) {
        return Ok(());
    }
    let origin = headers
        .get(header::ORIGIN)
        .and_then(|origin| origin.to_str().ok())
        .map(str::to_lowercase)
        .unwrap_or_default();
    let authority = origin.split_once("://").map_or("", |(_, rest)| rest);
    let ours = !authority.is_empty()
        && (authority == host.to_lowercase() || public == Some(origin.as_str()));
    if ours {
        Ok(())
    } else {
        Err(Text::StrangeOrigin)
    }
}

/// Addresses in numbers and `localhost` cannot be pointed elsewhere; any other name must be the public one.
fn is_ours(host: &str, public: Option<&str>) -> bool {
    let Ok(authority) = host.parse::<Authority>() else {
        return false;
    };
    let name = authority.host();
    let bare = name.trim_start_matches('[').trim_end_matches(']');
    name.eq_ignore_ascii_case("localhost")
        || bare.parse::<IpAddr>().is_ok()
        || public
            .and_then(|public| public.split_once("://"))
            .is_some_and(|(_, known)| known.eq_ignore_ascii_case(host))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn request(host: &str, origin: Option<&str>) -> HeaderMap {
        let mut headers = HeaderMap::new();
        headers.insert(header::HOST, host.parse().expect("header"));
        if let Some(origin) = origin {
            headers.insert(header::ORIGIN, origin.parse().expect("header"));
        }
        headers
    }

    #[test]
    fn a_rebound_name_is_refused() {
        for host in [
            "127.0.0.1:7316",
            "localhost:7316",
            "[::1]:7316",
            "192.168.1.9",
        ] {
            assert!(
                inspect(&Method::GET, &request(host, None), None).is_ok(),
                "{host}"
            );
        }
        for host in [
            "evil.example",
            "127.0.0.1.evil.example:7316",
            "",
            "local host",
        ] {
            assert!(
                inspect(&Method::GET, &request(host, None), None).is_err(),
                "{host}"
            );
        }
    }

    #[test]
    fn the_public_name_is_known() {
        let public = Some("https://chess.example.org");
        let asked = request("chess.example.org", Some("https://chess.example.org"));
        assert!(inspect(&Method::POST, &asked, public).is_ok());
        assert!(inspect(&Method::POST, &asked, None).is_err());
    }

    #[test]
    fn writing_needs_our_own_origin() {
        let host = "127.0.0.1:7316";
        let post = |origin| inspect(&Method::POST, &request(host, origin), None);
        assert!(post(Some("http://127.0.0.1:7316")).is_ok());
        for origin in [
            None,
            Some("null"),
            Some(""),
            Some("http://127.0.0.1:7317"),
            Some("http://localhost:7316"),
            Some("https://evil.example"),
        ] {
            assert!(post(origin).is_err(), "{origin:?}");
        }
    }
}
