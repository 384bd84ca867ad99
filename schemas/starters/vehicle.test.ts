import { expect, test } from "vitest";
import type { Answers } from "../checklist/answer-types.ts";
import { createFormulaEngine } from "../formulas/index.ts";
import { compileJudge } from "../judge/compile-judge.ts";
import { proveStarter } from "../testing/starters/prove.ts";
import { practice, published, type Sheet, type Step } from "../testing/starters/starter-case.ts";
import { VEHICLE } from "./vehicle.ts";

const mm = (value: number) => ({ value, unit: "mm" });
const across = (...values: number[]) => values.map(mm);
const LOOKED = [
  "still",
  "lights",
  "glass",
  "mirrors",
  "leaks",
  "body",
  "load",
  "coupling",
  "brakes",
  "steering",
  "horn",
  "belts",
  "lamps",
];
const wheels = (count: number): Answers =>
  Object.fromEntries(
    Array.from({ length: count }, (_, index) => index + 1).flatMap((wheel) => [
      [`tread@${wheel}`, across(4, 4, 4)],
      [`cut@${wheel}`, mm(0)],
      [`tyre@${wheel}`, "ok"],
      [`nuts@${wheel}`, "ok"],
    ]),
  );
const looked = (without: readonly string[] = []): Answers =>
  Object.fromEntries(LOOKED.filter((name) => !without.includes(name)).map((name) => [name, "ok"]));
const vehicle = (kind: string, count: number, width: number, tows = false) => ({
  class: kind,
  wheels: count,
  section_width: width,
  tows,
});
const SHEETS: Readonly<Record<string, Sheet>> = {
  van: {
    particulars: vehicle("van up to 3500 kg", 4, 205, true),
    answers: { ...looked(), ...wheels(4) },
  },
  lorry: {
    particulars: vehicle("larger goods vehicle", 6, 315),
    answers: { ...looked(["coupling"]), ...wheels(6) },
  },
  motorcycle: {
    particulars: vehicle("motorcycle", 2, 130),
    answers: { ...looked(["coupling", "belts"]), ...wheels(2) },
  },
};
const tread = (sheet: string, wheel: number, least: number): Step => ({
  sheet,
  point: `tread@${wheel}`,
  tries: [
    [across(4, least + 0.1, 4), "pass"],
    [across(4, 4, least), "pass"],
    [across(4, Math.round((least - 0.1) * 10) / 10, 4), "fail"],
    [across(4, 4), "undecided"],
  ],
});

proveStarter({
  starter: VEHICLE,
  sheets: SHEETS,
  steps: [
    ...LOOKED.map((point): Step => ({ sheet: "van", point, tries: [["not-ok", "fail"]] })),
    ...["tyre@2", "nuts@4"].map(
      (point): Step => ({ sheet: "van", point, tries: [["not-ok", "fail"]] }),
    ),
    tread("van", 3, 1.6),
    tread("lorry", 6, 1),
    tread("motorcycle", 2, 1),
    {
      sheet: "van",
      point: "cut@1",
      tries: [
        [mm(24), "pass"],
        [mm(25), "pass"],
        [mm(26), "fail"],
      ],
    },
    {
      sheet: "lorry",
      point: "cut@1",
      tries: [
        [mm(30), "pass"],
        [mm(31.5), "pass"],
        [mm(32), "fail"],
      ],
    },
  ],
  numbers: {
    "/values/least_tread/table/rules/0/when/0/1#3500": published("ot-037", 3500),
    "/values/least_tread/table/rules/0/then": published("ot-037", 1.6, "mm"),
    "/values/least_tread/table/rules/1/then": published("ot-038", 1, "mm"),
    "/values/least_tread/table/rules/2/then": published("ot-039", 1, "mm"),
    "/values/short_cut/const": published("ot-041", 25, "mm"),
    "/values/longest_cut/formula#0.1": published("ot-044", 0.1),
    "/properties/tread/several/count": practice("both sides and the middle"),
  },
});

const judge = compileJudge(VEHICLE.checklist, createFormulaEngine());

test("a wheel left out is never a pass", () => {
  const van = SHEETS.van;
  if (van === undefined) throw new Error("no sheet");
  const judged = judge.judge({ ...van, answers: { ...looked(), ...wheels(3) } });
  expect([judged.overall, judged.complete]).toEqual(["undecided", false]);
});

test("what can roll stops the wheels from being looked at", () => {
  const van = SHEETS.van;
  if (van === undefined) throw new Error("no sheet");
  const judged = judge.judge({ ...van, answers: { ...van.answers, still: "not-ok" } });
  expect(judged.points["tread@1"]).toMatchObject({ asked: false, verdict: null });
  expect(judged.overall).toBe("fail");
});
