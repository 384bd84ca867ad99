import { parseCivilDate } from "../../due/civil.ts";
import { nearest, type WordBudget } from "../../shared/nearest.ts";
import { at, type Problem, problem } from "../../shared/problem.ts";
import type { FormulaText } from "../formula-texts.ts";
import { pointKind } from "../guards.ts";
import type { DateBound, LimitDefinition } from "../limit-schema.ts";
import type { Checklist } from "../meta-schema.ts";

export const DATE_BOUNDS = ["notBefore", "notAfter"] as const;

/** Dates counted from another answer, written as formulas are. */
export const dateTexts = (doc: Checklist, name: string): readonly FormulaText[] =>
  (doc.properties[name]?.limits ?? []).flatMap((limit, index) =>
    DATE_BOUNDS.flatMap((keyword) => {
      const bound = limit[keyword];
      const pointer = at("/properties", name, "limits", index, keyword, "from");
      return typeof bound === "object" ? [[pointer, bound.from] as const] : [];
    }),
  );

/** Names that dates can be counted from: true for those that are dates. */
const datesOf = (doc: Checklist): ReadonlyMap<string, boolean> =>
  new Map([
    ...Object.entries(doc.particulars ?? {}).map(
      ([name, { format }]) => [`asset.${name}`, format === "date"] as const,
    ),
    ...Object.entries(doc.properties).map(
      ([name, point]) => [`answers.${name}`, pointKind(point) === "date"] as const,
    ),
  ]);

/** Bounds of dates are days that exist, or are counted from a date that is known. */
export const dateCheck = (doc: Checklist, budget: WordBudget) => {
  const dates = datesOf(doc);
  const boundProblem = (pointer: string, point: string, bound: DateBound): readonly Problem[] => {
    if (typeof bound === "string") {
      return parseCivilDate(bound) === undefined
        ? [problem(pointer, "no-such-day", { date: bound })]
        : [];
    }
    const { from: name } = bound;
    const place = at(pointer, "from");
    if (name === "today") return [];
    if (!dates.has(name)) {
      const near = nearest(name, [...dates.keys()], budget);
      return [problem(place, "date-bound-unknown", { name, nearest: near })];
    }
    if (!dates.get(name)) return [problem(place, "date-bound-not-date", { name })];
    return name === `answers.${point}` ? [problem(place, "bound-of-itself", { point })] : [];
  };
  return (pointer: string, point: string, limit: LimitDefinition): readonly Problem[] =>
    DATE_BOUNDS.flatMap((keyword) => {
      const bound = limit[keyword];
      return bound === undefined ? [] : boundProblem(at(pointer, keyword), point, bound);
    });
};
