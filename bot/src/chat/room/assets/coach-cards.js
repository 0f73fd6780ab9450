// @ts-check
// Topic cards in the coach's hands: all of them, the coach's own words on them, and into the week.

import { careful, post } from "./ask.js";
import { button, byId, make, sure } from "./build.js";
import { showCards } from "./cards.js";
import { both, moves, say } from "./words.js";

const told = byId("cards-told");
/** What is to be said on the card that is shown next. */
let done = "";

/** The coach's cards: the one that is wanted, or all. */
export function coachCards(wanted) {
  const place = byId("cards");
  if (place.dataset.shown !== (wanted ?? "") || done) told.textContent = done;
  done = "";
  return showCards(place, wanted, {
    list: "/api/coach/cards",
    open: () => true,
    note: tells,
    mark: ({ by_coach }) => (by_coach ? say("coaching-card-own") : ""),
    above: () => [make("p", { class: "help" }, say("room-cards-what")), writing()],
    below: (card) => [tells(card) ? make("p", { class: "caution" }, tells(card)) : null, hands(card), editing(card)],
  });
}

/** That members do not see it now, and why. */
function tells({ card, by_coach, tells_of }) {
  if (!tells_of.length) return "";
  const numbers = both(tells_of.map(String));
  return by_coach && !card.startsWith("topic-") ? say("coaching-card-tells-copy", { numbers }) : say("coaching-card-tells", { numbers });
}

/** Shows a card anew, or the list, and says what was done. */
async function again(card, said) {
  done = said;
  const address = card ? `#cards/${card}` : "#cards";
  if (location.hash === address) await coachCards(card);
  else location.hash = address;
}

/** Into the week, and back to the program's own. */
function hands({ card, by_coach }) {
  const trouble = make("p", { class: "trouble", role: "alert" });
  const act = (control, path, then) =>
    careful(control, trouble, async () => {
      await post(`/api/coach/cards/${card}/${path}`);
      await then();
    });
  const queue = (event) => act(event.currentTarget, "queue", () => (told.textContent = say("coaching-card-queued")));
  const takeBack = async (event) => {
    const control = event.currentTarget;
    if (!(await sure(say("coaching-card-take-back-sure"), say("coaching-card-take-back")))) return;
    await act(control, "take-back", async () => {
      // A topic's card is gone; a pattern has the program's again.
      await again(card.startsWith("topic-") ? undefined : card, say("coaching-card-taken-back"));
    });
  };
  return make(
    "div",
    {},
    make(
      "div",
      { class: "row" },
      button(say("coaching-card-queue"), queue, { id: "card-queue" }),
      by_coach ? button(say("coaching-card-take-back"), takeBack, { id: "card-take-back" }) : null,
    ),
    trouble,
  );
}

/** The form for a copy of a card. */
function editing(card) {
  const box = make("details", { class: "more", id: "card-edit-box" }, make("summary", {}, say("coaching-card-edit")));
  const written = {
    definition: card.definition,
    look: card.look,
    // The program's own example need not be copied.
    fen: card.by_coach ? (card.example?.fen ?? "") : "",
    moves: card.by_coach ? moves(card.example?.solution ?? "") : "",
  };
  box.append(
    form("card", [], written, async (content) => {
      await post(`/api/coach/cards/${card.card}`, content);
      await again(card.card, say("coaching-card-saved"));
    }),
    make("p", { class: "help" }, say("coaching-card-edit-what")),
  );
  return box;
}

/** The form for the card of a topic. */
function writing() {
  const topic = make("input", { id: "new-card-topic", list: "topics", maxlength: 80, required: true });
  const label = [make("label", { class: "over", for: "new-card-topic" }, say("room-topic")), topic];
  const empty = { definition: "", look: "", fen: "", moves: "" };
  return make(
    "details",
    { class: "more", id: "new-card-box" },
    make("summary", {}, say("coaching-card-new")),
    form("new-card", label, empty, async (content) => {
      const card = await post("/api/coach/cards", { ...content, topic: topic.value });
      await again(card, say("coaching-card-saved"));
    }),
    make("p", { class: "help" }, say("coaching-card-new-what")),
  );
}

/**
 * What a coach writes on a card. Fields keep what was typed when something is wrong with it.
 * @param {string} name what ids begin with
 * @param {Node[]} first what stands above
 * @param {{ definition: string, look: string, fen: string, moves: string }} written
 * @param {(content: any) => Promise<unknown>} save
 */
function form(name, first, written, save) {
  const long = (id, rows, most, value, attributes = {}) => {
    const box = make("textarea", { id: `${name}-${id}`, rows, maxlength: most, ...attributes });
    // Its own beginning, so that only a change counts as typed.
    box.defaultValue = value;
    return box;
  };
  const line = (id, value, most) =>
    make("input", { id: `${name}-${id}`, value, maxlength: most, spellcheck: "false", autocomplete: "off" });
  const definition = long("definition", 4, 500, written.definition, { required: true });
  const look = long("look", 3, 400, written.look);
  const fen = line("fen", written.fen, 100);
  const played = line("moves", written.moves, 300);
  const trouble = make("p", { class: "trouble", role: "alert" });
  const over = (label, field) => [make("label", { class: "over", for: field.id }, label), field];
  const sheet = make(
    "form",
    { class: "sheet", id: name },
    first,
    over(say("coaching-card-definition"), definition),
    over(say("coaching-card-look"), look),
    over(say("coaching-card-fen"), fen),
    over(say("coaching-card-moves"), played),
    make("div", { class: "row" }, make("button", { class: "first", id: `${name}-save` }, say("coaching-card-save"))),
    trouble,
  );
  sheet.addEventListener("submit", (event) => {
    event.preventDefault();
    careful(event.submitter, trouble, () =>
      save({ definition: definition.value, look: look.value, fen: fen.value, moves: played.value }),
    );
  });
  return sheet;
}
