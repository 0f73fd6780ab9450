// The member's page: coming in, the open position, the talk, and the message box.

import { careful, get, mark, post } from "./ask.js";
import { button, byId, choice, fill, make, sure } from "./build.js";
import { follow } from "./live.js";
import { keptOfMe, leaders, myWork, pastPosts } from "./mine.js";
import { inWords, problem } from "./post.js";
import { Stream } from "./talk.js";
import { views } from "./views.js";

/** Closed posts whose reveal stands in the talk; older ones are under Past posts. */
const REVEALS = 3;

const stream = new Stream(byId("stream"));
const sheets = new Map();
const state = { me: null, rows: [], open: null, ahead: 0, settled: false };

/** The room's time; the reader's clock may be wrong. */
const now = () => new Date(Date.now() + state.ahead).toISOString();

// ---- coming in --------------------------------------------------------------------------------

async function begin() {
  state.me = await get("/api/me");
  state.ahead = new Date(state.me.now) - Date.now();
  document.title = state.me.group;
  byId("group").textContent = state.me.group;
  byId("to-coach").hidden = !state.me.coach;
  if (state.me.name) await comeIn();
  else {
    byId("enter").hidden = false;
    byId("name").focus();
  }
}

byId("enter").addEventListener("submit", (event) => {
  event.preventDefault();
  careful(event.submitter, byId("enter-trouble"), async () => {
    const { name } = await post("/api/enter", { name: byId("name").value });
    state.me.name = name;
    byId("enter").hidden = true;
    await comeIn();
    byId("text").focus({ preventScroll: true });
  });
});

async function comeIn() {
  byId("room").hidden = false;
  byId("nav").hidden = false;
  const [rows, lines] = await Promise.all([get("/api/posts"), get("/api/talk")]);
  for (const line of lines) stream.talk(line);
  byId("earlier").hidden = lines.length === 0;
  await arrange(rows);
  await recall();
  state.settled = true;
  // Beside the position, the talk begins at its end; under it, the position comes first.
  if (matchMedia("(min-width: 62rem)").matches) toEnd();
  views("talk", {
    mine: () => myWork(byId("mine"), state),
    leaders: () => leaders(byId("leaders"), state),
    past: (wanted) => pastPosts(byId("past"), state, wanted),
    kept: () => keptOfMe(byId("kept"), state),
  });
  follow(
    {
      posts: arrange,
      talk: (line) => arrive(() => stream.talk(line)),
      verdict: (judged) => {
        arrive(() => stream.judged(judged.reply, now(), judged));
        showOwn(judged.post).catch(() => {});
      },
      answered: (id) => answers(id).catch(() => {}),
      renewed: renew,
    },
    () => stream.lastTalk,
    (connected) => {
      byId("link-state").textContent = connected
        ? ""
        : "The connection is broken; it will be tried again by itself. What you type stays here.";
    },
  );
}

/** After something was erased or a setting changed: the talk anew. */
async function renew() {
  try {
    state.me = await get("/api/me");
    byId("group").textContent = state.me.group;
    const lines = await get("/api/talk");
    stream.drop((key) => key.startsWith("talk-"));
    for (const line of lines) stream.talk(line);
  } catch (error) {
    // Shut out, as by a changed link: the page that says so.
    if (error.status === 403) location.reload();
  }
}

/** Puts something new into the stream and keeps its end in sight, if it was. */
function arrive(put) {
  const atEnd = window.innerHeight + window.scrollY > document.body.scrollHeight - 160;
  const item = put();
  if (!state.settled) return item;
  item.classList.add("fresh");
  if (atEnd && document.body.dataset.at === "talk") toEnd();
  return item;
}

/** Whether the end of the talk is kept in sight while pictures above it are still loading. */
let pinned = false;

function toEnd() {
  pinned = true;
  window.scrollTo({ top: document.body.scrollHeight, behavior: "instant" });
}

byId("stream").addEventListener("load", () => pinned && toEnd(), true);
for (const own of ["wheel", "touchmove", "keydown", "pointerdown"]) {
  addEventListener(own, () => (pinned = false), { passive: true });
}

byId("earlier").addEventListener("click", (event) => {
  careful(event.currentTarget, byId("say-trouble"), async () => {
    const lines = await get(`/api/talk?before=${stream.firstTalk}`);
    for (const line of lines) stream.talk(line);
    byId("earlier").hidden = lines.length === 0;
  });
});

// ---- posts ------------------------------------------------------------------------------------

/** Takes in how the posts stand: shows the open one, and the reveals of the last closed. */
async function arrange(rows) {
  state.rows = rows;
  const open = rows.filter((row) => row.open);
  const closed = rows.filter((row) => !row.open).slice(0, REVEALS);
  for (const row of [...open, ...closed]) stream.posted(row);
  const before = state.open;
  if (!open.some((row) => row.post === state.open)) state.open = open[0]?.post ?? null;
  else if (open[0] && !sheets.has(open[0].post)) state.open = open[0].post;
  if (state.open !== before || !byId("open-post").childElementCount) await showOpen();
  for (const row of closed) {
    if (stream.items.has(`reveal-${row.post}`)) continue;
    const sheet = await get(`/api/posts/${row.post}/reveal`).catch(() => null);
    if (sheet) arrive(() => stream.revealed(row, sheet, state.me.name));
  }
}

async function showOpen() {
  const place = byId("open-post");
  if (state.open === null) {
    fill(
      place,
      make("h2", {}, "No position is open"),
      make("p", {}, "The next one appears here when the coach's week brings it."),
      state.rows.length ? make("p", {}, make("a", { href: "#past" }, "Look at past posts")) : null,
    );
    return;
  }
  const id = state.open;
  if (!sheets.has(id)) sheets.set(id, await get(`/api/posts/${id}`));
  fill(place, chooser(), problem(sheets.get(id)), make("div", { id: "own" }));
  await showOwn(id);
}

/** Where the reader stands at the open post: hints with their price, or how it ended with the board. */
async function showOwn(id, said = "") {
  const own = await get(`/api/posts/${id}/own`);
  const place = byId("own");
  if (state.open !== id || !place) return;
  const told = make("p", { class: "told", role: "status" }, said);
  if (!own.live) {
    place.replaceChildren(
      own.ended ? make("p", { class: "ended" }, own.ended) : "",
      own.board
        ? make(
            "figure",
            { class: "problem final-board" },
            make("img", { src: own.board.src, alt: own.board.alt }),
            make("figcaption", {}, "Your board at the end", inWords(own.board.alt)),
          )
        : "",
      told,
    );
    return;
  }
  place.replaceChildren(
    make(
      "div",
      { class: "row actions" },
      own.more_hints
        ? button("Hint", (event) => hint(event.currentTarget, id, told), { id: "hint", "aria-describedby": "hint-price" })
        : null,
      button("Give up", (event) => giveUp(event.currentTarget, id, told), { id: "give-up" }),
    ),
    make("p", { class: "help", id: "hint-price" }, own.hint_price),
    told,
  );
}

/** A choice of position, when several are open. */
function chooser() {
  const open = state.rows.filter((row) => row.open);
  if (open.length < 2) return [];
  const pairs = open.map((row) => [row.post, `No. ${row.number}${row.topic ? `, ${row.topic}` : ""}`]);
  const select = choice(pairs, state.open, { "aria-label": "Which open position" });
  select.addEventListener("change", () => {
    state.open = Number(select.value);
    showOpen().then(recall);
  });
  return [make("p", {}, select)];
}

/** The reader's own replies to the open post, as after a reload. */
async function recall() {
  if (state.open === null) return;
  const id = state.open;
  const { replies, hints } = await get(`/api/posts/${id}/mine`);
  for (const reply of replies) stream.judged(reply.reply, reply.received_at, reply);
  const last = replies.at(-1)?.received_at ?? now();
  for (const given of hints) whisper(id, given, last);
  await answers(id);
}

/** What others answered, in a group that keeps answers open. */
async function answers(id) {
  if (state.me.mode !== "open") return;
  for (const answer of await get(`/api/posts/${id}/answers`)) {
    if (stream.items.has(`reply-${answer.reply}`) || stream.items.has(`answer-${answer.reply}`)) continue;
    arrive(() => stream.answered(answer));
  }
}

function whisper(id, given, at) {
  const where = given.number > 1 ? ` for your move ${given.number}` : "";
  return stream.whispered(`hint-${id}-${given.number}-${given.step}`, at, `Hint ${given.step} of 3${where}`, given.text);
}

function hint(control, id, told) {
  return careful(control, told, async () => {
    const given = await post(`/api/posts/${id}/hint`);
    arrive(() => whisper(id, given, now()));
    await showOwn(id, given.text);
    byId("hint")?.focus({ preventScroll: true });
  });
}

async function giveUp(control, id, told) {
  const yes = await sure(
    "Give up on this position? Your attempt ends here; the solution comes with the reveal.",
    "Give up",
    "Go on trying",
  );
  if (!yes) return;
  await careful(control, told, async () => {
    const { message } = await post(`/api/posts/${id}/give-up`);
    arrive(() => stream.whispered(`given-up-${id}`, now(), "You gave up", message));
    await showOwn(id);
  });
}

// ---- the message box --------------------------------------------------------------------------

const text = byId("text");
/** The mark of the text as it stands; a new one for each text. */
let sending = null;

text.addEventListener("input", () => {
  sending = null;
});
text.addEventListener("keydown", (event) => {
  if (event.key === "Enter" && !event.shiftKey && !event.isComposing) {
    event.preventDefault();
    byId("say").requestSubmit(byId("send"));
  }
});
byId("say").addEventListener("submit", (event) => {
  event.preventDefault();
  send(byId("send"), async (body) => {
    const came = await post("/api/say", body);
    // Talk comes back over the feed, in the order everyone sees.
    if (came.was === "answer") judged(came);
  });
});
byId("answer").addEventListener("click", () => {
  send(byId("answer"), async (body) => {
    if (state.open === null) {
      throw new Error("No position is open just now, so there is nothing to answer. Send says it to the group.");
    }
    judged(await post(`/api/posts/${state.open}/answer`, body));
  });
});

function send(control, act) {
  const said = text.value;
  if (!said.trim()) {
    text.focus();
    return;
  }
  sending ??= mark();
  careful(control, byId("say-trouble"), async () => {
    await act({ text: said, source: sending });
    // Only what was sent is cleared, not what was typed meanwhile.
    if (text.value === said) text.value = "";
    sending = null;
    text.focus({ preventScroll: true });
  });
}

function judged(verdict) {
  // The next move of a line has hints of its own, and what was tried changes what they leave.
  showOwn(verdict.post).catch(() => {});
  stream.judged(verdict.reply, now(), verdict).classList.add("fresh");
  toEnd();
}

begin().catch((error) => {
  byId("link-state").textContent = error.message;
});
