import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Answer, Answers, Reading } from "../checklist/answer-types.ts";
import { isReading, isSample } from "../checklist/guards.ts";
import type { Checklist } from "../checklist/meta-schema.ts";
import { createFormulaEngine } from "../formulas/index.ts";
import { STARTERS } from "../starters/index.ts";
import { convert } from "../units/units.ts";
import { compileJudge } from "./compile-judge.ts";
import type { Judgement } from "./judgement.ts";
import { RICH } from "./testing/rich-checklist.ts";
import { sheetOf } from "./testing/sheets.ts";

const RUNS = { seed: 20_260_303, numRuns: 1000 };
const engine = createFormulaEngine();
const docs: readonly (readonly [string, Checklist])[] = [
  ["every keyword", RICH],
  ...STARTERS.map(({ key, checklist }) => [key, checklist] as const),
];

/** Verdicts and figures, without the reasons that `explain: false` leaves out. */
const told = ({ points, problems, pending, ...rest }: Judgement) => ({
  ...rest,
  pending: pending.toSorted(),
  points: Object.fromEntries(
    Object.entries(points).map(([name, { verdict, bound, asked, value }]) => [
      name,
      { verdict, bound, asked, value },
    ]),
  ),
  problems: problems.map((one) => JSON.stringify(one)).toSorted(),
});

/** Units that what is shown in the one may be entered in. */
const OTHERS: Readonly<Record<string, readonly string[]>> = {
  Ohm: ["mOhm", "kOhm"],
  MOhm: ["Ohm", "kOhm"],
  Cel: ["[degF]", "K"],
  mm: ["cm", "m"],
  "mg/L": ["ug/L", "g/L"],
  s: ["ms", "min"],
  min: ["s", "h"],
  ms: ["s"],
  mA: ["A"],
  A: ["mA"],
  V: ["mV", "kV"],
  kg: ["g"],
  "%": ["1"],
};

const entered = (reading: Reading, choice: number): Reading => {
  const others = OTHERS[reading.unit] ?? [];
  const unit = others[choice % Math.max(others.length, 1)];
  const value = unit === undefined ? undefined : convert(reading.value, reading.unit, unit);
  return unit === undefined || value === undefined ? reading : { ...reading, value, unit };
};

function answerIn(answer: Answer, choice: number): Answer {
  if (Array.isArray(answer))
    return answer.map((one) => (isReading(one) ? entered(one, choice) : one)) as Answer;
  if (isReading(answer)) return entered(answer, choice);
  return isSample(answer) && answer.result
    ? { ...answer, result: entered(answer.result, choice) }
    : answer;
}

const inOther = (answers: Answers, choice: number): Answers =>
  Object.fromEntries(
    Object.entries(answers).map(([name, one], at) => [name, answerIn(one, choice + at)]),
  );

const turned = <T extends object>(from: T, choice: number): T => {
  const entries = Object.entries(from);
  const at = choice % Math.max(entries.length, 1);
  return Object.fromEntries([...entries.slice(at), ...entries.slice(0, at)].toReversed()) as T;
};

describe("one judgement, whatever", () => {
  test.each(docs)(
    "unit the readings are entered in: %s",
    (_, doc) => {
      const judge = compileJudge(doc, engine);
      fc.assert(
        fc.property(sheetOf(doc), fc.nat({ max: 99 }), (sheet, choice) => {
          const { answers, previous } = sheet;
          const other = {
            ...sheet,
            answers: inOther(answers, choice),
            ...(previous && { previous: inOther(previous, choice + 1) }),
          };
          expect(told(judge.judge(other))).toEqual(told(judge.judge(sheet)));
        }),
        RUNS,
      );
    },
    60_000,
  );

  test.each(docs)(
    "order the answers and particulars come in: %s",
    (_, doc) => {
      const judge = compileJudge(doc, engine);
      fc.assert(
        fc.property(sheetOf(doc), fc.nat({ max: 999 }), (sheet, choice) => {
          const { answers, particulars, previous } = sheet;
          const other = {
            ...sheet,
            answers: turned(answers, choice),
            particulars: turned(particulars, choice),
            ...(previous && { previous: turned(previous, choice) }),
          };
          expect(told(judge.judge(other))).toEqual(told(judge.judge(sheet)));
        }),
        RUNS,
      );
    },
    60_000,
  );

  test.each(docs)(
    "is asked for, with reasons or without: %s",
    (_, doc) => {
      const judge = compileJudge(doc, engine);
      fc.assert(
        fc.property(sheetOf(doc), (sheet) => {
          const quick = told(judge.judge(sheet, { explain: false }));
          const full = judge.judge(sheet);
          expect(quick).toEqual(told(full));
          // What is judged alone, while it is typed, is judged the same.
          for (const [name, { verdict }] of Object.entries(full.points))
            if (full.repeats[name] === undefined)
              expect([name, judge.judgePoint(name, sheet).verdict]).toEqual([name, verdict]);
        }),
        RUNS,
      );
    },
    60_000,
  );
});

describe("a temperature at its limit, entered in degrees Fahrenheit or kelvins", () => {
  const judgeOfLimit = (kind: "min" | "max", hundredths: number) => {
    const properties = {
      x: {
        $ref: "#/$defs/reading" as const,
        title: "X",
        quantity: { unit: "Cel" },
        limits: [{ [kind]: hundredths / 100 }],
      },
    };
    return compileJudge({ ...RICH, properties, groups: [], stops: [], scores: {} }, engine);
  };

  test("is on it; a hundredth to either side it is not", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -9000, max: 40_000 }),
        fc.constantFrom("min", "max" as const),
        fc.integer({ min: -1, max: 1 }),
        (limit, kind, step) => {
          const at = limit + step;
          const expected = kind === "max" ? step <= 0 : step >= 0;
          // Worked out in whole numbers, as a person reads them off: 50 °C is 122 °F.
          const readings: Reading[] = [
            { value: at / 100, unit: "Cel" },
            { value: (at * 18 + 32_000) / 1000, unit: "[degF]" },
            { value: (at + 27_315) / 100, unit: "K" },
          ];
          const judge = judgeOfLimit(kind, limit);
          for (const x of readings)
            expect([x, judge.judge({ particulars: {}, answers: { x } }).overall]).toEqual([
              x,
              expected ? "pass" : "fail",
            ]);
        },
      ),
      RUNS,
    );
  });
});
