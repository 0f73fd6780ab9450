// @ts-check
// What the page says, in its language: messages in FTL, put into words by Project Fluent's own library.
// Every other script asks here; none has sentences of its own.

import { FluentBundle, FluentResource } from "./fluent/index.js";

/** The page's language, as the server chose it. */
const PAGE = document.documentElement.lang;
/** What everything is said in that the page's language lacks. */
const FIRST = "en";
/** How long to wait before the words are asked for again, in milliseconds. */
const AGAIN = 2000;

/**
 * The language of dates and numbers: the reader's own kind of the page's language, where the browser names
 * one. English without a country writes day and hour as Britain does.
 */
export const LOCALE =
  navigator.languages.find((tag) => tag.split("-")[0] === PAGE.split("-")[0]) ?? (PAGE === "en" ? "en-GB" : PAGE);

/** @param {string} tag */
async function load(tag) {
  const answer = await fetch(`/words/${tag}.ftl`, { credentials: "same-origin" });
  if (!answer.ok) throw new Error(`${answer.status}`);
  // Marks of direction would stand around every value; people's words get them where they matter.
  const bundle = new FluentBundle(tag === PAGE ? [LOCALE, tag] : tag, { useIsolating: false });
  bundle.addResource(new FluentResource(await answer.text()));
  return bundle;
}

/** All words, as soon as they can be had; until then the page says what the server wrote for that. */
async function loaded() {
  const tags = PAGE === FIRST ? [FIRST] : [PAGE, FIRST];
  const state = document.getElementById("link-state");
  for (;;) {
    try {
      const bundles = await Promise.all(tags.map(load));
      if (state) state.textContent = "";
      return bundles;
    } catch {
      if (state) state.textContent = state.dataset.unreachable ?? "";
      await new Promise((resolve) => {
        setTimeout(resolve, AGAIN);
      });
    }
  }
}

const bundles = await loaded();

/** Letters that run from right to left, and marks that make others do so. */
const BACKWARDS = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufeff\u202b\u202e\u2067]/;

/** People's words in marks that keep them from turning what stands around them. */
const kept = (value) => (typeof value === "string" && BACKWARDS.test(value) ? `\u2068${value}\u2069` : value);

/**
 * The message with this id, with its values. A number is written as the language writes numbers, and
 * chooses among plurals; what only names something, such as the number of a post, is given as text.
 * @param {string} id
 * @param {Record<string, string | number>} values
 */
export function say(id, values = {}) {
  const safe = Object.fromEntries(Object.entries(values).map(([name, value]) => [name, kept(value)]));
  for (const bundle of bundles) {
    const message = bundle.getMessage(id);
    if (message?.value) return bundle.formatPattern(message.value, safe, []);
  }
  return id;
}

/** Stands on both sides of an element's place in a message; no text of people's may hold it. */
const MARK = "\ue000";

/**
 * The same where some of the values are elements: what stands between them, and they themselves.
 * @param {string} id
 * @param {Record<string, string | number | Node>} values
 * @returns {(string | Node)[]}
 */
export function sayAround(id, values) {
  /** @type {Node[]} */
  const elements = [];
  const plain = Object.entries(values).map(([name, value]) => {
    if (value instanceof Node) return [name, `${MARK}${elements.push(value) - 1}${MARK}`];
    return [name, typeof value === "string" ? value.replaceAll(MARK, "") : value];
  });
  const parts = say(id, Object.fromEntries(plain)).split(MARK);
  return parts.map((part, at) => (at % 2 ? elements[Number(part)] : part));
}

/** A number as the language writes it, with at most two decimals. */
export const amount = (n) => new Intl.NumberFormat(LOCALE, { maximumFractionDigits: 2 }).format(n);

/** A share of a hundred, such as "43 %". */
export const percent = (part, whole) =>
  whole ? new Intl.NumberFormat(LOCALE, { style: "percent" }).format(part / whole) : "";

/** Names one after the other. */
export const listed = (names) => names.map(kept).join(", ");

/** All of several things: "12, 13 and 14". */
export const both = (names) => new Intl.ListFormat(LOCALE, { type: "conjunction" }).format(names.map(kept));

/** One of several things: "12, 13 or 14". */
export const either = (names) => new Intl.ListFormat(LOCALE, { type: "disjunction" }).format(names.map(kept));

/** A mating pattern, by what the program calls it, such as `back-rank`; a name that has no message stays. */
export function pattern(name) {
  const id = `pattern-${name}`;
  const said = say(id);
  return said === id ? name : said;
}

/** King, queen, rook, bishop and knight, as the page's language writes them. */
const LETTERS = [...say("piece-letters")];

/** Moves with the page's letters for the pieces; they come with the English ones. */
export const moves = (line) => line.replace(/[KQRBN]/g, (letter) => LETTERS["KQRBN".indexOf(letter)] ?? letter);
