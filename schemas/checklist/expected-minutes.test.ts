import { expect, test } from "vitest";
import { expectedMinutes } from "./expected-minutes.ts";

const points = (count: number) =>
  Object.fromEntries(Array.from({ length: count }, (_, n) => [`p${n}`, {}])) as never;

test("a check takes the minutes its checklist says", () => {
  expect(expectedMinutes({ minutes: 12, properties: points(3) })).toBe(12);
});

test("without them half a minute a point, and two at the least", () => {
  expect(expectedMinutes({ properties: points(1) })).toBe(2);
  expect(expectedMinutes({ properties: points(30) })).toBe(15);
});
