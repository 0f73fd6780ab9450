// @ts-check
// Times, in the reader's own zone unless another is named.

import { all, make } from "./build.js";
import { LOCALE, say } from "./words.js";

const day = (zone) =>
  new Intl.DateTimeFormat(LOCALE, { weekday: "short", day: "numeric", month: "short", timeZone: zone });
const clock = (zone) =>
  new Intl.DateTimeFormat(LOCALE, { hour: "2-digit", minute: "2-digit", timeZone: zone });

const sameDay = (a, b, zone) => day(zone).format(a) === day(zone).format(b);

/** "18:00" today, "Mon 3 Jun, 18:00" otherwise. */
export function moment(iso, zone) {
  const then = new Date(iso);
  const time = clock(zone).format(then);
  return sameDay(then, new Date(), zone) ? time : say("room-day-and-time", { day: day(zone).format(then), time });
}

/** "Mon 3 Jun, 18:00", whatever day it is. */
export function dated(iso, zone) {
  const then = new Date(iso);
  return say("room-day-and-time", { day: day(zone).format(then), time: clock(zone).format(then) });
}

/** A time element. */
export function stamp(iso, zone) {
  const full = new Intl.DateTimeFormat(LOCALE, { dateStyle: "full", timeStyle: "short", timeZone: zone });
  return make("time", { datetime: iso, title: full.format(new Date(iso)) }, moment(iso, zone));
}

/** "in 3 hours", "in 12 minutes". */
export function until(iso) {
  const minutes = Math.round((new Date(iso).getTime() - Date.now()) / 60000);
  const relative = new Intl.RelativeTimeFormat(LOCALE, { numeric: "always" });
  if (Math.abs(minutes) < 90) return relative.format(minutes, "minute");
  const hours = Math.round(minutes / 60);
  if (Math.abs(hours) < 48) return relative.format(hours, "hour");
  return relative.format(Math.round(hours / 24), "day");
}

/** "Closes at 18:00 (in 3 hours)", kept up to date by `refresh`. */
export function closing(iso) {
  const line = make("span", { "data-closes": iso });
  write(line);
  return line;
}

function write(line) {
  const iso = line.dataset.closes;
  line.textContent =
    new Date(iso) > new Date()
      ? say("room-closes", { at: moment(iso), until: until(iso) })
      : say("room-closed", { at: moment(iso) });
}

setInterval(() => all("[data-closes]").forEach(write), 30_000);
