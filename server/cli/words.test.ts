import { EXPLANATION_CODES, PROBLEM_CODES, REFUSAL_CODES } from "@roundbook/schemas";
import { describe, expect, test } from "vitest";
import { say } from "./say.ts";
import { WORDS } from "./words.ts";

const LISTED: Readonly<Record<string, readonly string[]>> = {
  ...Object.fromEntries(REFUSAL_CODES.map((code) => [code, []])),
  ...EXPLANATION_CODES,
  ...PROBLEM_CODES,
};

describe("the command line's words", () => {
  test("cover every code of the core and the desk", () => {
    expect(Object.keys(LISTED).filter((code) => !Object.hasOwn(WORDS, code))).toEqual([]);
  });

  test("mention only parameters that the code has", () => {
    const strange = Object.entries(WORDS).flatMap(([code, words]) => {
      const known = [...(EXPLANATION_CODES[code] ?? []), ...(PROBLEM_CODES[code] ?? []), "working"];
      const named = [...words.matchAll(/\{(\w+)\}/g)].map(([, name]) => name ?? "");
      return Object.hasOwn(LISTED, code)
        ? named.filter((name) => !known.includes(name)).map((name) => `${code}: ${name}`)
        : [];
    });
    expect(strange).toEqual([]);
  });

  test("work a bound out in the sentence that names it", () => {
    const params = { value: 0.2, comparator: "", bound: 0.233, by: 0.033, unit: "Ohm" };
    expect(say({ code: "within-max", params: { ...params, working: "0.1 + 10 × 0.0133" } })).toBe(
      "max 0.233 Ohm = 0.1 + 10 × 0.0133; 0.2 Ohm is 0.033 Ohm below",
    );
    expect(say({ code: "within-max", params })).toBe("max 0.233 Ohm; 0.2 Ohm is 0.033 Ohm below");
  });

  test("leave out a clause that has nothing to say", () => {
    const params = { keyword: "limts" };
    expect(say({ code: "unknown-keyword", params: { ...params, nearest: "limits" } })).toBe(
      "limts is not known here; the nearest is limits",
    );
    expect(say({ code: "unknown-keyword", params: { ...params, nearest: null } })).toBe(
      "limts is not known here",
    );
  });

  test("tell a code from a later version by its name and parameters", () => {
    expect(say({ code: "of-tomorrow", params: { bound: 3 } })).toBe("of-tomorrow; bound: 3");
  });
});
