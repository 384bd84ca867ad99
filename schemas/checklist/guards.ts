import {
  type Absent,
  type Answer,
  POINT_KINDS,
  type PointKind,
  type Reading,
  type Sample,
} from "./answer-types.ts";
import type { PointDefinition } from "./meta-schema.ts";

const KINDS = new Map<string, PointKind>(POINT_KINDS.map((kind) => [`#/$defs/${kind}`, kind]));

/** What a point asks for. Throws on a document that did not pass `parseChecklist`. */
export const pointKind = (point: Pick<PointDefinition, "$ref">): PointKind => {
  const kind = KINDS.get(point.$ref);
  if (!kind) throw new Error(`${point.$ref} is no answer type`);
  return kind;
};

const isObject = (answer: Answer | undefined): answer is Extract<Answer, object> =>
  typeof answer === "object" && answer !== null;

/** An answer that says why there is none. */
export const isAbsent = (answer: Answer | undefined): answer is Absent =>
  isObject(answer) && Object.hasOwn(answer, "absent");

/** A sample taken for a laboratory, its result come or not. */
export const isSample = (answer: Answer | undefined): answer is Sample =>
  isObject(answer) && Object.hasOwn(answer, "sample");

/** A number with its unit; its shape beyond that is `validateAnswers`' business. */
export const isReading = (answer: Answer | undefined): answer is Reading =>
  isObject(answer) && Object.hasOwn(answer, "value") && Object.hasOwn(answer, "unit");
