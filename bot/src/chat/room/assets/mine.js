// @ts-check
// The member's other views: own work, leaderboard, past posts, and what is kept.

import { careful, get, post } from "./ask.js";
import { all, button, byId, make, points, sure } from "./build.js";
import { offering } from "./naming.js";
import { inWords, reveal } from "./post.js";
import { byTopic, leaderboard } from "./tables.js";
import { stamp } from "./when.js";

const trouble = () => make("p", { class: "trouble", role: "alert" });

/** Fills `place` with what `act` returns, or with what went wrong. */
async function fill(place, act) {
  try {
    place.replaceChildren(...(await act()).filter(Boolean));
  } catch (error) {
    place.replaceChildren(make("p", { class: "trouble" }, error.message));
  }
}

/** How points are counted here, fetched when it is opened. The one in `place` stays, open or folded. */
function scale(place) {
  const there = place.querySelector("details.scale");
  if (there) return there;
  const text = make("div", {});
  const box = make("details", { class: "more scale" }, make("summary", {}, "How points are counted"), text);
  box.addEventListener("toggle", () => {
    if (!box.open || text.childElementCount) return;
    fill(text, async () => (await get("/api/scale")).map((said) => make("p", {}, said)));
  });
  return box;
}

/** The member's own standing and board. */
export function myWork(place, state) {
  return fill(place, async () => {
    const [progress, board] = await Promise.all([
      get("/api/progress"),
      state.open === null ? null : get(`/api/posts/${state.open}/board`).catch(() => null),
    ]);
    return [
      progress.now ? make("p", {}, progress.now) : null,
      progress.line ? make("p", {}, "The line so far: ", make("span", { class: "line" }, progress.line)) : null,
      board
        ? make(
            "figure",
            { class: "problem my-board" },
            make("img", { src: board.src, alt: board.alt }),
            make("figcaption", {}, "Your board", inWords(board.alt)),
          )
        : null,
      make("p", {}, `Points in all: ${points(progress.points)}`),
      progress.topics.length
        ? byTopic("Your posts by topic", progress.topics)
        : make("p", {}, "Nothing tried yet. Your first answer starts this table."),
      scale(place),
      rename(state),
      device(),
    ];
  });
}

/** Changing the name. */
function rename(state) {
  const input = make("input", { id: "new-name", maxlength: 80, value: state.me.name, autocomplete: "nickname" });
  const told = make("p", { class: "told", role: "status" });
  const form = make(
    "form",
    { class: "fields" },
    make("div", {}, make("label", { class: "over", for: "new-name" }, "Your name in this room"), input),
    make("button", {}, "Change name"),
    told,
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    careful(event.submitter, told, () =>
      offering(told, input, async () => {
        const { name } = await post("/api/enter", { name: input.value });
        state.me.name = name;
        told.textContent = `The group now sees you as ${name}.`;
      }),
    );
  });
  return form;
}

/** A code by which another device is the reader's, too. */
function device() {
  const told = trouble();
  const shown = make("div", { "aria-live": "polite" });
  return make(
    "section",
    { "aria-labelledby": "device-title" },
    make("h3", { id: "device-title" }, "Another device"),
    make("p", { class: "help" }, "Use this room on a telephone or a second computer as the same person, with the same points."),
    button(
      "Use another device too",
      (event) =>
        careful(event.currentTarget, told, async () => {
          const { code, minutes } = await post("/api/device-code");
          shown.replaceChildren(
            make("p", { class: "code", id: "device-code" }, code),
            make(
              "p",
              { class: "help" },
              `On the other device, open the link to this room, press “I am in this room already” and type this code. It holds for ${minutes} minutes and for one device. Show it to nobody: whoever types it is you here.`,
            ),
          );
        }),
      { id: "new-code" },
    ),
    told,
    shown,
  );
}

/** The leaderboard, by topic and time. */
export async function leaders(place, state) {
  const form = byId("leaders-ask");
  const topic = byId("leaders-topic");
  if (!form.dataset.ready) {
    form.dataset.ready = "yes";
    form.addEventListener("change", () => leaders(place, state));
    form.addEventListener("submit", (event) => event.preventDefault());
    const names = await get("/api/topics").catch(() => []);
    topic.append(...names.map((name) => make("option", { value: name }, name)));
  }
  const query = new URLSearchParams();
  if (topic.value) query.set("topic", topic.value);
  if (byId("leaders-days").value) query.set("period", byId("leaders-days").value);
  await fill(place, async () => {
    const board = await get(`/api/leaderboard?${query}`);
    return [
      board.rows.length
        ? leaderboard(board, state.me.name)
        : make("p", {}, "Nobody has points here yet."),
      make("p", { class: "help" }, "Equal points share a rank."),
      scale(place),
    ];
  });
}

/** Closed posts, each with its reveal when opened. */
export function pastPosts(place, state, wanted) {
  const closed = state.rows.filter((row) => !row.open);
  if (!closed.length) {
    place.replaceChildren(make("p", {}, "No post is closed yet. Its reveal will stand here."));
    return;
  }
  const shown = new Map(all("details[data-post]", place).map((item) => [item.dataset.post, item]));
  place.replaceChildren(
    ...closed.map((row) => shown.get(String(row.post)) ?? pastPost(row, state, String(row.post) === wanted)),
  );
}

function pastPost(row, state, open) {
  const body = make("div", { class: "sheet" });
  const item = make(
    "details",
    { class: "past", "data-post": row.post },
    make(
      "summary",
      {},
      make("span", { class: "number" }, `No. ${row.number}`),
      make("span", { class: "sign" }, row.stipulation),
      row.topic ? make("span", { class: "topic" }, row.topic) : null,
      stamp(row.opened_at),
    ),
    body,
  );
  item.addEventListener("toggle", () => {
    if (!item.open || body.childElementCount) return;
    fill(body, async () => {
      const sheet = await get(`/api/posts/${row.post}/reveal`);
      return [
        make(
          "details",
          { class: "more" },
          make("summary", {}, "The position as posted"),
          make("img", { src: sheet.post.picture.src, alt: sheet.post.picture.alt, loading: "lazy" }),
        ),
        reveal(sheet, state.me.name),
      ];
    });
  });
  item.open = open;
  return item;
}

/** What is kept: to see, to take away, to erase. */
export function keptOfMe(place, state) {
  const told = trouble();
  const seen = make("div", { class: "kept", "aria-live": "polite" });
  place.replaceChildren(
    make(
      "p",
      {},
      `The coach's computer keeps your name (${state.me.name}), your answers with what came of them, the hints you took, and your messages. Nobody but you and the coach can see your answers before the reveal. A message that you take back, or that a coach hides, is gone for everyone; the coaches can still read it, and see who took it away and when. When you erase everything, that goes too.`,
    ),
    make(
      "p",
      { class: "caution" },
      "Members may be children: the club's safeguarding rules and the privacy law of your country come first. Ask your coach if anything here worries you.",
    ),
    make(
      "div",
      { class: "row" },
      button(
        "See everything",
        (event) =>
          careful(event.currentTarget, told, async () => {
            seen.replaceChildren(outline(await get("/api/kept")));
          }),
        { id: "see-kept" },
      ),
      make("a", { class: "button", href: "/api/kept", download: "kept-of-me.json" }, "Take it away (JSON)"),
      button("Erase everything", (event) => erase(event.currentTarget, told), { id: "erase" }),
    ),
    told,
    seen,
  );
}

async function erase(control, told) {
  const yes = await sure(
    "Erase everything that is kept of you? Your points, answers and messages are gone for good, and you leave the room.",
    "Erase everything",
    "Keep it",
  );
  if (!yes) return;
  const done = await careful(control, told, () => post("/api/erase"));
  if (done) {
    document.querySelector("main")?.replaceChildren(
      make("h2", {}, "Erased"),
      make("p", { role: "status" }, done.message),
      make("p", {}, make("a", { href: "/" }, "Come in again under a new name")),
    );
    byId("nav").hidden = true;
  }
}

/** Any JSON value as nested lists. */
function outline(value) {
  if (Array.isArray(value)) {
    return value.length ? make("ol", {}, value.map((item) => make("li", {}, outline(item)))) : "none";
  }
  if (value && typeof value === "object") {
    return make(
      "dl",
      {},
      Object.entries(value).flatMap(([key, item]) => [
        make("dt", {}, key.replaceAll("_", " ")),
        make("dd", {}, outline(item)),
      ]),
    );
  }
  return value === null || value === "" ? "none" : String(value);
}
