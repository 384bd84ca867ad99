import { describe, expect, test } from "vitest";
import { createFormulaEngine } from "../formulas/index.ts";
import { compileJudge } from "../judge/compile-judge.ts";
import { proveStarter } from "../testing/starters/prove.ts";
import {
  memory,
  practice,
  published,
  type Sheet,
  type Step,
} from "../testing/starters/starter-case.ts";
import { MIXING_VALVE } from "./mixing-valve.ts";

const cel = (value: number, elapsed?: number) => ({
  value,
  unit: "Cel",
  ...(elapsed === undefined ? {} : { elapsed }),
});
const s = (value: number) => ({ value, unit: "s" });
const valve = (outlet: string, premises: string) => ({
  outlet,
  premises,
  strainers: true,
  fail_safe: true,
});
const ANSWERS = {
  tight: "ok",
  strainer: "ok",
  hot_supply: cel(58, 60),
  cold_supply: cel(12, 120),
  blend: cel(37),
  shut_off: s(2),
  restored: "ok",
} as const;

/** The hottest each outlet may run. */
const OUTLETS = [
  ["bidet", "health care", 38],
  ["shower", "health care", 41],
  ["washbasin", "new dwelling", 41],
  ["bath", "health care", 44],
  ["bath", "new dwelling", 48],
  ["bath", "school or public", 43],
  ["bath, exceptional", "health care", 46],
] as const;
const SHEETS: Readonly<Record<string, Sheet>> = Object.fromEntries(
  OUTLETS.map(([outlet, premises]) => [
    `${outlet}, ${premises}`,
    { particulars: valve(outlet, premises), answers: ANSWERS },
  ]),
);
const sheet = "shower, health care";
const broken = (point: string): Step => ({ sheet, point, tries: [["not-ok", "fail"]] });
const place = (rule: number) => `/values/hottest/table/rules/${rule}/then`;

proveStarter({
  starter: MIXING_VALVE,
  sheets: SHEETS,
  steps: [
    ...["tight", "strainer", "restored"].map(broken),
    {
      sheet,
      point: "hot_supply",
      tries: [
        [cel(50.1, 60), "pass"],
        [cel(50, 60), "pass"],
        [cel(49.9, 60), "fail"],
        [cel(50, 61), "undecided"],
      ],
    },
    {
      sheet,
      point: "cold_supply",
      tries: [
        [cel(19.9, 120), "pass"],
        [cel(20, 120), "fail"],
        [cel(20.1, 120), "fail"],
        [cel(19.9, 100), "undecided"],
      ],
    },
    ...OUTLETS.map(
      ([outlet, premises, most]): Step => ({
        sheet: `${outlet}, ${premises}`,
        point: "blend",
        tries: [
          [cel(most - 0.1), "pass"],
          [cel(most), "pass"],
          [cel(most + 0.1), "fail"],
        ],
      }),
    ),
    {
      sheet,
      point: "shut_off",
      tries: [
        [s(4), "pass"],
        [s(5), "pass"],
        [s(6), "fail"],
        [{ value: 5, unit: "s", comparator: ">" }, "fail"],
      ],
    },
  ],
  numbers: {
    [place(0)]: published("wa-022", 38, "Cel"),
    [place(1)]: published("wa-023", 41, "Cel"),
    [place(2)]: memory("NHS Estates Health Guidance Note: washbasin"),
    [place(3)]: published("wa-025", 44, "Cel"),
    [place(4)]: published("wa-027", 48, "Cel"),
    [place(5)]: published("wa-028", 43, "Cel"),
    [place(6)]: published("wa-026", 46, "Cel"),
    "/properties/hot_supply/limits/0/min": published("wa-005", 50, "Cel"),
    "/properties/hot_supply/ask/wait/atLeast": practice("the last quarter of the minute"),
    "/properties/hot_supply/ask/wait/atMost": published("wa-005", 60, "s"),
    "/properties/cold_supply/limits/0/exclusiveMax": published("wa-002", 20, "Cel"),
    "/properties/cold_supply/ask/wait/atLeast": published("wa-002", 120, "s"),
    "/properties/cold_supply/ask/wait/atMost": practice("within the minute after"),
    "/properties/blend/limits/1/sameAsLast/within": practice("drift that calls for a look"),
    "/properties/shut_off/limits/0/max": memory("NHS Model Engineering Specification D 08"),
  },
});

const judge = compileJudge(MIXING_VALVE.checklist, createFormulaEngine());

describe("the mixed water against the test before", () => {
  const blend = (now: number, before?: number) =>
    judge.judge({
      particulars: valve("shower", "health care"),
      answers: { ...ANSWERS, blend: cel(now) },
      ...(before === undefined ? {} : { previous: { blend: cel(before) } }),
    }).points.blend?.verdict;

  test.each([
    [39, "pass"],
    [39.1, "advisory"],
    [35, "pass"],
    [34.9, "advisory"],
  ])("37 °C then %d °C: %s", (now, verdict) => {
    expect(blend(now, 37)).toBe(verdict);
  });

  test("the first test has nothing to be held against, and too hot fails all the same", () => {
    expect([blend(39), blend(41.1), blend(41.1, 41)]).toEqual(["pass", "fail", "fail"]);
  });
});

test("too hot already stops the shut-off test, and what was answered there does not count", () => {
  const judged = judge.judge({
    particulars: valve("shower", "health care"),
    answers: { ...ANSWERS, blend: cel(45), shut_off: s(60) },
  });
  expect(judged.points.shut_off).toMatchObject({ asked: false, verdict: null });
  expect(judged.overall).toBe("fail");
});
