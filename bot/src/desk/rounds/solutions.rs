//! Solutions of posts that have gone out, worked out before the first reply asks for them.

use super::Rounds;
use crate::desk::{
    PostId,
    content::{self, Held},
};

impl Rounds<'_> {
    /// Leaves a post that is out to [`Rounds::keep_solutions_ready`].
    pub(super) fn warm_up(self, post: PostId) {
        self.desk.inner.errands.kept().to_warm.push_back(post);
        self.desk.inner.errands.warm.notify_one();
    }

    /// Proves the solutions of posts that have gone out, one after the other and for ever, so that the
    /// first reply need not wait for it. May be dropped at any time.
    pub async fn keep_solutions_ready(self) {
        loop {
            let next = self.desk.inner.errands.kept().to_warm.pop_front();
            let Some(post) = next else {
                self.desk.inner.errands.warm.notified().await;
                continue;
            };
            let held = self
                .desk
                .read(move |db| match db.post(post)? {
                    Some(post) => content::held(db, &post).map(Some),
                    None => Ok(None),
                })
                .await;
            if let Ok(Some(Held::Problem(posed))) = held {
                let _ = self.desk.problem(&posed).await;
            }
        }
    }
}
