// @ts-check
// In which language the reader is spoken to: a choice, and the page in it.

import { careful, post } from "./ask.js";
import { choice, make } from "./build.js";
import { loadAgain } from "./typed.js";
import { say } from "./words.js";

/** The id of the choice. */
const ID = "language";

/** The choice, as `me` has it now. */
export function language(me) {
  const told = make("p", { class: "trouble", role: "alert" });
  const chosen = me.language ?? "";
  const named = me.languages.map(({ tag, name }) => [tag, name]);
  const select = choice([["", say("room-language-browser")], ...named], chosen, { id: ID });
  // Each calls itself by its own name.
  for (const option of select.options) if (option.value) option.lang = option.value;
  select.addEventListener("change", async () => {
    const done = await careful(select, told, async () => {
      await post("/api/language", { language: select.value || null });
      loadAgain(ID);
      return true;
    });
    if (!done) select.value = chosen;
  });
  return make(
    "section",
    { class: "fields" },
    make("div", {}, make("label", { class: "over", for: ID }, say("room-language")), select),
    make("p", { class: "help" }, say("room-language-what")),
    told,
  );
}

/** Loads the page again where the reader is spoken to in another language than its own. */
export function keepUp(me) {
  if (me.speaks !== document.documentElement.lang) loadAgain(ID);
}
