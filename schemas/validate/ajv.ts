import { Ajv2020 } from "ajv/dist/2020.js";
import type { PatternEngine } from "../patterns/engine-type.ts";

/** Keywords of our own vocabularies; other validators ignore them, so strict mode has to know them. */
const VOCABULARY = [
  "dialect",
  "language",
  "minutes",
  "particulars",
  "values",
  "cautions",
  "groups",
  "scores",
  "stops",
  "wording",
  "quantity",
  "several",
  "calculate",
  "limits",
  "ask",
  "grade",
  "block",
];

/**
 * Runs the patterns of documents, which anyone may have written, in linear time. Ajv tells compiled
 * patterns apart by their text. @throws Error for a pattern that lint refuses.
 */
const linearRegExp = (patterns: PatternEngine) => {
  const compile = (source: string) => {
    const pattern = patterns.compile(source);
    if (!pattern.ok) throw new Error(`no pattern that can be run: ${source}`);
    const { test } = pattern.value;
    return { test, toString: () => `linear:${source}` };
  };
  return Object.assign(compile, { code: "linearRegExp" });
};

/**
 * `inlineRefs: false`: a 200-point checklist compiles in 20 ms instead of 600. `ownProperties`:
 * an inherited `constructor` never satisfies `required`. Never `$data`: a missing limit would pass.
 * With a pattern engine for schemas from outside; those of the program are known to be harmless.
 */
export const createAjv = (patterns?: PatternEngine): Ajv2020 => {
  const ajv = new Ajv2020({
    allErrors: true,
    inlineRefs: false,
    ownProperties: true,
    strict: true,
    strictTypes: false,
    strictRequired: false,
    allowUnionTypes: true,
    // Errors carry the schema around them: the source of the nearest known keyword.
    verbose: true,
    logger: false,
    ...(patterns ? { code: { regExp: linearRegExp(patterns) } } : {}),
  });
  ajv.addVocabulary(VOCABULARY);
  return ajv;
};
