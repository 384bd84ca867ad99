import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Answer } from "../checklist/answer-types.ts";
import type { PointVerdict } from "./judgement.ts";
import { GRAVITY } from "./tally.ts";
import { graded, judgeOf, judgeOne, type Parts, reading } from "./testing/checklists.ts";

const judge = judgeOf({
  particulars: {
    length: { title: "Length", type: "number", unit: "m" },
    kind: { title: "Kind", enum: ["I", "II"] },
  },
  values: { joints: { unit: "Ohm", const: 0.1 }, per_m: { unit: "Ohm/m", const: 0.0133 } },
  properties: {
    a: reading("Ohm", [{ max: "joints + asset.length * per_m" }]),
    b: reading("Ohm", [{ min: "answers.a" }, { max: 9, severity: "advisory" }]),
    c: reading("Ohm", [{ max: 2, when: "asset.kind == 'I'" }, { max: 5 }]),
    d: reading("Ohm", [{ max: 3 }], { ask: { when: "answers.e > 2.0" } }),
    e: graded({ limits: [{ min: 2 }] }),
  },
  scores: {
    s: {
      title: "Score",
      of: ["e"],
      method: "share-of-maximum",
      round: { rule: "half-up", decimals: 1 },
      bands: [
        { title: "low", from: 0, outcome: "fail" },
        { title: "high", from: 40, outcome: "pass" },
      ],
    },
  },
} satisfies Parts);

const ohms = fc.record(
  {
    value: fc.integer({ min: 0, max: 400 }).map((n) => n / 100),
    unit: fc.constantFrom("Ohm", "mOhm", "kOhm", "m"),
    comparator: fc.constantFrom("<", "<=", ">", ">=" as const),
  },
  { requiredKeys: ["value", "unit"] },
);
const absence = fc
  .constantFrom("not-applicable", "no-access" as const)
  .map((reason) => ({ absent: { reason } }));
const answer = fc.oneof({ weight: 5, arbitrary: ohms }, absence);
const answers = fc.record(
  {
    a: answer,
    b: answer,
    c: answer,
    d: answer,
    e: fc.oneof(fc.integer({ min: 1, max: 5 }), absence),
  },
  { requiredKeys: [] },
);
const particulars = fc.record(
  { length: fc.integer({ min: 1, max: 100 }), kind: fc.constantFrom("I", "II") },
  { requiredKeys: [] },
);

const without = <T extends object>(object: T, name: string): T =>
  Object.fromEntries(Object.entries(object).filter(([key]) => key !== name)) as T;

describe("verdicts", () => {
  test("taking away an answer or a particular never turns anything into a pass", () => {
    fc.assert(
      fc.property(
        answers,
        particulars,
        fc.constantFrom("a", "b", "c", "d", "e", "length", "kind"),
        (given, known, name) => {
          const before = judge.judge({ particulars: known, answers: given });
          const after = judge.judge({
            particulars: without(known, name),
            answers: without(given, name),
          });
          for (const [id, { verdict }] of Object.entries(after.points))
            if (verdict === "pass") expect([id, before.points[id]?.verdict]).toEqual([id, "pass"]);
          if (after.overall === "pass") expect(before.overall).toBe("pass");
          if (after.scores.s?.verdict === "pass") expect(before.scores.s?.verdict).toBe("pass");
        },
      ),
      { numRuns: 1000 },
    );
  });

  test("a tighter limit never makes a verdict better", () => {
    const gravity = (verdict: PointVerdict) =>
      verdict === null || verdict === "not-counted" ? -1 : GRAVITY[verdict];
    fc.assert(
      fc.property(
        ohms,
        fc.constantFrom("max", "exclusiveMax", "min", "exclusiveMin" as const),
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 0, max: 40 }),
        fc.constantFrom("fail", "advisory" as const),
        (given, kind, bound, step, severity) => {
          const tighter = kind === "max" || kind === "exclusiveMax" ? bound - step : bound + step;
          const judged = (limit: number) =>
            judgeOne(reading("Ohm", [{ [kind]: limit / 10, severity }]), given as Answer).verdict;
          const [loose, tight] = [judged(bound), judged(tighter)];
          // Of an advisory limit a violation is less grave than not knowing: only a pass must not appear.
          if (severity === "advisory") expect(loose !== "pass" && tight === "pass").toBe(false);
          else expect(gravity(tight) === 3 || loose !== "fail").toBe(true);
          expect(tight === "pass" && loose !== "pass").toBe(false);
        },
      ),
      { numRuns: 1000 },
    );
  });

  test("a longer lead never gets a lower limit", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 10_000 }),
        fc.integer({ min: 0, max: 10_000 }),
        (length, more) => {
          const bound = (metres: number) =>
            judge.judgePoint("a", {
              particulars: { length: metres / 100 },
              answers: { a: { value: 1, unit: "Ohm" } },
            }).bound ?? Number.NaN;
          expect(bound(length + more)).toBeGreaterThanOrEqual(bound(length));
        },
      ),
    );
  });

  test("the unit a reading is entered in never changes its verdict", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 100_000 }),
        fc.integer({ min: 1, max: 100_000 }),
        (milli, limit) => {
          const point = reading("Ohm", [{ max: limit / 1000 }]);
          const expected = milli <= limit ? "pass" : "fail";
          const entered: Answer[] = [
            { value: milli, unit: "mOhm" },
            { value: milli / 1000, unit: "Ohm" },
            { value: milli / 1e6, unit: "kOhm" },
          ];
          expect(entered.map((one) => judgeOne(point, one).verdict)).toEqual([
            expected,
            expected,
            expected,
          ]);
        },
      ),
    );
  });
});
