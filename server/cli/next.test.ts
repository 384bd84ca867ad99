import { describe, expect, test } from "vitest";
import { commandLineOf } from "./testing/run.ts";

const ON = "2026-11-25";
const SUNDAYS = { weekdays: [{ weekday: 7, reason: "Sunday" }] };
const line = (interval: unknown, history: unknown, more: object = {}) => ({
  interval,
  history,
  on: ON,
  ...more,
});

async function next(...lines: readonly unknown[]) {
  const text = lines.map((one) => (typeof one === "string" ? one : JSON.stringify(one)));
  const { status, out, err } = await commandLineOf()(["next", "--json"], text.join("\n"));
  return { status, err, rows: out.map((one) => JSON.parse(one)) };
}
const plainly = async (...lines: readonly unknown[]) =>
  (await commandLineOf()(["next"], lines.map((one) => JSON.stringify(one)).join("\n"))).out;

const yearly = { kind: "from-last-done", every: "P12M", early: "P30D", late: "P30D" };
const rule = (environment: string, every: string) => ({
  when: [environment],
  // biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
  then: every,
  basis: "HSE HSG107",
});
const byRisk = {
  kind: "by-risk",
  table: {
    policy: "unique",
    inputs: ["asset.environment"],
    rules: [rule("workshop", "P12M"), rule("site", "P3M")],
  },
  worse: { environment: ["workshop", "site"] },
};
const service = { kind: "on-usage", point: "odometer", every: 10_000, unit: "km", late: 500 };
const CLOSED = {
  closures: [{ from: "2026-12-21", to: "2027-01-03", reason: "closed in winter" }],
};

describe("ten varied assets, each with its dates and why", () => {
  test.each<[string, object, string, string]>([
    [
      "a lifting accessory",
      line(yearly, ["2025-03-14", "2026-03-14"], { calendar: SUNDAYS }),
      "2027-02-12 2027-03-13 2027-04-13 not-yet",
      "12 months from 2026-03-14 (last done), rolled back to 2027-03-13 from 2027-03-14 (Sunday)",
    ],
    [
      "a gas appliance",
      line({ kind: "anniversary", every: "P12M", within: "P2M", afterLate: "restart" }, [
        "2026-02-10",
        "2026-12-11",
      ]),
      "2027-12-11 2028-02-10 2028-02-10 not-yet",
      "12 months from 2027-02-10, kept as counted from 2026-02-10: done in its window on 2026-12-11",
    ],
    [
      "an emergency light",
      line({ kind: "each-period", period: "month" }, ["2026-10-30"]),
      "2026-11-01 2026-11-30 2026-11-30 early",
      "once in each calendar month (last done 2026-10-30)",
    ],
    [
      "a fire alarm",
      line({ kind: "spacing", min: "P9M", max: "P15M", every: "P12M" }, [
        "2025-08-01",
        "2025-09-01",
      ]),
      "2026-05-01 2026-08-01 2026-11-01 overdue",
      "9 months to 15 months from 2025-08-01 (last done), not counting 2025-09-01, sooner than 9 months after it",
    ],
    [
      "a sprinkler valve",
      line({ kind: "recurrence", rrule: "FREQ=MONTHLY;BYDAY=1MO", start: "2026-01-05" }, [
        "2026-11-02",
      ]),
      "2026-12-07 2026-12-07 2026-12-07 not-yet",
      "the next of FREQ=MONTHLY;BYDAY=1MO after 2026-11-02 (last done)",
    ],
    [
      "a portable tool on a site",
      line(byRisk, ["2026-09-01"], { particulars: { environment: "site" } }),
      "2026-12-01 2026-12-01 2026-12-01 not-yet",
      "3 months from 2026-09-01 (last done), for environment: site (HSE HSG107)",
    ],
    [
      "a portable tool of no known environment",
      line(byRisk, ["2026-09-01"], { particulars: { class: "I" } }),
      "2026-09-01 2026-09-01 2026-09-01 undecided",
      "undecided: it needs environment",
    ],
    [
      "a van",
      line(service, [{ on: "2026-10-01" }], {
        meter: [
          { on: "2026-11-01", value: 43_100, unit: "km" },
          { on: "2026-10-01", value: 40_000, unit: "km" },
        ],
      }),
      "2027-01-09 2027-01-09 2027-01-14 not-yet",
      "10000 km from 2026-10-01 (last done): it stood at 43100 km on 2026-11-01 and, at 100 km a day, reaches 50000 km then",
    ],
    [
      "a fire door that was repaired",
      line({ kind: "on-event", after: ["repaired"], within: "P7D", blocks: true }, ["2026-06-01"], {
        events: [{ kind: "repaired", on: "2026-11-23" }],
      }),
      "2026-11-23 2026-11-30 2026-11-30 blocked",
      "7 days after the repair of 2026-11-23",
    ],
    [
      "a water outlet in a closed house",
      line({ kind: "from-last-done", every: "P1M", whenClosed: "excused" }, ["2026-11-22"], {
        on: "2026-12-24",
        calendar: CLOSED,
      }),
      "2026-12-22 2027-01-04 2027-01-04 excused",
      "1 month from 2026-11-22 (last done), excused from 2026-12-22 while closed (closed in winter), due again 2027-01-04",
    ],
  ])("%s", async (_, given, dates, sentence) => {
    const { status, rows } = await next(given);
    const [row] = rows;
    expect([status, row.problems]).toEqual([0, []]);
    expect(`${row.earliest} ${row.due} ${row.latest} ${row.status}`).toBe(dates);
    expect(row.sentence).toBe(sentence);
    expect(row.explanation.code).toBeTypeOf("string");
  });
});

test("history comes in any order, as dates or whole records, and papers prove nothing", async () => {
  const records = [
    { on: "2026-03-14", at: "2026-03-14T09:30:00Z", entry: "b" },
    { on: "2026-01-01", broughtForward: true, counts: false },
    { on: "2026-11-01", counts: false },
  ];
  const { rows } = await next(line(yearly, records), line(yearly, records.toReversed()));
  expect(rows.map(({ due, from }) => [due, from])).toEqual([
    ["2027-03-14", "b"],
    ["2027-03-14", "b"],
  ]);
});

test("never done is due since it was registered, and no event is no date", async () => {
  const never = line(yearly, [], { registered: "2026-10-01" });
  const event = line({ kind: "on-event", after: ["repaired"], within: "P7D" }, []);
  const { rows } = await next(never, event);
  expect(rows.map(({ due, latest, status }) => [due, latest, status])).toEqual([
    ["2026-10-01", "2026-10-01", "never-done"],
    [null, null, "not-yet"],
  ]);
});

test("a whole definition and an override do as a bare rule does", async () => {
  const interval = {
    title: "Yearly",
    assetType: "hoist",
    checklist: "01890000-0000-7000-8000-000000000001",
    rule: yearly,
  };
  const monthly = { kind: "from-last-done", every: "P1M" };
  const override = { rule: monthly, reason: "new site", until: "2026-12-31" };
  const { rows } = await next(line(interval, ["2026-11-01"], { override }));
  expect([rows[0].due, rows[0].sentence]).toEqual([
    "2026-12-01",
    "1 month from 2026-11-01 (last done), by a rule of its own until 2026-12-31 (new site)",
  ]);
});

test("what is wrong with a line is told on it by its JSON Pointer, and the next is answered", async () => {
  const { status, rows, err } = await next(
    "{",
    line({ ...yearly, every: "P0M" }, ["2026-02-30"]),
    line({ kind: "from-time-to-time" }, []),
    line({ ...yearly, every: "often" }, []),
    { interval: yearly, on: ON },
    line(yearly, [], { calendar: { closures: [{ from: "2026-02-30", to: "x", reason: "r" }] } }),
    line({ kind: "recurrence", rrule: "FREQ=HOURLY", start: ON }, []),
    line(yearly, [], { override: { rule: { ...yearly, late: "P9Y" }, reason: "r" } }),
    line(yearly, ["2026-03-14"]),
  );
  expect(status).toBe(2);
  expect(rows.map(({ due }) => due).slice(-2)).toEqual([null, "2027-03-14"]);
  expect(rows.map(({ problems }) => problems[0]?.pointer)).toEqual([
    "",
    "/interval/every",
    "/interval/kind",
    "/interval/every",
    "",
    "/calendar/closures/0/to",
    "/interval/rrule",
    "/override/rule/late",
    undefined,
  ]);
  expect(rows[1].problems.map(({ says }: { says: string }) => says)).toEqual([
    "/interval/every: it has to be a day or more",
    "/history/0/on: 2026-02-30 is no day of the calendar",
  ]);
  expect(err).toHaveLength(9);
});

test("without --json a line to read, and no date where there is none", async () => {
  const event = { kind: "on-event", after: ["repaired", "reopened"], within: "P0D" };
  expect(await plainly(line(yearly, ["2025-11-01"]), line(event, []), { on: ON })).toEqual([
    "due, in the late window; due 2026-11-01 (2026-10-02 to 2026-12-01): 12 months from 2025-11-01 (last done)",
    "not yet; no date: due once it is repaired or open again; nothing of the kind has happened",
    "not worked out",
  ]);
});
