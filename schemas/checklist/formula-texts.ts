import { at } from "../shared/problem.ts";
import type { Checklist, PointDefinition, ValueDefinition } from "./meta-schema.ts";

/** A text that is a formula, with its JSON Pointer. */
export type FormulaText = readonly [pointer: string, text: string];

const LIMIT_TEXTS = ["min", "max", "exclusiveMin", "exclusiveMax", "when"] as const;

/** Those of the candidates that are texts: a number needs no working out. */
const texts = (...candidates: readonly (readonly [string, unknown])[]): readonly FormulaText[] =>
  candidates.flatMap(([pointer, text]) => (typeof text === "string" ? [[pointer, text]] : []));

/** The texts of a value that may name other values. */
export const valueTexts = (name: string, value: ValueDefinition): readonly FormulaText[] => {
  const pointer = at("/values", name);
  if (value.formula !== undefined) return [[at(pointer, "formula"), value.formula]];
  return (value.table?.inputs ?? []).map(
    (input, index) => [at(pointer, "table", "inputs", index), input] as const,
  );
};

/** The formulas of a point: when it is asked, how it is worked out, what holds it to its limits. */
export const pointTexts = (name: string, point: PointDefinition): readonly FormulaText[] => {
  const pointer = at("/properties", name);
  return [
    ...texts(
      [at(pointer, "ask", "when"), point.ask?.when],
      [at(pointer, "calculate"), point.calculate],
      [at(pointer, "several", "count"), point.several?.count],
    ),
    ...(point.limits ?? []).flatMap((limit, index) => {
      const place = at(pointer, "limits", index);
      return texts(
        ...LIMIT_TEXTS.map((keyword) => [at(place, keyword), limit[keyword]] as const),
        [at(place, "decision", "uncertainty"), limit.decision?.uncertainty],
        [at(place, "sameAsLast", "within"), limit.sameAsLast?.within],
      );
    }),
  ];
};

/** Formulas that say how many members a repeat has. */
export const repeatTexts = (doc: Checklist): readonly FormulaText[] =>
  (doc.groups ?? []).flatMap(({ repeat }, index) =>
    texts([at("/groups", index, "repeat", "count"), repeat?.count]),
  );

/** Every text of a checklist that is a formula. */
export const formulaTexts = (doc: Checklist): readonly FormulaText[] => [
  ...Object.entries(doc.values ?? {}).flatMap(([name, value]) => valueTexts(name, value)),
  ...Object.entries(doc.properties).flatMap(([name, point]) => pointTexts(name, point)),
  ...repeatTexts(doc),
];
