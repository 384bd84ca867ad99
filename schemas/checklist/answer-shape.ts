import { CIVIL_DATE, INSTANT, SHA256 } from "../shared/patterns.ts";
import { isKeptText } from "../shared/plain-text.ts";
import { ABSENCE_REASONS, COMPARATORS, LONGEST_WAIT, type PointKind } from "./answer-types.ts";

type Fields = Readonly<Record<string, unknown>>;

const HASH = new RegExp(SHA256);
const DATE = new RegExp(CIVIL_DATE);
const MOMENT = new RegExp(INSTANT);

/** An object that is no list. */
export const isFields = (value: unknown): value is Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** JSON Schema counts characters, not UTF-16 units. */
export const lengthOf = (text: string): number => [...text].length;

type Check = (value: unknown) => boolean;
type Members = Readonly<Record<string, Check>>;

/** An object with the required members and perhaps the optional ones, all its own, and no other. */
const record = (required: Members, optional: Members = {}): Check => {
  const needed = Object.keys(required);
  const known = new Map([...Object.entries(required), ...Object.entries(optional)]);
  return (value) =>
    isFields(value) &&
    needed.every((key) => Object.hasOwn(value, key)) &&
    Object.keys(value).every((key) => known.get(key)?.(value[key]) === true);
};

const text =
  (least: number, most: number): Check =>
  (value) =>
    typeof value === "string" &&
    lengthOf(value) >= least &&
    lengthOf(value) <= most &&
    isKeptText(value);

const matching =
  (pattern: RegExp): Check =>
  (value) =>
    typeof value === "string" && pattern.test(value);

const among =
  (words: readonly unknown[]): Check =>
  (value) =>
    words.includes(value);

const list =
  (entry: Check, most: number): Check =>
  (value) =>
    Array.isArray(value) && value.length >= 1 && value.length <= most && value.every(entry);

const isHash = matching(HASH);
const isOption = text(1, 200);
const isCommitment = record({ commit: isHash });
const isWritten: Check = (value) => text(0, 4000)(value) || isCommitment(value);
const isReading = record(
  { value: Number.isFinite, unit: text(1, 40) },
  {
    comparator: among(COMPARATORS),
    elapsed: (value) => typeof value === "number" && value >= 0 && value <= LONGEST_WAIT,
  },
);
const areOptions: Check = (value) =>
  list(isOption, 100)(value) && Array.isArray(value) && new Set(value).size === value.length;

/** An answer that says why there is none. */
export const isAbsence = record({
  absent: record({ reason: among(ABSENCE_REASONS) }, { note: isWritten }),
});

const SHAPES: Readonly<Record<PointKind, Check>> = {
  check: among(["ok", "not-ok"]),
  choice: isOption,
  choices: areOptions,
  graded: Number.isInteger,
  count: (value) => Number.isInteger(value) && Number(value) >= 0,
  reading: isReading,
  readings: list(isReading, 50),
  date: matching(DATE),
  text: isWritten,
  photo: list(isHash, 12),
  signature: record({ signedBy: isWritten }, { drawing: isHash }),
  sample: record({ sample: text(1, 100) }, { takenAt: matching(MOMENT), result: isReading }),
  calculated: () => false,
};

/** Whether a value has the form of an answer of its kind, as the answer type under `$defs` says. */
export const hasShape = (kind: PointKind, answer: unknown): boolean =>
  kind !== "calculated" && (isAbsence(answer) || SHAPES[kind](answer));
