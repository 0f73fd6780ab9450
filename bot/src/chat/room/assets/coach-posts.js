// Posts in the coach's hands: replies with their verdicts, overruling, and closing early.

import { careful, get, post } from "./ask.js";
import { button, byId, choice, counted, make, points } from "./build.js";
import { closeNow } from "./coach-week.js";
import { verdictName } from "./post.js";
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
  const shown = new Map([...place.querySelectorAll("details[data-post]")].map((item) => [item.dataset.post, item]));
  place.replaceChildren(
    ...(waiting.length ? [homework(waiting, state)] : []),
    ...rows.map((row) => {
      const kept = shown.get(String(row.post));
      const open = kept?.open || String(row.post) === wanted;
      // An overruling in hand is not taken away from under the coach.
      if (kept?.contains(document.activeElement)) return kept;
      return entry(row, state, open);
    }),
  );
}

/** Replies that only the coach can judge, or that the bot could not read. */
function homework(waiting, state) {
  return make(
    "section",
    { class: "sheet", "aria-labelledby": "homework-title" },
    make("h3", { id: "homework-title" }, `Waiting for your word (${waiting.length})`),
    make(
      "ol",
      { class: "replies" },
      waiting.map(({ number, reply }) => one(reply, () => openPosts(state), `No. ${number}`)),
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
    if (item.open) replies(body, row);
  });
  item.open = open;
  return item;
}

async function replies(body, row) {
  try {
    const all = await get(`/api/coach/posts/${row.post}/replies`);
    body.replaceChildren(
      make("p", {}, counted(all.length, "reply", "replies")),
      make("ol", { class: "replies" }, all.map((reply) => one(reply, () => replies(body, row)))),
      row.open
        ? make("p", {}, button("Close now with the reveal", (event) => closeNow(event.currentTarget, row)))
        : "",
    );
  } catch (error) {
    body.replaceChildren(make("p", { class: "trouble" }, error.message));
  }
}

function one(reply, again, about = "") {
  const told = make("p", { class: "told", role: "status" });
  const verdict = choice(VERDICTS.map((name) => [name, verdictName(name)]), reply.verdict, {
    "aria-label": `Verdict on the reply of ${reply.name}`,
  });
  const worth = make("input", {
    type: "number",
    min: 0,
    max: 5,
    step: 0.5,
    value: points(reply.points),
    "aria-label": `Points for the reply of ${reply.name}`,
  });
  const words = make("input", { maxlength: 1000, placeholder: "A word to the member (may be empty)", "aria-label": `A word to ${reply.name}` });
  return make(
    "li",
    {},
    make(
      "div",
      { class: "said" },
      about ? make("span", {}, about) : null,
      make("span", { class: "who" }, reply.name),
      make("span", { class: "eyes" }, `${verdictName(reply.verdict)}, ${points(reply.points)} of 5${reply.by_coach ? ", by the coach" : ""}`),
      stamp(reply.received_at),
    ),
    make("p", { class: reply.text.length > 400 ? "words-of long" : "words-of", tabindex: reply.text.length > 400 ? "0" : null }, reply.text),
    reply.message
      ? make("details", { class: "more" }, make("summary", {}, "What the member was told"), make("p", { class: "verdict-of" }, reply.message))
      : null,
    make(
      "details",
      { class: "more" },
      make("summary", {}, reply.verdict ? "Overrule" : "Judge"),
      make(
        "div",
        { class: "row" },
        verdict,
        worth,
        words,
        button("Overrule", (event) =>
          careful(event.currentTarget, told, async () => {
            const value = Number(worth.value);
            if (worth.value === "" || !(value >= 0 && value <= 5)) throw new Error("Points go from 0 to 5.");
            await post(`/api/coach/replies/${reply.reply}/overrule`, { verdict: verdict.value, points: value, words: words.value });
            await again();
          }),
        ),
      ),
      told,
    ),
  );
}
