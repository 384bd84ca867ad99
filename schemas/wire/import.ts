import type { FromSchema } from "json-schema-to-ts";
import { ABSENCE_REASONS } from "../checklist/answer-types.ts";
import { ANSWER_NAME, NAME, UUID } from "../shared/patterns.ts";
import type { Problem } from "../shared/problem.ts";

const column = { type: "string", minLength: 1, maxLength: 200 } as const;
const label = { type: "string", minLength: 1, maxLength: 200 } as const;
const name = { type: "string", pattern: NAME } as const;

/** How days are written in a file: there is no guessing between day-first and month-first. */
const format = {
  enum: ["YYYY-MM-DD", "DD/MM/YYYY", "MM/DD/YYYY", "DD.MM.YYYY", "D MMM YYYY"],
} as const;
const dateColumn = {
  type: "object",
  properties: { column, format },
  required: ["column", "format"],
  additionalProperties: false,
} as const;

const particularColumns = {
  type: "object",
  propertyNames: { pattern: NAME },
  additionalProperties: column,
  maxProperties: 100,
} as const;

/** How a row names or makes its asset. */
const assetColumns = {
  type: "object",
  properties: {
    number: column,
    assetType: {
      oneOf: [
        {
          type: "object",
          properties: { column },
          required: ["column"],
          additionalProperties: false,
        },
        name,
      ],
    },
    description: column,
    /** Columns from the site down; a single fixed site through `site`. */
    place: { type: "array", items: column, maxItems: 4 },
    site: label,
    serial: column,
    particulars: particularColumns,
  },
  required: ["number"],
  additionalProperties: false,
} as const;

const common = {
  /** Name of the file's origin: with a row's key it identifies the row for ever. */
  source: label,
  delimiter: { enum: [",", ";", "\t", "|"] },
  /** Column that identifies a row; without one, its content plus occurrence number does. */
  key: column,
  decimal: { enum: [".", ","] },
} as const;

/** How the columns of a CSV file of assets map to the register. */
const REGISTER_MAPPING_SCHEMA = {
  type: "object",
  properties: {
    kind: { const: "register" },
    ...common,
    asset: assetColumns,
    /** Last-done dates from old papers, brought forward by checklist id. */
    broughtForward: {
      type: "array",
      maxItems: 20,
      items: {
        type: "object",
        properties: { checklist: { type: "string", pattern: UUID }, date: dateColumn },
        required: ["checklist", "date"],
        additionalProperties: false,
      },
    },
  },
  required: ["kind", "source", "asset"],
  additionalProperties: false,
} as const;

/** How the columns of a CSV file of past results map to inspections. */
const RESULTS_MAPPING_SCHEMA = {
  type: "object",
  properties: {
    kind: { const: "results" },
    ...common,
    /** Stable id of an issued checklist; its newest issue judges the rows. */
    checklist: { type: "string", pattern: UUID },
    asset: assetColumns,
    /** Register assets the estate does not know yet from the first row that names them. */
    createAssets: { type: "boolean" },
    date: dateColumn,
    /** By the name of the answer: the point's, or `point@member` in a repeat. */
    answers: {
      type: "object",
      propertyNames: { pattern: ANSWER_NAME },
      maxProperties: 1000,
      additionalProperties: {
        type: "object",
        properties: {
          column,
          /** Further columns of a point that takes several readings. */
          more: { type: "array", items: column, minItems: 1, maxItems: 49, uniqueItems: true },
          /** Column of the seconds waited before a timed reading; nobody's guess stands in for it. */
          elapsed: column,
          /** What stands between several in one cell; a semicolon where none is given. */
          separator: { enum: [";", ",", "|", "/"] },
          /** How the days of a date are written, where not as the file's own date is. */
          format,
          /** What an empty cell says; without it an empty cell is a question nobody answered. */
          empty: { enum: ABSENCE_REASONS },
          unit: { type: "string", maxLength: 40 },
          /** Cell text to answer, such as {"Y": "ok"}. */
          words: { type: "object", additionalProperties: { type: "string" }, maxProperties: 100 },
        },
        required: ["column"],
        additionalProperties: false,
      },
    },
  },
  required: ["kind", "source", "checklist", "asset", "date", "answers"],
  additionalProperties: false,
} as const;

export const IMPORT_MAPPING_SCHEMA = {
  oneOf: [REGISTER_MAPPING_SCHEMA, RESULTS_MAPPING_SCHEMA],
} as const;
export type RegisterMapping = FromSchema<typeof REGISTER_MAPPING_SCHEMA>;
export type ResultsMapping = FromSchema<typeof RESULTS_MAPPING_SCHEMA>;
export type ImportMapping = RegisterMapping | ResultsMapping;

/** One fault of a file: `row` counts from 1 at the first row below the header (0: the file or its header). */
export interface RowProblem {
  readonly row: number;
  readonly column: string | null;
  readonly problem: Problem;
}

export interface ImportReport {
  readonly trial: boolean;
  readonly rows: number;
  readonly newAssets: number;
  readonly newEntries: number;
  /** Rows that were imported before, unchanged. */
  readonly already: number;
  readonly badRows: number;
  /** The first 1,000 faults; `badRows` counts every row that has one. */
  readonly problems: readonly RowProblem[];
}
