import type { PatternEngine } from "@roundbook/schemas";

/** Patterns are a chunk of their own, shared by all that check with them. */
export const loadPatterns = async (): Promise<PatternEngine> => {
  const { createPatternEngine } = await import("@roundbook/schemas/patterns");
  return createPatternEngine();
};
