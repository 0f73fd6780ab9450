// @ts-check
// The member's other views: own work, leaderboard, past posts, and what is kept.

import { careful, get, post } from "./ask.js";
import { all, button, byId, make, sure } from "./build.js";
import { language } from "./language.js";
import { offering } from "./naming.js";
import { inWords, numbered, ownAnswer, posted, reveal, shownAnswers, signOf } from "./post.js";
import { byTopic, leaderboard } from "./tables.js";
import { stamp } from "./when.js";
import { amount, moves, say, sayAround } from "./words.js";

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
  const box = make("details", { class: "more scale" }, make("summary", {}, say("room-scale")), text);
  box.addEventListener("toggle", () => {
    if (!box.open || text.childElementCount) return;
    fill(text, async () => (await get("/api/scale")).map((said) => make("p", {}, said)));
  });
  return box;
}

/** The member's own standing and board. */
export function myWork(place, state) {
  return fill(place, async () => {
    const [progress, board, homework] = await Promise.all([
      get("/api/progress"),
      state.open === null ? null : get(`/api/posts/${state.open}/board`).catch(() => null),
      get("/api/homework"),
    ]);
    return [
      progress.open ? make("p", {}, standing(progress.open)) : null,
      progress.line ? make("p", {}, sayAround("room-line-so-far", { line: make("span", { class: "line" }, moves(progress.line)) })) : null,
      board
        ? make(
            "figure",
            { class: "problem my-board" },
            make("img", { src: board.src, alt: board.alt }),
            make("figcaption", {}, say("room-your-board"), inWords(board.alt)),
          )
        : null,
      make("p", {}, say("room-points-in-all", { points: amount(progress.points) })),
      progress.topics.length
        ? byTopic(say("room-your-topics"), progress.topics)
        : make("p", {}, say("room-nothing-tried")),
      homework.length ? myHomework(homework) : null,
      scale(place),
      rename(state),
      language(state.me),
      device(),
    ];
  });
}

/** Shows anew how the member's answers stand, where they are in sight; what is typed beside them stays. */
export async function renewHomework() {
  const there = byId("my-homework");
  const answered = there ? await get("/api/homework").catch(() => null) : null;
  if (!answered) return;
  const inside = there.contains(document.activeElement);
  const now = myHomework(answered);
  there.replaceWith(now);
  if (inside) now.focus({ preventScroll: true });
}

/** The questions that the member answered, with what the coach made of each answer. */
function myHomework(answered) {
  return make(
    "section",
    { id: "my-homework", tabindex: "-1", "aria-labelledby": "my-homework-title" },
    make("h3", { id: "my-homework-title" }, say("room-homework")),
    answered.map(({ number, asked, own }) =>
      make(
        "article",
        { class: "sheet" },
        make("h4", {}, say("room-homework-of", { number: String(number) })),
        make("p", { class: "coach-words" }, asked),
        ownAnswer(own, renewHomework),
        shownAnswers(own.others),
      ),
    ),
  );
}

/** How the member stands at the open post. */
function standing({ number, closes_at, at }) {
  const [name, until] = [String(number), stamp(closes_at)];
  return at.kind === "question"
    ? sayAround("room-standing-asked", { number: name, at: until, answered: at.answered ? "yes" : "no" })
    : sayAround("room-standing-now", { number: name, at: until, state: at.state ?? "none", wrong: at.wrong });
}

/** Changing the name. */
function rename(state) {
  const input = make("input", { id: "new-name", maxlength: 80, value: state.me.name, autocomplete: "nickname" });
  const told = make("p", { class: "told", role: "status" });
  const form = make(
    "form",
    { class: "fields" },
    make("div", {}, make("label", { class: "over", for: "new-name" }, say("room-your-name")), input),
    make("button", {}, say("room-change-name")),
    told,
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    careful(event.submitter, told, () =>
      offering(told, input, async () => {
        const { name } = await post("/api/enter", { name: input.value });
        state.me.name = name;
        told.textContent = say("room-named", { name });
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
    make("h3", { id: "device-title" }, say("room-device")),
    make("p", { class: "help" }, say("room-device-what")),
    button(
      say("room-device-new"),
      (event) =>
        careful(event.currentTarget, told, async () => {
          const { code, minutes } = await post("/api/device-code");
          shown.replaceChildren(
            make("p", { class: "code", id: "device-code" }, code),
            make(
              "p",
              { class: "help" },
              say("room-device-code", { minutes }),
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
        : make("p", {}, say("room-no-points")),
      make("p", { class: "help" }, say("room-equal-points")),
      scale(place),
    ];
  });
}

/** Closed posts, each with its reveal when opened. */
export function pastPosts(place, state, wanted) {
  const closed = state.rows.filter((row) => !row.open);
  if (!closed.length) {
    place.replaceChildren(make("p", {}, say("room-none-closed")));
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
      make("span", { class: "number" }, numbered(row)),
      make("span", { class: "sign" }, signOf(row)),
      row.topic ? make("span", { class: "topic" }, row.topic) : null,
      stamp(row.opened_at),
    ),
    body,
  );
  item.addEventListener("toggle", () => {
    if (!item.open || body.childElementCount) return;
    fill(body, async () => {
      if (row.kind === "words") return [posted(await get(`/api/posts/${row.post}`))];
      const sheet = await get(`/api/posts/${row.post}/reveal`);
      const mine = make("div", {});
      const again = async () => mine.replaceChildren(ownAnswer(await get(`/api/posts/${row.post}/own`), again) ?? "");
      if (row.kind === "question") await again();
      return [
        sheet.post.picture
          ? make(
              "details",
              { class: "more" },
              make("summary", {}, say("room-as-posted")),
              make("img", { src: sheet.post.picture.src, alt: sheet.post.picture.alt, loading: "lazy" }),
            )
          : null,
        reveal(sheet, state.me.name),
        mine,
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
      say("room-kept-what", { name: state.me.name }),
    ),
    make(
      "p",
      { class: "caution" },
      say("room-kept-care"),
    ),
    make(
      "div",
      { class: "row" },
      button(
        say("room-see-kept"),
        (event) =>
          careful(event.currentTarget, told, async () => {
            seen.replaceChildren(outline(await get("/api/kept")));
          }),
        { id: "see-kept" },
      ),
      make("a", { class: "button", href: "/api/kept", download: "kept-of-me.json" }, say("room-take-kept")),
      button(say("room-erase"), (event) => erase(event.currentTarget, told), { id: "erase" }),
    ),
    told,
    seen,
  );
}

async function erase(control, told) {
  const yes = await sure(
    say("room-erase-sure"),
    say("room-erase"),
    say("room-keep"),
  );
  if (!yes) return;
  const done = await careful(control, told, () => post("/api/erase"));
  if (done) {
    document.querySelector("main")?.replaceChildren(
      make("h2", {}, say("room-erased")),
      make("p", { role: "status" }, done.message),
      make("p", {}, make("a", { href: "/" }, say("room-come-in-again"))),
    );
    byId("nav").hidden = true;
  }
}

/** Any JSON value as nested lists. */
function outline(value) {
  if (Array.isArray(value)) {
    return value.length ? make("ol", {}, value.map((item) => make("li", {}, outline(item)))) : say("room-none");
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
  return value === null || value === "" ? say("room-none") : String(value);
}
