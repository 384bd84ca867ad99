import { expect, test } from "vitest";
import { commandLineOf } from "./testing/run.ts";

const OUTLET = {
  $schema: "https://json-schema.org/draft/2020-12/schema",
  dialect: "urn:roundbook:checklist:1",
  title: "Outlet",
  type: "object",
  properties: {
    flow: {
      $ref: "#/$defs/reading",
      title: "Flow",
      quantity: { unit: "L/min" },
      limits: [{ sameAsLast: { within: 1 }, basis: "Own practice" }],
    },
    filter: {
      $ref: "#/$defs/date",
      title: "Filter good until",
      limits: [{ notBefore: { from: "today" }, basis: "The maker" }],
    },
  },
  additionalProperties: false,
};
const flow = (value: number) => ({ flow: { value, unit: "L/min" } });

async function judged(more: object) {
  const asked = { checklist: OUTLET, answers: { ...flow(6), filter: "2026-11-25" }, ...more };
  const { status, out } = await commandLineOf()(["judge", "--json"], JSON.stringify(asked));
  const row = JSON.parse(out[0] ?? "null");
  return { status, row, verdicts: [row.points.flow?.verdict, row.points.filter?.verdict] };
}

test("judging takes the day of the inspection and the answers before", async () => {
  const previous = flow(6.8);
  expect((await judged({ on: "2026-11-25", previous })).verdicts).toEqual(["pass", "pass"]);
  const later = await judged({ on: "2026-11-26", previous: flow(8) });
  expect(later.verdicts).toEqual(["fail", "fail"]);
  expect(later.row.points.filter.why).toBe("2026-11-25 is before 2026-11-26");
});

test("without a day or anything before, what needs them is undecided", async () => {
  expect((await judged({})).verdicts).toEqual(["undecided", "undecided"]);
});

test.each(["2026-02-30", "today", 7])("%s is no day, and the line is not judged", async (on) => {
  const { status, row } = await judged({ on });
  expect(status).toBe(2);
  expect(row.problems).toMatchObject([{ pointer: "/on", code: "no-such-day" }]);
  expect(row.overall).toBeNull();
});
