import { expect, test } from "vitest";
import { CONDUCTOR_FACTS } from "./electrical-conductors.ts";
import { ELECTRICAL_INTERVALS } from "./electrical-intervals.ts";
import { LIMIT_FACTS } from "./electrical-limits.ts";
import { RCD_FACTS } from "./electrical-rcd.ts";
import { expectDue } from "./run-checks.ts";

const used = ELECTRICAL_INTERVALS.filter((fact) => fact.used === "engine");

test.each(used.map((fact) => [fact.id, fact.source, fact] as const))(
  "%s, %s: both ends of the published range fall due on their day",
  (_id, _source, { due = [] }) => {
    expect(due.length).toBeGreaterThan(0);
    due.forEach(expectDue);
  },
);

test("how many published electrical figures the engine is held against, by marker", () => {
  const facts = [...CONDUCTOR_FACTS, ...LIMIT_FACTS, ...RCD_FACTS, ...ELECTRICAL_INTERVALS];
  const of = (marker: string) => facts.filter((fact) => fact.marker === marker).length;
  const engine = facts.filter((fact) => fact.used === "engine").length;
  const counts = { R: of("R"), S: of("S"), M: of("M"), C: of("C"), engine, all: facts.length };
  expect(counts).toEqual({ R: 12, S: 58, M: 36, C: 3, engine: 107, all: 109 });
  expect(new Set(facts.map(({ id }) => id)).size).toBe(facts.length);
});
