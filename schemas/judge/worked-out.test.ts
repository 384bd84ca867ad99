import { expect, it } from "vitest";
import type { Answers } from "../checklist/answer-types.ts";
import type { PointDefinition } from "../checklist/meta-schema.ts";
import { judgeOf } from "./testing/checklists.ts";

const workedOut = (calculate: string): PointDefinition => ({
  $ref: "#/$defs/calculated",
  title: "Allowance",
  quantity: { unit: "Ohm" },
  calculate,
  limits: [{ max: 2, basis: "Invented" }],
});
const check: PointDefinition = {
  $ref: "#/$defs/check",
  title: "Seen?",
  ask: { absentAllowed: ["no-access"] },
};
const overall = (calculate: string, answers: Answers = {}) =>
  judgeOf({
    particulars: { length: { title: "Length", type: "number" } },
    properties: { allowance: workedOut(calculate), seen: check },
  }).judge({ particulars: { length: 1 }, answers });

it("what is worked out from particulars alone is never a pass of a check nobody made", () => {
  for (const calculate of ["1", "asset.length * 1.5"]) {
    expect(overall(calculate)).toMatchObject({ overall: "not-evaluated", complete: false });
    const absent = { seen: { absent: { reason: "no-access" as const } } };
    expect(overall(calculate, absent).overall).toBe("not-evaluated");
    expect(overall(calculate, { seen: "ok" }).overall).toBe("not-evaluated");
  }
});

it("what is worked out and fails is a fail, whoever answered", () => {
  expect(overall("asset.length * 3").overall).toBe("fail");
});
