//! Lessons: a topic taught in steps, the parts of which are items of content.

use rusqlite::{Row, params};
use serde_json::Value;

use crate::{
    Content, ContentId, Db, GroupId, ItemId, LessonId, Moment, PostId, PostState, StoreError,
    TopicId, Tx, content, db::json, time,
};

/// A lesson to be kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewLesson {
    /// The group.
    pub group_id: GroupId,
    /// Its title, 1 to 100 characters; a group has no two of one title.
    pub title: String,
    /// Its topic.
    pub topic_id: Option<TopicId>,
    /// The file's name, as the coach gave it.
    pub source: String,
    /// Now.
    pub created_at: Moment,
}

/// A lesson.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lesson {
    /// Its id.
    pub id: LessonId,
    /// The group.
    pub group_id: GroupId,
    /// Its title.
    pub title: String,
    /// Its topic's name.
    pub topic: Option<String>,
    /// The file's name.
    pub source: String,
    /// When it was kept.
    pub created_at: Moment,
    /// How many steps it has.
    pub steps: i64,
}

/// A step of a lesson, as it was written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LessonStep {
    /// Its place in the lesson, from 1.
    pub step: i64,
    /// What was written.
    pub game: String,
    /// Its line in the coach's file, from 1.
    pub line: i64,
    /// Whether the topic is meant to fail in it.
    pub contrast: bool,
}

/// A part of a step.
#[derive(Clone, Debug, PartialEq)]
pub struct LessonPart {
    /// The step's place in the lesson, from 1.
    pub step: i64,
    /// Its place in the step, from 1.
    pub part: i64,
    /// The item of content.
    pub content_id: ContentId,
    /// What that is.
    pub content: Content,
    /// What leads up to it, a list.
    pub lead: Value,
    /// The queue entry, where it waits in the week.
    pub item: Option<ItemId>,
    /// Its latest post.
    pub post: Option<PartPost>,
}

/// The post of a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PartPost {
    /// The post.
    pub id: PostId,
    /// Its number within the group.
    pub number: i64,
    /// Where it stands.
    pub state: PostState,
}

/// Where an item of content stands in a lesson.
#[derive(Clone, Debug, PartialEq)]
pub struct InLesson {
    /// The lesson.
    pub lesson_id: LessonId,
    /// Its title.
    pub title: String,
    /// The step's place, from 1.
    pub step: i64,
    /// Its place in the step, from 1.
    pub part: i64,
    /// How many steps the lesson has.
    pub steps: i64,
    /// What leads up to the item, a list.
    pub lead: Value,
}

/// What an item of the queue waits for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Awaited {
    /// Another that is in the queue itself.
    Queued(ItemId),
    /// A post that is not revealed yet, with when its replies close.
    Post(PostId, Moment),
}

const SELECT: &str = "SELECT l.*, t.name AS topic,
        (SELECT count(*) FROM lesson_steps s WHERE s.lesson_id = l.id) AS steps
     FROM lessons l LEFT JOIN topics t ON t.id = l.topic_id";

fn read(row: &Row<'_>) -> rusqlite::Result<Lesson> {
    Ok(Lesson {
        id: row.get("id")?,
        group_id: row.get("group_id")?,
        title: row.get("title")?,
        topic: row.get("topic")?,
        source: row.get("source")?,
        created_at: time::get(row, "created_at")?,
        steps: row.get("steps")?,
    })
}

fn part(row: &Row<'_>) -> rusqlite::Result<LessonPart> {
    let post = match row.get::<_, Option<PostId>>("post")? {
        Some(id) => Some(PartPost {
            id,
            number: row.get("number")?,
            state: row.get("state")?,
        }),
        None => None,
    };
    Ok(LessonPart {
        step: row.get("step")?,
        part: row.get("part")?,
        content_id: row.get("content_id")?,
        content: content::read(row)?,
        lead: json(row, "lead")?,
        item: row.get("item")?,
        post,
    })
}

impl Db<'_> {
    /// A group's lessons, the latest first.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn lessons(&self, group: GroupId) -> Result<Vec<Lesson>, StoreError> {
        self.all(
            &format!("{SELECT} WHERE l.group_id = ?1 ORDER BY l.id DESC"),
            [group],
            read,
        )
    }

    /// A lesson by id.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn lesson(&self, id: LessonId) -> Result<Option<Lesson>, StoreError> {
        self.maybe_one(&format!("{SELECT} WHERE l.id = ?1"), [id], read)
    }

    /// A group's lesson by title, whatever its case.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn lesson_called(&self, group: GroupId, title: &str) -> Result<Option<Lesson>, StoreError> {
        self.maybe_one(
            &format!("{SELECT} WHERE l.group_id = ?1 AND l.title = ?2"),
            params![group, title],
            read,
        )
    }

    /// The steps of a lesson in order.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn lesson_steps(&self, lesson: LessonId) -> Result<Vec<LessonStep>, StoreError> {
        self.all(
            "SELECT step, game, line, contrast FROM lesson_steps WHERE lesson_id = ?1 ORDER BY step",
            [lesson],
            |row| {
                Ok(LessonStep {
                    step: row.get("step")?,
                    game: row.get("game")?,
                    line: row.get("line")?,
                    contrast: row.get("contrast")?,
                })
            },
        )
    }

    /// The parts of a lesson in order, each with where it waits or was posted last.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn lesson_parts(&self, lesson: LessonId) -> Result<Vec<LessonPart>, StoreError> {
        self.all(
            &format!(
                "SELECT l.step, l.part, l.content_id, l.lead, q.id AS item, o.id AS post, o.number, o.state, {}
                 FROM lesson_parts l JOIN contents c ON c.id = l.content_id {}
                 LEFT JOIN queue q ON q.content_id = c.id
                 LEFT JOIN posts o ON o.id =
                     (SELECT id FROM posts WHERE content_id = c.id ORDER BY number DESC LIMIT 1)
                 WHERE l.lesson_id = ?1 ORDER BY l.step, l.part",
                content::COLUMNS,
                content::JOINS
            ),
            [lesson],
            part,
        )
    }

    /// What waits for the reveal of what, among the parts of a lesson.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn lesson_waits(
        &self,
        lesson: LessonId,
    ) -> Result<Vec<(ContentId, ContentId)>, StoreError> {
        self.all(
            "SELECT w.content_id, w.for_id FROM lesson_parts l
             JOIN content_waits w ON w.content_id = l.content_id
             JOIN lesson_parts o ON o.lesson_id = l.lesson_id AND o.content_id = w.for_id
             WHERE l.lesson_id = ?1 ORDER BY l.step, l.part, o.step, o.part",
            [lesson],
            |row| Ok((row.get(0)?, row.get(1)?)),
        )
    }

    /// Where an item of content stands in a lesson; of several the latest.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn in_lesson(&self, content: ContentId) -> Result<Option<InLesson>, StoreError> {
        self.maybe_one(
            "SELECT p.lesson_id, p.step, p.part, p.lead, l.title,
                    (SELECT count(*) FROM lesson_steps s WHERE s.lesson_id = l.id) AS steps
             FROM lesson_parts p JOIN lessons l ON l.id = p.lesson_id
             WHERE p.content_id = ?1 ORDER BY p.lesson_id DESC LIMIT 1",
            [content],
            |row| {
                Ok(InLesson {
                    lesson_id: row.get("lesson_id")?,
                    title: row.get("title")?,
                    step: row.get("step")?,
                    part: row.get("part")?,
                    steps: row.get("steps")?,
                    lead: json(row, "lead")?,
                })
            },
        )
    }

    /// What the entries of a group's queue wait for, as long as that is before the group or still to come.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn awaited(&self, group: GroupId) -> Result<Vec<(ItemId, Awaited)>, StoreError> {
        self.all(
            "SELECT q.id AS item, other.id AS queued, o.id AS post, o.closes_at
             FROM queue q JOIN content_waits w ON w.content_id = q.content_id
             LEFT JOIN queue other ON other.content_id = w.for_id
             LEFT JOIN posts o ON o.content_id = w.for_id AND o.state <> 'closed'
             WHERE q.group_id = ?1 AND (other.id IS NOT NULL OR o.id IS NOT NULL)
             ORDER BY q.rank, w.for_id, o.number",
            [group],
            |row| {
                let item = row.get("item")?;
                Ok((
                    item,
                    match row.get::<_, Option<PostId>>("post")? {
                        Some(post) => Awaited::Post(post, time::get(row, "closes_at")?),
                        None => Awaited::Queued(row.get("queued")?),
                    },
                ))
            },
        )
    }
}

impl Tx<'_> {
    /// Keeps a lesson without steps, and returns its id.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn insert_lesson(&self, new: &NewLesson) -> Result<LessonId, StoreError> {
        self.insert(
            "INSERT INTO lessons (group_id, title, topic_id, source, created_at)
             VALUES (?1, ?2, ?3, ?4, ?5)",
            params![
                new.group_id,
                new.title,
                new.topic_id,
                new.source,
                time::text(new.created_at)
            ],
        )
    }

    /// Adds a step to a lesson.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn add_lesson_step(&self, lesson: LessonId, step: &LessonStep) -> Result<(), StoreError> {
        self.run(
            "INSERT INTO lesson_steps (lesson_id, step, game, line, contrast)
             VALUES (?1, ?2, ?3, ?4, ?5)",
            params![lesson, step.step, step.game, step.line, step.contrast],
        )?;
        Ok(())
    }

    /// Makes an item of content a part of a step. One that is a part of the lesson already stays where it is.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn add_lesson_part(
        &self,
        lesson: LessonId,
        step: i64,
        part: i64,
        content: ContentId,
        lead: &Value,
    ) -> Result<(), StoreError> {
        self.run(
            "INSERT INTO lesson_parts (lesson_id, group_id, step, part, content_id, lead)
             SELECT id, group_id, ?2, ?3, ?4, ?5 FROM lessons WHERE id = ?1
             ON CONFLICT (lesson_id, content_id) DO NOTHING",
            params![lesson, step, part, content, lead.to_string()],
        )?;
        Ok(())
    }

    /// Lets an item of content wait until another is revealed.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn let_content_wait(
        &self,
        content: ContentId,
        for_other: ContentId,
    ) -> Result<(), StoreError> {
        self.run(
            "INSERT INTO content_waits (content_id, for_id) VALUES (?1, ?2)
             ON CONFLICT DO NOTHING",
            params![content, for_other],
        )?;
        Ok(())
    }

    /// Forgets a lesson so that another may take its place, and returns what its parts were: what of them waits
    /// goes on waiting, but no longer for one another.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn clear_lesson(&self, lesson: LessonId) -> Result<Vec<LessonPart>, StoreError> {
        let parts = self.lesson_parts(lesson)?;
        self.run(
            "DELETE FROM content_waits AS w WHERE EXISTS (
                 SELECT 1 FROM lesson_parts a JOIN lesson_parts b ON b.lesson_id = a.lesson_id
                 WHERE a.lesson_id = ?1 AND a.content_id = w.content_id AND b.content_id = w.for_id)
             AND NOT EXISTS (
                 SELECT 1 FROM lesson_parts a JOIN lesson_parts b ON b.lesson_id = a.lesson_id
                 WHERE a.lesson_id <> ?1 AND a.content_id = w.content_id AND b.content_id = w.for_id)",
            [lesson],
        )?;
        self.run_one(
            "lesson",
            lesson,
            "DELETE FROM lessons WHERE id = ?1",
            params![lesson],
        )?;
        Ok(parts)
    }

    /// Forgets a lesson. Its parts that wait in the queue are taken out of it, and what nothing holds any
    /// more is forgotten; positions and posts stay.
    ///
    /// # Errors
    /// When there is no such row, or the store cannot be written.
    pub fn remove_lesson(&self, lesson: LessonId) -> Result<(), StoreError> {
        let parts = self.lesson_parts(lesson)?;
        for item in parts.iter().filter_map(|part| part.item) {
            self.dequeue(item)?;
        }
        self.run_one(
            "lesson",
            lesson,
            "DELETE FROM lessons WHERE id = ?1",
            params![lesson],
        )?;
        for part in parts.iter().filter(|part| part.post.is_none()) {
            self.forget_content(part.content_id)?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        NewContent, NewHolds, NewPost, Written,
        fixture::{Fixture, PRICES, at, new_group, new_position},
    };

    fn lesson(group: GroupId, title: &str) -> NewLesson {
        NewLesson {
            group_id: group,
            title: title.into(),
            topic_id: None,
            source: "lesson.pgn".into(),
            created_at: at(0),
        }
    }

    fn step(step: i64) -> LessonStep {
        LessonStep {
            step,
            game: format!("{{Step {step}}} *"),
            line: step,
            contrast: step == 2,
        }
    }

    fn words(tx: &Tx<'_>, group: GroupId, words: &str) -> Result<ContentId, StoreError> {
        tx.insert_content(&NewContent {
            group_id: group,
            topic_id: None,
            source: String::new(),
            holds: NewHolds::Words(Written {
                words: words.into(),
                fen: None,
            }),
            created_at: at(0),
        })
    }

    /// A lesson of words, a problem, and another problem that waits for it.
    fn three(tx: &Tx<'_>, group: GroupId) -> Result<(LessonId, [ContentId; 3]), StoreError> {
        let id = tx.insert_lesson(&lesson(group, "Open files"))?;
        let first = words(tx, group, "Look at the file.")?;
        let mut contents = vec![first];
        for n in 1..=2 {
            let position = tx.upsert_position(&new_position(group, n))?;
            contents.push(tx.problem_of(position, at(0))?);
        }
        for (n, content) in (1..).zip(&contents) {
            tx.add_lesson_step(id, &step(n))?;
            tx.add_lesson_part(id, n, 1, *content, &serde_json::json!([n]))?;
        }
        tx.let_content_wait(contents[2], contents[1])?;
        Ok((id, [contents[0], contents[1], contents[2]]))
    }

    #[test]
    fn a_lesson_comes_back_as_it_was_kept() {
        let f = Fixture::new();
        let group = f.group;
        let (id, contents) = f.write(move |tx| three(tx, group));
        let kept = f.read(move |db| db.lesson(id)).unwrap();
        assert_eq!((kept.title.as_str(), kept.steps), ("Open files", 3));
        assert_eq!(
            f.read(move |db| db.lessons(group)),
            std::slice::from_ref(&kept)
        );
        assert_eq!(
            f.read(move |db| db.lesson_called(group, "OPEN files")),
            Some(kept)
        );
        assert_eq!(
            f.read(move |db| db.lesson_steps(id)),
            [step(1), step(2), step(3)]
        );
        let parts = f.read(move |db| db.lesson_parts(id));
        let places: Vec<_> = parts
            .iter()
            .map(|p| (p.step, p.part, p.content_id))
            .collect();
        assert_eq!(
            places,
            [
                (1, 1, contents[0]),
                (2, 1, contents[1]),
                (3, 1, contents[2])
            ]
        );
        assert_eq!(
            f.read(move |db| db.lesson_waits(id)),
            [(contents[2], contents[1])]
        );
        let stands = f.read(move |db| db.in_lesson(contents[1])).unwrap();
        assert_eq!((stands.step, stands.steps), (2, 3));
        assert_eq!(stands.lead, serde_json::json!([2]));
    }

    #[test]
    fn what_would_tell_waits_until_the_reveal() {
        let f = Fixture::new();
        let group = f.group;
        let (first, later) = f.write(move |tx| {
            let (_, contents) = three(tx, group)?;
            Ok((
                tx.enqueue_content(contents[1], at(1))?,
                tx.enqueue_content(contents[2], at(1))?,
            ))
        });
        let awaited = move || f.read(move |db| db.awaited(group));
        assert_eq!(awaited(), [(later, Awaited::Queued(first))]);
        let f = Fixture::new();
        let group = f.group;
        let (post, later) = f.write(move |tx| {
            let (_, contents) = three(tx, group)?;
            let first = tx.enqueue_content(contents[1], at(1))?;
            let later = tx.enqueue_content(contents[2], at(1))?;
            let post = tx.intend_post(&NewPost {
                item: first,
                nonce: "n".into(),
                prices: PRICES,
                slot: at(2),
                closes_at: at(60),
                intended_at: at(2),
            })?;
            Ok((post, later))
        });
        assert_eq!(
            f.read(move |db| db.awaited(group)),
            [(later, Awaited::Post(post, at(60)))]
        );
        f.write(move |tx| {
            tx.mark_post_open(post, at(2), None, None)?;
            tx.mark_post_closing(post)?;
            tx.mark_post_closed(post, at(60), None)
        });
        assert_eq!(f.read(move |db| db.awaited(group)), []);
    }

    #[test]
    fn a_lesson_that_goes_takes_its_words_along_and_leaves_the_rest() {
        let f = Fixture::new();
        let group = f.group;
        let (id, contents) = f.write(move |tx| {
            let (id, contents) = three(tx, group)?;
            for content in contents {
                tx.enqueue_content(content, at(1))?;
            }
            Ok((id, contents))
        });
        // Out of the week by itself, a part stays in the lesson.
        let item = f.read(move |db| db.queue(group))[0].id;
        f.write(move |tx| {
            tx.dequeue(item)?;
            tx.forget_content(contents[0])
        });
        assert!(f.read(move |db| db.content(contents[0])).is_some());
        f.write(move |tx| tx.remove_lesson(id));
        assert!(f.read(move |db| db.content(contents[0])).is_none());
        assert!(f.read(move |db| db.content(contents[1])).is_some());
        assert!(f.read(move |db| db.queue(group)).is_empty());
        assert!(f.read(move |db| db.lessons(group)).is_empty());
        assert_eq!(f.read(move |db| db.positions(group)).len(), 2);
    }

    #[test]
    fn a_lesson_that_makes_room_leaves_what_waits_in_its_place() {
        let f = Fixture::new();
        let group = f.group;
        let (id, contents) = f.write(move |tx| {
            let (id, contents) = three(tx, group)?;
            for content in contents {
                tx.enqueue_content(content, at(1))?;
            }
            Ok((id, contents))
        });
        let before = f.read(move |db| db.queue(group));
        assert!(!f.read(move |db| db.awaited(group)).is_empty());
        let old = f.write(move |tx| tx.clear_lesson(id));
        assert_eq!(old.len(), 3);
        assert!(f.read(move |db| db.lessons(group)).is_empty());
        assert!(f.read(move |db| db.awaited(group)).is_empty());
        // The first one's place is taken by other words, at the same rank.
        let item = before[0].id;
        let new = f.write(move |tx| {
            let new = words(tx, group, "Look again.")?;
            tx.put_in_place(item, new)?;
            tx.forget_content(contents[0])?;
            Ok(new)
        });
        let after = f.read(move |db| db.queue(group));
        assert_eq!(after.len(), 3);
        assert_eq!((after[0].id, after[0].content_id), (item, new));
        assert!(f.read(move |db| db.content(contents[0])).is_none());
    }

    #[test]
    fn the_schema_keeps_lessons_to_their_group_and_titles_apart() {
        let f = Fixture::new();
        let group = f.group;
        let (id, other, foreign) = f.write(move |tx| {
            let id = tx.insert_lesson(&lesson(group, "Open files"))?;
            tx.add_lesson_step(id, &step(1))?;
            let other = tx.insert_group(&new_group("other"))?;
            Ok((id, other, words(tx, other, "Elsewhere.")?))
        });
        let refused = |what: Result<(), StoreError>, why: &str| {
            let error = what.unwrap_err().to_string();
            assert!(error.contains(why), "{error}");
        };
        refused(
            f.store
                .write_blocking(move |tx| tx.insert_lesson(&lesson(group, "OPEN FILES")).map(drop)),
            "UNIQUE",
        );
        refused(
            f.store.write_blocking(move |tx| {
                tx.add_lesson_part(id, 1, 1, foreign, &serde_json::json!([]))
            }),
            "FOREIGN KEY",
        );
        refused(
            f.store.write_blocking(move |tx| {
                let mut new = lesson(group, "Plans");
                new.topic_id = Some(tx.ensure_topic(other, "Plans")?);
                tx.insert_lesson(&new).map(drop)
            }),
            "another group",
        );
        let own = f.write(move |tx| words(tx, group, "Here."));
        refused(
            f.store
                .write_blocking(move |tx| tx.let_content_wait(own, foreign)),
            "another group",
        );
        // The same title in another group is another lesson.
        f.write(move |tx| tx.insert_lesson(&lesson(other, "Open files")).map(drop));
    }
}
