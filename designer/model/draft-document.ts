import {
  type Checklist,
  DIALECT,
  JSON_SCHEMA_DRAFT,
  type PointDefinition,
  type PointKind,
} from "@roundbook/schemas";

/** A checklist as a manager edits it: always of the checklist's shape, not always complete. */
export type DraftDocument = Checklist;

/** A checklist without a point yet. */
export const emptyDocument = (title: string): DraftDocument => ({
  $schema: JSON_SCHEMA_DRAFT,
  dialect: DIALECT,
  title,
  type: "object",
  particulars: {},
  values: {},
  groups: [],
  properties: {},
  additionalProperties: false,
});

const ABSENT_OPTION = { $ref: "#/$defs/absent" } as const;

/** A point as it begins: mandatory, nothing preset, and with the limit its kind always needs. */
export const newPoint = (kind: PointKind, title: string): PointDefinition => {
  const base = { $ref: `#/$defs/${kind}` as const, title, ask: { mandatory: true } };
  switch (kind) {
    case "check":
      return { ...base, limits: [{ accept: ["ok"] }] };
    case "choice":
      return {
        ...base,
        oneOf: [
          { const: "good", title: "Good" },
          { const: "worn", title: "Worn" },
          { const: "broken", title: "Broken" },
          ABSENT_OPTION,
        ],
        limits: [{ accept: ["good", "worn"] }],
      };
    case "graded":
      return { ...base, minimum: 1, maximum: 5, ask: { mandatory: true } };
    case "reading":
      return { ...base, quantity: { unit: "Cel", decimals: 1 } };
    case "text":
      return { ...base, ask: { mandatory: false } };
    case "photo":
      return { ...base, ask: { mandatory: false } };
    default: {
      const never: never = kind;
      throw new Error(`no such kind of point: ${String(never)}`);
    }
  }
};

/** The options of a choice, without the absence that the schema lists beside them. */
export const optionsOf = (point: PointDefinition): { const: string; title: string }[] =>
  (point.oneOf ?? []).filter(
    (option): option is { const: string; title: string } => "const" in option,
  );

export const withOptions = (
  point: PointDefinition,
  options: readonly { const: string; title: string }[],
): PointDefinition => ({ ...point, oneOf: [...options, ABSENT_OPTION] });
