import { expect, test } from "vitest";
import type { Checklist } from "../checklist/meta-schema.ts";
import type { RuleOf } from "./rule-schema.ts";
import { usageProblems } from "./usage-problems.ts";

type Rule = RuleOf<"on-usage">;

const CHECKLIST = "01890000-0000-7000-8000-000000000001";
const OTHER = "01890000-0000-7000-8000-000000000002";
const document = {
  title: "Vehicle: weekly look",
  type: "object",
  groups: [{ id: "tyres", title: "Tyres", points: ["tread"], repeat: { each: "Tyre", count: 4 } }],
  properties: {
    odometer: { title: "Odometer", $ref: "#/$defs/reading", quantity: { unit: "[mi_i]" } },
    hours: { title: "Engine hours", $ref: "#/$defs/reading", quantity: { unit: "h" } },
    tread: { title: "Tread", $ref: "#/$defs/reading", quantity: { unit: "mm" } },
    lamps: { title: "Lamps", $ref: "#/$defs/check" },
  },
} as unknown as Checklist;
const context = { checklist: { id: CHECKLIST, document } };
const service = (more: Partial<Rule> = {}): Rule => ({
  kind: "on-usage",
  point: "odometer",
  every: 10_000,
  unit: "km",
  ...more,
});

test.each<[string, Partial<Rule>, string, object]>([
  [
    "a meter that nobody reads",
    { point: "milage" },
    "/point usage-unknown-point",
    { point: "milage", known: ["odometer", "hours"] },
  ],
  ["a check", { point: "lamps" }, "/point usage-not-a-reading", { point: "lamps" }],
  ["one of several", { point: "tread" }, "/point usage-not-a-reading", { point: "tread" }],
  [
    "hours for kilometres",
    { point: "hours" },
    "/unit usage-other-unit",
    { unit: "km", pointUnit: "h" },
  ],
  ["no unit", { unit: "kms" }, "/unit unit-unknown", { unit: "kms" }],
  [
    "a margin beyond the interval",
    { late: 10_001 },
    "/late margin-longer-than-usage",
    { margin: 10_001, every: 10_000 },
  ],
])("impossible: %s", (_, more, told, params) => {
  const found = usageProblems(service(more), context);
  expect(found.map(({ pointer, code }) => `${pointer} ${code}`)).toEqual([told]);
  expect(found[0]?.params).toMatchObject(params);
});

test("miles are read for kilometres, and the meter may be on another checklist", () => {
  expect(usageProblems(service({ early: 500, late: 500 }), context)).toEqual([]);
  const other = service({ checklist: OTHER, point: "lamps" });
  expect(usageProblems(other, context)).toEqual([]);
  const metered = { id: OTHER, document };
  expect(usageProblems(other, { ...context, metered })[0]?.code).toBe("usage-not-a-reading");
});
