import { printQuantity } from "@roundbook/runner/form";
import type { LimitDefinition, PointDefinition } from "@roundbook/schemas";
import { anyOf } from "../messages/any-of.ts";
import { f } from "../messages/facts.ts";
import { DATE_SIDES, sideOf } from "./date-bound.ts";
import { dateBoundWords } from "./date-words.ts";
import { type DraftDocument, optionsOf } from "./draft-document.ts";
import { gradeWords } from "./fact-words.ts";
import { formulaWords } from "./formula-words.ts";
import { type BoundKind, boundsOf } from "./limit-edit.ts";

/** A bound as people read it: a figure with its unit, or a formula in titles. */
export const boundWords = (
  document: DraftDocument,
  point: PointDefinition,
  bound: number | string,
): string =>
  typeof bound === "number"
    ? printQuantity(bound, point.quantity?.unit)
    : formulaWords(document, bound);

export const choiceWords = (point: PointDefinition, value: string | number): string => {
  if (value === "ok" || value === "not-ok") return f(`choice.${value}`);
  return optionsOf(point).find((option) => option.const === value)?.title ?? String(value);
};

const choices = (point: PointDefinition, limit: LimitDefinition): string =>
  anyOf((limit.accept ?? []).map((value) => choiceWords(point, value)));

const lastWords = (
  document: DraftDocument,
  point: PointDefinition,
  { sameAsLast }: LimitDefinition,
): string[] => {
  if (!sameAsLast) return [];
  const far = f("bound.last", { within: boundWords(document, point, sameAsLast.within) });
  return [sameAsLast.whenNone === "not-applied" ? far : far + f("bound.last-none")];
};

const decisionWords = (
  document: DraftDocument,
  point: PointDefinition,
  { decision }: LimitDefinition,
): string => {
  if (!decision || decision.rule === "simple") return "";
  const { rule, uncertainty, guardFactor = 1 } = decision;
  const words = uncertainty === undefined ? "…" : boundWords(document, point, uncertainty);
  const how = f("decision.uncertainty", { uncertainty: words, factor: guardFactor });
  return f(`decision.${rule}`) + how;
};

/** What a limit means in words: "Fails below 50 °C." */
export const limitSentence = (
  document: DraftDocument,
  point: PointDefinition,
  limit: LimitDefinition,
): string => {
  const bounds = [
    ...boundsOf(limit).map(({ kind, bound }) =>
      f(`bound.${kind}`, { bound: boundWords(document, point, bound) }),
    ),
    ...DATE_SIDES.flatMap((side) => {
      const bound = limit[side];
      return bound === undefined
        ? []
        : [f(`bound.${side}`, { bound: dateBoundWords(document, bound) })];
    }),
    ...lastWords(document, point, limit),
  ];
  const what = limit.accept
    ? f("limit.unless", { choices: choices(point, limit) })
    : anyOf(bounds) + decisionWords(document, point, limit);
  const when = limit.when ? f("limit.when", { formula: formulaWords(document, limit.when) }) : "";
  return f(limit.severity === "advisory" ? "limit.advises" : "limit.fails", { what, when });
};

const shortBound = (
  document: DraftDocument,
  point: PointDefinition,
  { kind, bound }: { kind: BoundKind; bound: number | string },
): string =>
  typeof bound === "number"
    ? f(`bound.${kind}`, { bound: boundWords(document, point, bound) })
    : f("note.worked-out", { side: f(`note.${kind}`) });

/** The line that stands for a closed point: "OK passes, else a danger now". */
export const pointNote = (document: DraftDocument, point: PointDefinition): string => {
  const limit = point.limits?.[0];
  if (limit?.accept) {
    return f("note.accepts", {
      choices: choices(point, limit),
      grade: point.grade ? gradeWords(point.grade) : f("note.it-fails"),
    });
  }
  const bounds = limit ? boundsOf(limit) : [];
  if (bounds.length > 0) {
    const what = anyOf(bounds.map((one) => shortBound(document, point, one)));
    return f(limit?.severity === "advisory" ? "note.advises" : "note.fails", { what });
  }
  const side = limit && sideOf(limit);
  if (limit && side) {
    const what = f(`bound.${side}`, { bound: dateBoundWords(document, limit[side] ?? "") });
    return f(limit.severity === "advisory" ? "note.advises" : "note.fails", { what });
  }
  if (limit?.sameAsLast) return f("note.fails", { what: f("note.far-from-last") });
  if (point.calculate)
    return f("note.worked-out-by", { formula: formulaWords(document, point.calculate) });
  const when = point.ask?.when;
  return when ? f("note.asked-when", { formula: formulaWords(document, when) }) : "";
};
