import { describe, expect, test } from "vitest";
import { roundSignificant } from "../../shared/significant.ts";
import { convert, unitOf } from "../../units/units.ts";
import { CONFORMITY } from "./conformity.ts";
import { judgeReading } from "./edges.ts";
import { BEYOND, CONVERSIONS, EXACT, INVALID, QUOTIENT, UNITS } from "./units.ts";

test.each(CONVERSIONS)("$id: $value $from is $printed $to as printed", (figure) => {
  const found = convert(figure.value, figure.from, figure.to) ?? Number.NaN;
  expect(Number(found.toPrecision(figure.digits))).toBe(figure.printed);
});

test(`${QUOTIENT.id}: one pound an hour in kilograms a second`, () => {
  const found = convert(1, QUOTIENT.from, QUOTIENT.to) ?? Number.NaN;
  expect(roundSignificant(found)).toBe(roundSignificant(QUOTIENT.is));
});

describe("conversions that are exact by definition", () => {
  test.each(EXACT)("$id: $value $from is exactly $is $to", ({ value, from, to, is }) => {
    expect(roundSignificant(convert(value, from, to) ?? Number.NaN)).toBe(is);
    expect(roundSignificant(convert(is, to, from) ?? Number.NaN)).toBe(value);
    // A limit in the one unit is met exactly by a reading in the other.
    for (const limit of [{ min: is }, { max: is }]) {
      const point = judgeReading(is, to, [limit]);
      expect(point.verdict).toBe("pass");
    }
  });
});

test.each(Object.values(BEYOND).flat())("$id: $from is refused, never guessed", ({ from, to }) => {
  expect(convert(1, from, to)).toBeUndefined();
});

test(`${INVALID.id}: ${INVALID.code} is no unit`, () => {
  expect(unitOf(INVALID.code)).toBeUndefined();
});

test("how many figures about conformity and units the engine is held against, by marker", () => {
  const facts = [...CONFORMITY, ...UNITS];
  const of = (marker: string) => facts.filter((fact) => fact.marker === marker).length;
  const engine = facts.filter((fact) => fact.used === "engine").length;
  const counts = { R: of("R"), S: of("S"), M: of("M"), C: of("C"), engine, all: facts.length };
  expect(counts).toEqual({ R: 15, S: 2, M: 15, C: 9, engine: 27, all: 41 });
  expect(new Set(facts.map(({ id }) => id)).size).toBe(facts.length);
});
