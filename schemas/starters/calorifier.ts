import type { ParticularDefinitions, PointDefinition } from "../checklist/meta-schema.ts";
import {
  byDate,
  COMMON_PRACTICE,
  DANGER,
  draft,
  measured,
  must,
  type Starter,
  sound,
} from "./starter.ts";

const particulars: ParticularDefinitions = {
  capacity: { title: "Capacity", type: "number", unit: "L", minimum: 5, maximum: 20_000 },
  circulates: { title: "Has a return", type: "boolean" },
  gauge: { title: "Has a temperature gauge", type: "boolean" },
  drained: { title: "Base drain opened at this check", type: "boolean" },
  sampled: { title: "Sampled at this check", type: "boolean" },
};

const TABLE_1 = "HSE, Hot and cold water systems, table 1";
const STORED = "Water Regulations guidance G18.2: stored at 60 °C or more";
const RESULTS = "HSG274 part 2, action levels for hot and cold water (confirm the figure there)";
const TEMPERATURE = {
  unit: "Cel",
  alsoIn: ["[degF]"],
  decimals: 1,
  plausible: { min: 10, max: 95 },
};

const DRAIN: PointDefinition = {
  title: "First water from the base drain",
  $ref: "#/$defs/choice",
  oneOf: [
    { const: "clear", title: "Clear" },
    { const: "discoloured", title: "Discoloured, then clear" },
    { const: "debris", title: "Sludge or debris" },
    { const: "no-flow", title: "Nothing came" },
    { $ref: "#/$defs/absent" },
  ],
  limits: [
    { accept: ["clear", "discoloured"], basis: COMMON_PRACTICE },
    { accept: ["clear"], severity: "advisory", basis: COMMON_PRACTICE },
  ],
  grade: byDate("P1M"),
  ask: must({ when: "asset.drained" }),
};

export const CALORIFIER: Starter = {
  key: "calorifier",
  title: "Calorifier",
  assetType: { name: "calorifier", title: "Calorifier", particulars },
  checklist: draft({
    title: "Calorifier: flow and return",
    minutes: 10,
    particulars: { ...particulars },
    cautions: [
      "Hot surfaces and water well above scalding: probe on the pipe, gloves on, never the hand.",
      "Drain slowly into an open vessel, without spray; stand aside.",
      "Raising the storage temperature raises the risk of scalding at every outlet it feeds.",
    ],
    groups: [
      { id: "look", title: "Look", points: ["tight", "lagging"] },
      { id: "temperatures", title: "Temperatures", points: ["flow", "back", "drop", "stored"] },
      { id: "base", title: "Base drain and sample", points: ["drain", "legionella"] },
    ],
    properties: {
      tight: sound("No leak, rust or damage at vessel, valves and relief?", COMMON_PRACTICE),
      lagging: sound("Insulation whole and dry?", COMMON_PRACTICE, {
        grade: { means: "observation" },
      }),
      flow: measured("Flow", TEMPERATURE, [
        { min: 60, basis: `${TABLE_1}: calorifier flow at least 60 °C` },
      ]),
      back: measured(
        "Return",
        TEMPERATURE,
        [{ min: 50, basis: `${TABLE_1}: calorifier return at least 50 °C` }],
        { ask: must({ when: "asset.circulates" }) },
      ),
      drop: {
        title: "Flow less return",
        $ref: "#/$defs/calculated",
        quantity: { unit: "K", decimals: 1 },
        calculate: "answers.flow - answers.back",
        limits: [
          {
            min: 0,
            max: 10,
            severity: "advisory",
            basis: `60 °C out and 50 °C back are 10 K apart; a return hotter than its flow was misread. ${COMMON_PRACTICE}`,
          },
        ],
        grade: { means: "observation" },
        ask: { when: "asset.circulates" },
      },
      stored: measured("Gauge on the vessel", TEMPERATURE, [{ min: 60, basis: STORED }], {
        ask: must({ when: "asset.gauge" }),
      }),
      drain: DRAIN,
      legionella: {
        title: "Legionella",
        description: "From the base drain, bottle with neutraliser; write what stands on it.",
        $ref: "#/$defs/sample",
        quantity: { unit: "[CFU]/L", alsoIn: ["[CFU]/mL"], decimals: 0, plausible: { min: 0 } },
        limits: [
          { max: 1000, basis: RESULTS },
          { max: 100, severity: "advisory", basis: RESULTS },
        ],
        grade: DANGER,
        ask: must({ when: "asset.sampled", evidence: [] }),
      },
    },
  }),
  interval: {
    title: "Calorifier, flow and return",
    rule: { kind: "from-last-done", every: "P1M", early: "P7D", late: "P7D" },
    basis: `${TABLE_1}: calorifier flow and return monthly`,
  },
  note: "Flow, return and what lies between them; base drain; a sample that waits for its result.",
};
