// @ts-check
// A chess board: squares that can be reached and pressed by mouse, finger and keyboard, and pieces that can be
// carried from one to another. It knows nothing of the rules; whoever uses it says what may be picked up, and what
// becomes of a move.

import { make } from "./build.js";
import { say } from "./words.js";

/**
 * Pieces by their squares: `{ e1: "K", e8: "k" }`, with the letters of FEN.
 * @typedef {Record<string, string>} Placement
 */

/**
 * What is done with a board.
 * @typedef {{
 *   mayPick(square: string): boolean,
 *   press(square: string): void,
 *   move(from: string, to: string): void,
 *   out?(from: string): void,
 *   drop?(piece: string, to: string): void,
 *   empty?(square: string): void,
 * }} Uses
 */

const FILES = [..."abcdefgh"];
const RANKS = [..."87654321"];
/** So far a pointer moves before it carries something, in pixels. */
const NEAR = 6;

/** The squares, from the upper left one on as White sees them. */
const SQUARES = RANKS.flatMap((rank) => FILES.map((file) => file + rank));

/** The name of a piece in the picture files and the messages: `wn` for a white knight. */
export const pieceName = (letter) => (letter === letter.toUpperCase() ? "w" : "b") + letter.toLowerCase();

/** The picture of a piece. */
export const pieceImage = (letter) =>
  make("img", { src: `/parts/pieces/${pieceName(letter)}.svg`, alt: "", draggable: "false", width: 64, height: 64 });

/** What is on a square, in words. */
const inWords = (square, letter) =>
  letter ? say("editor-square-holds", { piece: pieceName(letter), square }) : say("editor-square-empty", { square });

export class Board {
  /** @type {Map<string, HTMLButtonElement>} */
  #squares = new Map();
  /** @type {Placement} */
  #placement = {};
  /** @type {Set<string>} */
  #targets = new Set();
  /** @type {string[]} */
  #last = [];
  /** @type {string | null} */
  #picked = null;
  #turned = false;
  /** A carried piece was let go: the click that follows is no press. */
  #carried = false;
  /** @type {Uses} */
  #uses;
  #told = make("p", { class: "unseen", role: "status" });
  #grid = make("div", { class: "chess-board", role: "grid" });
  element = make("div", { class: "board-box" }, this.#grid, this.#told);

  /**
   * @param {string} label what the board is called
   * @param {Uses} uses
   */
  constructor(label, uses) {
    this.#uses = uses;
    this.#grid.setAttribute("aria-label", label);
    for (const square of SQUARES) {
      const dark = (FILES.indexOf(square[0]) + Number(square[1])) % 2 === 1;
      const button = make("button", {
        type: "button",
        class: dark ? "square dark" : "square",
        role: "gridcell",
        "data-square": square,
        tabindex: square === "e4" ? "0" : "-1",
      });
      this.#squares.set(square, button);
    }
    this.#lay();
    this.#draw();
    this.#grid.addEventListener("click", (event) => this.#click(event));
    this.#grid.addEventListener("keydown", (event) => this.#key(event));
    this.#grid.addEventListener("pointerdown", (event) => this.#down(event));
    this.#grid.addEventListener("focusin", (event) => this.#reach(this.#at(event.target)));
  }

  /**
   * Shows a position. What was picked up stays so while its piece stands there.
   * @param {Placement} placement
   * @param {string[]} last squares of the last move
   */
  show(placement, last = []) {
    this.#placement = placement;
    this.#last = last;
    if (this.#picked && !placement[this.#picked]) this.#picked = null;
    if (!this.#picked) this.#targets = new Set();
    this.#draw();
  }

  /** What tells more of the board, by its id. */
  describedBy(id) {
    this.#grid.setAttribute("aria-describedby", id);
  }

  /** Another use of the same board. @param {Uses} uses */
  use(uses) {
    this.#uses = uses;
    this.drop();
  }

  /** Where the piece that is picked up can go, to be shown. @param {string[]} squares */
  targets(squares) {
    this.#targets = new Set(squares);
    this.#draw();
  }

  /** What is picked up. */
  get picked() {
    return this.#picked;
  }

  /** Says something to those who do not see the board. */
  tell(text) {
    this.#told.textContent = text;
  }

  /** Picks a piece up. */
  pick(square) {
    this.#picked = square;
    this.tell(say("editor-picked", { what: inWords(square, this.#placement[square]) }));
    this.#draw();
  }

  /** Puts down what is picked up where it was. */
  drop() {
    this.#picked = null;
    this.#targets = new Set();
    this.#draw();
  }

  /** Turns the board round. */
  flip() {
    this.#turned = !this.#turned;
    const focused = document.activeElement;
    this.#lay();
    if (focused instanceof HTMLElement && this.#grid.contains(focused)) focused.focus({ preventScroll: true });
  }

  #lay() {
    const order = this.#turned ? [...SQUARES].reverse() : SQUARES;
    const rows = RANKS.map((_, row) =>
      make(
        "div",
        { class: "board-rank", role: "row" },
        order.slice(row * 8, row * 8 + 8).map((square) => this.#squares.get(square)),
      ),
    );
    this.#grid.replaceChildren(...rows);
    order.forEach((square, at) => {
      const button = /** @type {HTMLElement} */ (this.#squares.get(square));
      button.dataset.file = at >= 56 ? square[0] : "";
      button.dataset.rank = at % 8 === 0 ? square[1] : "";
    });
  }

  #draw() {
    for (const [square, button] of this.#squares) {
      const letter = this.#placement[square] ?? "";
      if (button.dataset.piece !== letter) {
        button.dataset.piece = letter;
        button.replaceChildren(...(letter ? [pieceImage(letter)] : []));
      }
      const may = this.#targets.has(square);
      const what = inWords(square, letter);
      button.setAttribute("aria-label", may ? say("editor-square-target", { what }) : what);
      button.setAttribute("aria-selected", String(square === this.#picked));
      button.classList.toggle("has", Boolean(letter));
      button.classList.toggle("picked", square === this.#picked);
      button.classList.toggle("target", may);
      button.classList.toggle("last", this.#last.includes(square));
    }
  }

  /** The square of an element. @returns {string | null} */
  #at(element) {
    const button = element instanceof Element ? element.closest(".square") : null;
    return button instanceof HTMLElement && this.#grid.contains(button) ? (button.dataset.square ?? null) : null;
  }

  /** The one square that the Tab key comes to. */
  #reach(square) {
    if (!square) return;
    for (const [name, button] of this.#squares) button.tabIndex = name === square ? 0 : -1;
  }

  #click(event) {
    const square = this.#at(event.target);
    if (this.#carried) {
      this.#carried = false;
      return;
    }
    if (square) this.#press(square);
  }

  #press(square) {
    const from = this.#picked;
    if (from === square) {
      this.drop();
      this.tell(say("editor-put-back"));
    } else if (from) {
      this.drop();
      this.#uses.move(from, square);
    } else if (this.#uses.mayPick(square)) {
      this.pick(square);
      this.#uses.press(square);
    } else this.#uses.press(square);
  }

  #key(event) {
    const square = this.#at(event.target);
    if (!square) return;
    const turned = this.#turned ? -1 : 1;
    const [file, rank] = [FILES.indexOf(square[0]), Number(square[1]) - 1];
    const go = (right, up) => {
      const to = FILES[file + right * turned] + String(rank + up * turned + 1);
      event.preventDefault();
      this.#squares.get(to)?.focus();
    };
    switch (event.key) {
      case "ArrowLeft":
        go(-1, 0);
        break;
      case "ArrowRight":
        go(1, 0);
        break;
      case "ArrowUp":
        go(0, 1);
        break;
      case "ArrowDown":
        go(0, -1);
        break;
      case "Escape":
        if (!this.#picked) return;
        this.drop();
        this.tell(say("editor-put-back"));
        break;
      case "Delete":
      case "Backspace":
        if (!this.#uses.empty) return;
        this.drop();
        this.#uses.empty(square);
        break;
      default:
        return;
    }
    event.preventDefault();
  }

  #down(event) {
    this.#carried = false;
    const from = this.#at(event.target);
    if (!from || event.button !== 0 || !this.#placement[from] || !this.#uses.mayPick(from)) return;
    this.carry(event, this.#placement[from], {
      begun: () => {
        if (this.#picked !== from) {
          this.pick(from);
          this.#uses.press(from);
        }
      },
      ended: (to) => {
        // The click comes right after, if it comes at all.
        this.#carried = true;
        setTimeout(() => {
          this.#carried = false;
        }, 0);
        this.drop();
        if (to && to !== from) this.#uses.move(from, to);
        else if (!to) this.#uses.out?.(from);
      },
    });
  }

  /**
   * Carries a piece with the pointer, from this board or from beside it.
   * @param {PointerEvent} event that began it
   * @param {string} letter
   * @param {{ begun?(): void, ended(to: string | null): void }} then
   */
  carry(event, letter, then) {
    const [x, y] = [event.clientX, event.clientY];
    /** @type {HTMLElement | null} */
    let ghost = null;
    const move = (over) => {
      if (!ghost) {
        if (Math.hypot(over.clientX - x, over.clientY - y) < NEAR) return;
        const side = /** @type {HTMLElement} */ (this.#squares.get("e4")).offsetWidth;
        ghost = make("div", { class: "carried-piece", "aria-hidden": "true" }, pieceImage(letter));
        ghost.style.width = `${side}px`;
        ghost.style.height = `${side}px`;
        document.body.append(ghost);
        then.begun?.();
      }
      ghost.style.transform = `translate(${over.clientX}px, ${over.clientY}px) translate(-50%, -50%)`;
    };
    const end = (over) => {
      removeEventListener("pointermove", move);
      removeEventListener("pointerup", end);
      removeEventListener("pointercancel", end);
      if (!ghost) return;
      ghost.remove();
      if (over.type === "pointercancel") this.drop();
      else then.ended(this.#at(document.elementFromPoint(over.clientX, over.clientY)));
    };
    addEventListener("pointermove", move);
    addEventListener("pointerup", end);
    addEventListener("pointercancel", end);
  }
}
