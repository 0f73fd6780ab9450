// @ts-check
// Builds elements. Text from people only ever becomes text nodes and attribute values here; nothing on
// these pages is put together as markup.

import { say } from "./words.js";

/**
 * What an id on these pages names, where it is more than an element.
 * @typedef {{
 *   answer: HTMLButtonElement, "check-paste": HTMLButtonElement, code: HTMLInputElement,
 *   earlier: HTMLButtonElement, "enter-code": HTMLFormElement, "enter-name": HTMLFormElement,
 *   file: HTMLInputElement, from: HTMLInputElement, in: HTMLAnchorElement, "leaders-ask": HTMLFormElement,
 *   "lesson-file": HTMLInputElement, "lesson-in": HTMLFormElement, "lesson-pasted": HTMLButtonElement,
 *   "lesson-text": HTMLTextAreaElement, "lesson-title": HTMLInputElement,
 *   "leaders-days": HTMLSelectElement, "leaders-topic": HTMLSelectElement, name: HTMLInputElement,
 *   paste: HTMLTextAreaElement, say: HTMLFormElement, send: HTMLButtonElement, "summary-ask": HTMLFormElement,
 *   "summary-topic": HTMLInputElement, text: HTMLTextAreaElement, to: HTMLInputElement,
 * }} Named
 */

/**
 * What goes into an element; what is missing is left out.
 * @typedef {Node | string | null | undefined} Child
 */

/**
 * An element: `make("p", { class: "help" }, "text", child)`. Handlers are given as `onclick` and so on.
 * @template {keyof HTMLElementTagNameMap} Tag
 * @param {Tag} tag
 * @param {Record<string, any>} attributes
 * @param {(Child | Child[])[]} children
 * @returns {HTMLElementTagNameMap[Tag]}
 */
export function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === null || value === false) continue;
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else element.setAttribute(name, value === true ? "" : value);
  }
  element.append(...children.flat().filter((child) => child !== null && child !== undefined));
  return element;
}

/**
 * Puts `children` in the place of what `place` holds; what is null is left out. Who was at a control stays
 * at it, or at the one that is called the same now, so that news from the room takes nobody's focus away.
 * @param {Element} place
 * @param {(Child | Child[])[]} children
 */
export function fill(place, ...children) {
  const focused = document.activeElement;
  const back = focused instanceof HTMLElement && place.contains(focused) ? again(focused, place) : null;
  place.replaceChildren(...children.flat().filter((child) => child !== null && child !== undefined));
  back?.()?.focus({ preventScroll: true });
}

/**
 * What finds this element in `place` when that has been drawn anew: by its id, else as the same one in
 * order among those that look alike.
 * @param {HTMLElement} element
 * @param {Element} place
 * @returns {() => HTMLElement | null | undefined}
 */
function again(element, place) {
  if (element.id) return () => document.getElementById(element.id);
  const look = (one) => [one.tagName, one.getAttribute("href"), one.getAttribute("aria-label"), one.textContent].join("\n");
  const alike = () => all(element.localName, place).filter((one) => look(one) === wanted);
  const wanted = look(element);
  const at = alike().indexOf(element);
  return () => alike()[at];
}

/**
 * The element with this id; ask with `?.` for one that may not be there.
 * @type {<Id extends string>(id: Id) => Id extends keyof Named ? Named[Id] : HTMLElement}
 */
export const byId = (id) => /** @type {any} */ (document.getElementById(id));

/**
 * All elements in `place` that `selector` names.
 * @param {string} selector
 * @param {ParentNode} place
 * @returns {HTMLElement[]}
 */
export const all = (selector, place = document) => [...place.querySelectorAll(selector)].filter((element) => element instanceof HTMLElement);

/** Takes the focus away from the field that has it. */
export function leaveField() {
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
}

/**
 * A button.
 * @param {string} label
 * @param {(event: MouseEvent & { currentTarget: HTMLButtonElement }) => unknown} act
 * @param {Record<string, any>} attributes
 */
export function button(label, act, attributes = {}) {
  return make("button", { type: "button", ...attributes, onclick: act }, label);
}

/**
 * A labelled field: label above, field below.
 * @param {string} label
 * @param {HTMLElement} input
 */
export function field(label, input) {
  input.id ||= fresh("field");
  return make("div", {}, make("label", { class: "over", for: input.id }, label), input);
}

let count = 0;
/** A new id. */
export const fresh = (prefix) => `${prefix}-${++count}`;

/** A choice among `[value, label]` pairs. */
export function choice(pairs, chosen, attributes = {}) {
  const select = make("select", attributes);
  for (const [value, label] of pairs) {
    select.append(make("option", { value, selected: String(value) === String(chosen) }, label));
  }
  return select;
}

/**
 * A choice among a few `[value, label]` pairs whose labels are whole sentences: all are in sight, and none is cut.
 * @param {string} legend
 * @param {[string, string][]} pairs
 * @param {string} chosen
 * @param {string} name what its fields are called, and their ids begin with
 */
export function oneOf(legend, pairs, chosen, name) {
  const dots = pairs.map(([value]) => make("input", { type: "radio", id: `${name}-${value}`, name, value, checked: value === chosen }));
  const set = make(
    "fieldset",
    { class: "one-of" },
    make("legend", {}, legend),
    pairs.map(([, label], at) => make("label", {}, dots[at], make("span", {}, label))),
  );
  return { set, chosen: () => dots.find((dot) => dot.checked)?.value ?? chosen };
}

/** Asks a question that needs a yes; resolves to true or false. */
export function sure(question, yes, no = say("room-cancel")) {
  return new Promise((resolve) => {
    const title = fresh("question");
    const dialog = make(
      "dialog",
      { "aria-labelledby": title },
      make("p", { id: title }, question),
      make(
        "div",
        { class: "row" },
        button(yes, () => dialog.close("yes"), { class: "first" }),
        button(no, () => dialog.close("no")),
      ),
    );
    dialog.addEventListener("close", () => {
      dialog.remove();
      resolve(dialog.returnValue === "yes");
    });
    document.body.append(dialog);
    dialog.showModal();
  });
}

/** Shows something in a window of its own until it is closed. */
export function show(title, ...content) {
  const id = fresh("shown");
  const dialog = make(
    "dialog",
    { "aria-labelledby": id },
    make("h2", { id }, title),
    ...content,
    make("div", { class: "row" }, button(say("room-close"), () => dialog.close())),
  );
  dialog.addEventListener("close", () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
}
