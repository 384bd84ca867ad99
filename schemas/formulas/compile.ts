import { NAME } from "../shared/patterns.ts";
import type { Result } from "../shared/problem.ts";
import { compileTree } from "./compile-tree.ts";
import type { CompiledFormula, Expected, FormulaEngine, NameTypes } from "./engine-type.ts";
import { RESERVED_NAMES } from "./reserved.ts";
import { MAX_FORMULA_LENGTH } from "./tree.ts";

const word = NAME.slice(1, -1);
const PLAIN = new RegExp(`^(?:(?:asset|answers)\\.)?(${word})$`);

/** The name a formula consists of, when it is nothing but one name: no engine is needed then. */
export const plainName = (source: string): string | null => {
  if (source.length > MAX_FORMULA_LENGTH) return null;
  const match = PLAIN.exec(source.trim());
  return match?.[1] !== undefined && !RESERVED_NAMES.has(match[1]) ? source.trim() : null;
};

/**
 * Compiles a formula, with the engine unless it is a plain name. Throws when an engine is needed
 * and none is given: that is a programmer's mistake (see `usesFormulas`).
 */
export const compileFormula = (
  source: string,
  names: NameTypes,
  expected: Expected | undefined,
  engine: FormulaEngine | undefined,
): Result<CompiledFormula> => {
  const name = plainName(source);
  if (name !== null) {
    const start = source.indexOf(name);
    const place = { start, end: start + name.length };
    return compileTree(source, { kind: "name", name, ...place }, names, expected);
  }
  if (!engine) throw new Error("This checklist has formulas: give a formula engine.");
  return engine.compile(source, names, expected);
};

/** Texts and comments: an apostrophe in a comment opens no text, two strokes in a text no comment. */
const UNREAD = /"(?:\\.|[^"\\])*"|'(?:\\.|[^'\\])*'|\/\/[^\n]*/g;
const WORDS = /(?<![\w.])(?:(?:asset|answers)\.)?[a-z][a-z0-9_]*/g;

/**
 * Names a formula mentions, read without parsing it: enough to order values by what they need.
 * May hold words that are no names, such as functions.
 */
export const wordsIn = (source: string): readonly string[] => [
  ...new Set(source.replaceAll(UNREAD, " ").match(WORDS) ?? []),
];
