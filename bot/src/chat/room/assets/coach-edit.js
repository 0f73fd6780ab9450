// @ts-check
// A kept position written anew: checked again as soon as it is saved.

import { careful, get, post } from "./ask.js";
import { button, byId, fill, make } from "./build.js";
import { close, verdict } from "./coach-drafts.js";
import { stepEditor } from "./step.js";
import { backUp, backedUp, forget } from "./typed.js";
import { say } from "./words.js";

const place = byId("edited");
/** @type {any} What lies open: `position`, and its `step` as it is typed. */
let opened = null;

/** Where a position is kept in this browser until it is saved. */
const kept = (position, source) => `position-${position}-${source}`;

/** Opens the view on a position. */
export async function openEdit(wanted, refresh) {
  if (!wanted) return;
  await close();
  opened = null;
  const trouble = make("p", { class: "trouble", role: "alert", id: "edit-trouble" });
  fill(place, trouble);
  await careful(null, trouble, async () => {
    const found = await get(`/api/coach/positions/${wanted}/edit`);
    if (found.barred !== null) {
      fill(place, make("p", { class: "outcome" }, make("strong", {}, found.source)), make("p", { class: "wrong", id: "edit-barred" }, found.barred));
      return;
    }
    const left = backedUp(kept(wanted, found.source));
    opened = { position: wanted, step: left ?? structuredClone(found.step) };
    draw(found, refresh, trouble, Boolean(left));
  });
}

function draw({ source, step: given }, refresh, trouble, typed) {
  const { position, step } = opened;
  let before = given;
  const told = make("div", { id: "edit-told", role: "status" });
  const changed = () => backUp(kept(position, source), step);
  const save = async () => {
    told.replaceChildren(make("p", { class: "help" }, say("editor-checking")));
    try {
      const now = await post(`/api/coach/positions/${position}/edit`, { step });
      forget(kept(position, source));
      before = structuredClone(step);
      fill(told, make("p", { class: "told" }, say("editor-saved")), verdict(now));
      await refresh();
    } catch (error) {
      told.replaceChildren();
      throw error;
    }
  };
  const again = () => {
    forget(kept(position, source));
    opened.step = structuredClone(before);
    draw({ source, step: before }, refresh, trouble, false);
    byId("edit-title").focus();
  };
  fill(
    place,
    make("p", { class: "outcome" }, make("strong", {}, source)),
    typed ? make("p", { class: "help" }, say("editor-typed-before")) : null,
    stepEditor(step, { position: true, changed }),
    make(
      "div",
      { class: "row finish" },
      button(say("editor-save"), (event) => careful(event.currentTarget, trouble, save), { class: "first", id: "save-position" }),
      button(say("editor-start-over"), again, { id: "start-over" }),
    ),
    trouble,
    told,
  );
}
