//! Trouble on demand: answers of 500 and above, requests that hang, answers that are lost after the work
//! was done, and a request that is held at a chosen moment until a test has done something else.

use std::time::Duration;

/// What goes wrong.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Trouble {
    /// The request is answered with this status and not carried out.
    Status(u16),
    /// The request waits this long before it is carried out.
    Slow(Duration),
    /// The request is carried out, and the answer never arrives.
    LostAnswer,
    /// The request is carried out, and the answer is this status all the same.
    DoneBut(u16),
    /// A 429 from the outermost wall, with this `retry_after` in seconds.
    TooMany(f64),
    /// The request is held at this moment, until a test lets it go or drops it.
    Held(Moment),
}

/// A moment in the life of a request.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Moment {
    /// It has arrived and is not carried out.
    Before,
    /// It is carried out and not answered.
    Unanswered,
    /// It is answered.
    Answered,
}

/// What becomes of a request that is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fate {
    /// It waits.
    Waits,
    /// It goes on.
    Goes,
    /// Nothing more becomes of it, as when the line is cut.
    Dropped,
}

/// Counts the requests by which a bot acts of itself, and holds one of them.
#[derive(Debug, Default)]
struct Watch {
    /// Method and path of each so far, in order.
    seen: Vec<String>,
    hold: Option<(usize, Moment)>,
    reached: bool,
    fate: Option<Fate>,
}

/// Which requests, and how often.
#[derive(Clone, Debug)]
struct Planned {
    method: String,
    part: String,
    left: usize,
    trouble: Trouble,
}

/// The trouble planned.
#[derive(Debug, Default)]
pub struct Faults {
    planned: Vec<Planned>,
    watch: Option<Watch>,
}

impl Faults {
    /// The next `times` requests of `method` whose path holds `part` meet this trouble.
    pub fn plan(&mut self, method: &str, part: &str, times: usize, trouble: Trouble) {
        self.planned.push(Planned {
            method: method.into(),
            part: part.into(),
            left: times,
            trouble,
        });
    }

    /// The trouble that this request meets.
    pub fn next(&mut self, method: &str, path: &str) -> Option<Trouble> {
        if let Some(watch) = self.watch.as_mut().filter(|_| acts(method, path)) {
            watch.seen.push(format!("{method} {path}"));
            if let Some((number, moment)) = watch.hold
                && watch.seen.len() == number + 1
            {
                return Some(Trouble::Held(moment));
            }
        }
        let planned = self
            .planned
            .iter_mut()
            .find(|p| p.left > 0 && p.method == method && path.contains(&p.part))?;
        planned.left -= 1;
        Some(planned.trouble)
    }

    /// Whether all planned trouble has come to pass.
    pub fn spent(&self) -> bool {
        self.planned.iter().all(|planned| planned.left == 0)
    }

    /// Counts from now on, and holds the request of that number (from 0) at a moment, if one is given.
    pub fn watch(&mut self, hold: Option<(usize, Moment)>) {
        self.watch = Some(Watch {
            hold,
            ..Watch::default()
        });
    }

    /// A request that was counted was turned away by a rate limit, and will be made again.
    pub fn turned_away(&mut self, method: &str, path: &str) {
        if let Some(watch) = self.watch.as_mut().filter(|_| acts(method, path)) {
            watch.seen.pop();
        }
    }

    /// The requests counted, as method and path, in order.
    pub fn watched(&self) -> Vec<String> {
        self.watch
            .as_ref()
            .map(|watch| watch.seen.clone())
            .unwrap_or_default()
    }

    /// The moment of the request that is held has come.
    pub fn reach(&mut self) {
        if let Some(watch) = &mut self.watch {
            watch.reached = true;
        }
    }

    /// Whether the request to be held has come to its moment.
    pub fn reached(&self) -> bool {
        self.watch.as_ref().is_some_and(|watch| watch.reached)
    }

    /// Decides about the request that is held.
    pub fn decide(&mut self, fate: Fate) {
        if let Some(watch) = &mut self.watch {
            watch.fate = Some(fate);
        }
    }

    /// What was decided about it.
    pub fn fate(&self) -> Fate {
        // One whose watch is over is of a time that is past.
        self.watch
            .as_ref()
            .map_or(Fate::Dropped, |watch| watch.fate.unwrap_or(Fate::Waits))
    }
}

/// Whether a request does something of the bot's own accord: not one that only asks, nor one that answers
/// an interaction.
fn acts(method: &str, path: &str) -> bool {
    let answers = path.starts_with("/interactions") || path.starts_with("/webhooks");
    method != "GET" && !answers && !path.starts_with("/applications") && !path.ends_with("/typing")
}
