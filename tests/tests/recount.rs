//! Figures against a recount: forty seeded groups play posts through the desk, and what leaderboard, summary,
//! tables and progress say is added up again from a journal of what was done and the rows of replies and
//! verdicts, in hundredths of a point, by code that shares nothing with the program's figures.

use std::{
    collections::{BTreeMap, BTreeSet},
    path::Path,
    sync::Arc,
    time::Duration,
};

use chrono::{DateTime, TimeDelta, Utc};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use sealed_move::chat::pictures;
use sealed_move::desk::{
    ChatKey, Delivered, Delivery, Desk, DeskOptions, Edited, ErrandKind, Manners, Names, Period,
    Person, Place, Points, Scale, Settings, SummaryTable, TestClock, Verdict, Weekdays,
};
use sealed_move_store::{PositionId, PostId, ReplyId, Store};

/// How many groups, unless `SEALED_MOVE_RECOUNT_GROUPS` says otherwise.
const GROUPS: u64 = 40;

/// Mates of our own making on the back rank, in one to three, of several topics and of none.
const POSITIONS: &str = "\
6k1/5ppp/8/8/8/8/8/R5K1 w - - id \"a\"; dm 1; c0 \"Réti\";
r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - id \"two\"; dm 2; c0 \"Back rank\";
6k1/5ppp/8/8/8/8/8/1R4K1 w - - id \"b\"; dm 1;
1rrr2k1/5ppp/8/8/8/3R4/3R1PPP/3Q2K1 w - - id \"three\"; dm 3; c0 \"Back rank\";
6k1/5ppp/8/8/8/8/8/2R3K1 w - - id \"c\"; dm 1; c0 \"Öffnung\";
";

const TEXTS: [&str; 10] = [
    "Ra8#",
    "Rb8#",
    "Rc8#",
    "Rxd8+",
    "Rd7",
    "h3",
    "Kf1",
    "hello there",
    "Rh8",
    "Rxd8+ Rxd8 Rxd8#",
];

/// What a member did, in order.
#[derive(Clone, Debug)]
enum Deed {
    Reply(ReplyId),
    Hint { number: u16, step: u8 },
    GaveUp,
}

/// What one member did at a post, each with its place in the order of everything done.
type Deeds = Vec<(usize, Deed)>;

/// What a post was and who did what at it.
struct Journal {
    post: PostId,
    question: bool,
    topic: Option<String>,
    closed: bool,
    deeds: BTreeMap<String, Deeds>,
}

/// One member's work at one post, as it is added up here.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Sum {
    tried: usize,
    solved: usize,
    first_try: usize,
    hundredths: i64,
    hints: usize,
    answered: usize,
}

impl Sum {
    fn add(&mut self, other: Self) {
        self.tried += other.tried;
        self.solved += other.solved;
        self.first_try += other.first_try;
        self.hundredths += other.hundredths;
        self.hints += other.hints;
        self.answered += other.answered;
    }
}

/// The verdict that counts on a reply: word, judge's hundredths, whether it was the first move, whose word.
struct Said {
    word: String,
    hundredths: i64,
    at_first: bool,
    by_coach: bool,
}

fn said(sql: &rusqlite::Connection, reply: ReplyId) -> Option<Said> {
    let mut rows = sql
        .prepare("SELECT verdict, points, wrong_first, by_coach, current FROM verdicts WHERE reply_id = ?1")
        .expect("a table of verdicts");
    let mut rows = rows.query([reply]).expect("a query");
    let mut found = None;
    while let Some(row) = rows.next().expect("a row") {
        if row.get::<_, i64>(4).expect("a flag") == 1 {
            let points: f64 = row.get(1).expect("points");
            found = Some(Said {
                word: row.get(0).expect("a word"),
                hundredths: (points * 100.0).round() as i64,
                at_first: row.get::<_, Option<String>>(2).expect("a move").is_some(),
                by_coach: row.get::<_, i64>(3).expect("a flag") == 1,
            });
        }
    }
    found
}

/// The prices of a group in hundredths.
#[derive(Clone, Copy)]
struct Prices {
    wrong: i64,
    hint: i64,
    least: i64,
}

fn recount(sql: &rusqlite::Connection, deeds: &[(usize, Deed)], prices: Prices) -> Option<Sum> {
    let (mut paid, mut hints, mut wrong, mut best) = (0, 0, 0, 0);
    let (mut shown, mut gone, mut done, mut part) = (false, false, false, false);
    let mut sum = Sum::default();
    for (_, deed) in deeds {
        let reply = match deed {
            Deed::Hint { step, .. } => {
                (hints, shown, part) = (hints + 1, shown || *step == 3, true);
                paid += prices.hint;
                continue;
            }
            Deed::GaveUp => {
                (gone, part) = (true, true);
                continue;
            }
            Deed::Reply(reply) => *reply,
        };
        let Some(said) = said(sql, reply) else {
            continue;
        };
        let settles = matches!(said.word.as_str(), "solved" | "on-the-way" | "wrong")
            || said.by_coach && said.hundredths > 0;
        part |= settles;
        if done || (gone && !said.by_coach) || !settles {
            continue;
        }
        if said.by_coach {
            best = said.hundredths;
        } else {
            let mut worth = (said.hundredths - paid).max(0);
            if said.word == "solved" && !shown {
                worth = worth.max(prices.least);
            }
            best = best.max(worth);
        }
        match said.word.as_str() {
            "solved" => {
                done = true;
                sum.solved = 1;
                sum.first_try = usize::from(wrong == 0 && hints == 0 && best == 500);
            }
            "wrong" => {
                wrong += 1;
                paid += if said.at_first {
                    prices.wrong
                } else {
                    prices.wrong.min(100)
                };
            }
            _ => {}
        }
    }
    sum.tried = 1;
    sum.hundredths = best;
    sum.hints = hints;
    part.then_some(sum)
}

/// At a question: an answer in time, or one that was marked, takes part; the last mark counts.
fn recount_answers(
    sql: &rusqlite::Connection,
    post: PostId,
    deeds: &[(usize, Deed)],
) -> Option<Sum> {
    let column = |sql: &str, table: &rusqlite::Connection, id: i64| -> String {
        table
            .query_row(sql, [id], |row| row.get(0))
            .expect("a moment")
    };
    let closes = column("SELECT closes_at FROM posts WHERE id = ?1", sql, post.get());
    let mut sum = Sum::default();
    for (_, deed) in deeds {
        let Deed::Reply(reply) = deed else {
            unreachable!("{deed:?} at a question");
        };
        let came = column(
            "SELECT received_at FROM replies WHERE id = ?1",
            sql,
            reply.get(),
        );
        let mark = said(sql, *reply);
        if mark.is_some() || came < closes {
            sum.answered = 1;
        }
        sum.hundredths = mark.map_or(sum.hundredths, |mark| {
            assert!(mark.by_coach && mark.word == "marked", "{}", mark.word);
            mark.hundredths
        });
    }
    (sum.answered == 1).then_some(sum)
}

/// A group while it plays.
struct Group {
    desk: Desk,
    clock: TestClock,
    place: Place,
    coach: Person,
    rng: ChaCha8Rng,
    sent: usize,
    done: usize,
    replies: Vec<ReplyId>,
    /// Answers to questions.
    answers: Vec<ReplyId>,
    hints_had: BTreeSet<(PostId, String, u16, u8)>,
}

fn person(name: &str) -> Person {
    Person {
        user: format!("u-{name}"),
        name: name.to_owned(),
        language: None,
    }
}

impl Group {
    fn now(&self) -> DateTime<Utc> {
        self.desk.now()
    }

    fn wait(&self, seconds: i64) {
        self.clock.set(self.now() + TimeDelta::seconds(seconds));
    }

    /// Carries out the errand that is due now: a post, or a reveal.
    async fn carry(&self) {
        loop {
            let next = self.desk.rounds().next_errand(ChatKey::of("room"));
            let errand = tokio::time::timeout(Duration::from_secs(30), next)
                .await
                .expect("an errand is due")
                .expect("an errand");
            let last = matches!(
                errand.kind,
                ErrandKind::Post { .. } | ErrandKind::Reveal { .. }
            );
            let delivered = Delivered {
                message: Some(format!("m{}", self.now())),
                thread: None,
            };
            self.desk
                .rounds()
                .errand_done(&errand, &delivered)
                .await
                .expect("carried out");
            if last {
                return;
            }
        }
    }

    async fn act(&mut self, journal: &mut Journal, who: &str) {
        let (post, me) = (journal.post, person(who));
        let deeds = journal.deeds.entry(who.to_owned()).or_default();
        self.done += 1;
        let at = self.done;
        match self.rng.random_range(0..12) {
            0..=6 => {
                let text = TEXTS[self.rng.random_range(0..TEXTS.len())];
                self.sent += 1;
                let source = format!("s{}", self.sent);
                let sheet = self
                    .desk
                    .member()
                    .answer(&self.place, &me, post, &source, text)
                    .await;
                let sheet = sheet.expect("an answer is taken");
                deeds.push((at, Deed::Reply(sheet.reply)));
                self.replies.push(sheet.reply);
                // What was shown is what was counted.
                let rows = self
                    .desk
                    .member()
                    .my_replies(&self.place, &me, post)
                    .await
                    .expect("replies");
                let last = rows.last().expect("the one just sent");
                assert_eq!(
                    (last.reply, last.points),
                    (sheet.reply, sheet.points),
                    "{text}"
                );
            }
            7..=9 => {
                if let Ok(hint) = self.desk.member().hint(&self.place, &me, post).await {
                    let key = (post, who.to_owned(), hint.number, hint.step);
                    if self.hints_had.insert(key) {
                        let (number, step) = (hint.number, hint.step);
                        deeds.push((at, Deed::Hint { number, step }));
                    }
                }
            }
            10 => {
                let before = self
                    .desk
                    .member()
                    .own_post(&self.place, &me, post)
                    .await
                    .expect("a sheet");
                if self
                    .desk
                    .member()
                    .give_up(&self.place, &me, post)
                    .await
                    .is_ok()
                    && before.live
                {
                    deeds.push((at, Deed::GaveUp));
                }
            }
            _ => {
                // Somebody else's message is none of theirs to edit; theirs may be, and counts anew then.
                let source = format!("s{}", self.sent);
                let text = TEXTS[self.rng.random_range(0..TEXTS.len())];
                let edited = self
                    .desk
                    .member()
                    .edit_reply(&self.place, &me, &source, text)
                    .await;
                if let Edited::Judged(sheet) = edited.expect("an edit is taken") {
                    deeds
                        .retain(|(_, deed)| !matches!(deed, Deed::Reply(id) if *id == sheet.reply));
                    deeds.push((at, Deed::Reply(sheet.reply)));
                }
            }
        }
    }

    /// Answers a question, or writes the last answer anew.
    async fn respond(&mut self, journal: &mut Journal, who: &str) {
        let (post, me) = (journal.post, person(who));
        self.done += 1;
        if self.rng.random_range(0..4) == 0 {
            // Who wrote it and whether it was settled decides what comes of it; the answer stays the same one.
            let source = format!("s{}", self.sent);
            let edited = self
                .desk
                .member()
                .edit_reply(&self.place, &me, &source, "Anew")
                .await;
            edited.expect("an edit is taken");
            return;
        }
        self.sent += 1;
        let source = format!("s{}", self.sent);
        let sheet = self
            .desk
            .member()
            .answer(&self.place, &me, post, &source, "Rb8# or so")
            .await;
        let sheet = sheet.expect("an answer is taken");
        let deeds = journal.deeds.entry(who.to_owned()).or_default();
        deeds.push((self.done, Deed::Reply(sheet.reply)));
        self.answers.push(sheet.reply);
    }

    /// Marks an answer to a question, or marks it anew.
    async fn mark(&mut self) {
        if self.answers.is_empty() {
            return;
        }
        let reply = self.answers[self.rng.random_range(0..self.answers.len())];
        let points = Points::of(f64::from(self.rng.random_range(0..=10u8)) / 2.0);
        // One that is gone with its member cannot be marked.
        let _ = self
            .desk
            .coach()
            .mark_answer(&self.place, &self.coach, reply, points, "")
            .await;
    }

    /// Makes two members one, where both did something.
    async fn merge(&self, keep: &str, gone: &str, journals: &mut [Journal]) {
        let known = async |name: &str| {
            let user = person(name).user;
            self.desk
                .coach()
                .member_known_as(&self.place, &self.coach, &user)
                .await
        };
        let (Ok(first), Ok(second)) = (known(keep).await, known(gone).await) else {
            return;
        };
        self.desk
            .coach()
            .merge(&self.place, &self.coach, first, second)
            .await
            .expect("merged");
        for journal in journals {
            let mut deeds = journal.deeds.remove(gone).unwrap_or_default();
            deeds.append(&mut journal.deeds.remove(keep).unwrap_or_default());
            deeds.sort_by_key(|(at, _)| *at);
            // A step that both took was shown to one person once.
            let mut had = BTreeSet::new();
            deeds.retain(|(_, deed)| match deed {
                Deed::Hint { number, step } => had.insert((*number, *step)),
                Deed::Reply(_) | Deed::GaveUp => true,
            });
            journal.deeds.insert(keep.to_owned(), deeds);
        }
    }

    async fn overrule(&mut self) {
        if self.replies.is_empty() {
            return;
        }
        let reply = self.replies[self.rng.random_range(0..self.replies.len())];
        let verdict = [
            Verdict::Solved,
            Verdict::Wrong,
            Verdict::OnTheWay,
            Verdict::Unclear,
        ][self.rng.random_range(0..4)];
        let points = Points::of(f64::from(self.rng.random_range(0..=10u8)) / 2.0);
        // One that nothing decided, or that is gone with its member, cannot be overruled.
        let _ = self
            .desk
            .coach()
            .overrule(&self.place, &self.coach, reply, verdict, points, "")
            .await;
    }
}

/// What is posted in turn.
enum Planned {
    Problem(PositionId),
    Question(Option<&'static str>),
    Words,
}

async fn one_group(seed: u64, folder: &Path) {
    let file = folder.join(format!("{seed}.sqlite"));
    let clock = TestClock::at("2026-03-02T10:00:00Z".parse().expect("a moment"));
    let store = Store::open(&file).expect("a store");
    let desk = Desk::with_options(
        store,
        Arc::new(clock.clone()),
        DeskOptions::speaking(pictures::say),
    );
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let settings = Settings {
        points: if seed.is_multiple_of(3) {
            Scale::Tournament
        } else {
            Scale::Club
        },
        wrong_cost: if seed.is_multiple_of(2) {
            Points::of(1.0)
        } else {
            Points::of(f64::from(rng.random_range(0..=40u8)) / 20.0)
        },
        hint_cost: if seed.is_multiple_of(2) {
            Points::of(1.0)
        } else {
            Points::of(f64::from(rng.random_range(0..=30u8)) / 20.0)
        },
        days: Weekdays::none(),
        ..Settings::default()
    };
    let hundredths = |points: Points| (f64::from(points) * 100.0).round() as i64;
    let prices = match settings.points {
        Scale::Tournament => Prices {
            wrong: 500,
            hint: hundredths(settings.hint_cost),
            least: 0,
        },
        Scale::Club => Prices {
            wrong: hundredths(settings.wrong_cost),
            hint: hundredths(settings.hint_cost),
            least: 100,
        },
    };
    let place = Place {
        chat: ChatKey::of("room"),
        channel: "club".into(),
    };
    let coach = person("Coach");
    desk.found_group(
        &place,
        Manners {
            names: Names::ByMember,
            delivery: Delivery::Shown,
        },
        None,
        settings,
        &coach,
    )
    .await
    .expect("founded");
    let checked = desk
        .coach()
        .import(
            &place,
            &coach,
            "week.epd",
            POSITIONS.into(),
            Arc::new(|_, _| {}),
        )
        .await
        .expect("read");
    let mut group = Group {
        desk,
        clock,
        place,
        coach,
        rng,
        sent: 0,
        done: 0,
        replies: Vec::new(),
        answers: Vec::new(),
        hints_had: BTreeSet::new(),
    };
    let mut journals = Vec::new();
    let merges = seed % 4 == 1;
    let mut members = vec!["Ana".to_owned(), "bruno".to_owned(), "Çelia".to_owned()];
    // A question about the first problem's topic, one about none, and what is only read, among the problems.
    let mut plan: Vec<Planned> = checked
        .iter()
        .map(|position| Planned::Problem(position.position.expect("kept")))
        .collect();
    plan.insert(1, Planned::Question(Some("Réti")));
    plan.insert(3, Planned::Words);
    plan.insert(4, Planned::Question(None));
    let last = plan.len() - 1;
    for (n, planned) in plan.into_iter().enumerate() {
        let (desk, place, coach) = (&group.desk, &group.place, &group.coach);
        let item = match &planned {
            Planned::Problem(id) => desk.coach().enqueue(place, coach, *id, false).await,
            Planned::Question(topic) => {
                desk.coach()
                    .enqueue_question(
                        place,
                        coach,
                        "Why?",
                        None,
                        topic.map(|name| name.parse().expect("a topic")),
                        "",
                    )
                    .await
            }
            Planned::Words => {
                desk.coach()
                    .enqueue_words(place, coach, "Read.", None, None)
                    .await
            }
        };
        let item = item.expect("queued");
        if group.rng.random_range(0..4) == 0 {
            group
                .desk
                .coach()
                .pause(&group.place, &group.coach, None)
                .await
                .expect("paused");
        }
        group
            .desk
            .coach()
            .post_now(&group.place, &group.coach, Some(item))
            .await
            .expect("posted");
        group.carry().await;
        let open = group.desk.open_post(&group.place).await.expect("asked");
        let open = match (&planned, open) {
            (Planned::Words, None) => {
                group.wait(3600 * 24);
                continue;
            }
            (_, open) => open.expect("open"),
        };
        let question = matches!(planned, Planned::Question(_));
        let mut journal = Journal {
            post: open.post,
            question,
            topic: open.topic,
            closed: false,
            deeds: BTreeMap::new(),
        };
        // Somebody joins late.
        members.push(format!("Late {n}"));
        for _ in 0..group.rng.random_range(4..14) {
            // Two who become one are told apart by the seconds.
            let seconds = group.rng.random_range(i64::from(merges)..3);
            group.wait(seconds);
            let who = members[group.rng.random_range(0..members.len())].clone();
            match question {
                true => group.respond(&mut journal, &who).await,
                false => group.act(&mut journal, &who).await,
            }
        }
        if group.rng.random_range(0..2) == 0 {
            group.mark().await;
        }
        if group.rng.random_range(0..3) == 0 {
            group.overrule().await;
        }
        // The last post may stay open: it is not in what the group sees.
        if n < last || seed.is_multiple_of(2) {
            group
                .desk
                .coach()
                .close_now(&group.place, &group.coach, open.post)
                .await
                .expect("closed");
            group.carry().await;
            journal.closed = true;
            // Too late: it is kept and does not count.
            group.sent += 1;
            let late = format!("s{}", group.sent);
            let who = person(&members[0]);
            let came = group
                .desk
                .member()
                .answer(&group.place, &who, open.post, &late, "Rd7")
                .await;
            if let (true, Ok(sheet)) = (question, came) {
                // A coach may still mark it, and then it counts.
                group.done += 1;
                let deeds = journal.deeds.entry(members[0].clone()).or_default();
                deeds.push((group.done, Deed::Reply(sheet.reply)));
                group.answers.push(sheet.reply);
            }
        }
        group.wait(3600 * 24);
        journals.push(journal);
    }
    group.overrule().await;
    for _ in 0..3 {
        group.mark().await;
    }
    if seed.is_multiple_of(5) {
        let gone = members.remove(1);
        let _ = group
            .desk
            .member()
            .erase_me(&group.place, &person(&gone))
            .await;
        for journal in &mut journals {
            journal.deeds.remove(&gone);
        }
    }
    if merges {
        group.merge("Ana", "Çelia", &mut journals).await;
    }
    compare(&group, &journals, &file, prices, seed).await;
}

fn written(hundredths: i64) -> String {
    let text = format!("{}.{:02}", hundredths / 100, hundredths % 100);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

async fn compare(group: &Group, journals: &[Journal], file: &Path, prices: Prices, seed: u64) {
    let sql = rusqlite::Connection::open(file).expect("the store's file");
    let (desk, place, all) = (&group.desk, &group.place, Period::default());
    let mut shown: BTreeMap<&str, Sum> = BTreeMap::new();
    let mut own: BTreeMap<&str, Sum> = BTreeMap::new();
    // Problems, questions, and what they came to.
    let mut by_topic: BTreeMap<&str, (usize, usize, Sum)> = BTreeMap::new();
    let mut by_post = Vec::new();
    for journal in journals {
        let mut of_post = Sum::default();
        for (who, deeds) in &journal.deeds {
            let sum = match journal.question {
                true => recount_answers(&sql, journal.post, deeds),
                false => recount(&sql, deeds, prices),
            };
            let Some(sum) = sum else {
                continue;
            };
            own.entry(who).or_default().add(sum);
            if journal.closed {
                shown.entry(who).or_default().add(sum);
                of_post.add(sum);
            }
        }
        if journal.closed {
            by_post.push(of_post);
            if let Some(topic) = &journal.topic {
                let (problems, questions, sum) = by_topic.entry(topic).or_default();
                *problems += usize::from(!journal.question);
                *questions += usize::from(journal.question);
                sum.add(of_post);
            }
        }
    }

    let board = desk.leaderboard(place, &all).await.expect("a leaderboard");
    let rows: BTreeMap<&str, (String, [usize; 3])> = board
        .rows
        .iter()
        .map(|row| {
            let done = [row.solved, row.tried, row.answered];
            (row.name.as_str(), (row.points.to_string(), done))
        })
        .collect();
    let wanted: BTreeMap<&str, (String, [usize; 3])> = shown
        .iter()
        .map(|(who, sum)| {
            let done = [sum.solved, sum.tried, sum.answered];
            (*who, (written(sum.hundredths), done))
        })
        .collect();
    assert_eq!(rows, wanted, "leaderboard of group {seed}");
    for row in &board.rows {
        let ahead = shown
            .values()
            .filter(|sum| sum.hundredths > shown[row.name.as_str()].hundredths);
        assert_eq!(
            row.rank,
            ahead.count() + 1,
            "rank of {} in group {seed}",
            row.name
        );
    }

    let summary = desk.coach().summary(place, &all).await.expect("a summary");
    let json = serde_json::to_value(&summary).expect("JSON");
    for row in json["members"].as_array().expect("members") {
        let sum = shown
            .get(row["name"].as_str().expect("a name"))
            .copied()
            .unwrap_or_default();
        let said = [
            &row["tried"],
            &row["solved"],
            &row["first_try"],
            &row["hints"],
            &row["answered"],
        ];
        let wanted = [
            sum.tried,
            sum.solved,
            sum.first_try,
            sum.hints,
            sum.answered,
        ];
        assert_eq!(
            said.map(|n| n.as_u64()),
            wanted.map(|n| Some(n as u64)),
            "{row} of group {seed}"
        );
        assert_eq!(
            row["points"].as_f64().map(|p| p.to_string()),
            Some(written(sum.hundredths))
        );
    }
    let posts: Vec<_> = summary
        .posts
        .iter()
        .map(|p| (p.tried, p.solved, p.first_try))
        .collect();
    // How many tried a problem, or answered a question.
    let wanted: Vec<_> = by_post
        .iter()
        .map(|p| (p.tried + p.answered, p.solved, p.first_try))
        .collect();
    assert_eq!(posts, wanted, "posts of group {seed}");
    let topics: BTreeMap<_, _> = summary
        .topics
        .iter()
        .map(|t| {
            let done = [t.tried, t.solved, t.first_try, t.answered];
            (t.name(), (t.posts, t.questions, done))
        })
        .collect();
    let wanted: BTreeMap<_, _> = by_topic
        .iter()
        .map(|(topic, (problems, questions, s))| {
            let done = [s.tried, s.solved, s.first_try, s.answered];
            (*topic, (*problems, *questions, done))
        })
        .collect();
    assert_eq!(topics, wanted, "topics of group {seed}");

    let csv = summary.csv(SummaryTable::Members).expect("a table");
    let lines: BTreeSet<&str> = csv.lines().skip(1).collect();
    for (who, sum) in &shown {
        let line = format!(
            "{who},{},{},{},{},{},{}",
            sum.tried,
            sum.solved,
            sum.first_try,
            written(sum.hundredths),
            sum.hints,
            sum.answered
        );
        assert!(
            lines.contains(line.as_str()),
            "{line} of group {seed} in\n{csv}"
        );
    }
    let csv = board.csv().expect("a table");
    for row in &board.rows {
        let sum = shown[row.name.as_str()];
        let line = format!(
            "{},{},{},{},{},{}",
            row.rank,
            row.name,
            written(sum.hundredths),
            sum.solved,
            sum.tried,
            sum.answered
        );
        assert!(
            csv.lines().any(|l| l == line),
            "{line} of group {seed} in\n{csv}"
        );
    }
    for (who, sum) in &own {
        let progress = desk
            .member()
            .progress(place, &person(who))
            .await
            .expect("progress");
        let tried: usize = progress.topics.iter().map(|t| t.tried).sum();
        let solved: usize = progress.topics.iter().map(|t| t.solved).sum();
        let answered: usize = progress.topics.iter().map(|t| t.answered).sum();
        assert_eq!(
            (progress.points.to_string(), tried, solved, answered),
            (written(sum.hundredths), sum.tried, sum.solved, sum.answered),
            "{who} of group {seed}"
        );
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn figures_agree_with_a_recount_in_forty_groups() {
    let folder = tempfile::tempdir().expect("a folder");
    let groups = std::env::var("SEALED_MOVE_RECOUNT_GROUPS").ok();
    let groups = groups.map_or(GROUPS, |groups| groups.parse().expect("a number of groups"));
    for seed in 0..groups {
        one_group(seed, folder.path()).await;
    }
}
