import { type Checklist, DIALECT, JSON_SCHEMA_DRAFT } from "@roundbook/schemas";

const okPasses = [{ accept: ["ok"] }];

/** A small checklist with every kind of point; figures as in the tests of the trade. */
export const LEAD: Checklist = {
  $schema: JSON_SCHEMA_DRAFT,
  dialect: DIALECT,
  title: "Extension lead",
  type: "object",
  particulars: { class: { title: "Protection class", enum: ["I", "II"] } },
  groups: [
    { id: "look", title: "Look", groupAnswer: true, points: ["cable", "plug", "grip", "width"] },
    { id: "measure", title: "Measure", points: ["continuity", "case"] },
  ],
  properties: {
    cable: {
      $ref: "#/$defs/check",
      title: "Cable free of damage?",
      limits: okPasses,
      ask: { mandatory: true, evidence: [{ kind: "photo", on: ["fail"], atLeast: 1 }] },
      grade: { means: "danger-now" },
    },
    plug: {
      $ref: "#/$defs/check",
      title: "Plug whole?",
      limits: okPasses,
      ask: { mandatory: true },
    },
    grip: { $ref: "#/$defs/graded", title: "State of the grip", minimum: 1, maximum: 5 },
    width: {
      $ref: "#/$defs/reading",
      title: "Width of the plug",
      quantity: { unit: "mm" },
      limits: [{ min: 20 }],
    },
    continuity: {
      $ref: "#/$defs/reading",
      title: "Earth continuity",
      quantity: { unit: "Ohm", alsoIn: ["mOhm"], decimals: 3, plausible: { min: 0, max: 20 } },
      limits: [{ max: 0.233, basis: "0.133 Ω from IEC 60228, plus 0.1 Ω" }],
      ask: { mandatory: true, absentAllowed: ["not-measurable"] },
    },
    case: {
      $ref: "#/$defs/check",
      title: "Metal case bonded?",
      limits: okPasses,
      ask: { when: "asset.class == 'I'", mandatory: true },
    },
  },
  additionalProperties: false,
};

/** The same without a formula, so that nothing is loaded. */
export const PLAIN_LEAD: Checklist = {
  ...LEAD,
  properties: {
    ...LEAD.properties,
    case: { ...LEAD.properties.case, ask: { mandatory: true } } as never,
  },
};
