import type { Answers, Checklist, Particulars } from "@roundbook/schemas";
import { DIALECT, issueDocument, JSON_SCHEMA_DRAFT } from "@roundbook/schemas";

const POINTS = Array.from({ length: 30 }, (_, at) => `reading_${at + 1}`);

/** Thirty readings between a minimum and a maximum, and answers that lie within. */
export const THIRTY_POINTS: Checklist = issueDocument({
  $schema: JSON_SCHEMA_DRAFT,
  dialect: DIALECT,
  title: "Thirty readings",
  type: "object",
  properties: Object.fromEntries(
    POINTS.map((name, at) => [
      name,
      {
        $ref: "#/$defs/reading" as const,
        title: `Reading ${at + 1}`,
        quantity: { unit: "Cel", decimals: 1 },
        limits: [{ min: 20 + at / 10, max: 60 + at / 10, basis: "bench" }],
        ask: { mandatory: true },
      },
    ]),
  ),
  additionalProperties: false,
});

export const thirtyAnswers = (turn = 0): Answers =>
  Object.fromEntries(
    POINTS.map((name, at) => [name, { value: 40.1 + ((turn + at) % 97) / 10, unit: "Cel" }]),
  );

export const NO_PARTICULARS: Particulars = {};

/** The same numbers without a checklist: value, minimum and maximum of each point. */
export const bareNumbers = (): { value: number; min: number; max: number }[] =>
  POINTS.map((_, at) => ({ value: 40.1 + at / 10, min: 20 + at / 10, max: 60 + at / 10 }));
