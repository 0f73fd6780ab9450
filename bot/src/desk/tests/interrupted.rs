//! The program stops between a message's arrival and its verdict: it is on disk by then, and is judged at
//! the next start, once.

use super::*;
use sealed_move_store::Via;

const MONDAY: &str = "2026-11-23T09:00:00Z";

/// Keeps every place of the pool for verdicts taken, so that whatever is being judged waits.
struct Busy {
    _ends: Vec<std::sync::mpsc::Sender<()>>,
}

impl Busy {
    async fn keep(desk: &Desk) -> Self {
        let mut ends = Vec::new();
        for _ in 0..desk.options().threads {
            let (end, ended) = std::sync::mpsc::channel::<()>();
            let (taken, mut takes) = tokio::sync::mpsc::channel::<()>(1);
            let pool = desk.inner.quick.clone();
            tokio::spawn(async move {
                pool.run("holding", 3600.0, move |_| {
                    drop(taken);
                    let _ = ended.recv();
                })
                .await
            });
            assert_eq!(takes.recv().await, None);
            ends.push(end);
        }
        Self { _ends: ends }
    }
}

/// The texts in the inbox.
async fn inbox(desk: &Desk) -> Vec<String> {
    let kept = desk.inner.store.read(|db| db.inbox()).await.expect("read");
    kept.into_iter().map(|entry| entry.text).collect()
}

/// The texts of the replies to a post, with their verdicts.
async fn replies(club: &Club, post: PostId) -> Vec<(String, Option<Verdict>)> {
    let rows = club
        .desk
        .coach()
        .replies(&club.place, &club.coach, post)
        .await;
    let rows = rows.expect("read");
    rows.into_iter()
        .map(|row| (row.text, row.verdict.and_then(Outcome::verdict)))
        .collect()
}

/// Begins `call`, waits until `written` holds of the store, and ends the program there.
async fn interrupted<T: Send + 'static>(
    club: &mut Club,
    call: impl Future<Output = T> + Send + 'static,
    written: impl AsyncFn(&Club) -> bool,
) {
    let calling = tokio::spawn(call);
    while !written(club).await {
        assert!(
            !calling.is_finished(),
            "it was judged before it was written down"
        );
        tokio::task::yield_now().await;
    }
    calling.abort();
    club.restart();
}

#[tokio::test]
async fn a_message_is_on_disk_before_it_is_judged_and_judged_once_after_a_crash() {
    let mut club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    let (desk, place) = (club.desk.clone(), club.place.clone());
    desk.member()
        .answer(&place, &person("Ben"), post, "warm", "Rd7")
        .await
        .expect("judged, and the solution is proved");
    let busy = Busy::keep(&desk).await;
    let hears = async move {
        desk.member()
            .take(
                &place,
                &person("Ana"),
                Some(post),
                "m1",
                "1.Rxd8+ Rxd8 2.Rxd8#",
            )
            .await
    };
    interrupted(&mut club, hears, async |club| {
        !inbox(&club.desk).await.is_empty()
    })
    .await;
    drop(busy);
    assert_eq!(replies(&club, post).await.len(), 1, "Ben's alone");
    let name = club.desk.name_of(&club.place, "u-Ana").await;
    assert_eq!(
        name.expect("read"),
        None,
        "no member before it is an answer"
    );

    let told = club.errand().await.expect("a word to Ana");
    assert!(said(&told).starts_with("u-Ana: "), "{}", said(&told));
    club.carried(&told).await;
    assert!(club.errand().await.is_none());
    let judged = [
        ("Rd7".to_owned(), Some(Verdict::Wrong)),
        ("1.Rxd8+ Rxd8 2.Rxd8#".to_owned(), Some(Verdict::Solved)),
    ];
    assert_eq!(replies(&club, post).await, judged);
    assert!(inbox(&club.desk).await.is_empty());

    // Heard once more, as when the chat repeats itself, and after one more start.
    let again = club
        .desk
        .member()
        .take(
            &club.place,
            &person("Ana"),
            Some(post),
            "m1",
            "1.Rxd8+ Rxd8 2.Rxd8#",
        )
        .await;
    assert!(matches!(again, Ok(Came::Again(_))), "{again:?}");
    club.restart();
    assert_eq!(club.desk.rounds().judge_pending().await.expect("judged"), 0);
    assert_eq!(replies(&club, post).await, judged);
}

#[tokio::test]
async fn of_talk_nothing_is_kept_whether_or_not_the_program_stops() {
    let mut club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    let talk = "good morning everybody, lovely weather";
    let heard = club
        .desk
        .member()
        .take(&club.place, &person("Ana"), Some(post), "t1", talk)
        .await;
    assert!(matches!(heard, Ok(Came::Talk)), "{heard:?}");
    assert!(inbox(&club.desk).await.is_empty());

    let busy = Busy::keep(&club.desk).await;
    let (desk, place) = (club.desk.clone(), club.place.clone());
    let hears = async move {
        let ana = person("Ana");
        desk.member()
            .take(&place, &ana, Some(post), "t2", talk)
            .await
    };
    interrupted(&mut club, hears, async |club| {
        !inbox(&club.desk).await.is_empty()
    })
    .await;
    drop(busy);
    assert_eq!(inbox(&club.desk).await, [talk]);
    assert_eq!(club.desk.rounds().judge_pending().await.expect("judged"), 0);
    assert!(inbox(&club.desk).await.is_empty());
    assert!(replies(&club, post).await.is_empty());
    assert!(club.errand().await.is_none(), "nobody is told");
    let name = club.desk.name_of(&club.place, "u-Ana").await;
    assert_eq!(name.expect("read"), None);
}

#[tokio::test]
async fn an_explicit_answer_is_on_disk_before_it_is_judged() {
    let mut club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    let (desk, place) = (club.desk.clone(), club.place.clone());
    let busy = Busy::keep(&desk).await;
    let answers = async move {
        let ana = person("Ana");
        desk.member().answer(&place, &ana, post, "m1", "Rd7").await
    };
    interrupted(&mut club, answers, async |club| {
        !replies(club, post).await.is_empty()
    })
    .await;
    drop(busy);
    assert_eq!(replies(&club, post).await, [("Rd7".to_owned(), None)]);
    assert_eq!(club.desk.rounds().judge_pending().await.expect("judged"), 1);
    assert_eq!(club.desk.rounds().judge_pending().await.expect("judged"), 0);
    let judged = [("Rd7".to_owned(), Some(Verdict::Wrong))];
    assert_eq!(replies(&club, post).await, judged);
}

#[tokio::test]
async fn the_new_text_of_a_message_is_on_disk_before_it_is_judged() {
    let mut club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("two").await;
    let unclear = club
        .desk
        .member()
        .answer(&club.place, &person("Ana"), post, "m1", "Rd9")
        .await
        .expect("judged");
    assert!(!matches!(
        unclear.verdict(),
        Verdict::Solved | Verdict::Wrong
    ));
    let (desk, place) = (club.desk.clone(), club.place.clone());
    let busy = Busy::keep(&desk).await;
    let edits = async move {
        let ana = person("Ana");
        desk.member()
            .edit_reply(&place, &ana, "m1", "Rxd8+ Rxd8 Rxd8#")
            .await
    };
    interrupted(&mut club, edits, async |club| {
        !inbox(&club.desk).await.is_empty()
    })
    .await;
    drop(busy);
    assert_eq!(club.desk.rounds().judge_pending().await.expect("judged"), 1);
    let judged = [("Rxd8+ Rxd8 Rxd8#".to_owned(), Some(Verdict::Solved))];
    assert_eq!(replies(&club, post).await, judged);
    assert!(inbox(&club.desk).await.is_empty());
    assert_eq!(club.desk.rounds().judge_pending().await.expect("judged"), 0);
}

#[tokio::test]
async fn what_came_before_the_crash_is_judged_before_what_comes_after() {
    let mut club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = club.open("three").await;
    let key = club
        .desk
        .member()
        .answer(&club.place, &person("Ben"), post, "b1", "Rxd8+")
        .await
        .expect("judged");
    assert_eq!(key.verdict(), Verdict::OnTheWay);
    let (desk, place) = (club.desk.clone(), club.place.clone());
    let busy = Busy::keep(&desk).await;
    let hears = async move {
        desk.member()
            .take(&place, &person("Ana"), Some(post), "m1", "Rxd8+")
            .await
    };
    interrupted(&mut club, hears, async |club| {
        !inbox(&club.desk).await.is_empty()
    })
    .await;
    drop(busy);
    // The next move of the line comes before anything else has looked at what was left.
    let next = club
        .desk
        .member()
        .answer(&club.place, &person("Ana"), post, "m2", "Rxd8+")
        .await
        .expect("judged");
    assert!(matches!(next.verdict(), Verdict::OnTheWay), "{next:?}");
    let rows = club
        .desk
        .member()
        .my_replies(&club.place, &person("Ana"), post)
        .await;
    let texts: Vec<_> = rows
        .expect("read")
        .into_iter()
        .map(|row| row.verdict)
        .collect();
    assert_eq!(texts, [Some(Outcome::Judged(Verdict::OnTheWay)); 2]);
    let store = &club.desk.inner.store;
    let via = store
        .read(move |db| db.replies_to(post))
        .await
        .expect("read");
    assert_eq!(via.last().map(|of| of.reply.via), Some(Via::Answer));
}

#[tokio::test]
async fn a_post_closed_between_its_message_and_its_thread_is_revealed_in_the_thread() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    club.fill(&club.place, 1).await;
    club.desk
        .coach()
        .post_now(&club.place, &club.coach, None)
        .await
        .expect("noted");
    let errand = club.errand().await.expect("a post");
    let ErrandKind::Post { sheet, .. } = &errand.kind else {
        panic!("{errand:?}");
    };
    club.desk
        .rounds()
        .step_done(&errand, Step::Post(0), Some("message"))
        .await
        .expect("written down");
    club.desk
        .coach()
        .close_now(&club.place, &club.coach, sheet.post)
        .await
        .expect("closed");
    let delivered = Delivered {
        message: Some("message".into()),
        thread: Some("thread".into()),
    };
    club.desk
        .rounds()
        .errand_done(&errand, &delivered)
        .await
        .expect("written down");
    let reveal = club.errand().await.expect("a reveal");
    let ErrandKind::Reveal { sheet, .. } = &reveal.kind else {
        panic!("{reveal:?}");
    };
    assert_eq!(sheet.post.thread.as_deref(), Some("thread"));
}
