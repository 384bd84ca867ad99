import { printUnit, useMessages } from "@roundbook/runner/form";
import { checklistNames, compileFormula, unitOf } from "@roundbook/schemas";
import { useMemo } from "react";
import { e } from "../messages/editor.ts";
import { readBound } from "../model/limit-edit.ts";
import { TextEdit } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";

/** A bound or a condition: what is wrong with a formula is said with its position. */
export const FormulaEdit = ({
  label,
  value,
  unit,
  condition,
  onTake,
}: {
  readonly label: string;
  readonly value: string;
  readonly unit?: string;
  /** It has to come out true or false. */
  readonly condition?: boolean;
  readonly onTake: (text: string) => string | undefined;
}) => {
  const { document, engine } = useDesk();
  const { say } = useMessages();
  const names = useMemo(() => checklistNames(document, engine), [document, engine]);
  const known = useMemo(() => [...names.types.keys()].sort().join(", "), [names]);
  const check = (text: string): string | undefined => {
    const bound = readBound(text);
    if (typeof bound !== "string") return onTake(text);
    if (!engine) return onTake(text);
    const expected = condition
      ? { type: "boolean" as const }
      : { type: "number" as const, unit: unit ? unitOf(unit) : undefined };
    const compiled = compileFormula(bound, names.types, expected, engine);
    const wrong = compiled.ok ? undefined : compiled.problems.map(say).join(" ");
    // A formula that does not stand yet is still kept: the footnotes say what is wrong with it.
    return onTake(text) ?? wrong;
  };
  const help = [unit && `${e("s.in")} ${printUnit(unit)}`, known].filter(Boolean).join(". ");
  return <TextEdit mono label={label} help={help || undefined} value={value} onTake={check} />;
};
