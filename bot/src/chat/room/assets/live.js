// @ts-check
// The live feed. Connects again by itself; the room then tells what was missed.

import { get } from "./ask.js";
import { isOut } from "./shut-out.js";

/**
 * Follows the feed as `page` ("member" or "coach"). `handlers` maps event names to functions; `after()`
 * gives the last line of talk seen; `state(connected)` is told when the line breaks and when it is back.
 * Returns what connects anew, as after a changed cookie.
 */
export function follow(page, handlers, after, state) {
  let source;
  const connect = () => {
    source?.close();
    if (isOut()) return;
    source = new EventSource(`/api/feed?page=${page}&after=${after()}`);
    source.addEventListener("open", () => state(true));
    source.addEventListener("error", async () => {
      if (isOut()) return;
      state(false);
      // A refusal ends an event source for good; a broken line does not. Asking says whether the page is
      // shut out, which it then shows.
      if (source.readyState !== EventSource.CLOSED) return;
      await get("/api/me").catch(() => {});
      if (!isOut()) setTimeout(connect, 3000);
    });
    source.addEventListener("shut-out", (event) => {
      source.close();
      dispatchEvent(new CustomEvent("shut-out", { detail: JSON.parse(event.data).why }));
    });
    for (const [name, handle] of Object.entries(handlers)) {
      source.addEventListener(name, (event) => handle(JSON.parse(event.data)));
    }
  };
  connect();
  return { connect, pause: () => source.close() };
}
