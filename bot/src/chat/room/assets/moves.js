// @ts-check
// Moves entered on a board or typed, with side lines, words and signs. The server says what can be played.

import { careful, post } from "./ask.js";
import { button, choice, field, fill, fresh, make } from "./build.js";
import { takeApart } from "./setup.js";
import { branch, cut, play, promote, sans } from "./tree.js";
import { moves as inLetters, say } from "./words.js";

/** @typedef {import("./tree.js").Node} Node */

/** Signs on a move and on what it leads to, by their numbers (PGN standard, section 10). */
const ON_MOVE = [[1, "!"], [2, "?"], [3, "!!"], [4, "??"], [5, "!?"], [6, "?!"], [7, "\u25a1"]];
const ON_POSITION = [[10, "="], [13, "\u221e"], [14, "\u2a72"], [15, "\u2a71"], [16, "\u00b1"], [17, "\u2213"], [18, "+-"], [19, "-+"], [22, "\u2a00"], [36, "\u2191"], [40, "\u2192"], [132, "\u21c6"], [44, "=\u221e"], [146, "N"]];
const SIGNS = new Map(/** @type {[number, string][]} */ ([...ON_MOVE, ...ON_POSITION]));

/** What was asked of the server, by what was asked. @type {Map<string, any>} */
const known = new Map();

async function stands(fen, line) {
  const key = JSON.stringify([fen, line]);
  const before = known.get(key);
  if (before) return before;
  const found = await post("/api/coach/board", { fen, line });
  if (known.size > 500) known.clear();
  known.set(key, found);
  return found;
}

/** Signs as they stand behind a move. */
const signsOf = (nags) => nags.map((nag) => SIGNS.get(nag) ?? `$${nag}`).join("");

/**
 * The tools for moves, beside a board.
 * @param {import("./board.js").Board} board
 * @param {{
 *   fen(): string, root(): Node, at(): Node, go(to: Node): void, changed(): void, before(): void, stops(): boolean,
 * }} position what the moves start from, their tree, which one the board stands at, and what to do with a change:
 *   `before` it and when it is there; `stops` says whether members can be asked for moves
 */
export function enterMoves(board, position) {
  const trouble = make("p", { class: "trouble", role: "alert" });
  const notation = make("div", { class: "notation", role: "group", "aria-label": say("editor-moves") });
  const about = make("div", { class: "about-move" });
  const typed = make("input", { id: fresh("typed"), class: "typed-move", spellcheck: "false", autocomplete: "off", autocapitalize: "off", maxlength: 40 });
  /** @type {any} What the server last said of the board. */
  let now = null;
  /** Counts what was asked, so that an answer that comes too late is not shown. */
  let asked = 0;

  const uses = {
    mayPick: (square) => Boolean(now?.legal.some((one) => one.from === square)),
    press: (square) => {
      if (board.picked === square) board.targets(now?.legal.filter((one) => one.from === square).map((one) => one.to) ?? []);
    },
    move: async (from, to) => {
      const fits = now?.legal.filter((one) => one.from === from && one.to === to) ?? [];
      if (!fits.length) {
        // Another piece of the same side is picked up instead.
        if (uses.mayPick(to)) {
          board.pick(to);
          uses.press(to);
        } else board.tell(say("editor-not-legal"));
        return;
      }
      const one = fits.length > 1 ? await become(fits) : fits[0];
      if (one) entered(one.san);
    },
  };

  /** A move behind the one that the board stands at. */
  function entered(san) {
    const isThere = position.at().next.some((one) => one.san === san);
    if (!isThere) position.before();
    const one = play(position.at(), san);
    position.go(one);
    if (!isThere) position.changed();
    board.tell(say("editor-played", { move: inLetters(san) }));
    show();
  }

  /** Shows the position of the move that is chosen, and the moves around it. */
  async function show() {
    draw();
    asked += 1;
    const mine = asked;
    try {
      const found = await stands(position.fen(), sans(position.at()));
      if (mine !== asked) return;
      now = found;
      trouble.textContent = "";
      board.show(takeApart(found.fen)?.placement ?? {}, found.last ?? []);
    } catch (error) {
      if (mine !== asked) return;
      now = null;
      trouble.textContent = error.message;
      board.show(takeApart(position.fen())?.placement ?? {});
    }
  }

  function draw() {
    drawLines();
    drawAbout();
  }

  /** The moves, with the words beside them. */
  function drawLines() {
    const root = position.root();
    const start = moveButton(root, say("editor-start"));
    fill(
      notation,
      start,
      root.next.length ? lineOf(root.next[0], true) : make("p", { class: "help" }, say("editor-no-moves")),
    );
  }

  /** A move that can be chosen. @param {Node} one */
  function moveButton(one, label) {
    const here = position.at() === one;
    return button(label, () => {
      position.go(one);
      show();
    }, { id: `move-${one.id}`, class: here ? "move here" : "move", "aria-current": here ? "true" : null });
  }

  /** A line of the tree as elements. @param {Node} first @param {boolean} main @returns {any[]} */
  function lineOf(first, main) {
    const out = [];
    let number = true;
    for (let at = first; at; at = at.next[0]) {
      if (at.before) out.push(make("span", { class: "said" }, at.before));
      out.push(moveButton(at, `${numberOf(at, number || Boolean(at.before))}${inLetters(at.san)}${signsOf(at.nags)}`));
      if (at.stop !== null && position.stops()) out.push(make("span", { class: "stop-mark" }, at.stop ? say("editor-stop-task", { task: at.stop }) : say("editor-stop-here")));
      if (at.after) out.push(make("span", { class: "said" }, at.after));
      const others = at !== first || main ? (at.parent?.next.slice(1) ?? []) : [];
      for (const other of others) out.push(make("div", { class: "side-line" }, lineOf(other, false)));
      number = others.length > 0 || Boolean(at.after);
    }
    return out;
  }

  /** The number of a move, where it is to be said. @param {Node} one */
  function numberOf(one, wanted) {
    const setup = (position.fen().trim() || "- w - - 0 1").split(/\s+/);
    const black = setup[1] === "b" ? 1 : 0;
    const ply = sans(one).length - 1 + black;
    const number = (Number(setup[5]) || 1) + Math.floor(ply / 2);
    if (ply % 2 === 0) return `${number}.`;
    return wanted ? `${number}...` : "";
  }

  /** What can be done with the move that is chosen. */
  function drawAbout() {
    const one = position.at();
    if (!one.parent) {
      fill(about);
      return;
    }
    const words = (label, part) => {
      const area = make("textarea", { id: `${part}-${one.id}`, rows: 2 }, one[part]);
      area.addEventListener("input", () => {
        one[part] = area.value;
        position.changed();
        drawLines();
      });
      return field(label, area);
    };
    const sign = (label, signs, id) => {
      const shown = one.nags.find((nag) => signs.some(([own]) => own === nag));
      const select = choice([["", say("editor-no-sign")], ...signs.map(([nag, drawn]) => [nag, drawn])], shown ?? "", { id: `${id}-${one.id}` });
      select.addEventListener("change", () => {
        position.before();
        const rest = one.nags.filter((nag) => !signs.some(([own]) => own === nag));
        one.nags = select.value ? [...rest, Number(select.value)].sort((a, b) => a - b) : rest;
        position.changed();
        drawLines();
      });
      return field(label, select);
    };
    fill(
      about,
      make("h4", {}, say("editor-about-move", { move: `${numberOf(one, true)}${inLetters(one.san)}` })),
      make("div", { class: "fields" }, sign(say("editor-sign-move"), ON_MOVE, "sign-move"), sign(say("editor-sign-position"), ON_POSITION, "sign-position")),
      position.stops() ? stop(one) : null,
      words(say("editor-words-before"), "before"),
      words(say("editor-words-after"), "after"),
      make(
        "div",
        { class: "row" },
        branch(one) ? button(say("editor-promote"), () => change(() => promote(one)), { class: "small", id: "promote-line" }) : null,
        button(say("editor-cut"), () => change(() => position.go(cut(one))), { class: "small", id: "cut-line" }),
      ),
    );
  }

  /** Whether members are asked for a move, and what for. @param {Node} one */
  function stop(one) {
    const box = make("input", { type: "checkbox", id: `stop-${one.id}`, checked: one.stop !== null });
    const task = make("input", { id: `stop-task-${one.id}`, class: "task", value: one.stop ?? "", maxlength: 5, autocomplete: "off", spellcheck: "false", placeholder: "#2" });
    box.addEventListener("change", () => {
      position.before();
      one.stop = box.checked ? task.value : null;
      position.changed();
      drawLines();
    });
    task.addEventListener("input", () => {
      one.stop = task.value;
      box.checked = true;
      position.changed();
      drawLines();
    });
    return make(
      "div",
      { class: "fields" },
      make("div", {}, make("label", {}, box, " ", say("editor-stop"))),
      field(say("editor-task"), task),
    );
  }

  function change(act) {
    position.before();
    act();
    position.changed();
    show();
    // What was pressed may be gone.
    if (document.activeElement === document.body) document.getElementById(`move-${position.at().id}`)?.focus();
  }

  const form = make(
    "form",
    { class: "fields type-move" },
    field(say("editor-type-move"), typed),
    make("button", { class: "small" }, say("editor-enter-move")),
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    if (!typed.value.trim()) return;
    careful(null, trouble, async () => {
      const found = await post("/api/coach/board", { fen: position.fen(), line: sans(position.at()), typed: typed.value });
      entered(found.line.at(-1));
      typed.value = "";
      typed.focus();
    });
  });

  const step = (to) => {
    if (!to) return;
    position.go(to);
    show();
  };
  const element = make(
    "div",
    { class: "enter-moves" },
    make(
      "div",
      { class: "row" },
      button(say("editor-back"), () => step(position.at().parent), { class: "small", id: fresh("back") }),
      button(say("editor-on"), () => step(position.at().next[0]), { class: "small", id: fresh("on") }),
    ),
    form,
    trouble,
    notation,
    about,
  );
  return { element, uses, show };
}

/** Asks what a pawn becomes; nothing where the asking is broken off. */
function become(fits) {
  return new Promise((resolve) => {
    const title = fresh("become");
    const dialog = make(
      "dialog",
      { "aria-labelledby": title },
      make("p", { id: title }, say("editor-become")),
      make(
        "div",
        { class: "row" },
        fits.map((one) => button(say("editor-become-what", { piece: one.promotion }), () => dialog.close(one.san), { class: one.promotion === "q" ? "first" : "" })),
        button(say("room-cancel"), () => dialog.close("")),
      ),
    );
    dialog.addEventListener("close", () => {
      dialog.remove();
      resolve(fits.find((one) => one.san === dialog.returnValue) ?? null);
    });
    document.body.append(dialog);
    dialog.showModal();
  });
}

