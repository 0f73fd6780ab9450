// @ts-check
// Lessons that are being written: the list of drafts, and one of them, kept as it is typed.

import { careful, get, post } from "./ask.js";
import { button, byId, field, fill, make, sure } from "./build.js";
import { takenIn } from "./coach-lessons.js";
import { isDoubtful, soundName } from "./coach-week.js";
import { posted, reveal } from "./post.js";
import { emptyStep, stepEditor } from "./step.js";
import { backUp, backedUp, forget } from "./typed.js";
import { stamp } from "./when.js";
import { say } from "./words.js";

/** How long after the last key a draft is kept, and after a failure tried again, in milliseconds. */
const PAUSE = 600;
const AGAIN = 4000;

const trouble = byId("drafts-trouble");
const told = byId("drafts-told");
/** @type {Keeper | null} The draft that lies open. */
let opened = null;

/** @type {number | null} The draft that was opened as a copy just now. */
let copied = null;

/** Where a draft is kept in this browser until the server has it. */
const kept = (draft) => `draft-${draft}`;

/** Keeps a draft on the server as it is typed, and in the browser until it is there. */
class Keeper {
  /** @type {number | undefined} */
  #timer;
  /** @type {Promise<void> | null} */
  #going = null;
  #dirty = false;
  /** Another page has written meanwhile. */
  overtaken = false;

  constructor({ draft, revision, lesson, content, faults, begun_at: begun }) {
    this.draft = draft;
    this.revision = revision;
    this.lesson = lesson;
    this.content = content;
    this.faults = faults;
    this.begun = begun;
    /** The step that lies open, from 0. */
    this.step = 0;
  }

  /** Something was typed. */
  changed() {
    this.#dirty = true;
    this.#backUp();
    if (this.overtaken) return;
    state(say("editor-keeping"));
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.flush(), PAUSE);
  }

  /** Keeps it in the browser. A store of its own may have another draft of this id. */
  #backUp() {
    backUp(kept(this.draft), { begun: this.begun, revision: this.revision, content: this.content });
  }

  /** Keeps what is not kept yet; whether all is. */
  async flush() {
    clearTimeout(this.#timer);
    while (this.#going) await this.#going;
    if (!this.#dirty || this.overtaken) return !this.overtaken;
    this.#going = this.#save();
    await this.#going;
    return !this.#dirty && !this.overtaken;
  }

  async #save() {
    this.#dirty = false;
    try {
      const saved = await post(`/api/coach/drafts/${this.draft}`, { revision: this.revision, content: this.content });
      if (saved.saved === "overtaken") {
        this.overtaken = true;
        this.#dirty = true;
        state("");
        conflict(this);
        return;
      }
      this.revision = saved.revision;
      this.faults = saved.faults;
      if (this.#dirty) this.#backUp();
      else forget(kept(this.draft));
      state(say("editor-kept"));
      showFaults(this);
    } catch (error) {
      this.#dirty = true;
      state(say("editor-not-kept", { why: error.message }));
      // What the server refuses is typed otherwise first; a broken line mends.
      if (!error.status || error.status >= 500) this.#timer = setTimeout(() => this.flush(), AGAIN);
    } finally {
      this.#going = null;
    }
  }
}

/** How the open draft is kept. */
function state(text) {
  const place = document.getElementById("draft-state");
  if (place && place.textContent !== text) place.textContent = text;
}

addEventListener("visibilitychange", () => {
  if (document.visibilityState === "hidden") opened?.flush();
});
addEventListener("pagehide", () => opened?.flush());

/** Opens the view: the list, or the draft of the address. */
export async function openDrafts(wanted) {
  // The two editors have fields of the same names.
  byId("edited").replaceChildren();
  if (wanted?.startsWith("lesson-")) {
    await careful(null, trouble, () => writeLesson(wanted.slice("lesson-".length)));
    return;
  }
  if (wanted) {
    if (String(opened?.draft) !== wanted || !document.getElementById("draft-state")) await openDraft(wanted);
    return;
  }
  await close();
  await list();
}

/** The list anew, where it shows. */
export async function draftsChanged() {
  if (document.body.dataset.at === "editor" && !opened) await list();
}

/** Puts the open draft away, when all of it is kept. */
export async function close() {
  if (!opened) return;
  await opened.flush();
  opened = null;
  byId("draft").replaceChildren();
}

async function list() {
  const drafts = await get("/api/coach/drafts");
  // A draft may have been opened meanwhile.
  if (location.hash !== "#editor" && location.hash !== "") return;
  fill(
    byId("drafts"),
    make("p", { class: "help" }, say("editor-what")),
    button(say("editor-begin"), (event) => careful(event.currentTarget, trouble, begin), { class: "first", id: "begin-draft" }),
    drafts.length ? make("ol", { class: "reports drafts" }, drafts.map(row)) : make("p", { class: "help" }, say("editor-no-drafts")),
  );
}

async function begin() {
  const { draft } = await post("/api/coach/drafts", { content: { title: "", topic: "", steps: [emptyStep("words")] } });
  location.hash = `editor/${draft}`;
}

/** What a draft is called. */
const titleOf = ({ title }) => title.trim() || say("editor-untitled");

function row(draft) {
  const title = titleOf(draft);
  const named = (label) => ({ class: "small", "aria-label": say("coaching-about", { label, id: title }) });
  return make(
    "li",
    { class: "report" },
    make(
      "div",
      { class: "about" },
      make("p", { class: "outcome" }, make("strong", {}, title)),
      make("p", { class: "help" }, say("editor-draft-count", { steps: draft.steps }), " ", stamp(draft.changed_at)),
      draft.lesson === null ? null : make("p", { class: "help" }, say("editor-is-lesson")),
      make(
        "div",
        { class: "row" },
        make("a", { href: `#editor/${draft.draft}`, ...named(say("editor-open")), class: "button small" }, say("editor-open")),
        make("a", { href: `/api/coach/drafts/${draft.draft}/draft.pgn`, download: "draft.pgn", ...named(say("coaching-lesson-out")), class: "button small" }, say("coaching-lesson-out")),
        button(say("editor-remove"), (event) => remove(event.currentTarget, draft.draft, title), named(say("editor-remove"))),
      ),
    ),
  );
}

async function remove(control, draft, title) {
  if (!(await sure(say("editor-remove-sure", { title }), say("editor-remove-it")))) return;
  await careful(control, trouble, async () => {
    await post(`/api/coach/drafts/${draft}/remove`);
    forget(kept(draft));
    told.textContent = say("editor-removed", { title });
    opened = null;
    byId("draft").replaceChildren();
    if (location.hash === "#editor") await list();
    else location.hash = "editor";
    byId("editor-title").focus();
  });
}

async function openDraft(wanted) {
  await close();
  byId("drafts").replaceChildren();
  told.textContent = String(copied) === wanted ? say("editor-copy") : "";
  trouble.textContent = "";
  try {
    opened = new Keeper(await get(`/api/coach/drafts/${wanted}`));
  } catch (error) {
    location.replace("#editor");
    trouble.textContent = error.message;
    return;
  }
  const left = backedUp(kept(wanted));
  // What was typed last and never reached the server.
  const lost = left && left.begun === opened.begun && JSON.stringify(left.content) !== JSON.stringify(opened.content) ? left : null;
  if (lost) opened.content = lost.content;
  draw(opened);
  if (lost) {
    if (lost.revision !== opened.revision) opened.revision = lost.revision;
    opened.changed();
  }
}

/** Opens a lesson for writing. */
async function writeLesson(lesson) {
  const sheet = await post(`/api/coach/lessons/${lesson}/write`);
  copied = sheet.lesson === null ? sheet.draft : null;
  location.replace(`#editor/${sheet.draft}`);
}

/** The open draft, drawn anew. @param {Keeper} keeper */
function draw(keeper) {
  const { content } = keeper;
  keeper.step = Math.min(keeper.step, Math.max(0, content.steps.length - 1));
  const line = (label, name, attributes) => {
    const input = make("input", { id: `draft-${name}`, value: content[name], ...attributes });
    input.addEventListener("input", () => {
      content[name] = input.value;
      keeper.changed();
    });
    return field(label, input);
  };
  fill(
    byId("draft"),
    make("p", {}, make("a", { href: "#editor" }, say("editor-all-drafts"))),
    make("p", { id: "draft-state", class: "told", role: "status" }),
    make("div", { id: "draft-conflict" }),
    make("div", { class: "fields" }, line(say("editor-draft-title"), "title", { maxlength: 100 }), line(say("room-topic"), "topic", { list: "topics", maxlength: 80 })),
    make("ol", { id: "draft-steps", class: "draft-steps" }),
    make("div", { class: "row" }, ["words", "example", "stop", "question"].map((kind) => button(say("editor-add", { kind }), () => add(keeper, kind), { class: "small", id: `add-${kind}` }))),
    make("div", { id: "draft-step" }),
    make(
      "div",
      { class: "row finish" },
      button(say("coaching-lesson-take-in"), (event) => takeIn(event.currentTarget, keeper), { class: "first", id: "take-in" }),
      button(say("coaching-lesson-out"), (event) => careful(event.currentTarget, byId("draft-trouble"), () => download(keeper)), { id: "download-draft" }),
      button(say("editor-remove"), (event) => remove(event.currentTarget, keeper.draft, titleOf(content)), { id: "remove-draft" }),
    ),
    make("p", { class: "help" }, keeper.lesson === null ? say("editor-take-in-what") : say("editor-take-in-again")),
    make("p", { id: "draft-trouble", class: "trouble", role: "alert" }),
    make("div", { id: "draft-checking", role: "status" }),
  );
  steps(keeper);
  lay(keeper);
}

/** The beginning of a text. */
const beginning = (text) => (text.length > 50 ? `${text.slice(0, 49)}\u2026` : text);

/** The list of steps. @param {Keeper} keeper */
function steps(keeper) {
  const { content } = keeper;
  const act = (label, step, doing, attributes) => button(label, doing, { class: "small", "aria-label": say("coaching-about", { label, id: step }), ...attributes });
  const item = (one, at) => {
    const step = say("editor-step", { step: String(at + 1) });
    const fault = keeper.faults.find((wrong) => wrong.step === at + 1);
    const title = say("editor-step-of", { step: String(at + 1), kind: one.kind });
    return make(
      "li",
      { class: at === keeper.step ? "here" : "" },
      button(title, () => choose(keeper, at), { id: `step-${at + 1}`, class: "step", "aria-current": at === keeper.step ? "true" : null }),
      make("span", { class: "help" }, beginning(one.words)),
      fault ? make("span", { class: "trouble" }, say("editor-fault", { what: fault.what })) : null,
      make(
        "span",
        { class: "row" },
        act(say("coaching-earlier"), step, () => move(keeper, at, at - 1), { id: `earlier-${at + 1}`, disabled: at === 0 }),
        act(say("coaching-later"), step, () => move(keeper, at, at + 1), { id: `later-${at + 1}`, disabled: at === content.steps.length - 1 }),
        act(say("editor-remove-step"), step, () => drop(keeper, at), { id: `drop-${at + 1}` }),
      ),
    );
  };
  fill(byId("draft-steps"), content.steps.map(item));
  listed = shownOf(keeper);
}

/** What the list of steps showed last, so that it is drawn anew only for something new. */
let listed = "";

/** What is wrong so far, where that shows. @param {Keeper} keeper */
function showFaults(keeper) {
  if (opened === keeper && document.getElementById("draft-steps") && listed !== shownOf(keeper)) steps(keeper);
}

/** What the list of steps shows. @param {Keeper} keeper */
const shownOf = (keeper) => JSON.stringify([keeper.faults, keeper.step, keeper.content.steps.map((one) => [one.kind, beginning(one.words)])]);

/** The step that is chosen, in its editor. @param {Keeper} keeper */
function lay(keeper) {
  const step = keeper.content.steps[keeper.step];
  const place = byId("draft-step");
  if (!step) {
    place.replaceChildren();
    return;
  }
  const title = say("editor-step-of", { step: String(keeper.step + 1), kind: step.kind });
  const heading = make("h3", { id: "step-title", tabindex: "-1" }, title);
  const shown = make("div", { class: "previews", id: "previews" });
  place.replaceChildren(
    heading,
    stepEditor(step, {
      position: false,
      changed: () => {
        heading.textContent = say("editor-step-of", { step: String(keeper.step + 1), kind: step.kind });
        keeper.changed();
      },
    }),
    make("div", { class: "row" }, button(say("editor-preview"), (event) => preview(event.currentTarget, keeper, shown), { id: "preview-step" })),
    make("p", { class: "trouble", role: "alert", id: "preview-trouble" }),
    shown,
  );
}

/** @param {Keeper} keeper */
function choose(keeper, at) {
  keeper.step = at;
  steps(keeper);
  lay(keeper);
  byId("step-title")?.focus();
}

/** @param {Keeper} keeper */
function add(keeper, kind) {
  keeper.content.steps.push(emptyStep(kind));
  keeper.changed();
  choose(keeper, keeper.content.steps.length - 1);
}

/** @param {Keeper} keeper */
function move(keeper, from, to) {
  const { steps: all } = keeper.content;
  const [one] = all.splice(from, 1);
  all.splice(to, 0, one);
  const open = keeper.step === from ? to : keeper.step === to ? from : keeper.step;
  keeper.step = open;
  keeper.faults = [];
  keeper.changed();
  steps(keeper);
  lay(keeper);
  const again = document.getElementById(`${to < from ? "earlier" : "later"}-${to + 1}`);
  if (again instanceof HTMLButtonElement && !again.disabled) again.focus();
  else document.getElementById(`step-${to + 1}`)?.focus();
}

/** @param {Keeper} keeper */
async function drop(keeper, at) {
  const question = say("editor-remove-step-sure", { step: String(at + 1) });
  if (!(await sure(question, say("editor-remove-step-it")))) return;
  keeper.content.steps.splice(at, 1);
  if (keeper.step > at || keeper.step === keeper.content.steps.length) keeper.step = Math.max(0, keeper.step - 1);
  keeper.faults = [];
  keeper.changed();
  steps(keeper);
  lay(keeper);
  (document.getElementById(`step-${keeper.step + 1}`) ?? byId("add-words")).focus();
}

/** The step as members will see it. @param {Keeper} keeper */
function preview(control, keeper, place) {
  return careful(control, byId("preview-trouble"), async () => {
    place.replaceChildren(make("p", { class: "help", role: "status" }, say("editor-checking")));
    try {
      const parts = await post("/api/coach/drafts/preview", { content: keeper.content, step: keeper.step + 1 });
      const heading = make("h4", { tabindex: "-1" }, say("coaching-as-members"));
      place.replaceChildren(heading, ...parts.map(part));
      heading.focus();
    } catch (error) {
      place.replaceChildren();
      throw error;
    }
  });
}

/** A part as members will see it, and to the coach what the check found. */
function part({ post: sheet, reveal: closing, checked }) {
  return make(
    "div",
    { class: "part" },
    checked ? verdict(checked) : null,
    sheet ? make("div", { class: "sheet" }, posted(sheet)) : null,
    closing ? make("details", { class: "more" }, make("summary", {}, say("editor-the-reveal")), make("div", { class: "sheet" }, reveal(closing, null))) : null,
  );
}

/** What the check found of a position, in the coach's words. */
export function verdict({ report, topic_check: held }) {
  return make(
    "div",
    { class: "verdict-of-check" },
    make("p", { class: "outcome" }, make("strong", {}, say("coaching-outcome", { id: report.stipulation ?? "", found: soundName(report.verdict) }))),
    report.message ? make("p", { class: report.verdict === "sound" ? "" : "wrong" }, report.message) : null,
    held?.message ? make("p", { class: isDoubtful(held) ? "wrong" : "" }, held.message) : null,
    report.warnings.map((text) => make("p", { class: "help" }, say("coaching-note", { text }))),
  );
}

/** @param {Keeper} keeper */
async function download(keeper) {
  if (!(await keeper.flush())) return;
  const link = make("a", { href: `/api/coach/drafts/${keeper.draft}/draft.pgn`, download: "draft.pgn" });
  document.body.append(link);
  link.click();
  link.remove();
}

/** @param {Keeper} keeper */
function takeIn(control, keeper) {
  return careful(control, byId("draft-trouble"), async () => {
    if (!(await keeper.flush())) return;
    byId("draft-checking").textContent = say("editor-checking");
    try {
      const sheet = await post(`/api/coach/drafts/${keeper.draft}/take-in`, { revision: keeper.revision });
      byId("lesson-told").textContent = sheet.lesson === null ? say("coaching-lesson-not-kept") : say("coaching-lesson-kept", { title: sheet.title, broken: 0 });
      if (sheet.lesson !== null) {
        opened = null;
        takenIn(sheet.lesson);
      }
    } finally {
      byId("draft-checking").textContent = "";
    }
  });
}

/** Two pages have written: both versions are shown to be there, and the coach chooses. @param {Keeper} keeper */
function conflict(keeper) {
  const place = document.getElementById("draft-conflict");
  if (!place) return;
  const failed = make("p", { class: "trouble", role: "alert" });
  const mine = async () => {
    const content = { ...keeper.content, title: say("editor-my-version", { title: titleOf(keeper.content) }) };
    const { draft } = await post("/api/coach/drafts", { content });
    forget(kept(keeper.draft));
    opened = null;
    location.hash = `editor/${draft}`;
  };
  const theirs = async () => {
    forget(kept(keeper.draft));
    opened = new Keeper(await get(`/api/coach/drafts/${keeper.draft}`));
    draw(opened);
    byId("draft-title").focus();
  };
  fill(
    place,
    make(
      "div",
      { class: "held", role: "alertdialog", "aria-labelledby": "conflict-what" },
      make("p", { id: "conflict-what" }, say("editor-overtaken")),
      make(
        "div",
        { class: "row" },
        button(say("editor-keep-mine"), (event) => careful(event.currentTarget, failed, mine), { class: "first", id: "keep-mine" }),
        button(say("editor-take-theirs"), (event) => careful(event.currentTarget, failed, theirs), { id: "take-theirs" }),
      ),
      failed,
    ),
  );
  byId("keep-mine").focus();
}
