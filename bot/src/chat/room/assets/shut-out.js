// @ts-check
// What a page says once it is shut out: by a new link, by a coach, or because its member was erased. What
// was typed stays where it is, and is there again when the reader comes back in this tab.

import { all, byId, make } from "./build.js";
import { say } from "./words.js";

/** What is said, by why the page is shut out: a title, and what to do. */
const SAYS = {
  link: () => [say("room-out-link"), say("room-out-link-what")],
  "coach-link": () => [say("room-out-coach-link"), say("room-out-coach-link-what")],
  removed: () => [say("room-out-removed"), say("room-out-removed-what")],
  erased: () => [say("room-out-erased"), say("room-out-erased-what")],
};

const DRAFT = "typed-before-shut-out";
/** How often a page that is shut out looks whether it may come in again. */
const LOOK = 4000;

let out = false;

/** Whether this page is shut out. */
export const isOut = () => out;

/** Calls `told` with the reason once the room says that this page is shut out. */
export const onShutOut = (told) => addEventListener("shut-out", (event) => told(/** @type {CustomEvent} */ (event).detail));

/** Says that the page is shut out, and waits for the way back. `box` is where the reader types. */
export function shutOut(why, box) {
  if (out) return;
  out = true;
  const [title, text] = (SAYS[why] ?? SAYS.link)();
  const typed = box?.value ?? "";
  keep(typed);
  const notice = make(
    "section",
    { id: "shut-out", class: "shut-out", role: "alert", "aria-labelledby": "shut-out-title" },
    make("h2", { id: "shut-out-title" }, title),
    make("p", {}, text),
    typed.trim() ? make("p", {}, say("room-out-typed")) : null,
  );
  document.querySelector("main")?.prepend(notice);
  byId("link-state").textContent = "";
  document.body.classList.add("is-out");
  for (const control of all("main button, main select, main input")) control.setAttribute("disabled", "");
  window.scrollTo({ top: 0, behavior: "instant" });
  if (why === "erased") return;
  const look = async () => {
    const answer = await fetch(why === "coach-link" ? "/api/coach/members" : "/api/me", {
      credentials: "same-origin",
      cache: "no-store",
    }).catch(() => null);
    // A coach who has to give a name again is back, too.
    if (answer?.ok || (why === "coach-link" && answer?.status === 401)) {
      keep(box?.value ?? "");
      location.reload();
    }
  };
  setInterval(look, LOOK);
  addEventListener("focus", look);
}

/** Keeps what was typed, for this tab alone. */
function keep(typed) {
  if (typed.trim()) sessionStorage.setItem(DRAFT, typed);
}

/** Puts back what was typed before the page was shut out. */
export function restore(box) {
  const typed = sessionStorage.getItem(DRAFT);
  sessionStorage.removeItem(DRAFT);
  if (typed && !box.value) box.value = typed;
}
