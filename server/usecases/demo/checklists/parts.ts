import { DIALECT, JSON_SCHEMA_DRAFT } from "@roundbook/schemas";

/** Said first on every checklist of the demo estate. */
export const EXAMPLE_ONLY =
  "An example only: it replaces neither your risk assessment, the maker's instructions nor the law and codes of the place. The competent person for the site sets limits and intervals and may stop the work.";

export type Document = Readonly<Record<string, unknown>>;

/** A checklist document of the dialect around what is its own. */
export const checklist = (own: Document & { cautions: readonly string[] }): Document => ({
  $schema: JSON_SCHEMA_DRAFT,
  dialect: DIALECT,
  language: "en",
  type: "object",
  additionalProperties: false,
  ...own,
  cautions: [EXAMPLE_ONLY, ...own.cautions],
});

type Means = "danger-now" | "by-a-date" | "observation";

const grade = (means: Means, within?: string) =>
  within === undefined ? { means } : { means, within };

/** A look that passes when it is in order. */
export const look = (title: string, basis: string, means: Means, within?: string): Document => ({
  $ref: "#/$defs/check",
  title,
  limits: [{ accept: ["ok"], severity: "fail", basis }],
  ask: { mandatory: true, absentAllowed: ["not-applicable"] },
  grade: grade(means, within),
});

export interface Measured {
  readonly title: string;
  readonly description?: string;
  readonly quantity: Document;
  readonly limits: readonly Document[];
  readonly ask: Document;
  readonly means: Means;
  readonly within?: string;
}

export const reading = ({ means, within, ...own }: Measured): Document => ({
  $ref: "#/$defs/reading",
  ...own,
  grade: grade(means, within),
});
