import { type Checklist, DIALECT, JSON_SCHEMA_DRAFT } from "../checklist/meta-schema.ts";

/**
 * Repeats of both kinds beside every kind of point that `EVERY_KIND` lacks, with stops, cautions
 * and wording. All figures are invented.
 */
export const LEAVES_AND_SOCKETS: Checklist = {
  $schema: JSON_SCHEMA_DRAFT,
  dialect: DIALECT,
  title: "Door with sockets beside it",
  description: "A door set and the outlets on its wall.",
  language: "en",
  type: "object",
  cautions: ["Do not wedge the door."],
  particulars: {
    sockets: { title: "Number of sockets", type: "integer", minimum: 1, maximum: 12 },
    fitted: { title: "Fitted on", type: "string", format: "date" },
  },
  values: {
    widest: { title: "Widest gap", unit: "mm", const: 4, basis: "Invented" },
  },
  groups: [
    {
      id: "leaves",
      title: "Leaves",
      points: ["gap_top", "hinges"],
      repeat: {
        each: "Leaf",
        members: [
          { id: "left", title: "Left leaf" },
          { id: "right", title: "Right leaf" },
        ],
      },
    },
    {
      id: "outlets",
      title: "Socket outlets",
      points: ["loops", "plate"],
      repeat: { each: "Socket", count: "asset.sockets", atMost: 12 },
    },
    { id: "whole", title: "The whole door", points: ["opened", "closing", "sum", "signed"] },
  ],
  properties: {
    label: { $ref: "#/$defs/text", title: "Label", maxLength: 20 },
    gap_top: {
      $ref: "#/$defs/reading",
      title: "Gap at the top",
      quantity: { unit: "mm", alsoIn: ["cm"], decimals: 1 },
      limits: [{ min: 1, max: "widest", basis: "Invented" }],
    },
    hinges: {
      $ref: "#/$defs/count",
      title: "Hinges",
      description: "Screwed tight, all screws there.",
      maximum: 6,
      limits: [{ min: 3, basis: "Invented" }],
    },
    loops: {
      $ref: "#/$defs/readings",
      title: "Loop impedance",
      quantity: { unit: "Ohm" },
      several: { count: 2, combine: "highest" },
      limits: [{ min: 0, max: 1.5, basis: "Invented" }],
    },
    plate: {
      $ref: "#/$defs/choices",
      title: "Plate",
      items: {
        oneOf: [
          { const: "whole", title: "Whole" },
          { const: "marked", title: "Marked" },
          { const: "cracked", title: "Cracked" },
        ],
      },
      limits: [{ accept: ["whole", "marked"], basis: "Invented" }],
    },
    opened: {
      $ref: "#/$defs/date",
      title: "Last opened for repair",
      limits: [{ notAfter: { from: "today" }, notBefore: { from: "asset.fitted" } }],
    },
    closing: {
      $ref: "#/$defs/reading",
      title: "Closing time",
      quantity: { unit: "s" },
      ask: { wait: { atLeast: 5 } },
      limits: [{ min: 0, max: 25, basis: "Invented" }],
    },
    water: {
      $ref: "#/$defs/sample",
      title: "Water from the sill",
      quantity: { unit: "mg" },
      limits: [{ min: 0, max: 3, basis: "Invented" }],
    },
    sum: {
      $ref: "#/$defs/calculated",
      title: "Twice the closing time",
      quantity: { unit: "s" },
      calculate: "answers.closing * 2",
      limits: [{ min: 0, max: 40, basis: "Invented" }],
    },
    signed: { $ref: "#/$defs/signature", title: "Signed" },
  },
  stops: [
    { after: ["hinges"], on: ["fail"], points: ["closing"], say: "Do not swing a loose leaf." },
  ],
  wording: {
    cy: {
      "/title": "Drws a socedi",
      "/groups/0/title": "Dalennau",
      "/groups/0/repeat/each": "Dalen",
      "/groups/0/repeat/members/0/title": "Dalen chwith",
      "/properties/gap_top/title": "Bwlch ar y brig",
      "/properties/plate/items/oneOf/0/title": "Cyfan",
      "/stops/0/say": "Peidiwch â siglo dalen rydd.",
    },
    "cy-GB": { "/properties/gap_top/title": "Bwlch uchaf" },
  },
  additionalProperties: false,
};
