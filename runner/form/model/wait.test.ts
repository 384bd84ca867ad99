import { expect, it } from "vitest";
import { clockFigures, isEarly, isLate, isOpen, secondsAt } from "./wait.ts";

const wait = { startedAt: 1_000_000 };

it("a wait is never rounded up to the time it lacks", () => {
  expect(secondsAt(wait, 1_000_000 + 59_999)).toBe(59.9);
  expect(isEarly({ atLeast: 60 }, secondsAt(wait, 1_059_999))).toBe(true);
  expect(isEarly({ atLeast: 60 }, secondsAt(wait, 1_060_000))).toBe(false);
});

it("a clock that was set back waits from the beginning, and a forgotten one a day at most", () => {
  expect(secondsAt(wait, 0)).toBe(0);
  expect(secondsAt(wait, 1_000_000 + 200_000_000)).toBe(86_400);
});

it("both ends of a wait are in time", () => {
  expect(isLate({ atMost: 120 }, 120)).toBe(false);
  expect(isLate({ atMost: 120 }, 120.1)).toBe(true);
});

it("a box is closed before its wait has begun, and open once somebody read", () => {
  expect(isOpen({ atLeast: 60 }, undefined, 9_000_000)).toBe(false);
  expect(isOpen({ atLeast: 60 }, wait, 1_030_000)).toBe(false);
  expect(isOpen({ atLeast: 60 }, { ...wait, readAt: 1_030_000 }, 1_030_000)).toBe(true);
  expect(isOpen({ atMost: 60 }, wait, 1_000_000)).toBe(true);
});

it.each([
  [0, "0:00"],
  [64.9, "1:04"],
  [3725, "1:02:05"],
])("%d seconds are %s", (seconds, figures) => {
  expect(clockFigures(seconds)).toBe(figures);
});
