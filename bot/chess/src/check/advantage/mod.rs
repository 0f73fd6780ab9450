//! Wins and draws, which are judged by search.
//!
//! The thresholds, in hundredths of a pawn as the side to move sees it, are those of [`CheckOptions`]:
//!
//! - `+` holds when the best move stands at `win_margin` or more; it is the only key when every other
//!   move stands at `other_margin` or less.
//! - `=` holds when the best move stands at `-other_margin` or more (and does not even win by
//!   `win_margin`); it is the only key when every other move stands at `-win_margin` or less.
//!
//! A judgement names its depth and is never called proved.

use shakmaty::{Chess, Move, Position};

use super::{
    CheckOptions, Finding, Known, Report, Soundness, Stands, Statement, blank, tables, variations,
    written,
};
use crate::{
    Branch, Budget, Defence, Solution, Stipulation,
    fact::{Centipawns, Line},
    line::sans,
    read::Entry,
    search::{self, Judged, Ranked, Score},
};

/// A judgement less deep than this, in half-moves, is no judgement.
pub(crate) const SHALLOWEST: u32 = 8;
/// How much less deep every move is judged, when the keys are more than one and are to be listed.
const LIST_SHALLOWER: u32 = 4;

/// What the search for a mate said before a win is judged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sought {
    /// None was looked for: the task is stated.
    Nothing,
    /// There is no mate in this many moves or fewer, and that was all to be asked.
    NoneWithin(u8),
    /// There is no mate in this many moves or fewer, and then its share of the budget ended.
    CutShort(u8),
}

impl Sought {
    fn told(self) -> Option<Finding> {
        match self {
            Self::Nothing => None,
            Self::NoneWithin(moves) => Some(Finding::NoMateSoWin {
                moves: moves.into(),
            }),
            Self::CutShort(0) => Some(Finding::NoMateSought),
            Self::CutShort(moves) => Some(Finding::NoMateThenCut {
                moves: moves.into(),
            }),
        }
    }
}

/// Checks an entry whose task is to win or to draw.
pub(super) fn check_advantage(
    entry: &Entry,
    task: Stipulation,
    sought: Sought,
    options: &CheckOptions,
    budget: &Budget<'_>,
) -> Report {
    let mut report = verdict(entry, task, sought, options, budget);
    if matches!(report.verdict, Soundness::Sound | Soundness::SeveralKeys) {
        report.warnings = variations::check_advantage(entry, task, options, budget);
        if !report.warnings.is_empty() {
            report.message.push(Finding::VariationsDoubtful.into());
        }
    }
    report
}

fn verdict(
    entry: &Entry,
    task: Stipulation,
    sought: Sought,
    options: &CheckOptions,
    budget: &Budget<'_>,
) -> Report {
    let position = &entry.position;
    let mut report = blank(entry);
    report.stipulation = Some(task);
    if position.legal_moves().is_empty() {
        report.verdict = Soundness::Unsound;
        report.message.push(Finding::NoMoveLeft.into());
        return report;
    }
    if let Some(every) = options
        .endgames
        .as_deref()
        .and_then(|tables| tables::every_move(position, tables))
    {
        return by_tables(report, entry, task, &every);
    }
    let judged = search::search(position, options.depth, 2, budget);
    report.depth = Some(judged.depth);
    let best = &judged.lines[0];
    report.line = sans(position, &best.line);
    let judgement = Judgement::of(task, &judged, options);
    let mut message: Vec<Finding> = sought.told().into_iter().collect();
    if !deep_enough(&judged) {
        report.verdict = Soundness::Undecided;
        message.push(Finding::EndedEarly {
            depth: judged.depth,
            task: task.into(),
        });
        message.push(Finding::AllowMore);
    } else if matches!(sought, Sought::CutShort(_)) && !judgement.holds {
        // A longer mate may be there all the same.
        report.verdict = Soundness::Undecided;
        report.stipulation = None;
        message.extend(judgement.told(position, task, &judged, &report.keys));
        message.push(Finding::AllowMoreOrShorter);
    } else {
        report.verdict = judgement.verdict;
        let mut more = None;
        if judgement.verdict == Soundness::SeveralKeys {
            let every = every_key(position, task, options, judged.depth, budget);
            report.keys = if every.is_empty() {
                more = Some(Finding::MayBeMore);
                first_moves(position, &judged.lines)
            } else {
                every
            };
        } else if judgement.verdict == Soundness::Sound {
            report.keys = first_moves(position, &judged.lines[..1]);
            report.variations = vec![written::numbered(position, &best.line)];
        }
        message.extend(judgement.told(position, task, &judged, &report.keys));
        message.extend(more);
        message.extend(broken_promise(entry, &report.keys));
    }
    report.message = message.into_iter().map(Statement::from).collect();
    report
}

/// The verdict of endgame tables, which is exact.
fn by_tables(
    mut report: Report,
    entry: &Entry,
    task: Stipulation,
    every: &[(Move, Known)],
) -> Report {
    let position = &entry.position;
    report.proved = true;
    report.keys = every
        .iter()
        .filter(|(_, known)| tables::meets(task, *known))
        .map(|(mv, _)| written::san(position, *mv))
        .collect();
    let wins = every.iter().any(|(_, known)| *known == Known::Win);
    report.line = report.keys.first().cloned().into_iter().collect();
    let asked = task.into();
    let (verdict, told) = match report.keys.len() {
        _ if task == Stipulation::Draw && wins => (Soundness::Unsound, Some(Finding::TablesBetter)),
        0 => (
            Soundness::Unsound,
            Some(Finding::TablesNone { task: asked }),
        ),
        1 => (Soundness::Sound, None),
        _ => (
            Soundness::SeveralKeys,
            Some(Finding::TablesSeveral {
                task: asked,
                keys: written::list(&report.keys),
            }),
        ),
    };
    report.verdict = verdict;
    let told = told.into_iter().chain(broken_promise(entry, &report.keys));
    report.message = told.map(Statement::from).collect();
    report
}

/// The solution of a win or draw: the keys, each with the line the search expects.
pub(super) fn solution(
    position: &Chess,
    task: Stipulation,
    options: &CheckOptions,
    budget: &Budget<'_>,
) -> Option<Solution> {
    if position.legal_moves().is_empty() {
        return None;
    }
    if let Some(every) = options
        .endgames
        .as_deref()
        .and_then(|tables| tables::every_move(position, tables))
    {
        let keys = every
            .iter()
            .filter(|(_, known)| tables::meets(task, *known));
        let keys = keys
            .map(|&(mv, _)| Branch {
                mv,
                defences: Vec::new(),
            })
            .collect();
        return Some(Solution {
            keys,
            tries: Vec::new(),
            complete: false,
        });
    }
    let judged = search::search(position, options.depth, 2, budget);
    let keys = judged
        .lines
        .iter()
        .filter(|ranked| is_key(task, ranked.score, options))
        .filter_map(|ranked| branch(&ranked.line))
        .collect();
    deep_enough(&judged).then_some(Solution {
        keys,
        tries: Vec::new(),
        complete: false,
    })
}

/// Whether the search went deep enough to judge by; mates it found early need no depth.
pub(super) fn deep_enough(judged: &Judged) -> bool {
    judged.depth >= SHALLOWEST
        || judged
            .lines
            .iter()
            .all(|ranked| matches!(ranked.score, Score::Mate(_)))
}

/// Whether a first move with this score meets the task clearly enough to be accepted.
pub(super) fn is_key(task: Stipulation, score: Score, options: &CheckOptions) -> bool {
    match task {
        Stipulation::Draw => score.rank() > -options.win_margin,
        _ => score.rank() > options.other_margin,
    }
}

/// What two ranked moves say of the task.
struct Judgement {
    verdict: Soundness,
    holds: bool,
    too_good: bool,
}

impl Judgement {
    fn of(task: Stipulation, judged: &Judged, options: &CheckOptions) -> Self {
        let best = judged.lines[0].score.rank();
        let second = judged.lines.get(1).map(|ranked| ranked.score);
        let too_good = task == Stipulation::Draw && best >= options.win_margin;
        let holds = match task {
            Stipulation::Draw => best >= -options.other_margin && !too_good,
            _ => best >= options.win_margin,
        };
        let verdict = match (
            holds,
            second.is_some_and(|score| is_key(task, score, options)),
        ) {
            (false, _) => Soundness::Unsound,
            (true, true) => Soundness::SeveralKeys,
            (true, false) => Soundness::Sound,
        };
        Self {
            verdict,
            holds,
            too_good,
        }
    }

    fn told(
        &self,
        position: &Chess,
        task: Stipulation,
        judged: &Judged,
        keys: &[String],
    ) -> Option<Finding> {
        let depth = judged.depth;
        let best = stands(position, judged.lines.first()?);
        let task = task.into();
        Some(if self.too_good {
            Finding::JudgedBetter { depth, best }
        } else if !self.holds {
            Finding::JudgedNone { depth, task, best }
        } else if self.verdict == Soundness::SeveralKeys {
            let keys = written::list(keys);
            Finding::JudgedSeveral { depth, task, keys }
        } else {
            match judged.lines.get(1) {
                Some(next) => Finding::JudgedBest {
                    depth,
                    best,
                    next: stands(position, next),
                },
                None => Finding::JudgedOnly { depth, best },
            }
        })
    }
}

/// How a ranked first move stands, for the side that makes it.
fn stands(position: &Chess, ranked: &Ranked) -> Stands {
    let line = Line::from(written::san(position, ranked.line[0]));
    match ranked.score {
        Score::Cp(centipawns) => Stands::MoveStandsAt {
            line,
            value: Centipawns { centipawns },
        },
        Score::Mate(moves) if moves > 0 => Stands::MoveMatesIn {
            line,
            moves: moves.unsigned_abs(),
        },
        Score::Mate(moves) => Stands::MoveIsMatedIn {
            line,
            moves: moves.unsigned_abs(),
        },
    }
}

/// Every move that meets the task, when two are known to; somewhat less deep than the verdict. Empty
/// when the budget ended first.
fn every_key(
    position: &Chess,
    task: Stipulation,
    options: &CheckOptions,
    depth: u32,
    budget: &Budget<'_>,
) -> Vec<String> {
    let count = position.legal_moves().len();
    let depth = depth.saturating_sub(LIST_SHALLOWER).max(SHALLOWEST);
    let judged = search::search(position, depth, count, budget);
    if judged.depth < depth && !deep_enough(&judged) {
        return Vec::new();
    }
    let keys: Vec<Ranked> = judged
        .lines
        .into_iter()
        .filter(|r| is_key(task, r.score, options))
        .collect();
    if keys.len() < 2 {
        return Vec::new();
    }
    first_moves(position, &keys)
}

fn first_moves(position: &Chess, lines: &[Ranked]) -> Vec<String> {
    lines
        .iter()
        .map(|ranked| written::san(position, ranked.line[0]))
        .collect()
}

/// What is to be said when the file promises a move that is no key.
fn broken_promise(entry: &Entry, keys: &[String]) -> Option<Finding> {
    let promised: Vec<String> = entry
        .best
        .iter()
        .map(|mv| written::san(&entry.position, *mv))
        .collect();
    let kept =
        promised.is_empty() || keys.is_empty() || promised.iter().any(|san| keys.contains(san));
    (!kept).then(|| Finding::SearchPrefers {
        promised: written::list(&promised),
        keys: written::list(keys),
    })
}

/// A line as a tree without side branches: the solver's moves, and one defence to each.
fn branch(line: &[Move]) -> Option<Branch> {
    let (&mv, rest) = line.split_first()?;
    let defences = match rest.split_first() {
        Some((&reply, rest)) => vec![Defence {
            mv: reply,
            continuations: branch(rest).into_iter().collect(),
        }],
        None => Vec::new(),
    };
    Some(Branch { mv, defences })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{check, fact::Task, read};

    fn report(epd: &str, task: Stipulation) -> Report {
        let mut entry = read::read_file("t", epd.as_bytes())
            .remove(0)
            .expect("readable");
        entry.stipulation = Some(task);
        check::check(
            &entry,
            &CheckOptions {
                depth: 10,
                ..CheckOptions::default()
            },
            &Budget::unlimited(),
        )
    }

    #[test]
    fn a_free_queen_is_the_only_win() {
        // Composed for this test: everything else leaves White a queen behind.
        let report = report("3q3k/7p/8/8/8/8/7P/K2R4 w - -", Stipulation::Win);
        assert_eq!(report.verdict, Soundness::Sound, "{report:?}");
        assert_eq!(report.keys, ["Rxd8+"]);
        assert!(!report.proved);
        let [
            Statement::Found(Finding::JudgedBest {
                depth: 10,
                best,
                next,
            }),
        ] = &report.message[..]
        else {
            panic!("{:?}", report.message);
        };
        let key = Line::from("Rxd8+");
        assert!(
            matches!(best, Stands::MoveStandsAt { line, value } if *line == key && value.centipawns >= 200)
        );
        assert!(
            matches!(next, Stands::MoveStandsAt { line, value } if *line != key && value.centipawns <= 100)
        );
    }

    #[test]
    fn several_wins_are_all_listed() {
        let report = report("7k/8/8/8/8/8/4Q3/K2R4 w - -", Stipulation::Win);
        assert_eq!(report.verdict, Soundness::SeveralKeys);
        assert!(report.keys.len() > 10, "{:?}", report.keys);
    }

    /// The two best are judged, and then the budget ends: the list says that it may lack some.
    #[test]
    fn a_list_of_wins_that_was_cut_short_says_so() {
        let fen = b"7k/8/8/8/8/8/4Q3/K2R4 w - -";
        let mut entry = read::read_file("t", fen).remove(0).expect("readable");
        entry.stipulation = Some(Stipulation::Win);
        let options = CheckOptions {
            depth: 10,
            ..CheckOptions::default()
        };
        let judged = search::search(&entry.position, 10, 2, &Budget::unlimited());
        let budget = Budget::unlimited().nodes(judged.nodes);
        let report = check::check(&entry, &options, &budget);
        assert_eq!(report.verdict, Soundness::SeveralKeys, "{report:?}");
        assert_eq!(report.keys.len(), 2);
        let keys = written::list(&report.keys);
        let task = Task::Win;
        let depth = report.depth.expect("judged");
        let told = [
            Finding::JudgedSeveral { depth, task, keys },
            Finding::MayBeMore,
        ];
        assert_eq!(report.message, told.map(Statement::from));
    }

    #[test]
    fn no_win_is_unsound_and_a_win_is_no_draw() {
        assert_eq!(
            report("4k3/4p3/8/8/8/8/4P3/4K3 w - -", Stipulation::Win).verdict,
            Soundness::Unsound
        );
        let report = report("3q3k/7p/8/8/8/8/7P/K2R4 w - -", Stipulation::Draw);
        assert_eq!(report.verdict, Soundness::Unsound);
        let [Statement::Found(Finding::JudgedBetter { depth: 10, best })] = &report.message[..]
        else {
            panic!("{:?}", report.message);
        };
        assert!(matches!(best, Stands::MoveStandsAt { line, .. } if *line == "Rxd8+".into()));
    }

    #[test]
    fn a_perpetual_is_the_only_draw() {
        // Composed for this test: White is far behind, and draws by checks from d8 and g5.
        let report = report("6k1/5p1p/8/8/8/8/qr4PP/3Q3K w - -", Stipulation::Draw);
        assert_eq!(
            (report.verdict, &report.keys[..]),
            (Soundness::Sound, &["Qd8+".to_owned()][..]),
            "{report:?}"
        );
    }

    /// Knows that a rook wins against a bare king, as every table does.
    #[derive(Debug)]
    struct RookWins;

    impl super::super::Endgames for RookWins {
        fn most_men(&self) -> usize {
            3
        }

        fn known(&self, position: &Chess) -> Option<Known> {
            let board = position.board();
            let rook_at_risk = position.legal_moves().iter().any(|mv| mv.is_capture());
            Some(match (board.rooks() & position.us()).any() {
                true => Known::Win,
                false if rook_at_risk => Known::Draw,
                false => Known::Loss,
            })
        }
    }

    #[test]
    fn tables_are_exact() {
        let mut entry = read::read_file("t", b"8/8/8/8/8/2k5/1R6/K7 w - -")
            .remove(0)
            .expect("readable");
        entry.stipulation = Some(Stipulation::Win);
        let options = CheckOptions {
            endgames: Some(std::sync::Arc::new(RookWins)),
            ..CheckOptions::default()
        };
        let report = check::check(&entry, &options, &Budget::unlimited());
        assert!(report.proved && report.depth.is_none());
        assert_eq!(report.verdict, Soundness::SeveralKeys, "{report:?}");
        assert!(
            !report.keys.contains(&"Rb3+".to_owned()),
            "the king takes it: {:?}",
            report.keys
        );
        let task = Task::Win;
        let keys = written::list(&report.keys);
        let told = Statement::from(Finding::TablesSeveral { task, keys });
        assert_eq!(report.message, [told]);
        entry.stipulation = Some(Stipulation::Draw);
        let report = check::check(&entry, &options, &Budget::unlimited());
        assert_eq!(report.verdict, Soundness::Unsound);
        assert_eq!(report.message, [Statement::from(Finding::TablesBetter)]);
    }

    #[test]
    fn too_little_work_is_undecided() {
        let entry = read::read_file("t", b"3q3k/7p/8/8/8/8/7P/K2R4 w - - bm Rxd8+;")
            .remove(0)
            .expect("readable");
        let report = check::check(
            &entry,
            &CheckOptions::default(),
            &Budget::unlimited().nodes(1),
        );
        assert_eq!(report.verdict, Soundness::Undecided);
    }
}
