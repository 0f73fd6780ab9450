// @ts-check
// Setting a position up: pieces from a palette onto the board, and what a FEN says besides. A FEN is only taken
// apart and put together here; whether the position can be is for the server to say.

import { all, button, choice, field, fresh, make } from "./build.js";
import { pieceImage, pieceName } from "./board.js";
import { say } from "./words.js";

/** @typedef {import("./board.js").Placement} Placement */
/** @typedef {{ placement: Placement, side: string, castling: string, passing: string, clocks: string }} Setup */

const START = "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1";
const PIECES = [..."KQRBNPkqrbnp"];
const FILES = [..."abcdefgh"];

/**
 * A FEN taken apart; null where its first field is no board. An empty one is the initial position.
 * @param {string} fen
 * @returns {Setup | null}
 */
export function takeApart(fen) {
  const fields = (fen.trim() || START).split(/\s+/);
  const rows = fields[0].split("/");
  if (rows.length !== 8) return null;
  /** @type {Placement} */
  const placement = {};
  for (const [at, row] of rows.entries()) {
    let file = 0;
    for (const letter of row) {
      if (PIECES.includes(letter)) {
        if (file < 8) placement[FILES[file] + String(8 - at)] = letter;
        file += 1;
      } else if ("12345678".includes(letter)) file += Number(letter);
      else return null;
    }
    if (file !== 8) return null;
  }
  return {
    placement,
    side: fields[1] === "b" ? "b" : "w",
    castling: /^[KQkq]+$/.test(fields[2] ?? "") ? fields[2] : "-",
    passing: /^[a-h][36]$/.test(fields[3] ?? "") ? fields[3] : "-",
    clocks: /^\d+ \d+$/.test(fields.slice(4, 6).join(" ")) ? fields.slice(4, 6).join(" ") : "0 1",
  };
}

/**
 * The same put together.
 * @param {Setup} setup
 */
export function putTogether({ placement, side, castling, passing, clocks }) {
  const rows = [..."87654321"].map((rank) => {
    let row = "";
    let empty = 0;
    for (const file of FILES) {
      const letter = placement[file + rank];
      if (letter && empty) row += String(empty);
      empty = letter ? 0 : empty + 1;
      row += letter ?? "";
    }
    return empty ? row + String(empty) : row;
  });
  return `${rows.join("/")} ${side} ${castling || "-"} ${passing || "-"} ${clocks}`;
}

/**
 * The tools for setting up, beside a board.
 * @param {import("./board.js").Board} board
 * @param {{ fen(): string, change(fen: string): void }} position what stands there, and what to do with another one
 */
export function setUp(board, position) {
  /** @type {string} A letter of FEN, `-` for the rubber, or empty for the hand. */
  let tool = "";
  const setup = () => takeApart(position.fen()) ?? /** @type {Setup} */ (takeApart("8/8/8/8/8/8/8/8 w - - 0 1"));
  const change = (to) => position.change(putTogether({ ...setup(), ...to }));
  const place = (square, letter) => {
    const { placement } = setup();
    change({ placement: { ...placement, [square]: letter } });
  };
  const remove = (square) => {
    const placement = { ...setup().placement };
    if (!placement[square]) return;
    delete placement[square];
    change({ placement });
    board.tell(say("editor-square-empty", { square }));
  };
  const uses = {
    mayPick: (square) => tool === "" && Boolean(setup().placement[square]),
    press: (square) => {
      if (tool === "-") remove(square);
      else if (tool) {
        // The same piece once more takes it away again.
        if (setup().placement[square] === tool) remove(square);
        else {
          place(square, tool);
          board.tell(say("editor-square-holds", { piece: pieceName(tool), square }));
        }
      }
    },
    move: (from, to) => {
      const placement = { ...setup().placement };
      const letter = placement[from];
      delete placement[from];
      placement[to] = letter;
      change({ placement });
      board.tell(say("editor-square-holds", { piece: pieceName(letter), square: to }));
    },
    out: remove,
    empty: remove,
  };

  const group = make("div", { class: "palette", role: "radiogroup", "aria-label": say("editor-palette") });
  const tools = [["", say("editor-hand")], ["-", say("editor-rubber")], ...PIECES.map((letter) => [letter, say("editor-piece", { piece: pieceName(letter) })])];
  const take = (wanted) => {
    tool = wanted;
    board.drop();
    for (const one of all("[role=radio]", group)) {
      const on = one.dataset.tool === wanted;
      one.setAttribute("aria-checked", String(on));
      one.tabIndex = on ? 0 : -1;
    }
  };
  for (const [letter, label] of tools) {
    const piece = PIECES.includes(letter);
    const one = make(
      "button",
      { type: "button", class: piece ? "tool" : "tool wide", role: "radio", "data-tool": letter, "aria-label": label, title: piece ? label : null, onclick: () => take(letter) },
      piece ? pieceImage(letter) : label,
    );
    if (piece) {
      one.addEventListener("pointerdown", (event) => {
        if (event.button !== 0) return;
        board.carry(event, letter, { ended: (to) => to && place(to, letter) });
      });
    }
    group.append(one);
  }
  group.addEventListener("keydown", (event) => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (!step) return;
    event.preventDefault();
    const buttons = all("[role=radio]", group);
    const at = buttons.findIndex((one) => one === document.activeElement);
    const next = buttons[(at + step + buttons.length) % buttons.length];
    take(next.dataset.tool ?? "");
    next.focus();
  });
  take("");

  const fen = make("input", { id: fresh("fen"), class: "fen", spellcheck: "false", autocomplete: "off", maxlength: 1000 });
  fen.addEventListener("input", () => position.change(fen.value));
  const side = choice([["w", say("editor-white")], ["b", say("editor-black")]], "w", { id: fresh("side") });
  side.addEventListener("change", () => change({ side: side.value }));
  const rights = [..."KQkq"].map((letter) => {
    const box = make("input", { type: "checkbox", id: fresh("castling"), value: letter });
    box.addEventListener("change", () => change({ castling: boxes.filter((one) => one.checked).map((one) => one.value).join("") }));
    return { box, label: make("label", {}, box, " ", say("editor-castling-of", { right: castlingOf(letter) })) };
  });
  const boxes = rights.map(({ box }) => box);
  const passing = choice([["-", say("editor-no-passing")], ...[..."36"].flatMap((rank) => FILES.map((file) => [file + rank, file + rank]))], "-", { id: fresh("passing") });
  passing.addEventListener("change", () => change({ passing: passing.value }));

  const element = make(
    "div",
    { class: "set-up" },
    group,
    make(
      "div",
      { class: "row" },
      button(say("editor-clear"), () => position.change("8/8/8/8/8/8/8/8 w - - 0 1"), { class: "small" }),
      button(say("editor-initial"), () => position.change(START), { class: "small" }),
    ),
    make("div", { class: "fields" }, field(say("editor-to-move"), side), field(say("editor-passing"), passing)),
    make("fieldset", { class: "castling" }, make("legend", {}, say("editor-castling")), rights.map(({ label }) => label)),
    field(say("editor-fen"), fen),
  );

  /** Shows what the position says besides its board; a field that is typed in stays as it is. */
  const show = () => {
    const now = setup();
    if (document.activeElement !== fen) fen.value = position.fen() || START;
    side.value = now.side;
    passing.value = now.passing;
    for (const box of boxes) box.checked = now.castling.includes(box.value);
  };
  return { element, uses, show };
}

/** What a letter of the castling field allows. */
const castlingOf = (letter) => ({ K: "white-short", Q: "white-long", k: "black-short", q: "black-long" })[letter] ?? "white-short";
