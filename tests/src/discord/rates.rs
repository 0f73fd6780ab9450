//! Rate limits: a window of requests per route and major parameter, and fifty a second over all.

use std::{
    collections::HashMap,
    time::{Duration, Instant},
};

/// Limits and how far they are used up.
#[derive(Debug)]
pub struct Rates {
    windows: HashMap<String, Window>,
    global: Window,
    /// Whether limits hold at all.
    pub on: bool,
    /// How many requests were refused with 429.
    pub refused: usize,
}

#[derive(Debug)]
struct Window {
    limit: u32,
    length: Duration,
    used: u32,
    ends: Instant,
}

/// Where a request stands.
#[derive(Clone, Debug)]
pub struct Standing {
    /// Name of the bucket, the same for routes that share one.
    pub bucket: String,
    /// Requests a window.
    pub limit: u32,
    /// Requests left in it.
    pub remaining: u32,
    /// Until it starts afresh.
    pub reset_after: Duration,
}

/// A refusal.
#[derive(Clone, Debug)]
pub struct TooMany {
    /// When to try again.
    pub retry_after: Duration,
    /// Whether the limit over all was hit.
    pub global: bool,
    /// The bucket, unless global.
    pub standing: Option<Standing>,
}

impl Default for Rates {
    fn default() -> Self {
        Self {
            windows: HashMap::new(),
            global: Window {
                limit: 50,
                length: Duration::from_secs(1),
                used: 0,
                ends: Instant::now(),
            },
            on: true,
            refused: 0,
        }
    }
}

/// The bucket of a route with its limit and window, or `None` where only the limit over all holds.
///
/// Discord publishes no numbers and says to read the headers; these are of the size seen in practice
/// (from memory), so that a client that ignores the headers is refused.
fn bucket(method: &str, segments: &[&str]) -> Option<(String, u32, Duration)> {
    let secs = Duration::from_secs;
    Some(match (method, segments) {
        (_, ["interactions", ..]) => return None,
        (m, ["webhooks", _, token, ..]) => (format!("hook-{m}:{token}"), 5, secs(2)),
        ("POST", ["channels", c, "messages"]) => (format!("send:{c}"), 5, secs(5)),
        ("GET", ["channels", c, "messages", ..]) => (format!("read:{c}"), 10, secs(5)),
        ("DELETE", ["channels", c, "messages", _]) => (format!("delete:{c}"), 5, secs(1)),
        ("PATCH", ["channels", c, "messages", _]) => (format!("edit:{c}"), 5, secs(5)),
        ("POST", ["channels", c, "messages", _, "threads"]) => (format!("thread:{c}"), 5, secs(5)),
        ("PUT" | "DELETE", ["channels", c, "messages", _, "reactions", ..]) => {
            (format!("react:{c}"), 1, Duration::from_millis(250))
        }
        ("PATCH", ["channels", c]) => (format!("channel:{c}"), 5, secs(5)),
        ("GET", ["channels", c]) => (format!("look:{c}"), 10, secs(5)),
        ("POST", ["users", "@me", "channels"]) => ("direct".into(), 20, secs(5)),
        (_, ["applications", ..]) => ("commands".into(), 5, secs(5)),
        ("GET", ["guilds", g, ..]) => (format!("guild:{g}"), 20, secs(2)),
        _ => ("rest".into(), 20, secs(2)),
    })
}

impl Window {
    /// Counts one request, or says how long to wait.
    fn take(&mut self, now: Instant) -> Result<u32, Duration> {
        if now >= self.ends {
            self.used = 0;
            self.ends = now + self.length;
        }
        if self.used >= self.limit {
            return Err(self.ends - now);
        }
        self.used += 1;
        Ok(self.limit - self.used)
    }
}

impl Rates {
    /// Counts one request.
    pub fn take(&mut self, method: &str, segments: &[&str]) -> Result<Option<Standing>, TooMany> {
        if !self.on {
            return Ok(None);
        }
        let now = Instant::now();
        let interaction = matches!(segments, ["interactions", ..]);
        if !interaction && let Err(retry_after) = self.global.take(now) {
            self.refused += 1;
            return Err(TooMany {
                retry_after,
                global: true,
                standing: None,
            });
        }
        let Some((name, limit, length)) = bucket(method, segments) else {
            return Ok(None);
        };
        let window = self.windows.entry(name.clone()).or_insert(Window {
            limit,
            length,
            used: 0,
            ends: now + length,
        });
        let taken = window.take(now);
        let standing = Standing {
            // The published form: an opaque name shared by all of a kind, without the major parameter.
            bucket: name.split(':').next().unwrap_or_default().into(),
            limit,
            remaining: *taken.as_ref().unwrap_or(&0),
            reset_after: window.ends.saturating_duration_since(now),
        };
        match taken {
            Ok(_) => Ok(Some(standing)),
            Err(retry_after) => {
                self.refused += 1;
                Err(TooMany {
                    retry_after,
                    global: false,
                    standing: Some(standing),
                })
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sixth_message_in_five_seconds_is_refused_in_its_channel_only() {
        let mut rates = Rates::default();
        let here = ["channels", "1", "messages"];
        for left in (0..5).rev() {
            let standing = rates
                .take("POST", &here)
                .expect("allowed")
                .expect("limited");
            assert_eq!(standing.remaining, left);
        }
        let refused = rates.take("POST", &here).expect_err("refused");
        assert!(!refused.global && refused.retry_after <= Duration::from_secs(5));
        assert!(rates.take("POST", &["channels", "2", "messages"]).is_ok());
        assert_eq!(rates.refused, 1);
    }
}
