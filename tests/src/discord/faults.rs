//! Trouble on demand: answers of 500 and above, requests that hang, and answers that are lost after
//! the work was done.

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
pub struct Faults(Vec<Planned>);

impl Faults {
    /// The next `times` requests of `method` whose path holds `part` meet this trouble.
    pub fn plan(&mut self, method: &str, part: &str, times: usize, trouble: Trouble) {
        self.0.push(Planned {
            method: method.into(),
            part: part.into(),
            left: times,
            trouble,
        });
    }

    /// The trouble that this request meets.
    pub fn next(&mut self, method: &str, path: &str) -> Option<Trouble> {
        let planned = self
            .0
            .iter_mut()
            .find(|p| p.left > 0 && p.method == method && path.contains(&p.part))?;
        planned.left -= 1;
        Some(planned.trouble)
    }

    /// Whether all planned trouble has come to pass.
    pub fn spent(&self) -> bool {
        self.0.iter().all(|planned| planned.left == 0)
    }
}
