import { createFormulaEngine } from "@roundbook/schemas/formulas";
import { createPatternEngine } from "@roundbook/schemas/patterns";

/** What is read once is kept in them: one of each for the whole program. */
export const formulas = createFormulaEngine();
export const patterns = createPatternEngine();
