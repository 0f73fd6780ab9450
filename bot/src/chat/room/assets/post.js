// @ts-check
// A post and a reveal as everyone sees them.

import { careful, post as send } from "./ask.js";
import { button, fresh, make } from "./build.js";
import { leaderboard } from "./tables.js";
import { closing } from "./when.js";
import { listed, moves, pattern, say, sayAround } from "./words.js";

/** A post as everyone sees it: a problem, a question, or words alone. */
export function posted(post, { closes = true } = {}) {
  switch (post.kind) {
    case "problem":
      return problem(post, closes);
    case "question":
      return written(post, say("room-question"), closes);
    case "words":
      return written(post, null, false);
    default:
      throw new Error(say("room-load-again"));
  }
}

/** The number and topic of a post. */
const head = (post) =>
  make(
    "div",
    { class: "head" },
    make("span", { class: "number" }, post.number ? numbered(post) : say("room-preview")),
    post.topic ? make("span", { class: "topic" }, post.topic) : null,
    post.lesson ? make("span", { class: "lesson" }, lessonStep(post.lesson)) : null,
  );

const lessonStep = ({ title, step, steps }) =>
  say("room-lesson-step", { title, step: String(step), steps: String(steps) });


/** The diagram with its number and topic above and its task below. */
function problem(post, closes) {
  return make(
    "figure",
    { class: "problem" },
    head(post),
    make("img", { src: post.picture.src, alt: post.picture.alt, width: 720, height: 720 }),
    make(
      "figcaption",
      {},
      make("p", { class: "task" }, make("span", { class: "sign" }, post.stipulation), post.task),
      post.words ? make("p", { class: "coach-words" }, post.words) : null,
      leadOf(post),
      closes ? make("p", { class: "closes help" }, closing(post.closes_at)) : null,
      inWords(post.picture.alt),
    ),
  );
}

/** The coach's words with their picture, where there is one. */
function written(post, sign, closes) {
  return make(
    "figure",
    { class: `problem ${post.kind}` },
    head(post),
    post.picture ? make("img", { src: post.picture.src, alt: post.picture.alt, width: 720, height: 720 }) : null,
    make(
      "figcaption",
      {},
      sign ? make("p", { class: "task" }, make("span", { class: "sign" }, sign)) : null,
      make("p", { class: "coach-words" }, post.words),
      leadOf(post),
      closes ? make("p", { class: "closes help" }, closing(post.closes_at)) : null,
      post.picture ? inWords(post.picture.alt) : null,
    ),
  );
}

/** What stands for a post in a list. */
export const signOf = (row) => (row.kind === "problem" ? row.stipulation : say("room-kind", { kind: row.kind }));

/** The words that replace a picture, for everyone who would rather read it. */
export function inWords(alt, label = say("room-in-words")) {
  return make("details", { class: "words" }, make("summary", {}, label), make("p", {}, alt));
}

/** What closes a post: a problem's solution, or who answered a question. */
export function reveal(sheet, me) {
  switch (sheet.shows) {
    case "solution":
      return solution(sheet, me);
    case "answered":
      return answered(sheet, me);
    default:
      throw new Error(say("room-load-again"));
  }
}

/** The reader's own answer to a question and how it stands, where they gave one. */
export function ownAnswer({ answer, message, words, waiting, earlier, examples }, again = () => {}) {
  if (!answer && !examples.length) return null;
  return make(
    "div",
    { class: "own-answer" },
    make("h3", {}, say("room-your-answer")),
    make("p", { class: "words-of" }, answer),
    make("p", { class: "verdict-of" }, message),
    waiting ? make("p", { class: "help" }, say("room-answer-waits")) : null,
    words ? make("p", { class: "coach-words" }, words) : null,
    examples.map((example) => leave(example, answer, again)),
    earlier.length
      ? make("details", { class: "more" }, make("summary", {}, say("room-earlier-answers", { count: earlier.length })), earlier.map((text) => make("p", { class: "words-of" }, text)))
      : null,
  );
}

/** Whether an answer of the reader's may be shown to the group: what the coach asks, what they said, and the choice. */
function leave({ reply, text, words, leave: said }, answer, again) {
  const told = make("p", { class: "trouble", role: "alert" });
  const title = fresh("leave");
  const choose = (label, choice) =>
    said === choice
      ? null
      : button(label, (event) =>
          careful(event.currentTarget, told, async () => {
            await send(`/api/answers/${reply}/leave`, { leave: choice });
            await again();
          }),
        );
  return make(
    "div",
    { class: "leave", role: "group", "aria-labelledby": title },
    make("p", { id: title, role: "status" }, said ? say("room-leave-is", { leave: said }) : say("room-leave-asked")),
    text === answer ? null : make("p", { class: "words-of" }, text),
    words ? make("p", { class: "coach-words" }, say("room-leave-beside", { words })) : null,
    make(
      "div",
      { class: "row" },
      choose(say("room-leave-named"), "named"),
      choose(say("room-leave-nameless"), "nameless"),
      choose(said && said !== "refused" ? say("room-leave-withdraw") : say("room-leave-refused"), "refused"),
    ),
    make("p", { class: "caution" }, say("room-leave-care")),
    told,
  );
}

/** Answers that their writers allow the group to see. */
export function shownAnswers(examples) {
  if (!examples.length) return null;
  return make(
    "div",
    { class: "examples" },
    make("h4", {}, say("room-examples")),
    examples.map((example) =>
      make(
        "figure",
        { class: "example-of" },
        make("blockquote", { class: "words-of" }, example.text),
        make("figcaption", {}, example.name ? say("room-example-by", { name: example.name }) : say("room-example-nameless")),
        example.words ? make("p", { class: "coach-words" }, example.words) : null,
      ),
    ),
  );
}

/** The close of a question. Of what was answered only that is shown which its writer allows. */
function answered(sheet, me) {
  const title = fresh("reveal");
  return make(
    "article",
    { class: "reveal", "aria-labelledby": title },
    make("h3", { id: title }, say("room-question-closed", { number: String(sheet.post.number) })),
    make("p", { class: "coach-words" }, sheet.post.words),
    cardsOf(sheet),
    walkOf(sheet),
    sheet.at_reveal ? make("div", {}, make("h4", {}, say("room-coach-words")), make("p", { class: "coach-words" }, sheet.at_reveal)) : null,
    make("p", {}, sheet.answered.length ? say("room-answered-by", { names: listed(sheet.answered) }) : say("room-nobody-answered")),
    sheet.waiting ? make("p", { class: "help" }, say("room-answers-wait", { count: sheet.waiting })) : null,
    shownAnswers(sheet.examples),
    standings(sheet, me),
  );
}

function standings(sheet, me) {
  return sheet.leaderboard.rows.length
    ? make(
        "details",
        { class: "more" },
        make("summary", {}, sheet.leaderboard.topic ? say("room-leaders-topic", { topic: sheet.leaderboard.topic }) : say("room-leaders")),
        leaderboard(sheet.leaderboard, me),
      )
    : null;
}

function solution(sheet, me) {
  const wrong = sheet.common_wrong;
  const title = fresh("reveal");
  return make(
    "article",
    { class: "reveal", "aria-labelledby": title },
    make("h3", { id: title }, say("room-solution", { number: String(sheet.post.number) })),
    make("p", { class: "task" }, make("span", { class: "sign" }, sheet.post.stipulation), sheet.post.task),
    make("ol", { class: "solution" }, sheet.solution.map((line) => make("li", {}, lineOf(line)))),
    sheet.patterns.length ? make("p", {}, say("room-final-picture", { patterns: listed(sheet.patterns.map(pattern)) })) : null,
    cardsOf(sheet),
    walkOf(sheet),
    sheet.comment ? make("p", { class: "coach-words" }, sheet.comment) : null,
    sheet.notes.length ? notes(sheet.notes) : null,
    make(
      "figure",
      { class: "problem" },
      make("img", { src: sheet.picture.src, alt: sheet.picture.alt, loading: "lazy" }),
      make("figcaption", {}, inWords(sheet.picture.alt)),
    ),
    wrong ? make("p", {}, commonWrong(wrong)) : null,
    make("p", {}, solvers(sheet)),
    standings(sheet, me),
  );
}

/** The coach's own line with the words beside its moves, under a heading. */
export function notes(all) {
  return make("div", { class: "notes" }, make("h4", {}, say("room-notes")), noted(all));
}

/** The moves of a lesson that lead up to a post, or its example. */
const leadOf = (post) => (post.lesson?.lead.length ? make("div", { class: "notes lead" }, noted(post.lesson.lead)) : null);

/** The same, for a list of steps. */
export const leadIn = (lead) => (lead.length ? make("div", { class: "notes lead" }, noted(lead)) : null);

/** Moves with the words beside them; variations stand further in, in brackets. */
function noted(all) {
  return all.map((note, at) => {
    const next = all[at + 1];
    const opens = note.begins && note.depth > 0;
    // As many variations end here as the next note stands further out, its own beginning counted.
    const outer = !next ? 0 : next.begins && next.depth > 0 ? next.depth - 1 : next.depth;
    return make(
      "p",
      { class: `note depth-${Math.min(note.depth, 4)}` },
      opens ? "(" : "",
      note.before ? `${note.before} ` : "",
      make("strong", { class: "line" }, moves(note.moves)),
      note.after ? ` ${note.after}` : "",
      ")".repeat(Math.max(0, note.depth - outer)),
    );
  });
}

/** A line of the solution; where none was proved, what is said instead. */
const lineOf = (line) => (/^\d/.test(line) ? moves(line) : line);

function commonWrong({ san, count, refutation, why }) {
  const [move, line] = [moves(san), moves(refutation)];
  return why
    ? say("room-common-wrong-why", { move, count, line, why })
    : say("room-common-wrong", { move, count, line });
}

function solvers({ took_part: count, solved }) {
  if (count === 0) return say("room-nobody-took-part");
  return solved.length ? say("room-solved-by", { names: listed(solved), count }) : say("room-nobody-solved", { count });
}

/** The way to a card. */
export const cardLink = ({ card, title }) => make("a", { href: `#cards/${card}` }, title);

/** The way to the lesson that a post is a part of. */
const walkOf = ({ post }) => (post.lesson?.lesson ? make("p", { class: "walk-of" }, make("a", { href: `#lessons/${post.lesson.lesson}` }, say("room-walk-through"))) : null);

/** Where to read more of what a reveal shows. */
function cardsOf(sheet) {
  if (!sheet.cards.length) return null;
  const cards = make("span", {}, sheet.cards.map((card, at) => [at ? ", " : "", cardLink(card)]).flat());
  return make("p", { class: "cards-of" }, sayAround("room-cards-of", { count: sheet.cards.length, cards }));
}

/** "No. 3". */
export const numbered = ({ number }) => say("room-number", { number: String(number) });

/** "No. 3, back-rank mates"; of a question that it is one. */
export function numberedTopic({ number, topic, kind }) {
  const name = topic ? say("room-number-topic", { number: String(number), topic }) : numbered({ number });
  return kind === "question" ? say("room-number-question", { name }) : name;
}

/** A verdict in words. */
export const verdictName = (kind) => say("room-verdict", { verdict: kind ?? "none" });

/** What only this member sees of a reply of theirs. `mean` sends one of the readings that are asked about. */
export function verdict(judged, mean) {
  return [
    make("p", { class: "verdict" }, verdictName(judged.verdict)),
    make("p", { class: "verdict-of" }, judged.message),
    mean && judged.readings?.length ? readings(judged, mean) : null,
    judged.picture
      ? make(
          "figure",
          {},
          make("img", { src: judged.picture.src, alt: judged.picture.alt }),
          make("figcaption", {}, inWords(judged.picture.alt)),
        )
      : null,
    judged.your_move ? make("p", { class: "your-move" }, say("room-your-move")) : null,
  ];
}

/** The ways a doubtful reply may be meant, a button each. */
function readings(judged, mean) {
  const told = make("p", { class: "trouble", role: "alert" });
  return make(
    "div",
    { class: "readings", role: "group", "aria-label": say("room-mean"), "data-post": judged.post },
    judged.readings.map((line, i) =>
      button(say("room-i-mean", { line }), (event) => mean(event.currentTarget, judged.reply, i, told)),
    ),
    told,
  );
}
