// @ts-check
// One page, several views: the address after `#` says which one shows.

import { all } from "./build.js";

/** Shows the view named in the address from now on, and calls its opener in `openers`. */
export function views(first, openers) {
  const sections = all("[data-view]");
  const links = all("#nav a[href^='#']");
  const known = new Set(sections.map((section) => section.dataset.view));
  let at = null;
  const turn = () => {
    const asked = location.hash.slice(1).split("/")[0];
    const name = known.has(asked) ? asked : (at ?? first);
    const moved = at !== null && at !== name;
    at = name;
    document.body.dataset.at = name;
    for (const section of sections) section.hidden = section.dataset.view !== name;
    for (const link of links) {
      if (link.getAttribute("href") === `#${name}`) link.setAttribute("aria-current", "page");
      else link.removeAttribute("aria-current");
    }
    if (moved) {
      window.scrollTo(0, 0);
      all(`[data-view="${name}"] [tabindex="-1"]`)[0]?.focus({ preventScroll: true });
    }
    openers[name]?.(location.hash.slice(1).split("/")[1]);
  };
  addEventListener("hashchange", turn);
  // Links to a place on the page that is no view: go there without leaving the view.
  for (const jump of all("[data-jump]")) {
    jump.addEventListener("click", (event) => {
      event.preventDefault();
      all(jump.getAttribute("href") ?? "")[0]?.focus();
    });
  }
  turn();
}
