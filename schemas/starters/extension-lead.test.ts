import { expect, test } from "vitest";
import { createFormulaEngine } from "../formulas/index.ts";
import { compileJudge } from "../judge/compile-judge.ts";
import { broken, FLEXIBLE_NUMBERS, megohm, ms, ohm } from "../testing/starters/electrical.ts";
import { proveStarter } from "../testing/starters/prove.ts";
import { memory, practice, published, type Sheet } from "../testing/starters/starter-case.ts";
import { EXTENSION_LEAD } from "./extension-lead.ts";

const LEAD = { length: 10, csa: 1.5, earthed: true, sockets: 2, rcd: false };
const TESTED = {
  flex: "ok",
  plug: "ok",
  suited: "ok",
  marks: "ok",
  polarity: "ok",
  insulation: { value: 200, unit: "MOhm", comparator: ">" },
  "socket@1": "ok",
  "socket@2": "ok",
  "earth_continuity@1": ohm(0.12),
  "earth_continuity@2": ohm(0.12),
} as const;
const SHEETS: Readonly<Record<string, Sheet>> = {
  "10 m": { particulars: LEAD, answers: TESTED },
  "25 m": {
    particulars: { ...LEAD, length: 25, rcd: true },
    answers: { ...TESTED, rcd_fitted: "ok", rcd_trip: ms(28) },
  },
};
const LONGEST = "/values/longest/table/rules";
const CODE = memory("IET Code of Practice for in-service inspection and testing, extension leads");

proveStarter({
  starter: EXTENSION_LEAD,
  sheets: SHEETS,
  steps: [
    ...broken("10 m", "flex", "plug", "suited", "marks", "polarity", "socket@2"),
    ...broken("25 m", "rcd_fitted"),
    {
      sheet: "10 m",
      point: "insulation",
      tries: [
        [megohm(1.01), "pass"],
        [megohm(1), "pass"],
        [megohm(0.99), "fail"],
      ],
    },
    {
      sheet: "10 m",
      point: "earth_continuity@2",
      tries: [
        [ohm(0.232), "pass"],
        [ohm(0.233), "pass"],
        [ohm(0.234), "fail"],
      ],
    },
    {
      sheet: "25 m",
      point: "rcd_trip",
      tries: [
        [ms(299), "pass"],
        [ms(300), "pass"],
        [ms(301), "fail"],
        [{ value: 2000, unit: "ms", comparator: ">" }, "fail"],
      ],
    },
  ],
  numbers: {
    ...FLEXIBLE_NUMBERS,
    [`${LONGEST}/0/when/0/0`]: CODE,
    [`${LONGEST}/0/when/0/1`]: CODE,
    [`${LONGEST}/0/when/0/2`]: CODE,
    [`${LONGEST}/0/then`]: CODE,
    [`${LONGEST}/1/when/0`]: CODE,
    [`${LONGEST}/1/then`]: CODE,
    [`${LONGEST}/2/when/0/0`]: CODE,
    [`${LONGEST}/2/when/0/1`]: CODE,
    [`${LONGEST}/2/then`]: CODE,
    "/properties/insulation/limits/0/min": published("el-064", 1),
    "/properties/earth_continuity/limits/1/sameAsLast/within": practice("a rise worth a look"),
    "/properties/rcd_trip/limits/0/max": published("el-095", 300),
  },
});

const judge = compileJudge(EXTENSION_LEAD.checklist, createFormulaEngine());

test("a rise since last time is an advisory long before the limit", () => {
  const at = (value: number, previous?: Sheet["answers"]) =>
    judge.judge({
      particulars: LEAD,
      answers: { ...TESTED, "earth_continuity@1": ohm(value) },
      ...(previous ? { previous } : {}),
    }).points["earth_continuity@1"]?.verdict;
  expect(at(0.17)).toBe("pass");
  expect(at(0.17, TESTED)).toBe("pass");
  expect(at(0.171, TESTED)).toBe("advisory");
});

test("a socket outlet left out is missed", () => {
  const { "socket@2": _, ...rest } = TESTED;
  const judged = judge.judge({ particulars: LEAD, answers: rest });
  expect([judged.overall, judged.complete]).toEqual(["undecided", false]);
  const unknown = judge.judge({ particulars: { ...LEAD, sockets: 21 }, answers: TESTED });
  expect(unknown.overall).not.toBe("pass");
});

test("a damaged flex stops the tests of the lead and of each socket outlet", () => {
  const { points, overall } = judge.judge({
    particulars: LEAD,
    answers: { ...TESTED, flex: "not-ok", "earth_continuity@1": ohm(9) },
  });
  expect(overall).toBe("fail");
  for (const name of ["polarity", "insulation", "socket@1", "earth_continuity@1"])
    expect([name, points[name]?.verdict]).toEqual([name, null]);
});

test("a lead without its earth at any socket outlet is not plugged in", () => {
  const judged = judge.judge({
    particulars: { ...LEAD, rcd: true },
    answers: { ...TESTED, "earth_continuity@2": ohm(5), rcd_trip: ms(28) },
  });
  expect(judged.overall).toBe("fail");
  expect(judged.points.rcd_trip).toMatchObject({ asked: false, verdict: null });
});
