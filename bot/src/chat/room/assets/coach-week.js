// @ts-check
// The week: what is open now, pausing, and the queue in order.

import { careful, get, post } from "./ask.js";
import { all, button, byId, counted, fill, make, show, sure } from "./build.js";
import { carry } from "./carry.js";
import { problem } from "./post.js";
import { moment, until } from "./when.js";

const told = byId("week-told");
const list = byId("week");
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
  const focused = document.activeElement?.id;
  list.replaceChildren(...week.items.map((item, at) => entry(item, at, week)));
  for (const item of all("li", list)) {
    if (unfolded.has(item.dataset.item)) item.querySelector("details")?.setAttribute("open", "");
  }
  if (focused) byId(focused)?.focus({ preventScroll: true });
  if (!week.items.length) {
    list.append(
      make(
        "li",
        { class: "empty" },
        make("p", {}, "Nothing is waiting. When a post is due and the week is empty, the bot tells you; it never posts anything unchecked."),
        make("p", {}, make("a", { href: "#check" }, "Check positions for the week")),
      ),
    );
  }
}

const typing = (place) => place.contains(document.activeElement) && document.activeElement?.matches("input");

/** Does something to the week, says what was done, and shows the outcome. */
function change(control, done, act) {
  return careful(control, told, async () => {
    await act();
    await shared.refresh();
    told.textContent = done;
  });
}

function openNow(week) {
  return week.open.map((row) =>
    make(
      "div",
      { class: "sheet open-now" },
      make("p", {}, make("strong", {}, `No. ${row.number} is open`), row.topic ? `: ${row.topic}.` : ".",
        ` It closes ${moment(row.closes_at, week.zone)} (${until(row.closes_at)}).`),
      make(
        "div",
        { class: "row" },
        make("a", { class: "button", href: `#posts/${row.post}` }, "Read the replies"),
        button("Close now with the reveal", (event) => closeNow(event.currentTarget, row), { id: `close-${row.post}` }),
      ),
    ),
  );
}

/** Closes a post early, after a yes. */
export async function closeNow(control, row) {
  const yes = await sure(
    `Close No. ${row.number} now? Everyone sees the solution, and no more answers are taken.`,
    "Close with the reveal",
    "Leave it open",
  );
  if (!yes) return;
  await change(control, `No. ${row.number} is closing; the reveal goes out now.`, () =>
    post(`/api/coach/posts/${row.post}/close`),
  );
}

function pausing(week) {
  if (week.paused) {
    const when = week.paused.until ? `until ${moment(week.paused.until, week.zone)}` : "until you resume";
    return make(
      "p",
      { class: "row" },
      make("strong", {}, `Posting is paused ${when}.`),
      button("Resume", (event) => change(event.currentTarget, "Posting goes on.", () => post("/api/coach/resume")), {
        id: "resume",
      }),
    );
  }
  const day = make("input", { type: "date", id: "pause-until" });
  return make(
    "details",
    { class: "more" },
    make("summary", {}, "Pause posting"),
    make(
      "div",
      { class: "fields" },
      make("div", {}, make("label", { class: "over", for: "pause-until" }, "Until the morning of (empty: until you resume)"), day),
      button(
        "Pause",
        (event) =>
          change(event.currentTarget, "Posting is paused.", () =>
            post("/api/coach/pause", { until: day.value || null }),
          ),
        { id: "pause" },
      ),
    ),
  );
}

/** The rank and time, for people. */
function due(item, week) {
  if (!item.due_at) return "waits";
  return `${moment(item.due_at, week.zone)}${item.fixed ? ", fixed" : ""}`;
}

function entry(item, at, week) {
  const label = `${item.stipulation} from ${item.source}`;
  const topic = make("input", {
    id: `topic-${item.id}`,
    list: "topics",
    maxlength: 80,
    value: item.topic ?? "",
    placeholder: "No topic",
    "aria-label": `Topic of ${label}`,
  });
  topic.addEventListener("change", () =>
    change(null, `Topic set: ${topic.value || "none"}.`, () =>
      post(`/api/coach/positions/${item.position}/topic`, { topic: topic.value || null }),
    ),
  );
  const time = make("input", {
    id: `time-${item.id}`,
    type: "datetime-local",
    value: item.due_local ?? "",
    "aria-label": `Day and time of ${label}, in ${week.zone}`,
  });
  const to = (place) => post(`/api/coach/queue/${item.id}/move`, { to: place });
  return make(
    "li",
    { "data-item": item.id },
    make("span", { class: "handle", title: "Drag to another place", "aria-hidden": "true" }, "\u2807"),
    make("img", { class: "thumb", src: `/api/coach/positions/${item.position}/diagram.png`, alt: `Diagram of ${item.fen}`, width: 720, height: 720 }),
    make(
      "div",
      { class: "about" },
      make("p", { class: "due" }, make("strong", {}, due(item, week))),
      make(
        "p",
        { class: "help" },
        `${item.stipulation}, ${item.source}, ${soundName(item.soundness)}`,
        item.further_topics.length ? `, also ${item.further_topics.join(", ")}` : "",
        item.posted ? `, again: posted before as No. ${item.posted.number}` : "",
        item.difficulty ? `, difficulty ${Math.round(item.difficulty)} of 10` : "",
      ),
      make("div", { class: "row" }, topic),
    ),
    make(
      "div",
      { class: "row moves" },
      button("Earlier", (event) => change(event.currentTarget, `Moved to place ${at} of the week.`, () => to(at - 1)), {
        id: `up-${item.id}`,
        class: "small",
        disabled: at === 0,
        "aria-label": `Earlier: ${label}`,
      }),
      button("Later", (event) => change(event.currentTarget, `Moved to place ${at + 2} of the week.`, () => to(at + 1)), {
        id: `down-${item.id}`,
        class: "small",
        disabled: at === week.items.length - 1,
        "aria-label": `Later: ${label}`,
      }),
      button("Preview", (event) => preview(event.currentTarget, item.position), {
        id: `preview-${item.id}`,
        class: "small",
        "aria-label": `Preview: ${label}`,
      }),
      button("Post now", (event) => postNow(event.currentTarget, item, label), {
        id: `now-${item.id}`,
        class: "small",
        "aria-label": `Post now: ${label}`,
      }),
      button("Take out", (event) => change(event.currentTarget, "Taken out of the week; it lies on the shelf.", () => post(`/api/coach/queue/${item.id}/remove`)), {
        id: `out-${item.id}`,
        class: "small",
        "aria-label": `Take out of the week: ${label}`,
      }),
      make(
        "details",
        { class: "more" },
        make("summary", {}, "Day and time"),
        make("div", { class: "row" }, time,
          button("Fix", (event) => fixTime(event.currentTarget, item, time.value), { class: "small", id: `fix-${item.id}`, "aria-label": `Fix the time of ${label}` }),
          item.fixed
            ? button("Leave it to the calendar", (event) => fixTime(event.currentTarget, item, null), { class: "small", id: `free-${item.id}` })
            : null),
        make("p", { class: "help" }, `In the group's zone, ${week.zone}.`),
      ),
    ),
  );
}

function fixTime(control, item, local) {
  return change(control, local ? "The time is fixed." : "The calendar decides.", () =>
    post(`/api/coach/queue/${item.id}/time`, { local: local || null }),
  );
}

async function postNow(control, item, label) {
  if (await sure(`Post ${label} now, before its time?`, "Post it now", "Wait")) {
    await change(control, "It goes out now.", () => post("/api/coach/post-now", { item: item.id }));
  }
}

/** Shows a post exactly as members would see it. */
export function preview(control, position) {
  return careful(control, told, async () => {
    const sheet = await get(`/api/coach/positions/${position}/preview`);
    show("As members will see it", make("div", { class: "sheet" }, problem(sheet)));
  });
}

const SOUND = {
  sound: "sound",
  "several-keys": "more than one key",
  short: "a shorter mate is possible",
  unsound: "not sound",
  illegal: "not a legal position",
  undecided: "not decided in the time given",
};

/** What a check found, in words. */
export const soundName = (soundness) => SOUND[soundness] ?? soundness;

carry(list, (item, to) => {
  const id = item.dataset.item;
  change(null, `Moved to place ${to + 1} of ${counted(list.children.length, "position")}.`, () =>
    post(`/api/coach/queue/${id}/move`, { to }),
  );
});
