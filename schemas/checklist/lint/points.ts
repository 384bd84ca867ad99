import { parseCivilDate } from "../../due/civil.ts";
import { at, type Problem, problem } from "../../shared/problem.ts";
import type { PointKind } from "../answer-types.ts";
import { pointKind } from "../guards.ts";
import type { Checklist, ParticularDefinition, PointDefinition } from "../meta-schema.ts";
import { particularType } from "../names.ts";

const MEASURED: readonly PointKind[] = ["reading", "readings", "sample", "calculated"];
const JUDGED: readonly PointKind[] = [
  ...(["check", "choice", "choices", "graded", "count", "date"] as const),
  ...MEASURED,
];

/** Keywords that belong to some kinds of point only. */
const KEYWORD_KINDS: Readonly<Record<string, readonly PointKind[]>> = {
  oneOf: ["choice"],
  items: ["choices"],
  minimum: ["graded", "count"],
  maximum: ["graded", "count"],
  maxLength: ["text"],
  pattern: ["text"],
  quantity: MEASURED,
  several: ["readings"],
  calculate: ["calculated"],
  limits: JUDGED,
  grade: JUDGED,
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
  if (MEASURED.includes(kind) && !point.quantity)
    problems.push(problem(pointer, "quantity-missing"));
  if (kind === "reading" || kind === "readings" || kind === "sample") {
    problems.push(...lintMeasured(pointer, point));
  }
  if (kind === "readings" && !point.several) problems.push(problem(pointer, "several-missing"));
  if (kind === "calculated" && point.calculate === undefined) {
    problems.push(problem(pointer, "calculation-missing"));
  }
  if (kind === "count") problems.push(...emptyRange(pointer, point.minimum ?? 0, point.maximum));
  if (kind === "graded") {
    if (point.minimum === undefined || point.maximum === undefined) {
      problems.push(problem(pointer, "graded-without-range"));
    }
    problems.push(...emptyRange(pointer, point.minimum, point.maximum));
  }
  if (kind === "choice") problems.push(...lintOptions(pointer, point));
  if (kind === "choices") problems.push(...lintChoices(pointer, point));
  problems.push(...lintWait(pointer, point));
  const plausible = point.quantity?.plausible;
  const place = at(pointer, "quantity", "plausible");
  return [...problems, ...emptyRange(place, plausible?.min, plausible?.max)];
};

/** A figure that no limit looks at, or that no limit looks at from below, decides less than it seems to. */
const lintMeasured = (pointer: string, point: PointDefinition): readonly Problem[] => {
  const limits = point.limits ?? [];
  if (limits.length === 0) return [problem(pointer, "reading-without-limit")];
  const above = limits.some(({ max, exclusiveMax }) => (max ?? exclusiveMax) !== undefined);
  const below = limits.some(
    ({ min, exclusiveMin, sameAsLast }) => (min ?? exclusiveMin ?? sameAsLast) !== undefined,
  );
  const asked = point.quantity?.plausible?.min !== undefined;
  return above && !below && !asked ? [problem(pointer, "reading-open-below")] : [];
};

/** An answer that fits two options fits none: JSON Schema's oneOf means exactly one. */
const duplicates = (pointer: string, options: readonly (string | null)[]): readonly Problem[] => {
  const first = new Map<string | null, number>();
  for (const [index, option] of options.entries()) {
    if (!first.has(option)) first.set(option, index);
  }
  return options.flatMap((option, index) =>
    first.get(option) === index
      ? []
      : [problem(at(pointer, index), "duplicate-option", { option: option ?? "absent" })],
  );
};

const lintOptions = (pointer: string, point: PointDefinition): readonly Problem[] => {
  const options = (point.oneOf ?? []).map((one) => ("const" in one ? one.const : null));
  if (options.filter((option) => option !== null).length < 2)
    return [problem(pointer, "choice-without-options")];
  const allowed = point.ask?.absentAllowed ?? [];
  const neverAbsent = allowed.length > 0 && !options.includes(null);
  return [
    ...duplicates(at(pointer, "oneOf"), options),
    ...(neverAbsent ? [problem(at(pointer, "oneOf"), "choice-never-absent")] : []),
  ];
};

const lintChoices = (pointer: string, { items }: PointDefinition): readonly Problem[] =>
  items
    ? duplicates(
        at(pointer, "items", "oneOf"),
        items.oneOf.map((option) => option.const),
      )
    : [problem(pointer, "choices-without-options")];

/** Only a reading is waited for. */
const lintWait = (pointer: string, point: PointDefinition): readonly Problem[] => {
  const kind = pointKind(point);
  const wait = point.ask?.wait;
  if (!wait) return [];
  const place = at(pointer, "ask", "wait");
  if (kind !== "reading" && kind !== "readings") {
    return [problem(place, "keyword-wrong-kind", { keyword: "wait", kind })];
  }
  const { atLeast, atMost } = wait;
  return atLeast !== undefined && atMost !== undefined && atLeast > atMost
    ? [problem(place, "wait-empty", { atLeast, atMost })]
    : [];
};

const lintParticular = (pointer: string, particular: ParticularDefinition): readonly Problem[] => {
  const { type: expected } = particularType(particular);
  const listed = (particular.enum ?? []).flatMap((value, index) =>
    typeof value === expected
      ? []
      : [problem(at(pointer, "enum", index), "enum-type-mismatch", { expected, value })],
  );
  const written = (["pattern", "format"] as const).flatMap((keyword) =>
    particular[keyword] === undefined || expected === "string"
      ? []
      : [problem(at(pointer, keyword), "pattern-wrong-type")],
  );
  const days = (particular.format === undefined ? [] : (particular.enum ?? [])).flatMap(
    (date, index) =>
      typeof date === "string" && parseCivilDate(date) === undefined
        ? [problem(at(pointer, "enum", index), "no-such-day", { date })]
        : [],
  );
  const range = emptyRange(pointer, particular.minimum, particular.maximum);
  return [...listed, ...written, ...days, ...range];
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
