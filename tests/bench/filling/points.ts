import {
  type Checklist,
  DIALECT,
  JSON_SCHEMA_DRAFT,
  type PointDefinition,
} from "@roundbook/schemas";

const IN_A_GROUP = 25;

/** A reading, then a check, and so on: figures are invented. */
const pointAt = (at: number): PointDefinition =>
  at % 2 === 0
    ? {
        $ref: "#/$defs/reading",
        title: `Reading ${at + 1}`,
        quantity: { unit: "Cel", decimals: 1 },
        limits: [{ min: 20 + (at % 7), max: 60 + (at % 5), basis: "Invented" }],
        ask: { mandatory: true },
      }
    : {
        $ref: "#/$defs/check",
        title: `Check ${at + 1}`,
        limits: [{ accept: ["ok"], basis: "Invented" }],
        ask: { mandatory: true },
      };

/** A checklist of so many points in groups of 25. */
export const checklistWith = (count: number): Checklist => {
  const names = Array.from({ length: count }, (_, at) => `p${at + 1}`);
  return {
    $schema: JSON_SCHEMA_DRAFT,
    dialect: DIALECT,
    title: `${count} points`,
    type: "object",
    groups: Array.from({ length: Math.ceil(count / IN_A_GROUP) }, (_, at) => ({
      id: `g${at + 1}`,
      title: `Part ${at + 1}`,
      points: names.slice(at * IN_A_GROUP, (at + 1) * IN_A_GROUP),
    })),
    properties: Object.fromEntries(names.map((name, at) => [name, pointAt(at)])),
    additionalProperties: false,
  };
};

/** One plain question: a number between two others, or one of some words. */
export type PlainPoint =
  | {
      readonly title: string;
      readonly type: "number";
      readonly minimum?: number;
      readonly maximum?: number;
    }
  | { readonly title: string; readonly type: "string"; readonly enum: readonly string[] };

export interface PlainSchema {
  readonly type: "object";
  readonly title: string;
  readonly required: readonly string[];
  readonly properties: Readonly<Record<string, PlainPoint>>;
}

/**
 * The same points with what a general form can draw: a number in place of a reading with its unit
 * and comparator, two words in place of a check. Taken as written, each reading would be several
 * inputs to the others, so this asks less of them.
 */
export const plainSchemaOf = ({ title, properties }: Checklist): PlainSchema => ({
  type: "object",
  title,
  required: Object.keys(properties),
  properties: Object.fromEntries(
    Object.entries(properties).map(([name, point]): [string, PlainPoint] => {
      const [limit] = point.limits ?? [];
      const figure = (bound: unknown) => (typeof bound === "number" ? bound : undefined);
      return point.$ref === "#/$defs/check"
        ? [name, { title: point.title, type: "string", enum: ["ok", "not-ok"] }]
        : [
            name,
            {
              title: point.title,
              type: "number",
              minimum: figure(limit && "min" in limit ? limit.min : undefined),
              maximum: figure(limit && "max" in limit ? limit.max : undefined),
            },
          ];
    }),
  ),
});
