import {
  ABSENCE_REASONS,
  type AbsenceReason,
  type Absent,
  type Answer,
  type CheckAnswer,
  type PointDefinition,
  type PointKind,
  pointKind,
  type Reading,
  type Result,
  type ResultsMapping,
} from "@roundbook/schemas";
import {
  bad,
  type DateFormat,
  type DecimalMark,
  good,
  readDate,
  readNumber,
  readWhole,
} from "./cell.ts";
import { readReading } from "./reading.ts";

export type AnswerMapping = NonNullable<ResultsMapping["answers"][string]>;

/** How figures and days are written in the file. */
export interface Notation {
  readonly decimal: DecimalMark;
  readonly format: DateFormat;
}

/** What no cell of a table can say: it was never taken, signed or worked out there. */
export const NEVER_IMPORTED: ReadonlySet<PointKind> = new Set([
  "photo",
  "signature",
  "sample",
  "calculated",
]);

const absent = (reason: AbsenceReason): Absent => ({ absent: { reason } });
const isReason = (word: string): word is AbsenceReason =>
  (ABSENCE_REASONS as readonly string[]).includes(word);

/** The columns that answer a point: several where it takes several readings. */
export const columnsOf = ({ column, more = [] }: AnswerMapping): readonly string[] => [
  column,
  ...more,
];

/**
 * The answer that the cells of a row give to a point; null is a question nobody answered. Ranges
 * and units are left to the checklist's own validation. `waited` is the cell of the seconds before a
 * timed reading.
 */
export function readAnswer(
  point: PointDefinition,
  mapping: AnswerMapping,
  cells: readonly string[],
  notation: Notation,
  waited = "",
): Result<Answer | null> {
  const parts = cells.map((cell) => cell.trim()).filter((cell) => cell !== "");
  const text = parts.join(" ");
  if (text === "") return good(mapping.empty ? absent(mapping.empty) : null);
  const word = wordFor(mapping, text);
  if (word !== undefined && isReason(word) && !options(point).some(({ value }) => value === word))
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
      return readChoice(point, mapping, text);
    case "choices":
      return readChoices(point, mapping, text);
    case "graded":
    case "count":
      return readWhole(said, notation.decimal);
    case "reading":
      return withElapsed(
        readReading(point, mapping.unit, said, notation.decimal),
        waited,
        notation,
      );
    case "readings":
      return readReadings(point, mapping, parts, notation.decimal);
    case "date":
      return readDate(said, mapping.format ?? notation.format);
    case "text":
      return good(said);
    case "photo":
    case "signature":
    case "sample":
    case "calculated":
      return bad("import-never", { kind });
  }
}

function withElapsed(
  reading: Result<Reading>,
  waited: string,
  { decimal }: Notation,
): Result<Reading> {
  if (!reading.ok || waited === "") return reading;
  const elapsed = readNumber(waited, decimal);
  return elapsed.ok ? good({ ...reading.value, elapsed: elapsed.value }) : elapsed;
}

const isCheck = (word: string): word is Extract<CheckAnswer, string> =>
  word === "ok" || word === "not-ok";

function wordFor({ words }: AnswerMapping, text: string): string | undefined {
  if (!words) return undefined;
  if (Object.hasOwn(words, text)) return words[text];
  const lower = text.toLowerCase();
  return Object.entries(words).find(([from]) => from.toLowerCase() === lower)?.[1];
}

const options = (point: PointDefinition): readonly { value: string; title: string }[] =>
  [...(point.oneOf ?? []), ...(point.items?.oneOf ?? [])].flatMap((one) =>
    "const" in one ? [{ value: one.const, title: one.title }] : [],
  );

function readChoice(point: PointDefinition, mapping: AnswerMapping, text: string): Result<string> {
  const said = wordFor(mapping, text) ?? text;
  const known = options(point);
  const found =
    known.find(({ value }) => value === said) ?? known.find(({ title }) => title === said);
  if (found) return good(found.value);
  const choice = [...known.map(({ value }) => value), ...Object.keys(mapping.words ?? {})];
  return bad("choice-unknown", { text, known: choice });
}

const split = (text: string, { separator = ";" }: AnswerMapping): readonly string[] =>
  text
    .split(separator)
    .map((part) => part.trim())
    .filter((part) => part !== "");

/** Several of the choices in one cell, apart by the separator; one named twice is named once. */
function readChoices(
  point: PointDefinition,
  mapping: AnswerMapping,
  text: string,
): Result<readonly string[]> {
  const chosen = new Set<string>();
  for (const part of split(text, mapping)) {
    const one = readChoice(point, mapping, part);
    if (!one.ok) return one;
    chosen.add(one.value);
  }
  return chosen.size > 0 ? good([...chosen]) : bad("choice-unknown", { text, known: [] });
}

/** A reading per cell, or several in one apart by the separator; an empty cell is none. */
function readReadings(
  point: PointDefinition,
  mapping: AnswerMapping,
  cells: readonly string[],
  decimal: DecimalMark,
): Result<readonly Reading[]> {
  const readings: Reading[] = [];
  for (const part of cells.flatMap((cell) => split(cell, mapping))) {
    const one = readReading(point, mapping.unit, part, decimal);
    if (!one.ok) return one;
    readings.push(one.value);
  }
  const [cell = ""] = cells;
  return readings.length > 0 ? good(readings) : bad("number-format", { text: cell, decimal });
}
