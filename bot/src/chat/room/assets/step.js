// @ts-check
// A step of a lesson, or a position, in the editor: its words and fields, and the board with its two sets of tools.

import { post } from "./ask.js";
import { Board } from "./board.js";
import { button, choice, field, fill, fresh, make } from "./build.js";
import { enterMoves } from "./moves.js";
import { setUp, takeApart } from "./setup.js";
import { find, grow, lines, sans } from "./tree.js";
import { say } from "./words.js";

/** How long after the last change a position is asked about, in milliseconds. */
const PAUSE = 250;

/** A step with nothing in it. */
export const emptyStep = (kind) => ({ kind, id: "", fen: "", words: "", anyway: false, at_reveal: "", question: "", task: "", topic: "", contrast: false, moves: [], tags: [] });

/** What a kind of step is called. */
export const kindName = (kind) => say("editor-kind", { kind });

/**
 * The editor of a step. What it holds is written into `step` as it is typed, and `changed` is called.
 * @param {any} step
 * @param {{ position: boolean, changed(): void }} how whether it is a position by itself, with no kind and no stops
 */
export function stepEditor(step, { position, changed }) {
  let root = grow(step.moves);
  let at = root;
  let mode = step.moves.length ? "moves" : "set-up";
  /** @type {string[]} */
  let past = [];
  /** @type {string[]} */
  let coming = [];
  /** @type {number | undefined} */
  let waiting;
  let asked = 0;

  const state = () => JSON.stringify({ fen: step.fen, moves: lines(root), at: sans(at) });
  /** Keeps what was, before the position or the moves are changed. */
  const before = () => {
    const now = state();
    if (past.at(-1) !== now) past.push(now);
    past = past.slice(-200);
    coming = [];
  };
  const back = (kept) => {
    const { fen, moves, at: line } = JSON.parse(kept);
    step.fen = fen;
    step.moves = moves;
    root = grow(moves);
    at = find(root, line);
    changed();
    show();
  };
  const undo = button(say("editor-undo"), () => turn(past, coming), { class: "small", id: fresh("undo") });
  const redo = button(say("editor-redo"), () => turn(coming, past), { class: "small", id: fresh("redo") });
  const turn = (from, to) => {
    const kept = from.pop();
    if (!kept) return;
    to.push(state());
    back(kept);
    // What cannot be pressed any more loses the focus to the other.
    const left = document.activeElement;
    if (left === undo && undo.disabled) redo.focus();
    if (left === redo && redo.disabled) undo.focus();
  };

  const trouble = make("p", { class: "trouble", role: "status" });
  const odd = make("p", { class: "help", role: "status" });
  const none = { mayPick: () => false, press: () => {}, move: () => {} };
  const board = new Board(say("editor-board"), none);
  const tools = setUp(board, {
    fen: () => step.fen,
    change: (fen) => {
      before();
      step.fen = fen;
      changed();
      show();
    },
  });
  const moves = enterMoves(board, {
    fen: () => step.fen,
    root: () => root,
    at: () => at,
    go: (to) => {
      at = to;
    },
    before,
    changed: () => {
      step.moves = lines(root);
      changed();
      undo.disabled = !past.length;
      redo.disabled = !coming.length;
    },
    stops: () => !position && step.kind === "stop",
  });

  /** Asks whether the position can be, a moment after it was changed last. */
  function ask() {
    clearTimeout(waiting);
    asked += 1;
    const mine = asked;
    waiting = setTimeout(async () => {
      const told = await post("/api/coach/board", { fen: step.fen }).then(
        (found) => ({ wrong: "", odd: found.odd }),
        (error) => ({ wrong: error.message, odd: [] }),
      );
      if (mine !== asked) return;
      trouble.textContent = told.wrong;
      odd.textContent = told.odd.map((text) => say("coaching-note", { text })).join(" ");
    }, PAUSE);
  }

  const hasMoves = () => position || step.kind !== "words";
  const modes = make("div", { class: "modes row", role: "group", "aria-label": say("editor-tools") });
  const modeButton = (name, label) =>
    button(label, () => {
      mode = name;
      show();
    }, { class: mode === name ? "small here" : "small", "aria-pressed": String(mode === name), id: `mode-${name}` });

  /** The board and the tools as the step is now. */
  function show() {
    if (!hasMoves()) mode = "set-up";
    fill(modes, modeButton("set-up", say("editor-set-up")), hasMoves() ? modeButton("moves", say("editor-moves")) : null);
    undo.disabled = !past.length;
    redo.disabled = !coming.length;
    const own = mode === "moves" ? moves : tools;
    if (panel.firstElementChild !== own.element) {
      panel.replaceChildren(own.element);
      board.use(own.uses);
    }
    if (mode === "set-up") board.show(takeApart(step.fen)?.placement ?? {});
    own.show();
    noBoard.hidden = hasMoves() || Boolean(step.fen);
    ask();
  }

  const keys = make("p", { class: "help", id: fresh("keys") }, say("editor-keys"));
  board.describedBy(keys.id);
  const panel = make("div", { class: "tools" });
  const noBoard = make("p", { class: "help" }, say("editor-no-position"));
  const beside = make("div", { class: "fields-of-step" });

  /** A field of several lines that is kept as it is typed. */
  const area = (label, part) => {
    // What is too long is told, and not cut off.
    const text = make("textarea", { id: `step-${part}`, rows: 3 }, step[part]);
    text.addEventListener("input", () => {
      step[part] = text.value;
      changed();
    });
    return field(label, text);
  };
  const line = (label, part, attributes) => {
    const input = make("input", { id: `step-${part}`, value: step[part], ...attributes });
    input.addEventListener("input", () => {
      step[part] = input.value;
      changed();
    });
    return field(label, input);
  };
  const tick = (label, part) => {
    const box = make("input", { type: "checkbox", id: `step-${part}`, checked: step[part] });
    box.addEventListener("change", () => {
      step[part] = box.checked;
      changed();
    });
    return make("div", {}, make("label", {}, box, " ", label));
  };

  function fields() {
    const { kind } = step;
    const kinds = choice(["words", "example", "stop", "question"].map((name) => [name, kindName(name)]), kind, { id: "step-kind" });
    kinds.addEventListener("change", () => {
      step.kind = kinds.value;
      changed();
      fields();
      show();
    });
    const solved = position || kind === "stop";
    fill(
      beside,
      position ? null : field(say("editor-step-kind"), kinds),
      position ? null : make("p", { class: "help" }, say("editor-kind-what", { kind })),
      area(kind === "question" ? say("editor-asked") : say("editor-words"), "words"),
      solved ? tick(say("editor-anyway"), "anyway") : null,
      solved || kind === "question" ? area(say("editor-at-reveal"), "at_reveal") : null,
      make(
        "div",
        { class: "fields" },
        solved ? line(position ? say("editor-task") : say("editor-task-start"), "task", { class: "task", maxlength: 5, autocomplete: "off", spellcheck: "false", placeholder: "#2" }) : null,
        line(position ? say("room-topic") : say("editor-step-topic"), "topic", { list: "topics", maxlength: 80 }),
        position ? null : tick(say("editor-contrast"), "contrast"),
      ),
      solved ? make("p", { class: "help" }, position ? say("editor-task-what") : say("editor-task-start-what")) : null,
      !position && kind === "stop" ? line(say("editor-question-behind"), "question", {}) : null,
    );
  }

  const element = make(
    "div",
    { class: "step-editor" },
    beside,
    make(
      "div",
      { class: "board-work" },
      make("div", { class: "board-side" }, board.element, make("div", { class: "row" }, button(say("editor-flip"), () => board.flip(), { class: "small" }), undo, redo), noBoard, trouble, odd, keys),
      make("div", { class: "board-tools" }, modes, panel),
    ),
  );
  fields();
  show();
  return element;
}
