// @ts-check
// The stream of messages: talk, posts and reveals for everyone, and what only this reader sees.

import { make } from "./build.js";
import { reveal, verdict, verdictName } from "./post.js";
import { stamp } from "./when.js";
import { say, sayAround } from "./words.js";

/** Longer texts get a window of their own to scroll in. */
const LONG = 600;

/**
 * A stream in the list element `list`. Items are kept in order of time, and each once: `key` says what
 * an item is about. `controls(line)` gives the buttons that go with a line of talk, `answerControls(reply)`
 * those that go with the reader's own answer; `below(line)` gives what stands under it; `mean` sends a reading of a doubtful reply.
 */
export class Stream {
  /**
   * @param {HTMLElement} list
   * @param {{
   *   controls?: (line: any) => Node[],
   *   answerControls?: (reply: any) => Node[],
   *   below?: (line: any) => Node[],
   *   mean?: (control: HTMLButtonElement, reply: number, reading: number, told: HTMLElement) => void,
   * }} options
   */
  constructor(list, { controls = () => [], answerControls = () => [], below = () => [], mean } = {}) {
    this.list = list;
    this.below = below;
    this.controls = controls;
    this.answerControls = answerControls;
    this.mean = mean;
    this.items = new Map();
    this.lastTalk = 0;
    this.firstTalk = Infinity;
  }

  /** Puts `content` where its time belongs; the same key again replaces what was there. */
  put(key, at, content, kind = "") {
    const time = new Date(at).getTime();
    const item = make("li", { class: kind, "data-key": key }, content);
    const earlier = this.items.get(key);
    this.items.set(key, { item, time });
    if (earlier) {
      earlier.item.replaceWith(item);
      return item;
    }
    /** @type {Element | null} */
    let next = null;
    for (let child = this.list.lastElementChild; child; child = child.previousElementSibling) {
      if (this.items.get(child.getAttribute("data-key")).time <= time) break;
      next = child;
    }
    this.list.insertBefore(item, next);
    return item;
  }

  /** Takes away what `test` says of the keys. */
  drop(test) {
    for (const [key, { item }] of this.items) {
      if (test(key)) {
        item.remove();
        this.items.delete(key);
      }
    }
  }

  /** A line of talk. */
  talk(line) {
    this.lastTalk = Math.max(this.lastTalk, line.id);
    this.firstTalk = Math.min(this.firstTalk, line.id);
    const head = said(line.name, line.said_at, { rank: line.rank, controls: this.controls(line) });
    const content = line.gone ? [head, gone(line)] : [head, words(line.text), ...this.below(line)];
    return this.put(`talk-${line.id}`, line.said_at, content, line.gone ? "gone" : "");
  }

  /** Says that a post was put before the group. */
  posted(row) {
    const number = String(row.number);
    const what = row.topic ? say("room-posted-topic", { number, topic: row.topic }) : say("room-posted", { number });
    return this.put(`post-${row.post}`, row.opened_at, [said(what, row.opened_at)]);
  }

  /** A reveal. */
  revealed(row, sheet, me) {
    return this.put(`reveal-${row.post}`, row.closes_at, reveal(sheet, me));
  }

  /** A reply of this reader with its verdict. */
  judged(reply, at, judged) {
    // What was asked back before is settled by this one.
    for (const asked of this.list.querySelectorAll(`.readings[data-post="${judged.post}"]`)) asked.remove();
    const content = [said(say("room-you"), at, { eyes: say("room-only-you"), controls: this.answerControls(reply) }), words(judged.text), ...verdict(judged, this.mean)];
    return this.put(`reply-${reply}`, at, content, "sealed");
  }

  /** Somebody's answer in a group that keeps them open: covered until the reader wants to see it. */
  answered(answer) {
    const content = [
      said(answer.name, answer.at, { rank: answer.rank, eyes: say("room-has-answered") }),
      make(
        "details",
        { class: "more" },
        make("summary", {}, say("room-show-answer")),
        words(answer.text),
        make("p", { class: "verdict" }, verdictName(answer.verdict)),
        make("p", { class: "verdict-of" }, answer.message),
      ),
    ];
    return this.put(`answer-${answer.reply}`, answer.at, content);
  }

  /** A word from the bot to this reader alone. */
  whispered(key, at, title, text, rank) {
    const content = [said(title, at, { eyes: say("room-only-you"), rank }), make("p", { class: "verdict-of" }, text)];
    return this.put(key, at, content, "sealed");
  }
}

/** The mark of a coach. It comes from the rank alone; a name cannot bring it along. */
export const rankMark = (rank) => (rank === "coach" ? coachMark() : null);

/** The same for one who is a coach. */
export const coachMark = () => make("span", { class: "rank" }, say("room-coach"));

/**
 * The line above a message.
 * @param {string} who
 * @param {string} at
 * @param {{ eyes?: string | null, rank?: string, controls?: Node[] }} more
 */
function said(who, at, { eyes = null, rank = "member", controls = [] } = {}) {
  return make(
    "div",
    { class: "said" },
    make("span", { class: "who" }, who),
    rankMark(rank),
    eyes ? make("span", { class: "eyes" }, eyes) : null,
    stamp(at),
    ...controls,
  );
}

/** A message that is out of everyone's sight, as a coach sees it. */
export function gone({ text, gone: { how, by, at } }) {
  const who = by ?? say("room-somebody-erased");
  return make(
    "details",
    { class: "more" },
    make("summary", {}, sayAround("room-gone", { how, who, at: stamp(at) })),
    words(text),
  );
}

function words(text) {
  const long = text.length > LONG;
  return make("p", { class: long ? "words-of long" : "words-of", tabindex: long ? "0" : null }, text);
}
