// @ts-check
// A move that is talked about, shown on a small board under its message.

import { careful, post } from "./ask.js";
import { button, choice, fill, make } from "./build.js";
import { inWords, numbered, numberedTopic } from "./post.js";
import { moves, say } from "./words.js";

/** What looks like a move: a square, or castling. Whether it is one the room says. */
const MOVE = /[a-h][1-8]|[O0]-[O0]/;

/** How many posts there are to choose from. */
const POSTS = 10;

/**
 * The way to the board under a line of talk, where a move may be written in it and something is revealed.
 * `rows()` gives the posts.
 * @param {any} line
 * @param {() => any[]} rows
 */
export function onBoard(line, rows) {
  if (!MOVE.test(line.text)) return [];
  const told = make("p", { class: "trouble", role: "status" });
  const place = make("div", { class: "on-board", "aria-live": "polite" });
  const show = (control, about) =>
    careful(control, told, async () => {
      const shown = await post(`/api/talk/${line.id}/board`, { post: about });
      fill(place, board(shown, others(shown, rows(), show)));
    });
  const ask = button(say("room-on-board"), (event) => show(event.currentTarget, null), { class: "small" });
  return [make("p", { class: "on-board-ask" }, ask), told, place];
}

/** The small board with the line that leads to it. */
function board({ number, before, line, picture }, choose) {
  return make(
    "figure",
    { class: "small-board" },
    make("img", { src: picture.src, alt: picture.alt, width: 360, height: 360 }),
    make(
      "figcaption",
      {},
      make("p", {}, numbered({ number }), " ", before ? make("span", { class: "line" }, `${moves(before)} `) : null, make("strong", { class: "line" }, moves(line))),
      choose,
      inWords(picture.alt),
    ),
  );
}

/** A choice of another post that the words may be about. */
function others(shown, rows, show) {
  const closed = rows.filter((row) => !row.open).slice(0, POSTS);
  if (closed.length < 2) return null;
  const select = choice(
    closed.map((row) => [row.post, numberedTopic(row)]),
    shown.post,
    { "aria-label": say("room-on-board-post") },
  );
  select.addEventListener("change", () => show(null, Number(select.value)));
  return make("p", {}, select);
}
