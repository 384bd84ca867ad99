import {
  ABSENCE_REASONS,
  type AbsenceReason,
  type Absent,
  type Answer,
  type CheckAnswer,
  type Comparator,
  type PointDefinition,
  pointKind,
  type Result,
  type ResultsMapping,
} from "@roundbook/schemas";
import { bad, type DecimalMark, good, LONGEST_FIGURE, readNumber, readWhole } from "./cell.ts";

export type AnswerMapping = NonNullable<ResultsMapping["answers"][string]>;

const absent = (reason: AbsenceReason): Absent => ({ absent: { reason } });
const isReason = (word: string): word is AbsenceReason =>
  (ABSENCE_REASONS as readonly string[]).includes(word);

/**
 * The answer a cell gives to a point; null is a question nobody answered. `decimal` is the mark of
 * the file. Ranges and units are left to the checklist's own validation.
 */
export function readAnswer(
  point: PointDefinition,
  mapping: AnswerMapping,
  cell: string,
  decimal: DecimalMark,
): Result<Answer | null> {
  const text = cell.trim();
  if (text === "") return good(mapping.empty ? absent(mapping.empty) : null);
  const word = wordFor(mapping, text);
  if (word !== undefined && isReason(word) && !choices(point).some(({ value }) => value === word))
    return good(absent(word));
  const said = word ?? text;
  const kind = pointKind(point);
  switch (kind) {
    case "check":
      return isCheck(said)
        ? good(said)
        : bad("word-unknown", {
            text,
            known: ["ok", "not-ok", ...Object.keys(mapping.words ?? {})],
          });
    case "choice":
      return readChoice(point, mapping, text, said);
    case "graded":
      return readWhole(said, decimal);
    case "reading":
      return readReading(point, mapping, said, decimal);
    case "text":
      return good(said);
    case "photo":
      return bad("import-photo", {});
  }
}

const isCheck = (word: string): word is Extract<CheckAnswer, string> =>
  word === "ok" || word === "not-ok";

function wordFor({ words }: AnswerMapping, text: string): string | undefined {
  if (!words) return undefined;
  if (Object.hasOwn(words, text)) return words[text];
  const lower = text.toLowerCase();
  return Object.entries(words).find(([from]) => from.toLowerCase() === lower)?.[1];
}

const choices = (point: PointDefinition): readonly { value: string; title: string }[] =>
  (point.oneOf ?? []).flatMap((one) =>
    "const" in one ? [{ value: one.const, title: one.title }] : [],
  );

function readChoice(
  point: PointDefinition,
  { words }: AnswerMapping,
  text: string,
  said: string,
): Result<string> {
  const known = choices(point);
  const found =
    known.find(({ value }) => value === said) ?? known.find(({ title }) => title === said);
  if (found) return good(found.value);
  const choice = [...known.map(({ value }) => value), ...Object.keys(words ?? {})];
  return bad("choice-unknown", { text, known: choice });
}

const READING = /^(<=|>=|≤|≥|<|>)?\s*([+-]?[\d.,]+(?:e[+-]?\d+)?)\s*(\D.*)?$/i;
const COMPARATOR: Readonly<Record<string, Comparator>> = {
  "<": "<",
  "<=": "<=",
  "≤": "<=",
  ">": ">",
  ">=": ">=",
  "≥": ">=",
};
/** Signs people write for UCUM codes. */
const SIGNS: readonly (readonly [RegExp, string])[] = [
  [/^°\s*C$/, "Cel"],
  [/^°\s*F$/, "[degF]"],
  [/[Ωω]/gu, "Ohm"],
  [/²/g, "2"],
  [/³/g, "3"],
  [/^µ/, "u"],
];

/** `>200 MOhm`, `49.9`, `0,23 Ω`: a number, perhaps censored, in the unit written or mapped. */
function readReading(
  point: PointDefinition,
  mapping: AnswerMapping,
  text: string,
  decimal: DecimalMark,
): Result<Answer> {
  const start = text.slice(0, LONGEST_FIGURE);
  const [, mark, digits = "", written] = (start === text ? READING.exec(text) : null) ?? [];
  const value = readNumber(digits, decimal);
  if (!value.ok) return bad("number-format", { text: start, decimal });
  const own = point.quantity?.unit ?? "1";
  const accepted = [own, ...(point.quantity?.alsoIn ?? [])];
  const sign = written?.trim() ?? mapping.unit ?? own;
  const unit = SIGNS.reduce((code, [from, to]) => code.replace(from, to), sign);
  if (!accepted.includes(unit)) return bad("unit-not-accepted", { unit: sign, accepted });
  const comparator = mark ? COMPARATOR[mark] : undefined;
  return good({ value: value.value, unit, ...(comparator ? { comparator } : {}) });
}
