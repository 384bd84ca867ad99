import { hasShape, isAbsence, lengthOf } from "../checklist/answer-shape.ts";
import { ABSENCE_REASONS, type PointKind } from "../checklist/answer-types.ts";
import type { PointDefinition } from "../checklist/meta-schema.ts";
import { parseCivilDate } from "../due/civil.ts";
import { isPlain } from "../shared/measure.ts";
import { INSTANT } from "../shared/patterns.ts";
import { type Given, MISSING, own, type ReadAnswer, unusable } from "./given.ts";
import { hasOnly, type Members, type ReadMembers, readReading } from "./read-reading.ts";

const CONTENT: Given = { is: "content" };

const ABSENT = new Map<unknown, Given>(
  ABSENCE_REASONS.map((reason) => [reason, { is: "absent", reason }]),
);

/** An answer that is an object as JSON makes them: what it has is its own, so nothing is inherited. */
const membersOf = (answer: unknown): Members | undefined =>
  typeof answer === "object" && answer !== null && isPlain(answer) ? answer : undefined;

const absence = (members: Members): Given | undefined =>
  members.absent !== undefined && isAbsence(members)
    ? ABSENT.get(own(members.absent, "reason"))
    : undefined;

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

function readWords(point: PointDefinition): ReadMembers {
  const choices = (point.items?.oneOf ?? []).map((option) => option.const);
  const known = new Set<unknown>(choices);
  return (answer) => {
    if (!Array.isArray(answer)) return unusable("not-an-answer", { kind: "choices" });
    if (answer.length === 0) return MISSING;
    const stranger: unknown = answer.find((word) => !known.has(word));
    if (stranger !== undefined) {
      const word = typeof stranger === "string" ? stranger : JSON.stringify(stranger);
      return unusable("not-among-choices", { answer: word, choices });
    }
    if (new Set(answer).size < answer.length) return unusable("not-an-answer", { kind: "choices" });
    return { is: "words", values: answer as readonly string[] };
  };
}

function readWhole({ minimum, maximum }: PointDefinition, kind: "graded" | "count"): ReadMembers {
  const least = kind === "count" ? Math.max(minimum ?? 0, 0) : minimum;
  return (answer) => {
    if (typeof answer !== "number" || !Number.isSafeInteger(answer))
      return unusable("not-an-answer", { kind });
    if ((least !== undefined && answer < least) || (maximum !== undefined && answer > maximum))
      return unusable("grade-out-of-range", {
        answer,
        minimum: least ?? null,
        maximum: maximum ?? null,
      });
    return { is: "number", value: answer, comparator: "" };
  };
}

const readDate: ReadMembers = (answer) => {
  if (typeof answer !== "string") return unusable("not-an-answer", { kind: "date" });
  const day = parseCivilDate(answer);
  return day === undefined
    ? unusable("no-such-day", { answer })
    : { is: "date", day, value: answer };
};

function readReadings(point: PointDefinition): ReadMembers {
  const readOne = readReading(point);
  return (answer) => {
    if (!Array.isArray(answer)) return unusable("not-an-answer", { kind: "readings" });
    if (answer.length === 0) return MISSING;
    const given = answer.map((one) => readOne(one, membersOf(one)));
    const numbers = given.filter((one) => one.is === "number");
    if (numbers.length === given.length) return { is: "many", readings: numbers };
    return given.find((one) => one.is === "unusable") ?? MISSING;
  };
}

const isOfSample = (name: string): boolean =>
  name === "sample" || name === "takenAt" || name === "result";
const MOMENT = new RegExp(INSTANT);
const isMoment = (value: unknown): boolean =>
  value === undefined || (typeof value === "string" && MOMENT.test(value));

function readSample(point: PointDefinition): ReadMembers {
  const readResult = readReading(point);
  return (_, members) => {
    const { sample, takenAt, result } = members ?? {};
    const isLabelled = typeof sample === "string" && sample.trim() !== "";
    if (!isLabelled || !isMoment(takenAt) || !hasOnly(members ?? {}, isOfSample))
      return unusable("not-an-answer", { kind: "sample" });
    return result === undefined ? { is: "pending", sample } : readResult(result, membersOf(result));
  };
}

const isWritten = (text: unknown): boolean =>
  typeof text === "string" ? text.trim() !== "" : typeof own(text, "commit") === "string";

function readText({ maxLength }: PointDefinition): ReadMembers {
  return (answer) => {
    if (typeof answer === "string" && !isWritten(answer)) return MISSING;
    const isLong =
      maxLength !== undefined && typeof answer === "string" && lengthOf(answer) > maxLength;
    return hasShape("text", answer) && !isLong
      ? CONTENT
      : unusable("not-an-answer", { kind: "text" });
  };
}

const readSignature: ReadMembers = (answer, members) =>
  isWritten(members?.signedBy) && hasShape("signature", answer)
    ? CONTENT
    : unusable("not-an-answer", { kind: "signature" });

const readPhotos: ReadMembers = (answer) => {
  if (Array.isArray(answer) && answer.length === 0) return MISSING;
  return hasShape("photo", answer) ? CONTENT : unusable("not-an-answer", { kind: "photo" });
};

function readerOf(point: PointDefinition, kind: PointKind): ReadMembers {
  switch (kind) {
    case "check":
    case "choice":
      return readWord(point, kind);
    case "choices":
      return readWords(point);
    case "graded":
    case "count":
      return readWhole(point, kind);
    case "reading":
      return readReading(point);
    case "readings":
      return readReadings(point);
    case "date":
      return readDate;
    case "sample":
      return readSample(point);
    case "text":
      return readText(point);
    case "photo":
      return readPhotos;
    case "signature":
      return readSignature;
    case "calculated":
      // Worked out by the run; whatever stands in the answers is nobody's reading.
      return () => MISSING;
  }
}

/** Prepares the reading of one point's answers. */
export function answerReader(point: PointDefinition, kind: PointKind): ReadAnswer {
  const read = readerOf(point, kind);
  // A choice is one of its options, and an absence only where it is among them.
  const isAbsent = kind !== "choice" || point.oneOf?.some((option) => "$ref" in option) === true;
  return (answer) => {
    if (answer === undefined || answer === null) return MISSING;
    const members = membersOf(answer);
    return (isAbsent && members && absence(members)) || read(answer, members);
  };
}
