//! Topic cards: the program's and the coaches' own, where they go out, and that none tells of an open post.

use super::*;
use crate::chess::fact::Pattern;

fn plans() -> NewCard {
    NewCard {
        definition: "A plan is a chain of small aims.".into(),
        look: "Which piece is worst off?".into(),
        fen: "6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - - 0 1".into(),
        moves: "1.Rd7 Kf8".into(),
    }
}

fn named(link: &CardLink) -> String {
    english().say(&link.named)
}

impl Club {
    async fn members_card(&self, card: CardId) -> Result<CardSheet, DeskError> {
        self.desk.member().card(&self.place, card, "en").await
    }

    async fn coachs_card(&self, card: CardId) -> CardSheet {
        let card = self
            .desk
            .coach()
            .card(&self.place, &self.coach, card, "en")
            .await;
        card.expect("a card")
    }

    async fn write(&self, card: CardId, new: &NewCard) {
        self.desk
            .coach()
            .write_card(&self.place, &self.coach, card, new)
            .await
            .expect("written");
    }
}

#[tokio::test]
async fn the_program_has_a_card_of_every_pattern() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let rows = club.desk.member().cards(&club.place).await.expect("cards");
    let patterns: Vec<CardId> = crate::chess::name::names().map(CardId::Pattern).collect();
    let listed: Vec<CardId> = rows.iter().map(|row| row.link.card).collect();
    assert_eq!(listed, patterns);
    assert!(
        rows.iter()
            .all(|row| !row.by_coach && row.tells_of.is_empty())
    );

    let boden = club
        .members_card(CardId::Pattern("boden"))
        .await
        .expect("shown");
    assert!(matches!(boden.words, CardWords::Ours(_)));
    assert!(boden.relatives.contains(&"double-bishop"));
    let example = boden.example.expect("an example");
    assert_eq!(example.side, Side::from(shakmaty::Color::Black));
    assert_eq!(example.task, Some(Stipulation::Mate(2)));
    assert_eq!(example.solution, "1...Qxc3+ 2.bxc3 Ba3#");
    let said = |picture: &Picture| alt(picture, english());
    assert!(
        said(&example.start).ends_with("Black to move."),
        "{}",
        said(&example.start)
    );
    let end = said(example.end.as_ref().expect("drawn"));
    assert!(end.starts_with("Example: Boden's mate."), "{end}");
    assert!(
        end.contains("Guarded flights:") && end.contains("Blocked by own pieces:"),
        "{end}"
    );

    let german = club
        .desk
        .member()
        .card(&club.place, CardId::Pattern("boden"), "de")
        .await;
    let german = german
        .expect("shown")
        .example
        .expect("an example")
        .end
        .expect("drawn");
    assert!(alt(&german, words("de")).starts_with("Beispiel: Bodens Matt."));
}

#[tokio::test]
async fn a_coach_writes_a_copy_and_takes_it_back() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let card = CardId::Pattern("boden");
    let bare = NewCard {
        fen: String::new(),
        moves: String::new(),
        ..plans()
    };
    club.write(card, &bare).await;
    let shown = club.members_card(card).await.expect("shown");
    assert_eq!(
        shown.words,
        CardWords::Coachs {
            definition: bare.definition.clone(),
            look: bare.look.clone()
        }
    );
    let example = shown.example.expect("the program's");
    assert_eq!(example.line.last().map(String::as_str), Some("Ba3#"));
    assert_eq!(example.task, None, "nothing of a coach's card is proved");
    assert!(shown.relatives.contains(&"double-bishop"));

    club.write(card, &plans()).await;
    let example = club.members_card(card).await.expect("shown").example;
    assert_eq!(example.expect("the coach's").solution, "1.Rd7 Kf8");

    let stranger = club
        .desk
        .coach()
        .write_card(&club.place, &person("Ana"), card, &plans())
        .await;
    assert!(matches!(
        stranger,
        Err(DeskError::NotAllowed(Refusal::NotCoach))
    ));

    let back = |club: &Club| {
        let (desk, place, coach) = (club.desk.clone(), club.place.clone(), club.coach.clone());
        async move { desk.coach().take_back_card(&place, &coach, card).await }
    };
    back(&club).await.expect("taken back");
    let shown = club.members_card(card).await.expect("shown");
    assert!(matches!(shown.words, CardWords::Ours(_)));
    let twice = back(&club).await.expect_err("nothing is left");
    assert_eq!(twice.why(), Refusal::CardIsOurs);

    let deeds = club
        .desk
        .coach()
        .deeds(&club.place, &club.coach)
        .await
        .expect("read");
    let of_cards: Vec<(Deed, Option<DeedNote>)> = deeds
        .into_iter()
        .filter(|row| matches!(row.deed, Deed::WriteCard | Deed::TakeBackCard))
        .map(|row| (row.deed, row.note))
        .collect();
    let note = || {
        Some(DeedNote::NotePattern {
            pattern: Pattern {
                pattern: "boden".into(),
            },
        })
    };
    let wanted = [Deed::TakeBackCard, Deed::WriteCard, Deed::WriteCard];
    assert_eq!(of_cards, wanted.map(|deed| (deed, note())));
}

#[tokio::test]
async fn a_topic_of_the_groups_own_has_a_card() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let write = async |topic: &str| {
        let topic = topic.parse().expect("a topic");
        let coach = club.desk.coach();
        coach
            .write_topic_card(&club.place, &club.coach, topic, &plans())
            .await
    };
    let card = write("Plans").await.expect("written");
    assert!(matches!(card, CardId::Topic(_)));
    assert_eq!(write("plans").await.expect("written over"), card);
    let pattern = write("Bodens Matt").await.expect("written");
    assert_eq!(
        pattern,
        CardId::Pattern("boden"),
        "a pattern by its title in any language"
    );

    let rows = club.desk.member().cards(&club.place).await.expect("cards");
    let last = rows.last().expect("some");
    assert_eq!(
        (last.link.card, named(&last.link).as_str()),
        (card, "Plans")
    );
    let shown = club.members_card(card).await.expect("shown");
    assert_eq!(named(&shown.link), "Plans");
    assert!(shown.relatives.is_empty());

    let called = async |name: &str| club.desk.member().card_called(&club.place, name).await;
    assert_eq!(called("PLANS").await.expect("found"), card);
    assert_eq!(
        called(" back-rank mates ").await.expect("found"),
        CardId::Pattern("back-rank")
    );
    let none = called("Traps").await.expect_err("none");
    assert_eq!(
        none.why(),
        Refusal::NoCardOf {
            topic: "Traps".into()
        }
    );

    club.desk
        .coach()
        .take_back_card(&club.place, &club.coach, card)
        .await
        .expect("taken back");
    let gone = club.members_card(card).await.err().expect("gone");
    assert_eq!(gone.why(), Refusal::NoCard);
}

#[tokio::test]
async fn a_card_goes_out_before_its_topics_week() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let card = CardId::Pattern("back-rank");
    let enqueue = || crate::chat::common::card::enqueue(&club.desk, &club.place, &club.coach, card);
    enqueue().await.expect("queued");
    let queue = club.desk.coach().queue(&club.place).await.expect("read");
    let [item] = &queue[..] else {
        panic!("{queue:?}")
    };
    assert_eq!(item.topic.as_deref(), Some("Back-rank mate"));
    let Queued::Words { words: said, fen } = &item.holds else {
        panic!("{item:?}");
    };
    for id in ["definition-back-rank", "look-back-rank"] {
        assert!(said.contains(&english().text(id)), "{said}");
    }
    assert!(said.ends_with("Example: 1...Qe1+ 2.Rxe1 Rxe1#"), "{said}");
    let example = club.coachs_card(card).await.example.expect("an example");
    assert_eq!(fen.as_deref(), Some(example.fen.as_str()));
    let sheet = club
        .desk
        .coach()
        .preview_item(&club.place, &club.coach, item.id)
        .await
        .expect("drawn");
    assert!(sheet.content.picture().is_some());

    // In the group's language, and under the group's own name for the topic.
    let settings = Settings {
        language: Language::German,
        ..club.desk.settings(&club.place).await.expect("settings")
    };
    let set = club
        .desk
        .coach()
        .change_settings(&club.place, &club.coach, settings);
    set.await.expect("set");
    enqueue().await.expect("queued");
    let queue = club.desk.coach().queue(&club.place).await.expect("read");
    let Queued::Words { words: said, .. } = &queue[1].holds else {
        panic!("{queue:?}");
    };
    assert!(said.contains(&words("de").text("look-back-rank")), "{said}");
    assert!(said.ends_with("Beispiel: 1...De1+ 2.Txe1 Txe1#"), "{said}");
    assert_eq!(queue[1].topic.as_deref(), Some("Back-rank mate"));
}

/// Position "a" of the file, mirrored, with its mate.
fn mirrored() -> NewCard {
    NewCard {
        definition: "A king behind its own pawns.".into(),
        look: String::new(),
        fen: "1k6/ppp5/8/8/8/8/8/1K5R w - - 0 1".into(),
        moves: "1.Rh8#".into(),
    }
}

#[tokio::test]
async fn a_card_in_the_week_waits_for_the_problem_that_it_would_tell() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let (place, coach, desk) = (&club.place, &club.coach, club.desk.coach());
    let written = async |topic: &str, new: &NewCard| {
        let topic = topic.parse().expect("a topic");
        let card = desk.write_topic_card(place, coach, topic, new).await;
        card.expect("written")
    };
    let enqueue = async |card: CardId| {
        let item = crate::chat::common::card::enqueue(&club.desk, place, coach, card).await;
        item.expect("queued")
    };
    let week = async || {
        let queue = desk.queue(place).await.expect("read");
        let due = |item: &QueueItem| item.due_at.map(|at| at.format("%dT%H").to_string());
        let shown = |item: QueueItem| (item.id, due(&item).expect("due"), item.waits_for);
        queue.into_iter().map(shown).collect::<Vec<_>>()
    };
    let refused = async |item: ItemId| {
        let error = desk.post_now(place, coach, Some(item)).await;
        error.expect_err("it would tell").why()
    };
    let told = written("Corridors", &mirrored()).await;
    let harmless = written("Plans", &plans()).await;

    // The problem comes behind the cards, and goes out before the one that would tell of it.
    let card = enqueue(told).await;
    let other = enqueue(harmless).await;
    let free = Vec::new;
    assert_eq!(
        week().await,
        [
            (card, "23T18".into(), free()),
            (other, "24T18".into(), free())
        ]
    );
    let problem = club.fill(place, 1).await[0];
    let planned = week().await;
    assert_eq!(
        planned,
        [
            (other, "23T18".into(), free()),
            (problem, "24T18".into(), free()),
            (card, "25T18".into(), planned[2].2.clone()),
        ]
    );
    assert!(matches!(&planned[2].2[..], [WaitsFor::Item { item, .. }] if *item == problem));
    assert_eq!(refused(card).await, Refusal::WouldTellOther);

    // Taken out and put back it waits as before.
    let taken = desk.dequeue(place, coach, card).await.expect("out");
    let card = desk.put_back_in_week(place, coach, taken).await;
    let card = card.expect("put back");
    assert_eq!(refused(card).await, Refusal::WouldTellOther);

    // While the problem is open neither that card goes out by hand nor another, or words, that come then.
    let post = club.post_of(problem).await;
    assert_eq!(refused(card).await, Refusal::WouldTell { number: 1 });
    let again = enqueue(told).await;
    assert_eq!(refused(again).await, Refusal::WouldTell { number: 1 });
    let words = desk.enqueue_words(place, coach, "It is mate by 1.Ra8.", None, None);
    let words = words.await.expect("queued");
    assert_eq!(refused(words).await, Refusal::WouldTell { number: 1 });
    let talk = desk.enqueue_words(place, coach, "We meet at seven.", None, None);
    let talk = talk.await.expect("queued");
    let row = week().await.into_iter().find(|(item, ..)| *item == talk);
    assert_eq!(row.expect("waits").2, free());

    desk.close_now(place, coach, post).await.expect("closing");
    club.carry_all().await;
    for item in [card, again, words] {
        assert!(desk.post_now(place, coach, Some(item)).await.is_ok());
    }
}

#[tokio::test]
async fn a_reveal_leads_to_the_cards_of_its_patterns_and_of_its_topic() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let lines = [
        (
            "Plans",
            "6k1/5ppp/8/8/8/8/8/R5K1 w - - id \"a\"; dm 1; c0 \"Plans\";",
        ),
        (
            "Back-rank mate",
            "6k1/5ppp/8/8/8/8/8/1R4K1 w - - id \"b\"; dm 1; c0 \"Back-rank mates\";",
        ),
    ];
    let topic = "Plans".parse().expect("a topic");
    let coach = club.desk.coach();
    let plans = coach
        .write_topic_card(&club.place, &club.coach, topic, &plans())
        .await
        .expect("written");
    let back_rank = CardId::Pattern("back-rank");
    for ((_, line), wanted) in lines.iter().zip([vec![back_rank, plans], vec![back_rank]]) {
        let post = club.open_anyway(line).await;
        let close = club.desk.coach().close_now(&club.place, &club.coach, post);
        close.await.expect("closing");
        club.carry_all().await;
        let reveal = club.desk.reveal(&club.place, post).await.expect("closed");
        let led: Vec<CardId> = reveal.cards.iter().map(|link| link.card).collect();
        assert_eq!(led, wanted);
    }
}

/// The leak test: while a post is open, no member reads a card that shows its position, mirrored or with the
/// colours turned, or that gives a move of it away; the coach reads every card, and is told which posts it would
/// tell of; after the reveal it is there again.
#[tokio::test]
async fn no_card_tells_of_an_open_post() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let fen = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1";
    let mirrored = "1k2r2r/ppp5/8/8/8/8/PPP1R3/1K2R3 w - - 0 1";
    let turned = "3r2k1/3r1ppp/8/8/8/8/5PPP/R2R2K1 b - - 0 1";
    let both = "1k2r3/ppp1r3/8/8/8/8/PPP5/1K2R2R b - - 0 1";
    let after = "R2r2k1/5ppp/8/8/8/8/5PPP/6K1 w - - 0 1";
    let with = |fen: &str, moves: &str| NewCard {
        fen: fen.into(),
        moves: moves.into(),
        ..plans()
    };
    let says = |definition: &str| NewCard {
        definition: definition.into(),
        fen: String::new(),
        moves: String::new(),
        ..plans()
    };
    let telling = [
        ("Same", with(fen, "")),
        ("Mirrored", with(mirrored, "1.Kc1")),
        ("Turned", with(turned, "")),
        ("Both", with(both, "")),
        (
            "On the way",
            with(
                "3R2k1/3r1ppp/8/8/8/8/5PPP/3R2K1 b - - 0 1",
                "1...Rd8 2.Rxd8#",
            ),
        ),
        ("Words", says("Take on d8 with the rook at once.")),
        ("Move", says("The point is 1.Rxd8+.")),
    ];
    let harmless = [
        ("Other", with(after, "")),
        ("Talk", says("Count the rooks before you trade them.")),
    ];
    let mut cards = Vec::new();
    for (topic, new) in telling.iter().chain(&harmless) {
        let topic = topic.parse().expect("a topic");
        let coach = club.desk.coach();
        let card = coach
            .write_topic_card(&club.place, &club.coach, topic, new)
            .await;
        cards.push(card.expect("written"));
    }
    let (telling, harmless) = cards.split_at(telling.len());
    for &card in &cards {
        assert!(club.members_card(card).await.is_ok(), "nothing is open yet");
    }

    let post = club.open("two").await;
    let rows = club.desk.member().cards(&club.place).await.expect("cards");
    for &card in telling {
        let refused = club.members_card(card).await.err().expect("held back");
        assert_eq!(refused.why(), Refusal::CardHeldBack, "{card}");
        assert!(refused.in_english().contains("held back"));
        let row = rows
            .iter()
            .find(|row| row.link.card == card)
            .expect("listed");
        assert_eq!(row.tells_of, [1], "{card}");
        assert_eq!(club.coachs_card(card).await.tells_of, [1], "{card}");
    }
    for &card in harmless {
        assert!(club.members_card(card).await.is_ok(), "{card}");
    }
    // Every pattern has a card all the same, the post's own among them: no list tells which that is.
    for pattern in crate::chess::name::names() {
        let card = club.members_card(CardId::Pattern(pattern)).await;
        assert!(card.is_ok(), "{pattern}");
    }

    let close = club.desk.coach().close_now(&club.place, &club.coach, post);
    close.await.expect("closing");
    club.carry_all().await;
    for &card in &cards {
        assert!(club.members_card(card).await.is_ok(), "{card}");
    }
}

/// A coach's copy of a pattern's card that would tell gives way to the program's own, so that nothing shows
/// which pattern the open post is.
#[tokio::test]
async fn a_copy_that_would_tell_gives_way_to_the_programs_own() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let card = CardId::Pattern("back-rank");
    let copy = NewCard {
        fen: "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - 0 1".into(),
        moves: "1.Rxd8+".into(),
        ..plans()
    };
    club.write(card, &copy).await;
    let coachs = |sheet: &CardSheet| matches!(sheet.words, CardWords::Coachs { .. });
    assert!(coachs(&club.members_card(card).await.expect("shown")));
    club.open("two").await;
    assert!(!coachs(&club.members_card(card).await.expect("shown")));
    assert!(coachs(&club.coachs_card(card).await));
    let rows = club.desk.member().cards(&club.place).await.expect("cards");
    assert!(
        rows.iter()
            .all(|row| row.tells_of.is_empty() && !row.by_coach)
    );
}

/// The program's own example as a post: its card has nothing to give way to.
#[tokio::test]
async fn the_programs_own_example_is_held_back_while_it_is_open() {
    let club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let card = CardId::Pattern("boden");
    let example = club.coachs_card(card).await.example.expect("an example");
    let post = club
        .open_anyway(&format!(
            "{} id \"x\"; dm 2;",
            example.fen.trim_end_matches(" 0 1")
        ))
        .await;
    let refused = club.members_card(card).await.err().expect("held back");
    assert_eq!(refused.why(), Refusal::CardHeldBack);
    assert!(
        club.members_card(CardId::Pattern("double-bishop"))
            .await
            .is_ok()
    );
    let close = club.desk.coach().close_now(&club.place, &club.coach, post);
    close.await.expect("closing");
    club.carry_all().await;
    assert!(club.members_card(card).await.is_ok());
}
