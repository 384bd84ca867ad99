import { describe, expect, test } from "vitest";
import { convert } from "../../units/units.ts";
import { constant, every, type JudgedCheck, range, readingPoint } from "./checked-fact.ts";
import { byEdition, SIDE_GAP, underTheLeaf } from "./fire-doors.ts";
import { leaning, oneInFour } from "./ladders.ts";
import { usableFor } from "./other-intervals.ts";
import { bent } from "./other-limits.ts";
import { expectDue, expectJudged } from "./run-checks.ts";
import { hotWithin, outsideGrowth } from "./water.ts";

/**
 * Where published sources differ, the rule stands in the data of the checklist or the interval, and
 * the engine says both readings.
 */
const mm = (value: number) => ({ value, unit: "mm" });
const m = (value: number) => ({ value, unit: "m" });
const deg = (value: number) => ({ value, unit: "deg" });
const cel = (value: number, elapsed: number) => ({ value, unit: "Cel", elapsed });

const READINGS: Readonly<Record<string, readonly JudgedCheck[]>> = {
  "one in four is of the height: 75.96 degrees": [
    oneInFour(4, 0, [
      [m(1), "pass"],
      [m(1.0308), "fail"],
    ]),
    leaning(75.96, 0.25, [
      [deg(75.9638), "pass"],
      [deg(75.5225), "fail"],
    ]),
  ],
  "one in four is of the length: 75.52 degrees": [
    leaning(75.52, 0.25, [
      [deg(75.5225), "pass"],
      [deg(75.9638), "fail"],
    ]),
  ],
  "75 degrees, give or take one, allows both": [
    leaning(75, 1, [
      [deg(75.9638), "pass"],
      [deg(75.5225), "pass"],
      [deg(73.9), "fail"],
    ]),
  ],
  "gap of a fire door: 2 to 4 mm": [SIDE_GAP],
  "gap of a fire door: 3 mm give or take 1": [
    {
      says: "Nominal and tolerance",
      parts: {
        values: { nominal: { unit: "mm", const: 3 }, tolerance: { unit: "mm", const: 1 } },
      },
      point: readingPoint("mm", [
        { min: "nominal - tolerance", max: "nominal + tolerance", basis: "Trade pages" },
      ]),
      cases: SIDE_GAP.cases,
    },
  ],
  "gap of a fire door: at most 3 mm, without a least": [
    constant("At most 3 mm", "max", 3, "mm", 0.1, [[mm(0), "pass"]]),
  ],
  "gap at the foot: 3 mm where smoke is kept out": [
    underTheLeaf(true, false, 3, [
      [mm(3), "pass"],
      [mm(8), "fail"],
    ]),
  ],
  "gap at the foot: 8 mm by one page, 8 to 10 by another, 6 to 10 by a certificate": [
    constant("At most 8 mm", "max", 8, "mm", 0.1),
    range("8 to 10 mm", [8, 10], "mm", 0.1),
    range("6 to 10 mm", [6, 10], "mm", 0.1),
  ],
  "wood doors before 2016 and since": [
    byEdition(2015, [[{ value: 0.1875, unit: "[in_i]" }, "fail"]]),
    byEdition(2016, [[{ value: 0.1875, unit: "[in_i]" }, "pass"]]),
  ],
  "hot water within a minute": [{ ...hotWithin(60), cases: [[cel(50, 45), "pass"]] }],
  "hot water within thirty seconds": [{ ...hotWithin(30), cases: [[cel(50, 45), "undecided"]] }],
  "bacteria grow from 20 °C": outsideGrowth(20, 45),
  "bacteria grow from 25 °C": outsideGrowth(25, 45),
  "the hottest bath: 43, 44, 46 or 48 °C": [43, 44, 46, 48].map((most) =>
    constant(`Not over ${most} °C`, "max", most, "Cel", 0.1),
  ),
  "racking: amber up to twice the limit of the member": [
    bent("depth", 1000, 3, [
      [mm(6), "advisory"],
      [mm(6.1), "fail"],
    ]),
  ],
  "racking: amber from 5 to 10 mm whatever the member": [
    {
      says: "A trade page",
      point: readingPoint("mm", [
        { max: 5, severity: "advisory", basis: "Trade page" },
        { max: 10, basis: "Trade page" },
      ]),
      cases: [
        [mm(5), "pass"],
        [mm(6.1), "advisory"],
        [mm(10), "advisory"],
        [mm(10.1), "fail"],
      ],
    },
  ],
  "seven days, the seventh counts": [usableFor("P7D", "2026-03-09", "2026-03-10")],
  "seven days, the seventh does not count": [usableFor("P6D", "2026-03-08", "2026-03-09")],
};

describe("both readings of a disagreement are judged as written", () => {
  test.each(Object.entries(READINGS))("%s", (_, checks) => {
    expect(checks.length).toBeGreaterThan(0);
    checks.forEach(expectJudged);
  });
});

const DUE = [
  ["ladders every 6 months", "P6M", "2026-09-02"],
  ["ladders every 3 months", "P3M", "2026-06-02"],
  ["extended service of most extinguishers, 5 years", "P5Y", "2031-03-02"],
  ["extended service of CO2, 10 years", "P10Y", "2036-03-02"],
  ["emergency lighting, full test every year", "P1Y", "2027-03-02"],
  ["emergency lighting, full test at three years", "P3Y", "2029-03-02"],
  ["fire alarm serviced within 6 months", "P6M", "2026-09-02"],
  ["fire alarm serviced yearly", "P1Y", "2027-03-02"],
] as const;

test.each(DUE)("both intervals of a disagreement are said: %s", (_, duration, due) => {
  expectDue(every(duration, "2026-03-02", due));
  expect(due > "2026-03-02").toBe(true);
});

test("75 mm ajar and 15 degrees are no measure of the same thing", () => {
  expect(convert(75, "mm", "deg")).toBeUndefined();
});
