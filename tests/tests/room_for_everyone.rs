//! The club room for everyone: contrast by WCAG 2.2 AA in light and dark, everything by keyboard alone,
//! and nothing wider than a phone of 360 pixels.

use sealed_move_tests::{
    browser::{Browser, Colours, Driver},
    room::RunningRoom,
};
use serde_json::json;

const FILE: &str = "r2r2k1/5ppp/8/8/8/8/3R1PPP/3R2K1 w - - dm 2; id \"back-rank\";\n\
    6k1/5ppp/8/8/8/8/5PPP/R3R1K1 w - - dm 1; id \"two-rooks\";\n\
    6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - dm 1; id \"one-rook\";\n";

/// Computes contrast as WCAG 2.2 defines it (relative luminance, success criteria 1.4.3 and 1.4.11) for
/// every piece of visible text against the colour that is really behind it, and for the borders of
/// controls. Returns what falls short.
const CONTRAST: &str = r#"
const parse = (colour) => {
  const [r, g, b, a = 1] = colour.match(/[\d.]+/g).map(Number);
  return { r, g, b, a };
};
const over = (top, under) => ({
  r: top.r * top.a + under.r * (1 - top.a),
  g: top.g * top.a + under.g * (1 - top.a),
  b: top.b * top.a + under.b * (1 - top.a),
  a: 1,
});
const ground = (element) => {
  const layers = [];
  for (let at = element; at; at = at.parentElement) layers.push(parse(getComputedStyle(at).backgroundColor));
  return layers.reverse().reduce((under, layer) => over(layer, under), { r: 255, g: 255, b: 255, a: 1 });
};
const light = ({ r, g, b }) => {
  const part = (c) => ((c /= 255) <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
  return 0.2126 * part(r) + 0.7152 * part(g) + 0.0722 * part(b);
};
const contrast = (one, other) => {
  const [high, low] = [light(one), light(other)].sort((a, b) => b - a);
  return (high + 0.05) / (low + 0.05);
};
const short = [];
let seen = 0;
const name = (e) => `${e.tagName.toLowerCase()}${e.id ? `#${e.id}` : ""}.${e.className} "${(e.innerText ?? e.value ?? "").slice(0, 30)}"`;
for (const element of document.querySelectorAll("body, body *")) {
  if (!element.checkVisibility()) continue;
  const style = getComputedStyle(element);
  const control = element.matches("input, select, textarea");
  const text = [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent.trim());
  if ((text || control) && !element.matches("option, script, style, noscript, datalist *")) {
    const size = parseFloat(style.fontSize);
    const large = size >= 24 || (size >= 18.66 && Number(style.fontWeight) >= 700);
    const found = contrast(over(parse(style.color), ground(element)), ground(element));
    seen++;
    // A control that is switched off is exempt (1.4.3); ours meet the bound all the same.
    if (found < (large ? 3 : 4.5)) short.push(`${name(element)} text ${found.toFixed(2)}`);
  }
  if (element.matches("button, input:not([type=checkbox]):not(.unseen), select, textarea, .button")) {
    const around = ground(element.parentElement);
    const edge = Math.max(
      contrast(over(parse(style.borderTopColor), around), around),
      contrast(ground(element), around),
    );
    if (edge < 3) short.push(`${name(element)} edge ${edge.toFixed(2)}`);
  }
  if (control && element.placeholder) {
    const found = contrast(parse(getComputedStyle(element, "::placeholder").color), ground(element));
    if (found < 4.5) short.push(`${name(element)} placeholder ${found.toFixed(2)}`);
  }
}
return { seen, short };
"#;

/// What sticks out on the right.
const WIDER: &str = r#"
const wide = document.documentElement.clientWidth;
const inside = (e) => { for (let at = e.parentElement; at; at = at.parentElement) if (["auto", "hidden", "scroll"].includes(getComputedStyle(at).overflowX)) return true; return false; };
return document.documentElement.scrollWidth <= wide
  ? []
  : [...document.querySelectorAll("body *")].filter((e) => e.getBoundingClientRect().right > wide + 0.5 && !inside(e)).slice(0, 5).map((e) => `${e.tagName}.${e.className}#${e.id}`).concat(["scrolls sideways"]);
"#;

/// Pictures without words, fields without a name.
const NAMELESS: &str = r#"
const named = (e) => e.labels?.length || e.getAttribute("aria-label") || e.getAttribute("aria-labelledby") || e.title || e.textContent?.trim();
return [
  ...[...document.querySelectorAll("img")].filter((e) => !e.alt),
  ...[...document.querySelectorAll("input, select, textarea, button, summary, a")].filter((e) => !named(e)),
].map((e) => e.outerHTML.slice(0, 120));
"#;

/// A club with an open post, a closed one, talk, a reply and a week.
async fn furnish(room: &RunningRoom, coach: &Browser, anna: &Browser) {
    room.coach(coach).await;
    room.member(anna, "Anna").await;
    coach.press("Check").await;
    coach.find("#drop").await;
    coach.drop_file("#drop", "week.epd", FILE).await;
    coach.press("Put the 2 sound ones into the week").await;
    coach.press("Post it anyway: two-rooks").await;
    coach.press("Week").await;
    coach
        .until(
            "three places",
            "return document.querySelectorAll('#week > li[data-item]').length === 3",
            vec![],
        )
        .await;
    coach.press("Post now: #1 from week.epd: one-rook").await;
    coach.press("Post it now").await;
    anna.until_says("#open-post", "mate in one").await;
    anna.type_into("#text", "Rb1\n").await;
    anna.until_says("#stream .sealed", "Wrong move").await;
    anna.type_into("#text", "Good evening\n").await;
    anna.until_says("#stream", "Good evening").await;
    coach.press("Close now with the reveal").await;
    coach.press("Close with the reveal").await;
    anna.until_says("#stream .reveal", "Ra8#").await;
    coach.press("Post now: #2 from week.epd: back-rank").await;
    coach.press("Post it now").await;
    anna.until_says("#open-post", "mate in two").await;
    anna.type_into("#text", "Rd7\n").await;
    anna.until_says("#stream", "Rd7").await;
}

/// Goes to a view and waits until it is filled.
async fn view(page: &Browser, name: &str, filled: &str) {
    page.run("location.hash = arguments[0]", vec![json!(name)])
        .await;
    page.find(filled).await;
}

const MEMBER: [(&str, &str); 7] = [
    ("talk", "#stream .reveal"),
    ("mine", "#mine table"),
    ("leaders", "#leaders table"),
    ("past", "#past details"),
    ("cards", "#cards .card-list"),
    ("cards/corridor", "#cards .card"),
    ("kept", "#erase"),
];
const COACH: [(&str, &str); 9] = [
    ("week", "#week > li[data-item]"),
    ("check", "#checked .report"),
    ("posts", "#posts details"),
    ("summary", "#summary table"),
    ("cards", "#cards .card-list"),
    ("cards/corridor", "#cards .card"),
    ("talk", "#stream li"),
    ("members", "#members details[data-member]"),
    ("settings", "#save-settings"),
];

async fn inspect(page: &Browser, views: &[(&str, &str)], whose: &str) {
    for colours in [Colours::Light, Colours::Dark] {
        for width in [360, 1280] {
            page.screen(width, 780, colours).await;
            for (name, filled) in views {
                view(page, name, filled).await;
                // Everything that can be unfolded counts, too.
                page.run(
                    "document.querySelectorAll('details').forEach((d) => (d.open = true))",
                    vec![],
                )
                .await;
                page.run(
                    "document.getAnimations().forEach((a) => a.finish())",
                    vec![],
                )
                .await;
                let at = format!("{whose} {name}, {width} pixels, {colours:?}");
                let found = page.run(CONTRAST, vec![]).await;
                assert!(
                    found["seen"].as_u64().unwrap_or_default() > 10,
                    "{at}: {found}"
                );
                assert_eq!(found["short"], json!([]), "{at}: too little contrast");
                assert_eq!(page.run(WIDER, vec![]).await, json!([]), "{at}");
                assert_eq!(page.run(NAMELESS, vec![]).await, json!([]), "{at}");
            }
        }
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn contrast_names_and_phones() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna) = tokio::join!(driver.open(), driver.open());
    furnish(&room, &coach, &anna).await;
    inspect(&anna, &MEMBER, "member").await;
    inspect(&coach, &COACH, "coach").await;

    // The pages before and outside the room.
    anna.goto(&format!("{}/in/forged", room.origin())).await;
    for colours in [Colours::Light, Colours::Dark] {
        anna.screen(360, 640, colours).await;
        let found = anna.run(CONTRAST, vec![]).await;
        assert_eq!(found["short"], json!([]), "refused, {colours:?}");
        assert_eq!(anna.run(WIDER, vec![]).await, json!([]));
    }
    tokio::join!(coach.close(), anna.close());
}

/// What is drawn anew by news from the room leaves the focus where it was, with an id or without.
async fn focus_outlives_a_drawing(page: &Browser) {
    let script = "return import(location.origin + '/parts/build.js').then(({ fill, make }) => { \
        const place = document.body.appendChild(make('div')); \
        const link = (text) => make('a', { href: '#check' }, text); \
        const draw = (...more) => fill(place, more, link('One'), link('Two'), link('Two'), make('button', { id: 'drawn' }, 'A')); \
        const at = () => [...place.children].indexOf(document.activeElement); \
        const seen = [0, 2, 3].map((which) => { \
            draw(); place.children[which].focus(); const old = document.activeElement; \
            draw(make('p', {}, 'news')); return [at(), old.isConnected]; }); \
        place.remove(); return seen; })";
    // One further down for the news, and no longer the element that was drawn first.
    assert_eq!(
        page.run(script, vec![]).await,
        json!([[1, false], [3, false], [4, false]])
    );
}

/// Presses Tab until the focus is on what `selector` finds, and checks on the way that the focus shows.
async fn tab_to(page: &Browser, selector: &str) {
    for _ in 0..200 {
        page.key(TAB).await;
        let at = page
            .run(
                "const e = document.activeElement; const s = getComputedStyle(e); \
                 return { there: e.matches(arguments[0]), outline: parseFloat(s.outlineWidth), style: s.outlineStyle, what: e.outerHTML.slice(0, 100), body: e === document.body }",
                vec![json!(selector)],
            )
            .await;
        // The page itself, or a heading that the page moved the focus to, is no control.
        let passing = at["what"]
            .as_str()
            .is_some_and(|e| e.contains("tabindex=\"-1\""));
        if at["body"] == json!(true) || passing {
            continue;
        }
        let shown = at["outline"].as_f64().unwrap_or_default() >= 2.0 && at["style"] != "none";
        assert!(
            shown
                || at["what"]
                    .as_str()
                    .is_some_and(|e| e.contains("type=\"file\"")),
            "the focus does not show on {at}"
        );
        if at["there"] == json!(true) {
            return;
        }
    }
    panic!("{selector} cannot be reached by Tab");
}

/// WebDriver's code points for keys without a character (W3C WebDriver, 17.4.2).
const TAB: char = '\u{e004}';
const ENTER: char = '\u{e007}';
const DOWN: char = '\u{e015}';

#[tokio::test(flavor = "multi_thread")]
async fn everything_by_keyboard_alone() {
    let room = RunningRoom::start();
    let driver = Driver::start();
    let (coach, anna) = tokio::join!(driver.open(), driver.open());

    // In by the link, a name, and into the room.
    anna.goto(&room.member_link).await;
    anna.find("#name").await;
    anna.keys("Anna").await;
    anna.key(ENTER).await;
    anna.find("#text").await;

    // The coach pastes, checks, arranges and posts.
    room.coach(&coach).await;
    focus_outlives_a_drawing(&coach).await;
    tab_to(&coach, "a[href='#check']").await;
    coach.key(ENTER).await;
    coach.find("#paste").await;
    tab_to(&coach, "#paste").await;
    let paste = "const e = document.activeElement; e.value = arguments[0]; return e.id";
    assert_eq!(coach.run(paste, vec![json!(FILE)]).await, json!("paste"));
    tab_to(&coach, "#check-paste").await;
    coach.key(ENTER).await;
    coach
        .until_says("#checked-title", "3 positions checked, 2 sound")
        .await;
    tab_to(&coach, "#add-sound").await;
    coach.key(ENTER).await;
    coach.until_says("#checked", "In the week").await;
    coach.refresh().await;
    tab_to(&coach, "a[href='#week']").await;
    coach.key(ENTER).await;
    coach
        .until(
            "two places",
            "return document.querySelectorAll('#week > li[data-item]').length === 2",
            vec![],
        )
        .await;
    tab_to(&coach, "#week > li:nth-child(2) button[id^=up]").await;
    coach.key(ENTER).await;
    coach.until_says("#week > li:first-child", "one-rook").await;
    coach.refresh().await;
    coach.find("#week button[id^=now]").await;
    tab_to(&coach, "#week > li:nth-child(2) button[id^=preview]").await;
    coach.key(ENTER).await;
    coach
        .until_says("dialog", "White to move and mate in two")
        .await;
    tab_to(&coach, "dialog button").await;
    coach.key(ENTER).await;
    coach
        .until(
            "the window is closed",
            "return !document.querySelector('dialog')",
            vec![],
        )
        .await;
    tab_to(&coach, "#week > li:nth-child(2) button[id^=now]").await;
    coach.key(ENTER).await;
    coach.find("dialog[open]").await;
    tab_to(&coach, "dialog button.first").await;
    coach.key(ENTER).await;

    // The member answers, takes a hint, and looks at the leaderboard.
    anna.until_says("#open-post", "mate in two").await;
    tab_to(&anna, "#hint").await;
    anna.key(ENTER).await;
    anna.until_says("#stream .sealed", "Hint 1 of 3").await;
    tab_to(&anna, "#text").await;
    anna.keys("Rd7").await;
    anna.key(ENTER).await;
    anna.until_says("#stream .sealed", "Wrong move").await;
    anna.keys("Rxd8+").await;
    tab_to(&anna, "#answer").await;
    anna.key(ENTER).await;
    anna.until_says("#stream .sealed", "Solved").await;
    tab_to(&anna, "a[href='#leaders']").await;
    anna.key(ENTER).await;
    anna.until_says("#leaders", "Nobody has points here yet")
        .await;
    let focus = anna.run("return document.activeElement.id", vec![]).await;
    assert_eq!(focus, json!("leaders-title"), "the focus moves along");

    // Closed, by keyboard.
    coach.until_says("#week-state", "No. 1 is open").await;
    tab_to(&coach, "button[id^=close]").await;
    coach.key(ENTER).await;
    coach.find("dialog[open]").await;
    tab_to(&coach, "dialog button.first").await;
    coach.key(ENTER).await;
    tab_to(&anna, "a[href='#talk']").await;
    anna.key(ENTER).await;
    anna.until_says("#stream .reveal", "Rxd8+").await;
    tab_to(&anna, "a[href='#leaders']").await;
    anna.key(ENTER).await;
    anna.until_says("#leaders", "Anna").await;
    tab_to(&anna, "#leaders-days").await;
    anna.key(DOWN).await;
    anna.until_says("#leaders", "Anna").await;

    tokio::join!(coach.close(), anna.close());
}
