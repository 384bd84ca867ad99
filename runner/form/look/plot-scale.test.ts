import { expect, test } from "vitest";
import { limitSteps, roundStep, valueScale } from "./plot-scale.ts";

test("ticks are figures that people count in", () => {
  expect([roundStep(9), roundStep(0.9), roundStep(40)]).toEqual([5, 0.5, 20]);
  expect(valueScale([55, 64.2]).ticks).toEqual([55, 60, 65]);
});

test("every value lies within the scale, a single one too", () => {
  for (const values of [[3], [0], [-2, 7], [0.198, 0.241]]) {
    const { low, high, ticks } = valueScale(values);
    expect(low).toBeLessThan(Math.min(...values));
    expect(high).toBeGreaterThan(Math.max(...values));
    expect(ticks.length).toBeGreaterThan(0);
  }
});

test("the limit steps where readings were judged by another one, and back again", () => {
  const reading = (day: number, min: number | null, issue: number) => ({
    day,
    min,
    max: null,
    issue,
  });
  expect(
    limitSteps([reading(1, 60, 1), reading(2, 60, 2), reading(3, 55, 3), reading(4, 60, 4)]),
  ).toEqual([
    { from: 1, min: 60, max: null, issue: 1 },
    { from: 3, min: 55, max: null, issue: 3 },
    { from: 4, min: 60, max: null, issue: 4 },
  ]);
});
