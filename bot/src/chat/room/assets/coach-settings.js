// @ts-check
// The group's settings, and the two links.

import { careful, get, post } from "./ask.js";
import { button, byId, choice, field, make, sure } from "./build.js";

const DAYS = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];
const MODES = [
  ["sealed", "Sealed: only the member and you see an answer before the reveal"],
  ["open", "Open: answers show to the group, behind a spoiler mark"],
];
const DEFENCES = [
  ["same", "Every member meets the same defence"],
  ["differ", "Of defences that last equally long, members meet different ones"],
];
const SCALES = [
  ["club", "Club: tries and hints take a little off"],
  ["tournament", "Tournament: nothing after a wrong first move"],
];
const LANGUAGES = [
  "english", "german", "french", "spanish", "italian", "portuguese", "dutch", "russian", "polish", "czech", "hungarian",
  "turkish",
];
const STYLES = [
  ["print", "Printed page"],
  ["light", "Calm tint, light"],
  ["dark", "Calm tint, dark"],
  ["contrast", "High contrast"],
];

const capital = (word) => word[0].toUpperCase() + word.slice(1);

/** Opens the view. */
export async function openSettings(state) {
  const place = byId("settings");
  if (place.contains(document.activeElement)) return;
  try {
    const { settings, zones, member_link } = await get("/api/coach/settings");
    place.replaceChildren(form(settings, zones), link(member_link), coachLink(state));
  } catch (error) {
    place.replaceChildren(make("p", { class: "trouble" }, error.message));
  }
}

function form(settings, zones) {
  const told = make("p", { class: "told", role: "status" });
  const trouble = make("p", { class: "trouble", role: "alert" });
  const name = make("input", { maxlength: 100, required: true, value: settings.name });
  const zone = make("input", { list: "zones", required: true, value: settings.zone, autocomplete: "off", spellcheck: "false" });
  const time = make("input", { type: "time", required: true, value: settings.post_time });
  const hours = make("input", { type: "number", min: 0.25, max: 744, step: 0.25, required: true, value: settings.open_minutes / 60 });
  const days = DAYS.map((day, bit) => ({
    bit,
    day,
    box: make("input", { type: "checkbox", id: `day-${bit}`, checked: Boolean(settings.days & (1 << bit)) }),
  }));
  const mode = choice(MODES, settings.mode);
  const language = choice(LANGUAGES.map((word) => [word, capital(word)]), settings.language);
  const style = choice(STYLES, settings.style);
  const scale = choice(SCALES, settings.points);
  const wrong = make("input", { type: "number", min: 0, max: 5, step: 0.5, required: true, value: settings.wrong_cost });
  const fitPrices = () => {
    wrong.disabled = scale.value === "tournament";
    // What a tournament takes for a wrong move is no price for a club.
    if (!wrong.disabled && Number(wrong.value) >= 5) wrong.value = "1";
  };
  scale.addEventListener("change", fitPrices);
  wrong.disabled = settings.points === "tournament";
  const hint = make("input", { type: "number", min: 0, max: 5, step: 0.5, required: true, value: settings.hint_cost });
  const defences = choice(DEFENCES, settings.defences);
  const page = make(
    "form",
    { class: "settings" },
    field("Name of the group", name),
    make("datalist", { id: "zones" }, zones.map((known) => make("option", { value: known }))),
    field("Time zone (IANA name, such as Europe/Lisbon)", zone),
    field("Posts go out at", time),
    make(
      "fieldset",
      {},
      make("legend", {}, "On these days"),
      make("div", { class: "row days" }, days.map(({ day, box }) => make("label", {}, box, day))),
    ),
    field("Hours from the post to its reveal", hours),
    field("Answers", mode),
    field("Piece letters read first", language),
    field("Look of the diagrams", style),
    field("Points (5 for a position; one that is posted keeps its prices)", scale),
    field("Points off for each wrong first move, by the club's scale", wrong),
    field("Points off for each hint", hint),
    make("p", { class: "help" }, "By the club's scale, whoever solves a position without being shown the move keeps at least 1 point."),
    field("Defences when a line is played out", defences),
    make("button", { class: "first", id: "save-settings" }, "Save the settings"),
    trouble,
    told,
  );
  page.addEventListener("submit", (event) => {
    event.preventDefault();
    told.textContent = "";
    careful(event.submitter, trouble, async () => {
      if (!zones.includes(zone.value)) {
        zone.focus();
        throw new Error(`“${zone.value}” is no time zone of the IANA list; choose one that is offered, such as Europe/Lisbon.`);
      }
      await post("/api/coach/settings", {
        name: name.value,
        zone: zone.value,
        post_time: time.value.slice(0, 5),
        days: days.reduce((sum, { bit, box }) => sum | (box.checked ? 1 << bit : 0), 0),
        open_minutes: Math.round(Number(hours.value) * 60),
        mode: mode.value,
        language: language.value,
        style: style.value,
        points: scale.value,
        wrong_cost: Number(wrong.value),
        hint_cost: Number(hint.value),
        defences: defences.value,
      });
      told.textContent = "Saved. The week's times follow.";
    });
  });
  return page;
}

function link(address) {
  const told = make("p", { class: "told", role: "status" });
  const shown = make("input", { id: "member-link", readonly: true, value: address, "aria-label": "The link for members" });
  shown.addEventListener("focus", () => shown.select());
  return make(
    "section",
    { class: "sheet", "aria-labelledby": "link-title" },
    make("h3", { id: "link-title" }, "The link for members"),
    make("p", { class: "help" }, "Whoever has it can come in. Give it to your group only, not on a public page."),
    make(
      "div",
      { class: "row" },
      shown,
      button("Copy", (event) =>
        careful(event.currentTarget, told, async () => {
          shown.select();
          await navigator.clipboard.writeText(shown.value);
          told.textContent = "Copied.";
        }),
      ),
      button("Make a new link", async (event) => {
        const control = event.currentTarget;
        const yes = await sure(
          "Make a new link? The old one stops working at once. Every member is told so on their open page, and has to come in by the new one.",
          "Make a new link",
        );
        if (!yes) return;
        await careful(control, told, async () => {
          shown.value = await post("/api/coach/link");
          told.textContent = "The old link is dead. Send this one to your members.";
        });
      }),
    ),
    told,
  );
}

/** A new coach's link: shown once, to whoever makes it. */
function coachLink(state) {
  const told = make("p", { class: "told", role: "status" });
  const shown = make("input", { id: "coach-link", readonly: true, hidden: true, "aria-label": "The new coach's link" });
  shown.addEventListener("focus", () => shown.select());
  return make(
    "section",
    { class: "sheet", "aria-labelledby": "coach-link-title" },
    make("h3", { id: "coach-link-title" }, "The coach's link"),
    make(
      "p",
      { class: "help" },
      "Whoever has it is a coach here. The bot prints it when it starts. Make a new one when the old one may have come into wrong hands, or when somebody coaches no longer: it stops for all but you, and who should stay a coach comes in by the new one.",
    ),
    make(
      "div",
      { class: "row" },
      shown,
      button("Make a new coach's link", async (event) => {
        const control = event.currentTarget;
        const yes = await sure(
          "Make a new coach's link? The old one stops working at once. Every other coach is told so on their open page, and is a coach again only by the new one. You stay in.",
          "Make a new coach's link",
        );
        if (!yes) return;
        await careful(control, told, async () => {
          // The feed goes by the link that stops now.
          state.feed.pause();
          try {
            shown.value = await post("/api/coach/coach-link");
            shown.hidden = false;
            told.textContent = "The old link is dead. Keep this one safe, and give it to your fellow coaches only.";
          } finally {
            state.feed.connect();
          }
        });
      }),
    ),
    told,
  );
}
