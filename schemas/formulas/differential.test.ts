import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isFailure } from "./engine-type.ts";
import { createFormulaEngine } from "./index.ts";
import { contextOf } from "./testing/context-of.ts";
import {
  PLAIN_NAMES,
  randomGiven,
  randomNumber,
  randomText,
  randomTruth,
} from "./testing/random-formulas.ts";
import { secondEngine, steps } from "./testing/second-engine.ts";

const engine = createFormulaEngine();
const RUNS = 4000;

/** Each formula is read by both engines from the same text and worked out on the same names. */
const compare = (formulas: fc.Arbitrary<string>, seed: number) => {
  const counts = { compared: 0, equal: 0, bothFailed: 0, absorbed: 0, notFinite: 0 };
  const before = steps.notFinite;
  fc.assert(
    fc.property(formulas, randomGiven, (source, given) => {
      const compiled = engine.compile(source, PLAIN_NAMES);
      if (!compiled.ok) throw new Error(JSON.stringify(compiled.problems));
      const ours = compiled.value.evaluate(contextOf(given));
      const theirs = secondEngine(source)(given);
      counts.compared += 1;
      if (isFailure(ours)) {
        expect(theirs).toBeUndefined();
        counts.bothFailed += 1;
        return;
      }
      // `Object.is`, so that doubles are compared bit by bit: −0 is not 0.
      expect(theirs).toBe(ours);
      counts.equal += 1;
      const unhad = compiled.value.names.some(
        (name) => typeof (given.get(name) ?? {}) === "object",
      );
      if (unhad) counts.absorbed += 1;
    }),
    { seed, numRuns: RUNS },
  );
  return { ...counts, notFinite: steps.notFinite - before };
};

describe("a second engine of the same standard agrees", () => {
  it.each([
    ["numbers", randomNumber, 1],
    ["numbers", randomNumber, 2],
    ["truths", randomTruth, 3],
    ["truths", randomTruth, 4],
    ["truths", randomTruth, 5],
    ["texts", randomText, 6],
  ] as const)("on %s: to the bit, or in failing (%#)", (_, formulas, seed) => {
    const counts = compare(formulas, seed);
    expect(counts.compared).toBe(RUNS);
    expect(counts.equal + counts.bothFailed).toBe(RUNS);
    // Both outcomes are met often, and so is a missing name that another side makes irrelevant.
    expect(Math.min(counts.equal, counts.bothFailed)).toBeGreaterThan(RUNS / 20);
    expect(counts.absorbed).toBeGreaterThan(RUNS / 200);
  });
});
