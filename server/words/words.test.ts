import { EXPLANATION_CODES, PROBLEM_CODES, REFUSAL_CODES } from "@roundbook/schemas";
import { describe, expect, test } from "vitest";
import { PARAM_WORDS } from "./param-words.ts";
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

  test.each([
    [
      "stop-undecided",
      { by: "roof" },
      "whether this is asked hangs on roof, which is not decided yet",
    ],
    [
      "ask-undecided",
      { cause: "stop-undecided" },
      "whether this is asked cannot be told: what would stop it is not decided yet",
    ],
    [
      "repeat-undecided",
      { repeat: "leaf", cause: "particular-too-small" },
      "how often leaf is asked cannot be told: a particular it hangs on is too small",
    ],
    [
      "formula-syntax",
      { start: 5, end: 6, reason: "unexpected_token" },
      "the formula cannot be read from its character 5 on: this word or sign does not fit here",
    ],
    [
      "absence-not-allowed",
      { reason: "lost", allowed: [] },
      "no answer: lost, which is no reason allowed here",
    ],
    ["not-allowed", { allowed: [] }, "this is not allowed here"],
    ["unknown-member", { point: "gap", member: null, members: [] }, "gap takes no answer"],
    ["not-an-answer", { kind: "choices" }, "this is no answer to a choice of several"],
    ["answer-shape", { kind: "graded" }, "this is no answer to a grade"],
    ["wrong-type", { expected: ["object"] }, "what stands here has to be an object { … }"],
    ["above-max", { value: 7, comparator: "", bound: 5, by: 2, unit: "1" }, "max 5; 7 is 2 above"],
    [
      "hits-not-as-declared",
      { found: 2, expected: 1 },
      "2 rows of the table fit where it declares 1",
    ],
  ])("say %s in whole sentences, without codes", (code, params, said) => {
    expect(say({ code, params })).toBe(said);
  });

  test("say every cause that a sentence can be given", () => {
    const causes = Object.keys({ ...EXPLANATION_CODES, ...PROBLEM_CODES }).filter((code) =>
      /^(particular|formula)-|^(missing|wrong-type|not-finite|no-rule|rules-conflict)$/.test(code),
    );
    expect(causes.length).toBeGreaterThan(10);
    expect(causes.filter((code) => !Object.hasOwn(PARAM_WORDS.cause ?? {}, code))).toEqual([]);
  });

  test("print no unit of a bare number", () => {
    const params = { value: 5, comparator: "", bound: 4, by: 1, unit: "1" };
    expect(say({ code: "above-max", params })).toBe("max 4; 5 is 1 above");
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
