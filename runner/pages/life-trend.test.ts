import { expect, test } from "vitest";
import { studentT, trendOf } from "./life-trend.ts";

const none = { min: null, max: null };
const falling = (noise: readonly number[], slope = -0.01) =>
  noise.map((by, at) => ({ day: at * 30, value: 64 + slope * at * 30 + by }));
const line = (...given: Parameters<typeof trendOf>) => {
  const trend = trendOf(...given);
  if (typeof trend === "string") throw new Error(trend);
  return trend;
};
const small = [0.1, -0.1, 0.05, -0.05, 0, 0.1, -0.1, 0.05, -0.05, 0];

test("Student's t agrees with the printed tables at 0.975", () => {
  // Two-sided 5 %: 6 degrees 2.447, 10 degrees 2.228, 30 degrees 2.042 (from memory).
  for (const [v, t] of [
    [6, 2.447],
    [10, 2.228],
    [30, 2.042],
  ] as const)
    expect(studentT(v)).toBeCloseTo(t, 3);
});

test("a trend takes eight readings over half a year", () => {
  expect(trendOf(falling(small.slice(0, 7)), none)).toBe("too-few");
  const close = small.map((by, at) => ({ day: at * 10, value: 64 - at + by }));
  expect(trendOf(close, none)).toBe("too-few");
  expect(trendOf([], none)).toBe("too-few");
});

test("readings that go up and down have no clear trend", () => {
  expect(trendOf(falling([1, -1, 1, -1, 1, -1, 1, -1], 0), none)).toBe("none-clear");
  expect(trendOf(falling(Array(9).fill(0), 0), none)).toBe("none-clear");
});

test("the line is that of least squares, and its limit lies ahead between two days", () => {
  const trend = line(falling(small), { min: 60, max: null });
  expect(trend.perMonth).toBeCloseTo(-0.01 * (365.2425 / 12), 1);
  // Without noise it would meet 60 after 400 days.
  expect(trend.meets?.earliest).toBeGreaterThan(350);
  expect(trend.meets?.earliest).toBeLessThan(400);
  expect(trend.meets?.latest).toBeGreaterThan(400);
});

test("an exact line meets its limit on the day it does", () => {
  const trend = line(falling(Array(10).fill(0)), { min: 60, max: null });
  expect(trend.meets).toEqual({ earliest: 400, latest: 400 });
});

test("nothing is told beyond twice the time that was read over", () => {
  expect(line(falling(small), { min: 50, max: null }).meets).toBeNull();
  const { meets } = line(falling(small), { min: 58.7, max: null });
  expect(meets).toMatchObject({ latest: null });
});

test("a limit on the other side, or one met already, is not told", () => {
  expect(line(falling(small), { min: null, max: 70 }).meets).toBeNull();
  expect(line(falling(small), { min: 63, max: null }).meets).toBeNull();
});
