//! Ids of rows. Each kind is a type of its own, so that a post's cannot stand for a member's:
//!
//! ```compile_fail
//! let post: sealed_move_store::PostId = sealed_move_store::MemberId::of(1);
//! ```

use std::fmt;

use rusqlite::{
    ToSql,
    types::{FromSql, FromSqlResult, ToSqlOutput, ValueRef},
};
use serde::{Deserialize, Serialize};

/// An id that a new row gets.
pub(crate) trait Id {
    fn of(number: i64) -> Self;
}

impl Id for i64 {
    fn of(number: i64) -> Self {
        number
    }
}

/// Makes the id of a kind of row.
macro_rules! id {
    ($(#[$docs:meta])* $name:ident) => {
        $(#[$docs])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(i64);

        impl $name {
            /// The id of this number, as somebody gave it back: whether there is such a row shows when it is looked for.
            pub const fn of(number: i64) -> Self {
                Self(number)
            }

            /// Its number.
            pub const fn get(self) -> i64 {
                self.0
            }
        }

        impl Id for $name {
            fn of(number: i64) -> Self {
                Self(number)
            }
        }

        impl From<$name> for i64 {
            fn from(id: $name) -> Self {
                id.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.fmt(f)
            }
        }

        impl std::str::FromStr for $name {
            type Err = std::num::ParseIntError;

            fn from_str(text: &str) -> Result<Self, Self::Err> {
                text.parse().map(Self)
            }
        }

        impl FromSql for $name {
            fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
                i64::column_result(value).map(Self)
            }
        }

        impl ToSql for $name {
            fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
                self.0.to_sql()
            }
        }
    };
}

id! {
    /// A group.
    GroupId
}
id! {
    /// A member of a group.
    MemberId
}
id! {
    /// A post. The group counts its posts by number; this is not it.
    PostId
}
id! {
    /// A reply to a post.
    ReplyId
}
id! {
    /// A position that is kept.
    PositionId
}
id! {
    /// A place in the queue.
    ItemId
}
id! {
    /// What was taken out of the queue.
    TakenOutId
}
id! {
    /// What a post or a place in the queue holds.
    ContentId
}
id! {
    /// A lesson of a group.
    LessonId
}
id! {
    /// A lesson that is being written.
    DraftId
}
id! {
    /// A topic of a group.
    TopicId
}
