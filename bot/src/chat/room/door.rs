//! The door: the two secret links, and who a request is from.
//!
//! A link carries a secret of 256 bits. Following it moves the secret into a cookie that scripts cannot
//! read and other sites cannot send, and the address is left without it. What marks a member is a
//! second random token in a cookie; the desk knows its digest only, so that a stolen store lets nobody
//! in as someone else.

use std::{
    net::SocketAddr,
    sync::{PoisonError, RwLock},
};

use axum::{
    Router,
    extract::{FromRequestParts, Path, State},
    http::{HeaderMap, HeaderValue, header, request::Parts},
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use sha2::{Digest, Sha256};
use subtle::ConstantTimeEq;

use super::{KEY, RoomError, Shared, language::asked_for, pages, trouble::Trouble};
use crate::desk::{Desk, LanguageTag, Link, MemberIs, Person, Rank, Standing};

/// Longest time browsers keep a cookie: 400 days (RFC 6265bis).
const COOKIE_SECONDS: u32 = 400 * 24 * 60 * 60;

/// The door.
pub(super) struct Door {
    secrets: RwLock<Secrets>,
    /// Scheme and authority that links begin with.
    origin: String,
    /// The public address, when it is not the one listened on.
    public: Option<String>,
    /// Ends the names of the cookies: browsers keep one set of cookies for all ports of a host.
    mark: String,
    secure: bool,
}

#[derive(Clone)]
struct Secrets {
    member: String,
    coach: String,
}

impl Door {
    /// Hangs the door: secrets as remembered, or new ones.
    pub(super) async fn hang(
        desk: &Desk,
        address: SocketAddr,
        public_url: Option<&str>,
    ) -> Result<Self, RoomError> {
        let public = public_url.map(public_origin).transpose()?;
        let coach = secret(desk, Link::Coach).await?;
        let mark = match desk.link_secret(KEY, Link::Cookies).await? {
            Some(mark) => mark,
            None => {
                let mark: String = digest(&coach).chars().take(8).collect();
                desk.set_link_secret(KEY, Link::Cookies, &mark).await?;
                mark
            }
        };
        Ok(Self {
            secrets: RwLock::new(Secrets {
                member: secret(desk, Link::Member).await?,
                coach,
            }),
            secure: public.as_deref().is_some_and(|p| p.starts_with("https:")),
            origin: public
                .clone()
                .unwrap_or_else(|| format!("http://{}", reachable(address))),
            public,
            mark,
        })
    }

    fn secrets(&self) -> Secrets {
        self.secrets
            .read()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }

    /// The link for members.
    pub(super) fn member_link(&self) -> String {
        format!("{}/in/{}", self.origin, self.secrets().member)
    }

    /// The coach's link.
    pub(super) fn coach_link(&self) -> String {
        format!("{}/in/{}", self.origin, self.secrets().coach)
    }

    /// The public address, when there is one: scheme and authority.
    pub(super) fn public(&self) -> Option<&str> {
        self.public.as_deref()
    }

    /// Makes a new link for members; the old one, and every browser that came in by it, is shut out.
    pub(super) async fn change_member_link(&self, desk: &Desk) -> Result<(), RoomError> {
        let fresh = token()?;
        desk.set_link_secret(KEY, Link::Member, &fresh).await?;
        self.secrets
            .write()
            .unwrap_or_else(PoisonError::into_inner)
            .member = fresh;
        Ok(())
    }

    /// Makes a new coach's link; the old one, and every browser that came in by it, is shut out. Gives
    /// the cookie for the browser that made it, so that this one is not.
    pub(super) async fn change_coach_link(
        &self,
        desk: &Desk,
    ) -> Result<Option<HeaderValue>, RoomError> {
        let fresh = token()?;
        desk.set_link_secret(KEY, Link::Coach, &fresh).await?;
        let cookie = self.cookie("coach", &fresh);
        self.secrets
            .write()
            .unwrap_or_else(PoisonError::into_inner)
            .coach = fresh;
        Ok(cookie)
    }

    /// A cookie for `name` (its short name) with `value`; an empty value takes it away.
    pub(super) fn cookie(&self, name: &str, value: &str) -> Option<HeaderValue> {
        let age = if value.is_empty() { 0 } else { COOKIE_SECONDS };
        let secure = if self.secure { "; Secure" } else { "" };
        HeaderValue::from_str(&format!(
            "sealed-{name}-{}={value}; Path=/; Max-Age={age}; HttpOnly; SameSite=Strict{secure}",
            self.mark
        ))
        .ok()
    }

    fn read<'h>(&self, headers: &'h HeaderMap, name: &str) -> Option<&'h str> {
        let wanted = format!("sealed-{name}-{}", self.mark);
        headers
            .get_all(header::COOKIE)
            .iter()
            .filter_map(|line| line.to_str().ok())
            .flat_map(|line| line.split(';'))
            .filter_map(|pair| pair.trim().split_once('='))
            .find(|(key, _)| *key == wanted)
            .map(|(_, value)| value)
            .filter(|value| !value.is_empty())
    }

    /// Who a request with these headers is from.
    pub(super) fn visitor(&self, headers: &HeaderMap) -> Visitor {
        let secrets = self.secrets();
        let coach = self
            .read(headers, "coach")
            .is_some_and(|given| same(given, &secrets.coach));
        let member = self
            .read(headers, "room")
            .is_some_and(|given| same(given, &secrets.member));
        Visitor {
            coach,
            invited: coach || member,
            user: self.read(headers, "me").map(user_of),
        }
    }
}

/// Who a request is from, as far as its cookies show.
#[derive(Clone, Debug)]
pub(super) struct Visitor {
    /// Came by the coach's link.
    pub(super) coach: bool,
    /// Came by either link.
    pub(super) invited: bool,
    /// The id of this browser, when it has one.
    pub(super) user: Option<String>,
}

/// Someone who came by a link and is not shut out.
pub(super) struct Guest {
    /// What the cookies say.
    pub(super) visitor: Visitor,
    /// Who they are in the group, where they have a name there.
    pub(super) member: Option<MemberIs>,
    /// The language that their browser asks for, where it is spoken.
    pub(super) language: Option<LanguageTag>,
}

/// Someone with a name in the group.
pub(super) struct Member(pub(super) Person);

/// A coach: one who came by the coach's link and has given a name there.
pub(super) struct Coach(pub(super) Person);

impl FromRequestParts<Shared> for Guest {
    type Rejection = Trouble;

    async fn from_request_parts(parts: &mut Parts, room: &Shared) -> Result<Self, Trouble> {
        let visitor = room.door.visitor(&parts.headers);
        if !visitor.invited {
            return Err(Trouble::not_invited());
        }
        let standing = match &visitor.user {
            Some(user) => room.desk.standing(&room.place, user).await?,
            None => Standing::Stranger,
        };
        let language = asked_for(&parts.headers);
        match standing {
            Standing::Removed => Err(Trouble::removed()),
            Standing::Stranger => Ok(Self {
                visitor,
                member: None,
                language,
            }),
            Standing::Member(mut member) => {
                member.person.language.clone_from(&language);
                Ok(Self {
                    visitor,
                    member: Some(member),
                    language,
                })
            }
        }
    }
}

impl FromRequestParts<Shared> for Member {
    type Rejection = Trouble;

    async fn from_request_parts(parts: &mut Parts, room: &Shared) -> Result<Self, Trouble> {
        match Guest::from_request_parts(parts, room).await?.member {
            Some(member) => Ok(Self(member.person)),
            None => Err(Trouble::nameless()),
        }
    }
}

impl FromRequestParts<Shared> for Coach {
    type Rejection = Trouble;

    async fn from_request_parts(parts: &mut Parts, room: &Shared) -> Result<Self, Trouble> {
        if !room.door.visitor(&parts.headers).coach {
            return Err(Trouble::not_coach());
        }
        match Guest::from_request_parts(parts, room).await?.member {
            Some(member) if member.rank == Rank::Coach => Ok(Self(member.person)),
            _ => Err(Trouble::nameless_coach()),
        }
    }
}

pub(super) fn routes() -> Router<Shared> {
    Router::new().route("/in/{secret}", get(come_in))
}

/// Follows a link: the secret goes into a cookie and out of the address.
///
/// The way leads over a page of its own: a browser that came here from another site would not send the
/// strict cookie along with a redirect, but does with the step from our own page.
async fn come_in(
    State(room): State<Shared>,
    Path(secret): Path<String>,
    headers: HeaderMap,
) -> Response {
    let secrets = room.door.secrets();
    let (name, value, to) = if same(&secret, &secrets.coach) {
        ("coach", secrets.coach, "/entrance/coach")
    } else if same(&secret, &secrets.member) {
        ("room", secrets.member, "/entrance")
    } else {
        return pages::refused(&room, &headers).await;
    };
    let mut response = Redirect::to(to).into_response();
    if let Some(cookie) = room.door.cookie(name, &value) {
        response.headers_mut().append(header::SET_COOKIE, cookie);
    }
    response
}

/// A random token of 256 bits in hexadecimal digits.
pub(super) fn token() -> Result<String, RoomError> {
    let mut bytes = [0u8; 32];
    getrandom::fill(&mut bytes).map_err(|error| RoomError::Random(error.to_string()))?;
    Ok(hex(&bytes))
}

/// The secret of a link as it is kept, or a new one.
async fn secret(desk: &Desk, link: Link) -> Result<String, RoomError> {
    let kept = desk.link_secret(KEY, link).await?;
    // A secret that somebody shortened by hand is no secret.
    if let Some(secret) = kept.filter(|secret| secret.len() >= 32) {
        return Ok(secret);
    }
    let fresh = token()?;
    desk.set_link_secret(KEY, link, &fresh).await?;
    Ok(fresh)
}

/// The id under which the desk knows the bearer of a member's token.
pub(super) fn user_of(token: &str) -> String {
    digest(token).chars().take(40).collect()
}

fn digest(text: &str) -> String {
    hex(&Sha256::digest(text.as_bytes()))
}

fn hex(bytes: &[u8]) -> String {
    use std::fmt::Write;
    bytes.iter().fold(String::new(), |mut out, byte| {
        // Writing to a String cannot fail.
        let _ = write!(out, "{byte:02x}");
        out
    })
}

/// Compares in a time that does not tell how much of it agrees.
fn same(given: &str, secret: &str) -> bool {
    given.as_bytes().ct_eq(secret.as_bytes()).into()
}

/// Scheme and authority of the public address.
fn public_origin(url: &str) -> Result<String, RoomError> {
    let wrong = || RoomError::PublicUrl(url.chars().take(200).collect());
    let trimmed = url.trim().trim_end_matches('/');
    let uri: axum::http::Uri = trimmed.parse().map_err(|_| wrong())?;
    match (uri.scheme_str(), uri.authority()) {
        (Some(scheme @ ("http" | "https")), Some(authority))
            if matches!(uri.path(), "" | "/") && uri.query().is_none() =>
        {
            Ok(format!("{scheme}://{authority}").to_lowercase())
        }
        _ => Err(wrong()),
    }
}

/// An address that a browser on this machine can open.
fn reachable(address: SocketAddr) -> SocketAddr {
    if !address.ip().is_unspecified() {
        return address;
    }
    let loopback = match address {
        SocketAddr::V4(_) => std::net::Ipv4Addr::LOCALHOST.into(),
        SocketAddr::V6(_) => std::net::Ipv6Addr::LOCALHOST.into(),
    };
    SocketAddr::new(loopback, address.port())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tokens_are_long_and_never_alike() {
        let (one, two) = (token().expect("random"), token().expect("random"));
        assert_eq!(one.len(), 64);
        assert_ne!(one, two);
    }

    #[test]
    fn the_desk_never_sees_a_token() {
        let secret = token().expect("random");
        let user = user_of(&secret);
        assert_eq!(user.len(), 40);
        assert!(!user.contains(&secret) && !secret.contains(&user));
        assert_eq!(user, user_of(&secret));
    }

    #[test]
    fn compares_whole_secrets_only() {
        assert!(same("abcd", "abcd"));
        for forged in ["", "abc", "abce", "abcde", "ABCD"] {
            assert!(!same(forged, "abcd"), "{forged}");
        }
    }

    #[test]
    fn public_addresses_are_web_addresses_without_a_path() {
        assert_eq!(
            public_origin("https://Chess.example.org/").ok().as_deref(),
            Some("https://chess.example.org")
        );
        for wrong in [
            "",
            "chess.example.org",
            "ftp://example.org",
            "https://example.org/club",
            "https://example.org/?a",
        ] {
            assert!(public_origin(wrong).is_err(), "{wrong}");
        }
    }
}
