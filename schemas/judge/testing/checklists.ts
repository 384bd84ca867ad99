import type { Answer } from "../../checklist/answer-types.ts";
import {
  type Checklist,
  DIALECT,
  JSON_SCHEMA_DRAFT,
  type LimitDefinition,
  type PointDefinition,
  type TableDefinition,
} from "../../checklist/meta-schema.ts";
import { createFormulaEngine } from "../../formulas/index.ts";
import { compileJudge, type Judge } from "../compile-judge.ts";
import type { PointJudgement } from "../judgement.ts";

export type Parts = Omit<Partial<Checklist>, "properties"> & {
  readonly properties: Readonly<Record<string, PointDefinition>>;
};

export const checklist = (parts: Parts): Checklist => ({
  $schema: JSON_SCHEMA_DRAFT,
  dialect: DIALECT,
  title: "Test",
  type: "object",
  additionalProperties: false,
  ...parts,
});

export const judgeOf = (parts: Parts): Judge =>
  compileJudge(checklist(parts), createFormulaEngine());

export const reading = (
  unit: string,
  limits?: readonly LimitDefinition[],
  more: Partial<PointDefinition> = {},
): PointDefinition => ({
  $ref: "#/$defs/reading",
  title: "Reading",
  quantity: { unit },
  ...(limits === undefined ? {} : { limits: [...limits] }),
  ...more,
});

export const graded = (more: Partial<PointDefinition> = {}): PointDefinition => ({
  $ref: "#/$defs/graded",
  title: "Grade",
  minimum: 1,
  maximum: 5,
  ask: { absentAllowed: ["not-applicable"] },
  ...more,
});

/** The judgement of the one point `x`. */
export const judgeOne = (
  point: PointDefinition,
  answer: Answer | undefined,
  parts: Partial<Parts> = {},
): PointJudgement =>
  judgeOf({ ...parts, properties: { ...parts.properties, x: point } }).judgePoint("x", {
    particulars: {},
    answers: answer === undefined ? {} : { x: answer },
  });

type Rule = TableDefinition["rules"][number];
/** One row of a decision table. */
export const row = (when: Rule["when"], outcome: Rule["then"]): Rule => ({
  when,
  // biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
  then: outcome,
});
