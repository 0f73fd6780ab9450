//! How often the store is asked on the way of a reply: one read to place it, one write before it is judged,
//! one write after.

use std::sync::atomic::Ordering;

use super::*;

const MONDAY: &str = "2026-11-23T09:00:00Z";

/// Three posts that are open, of which the second is a question.
struct Three {
    club: Club,
    two: PostId,
    question: PostId,
    three: PostId,
}

impl Three {
    async fn open() -> Self {
        let club = Club::new(MONDAY, chrono_tz::UTC).await;
        let two = club.open("two").await;
        let question = ask(&club).await;
        let three = club.open("three").await;
        Self {
            club,
            two,
            question,
            three,
        }
    }

    async fn answer_to(&self, post: PostId, source: &str, text: &str) -> Taken {
        let member = self.club.desk.member();
        member
            .answer_to(&self.club.place, &person("Ana"), post, source, text)
            .await
            .expect("taken")
    }

    async fn take(&self, chosen: Option<PostId>, source: &str, text: &str) -> Came {
        let member = self.club.desk.member();
        member
            .take(&self.club.place, &person("Ana"), chosen, source, text)
            .await
            .expect("taken")
    }

    /// The reads and writes since this was last asked.
    fn asked(&self) -> (usize, usize) {
        let asked = &self.club.desk.inner.asked;
        (
            asked.reads.swap(0, Ordering::SeqCst),
            asked.writes.swap(0, Ordering::SeqCst),
        )
    }
}

async fn ask(club: &Club) -> PostId {
    let coach = club.desk.coach();
    let item = coach
        .enqueue_question(&club.place, &club.coach, "Why?", None, None, "")
        .await
        .expect("queued");
    club.post_of(item).await
}

#[tokio::test]
async fn an_explicit_answer_takes_one_read_and_two_writes() {
    let open = Three::open().await;
    open.asked();
    let taken = open.answer_to(open.two, "m1", "1.Rxd8+ Rxd8 2.Rxd8#").await;
    assert!(matches!(&taken, Taken::Answer(sheet) if sheet.verdict() == Verdict::Solved));
    assert_eq!(open.asked(), (1, 2));

    // Sent again, it is written down already, and what is shown once more was read with that.
    let again = open.answer_to(open.two, "m1", "1.Rxd8+ Rxd8 2.Rxd8#").await;
    assert!(matches!(&again, Taken::Answer(sheet) if sheet.verdict() == Verdict::Solved));
    assert_eq!(open.asked(), (1, 1));

    // Only in the third does a queen stand on d1: nothing is written.
    let asked = open.answer_to(open.two, "m2", "Qa1").await;
    assert!(matches!(&asked, Taken::AskedBack(asked) if asked.posts[0].post == open.three));
    assert_eq!(open.asked(), (1, 0));

    // Nobody but the coach judges what answers a question.
    let kept = open.answer_to(open.question, "m3", "The back rank").await;
    assert!(matches!(&kept, Taken::Answer(sheet) if sheet.outcome == Outcome::Kept));
    assert_eq!(open.asked(), (1, 1));
}

#[tokio::test]
async fn an_answer_among_other_messages_takes_one_read_and_two_writes() {
    let open = Three::open().await;
    open.asked();
    let came = open
        .take(Some(open.two), "t1", "1.Rxd8+ Rxd8 2.Rxd8#")
        .await;
    assert!(matches!(&came, Came::Answer(sheet) if sheet.verdict() == Verdict::Solved));
    assert_eq!(open.asked(), (1, 2));

    let again = open
        .take(Some(open.two), "t1", "1.Rxd8+ Rxd8 2.Rxd8#")
        .await;
    assert!(matches!(again, Came::Again(_)));
    assert_eq!(open.asked(), (1, 1));

    // Any words may answer a question, so where the post is not named it is asked about.
    let asked = open.take(None, "t2", "Qa1").await;
    assert!(matches!(&asked, Came::AskedBack(asked) if asked.why == Why::Several));
    assert_eq!(open.asked(), (1, 0));
}

#[tokio::test]
async fn talk_takes_one_read_and_two_writes() {
    let open = Three::open().await;
    open.asked();
    // Into the inbox, and out of it.
    let came = open.take(None, "t1", "good morning everybody").await;
    assert!(matches!(came, Came::Talk), "{came:?}");
    assert_eq!(open.asked(), (1, 2));

    let came = open.take(Some(open.two), "t2", "spoiler: Rd7").await;
    assert!(matches!(&came, Came::AskedBack(asked) if asked.why == Why::MayTell));
    assert_eq!(open.asked(), (1, 2));

    let member = open.club.desk.member();
    let tells = member.name_tells_a_move(&open.club.place, "Rd8 mate").await;
    assert!(tells.expect("read"));
    assert_eq!(open.asked(), (1, 0));
}
