import { expect, test } from "vitest";
import { createFormulaEngine } from "../formulas/index.ts";
import { compileJudge } from "../judge/compile-judge.ts";
import { amount, broken } from "../testing/starters/electrical.ts";
import { proveStarter } from "../testing/starters/prove.ts";
import { practice, type Sheet } from "../testing/starters/starter-case.ts";
import { EMERGENCY_LUMINAIRE, EMERGENCY_LUMINAIRE_DURATION } from "./emergency-luminaire.ts";

const MONTHLY = { whole: "ok", charging: "ok", sign: "ok", lights: "ok", back: "ok" } as const;
const EXIT = { rated_duration: 3, exit_sign: true };

proveStarter({
  starter: EMERGENCY_LUMINAIRE,
  sheets: { "exit sign": { particulars: EXIT, answers: MONTHLY } },
  steps: broken("exit sign", ...Object.keys(MONTHLY)),
  numbers: {},
});

const min = amount("min");
const YEARLY = { ...MONTHLY, duration: min(190), battery: "2024-05-01" } as const;
const SHEETS: Readonly<Record<string, Sheet>> = {
  "3 h": { on: "2026-05-01", particulars: EXIT, answers: YEARLY },
  "1 h": {
    on: "2026-05-01",
    particulars: { ...EXIT, rated_duration: 1 },
    answers: { ...YEARLY, duration: { value: 1, unit: "h", comparator: ">" } },
  },
};

proveStarter({
  starter: EMERGENCY_LUMINAIRE_DURATION,
  sheets: SHEETS,
  steps: [
    ...broken("3 h", ...Object.keys(MONTHLY)),
    {
      sheet: "3 h",
      point: "duration",
      tries: [
        [min(181), "pass"],
        [min(180), "pass"],
        [{ value: 3, unit: "h" }, "pass"],
        [min(179), "fail"],
        [{ value: 120, unit: "min", comparator: ">" }, "undecided"],
      ],
    },
    {
      sheet: "1 h",
      point: "duration",
      tries: [
        [min(60), "pass"],
        [min(59), "fail"],
      ],
    },
    {
      sheet: "3 h",
      point: "battery",
      tries: [
        ["2022-05-02", "pass"],
        ["2022-05-01", "pass"],
        ["2022-04-30", "advisory"],
        ["2026-05-01", "pass"],
        ["2026-05-02", "fail"],
      ],
    },
  ],
  numbers: {
    "/properties/battery/limits/0/notBefore/minus#4": practice("life of a battery by its maker"),
  },
});

test("one that does not light has no duration to take", () => {
  const judge = compileJudge(EMERGENCY_LUMINAIRE_DURATION.checklist, createFormulaEngine());
  const { points, overall } = judge.judge({
    on: "2026-05-01",
    particulars: EXIT,
    answers: { ...YEARLY, lights: "not-ok" },
  });
  expect([overall, points.duration?.asked, points.duration?.verdict]).toEqual([
    "fail",
    false,
    null,
  ]);
});

test("the suggested intervals are those of EN 50172: each month, and each year", () => {
  const every = [EMERGENCY_LUMINAIRE, EMERGENCY_LUMINAIRE_DURATION].map(({ interval }) =>
    interval.rule.kind === "from-last-done" ? interval.rule.every : null,
  );
  expect(every).toEqual(["P1M", "P1Y"]);
});
