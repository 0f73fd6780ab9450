//! The reveal: solution and variations, the final picture with guards and flights marked, the commonest
//! wrong move and its refutation, who solved it, and the leaderboard so far.

use sealed_move_store::{AttemptOf, AttemptState, Db, Group, Post, PostState, WrongFirst};
use shakmaty::{Chess, Color, Position as _, Square};

use super::{
    CoachWords, CommonWrong, Desk, Kind, LanguageTag, Leaderboard, Period, Place, PostId,
    PostSheet, Report, RevealSheet, Settings, Settled, Shown, ShownAnswer, Solution,
    answers::{counting, settled},
    cards,
    checking::report,
    content::{self, Held},
    convert,
    error::{Done, bad_request},
    examples,
    handle::{group_at, post_of},
    problems::Posed,
    refusal::Refusal,
    telling,
};
use crate::chess::{
    line::{moves, numbered},
    name::{self, Naming},
    scene::{Scene, SceneMark},
};
use crate::diagram::{
    Picture, Text,
    reveal::{Reveal, landing},
    text::{List, Pattern},
};

/// Width of the reveal's picture in pixels.
const PICTURE: u32 = 720;

impl Desk {
    /// The reveal of a closed post, or of one whose reveal is on its way; errs while replies count.
    pub async fn reveal(&self, place: &Place, post: PostId) -> Done<RevealSheet> {
        let at = place.clone();
        let post = self
            .read(move |db| {
                let group = group_at(db, &at)?;
                let post = post_of(db, &group, post)?;
                let kind = Kind::of(&post.content);
                if kind == Kind::Words {
                    return bad_request(Refusal::NothingToReveal {
                        number: post.number,
                    });
                }
                match post.state {
                    PostState::Closing | PostState::Closed => Ok(post),
                    PostState::Intended | PostState::Open => bad_request(match kind {
                        Kind::Problem { .. } => Refusal::SealedStill {
                            number: post.number,
                        },
                        Kind::Question | Kind::Words => Refusal::QuestionOpenStill {
                            number: post.number,
                        },
                    }),
                }
            })
            .await?;
        self.reveal_sheet(place, post).await
    }

    /// The sheet of a reveal.
    pub(super) async fn reveal_sheet(&self, place: &Place, post: Post) -> Done<RevealSheet> {
        let (at, of) = (place.clone(), post.clone());
        let (group, held, lesson, took_part) = self
            .read(move |db| {
                let (waiting, examples) = homework_of(db, &of)?;
                let took_part = TookPart {
                    attempts: db.attempts_at(of.id)?,
                    wrong: db.wrong_first_moves(of.id)?,
                    waiting,
                    examples,
                };
                Ok((
                    group_at(db, &at)?,
                    content::held(db, &of)?,
                    content::in_lesson(db, of.content_id)?,
                    took_part,
                ))
            })
            .await?;
        let settings = convert::kept_settings(&group.settings)?;
        let leaderboard = self
            .leaderboard(
                place,
                &Period {
                    topic: post.topic.clone(),
                    ..Period::default()
                },
            )
            .await?;
        let post = self.post_sheet(&settings, post, &held, lesson).await?;
        self.revealed(group, &held, post, took_part, leaderboard)
            .await
    }

    /// What closes a post: of one that was posted, or, with nobody who took part, of one that is not yet.
    pub(super) async fn revealed(
        &self,
        group: Group,
        held: &Held,
        post: PostSheet,
        took_part: TookPart,
        leaderboard: Leaderboard,
    ) -> Done<RevealSheet> {
        let settings = convert::kept_settings(&group.settings)?;
        let TookPart {
            attempts, wrong, ..
        } = took_part;
        let shows = match held {
            Held::Problem(posed) => {
                let solution = self
                    .solution(&settings, post.number, posed, &attempts, wrong)
                    .await?;
                Shown::Solution(Box::new(solution))
            }
            Held::Question(_, at_reveal) => Shown::Answered {
                at_reveal: at_reveal.clone(),
                answered: attempts.iter().map(|of| of.name.clone()).collect(),
                waiting: took_part.waiting,
                examples: took_part.examples,
            },
            Held::Words(_) => {
                return bad_request(Refusal::NothingToReveal {
                    number: post.number,
                });
            }
        };
        let patterns = match &shows {
            Shown::Solution(solution) => solution.patterns.clone(),
            Shown::Answered { .. } => Vec::new(),
        };
        let topic = post.topic.clone();
        let cards = self
            .read(move |db| cards::of_reveal(db, &group, &patterns, topic.as_deref()))
            .await?;
        Ok(RevealSheet {
            shows,
            cards,
            took_part: attempts.len(),
            leaderboard,
            post,
        })
    }

    /// The solution of a problem, with how it went.
    async fn solution(
        &self,
        settings: &Settings,
        number: i64,
        posed: &Posed,
        attempts: &[AttemptOf],
        wrong: Vec<WrongFirst>,
    ) -> Done<Solution> {
        let Posed {
            position, board, ..
        } = posed;
        let report = report(&position.check.report)?;

        let (end, naming) = self.final_picture(board, &main_line(&report)).await?;
        let solution = solution(board.turn(), &report);
        let patterns = naming.patterns.clone();
        let shown: Vec<Pattern> = naming
            .patterns
            .iter()
            .map(|pattern| Pattern {
                pattern: pattern.clone(),
            })
            .collect();
        let heading = match shown.is_empty() {
            true => Text::PictureHeading { number },
            false => Text::PictureHeadingPattern {
                number,
                patterns: List { list: shown },
            },
        };
        let drawing = Reveal {
            scene: Scene {
                position: end.position,
                last_move: end.last_move,
                marks: marks(&naming),
            },
            bottom: board.turn(),
            style: settings.style,
            size: PICTURE,
            heading: Some(heading),
            solution: solution.clone(),
        };
        Ok(Solution {
            solution,
            patterns,
            comment: position.words.at_reveal.clone(),
            notes: CoachWords::kept(position)?.notes,
            picture: self.draw_reveal(drawing, settings.language.tag()).await?,
            common_wrong: common_wrong(board.turn(), wrong, &report),
            solved: attempts
                .iter()
                .filter(|of| of.attempt.state == AttemptState::Solved)
                .map(|of| of.name.clone())
                .collect(),
        })
    }

    /// The end of a line and what is named there, off the async threads.
    async fn final_picture(&self, board: &Chess, line: &[String]) -> Done<(End, Naming)> {
        let (board, line) = (board.clone(), line.to_vec());
        self.inner
            .quick
            .run("naming a mate", 10.0, move |_| {
                let end = played(&board, &line);
                let naming = name::name(&end.position);
                (end, naming)
            })
            .await
    }

    /// Draws a reveal off the async threads.
    pub(super) async fn draw_reveal(&self, reveal: Reveal, language: &str) -> Done<Picture> {
        let tongue = self.tongue(language);
        Ok(self
            .inner
            .quick
            .run("drawing a reveal", 10.0, move |_| reveal.png(&tongue))
            .await??)
    }
}

/// How many answers to a question wait for the coach, and those that are shown.
fn homework_of(db: &Db<'_>, post: &Post) -> Done<(usize, Vec<ShownAnswer>)> {
    if Kind::of(&post.content) != Kind::Question {
        return Ok((0, Vec::new()));
    }
    let replies = db.replies_to(post.id)?;
    let waiting = replies
        .iter()
        .zip(counting(&replies, post))
        .filter(|(reply, counts)| *counts && settled(reply) == Settled::Unjudged);
    Ok((waiting.count(), examples::seen(db, post)?))
}

/// What members did at a post; nothing by default.
#[derive(Default)]
pub(super) struct TookPart {
    attempts: Vec<AttemptOf>,
    wrong: Vec<WrongFirst>,
    /// Of a question, how many answers have no mark.
    waiting: usize,
    /// Of a question, the answers that are shown.
    examples: Vec<ShownAnswer>,
}

/// A position reached by a line.
struct End {
    position: Chess,
    last_move: Option<(Square, Square)>,
}

/// Plays a line as far as it goes.
fn played(board: &Chess, line: &[String]) -> End {
    let mut end = End {
        position: board.clone(),
        last_move: None,
    };
    for mv in moves(board, line) {
        end.last_move = mv.from().map(|from| (from, landing(mv)));
        end.position.play_unchecked(mv);
    }
    end
}

/// The line that the final picture is of: of a win or a draw the coach's own, where it holds.
fn main_line(report: &Report) -> Vec<String> {
    let own = report.coach_lines.holding().into_iter().next();
    own.unwrap_or_else(|| report.line.clone())
}

/// Key and variations, a numbered line each, main line first; none where none was proved. Of a win or a
/// draw they are the coach's own lines that hold, for a search has one line only.
pub(super) fn solution(turn: Color, report: &Report) -> Vec<String> {
    let own = report.coach_lines.holding();
    if !own.is_empty() {
        return own.iter().map(|line| numbered(turn, 1, line)).collect();
    }
    if !report.variations.is_empty() {
        return report.variations.clone();
    }
    match report.line.is_empty() {
        true => Vec::new(),
        false => vec![numbered(turn, 1, &report.line)],
    }
}

/// What there is to see in the final picture: flights taken and blocked, and the pieces that take them.
fn marks(naming: &Naming) -> Vec<SceneMark> {
    if !naming.mate {
        return Vec::new();
    }
    let square = |name: &String| name.parse::<Square>().ok();
    let mut marks = Vec::new();
    for (flight, guards) in &naming.guards {
        let Some(flight) = square(flight) else {
            continue;
        };
        marks.push(SceneMark::GuardedFlight(flight));
        marks.extend(
            guards
                .iter()
                .filter_map(square)
                .map(|guard| SceneMark::Guard(guard, flight)),
        );
    }
    marks.extend(
        naming
            .blocked
            .iter()
            .filter_map(square)
            .map(SceneMark::BlockedFlight),
    );
    marks
}

/// So many members must have chosen a wrong move before it is shown to all: of one alone everybody could
/// find out who it was.
pub(super) const OFTEN: u32 = 2;

/// The commonest wrong first move, if it came often.
fn common_wrong(turn: Color, wrong: Vec<WrongFirst>, report: &Report) -> Option<CommonWrong> {
    // A move that a later check found to be a key is no example of a wrong one.
    let first = wrong
        .into_iter()
        .find(|wrong| wrong.members >= OFTEN && !report.keys.contains(&wrong.san))?;
    let number = match turn {
        Color::White => 1,
        Color::Black => 2,
    };
    Some(CommonWrong {
        refutation: numbered(!turn, number, &first.refutation),
        san: first.san,
        count: usize::try_from(first.members).unwrap_or(usize::MAX),
        why: telling::why(&LanguageTag::default(), first.facts.as_ref(), &first.why),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wrong(san: &str, members: u32, refutation: &[&str]) -> WrongFirst {
        WrongFirst {
            san: san.into(),
            members,
            refutation: refutation.iter().map(|s| (*s).to_owned()).collect(),
            facts: None,
            why: "the rook takes it".into(),
        }
    }

    fn report(keys: &[&str]) -> Report {
        serde_json::from_value(serde_json::json!({
            "id": "a", "fen": "", "stipulation": null, "verdict": "sound", "keys": keys, "line": [],
            "patterns": [], "proved": true, "nodes": 1, "seconds": 0.0, "message": ""
        }))
        .expect("a report")
    }

    #[test]
    fn the_final_picture_explains_every_flight() {
        // A back-rank mate of our own.
        let board = crate::chess::parse_fen("3R2k1/5ppp/8/8/8/8/8/6K1 b - - 0 1")
            .expect("a position")
            .position;
        let marks = marks(&name::name(&board));
        for mark in [
            SceneMark::GuardedFlight(Square::F8),
            SceneMark::GuardedFlight(Square::H8),
            SceneMark::Guard(Square::D8, Square::F8),
            SceneMark::BlockedFlight(Square::F7),
            SceneMark::BlockedFlight(Square::G7),
            SceneMark::BlockedFlight(Square::H7),
        ] {
            assert!(marks.contains(&mark), "{mark:?} of {marks:?}");
        }
        let quiet = crate::chess::parse_fen("6k1/8/8/8/8/8/8/6K1 w - - 0 1")
            .expect("a position")
            .position;
        assert!(super::marks(&name::name(&quiet)).is_empty());
    }

    #[test]
    fn refutations_are_numbered_from_the_answer_on() {
        let common = common_wrong(
            Color::White,
            vec![wrong("Rd7", 3, &["Rxd7", "Rxd7"])],
            &report(&["Rxd8+"]),
        );
        assert_eq!(
            common.map(|c| (c.san, c.count, c.refutation)),
            Some(("Rd7".into(), 3, "1...Rxd7 2.Rxd7".into()))
        );
        let black = common_wrong(Color::Black, vec![wrong("Rc2", 2, &["Kxc2"])], &report(&[]));
        assert_eq!(black.map(|c| c.refutation), Some("2.Kxc2".into()));
        let key = common_wrong(
            Color::White,
            vec![wrong("Rxd8+", 3, &[])],
            &report(&["Rxd8+"]),
        );
        assert_eq!(key, None);
    }

    #[test]
    fn a_wrong_move_of_one_member_alone_is_not_shown_to_all() {
        let only = common_wrong(Color::White, vec![wrong("Rd7", 1, &["Rxd7"])], &report(&[]));
        assert_eq!(only, None);
    }

    #[test]
    fn a_line_that_ends_in_castling_frames_where_the_king_lands() {
        let board = crate::chess::parse_fen("r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1")
            .expect("a position")
            .position;
        for (line, king) in [
            (vec!["O-O"], (Square::E1, Square::G1)),
            (vec!["O-O-O"], (Square::E1, Square::C1)),
            (vec!["O-O", "O-O-O"], (Square::E8, Square::C8)),
        ] {
            let line: Vec<String> = line.into_iter().map(Into::into).collect();
            assert_eq!(played(&board, &line).last_move, Some(king), "{line:?}");
        }
    }

    #[test]
    fn a_line_is_played_to_its_end_and_no_further() {
        let board = crate::chess::parse_fen("r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1")
            .expect("a position")
            .position;
        let line: Vec<String> = ["Rxd8+", "Rxd8", "Rxd8#", "nonsense"]
            .map(Into::into)
            .into();
        let end = played(&board, &line);
        assert!(end.position.is_checkmate());
        assert_eq!(end.last_move, Some((Square::D1, Square::D8)));
    }
}
