import type { Checklist, PointDefinition, TableCell } from "../checklist/meta-schema.ts";
import {
  DIALECT,
  JSON_SCHEMA_DRAFT,
  type ParticularDefinitions,
  type TableDefinition,
} from "../checklist/meta-schema.ts";
import type { IntervalDefinition } from "../due/interval-schema.ts";

/** A checklist to begin with, and what goes with it: an example that the site has to confirm. */
export interface Starter {
  /** Kebab-case, the name of its file. */
  readonly key: string;
  readonly title: string;
  readonly assetType: {
    readonly name: string;
    readonly title: string;
    readonly particulars: ParticularDefinitions;
  };
  /** A draft: without `$defs`. Its particulars are those of the asset type, or some of them. */
  readonly checklist: Checklist;
  /** Suggested; whoever takes it up binds it to the asset type and the checklist. */
  readonly interval: Pick<IntervalDefinition, "title" | "rule"> & { readonly basis: string };
  /** One sentence for the list that a manager chooses from. */
  readonly note: string;
}

type Parts = Omit<Checklist, "$schema" | "dialect" | "type" | "additionalProperties">;
type Limit = NonNullable<PointDefinition["limits"]>[number];
type Ask = NonNullable<PointDefinition["ask"]>;

/** What a limit says that stands in no document. */
export const COMMON_PRACTICE = "Common practice, no source";

/** The first caution of every starter. */
export const EXAMPLE_CAUTION =
  "This is an example to confirm locally. It replaces neither the risk assessment, nor the maker's " +
  "instructions, nor the law and codes of the place. The competent person for the site sets the " +
  "limits and intervals, and anyone may stop the work.";

/** A draft checklist in English. */
export const draft = ({ cautions = [], ...parts }: Parts): Checklist => ({
  $schema: JSON_SCHEMA_DRAFT,
  dialect: DIALECT,
  language: "en",
  type: "object",
  ...parts,
  cautions: [EXAMPLE_CAUTION, ...cautions],
  additionalProperties: false,
});

const PHOTO_OF_FAILURE: NonNullable<Ask["evidence"]> = [
  { kind: "photo", on: ["fail"], atLeast: 1 },
];

/** Mandatory, with a photo of what fails. */
export const must = (more: Ask = {}): Ask => ({
  mandatory: true,
  evidence: PHOTO_OF_FAILURE,
  ...more,
});

export const DANGER = { means: "danger-now" } as const;
export const OBSERVATION = { means: "observation" } as const;
/** `within`: ISO 8601 duration to put it right in. */
export const byDate = (within: string) => ({ means: "by-a-date", within }) as const;

/** A thing to look at or try that has to be in order. */
export const sound = (
  title: string,
  basis: string,
  more: Partial<PointDefinition> = {},
): PointDefinition => ({
  title,
  $ref: "#/$defs/check",
  limits: [{ accept: ["ok"], basis }],
  grade: DANGER,
  ask: must(),
  ...more,
});

/** A figure read from an instrument. `plausible` asks "sure?"; it is no limit. */
export const measured = (
  title: string,
  quantity: NonNullable<PointDefinition["quantity"]>,
  limits: readonly Limit[],
  more: Partial<PointDefinition> = {},
): PointDefinition => ({
  title,
  $ref: "#/$defs/reading",
  quantity,
  limits: [...limits],
  grade: DANGER,
  ask: must(),
  ...more,
});

/** One rule of a decision table. */
export const row = (
  when: TableCell[],
  outcome: number | string,
  basis?: string,
): TableDefinition["rules"][number] => ({
  when,
  // biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
  then: outcome,
  ...(basis === undefined ? {} : { basis }),
});
