// @ts-check
// Posts in the coach's hands: replies with their verdicts, judging and overruling, settling without a
// verdict, and closing early.

import { careful, get, post } from "./ask.js";
import { all, button, byId, choice, counted, leaveField, make, points } from "./build.js";
import { closeNow } from "./coach-week.js";
import { verdictName } from "./post.js";
import { rankMark } from "./talk.js";
import { moment, stamp } from "./when.js";

const VERDICTS = ["solved", "on-the-way", "wrong", "illegal", "unclear", "unreadable"];

/** Lists the posts; those that were unfolded stay so. */
export async function openPosts(state) {
  const place = byId("posts");
  const [rows, waiting] = await Promise.all([get("/api/posts"), get("/api/coach/homework")]);
  const wanted = location.hash.split("/")[1];
  if (!rows.length) {
    place.replaceChildren(make("p", {}, "Nothing is posted yet."));
    return;
  }
  const shown = new Map(all("details[data-post]", place).map((item) => [item.dataset.post, item]));
  const held = byId("homework");
  place.replaceChildren(
    ...(held?.contains(document.activeElement) ? [held] : waiting.length ? [homework(waiting, state)] : []),
    ...rows.map((row) => {
      const kept = shown.get(String(row.post));
      const open = kept?.hasAttribute("open") || String(row.post) === wanted;
      // A word in hand is not taken away from under the coach.
      if (kept?.contains(document.activeElement)) return kept;
      return entry(row, state, open);
    }),
  );
}

/** Replies that only the coach can judge, or that the bot could not read. */
function homework(waiting, state) {
  return make(
    "section",
    { id: "homework", class: "sheet", "aria-labelledby": "homework-title" },
    make("h3", { id: "homework-title" }, `Waiting for your word (${waiting.length})`),
    make(
      "ol",
      { class: "replies" },
      waiting.map(({ number, reply }) => one(reply, () => openPosts(state), state, `No. ${number}`)),
    ),
  );
}

function entry(row, state, open) {
  const { zone } = state.week;
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
      make("span", { class: "help" }, row.open ? `open until ${moment(row.closes_at, zone)}` : `posted ${moment(row.opened_at, zone)}`),
    ),
    body,
  );
  item.addEventListener("toggle", () => {
    if (item.open) replies(body, row, state);
  });
  item.open = open;
  return item;
}

async function replies(body, row, state) {
  try {
    const given = await get(`/api/coach/posts/${row.post}/replies`);
    body.replaceChildren(
      make("p", {}, counted(given.length, "reply", "replies")),
      make("ol", { class: "replies" }, given.map((reply) => one(reply, () => replies(body, row, state), state))),
      row.open
        ? make("p", {}, button("Close now with the reveal", (event) => closeNow(event.currentTarget, row)))
        : "",
    );
  } catch (error) {
    body.replaceChildren(make("p", { class: "trouble" }, error.message));
  }
}

/** How a reply stands, in words. */
function stands(reply) {
  const verdict = `${verdictName(reply.verdict)}${reply.settled === "judged" ? `, ${points(reply.points)} of 5` : ""}${reply.by_coach ? ", by the coach" : ""}`;
  if (reply.settled === "answered") return `${verdict}; answered in private`;
  if (reply.settled === "needs-none") return `${verdict}; no answer needed`;
  return verdict;
}

function one(reply, again, state, about = "") {
  const told = make("p", { class: "told", role: "status" });
  const act = (control, path, content) =>
    careful(control, told, async () => {
      await post(`/api/coach/replies/${reply.reply}/${path}`, content);
      await again();
    });
  const open = state.me.mode === "open";
  return make(
    "li",
    {},
    make(
      "div",
      { class: "said" },
      about ? make("span", {}, about) : null,
      make("span", { class: "who" }, reply.name),
      rankMark(reply.rank),
      make("span", { class: "eyes" }, stands(reply)),
      stamp(reply.received_at),
      open ? sight(reply, act) : null,
    ),
    reply.gone
      ? make("p", { class: "help" }, `${reply.gone.how === "taken-back" ? "Taken back" : "Hidden from the group"} by ${reply.gone.by ?? "somebody who is erased"}, `, stamp(reply.gone.at))
      : null,
    make("p", { class: reply.text.length > 400 ? "words-of long" : "words-of", tabindex: reply.text.length > 400 ? "0" : null }, reply.text),
    reply.message
      ? make("details", { class: "more" }, make("summary", {}, "What the member was told"), make("p", { class: "verdict-of" }, reply.message))
      : null,
    reply.coach_words
      ? make("details", { class: "more" }, make("summary", {}, "The private answer"), make("p", { class: "verdict-of" }, reply.coach_words))
      : null,
    judging(reply, told, again),
    reply.settled === "judged" ? null : answering(reply, act),
    told,
  );
}

/** Whether the group sees the words of an answer, in a group that keeps answers open. */
function sight(reply, act) {
  if (!reply.gone) return button("Hide", (event) => act(event.currentTarget, "hide"), { class: "small", "aria-label": `Hide the answer of ${reply.name}` });
  return reply.gone.how === "hidden" ? button("Show again", (event) => act(event.currentTarget, "put-back"), { class: "small" }) : null;
}

/** A verdict by hand: on what was judged it overrules, on what was not it is the first. */
function judging(reply, told, again) {
  const judged = reply.settled === "judged";
  const verdict = choice(VERDICTS.map((name) => [name, verdictName(name)]), judged ? reply.verdict : "solved", {
    "aria-label": `Verdict on the reply of ${reply.name}`,
  });
  const worth = make("input", {
    type: "number",
    min: 0,
    max: 5,
    step: 0.5,
    value: judged ? points(reply.points) : "5",
    "aria-label": `Points for the reply of ${reply.name}`,
  });
  const words = make("input", { maxlength: 1000, placeholder: "A word to the member (may be empty)", "aria-label": `A word to ${reply.name}` });
  return make(
    "details",
    { class: "more" },
    make("summary", {}, judged ? "Overrule …" : "Judge …"),
    make(
      "div",
      { class: "row" },
      verdict,
      worth,
      words,
      button(judged ? "Overrule" : "Judge", (event) =>
        careful(event.currentTarget, told, async () => {
          const value = Number(worth.value);
          if (worth.value === "" || !(value >= 0 && value <= 5)) throw new Error("Points go from 0 to 5.");
          await post(`/api/coach/replies/${reply.reply}/${judged ? "overrule" : "judge"}`, {
            verdict: verdict.value,
            points: value,
            words: words.value,
          });
          leaveField();
          await again();
        }),
      ),
    ),
  );
}

/** Settling a reply without a verdict. */
function answering(reply, act) {
  const words = make("textarea", { rows: 2, maxlength: 1500, "aria-label": `A private answer to ${reply.name}`, placeholder: `Only ${reply.name} reads this` });
  const settle = (event, path, content) => {
    const control = event.currentTarget;
    leaveField();
    return act(control, path, content);
  };
  return [
    make(
      "details",
      { class: "more" },
      make("summary", {}, reply.settled === "answered" ? "Answer again …" : "Answer in private …"),
      words,
      make("div", { class: "row" }, button("Send the answer", (event) => settle(event, "answer", { words: words.value }))),
    ),
    reply.settled === "unjudged" ? button("No answer needed", (event) => settle(event, "no-answer"), { class: "small" }) : null,
  ].filter(Boolean);
}
