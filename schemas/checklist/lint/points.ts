import { at, type Problem, problem } from "../../shared/problem.ts";
import type { PointKind } from "../answer-types.ts";
import { pointKind } from "../guards.ts";
import type { Checklist, ParticularDefinition, PointDefinition } from "../meta-schema.ts";
import { particularType } from "../names.ts";

/** Keywords that belong to some kinds of point only. */
const KEYWORD_KINDS: Readonly<Record<string, readonly PointKind[]>> = {
  oneOf: ["choice"],
  minimum: ["graded"],
  maximum: ["graded"],
  maxLength: ["text"],
  quantity: ["reading"],
  limits: ["check", "choice", "graded", "reading"],
  grade: ["check", "choice", "graded", "reading"],
};

const emptyRange = (
  pointer: string,
  minimum: number | undefined,
  maximum: number | undefined,
): readonly Problem[] =>
  minimum !== undefined && maximum !== undefined && minimum > maximum
    ? [problem(pointer, "range-empty", { minimum, maximum })]
    : [];

const lintPoint = (pointer: string, point: PointDefinition): readonly Problem[] => {
  const kind = pointKind(point);
  const problems: Problem[] = [];
  for (const [keyword, kinds] of Object.entries(KEYWORD_KINDS)) {
    if (Object.hasOwn(point, keyword) && !kinds.includes(kind)) {
      problems.push(problem(at(pointer, keyword), "keyword-wrong-kind", { keyword, kind }));
    }
  }
  if (kind === "reading" && !point.quantity) problems.push(problem(pointer, "quantity-missing"));
  if (kind === "reading") problems.push(...lintReading(pointer, point));
  if (kind === "graded") {
    if (point.minimum === undefined || point.maximum === undefined) {
      problems.push(problem(pointer, "graded-without-range"));
    }
    problems.push(...emptyRange(pointer, point.minimum, point.maximum));
  }
  if (kind === "choice") problems.push(...lintOptions(pointer, point));
  const plausible = point.quantity?.plausible;
  const place = at(pointer, "quantity", "plausible");
  return [...problems, ...emptyRange(place, plausible?.min, plausible?.max)];
};

/** A figure that no limit looks at, or that no limit looks at from below, decides less than it seems to. */
const lintReading = (pointer: string, point: PointDefinition): readonly Problem[] => {
  const limits = point.limits ?? [];
  if (limits.length === 0) return [problem(pointer, "reading-without-limit")];
  const above = limits.some(({ max, exclusiveMax }) => (max ?? exclusiveMax) !== undefined);
  const below = limits.some(({ min, exclusiveMin }) => (min ?? exclusiveMin) !== undefined);
  const asked = point.quantity?.plausible?.min !== undefined;
  return above && !below && !asked ? [problem(pointer, "reading-open-below")] : [];
};

const lintOptions = (pointer: string, point: PointDefinition): readonly Problem[] => {
  const options = (point.oneOf ?? []).map((one) => ("const" in one ? one.const : null));
  if (options.filter((option) => option !== null).length < 2) {
    return [problem(pointer, "choice-without-options")];
  }
  // An answer that fits two options fits none: JSON Schema's oneOf means exactly one.
  return options.flatMap((option, index) =>
    options.indexOf(option) < index
      ? [problem(at(pointer, "oneOf", index), "duplicate-option", { option: option ?? "absent" })]
      : [],
  );
};

const lintParticular = (pointer: string, particular: ParticularDefinition): readonly Problem[] => {
  const { type: expected } = particularType(particular);
  const listed = (particular.enum ?? []).flatMap((value, index) =>
    typeof value === expected
      ? []
      : [problem(at(pointer, "enum", index), "enum-type-mismatch", { expected, value })],
  );
  return [...listed, ...emptyRange(pointer, particular.minimum, particular.maximum)];
};

/** What each point and particular needs by its kind. */
export const lintPoints = (doc: Checklist): readonly Problem[] => {
  const points = Object.entries(doc.properties);
  return [
    ...(points.length === 0 ? [problem("/properties", "nothing-to-ask")] : []),
    ...Object.entries(doc.particulars ?? {}).flatMap(([name, particular]) =>
      lintParticular(at("/particulars", name), particular),
    ),
    ...points.flatMap(([name, point]) => lintPoint(at("/properties", name), point)),
  ];
};
