// @ts-check
// The message box: which open position it answers, and what is asked before a text is taken or shown. While a
// question is chosen, which has a box of its own, it is for talk.

import { careful, mark, post } from "./ask.js";
import { button, byId, choice, fill, make } from "./build.js";
import { numberedTopic } from "./post.js";
import { both, either, say } from "./words.js";

/** Where the chosen position is kept for a page that is loaded again. */
const CHOSEN = "answers-post";

const text = byId("text");
const trouble = byId("say-trouble");
const held = byId("held");

/** @type {string | null} The mark of the text as it stands; a new one for each text. */
let sending = null;
/** The position that the text in the box was begun for. */
let begunFor = null;
/** What the page hands over: `state`, `judged(verdict)`, and `chosen()` when another position is. */
let page;

const openRows = () => page.state.rows.filter((row) => row.open);
const rowOf = (id) => page.state.rows.find((row) => row.post === id);

/** Sets the box up. */
export function composer(handed) {
  page = handed;
}

/**
 * Takes in how the posts stand. The chosen position stays chosen while it is open; else it is the one
 * chosen before the page was loaded, else the latest. Says so when one closes under the writer's hands.
 */
export function settle() {
  const open = openRows();
  const is = (id) => open.some((row) => row.post === id);
  const { state } = page;
  const before = state.open;
  const latest = open[0]?.post ?? null;
  const remembered = Number(sessionStorage.getItem(CHOSEN));
  if (before === null) state.open = is(remembered) ? remembered : latest;
  else if (!is(before)) state.open = latest;
  // A new position takes the place of the last one, but not of one that was chosen or is being answered.
  else if (!text.value.trim() && remembered !== before) state.open = latest;
  const gone = before !== null && !is(before) ? rowOf(before) : null;
  if (gone) {
    const number = String(gone.number);
    byId("answering-told").textContent =
      state.open === null
        ? say("room-closed-no-other", { number })
        : say("room-closed-other", { number, other: String(rowOf(state.open).number) });
  }
  draw();
}

/** Chooses the position that is shown and answered. */
export function choose(id) {
  page.state.open = id;
  sessionStorage.setItem(CHOSEN, String(id));
  byId("answering-told").textContent = "";
  if (text.value.trim()) begunFor = id;
  letGo();
  draw();
  page.chosen();
}

/** Says which position is answered; with several open, a choice. A question has a box of its own. */
function draw() {
  const open = openRows();
  const place = byId("answering");
  const talkOnly = rowOf(page.state.open)?.kind === "question";
  byId("answer").hidden = talkOnly;
  text.placeholder = talkOnly ? say("room-talk-placeholder") : say("room-text-placeholder");
  byId("say-help").textContent = talkOnly ? say("room-talk-what") : say("room-say-what");
  if (talkOnly) {
    place.hidden = true;
    fill(place, null);
    return;
  }
  if (open.length < 2) {
    place.hidden = open.length === 0;
    fill(place, open.length ? make("span", { class: "answers" }, answersWhich(open[0])) : null);
    return;
  }
  place.hidden = false;
  const pairs = open.map((row) => [row.post, numberedTopic(row)]);
  const select = choice(pairs, page.state.open, { id: "answers-post" });
  select.addEventListener("change", () => choose(Number(select.value)));
  fill(place, make("label", { for: "answers-post" }, say("room-answers")), select);
}

function answersWhich({ number: n, topic }) {
  const number = String(n);
  return topic ? say("room-answers-number-topic", { number, topic }) : say("room-answers-number", { number });
}

text.addEventListener("input", () => {
  sending = null;
  if (!text.value.trim()) begunFor = null;
  else begunFor ??= page?.state.open ?? null;
  letGo();
});
text.addEventListener("keydown", (event) => {
  if (event.key === "Enter" && !event.shiftKey && !event.isComposing) {
    event.preventDefault();
    byId("say").requestSubmit(byId("send"));
  }
});
byId("say").addEventListener("submit", (event) => {
  event.preventDefault();
  send(byId("send"), "/api/say");
});
byId("answer").addEventListener("click", () => {
  if (page.state.open === null) {
    trouble.textContent = say("room-nothing-to-answer");
    return;
  }
  send(byId("answer"), `/api/posts/${page.state.open}/answer`);
});
held.addEventListener("keydown", (event) => {
  if (event.key === "Escape") {
    letGo();
    text.focus();
  }
});

/** Sends the text, unless there is something to be asked first. */
function send(control, path) {
  if (!text.value.trim()) {
    text.focus();
    return;
  }
  const { open } = page.state;
  // Begun for a position that has closed meanwhile, it may be no answer to the next one.
  if (begunFor !== null && begunFor !== open && !rowOf(begunFor)?.open) {
    const was = rowOf(begunFor);
    ask(
      say("room-closed-meanwhile", { number: String(was?.number ?? "?") }),
      open === null ? [] : [answering(rowOf(open), sendTo(rowOf(open)))],
      toAll(say("room-say-to-group")),
    );
    return;
  }
  submit(control, path, { post: open });
}

/** Sends the text as it stands, and shows what came of it. */
function submit(control, path, more = {}) {
  const said = text.value;
  sending ??= mark();
  return careful(control, trouble, async () => {
    const came = await post(path, { text: said, source: sending, ...more });
    if (came.was === "held") {
      hold(came);
      return;
    }
    // Talk comes back over the feed, in the order everyone sees.
    if (came.was === "answer") page.judged(came);
    done(said);
  });
}

/** Only what was sent is cleared, not what was typed meanwhile. */
function done(said) {
  letGo();
  if (text.value === said) {
    text.value = "";
    begunFor = null;
  }
  sending = null;
  byId("answering-told").textContent = "";
  text.focus({ preventScroll: true });
}

/** The text stays with its writer, who is asked what it is to be. */
function hold(came) {
  const doubtful = came.why === "may-tell";
  const several = came.posts.length > 1;
  const answers = came.posts.map((open) =>
    doubtful
      ? answering(open, several ? answerTo(open) : say("room-is-my-answer"), { sure: true })
      : answering(open, sendTo(open)),
  );
  ask(whatIsAsked(came), answers, doubtful ? toAll(say("room-say-to-all")) : null);
}

/** What is asked about a text of which nothing was kept yet. */
function whatIsAsked({ why, posts }) {
  const numbers = posts.map(({ number }) => String(number));
  const isQuestion = ({ holds }) => holds.kind === "question";
  switch (why) {
    case "may-tell":
      return posts.every(isQuestion)
        ? say("room-held-is-answer", { number: either(numbers) })
        : say("room-held-may-tell", { numbers: either(numbers) });
    case "elsewhere": {
      const chosen = String(rowOf(page.state.open)?.number ?? "?");
      return posts.length === 1
        ? say("room-held-elsewhere", { number: numbers[0], chosen })
        : say("room-held-elsewhere-several", { numbers: both(numbers), chosen });
    }
    default: {
      if (!posts.some(isQuestion)) return say("room-held-several", { numbers: both(numbers) });
      const names = posts.map(({ holds, number }) => say("room-post-called", { kind: holds.kind, number: String(number) }));
      return say("room-held-could-answer", { names: either(names) });
    }
  }
}

const sendTo = ({ number }) => say("room-send-to", { number: String(number) });
const answerTo = ({ number }) => say("room-answer-to", { number: String(number) });

function answering(open, label, more = {}) {
  return button(
    label,
    (event) => {
      // As one's own choice, it is also the position that is looked at from here on.
      if (page.state.open !== open.post && rowOf(open.post)?.open) choose(open.post);
      begunFor = open.post;
      submit(event.currentTarget, `/api/posts/${open.post}/answer`, more);
    },
    { class: "first" },
  );
}

function toAll(label) {
  return button(label, (event) => submit(event.currentTarget, "/api/say", { to: "all" }));
}

function ask(question, answers, all) {
  fill(
    held,
    make("p", { id: "held-what", role: "alert" }, question),
    make(
      "div",
      { class: "row" },
      answers,
      all,
      button(say("room-drop"), () => done(text.value)),
    ),
  );
  held.hidden = false;
  // The choice as a whole, and none of its buttons: a second Enter must choose nothing.
  held.focus({ preventScroll: true });
}

/** Nothing is asked any more. */
function letGo() {
  held.hidden = true;
  held.replaceChildren();
}
