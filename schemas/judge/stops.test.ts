import { describe, expect, test } from "vitest";
import type { Answer, Answers } from "../checklist/answer-types.ts";
import type { PointDefinition, StopDefinition } from "../checklist/meta-schema.ts";
import { graded, judgeOf, type Parts, reading } from "./testing/checklists.ts";

const ohms = (value: number): Answer => ({ value, unit: "Ohm" });
const ABSENT: Answer = { absent: { reason: "not-applicable" } };
const check: PointDefinition = {
  $ref: "#/$defs/check",
  title: "Sound?",
  limits: [{ accept: ["ok"] }],
  ask: { mandatory: true, absentAllowed: ["not-applicable"] },
};
const SAY = "Do not energise.";
const stop = (more: Partial<StopDefinition> = {}): StopDefinition => ({
  after: ["sound"],
  on: ["fail"],
  points: ["live"],
  say: SAY,
  ...more,
});
const live = reading("Ohm", [{ max: 2 }], { ask: { mandatory: true } });
const parts: Parts = { properties: { sound: check, live }, stops: [stop()] };
const judged = (answers: Answers, of: Parts = parts) => {
  const { overall, complete, points, scores } = judgeOf(of).judge({ particulars: {}, answers });
  return { overall, complete, points, scores };
};

describe("a stop", () => {
  test("keeps what it stops from being asked, whatever was kept for it", () => {
    for (const kept of [{}, { live: ohms(1) }, { live: ohms(9) }] as Answers[]) {
      const { overall, complete, points } = judged({ sound: "not-ok", ...kept });
      expect([overall, complete]).toEqual(["fail", true]);
      expect(points.live).toMatchObject({
        asked: false,
        verdict: null,
        why: { code: "stopped", params: { by: "sound", say: SAY } },
      });
    }
  });

  test("does nothing once its source has passed, or is absent as allowed", () => {
    expect(judged({ sound: "ok", live: ohms(1) }).overall).toBe("pass");
    expect(judged({ sound: "ok", live: ohms(9) }).overall).toBe("fail");
    expect(judged({ sound: "ok" })).toMatchObject({ overall: "undecided", complete: false });
    expect(judged({ sound: ABSENT, live: ohms(1) }).points.live?.verdict).toBe("pass");
  });

  test.each([
    ["not answered", {}],
    ["absent for another reason", { sound: { absent: { reason: "no-access" } } }],
    ["not understood", { sound: "maybe" }],
  ] as const)("leaves open what it might stop while its source is %s", (_, answers) => {
    const { overall, complete, points } = judged({ ...answers, live: ohms(1) });
    expect([overall, complete]).toEqual(["undecided", false]);
    expect(points.live).toMatchObject({
      verdict: "undecided",
      why: { code: "stop-undecided", params: { by: "sound" } },
    });
  });

  test("acts on the verdicts it names, and on those alone", () => {
    const worn = graded({ limits: [{ min: 2 }, { min: 4, severity: "advisory" }] });
    const on = (verdicts: StopDefinition["on"]) => ({
      properties: { sound: worn, live },
      stops: [stop({ on: verdicts })],
    });
    const asked = (grade: number, verdicts: StopDefinition["on"]) =>
      judged({ sound: grade, live: ohms(1) }, on(verdicts)).points.live?.asked;
    expect([asked(1, ["fail"]), asked(3, ["fail"]), asked(5, ["fail"])]).toEqual([
      false,
      true,
      true,
    ]);
    expect([asked(1, ["advisory"]), asked(3, ["advisory"])]).toEqual([true, false]);
    expect([asked(1, ["advisory", "fail"]), asked(3, ["advisory", "fail"])]).toEqual([
      false,
      false,
    ]);
  });

  test("stops whole groups, and one of several sources is enough", () => {
    const of: Parts = {
      properties: { sound: check, dry: check, live, other: live },
      groups: [{ id: "g", title: "Live tests", points: ["live", "other"] }],
      stops: [stop({ after: ["sound", "dry"], points: undefined, groups: ["g"] })],
    };
    const { points, overall } = judged({ sound: "ok", dry: "not-ok" }, of);
    expect([points.live?.asked, points.other?.asked, overall]).toEqual([false, false, "fail"]);
    // One source that stops is enough, though the other is open.
    expect(judged({ dry: "not-ok" }, of).points.live?.why.code).toBe("stopped");
    expect(judged({ dry: "ok", live: ohms(1), other: ohms(1) }, of).overall).toBe("undecided");
  });
});

describe("what is stopped", () => {
  const calculated: PointDefinition = {
    $ref: "#/$defs/calculated",
    title: "Twice",
    quantity: { unit: "Ohm" },
    calculate: "answers.live * 2",
    limits: [{ max: 9 }],
  };

  test("is seen by no formula", () => {
    const of: Parts = { ...parts, properties: { ...parts.properties, twice: calculated } };
    expect(judged({ sound: "ok", live: ohms(1) }, of).points.twice).toMatchObject({ value: 2 });
    expect(judged({ sound: "not-ok", live: ohms(1) }, of).points.twice).toMatchObject({
      verdict: "undecided",
      why: { code: "missing" },
    });
    // While it is open whether it is stopped, so is what hangs on it.
    expect(judged({ live: ohms(1) }, of).points.twice?.verdict).toBe("undecided");
  });

  test("counts in no score; while it is open there is none", () => {
    const of: Parts = {
      properties: { sound: check, live: graded(), other: graded() },
      stops: [stop()],
      scores: {
        s: {
          title: "S",
          of: ["live", "other"],
          method: "sum",
          round: { rule: "half-up", decimals: 0 },
          bands: [{ title: "any", from: 0 }],
        },
      },
    };
    expect(judged({ sound: "ok", live: 2, other: 3 }, of).scores.s?.score).toBe(5);
    expect(judged({ sound: "not-ok", live: 2, other: 3 }, of).scores.s?.score).toBe(3);
    expect(judged({ live: 2, other: 3 }, of).scores.s?.verdict).toBe("undecided");
  });

  test("stops nothing itself: a chain ends with the first", () => {
    const of: Parts = {
      properties: { sound: check, live, last: live },
      stops: [stop(), stop({ after: ["live"], points: ["last"] })],
    };
    const { points } = judged({ sound: "not-ok", live: ohms(9), last: ohms(1) }, of);
    expect([points.live?.asked, points.last?.verdict]).toEqual([false, "pass"]);
    expect(judged({ live: ohms(1), last: ohms(1) }, of).points.last?.verdict).toBe("undecided");
  });

  test("stays unasked by its own condition", () => {
    const asked = reading("Ohm", [{ max: 2 }], { ask: { when: "1 == 2" } });
    const of = { ...parts, properties: { sound: check, live: asked } };
    expect(judged({ sound: "not-ok" }, of).points.live?.why.code).toBe("not-asked");
    expect(judged({ sound: "ok" }, of).points.live?.why.code).toBe("not-asked");
  });
});

describe("stops that go round in a circle", () => {
  const circle = (a: PointDefinition, b: PointDefinition): Parts => ({
    properties: { a, b },
    stops: [stop({ after: ["a"], points: ["b"] }), stop({ after: ["b"], points: ["a"] })],
  });

  test("never pass", () => {
    for (const a of ["ok", "not-ok", undefined] as const)
      for (const b of ["ok", "not-ok", undefined] as const) {
        const answers = Object.fromEntries(
          Object.entries({ a, b }).flatMap(([name, value]) => (value ? [[name, value]] : [])),
        );
        expect(judged(answers, circle(check, check)).overall).not.toBe("pass");
      }
  });

  test("by way of a condition never pass either", () => {
    const asked = reading("Ohm", [{ max: 2 }], { ask: { when: "answers.b < 2.0" } });
    const of: Parts = {
      properties: { a: asked, b: live },
      stops: [stop({ after: ["a"], points: ["b"] })],
    };
    const { points } = judged({ a: ohms(1), b: ohms(1) }, of);
    expect([points.a?.verdict, points.b?.verdict]).not.toContain("pass");
  });

  test("from a point to itself stop nothing", () => {
    const of: Parts = { properties: { sound: check }, stops: [stop({ points: ["sound"] })] };
    expect(judged({ sound: "not-ok" }, of).points.sound?.verdict).toBe("fail");
  });
});
