import { parseCivilDate } from "../due/civil.ts";
import type { PatternEngine } from "../patterns/engine-type.ts";
import { nearest, wordBudget } from "../shared/nearest.ts";
import { at, type Problem, problem } from "../shared/problem.ts";
import { roundSignificant } from "../shared/significant.ts";
import type { ParticularDefinition, ParticularDefinitions } from "./meta-schema.ts";
import { particularType } from "./names.ts";

type Found = { readonly code: string; readonly params: Problem["params"] } | null;

const found = (code: string, params: Problem["params"]): Found => ({ code, params });

const textProblem = (
  name: string,
  definition: ParticularDefinition,
  value: string,
  patterns: PatternEngine | undefined,
): Found => {
  const limit = definition.maxLength ?? 1000;
  if (value.length > limit && [...value].length > limit) {
    return found("particular-too-long", { name, limit });
  }
  if (definition.format === "date" && parseCivilDate(value) === undefined) {
    return found("particular-no-such-day", { name });
  }
  if (definition.pattern === undefined || !patterns) return null;
  // A pattern that the engine refuses is never issued.
  const pattern = patterns.compile(definition.pattern);
  return pattern.ok && !pattern.value.test(value)
    ? found("particular-pattern", { name, pattern: definition.pattern })
    : null;
};

/**
 * What is wrong with one particular by its definition; null when nothing is. Without a pattern
 * engine, its pattern goes unchecked.
 */
export const particularProblem = (
  name: string,
  definition: ParticularDefinition,
  value: unknown,
  patterns?: PatternEngine,
): Found => {
  const expected = definition.type ?? particularType(definition).type;
  const fits =
    expected === "integer"
      ? Number.isInteger(value)
      : expected === "number"
        ? Number.isFinite(value)
        : typeof value === expected;
  if (!fits) return found("particular-wrong-type", { name, expected });
  if (definition.enum && !definition.enum.some((allowed) => allowed === value)) {
    return found("particular-not-allowed", { name, allowed: definition.enum.map(String) });
  }
  if (typeof value === "number") {
    const number = roundSignificant(value);
    if (definition.minimum !== undefined && number < definition.minimum) {
      return found("particular-too-small", { name, limit: definition.minimum });
    }
    if (definition.maximum !== undefined && number > definition.maximum) {
      return found("particular-too-large", { name, limit: definition.maximum });
    }
  }
  return typeof value === "string" ? textProblem(name, definition, value, patterns) : null;
};

/**
 * Problems of an asset's particulars against their definitions. One that is not given is no
 * problem here: what needs it is undecided.
 */
export const parseParticulars = (
  definitions: ParticularDefinitions,
  values: Readonly<Record<string, unknown>>,
  patterns?: PatternEngine,
): readonly Problem[] => {
  const budget = wordBudget();
  const known = Object.keys(definitions);
  return Object.entries(values).flatMap(([name, value]) => {
    const pointer = at("", name);
    const definition = Object.hasOwn(definitions, name) ? definitions[name] : undefined;
    if (!definition) {
      const near = nearest(name, known, budget);
      return [problem(pointer, "unknown-particular", { name, nearest: near })];
    }
    const wrong = particularProblem(name, definition, value, patterns);
    return wrong ? [problem(pointer, wrong.code, wrong.params)] : [];
  });
};
