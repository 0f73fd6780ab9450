// The live feed. Connects again by itself; the room then tells what was missed.

/**
 * Follows the feed. `handlers` maps event names to functions; `after()` gives the last line of talk
 * seen; `state(connected)` is told when the line breaks and when it is back.
 */
export function follow(handlers, after, state) {
  let source;
  const connect = () => {
    source?.close();
    source = new EventSource(`/api/feed?after=${after()}`);
    source.addEventListener("open", () => state(true));
    source.addEventListener("error", () => {
      state(false);
      // A refusal ends an event source for good; a broken line does not.
      if (source.readyState === EventSource.CLOSED) setTimeout(connect, 3000);
    });
    for (const [name, handle] of Object.entries(handlers)) {
      source.addEventListener(name, (event) => handle(JSON.parse(event.data)));
    }
  };
  connect();
}
