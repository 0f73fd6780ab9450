//! `engine`: our own search, for any program that speaks UCI.
//!
//! Source of the protocol: the UCI description by Stefan Meyer-Kahlen and Rudolf Huber (2000, 2004). All of it
//! is English, problems in `info string` too: programs read it, and show it beside their own.

use std::{
    io::{self, BufRead, Write},
    sync::{
        Arc,
        atomic::{AtomicBool, Ordering},
    },
    thread::{self, JoinHandle},
    time::{Duration, Instant},
};

use clap::Args;
use shakmaty::{CastlingMode, Chess, Color, Position, uci::UciMove};

use super::Outcome;
use crate::{
    chess::{
        Budget, parse_fen,
        search::{self, Judged, Score},
    },
    words::english,
};

/// Offer the bot's own search to programs that speak UCI, on standard input and output.
#[derive(Debug, Args)]
pub struct EngineArgs {}

/// What `go` allows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Limits {
    depth: Option<u32>,
    nodes: Option<u64>,
    time: Option<Duration>,
    endless: bool,
}

struct Session {
    position: Chess,
    /// Positions before it, for repetitions.
    before: Vec<Chess>,
    hash_mb: usize,
    threads: usize,
    lines: usize,
    running: Option<(Arc<AtomicBool>, JoinHandle<()>)>,
}

impl EngineArgs {
    pub(super) fn run(self) -> anyhow::Result<Outcome> {
        let mut session = Session {
            position: Chess::default(),
            before: Vec::new(),
            hash_mb: 64,
            threads: 1,
            lines: 1,
            running: None,
        };
        for line in io::stdin().lock().lines() {
            let line = line?;
            let mut words = line.split_whitespace();
            match words.next() {
                Some("uci") => greet()?,
                Some("isready") => say("readyok")?,
                Some("ucinewgame") => session.stop(),
                Some("setoption") => session.set_option(&line),
                Some("position") => {
                    session.stop();
                    if let Err(problem) = session.set_position(words) {
                        say(&format!("info string {problem}"))?;
                    }
                }
                Some("go") => session.go(words),
                Some("stop") => session.stop(),
                Some("quit") => break,
                // The protocol asks to pass over what is not understood.
                _ => {}
            }
        }
        session.stop();
        Ok(Outcome::Fine)
    }
}

fn say(line: &str) -> io::Result<()> {
    let mut out = io::stdout().lock();
    writeln!(out, "{line}")?;
    out.flush()
}

fn greet() -> io::Result<()> {
    say(concat!("id name Sealed Move ", env!("CARGO_PKG_VERSION")))?;
    say("id author the Sealed Move developers")?;
    say("option name Hash type spin default 64 min 1 max 4096")?;
    say("option name Threads type spin default 1 min 1 max 64")?;
    say("option name MultiPV type spin default 1 min 1 max 64")?;
    say("uciok")
}

impl Session {
    fn set_option(&mut self, line: &str) {
        let Some((name, value)) = line
            .split_once(" name ")
            .and_then(|(_, rest)| rest.split_once(" value "))
        else {
            return;
        };
        let Ok(value) = value.trim().parse::<usize>() else {
            return;
        };
        match name.trim().to_ascii_lowercase().as_str() {
            "hash" => self.hash_mb = value.clamp(1, 4096),
            "threads" => self.threads = value.clamp(1, 64),
            "multipv" => self.lines = value.clamp(1, 64),
            _ => {}
        }
    }

    fn set_position<'a>(&mut self, mut words: impl Iterator<Item = &'a str>) -> Result<(), String> {
        let mut fen = Vec::new();
        let start = words.next() == Some("startpos");
        let mut moves = Vec::new();
        let mut in_moves = false;
        for word in words {
            match (word, in_moves) {
                ("moves", false) => in_moves = true,
                (word, true) => moves.push(word),
                (word, false) => fen.push(word),
            }
        }
        let mut position = match start {
            true => Chess::default(),
            false => {
                parse_fen(&fen.join(" "))
                    .map_err(|error| english().say(&error))?
                    .position
            }
        };
        let mut before = Vec::new();
        for text in moves {
            let mv = text
                .parse::<UciMove>()
                .ok()
                .and_then(|uci| uci.to_move(&position).ok());
            let mv = mv.ok_or_else(|| {
                format!("{text} is not a legal move here; it and what follows were passed over")
            })?;
            before.push(position.clone());
            position.play_unchecked(mv);
        }
        (self.position, self.before) = (position, before);
        Ok(())
    }

    fn go<'a>(&mut self, words: impl Iterator<Item = &'a str>) {
        self.stop();
        let limits = Limits::read(words, self.position.turn());
        let stop = Arc::new(AtomicBool::new(false));
        let told = stop.clone();
        let (position, before) = (self.position.clone(), self.before.clone());
        let (threads, lines, table) = (self.threads, self.lines, self.hash_mb << 20);
        let thread = thread::spawn(move || {
            let started = Instant::now();
            let late = || {
                told.load(Ordering::Relaxed)
                    || limits.time.is_some_and(|limit| started.elapsed() >= limit)
            };
            let budget = Budget::unlimited()
                .until(&late)
                .threads(threads)
                .table_bytes(table);
            let budget = match limits.nodes {
                Some(nodes) => budget.nodes(nodes),
                None => budget,
            };
            let depth = limits.depth.unwrap_or(100);
            let judged = search::deepen(&position, &before, depth, lines, &budget, &mut |judged| {
                // Nobody reads any more when this fails; the search is stopped by `quit` or the end of input.
                let _ = report(judged, started.elapsed());
            });
            // The protocol allows no best move before `stop` when asked to search without end.
            while limits.endless && !told.load(Ordering::Relaxed) {
                thread::sleep(Duration::from_millis(5));
            }
            let best = judged
                .lines
                .first()
                .and_then(|ranked| ranked.line.first().copied());
            let best = best.map_or("0000".into(), |mv| {
                UciMove::from_move(mv, CastlingMode::Standard).to_string()
            });
            let _ = say(&format!("bestmove {best}"));
        });
        self.running = Some((stop, thread));
    }

    fn stop(&mut self) {
        if let Some((stop, thread)) = self.running.take() {
            stop.store(true, Ordering::Relaxed);
            // A search that panicked has nothing to say; the session goes on.
            let _ = thread.join();
        }
    }
}

impl Limits {
    fn read<'a>(words: impl Iterator<Item = &'a str>, turn: Color) -> Self {
        let mut limits = Self::default();
        let (mut clock, mut increment, mut to_go) = (None, 0, 30);
        let words: Vec<&str> = words.collect();
        let number = |i: usize| {
            words
                .get(i + 1)
                .and_then(|n| n.parse::<i64>().ok())
                .map(|n| n.max(0) as u64)
        };
        for (i, word) in words.iter().enumerate() {
            match (*word, turn) {
                ("infinite", _) => limits.endless = true,
                ("depth", _) => limits.depth = number(i).map(|n| n.clamp(1, 100) as u32),
                ("nodes", _) => limits.nodes = number(i),
                ("mate", _) => limits.depth = number(i).map(|n| (2 * n).clamp(1, 100) as u32),
                ("movetime", _) => limits.time = number(i).map(Duration::from_millis),
                ("movestogo", _) => to_go = number(i).unwrap_or(30).max(1),
                ("wtime", Color::White) | ("btime", Color::Black) => clock = number(i),
                ("winc", Color::White) | ("binc", Color::Black) => {
                    increment = number(i).unwrap_or(0)
                }
                _ => {}
            }
        }
        if let (None, Some(clock)) = (limits.time, clock) {
            // An even share of the clock and most of the increment, with a little kept back.
            let share = clock / to_go.min(30) + increment * 3 / 4;
            limits.time = Some(Duration::from_millis(
                share.min(clock.saturating_sub(50)).max(1),
            ));
        }
        limits.endless |= limits == Self::default();
        limits
    }
}

fn report(judged: &Judged, spent: Duration) -> io::Result<()> {
    for (i, ranked) in judged.lines.iter().enumerate() {
        let score = match ranked.score {
            Score::Cp(value) => format!("cp {value}"),
            Score::Mate(moves) => format!("mate {moves}"),
        };
        let line: Vec<_> = ranked
            .line
            .iter()
            .map(|&mv| UciMove::from_move(mv, CastlingMode::Standard).to_string())
            .collect();
        let millis = spent.as_millis();
        let speed = u128::from(judged.nodes) * 1000 / millis.max(1);
        say(&format!(
            "info depth {} multipv {} score {score} nodes {} nps {speed} time {millis} pv {}",
            judged.depth,
            i + 1,
            judged.nodes,
            line.join(" ")
        ))?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn limits(text: &str) -> Limits {
        Limits::read(text.split_whitespace(), Color::White)
    }

    #[test]
    fn reads_what_go_allows() {
        assert!(limits("").endless && limits("infinite").endless);
        assert_eq!(
            limits("depth 5"),
            Limits {
                depth: Some(5),
                ..Limits::default()
            }
        );
        assert_eq!(
            limits("movetime 250").time,
            Some(Duration::from_millis(250))
        );
        assert_eq!(
            limits("wtime 60000 btime 1 winc 1000 movestogo 10").time,
            Some(Duration::from_millis(6750))
        );
        assert_eq!(
            limits("wtime 20 btime 20").time,
            Some(Duration::from_millis(1)),
            "never past the flag"
        );
    }
}
