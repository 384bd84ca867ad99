import { nearest } from "../shared/nearest.ts";
import { SHA256 } from "../shared/patterns.ts";
import { isKeptText } from "../shared/plain-text.ts";
import { at, type Problem, problem } from "../shared/problem.ts";
import { ABSENCE_REASONS, COMPARATORS, type PointKind } from "./answer-types.ts";
import { pointKind } from "./guards.ts";
import type { Checklist, PointDefinition } from "./meta-schema.ts";

type Fields = Readonly<Record<string, unknown>>;
type Found = { readonly code: string; readonly params: Problem["params"] } | null;

const HASH = new RegExp(SHA256);
const isFields = (value: unknown): value is Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const onlyKeys = (fields: Fields, allowed: readonly string[]): boolean =>
  Object.keys(fields).every((key) => allowed.includes(key));
const own = (fields: Fields, key: string): unknown =>
  Object.hasOwn(fields, key) ? fields[key] : undefined;
/** JSON Schema counts characters, not UTF-16 units. */
const lengthOf = (text: string): number => [...text].length;
const isText = (value: unknown, least: number, most: number): value is string =>
  typeof value === "string" &&
  lengthOf(value) >= least &&
  lengthOf(value) <= most &&
  isKeptText(value);

const isWritten = (value: unknown): boolean => {
  if (!isFields(value)) return isText(value, 0, 4000);
  const commit = own(value, "commit");
  return onlyKeys(value, ["commit"]) && typeof commit === "string" && HASH.test(commit);
};

const isAbsence = (value: unknown): boolean => {
  if (!isFields(value) || !onlyKeys(value, ["absent"])) return false;
  const absent = own(value, "absent");
  if (!isFields(absent) || !onlyKeys(absent, ["reason", "note"])) return false;
  const reasons: readonly unknown[] = ABSENCE_REASONS;
  if (!reasons.includes(own(absent, "reason"))) return false;
  return !Object.hasOwn(absent, "note") || isWritten(absent.note);
};

const isReadingShape = (value: unknown): boolean => {
  if (!isFields(value) || !onlyKeys(value, ["value", "unit", "comparator"])) return false;
  const comparators: readonly unknown[] = COMPARATORS;
  return (
    Number.isFinite(own(value, "value")) &&
    isText(own(value, "unit"), 1, 40) &&
    (!Object.hasOwn(value, "comparator") || comparators.includes(value.comparator))
  );
};

const isPhotos = (value: unknown): boolean =>
  Array.isArray(value) &&
  value.length >= 1 &&
  value.length <= 12 &&
  value.every((hash) => typeof hash === "string" && HASH.test(hash));

const hasShape = (kind: PointKind, answer: unknown): boolean => {
  switch (kind) {
    case "check":
      return answer === "ok" || answer === "not-ok";
    case "choice":
      return isText(answer, 1, 200);
    case "graded":
      return Number.isInteger(answer);
    case "reading":
      return isReadingShape(answer);
    case "text":
      return isWritten(answer);
    case "photo":
      return isPhotos(answer);
  }
};

/** What a point narrows beside its answer type; each binds the JSON type it is about, as in Ajv. */
const narrowed = (point: PointDefinition, answer: unknown): Found => {
  if (point.oneOf) {
    const fits = point.oneOf.filter((option) =>
      "const" in option ? option.const === answer : isAbsence(answer),
    );
    if (fits.length !== 1) {
      const options = point.oneOf.flatMap((option) => ("const" in option ? [option.const] : []));
      return { code: "answer-not-an-option", params: { options } };
    }
  }
  if (typeof answer === "number") {
    const { minimum, maximum } = point;
    if (minimum !== undefined && answer < minimum) {
      return { code: "answer-too-small", params: { limit: minimum } };
    }
    if (maximum !== undefined && answer > maximum) {
      return { code: "answer-too-large", params: { limit: maximum } };
    }
  }
  if (typeof answer === "string" && point.maxLength !== undefined) {
    if (lengthOf(answer) > point.maxLength) {
      return { code: "answer-too-long", params: { limit: point.maxLength } };
    }
  }
  return null;
};

/** Whether one answer is well-formed for its point; null when it is. */
const answerProblem = (point: PointDefinition, answer: unknown): Found => {
  const kind = pointKind(point);
  if (!isAbsence(answer) && !hasShape(kind, answer))
    return { code: "answer-shape", params: { kind } };
  return narrowed(point, answer);
};

/**
 * Whether answers are well-formed: validity only, not verdict or completeness. Interprets the
 * document, so it runs under a strict content security policy. Pointers lead into the answers.
 */
export const validateAnswers = (doc: Checklist, answers: unknown): readonly Problem[] => {
  if (!isFields(answers)) return [problem("", "wrong-type", { expected: ["object"] })];
  const problems: Problem[] = [];
  for (const [name, answer] of Object.entries(answers)) {
    const point = Object.hasOwn(doc.properties, name) ? doc.properties[name] : undefined;
    if (!point) {
      const near = nearest(name, Object.keys(doc.properties));
      problems.push(problem(at("", name), "unknown-point", { point: name, nearest: near }));
      continue;
    }
    const found = answerProblem(point, answer);
    if (found) problems.push(problem(at("", name), found.code, found.params));
  }
  return problems;
};
