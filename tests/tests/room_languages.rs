//! Each reader of the club room in their own language: as their browser asks, as they choose, and as the
//! group has it.

use std::collections::BTreeSet;

use sealed_move::words::source;
use sealed_move_tests::{
    browser::{Browser, Driver},
    room::RunningRoom,
};
use serde_json::json;

const FILE: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - dm 2; id \"back-rank\";\n";

/// The language that a page says it is in.
async fn language(page: &Browser) -> String {
    let said = page
        .run("return document.documentElement.lang", vec![])
        .await;
    said.as_str().unwrap_or_default().to_owned()
}

/// What the pages say in a language without any values.
fn plain(tag: &str) -> BTreeSet<String> {
    let text = source(tag, &["room.ftl"]);
    let messages = text.lines().filter_map(|line| line.split_once(" = "));
    messages
        .map(|(_, said)| said.trim().to_owned())
        .filter(|said| !said.contains('{'))
        .collect()
}

/// No line that can be read on the page, and no name or hint of a control, is from another language.
async fn speaks_only(page: &Browser, tag: &str) {
    assert_eq!(language(page).await, tag);
    let script = "document.querySelectorAll('details').forEach((d) => (d.open = true)); \
        return [...document.body.innerText.split('\\n'), \
          ...[...document.querySelectorAll('[aria-label], [placeholder], [title]')].flatMap((e) => \
            ['aria-label', 'placeholder', 'title'].map((name) => e.getAttribute(name) ?? ''))].map((line) => line.trim())";
    let seen = page.run(script, vec![]).await;
    let seen: BTreeSet<&str> = seen
        .as_array()
        .expect("lines")
        .iter()
        .filter_map(|line| line.as_str())
        .collect();
    let own = plain(tag);
    assert!(
        own.iter().any(|said| seen.contains(said.as_str())),
        "{seen:?}"
    );
    for other in ["en", "de", "es"].into_iter().filter(|other| *other != tag) {
        let strange: Vec<_> = plain(other)
            .into_iter()
            .filter(|said| !own.contains(said) && seen.contains(said.as_str()))
            .collect();
        assert!(strange.is_empty(), "{tag} page in {other}: {strange:?}");
    }
}

async fn choose(page: &Browser, select: &str, value: &str) {
    let script = "const e = document.querySelector(arguments[0]); if (!e) return false; \
        e.value = arguments[1]; e.dispatchEvent(new Event('change', { bubbles: true })); return e.value === arguments[1]";
    page.until(select, script, vec![json!(select), json!(value)])
        .await;
}

async fn until_in(page: &Browser, tag: &str) {
    let script = "return document.documentElement.lang === arguments[0] && Boolean(document.querySelector('#nav')?.checkVisibility())";
    page.until(tag, script, vec![json!(tag)]).await;
}

#[tokio::test(flavor = "multi_thread")]
async fn each_reader_has_a_language_of_their_own() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna, aino) = tokio::join!(
        driver.open(),
        driver.open_in("de-AT,de"),
        driver.open_in("fi-FI,fi"),
    );
    room.coach(&coach).await;
    assert_eq!(language(&coach).await, "en");
    coach.press("Check").await;
    coach.find("#drop").await;
    coach.drop_file("#drop", "week.epd", FILE).await;
    coach.press("Put the sound one into the week").await;
    coach.press("Week").await;
    coach.press("Post now: #2 from week.epd: back-rank").await;
    coach.press("Post it now").await;

    // As the browser asks: German in an English group, from the first page on.
    anna.goto(&format!("{}/in/forged", room.origin())).await;
    assert_eq!(language(&anna).await, "de");
    anna.until_says("h1", "Dieser Link öffnet den Raum nicht")
        .await;
    room.member(&anna, "Anna").await;
    speaks_only(&anna, "de").await;
    anna.until_says("#open-post", "Nr. 1").await;
    anna.type_into("#text", "Rd7\n").await;
    anna.until_says("#stream .sealed", "Falscher Zug").await;
    anna.until_says("#stream .sealed", "1.Td7 geht nicht").await;
    anna.press("Tipp").await;
    anna.until_says("#stream .sealed", "Tipp 1 von 3").await;
    // A refusal, too.
    let refused = "return fetch('/api/say', { method: 'POST', headers: { 'content-type': 'application/json' }, \
        body: JSON.stringify({ text: ' ' }) }).then((r) => r.json()).then((r) => r.error)";
    assert_eq!(
        anna.run(refused, vec![]).await,
        json!("In der Nachricht steht noch nichts.")
    );

    // As she chooses; what she was typing is there again, here and in the other field.
    anna.type_into("#text", "noch nicht fertig").await;
    anna.press("Meine Arbeit").await;
    anna.find("#mine #language").await;
    anna.until_says("#mine #language", "Wie im Browser eingestellt")
        .await;
    anna.type_into("#new-name", " B").await;
    choose(&anna, "#language", "es").await;
    until_in(&anna, "es").await;
    anna.until_says("#mine-title", "Mi trabajo").await;
    anna.until(
        "what was typed",
        "return document.querySelector('#text').value === 'noch nicht fertig' && document.querySelector('#new-name')?.value === 'Anna B'",
        vec![],
    )
    .await;
    anna.press("Sala").await;
    anna.until_says("#stream .sealed", "Jugada fallida").await;
    anna.until_says("#stream .sealed", "1.Td7 no funciona")
        .await;
    anna.until_says("#stream .sealed", "Pista 1 de 3").await;
    speaks_only(&anna, "es").await;
    anna.run("document.querySelector('#text').value = ''", vec![])
        .await;
    anna.type_into("#text", "Rxd8+\n").await;
    anna.until_says("#stream .sealed", "Resuelto").await;
    anna.until_says("#stream .sealed", "es la clave").await;
    for view in ["mine", "leaders", "past", "kept"] {
        anna.run("location.hash = arguments[0]", vec![json!(view)])
            .await;
        anna.find(&format!("[data-view={view}] h2")).await;
        speaks_only(&anna, "es").await;
    }
    assert_eq!(
        anna.run(refused, vec![]).await,
        json!("El mensaje todavía está vacío.")
    );

    // As the group has it, for a browser whose language nobody speaks here.
    aino.goto(&room.member_link).await;
    aino.find("#name").await;
    assert_eq!(language(&aino).await, "en");
    coach.press("Settings").await;
    coach.find("#save-settings").await;
    choose(&coach, "#set-language", "german").await;
    coach.press("Save the settings").await;
    coach.until_says("#settings", "Saved.").await;
    assert_eq!(language(&coach).await, "en", "her browser asks for English");
    room.member(&aino, "Aino").await;
    speaks_only(&aino, "de").await;
    aino.type_into("#text", "Td7\n").await;
    aino.until_says("#stream .sealed", "1.Td7 geht nicht").await;

    // The coach's page in the coach's own language, with what was begun on it.
    coach.press("Check").await;
    coach.type_into("#paste", "8/8").await;
    coach.press("Settings").await;
    coach.find("#save-settings").await;
    let tournament = "document.querySelector('#set-scale-tournament').click()";
    coach.run(tournament, vec![]).await;
    choose(&coach, "#language", "de").await;
    until_in(&coach, "de").await;
    coach
        .until_says("#settings", "Einstellungen speichern")
        .await;
    // A choice that was begun is there again, and so is what depends on it.
    coach
        .until(
            "no price of a wrong move in a tournament",
            "return document.querySelector('#set-scale-tournament')?.checked \
               && document.querySelector('#set-wrong').disabled",
            vec![],
        )
        .await;
    coach.press("Prüfen").await;
    let pasted = coach
        .run("return document.querySelector('#paste').value", vec![])
        .await;
    assert_eq!(pasted, json!("8/8"));
    // The reveal is in each reader's own.
    coach.press("Aufgaben").await;
    coach.press_first("#posts details summary").await;
    coach.press("Jetzt mit Auflösung schließen").await;
    coach.press("Mit Auflösung schließen").await;
    anna.run("location.hash = 'talk'", vec![]).await;
    anna.until_says("#stream .reveal", "N.º 1: la solución")
        .await;
    aino.until_says("#stream .reveal", "Nr. 1: die Lösung")
        .await;
    anna.until_says("#stream .reveal", "1.Txd8+").await;
    speaks_only(&anna, "es").await;
    speaks_only(&aino, "de").await;
    tokio::join!(coach.close(), anna.close(), aino.close());
}
