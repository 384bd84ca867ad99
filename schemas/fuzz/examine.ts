import { expect } from "vitest";
import { lintChecklist } from "../checklist/lint-checklist.ts";
import { createFormulaEngine } from "../formulas/index.ts";
import { createPatternEngine } from "../patterns/index.ts";
import { LINT_CODES } from "../shared/codes/lint-codes.ts";
import { at } from "../shared/problem.ts";
import { parseChecklist } from "../validate/index.ts";
import { expectPlaces, frozen } from "./expectations.ts";
import { expectIssued } from "./issued.ts";
import type { Random } from "./random.ts";

const engine = createFormulaEngine();
const patterns = createPatternEngine();

/** What became of a document. */
export type Fate = "refused" | "faulty" | "issued";

/** Takes one document all the way: refused with places, faulty with places, or issued and judged. */
export const examine = (random: Random, value: unknown): Fate => {
  const parsed = parseChecklist(frozen(value));
  if (!parsed.ok) {
    expect(parsed.problems.length).toBeGreaterThan(0);
    expectPlaces(parsed.problems, value);
    return "refused";
  }
  const found = lintChecklist(parsed.value, engine, patterns);
  expectPlaces(found, value);
  expect(found.filter(({ code }) => !Object.hasOwn(LINT_CODES, code))).toEqual([]);
  if (found.some(({ code }) => LINT_CODES[code]?.level === "error")) return "faulty";
  expectIssued(random, parsed.value);
  return "issued";
};

/** The names that every object would inherit if a document could add to them. */
export const inherited = (): readonly string[] =>
  [Object.prototype, Array.prototype, String.prototype].flatMap((prototype) =>
    Reflect.ownKeys(prototype).map((key) => at("", String(key))),
  );
