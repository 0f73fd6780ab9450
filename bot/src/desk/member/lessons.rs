//! Lessons as members step through them, after their reveals.

use super::MemberDesk;
use crate::{
    desk::{
        LessonId, LessonListed, LessonWalk, PartAt, Picture, Place, convert,
        error::{Done, not_found},
        handle::group_at,
        lesson_walk::{listed, told},
        refusal::Refusal,
    },
    diagram::Diagram,
};

/// How long laying a lesson out may take, in seconds.
const LAYING_OUT: f64 = 10.0;

impl MemberDesk<'_> {
    /// The group's lessons of which something is revealed, the latest first.
    ///
    /// # Errors
    /// When there is no group here.
    pub async fn lessons(self, place: &Place) -> Done<Vec<LessonListed>> {
        let now = self.desk.now();
        let place = place.clone();
        self.desk
            .read(move |db| listed(db, &group_at(db, &place)?, now))
            .await
    }

    /// What is revealed of a lesson, to be stepped through.
    ///
    /// # Errors
    /// When there is no such lesson, or nothing of it is revealed.
    pub async fn lesson_walk(self, place: &Place, lesson: LessonId) -> Done<LessonWalk> {
        let now = self.desk.now();
        let place = place.clone();
        let told = self
            .desk
            .read(move |db| told(db, &group_at(db, &place)?, lesson, now))
            .await?;
        self.desk
            .inner
            .checks
            .run("laying a lesson out", LAYING_OUT, move |_| told.walk())
            .await
    }

    /// The board at a place of a lesson, drawn in the group's style; `language` is that of its words.
    ///
    /// # Errors
    /// As [`MemberDesk::lesson_walk`], and when there is no such place.
    pub async fn lesson_board(
        self,
        place: &Place,
        lesson: LessonId,
        (part, at): (PartAt, usize),
        language: &str,
    ) -> Done<Picture> {
        let walk = self.lesson_walk(place, lesson).await?;
        let found = walk.parts.iter().find(|one| one.at == part);
        let Some(board) = found.and_then(|part| part.places.get(at)) else {
            return not_found(Refusal::NotHereAnyMore);
        };
        let group = self.desk.group(place).await?;
        let settings = convert::kept_settings(&group.settings)?;
        let diagram = Diagram {
            style: settings.style,
            ..board.board().clone()
        };
        self.desk.draw(diagram, language).await
    }
}
