import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Rounding, roundRatio } from "./round-ratio.ts";

const round = (numerator: number, divisor: number, rule: Rounding["rule"], decimals = 0) =>
  roundRatio(numerator, divisor, { rule, decimals });

describe("rounding of a ratio is exact", () => {
  test.each([
    // numerator, divisor, half-up, half-even, half-away, down, up
    [5, 2, 3, 2, 3, 2, 3],
    [7, 2, 4, 4, 4, 3, 4],
    [1, 3, 0, 0, 0, 0, 1],
    [2, 3, 1, 1, 1, 0, 1],
    [4, 2, 2, 2, 2, 2, 2],
    [0, 5, 0, 0, 0, 0, 0],
    [-5, 2, -2, -2, -3, -3, -2],
    [-7, 2, -3, -4, -4, -4, -3],
    [-1, 3, 0, 0, 0, -1, 0],
  ])("%d / %d", (numerator, divisor, ...expected) => {
    const rules = ["half-up", "half-even", "half-away", "down", "up"] as const;
    expect(rules.map((rule) => round(numerator, divisor, rule) + 0)).toEqual(expected);
  });

  test("decimals are kept: 2.675 is rounded up though no double is 2.675", () => {
    expect(round(2675, 1000, "half-up", 2)).toBe(2.68);
    expect(Math.round(2.675 * 100) / 100).toBe(2.68);
    expect(Math.round(1.005 * 100) / 100).toBe(1);
    expect(round(1005, 1000, "half-up", 2)).toBe(1.01);
    expect(round(100, 3, "half-up", 6)).toBe(33.333333);
  });

  // Twenty graded points of 1 to 5: every share that can come up, half-up by whole numbers alone.
  test("every share of five times up to 20 points is right, where doubles are not", () => {
    let inDoubles = 0;
    for (let points = 1; points <= 20; points++)
      for (let sum = points; sum <= 5 * points; sum++) {
        const most = 5 * points;
        const doubled = 200 * sum + most;
        const expected = (doubled - (doubled % (2 * most))) / (2 * most);
        expect(round(100 * sum, most, "half-up")).toBe(expected);
        if (Math.floor((sum / most) * 100 + 0.5) !== expected) inDoubles += 1;
      }
    expect(inDoubles).toBeGreaterThan(0);
  });

  test("a rounded ratio is less than one unit away, and at most half with the half rules", () => {
    const rules = fc.constantFrom("half-up", "half-even", "half-away", "down", "up" as const);
    fc.assert(
      fc.property(
        fc.integer({ min: -1e6, max: 1e6 }),
        fc.integer({ min: 1, max: 5000 }),
        rules,
        (numerator, divisor, rule) => {
          const off = Math.abs(round(numerator, divisor, rule) * divisor - numerator) * 2;
          expect(off).toBeLessThanOrEqual(rule.startsWith("half") ? divisor : 2 * divisor - 1);
        },
      ),
    );
  });
});
