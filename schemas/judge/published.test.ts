import { describe, expect, test } from "vitest";
import { judgeOf, judgeOne, type Parts, reading, row } from "./testing/checklists.ts";

/** Figures from outside this project, each with where it stands written. */
const LEAD: Parts = {
  particulars: {
    length: { title: "Length", type: "number", unit: "m" },
    csa: { title: "Conductor cross-section", type: "number", unit: "mm2" },
  },
  values: {
    // Common practice of the trade, no source.
    joints: { unit: "Ohm", const: 0.1 },
    // IEC 60228:2023, class 5, plain copper at 20 °C: 26, 19.5, 13.3 and 7.98 Ohm/km (from memory).
    r_per_m: {
      unit: "Ohm/m",
      table: {
        policy: "unique",
        inputs: ["asset.csa"],
        rules: [row([0.75], 0.026), row([1], 0.0195), row([1.5], 0.0133), row([2.5], 0.00798)],
      },
    },
  },
  properties: {
    earth: reading("Ohm", [{ max: "joints + asset.length * r_per_m", basis: "IEC 60228" }]),
  },
};

describe("earth continuity of a 10 m lead of 1.5 mm² (IEC 60228 class 5, plus 0.1 Ohm)", () => {
  const judge = judgeOf(LEAD);
  const judged = (value: number, unit: string) =>
    judge.judgePoint("earth", {
      particulars: { length: 10, csa: 1.5 },
      answers: { earth: { value, unit } },
    });

  test("the limit is 0.233 Ohm and shows how it was worked out", () => {
    const [limit] = judged(0.2, "Ohm").limits;
    expect(limit?.bound).toBe(0.233);
    expect(limit?.working).toBe("0.1 + 10 × 0.0133");
    expect(limit?.basis).toBe("IEC 60228");
  });

  test.each([
    [0.232, "Ohm", "pass"],
    [0.233, "Ohm", "pass"],
    [0.234, "Ohm", "fail"],
    [232, "mOhm", "pass"],
    [233, "mOhm", "pass"],
    [234, "mOhm", "fail"],
  ])("%d %s: %s", (value, unit, verdict) => {
    expect(judged(value, unit).verdict).toBe(verdict);
  });
});

describe("hot water at the outlet reaches 50 °C (HSE HSG274 part 2)", () => {
  const point = reading("Cel", [{ min: 50, basis: "HSG274 part 2" }]);
  test.each([
    [50, "Cel", "pass"],
    [49.9, "Cel", "fail"],
    [122, "[degF]", "pass"],
    [121.9, "[degF]", "fail"],
    [323.15, "K", "pass"],
    [323.14, "K", "fail"],
  ])("%d %s: %s", (value, unit, verdict) => {
    expect(judgeOne(point, { value, unit }).verdict).toBe(verdict);
  });
});

describe("gap between fire door and frame is 2 to 4 mm (BS 8214 as commonly quoted)", () => {
  const point = reading("mm", [{ min: 2, max: 4, basis: "BS 8214" }]);
  test.each([
    [1.9, "mm", "fail"],
    [2, "mm", "pass"],
    [4, "mm", "pass"],
    [4.1, "mm", "fail"],
    [0.19, "cm", "fail"],
    [0.2, "cm", "pass"],
    [0.4, "cm", "pass"],
    [0.41, "cm", "fail"],
  ])("%d %s: %s", (value, unit, verdict) => {
    expect(judgeOne(point, { value, unit }).verdict).toBe(verdict);
  });
});
