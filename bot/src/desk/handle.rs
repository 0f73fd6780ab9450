//! The desk itself: what it holds, how its calls read and write the store, and who may ask for what.

use std::sync::{Arc, Mutex};

use chrono::{DateTime, Utc};
use sealed_move_store::{Db, Group, Member, Names, Post, Store, StoreError, Tx};

use super::{
    MemberId, Person, Place, PositionId, PostId,
    clock::Clock,
    error::{DeskError, Done, not_allowed, not_found},
    ledger::Errands,
    names,
    options::DeskOptions,
    pool::Pool,
    problems::Problems,
    refusal::Refusal,
    text,
    turns::Turns,
};

/// The desk. Cheap to clone; all clones are one desk.
#[derive(Clone)]
pub struct Desk {
    pub(super) inner: Arc<Inner>,
}

/// What all clones of a desk share.
pub(super) struct Inner {
    pub(super) store: Store,
    pub(super) clock: Arc<dyn Clock>,
    pub(super) options: DeskOptions,
    /// For checks, which take long.
    pub(super) checks: Pool,
    /// For solutions of posts, which the first reply waits for.
    pub(super) proofs: Pool,
    /// For verdicts and pictures, which somebody waits for.
    pub(super) quick: Pool,
    pub(super) problems: Problems,
    pub(super) turns: Turns,
    pub(super) errands: Errands,
    pub(super) gathered: super::moves::Gathered,
    pub(super) last_shown: super::last_shown::LastShown,
    #[cfg(test)]
    pub(super) asked: Asked,
}

/// How often the store was asked.
#[cfg(test)]
#[derive(Default)]
pub(super) struct Asked {
    pub(super) reads: std::sync::atomic::AtomicUsize,
    pub(super) writes: std::sync::atomic::AtomicUsize,
}

impl std::fmt::Debug for Desk {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Desk")
            .field("store", &self.inner.store)
            .finish_non_exhaustive()
    }
}

impl Desk {
    /// A desk on `store` that tells the time by `clock`.
    pub fn with_options(store: Store, clock: Arc<dyn Clock>, options: DeskOptions) -> Self {
        Self {
            inner: Arc::new(Inner {
                checks: Pool::new(options.threads),
                proofs: Pool::new(options.threads),
                quick: Pool::new(options.threads),
                problems: Problems::new(options.problems),
                turns: Turns::default(),
                errands: Errands::default(),
                gathered: super::moves::Gathered::default(),
                last_shown: super::last_shown::LastShown::default(),
                #[cfg(test)]
                asked: Asked::default(),
                store,
                clock,
                options,
            }),
        }
    }

    /// The time by the desk's clock, in whole seconds as the store keeps it.
    pub fn now(&self) -> DateTime<Utc> {
        sealed_move_store::to_seconds(self.inner.clock.now())
    }

    /// Brings all that was written into the store's file, for a program that is about to end.
    ///
    /// # Errors
    /// When the store cannot be written. What was written is kept beside it all the same.
    pub async fn put_away(&self) -> Done<()> {
        Ok(self.inner.store.fold_log().await?)
    }

    /// The desk's limits.
    pub fn options(&self) -> &DeskOptions {
        &self.inner.options
    }

    /// Runs `f` on a consistent view of the store.
    pub(super) async fn read<T, F>(&self, f: F) -> Done<T>
    where
        T: Send + 'static,
        F: FnOnce(&Db<'_>) -> Done<T> + Send + 'static,
    {
        #[cfg(test)]
        self.inner
            .asked
            .reads
            .fetch_add(1, std::sync::atomic::Ordering::SeqCst);
        let answer = CalledOff::default();
        let inner = answer.clone();
        answer.open(self.inner.store.read(move |db| inner.keep(f(db))).await)
    }

    /// Runs `f` in one transaction. When it errs, nothing is written.
    pub(super) async fn write<T, F>(&self, f: F) -> Done<T>
    where
        T: Send + 'static,
        F: FnOnce(&Tx<'_>) -> Done<T> + Send + 'static,
    {
        #[cfg(test)]
        self.inner
            .asked
            .writes
            .fetch_add(1, std::sync::atomic::Ordering::SeqCst);
        let answer = CalledOff::default();
        let inner = answer.clone();
        answer.open(self.inner.store.write(move |tx| inner.keep(f(tx))).await)
    }

    /// The group at a place.
    pub(super) async fn group(&self, place: &Place) -> Done<Group> {
        let place = place.clone();
        self.read(move |db| group_at(db, &place)).await
    }
}

/// Carries an error of the desk out of a transaction that it called off.
#[derive(Clone, Default)]
struct CalledOff(Arc<Mutex<Option<DeskError>>>);

impl CalledOff {
    fn keep<T>(&self, done: Done<T>) -> Result<T, StoreError> {
        done.map_err(|error| {
            if let Ok(mut kept) = self.0.lock() {
                *kept = Some(error);
            }
            StoreError::CalledOff(String::new())
        })
    }

    fn open<T>(&self, result: Result<T, StoreError>) -> Done<T> {
        result.map_err(|error| {
            let kept = self.0.lock().ok().and_then(|mut kept| kept.take());
            kept.unwrap_or_else(|| error.into())
        })
    }
}

/// The group at a place.
pub(super) fn group_at(db: &Db<'_>, place: &Place) -> Done<Group> {
    match db.group_at(place.chat, &place.channel)? {
        Some(group) => Ok(group),
        None => not_found(Refusal::NotAGroup),
    }
}

/// The group at a place, if `person` coaches it.
pub(super) fn coached(db: &Db<'_>, place: &Place, person: &Person) -> Done<Group> {
    Ok(coaching(db, place, person)?.0)
}

/// The group at a place and the coach that `person` is.
pub(super) fn coaching(db: &Db<'_>, place: &Place, person: &Person) -> Done<(Group, Member)> {
    let group = group_at(db, place)?;
    match db.member_by_user(group.id, &person.user)? {
        Some(coach @ Member { coach: true, .. }) if coach.removed_at.is_none() => {
            Ok((group, coach))
        }
        _ => not_allowed(Refusal::NotCoach),
    }
}

/// The member that `person` is, made one when they are new. Where the chat gives people their names, a
/// changed one is taken over; where members name themselves, only they or a coach change it.
///
/// # Errors
/// When a coach has shut them out.
pub(super) fn member(
    tx: &Tx<'_>,
    group: &Group,
    person: &Person,
    now: DateTime<Utc>,
) -> Done<MemberId> {
    let known = tx.member_by_user(group.id, &person.user)?;
    let id = named(tx, group, person, known.as_ref(), now)?;
    let heard = known.and_then(|member| member.client_language);
    hear_language(tx, id, heard.as_deref(), person)?;
    Ok(id)
}

/// Keeps the language that a member's client asks for now, where it is another than `heard` before.
pub(super) fn hear_language(
    tx: &Tx<'_>,
    member: MemberId,
    heard: Option<&str>,
    person: &Person,
) -> Done<()> {
    if let Some(tag) = &person.language
        && heard != Some(tag.as_str())
    {
        tx.set_client_language(member, tag.as_str())?;
    }
    Ok(())
}

fn named(
    tx: &Tx<'_>,
    group: &Group,
    person: &Person,
    known: Option<&Member>,
    now: DateTime<Utc>,
) -> Done<MemberId> {
    if let Some(member) = known {
        if member.removed_at.is_some() {
            return not_allowed(Refusal::ShutOut);
        }
        let named_here = group.names == Names::ByMember;
        let further_id = member.chat_user != person.user;
        if named_here || further_id || member.name == text::name(&person.name) {
            return Ok(member.id);
        }
    }
    let name = match known {
        // A coach goes by the name that the chat gives them.
        Some(Member { coach: true, .. }) => text::name(&person.name),
        _ => names::given(tx, group.id, known, &person.name)?,
    };
    Ok(tx.upsert_member(group.id, &person.user, &name, now)?)
}

/// A member of the group by id.
pub(super) fn member_of(db: &Db<'_>, group: &Group, member: MemberId) -> Done<Member> {
    match db.member(member)? {
        Some(member) if member.group_id == group.id => Ok(member),
        _ => not_found(Refusal::NoMember),
    }
}

/// A post of the group by id.
pub(super) fn post_of(db: &Db<'_>, group: &Group, post: PostId) -> Done<Post> {
    match db.post(post)? {
        Some(post) if post.group_id == group.id => Ok(post),
        _ => not_found(Refusal::NoPost),
    }
}

/// A position of the group by id.
pub(super) fn position_of(
    db: &Db<'_>,
    group: &Group,
    position: PositionId,
) -> Done<sealed_move_store::Position> {
    match db.position(position)? {
        Some(position) if position.group_id == group.id => Ok(position),
        _ => not_found(Refusal::NoPosition),
    }
}
