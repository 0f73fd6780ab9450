//! Topics of a group's lessons.

use rusqlite::{Row, params};

use crate::{Db, GroupId, StoreError, TopicId, Tx};

/// A topic.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Topic {
    /// Its id.
    pub id: TopicId,
    /// The group.
    pub group_id: GroupId,
    /// Its name, 1 to 80 characters; case does not tell topics apart.
    pub name: String,
}

fn read(row: &Row<'_>) -> rusqlite::Result<Topic> {
    Ok(Topic {
        id: row.get("id")?,
        group_id: row.get("group_id")?,
        name: row.get("name")?,
    })
}

impl Db<'_> {
    /// A group's topics by name.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn topics(&self, group: GroupId) -> Result<Vec<Topic>, StoreError> {
        self.all(
            "SELECT * FROM topics WHERE group_id = ?1 ORDER BY name",
            [group],
            read,
        )
    }

    /// A topic by name, whatever its case.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn topic_by_name(&self, group: GroupId, name: &str) -> Result<Option<Topic>, StoreError> {
        self.maybe_one(
            "SELECT * FROM topics WHERE group_id = ?1 AND name = ?2",
            params![group, name],
            read,
        )
    }
}

impl Tx<'_> {
    /// The id of the topic of that name, made when there is none.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn ensure_topic(&self, group: GroupId, name: &str) -> Result<TopicId, StoreError> {
        match self.topic_by_name(group, name)? {
            Some(topic) => Ok(topic.id),
            None => self.insert(
                "INSERT INTO topics (group_id, name) VALUES (?1, ?2)",
                params![group, name],
            ),
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::fixture::{Fixture, new_group, new_position};

    #[test]
    fn a_topic_is_one_whatever_its_case() {
        let f = Fixture::new();
        let group = f.group;
        let first = f.write(move |tx| tx.ensure_topic(group, "Back rank"));
        let again = f.write(move |tx| tx.ensure_topic(group, "back RANK"));
        assert_eq!(first, again);
        f.write(move |tx| tx.ensure_topic(group, "a clearance"));
        let names: Vec<_> = f
            .read(move |db| db.topics(group))
            .into_iter()
            .map(|topic| topic.name)
            .collect();
        assert_eq!(names, ["a clearance", "Back rank"]);
    }

    #[test]
    fn a_position_takes_no_topic_of_another_group() {
        let f = Fixture::new();
        let group = f.group;
        let foreign = f.write(|tx| {
            let other = tx.insert_group(&new_group("other"))?;
            tx.ensure_topic(other, "Back rank")
        });
        let position = f.write(move |tx| tx.upsert_position(&new_position(group, 1)));
        let set = f
            .store
            .write_blocking(move |tx| tx.set_position_topic(position, Some(foreign)));
        assert!(set.unwrap_err().to_string().contains("another group"));
    }
}
