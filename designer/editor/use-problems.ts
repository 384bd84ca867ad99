import {
  type ChecklistRow,
  type FormulaEngine,
  lintChecklist,
  type PatternEngine,
  type Problem,
  reusedPoints,
  usesFormulas,
} from "@roundbook/schemas";
import { useDeferredValue, useEffect, useMemo, useState } from "react";
import type { DraftDocument } from "../model/draft-document.ts";
import type { Whole } from "../model/whole.ts";
import { problemsOf } from "./problem-place.ts";

/** The formula engine, once a checklist has a formula or somebody is about to write one. */
export const useEngine = (document: DraftDocument, asked = false): FormulaEngine | undefined => {
  const [engine, setEngine] = useState<FormulaEngine>();
  const used = useMemo(() => usesFormulas(document), [document]);
  const needed = used || asked;
  useEffect(() => {
    if (!needed || engine) return;
    void import("@roundbook/schemas/formulas").then(({ createFormulaEngine }) => {
      const made = createFormulaEngine();
      setEngine(() => made);
    });
  }, [needed, engine]);
  return engine;
};

const hasPattern = ({ properties, particulars = {} }: DraftDocument): boolean =>
  [...Object.values(properties), ...Object.values(particulars)].some(
    ({ pattern }) => pattern !== undefined,
  );

/** The engine that says which patterns can be run, once a checklist has one. */
const usePatterns = (document: DraftDocument): PatternEngine | undefined => {
  const [engine, setEngine] = useState<PatternEngine>();
  const needed = useMemo(() => hasPattern(document), [document]);
  useEffect(() => {
    if (!needed || engine) return;
    void import("@roundbook/schemas/patterns").then(({ createPatternEngine }) => {
      const made = createPatternEngine();
      setEngine(() => made);
    });
  }, [needed, engine]);
  return engine;
};

const NO_ISSUE: readonly ChecklistRow[] = [];

/** What stands in the way of issuing, found while typing; the server's own findings beside it. */
export const useProblems = (
  whole: Whole,
  engine: FormulaEngine | undefined,
  served: readonly Problem[],
  issues: readonly ChecklistRow[] = NO_ISSUE,
): readonly Problem[] => {
  const looked = useDeferredValue(whole);
  const patterns = usePatterns(looked.document);
  return useMemo(() => {
    const { document, problems } = looked;
    const linted = [
      ...problems,
      ...lintChecklist(document, engine, patterns),
      ...reusedPoints(issues, document),
    ];
    // What the server said of an older text is only repeated where this one still has the place.
    const standing = served.filter(({ code }) => !linted.some((one) => one.code === code));
    return problemsOf(document, linted, looked === whole ? standing : []);
  }, [looked, whole, engine, patterns, served, issues]);
};
