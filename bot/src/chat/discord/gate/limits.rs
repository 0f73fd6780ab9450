//! Rate limits as Discord publishes them: by route and major parameter, learnt from the answers'
//! headers; fifty requests a second over all; and ten thousand invalid answers in ten minutes, after
//! which Discord shuts the door, kept well clear of.
//!
//! <https://docs.discord.com/developers/topics/rate-limits>

use std::{
    collections::{HashMap, VecDeque},
    fmt,
    sync::{Arc, Mutex, MutexGuard},
    time::{Duration, Instant},
};

use axum::http::HeaderMap;
use tokio::sync::Notify;

/// Discord's code for an interaction that has its answer.
pub const ALREADY_ANSWERED: i64 = 40060;
/// Requests a second over all; a little under the published fifty.
const A_SECOND: usize = 45;
/// Invalid answers in [`INVALID_WINDOW`] from which on requests are slowed to a crawl.
const MANY_INVALID: usize = 5_000;
const INVALID_WINDOW: Duration = Duration::from_secs(600);
/// Buckets that nobody has used for this long are forgotten.
const STALE: Duration = Duration::from_secs(900);
/// The longest wait that a header or a 429 can ask for.
const LONGEST_WAIT: Duration = Duration::from_secs(900);

/// A route with its major parameter: requests with the same one share a limit.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Route {
    method: String,
    shape: String,
    major: String,
}

/// For the log: without ids or tokens.
impl fmt::Display for Route {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.method, self.shape)
    }
}

impl Route {
    /// The route of a path.
    pub fn of(method: &str, path: &str) -> Self {
        let path = path.split_once("/api/v").map_or(path, |(_, rest)| {
            rest.split_once('/').map_or("", |(_, rest)| rest)
        });
        let mut parts: Vec<&str> = path.split('/').filter(|part| !part.is_empty()).collect();
        let major = match parts.as_slice() {
            ["channels" | "guilds", id, ..] => (*id).to_owned(),
            // The token belongs to the limit, and must not be seen in a log.
            ["webhooks", id, token, ..] => format!("{id}/{token}"),
            ["interactions", id, ..] => (*id).to_owned(),
            _ => String::new(),
        };
        if let ["webhooks" | "interactions", _, token, ..] = parts.as_mut_slice() {
            *token = "{token}";
        }
        let shape: Vec<&str> = parts
            .iter()
            .map(|part| match part.bytes().all(|b| b.is_ascii_digit()) {
                true => "{id}",
                false => part,
            })
            .collect();
        Self {
            method: method.to_owned(),
            shape: shape.join("/"),
            major,
        }
    }

    /// Whether this is the first answer to an interaction, which is due in three seconds.
    pub fn answers_interaction(&self) -> bool {
        self.shape.starts_with("interactions/")
    }

    /// Whether doing it twice does no more than doing it once.
    pub fn repeatable(&self, method: &str, body: &[u8]) -> bool {
        match method {
            "GET" | "PUT" | "PATCH" | "DELETE" => true,
            // A second answer is refused, a second direct conversation is the first one, and of a
            // message that bears a nonce the first is given back.
            _ if self.answers_interaction() => true,
            _ if self.shape == "users/@me/channels" => true,
            _ if self.shape.ends_with("/threads") => true,
            _ => holds(body, b"\"enforce_nonce\":true"),
        }
    }
}

fn holds(body: &[u8], needle: &[u8]) -> bool {
    body.windows(needle.len()).any(|window| window == needle)
}

/// The limits of one bot.
#[derive(Debug, Default)]
pub struct Limits {
    inner: Mutex<Inner>,
    changed: Arc<Notify>,
}

#[derive(Debug, Default)]
struct Inner {
    buckets: HashMap<Route, Bucket>,
    recent: VecDeque<Instant>,
    /// Nothing goes out before this moment.
    held: Option<Instant>,
    invalid: VecDeque<Instant>,
}

#[derive(Debug)]
struct Bucket {
    /// Requests a window, once an answer has said so.
    limit: Option<u32>,
    remaining: u32,
    resets: Instant,
    under_way: u32,
    used: Instant,
}

/// A request's turn; to be left with the answer's headers.
pub struct Turn<'a> {
    limits: &'a Limits,
    route: Option<Route>,
}

impl Limits {
    fn inner(&self) -> MutexGuard<'_, Inner> {
        match self.inner.lock() {
            Ok(inner) => inner,
            Err(poisoned) => poisoned.into_inner(),
        }
    }

    /// Waits until a request may go out.
    pub async fn enter(&self, route: &Route) -> Turn<'_> {
        if route.answers_interaction() {
            // Bound by no limit but the one over all, and that too is lifted for them.
            return Turn {
                limits: self,
                route: None,
            };
        }
        loop {
            // Listening starts before the check, so a change in between wakes us.
            let changed = self.changed.notified();
            let wait = self.inner().try_enter(route, Instant::now());
            match wait {
                Wait::Go => {
                    return Turn {
                        limits: self,
                        route: Some(route.clone()),
                    };
                }
                Wait::Until(moment) => {
                    tokio::select! {
                        () = tokio::time::sleep_until(moment.into()) => {}
                        () = changed => {}
                    }
                }
                Wait::Change => changed.await,
            }
        }
    }

    /// Waits out a 429: on its route, or everywhere when the limit over all was hit.
    pub fn hold(&self, route: &Route, headers: &HeaderMap, wait: Duration) {
        let until = Instant::now() + wait;
        let mut inner = self.inner();
        if headers.contains_key("x-ratelimit-global") {
            inner.held = Some(inner.held.map_or(until, |held| held.max(until)));
        } else if let Some(bucket) = inner.buckets.get_mut(route) {
            bucket.remaining = 0;
            bucket.resets = bucket.resets.max(until);
        }
    }

    /// Counts answers that Discord counts as invalid.
    pub fn count(&self, status: u16) {
        if matches!(status, 401 | 403 | 429) {
            let mut inner = self.inner();
            inner.invalid.push_back(Instant::now());
            if inner.invalid.len() == MANY_INVALID {
                tracing::error!(
                    "Discord has refused {MANY_INVALID} requests within ten minutes; going slow. Check the bot's permissions."
                );
            }
        }
    }
}

enum Wait {
    Go,
    Until(Instant),
    /// Until another request of the bucket has come back.
    Change,
}

impl Inner {
    fn try_enter(&mut self, route: &Route, now: Instant) -> Wait {
        while self
            .invalid
            .front()
            .is_some_and(|at| now - *at > INVALID_WINDOW)
        {
            self.invalid.pop_front();
        }
        while self
            .recent
            .front()
            .is_some_and(|at| now - *at >= Duration::from_secs(1))
        {
            self.recent.pop_front();
        }
        if let Some(held) = self.held.filter(|held| *held > now) {
            return Wait::Until(held);
        }
        let allowed = if self.invalid.len() < MANY_INVALID {
            A_SECOND
        } else {
            1
        };
        if let Some(first) = self.recent.front().filter(|_| self.recent.len() >= allowed) {
            return Wait::Until(*first + Duration::from_secs(1));
        }
        if self.buckets.len() > 1_000 {
            self.buckets
                .retain(|_, bucket| bucket.under_way > 0 || now - bucket.used < STALE);
        }
        let bucket = self.buckets.entry(route.clone()).or_insert(Bucket {
            limit: None,
            remaining: 1,
            resets: now,
            under_way: 0,
            used: now,
        });
        bucket.used = now;
        if bucket.resets <= now && bucket.under_way == 0 {
            // A fresh window; of its size the first answer tells, until then one at a time.
            bucket.remaining = bucket.limit.unwrap_or(1);
        }
        if bucket.remaining == 0 {
            return if bucket.resets > now {
                Wait::Until(bucket.resets)
            } else {
                Wait::Change
            };
        }
        bucket.remaining -= 1;
        bucket.under_way += 1;
        self.recent.push_back(now);
        Wait::Go
    }

    fn left(&mut self, route: &Route, headers: Option<&HeaderMap>, now: Instant) {
        let Some(bucket) = self.buckets.get_mut(route) else {
            return;
        };
        bucket.under_way = bucket.under_way.saturating_sub(1);
        let number = |name: &str| {
            headers?
                .get(name)?
                .to_str()
                .ok()?
                .parse::<f64>()
                .ok()
                .filter(|n| *n >= 0.0)
        };
        match (
            number("x-ratelimit-limit"),
            number("x-ratelimit-remaining"),
            number("x-ratelimit-reset-after"),
        ) {
            (Some(limit), Some(remaining), Some(after)) => {
                bucket.limit = Some(limit as u32);
                // Those still under way may not be in the count yet.
                bucket.remaining = (remaining as u32).saturating_sub(bucket.under_way);
                bucket.resets = now + bounded(after);
            }
            // No headers: this route has no limit of its own.
            _ if headers.is_some() => {
                bucket.limit = Some(u32::MAX);
                bucket.remaining = u32::MAX;
            }
            _ => bucket.remaining = bucket.remaining.max(1),
        }
    }
}

impl Turn<'_> {
    /// The answer has come, or never will.
    pub fn leave(mut self, headers: Option<&HeaderMap>) {
        if let Some(route) = self.route.take() {
            self.limits.inner().left(&route, headers, Instant::now());
            self.limits.changed.notify_waiters();
        }
    }
}

impl Drop for Turn<'_> {
    fn drop(&mut self) {
        if let Some(route) = self.route.take() {
            self.limits.inner().left(&route, None, Instant::now());
            self.limits.changed.notify_waiters();
        }
    }
}

fn bounded(seconds: f64) -> Duration {
    Duration::try_from_secs_f64(seconds.max(0.0))
        .unwrap_or(LONGEST_WAIT)
        .min(LONGEST_WAIT)
}

/// How long a 429 asks to wait: the body says it to the millisecond, the header in whole seconds.
pub fn retry_after(headers: &HeaderMap, body: &[u8]) -> Duration {
    let told = serde_json::from_slice::<serde_json::Value>(body)
        .ok()
        .and_then(|body| body["retry_after"].as_f64())
        .or_else(|| headers.get("retry-after")?.to_str().ok()?.parse().ok())
        .unwrap_or(1.0);
    bounded(told) + Duration::from_millis(20)
}

/// Discord's code of an error.
pub fn error_code(body: &[u8]) -> Option<i64> {
    serde_json::from_slice::<serde_json::Value>(body).ok()?["code"].as_i64()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn headers(limit: u32, remaining: u32, after: &str) -> HeaderMap {
        let mut map = HeaderMap::new();
        for (name, value) in [
            ("x-ratelimit-limit", limit.to_string()),
            ("x-ratelimit-remaining", remaining.to_string()),
            ("x-ratelimit-reset-after", after.to_owned()),
        ] {
            map.insert(name, value.parse().expect("a header"));
        }
        map
    }

    #[test]
    fn routes_are_told_apart_by_their_major_parameter_and_never_show_tokens() {
        let a = Route::of("POST", "/api/v10/channels/1/messages");
        assert_ne!(a, Route::of("POST", "/api/v10/channels/2/messages"));
        assert_eq!(
            Route::of("DELETE", "/api/v10/channels/1/messages/5"),
            Route::of("DELETE", "/api/v10/channels/1/messages/6")
        );
        let hook = Route::of("PATCH", "/api/v10/webhooks/7/secret/messages/@original");
        assert_eq!(
            hook.to_string(),
            "PATCH webhooks/{id}/{token}/messages/@original"
        );
        assert!(Route::of("POST", "/api/v10/interactions/7/secret/callback").answers_interaction());
    }

    #[test]
    fn only_what_cannot_be_done_twice_is_not_repeated() {
        let send = Route::of("POST", "/api/v10/channels/1/messages");
        assert!(!send.repeatable("POST", b"{\"content\":\"x\"}"));
        assert!(send.repeatable("POST", b"{\"content\":\"x\",\"enforce_nonce\":true}"));
        let follow = Route::of("POST", "/api/v10/webhooks/7/secret");
        assert!(!follow.repeatable("POST", b"{}"));
        assert!(follow.repeatable("PATCH", b"{}"));
    }

    #[test]
    fn a_window_once_used_up_is_waited_out() {
        let limits = Limits::default();
        let route = Route::of("POST", "/api/v10/channels/1/messages");
        let now = Instant::now();
        let mut inner = limits.inner();
        assert!(matches!(inner.try_enter(&route, now), Wait::Go));
        // Until the first answer nothing is known, so the second waits for it.
        assert!(matches!(inner.try_enter(&route, now), Wait::Change));
        inner.left(&route, Some(&headers(3, 2, "5.0")), now);
        assert!(matches!(inner.try_enter(&route, now), Wait::Go));
        assert!(matches!(inner.try_enter(&route, now), Wait::Go));
        assert!(
            matches!(inner.try_enter(&route, now), Wait::Until(at) if at == now + Duration::from_secs(5))
        );
        // Answers that cross on the way never make more of the window than is left of it.
        inner.left(&route, Some(&headers(3, 1, "5.0")), now);
        assert!(matches!(inner.try_enter(&route, now), Wait::Until(_)));
        inner.left(&route, Some(&headers(3, 0, "5.0")), now);
        let later = now + Duration::from_millis(5001);
        for _ in 0..3 {
            assert!(matches!(inner.try_enter(&route, later), Wait::Go));
        }
        assert!(!matches!(inner.try_enter(&route, later), Wait::Go));
    }

    #[test]
    fn the_limit_over_all_and_its_refusal_hold_everything_back() {
        let limits = Limits::default();
        let now = Instant::now();
        for i in 0..A_SECOND {
            let route = Route::of("GET", &format!("/api/v10/channels/{i}"));
            assert!(matches!(limits.inner().try_enter(&route, now), Wait::Go));
        }
        let route = Route::of("GET", "/api/v10/channels/999");
        assert!(matches!(
            limits.inner().try_enter(&route, now),
            Wait::Until(_)
        ));
        let later = now + Duration::from_secs(2);
        assert!(matches!(limits.inner().try_enter(&route, later), Wait::Go));
        let mut global = HeaderMap::new();
        global.insert("x-ratelimit-global", "true".parse().expect("a header"));
        limits.hold(&route, &global, Duration::from_secs(60));
        let other = Route::of("GET", "/api/v10/channels/1000");
        assert!(matches!(
            limits.inner().try_enter(&other, Instant::now()),
            Wait::Until(_)
        ));
    }

    #[test]
    fn patience_is_read_from_body_before_header() {
        let mut map = HeaderMap::new();
        map.insert("retry-after", "2".parse().expect("a header"));
        let near =
            |d: Duration, ms: u64| d.abs_diff(Duration::from_millis(ms)) < Duration::from_millis(5);
        assert!(near(retry_after(&map, br#"{"retry_after": 0.48}"#), 500));
        assert!(near(retry_after(&map, b"not json"), 2020));
        assert!(near(retry_after(&HeaderMap::new(), b""), 1020));
        assert!(
            retry_after(&map, br#"{"retry_after": 1e300}"#)
                <= LONGEST_WAIT + Duration::from_secs(1)
        );
    }
}
