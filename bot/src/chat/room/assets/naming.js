// @ts-check
// Names that cannot be had, with a free one to take instead.

import { button } from "./build.js";
import { say } from "./words.js";

/** Runs `act`; a name from `input` that cannot be had is said in `place`, with a button for a free one. */
export async function offering(place, input, act) {
  try {
    return await act();
  } catch (error) {
    if (!error.offer) throw error;
    place.replaceChildren(
      error.message,
      " ",
      button(say("room-take-name", { name: error.offer }), () => {
        input.value = error.offer;
        input.form.requestSubmit();
      }),
    );
    return undefined;
  }
}
