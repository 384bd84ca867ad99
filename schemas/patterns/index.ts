/** The door to patterns: the only way to the RE2 library, so that apps load it when needed. */
import { RE2JS } from "re2js";
import { problem, type Result } from "../shared/problem.ts";
import type { LinearPattern, PatternEngine } from "./engine-type.ts";
import { translatePattern } from "./translate.ts";

/** Steps a character may cost at most: the size of the program, as RE2 counts it. */
const MOST_INSTRUCTIONS = 2000;
const MOST_KEPT = 200;

type Compiled = Result<LinearPattern>;

const refused = (pattern: string, reason: string): Compiled => ({
  ok: false,
  problems: [problem("", "pattern-refused", { pattern, reason })],
});

/** What RE2 says of a pattern, without the pattern itself: it stands beside it. */
const reasonOf = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).replace("error parsing regexp: ", "");

const compile = (source: string): Compiled => {
  try {
    // Read, never run: what other validators would refuse is refused here too.
    new RegExp(source, "u");
    const translated = translatePattern(source);
    if (translated === null) return refused(source, "\\S within [ ]");
    const program = RE2JS.compile(translated);
    if (program.programSize() > MOST_INSTRUCTIONS) {
      return refused(source, `more than ${MOST_INSTRUCTIONS} steps for a character`);
    }
    return { ok: true, value: { source, test: (text) => program.test(text) } };
  } catch (error) {
    return refused(source, reasonOf(error));
  }
};

/** Runs patterns in time linear in the text (RE2); what was read is kept for the next time. */
export const createPatternEngine = (): PatternEngine => {
  const kept = new Map<string, Compiled>();
  return {
    compile: (source) => {
      const known = kept.get(source);
      if (known) return known;
      if (kept.size >= MOST_KEPT) kept.clear();
      const compiled = compile(source);
      kept.set(source, compiled);
      return compiled;
    },
  };
};
