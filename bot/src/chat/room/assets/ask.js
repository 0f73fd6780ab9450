// @ts-check
// Asks the room for something. What goes wrong comes back as an Error whose message is for the person.

import { say } from "./words.js";

export class Refused extends Error {
  constructor(status, message, offer) {
    super(message);
    this.status = status;
    /** A free name, where the one that was asked for is not. */
    this.offer = offer;
  }
}

async function ask(path, options) {
  let response;
  try {
    response = await fetch(path, { credentials: "same-origin", cache: "no-store", ...options });
  } catch {
    throw new Refused(0, say("room-unreachable"));
  }
  const body = await response.json().catch(() => null);
  if (!response.ok) {
    if (body?.shut_out) dispatchEvent(new CustomEvent("shut-out", { detail: body.shut_out }));
    throw new Refused(response.status, body?.error ?? say("room-error", { status: String(response.status) }), body?.offer);
  }
  return body;
}

/** Reads. */
export const get = (path) => ask(path);

/** Does something. */
export const post = (path, body = {}) =>
  ask(path, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(body),
  });

/** Hands over a file. */
export const hand = (path, bytes) =>
  ask(path, { method: "POST", headers: { "content-type": "application/octet-stream" }, body: bytes });

/** A mark for one thing sent: sent again after a broken connection, it counts once. */
export function mark() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/**
 * Runs `act` with `control` switched off meanwhile; what goes wrong is written into `place`. A control that is
 * `disabled` would lose the focus, so it is only called so.
 */
export async function careful(control, place, act) {
  if (control?.disabled || control?.getAttribute("aria-disabled") === "true") return undefined;
  control?.setAttribute("aria-disabled", "true");
  place.textContent = "";
  try {
    return await act();
  } catch (error) {
    if (!(error instanceof Refused)) console.error(error);
    place.textContent = error.message;
    return undefined;
  } finally {
    control?.removeAttribute("aria-disabled");
  }
}
