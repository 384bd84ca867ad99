import { expect, test } from "vitest";
import type { Answer, Answers } from "../checklist/answer-types.ts";
import { createFormulaEngine } from "../formulas/index.ts";
import { compileJudge } from "../judge/compile-judge.ts";
import { proveStarter } from "../testing/starters/prove.ts";
import { practice, published, type Sheet, type Step } from "../testing/starters/starter-case.ts";
import { FIRE_DOOR } from "./fire-door.ts";

const gaps = (...values: number[]) => values.map((value) => ({ value, unit: "mm" }));
const DOORWAY = { open: "ok", sign: "ok", frame: "ok" } as const;
const CHECKS = ["leaf", "hinges", "latch", "strips", "glass", "closes_fully"];
const leaf = (member: string, foot: number, more: Readonly<Record<string, Answer>>): Answers =>
  Object.fromEntries(
    Object.entries<Answer>({
      ...Object.fromEntries(CHECKS.map((name) => [name, "ok"])),
      head_gap: gaps(3, 3, 3),
      hinge_gap: gaps(2.5, 3, 3),
      lock_gap: gaps(3, 2.5, 3),
      foot_gap: gaps(foot, foot, foot),
      ...more,
    }).map(([name, answer]) => [`${name}@${member}`, answer]),
  );

const SINGLE = {
  leaves: 1,
  smoke: true,
  foot_seal: false,
  self_closing: true,
  partly_open: "15 degrees",
  glazed: true,
  gap_rule: "2 to 4 mm",
} as const;
const SHEETS: Readonly<Record<string, Sheet>> = {
  single: {
    particulars: SINGLE,
    answers: { ...DOORWAY, ...leaf("1", 2, { closes_15: "ok" }) },
  },
  double: {
    particulars: { ...SINGLE, leaves: 2, foot_seal: true, partly_open: "75 mm" },
    answers: {
      ...DOORWAY,
      meeting_gap: gaps(3, 3, 3),
      order: "ok",
      ...leaf("1", 8, { closes_75: "ok" }),
      ...leaf("2", 8, { closes_75: "ok" }),
    },
  },
  "no smoke": {
    particulars: { ...SINGLE, smoke: false },
    answers: { ...DOORWAY, ...leaf("1", 8, { closes_15: "ok" }) },
  },
  "tighter rule": {
    particulars: { ...SINGLE, gap_rule: "at most 3 mm" },
    answers: { ...DOORWAY, ...leaf("1", 2, { closes_15: "ok" }) },
  },
  certified: {
    particulars: {
      ...SINGLE,
      gap_rule: "certificate",
      certified_least: 1,
      certified_most: 5,
      certified_foot: 6,
    },
    answers: { ...DOORWAY, ...leaf("1", 5, { closes_15: "ok" }) },
  },
};

const broken = (sheet: string, point: string): Step => ({
  sheet,
  point,
  tries: [["not-ok", "fail"]],
});
const measured = (
  sheet: string,
  point: string,
  tries: readonly (readonly [number, "pass" | "fail"])[],
): Step => ({
  sheet,
  point,
  // One place out of three decides.
  tries: tries.map(([value, verdict]) => [gaps(2.9, value, 2.9), verdict] as const),
});
const TWO_TO_FOUR = [
  [1.9, "fail"],
  [2, "pass"],
  [4, "pass"],
  [4.1, "fail"],
] as const;
const upTo = (sheet: string, most: number): Step =>
  measured(sheet, "foot_gap@1", [
    [most, "pass"],
    [most + 0.1, "fail"],
  ]);

proveStarter({
  starter: FIRE_DOOR,
  sheets: SHEETS,
  steps: [
    ...["open", "sign", "frame"].map((point) => broken("single", point)),
    broken("double", "order"),
    ...CHECKS.map((point) => broken("single", `${point}@1`)),
    ...CHECKS.map((point) => broken("double", `${point}@2`)),
    broken("single", "closes_15@1"),
    broken("double", "closes_75@2"),
    measured("double", "meeting_gap", TWO_TO_FOUR),
    ...["head_gap@1", "hinge_gap@1", "lock_gap@1"].map((p) => measured("single", p, TWO_TO_FOUR)),
    measured("double", "head_gap@2", TWO_TO_FOUR),
    measured("tighter rule", "head_gap@1", [
      [0, "pass"],
      [1.9, "pass"],
      [3, "pass"],
      [3.1, "fail"],
    ]),
    measured("certified", "head_gap@1", [
      [0.9, "fail"],
      [1, "pass"],
      [5, "pass"],
      [5.1, "fail"],
    ]),
    upTo("single", 3),
    upTo("double", 10),
    upTo("no smoke", 10),
    upTo("certified", 6),
    {
      sheet: "single",
      point: "head_gap@1",
      tries: [
        [gaps(3, 3), "undecided"],
        [gaps(3, 3, 3, 3), "undecided"],
      ],
    },
  ],
  numbers: {
    "/values/least/const": published("fd-008", 2, "mm"),
    "/values/most/const": published("fd-008", 4, "mm"),
    "/values/none/const": practice("a trade page gives no least gap"),
    "/values/tight/const": practice("a trade page allows 3 mm at most"),
    "/values/foot/table/rules/0/then": published("fd-009", 3, "mm"),
    "/values/foot/table/rules/1/then": published("fd-010", 10, "mm"),
    "/values/foot/table/rules/2/then": published("fd-011", 10, "mm"),
    "/properties/meeting_gap/ask/when#2.0": practice("a pair of leaves"),
    "/properties/order/ask/when#2.0": practice("a pair of leaves"),
    ...Object.fromEntries(
      ["meeting_gap", "head_gap", "hinge_gap", "lock_gap", "foot_gap"].map((point) => [
        `/properties/${point}/several/count`,
        practice("near each end and in the middle"),
      ]),
    ),
  },
});

const judge = compileJudge(FIRE_DOOR.checklist, createFormulaEngine());
const sheet = (name: string): Sheet => {
  const found = SHEETS[name];
  if (found === undefined) throw new RangeError(name);
  return found;
};

test("a pair of leaves with one leaf filled in is never a pass", () => {
  const { particulars, answers } = sheet("double");
  const first = Object.fromEntries(
    Object.entries(answers).filter(([name]) => !name.endsWith("@2")),
  );
  const judged = judge.judge({ particulars, answers: first });
  expect([judged.overall, judged.complete]).toEqual(["undecided", false]);
});

test("15 degrees and 75 mm are two tests: the one that was not chosen is not asked", () => {
  const judged = judge.judge(sheet("single"));
  expect(judged.points["closes_15@1"]).toMatchObject({ asked: true, verdict: "pass" });
  expect(judged.points["closes_75@1"]).toMatchObject({ asked: false, verdict: null });
});

test("judged by a certificate whose figures nobody wrote down, a gap is undecided", () => {
  const { certified_least: _, ...particulars } = sheet("certified").particulars;
  const judged = judge.judge({ ...sheet("certified"), particulars });
  expect(judged.points["head_gap@1"]?.verdict).toBe("undecided");
  expect(judged.overall).toBe("undecided");
});

test("how many leaves there are has to be known", () => {
  const { leaves: _, ...particulars } = sheet("single").particulars;
  const judged = judge.judge({ ...sheet("single"), particulars });
  expect([judged.overall, judged.complete]).toEqual(["undecided", false]);
});
