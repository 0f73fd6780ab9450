// @ts-check
// Members in the coach's hands, and what the coaches did.

import { careful, get, post } from "./ask.js";
import { all, button, byId, choice, counted, field, leaveField, make, sure } from "./build.js";
import { offering } from "./naming.js";
import { rankMark } from "./talk.js";
import { stamp } from "./when.js";

const TIMES = [
  [60, "For an hour"],
  [24 * 60, "For a day"],
  [7 * 24 * 60, "For a week"],
  ["", "Until I lift it"],
];

/** Opens the view; members that were unfolded stay so. */
export async function openMembers(state) {
  const place = byId("members");
  // What is being typed is not taken away.
  if (place.contains(document.activeElement) && document.activeElement?.matches("input, select")) return;
  const unfolded = new Set(all("details[data-member][open]", place).map((item) => item.dataset.member));
  try {
    const [members, deeds] = await Promise.all([get("/api/coach/members"), get("/api/coach/deeds")]);
    place.replaceChildren(
      make("p", { class: "help" }, "Everyone who has given a name here. Nobody can take a name that looks like another one's."),
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
      {},
      make("span", { class: "number" }, member.name),
      rankMark(member.rank),
      stands(member),
      make("span", { class: "help" }, counted(member.answers, "answer"), member.devices > 1 ? `, ${member.devices} devices` : ""),
      stamp(member.joined_at),
    ),
    body(member, members, state),
  );
  item.open = open;
  return item;
}

function stands(member) {
  if (member.removed_at) return make("span", { class: "stands" }, "Removed");
  if (member.muted) {
    return make("span", { class: "stands" }, "Muted", member.muted.until ? " until " : "", member.muted.until ? stamp(member.muted.until) : "");
  }
  return null;
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
        ? button("Let back in", (event) => act(event.currentTarget, "let-back"))
        : coach
          ? null
          : button("Remove from the group", (event) => remove(event.currentTarget, member, act)),
      button("Take away what is kept (JSON)", (event) => take(event.currentTarget, member, address, told)),
      coach ? null : button("Erase", (event) => erase(event.currentTarget, member, act)),
    ),
    coach
      ? make("p", { class: "help" }, "A coach. To shut a coach out, make a new coach's link under Settings; after that they are a member like any other.")
      : null,
    told,
  );
}

function rename(member, address, told, again) {
  const input = make("input", { maxlength: 80, value: member.name, autocomplete: "off" });
  const form = make("form", { class: "fields" }, field("Name", input), make("button", {}, "Rename"));
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
      `${member.name} can answer, and not write to the group.`,
      member.muted.why ? ` The reason: ${member.muted.why}. ` : " ",
      button("Let talk again", (event) => act(event.currentTarget, "unmute")),
    );
  }
  const time = choice(TIMES, 60);
  const why = make("input", { maxlength: 200, autocomplete: "off", placeholder: "May be empty" });
  const form = make("form", { class: "fields" }, field("No talk", time), field("Reason, which the member reads", why), make("button", {}, "Mute"));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    act(event.submitter, "mute", { minutes: time.value ? Number(time.value) : null, why: why.value });
  });
  return form;
}

function merge(member, members, act) {
  const others = members.filter((other) => other.id !== member.id && !other.removed_at);
  if (!others.length) return null;
  const other = choice([["", "Nobody else"], ...others.map(({ id, name }) => [id, name])], "");
  const form = make("form", { class: "fields" }, field(`${member.name} is also`, other), make("button", {}, "Make them one"));
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const chosen = others.find(({ id }) => String(id) === other.value);
    if (!chosen) return;
    const yes = await sure(
      `Make ${chosen.name} and ${member.name} one person, called ${member.name}? Answers, hints, points and messages of both become one person's. Where both tried the same position, their answers count in the order they came. This cannot be undone.`,
      "Make them one",
    );
    if (yes) await act(event.submitter, "merge", { other: chosen.id });
  });
  return form;
}

async function remove(control, member, act) {
  const yes = await sure(
    `Remove ${member.name}? Their open pages close at once, and they cannot come back with this name. What they wrote stays. Whoever has the members' link can still come in as somebody new: make a new link under Settings, too, if they must not.`,
    "Remove",
  );
  if (yes) await act(control, "remove");
}

async function erase(control, member, act) {
  const yes = await sure(
    `Erase everything of ${member.name}, on their word? Name, answers, points and messages are gone for good.${member.removed_at ? " Nothing is left then to know them by, so they are shut out no longer: make a new link if they must not come back." : ""}`,
    "Erase everything",
    "Keep it",
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

const DEEDS = {
  hide: "hid a message of",
  "put-back": "showed a message again of",
  mute: "muted",
  unmute: "let talk again",
  remove: "removed",
  "let-back": "let back in",
  rename: "renamed",
  merge: "made two members one:",
  export: "took away what is kept of",
  erase: "erased a member",
  judge: "judged an answer of",
  answer: "answered in private",
  "no-answer": "noted that no answer is needed for",
  "member-link": "made a new members' link",
  "coach-link": "made a new coach's link",
  "coach-came": "came in by the coach's link",
  "add-coach": "made a coach of",
  "remove-coach": "took the coach's rank from",
  settings: "changed the settings",
  "post-now": "posted at once",
  "close-now": "closed early",
  pause: "paused the posts",
  resume: "let posts go out again",
};

/** What the coaches did, each with who it was. */
function done(deeds) {
  if (!deeds.length) return "";
  const line = ({ by, deed, about, note, at }) =>
    make(
      "li",
      {},
      stamp(at),
      " ",
      make("strong", {}, by ?? "A coach who is erased"),
      ` ${DEEDS[deed] ?? deed}`,
      about && about !== by ? ` ${about}` : "",
      note ? ` (${note})` : "",
    );
  return make(
    "details",
    { class: "more" },
    make("summary", {}, "What the coaches did"),
    make("ol", { class: "deeds" }, deeds.map(line)),
  );
}
