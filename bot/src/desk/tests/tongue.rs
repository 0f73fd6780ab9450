//! In which language a person is spoken to.

use super::*;

fn tag(text: &str) -> Option<LanguageTag> {
    Some(LanguageTag::new(text).expect("a tag"))
}

fn asking(name: &str, client: &str) -> Person {
    Person {
        language: tag(client),
        ..person(name)
    }
}

async fn language(club: &Club, who: &Person) -> String {
    let tag = club.desk.language_of(&club.place, who).await.expect("read");
    tag.to_string()
}

#[tokio::test]
async fn a_member_is_spoken_to_as_chosen_else_as_the_client_asks_else_as_the_group_is() {
    let mut club = Club::new("2026-11-23T09:00:00Z", chrono_tz::UTC).await;
    let settings = Settings {
        language: Language::German,
        ..club.desk.settings(&club.place).await.expect("read")
    };
    let changed = club
        .desk
        .coach()
        .change_settings(&club.place, &club.coach, settings);
    changed.await.expect("changed");
    let post = club.open("a").await;

    // The group's.
    assert_eq!(language(&club, &person("Ana")).await, "de");
    let say = async |club: &Club, who: &Person, source: &str, text: &str| {
        let sheet = club
            .desk
            .member()
            .answer(&club.place, who, post, source, text)
            .await;
        let sheet = sheet.expect("judged");
        (sheet.reply, in_words(&sheet.said))
    };
    let (reply, said) = say(&club, &person("Ana"), "1", "Kf1").await;
    assert!(said.contains("geht nicht"), "{said}");

    // What the client asks for now, and from then on where it is not there to be asked.
    assert_eq!(language(&club, &asking("Ana", "es")).await, "es");
    assert_eq!(language(&club, &person("Ana")).await, "de", "read only");
    let (_, said) = say(&club, &asking("Ana", "es"), "2", "Kh1").await;
    assert!(said.contains("no funciona"), "{said}");
    assert_eq!(language(&club, &person("Ana")).await, "es");
    club.restart();
    let again = club
        .desk
        .member()
        .verdict(&club.place, &person("Ana"), reply)
        .await;
    let again = in_words(&again.expect("kept").said);
    assert!(again.contains("no funciona"), "an old verdict: {again}");

    // What they chose, whatever the client asks for; and no longer, when they take it back.
    let choose = async |club: &Club, tag| {
        let ana = person("Ana");
        let chosen = club.desk.choose_language(&club.place, &ana, tag).await;
        chosen.expect("chosen");
    };
    choose(&club, tag("en")).await;
    assert_eq!(language(&club, &asking("Ana", "es")).await, "en");
    let hint = club
        .desk
        .member()
        .hint(&club.place, &asking("Ana", "es"), post)
        .await;
    assert_eq!(hint.expect("given").said.language.as_str(), "en");
    let kept = club
        .desk
        .member()
        .kept_of_me(&club.place, &person("Ana"))
        .await;
    let kept = kept.expect("kept");
    assert_eq!(kept["chosen_language"], "en");
    assert_eq!(kept["client_language"], "es");
    assert_eq!(kept["language"], "en");
    choose(&club, None).await;
    assert_eq!(language(&club, &person("Ana")).await, "es");

    // Nobody else is touched.
    assert_eq!(language(&club, &person("Ben")).await, "de");
}

#[test]
fn a_tag_is_letters_digits_and_hyphens() {
    for good in ["de", "es-419", "zh-Hant-TW"] {
        assert!(LanguageTag::new(good).is_some(), "{good}");
    }
    for bad in ["", "d", "de_DE", "de;q=1", "dé", &"a".repeat(36)] {
        assert_eq!(LanguageTag::new(bad), None, "{bad}");
    }
    assert!(serde_json::from_str::<LanguageTag>("\"../en\"").is_err());
}
