import type { Result } from "../shared/problem.ts";

/** A pattern whose time grows with the length of the text, whatever the pattern says. */
export interface LinearPattern {
  readonly source: string;
  /** Whether the pattern occurs in the text: unanchored, as JSON Schema's `pattern` is. */
  test(text: string): boolean;
}

export interface PatternEngine {
  /**
   * Reads a pattern of JSON Schema (ECMA-262 with the flag u). What cannot be run in linear time,
   * and what would take too much memory, is refused: `pattern-refused` with the pointer "".
   */
  compile(source: string): Result<LinearPattern>;
}
