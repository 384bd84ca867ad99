import type { AbsenceReason, PointKind } from "../checklist/answer-types.ts";
import { ABSENCE_REASONS, COMPARATORS, type Comparator } from "../checklist/answer-types.ts";
import type { PointDefinition } from "../checklist/meta-schema.ts";
import { isPlain } from "../shared/measure.ts";
import type { Explanation } from "../shared/problem.ts";
import { roundSignificant } from "../shared/significant.ts";
import { convert, unitOf } from "../units/units.ts";
import type { JudgeCode } from "./codes.ts";

/** What an answer comes to. Only `number`, `word` and `content` are answers that can be used. */
export type Given =
  | { readonly is: "missing" }
  | { readonly is: "absent"; readonly reason: AbsenceReason }
  | { readonly is: "unusable"; readonly why: Explanation }
  | { readonly is: "number"; readonly value: number; readonly comparator: Comparator | "" }
  | { readonly is: "word"; readonly value: string }
  | { readonly is: "content" };

export type ReadAnswer = (answer: unknown) => Given;

const MISSING: Given = { is: "missing" };
const CONTENT: Given = { is: "content" };
export const explained = (code: JudgeCode, params: Explanation["params"] = {}): Explanation => ({
  code,
  params,
});
const unusable = (code: JudgeCode, params: Explanation["params"]): Given => ({
  is: "unusable",
  why: explained(code, params),
});

/** Reads an own property only: a point may be named `constructor`. */
export const own = (object: unknown, name: string): unknown =>
  typeof object === "object" && object !== null && Object.hasOwn(object, name)
    ? (object as Readonly<Record<string, unknown>>)[name]
    : undefined;

const ABSENT = new Map<unknown, Given>(
  ABSENCE_REASONS.map((reason) => [reason, { is: "absent", reason }]),
);
/** The members an answer may have, whichever kind it is of. */
interface Members {
  readonly value?: unknown;
  readonly unit?: unknown;
  readonly comparator?: unknown;
  readonly absent?: unknown;
  readonly commit?: unknown;
}
type ReadMembers = (answer: unknown, members: Members | undefined) => Given;

/** An answer that is an object as JSON makes them: what it has is its own, so nothing is inherited. */
const membersOf = (answer: unknown): Members | undefined =>
  typeof answer === "object" && answer !== null && isPlain(answer) ? answer : undefined;

/** An object that says both a reading and an absence is read as the reading it holds. */
const absence = ({ absent, value }: Members): Given | undefined =>
  absent === undefined || value !== undefined ? undefined : ABSENT.get(own(absent, "reason"));

const isComparator = (value: unknown): value is Comparator =>
  (COMPARATORS as readonly unknown[]).includes(value);

function readWord(point: PointDefinition, kind: PointKind): ReadMembers {
  const words = (point.oneOf ?? []).flatMap((choice) => ("const" in choice ? [choice.const] : []));
  const choices = kind === "check" ? ["ok", "not-ok"] : words;
  const known = new Map<unknown, Given>(choices.map((value) => [value, { is: "word", value }]));
  return (answer) =>
    known.get(answer) ??
    (typeof answer === "string"
      ? unusable("not-among-choices", { answer, choices })
      : unusable("not-an-answer", { kind }));
}

function readGrade({ minimum, maximum }: PointDefinition): ReadMembers {
  return (answer) => {
    if (typeof answer !== "number" || !Number.isSafeInteger(answer))
      return unusable("not-an-answer", { kind: "graded" });
    if ((minimum !== undefined && answer < minimum) || (maximum !== undefined && answer > maximum))
      return unusable("grade-out-of-range", {
        answer,
        minimum: minimum ?? null,
        maximum: maximum ?? null,
      });
    return { is: "number", value: answer, comparator: "" };
  };
}

/** Numbers come out in the point's unit and rounded, so that a unit never changes a verdict. */
function readReading(point: PointDefinition): ReadMembers {
  const to = point.quantity?.unit;
  const known = to !== undefined && unitOf(to) !== undefined;
  return (_, members) => {
    const { value, unit, comparator = "" } = members ?? {};
    if (typeof value !== "number" || typeof unit !== "string")
      return unusable("not-an-answer", { kind: "reading" });
    if (comparator !== "" && !isComparator(comparator))
      return unusable("not-an-answer", { kind: "reading" });
    const converted = known ? (unit === to ? value : convert(value, unit, to)) : undefined;
    if (converted === undefined) return unusable("unit-not-convertible", { unit, to: to ?? null });
    if (!Number.isFinite(converted)) return unusable("not-finite-reading", {});
    return { is: "number", value: roundSignificant(converted), comparator };
  };
}

const readText: ReadMembers = (answer, members) => {
  if (typeof answer === "string") return answer.trim() === "" ? MISSING : CONTENT;
  return typeof members?.commit === "string"
    ? CONTENT
    : unusable("not-an-answer", { kind: "text" });
};

const readPhotos: ReadMembers = (answer) => {
  if (!Array.isArray(answer) || !answer.every((hash) => typeof hash === "string"))
    return unusable("not-an-answer", { kind: "photo" });
  return answer.length === 0 ? MISSING : CONTENT;
};

function readerOf(point: PointDefinition, kind: PointKind): ReadMembers {
  switch (kind) {
    case "check":
    case "choice":
      return readWord(point, kind);
    case "graded":
      return readGrade(point);
    case "reading":
      return readReading(point);
    case "text":
      return readText;
    case "photo":
      return readPhotos;
  }
}

/** Prepares the reading of one point's answers. */
export function answerReader(point: PointDefinition, kind: PointKind): ReadAnswer {
  const read = readerOf(point, kind);
  return (answer) => {
    if (answer === undefined || answer === null) return MISSING;
    const members = membersOf(answer);
    return (members && absence(members)) ?? read(answer, members);
  };
}
