// @ts-check
// Posts in the coach's hands: replies with their verdicts, judging and overruling, settling without a
// verdict, and closing early.

import { careful, get, post } from "./ask.js";
import { all, button, byId, choice, fill, leaveField, make } from "./build.js";
import { closeNow } from "./coach-week.js";
import { numbered, signOf, verdictName } from "./post.js";
import { rankMark } from "./talk.js";
import { moment, stamp } from "./when.js";
import { amount, listed, moves, say, sayAround } from "./words.js";

const VERDICTS = ["solved", "on-the-way", "wrong", "illegal", "unclear", "unreadable"];

/** Lists the posts; those that were unfolded stay so. */
export async function openPosts(state) {
  const place = byId("posts");
  const [rows, waiting] = await Promise.all([get("/api/posts"), get("/api/coach/homework")]);
  const wanted = location.hash.split("/")[1];
  if (!rows.length) {
    place.replaceChildren(make("p", {}, say("coaching-nothing-posted")));
    return;
  }
  const shown = new Map(all("details[data-post]", place).map((item) => [item.dataset.post, item]));
  const held = byId("homework");
  fill(
    place,
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

/** What a reply is to: the number of its post, and of a question the beginning of what was asked. */
function meant(about) {
  const { asked } = about;
  const begins = asked.length > 80 ? `${asked.slice(0, 79)}…` : asked;
  return [numbered(about), begins].filter(Boolean).join(" · ");
}

/** Replies that only the coach can judge, or that the bot could not read. */
function homework(waiting, state) {
  return make(
    "section",
    { id: "homework", class: "sheet", "aria-labelledby": "homework-title" },
    make("h3", { id: "homework-title" }, say("coaching-waiting", { count: waiting.length })),
    make(
      "ol",
      { class: "replies" },
      waiting.map((about) => one(about.reply, () => openPosts(state), state, meant(about))),
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
      { id: `past-${row.post}` },
      make("span", { class: "number" }, numbered(row)),
      make("span", { class: "sign" }, signOf(row)),
      row.topic ? make("span", { class: "topic" }, row.topic) : null,
      make("span", { class: "help" }, row.open ? say("coaching-open-until", { at: moment(row.closes_at, zone) }) : say("coaching-posted-at", { at: moment(row.opened_at, zone) })),
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
    const again = () => replies(body, row, state);
    fill(
      body,
      ...(row.kind === "question" ? byMove(await get(`/api/coach/posts/${row.post}/answers`), again, state) : inOrder(await get(`/api/coach/posts/${row.post}/replies`), again, state)),
      row.open
        ? make("p", {}, button(say("coaching-close-now"), (event) => closeNow(event.currentTarget, row)))
        : "",
    );
  } catch (error) {
    body.replaceChildren(make("p", { class: "trouble" }, error.message));
  }
}

/** Replies in the order they came. */
const inOrder = (given, again, state) => [
  make("p", {}, say("coaching-replies", { count: given.length })),
  make("ol", { class: "replies" }, given.map((reply) => one(reply, again, state))),
];

/** Answers to a question by the first move found in each. */
function byMove({ answered, waiting, groups }, again, state) {
  const title = (group) => {
    const count = group.answers.length;
    switch (group.begins) {
      case "move":
        return say("coaching-begins-move", { move: moves(group.san), count, waiting: group.waiting });
      case "no-move":
        return say("coaching-begins-none", { count, waiting: group.waiting });
      default:
        return say("coaching-begins-replaced", { count });
    }
  };
  return [
    make("p", {}, say("coaching-answers-by-move", { count: answered, waiting })),
    ...groups.map((group) =>
      make("section", { class: "answer-group", "data-move": group.san }, make("h4", {}, title(group)), make("ol", { class: "replies" }, group.answers.map((reply) => one(reply, again, state)))),
    ),
  ];
}

/** How a reply stands, in words. */
function stands(reply) {
  return listed(
    [
      verdictName(reply.to === "question" ? (reply.verdict ?? "kept") : reply.verdict),
      reply.settled === "judged" ? say("coaching-points-of", { points: amount(reply.points) }) : "",
      reply.by_coach ? say("coaching-by-coach") : "",
      reply.settled === "answered" ? say("coaching-answered-privately") : "",
      reply.settled === "needs-none" ? say("coaching-needs-no-answer") : "",
    ].filter(Boolean),
  );
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
      ? make("p", { class: "help" }, sayAround("room-gone", { how: reply.gone.how, who: reply.gone.by ?? say("room-somebody-erased"), at: stamp(reply.gone.at) }))
      : null,
    make("p", { class: reply.text.length > 400 ? "words-of long" : "words-of", tabindex: reply.text.length > 400 ? "0" : null }, reply.text),
    reply.message
      ? make("details", { class: "more" }, make("summary", {}, say("coaching-told")), make("p", { class: "verdict-of" }, reply.message))
      : null,
    reply.coach_words
      ? make("details", { class: "more" }, make("summary", {}, say("coaching-private-answer")), make("p", { class: "verdict-of" }, reply.coach_words))
      : null,
    reply.to === "question" ? marking(reply, told, again) : judging(reply, told, again),
    reply.to === "question" ? showing(reply, act) : null,
    reply.settled === "judged" ? null : answering(reply, act),
    told,
  );
}

/** Whether the group sees the words of an answer, in a group that keeps answers open. */
function sight(reply, act) {
  if (!reply.gone) return button(say("coaching-hide"), (event) => act(event.currentTarget, "hide"), { class: "small", "aria-label": say("coaching-hide-answer-of", { name: reply.name }) });
  return reply.gone.how === "hidden" ? button(say("coaching-show-again"), (event) => act(event.currentTarget, "put-back"), { class: "small" }) : null;
}

/** Points for an answer to a question. */
function marking(reply, told, again) {
  const marked = reply.settled === "judged";
  const worth = make("input", {
    type: "number",
    min: 0,
    max: 5,
    step: 0.5,
    value: marked ? String(Math.round(reply.points * 100) / 100) : "5",
    "aria-label": say("coaching-points-for-answer", { name: reply.name }),
  });
  const words = make("input", { maxlength: 1000, id: `word-${reply.reply}`, placeholder: say("coaching-word-placeholder"), "aria-label": say("coaching-word-to", { name: reply.name }) });
  return make(
    "details",
    { class: "more" },
    make("summary", {}, marked ? say("coaching-mark-again") : say("coaching-mark-more")),
    make(
      "div",
      { class: "row" },
      worth,
      words,
      button(say("coaching-mark"), (event) =>
        careful(event.currentTarget, told, async () => {
          const value = Number(worth.value);
          if (worth.value === "" || !(value >= 0 && value <= 5)) throw new Error(say("coaching-points-range"));
          await post(`/api/coach/replies/${reply.reply}/mark`, { points: value, words: words.value });
          leaveField();
          await again();
        }),
      ),
    ),
  );
}

/** Whether an answer is to be shown to the group, and what its writer says to that. */
function showing(reply, act) {
  const { example } = reply;
  const words = make("textarea", { id: `beside-${reply.reply}`, rows: 2, maxlength: 1000, "aria-label": say("coaching-beside", { name: reply.name }), placeholder: say("coaching-beside-placeholder") });
  words.value = example?.words ?? "";
  const send = (event, path) => {
    const control = event.currentTarget;
    leaveField();
    return act(control, path, { words: words.value });
  };
  if (example?.leave === "refused") return make("p", { class: "help" }, say("coaching-leave", { leave: "refused" }));
  return make(
    "details",
    { class: "more showing" },
    make("summary", {}, example ? say("coaching-leave", { leave: example.leave ?? "none" }) : say("coaching-show-more")),
    make("p", { class: "help" }, say("coaching-show-what")),
    words,
    make(
      "div",
      { class: "row" },
      button(example ? say("coaching-beside-change") : say("coaching-ask-leave"), (event) => send(event, "show")),
      example ? button(say("coaching-no-longer-show"), (event) => send(event, "no-longer-show")) : null,
    ),
  );
}

/** A verdict by hand: on what was judged it overrules, on what was not it is the first. */
function judging(reply, told, again) {
  const judged = reply.settled === "judged";
  const verdict = choice(VERDICTS.map((name) => [name, verdictName(name)]), judged ? reply.verdict : "solved", {
    "aria-label": say("coaching-verdict-on", { name: reply.name }),
  });
  const worth = make("input", {
    type: "number",
    min: 0,
    max: 5,
    step: 0.5,
    value: judged ? String(Math.round(reply.points * 100) / 100) : "5",
    "aria-label": say("coaching-points-for", { name: reply.name }),
  });
  const words = make("input", { maxlength: 1000, id: `word-${reply.reply}`, placeholder: say("coaching-word-placeholder"), "aria-label": say("coaching-word-to", { name: reply.name }) });
  return make(
    "details",
    { class: "more" },
    make("summary", {}, judged ? say("coaching-overrule-more") : say("coaching-judge-more")),
    make(
      "div",
      { class: "row" },
      verdict,
      worth,
      words,
      button(judged ? say("coaching-overrule") : say("coaching-judge"), (event) =>
        careful(event.currentTarget, told, async () => {
          const value = Number(worth.value);
          if (worth.value === "" || !(value >= 0 && value <= 5)) throw new Error(say("coaching-points-range"));
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
  const words = make("textarea", {
    id: `answer-${reply.reply}`,
    rows: 2,
    maxlength: 1500,
    "aria-label": say("coaching-answer-to", { name: reply.name }),
    placeholder: say("coaching-only-reads", { name: reply.name }),
  });
  const settle = (event, path, content) => {
    const control = event.currentTarget;
    leaveField();
    return act(control, path, content);
  };
  return [
    make(
      "details",
      { class: "more" },
      make("summary", {}, reply.settled === "answered" ? say("coaching-answer-again") : say("coaching-answer-privately")),
      words,
      make("div", { class: "row" }, button(say("coaching-send-answer"), (event) => settle(event, "answer", { words: words.value }))),
    ),
    reply.settled === "unjudged" ? button(say("coaching-no-answer"), (event) => settle(event, "no-answer"), { class: "small" }) : null,
  ].filter(Boolean);
}
