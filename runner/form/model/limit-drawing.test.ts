import type { LimitJudgement } from "@roundbook/schemas";
import { describe, expect, it } from "vitest";
import { boundDecimals, limitDrawing } from "./limit-drawing.ts";

const limit = (over: Partial<LimitJudgement>): LimitJudgement => ({
  index: 0,
  severity: "fail",
  kind: "max",
  bound: 0.233,
  verdict: "undecided",
  why: { code: "not-answered", params: {} },
  ...over,
});
const ohm = { unit: "Ohm", alsoIn: ["mOhm"], decimals: 3 };

describe("a limit line", () => {
  it("draws a reading in the point's own unit, whatever it was written in", () => {
    const drawing = limitDrawing(ohm, [limit({})], "fail", { value: 241, unit: "mOhm" }, undefined);
    expect(drawing?.now).toEqual({ at: 0.241, verdict: "fail" });
  });

  it("draws a censored reading on its side", () => {
    const reading = { value: 0.3, unit: "Ohm", comparator: "<" as const };
    expect(limitDrawing(ohm, [limit({})], "undecided", reading, undefined)?.now?.censored).toBe(
      "below",
    );
  });

  it("draws nothing for now without a reading, and nothing at all without a bound", () => {
    expect(limitDrawing(ohm, [limit({})], "undecided", undefined, undefined)?.now).toBeUndefined();
    expect(
      limitDrawing(ohm, [limit({ bound: null })], "undecided", undefined, undefined),
    ).toBeUndefined();
  });

  it("begins at nought where nothing lies below it", () => {
    const bounds = [limit({ kind: "min", bound: 20 }), limit({ bound: 21 })];
    const range = (fromZero: boolean) =>
      limitDrawing({ unit: "1" }, bounds, "undecided", undefined, undefined, fromZero)?.range[0];
    expect(range(true)).toBe(0);
    expect(range(false)).toBeGreaterThan(0);
  });

  it("hatches what fails, not what is advised", () => {
    const limits = [limit({}), limit({ severity: "advisory", bound: 0.2 })];
    expect(limitDrawing(ohm, limits, "undecided", undefined, undefined)?.bounds).toEqual([
      { at: 0.233, side: "max", kind: "max" },
    ]);
  });

  it("prints a bound with all its places, so that no failing reading seems to meet it", () => {
    expect(boundDecimals(0.2333, 2)).toBe(4);
    expect(boundDecimals(50, 1)).toBe(1);
    expect(boundDecimals(0.1 + 0.2, 0)).toBe(1);
  });
});
