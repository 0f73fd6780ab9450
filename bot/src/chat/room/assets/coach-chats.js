// @ts-check
// How the chats fare, above the coach's views: a line for each that is not this room.

import { get } from "./ask.js";
import { byId, make } from "./build.js";
import { stamp } from "./when.js";
import { say, sayAround } from "./words.js";

const lines = {
  starting: ({ name }) => [say("coaching-chat-starting", { name })],
  up: ({ name, since }) => sayAround("coaching-chat-up", { name, since: stamp(since) }),
  wavering: ({ name, since, why }) => sayAround("coaching-chat-wavering", { name, since: stamp(since), why }),
  failing: ({ name, since, why, next_try: next }) =>
    sayAround("coaching-chat-failing", { name, since: stamp(since), why, next: stamp(next) }),
  refused: ({ name, since, why }) => sayAround("coaching-chat-refused", { name, since: stamp(since), why }),
  stopped: ({ name }) => [say("coaching-chat-stopped", { name })],
};

/** Fetches how the chats fare and shows it. */
export async function showChats() {
  const chats = await get("/api/coach/chats");
  const well = ({ state }) => state === "up" || state === "starting";
  byId("chats").replaceChildren(
    ...chats
      .filter((chat) => !chat.here)
      .map((chat) => make("p", { class: well(chat) ? "help" : "trouble" }, ...lines[chat.state](chat))),
  );
}
