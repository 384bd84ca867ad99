import { describe, expect, test } from "vitest";
import type { Answers } from "../checklist/answer-types.ts";
import type { PointDefinition } from "../checklist/meta-schema.ts";
import { judgeOf, type Parts, reading } from "./testing/checklists.ts";

const ohms = (value: number) => ({ value, unit: "Ohm" });
const check: PointDefinition = {
  $ref: "#/$defs/check",
  title: "Sound?",
  limits: [{ accept: ["ok"] }],
};
const repeat = (id: string, points: string[], count = 2) => ({
  id,
  title: "Each",
  points,
  repeat: { each: "Each", count },
});

describe("a point asked once", () => {
  const parts: Parts = {
    properties: { sound: check, within: reading("Ohm", [{ max: "answers.once" }]) },
    groups: [repeat("each", ["sound", "within", "also"])],
    stops: [{ after: ["sound"], on: ["fail"], points: ["once"], say: "Stop." }],
  };

  test("is stopped for every member when one member stops it", () => {
    const judge = judgeOf({
      ...parts,
      properties: {
        ...parts.properties,
        once: reading("Ohm"),
        also: { ...check, ask: { when: "answers.once > 5" } },
      },
    });
    const answers: Answers = {
      "sound@1": "not-ok",
      "sound@2": "ok",
      once: ohms(10),
      "within@1": ohms(5),
      "within@2": ohms(5),
      "also@1": "ok",
      "also@2": "ok",
    };
    const { points } = judge.judge({ particulars: {}, answers });
    expect(points.once?.why.code).toBe("stopped");
    for (const name of ["within@1", "within@2", "also@1", "also@2"])
      expect(points[name]?.verdict, name).toBe("undecided");
    expect(judge.judgePoint("within@2", { particulars: {}, answers }).verdict).toBe("undecided");
  });
});

test("stops from repeat to repeat take time in proportion to the members", () => {
  const names = Array.from({ length: 10 }, (_, index) => `p${index}`);
  const judge = judgeOf({
    properties: Object.fromEntries(names.map((name) => [name, check])),
    groups: names.map((name) => repeat(`g_${name}`, [name], 99)),
    stops: names.slice(1).map((name, index) => ({
      after: [`p${index}`],
      on: ["fail"],
      points: [name],
      say: "Stop.",
    })),
  });
  const answers = Object.fromEntries(
    names.flatMap((name) =>
      Array.from({ length: 99 }, (_, index) => [`${name}@${index + 1}`, "ok"]),
    ),
  );
  expect(judge.judge({ particulars: {}, answers }).overall).toBe("pass");
  const { "p0@7": _, ...others } = answers;
  expect(judge.judge({ particulars: {}, answers: others }).points["p9@1"]?.verdict).toBe(
    "undecided",
  );
});

test("repeats that stop each other are undecided", () => {
  const judge = judgeOf({
    properties: { a: check, b: check },
    groups: [repeat("each_a", ["a"]), repeat("each_b", ["b"])],
    stops: [
      { after: ["a"], on: ["fail"], points: ["b"], say: "Stop." },
      { after: ["b"], on: ["fail"], points: ["a"], say: "Stop." },
    ],
  });
  const answers: Answers = { "a@1": "ok", "a@2": "ok", "b@1": "ok", "b@2": "ok" };
  const { overall, complete } = judge.judge({ particulars: {}, answers });
  expect([overall, complete]).toEqual(["undecided", false]);
});

describe("the last inspection", () => {
  const same = reading("Ohm", [
    { max: 10 },
    { sameAsLast: { within: 0.1, whenNone: "not-applied" } },
  ]);
  const verdict = (source: PointDefinition, now: Answers, previous: Answers) =>
    judgeOf({
      properties: { source, same },
      stops: [{ after: ["source"], on: ["fail"], points: ["same"], say: "Stop." }],
    }).judge({ particulars: {}, on: "2026-06-01", answers: now, previous }).points.same?.verdict;

  test("gives its reading though a stop hung on the one before it", () => {
    const source = reading("Ohm", [{ sameAsLast: { within: 1 } }]);
    const previous: Answers = { source: ohms(5), same: ohms(1) };
    expect(verdict(source, { source: ohms(5), same: ohms(9) }, previous)).toBe("fail");
    expect(verdict(source, { source: ohms(5), same: ohms(1) }, previous)).toBe("pass");
  });

  test("leaves open what its stops would say on another day", () => {
    const source: PointDefinition = {
      $ref: "#/$defs/date",
      title: "Looked at",
      limits: [{ notBefore: { from: "today", minus: "P1M" } }],
    };
    const previous: Answers = { source: "2025-05-20", same: ohms(1) };
    expect(verdict(source, { source: "2026-05-20", same: ohms(9) }, previous)).toBe("undecided");
    expect(verdict(source, { source: "2026-05-20", same: ohms(9) }, {})).toBe("pass");
  });
});
