import {
  type Checklist,
  DIALECT,
  JSON_SCHEMA_DRAFT,
  type PointDefinition,
} from "@roundbook/schemas";

/** A checklist of one group over the points given. */
export const checklistOf = (
  properties: Readonly<Record<string, PointDefinition>>,
  more: Partial<Checklist> = {},
): Checklist => ({
  $schema: JSON_SCHEMA_DRAFT,
  dialect: DIALECT,
  title: "Plant room",
  type: "object",
  groups: [{ id: "all", title: "Everything", points: Object.keys(properties) }],
  properties: { ...properties },
  additionalProperties: false,
  ...more,
});

export const FAULTS: PointDefinition = {
  $ref: "#/$defs/choices",
  title: "What is wrong with it?",
  items: {
    oneOf: [
      { const: "rust", title: "Rust" },
      { const: "leak", title: "Leak" },
      { const: "none", title: "Nothing" },
    ],
  },
  limits: [{ accept: ["none", "rust"] }],
};

export const CRACKS: PointDefinition = {
  $ref: "#/$defs/count",
  title: "Cracks in the casing",
  limits: [{ max: 2 }],
};

export const SERVICED: PointDefinition = {
  $ref: "#/$defs/date",
  title: "Last serviced",
  limits: [{ notBefore: { from: "today", minus: "P1Y" }, basis: "Yearly service" }],
};

export const SIGNED: PointDefinition = {
  $ref: "#/$defs/signature",
  title: "Duty holder told",
  ask: { mandatory: true },
};

export const LEGIONELLA: PointDefinition = {
  $ref: "#/$defs/sample",
  title: "Legionella",
  quantity: { unit: "[CFU]/L" },
  limits: [{ max: 100 }],
  ask: { mandatory: true },
};

export const HOT: PointDefinition = {
  $ref: "#/$defs/reading",
  title: "Hot water after one minute",
  quantity: { unit: "Cel", decimals: 1 },
  limits: [{ min: 50 }],
  ask: { wait: { atLeast: 60 } },
};

export const LAMPS: PointDefinition = {
  $ref: "#/$defs/readings",
  title: "Light along the way out",
  quantity: { unit: "lx", decimals: 1 },
  several: { count: 3, combine: "lowest" },
  limits: [{ min: 1 }],
};
