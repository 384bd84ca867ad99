import { expect, test } from "vitest";
import type { PointDefinition } from "../checklist/meta-schema.ts";
import { judgeOf } from "./testing/checklists.ts";

const check: PointDefinition = {
  $ref: "#/$defs/check",
  title: "Check",
  limits: [{ accept: ["ok"] }],
  ask: { mandatory: true },
};

test("a point by a name that every object has is unanswered until it is answered", () => {
  const names = ["constructor", "toString", "valueOf"];
  const judge = judgeOf({ properties: Object.fromEntries(names.map((name) => [name, check])) });
  const { points, problems } = judge.judge({ particulars: {}, answers: {} });
  expect(names.map((name) => points[name]?.why.code)).toEqual(names.map(() => "not-answered"));
  expect(problems.map(({ code }) => code)).toEqual(names.map(() => "mandatory-not-answered"));
  const answers = Object.fromEntries(names.map((name) => [name, "ok"]));
  expect(judge.judge({ particulars: {}, answers })).toMatchObject({
    overall: "pass",
    problems: [],
  });
});

test("answers that an object only inherits are no answers", () => {
  const judge = judgeOf({ properties: { a: check } });
  const answers = Object.create({ a: "ok" });
  expect(judge.judge({ particulars: {}, answers }).points.a?.why.code).toBe("not-answered");
});
