// @ts-check
// What was typed and not sent, over a page that is loaded again.

import { all } from "./build.js";

const KEPT = "typed-before-loading-again";
/** How long fields that come later are filled, in milliseconds: the views are drawn more than once at first. */
const WHILE = 10_000;

/** @param {HTMLInputElement} field */
const isTicked = (field) => field.type === "checkbox" || field.type === "radio";

/** @param {HTMLElement} field */
function isTyped(field) {
  if (field instanceof HTMLSelectElement) {
    const first = [...field.options].find((option) => option.defaultSelected) ?? field.options[0];
    return field.value !== first?.value;
  }
  if (field instanceof HTMLTextAreaElement) return field.value !== field.defaultValue;
  if (!(field instanceof HTMLInputElement) || field.readOnly || field.type === "file") return false;
  return isTicked(field) ? field.checked !== field.defaultChecked : field.value !== field.defaultValue;
}

/** Loads the page again; what was typed is there again afterwards, where it is not kept otherwise (`data-kept`). `except` are ids of fields that were used for it. */
export function loadAgain(...except) {
  const fields = all("input[id], textarea[id], select[id]").filter((field) => isTyped(field) && !field.closest("[data-kept]") && !except.includes(field.id));
  const typed = fields.map((field) => [field.id, field instanceof HTMLInputElement && isTicked(field) ? field.checked : /** @type {HTMLInputElement} */ (field).value]);
  if (typed.length) sessionStorage.setItem(KEPT, JSON.stringify(typed));
  location.reload();
}

/** Keeps something in the browser until the server has it; where there is no room for it, the page has it still. */
export function backUp(key, value) {
  try {
    localStorage.setItem(key, JSON.stringify(value));
  } catch (error) {
    console.error(error);
  }
}

/** What was kept so; null where nothing was. */
export const backedUp = (key) => JSON.parse(localStorage.getItem(key) ?? "null");

/** Forgets it. */
export const forget = (key) => localStorage.removeItem(key);

/** Ticks a field, or not; what the page draws by it is drawn again, before fields below it are filled. */
function tick(field, ticked) {
  field.checked = ticked;
  field.dispatchEvent(new Event("change", { bubbles: true }));
}

/** Puts back what was typed, into fields that are there and into those that come. */
export function putBack() {
  const kept = new Map(JSON.parse(sessionStorage.getItem(KEPT) ?? "[]"));
  sessionStorage.removeItem(KEPT);
  if (!kept.size) return;
  /** @type {WeakSet<Element>} */
  const filled = new WeakSet();
  const fill = () => {
    for (const [id, value] of kept) {
      const field = /** @type {HTMLInputElement | null} */ (document.getElementById(id));
      if (!field || filled.has(field)) continue;
      filled.add(field);
      if (typeof value === "boolean") tick(field, value);
      else field.value = value;
    }
  };
  const watch = new MutationObserver(fill);
  watch.observe(document.body, { childList: true, subtree: true });
  // A field that its reader goes on with is theirs.
  const used = ({ target }) => kept.delete(target.id);
  addEventListener("input", used);
  setTimeout(() => {
    watch.disconnect();
    removeEventListener("input", used);
  }, WHILE);
  fill();
}
