import {
  type AbsenceReason,
  type Checklist,
  type PointDefinition,
  pointKind,
  type ResultsMapping,
} from "@roundbook/schemas";
import { answerable } from "./answerable.ts";
import { optionsOf } from "./draft-document.ts";
import { guessAnswers } from "./mapping-guess.ts";

/** How a column answers one point, as a form edits it; "" stands for "not chosen". */
export interface AnswerField {
  column: string;
  empty: AbsenceReason | "";
  /** UCUM code. */
  unit: string;
  /** Words of the file for each of the point's meanings, apart by commas. */
  words: string[];
}

export interface Meaning {
  readonly value: string;
  /** As the checklist words it; null for an answer every checklist knows. */
  readonly title: string | null;
}

const known = (value: string): Meaning => ({ value, title: null });
export const CHECK_MEANINGS = ["ok", "not-ok"] as const;

/** What a word of the file can say of a point: a text says what it says. */
export const meaningsOf = (point: PointDefinition): readonly Meaning[] => {
  const kind = pointKind(point);
  const none = known("not-applicable");
  switch (kind) {
    case "check":
      return [...CHECK_MEANINGS.map(known), none];
    case "choice":
    case "choices":
      return [...optionsOf(point).map((one) => ({ value: one.const, title: one.title })), none];
    case "graded":
    case "count":
    case "reading":
    case "readings":
    case "date":
      return [none];
    case "text":
    case "photo":
    case "signature":
    case "sample":
    case "calculated":
      return [];
  }
};

/** UCUM codes a reading of the file may be in; none for a point that takes no reading. */
export const unitsOf = ({ quantity }: PointDefinition): readonly string[] =>
  quantity ? [quantity.unit, ...(quantity.alsoIn ?? [])] : [];

/** A unit is only taken as read where the point takes no other. */
export const firstAnswers = (
  columns: readonly string[],
  document: Checklist | undefined,
): Record<string, AnswerField> => {
  if (!document) return {};
  const columnOf = guessAnswers(columns, document);
  return Object.fromEntries(
    answerable(document).map(({ name, point }) => {
      const units = unitsOf(point);
      const unit = units.length === 1 ? (units[0] ?? "") : "";
      const words = meaningsOf(point).map(() => "");
      return [name, { column: columnOf[name] ?? "", empty: "", unit, words }];
    }),
  );
};

const wordsIn = (text: string): string[] =>
  text
    .split(",")
    .map((word) => word.trim())
    .filter((word) => word !== "");

/** Each word of the file with what it means; a check without its own takes those of all checks. */
const saidOf = (
  point: PointDefinition,
  { words }: AnswerField,
  checkWords: readonly string[],
): readonly (readonly [word: string, value: string])[] =>
  meaningsOf(point).flatMap(({ value }, at) => {
    const common = pointKind(point) === "check" ? (checkWords[at] ?? "") : "";
    return wordsIn(words[at] || common).map((word) => [word, value] as const);
  });

/** The first word that would mean two things at one point, whatever its case. */
export const wordTwice = (
  point: PointDefinition,
  field: AnswerField,
  checkWords: readonly string[],
): string | undefined => {
  const meant = new Map<string, string>();
  for (const [word, value] of saidOf(point, field, checkWords)) {
    const before = meant.get(word.toLowerCase());
    if (before !== undefined && before !== value) return word;
    meant.set(word.toLowerCase(), value);
  }
  return undefined;
};

/** How the chosen columns answer the points, as the server takes it. */
export const answersOf = (
  document: Checklist,
  fields: Readonly<Record<string, AnswerField>>,
  checkWords: readonly string[],
): ResultsMapping["answers"] =>
  Object.fromEntries(
    answerable(document).flatMap(({ name, point }) => {
      const field = fields[name];
      if (!field || field.column === "") return [];
      const said = saidOf(point, field, checkWords);
      const how = {
        column: field.column,
        ...(field.empty ? { empty: field.empty } : {}),
        ...(field.unit ? { unit: field.unit } : {}),
        ...(said.length > 0 ? { words: Object.fromEntries(said) } : {}),
      };
      return [[name, how]];
    }),
  );
