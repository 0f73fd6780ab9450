//! The coach's own lines from a PGN to the members' verdicts and the reveal, and that nothing loses them.

use std::collections::BTreeSet;

use sealed_move_store::Given;

use super::*;
use crate::chess::coach_lines::CoachLines;

const MONDAY: &str = "2026-11-23T09:00:00Z";

/// A sacrifice of our own. Accepted, White mates on g7; declined, White has a knight more.
const DEFLECTION: &str = "[Event \"Lesson\"]\n[Id \"d1\"]\n[Topic \"Deflection\"]\n[Task \"+\"]\n[FEN \"r6k/pp3p1p/7P/8/1Pnq4/P4PQ1/6P1/2R4K w - - 0 1\"]\n\n1.Rxc4! {The rook asks her to choose.} (1.Qg7+? {The ending is level.} Qxg7 2.hxg7+ Kxg7) 1...Qxc4 {She lets go of the diagonal.} (1...Qa1+ {She stays.} 2.Kh2 {A piece for nothing.} +-) 2.Qg7# {In front of the king.} *\n";

const BACK_RANK: &str = "[Event \"Lesson\"]\n[Id \"w1\"]\n[Task \"#2\"]\n[FEN \"r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1\"]\n\n1.Rxd8+! {A rook for a rook.} (1.Rd7? {Too slow.} Rxd7 2.Rxd7 g6) (1.h3? {Rxd8 was better.} Rxd2) Rxd8 2.Rxd8# *\n";

async fn import_as(club: &Club, file: &str, choice: SameChoice) -> CheckedPosition {
    let progress = Arc::new(|_, _| {});
    let mut all = club
        .desk
        .coach()
        .import_choosing(
            &club.place,
            &club.coach,
            "lesson.pgn",
            file.into(),
            choice,
            progress,
        )
        .await
        .expect("read");
    assert_eq!(all.len(), 1);
    all.remove(0)
}

/// Imports a lesson and posts it.
async fn open(club: &Club, file: &str) -> PostId {
    let one = import_as(club, file, SameChoice::Keep).await;
    assert_eq!(one.report.verdict, Soundness::Sound, "{:?}", one.report);
    post(club, one.position.expect("kept")).await
}

async fn post(club: &Club, position: PositionId) -> PostId {
    let item = club
        .desk
        .coach()
        .enqueue_again(&club.place, &club.coach, position, false)
        .await
        .expect("queued");
    club.post_of(item).await
}

async fn close(club: &Club, post: PostId) -> RevealSheet {
    club.desk
        .coach()
        .close_now(&club.place, &club.coach, post)
        .await
        .expect("closing");
    club.carry_all().await;
    club.desk.reveal(&club.place, post).await.expect("closed")
}

async fn answer(club: &Club, name: &str, post: PostId, source: &str, text: &str) -> VerdictSheet {
    club.desk
        .member()
        .answer(&club.place, &person(name), post, source, text)
        .await
        .expect("judged")
}

async fn line(club: &Club, name: &str) -> String {
    let person = person(name);
    let progress = club.desk.member().progress(&club.place, &person);
    progress.await.expect("read").line
}

async fn kept_lines(club: &Club, position: PositionId) -> CoachLines {
    club.desk
        .coach()
        .checked(&club.place, &club.coach, position)
        .await
        .expect("there")
        .report
        .coach_lines
}

#[tokio::test]
async fn a_wrong_move_meets_the_coachs_variation_and_words_that_tell_the_key_wait() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = open(&club, BACK_RANK).await;
    let told = answer(&club, "Ana", post, "a1", "Rd7").await;
    assert_eq!(told.verdict(), Verdict::Wrong);
    let said = in_words(&told.said);
    let wanted = "1.Rd7 does not work. Your coach on 1.Rd7: “Too slow.” Your coach shows 1...Rxd7 2.Rxd7 g6. ";
    assert!(said.starts_with(wanted), "{said}");
    // The picture shows it, and once more after a restart.
    assert!(told.picture.is_some());
    let told = answer(&club, "Ana", post, "a2", "h3").await;
    let said = in_words(&told.said);
    assert!(
        !said.contains("Your coach") && !said.contains("Rxd8 "),
        "{said}"
    );
    let told = answer(&club, "Ana", post, "a3", "Rxd8+").await;
    assert_eq!(told.verdict(), Verdict::Solved);
    let said = in_words(&told.said);
    assert!(
        said.contains("Your coach on 1.Rxd8+: “A rook for a rook.”"),
        "{said}"
    );
    // Kept as facts, they are there in any language and after a restart.
    let mut club = club;
    club.restart();
    let again = answer(&club, "Ana", post, "a3", "Rxd8+").await;
    assert_eq!(in_words(&again.said), said);
    let reveal = close(&club, post).await;
    let notes = note_lines(&reveal.solution().notes, str::to_owned);
    assert!(
        notes.contains(&"(1.h3? Rxd8 was better. 1...Rxd2)".to_owned()),
        "{notes:?}"
    );
}

#[tokio::test]
async fn members_meet_the_accepted_and_the_declined_line_in_turn() {
    let mut club = Club::new(MONDAY, chrono_tz::UTC).await;
    let first = open(&club, DEFLECTION).await;
    let mut met = Vec::new();
    for (n, name) in ["Ana", "Ben", "Cid", "Dora"].iter().enumerate() {
        let told = answer(&club, name, first, &format!("a{n}"), "Rxc4").await;
        assert_eq!(
            (told.verdict(), told.points),
            (Verdict::OnTheWay, Points::of(1.0))
        );
        met.push(line(&club, name).await);
    }
    assert_eq!(met[0], met[2]);
    assert_eq!(met[1], met[3]);
    let both: BTreeSet<&str> = met.iter().map(String::as_str).collect();
    assert_eq!(both, BTreeSet::from(["1.Rxc4 Qa1+", "1.Rxc4 Qxc4"]));

    // Shown again after a restart, and judged once more, nothing is another line.
    club.restart();
    for (n, name) in ["Ana", "Ben"].iter().enumerate() {
        let told = answer(&club, name, first, &format!("a{n}"), "Rxc4").await;
        let reply = met[n].rsplit(' ').next().expect("a move");
        assert!(
            in_words(&told.said).contains(reply),
            "{}",
            in_words(&told.said)
        );
        assert_eq!(line(&club, name).await, met[n]);
    }
    // Each goes on along their own.
    for (n, name) in ["Ana", "Ben"].iter().enumerate() {
        let (next, words) = match met[n].ends_with("Qxc4") {
            true => ("Qg7#", "Your coach on 2.Qg7#: “In front of the king.”"),
            false => ("Kh2", "Your coach on 2.Kh2: “A piece for nothing.”"),
        };
        let told = answer(&club, name, first, &format!("b{n}"), next).await;
        assert_eq!(
            (told.verdict(), told.points),
            (Verdict::Solved, Points::of(5.0))
        );
        let said = in_words(&told.said);
        assert!(said.contains(words), "{said}");
    }
    // A wrong move later, and one at first.
    let told = answer(&club, "Cid", first, "c9", "Qe1").await;
    assert_eq!(told.verdict(), Verdict::Wrong);
    let told = answer(&club, "Eve", first, "e1", "Qg7+").await;
    let said = in_words(&told.said);
    assert!(
        said.starts_with(
            "1.Qg7+ does not win. Your coach on 1.Qg7+: “The ending is level.” Your coach shows 1...Qxg7 2.hxg7+ Kxg7."
        ),
        "{said}"
    );

    let reveal = close(&club, first).await;
    assert_eq!(
        note_lines(&reveal.solution().notes, str::to_owned),
        [
            "1.Rxc4! The rook asks her to choose.",
            "(1.Qg7+? The ending is level. 1...Qxg7 2.hxg7+ Kxg7)",
            "1...Qxc4 She lets go of the diagonal.",
            "(1...Qa1+ She stays. 2.Kh2 +- A piece for nothing.)",
            "2.Qg7# In front of the king."
        ]
    );

    assert_eq!(
        reveal.solution().solution,
        ["1.Rxc4 Qxc4 2.Qg7#", "1.Rxc4 Qa1+ 2.Kh2"]
    );
    // It leads to the cards of the picture that it shows, the coach's and not the search's.
    let shown = &reveal.solution().patterns;
    assert!(!shown.is_empty());
    let led: Vec<String> = reveal
        .cards
        .iter()
        .map(|link| link.card.to_string())
        .collect();
    assert_eq!(&led, shown);

    // At the next post each meets the other line.
    club.set("2026-11-24T09:00:00Z");
    let position = import_as(&club, DEFLECTION, SameChoice::Keep)
        .await
        .position;
    let second = post(&club, position.expect("kept")).await;
    for (n, name) in ["Ana", "Ben"].iter().enumerate() {
        answer(&club, name, second, &format!("d{n}"), "Rxc4").await;
        assert_ne!(line(&club, name).await, met[n]);
    }
}

#[tokio::test]
async fn somebody_new_who_writes_among_others_takes_their_turn_too() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let post = open(&club, DEFLECTION).await;
    answer(&club, "Ana", post, "a1", "Rxc4").await;
    for (n, name) in ["Ben", "Cid"].iter().enumerate() {
        let source = format!("t{n}");
        let came = club
            .desk
            .member()
            .take(&club.place, &person(name), None, &source, "1.Rxc4")
            .await
            .expect("taken");
        assert!(matches!(came, Came::Answer(_)), "{came:?}");
    }
    let met = [
        line(&club, "Ana").await,
        line(&club, "Ben").await,
        line(&club, "Cid").await,
    ];
    assert!(met[0] == met[2] && met[0] != met[1], "{met:?}");
    // The ids that were foreseen are the ones they have: it goes on in turn.
    answer(&club, "Dora", post, "d1", "Rxc4").await;
    assert_eq!(line(&club, "Dora").await, met[1]);
}

#[tokio::test]
async fn a_check_done_again_loses_no_line_of_the_coachs() {
    let mut club = Club::new(MONDAY, chrono_tz::UTC).await;
    let one = import_as(&club, DEFLECTION, SameChoice::Keep).await;
    let position = one.position.expect("kept");
    let lines = kept_lines(&club, position).await;
    assert_eq!(lines, one.report.coach_lines);
    let holding = lines.moves.iter().filter(|one| one.holds).count();
    assert_eq!((lines.moves.len(), holding), (9, 3));
    // An older check, whose file is not read in the same way any more.
    let store = &club.desk.inner.store;
    store
        .write(move |tx| {
            let mut check = tx.position(position)?.expect("there").check;
            check.checker_version = 1;
            tx.replace_check(position, &check)?;
            let given = Given {
                text: "[FEN \"".into(),
                line: 1,
            };
            tx.renew_position(position, "lesson.pgn: d1", &given)
        })
        .await
        .expect("written");
    club.restart();
    let post = post(&club, position).await;
    assert_eq!(kept_lines(&club, position).await, lines);
    let told = answer(&club, "Ana", post, "a1", "Qg7+").await;
    assert!(in_words(&told.said).contains("The ending is level."));
}

#[tokio::test]
async fn the_same_position_without_lines_takes_none_away() {
    let bare = "r6k/pp3p1p/7P/8/1Pnq4/P4PQ1/6P1/2R4K w - - id \"d1\"; task \"+\";";
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let one = import_as(&club, DEFLECTION, SameChoice::Keep).await;
    let position = one.position.expect("kept");
    for choice in [SameChoice::Keep, SameChoice::Both, SameChoice::New] {
        let again = import_as(&club, bare, choice).await;
        assert_eq!(again.position, Some(position), "{choice:?}");
        assert_eq!(kept_lines(&club, position).await, one.report.coach_lines);
    }
    // The other way round they come in where the coach wants both.
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let position = import_as(&club, bare, SameChoice::Keep).await.position;
    let position = position.expect("kept");
    import_as(&club, DEFLECTION, SameChoice::Keep).await;
    assert!(kept_lines(&club, position).await.is_empty());
    import_as(&club, DEFLECTION, SameChoice::Both).await;
    assert_eq!(kept_lines(&club, position).await, one.report.coach_lines);
}

#[tokio::test]
async fn both_lines_of_a_win_are_revealed_without_a_word_in_them_too() {
    let club = Club::new(MONDAY, chrono_tz::UTC).await;
    let silent = DEFLECTION.split("\n\n").next().expect("tags").to_owned()
        + "\n\n1.Rxc4 Qxc4 (1...Qa1+ 2.Kh2) 2.Qg7# *\n";
    let post = open(&club, &silent).await;
    let reveal = close(&club, post).await;
    assert_eq!(
        note_lines(&reveal.solution().notes, str::to_owned),
        ["1.Rxc4 Qxc4", "(1...Qa1+ 2.Kh2)", "2.Qg7#"]
    );
}
