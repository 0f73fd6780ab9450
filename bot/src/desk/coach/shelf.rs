//! Kept positions in the coach's hands: those that wait in no week, a report, a diagram, a topic.

use sealed_move_store::Position;

use super::{CoachDesk, same};
use crate::desk::{
    CheckedPosition, CoachWords, Person, Picture, Place, PositionId, TopicCheck, TopicName,
    TopicOn,
    checking::report,
    convert,
    drawing::board_of,
    error::{Done, bad_request},
    handle::{coached, position_of},
    queue::waits_as,
    refusal::Refusal,
    topic_check,
};

impl CoachDesk<'_> {
    /// Checked positions that are in no week and were never posted, the latest first, at most `most`,
    /// without diagrams: see [`CoachDesk::diagram_of`]. Coaches only.
    pub async fn shelf(
        self,
        place: &Place,
        coach: &Person,
        most: usize,
    ) -> Done<Vec<CheckedPosition>> {
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .read(move |db| {
                let group = coached(db, &place, &coach)?;
                let queued: Vec<PositionId> =
                    db.queue(group.id)?.iter().filter_map(waits_as).collect();
                let mut out = Vec::new();
                for position in db.positions(group.id)? {
                    if out.len() == most {
                        break;
                    }
                    if !queued.contains(&position.id) && !db.was_posted(position.id)? {
                        out.push(laid_out(position, None)?);
                    }
                }
                Ok(out)
            })
            .await
    }

    /// A kept position with its report and diagram. Coaches only.
    pub async fn checked(
        self,
        place: &Place,
        coach: &Person,
        position: PositionId,
    ) -> Done<CheckedPosition> {
        let (at, by) = (place.clone(), coach.clone());
        let (group, position, posted) = self
            .desk
            .read(move |db| {
                let group = coached(db, &at, &by)?;
                let position = position_of(db, &group, position)?;
                let posted = same::posted_before(db, group.id, &position.fen)?;
                Ok((group, position, posted))
            })
            .await?;
        let settings = convert::kept_settings(&group.settings)?;
        let picture = match board_of(&position.fen) {
            Some(board) => Some(self.desk.draw_plain(board, &settings).await?),
            None => None,
        };
        Ok(CheckedPosition {
            posted,
            ..laid_out(position, picture)?
        })
    }

    /// The diagram of a kept position, as members would see it. Coaches only.
    pub async fn diagram_of(
        self,
        place: &Place,
        coach: &Person,
        position: PositionId,
    ) -> Done<Picture> {
        match self.checked(place, coach, position).await?.picture {
            Some(picture) => Ok(picture),
            None => bad_request(Refusal::CannotBeDrawn),
        }
    }

    /// Sets a position's topic (made when new), and tells how the position stands to it; `None` takes it away.
    /// Coaches only.
    pub async fn set_topic(
        self,
        place: &Place,
        coach: &Person,
        position: PositionId,
        topic: Option<TopicName>,
    ) -> Done<Option<TopicCheck>> {
        let (place, coach) = (place.clone(), coach.clone());
        self.desk
            .write(move |tx| {
                let group = coached(tx, &place, &coach)?;
                let position = position_of(tx, &group, position)?;
                let id = match &topic {
                    Some(topic) => Some(topic.in_group(tx, group.id)?),
                    None => None,
                };
                tx.set_position_topic(position.id, id)?;
                Ok(match &topic {
                    Some(topic) => {
                        let report = report(&position.check.report)?;
                        Some(topic_check(&report, topic.as_str(), TopicOn::MainLine))
                    }
                    None => None,
                })
            })
            .await
    }
}

pub(super) fn laid_out(position: Position, picture: Option<Picture>) -> Done<CheckedPosition> {
    Ok(CheckedPosition {
        position: Some(position.id),
        words: CoachWords::kept(&position)?,
        report: report(&position.check.report)?,
        topic: position.topic,
        further_topics: position.further_topics,
        same: None,
        posted: None,
        fresh: None,
        picture,
    })
}
