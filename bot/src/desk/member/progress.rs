//! A member's own view: how they stand, and the board as their line has left it.

use std::collections::BTreeMap;

use sealed_move_store::{AttemptState, Content};
use shakmaty::Position as _;

use super::MemberDesk;
use crate::chess::line::numbered;
use crate::desk::{
    Kind, OpenAt, OpenNow, OwnState, Person, Picture, Place, PostId, Progress, SummaryTopic,
    content::{self, Held, problem_at},
    convert,
    error::Done,
    handle::{group_at, post_of},
    posting::latest_open,
    refusal::Lacking,
};

impl MemberDesk<'_> {
    /// The member's own standing: the open post's first, then all posts they took part in, open ones
    /// included, by topic.
    pub async fn progress(self, place: &Place, person: &Person) -> Done<Progress> {
        let now = self.desk.now();
        let (place, user) = (place.clone(), person.user.clone());
        self.desk
            .read(move |db| {
                let group = group_at(db, &place)?;
                let member = db.member_by_user(group.id, &user)?.map(|member| member.id);
                let mut progress = Progress {
                    open: None,
                    line: String::new(),
                    topics: Vec::new(),
                    points: 0.0,
                };

                if let Some(post) = latest_open(db, &group, now)? {
                    let attempt = match member {
                        Some(member) => db.attempt(post.id, member)?,
                        None => None,
                    };
                    let kind = Kind::of(&post.content);
                    let at = match &kind {
                        Kind::Problem { .. } => Some(OpenAt::Problem {
                            state: attempt.as_ref().map(|attempt| match attempt.state {
                                AttemptState::Playing => OwnState::Playing,
                                AttemptState::Solved => OwnState::Solved,
                                AttemptState::GivenUp => OwnState::GivenUp,
                            }),
                            wrong: attempt.as_ref().map_or(0, |attempt| attempt.wrong),
                        }),
                        Kind::Question => Some(OpenAt::Question {
                            answered: attempt.is_some(),
                        }),
                        Kind::Words => None,
                    };
                    progress.open = at.map(|at| OpenNow {
                        number: post.number,
                        at,
                        closes_at: post.closes_at,
                    });
                    if let (Some(attempt), Held::Problem(posed)) =
                        (attempt, content::held(db, &post)?)
                    {
                        progress.line = numbered(posed.board.turn(), 1, &attempt.line);
                    }
                }

                let mut topics: BTreeMap<Option<String>, SummaryTopic> = BTreeMap::new();
                let attempts = match member {
                    Some(member) => db.attempts_by_member(member)?,
                    None => Vec::new(),
                };
                for attempt in attempts {
                    let Some(post) = db.post(attempt.post_id)? else {
                        continue;
                    };
                    let row = topics.entry(post.topic.clone()).or_insert(SummaryTopic {
                        topic: post.topic.clone(),
                        posts: 0,
                        tried: 0,
                        solved: 0,
                        first_try: 0,
                        questions: 0,
                        answered: 0,
                    });
                    match post.content {
                        Content::Problem { .. } => {
                            row.posts += 1;
                            row.tried += 1;
                        }
                        Content::Question { .. } => {
                            row.questions += 1;
                            row.answered += 1;
                        }
                        Content::Words(_) => {}
                    }
                    row.solved += usize::from(attempt.state == AttemptState::Solved);
                    row.first_try += usize::from(attempt.first_try);
                }
                progress.topics = topics.into_values().collect();
                if let Some(member) = member {
                    progress.points = db.points_of_member(group.id, member)?;
                }
                Ok(progress)
            })
            .await
    }

    /// The board as this member's line stands.
    pub async fn my_board(self, place: &Place, person: &Person, post: PostId) -> Done<Picture> {
        let (place, user) = (place.clone(), person.user.clone());
        let (settings, posed, line) = self
            .desk
            .read(move |db| {
                let group = group_at(db, &place)?;
                let post = post_of(db, &group, post)?;
                let line = match db.member_by_user(group.id, &user)? {
                    Some(member) => db.attempt(post.id, member.id)?.map(|attempt| attempt.line),
                    None => None,
                };
                let posed = problem_at(db, &post, Lacking::Board)?;
                Ok((
                    convert::kept_settings(&group.settings)?,
                    posed,
                    line.unwrap_or_default(),
                ))
            })
            .await?;
        let language = settings.language.tag();
        self.desk
            .draw_after(&posed, &line, &settings, language)
            .await
    }
}
