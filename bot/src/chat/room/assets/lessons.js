// @ts-check
// Lessons after their reveals: the list, and one lesson stepped through move by move, by buttons or by keys.

import { get } from "./ask.js";
import { button, fill, fresh, make } from "./build.js";
import { inWords, numbered } from "./post.js";
import { stamp } from "./when.js";
import { both, moves, say, sayAround } from "./words.js";

const back = () => make("p", {}, make("a", { href: "#lessons" }, say("room-lessons-all")));

function list(rows) {
  if (!rows.length) return [make("p", {}, say("room-lessons-none"))];
  return [
    make("p", { class: "help" }, say("room-lessons-what")),
    make(
      "ul",
      { class: "lesson-list" },
      rows.map((row) =>
        make(
          "li",
          {},
          make("a", { href: `#lessons/${row.lesson}` }, row.title),
          row.topic ? make("span", { class: "topic" }, " ", row.topic) : null,
          make("span", { class: "help" }, " ", say("room-lesson-parts", { count: row.revealed })),
          toCome(row.to_come),
        ),
      ),
    ),
  ];
}

/** What of a lesson is not revealed: that it is, and when, and nothing of what it holds. */
function toCome({ open, parts, next }) {
  const said = [];
  if (open.length) said.push(make("span", {}, say("room-lesson-open", { count: open.length, numbers: both(open.map(String)) })));
  if (parts) said.push(make("span", {}, next ? sayAround("room-lesson-comes", { count: parts, at: stamp(next) }) : say("room-lesson-later", { count: parts })));
  return said.length ? make("p", { class: "help to-come" }, said.flatMap((one, at) => (at ? [" ", one] : [one]))) : null;
}

/** One lesson at one of its places. */
class Walk {
  constructor(lesson) {
    this.lesson = lesson;
    this.at = 0;
    this.place = 0;
    this.title = fresh("walk");
    this.said = make("div", { class: "walk-said", role: "status", "aria-live": "polite" });
    this.body = make("div", {});
    this.controls = make("div", { class: "walk-controls" });
    this.element = make(
      "article",
      { class: "walk", tabindex: "-1", "aria-labelledby": this.title, "aria-keyshortcuts": "ArrowLeft ArrowRight Home End", "data-lesson": lesson.lesson },
      make("h3", { id: this.title }, lesson.title),
      this.body,
      this.controls,
      this.said,
      make("p", { class: "help" }, say("room-walk-keys")),
    );
    this.element.addEventListener("keydown", (event) => this.key(event));
  }

  get part() {
    return this.lesson.parts[this.at];
  }

  get here() {
    return this.part.places[this.place];
  }

  /** Where the arrow keys lead; `null` where there is nothing that way. */
  ways() {
    const { lesson, at, here } = this;
    const lastOf = (part) => this.end(part, 0);
    const forth = here?.next.length ? [at, here.next[0]] : at + 1 < lesson.parts.length ? [at + 1, 0] : null;
    const backwards = here && here.before !== null ? [at, here.before] : at > 0 ? [at - 1, lastOf(lesson.parts[at - 1])] : null;
    const end = here ? this.end(this.part, this.place) : 0;
    return {
      ArrowRight: forth,
      ArrowLeft: backwards,
      Home: this.place === 0 ? null : [at, 0],
      End: here && end !== this.place ? [at, end] : null,
    };
  }

  /** The end of the main line from a place on. */
  end(part, from) {
    let at = from;
    while (part.places[at]?.next.length) at = part.places[at].next[0];
    return at;
  }

  /** The places from the start to this one. */
  path() {
    const path = [];
    for (let at = this.place; at !== null && this.part.places[at]; at = this.part.places[at].before) path.unshift(at);
    return path;
  }

  /** Where the side line that this place is in leaves the line that it belongs to; `null` on the main line. */
  branch() {
    const { places } = this.part;
    const path = this.path();
    for (let n = path.length - 1; n > 0; n -= 1) {
      if (places[path[n - 1]].next[0] !== path[n]) return path[n - 1];
    }
    return null;
  }

  key(event) {
    if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const way = this.ways()[event.key];
    if (way === undefined) return;
    event.preventDefault();
    if (way) this.go(way);
  }

  go([at, place]) {
    this.at = at;
    this.place = place;
    this.show();
  }

  show() {
    const { part, here, lesson } = this;
    const within = this.element.contains(document.activeElement);
    fill(
      this.body,
      make("p", { class: "help" }, say("room-walk-step", { step: String(part.step), steps: String(lesson.steps) }), " · ", make("a", { href: `#past/${part.post}` }, numbered(part))),
      lesson.parts.length > 1 ? this.parts() : null,
      part.words ? make("p", { class: "coach-words" }, part.words) : null,
      here
        ? make(
            "figure",
            { class: "problem" },
            make("img", { src: here.src, alt: here.alt, width: 560, height: 560 }),
            make("figcaption", {}, this.line(), inWords(here.alt)),
          )
        : null,
    );
    const ways = this.ways();
    const turn = (key, label, name) => button(label, () => ways[key] && this.go(ways[key]), { disabled: !ways[key], "data-key": key, "aria-keyshortcuts": key, title: name });
    fill(
      this.controls,
      make(
        "div",
        { class: "row" },
        turn("Home", say("room-walk-first"), say("room-walk-first-what")),
        turn("ArrowLeft", say("room-walk-back"), say("room-walk-back-what")),
        turn("ArrowRight", say("room-walk-forward"), say("room-walk-forward-what")),
        turn("End", say("room-walk-last"), say("room-walk-last-what")),
      ),
      this.sideLines(),
    );
    this.tell();
    // A way that is gone takes the keys' place with it.
    if (within && !this.element.contains(document.activeElement)) this.element.focus({ preventScroll: true });
    // The next board is there when it is asked for.
    if (ways.ArrowRight) new Image().src = this.lesson.parts[ways.ArrowRight[0]].places[ways.ArrowRight[1]]?.src ?? "";
  }

  /** A button for each part. */
  parts() {
    return make(
      "div",
      { class: "row walk-parts", role: "group", "aria-label": say("room-walk-parts") },
      this.lesson.parts.map((part, at) =>
        button(say("room-walk-part", { number: String(at + 1) }), () => this.go([at, 0]), {
          class: "small",
          "aria-current": at === this.at ? "step" : null,
          "aria-label": say("room-walk-part-of", { number: String(at + 1), post: String(part.number) }),
        }),
      ),
    );
  }

  /** The line to this place, the last move in bold. */
  line() {
    const path = this.path().slice(1);
    if (!path.length) return make("p", { class: "line" }, say("room-walk-start"));
    return make(
      "p",
      { class: "line" },
      path.map((at, n) => {
        const written = moves(this.part.places[at].written);
        // Between a move and its answer the number is not said again.
        const short = n > 0 ? written.replace(/^\d+\.\.\./, "") : written;
        return at === this.place ? make("strong", {}, short) : `${short} `;
      }),
    );
  }

  /** The ways into side lines, and out of the one that this is. */
  sideLines() {
    const { places } = this.part;
    const others = this.here?.next.slice(1) ?? [];
    const out = this.branch();
    if (!others.length && out === null) return null;
    return make(
      "div",
      { class: "row side-lines" },
      others.map((at) => button(say("room-walk-side", { move: moves(places[at].written) }), () => this.go([this.at, at]))),
      out === null ? null : button(say("room-walk-leave"), () => this.go([this.at, out])),
    );
  }

  /** What there is to hear and to read of this place. */
  tell() {
    const { part, here } = this;
    const told = [];
    if (here?.words_before) told.push(make("p", { class: "coach-words" }, here.words_before));
    if (here?.written) told.push(make("p", { class: "moved" }, say("room-walk-moved", { move: moves(here.written), told: here.moved })));
    if (here?.words_after) told.push(make("p", { class: "coach-words" }, here.words_after));
    if (part.asked_at === this.place && part.task) told.push(make("p", { class: "task" }, make("span", { class: "sign" }, part.sign), part.task));
    // What was said at the reveal comes behind the move that was asked for.
    const before = part.asked_at !== null && here && this.leadsToAsked();
    if (part.at_reveal && (!before || !here.next.length)) told.push(make("p", { class: "coach-words" }, part.at_reveal));
    fill(this.said, ...told);
  }

  /** Whether this place is on the way to the one where the move was asked for. */
  leadsToAsked() {
    for (let at = this.part.asked_at; at !== null; at = this.part.places[at].before) if (at === this.place) return true;
    return false;
  }
}

/** The members' lessons: the one that is wanted, or all. */
export async function openLessons(place, wanted) {
  place.dataset.shown = wanted ?? "";
  const still = () => place.dataset.shown === (wanted ?? "");
  try {
    if (!wanted) {
      const rows = await get("/api/lessons");
      if (still()) fill(place, ...list(rows));
      return;
    }
    const lesson = await get(`/api/lessons/${wanted}`);
    if (!still()) return;
    const walk = new Walk(lesson);
    fill(place, back(), walk.element, toCome(lesson.to_come));
    walk.show();
    walk.element.focus({ preventScroll: true });
    window.scrollTo(0, 0);
  } catch (error) {
    if (still()) fill(place, back(), make("p", { class: "trouble", role: "alert" }, error.message));
  }
}
