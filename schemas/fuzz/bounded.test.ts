import { beforeEach, expect, it, vi } from "vitest";
import { lintChecklist } from "../checklist/lint-checklist.ts";
import type { FormulaEngine } from "../formulas/engine-type.ts";
import { createFormulaEngine } from "../formulas/index.ts";
import { parseChecklist } from "../validate/index.ts";
import { HEAVY } from "./heavy.ts";

/** Steps of one character against another, spent on suggestions. */
const spent = vi.hoisted(() => ({ steps: 0 }));
vi.mock("../shared/nearest.ts", async (original) => {
  const real = await original<typeof import("../shared/nearest.ts")>();
  const nearest: typeof real.nearest = (word, known, budget = real.wordBudget()) => {
    const before = budget.steps;
    const found = real.nearest(word, known, budget);
    spent.steps += before - budget.steps;
    return found;
  };
  return { ...real, nearest };
});

beforeEach(() => {
  spent.steps = 0;
});

const counting = () => {
  const engine = createFormulaEngine();
  const count = { compiled: 0 };
  const counted: FormulaEngine = {
    compile: (...given) => {
      count.compiled += 1;
      return engine.compile(...given);
    },
  };
  return { count, counted };
};

/** Texts that stand where a formula may. */
const formulasIn = (doc: unknown): number =>
  (JSON.stringify(doc).match(/"(max|formula|when)":"|\* 1"/g) ?? []).length;

it.each(Object.entries(HEAVY))(
  "%s cost counted work, whatever the document asks for",
  (_, doc) => {
    const parsed = parseChecklist(doc);
    if (!parsed.ok) expect.fail(JSON.stringify(parsed.problems.slice(0, 3)));
    const { count, counted } = counting();
    const found = lintChecklist(parsed.value, counted);
    expect(found.length).toBeLessThanOrEqual(500);
    expect(count.compiled).toBeLessThanOrEqual(2 * formulasIn(doc));
    // A few budgets of 20 million at most, and one more word after each.
    expect(spent.steps).toBeLessThan(150_000_000);
  },
  30_000,
);

it("errors are told before warnings where there are too many of both", () => {
  const parsed = parseChecklist(HEAVY["units that are none"]);
  const found = parsed.ok ? lintChecklist(parsed.value) : [];
  expect(new Set(found.map(({ code }) => code))).toEqual(new Set(["unit-unknown"]));
});
