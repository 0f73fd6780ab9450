//! Codes by which a member's second device becomes theirs too: shown on the first, typed on the second.
//!
//! A code is short-lived, holds once, and is never in an address, a log or the store; here its digest is
//! kept in memory only. Wrong ones are counted for the whole room: guessing has no better chance from
//! many browsers than from one.

use std::{
    sync::{Mutex, PoisonError},
    time::{Duration, Instant},
};

use axum::{
    Json, Router,
    extract::{State, rejection::JsonRejection},
    http::header,
    response::{IntoResponse, Response},
    routing::post,
};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use subtle::ConstantTimeEq;

use super::{
    RoomError, Shared, door,
    door::{Guest, Member},
    text::Text,
    trouble::Trouble,
};

/// How long a code holds.
const HOLDS: Duration = Duration::from_secs(10 * 60);
/// Characters of a code.
const LENGTH: usize = 8;
/// None of them looks like another, in any usual print: 24 letters and digits, so that there are more
/// than 10^11 codes.
const ALPHABET: &[u8; 24] = b"ACDEFHJKMNPRTUVWXY346789";
/// Wrong codes in [`HOLDS`] before every further one is refused unread.
const WRONG: usize = 20;

pub(super) fn routes() -> Router<Shared> {
    Router::new()
        .route("/api/device-code", post(new_code))
        .route("/api/device", post(use_code))
}

/// The codes that hold.
#[derive(Default)]
pub(super) struct Codes(Mutex<Memory>);

#[derive(Default)]
struct Memory {
    codes: Vec<Code>,
    wrong: Vec<Instant>,
}

struct Code {
    digest: [u8; 32],
    user: String,
    until: Instant,
}

/// Why a code is not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Refusal {
    /// There is no such code, or no longer.
    Unknown,
    /// Too many wrong ones came lately.
    TooMany,
}

impl Codes {
    /// Makes a code for the member `user`; an earlier one of theirs holds no longer.
    fn make(&self, user: &str, now: Instant) -> Result<String, RoomError> {
        let mut code = String::with_capacity(LENGTH);
        while code.len() < LENGTH {
            let mut bytes = [0u8; 16];
            getrandom::fill(&mut bytes).map_err(|error| RoomError::Random(error.to_string()))?;
            // Only whole multiples of the alphabet's length: each character is as likely as any other.
            let fair = bytes.iter().filter(|byte| **byte < 240);
            let characters =
                fair.map(|byte| char::from(ALPHABET[usize::from(*byte) % ALPHABET.len()]));
            code.extend(characters.take(LENGTH - code.len()));
        }
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        kept.codes
            .retain(|other| other.until > now && other.user != user);
        kept.codes.push(Code {
            digest: digest(&code),
            user: user.to_owned(),
            until: now + HOLDS,
        });
        Ok(code)
    }

    /// Takes a code; gives whose it was. It holds no longer.
    fn take(&self, typed: &str, now: Instant) -> Result<String, Refusal> {
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        kept.codes.retain(|code| code.until > now);
        kept.wrong.retain(|at| now.duration_since(*at) < HOLDS);
        if kept.wrong.len() >= WRONG {
            return Err(Refusal::TooMany);
        }
        let digest = digest(&plain(typed));
        // Every code is compared, and each in full, so that time tells nothing.
        let found = kept
            .codes
            .iter()
            .enumerate()
            .fold(None, |found, (at, code)| {
                let same: bool = code.digest.ct_eq(&digest).into();
                if same { Some(at) } else { found }
            });
        match found {
            Some(at) => Ok(kept.codes.swap_remove(at).user),
            None => {
                kept.wrong.push(now);
                Err(Refusal::Unknown)
            }
        }
    }
}

/// As it was shown, however it is typed: small letters, spaces and hyphens are no matter.
fn plain(typed: &str) -> String {
    typed
        .chars()
        .take(100)
        .filter(char::is_ascii_alphanumeric)
        .map(|c| c.to_ascii_uppercase())
        .collect()
}

fn digest(code: &str) -> [u8; 32] {
    Sha256::digest(code.as_bytes()).into()
}

#[derive(Serialize)]
struct Shown {
    /// In two halves, for reading.
    code: String,
    minutes: u64,
}

async fn new_code(
    State(room): State<Shared>,
    Member(person): Member,
) -> Result<Json<Shown>, Trouble> {
    let code = room.codes.make(&person.user, Instant::now())?;
    let (one, other) = code.split_at(LENGTH / 2);
    Ok(Json(Shown {
        code: format!("{one} {other}"),
        minutes: HOLDS.as_secs() / 60,
    }))
}

#[derive(Deserialize)]
struct Typed {
    code: String,
}

#[derive(Serialize)]
struct Known {
    name: String,
}

async fn use_code(
    State(room): State<Shared>,
    guest: Guest,
    body: Result<Json<Typed>, JsonRejection>,
) -> Result<Response, Trouble> {
    let Json(typed) = body?;
    if let Some(member) = guest.member {
        return Err(Trouble::bad(Text::BrowserIsTaken {
            name: member.person.name.as_str().into(),
        }));
    }
    let user = room
        .codes
        .take(&typed.code, Instant::now())
        .map_err(|refusal| match refusal {
            Refusal::Unknown => Trouble::bad(Text::CodeNotRight),
            Refusal::TooMany => Trouble::too_many_codes(),
        })?;
    let token = door::token()?;
    let person = room
        .desk
        .member()
        .add_device(&room.place, &user, &door::user_of(&token))
        .await?;
    let mut response = Json(Known { name: person.name }).into_response();
    if let Some(cookie) = room.door.cookie("me", &token) {
        response.headers_mut().append(header::SET_COOKIE, cookie);
    }
    Ok(response)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_code_holds_once_and_for_ten_minutes() {
        let codes = Codes::default();
        let start = Instant::now();
        let code = codes.make("ana", start).expect("random");
        assert_eq!(code.len(), LENGTH);
        assert!(code.bytes().all(|byte| ALPHABET.contains(&byte)), "{code}");
        let typed = format!(" {}-{} ", code[..4].to_lowercase(), &code[4..]);
        assert_eq!(codes.take(&typed, start), Ok("ana".into()));
        assert_eq!(codes.take(&code, start), Err(Refusal::Unknown), "used");
        let late = codes.make("ana", start).expect("random");
        assert_eq!(codes.take(&late, start + HOLDS), Err(Refusal::Unknown));
        let first = codes.make("ana", start).expect("random");
        let second = codes.make("ana", start).expect("random");
        assert_eq!(codes.take(&first, start), Err(Refusal::Unknown), "replaced");
        assert_eq!(codes.take(&second, start), Ok("ana".into()));
    }

    #[test]
    fn guessing_is_stopped_and_begins_anew_later() {
        let codes = Codes::default();
        let start = Instant::now();
        let code = codes.make("ana", start).expect("random");
        for _ in 0..WRONG {
            assert_eq!(codes.take("AAAAAAAA", start), Err(Refusal::Unknown));
        }
        assert_eq!(codes.take(&code, start), Err(Refusal::TooMany));
        let later = start + HOLDS;
        let code = codes.make("ana", later).expect("random");
        assert_eq!(codes.take(&code, later), Ok("ana".into()));
    }

    #[test]
    fn no_two_characters_look_alike() {
        for banned in b"0O1ILB5S2ZGQ" {
            assert!(!ALPHABET.contains(banned), "{}", char::from(*banned));
        }
        let mut sorted = ALPHABET.to_vec();
        sorted.sort_unstable();
        sorted.dedup();
        assert_eq!(sorted.len(), ALPHABET.len());
    }
}
