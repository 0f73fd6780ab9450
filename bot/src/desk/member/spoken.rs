//! A move that is talked about after the reveal, followed on a small board. Only posts that are revealed are read
//! from: of a sealed one nothing is ever shown.

use sealed_move_store::{Content, Db, Group, Post, PostState};
use shakmaty::{Chess, Move, Position as _};

use super::MemberDesk;
use crate::{
    chess::{
        Language,
        line::{moves, numbered},
        reply::{Spoken, spoken_of},
        walk::Walk,
    },
    desk::{
        CoachWords, Kind, Person, Picture, Place, PostId, Settings,
        checking::report,
        convert,
        drawing::board_of,
        error::{Done, bad_request, not_found},
        handle::{group_at, position_of, post_of},
        problems::Posed,
        refusal::Refusal,
        reveal,
        text::{self, LONGEST_REPLY},
    },
    diagram::{Diagram, reveal::landing},
};

/// How many revealed posts are tried where none is named, the latest first.
const POSTS_BACK: usize = 10;

/// Width of the small board in pixels.
const BOARD: u32 = 360;

/// How many lines of one post are followed.
const MOST_LINES: usize = 60;

/// How long finding moves may take, in seconds.
const FINDING: f64 = 10.0;

/// What somebody wrote, on a board.
#[derive(Clone)]
pub struct SpokenBoard {
    /// The post whose position it begins at.
    pub post: PostId,
    /// Its number.
    pub number: i64,
    /// The moves from the position to what was written, numbered; may be empty.
    pub before: String,
    /// The moves that were written, numbered.
    pub line: String,
    /// The board after them.
    pub picture: Picture,
}

/// A revealed post with a board.
struct Candidate {
    post: PostId,
    number: i64,
    board: Chess,
    /// Lines that were shown at its reveal, each as printed.
    solution: Vec<String>,
    notes: Vec<crate::chess::comments::Note>,
    last: Option<Vec<String>>,
}

impl MemberDesk<'_> {
    /// Follows the moves in a line of talk on a small board; see [`MemberDesk::board_of_words`].
    ///
    /// # Errors
    /// As that, and when there is no such line in sight.
    pub async fn board_of_talk(
        self,
        place: &Place,
        person: &Person,
        line: i64,
        post: Option<PostId>,
        language: &str,
    ) -> Done<SpokenBoard> {
        let at = place.clone();
        let text = self
            .desk
            .read(move |db| {
                let group = group_at(db, &at)?;
                let line = db.talk_line(line)?.filter(|line| line.gone.is_none());
                let member = match &line {
                    Some(line) => db.member(line.member_id)?,
                    None => None,
                };
                match (line, member) {
                    (Some(line), Some(member)) if member.group_id == group.id => Ok(line.text),
                    _ => not_found(Refusal::NoMessage),
                }
            })
            .await?;
        self.board_of_words(place, person, &text, post, language)
            .await
    }

    /// Follows the moves that somebody wrote on a small board: from the position of a revealed post, from anywhere
    /// along its lines, or on from the line that this person was shown last. Where no post is named, of the latest
    /// revealed ones the first that fits. `language` is that of the picture's words.
    ///
    /// # Errors
    /// When the post is not revealed or has no position, no move is written, or one cannot be played there: which
    /// one it says.
    pub async fn board_of_words(
        self,
        place: &Place,
        person: &Person,
        text: &str,
        post: Option<PostId>,
        language: &str,
    ) -> Done<SpokenBoard> {
        let (text, _) = text::body(text, LONGEST_REPLY);
        let at = place.clone();
        let (settings, posts) = self
            .desk
            .read(move |db| {
                let group = group_at(db, &at)?;
                let settings = convert::kept_settings(&group.settings)?;
                Ok((settings, candidates(db, &group, post)?))
            })
            .await?;
        let user = person.user.clone();
        let last = |post| self.desk.inner.last_shown.of(post, &user);
        let posts: Vec<Candidate> = posts
            .into_iter()
            .map(|candidate| Candidate {
                last: last(candidate.post),
                ..candidate
            })
            .collect();
        let read_in = settings.language;
        let found = self
            .desk
            .inner
            .checks
            .run("finding moves in talk", FINDING, move |_| {
                first_that_fits(posts, &text, read_in)
            })
            .await?;
        let (candidate, before, line) = found?;
        let shown: Vec<String> = before.iter().chain(&line).cloned().collect();
        let picture = self.small_board(&candidate.board, &shown, &settings, language);
        let picture = picture.await?;
        let turn = candidate.board.turn();
        let number = u32::try_from(before.len() + usize::from(turn.is_black())).unwrap_or(0) / 2;
        let next = match before.len().is_multiple_of(2) {
            true => turn,
            false => !turn,
        };
        self.desk
            .inner
            .last_shown
            .note(candidate.post, &person.user, shown);
        Ok(SpokenBoard {
            post: candidate.post,
            number: candidate.number,
            before: numbered(turn, 1, &before),
            line: numbered(next, number + 1, &line),
            picture,
        })
    }

    async fn small_board(
        self,
        start: &Chess,
        line: &[String],
        settings: &Settings,
        language: &str,
    ) -> Done<Picture> {
        let played = moves(start, line);
        let mut board = start.clone();
        for mv in &played {
            board.play_unchecked(*mv);
        }
        let last = played.last();
        let diagram = Diagram {
            style: settings.style,
            bottom: start.turn(),
            last_move: last.and_then(|mv| Some((mv.from()?, landing(*mv)))),
            size: BOARD,
            ..Diagram::of(board)
        };
        self.desk.draw(diagram, language).await
    }
}

/// The revealed posts whose positions may be meant.
fn candidates(db: &Db<'_>, group: &Group, post: Option<PostId>) -> Done<Vec<Candidate>> {
    let posts = match post {
        Some(post) => {
            let post = post_of(db, group, post)?;
            if post.state != PostState::Closed {
                return bad_request(match Kind::of(&post.content) {
                    Kind::Problem { .. } => Refusal::SealedStill {
                        number: post.number,
                    },
                    Kind::Question | Kind::Words => Refusal::QuestionOpenStill {
                        number: post.number,
                    },
                });
            }
            vec![post]
        }
        None => {
            let latest = db.latest_posts(group.id, POSTS_BACK * 3)?.into_iter();
            latest
                .filter(|post| post.state == PostState::Closed)
                .collect()
        }
    };
    let named = post.is_some();
    let mut all = Vec::new();
    for post in posts {
        match candidate(db, group, &post)? {
            Some(candidate) => all.push(candidate),
            None if named => {
                return bad_request(Refusal::NoBoardThere {
                    number: post.number,
                });
            }
            None => {}
        }
        if all.len() >= POSTS_BACK {
            break;
        }
    }
    match all.is_empty() {
        true => bad_request(Refusal::NothingRevealedYet),
        false => Ok(all),
    }
}

fn candidate(db: &Db<'_>, group: &Group, post: &Post) -> Done<Option<Candidate>> {
    let (board, solution, notes) = match &post.content {
        Content::Problem { position_id, .. } => {
            let posed = Posed::of(position_of(db, group, *position_id)?)?;
            let report = report(&posed.position.check.report)?;
            let solution = reveal::solution(posed.board.turn(), &report);
            let notes = CoachWords::kept(&posed.position)?.notes;
            (posed.board, solution, notes)
        }
        Content::Question { asked: written, .. } | Content::Words(written) => {
            let Some(board) = written.fen.as_deref().and_then(board_of) else {
                return Ok(None);
            };
            (board, Vec::new(), Vec::new())
        }
    };
    Ok(Some(Candidate {
        post: post.id,
        number: post.number,
        board,
        solution,
        notes,
        last: None,
    }))
}

impl Candidate {
    /// The lines that moves may go on from: the one shown last, then those of the reveal.
    fn lines(&self) -> Vec<Vec<Move>> {
        let mut walk = Walk::new(&self.board, 1);
        for line in &self.solution {
            walk.add_line(0, line);
        }
        walk.add_notes(0, &self.notes);
        let last = self.last.as_deref().map(|last| moves(&self.board, last));
        let mut lines: Vec<Vec<Move>> = last.into_iter().collect();
        let ends = walk.places().iter().enumerate();
        for (at, _) in ends.filter(|(at, place)| *at > 0 && place.next.is_empty()) {
            let mut line = Vec::new();
            let mut at = Some(at);
            while let Some(place) = at.map(|at| &walk.places()[at]) {
                line.extend(place.mv);
                at = place.before;
            }
            line.reverse();
            if lines.len() < MOST_LINES {
                lines.push(line);
            }
        }
        lines
    }
}

/// The post, the moves before and the moves that were written.
type Fits = (Candidate, Vec<String>, Vec<String>);

fn first_that_fits(posts: Vec<Candidate>, text: &str, language: Language) -> Done<Fits> {
    let mut missing = None;
    for candidate in posts {
        match spoken_of(&candidate.board, &candidate.lines(), text, language) {
            Spoken::Line { before, moves } => return Ok((candidate, before, moves)),
            Spoken::NotFound { written } => {
                missing = missing.or(Some((written, candidate.number)));
            }
            Spoken::Nothing => {}
        }
    }
    bad_request(match missing {
        Some((written, number)) => Refusal::MoveNotThere {
            written: text::name(&written).into(),
            number,
        },
        None => Refusal::NoMoveWritten,
    })
}
