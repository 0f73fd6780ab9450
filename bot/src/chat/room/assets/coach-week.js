// @ts-check
// The week: what is open now, pausing, and the queue in order.

import { careful, get, post } from "./ask.js";
import { all, button, byId, fill, make, show, sure } from "./build.js";
import { carry } from "./carry.js";
import { posted, signOf } from "./post.js";
import { dated, moment, until } from "./when.js";
import { listed, say } from "./words.js";

const told = byId("week-told");
const list = byId("week");
const undo = byId("week-undo");
const out = byId("week-out");
/** @type {any} What the page hands over: `state`, and `refresh()`. */
let shared = null;

/** Shows the week. Fields that are being typed in are left as they are. */
export function showWeek(state, refresh) {
  shared = { state, refresh };
  const { week } = state;
  const above = byId("week-state");
  if (!typing(above)) fill(above, openNow(week), pausing(week));
  if (typing(list)) return;
  // What the coach has unfolded stays so.
  const unfolded = new Set(all("li:has(details[open])", list).map((item) => item.dataset.item));
  const entries = week.items.map((item, at) => entry(item, at, week));
  for (const item of entries) {
    if (unfolded.has(item.dataset.item)) item.querySelector("details")?.setAttribute("open", "");
  }
  fill(list, entries, entries.length ? null : nothingWaits());
  const open = out.querySelector("details")?.open ?? false;
  fill(out, week.taken_out.length ? takenOut(week, open) : null);
}

function nothingWaits() {
  return make(
    "li",
    { class: "empty" },
    make("p", {}, say("coaching-nothing-waits")),
    make("p", {}, make("a", { href: "#check" }, say("coaching-check-for-week"))),
  );
}

const typing = (place) => place.contains(document.activeElement) && document.activeElement?.matches("input");

/** Does something to the week, says what was done, and shows the outcome. `done` may ask what came of it. */
function change(control, done, act) {
  return careful(control, told, async () => {
    const came = await act();
    undo.replaceChildren();
    await shared.refresh();
    told.textContent = typeof done === "function" ? done(came) : done;
    return came;
  });
}

/** Moves an item to a place from 0. Whoever did it stays at the button they pressed, and it stays in sight. */
async function move(control, item, to) {
  const stood = shared.state.week.items.findIndex((other) => other.id === item.id);
  const done = (at) => {
    const [place, count] = [at + 1, shared.state.week.items.length];
    return at === stood ? say("coaching-stays-at", { place, count }) : say("coaching-moved-of", { place, count });
  };
  await change(control, done, () => post(`/api/coach/queue/${item.id}/move`, { to }));
  document.activeElement?.scrollIntoView({ block: "nearest" });
}

function openNow(week) {
  return week.open.map((row) =>
    make(
      "div",
      { class: "sheet open-now" },
      make(
        "p",
        {},
        make("strong", {}, isOpen(row)),
        " ",
        say("coaching-it-closes", { at: moment(row.closes_at, week.zone), until: until(row.closes_at) }),
      ),
      make(
        "div",
        { class: "row" },
        make("a", { class: "button", href: `#posts/${row.post}` }, say("coaching-read-replies")),
        button(say("coaching-close-now"), (event) => closeNow(event.currentTarget, row), { id: `close-${row.post}` }),
      ),
    ),
  );
}

const isOpen = ({ number, topic }) =>
  topic
    ? say("coaching-open-topic", { number: String(number), topic })
    : say("coaching-open", { number: String(number) });

/** Closes a post early, after a yes. */
export async function closeNow(control, row) {
  const yes = await sure(
    say("coaching-close-sure", { number: String(row.number) }),
    say("coaching-close"),
    say("coaching-leave-open"),
  );
  if (!yes) return;
  await change(control, say("coaching-closing", { number: String(row.number) }), () =>
    post(`/api/coach/posts/${row.post}/close`),
  );
}

function pausing(week) {
  if (week.paused) {
    const { until: end } = week.paused;
    return make(
      "p",
      { class: "row" },
      make("strong", {}, end ? say("coaching-paused-until", { at: moment(end, week.zone) }) : say("coaching-paused")),
      button(say("coaching-resume"), (event) => change(event.currentTarget, say("coaching-resumed"), () => post("/api/coach/resume")), {
        id: "resume",
      }),
    );
  }
  const day = make("input", { type: "date", id: "pause-until" });
  return make(
    "details",
    { class: "more" },
    make("summary", {}, say("coaching-pause-posting")),
    make(
      "div",
      { class: "fields" },
      make("div", {}, make("label", { class: "over", for: "pause-until" }, say("coaching-pause-until")), day),
      button(
        say("coaching-pause"),
        (event) =>
          change(event.currentTarget, say("coaching-pause-done"), () =>
            post("/api/coach/pause", { until: day.value || null }),
          ),
        { id: "pause" },
      ),
    ),
  );
}

/** Day, date and time, for people; or why there are none. */
function due(item, week) {
  if (!item.due_at) return say("coaching-no-time", { why: item.no_time });
  const at = dated(item.due_at, week.zone);
  return item.fixed ? say("coaching-due-fixed", { at }) : at;
}

/** What an item waits for, in words. */
const waitsFor = (item) =>
  (item.waits_for ?? []).map((what) =>
    what.waits === "post"
      ? say("coaching-waits-for-post", { number: String(what.number) })
      : say("coaching-waits-for-item", { item: what.called }),
  );

/** Which step of which lesson it is. */
const stepOf = ({ lesson }) =>
  lesson ? say("coaching-step-of", { title: lesson.title, step: String(lesson.step), steps: String(lesson.steps) }) : "";

function entry(item, at, week) {
  const about = (label) => say("coaching-about-item", { label, item: called(item) });
  const topic = make("input", {
    id: `topic-${item.id}`,
    list: "topics",
    maxlength: 80,
    value: item.topic ?? "",
    placeholder: say("coaching-no-topic"),
    "aria-label": say("coaching-topic-of", { item: called(item) }),
  });
  topic.addEventListener("change", () =>
    change(null, topic.value ? say("coaching-topic-set", { topic: topic.value }) : say("coaching-topic-gone"), () =>
      post(`/api/coach/queue/${item.id}/topic`, { topic: topic.value || null }),
    ),
  );
  const time = make("input", {
    id: `time-${item.id}`,
    type: "datetime-local",
    value: item.due_local ?? "",
    "aria-label": say("coaching-time-of", { item: called(item), zone: week.zone }),
  });
  const place = make("input", {
    id: `place-${item.id}`,
    type: "number",
    class: "narrow",
    min: 1,
    max: week.items.length,
    value: at + 1,
    "aria-label": say("coaching-place-of", { item: called(item) }),
  });
  return make(
    "li",
    { "data-item": item.id },
    make("span", { class: "handle", title: say("coaching-drag"), "aria-hidden": "true" }, "\u2807"),
    thumb(item),
    make(
      "div",
      { class: "about" },
      make("p", { class: "due" }, make("strong", {}, due(item, week))),
      described(item),
      item.lesson ? make("p", { class: "help" }, stepOf(item)) : null,
      waitsFor(item).map((text) => make("p", { class: "help" }, text)),
      item.topic_told ? make("p", { class: "wrong" }, item.topic_told) : null,
      make("div", { class: "row" }, topic),
    ),
    make(
      "div",
      { class: "row moves" },
      button(say("coaching-earlier"), (event) => move(event.currentTarget, item, item.earlier), {
        id: `up-${item.id}`,
        class: "small",
        "aria-disabled": item.earlier === undefined && "true",
        "aria-label": about(say("coaching-earlier")),
      }),
      button(say("coaching-later"), (event) => move(event.currentTarget, item, item.later), {
        id: `down-${item.id}`,
        class: "small",
        "aria-disabled": item.later === undefined && "true",
        "aria-label": about(say("coaching-later")),
      }),
      button(say("room-preview"), (event) => look(event.currentTarget, `/api/coach/queue/${item.id}/preview`), {
        id: `preview-${item.id}`,
        class: "small",
        "aria-label": about(say("room-preview")),
      }),
      item.kind === "problem"
        ? make("a", { id: `edit-${item.id}`, class: "button small", href: `#edit/${item.position}`, "aria-label": about(say("editor-edit")) }, say("editor-edit"))
        : null,
      button(say("coaching-post-now"), (event) => postNow(event.currentTarget, item), {
        id: `now-${item.id}`,
        class: "small",
        "aria-label": about(say("coaching-post-now")),
      }),
      button(say("coaching-take-out"), (event) => takeOut(event.currentTarget, item), {
        id: `out-${item.id}`,
        class: "small",
        "aria-label": about(say("coaching-take-out-of-week")),
      }),
      make(
        "details",
        { class: "more" },
        make("summary", {}, say("coaching-day-and-time")),
        item.fixed
          ? null
          : make("div", { class: "row" }, place,
              button(say("coaching-move-there"), (event) => moveTo(event.currentTarget, item, place), { class: "small", id: `move-${item.id}`, "aria-label": about(say("coaching-move-there")) })),
        make("div", { class: "row" }, time,
          button(say("coaching-fix"), (event) => fixTime(event.currentTarget, item, time.value), { class: "small", id: `fix-${item.id}`, "aria-label": say("coaching-fix-of", { item: called(item) }) }),
          item.fixed
            ? button(say("coaching-unfix"), (event) => fixTime(event.currentTarget, item, null), { class: "small", id: `free-${item.id}` })
            : null),
        make("p", { class: "help" }, say("coaching-in-zone", { zone: week.zone })),
      ),
    ),
  );
}

/** The first words of a text. */
const beginning = (words) => (words.length > 40 ? `${words.slice(0, 39)}…` : words);

/** What waits, as it is called in the middle of a sentence. */
const called = (item) =>
  item.kind === "problem"
    ? say("coaching-item", { task: item.stipulation, source: item.source })
    : say("coaching-item-written", { kind: item.kind, words: beginning(item.words) });

/** The picture of what waits, where it has one. */
function thumb(item) {
  if (item.kind === "problem") {
    return make("img", { class: "thumb", src: `/api/coach/positions/${item.position}/diagram.png`, alt: say("coaching-diagram-of", { fen: item.fen }), width: 720, height: 720 });
  }
  return item.fen
    ? make("img", { class: "thumb", src: `/api/coach/queue/${item.id}/position.png`, alt: say("coaching-diagram-of", { fen: item.fen }), width: 720, height: 720 })
    : make("span", { class: "thumb kind" }, signOf(item));
}

/** What there is to say of what waits. */
function described(item) {
  if (item.kind !== "problem") {
    return make("p", { class: "help" }, make("span", { class: "sign" }, signOf(item)), " ", item.words);
  }
  return make(
    "p",
    { class: "help" },
    listed(
      [
        item.stipulation,
        item.source,
        soundName(item.soundness),
        isDoubtful(item.topic_check) ? say("coaching-topic-not-verified") : "",
        item.further_topics.length ? say("coaching-also", { topics: listed(item.further_topics) }) : "",
        item.posted ? say("coaching-again-as", { number: String(item.posted.number) }) : "",
        item.difficulty ? say("coaching-difficulty", { level: Math.round(item.difficulty) }) : "",
      ].filter(Boolean),
    ),
  );
}

/** Moves an item to the place that was typed. */
function moveTo(control, item, field) {
  const to = Number(field.value);
  if (Number.isInteger(to) && to >= 1 && to <= shared.state.week.items.length) return move(control, item, to - 1);
  told.textContent = say("coaching-place-wanted", { count: shared.state.week.items.length });
  field.focus();
  return undefined;
}

/** Takes an item out, and offers to put it back: a position lies on the shelf meanwhile, words are kept. */
async function takeOut(control, item) {
  const done = item.kind === "problem" ? say("coaching-taken-out") : say("coaching-taken-away");
  const taken = await change(control, done, () => post(`/api/coach/queue/${item.id}/remove`));
  if (taken === undefined) return;
  const back = button(say("coaching-undo"), (event) => putBack(event.currentTarget, taken), {
    id: "undo",
    "aria-label": say("coaching-about-item", { label: say("coaching-undo"), item: called(item) }),
  });
  undo.replaceChildren(back);
  back.focus();
}

/** Puts back what was taken out, and goes to where it stands. */
async function putBack(control, taken) {
  const item = await change(control, say("coaching-put-back-done"), () => post(`/api/coach/taken-out/${taken}/put-back`));
  if (item !== undefined) byId(`out-${item}`)?.focus();
}

/** What was taken out and can be put back, folded away. */
function takenOut(week, open) {
  const row = (item) =>
    make(
      "li",
      {},
      make("p", {}, called(item)),
      item.lesson ? make("p", { class: "help" }, stepOf(item)) : null,
      make("p", { class: "help" }, say("coaching-taken-at", { at: dated(item.taken_at, week.zone) })),
      button(say("coaching-put-back"), (event) => putBack(event.currentTarget, item.taken), {
        id: `back-${item.taken}`,
        class: "small",
        "aria-label": say("coaching-about-item", { label: say("coaching-put-back"), item: called(item) }),
      }),
    );
  return make(
    "details",
    { class: "more", open },
    make("summary", {}, say("coaching-taken-out-list", { count: week.taken_out.length })),
    make("ul", { class: "plain" }, week.taken_out.map(row)),
  );
}

function fixTime(control, item, local) {
  return change(control, local ? say("coaching-fixed") : say("coaching-unfixed"), () =>
    post(`/api/coach/queue/${item.id}/time`, { local: local || null }),
  );
}

async function postNow(control, item) {
  const question = say("coaching-post-now-sure", { item: called(item) });
  if (await sure(question, say("coaching-post-it-now"), say("coaching-wait"))) {
    await change(control, say("coaching-goes-out"), () => post("/api/coach/post-now", { item: item.id }));
  }
}

/** Shows a post exactly as members would see it. */
export const preview = (control, position) => look(control, `/api/coach/positions/${position}/preview`);

function look(control, path) {
  return careful(control, told, async () => {
    const sheet = await get(path);
    show(say("coaching-as-members"), make("div", { class: "sheet" }, posted(sheet)));
  });
}

/** Whether a topic means a mating pattern that is not shown, or not known to be. */
export const isDoubtful = (check) => ["not-verified", "open"].includes(check?.verdict);

/** What a check found, in words. */
export const soundName = (verdict) => say("coaching-sound", { verdict });

carry(list, (item, to) => move(null, { id: Number(item.dataset.item) }, to));
