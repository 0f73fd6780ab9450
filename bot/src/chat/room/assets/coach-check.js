// Files: dropped, chosen or pasted; the reports; the shelf of checked positions that are in no week.

import { careful, get, hand, post } from "./ask.js";
import { button, byId, counted, fill, make } from "./build.js";
import { preview, soundName } from "./coach-week.js";
import { inWords } from "./post.js";

/** Reports shown at once; more on demand. */
const PAGE = 30;
const LARGEST = 16 * 1024 * 1024;

const trouble = byId("check-trouble");
let shared = null;
let reports = null;

/** Opens the view; after a reload, the file checked last is still there. */
export async function openCheck(state, refresh) {
  shared = { state, refresh };
  if (reports === null) {
    reports = await get("/api/coach/checked").catch(() => []);
    showReports();
  }
  await showShelf(state, refresh);
}

/** How far a check has come. */
export function checking({ done, of }) {
  const place = byId("checking");
  let bar = place.querySelector("progress");
  if (!bar) {
    bar = make("progress", { "aria-label": "Positions checked" });
    place.replaceChildren(bar, make("span", { class: "help" }));
  }
  bar.max = of;
  bar.value = done;
  bar.nextElementSibling.textContent = ` ${done} of ${counted(of, "position")} checked`;
}

function check(control, name, bytes) {
  return careful(control, trouble, async () => {
    if (bytes.size > LARGEST) {
      throw new Error(`${name} is larger than 16 MB. Split it, then check the parts one by one.`);
    }
    byId("checking").replaceChildren(make("span", { class: "help" }, `Reading ${name}…`));
    try {
      reports = await hand(`/api/coach/import?name=${encodeURIComponent(name)}`, bytes);
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
    trouble.textContent = "There is nothing pasted yet.";
    byId("paste").focus();
    return;
  }
  check(event.currentTarget, pastedName(text), new Blob([text]));
});

/** A file name for pasted text, so that the reader knows what it is: games have tags in brackets. */
const pastedName = (text) => (/^\s*\[\w+\s+"/m.test(text) ? "pasted.pgn" : "pasted.epd");

byId("file").addEventListener("change", async (event) => {
  const input = event.currentTarget;
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
  for (const file of event.dataTransfer.files) await check(null, file.name, file);
});

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
      `${counted(reports.length, "position")} checked, ${sound.length} sound`,
    ),
    sound.length ? addAll(sound) : null,
    list(reports, "checked"),
  );
}

function addAll(sound) {
  const waiting = new Set(shared?.state.week.items.map((item) => item.position));
  const ids = sound.map(({ position }) => position).filter((id) => id !== null && !waiting.has(id));
  if (!ids.length) return null;
  return make(
    "p",
    {},
    button(
      ids.length === 1 ? "Put the sound one into the week" : `Put the ${ids.length} sound ones into the week`,
      (event) => enqueue(event.currentTarget, ids, false),
      { class: "first", id: "add-sound" },
    ),
  );
}

function enqueue(control, positions, anyway) {
  const card = control.closest("li");
  const place = card?.querySelector(".told") ?? trouble;
  return careful(control, place, async () => {
    const waiting = new Set(shared.state.week.items.map((item) => item.position));
    const wanted = positions.filter((id) => !waiting.has(id));
    if (wanted.length) await post("/api/coach/queue", { positions: wanted, anyway });
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
      ? [make("h3", {}, `On the shelf: checked earlier, in no week (${shelf.length})`), list(shelf, "shelf")]
      : []),
  );
  if (reports?.length) showReports();
}

const shownOf = { checked: PAGE, shelf: PAGE };

function list(all, which) {
  const items = make("ol", { class: "reports" }, all.slice(0, shownOf[which]).map(card));
  if (all.length <= shownOf[which]) return items;
  const more = button(`Show ${Math.min(PAGE, all.length - shownOf[which])} more`, () => {
    const from = shownOf[which];
    shownOf[which] += PAGE;
    items.append(...all.slice(from, shownOf[which]).map(card));
    items.children[from]?.querySelector("summary, button")?.focus();
    if (shownOf[which] >= all.length) more.remove();
  });
  return make("div", {}, items, more);
}

function card({ position, topic, report, picture }) {
  const waiting = shared?.state.week.items.some((item) => item.position === position);
  const lines = report.variations.length ? report.variations : [report.line.join(" ")].filter(Boolean);
  return make(
    "li",
    { class: `report ${report.verdict}` },
    picture ? make("img", { class: "board", src: picture.src, alt: picture.alt, width: 720, height: 720, loading: "lazy" }) : null,
    make(
      "div",
      { class: "about" },
      make(
        "p",
        { class: "outcome" },
        make("strong", {}, `${report.id}: ${soundName(report.verdict)}`),
        report.stipulation ? `, ${report.stipulation}` : "",
        topic ? `, ${topic}` : "",
      ),
      report.message ? make("p", { class: report.verdict === "sound" ? "" : "wrong" }, report.message) : null,
      report.keys.length ? make("p", {}, report.keys.length === 1 ? "Key: " : "Keys: ", make("strong", { class: "line" }, report.keys.join(", "))) : null,
      lines.length
        ? make(
            "details",
            { class: "more", open: lines.length <= 6 },
            make("summary", {}, `Variations (${lines.length})`),
            make("ol", { class: "lines" }, lines.map((line) => make("li", { class: "line" }, line))),
          )
        : null,
      report.tries.length
        ? make(
            "details",
            { class: "more" },
            make("summary", {}, `Tries and what refutes them (${report.tries.length})`),
            make("ol", { class: "lines" }, report.tries.map((line) => make("li", { class: "line" }, line))),
          )
        : null,
      report.warnings.map((text) => make("p", { class: "help" }, `Note: ${text}`)),
      make("p", { class: "help" }, how(report)),
      picture ? inWords(picture.alt) : make("p", { class: "help" }, report.fen),
      actions(position, report, waiting),
      make("p", { class: "told trouble", role: "status" }),
    ),
  );
}

/** How the verdict was come by. */
function how(report) {
  const judged = report.depth ? `Judged at depth ${report.depth}.` : "";
  const proof = report.proved ? "Proved by exhaustive search." : judged;
  const level = report.difficulty ? ` Difficulty about ${Math.round(report.difficulty)} of 10.` : "";
  const names = report.patterns.length ? ` Final picture: ${report.patterns.join(", ")}.` : "";
  return `${proof}${names}${level}`.trim();
}

function actions(position, report, waiting) {
  if (position === null) return null;
  if (waiting) return make("p", {}, "In the week. ", make("a", { href: "#week" }, "See the week"));
  const sound = report.verdict === "sound";
  return make(
    "div",
    { class: "row" },
    sound
      ? button("Put into the week", (event) => enqueue(event.currentTarget, [position], false), {
          "aria-label": `Put into the week: ${report.id}`,
        })
      : report.verdict === "illegal"
        ? null
        : button("Post it anyway", (event) => enqueue(event.currentTarget, [position], true), {
            "aria-label": `Post it anyway: ${report.id}`,
          }),
    button("Preview", (event) => preview(event.currentTarget, position), { "aria-label": `Preview: ${report.id}` }),
  );
}
