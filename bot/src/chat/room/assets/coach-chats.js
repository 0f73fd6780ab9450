// @ts-check
// How the chats fare, above the coach's views: a line for each that is not this room.

import { get } from "./ask.js";
import { byId, make } from "./build.js";
import { stamp } from "./when.js";

const lines = {
  starting: ({ name }) => [`${name} is being started.`],
  up: ({ name, since }) => [`${name} is connected, since `, stamp(since), "."],
  wavering: ({ name, since, why }) => [`${name} is not connected, since `, stamp(since), `: ${why} It connects anew by itself.`],
  failing: ({ name, since, why, next_try }) => [
    `${name} is not connected, since `,
    stamp(since),
    `: ${why} It is tried again at `,
    stamp(next_try),
    ".",
  ],
  refused: ({ name, since, why }) => [`${name} is not connected, since `, stamp(since), `: ${why}`],
  stopped: ({ name }) => [`${name} is stopped.`],
};

/** Fetches how the chats fare and shows it. */
export async function showChats() {
  const chats = await get("/api/coach/chats");
  const well = ({ state }) => state === "up" || state === "starting";
  byId("chats").replaceChildren(
    ...chats
      // That this room is up, whoever reads this knows.
      .filter((chat) => chat.name !== "The club room")
      .map((chat) => make("p", { class: well(chat) ? "help" : "trouble" }, ...lines[chat.state](chat))),
  );
}
