import type { PatternEngine } from "../../patterns/engine-type.ts";
import { at, type Problem } from "../../shared/problem.ts";
import type { Checklist } from "../meta-schema.ts";

/** Patterns can be run in linear time; without an engine they go unchecked. */
export const lintPatterns = (
  doc: Checklist,
  engine: PatternEngine | undefined,
): readonly Problem[] =>
  engine === undefined
    ? []
    : (["particulars", "properties"] as const).flatMap((part) =>
        Object.entries(doc[part] ?? {}).flatMap(([name, { pattern }]) => {
          const compiled = pattern === undefined ? undefined : engine.compile(pattern);
          if (!compiled || compiled.ok) return [];
          const pointer = at("", part, name, "pattern");
          return compiled.problems.map((found) => ({ ...found, pointer }));
        }),
      );
