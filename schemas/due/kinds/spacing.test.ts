import { expect, test } from "vitest";
import { datesOf, day, windowOf } from "../../testing/due-records.ts";

const ALARM = { kind: "spacing", min: "P9M", max: "P15M", every: "P12M" } as const;
const GENERATOR = { kind: "spacing", min: "P20D", max: "P40D" } as const;
const LIGHTS = { kind: "spacing", min: "P3W", max: "P5W" } as const;

// A US hospital accreditor's published time frames; the dates are worked by hand.
test.each([
  ["an alarm each year, 9 to 15 months apart", ALARM, ["2026-12-14", "2027-03-14", "2027-06-14"]],
  ["a generator, 20 to 40 days apart", GENERATOR, ["2026-04-03", "2026-04-23", "2026-04-23"]],
  ["battery lights, 3 to 5 weeks apart", LIGHTS, ["2026-04-04", "2026-04-18", "2026-04-18"]],
] as const)("%s", (_, rule, dates) => {
  expect(datesOf(rule, "2026-03-14")).toEqual(dates);
});

test("done sooner than the least spacing moves nothing, and the date says so", () => {
  const window = windowOf(GENERATOR, "2026-03-14", "2026-04-02");
  expect(window.due).toBe(day("2026-04-23"));
  expect(window.lastDone).toBe(day("2026-04-02"));
  expect(window.from).toBe(`entry of ${day("2026-03-14")}`);
  expect(window.why.moved).toEqual([
    { code: "done-too-soon", params: { min: "P20D", date: "2026-04-02" } },
  ]);
});

test("on the first day of the spacing it counts", () => {
  expect(datesOf(GENERATOR, "2026-03-14", "2026-04-03")[1]).toBe("2026-05-13");
});
