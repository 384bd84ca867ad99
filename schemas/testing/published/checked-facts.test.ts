import { describe, expect, test } from "vitest";
import { FIRE_DOORS } from "./fire-doors.ts";
import { LADDERS } from "./ladders.ts";
import { OTHER_INTERVALS } from "./other-intervals.ts";
import { OTHER_LIMITS } from "./other-limits.ts";
import { expectConverted, expectDue, expectJudged } from "./run-checks.ts";
import { VEHICLES } from "./vehicles.ts";
import { WATER } from "./water.ts";
import { WATER_INTERVALS } from "./water-intervals.ts";

const OTHER = [...OTHER_INTERVALS, ...VEHICLES, ...OTHER_LIMITS];
const AREAS = {
  Ladders: LADDERS,
  "Fire doors": FIRE_DOORS,
  Water: [...WATER, ...WATER_INTERVALS],
  "Other assets": OTHER,
};

describe.each(Object.entries(AREAS))("published facts hold in the engine: %s", (_, facts) => {
  const used = facts.filter((fact) => fact.used === "engine");
  test.each(used.map((fact) => [fact.id, fact.source, fact] as const))(
    "%s, %s",
    (_id, _at, fact) => {
      const { judged = [], due = [], converts = [] } = fact;
      expect(judged.length + due.length + converts.length).toBeGreaterThan(0);
      judged.forEach(expectJudged);
      due.forEach(expectDue);
      converts.forEach(expectConverted);
    },
  );

  test("a fact that is not ours says why, and none stands twice", () => {
    const unused = facts.filter((fact) => fact.used === "not-ours");
    for (const fact of unused) {
      expect(fact.reason).toBeTruthy();
      expect(fact.judged ?? fact.due ?? fact.converts).toBeUndefined();
    }
    expect(new Set(facts.map(({ id }) => id)).size).toBe(facts.length);
  });
});

test("how many facts of each area the engine proves, by marker", () => {
  const counted = Object.entries(AREAS).map(([area, facts]) => {
    const of = (marker: string) => facts.filter((fact) => fact.marker === marker).length;
    const used = facts.filter((fact) => fact.used === "engine").length;
    return [area, { R: of("R"), S: of("S"), M: of("M"), C: of("C"), used, all: facts.length }];
  });
  expect(Object.fromEntries(counted)).toMatchInlineSnapshot(`
    {
      "Fire doors": {
        "C": 2,
        "M": 1,
        "R": 0,
        "S": 22,
        "all": 25,
        "used": 23,
      },
      "Ladders": {
        "C": 0,
        "M": 12,
        "R": 3,
        "S": 6,
        "all": 21,
        "used": 20,
      },
      "Other assets": {
        "C": 5,
        "M": 27,
        "R": 13,
        "S": 35,
        "all": 80,
        "used": 70,
      },
      "Water": {
        "C": 8,
        "M": 2,
        "R": 18,
        "S": 11,
        "all": 39,
        "used": 37,
      },
    }
  `);
});
