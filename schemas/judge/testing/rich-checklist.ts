import type { PointDefinition } from "../../checklist/meta-schema.ts";
import { checklist, graded, reading } from "./checklists.ts";

const check: PointDefinition = {
  $ref: "#/$defs/check",
  title: "Sound?",
  limits: [{ accept: ["ok"] }],
  ask: { absentAllowed: ["not-applicable"] },
};
const NA = { absentAllowed: ["not-applicable" as const] };

/** Every keyword that a verdict hangs on, side by side and through one another. Figures invented. */
export const RICH = checklist({
  particulars: {
    length: { title: "Length", type: "number", unit: "m", minimum: 0 },
    class: { title: "Class", enum: ["I", "II"] },
    sockets: { title: "Sockets", type: "integer", minimum: 1, maximum: 3 },
    fitted: { title: "Fitted", type: "string", format: "date" },
  },
  values: {
    joints: { unit: "Ohm", const: 2 },
    per_m: { unit: "Ohm/m", const: 0.02 },
    bond: { unit: "Ohm", formula: "joints + asset.length * per_m" },
  },
  properties: {
    sound: check,
    bonding: reading("Ohm", [{ max: "bond" }, { max: 3, severity: "advisory" }], {
      ask: { ...NA, mandatory: true },
    }),
    insulation: reading("MOhm", [
      { min: 1 },
      { min: 2, severity: "advisory", when: "asset.class == 'II'" },
    ]),
    guarded: reading("Ohm", [
      { min: 0, max: 2, decision: { rule: "guarded-acceptance", uncertainty: 0.1 } },
    ]),
    lenient: reading("Ohm", [
      { max: 2, decision: { rule: "guarded-rejection", uncertainty: "answers.guarded" } },
    ]),
    fourfold: reading("Ohm", [{ max: 2, decision: { rule: "non-binary", uncertainty: 0.2 } }]),
    loops: {
      $ref: "#/$defs/readings",
      title: "Loops",
      quantity: { unit: "Ohm" },
      several: { count: 2, combine: "highest" },
      limits: [{ max: 2 }],
    },
    average: {
      $ref: "#/$defs/readings",
      title: "Average",
      quantity: { unit: "Ohm" },
      several: { count: "asset.sockets", combine: "mean" },
      limits: [{ exclusiveMax: 2 }],
    },
    timed: reading("Cel", [{ max: 20 }], { ask: { wait: { atLeast: 60, atMost: 90 } } }),
    steady: reading("Cel", [{ sameAsLast: { within: 60 } }]),
    opened: {
      $ref: "#/$defs/date",
      title: "Opened",
      limits: [{ notAfter: { from: "today" }, notBefore: { from: "asset.fitted", plus: "P1M" } }],
    },
    worn: graded({ limits: [{ min: 2 }, { min: 4, severity: "advisory" }] }),
    tidy: graded(),
    screws: { $ref: "#/$defs/count", title: "Screws", limits: [{ min: 2, max: 4 }] },
    water: {
      $ref: "#/$defs/sample",
      title: "Water",
      quantity: { unit: "mg/L" },
      limits: [{ max: 2 }],
    },
    total: {
      $ref: "#/$defs/calculated",
      title: "Total",
      quantity: { unit: "Ohm" },
      calculate: "answers.bonding + answers.fourfold",
      limits: [{ max: 40 }],
    },
    asked: reading("Ohm", [{ max: 2 }], { ask: { when: "answers.worn > 2.0" } }),
    polarity: check,
    gap: reading("mm", [{ min: 1, max: "answers.width" }], { ask: NA }),
    width: reading("mm", [{ min: 2, max: 4 }]),
    leaf: check,
  },
  groups: [
    {
      id: "sockets",
      title: "Sockets",
      points: ["polarity"],
      repeat: { each: "Socket", count: "asset.sockets" },
    },
    {
      id: "leaves",
      title: "Leaves",
      points: ["leaf", "width", "gap"],
      repeat: {
        each: "Leaf",
        members: [
          { id: "left", title: "Left" },
          { id: "right", title: "Right" },
        ],
      },
    },
  ],
  stops: [
    { after: ["sound"], on: ["fail"], points: ["asked"], say: "Wait." },
    { after: ["polarity"], on: ["fail"], points: ["fourfold"], say: "Wait." },
    { after: ["leaf"], on: ["fail"], points: ["gap"], say: "Wait." },
  ],
  scores: {
    s: {
      title: "Score",
      of: ["worn", "tidy"],
      method: "mean",
      weights: { worn: 2 },
      round: { rule: "half-even", decimals: 1 },
      bands: [
        { title: "low", from: 0, outcome: "fail" },
        { title: "high", from: 3, outcome: "pass" },
      ],
    },
  },
});
