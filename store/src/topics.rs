//! Topics of a group's lessons.

use rusqlite::{Row, params};

use crate::{Db, StoreError, Tx};

/// A topic.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Topic {
    /// Its id.
    pub id: i64,
    /// The group.
    pub group_id: i64,
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
    pub fn topics(&self, group: i64) -> Result<Vec<Topic>, StoreError> {
        self.all(
            "SELECT * FROM topics WHERE group_id = ?1 ORDER BY name",
            [group],
            read,
        )
    }

    /// A topic by name, whatever its case.
    pub fn topic_by_name(&self, group: i64, name: &str) -> Result<Option<Topic>, StoreError> {
        self.maybe_one(
            "SELECT * FROM topics WHERE group_id = ?1 AND name = ?2",
            params![group, name],
            read,
        )
    }
}

impl Tx<'_> {
    /// The id of the topic of that name, made when there is none.
    pub fn ensure_topic(&self, group: i64, name: &str) -> Result<i64, StoreError> {
        match self.topic_by_name(group, name)? {
            Some(topic) => Ok(topic.id),
            None => self.insert(
                "INSERT INTO topics (group_id, name) VALUES (?1, ?2)",
                params![group, name],
            ),
        }
    }
}
