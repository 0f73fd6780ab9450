// @ts-check
// The group's settings, and the two links.

import { careful, get, post } from "./ask.js";
import { all, button, byId, choice, field, make, oneOf, sure } from "./build.js";
import { language } from "./language.js";
import { LOCALE, say } from "./words.js";

const MODES = ["sealed", "open"];
const DEFENCES = ["same", "differ"];
const SCALES = ["club", "tournament"];
const STYLES = ["print", "light", "dark", "contrast"];

/** The days of the week from Monday on, as the page's language calls them. */
function weekdays() {
  const name = new Intl.DateTimeFormat(LOCALE, { weekday: "long", timeZone: "UTC" });
  // The first of January 2024 was a Monday.
  return Array.from({ length: 7 }, (_, day) => name.format(Date.UTC(2024, 0, 1 + day)));
}

/** Opens the view. */
export async function openSettings(state) {
  const place = byId("settings");
  if (place.contains(document.activeElement)) return;
  try {
    const { settings, zones, languages, member_link } = await get("/api/coach/settings");
    place.replaceChildren(form(settings, zones, languages), ownLanguage(state.me), link(member_link), coachLink(state));
  } catch (error) {
    place.replaceChildren(make("p", { class: "trouble" }, error.message));
  }
}

/** The most times of a day. */
const MOST_TIMES = 6;

/** The times of a day at which posts go out: a field each, one more on demand. */
function timesOfDay(given) {
  const rows = make("div", { class: "times" });
  const fields = () => all("input", rows);
  const id = (at) => (at === 0 ? "set-time" : `set-time-${at + 1}`);
  const draw = (values, focus) => {
    rows.replaceChildren(...values.map((value, at) => {
      const time = make("input", { id: id(at), type: "time", required: true, value, "aria-label": say("coaching-post-time-nth", { place: at + 1 }) });
      const less = button(say("coaching-post-time-less"), () => {
        const left = typed().filter((_, other) => other !== at);
        draw(left, Math.min(at, left.length - 1));
      }, { class: "small", id: `less-time-${at + 1}` });
      return make("div", { class: "row" }, time, values.length > 1 ? less : null);
    }));
    more.disabled = values.length >= MOST_TIMES;
    if (focus !== undefined) fields()[focus]?.focus();
  };
  const typed = () => fields().map((time) => /** @type {HTMLInputElement} */ (time).value.slice(0, 5));
  const more = button(say("coaching-post-time-more"), () => draw([...typed(), ""], typed().length), { class: "small", id: "more-times" });
  draw(given);
  const set = make(
    "fieldset",
    {},
    make("legend", {}, say("coaching-post-time")),
    rows,
    make("div", { class: "row" }, more),
    make("p", { class: "help" }, say("coaching-post-times-what")),
  );
  return { set, typed };
}

function form(settings, zones, languages) {
  const told = make("p", { class: "told", role: "status" });
  const trouble = make("p", { class: "trouble", role: "alert" });
  const name = make("input", { id: "set-name", maxlength: 100, required: true, value: settings.name });
  const zone = make("input", { id: "set-zone", list: "zones", required: true, value: settings.zone, autocomplete: "off", spellcheck: "false" });
  const times = timesOfDay([settings.post_time].flat());
  const hours = make("input", { id: "set-hours", type: "number", min: 0.25, max: 744, step: 0.25, required: true, value: settings.open_minutes / 60 });
  const days = weekdays().map((day, bit) => ({
    bit,
    day,
    box: make("input", { type: "checkbox", id: `day-${bit}`, checked: Boolean(settings.days & (1 << bit)) }),
  }));
  const mode = oneOf(say("coaching-answers-are"), MODES.map((which) => [which, say("coaching-mode", { mode: which })]), settings.mode, "set-mode");
  const letters = choice(languages, settings.language, { id: "set-language" });
  const style = choice(STYLES.map((which) => [which, say("coaching-style", { style: which })]), settings.style, { id: "set-style" });
  const scale = oneOf(say("coaching-points"), SCALES.map((which) => [which, say("coaching-scale", { scale: which })]), settings.points, "set-scale");
  const wrong = make("input", { id: "set-wrong", type: "number", min: 0, max: 5, step: 0.5, required: true, value: settings.wrong_cost });
  const fitPrices = () => {
    wrong.disabled = scale.chosen() === "tournament";
    // What a tournament takes for a wrong move is no price for a club.
    if (!wrong.disabled && Number(wrong.value) >= 5) wrong.value = "1";
  };
  scale.set.addEventListener("change", fitPrices);
  wrong.disabled = settings.points === "tournament";
  const hint = make("input", { id: "set-hint", type: "number", min: 0, max: 5, step: 0.5, required: true, value: settings.hint_cost });
  const defences = oneOf(
    say("coaching-defences-are"),
    DEFENCES.map((which) => [which, say("coaching-defences", { defences: which })]),
    settings.defences,
    "set-defences",
  );
  const page = make(
    "form",
    { class: "settings" },
    field(say("coaching-group-name"), name),
    make("datalist", { id: "zones" }, zones.map((known) => make("option", { value: known }))),
    field(say("coaching-zone"), zone),
    times.set,
    make(
      "fieldset",
      {},
      make("legend", {}, say("coaching-days")),
      make("div", { class: "row days" }, days.map(({ day, box }) => make("label", {}, box, day))),
    ),
    field(say("coaching-open-hours"), hours),
    mode.set,
    field(say("coaching-letters"), letters),
    field(say("coaching-look"), style),
    scale.set,
    field(say("coaching-wrong-cost"), wrong),
    field(say("coaching-hint-cost"), hint),
    make("p", { class: "help" }, say("coaching-least")),
    defences.set,
    make("button", { class: "first", id: "save-settings" }, say("coaching-save")),
    trouble,
    told,
  );
  page.addEventListener("submit", (event) => {
    event.preventDefault();
    told.textContent = "";
    careful(event.submitter, trouble, async () => {
      if (!zones.includes(zone.value)) {
        zone.focus();
        throw new Error(say("coaching-no-zone", { zone: zone.value }));
      }
      await post("/api/coach/settings", {
        name: name.value,
        zone: zone.value,
        post_time: times.typed(),
        days: days.reduce((sum, { bit, box }) => sum | (box.checked ? 1 << bit : 0), 0),
        open_minutes: Math.round(Number(hours.value) * 60),
        mode: mode.chosen(),
        language: letters.value,
        style: style.value,
        points: scale.chosen(),
        wrong_cost: Number(wrong.value),
        hint_cost: Number(hint.value),
        defences: defences.chosen(),
      });
      told.textContent = say("coaching-saved");
    });
  });
  return page;
}

/** The coach's own language, which is nobody else's matter. */
function ownLanguage(me) {
  return make(
    "section",
    { class: "sheet", "aria-labelledby": "language-title" },
    make("h3", { id: "language-title" }, say("coaching-own-language")),
    language(me),
  );
}

function link(address) {
  const told = make("p", { class: "told", role: "status" });
  const shown = make("input", { id: "member-link", readonly: true, value: address, "aria-label": say("coaching-member-link") });
  shown.addEventListener("focus", () => shown.select());
  return make(
    "section",
    { class: "sheet", "aria-labelledby": "link-title" },
    make("h3", { id: "link-title" }, say("coaching-member-link")),
    make("p", { class: "help" }, say("coaching-member-link-what")),
    make(
      "div",
      { class: "row" },
      shown,
      button(say("coaching-copy"), (event) =>
        careful(event.currentTarget, told, async () => {
          shown.select();
          await navigator.clipboard.writeText(shown.value);
          told.textContent = say("coaching-copied");
        }),
      ),
      button(say("coaching-new-link"), async (event) => {
        const control = event.currentTarget;
        const yes = await sure(
          say("coaching-new-link-sure"),
          say("coaching-new-link"),
        );
        if (!yes) return;
        await careful(control, told, async () => {
          shown.value = await post("/api/coach/link");
          told.textContent = say("coaching-new-link-made");
        });
      }),
    ),
    told,
  );
}

/** A new coach's link: shown once, to whoever makes it. */
function coachLink(state) {
  const told = make("p", { class: "told", role: "status" });
  const shown = make("input", { id: "coach-link", readonly: true, hidden: true, "aria-label": say("coaching-new-coach-link-is") });
  shown.addEventListener("focus", () => shown.select());
  return make(
    "section",
    { class: "sheet", "aria-labelledby": "coach-link-title" },
    make("h3", { id: "coach-link-title" }, say("coaching-coach-link")),
    make(
      "p",
      { class: "help" },
      say("coaching-coach-link-what"),
    ),
    make(
      "div",
      { class: "row" },
      shown,
      button(say("coaching-new-coach-link"), async (event) => {
        const control = event.currentTarget;
        const yes = await sure(
          say("coaching-new-coach-link-sure"),
          say("coaching-new-coach-link"),
        );
        if (!yes) return;
        await careful(control, told, async () => {
          // The feed goes by the link that stops now.
          state.feed.pause();
          try {
            shown.value = await post("/api/coach/coach-link");
            shown.hidden = false;
            told.textContent = say("coaching-new-coach-link-made");
          } finally {
            state.feed.connect();
          }
        });
      }),
    ),
    told,
  );
}
