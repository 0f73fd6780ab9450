// The coach's page: what its views share, and the words from the bot.

import { careful, get, mark, post } from "./ask.js";
import { byId, make } from "./build.js";
import { checking, openCheck, showShelf } from "./coach-check.js";
import { openPosts } from "./coach-posts.js";
import { openSettings } from "./coach-settings.js";
import { openSummary } from "./coach-summary.js";
import { showWeek } from "./coach-week.js";
import { follow } from "./live.js";
import { Stream } from "./talk.js";
import { views } from "./views.js";
import { stamp } from "./when.js";

const stream = new Stream(byId("stream"));
const state = { me: null, week: null };

/** Fetches the week anew and shows it, and whatever else depends on it. */
async function refresh() {
  state.week = await get("/api/coach/week");
  byId("topics").replaceChildren(...state.week.topics.map((name) => make("option", { value: name })));
  showWeek(state, refresh);
  notes(state.week.notes);
  if (document.body.dataset.at === "check") await showShelf(state, refresh);
  if (document.body.dataset.at === "posts") await openPosts(state);
}

let waiting = null;
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
  byId("notes").replaceChildren(
    ...latest.slice(0, 1).map(note),
    ...(latest.length > 1
      ? [
          make(
            "details",
            { class: "more" },
            make("summary", {}, "Earlier words from the bot"),
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
  document.title = `Coach: ${state.me.group}`;
  byId("group").textContent = state.me.group;
  await refresh();
  for (const line of await get("/api/talk")) stream.talk(line);
  views("week", {
    check: () => openCheck(state, refresh),
    posts: () => openPosts(state),
    summary: () => openSummary(state),
    settings: () => openSettings(state),
  });
  follow(
    {
      posts: soon,
      week: soon,
      notice: soon,
      checking,
      talk: (line) => stream.talk(line).classList.add("fresh"),
      renewed: async () => {
        stream.drop(() => true);
        for (const line of await get("/api/talk")) stream.talk(line);
      },
    },
    () => stream.lastTalk,
    (connected) => {
      byId("link-state").textContent = connected
        ? ""
        : "The connection is broken; it will be tried again by itself.";
    },
  );
}

begin().catch(complain);
