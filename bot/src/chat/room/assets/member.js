// @ts-check
// The member's page: coming in, the open position, the talk, and the message box.

import { careful, get, mark, post } from "./ask.js";
import { button, byId, choice, fill, make, sure } from "./build.js";
import { openCards } from "./cards.js";
import { choose, composer, settle } from "./composer.js";
import { keepUp } from "./language.js";
import { openLessons } from "./lessons.js";
import { follow } from "./live.js";
import { keptOfMe, leaders, myWork, pastPosts, renewHomework } from "./mine.js";
import { offering } from "./naming.js";
import { onBoard } from "./on-board.js";
import { inWords, numberedTopic, ownAnswer, posted } from "./post.js";
import { onShutOut, restore, shutOut } from "./shut-out.js";
import { Stream } from "./talk.js";
import { loadAgain, putBack } from "./typed.js";
import { views } from "./views.js";
import { say } from "./words.js";

/** Closed posts whose reveal stands in the talk; older ones are under Past posts. */
const REVEALS = 3;

const stream = new Stream(byId("stream"), {
  mean,
  controls: (line) =>
    line.by === state.me.id
      ? [button(say("room-take-back"), (event) => takeBack(event.currentTarget, line.id), { class: "small" })]
      : [],
  below: (line) => onBoard(line, () => state.rows),
  answerControls: (reply) =>
    state.me.mode === "open"
      ? [button(say("room-take-back"), (event) => takeBackAnswer(event.currentTarget, reply), { class: "small" })]
      : [],
});
const sheets = new Map();
/** @type {{ me: any, rows: any[], open: number | null, ahead: number, settled: boolean }} */
const state = { me: null, rows: [], open: null, ahead: 0, settled: false };

/** The room's time; the reader's clock may be wrong. */
const now = () => new Date(Date.now() + state.ahead).toISOString();

// ---- coming in --------------------------------------------------------------------------------

async function begin() {
  state.me = await get("/api/me");
  state.ahead = new Date(state.me.now).getTime() - Date.now();
  document.title = state.me.group;
  byId("group").textContent = state.me.group;
  byId("to-coach").hidden = !state.me.coach;
  if (state.me.name) await comeIn();
  else {
    byId("enter").hidden = false;
    byId("name").focus();
  }
}

/** In, under a name that the room has given. */
async function named() {
  state.me = await get("/api/me");
  byId("enter").hidden = true;
  await comeIn();
  byId("text").focus({ preventScroll: true });
}

byId("enter-name").addEventListener("submit", (event) => {
  event.preventDefault();
  careful(event.submitter, byId("enter-trouble"), () =>
    offering(byId("enter-trouble"), byId("name"), async () => {
      await post("/api/enter", { name: byId("name").value });
      await named();
    }),
  );
});

byId("enter-code").addEventListener("submit", (event) => {
  event.preventDefault();
  careful(event.submitter, byId("code-trouble"), async () => {
    await post("/api/device", { code: byId("code").value });
    await named();
  });
});

onShutOut((why) => shutOut(why, byId("text")));

/** Says whether the reader may talk at the moment. */
function mayTalk() {
  byId("muted").textContent = state.me.muted ?? "";
}

async function takeBack(control, line) {
  const yes = await sure(
    say("room-take-back-sure"),
    say("room-take-it-back"),
  );
  if (yes) await careful(control, byId("say-trouble"), () => post(`/api/talk/${line}/take-back`));
}

async function takeBackAnswer(control, reply) {
  const yes = await sure(
    say("room-take-answer-back-sure"),
    say("room-take-it-back"),
  );
  if (yes) await careful(control, byId("say-trouble"), () => post(`/api/answers/${reply}/take-back`));
}

/** A coach's private answer to this reader. */
function answered({ reply, kind, number, text: mine, words, by, at }) {
  const about = mine.trim()
    ? say("room-word-on-yours", { text: mine.length > 120 ? `${mine.slice(0, 119)}…` : mine, kind, number: String(number) })
    : say("room-word-on", { kind, number: String(number) });
  return stream.whispered(`words-${reply}`, at, by ?? say("room-your-coach"), `${about}\n${words}`, "coach");
}

async function comeIn() {
  byId("room").hidden = false;
  byId("nav").hidden = false;
  mayTalk();
  restore(byId("text"));
  putBack();
  const [rows, lines, told] = await Promise.all([get("/api/posts"), get("/api/talk"), get("/api/words")]);
  for (const line of lines) stream.talk(line);
  byId("earlier").hidden = lines.length === 0;
  await arrange(rows);
  await recall();
  for (const word of told) answered(word);
  state.settled = true;
  // Beside the position, the talk begins at its end; under it, the position comes first.
  if (matchMedia("(min-width: 62rem)").matches) toEnd();
  views("talk", {
    mine: () => myWork(byId("mine"), state),
    leaders: () => leaders(byId("leaders"), state),
    past: (wanted) => pastPosts(byId("past"), state, wanted),
    lessons: (wanted) => openLessons(byId("lessons"), wanted),
    cards: (wanted) => openCards(byId("cards"), wanted),
    kept: () => keptOfMe(byId("kept"), state),
  });
  follow(
    "member",
    {
      gone: ({ talk, replies }) => {
        const keys = new Set([...talk.map((id) => `talk-${id}`), ...replies.map((id) => `answer-${id}`)]);
        stream.drop((key) => keys.has(key));
      },
      words: (word) => arrive(() => answered(word)),
      standing: async () => {
        state.me = await get("/api/me").catch(() => state.me);
        mayTalk();
      },
      again: () => loadAgain(),
      posts: arrange,
      talk: (line) => arrive(() => stream.talk(line)),
      verdict: (came) => {
        arrive(() => stream.judged(came.reply, now(), came));
        showOwn(came.post).catch(() => {});
      },
      leave: () => {
        byId("leave-asked").textContent = say("room-leave-news");
        if (state.open !== null) showOwn(state.open).catch(() => {});
        renewHomework();
      },
      answered: (id) => answers(id).catch(() => {}),
      renewed: renew,
    },
    () => stream.lastTalk,
    (connected) => {
      byId("link-state").textContent = connected
        ? ""
        : say("room-broken-line");
    },
  );
}

/** After something was erased, renamed or shown again, or a setting changed: the talk anew. */
async function renew() {
  try {
    state.me = await get("/api/me");
    keepUp(state.me);
    byId("group").textContent = state.me.group;
    mayTalk();
    const lines = await get("/api/talk");
    stream.drop((key) => /^(talk|answer|reveal)-/.test(key));
    for (const line of lines) stream.talk(line);
    await arrange(state.rows);
    // An answer that was shown may be taken back.
    byId("past").replaceChildren();
    if (document.body.dataset.at === "past") pastPosts(byId("past"), state);
    await renewHomework();
    if (state.open !== null) await answers(state.open);
  } catch (error) {
    if (!error.status) throw error;
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
  // Moves that are talked about are followed from what is revealed, and from nothing else.
  byId("stream").classList.toggle("something-revealed", rows.some((row) => !row.open && row.kind !== "words"));
  const open = rows.filter((row) => row.open);
  const closed = rows.filter((row) => !row.open).slice(0, REVEALS);
  for (const row of [...open, ...closed]) stream.posted(row);
  const before = state.open;
  settle();
  if (state.open !== before || !byId("open-post").childElementCount) await showOpen();
  for (const row of closed) {
    if (stream.items.has(`reveal-${row.post}`)) continue;
    if (row.kind === "words") {
      // It takes no answers, and is read where it stands.
      const sheet = await get(`/api/posts/${row.post}`).catch(() => null);
      if (sheet) arrive(() => stream.put(`reveal-${row.post}`, row.opened_at, posted(sheet)));
      continue;
    }
    const sheet = await get(`/api/posts/${row.post}/reveal`).catch(() => null);
    if (sheet) arrive(() => stream.revealed(row, sheet, state.me.name));
  }
}

async function showOpen() {
  const place = byId("open-post");
  if (state.open === null) {
    fill(
      place,
      make("h2", {}, say("room-none-open")),
      make("p", {}, say("room-none-open-what")),
      state.rows.length ? make("p", {}, make("a", { href: "#past" }, say("room-look-at-past"))) : null,
    );
    return;
  }
  const id = state.open;
  if (!sheets.has(id)) sheets.set(id, await get(`/api/posts/${id}`));
  // Another one may have been chosen in the meantime.
  if (state.open !== id) return;
  fill(place, chooser(), posted(sheets.get(id)), make("div", { id: "own" }));
  await showOwn(id);
}

/** Where the reader stands at the open post: hints with their price, or how it ended with the board. */
async function showOwn(id, said = "") {
  const own = await get(`/api/posts/${id}/own`);
  const place = byId("own");
  if (state.open !== id || !place) return;
  const told = make("p", { class: "told", role: "status" }, said);
  if (own.kind === "question") {
    showAnswer(place, id, own, told);
    return;
  }
  if (!own.live) {
    place.replaceChildren(
      own.ended ? make("p", { class: "ended" }, own.ended) : "",
      own.board
        ? make(
            "figure",
            { class: "problem final-board" },
            make("img", { src: own.board.src, alt: own.board.alt }),
            make("figcaption", {}, say("room-board-at-end"), inWords(own.board.alt)),
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
        ? button(say("room-hint"), (event) => hint(event.currentTarget, id, told), { id: "hint", "aria-describedby": "hint-price" })
        : null,
      button(say("room-give-up"), (event) => giveUp(event.currentTarget, id, told), { id: "give-up" }),
    ),
    make("p", { class: "help", id: "hint-price" }, own.hint_price),
    told,
  );
}

/** The reader's answer to a question: a box for it, and how the last one stands. */
function showAnswer(place, id, own, told) {
  const before = /** @type {HTMLTextAreaElement | null} */ (place.querySelector("#own-answer"));
  // What is being typed stays.
  const typed = before && before.dataset.post === String(id) ? before.value : "";
  const box = make("textarea", { id: "own-answer", "data-post": id, rows: 5, maxlength: 4000 });
  box.value = typed;
  place.replaceChildren(
    ...[
      ownAnswer(own, () => showOwn(id)),
      own.live ? make("label", { class: "over", for: "own-answer" }, own.answer ? say("room-answer-again") : say("room-answer-own-words")) : null,
      own.live ? box : null,
      own.live ? make("p", {}, button(say("room-send-answer"), (event) => give(event.currentTarget, id, box, told), { id: "send-answer", class: "first" })) : null,
      own.live ? make("p", { class: "help" }, say("room-only-coach-reads")) : null,
      told,
    ].filter((part) => part !== null),
  );
}

/** Sends an answer to a question. */
async function give(control, id, box, told) {
  const text = box.value;
  if (!text.trim()) {
    box.focus();
    return;
  }
  await careful(control, told, async () => {
    const came = await post(`/api/posts/${id}/answer`, { text, source: mark() });
    if (box.value === text) box.value = "";
    if (came.was === "answer") judged(came);
  });
}

/** A choice of position, when several are open. */
function chooser() {
  const open = state.rows.filter((row) => row.open);
  if (open.length < 2) return [];
  const pairs = open.map((row) => [row.post, numberedTopic(row)]);
  const select = choice(pairs, state.open, { id: "shown-post", "aria-label": say("room-which-open") });
  select.addEventListener("change", () => choose(Number(select.value)));
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
  const title =
    given.number > 1
      ? say("room-hint-for-move", { step: given.step, move: given.number })
      : say("room-hint-step", { step: given.step });
  return stream.whispered(`hint-${id}-${given.number}-${given.step}`, at, title, given.text);
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
    say("room-give-up-sure"),
    say("room-give-up"),
    say("room-go-on-trying"),
  );
  if (!yes) return;
  await careful(control, told, async () => {
    const { message } = await post(`/api/posts/${id}/give-up`);
    arrive(() => stream.whispered(`given-up-${id}`, now(), say("room-gave-up"), message));
    await showOwn(id);
  });
}

// ---- verdicts ---------------------------------------------------------------------------------

composer({
  state,
  judged,
  chosen: () => showOpen().then(recall),
});

function judged(verdict) {
  // The next move of a line has hints of its own, and what was tried changes what they leave.
  showOwn(verdict.post).catch(() => {});
  stream.judged(verdict.reply, now(), verdict).classList.add("fresh");
  toEnd();
}

/** Sends one of the readings of a doubtful reply, the one that was meant. */
function mean(control, reply, reading, told) {
  return careful(control, told, async () => {
    judged(await post(`/api/readings/${reply}`, { reading }));
    byId("text").focus({ preventScroll: true });
  });
}

begin().catch((error) => {
  byId("link-state").textContent = error.message;
});
