// @ts-check
// Members in the coach's hands, and what the coaches did.

import { careful, get, post } from "./ask.js";
import { all, button, byId, choice, field, fill, leaveField, make, sure } from "./build.js";
import { offering } from "./naming.js";
import { rankMark } from "./talk.js";
import { stamp } from "./when.js";
import { listed, say, sayAround } from "./words.js";

const times = () => [
  [60, say("coaching-for-an-hour")],
  [24 * 60, say("coaching-for-a-day")],
  [7 * 24 * 60, say("coaching-for-a-week")],
  ["", say("coaching-until-lifted")],
];

/** Opens the view; members that were unfolded stay so. */
export async function openMembers(state) {
  const place = byId("members");
  // What is being typed is not taken away.
  if (place.contains(document.activeElement) && document.activeElement?.matches("input, select")) return;
  const unfolded = new Set(all("details[data-member][open]", place).map((item) => item.dataset.member));
  try {
    const [members, deeds] = await Promise.all([get("/api/coach/members"), get("/api/coach/deeds")]);
    fill(
      place,
      make("p", { class: "help" }, say("coaching-members-what")),
      make("div", {}, members.map((member) => entry(member, members, state, unfolded.has(String(member.id))))),
      done(deeds),
    );
  } catch (error) {
    place.replaceChildren(make("p", { class: "trouble" }, error.message));
  }
}

function entry(member, members, state, open) {
  const item = make(
    "details",
    { class: "past", "data-member": member.id },
    make(
      "summary",
      { id: `member-${member.id}` },
      make("span", { class: "number" }, member.name),
      rankMark(member.rank),
      stands(member),
      make("span", { class: "help" }, given(member)),
      stamp(member.joined_at),
    ),
    body(member, members, state),
  );
  item.open = open;
  return item;
}

const given = ({ answers, devices }) =>
  listed(
    [
      say("coaching-answers", { count: answers }),
      devices > 1 ? say("coaching-devices", { count: devices }) : "",
    ].filter(Boolean),
  );

function stands({ removed_at: removed, muted }) {
  if (removed) return make("span", { class: "stands" }, say("coaching-removed"));
  if (!muted) return null;
  return make(
    "span",
    { class: "stands" },
    muted.until ? sayAround("coaching-muted-until", { at: stamp(muted.until) }) : say("coaching-muted"),
  );
}

function body(member, members, state) {
  const told = make("p", { class: "trouble", role: "alert" });
  const address = `/api/coach/members/${member.id}`;
  const again = () => {
    leaveField();
    return openMembers(state);
  };
  const act = (control, path, content) =>
    careful(control, told, async () => {
      await post(`${address}/${path}`, content);
      await again();
    });
  const coach = member.rank === "coach";
  return make(
    "div",
    { class: "sheet member" },
    rename(member, address, told, again),
    coach || member.removed_at ? null : mute(member, act),
    member.removed_at ? null : merge(member, members, act),
    make(
      "div",
      { class: "row" },
      member.removed_at
        ? button(say("coaching-let-back"), (event) => act(event.currentTarget, "let-back"))
        : coach
          ? null
          : button(say("coaching-remove"), (event) => remove(event.currentTarget, member, act)),
      button(say("coaching-take-kept"), (event) => take(event.currentTarget, member, address, told)),
      coach ? null : button(say("coaching-erase"), (event) => erase(event.currentTarget, member, act)),
    ),
    coach
      ? make("p", { class: "help" }, say("coaching-is-coach"))
      : null,
    told,
  );
}

function rename(member, address, told, again) {
  const input = make("input", { id: `rename-${member.id}`, maxlength: 80, value: member.name, autocomplete: "off" });
  const form = make("form", { class: "fields" }, field(say("room-name"), input), make("button", {}, say("coaching-rename")));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    careful(event.submitter, told, () =>
      offering(told, input, async () => {
        await post(`${address}/rename`, { name: input.value });
        await again();
      }),
    );
  });
  return form;
}

function mute(member, act) {
  if (member.muted) {
    return make(
      "p",
      {},
      say("coaching-may-not-talk", { name: member.name }),
      " ",
      member.muted.why ? `${say("coaching-muted-why", { why: member.muted.why })} ` : "",
      button(say("coaching-unmute"), (event) => act(event.currentTarget, "unmute")),
    );
  }
  const time = choice(times(), 60);
  const why = make("input", { id: `mute-why-${member.id}`, maxlength: 200, autocomplete: "off", placeholder: say("coaching-may-be-empty") });
  const form = make("form", { class: "fields" }, field(say("coaching-no-talk"), time), field(say("coaching-mute-why"), why), make("button", {}, say("coaching-mute")));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    act(event.submitter, "mute", { minutes: time.value ? Number(time.value) : null, why: why.value });
  });
  return form;
}

function merge(member, members, act) {
  const others = members.filter((other) => other.id !== member.id && !other.removed_at);
  if (!others.length) return null;
  const other = choice([["", say("coaching-nobody-else")], ...others.map(({ id, name }) => [id, name])], "");
  const form = make("form", { class: "fields" }, field(say("coaching-is-also", { name: member.name }), other), make("button", {}, say("coaching-merge")));
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const chosen = others.find(({ id }) => String(id) === other.value);
    if (!chosen) return;
    const yes = await sure(
      say("coaching-merge-sure", { name: member.name, other: chosen.name }),
      say("coaching-merge"),
    );
    if (yes) await act(event.submitter, "merge", { other: chosen.id });
  });
  return form;
}

async function remove(control, member, act) {
  const yes = await sure(
    say("coaching-remove-sure", { name: member.name }),
    say("coaching-remove-yes"),
  );
  if (yes) await act(control, "remove");
}

async function erase(control, member, act) {
  const yes = await sure(
    member.removed_at
      ? say("coaching-erase-removed-sure", { name: member.name })
      : say("coaching-erase-sure", { name: member.name }),
    say("room-erase"),
    say("room-keep"),
  );
  if (yes) await act(control, "erase");
}

/** Hands over what is kept, as a file. */
function take(control, member, address, told) {
  return careful(control, told, async () => {
    const kept = await post(`${address}/kept`);
    const file = URL.createObjectURL(new Blob([JSON.stringify(kept, null, 2)], { type: "application/json" }));
    const link = make("a", { href: file, download: `kept-of-member-${member.id}.json` });
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(file), 10_000);
  });
}

/** What the coaches did, each with who it was. */
function done(deeds) {
  if (!deeds.length) return "";
  const line = ({ by, deed, about, note, at }) =>
    make(
      "li",
      {},
      stamp(at),
      " ",
      sayAround("coaching-deed", {
        deed,
        by: make("strong", {}, by ?? say("coaching-erased-coach")),
        about: about ?? say("coaching-erased-member"),
      }),
      note ? ` (${note})` : "",
    );
  return make(
    "details",
    { class: "more" },
    make("summary", {}, say("coaching-deeds")),
    make("ol", { class: "deeds" }, deeds.map(line)),
  );
}
