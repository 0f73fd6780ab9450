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

use std::sync::Arc;

use super::{
    MemberDesk,
    glance::{Glance, Seen},
};
use crate::chess::{line, reply::mentions::Moves};
use crate::desk::{
    AskedBack, Came, Mode, OpenPost, Outcome, Person, Place, PostId, ReplyId, Taken, Verdict,
    VerdictSheet, Why,
    error::{Done, not_found},
    handle::group_at,
    moves::GATHERING,
    refusal::Refusal,
    replies::{kept_reply, key},
    text::{self, LONGEST_REPLY},
};

/// What a message among others is to be taken for.
enum Weighed {
    /// It may answer this post, where it names or fits one.
    For(Option<PostId>),
    /// Its writer is asked.
    AskBack(AskedBack),
}

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
        let glance = self
            .glance(place, &person.user, Some(source), Some(chosen))
            .await?;
        let problem = glance.post(chosen).and_then(|seen| seen.holds.problem());
        if !glance.known && problem.is_some() {
            let other = self.elsewhere(&glance, chosen, &read).await?;
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
        let glance = self
            .glance(place, &person.user, Some(source), chosen)
            .await?;
        let post = match glance.known {
            true => chosen,
            false => match self.weigh(&glance, chosen, &read).await? {
                Weighed::For(post) => post,
                Weighed::AskBack(asked) => return Ok(Came::AskedBack(asked)),
            },
        };
        // What names no post and fits none that is left to do is heard at the latest.
        if let Some(to) = post.or_else(|| glance.latest())
            && let Some(came) = self.hear_in(place, person, to, source, text).await?
        {
            return Ok(came);
        }
        let mut told = self.told_by(&glance, text).await?;
        // The one it was written to comes first.
        told.sort_by_key(|open| Some(open.post) != post);
        Ok(match told.is_empty() {
            true => Came::Talk,
            false => Came::AskedBack(ask(Why::MayTell, told)),
        })
    }

    /// Which post a message may answer, with the post that it was written to where it was to one.
    async fn weigh(
        self,
        glance: &Arc<Glance>,
        chosen: Option<PostId>,
        text: &str,
    ) -> Done<Weighed> {
        let questions = glance.open_questions();
        if let Some(question) = questions.iter().find(|post| Some(post.post) == chosen) {
            let asked = ask(Why::MayTell, vec![question.clone()]);
            return Ok(Weighed::AskBack(asked));
        }
        let fits = match chosen {
            Some(chosen) => self.elsewhere(glance, chosen, text).await?,
            None => self.fitting(glance, text).await?,
        };
        let answer = fits.iter().any(|(_, fit)| fit.answer);
        let mut fits: Vec<OpenPost> = fits.into_iter().map(|(post, _)| post).collect();
        if answer && chosen.is_none() {
            // Any words may answer a question.
            fits.extend(questions);
        }
        Ok(match (chosen, fits.as_slice()) {
            (None, [only]) => Weighed::For(Some(only.post)),
            (Some(_), [_, ..]) if answer => Weighed::AskBack(ask(Why::Elsewhere, fits)),
            (None, [_, _, ..]) if answer => Weighed::AskBack(ask(Why::Several, fits)),
            _ => Weighed::For(chosen),
        })
    }

    /// Asks which post a text is to answer that was sent as an answer and to none of them, where it can be
    /// several of which one is a question; `None` where there is nothing to ask.
    ///
    /// # Errors
    /// When the store cannot be used.
    pub async fn ask_which_open(self, place: &Place) -> Done<Option<AskedBack>> {
        let glance = self.glance(place, "", None, None).await?;
        if glance.open.len() < 2 || glance.open_questions().is_empty() {
            return Ok(None);
        }
        Ok(Some(ask(Why::Several, glance.all_open())))
    }

    /// Whether a name would tell others a move of a sealed post that is open.
    ///
    /// # Errors
    /// When the store cannot be used.
    pub async fn name_tells_a_move(self, place: &Place, name: &str) -> Done<bool> {
        let glance = self.glance(place, "", None, None).await?;
        Ok(!self.told_by(&glance, name).await?.is_empty())
    }

    /// The open posts of a sealed group of which a text may tell a move: at the start, along the
    /// solution, or along the writer's own line. Empty in an open group.
    async fn told_by(self, glance: &Arc<Glance>, text: &str) -> Done<Vec<OpenPost>> {
        if glance.mode == Mode::Open {
            return Ok(Vec::new());
        }
        let mut along = Vec::new();
        for seen in &glance.open {
            along.push(match seen.holds.problem() {
                Some(posed) => Some(self.desk.moves_along(posed).await?),
                // There is no move that could be told of it.
                None => None,
            });
        }
        let (glance, text) = (glance.clone(), text.to_owned());
        self.desk
            .inner
            .quick
            .run("looking for moves in a message", GATHERING, move |_| {
                let posts = glance.open.iter().zip(along);
                posts
                    .filter(|(seen, along)| {
                        along.as_ref().is_some_and(|along| {
                            along.may_be_told_by(&text) || seen.own_line().may_be_told_by(&text)
                        })
                    })
                    .map(|(seen, _)| seen.open_post())
                    .collect()
            })
            .await
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

impl Seen {
    /// The moves along the person's own line.
    fn own_line(&self) -> Moves {
        let mut own = Moves::default();
        if let Some(posed) = self.holds.problem() {
            own.add_along(&posed.board, &line::moves(&posed.board, &self.line));
        }
        own
    }
}

/// The source of a reply that says what another one means.
fn reading_of(reply: ReplyId) -> String {
    format!("reading:{reply}")
}

fn ask(why: Why, posts: Vec<OpenPost>) -> AskedBack {
    AskedBack { why, posts }
}
