//! A second opinion by any UCI engine that the user names.
//!
//! The engine is a stranger: it may not start, say nothing, crash or never come back. Each is an error
//! that says so, and the process never outlives the question.

use std::{
    collections::BTreeMap,
    io::{BufRead, BufReader, Write},
    path::{Path, PathBuf},
    process::{Child, ChildStdin, Command, Stdio},
    sync::mpsc::{self, Receiver, RecvTimeoutError},
    thread,
    time::{Duration, Instant},
};

use serde::{Deserialize, Serialize};
use shakmaty::{Chess, EnPassantMode, Move, Position, fen::Fen, san::SanPlus, uci::UciMove};

use super::noted::Noted;
use crate::chess::{check::Report, search::Score};

/// Which engine to ask, and how.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EngineSettings {
    /// The program.
    pub program: PathBuf,
    /// Its arguments.
    #[serde(default)]
    pub arguments: Vec<String>,
    /// UCI options by name.
    #[serde(default)]
    pub options: BTreeMap<String, String>,
    /// Seconds for one position.
    #[serde(default = "five")]
    pub seconds: f64,
}

fn five() -> f64 {
    5.0
}

/// What the engine said of a position.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Opinion {
    /// The engine's own name.
    pub engine: String,
    /// Depth it reached, in half-moves.
    pub depth: u32,
    /// Its score for the side to move: hundredths of a pawn, or `#N`.
    pub score: String,
    /// The move it prefers, in SAN.
    pub best: String,
}

/// Why there is no second opinion.
#[derive(Debug, thiserror::Error)]
pub enum OpinionError {
    /// The program cannot be started.
    #[error("the engine {0} cannot be started: {1}; check the path under [engine] in the settings")]
    Start(PathBuf, std::io::Error),
    /// It does not speak UCI, or not in time.
    #[error("the engine {0} does not answer as a UCI engine within {1} s")]
    NotUci(PathBuf, u64),
    /// It ended by itself.
    #[error("the engine {0} ended while it was asked")]
    Ended(PathBuf),
    /// It did not come back.
    #[error("the engine {0} gave no move in the time allowed and was stopped")]
    Hung(PathBuf),
    /// It gave a move that is none.
    #[error("the engine {0} gave \"{1}\", which is no legal move here")]
    BadMove(PathBuf, String),
}

/// How long an engine may take to say who it is and that it is ready.
const HANDSHAKE: Duration = Duration::from_secs(10);
/// How long past its time an engine may take to answer.
const GRACE: Duration = Duration::from_secs(3);

/// Asks the engine about one position. Blocks for about `settings.seconds`, and 13 s longer at the most.
///
/// # Errors
/// When the engine cannot be started, is not UCI, ends, hangs, or gives no legal move.
pub fn ask(settings: &EngineSettings, position: &Chess) -> Result<Opinion, OpinionError> {
    let mut engine = Engine::start(settings)?;
    let name = engine.greet(settings)?;
    let fen = Fen::from_position(position, EnPassantMode::Legal);
    let millis = (settings.seconds.clamp(0.05, 3600.0) * 1000.0) as u64;
    engine.say(&format!("position fen {fen}"));
    engine.say(&format!("go movetime {millis}"));
    let mut opinion = Opinion {
        engine: name,
        depth: 0,
        score: String::new(),
        best: String::new(),
    };
    let until = Instant::now() + Duration::from_millis(millis) + GRACE;
    loop {
        let line = engine
            .hear(until)
            .map_err(|silence| silence.error(&engine.program))?;
        let mut words = line.split_whitespace();
        match words.next() {
            Some("info") => opinion.note(&line),
            Some("bestmove") => {
                let text = words.next().unwrap_or_default();
                let mv = legal(position, text).ok_or_else(|| {
                    OpinionError::BadMove(engine.program.clone(), text.chars().take(20).collect())
                })?;
                opinion.best = SanPlus::from_move(position.clone(), mv).to_string();
                return Ok(opinion);
            }
            _ => {}
        }
    }
}

/// Adds the engine's opinion, or why there is none, to the notes of a report that is not proved.
pub fn consult(settings: &EngineSettings, position: &Chess, report: &mut Report) {
    if report.proved || position.legal_moves().is_empty() {
        return;
    }
    report.warnings.push(match ask(settings, position) {
        Ok(opinion) => opinion.noted(&report.keys).into(),
        Err(error) => error.noted().into(),
    });
}

impl Opinion {
    /// Takes depth and score from an `info` line of the engine's best line.
    fn note(&mut self, line: &str) {
        let words: Vec<&str> = line.split_whitespace().collect();
        let after = |name: &str| {
            words
                .iter()
                .position(|w| *w == name)
                .and_then(|i| words.get(i + 1))
                .copied()
        };
        if after("multipv").is_some_and(|n| n != "1")
            || words.contains(&"lowerbound")
            || words.contains(&"upperbound")
        {
            return;
        }
        let value = |name: &str| after(name).and_then(|n| n.parse::<i32>().ok());
        let score = match after("score") {
            Some("cp") => value("cp").map(Score::Cp),
            Some("mate") => value("mate").map(Score::Mate),
            _ => None,
        };
        if let (Some(depth), Some(score)) = (value("depth"), score) {
            self.depth = depth.max(0) as u32;
            self.score = match score {
                Score::Cp(value) => format!("{:+.2}", f64::from(value) / 100.0),
                Score::Mate(moves) => format!("#{moves}"),
            };
        }
    }

    /// The opinion, beside the keys our own check found.
    fn noted(self, keys: &[String]) -> Noted {
        let agrees = keys.contains(&self.best);
        let (engine, depth, line, score) =
            (self.engine.into(), self.depth, self.best.into(), self.score);
        match agrees {
            true => Noted::SecondOpinionAgrees {
                engine,
                depth,
                line,
                score,
            },
            false => Noted::SecondOpinionPrefers {
                engine,
                depth,
                line,
                score,
            },
        }
    }
}

impl OpinionError {
    fn noted(&self) -> Noted {
        let name = |program: &Path| program.display().to_string().into();
        match self {
            Self::Start(program, error) => Noted::EngineNotStarted {
                engine: name(program),
                error: error.to_string().into(),
            },
            Self::NotUci(program, seconds) => Noted::EngineNotUci {
                engine: name(program),
                seconds: u32::try_from(*seconds).unwrap_or(u32::MAX),
            },
            Self::Ended(program) => Noted::EngineEnded {
                engine: name(program),
            },
            Self::Hung(program) => Noted::EngineHung {
                engine: name(program),
            },
            Self::BadMove(program, written) => Noted::EngineMoveWrong {
                engine: name(program),
                written: written.as_str().into(),
            },
        }
    }
}

fn legal(position: &Chess, text: &str) -> Option<Move> {
    let mv = text.parse::<UciMove>().ok()?.to_move(position).ok()?;
    position.is_legal(mv).then_some(mv)
}

/// A running engine; ended when it is dropped.
struct Engine {
    program: PathBuf,
    child: Child,
    input: Option<ChildStdin>,
    lines: Receiver<String>,
}

/// Why nothing was heard.
enum Silence {
    Late,
    Ended,
}

impl Silence {
    fn error(self, program: &Path) -> OpinionError {
        match self {
            Self::Late => OpinionError::Hung(program.into()),
            Self::Ended => OpinionError::Ended(program.into()),
        }
    }
}

impl Engine {
    fn start(settings: &EngineSettings) -> Result<Self, OpinionError> {
        let program = settings.program.clone();
        let cannot = |error| OpinionError::Start(program.clone(), error);
        let mut child = Command::new(&program)
            .args(&settings.arguments)
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .map_err(cannot)?;
        let input = child.stdin.take();
        let (send, lines) = mpsc::sync_channel(1024);
        if let Some(output) = child.stdout.take() {
            // Ends with the engine's output, at the latest when the engine is ended.
            thread::spawn(move || {
                for line in BufReader::new(output).lines() {
                    let Ok(line) = line else { break };
                    if send.send(line).is_err() {
                        break;
                    }
                }
            });
        }
        Ok(Self {
            program,
            child,
            input,
            lines,
        })
    }

    /// Says hello, sets the options and waits until it is ready; the engine's name.
    fn greet(&mut self, settings: &EngineSettings) -> Result<String, OpinionError> {
        let until = Instant::now() + HANDSHAKE;
        let program = self.program.clone();
        let not_uci = move |silence| match silence {
            Silence::Late => OpinionError::NotUci(program.clone(), HANDSHAKE.as_secs()),
            Silence::Ended => OpinionError::Ended(program.clone()),
        };
        let mut name = self
            .program
            .file_name()
            .unwrap_or_default()
            .to_string_lossy()
            .into_owned();
        self.say("uci");
        loop {
            let line = self.hear(until).map_err(&not_uci)?;
            if let Some(given) = line.strip_prefix("id name ") {
                name = given.trim().chars().take(80).collect();
            } else if line.trim() == "uciok" {
                break;
            }
        }
        for (option, value) in &settings.options {
            self.say(&format!("setoption name {option} value {value}"));
        }
        self.say("isready");
        while self.hear(until).map_err(&not_uci)?.trim() != "readyok" {}
        Ok(name)
    }

    fn say(&mut self, line: &str) {
        if let Some(input) = &mut self.input {
            // An engine that closed its input has ended or will not answer: both are seen when listening.
            let _ = writeln!(input, "{line}").and_then(|()| input.flush());
        }
    }

    fn hear(&mut self, until: Instant) -> Result<String, Silence> {
        let left = until.saturating_duration_since(Instant::now());
        self.lines.recv_timeout(left).map_err(|error| match error {
            RecvTimeoutError::Timeout => Silence::Late,
            RecvTimeoutError::Disconnected => Silence::Ended,
        })
    }
}

impl Drop for Engine {
    fn drop(&mut self) {
        self.say("quit");
        self.input = None;
        // It had its say; whatever it still does is of no use. Both calls only fail when it has ended.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn engine(script: &str) -> EngineSettings {
        EngineSettings {
            program: "/bin/sh".into(),
            arguments: vec!["-c".into(), script.into()],
            options: BTreeMap::new(),
            seconds: 0.1,
        }
    }

    const POLITE: &str =
        "read a; echo id name Tester; echo uciok; read b; echo readyok; read c; read d; ";

    #[test]
    fn hears_name_depth_score_and_move() {
        let script =
            format!("{POLITE} echo info depth 7 score cp 31 pv e2e4; echo bestmove e2e4; read e");
        let opinion = ask(&engine(&script), &Chess::default()).expect("an opinion");
        assert_eq!(
            opinion,
            Opinion {
                engine: "Tester".into(),
                depth: 7,
                score: "+0.31".into(),
                best: "e4".into()
            }
        );
        let agrees = opinion.clone().noted(&["e4".into()]);
        let (engine, line, score) = ("Tester".into(), "e4".into(), "+0.31".to_owned());
        let depth = 7;
        assert_eq!(
            agrees,
            Noted::SecondOpinionAgrees {
                engine,
                depth,
                line,
                score,
            }
        );
        let prefers = opinion.noted(&["d4".into()]);
        assert!(matches!(prefers, Noted::SecondOpinionPrefers { .. }));
    }

    #[test]
    fn every_misbehaviour_is_named() {
        let asked = |script: &str| ask(&engine(script), &Chess::default()).expect_err("no opinion");
        assert!(matches!(asked("exit 3"), OpinionError::Ended(_)));
        assert!(matches!(
            asked(&format!("{POLITE} exit 0")),
            OpinionError::Ended(_)
        ));
        assert!(matches!(
            asked(&format!("{POLITE} echo bestmove e2e5")),
            OpinionError::BadMove(..)
        ));
        assert!(matches!(
            asked(&format!("{POLITE} sleep 60")),
            OpinionError::Hung(_)
        ));
        let mut missing = engine("");
        missing.program = "/nowhere/engine".into();
        assert!(matches!(
            ask(&missing, &Chess::default()),
            Err(OpinionError::Start(..))
        ));
    }
}
