import {
  type Checklist,
  DIALECT,
  JSON_SCHEMA_DRAFT,
  type PointDefinition,
  type PointKind,
  pointKind,
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

const FIRST_OPTIONS = [
  { const: "good", title: "Good" },
  { const: "worn", title: "Worn" },
  { const: "broken", title: "Broken" },
] as const;

/** A point as it begins: mandatory, nothing preset, and with the limit its kind always needs. */
export const newPoint = (kind: PointKind, title: string): PointDefinition => {
  const base = { $ref: `#/$defs/${kind}` as const, title, ask: { mandatory: true } };
  switch (kind) {
    case "check":
      return { ...base, limits: [{ accept: ["ok"] }] };
    case "choice":
      return {
        ...base,
        oneOf: [...FIRST_OPTIONS, ABSENT_OPTION],
        limits: [{ accept: ["good", "worn"] }],
      };
    case "choices":
      return {
        ...base,
        items: { oneOf: [...FIRST_OPTIONS] },
        limits: [{ accept: ["good", "worn"] }],
      };
    case "graded":
      return { ...base, minimum: 1, maximum: 5 };
    case "count":
    case "date":
    case "signature":
      return base;
    case "reading":
      return { ...base, quantity: { unit: "Cel", decimals: 1 } };
    case "sample":
      // Colonies in a litre of water: what a bottle is filled for most.
      return { ...base, quantity: { unit: "[CFU]/L", decimals: 0 } };
    case "readings":
      return {
        ...base,
        quantity: { unit: "Cel", decimals: 1 },
        several: { count: 3, combine: "each" },
      };
    case "calculated":
      // Worked out, never answered: there is nothing to leave out.
      return { $ref: base.$ref, title, quantity: { unit: "1" }, calculate: "0" };
    case "text":
    case "photo":
      return { ...base, ask: { mandatory: false } };
    default: {
      const never: never = kind;
      throw new Error(`no such kind of point: ${String(never)}`);
    }
  }
};

type Option = { const: string; title: string };

/** The options of a choice of one or several, without the absence that stands beside them. */
export const optionsOf = (point: PointDefinition): Option[] => [
  ...(point.items?.oneOf ?? []),
  ...(point.oneOf ?? []).filter((option): option is Option => "const" in option),
];

export const withOptions = (point: PointDefinition, options: readonly Option[]): PointDefinition =>
  pointKind(point) === "choices"
    ? { ...point, items: { oneOf: [...options] } }
    : { ...point, oneOf: [...options, ABSENT_OPTION] };
