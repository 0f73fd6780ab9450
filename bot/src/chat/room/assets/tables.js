// @ts-check
// Tables of figures.

import { make } from "./build.js";
import { amount, say } from "./words.js";

/**
 * A table. A column that is a `name` heads its row, one that is a `number` stands to the right.
 * @template Row
 * @param {string} caption
 * @param {{ title: string, of: (row: Row) => string, name?: boolean, number?: boolean }[]} columns
 * @param {Row[]} rows
 * @param {(row: Row) => string | null} classOf
 */
export function table(caption, columns, rows, classOf = () => null) {
  const head = columns.map(({ title, number }) => make("th", { scope: "col", class: number ? "n" : null }, title));
  const body = rows.map((row) =>
    make(
      "tr",
      { class: classOf(row) },
      columns.map(({ of, number, name }) => {
        const value = of(row);
        const attributes = { class: number ? "n" : null };
        return name
          ? make("th", { scope: "row", ...attributes }, value)
          : make("td", attributes, value);
      }),
    ),
  );
  return make(
    "div",
    { class: "wide", tabindex: "0", role: "group", "aria-label": caption },
    make(
      "table",
      {},
      make("caption", {}, caption),
      make("thead", {}, make("tr", {}, head)),
      make("tbody", {}, body),
    ),
  );
}

/** A column of questions answered, where there were any. */
export const questions = (rows) =>
  rows.some((row) => row.answered) ? [{ title: say("room-questions"), of: (row) => amount(row.answered), number: true }] : [];

/** The leaderboard. `me` is the reader's own name. */
export function leaderboard(board, me) {
  return table(
    board.topic ? say("room-board-topic", { topic: board.topic }) : say("room-board-all"),
    [
      { title: say("room-rank"), of: (row) => amount(row.rank), number: true },
      { title: say("room-name"), of: (row) => row.name, name: true },
      { title: say("room-points"), of: (row) => amount(row.points), number: true },
      { title: say("room-solved"), of: (row) => (row.tried ? say("room-solved-of", { solved: row.solved, tried: row.tried }) : ""), number: true },
      ...questions(board.rows),
    ],
    board.rows,
    (row) => (row.name === me ? "me" : null),
  );
}

/** Figures by topic. */
export function byTopic(caption, topics) {
  return table(
    caption,
    [
      { title: say("room-topic"), of: (row) => row.topic ?? say("room-no-topic"), name: true },
      { title: say("room-tried"), of: (row) => amount(row.tried), number: true },
      { title: say("room-solved"), of: (row) => amount(row.solved), number: true },
      { title: say("room-first-try"), of: (row) => amount(row.first_try), number: true },
      ...questions(topics),
    ],
    topics,
  );
}
