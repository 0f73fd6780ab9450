// @ts-check
// The coach's page: what its views share, and the words from the bot.

import { careful, get, mark, post } from "./ask.js";
import { button, byId, fill, make, sure } from "./build.js";
import { coachCards } from "./coach-cards.js";
import { showChats } from "./coach-chats.js";
import { checking, openCheck, showShelf } from "./coach-check.js";
import { draftsChanged, openDrafts } from "./coach-drafts.js";
import { openEdit } from "./coach-edit.js";
import { checkingLesson, openLessons } from "./coach-lessons.js";
import { openMembers } from "./coach-members.js";
import { openPosts } from "./coach-posts.js";
import { openSettings } from "./coach-settings.js";
import { openSummary } from "./coach-summary.js";
import { showWeek } from "./coach-week.js";
import { keepUp } from "./language.js";
import { follow } from "./live.js";
import { offering } from "./naming.js";
import { onShutOut, restore, shutOut } from "./shut-out.js";
import { Stream, coachMark } from "./talk.js";
import { loadAgain, putBack } from "./typed.js";
import { views } from "./views.js";
import { stamp } from "./when.js";
import { say, sayAround } from "./words.js";

const stream = new Stream(byId("stream"), { controls });
/** @type {{ me: any, week: any, feed: { connect(): void, pause(): void } | null }} */
const state = { me: null, week: null, feed: null };

onShutOut((why) => shutOut(why === "link" ? "coach-link" : why, byId("text")));

/** What a coach can do with a line of talk. */
function controls(line) {
  const act = (path) => (event) =>
    careful(event.currentTarget, byId("say-trouble"), async () => {
      await post(`/api/coach/talk/${line.id}/${path}`);
      await talk();
    });
  if (!line.gone) return [button(say("coaching-hide"), (event) => hide(event, line, act("hide")), { class: "small", "aria-label": say("coaching-hide-of", { name: line.name }) })];
  return line.gone.how === "hidden" ? [button(say("coaching-show-again"), act("put-back"), { class: "small" })] : [];
}

async function hide(event, line, act) {
  const control = event.currentTarget;
  const yes = await sure(
    say("coaching-hide-sure", { name: line.name }),
    say("coaching-hide-it"),
  );
  if (yes) await act({ currentTarget: control });
}

/** The talk anew, what is out of sight among it. */
async function talk() {
  const lines = await get("/api/coach/talk");
  stream.drop(() => true);
  for (const line of lines) stream.talk(line);
}

/** Fetches the week anew and shows it, and whatever else depends on it. */
async function refresh() {
  state.week = await get("/api/coach/week");
  byId("topics").replaceChildren(...state.week.topics.map((name) => make("option", { value: name })));
  showWeek(state, refresh);
  notes(state.week.notes);
  if (document.body.dataset.at === "check") await showShelf(state, refresh);
  if (document.body.dataset.at === "lessons") await openLessons(state, refresh);
  if (document.body.dataset.at === "posts") await openPosts(state);
  if (document.body.dataset.at === "members") await openMembers(state);
}

/** @type {number | undefined} */
let waiting;
/** Several changes at once make one refresh. */
function soon() {
  clearTimeout(waiting);
  waiting = setTimeout(() => refresh().catch(complain), 150);
}

function complain(error) {
  byId("link-state").textContent = error.message;
}

/** Words from the bot, the latest first; three show, the others on demand. */
function notes(words) {
  const latest = [...words].reverse();
  const note = ({ at, text }) => make("p", { class: "note" }, stamp(at), " ", text);
  fill(
    byId("notes"),
    ...latest.slice(0, 1).map(note),
    ...(latest.length > 1
      ? [
          make(
            "details",
            { class: "more" },
            make("summary", {}, say("coaching-earlier-notes")),
            ...latest.slice(1).map(note),
          ),
        ]
      : []),
  );
}

byId("say").addEventListener("submit", (event) => {
  event.preventDefault();
  const text = byId("text");
  careful(event.submitter, byId("say-trouble"), async () => {
    if (!text.value.trim()) return;
    await post("/api/coach/say", { text: text.value, source: mark() });
    text.value = "";
  });
});

async function begin() {
  state.me = await get("/api/me");
  document.title = say("coaching-window", { group: state.me.group });
  byId("group").textContent = say("coaching-heading", { group: state.me.group });
  fill(byId("enter-help"), sayAround("coaching-who-what", { mark: coachMark() }));
  if (state.me.rank === "coach") await comeIn();
  else {
    byId("enter").hidden = false;
    byId("name").value = state.me.name ?? "";
    byId("name").focus();
  }
}

/** Says under which name the coach speaks. */
function signed() {
  fill(byId("as"), sayAround("coaching-say-as", { name: state.me.name, mark: coachMark() }));
}

/** In, under a name that the room has given. */
async function named() {
  state.me = await get("/api/me");
  if (state.me.rank !== "coach") throw new Error(say("coaching-you-are", { name: state.me.name }));
  byId("enter").hidden = true;
  await comeIn();
}

byId("enter-name").addEventListener("submit", (event) => {
  event.preventDefault();
  careful(event.submitter, byId("enter-trouble"), () =>
    offering(byId("enter-trouble"), byId("name"), async () => {
      await post("/api/coach/enter", { name: byId("name").value });
      await named();
    }),
  );
});

byId("enter-code").addEventListener("submit", (event) => {
  event.preventDefault();
  careful(event.submitter, byId("code-trouble"), async () => {
    await post("/api/device", { code: byId("code").value });
    byId("name").value = (await get("/api/me")).name;
    await named();
  });
});

async function comeIn() {
  byId("coaching").hidden = false;
  byId("nav").hidden = false;
  signed();
  restore(byId("text"));
  putBack();
  await refresh();
  views("week", {
    check: () => openCheck(state, refresh),
    lessons: () => openLessons(state, refresh),
    editor: (wanted) => openDrafts(wanted).catch(complain),
    edit: (wanted) => openEdit(wanted, refresh),
    posts: () => openPosts(state),
    summary: () => openSummary(),
    cards: (wanted) => coachCards(wanted),
    members: () => openMembers(state),
    settings: () => openSettings(state),
  });
  await showChats();
  await talk();
  state.feed = follow(
    "coach",
    {
      posts: soon,
      week: soon,
      standing: soon,
      notice: soon,
      chats: () => showChats().catch(complain),
      drafts: () => draftsChanged().catch(complain),
      checking: (progress) => (document.body.dataset.at === "lessons" ? checkingLesson(progress) : checking(progress)),
      talk: (line) => stream.talk(line).classList.add("fresh"),
      gone: talk,
      again: () => loadAgain(),
      renewed: async () => {
        state.me = await get("/api/me");
        keepUp(state.me);
        signed();
        await talk();
        soon();
      },
    },
    () => stream.lastTalk,
    (connected) => {
      byId("link-state").textContent = connected
        ? ""
        : say("coaching-broken-line");
    },
  );
}

begin().catch(complain);
