// @ts-check
// Files: dropped, chosen or pasted; the reports; the shelf of checked positions that are in no week.

import { careful, get, hand, post } from "./ask.js";
import { button, byId, fill, make } from "./build.js";
import { isDoubtful, preview, soundName } from "./coach-week.js";
import { inWords, notes, signOf } from "./post.js";
import { moment } from "./when.js";
import { listed, moves, pattern, say, sayAround } from "./words.js";

/** Reports shown at once; more on demand. */
const PAGE = 30;
const LARGEST = 16 * 1024 * 1024;

const trouble = byId("check-trouble");
/** @type {any} What the page hands over: `state`, and `refresh()`. */
let shared = null;
/** @type {any} The reports, once there are any. */
let reports = null;

/** Opens the view; after a reload, the file checked last is still there, with its topics as they are now. */
export async function openCheck(state, refresh) {
  shared = { state, refresh };
  // Topics may have been changed in the week meanwhile.
  reports = await get("/api/coach/checked").catch(() => reports ?? []);
  showReports();
  await showShelf(state, refresh);
}

/** How far a check has come. */
export function checking({ done, of }) {
  const place = byId("checking");
  let bar = place.querySelector("progress");
  if (!bar) {
    bar = make("progress", { "aria-label": say("coaching-positions-checked") });
    place.replaceChildren(bar, make("span", { class: "help" }));
  }
  bar.max = of;
  bar.value = done;
  /** @type {Element} */ (bar.nextElementSibling).textContent = ` ${say("coaching-checked-of", { done, count: of })}`;
}

function check(control, name, bytes) {
  return careful(control, trouble, async () => {
    if (bytes.size > LARGEST) {
      throw new Error(say("coaching-file-too-large", { name }));
    }
    byId("checking").replaceChildren(make("span", { class: "help" }, say("coaching-reading", { name })));
    try {
      reports = await hand(`/api/coach/import?name=${encodeURIComponent(name)}`, bytes);
      showWritten(await hand(`/api/coach/written?name=${encodeURIComponent(name)}`, bytes));
      showReports();
      await shared.refresh();
      byId("checked-title")?.focus();
    } finally {
      byId("checking").replaceChildren();
    }
  });
}

byId("check-paste").addEventListener("click", (event) => {
  const text = byId("paste").value;
  if (!text.trim()) {
    trouble.textContent = say("coaching-nothing-pasted");
    byId("paste").focus();
    return;
  }
  check(event.currentTarget, pastedName(text), new Blob([text]));
});

/** A file name for pasted text, so that the reader knows what it is: games have tags in brackets. */
function pastedName(text) {
  const ending = /^\s*\[\w+\s+"/m.test(text) ? ".pgn" : ".epd";
  return `${say("coaching-pasted")}${ending}`;
}

byId("write").addEventListener("submit", (event) => {
  event.preventDefault();
  const asks = event.submitter?.id === "queue-question";
  const value = (id) => /** @type {HTMLInputElement | HTMLTextAreaElement} */ (byId(id)).value;
  careful(/** @type {any} */ (event.submitter), byId("write-trouble"), async () => {
    await post(`/api/coach/queue/${asks ? "question" : "words"}`, {
      words: value("write-words"),
      fen: value("write-fen"),
      topic: value("write-topic"),
      at_reveal: asks ? value("write-reveal") : "",
    });
    /** @type {HTMLFormElement} */ (/** @type {any} */ (byId("write"))).reset();
    byId("write-told").textContent = asks ? say("coaching-question-waits") : say("coaching-words-wait");
    await shared.refresh();
  });
});

byId("file").addEventListener("change", async (event) => {
  const input = /** @type {HTMLInputElement & { files: FileList }} */ (event.currentTarget);
  const [file] = input.files;
  if (file) await check(null, file.name, file);
  // The same file may be chosen again.
  input.value = "";
});

const drop = byId("drop");
drop.addEventListener("dragover", (event) => {
  event.preventDefault();
  drop.classList.add("over");
});
drop.addEventListener("dragleave", () => drop.classList.remove("over"));
drop.addEventListener("drop", async (event) => {
  event.preventDefault();
  drop.classList.remove("over");
  // One after the other: each file has its own report.
  for (const file of event.dataTransfer?.files ?? []) await check(null, file.name, file);
});

/** Questions and words of the file, each to be put into the week. */
function showWritten(found) {
  fill(
    byId("written"),
    found.length ? make("h3", {}, say("coaching-written-found", { count: found.length })) : null,
    found.map((item) => {
      const told = make("p", { class: "told", role: "status" });
      return make(
        "article",
        { class: "sheet" },
        make("p", {}, make("span", { class: "sign" }, signOf(item)), " ", item.words),
        item.fen ? make("p", { class: "help" }, say("coaching-with-position", { fen: item.fen })) : null,
        button(say("coaching-enqueue"), (event) =>
          careful(event.currentTarget, told, async () => {
            const { words, fen, topic, at_reveal } = item;
            await post(`/api/coach/queue/${item.kind}`, { words, fen: fen ?? "", topic: topic ?? "", at_reveal: at_reveal ?? "" });
            told.textContent = say("coaching-waits-at-end");
            await shared.refresh();
          }),
        ),
        told,
      );
    }),
  );
}

function showReports() {
  const place = byId("checked");
  if (!reports.length) {
    place.replaceChildren();
    return;
  }
  const sound = reports.filter(({ report }) => report.verdict === "sound");
  fill(
    place,
    make(
      "h3",
      { id: "checked-title", tabindex: "-1" },
      say("coaching-checked", { count: reports.length, sound: sound.length }),
    ),
    sound.length ? addAll(sound) : null,
    list(reports, "checked"),
  );
}

function addAll(sound) {
  const waiting = new Set(shared?.state.week.items.map((item) => item.position));
  const free = sound.filter(({ position }) => position !== null && !waiting.has(position));
  // What was posted before goes in by a word of its own.
  const ids = [...new Set(free.filter(({ posted }) => !posted).map(({ position }) => position))];
  const before = free.length - free.filter(({ posted }) => !posted).length;
  if (!ids.length) return null;
  return make(
    "p",
    {},
    before ? `${say("coaching-left-out", { count: before })} ` : "",
    button(
      say("coaching-add-sound", { count: ids.length }),
      (event) => enqueue(event.currentTarget, ids, false),
      { class: "first", id: "add-sound" },
    ),
  );
}

function enqueue(control, positions, anyway, again = false) {
  const place = control.closest("li")?.querySelector(".told") ?? trouble;
  return careful(control, place, async () => {
    const waiting = new Set(shared.state.week.items.map((item) => item.position));
    const wanted = positions.filter((id) => !waiting.has(id));
    if (wanted.length) await post("/api/coach/queue", { positions: wanted, anyway, again });
    await shared.refresh();
    showReports();
    byId("checked-title")?.focus();
  });
}

/** Checked positions that are in no week and were never posted. */
export async function showShelf(state, refresh) {
  shared = { state, refresh };
  const here = new Set((reports ?? []).map(({ position }) => position));
  const shelf = (await get("/api/coach/shelf")).filter(({ position }) => !here.has(position));
  byId("shelf").replaceChildren(
    ...(shelf.length
      ? [make("h3", {}, say("coaching-shelf", { count: shelf.length })), list(shelf, "shelf")]
      : []),
  );
  if (reports?.length) showReports();
}

const shownOf = { checked: PAGE, shelf: PAGE };

function list(all, which) {
  const items = make("ol", { class: "reports" }, all.slice(0, shownOf[which]).map((one, at) => card(one, at)));
  if (all.length <= shownOf[which]) return items;
  const more = button(say("coaching-more", { count: Math.min(PAGE, all.length - shownOf[which]) }), () => {
    const from = shownOf[which];
    shownOf[which] += PAGE;
    items.append(...all.slice(from, shownOf[which]).map((one, at) => card(one, from + at)));
    const next = /** @type {HTMLElement | null | undefined} */ (items.children[from]?.querySelector("summary, button"));
    next?.focus();
    if (shownOf[which] >= all.length) more.remove();
  });
  return make("div", {}, items, more);
}

function card(checked, at) {
  const { position, topic, topic_check: held, further_topics: further, report, picture } = checked;
  const waiting = shared?.state.week.items.some((item) => item.position === position);
  const lines = report.variations.length ? report.variations : [report.line.join(" ")].filter(Boolean);
  return make(
    "li",
    { class: `report ${report.verdict}` },
    picture ? make("img", { class: "board", src: picture.src, alt: altOf(checked), width: 720, height: 720, loading: "lazy" }) : null,
    make(
      "div",
      { class: "about" },
      make(
        "p",
        { class: "outcome" },
        make("strong", {}, say("coaching-outcome", { id: report.id, found: soundName(report.verdict) })),
        [report.stipulation, topic, further.length ? say("coaching-also", { topics: listed(further) }) : ""]
          .filter(Boolean)
          .map((part) => `, ${part}`),
      ),
      known(checked, at),
      report.message ? make("p", { class: report.verdict === "sound" ? "" : "wrong" }, report.message) : null,
      report.keys.length ? make("p", {}, keysOf(report.keys)) : null,
      lines.length
        ? make(
            "details",
            { class: "more", open: lines.length <= 6 },
            make("summary", {}, say("coaching-variations", { count: lines.length })),
            make("ol", { class: "lines" }, lines.map((line) => make("li", { class: "line" }, moves(line)))),
          )
        : null,
      report.tries.length
        ? make(
            "details",
            { class: "more" },
            make("summary", {}, say("coaching-tries", { count: report.tries.length })),
            make("ol", { class: "lines" }, report.tries.map((line) => make("li", { class: "line" }, moves(line)))),
          )
        : null,
      held?.message ? make("p", { class: isDoubtful(held) ? "wrong" : "" }, held.message) : null,
      report.warnings.map((text) => make("p", { class: "help" }, say("coaching-note", { text }))),
      said(checked),
      make("p", { class: "help" }, how(report)),
      picture ? inWords(altOf(checked)) : make("p", { class: "help" }, report.fen),
      actions(checked, waiting),
      make("p", { class: "told trouble", role: "status" }),
    ),
  );
}

/** The card that a control of it stands on. */
const cardOf = (control) => /** @type {HTMLLIElement} */ (control.closest("li"));

/** The words that replace the picture. */
const altOf = ({ picture, report }) => picture.alt || say("coaching-diagram-of", { fen: report.fen });

const keysOf = (keys) =>
  sayAround("coaching-keys", { count: keys.length, keys: make("strong", { class: "line" }, listed(keys.map(moves))) });

/** How the verdict was come by. */
function how({ proved, depth, patterns, difficulty }) {
  const judged = depth ? say("coaching-judged-at", { depth }) : "";
  return [
    proved ? say("coaching-proved") : judged,
    patterns.length ? say("room-final-picture", { patterns: listed(patterns.map(pattern)) }) : "",
    difficulty ? say("coaching-level", { level: Math.round(difficulty) }) : "",
  ]
    .filter(Boolean)
    .join(" ");
}

/** A label, and which report it is about. */
const about = (label, { id }) => say("coaching-about", { label, id });

/** What was known of a position before: another version of it, with the choice, and its last post. */
function known({ position, report, same, posted }, at) {
  const choose = (label, choice) =>
    button(
      label,
      (event) => {
        const place = cardOf(event.currentTarget).querySelector(".told");
        return careful(event.currentTarget, place, async () => {
          reports[at] = await post(`/api/coach/checked/${at}/same`, { choice, position });
          await shared.refresh();
          showReports();
          byId("checked-title")?.focus();
        });
      },
      { class: "small", "aria-label": about(label, report) },
    );
  return [
    same ? make("p", { class: "again" }, same.text) : null,
    same?.choice
      ? make("div", { class: "row" }, choose(say("coaching-keep-old"), "keep"), choose(say("coaching-take-new"), "new"), choose(say("coaching-keep-both"), "both"))
      : null,
    posted ? make("p", { class: "again" }, say("coaching-posted-before", { number: String(posted.number), at: moment(posted.at, shared?.state.week.zone) })) : null,
  ];
}

/** The coach's words on a position, by when they go out, and the way to change them. */
function said(checked) {
  const { position, report, words } = checked;
  const part = (when, text) => (text ? [make("h4", {}, when), make("p", { class: "coach-words" }, text)] : []);
  return make(
    "div",
    { class: "own-words" },
    part(say("coaching-words-with-post"), words.with_post),
    part(say("coaching-words-at-reveal"), words.at_reveal),
    words.notes.length ? notes(words.notes) : null,
    position === null ? null : make("details", { class: "more" }, make("summary", {}, say("coaching-change-words")), wordsForm(checked, report)),
  );
}

function wordsForm(checked, report) {
  /** @returns {[HTMLElement, HTMLTextAreaElement]} */
  const field = (label, value, most, id) => {
    const area = make("textarea", { id, rows: 3, maxlength: most }, value);
    return [make("div", {}, make("label", { class: "over", for: id }, label), area), area];
  };
  const [postField, withPost] = field(say("coaching-with-post"), checked.words.with_post, 1000, `with-post-${checked.position}`);
  const [revealField, atReveal] = field(say("coaching-at-reveal"), checked.words.at_reveal, 4000, `at-reveal-${checked.position}`);
  const id = `anyway-${checked.position}`;
  const anyway = make("input", { type: "checkbox", id });
  return make(
    "div",
    { class: "fields words-form" },
    postField,
    revealField,
    make("p", {}, anyway, " ", make("label", { for: id }, say("coaching-words-anyway"))),
    button(
      say("coaching-keep-words"),
      (event) => {
        const here = cardOf(event.currentTarget);
        const told = /** @type {Element} */ (here.querySelector(".told"));
        return careful(event.currentTarget, told, async () => {
          const now = await post(`/api/coach/positions/${checked.position}/words`, {
            with_post: withPost.value,
            at_reveal: atReveal.value,
            anyway: anyway.checked,
          });
          checked.words = now.words;
          here.querySelector(".own-words")?.replaceWith(said(checked));
          told.textContent = say("coaching-words-kept");
        });
      },
      { "aria-label": about(say("coaching-keep-words"), report) },
    ),
  );
}

const enqueueLabel = (posted) => (posted ? say("coaching-enqueue-again") : say("coaching-enqueue"));

function actions({ position, report, posted }, waiting) {
  if (position === null) return null;
  const edit = make("a", { class: "button", href: `#edit/${position}`, "aria-label": about(say("editor-edit"), report) }, say("editor-edit"));
  if (waiting) return make("p", { class: "row" }, say("coaching-in-week"), " ", make("a", { href: "#week" }, say("coaching-see-week")), edit);
  const sound = report.verdict === "sound";
  return make(
    "div",
    { class: "row" },
    sound
      ? button(enqueueLabel(posted), (event) => enqueue(event.currentTarget, [position], false, Boolean(posted)), {
          "aria-label": about(enqueueLabel(posted), report),
        })
      : report.verdict === "illegal"
        ? null
        : button(posted ? say("coaching-post-anyway-again") : say("coaching-post-anyway"), (event) => enqueue(event.currentTarget, [position], true, Boolean(posted)), {
            "aria-label": about(say("coaching-post-anyway"), report),
          }),
    button(say("room-preview"), (event) => preview(event.currentTarget, position), { "aria-label": about(say("room-preview"), report) }),
    edit,
  );
}
