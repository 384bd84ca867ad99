import { wordsIn } from "../../formulas/compile.ts";
import type { FormulaEngine } from "../../formulas/engine-type.ts";
import { at, type Problem, problem } from "../../shared/problem.ts";
import { unitOf } from "../../units/units.ts";
import { type FormulaText, pointTexts, repeatTexts } from "../formula-texts.ts";
import type { Checklist, RepeatDefinition } from "../meta-schema.ts";
import type { ChecklistNames } from "../names.ts";
import { pointsBehind } from "../points-behind.ts";
import { MOST_MEMBERS, repeatsByPoint } from "../repeats.ts";
import { dateTexts } from "./dates.ts";
import { formulaCheck } from "./formula-check.ts";

const lintMembers = (pointer: string, repeat: RepeatDefinition): readonly Problem[] => {
  const { count, members = [], atMost } = repeat;
  const ids = new Set<string>();
  const twice = members.flatMap(({ id }, index) => {
    const place = at(pointer, "members", index, "id");
    const found = ids.has(id) ? [problem(place, "repeat-duplicate-member", { id })] : [];
    ids.add(id);
    return found;
  });
  const minimum = typeof count === "number" ? count : members.length;
  const tooMany =
    atMost !== undefined && atMost < minimum
      ? [problem(at(pointer, "atMost"), "range-empty", { minimum, maximum: atMost })]
      : [];
  return [...twice, ...tooMany];
};

/** A point of a repeat has one answer only among its own: elsewhere there is none to name. */
const lintScopes = (doc: Checklist): readonly Problem[] => {
  const repeats = repeatsByPoint(doc);
  if (repeats.size === 0) return [];
  const behind = pointsBehind(doc);
  const outside = (home: string | null, [pointer, text]: FormulaText): readonly Problem[] =>
    wordsIn(text).flatMap((name) => {
      const other = [...behind(name)]
        .map((point) => repeats.get(point))
        .find((found) => found !== undefined && found.group !== home);
      return other
        ? [problem(pointer, "repeated-name-outside", { name, repeat: other.repeat.each })]
        : [];
    });
  return [
    ...repeatTexts(doc).flatMap((text) => outside(null, text)),
    ...Object.entries(doc.properties).flatMap(([name, point]) => {
      const home = repeats.get(name)?.group ?? null;
      const texts = [...pointTexts(name, point), ...dateTexts(doc, name)];
      return texts.flatMap((text) => outside(home, text));
    }),
  ];
};

/** Answers that one inspection can hold. */
const MOST_ANSWERS = 1000;

/** Points times members: a sheet that no inspection could hold is not issued. */
const lintSize = (doc: Checklist): readonly Problem[] => {
  const repeats = repeatsByPoint(doc);
  let most = 0;
  for (const name of Object.keys(doc.properties)) {
    const { members, count, atMost = MOST_MEMBERS } = repeats.get(name)?.repeat ?? { count: 1 };
    most += members?.length ?? (typeof count === "number" ? count : atMost);
  }
  return most > MOST_ANSWERS
    ? [problem("/groups", "too-many-answers", { most, limit: MOST_ANSWERS })]
    : [];
};

/** Repeats have points and members, and their answers are named only among themselves. */
export const lintRepeats = (
  doc: Checklist,
  names: ChecklistNames,
  engine: FormulaEngine | undefined,
): readonly Problem[] => [
  ...repeatTexts(doc).flatMap(([pointer, text]) =>
    formulaCheck(doc, names, engine)(pointer, text, { type: "number", unit: unitOf("1") }),
  ),
  ...(doc.groups ?? []).flatMap(({ points, groupAnswer, repeat }, index) => {
    if (!repeat) return [];
    const pointer = at("/groups", index);
    return [
      ...(points.length === 0 ? [problem(at(pointer, "points"), "repeat-without-points")] : []),
      ...(groupAnswer ? [problem(at(pointer, "groupAnswer"), "repeat-group-answer")] : []),
      ...lintMembers(at(pointer, "repeat"), repeat),
    ];
  }),
  ...lintSize(doc),
  ...lintScopes(doc),
];
