// @ts-check
// The engagement summary: in words, figures and charts, and to take away.

import { careful, get } from "./ask.js";
import { byId, make } from "./build.js";
import { inWords, signOf } from "./post.js";
import { byTopic, questions, table } from "./tables.js";
import { amount, listed, moves, percent, say } from "./words.js";

/** Opens the view with the usual period. */
export function openSummary() {
  const form = byId("summary-ask");
  if (!form.dataset.ready) {
    form.dataset.ready = "yes";
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      load(event.submitter);
    });
  }
  return load(null);
}

/** The day that the group's clock shows at a moment; `before` the moment itself, for an end. */
function dayOf(moment, zone, before = 0) {
  const at = new Date(new Date(moment).getTime() - before);
  // Sweden writes dates as the date fields take them.
  return at.toLocaleDateString("sv-SE", { timeZone: zone });
}

function query() {
  const asked = new URLSearchParams();
  for (const [name, { value }] of Object.entries({ from: byId("from"), to: byId("to"), topic: byId("summary-topic") })) {
    if (value) asked.set(name, value);
  }
  return asked;
}

function load(control) {
  return careful(control, byId("summary-trouble"), async () => {
    const asked = query();
    const [summary, { charts }] = await Promise.all([
      get(`/api/coach/summary?${asked}`),
      get(`/api/coach/summary/charts?${asked}`),
    ]);
    const { zone } = await get("/api/me");
    if (summary.from && !byId("from").value) byId("from").value = dayOf(summary.from, zone);
    if (summary.to && !byId("to").value) byId("to").value = dayOf(summary.to, zone, 1);
    byId("summary").replaceChildren(...content(summary, charts, query()));
  });
}

/** How many solved a position, with their share of those who tried. */
function share({ solved, tried }) {
  return tried ? `${amount(solved)} (${percent(solved, tried)})` : amount(solved);
}

function content(summary, charts, covered) {
  const problems = summary.posts.filter((row) => row.kind === "problem");
  const asked = summary.posts.length - problems.length;
  return [
    summary.advice ? make("p", { class: "advice" }, summary.advice) : "",
    make(
      "ul",
      {},
      make("li", {}, say("coaching-took-part", { members: summary.members.filter((m) => m.tried || m.answered).length, posts: summary.posts.length })),
      asked ? make("li", {}, say("coaching-kinds", { problems: problems.length, questions: asked })) : null,
      make("li", {}, summary.went_quiet.length ? say("coaching-went-quiet", { names: listed(summary.went_quiet) }) : say("coaching-nobody-quiet")),
      summary.came_back.length ? make("li", {}, say("coaching-came-back", { names: listed(summary.came_back) })) : null,
    ),
    make(
      "p",
      { class: "row" },
      say("coaching-take-away"),
      ["members", "posts", "topics"].map((which) => {
        const file = `summary-${which}.csv`;
        return make("a", { class: "button", href: `/api/coach/${file}?${covered}`, download: file }, say("coaching-csv", { table: which }));
      }),
      make("a", { class: "button", href: `/api/coach/summary.json?${covered}`, download: "engagement-summary.json" }, say("coaching-json")),
    ),
    make(
      "div",
      { class: "charts" },
      charts.map((chart) => make("figure", {}, make("img", { src: chart.src, alt: chart.alt }), inWords(chart.alt, say("coaching-chart-in-words")))),
    ),
    table(
      say("coaching-posts"),
      [
        { title: say("coaching-number"), of: (row) => String(row.number), name: true, number: true },
        { title: say("room-topic"), of: (row) => `${signOf(row)}${row.topic ? ` ${row.topic}` : ""}` },
        { title: say("room-tried"), of: (row) => amount(row.tried), number: true },
        { title: say("room-solved"), of: (row) => (row.kind === "problem" ? share(row) : ""), number: true },
        { title: say("room-first-try"), of: (row) => (row.kind === "problem" ? amount(row.first_try) : ""), number: true },
        { title: say("coaching-common-wrong"), of: (row) => row.common_wrong.map((wrong) => `${moves(wrong.san)} (${amount(wrong.count)})`).join(", ") },
      ],
      summary.posts,
    ),
    byTopic(say("coaching-weakest-first"), summary.topics),
    table(
      say("coaching-members"),
      [
        { title: say("room-name"), of: (row) => row.name, name: true },
        { title: say("room-tried"), of: (row) => amount(row.tried), number: true },
        { title: say("room-solved"), of: (row) => amount(row.solved), number: true },
        { title: say("room-first-try"), of: (row) => amount(row.first_try), number: true },
        ...questions(summary.members),
        { title: say("coaching-hints"), of: (row) => amount(row.hints), number: true },
        { title: say("room-points"), of: (row) => amount(row.points), number: true },
      ],
      summary.members,
    ),
  ];
}
