// @ts-check
// Topic cards: the list, and one card with its pictures and its relatives.

import { get } from "./ask.js";
import { fill, fresh, make } from "./build.js";
import { cardLink, inWords } from "./post.js";
import { moves, say } from "./words.js";

/** Members' cards: the one that is wanted, or all. */
export const openCards = (place, wanted) =>
  showCards(place, wanted, {
    list: "/api/cards",
    open: ({ held }) => !held,
    note: ({ held }) => (held ? say("room-card-held") : ""),
    above: () => [make("p", { class: "help" }, say("room-cards-what"))],
    below: () => [],
    mark: ({ by_coach }) => (by_coach ? say("room-card-coachs") : ""),
  });

/**
 * Shows the list, or the card that is wanted. What the two pages do differently stands in `page`: where the
 * cards are fetched, what stands above the list and below a card, and what is said of a row.
 * @param {HTMLElement} place
 * @param {string | undefined} wanted
 * @param {{ list: string, open: (row: any) => boolean, note: (row: any) => string, mark: (row: any) => string,
 *   above: (rows: any[]) => (Node | null)[], below: (card: any) => (Node | null)[] }} page
 */
export async function showCards(place, wanted, page) {
  const shown = place.dataset.shown;
  const now = wanted ?? "";
  place.dataset.shown = now;
  try {
    const content = wanted ? one(await get(`${page.list}/${wanted}`), page) : all(await get(page.list), page);
    // Another one may have been chosen in the meantime.
    if (place.dataset.shown !== now) return;
    fill(place, ...content);
  } catch (error) {
    if (place.dataset.shown !== now) return;
    fill(place, back(), make("p", { class: "trouble", role: "alert" }, error.message));
  }
  if (shown === undefined || shown === now) return;
  // Turned over from another card or from the list: reading begins at the top, or where the reader left the list.
  const left = wanted ? null : place.querySelector(`a[href="#cards/${shown}"]`);
  const first = left ?? place.querySelector("h3[tabindex]");
  if (first instanceof HTMLElement) first.focus({ preventScroll: left === null });
  if (wanted) window.scrollTo(0, 0);
}

/** The way back to the list. */
const back = () => make("p", {}, make("a", { href: "#cards" }, say("room-cards-all")));

function all(rows, page) {
  return [
    ...page.above(rows),
    make(
      "ul",
      { class: "card-list" },
      rows.map((row) =>
        make(
          "li",
          {},
          page.open(row) ? cardLink(row) : make("span", {}, row.title),
          page.mark(row) ? make("span", { class: "help" }, " ", page.mark(row)) : null,
          page.note(row) ? make("span", { class: "help held-note" }, " ", page.note(row)) : null,
        ),
      ),
    ),
  ];
}

/** One card: its words, its example, its relatives. */
function one(card, page) {
  const title = fresh("card");
  return [
    back(),
    make(
      "article",
      { class: "card", "aria-labelledby": title, "data-card": card.card },
      make("h3", { id: title, tabindex: "-1" }, card.title),
      make("p", { class: "words-of" }, card.definition),
      card.look ? [make("h4", {}, say("room-card-look")), make("p", { class: "words-of" }, card.look)] : null,
      card.example ? example(card.example) : null,
      card.relatives.length ? relatives(card.relatives) : null,
      make("p", { class: "help" }, card.source),
    ),
    ...page.below(card),
  ];
}

/** The position to be solved, and the solution with the final picture, which are folded away until asked for. */
function example({ task, solution, start, end }) {
  return [
    make("h4", {}, say("room-card-example")),
    make(
      "div",
      { class: "card-example" },
      make(
        "figure",
        { class: "problem" },
        make("img", { src: start.src, alt: start.alt, width: 720, height: 720 }),
        make("figcaption", {}, make("p", { class: "task" }, solution ? say("room-card-start", { task }) : task), inWords(start.alt, say("room-card-start-words"))),
      ),
      end
        ? make(
            "details",
            { class: "more" },
            make("summary", {}, say("room-card-end")),
            make(
              "figure",
              { class: "problem" },
              make("img", { src: end.src, alt: end.alt }),
              make("figcaption", {}, make("p", { class: "line" }, say("room-card-solution", { line: moves(solution) })), inWords(end.alt, say("room-card-end-words"))),
            ),
          )
        : null,
    ),
  ];
}

function relatives(list) {
  return [
    make("h4", {}, say("room-card-relatives")),
    make(
      "dl",
      { class: "relatives" },
      list.map((relative) => [make("dt", {}, cardLink(relative)), make("dd", {}, relative.apart)]).flat(),
    ),
  ];
}
