import type { Judgement } from "@roundbook/schemas";
import { expect, test } from "vitest";
import { reservationsOf, tallyOf } from "./tally.ts";

const judged = (points: readonly (readonly [string | null, boolean])[], more: object = {}) =>
  ({
    points: Object.fromEntries(
      points.map(([verdict, asked], at) => [`p${at}`, { verdict, asked }]),
    ),
    complete: true,
    pending: [],
    ...more,
  }) as unknown as Judgement;

test("points asked are the points judged and those that nothing judges, and no others", () => {
  const { asked, verdicts } = tallyOf(
    judged([
      ["pass", true],
      [null, true],
      ["undecided", false],
      [null, false],
    ]),
  );
  expect(asked).toBe(3);
  expect(verdicts).toEqual([
    { verdict: "pass", count: 1 },
    { verdict: "undecided", count: 1 },
    { verdict: "not-judged", count: 1 },
  ]);
});

test("a verdict of an inspection that is not complete, or waits for a result, says so", () => {
  expect(reservationsOf(judged([]))).toEqual([]);
  expect(reservationsOf(judged([], { complete: false }))).toEqual(["incomplete"]);
  expect(reservationsOf(judged([], { complete: false, pending: ["lead"] }))).toEqual([
    "incomplete",
    "awaited",
  ]);
});
