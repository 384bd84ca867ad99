import type { DraftDocument } from "../model/draft-document.ts";
import { emptyDocument } from "../model/draft-document.ts";

const option = (name: string) => ({ const: name, title: `Is ${name}` });

/** A document of the right shape in which every keyword of the dialect stands, none by default. */
export const EVERY_KEYWORD: DraftDocument = {
  ...emptyDocument("Everything"),
  description: "What is looked at",
  language: "en",
  minutes: 12,
  cautions: ["Do not stand on it", "Hot surface"],
  particulars: {
    length: {
      title: "Length",
      description: "From end to end",
      order: 1,
      type: "number",
      unit: "m",
      minimum: 1,
      maximum: 100,
    },
    class: { title: "Class", order: 2, enum: ["I", "II"] },
    mark: { title: "Mark", order: 3, type: "string", maxLength: 9, pattern: "^A" },
    bought: { title: "Bought", order: 4, type: "string", format: "date" },
  },
  values: {
    joints: { title: "Joints", unit: "Ohm", const: 0.1, basis: "Own practice" },
    most: { title: "Most", unit: "Ohm", formula: "joints * 2" },
    looked: {
      title: "Looked up",
      unit: "Ohm",
      table: {
        policy: "collect",
        aggregate: "min",
        expect: 2,
        inputs: ["asset.length", "asset.class"],
        // biome-ignore-start lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
        rules: [
          { when: [{ min: 1, max: 5 }, "I"], then: 0.1, basis: "Table 4" },
          { when: [{ exclusiveMin: 5, exclusiveMax: 9 }, ["I", "II"]], then: 0.2 },
          { when: [{ any: true }, "II"], then: "much" },
        ],
        // biome-ignore-end lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
      },
    },
  },
  groups: [
    { id: "first", title: "First", points: ["gap", "closes"], groupAnswer: true },
    {
      id: "leaves",
      title: "Leaves",
      points: ["hinge"],
      repeat: { each: "Leaf", count: 2, atMost: 4 },
    },
    { id: "steps", title: "Steps", points: [], repeat: { each: "Step", count: "asset.length" } },
    {
      id: "sides",
      title: "Sides",
      points: ["bright"],
      repeat: {
        each: "Side",
        members: [
          { id: "left", title: "Left" },
          { id: "right", title: "Right" },
        ],
      },
    },
  ],
  properties: {
    gap: {
      $ref: "#/$defs/reading",
      title: "Gap",
      description: "At the head",
      quantity: { unit: "mm", alsoIn: ["cm", "m"], decimals: 1, plausible: { min: 1, max: 9 } },
      several: { count: 3, combine: "mean" },
      calculate: "joints * 2",
      limits: [
        { min: 2, max: "most", severity: "advisory", when: "asset.class == 'I'", basis: "Own" },
        { exclusiveMin: 1, exclusiveMax: "joints * 3" },
        { accept: ["ok", 4] },
        { notBefore: "2026-01-31", notAfter: { from: "today", plus: "P1M" } },
        { notAfter: { from: "asset.bought", minus: "P2M" } },
        { notBefore: { from: "asset.bought", plus: "P1Y", minus: "P2M" } },
        { sameAsLast: { within: 2, whenNone: "not-applied" } },
        { max: 3, decision: { rule: "guarded-acceptance", uncertainty: 0.1, guardFactor: 2 } },
        {
          max: 3,
          decision: { rule: "non-binary", uncertainty: "joints" },
          sameAsLast: { within: "most" },
        },
      ],
      ask: {
        when: "asset.class == 'II'",
        mandatory: true,
        absentAllowed: ["not-applicable", "no-access"],
        evidence: [
          { kind: "photo", on: ["fail", "advisory"], atLeast: 2 },
          { kind: "note", on: ["undecided"], atLeast: 3 },
        ],
        wait: { atLeast: 5, atMost: 60 },
      },
      grade: { means: "by-a-date", within: "P14D" },
      block: "shared",
    },
    closes: {
      $ref: "#/$defs/choice",
      title: "Closes",
      oneOf: [option("well"), option("badly"), { $ref: "#/$defs/absent" }],
    },
    hinge: {
      $ref: "#/$defs/choices",
      title: "Hinge",
      items: { oneOf: [option("bent"), option("loose")] },
    },
    bright: {
      $ref: "#/$defs/graded",
      title: "Bright",
      minimum: 1,
      maximum: 5,
      several: { count: "asset.length", combine: "each" },
    },
    marks: { $ref: "#/$defs/text", title: "Marks", maxLength: 9, pattern: "^A" },
  },
  scores: {
    state: {
      title: "State",
      of: ["bright", "gap"],
      method: "sum",
      weights: { bright: 3, gap: 2 },
      round: { rule: "half-up", decimals: 1 },
      bands: [
        { title: "Good", from: 60, outcome: "pass", next: "P1Y", basis: "House rule" },
        { title: "Poor", from: 0, outcome: "fail", next: "at-once" },
      ],
      basis: "Own",
    },
  },
  stops: [
    {
      after: ["gap", "closes"],
      on: ["fail", "advisory"],
      points: ["bright", "hinge"],
      say: "Keep out",
    },
    { after: ["gap"], on: ["fail"], groups: ["sides", "leaves"], say: "Keep it shut" },
  ],
  wording: { cy: { "/title": "Popeth", "/cautions/1": "Poeth" }, de: { "/title": "Alles" } },
  include: [{ block: "shared" }, { block: "other" }],
};
