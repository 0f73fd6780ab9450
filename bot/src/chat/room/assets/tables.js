// @ts-check
// Tables of figures.

import { make, points } from "./build.js";

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

/** The leaderboard. `me` is the reader's own name. */
export function leaderboard(board, me) {
  return table(
    board.topic ? `Points by member, ${board.topic}` : "Points by member, all topics",
    [
      { title: "Rank", of: (row) => String(row.rank), number: true },
      { title: "Name", of: (row) => row.name, name: true },
      { title: "Points", of: (row) => points(row.points), number: true },
      { title: "Solved", of: (row) => `${row.solved} of ${row.tried}`, number: true },
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
      { title: "Topic", of: (row) => row.topic, name: true },
      { title: "Tried", of: (row) => String(row.tried), number: true },
      { title: "Solved", of: (row) => String(row.solved), number: true },
      { title: "At first try", of: (row) => String(row.first_try), number: true },
    ],
    topics,
  );
}
