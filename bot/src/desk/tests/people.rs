//! Members and their messages in the coaches' hands, and the coaches themselves.

use super::*;

const NOW: &str = "2026-11-23T09:00:00Z";
/// A position that only the coach can judge: nothing of it is proved.
const BY_HAND: &str = "8/8/8/4k3/8/4K3/4P3/8 w - - id \"king\"; bm Kd3;";

async fn entered(club: &Club, name: &str) -> MemberId {
    let who = person(name);
    club.desk
        .member()
        .enter(&club.place, &who)
        .await
        .expect("entered");
    id_of(club, name).await
}

async fn id_of(club: &Club, name: &str) -> MemberId {
    match club.desk.standing(&club.place, &person(name).user).await {
        Ok(Standing::Member(member)) => member.id,
        other => panic!("{name} is a member, not {other:?}"),
    }
}

async fn answer(club: &Club, name: &str, post: PostId, source: &str, text: &str) -> VerdictSheet {
    club.desk
        .member()
        .answer(&club.place, &person(name), post, source, text)
        .await
        .expect("judged")
}

async fn seen(club: &Club) -> Vec<String> {
    let lines = club.desk.talk_before(&club.place, None, 50).await;
    let lines = lines.expect("read");
    lines.into_iter().map(|line| line.text).collect()
}

fn refused<T: std::fmt::Debug>(done: Result<T, DeskError>) -> String {
    match done {
        Err(DeskError::NotAllowed(why) | DeskError::BadRequest(why) | DeskError::NotFound(why)) => {
            english().say(&why)
        }
        other => panic!("refused, not {other:?}"),
    }
}

#[tokio::test]
async fn what_is_taken_back_or_hidden_is_gone_for_all_and_kept_for_the_coach() {
    let club = Club::new(NOW, chrono_tz::UTC).await;
    let (desk, place) = (&club.desk, &club.place);
    for name in ["Ana", "Bruno"] {
        entered(&club, name).await;
    }
    let said = async |name: &str, text: &str| {
        desk.member()
            .say(place, &person(name), text)
            .await
            .expect("said")
    };
    let (own, rude, fine) = (
        said("Ana", "my number is 555").await,
        said("Bruno", "something rude").await,
        said("Ana", "good evening").await,
    );
    // Nobody takes back another's, nor hides without being a coach; both sound as if there were none.
    let foreign = refused(desk.member().take_back(place, &person("Bruno"), own).await);
    let none = refused(desk.member().take_back(place, &person("Bruno"), 999).await);
    assert_eq!(foreign, none);
    refused(desk.coach().hide(place, &person("Ana"), rude).await);
    refused(
        desk.coach()
            .watched_talk(place, &person("Ana"), None, 9)
            .await,
    );
    assert_eq!(seen(&club).await.len(), 3);

    club.set("2026-11-23T09:05:00Z");
    desk.member()
        .take_back(place, &person("Ana"), own)
        .await
        .expect("taken back");
    club.set("2026-11-23T09:06:00Z");
    desk.coach()
        .hide(place, &club.coach, rude)
        .await
        .expect("hidden");
    assert_eq!(seen(&club).await, ["good evening"]);
    let after = desk.talk(place, 0, 50).await.expect("read");
    assert_eq!(after.iter().map(|line| line.id).collect::<Vec<_>>(), [fine]);
    let mut gone = desk.gone_lines(place, fine).await.expect("read");
    gone.sort_unstable();
    assert_eq!(gone, [own, rude]);

    let watched = desk.coach().watched_talk(place, &club.coach, None, 9).await;
    let watched = watched.expect("read");
    let told: Vec<_> = watched
        .iter()
        .map(|row| {
            let gone = row.gone.as_ref();
            (
                row.line.text.as_str(),
                gone.map(|gone| (gone.how, gone.by.as_deref(), gone.at)),
            )
        })
        .collect();
    assert_eq!(
        told,
        [
            (
                "my number is 555",
                Some((How::TakenBack, Some("Ana"), at("2026-11-23T09:05:00Z")))
            ),
            (
                "something rude",
                Some((How::Hidden, Some("Coach"), at("2026-11-23T09:06:00Z")))
            ),
            ("good evening", None),
        ]
    );
    // The writer's word stands; the coach's own can be undone.
    assert!(
        refused(desk.coach().put_back(place, &club.coach, own).await).contains("took this back")
    );
    desk.coach()
        .put_back(place, &club.coach, rude)
        .await
        .expect("shown");
    assert_eq!(seen(&club).await, ["something rude", "good evening"]);

    // It is a part of what is kept of its writer, and goes with them.
    let kept = desk
        .member()
        .kept_of_me(place, &person("Ana"))
        .await
        .expect("kept");
    assert_eq!(kept["talk"][0]["text"], "my number is 555");
    assert_eq!(kept["talk"][0]["gone"]["by"], "Ana");
    desk.member()
        .erase_me(place, &person("Ana"))
        .await
        .expect("erased");
    let watched = desk.coach().watched_talk(place, &club.coach, None, 9).await;
    assert_eq!(watched.expect("read").len(), 1);
}

#[tokio::test]
async fn a_coach_is_marked_by_rank_and_nobody_takes_a_name_that_looks_like_anothers() {
    let club = Club::new(NOW, chrono_tz::UTC).await;
    let (desk, place) = (&club.desk, &club.place);
    let kim = Person {
        user: "kim".into(),
        name: "Kim".into(),
        language: None,
    };
    desk.coach()
        .enter_as_coach(place, &kim)
        .await
        .expect("a coach");
    entered(&club, "Ana").await;
    for (taken, offer) in [
        ("Kim", "Kim 2"),
        ("kim", "kim 2"),
        ("К\u{456}m", "К\u{456}m 2"),
        ("K i m", "K i m 2"),
        ("Kím", "Kím 2"),
        ("An\u{430}", "An\u{430} 2"),
        ("Coach Bo", "Bo"),
        ("c0ach", "Member 2"),
    ] {
        let new = Person {
            user: "new".into(),
            name: taken.into(),
            language: None,
        };
        match desk.member().enter(place, &new).await {
            Err(DeskError::NameTaken { why, offer: free }) => {
                let text = english().say(&why);
                assert_eq!(free, offer, "{taken}");
                assert!(text.contains("Choose another name"), "{text}");
            }
            other => panic!("{taken}: {other:?}"),
        }
        let free = Person {
            user: format!("free {offer}"),
            name: offer.into(),
            language: None,
        };
        desk.member().enter(place, &free).await.expect(offer);
        let gone = desk.member().erase_me(place, &free).await;
        gone.expect("erased");
    }
    // Nor is one renamed to it, by themselves or by a coach; one's own name stays one's own.
    assert!(matches!(
        desk.coach()
            .rename(place, &kim, id_of(&club, "Ana").await, "kirn")
            .await,
        Err(DeskError::NameTaken { .. })
    ));
    assert!(matches!(
        desk.coach()
            .rename(place, &kim, id_of(&club, "Ana").await, "KIM")
            .await,
        Err(DeskError::NameTaken { .. })
    ));
    desk.member().enter(place, &kim).await.expect("their own");
    desk.member().say(place, &kim, "hello").await.expect("said");
    desk.member()
        .say(place, &person("Ana"), "hello")
        .await
        .expect("said");
    let lines = desk.talk_before(place, None, 9).await.expect("read");
    let ranks: Vec<_> = lines.iter().map(|line| line.rank).collect();
    assert_eq!(ranks, [Rank::Coach, Rank::Member]);
}

#[tokio::test]
async fn a_renamed_member_is_renamed_everywhere() {
    let club = Club::new(NOW, chrono_tz::UTC).await;
    let (desk, place) = (&club.desk, &club.place);
    let post = club.open("two").await;
    answer(&club, "Ana", post, "m1", "Rxd8+").await;
    desk.member()
        .say(place, &person("Ana"), "hello")
        .await
        .expect("said");
    let renamed = desk
        .coach()
        .rename(place, &club.coach, id_of(&club, "Ana").await, " Beatriz ")
        .await;
    assert_eq!(renamed.expect("renamed"), "Beatriz");
    // What their page still calls them changes nothing back.
    answer(&club, "Ana", post, "m2", "Rxd8+").await;
    desk.coach()
        .close_now(place, &club.coach, post)
        .await
        .expect("closed");
    let reveal = desk.reveal(place, post).await.expect("a reveal");
    assert_eq!(reveal.solution().solved, ["Beatriz"]);
    assert_eq!(reveal.leaderboard.rows[0].name, "Beatriz");
    let lines = desk.talk_before(place, None, 9).await.expect("read");
    assert_eq!(lines[0].name, "Beatriz");
    let deeds = desk.coach().deeds(place, &club.coach).await.expect("read");
    assert!(deeds.iter().any(|d| d.deed == Deed::Rename
        && d.note
            == Some(DeedNote::NoteWords {
                words: "Ana → Beatriz".to_owned().into()
            })));
}

#[tokio::test]
async fn a_muted_member_answers_and_does_not_talk_until_the_end() {
    let club = Club::new(NOW, chrono_tz::UTC).await;
    let (desk, place) = (&club.desk, &club.place);
    let post = club.open("two").await;
    let ana = entered(&club, "Ana").await;
    refused(
        desk.coach()
            .mute(place, &person("Ana"), ana, None, "")
            .await,
    );
    refused(
        desk.coach()
            .mute(place, &club.coach, ana, Some(0), "")
            .await,
    );
    let coach = desk
        .coach()
        .member_known_as(place, &club.coach, &club.coach.user)
        .await;
    let coach = coach.expect("a member");
    assert!(
        refused(desk.coach().mute(place, &club.coach, coach, None, "").await).contains("coaches")
    );
    desk.coach()
        .mute(place, &club.coach, ana, Some(60), "Too loud.")
        .await
        .expect("muted");
    let told = refused(desk.member().say(place, &person("Ana"), "hello").await);
    assert!(
        told.contains("until 10:00") && told.contains("Too loud."),
        "{told}"
    );
    assert_eq!(seen(&club).await, Vec::<String>::new());
    assert_eq!(
        answer(&club, "Ana", post, "m1", "Rxd8+").await.verdict(),
        Verdict::Solved
    );
    assert!(
        desk.member()
            .kept_of_me(place, &person("Ana"))
            .await
            .expect("kept")["muted"]
            .is_object()
    );
    let other = Person {
        name: "Zoe".into(),
        ..person("Ana")
    };
    refused(desk.member().enter(place, &other).await);
    club.set("2026-11-23T10:00:00Z");
    desk.member()
        .say(place, &person("Ana"), "hello")
        .await
        .expect("the hour is over");
    desk.coach()
        .mute(place, &club.coach, ana, None, "")
        .await
        .expect("muted");
    let told = refused(desk.member().say(place, &person("Ana"), "hello").await);
    assert!(told.contains("until your coach lifts it"), "{told}");
    desk.coach()
        .unmute(place, &club.coach, ana)
        .await
        .expect("lifted");
    desk.member()
        .say(place, &person("Ana"), "hello again")
        .await
        .expect("said");
}

#[tokio::test]
async fn a_removed_member_is_shut_out_keeps_their_rights_and_can_be_let_back() {
    let club = Club::new(NOW, chrono_tz::UTC).await;
    let (desk, place) = (&club.desk, &club.place);
    let post = club.open("two").await;
    answer(&club, "Ana", post, "m1", "Rd7").await;
    let ana = id_of(&club, "Ana").await;
    desk.member()
        .add_device(place, &person("Ana").user, "tablet")
        .await
        .expect("linked");
    let users = desk
        .coach()
        .remove(place, &club.coach, ana)
        .await
        .expect("removed");
    assert_eq!(users, ["u-Ana", "tablet"]);
    for user in ["u-Ana", "tablet"] {
        let who = Person {
            user: user.into(),
            name: "Somebody else".into(),
            language: None,
        };
        assert_eq!(
            desk.standing(place, user).await.expect("read"),
            Standing::Removed
        );
        for told in [
            refused(desk.member().enter(place, &who).await),
            refused(desk.member().say(place, &who, "hello").await),
            refused(desk.member().answer(place, &who, post, "m2", "Rxd8+").await),
            refused(desk.member().hint(place, &who, post).await),
            refused(desk.member().erase_me(place, &who).await),
            refused(desk.coach().enter_as_coach(place, &who).await),
        ] {
            assert!(told.contains("ask your coach"), "{told}");
        }
    }
    // What is kept is theirs, by way of the coach.
    refused(
        desk.coach()
            .kept_of_member(place, &person("Ana"), ana)
            .await,
    );
    let (name, kept) = desk
        .coach()
        .kept_of_member(place, &club.coach, ana)
        .await
        .expect("kept");
    assert_eq!(
        (name.as_str(), &kept["replies"][0]["text"]),
        ("Ana", &"Rd7".into())
    );
    // It is what they would be given themselves, points as they are counted.
    let points = &kept["replies"][0]["verdicts"][0];
    assert_eq!(
        (&points["points"], &points["points_before_prices"]),
        (&0.0.into(), &0.0.into()),
        "{kept}"
    );
    desk.coach()
        .let_back(place, &club.coach, ana)
        .await
        .expect("back");
    assert_eq!(
        answer(&club, "Ana", post, "m3", "Rxd8+").await.verdict(),
        Verdict::Solved
    );
    desk.coach()
        .erase_member(place, &club.coach, ana)
        .await
        .expect("erased");
    assert_eq!(
        desk.standing(place, "u-Ana").await.expect("read"),
        Standing::Stranger
    );
    let deeds: Vec<_> = desk.coach().deeds(place, &club.coach).await.expect("read");
    assert!(deeds.iter().all(|deed| deed.about.is_none()), "{deeds:?}");
    assert_eq!(deeds[0].deed, Deed::Erase);
}

#[tokio::test]
async fn two_identities_of_one_person_become_one_by_the_same_rules() {
    let club = Club::new(NOW, chrono_tz::UTC).await;
    let (desk, place) = (&club.desk, &club.place);
    let both = club.open("two").await;
    // On the telephone a wrong move, then a hint on the tablet and the solution there.
    answer(&club, "Ana", both, "a1", "Rd7").await;
    club.set("2026-11-23T09:01:00Z");
    desk.member()
        .hint(place, &person("Anna B"), both)
        .await
        .expect("a hint");
    club.set("2026-11-23T09:02:00Z");
    answer(&club, "Anna B", both, "b1", "Rxd8+").await;
    club.set("2026-11-23T09:03:00Z");
    answer(&club, "Ana", both, "a2", "Rd6").await;
    answer(&club, "Bruno", both, "c1", "Rxd8+").await;
    // The same, sent by one person from the start.
    club.set(NOW);
    let once = Club::new(NOW, chrono_tz::UTC).await;
    let twin = once.open("two").await;
    answer(&once, "Ana", twin, "a1", "Rd7").await;
    once.set("2026-11-23T09:01:00Z");
    once.desk
        .member()
        .hint(&once.place, &person("Ana"), twin)
        .await
        .expect("a hint");
    once.set("2026-11-23T09:02:00Z");
    answer(&once, "Ana", twin, "b1", "Rxd8+").await;
    once.set("2026-11-23T09:03:00Z");
    answer(&once, "Ana", twin, "a2", "Rd6").await;

    let (ana, anna) = (id_of(&club, "Ana").await, id_of(&club, "Anna B").await);
    refused(desk.coach().merge(place, &person("Ana"), ana, anna).await);
    refused(desk.coach().merge(place, &club.coach, ana, ana).await);
    desk.coach()
        .merge(place, &club.coach, ana, anna)
        .await
        .expect("one");
    assert_eq!(id_of(&club, "Anna B").await, ana);
    desk.coach()
        .close_now(place, &club.coach, both)
        .await
        .expect("closed");
    once.desk
        .coach()
        .close_now(&once.place, &once.coach, twin)
        .await
        .expect("closed");
    let row = async |club: &Club| {
        let board = club.desk.leaderboard(&club.place, &Period::default()).await;
        let rows = board.expect("read").rows;
        rows.into_iter().find(|row| row.name == "Ana").expect("Ana")
    };
    let (merged, straight) = (row(&club).await, row(&once).await);
    assert_eq!(
        (merged.points, merged.solved, merged.tried),
        (straight.points, straight.solved, straight.tried)
    );
    let kept = desk
        .member()
        .kept_of_me(place, &person("Anna B"))
        .await
        .expect("kept");
    assert_eq!(kept["replies"].as_array().map(Vec::len), Some(3));
    assert_eq!(kept["hints"].as_array().map(Vec::len), Some(1));
    assert_eq!(kept["attempts"].as_array().map(Vec::len), Some(1));
    let reveal = desk.reveal(place, both).await.expect("a reveal");
    assert_eq!((reveal.took_part, reveal.solution().solved.len()), (2, 2));
    // One who is removed is let back first: merging is no way round it.
    let bruno = id_of(&club, "Bruno").await;
    desk.coach()
        .remove(place, &club.coach, bruno)
        .await
        .expect("removed");
    assert!(
        refused(desk.coach().merge(place, &club.coach, ana, bruno).await).contains("Let them back")
    );
}

/// What is done under one of two names.
#[derive(Clone, Copy)]
enum Does {
    Says(&'static str),
    Hint,
    GivesUp,
}

#[tokio::test]
async fn hints_and_giving_up_under_two_names_count_as_one_persons() {
    use Does::{GivesUp, Hint, Says};
    const ANA: bool = false;
    const ANNA: bool = true;
    type Script = &'static [(bool, Does)];
    // A step a minute; each wrong first move and each hint step takes a point.
    let scripts: [(Script, OwnState, f64); 5] = [
        // The step that both saw was shown once.
        (
            &[
                (ANA, Says("Rd7")),
                (ANNA, Hint),
                (ANA, Hint),
                (ANNA, Hint),
                (ANNA, Says("Rxd8+")),
            ],
            OwnState::Solved,
            2.0,
        ),
        // Given up under one name is given up.
        (
            &[
                (ANA, Hint),
                (ANNA, Says("Rd7")),
                (ANNA, GivesUp),
                (ANA, Says("Rxd8+")),
            ],
            OwnState::GivenUp,
            0.0,
        ),
        (
            &[(ANNA, Says("Rd7")), (ANA, GivesUp), (ANNA, Says("Rxd8+"))],
            OwnState::GivenUp,
            0.0,
        ),
        (
            &[
                (ANNA, Says("Qxd8")),
                (ANA, Hint),
                (ANNA, Hint),
                (ANNA, Hint),
                (ANA, Says("Rxd8+")),
            ],
            OwnState::Solved,
            3.0,
        ),
        // What comes after the solution changes nothing.
        (
            &[(ANA, Says("Rxd8+")), (ANNA, Hint), (ANNA, GivesUp)],
            OwnState::Solved,
            5.0,
        ),
    ];
    for (n, (script, state, points)) in scripts.into_iter().enumerate() {
        let club = Club::new(NOW, chrono_tz::UTC).await;
        let (desk, place) = (&club.desk, &club.place);
        let post = club.open("two").await;
        for (minute, (second, does)) in script.iter().enumerate() {
            club.set(&format!("2026-11-23T09:{minute:02}:00Z"));
            let who = person(if *second { "Anna B" } else { "Ana" });
            match does {
                Says(text) => {
                    answer(&club, &who.name, post, &format!("m{minute}"), text).await;
                }
                Hint => {
                    desk.member().hint(place, &who, post).await.expect("a hint");
                }
                GivesUp => {
                    desk.member()
                        .give_up(place, &who, post)
                        .await
                        .expect("given up");
                }
            }
        }
        let (ana, anna) = (id_of(&club, "Ana").await, id_of(&club, "Anna B").await);
        let merged = desk.coach().merge(place, &club.coach, ana, anna).await;
        merged.expect("one");
        let own = desk.member().own_post(place, &person("Ana"), post).await;
        let own = own.expect("a sheet");
        assert_eq!(
            (own.state, own.points),
            (Some(state), Points::of(points)),
            "script {n}"
        );
    }
}

#[tokio::test]
async fn a_waiting_reply_is_settled_without_a_verdict_and_the_answer_outlives_a_restart() {
    let mut club = Club::new(NOW, chrono_tz::UTC).await;
    let place = club.place.clone();
    let post = club.open_anyway(BY_HAND).await;
    let first = answer(&club, "Ana", post, "m1", "what about the king?")
        .await
        .reply;
    let second = answer(&club, "Bruno", post, "m2", "well, well").await.reply;
    let waiting = async |club: &Club| {
        let rows = club.desk.coach().homework(&club.place, &club.coach).await;
        rows.expect("read")
            .into_iter()
            .map(|row| row.reply.reply)
            .collect::<Vec<_>>()
    };
    assert_eq!(waiting(&club).await, [first, second]);
    // There is nothing to overrule yet.
    let told = club
        .desk
        .coach()
        .overrule(
            &place,
            &club.coach,
            first,
            Verdict::Solved,
            Points::of(5.0),
            "",
        )
        .await;
    assert!(refused(told).contains("nothing to overrule"));
    let ana = person("Ana");
    refused(
        club.desk
            .coach()
            .answer_privately(&place, &ana, first, "yes")
            .await,
    );
    refused(
        club.desk
            .coach()
            .no_answer_needed(&place, &ana, first)
            .await,
    );
    refused(
        club.desk
            .coach()
            .answer_privately(&place, &club.coach, first, " ")
            .await,
    );
    refused(
        club.desk
            .coach()
            .answer_privately(&place, &club.coach, ReplyId::of(99), "yes")
            .await,
    );

    club.desk
        .coach()
        .answer_privately(&place, &club.coach, first, "It may castle.")
        .await
        .expect("answered");
    club.desk
        .coach()
        .no_answer_needed(&place, &club.coach, second)
        .await
        .expect("noted");
    assert_eq!(waiting(&club).await, Vec::<ReplyId>::new());
    // Stopped before it went out: it goes out at the next start, once.
    club.restart();
    assert_eq!(
        club.carry_all().await,
        ["u-Ana is answered: It may castle."]
    );
    club.restart();
    assert_eq!(club.carry_all().await, Vec::<String>::new());
    let words = club
        .desk
        .member()
        .my_words(&place, &ana)
        .await
        .expect("read");
    assert_eq!(words.len(), 1);
    assert_eq!(
        (words[0].reply, words[0].text.as_str()),
        (first, "what about the king?")
    );
    assert!(
        club.desk
            .member()
            .my_words(&place, &person("Bruno"))
            .await
            .expect("read")
            .is_empty()
    );
    let rows = club
        .desk
        .coach()
        .replies(&place, &club.coach, post)
        .await
        .expect("read");
    let settled: Vec<_> = rows.iter().map(|row| row.settled).collect();
    assert_eq!(settled, [Settled::Answered, Settled::NeedsNone]);
    // It can be judged all the same, and overruled from then on.
    club.desk
        .coach()
        .judge_by_hand(
            &place,
            &club.coach,
            first,
            Verdict::Solved,
            Points::of(5.0),
            "",
        )
        .await
        .expect("judged");
    club.desk
        .coach()
        .overrule(
            &place,
            &club.coach,
            first,
            Verdict::Wrong,
            Points::of(0.0),
            "",
        )
        .await
        .expect("overruled");
}

#[tokio::test]
async fn coaches_have_names_and_what_they_do_says_who_did_it() {
    let club = Club::new(NOW, chrono_tz::UTC).await;
    let (desk, place) = (&club.desk, &club.place);
    let ana = entered(&club, "Ana").await;
    let coach = |name: &str| Person {
        user: name.to_lowercase(),
        name: name.into(),
        language: None,
    };
    let (kim, lee) = (coach("Kim"), coach("Lee"));
    desk.member()
        .say(place, &club.coach, "welcome")
        .await
        .expect("said");
    // The first takes over from the coach without a name, a second is somebody else.
    desk.coach()
        .enter_as_coach(place, &kim)
        .await
        .expect("a coach");
    desk.coach()
        .enter_as_coach(place, &lee)
        .await
        .expect("a coach");
    let coaches = desk.coaches(place).await.expect("read");
    let names: Vec<_> = coaches.iter().map(|coach| coach.name.as_str()).collect();
    assert_eq!(names, ["Kim", "Lee"]);
    let roll = desk.coach().roll(place, &kim).await.expect("read");
    assert!(roll.iter().all(|member| member.devices == 1), "{roll:?}");
    assert_eq!(
        desk.talk_before(place, None, 9).await.expect("read")[0].name,
        "Kim"
    );
    let forged = Person {
        user: "x".into(),
        name: "k\u{456}m".into(),
        language: None,
    };
    assert!(matches!(
        desk.coach().enter_as_coach(place, &forged).await,
        Err(DeskError::NameTaken { .. })
    ));
    desk.coach()
        .mute(place, &lee, ana, None, "")
        .await
        .expect("muted");
    desk.coach().unmute(place, &kim, ana).await.expect("lifted");
    let deeds = desk.coach().deeds(place, &kim).await.expect("read");
    let said: Vec<_> = deeds
        .iter()
        .take(2)
        .map(|d| (d.by.as_deref(), d.deed, d.about.as_deref()))
        .collect();
    assert_eq!(
        said,
        [
            (Some("Kim"), Deed::Unmute, Some("Ana")),
            (Some("Lee"), Deed::Mute, Some("Ana"))
        ]
    );
    // A new link leaves the one who made it; the others stay members.
    desk.coach().only_coach(place, &kim).await.expect("alone");
    refused(desk.coach().deeds(place, &lee).await);
    assert_eq!(desk.coaches(place).await.expect("read").len(), 1);
    assert!(matches!(
        desk.standing(place, "lee").await.expect("read"),
        Standing::Member(MemberIs {
            rank: Rank::Member,
            ..
        })
    ));
    refused(desk.coach().only_coach(place, &person("Ana")).await);
}

#[tokio::test]
async fn a_second_device_is_the_same_member_and_nobody_elses() {
    let club = Club::new(NOW, chrono_tz::UTC).await;
    let (desk, place) = (&club.desk, &club.place);
    let post = club.open("three").await;
    entered(&club, "Ana").await;
    entered(&club, "Bruno").await;
    let linked = desk
        .member()
        .add_device(place, "u-Ana", "tablet")
        .await
        .expect("linked");
    assert_eq!(linked, person("Ana"));
    let tablet = Person {
        user: "tablet".into(),
        name: "Ana".into(),
        language: None,
    };
    answer(&club, "Ana", post, "m1", "Rd7").await;
    let rows = desk
        .member()
        .my_replies(place, &tablet, post)
        .await
        .expect("read");
    assert_eq!(rows.len(), 1);
    assert!(
        refused(desk.member().add_device(place, "u-Ana", "u-Bruno").await)
            .contains("Bruno already")
    );
    refused(desk.member().add_device(place, "nobody", "phone").await);
    desk.member()
        .erase_me(place, &tablet)
        .await
        .expect("erased");
    assert_eq!(
        desk.standing(place, "u-Ana").await.expect("read"),
        Standing::Stranger
    );
    assert_eq!(
        desk.standing(place, "tablet").await.expect("read"),
        Standing::Stranger
    );
}

#[tokio::test]
async fn a_chat_that_names_people_itself_gets_names_that_differ() {
    let club = Club::new(NOW, chrono_tz::UTC).await;
    let place = Place {
        chat: DISCORD,
        channel: "7".into(),
    };
    club.found(&place, chrono_tz::UTC).await;
    let name_of = async |user: &str, shown: &str| {
        let who = Person {
            user: user.into(),
            name: shown.into(),
            language: None,
        };
        club.desk
            .member()
            .say(&place, &who, "hello")
            .await
            .expect("said");
        let name = club.desk.name_of(&place, user).await.expect("read");
        name.expect("a member")
    };
    assert_eq!(name_of("1", "Ana").await, "Ana");
    assert_eq!(name_of("2", "An\u{430}").await, "An\u{430} 2");
    // The same at every message, and nobody's is taken away by it.
    assert_eq!(name_of("2", "An\u{430}").await, "An\u{430} 2");
    assert_eq!(name_of("1", "Ana").await, "Ana");
    assert_eq!(name_of("3", "Coach Ben").await, "Ben");
    assert_eq!(name_of("3", "Coach Ben").await, "Ben");
    // A new name is taken over.
    assert_eq!(name_of("2", "Beatriz").await, "Beatriz");
}

#[tokio::test]
async fn an_answer_in_an_open_group_is_hidden_with_what_came_of_it_standing() {
    let club = Club::new(NOW, chrono_tz::UTC).await;
    let (desk, place) = (&club.desk, &club.place);
    let post = club.open("two").await;
    let first = answer(&club, "Ana", post, "m1", "Rxd8+ and you all are fools")
        .await
        .reply;
    let second = answer(&club, "Bruno", post, "m2", "Rd7").await.reply;
    let shown = async || {
        let rows = desk.open_answers(place, post).await.expect("read");
        rows.into_iter().map(|row| row.reply).collect::<Vec<_>>()
    };
    assert_eq!(shown().await, Vec::<ReplyId>::new(), "sealed");
    let open = Settings {
        mode: Mode::Open,
        ..desk.settings(place).await.expect("read")
    };
    desk.coach()
        .change_settings(place, &club.coach, open)
        .await
        .expect("changed");
    assert_eq!(shown().await, [first, second]);
    let foreign = refused(desk.hide_answer(place, &person("Bruno"), first).await);
    assert_eq!(
        foreign,
        refused(
            desk.hide_answer(place, &person("Bruno"), ReplyId::of(999))
                .await
        )
    );
    desk.hide_answer(place, &club.coach, first)
        .await
        .expect("hidden");
    desk.hide_answer(place, &person("Bruno"), second)
        .await
        .expect("taken back");
    assert_eq!(shown().await, Vec::<ReplyId>::new());
    let rows = desk
        .coach()
        .replies(place, &club.coach, post)
        .await
        .expect("read");
    let how: Vec<_> = rows
        .iter()
        .map(|row| row.gone.as_ref().map(|gone| gone.how))
        .collect();
    assert_eq!(how, [Some(How::Hidden), Some(How::TakenBack)]);
    assert_eq!(rows[0].text, "Rxd8+ and you all are fools");
    refused(
        desk.coach()
            .put_back_answer(place, &club.coach, second)
            .await,
    );
    desk.coach()
        .put_back_answer(place, &club.coach, first)
        .await
        .expect("shown");
    assert_eq!(shown().await, [first]);
}
