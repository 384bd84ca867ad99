import { describe, expect, test } from "vitest";
import { COMPARATORS, type Comparator } from "../checklist/answer-types.ts";
import { compareReading, type NumberBound } from "./compare.ts";

const KINDS = ["min", "max", "exclusiveMin", "exclusiveMax"] as const;

const inBound = (kind: NumberBound, x: number, bound: number): boolean =>
  ({ min: x >= bound, max: x <= bound, exclusiveMin: x > bound, exclusiveMax: x < bound })[kind];
const inReading = (comparator: Comparator | "", x: number, value: number): boolean =>
  ({ "": x === value, "<": x < value, "<=": x <= value, ">": x > value, ">=": x >= value })[
    comparator
  ];

/** Quarters from far below to far above: a set meets or fills another here as on the whole line. */
const LINE = Array.from({ length: 81 }, (_, n) => n / 4 - 10);

describe("a reading stands for a set, a bound for a set", () => {
  test.each(
    KINDS.flatMap((kind) => (["", ...COMPARATORS] as const).map((c) => [kind, c] as const)),
  )("%s against %j: pass when inside, fail when apart, else undecided", (kind, comparator) => {
    for (const value of [1, 2, 3]) {
      const members = LINE.filter((x) => inReading(comparator, x, value));
      const inside = members.filter((x) => inBound(kind, x, 2)).length;
      const expected = inside === members.length ? "pass" : inside === 0 ? "fail" : "undecided";
      expect([value, compareReading(kind, comparator, value, 2)]).toEqual([value, expected]);
    }
  });

  // Insulation testers top out: ">200" is all they can say.
  test("above 200 lies within a minimum of 1 and within one above 200, and leaves 500 open", () => {
    expect(compareReading("min", ">", 200, 1)).toBe("pass");
    expect(compareReading("exclusiveMin", ">", 200, 200)).toBe("pass");
    expect(compareReading("min", ">", 200, 500)).toBe("undecided");
    expect(compareReading("max", ">", 200, 200)).toBe("fail");
    expect(compareReading("max", ">=", 200, 200)).toBe("undecided");
  });
});
