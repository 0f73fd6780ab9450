// @ts-check
// The engagement summary: in words, figures and charts, and to take away.

import { careful, get } from "./ask.js";
import { byId, counted, make, points } from "./build.js";
import { inWords } from "./post.js";
import { byTopic, table } from "./tables.js";

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

const percent = (part, whole) => (whole ? `${Math.round((100 * part) / whole)} %` : "");

function content(summary, charts, asked) {
  return [
    summary.advice ? make("p", { class: "advice" }, summary.advice) : "",
    make(
      "ul",
      {},
      make("li", {}, `${counted(summary.members.filter((m) => m.tried).length, "member")} took part in ${counted(summary.posts.length, "post")}.`),
      make("li", {}, summary.went_quiet.length ? `Gone quiet: ${summary.went_quiet.join(", ")}.` : "Nobody has gone quiet."),
      summary.came_back.length ? make("li", {}, `Came back: ${summary.came_back.join(", ")}.`) : null,
    ),
    make(
      "p",
      { class: "row" },
      "Take it away:",
      ["members", "posts", "topics"].map((name) => {
        const file = `summary-${name}.csv`;
        return make("a", { class: "button", href: `/api/coach/${file}?${asked}`, download: file }, `${name} (CSV)`);
      }),
      make("a", { class: "button", href: `/api/coach/summary.json?${asked}`, download: "engagement-summary.json" }, "everything (JSON)"),
    ),
    make(
      "div",
      { class: "charts" },
      charts.map((chart) => make("figure", {}, make("img", { src: chart.src, alt: chart.alt }), inNumbers(chart.alt))),
    ),
    table(
      "Posts",
      [
        { title: "No.", of: (row) => String(row.number), name: true },
        { title: "Topic", of: (row) => `${row.stipulation}${row.topic ? ` ${row.topic}` : ""}` },
        { title: "Tried", of: (row) => String(row.tried), number: true },
        { title: "Solved", of: (row) => `${row.solved} ${percent(row.solved, row.tried)}`, number: true },
        { title: "At first try", of: (row) => String(row.first_try), number: true },
        { title: "Commonest wrong moves", of: (row) => row.common_wrong.map((wrong) => `${wrong.san} (${wrong.count})`).join(", ") },
      ],
      summary.posts,
    ),
    byTopic("Topics, the weakest first", summary.topics),
    table(
      "Members",
      [
        { title: "Name", of: (row) => row.name, name: true },
        { title: "Tried", of: (row) => String(row.tried), number: true },
        { title: "Solved", of: (row) => String(row.solved), number: true },
        { title: "At first try", of: (row) => String(row.first_try), number: true },
        { title: "Hints", of: (row) => String(row.hints), number: true },
        { title: "Points", of: (row) => points(row.points), number: true },
      ],
      summary.members,
    ),
  ];
}

function inNumbers(alt) {
  const details = inWords(alt);
  /** @type {Element} */ (details.querySelector("summary")).textContent = "The chart in words";
  return details;
}
