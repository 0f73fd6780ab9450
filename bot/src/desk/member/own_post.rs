//! A member's own sheet of one post: where they stand, what the next hint takes, and the board.

use sealed_move_store::AttemptState;

use super::MemberDesk;
use crate::chess::judge::HINT_STEPS;
use crate::desk::{
    Kind, MemberId, Own, OwnPost, OwnState, Person, Place, PostId, attempt,
    content::problem_at,
    convert,
    error::Done,
    handle::{group_at, post_of},
    posting::takes_replies,
    refusal::{Lacking, LocalTime},
    replies::over,
    said::Said,
    telling::{Told, next_hint},
    tongue,
};

impl MemberDesk<'_> {
    /// Where this member stands at a post, whatever it holds.
    ///
    /// # Errors
    /// When there is no such post.
    pub async fn own(self, place: &Place, person: &Person, post: PostId) -> Done<Own> {
        Ok(match self.desk.kind(place, post).await? {
            Kind::Problem { .. } => {
                Own::Problem(Box::new(self.own_post(place, person, post).await?))
            }
            Kind::Question => Own::Question(Box::new(self.own_answer(place, person, post).await?)),
            Kind::Words => Own::Words,
        })
    }

    /// Where this member stands at a post that is a problem.
    pub async fn own_post(self, place: &Place, person: &Person, post: PostId) -> Done<OwnPost> {
        let now = self.desk.now();
        let (place, by) = (place.clone(), person.clone());
        let (own, posed, line, settings, language) = self
            .desk
            .read(move |db| {
                let group = group_at(db, &place)?;
                let settings = convert::kept_settings(&group.settings)?;
                let post = post_of(db, &group, post)?;
                let posed = problem_at(db, &post, Lacking::Hints)?;
                let language = tongue::of_person(db, &group, &by)?;
                let member = db
                    .member_by_user(group.id, &by.user)?
                    .map(|member| member.id);
                // Nobody has this id, so that a visitor has the work of who did nothing.
                let member = member.unwrap_or(MemberId::of(0));
                let work = attempt::work(db, &post, member)?;
                let price = next_hint(&work);
                let live = takes_replies(&post, now) && !over(work.state());
                let line = work
                    .attempt
                    .as_ref()
                    .map_or_else(Vec::new, |attempt| attempt.line.clone());
                let own = OwnPost {
                    state: work.state().map(|state| match state {
                        AttemptState::Playing => OwnState::Playing,
                        AttemptState::Solved => OwnState::Solved,
                        AttemptState::GivenUp => OwnState::GivenUp,
                    }),
                    points: work.points(),
                    closes_at: post.closes_at,
                    ended: match work.state() {
                        Some(AttemptState::Solved) => Said::new(&language).and(Told::YouSolved {
                            points: work.points().into(),
                        }),
                        Some(AttemptState::GivenUp) => Said::new(&language).and(Told::YouGaveUp {
                            at: LocalTime::at(post.closes_at, settings.zone),
                        }),
                        Some(AttemptState::Playing) | None => Said::default(),
                    },
                    hint_price: match live {
                        true => price.sentence_in(&language),
                        false => Said::default(),
                    },
                    hint_label: match live {
                        true => price.label_in(&language),
                        false => Said::default(),
                    },
                    hint_costs: live && price.costs,
                    more_hints: live && work.next_step() <= HINT_STEPS,
                    live,
                    board: None,
                };
                Ok((own, posed, line, settings, language))
            })
            .await?;
        Ok(OwnPost {
            board: match line.is_empty() {
                true => None,
                false => {
                    let language = language.as_str();
                    self.desk
                        .draw_after_if_playable(&posed, &line, &settings, language)
                        .await?
                }
            },
            ..own
        })
    }
}
