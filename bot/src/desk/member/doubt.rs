//! What is said to a group, and what is answered by choice: taken as an answer, left alone as talk, or
//! asked back.
//!
//! Asked back, at no cost and with nothing kept, is
//! - what fits another open post and not the one it was sent to;
//! - what plainly is an answer and could be one to several open posts;
//! - while a sealed post is open, whatever may tell a move of it and is not plainly an answer: others do
//!   not see it before its writer says so;
//! - whatever is written to a question and not sent as an answer: any words may answer it.
//!
//! What was sent as an answer to a question is one, whatever moves stand in it.

use super::{MemberDesk, aim::open_post};
use crate::chess::{line, reply::mentions::Moves};
use crate::desk::{
    AskedBack, Came, Heard, Kind, Mode, OpenPost, Outcome, Person, Place, PostId, ReplyId, Taken,
    Verdict, VerdictSheet, Why,
    content::{self, Held},
    error::{Done, not_found},
    handle::{group_at, post_of},
    moves::GATHERING,
    posting::takes_replies,
    refusal::Refusal,
    replies::{kept_reply, key, line_before},
    text::{self, LONGEST_REPLY},
};

impl MemberDesk<'_> {
    /// An explicit answer to the chosen post, as [`MemberDesk::answer`] takes it; asked back where its moves
    /// fit another open post and not this one.
    ///
    /// # Errors
    /// As [`MemberDesk::answer`].
    pub async fn answer_to(
        self,
        place: &Place,
        person: &Person,
        chosen: PostId,
        source: &str,
        text: &str,
    ) -> Done<Taken> {
        let (read, _) = text::body(text, LONGEST_REPLY);
        let problem = matches!(self.desk.kind(place, chosen).await?, Kind::Problem { .. });
        if problem && !self.is_known(place, source).await? {
            let other = self.elsewhere(place, &person.user, chosen, &read).await?;
            if !other.is_empty() {
                let other = other.into_iter().map(|(post, _)| post).collect();
                let asked = ask(Why::Elsewhere, other);
                return Ok(Taken::AskedBack(asked));
            }
        }
        let sheet = self.answer(place, person, chosen, source, text).await?;
        Ok(Taken::Answer(Box::new(sheet)))
    }

    /// As [`MemberDesk::answer_to`], for a text of which its writer was asked what it is to be and said: my
    /// answer. Where only one thing can be meant by it, that is judged and not asked about once more.
    ///
    /// # Errors
    /// As [`MemberDesk::answer`].
    pub async fn answer_surely(
        self,
        place: &Place,
        person: &Person,
        chosen: PostId,
        source: &str,
        text: &str,
    ) -> Done<Taken> {
        let taken = self.answer_to(place, person, chosen, source, text).await?;
        match taken {
            Taken::Answer(sheet) if sheet.outcome == Outcome::Judged(Verdict::Unclear) => {
                let meant = match sheet.readings.len() {
                    1 => Some(self.mean(place, person, sheet.reply, 0).await?),
                    _ => self.meant(place, person, sheet.reply).await?,
                };
                match meant {
                    Some((meant, _)) => {
                        // The question that it answers is never put.
                        self.desk.rounds().verdict_arrived(sheet.reply).await?;
                        Ok(Taken::Answer(Box::new(meant)))
                    }
                    None => Ok(Taken::Answer(sheet)),
                }
            }
            taken => Ok(taken),
        }
    }

    /// A message among others, with the post that it was written to, where it was to one.
    ///
    /// # Errors
    /// When the chosen post is not this group's, or the store cannot be used.
    pub async fn take(
        self,
        place: &Place,
        person: &Person,
        chosen: Option<PostId>,
        source: &str,
        text: &str,
    ) -> Done<Came> {
        let (read, _) = text::body(text, LONGEST_REPLY);
        let user = &person.user;
        let mut post = chosen;
        if !self.is_known(place, source).await? {
            if let Some(chosen) = chosen
                && let Some(question) = self.open_question(place, chosen).await?
            {
                return Ok(Came::AskedBack(ask(Why::MayTell, vec![question])));
            }
            let fits = match chosen {
                Some(chosen) => self.elsewhere(place, user, chosen, &read).await?,
                None => self.fitting(place, user, &read).await?,
            };
            let answer = fits.iter().any(|(_, fit)| fit.answer);
            let mut fits: Vec<OpenPost> = fits.into_iter().map(|(post, _)| post).collect();
            if answer && chosen.is_none() {
                // Any words may answer a question.
                fits.extend(self.open_questions(place).await?);
            }
            match (chosen, fits.as_mut_slice()) {
                (None, [only]) => post = Some(only.post),
                (Some(_), [_, ..]) if answer => {
                    return Ok(Came::AskedBack(ask(Why::Elsewhere, fits)));
                }
                (None, [_, _, ..]) if answer => {
                    return Ok(Came::AskedBack(ask(Why::Several, fits)));
                }
                _ => {}
            }
        }
        let heard = match post {
            Some(post) => self.hear_in(place, person, post, source, text).await?,
            None => self.hear(place, person, source, text).await?,
        };
        Ok(match heard {
            Heard::Answer(sheet) => Came::Answer(sheet),
            Heard::Again(sheet) => Came::Again(sheet),
            Heard::Talk => {
                let mut told = self.told_by(place, user, text).await?;
                // The one it was written to comes first.
                told.sort_by_key(|open| Some(open.post) != post);
                match told.is_empty() {
                    true => Came::Talk,
                    false => Came::AskedBack(ask(Why::MayTell, told)),
                }
            }
        })
    }

    /// The post, where it is a question that takes answers.
    async fn open_question(self, place: &Place, post: PostId) -> Done<Option<OpenPost>> {
        let mut open = self.open_questions(place).await?.into_iter();
        Ok(open.find(|open| open.post == post))
    }

    /// The group's questions that take answers, by number.
    async fn open_questions(self, place: &Place) -> Done<Vec<OpenPost>> {
        let (now, place) = (self.desk.now(), place.clone());
        self.desk
            .read(move |db| {
                let group = group_at(db, &place)?;
                let mut open = db.open_posts(group.id)?;
                open.retain(|post| {
                    Kind::of(&post.content) == Kind::Question && takes_replies(post, now)
                });
                Ok(open.iter().map(open_post).collect())
            })
            .await
    }

    /// Asks which post a text is to answer that was sent as an answer and to none of them, where it can be
    /// several of which one is a question; `None` where there is nothing to ask.
    ///
    /// # Errors
    /// When the store cannot be used.
    pub async fn ask_which_open(self, place: &Place) -> Done<Option<AskedBack>> {
        let open = self.open_posts(place).await?;
        if open.len() < 2 || self.open_questions(place).await?.is_empty() {
            return Ok(None);
        }
        Ok(Some(ask(Why::Several, open)))
    }

    /// Whether a name would tell others a move of a sealed post that is open.
    ///
    /// # Errors
    /// When the store cannot be used.
    pub async fn name_tells_a_move(self, place: &Place, name: &str) -> Done<bool> {
        Ok(!self.told_by(place, "", name).await?.is_empty())
    }

    /// The open posts of a sealed group of which a text may tell a move: at the start, along the
    /// solution, or along the writer's own line. Empty in an open group.
    async fn told_by(self, place: &Place, user: &str, text: &str) -> Done<Vec<OpenPost>> {
        if self.desk.settings(place).await?.mode == Mode::Open {
            return Ok(Vec::new());
        }
        let mut told = Vec::new();
        for open in self.open_posts(place).await? {
            let (at, who, post) = (place.clone(), user.to_owned(), open.post);
            let found = self
                .desk
                .read(move |db| {
                    let group = group_at(db, &at)?;
                    let post = post_of(db, &group, post)?;
                    let replies = match db.member_by_user(group.id, &who)? {
                        Some(member) => db.replies_of(post.id, member.id)?,
                        None => Vec::new(),
                    };
                    Ok(match content::held(db, &post)? {
                        Held::Problem(posed) => Some((posed, line_before(&replies, None))),
                        // There is no move that could be told of it.
                        Held::Question(..) | Held::Words(_) => None,
                    })
                })
                .await?;
            let Some((posed, line)) = found else {
                continue;
            };
            let along = self.desk.moves_along(&posed).await?;
            let board = posed.board;
            let own = line::moves(&board, &line);
            let text = text.to_owned();
            let tells = self
                .desk
                .inner
                .quick
                .run("looking for moves in a message", GATHERING, move |_| {
                    let mut own_line = Moves::default();
                    own_line.add_along(&board, &own);
                    along.may_be_told_by(&text) || own_line.may_be_told_by(&text)
                })
                .await?;
            if tells {
                told.push(open);
            }
        }
        Ok(told)
    }

    /// One of the readings of a doubtful reply, sent as the answer that was meant. However often it is
    /// sent, it counts once for each reply that was asked back.
    ///
    /// # Errors
    /// When the reply is not theirs, or nothing (more) is asked about it.
    pub async fn mean(
        self,
        place: &Place,
        person: &Person,
        reply: ReplyId,
        reading: usize,
    ) -> Done<(VerdictSheet, String)> {
        if let Some(meant) = self.meant(place, person, reply).await? {
            return Ok(meant);
        }
        let asked = self.verdict(place, person, reply).await?;
        if asked.outcome != Outcome::Judged(Verdict::Unclear) {
            return not_found(Refusal::NothingAsked);
        }
        let Some(text) = asked.readings.get(reading) else {
            return not_found(Refusal::NothingAskedAnyMore);
        };
        let sheet = self
            .answer(place, person, asked.post, &reading_of(reply), text)
            .await?;
        Ok((sheet, text.clone()))
    }

    /// What a reply was said to mean when it was asked back, if it was.
    async fn meant(
        self,
        place: &Place,
        person: &Person,
        reply: ReplyId,
    ) -> Done<Option<(VerdictSheet, String)>> {
        let (at, user, key) = (
            place.clone(),
            person.user.clone(),
            key(place, &reading_of(reply)),
        );
        let meant = self
            .desk
            .read(move |db| {
                let group = group_at(db, &at)?;
                let member = db.member_by_user(group.id, &user)?;
                match (member, db.reply_by_source(&key)?) {
                    (Some(member), Some(meant)) if meant.member_id == member.id => {
                        kept_reply(db, meant).map(Some)
                    }
                    _ => Ok(None),
                }
            })
            .await?;
        let Some(meant) = meant else {
            return Ok(None);
        };
        let text = meant.reply.text.clone();
        Ok(Some((self.desk.verdict_on(meant).await?, text)))
    }

    /// Whether a message was taken as an answer before.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub async fn is_known(self, place: &Place, source: &str) -> Done<bool> {
        let key = key(place, source);
        self.desk
            .read(move |db| Ok(db.reply_by_source(&key)?.is_some()))
            .await
    }
}

/// The source of a reply that says what another one means.
fn reading_of(reply: ReplyId) -> String {
    format!("reading:{reply}")
}

fn ask(why: Why, posts: Vec<OpenPost>) -> AskedBack {
    AskedBack { why, posts }
}
