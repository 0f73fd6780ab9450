//! Sums over attempts: what the leaderboard and the engagement summary are made of.
//!
//! A post belongs to a period by the moment it was opened, and counts once replies to it have ended: a
//! figure that moved while a post is open would tell others who has solved it.

use crate::{Db, Moment, StoreError};

/// Which posts a figure covers.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Span {
    /// The group.
    pub group_id: i64,
    /// Opened at this moment or later.
    pub from: Option<Moment>,
    /// Opened before this moment.
    pub to: Option<Moment>,
    /// Of this topic only, whatever its case.
    pub topic: Option<String>,
}

/// One member's points.
#[derive(Clone, Debug, PartialEq)]
pub struct MemberPoints {
    /// The member.
    pub member_id: i64,
    /// Their name.
    pub name: String,
    /// Points in all.
    pub points: f64,
    /// Posts solved.
    pub solved: u32,
    /// Posts taken part in.
    pub tried: u32,
    /// Posts solved without a wrong move or a hint.
    pub first_try: u32,
}

/// One member's part.
#[derive(Clone, Debug, PartialEq)]
pub struct MemberFigures {
    /// The member.
    pub member_id: i64,
    /// Their name.
    pub name: String,
    /// Whether they coach the group.
    pub coach: bool,
    /// Since when they belong to it.
    pub joined_at: Moment,
    /// Posts taken part in.
    pub tried: u32,
    /// Posts solved.
    pub solved: u32,
    /// Posts solved without a wrong move or a hint.
    pub first_try: u32,
    /// Points in all.
    pub points: f64,
    /// Hint steps taken.
    pub hints: u32,
}

/// How one post went.
#[derive(Clone, Debug, PartialEq)]
pub struct PostFigures {
    /// The post.
    pub post_id: i64,
    /// Its position.
    pub position_id: i64,
    /// Its number.
    pub number: i64,
    /// Its topic.
    pub topic: Option<String>,
    /// Its stipulation.
    pub stipulation: String,
    /// When it was opened.
    pub opened_at: Moment,
    /// Members who took part.
    pub tried: u32,
    /// Members who solved it.
    pub solved: u32,
    /// Members who solved it without a wrong move or a hint.
    pub first_try: u32,
    /// Hint steps taken.
    pub hints: u32,
}

/// How one topic went. Posts without a topic make no line.
#[derive(Clone, Debug, PartialEq)]
pub struct TopicFigures {
    /// The topic.
    pub topic: String,
    /// Posts of it.
    pub posts: u32,
    /// Attempts at them.
    pub tried: u32,
    /// Attempts that solved.
    pub solved: u32,
    /// Attempts that solved without a wrong move or a hint.
    pub first_try: u32,
}

/// A wrong first move and how many members chose it.
#[derive(Clone, Debug, PartialEq)]
pub struct WrongFirst {
    /// The move in SAN.
    pub san: String,
    /// How many members chose it.
    pub members: u32,
    /// The refuting line told to the first of them, in SAN.
    pub refutation: Vec<String>,
    /// The reason told to them.
    pub why: String,
}

impl Db<'_> {
    /// Points by member, most first, then by name. Members without an attempt are left out.
    pub fn leaderboard(&self, span: &Span) -> Result<Vec<MemberPoints>, StoreError> {
        let _ = span;
        todo!()
    }

    /// Every member's part, by name, members without an attempt among them.
    pub fn member_figures(&self, span: &Span) -> Result<Vec<MemberFigures>, StoreError> {
        let _ = span;
        todo!()
    }

    /// How each post went, in the order of their numbers.
    pub fn post_figures(&self, span: &Span) -> Result<Vec<PostFigures>, StoreError> {
        let _ = span;
        todo!()
    }

    /// How each topic went, by name.
    pub fn topic_figures(&self, span: &Span) -> Result<Vec<TopicFigures>, StoreError> {
        let _ = span;
        todo!()
    }

    /// Ids and names of members with an attempt at a post of the span, by name.
    pub fn took_part(&self, span: &Span) -> Result<Vec<(i64, String)>, StoreError> {
        let _ = span;
        todo!()
    }

    /// One member's figures topic by topic, by name.
    pub fn topics_of_member(
        &self,
        span: &Span,
        member: i64,
    ) -> Result<Vec<TopicFigures>, StoreError> {
        let _ = (span, member);
        todo!()
    }

    /// The wrong first moves that came up for a post, the commonest first, then by move. A member who
    /// sent the same one twice counts once.
    pub fn wrong_first_moves(&self, post: i64) -> Result<Vec<WrongFirst>, StoreError> {
        let _ = post;
        todo!()
    }
}
