import { RESERVED_NAMES, TAKEN_NAMES } from "../../formulas/reserved.ts";
import { at, type Problem, problem } from "../../shared/problem.ts";
import type { Checklist } from "../meta-schema.ts";

/** Names that a formula could not say, or would read as something else. */
export const lintNames = (doc: Checklist): readonly Problem[] => {
  const reserved = (part: string, names: readonly string[], taken: boolean) =>
    names
      .filter((name) => RESERVED_NAMES.has(name) || (taken && TAKEN_NAMES.has(name)))
      .map((name) => problem(at("", part, name), "reserved-name", { name }));
  return [
    ...reserved("particulars", Object.keys(doc.particulars ?? {}), false),
    ...reserved("values", Object.keys(doc.values ?? {}), true),
    ...reserved("properties", Object.keys(doc.properties), false),
  ];
};
