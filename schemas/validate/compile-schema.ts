import type { ErrorObject } from "ajv/dist/2020.js";
import { type Measures, measure } from "../shared/measure.ts";
import type { Problem, Result } from "../shared/problem.ts";
import { createAjv } from "./ajv.ts";
import { problemsOf } from "./schema-problems.ts";

export const DOCUMENT_LIMITS: Measures = { bytes: 1_000_000, depth: 32 };
const MAX_PROBLEMS = 100;

let shared: ReturnType<typeof createAjv> | undefined;
/** One for every schema of the program itself, so that the meta-schema is compiled once. */
const ajvOfOurs = () => {
  shared ??= createAjv();
  return shared;
};

/** Problems of a validator that has just returned false; at most 100 are told. */
export const problemsOfErrors = (errors: readonly ErrorObject[] | null | undefined) =>
  problemsOf((errors ?? []).slice(0, 1000)).slice(0, MAX_PROBLEMS);

/**
 * A check of values against one schema: weight and depth first, then the schema; `null` limits for
 * part of what was weighed as a whole. Compiled at the first use. The type is the caller's promise, made with `FromSchema` of the same schema.
 */
export const compileSchema = <T>(
  schema: object,
  limits: Measures | null = DOCUMENT_LIMITS,
): ((value: unknown) => Result<T>) => {
  let validate: ReturnType<ReturnType<typeof createAjv>["compile"]> | undefined;
  return (value) => {
    const heavy = limits && measure(value, limits);
    if (heavy) return { ok: false, problems: [heavy] };
    validate ??= ajvOfOurs().compile(schema);
    if (validate(value)) return { ok: true, value: value as T };
    const problems: readonly Problem[] = problemsOfErrors(validate.errors);
    return { ok: false, problems };
  };
};
