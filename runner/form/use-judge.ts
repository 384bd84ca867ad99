import {
  type Checklist,
  compileJudge,
  type FormulaEngine,
  type Judge,
  usesFormulas,
} from "@roundbook/schemas";
import { useEffect, useMemo, useState } from "react";

export type JudgeState =
  | { readonly state: "ready"; readonly judge: Judge }
  | { readonly state: "loading" | "failed" };

/** Formulas are a chunk of their own: a checklist without any never pays for them. */
const loadEngine = async (): Promise<FormulaEngine> => {
  const { createFormulaEngine } = await import("@roundbook/schemas/formulas");
  return createFormulaEngine();
};

/** The judge of a checklist; "failed" when its formulas cannot be had, as offline before they were kept. */
export function useJudge(document: Checklist): JudgeState {
  const needed = useMemo(() => usesFormulas(document), [document]);
  const [engine, setEngine] = useState<FormulaEngine | "failed">();
  useEffect(() => {
    if (!needed || engine !== undefined) return;
    let current = true;
    loadEngine().then(
      (loaded) => current && setEngine(() => loaded),
      () => current && setEngine("failed"),
    );
    return () => {
      current = false;
    };
  }, [needed, engine]);
  return useMemo<JudgeState>(() => {
    if (!needed) return { state: "ready", judge: compileJudge(document) };
    if (engine === undefined) return { state: "loading" };
    if (engine === "failed") return { state: "failed" };
    return { state: "ready", judge: compileJudge(document, engine) };
  }, [document, needed, engine]);
}
