// @ts-check
// Lessons: taken in from a file, looked at step by step, put into the week, handed out and removed.

import { careful, get, hand, post } from "./ask.js";
import { button, byId, field, fill, make, sure } from "./build.js";
import { isDoubtful, soundName } from "./coach-week.js";
import { leadIn, notes, signOf } from "./post.js";
import { moves, say } from "./words.js";

const LARGEST = 16 * 1024 * 1024;

const trouble = byId("lesson-trouble");
/** @type {any} What the page hands over: `state`, and `refresh()`. */
let shared = null;
/** @type {number | null} The lesson that lies open. */
let opened = null;

/** Shows the lessons, and the open one anew. */
export async function openLessons(state, refresh) {
  shared = { state, refresh };
  const lessons = await get("/api/coach/lessons");
  if (!lessons.some(({ lesson }) => lesson === opened)) opened = null;
  fill(
    byId("lessons"),
    lessons.length
      ? make("ol", { class: "reports lessons" }, lessons.map(row))
      : make("p", { class: "help" }, say("coaching-no-lessons")),
  );
  if (opened !== null) show(await get(`/api/coach/lessons/${opened}`));
}

/** A draft has become a lesson, which lies open now. */
export function takenIn(lesson) {
  opened = lesson;
  location.hash = "lessons";
}

/** How far the check of a lesson has come. */
export function checkingLesson({ done, of }) {
  const place = byId("lesson-checking");
  let bar = place.querySelector("progress");
  if (!bar) {
    bar = make("progress", { "aria-label": say("coaching-positions-checked") });
    place.replaceChildren(bar);
  }
  bar.max = of;
  bar.value = done;
}

function takeIn(control, name, bytes) {
  return careful(control, trouble, async () => {
    if (bytes.size > LARGEST) throw new Error(say("coaching-file-too-large", { name }));
    const title = byId("lesson-title").value;
    try {
      const sheet = await hand(`/api/coach/lessons?name=${encodeURIComponent(name)}&title=${encodeURIComponent(title)}`, bytes);
      const broken = sheet.steps.filter((step) => step.trouble !== null).length;
      byId("lesson-told").textContent =
        sheet.lesson === null ? say("coaching-lesson-not-kept") : say("coaching-lesson-kept", { title: sheet.title, broken });
      if (sheet.lesson !== null) {
        byId("lesson-text").value = "";
        byId("lesson-title").value = "";
      }
      opened = sheet.lesson;
      await shared.refresh();
      // What could not be read is told once, with what was.
      show(sheet);
      byId("lesson-name")?.focus();
    } finally {
      byId("lesson-checking").replaceChildren();
    }
  });
}

byId("lesson-in").addEventListener("submit", (event) => {
  event.preventDefault();
  const text = byId("lesson-text").value;
  if (!text.trim()) {
    trouble.textContent = say("coaching-nothing-pasted");
    byId("lesson-text").focus();
    return;
  }
  takeIn(byId("lesson-pasted"), "pasted.pgn", new Blob([text]));
});

byId("lesson-file").addEventListener("change", async (event) => {
  const input = /** @type {HTMLInputElement & { files: FileList }} */ (event.currentTarget);
  const [file] = input.files;
  if (file) await takeIn(null, file.name, file);
  // The same file may be chosen again.
  input.value = "";
});

/** An item of a list. */
const item = (kind, ...about) => make("li", { class: `report ${kind}` }, make("div", { class: "about" }, ...about));

function row(lesson) {
  const { title, topic, steps, parts, waiting, posted } = lesson;
  const look = async () => {
    opened = lesson.lesson;
    show(await get(`/api/coach/lessons/${opened}`));
    byId("lesson-name")?.focus();
  };
  return item(
    "",
    make("p", { class: "outcome" }, make("strong", {}, title), topic ? `, ${topic}` : ""),
    make("p", { class: "help" }, say("coaching-lesson-count", { steps, parts, waiting, posted })),
    make(
      "div",
      { class: "row" },
      button(say("coaching-lesson-look"), (event) => careful(event.currentTarget, trouble, look), {
        class: "small",
        "aria-label": named(say("coaching-lesson-look"), title),
      }),
      make("a", { class: "button small", href: `#editor/lesson-${lesson.lesson}`, "aria-label": named(say("editor-write"), title) }, say("editor-write")),
      make(
        "a",
        { class: "button small", href: `/api/coach/lessons/${lesson.lesson}/lesson.pgn`, download: "lesson.pgn", "aria-label": named(say("coaching-lesson-out"), title) },
        say("coaching-lesson-out"),
      ),
      button(say("coaching-lesson-remove"), (event) => remove(event.currentTarget, lesson), {
        class: "small",
        "aria-label": named(say("coaching-lesson-remove"), title),
      }),
    ),
  );
}

/** A label, and which lesson it is about. */
const named = (label, title) => say("coaching-about", { label, id: title });

async function remove(control, { lesson, title }) {
  if (!(await sure(say("coaching-lesson-remove-sure", { title }), say("coaching-lesson-remove-it")))) return;
  await careful(control, trouble, async () => {
    await post(`/api/coach/lessons/${lesson}/remove`);
    if (opened === lesson) byId("lesson").replaceChildren();
    byId("lesson-told").textContent = say("coaching-lesson-removed", { title });
    await shared.refresh();
    byId("lessons-title").focus();
  });
}

// The form of the lesson that lies open: what is typed there stays while the page is drawn anew.
/** @type {{ lesson: number | null, form: HTMLFormElement | null }} */
let planning = { lesson: null, form: null };

function planOf(sheet) {
  if (planning.lesson !== sheet.lesson) planning = { lesson: sheet.lesson, form: planForm(sheet) };
  return planning.form;
}

/** A lesson, step by step. */
function show(sheet) {
  fill(
    byId("lesson"),
    make("h3", { id: "lesson-name", tabindex: "-1" }, sheet.title),
    sheet.lesson === null ? null : planOf(sheet),
    make("ol", { class: "reports steps" }, sheet.steps.map(stepCard)),
  );
}

/** The moment that the coach fixed for a step, as a field for day and time has it. */
function fixedAt(step) {
  const { items } = shared.state.week;
  const fixed = step.parts.map((each) => items.find((waiting) => waiting.id === each.item && waiting.fixed));
  return fixed.find(Boolean)?.due_local ?? "";
}

/** Whether something of a step can still go out. */
const isToCome = (step) => step.trouble === null && step.parts.some((each) => ["kept", "waits"].includes(each.stands));

function planForm({ lesson, title, steps }) {
  const told = make("p", { class: "told trouble", role: "status" });
  const at = make("input", { type: "datetime-local", id: "lesson-at" });
  const again = make("input", { type: "checkbox", id: "lesson-again" });
  const anyway = make("input", { type: "checkbox", id: "lesson-anyway" });
  const dates = steps.filter(isToCome).map((step) => ({
    step: step.step,
    field: make("input", { type: "datetime-local", id: `lesson-step-${step.step}`, value: fixedAt(step) }),
  }));
  const plan = (control, when) =>
    careful(control, told, async () => {
      const done = await post(`/api/coach/lessons/${lesson}/plan`, { ...when, anyway: anyway.checked, again: again.checked });
      byId("lesson-told").textContent = say("coaching-lesson-planned", { title, count: done.items, left: done.left_out });
      await shared.refresh();
    });
  return make(
    "form",
    { class: "sheet", id: "lesson-plan", onsubmit: (event) => event.preventDefault() },
    make("p", { class: "help" }, say("coaching-lesson-plan-what")),
    make("p", {}, make("label", {}, anyway, " ", say("coaching-lesson-anyway"))),
    make("p", {}, make("label", {}, again, " ", say("coaching-lesson-again"))),
    make("div", { class: "row" }, button(say("coaching-lesson-in-order"), (event) => plan(event.currentTarget, {}), { class: "first" })),
    make(
      "div",
      { class: "row" },
      field(say("coaching-lesson-from"), at),
      button(say("coaching-lesson-at-once"), (event) => {
        if (at.value) return plan(event.currentTarget, { at_once: at.value });
        told.textContent = say("coaching-lesson-when-wanted");
        at.focus();
        return undefined;
      }),
    ),
    dates.length ? byDates(dates, told, plan) : null,
    told,
  );
}

/** A moment for each step; those without one go out in free slots. */
function byDates(dates, told, plan) {
  return make(
    "fieldset",
    {},
    make("legend", {}, say("coaching-lesson-by-dates")),
    make("p", { class: "help" }, say("coaching-in-zone", { zone: shared.state.week.zone })),
    make("div", { class: "row" }, dates.map(({ step, field: at }) => field(say("coaching-lesson-step", { step: String(step) }), at))),
    make("div", { class: "row" }, button(say("coaching-lesson-put-dates"), (event) => {
      const typed = dates.filter(({ field: at }) => at.value).map(({ step, field: at }) => [step, at.value.slice(0, 16)]);
      if (typed.length) return plan(event.currentTarget, { dates: typed });
      told.textContent = say("coaching-lesson-dates-wanted");
      dates[0]?.field.focus();
      return undefined;
    })),
  );
}

function stepCard(one) {
  if (one.trouble !== null) return item("illegal", make("p", { class: "wrong" }, one.trouble));
  const step = String(one.step);
  return item(
    "",
    make("h4", {}, one.contrast ? say("coaching-lesson-step-contrast", { step }) : say("coaching-lesson-step", { step })),
    one.parts.map((each) => part(each, one.contrast)),
  );
}

function part(one, contrast) {
  return make(
    "div",
    { class: "part" },
    one.kind === "problem" ? null : written(one),
    leadIn(one.lead),
    one.kind === "problem" ? stop(one.checked, contrast) : null,
    one.waits_for.length ? make("p", { class: "help" }, say("coaching-lesson-waits", { steps: one.waits_for.join(", "), count: one.waits_for.length })) : null,
    make("p", { class: "help" }, standing(one)),
  );
}

function standing({ stands, number, step }) {
  switch (stands) {
    case "as-before":
      return say("coaching-lesson-part-as-before", { step: String(step) });
    case "not-kept":
      return say("coaching-lesson-part-not-kept");
    case "waits":
      return say("coaching-lesson-part-waits");
    case "open":
      return say("coaching-lesson-part-open", { number: String(number) });
    case "closed":
      return say("coaching-lesson-part-closed", { number: String(number) });
    default:
      return say("coaching-lesson-part-kept");
  }
}

/** A stop with its report; where the topic is meant to fail, nothing is said of it. */
function stop({ report, words, picture, same, topic_check: held }, contrast) {
  const lines = report.variations.length ? report.variations : [report.line.join(" ")].filter(Boolean);
  return [
    picture ? make("img", { class: "board", src: picture.src, alt: picture.alt || say("coaching-diagram-of", { fen: report.fen }), width: 720, height: 720, loading: "lazy" }) : null,
    make("p", { class: "outcome" }, make("strong", {}, say("coaching-outcome", { id: report.stipulation ?? "", found: soundName(report.verdict) }))),
    report.message ? make("p", { class: report.verdict === "sound" ? "" : "wrong" }, report.message) : null,
    held?.message && !contrast ? make("p", { class: isDoubtful(held) ? "wrong" : "" }, held.message) : null,
    report.warnings.map((text) => make("p", { class: "help" }, say("coaching-note", { text }))),
    same ? make("p", { class: "again" }, same.text) : null,
    words.with_post ? make("p", { class: "coach-words" }, words.with_post) : null,
    lines.length
      ? make("details", { class: "more" }, make("summary", {}, say("coaching-variations", { count: lines.length })), make("ol", { class: "lines" }, lines.map((line) => make("li", { class: "line" }, moves(line)))))
      : null,
    words.notes.length ? notes(words.notes) : null,
  ];
}

const written = (one) => [
  make("p", {}, make("span", { class: "sign" }, signOf(one)), " ", one.words),
  one.fen ? make("p", { class: "help" }, say("coaching-with-position", { fen: one.fen })) : null,
];
