import {
  type Checklist,
  compileJudge,
  type FormulaEngine,
  type Judge,
  type PatternEngine,
  usesFormulas,
  usesPatterns,
} from "@roundbook/schemas";
import { useEffect, useMemo, useState } from "react";
import { loadPatterns } from "./load-patterns.ts";

export type JudgeState =
  | {
      readonly state: "ready";
      readonly judge: Judge;
      /** Absent where the checklist has no pattern. */
      readonly patterns: PatternEngine | undefined;
    }
  | { readonly state: "loading" | "failed" };

/** Formulas are a chunk of their own: a checklist without any never pays for them. */
const loadFormulas = async (): Promise<FormulaEngine> => {
  const { createFormulaEngine } = await import("@roundbook/schemas/formulas");
  return createFormulaEngine();
};

/** An engine once it is needed; "failed" when it cannot be had, as offline before it was kept. */
function useEngine<Engine extends object>(
  needed: boolean,
  load: () => Promise<Engine>,
): Engine | "failed" | undefined {
  const [engine, setEngine] = useState<Engine | "failed">();
  useEffect(() => {
    if (!needed || engine !== undefined) return;
    let current = true;
    load().then(
      (loaded) => current && setEngine(() => loaded),
      () => current && setEngine("failed"),
    );
    return () => {
      current = false;
    };
  }, [needed, engine, load]);
  return engine;
}

/** What judges the answers of a checklist, and what checks how its texts are written. */
export function useJudge(document: Checklist): JudgeState {
  const calculates = useMemo(() => usesFormulas(document), [document]);
  const matches = useMemo(() => usesPatterns(document), [document]);
  const formulas = useEngine(calculates, loadFormulas);
  const patterns = useEngine(matches, loadPatterns);
  return useMemo<JudgeState>(() => {
    if (formulas === "failed" || patterns === "failed") return { state: "failed" };
    if ((calculates && !formulas) || (matches && !patterns)) return { state: "loading" };
    return {
      state: "ready",
      judge: compileJudge(document, calculates ? formulas : undefined),
      patterns: matches ? patterns : undefined,
    };
  }, [document, calculates, matches, formulas, patterns]);
}
