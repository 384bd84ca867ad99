import fc from "fast-check";
import { expect, test } from "vitest";
import { next } from "./next.ts";

const RULES = [
  { kind: "from-last-done", every: "P12M", early: "P30D", whenClosed: "excused" },
  { kind: "anniversary", every: "P1Y", anchor: "2020-02-29", within: "P1M", afterLate: "keep" },
  { kind: "each-period", period: "quarter", day: 10, whenClosed: "on-reopening" },
  { kind: "spacing", min: "P9M", max: "P15M", neverAfter: "P16M" },
  { kind: "recurrence", rrule: "FREQ=MONTHLY;BYDAY=-1FR", start: "2024-01-26", early: "P5D" },
  { kind: "on-event", after: ["repaired", "reopened"], within: "P7D", early: "P7D", blocks: true },
  { kind: "on-usage", point: "odometer", every: 100, unit: "km", late: 5, orAfter: "P1Y" },
  { kind: "by-result", score: "condition", first: "P6M" },
];
const CLOSURE = { from: "2026-12-20", to: "2027-01-05", reason: "closed" };
const lineBy = (rule: object) => ({
  interval: rule,
  history: [
    "2026-01-31",
    { on: "2026-03-01", at: "2026-03-01T10:00:00Z", next: { condition: "P3M" } },
  ],
  on: "2026-11-25",
  registered: "2025-01-01",
  calendar: { weekdays: [{ weekday: 7, reason: "Sunday" }], closures: [CLOSURE] },
  events: [{ kind: "repaired", on: "2026-04-01" }],
  meter: [{ on: "2026-01-31", value: 1, unit: "km" }],
  override: { rule: RULES[0], reason: "new site", until: "2027-01-01" },
});

const JUNK = fc.constantFrom<unknown>(
  ...[null, 0, -1, 1e308, 366, "", "x", true, [], {}, ["x"], { any: true }],
  ...["P0D", "P999Y", "P99999D", "9999-12-31", "0000-01-01", "2026-02-30"],
  ...["FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30", "FREQ=HOURLY", "FREQ=DAILY;COUNT=1", "due-anyway"],
);

/** Puts junk where the picks lead to, or takes away what is there. */
function spoilt(line: object, picks: readonly number[], junk: unknown): object {
  const copy = structuredClone(line);
  let at: Record<string, unknown> = copy as Record<string, unknown>;
  for (const [depth, pick] of picks.entries()) {
    const keys = Object.keys(at);
    const key = keys[pick % Math.max(1, keys.length)] ?? "more";
    const inside = at[key];
    if (depth < picks.length - 1 && typeof inside === "object" && inside !== null) {
      at = inside as Record<string, unknown>;
      continue;
    }
    if (junk === true) delete at[key];
    else at[key] = junk;
    break;
  }
  return copy;
}

test("whatever stands on a line it is answered: with dates in order, or with what is wrong", async () => {
  const picks = fc.array(fc.nat(20), { minLength: 1, maxLength: 4 });
  const spoil = fc.array(fc.tuple(picks, JUNK), { maxLength: 3 });
  await fc.assert(
    fc.asyncProperty(fc.constantFrom(...RULES), spoil, async (rule, spoils) => {
      const line = spoils.reduce<object>((one, [at, junk]) => spoilt(one, at, junk), lineBy(rule));
      const out: string[] = [];
      await next.run(["--json"], {
        stdin: (async function* () {
          yield Buffer.from(JSON.stringify(line));
        })(),
        out: async (text) => void out.push(text),
        err: () => undefined,
        data: "",
        clock: () => 0,
      });
      const row = JSON.parse(out[0] ?? "null");
      if (row.status === null) expect(row.problems).not.toEqual([]);
      else if (row.due !== null) {
        const dates = [row.earliest, row.due, row.latest];
        expect(dates.toSorted()).toEqual(dates);
        expect(row.sentence).not.toMatch(/undefined|NaN|\{\w+\}/);
      }
    }),
    { seed: 20261125, numRuns: 1500 },
  );
});
