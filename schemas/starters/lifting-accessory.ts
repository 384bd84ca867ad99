import type { ParticularDefinitions } from "../checklist/meta-schema.ts";
import { COMMON_PRACTICE, draft, measured, must, type Starter, sound } from "./starter.ts";

const particulars: ParticularDefinitions = {
  kind: {
    title: "Kind",
    enum: ["chain sling", "wire rope sling", "textile sling", "shackle"],
  },
  diameter: {
    title: "Nominal diameter of chain, rope or shackle",
    type: "number",
    unit: "mm",
    minimum: 3,
    maximum: 100,
  },
  working_load: {
    title: "Working load limit",
    type: "number",
    unit: "kg",
    minimum: 10,
    maximum: 200_000,
  },
  colour_code: { title: "Marked with the colour of the period", type: "boolean" },
};

const CHAIN = "EN 818-6, chain slings in use";
const ROPE = "EN 13414-2, wire rope slings in use";
const TEXTILE = "EN 1492-1 and 1492-2, textile slings";

export const LIFTING_ACCESSORY: Starter = {
  key: "lifting-accessory",
  title: "Lifting accessory, user check",
  assetType: { name: "lifting_accessory", title: "Lifting accessory", particulars },
  checklist: draft({
    title: "Lifting accessory: user check",
    minutes: 4,
    particulars: { ...particulars },
    cautions: [
      "A user check is not a thorough examination, which a competent person makes.",
      "Look with the load off and gloves on: broken wires cut. Never test it with a load.",
      "When in doubt it is not used: mark it and hand it in.",
    ],
    values: {
      least_diameter: {
        title: "Least diameter",
        unit: "mm",
        formula: "0.9 * asset.diameter",
      },
    },
    groups: [
      { id: "papers", title: "Papers and marks", points: ["load_mark", "colour", "examined"] },
      {
        id: "any_kind",
        title: "Whatever it is",
        points: ["bent", "fittings", "clean"],
        groupAnswer: true,
      },
      { id: "chain", title: "Chain sling", points: ["links", "link_diameter"] },
      {
        id: "rope",
        title: "Wire rope sling",
        points: ["rope_shape", "broken_wires_short", "broken_wires_long", "rope_diameter"],
      },
      { id: "textile", title: "Textile sling", points: ["cuts", "burns", "stitching"] },
      { id: "shackle_points", title: "Shackle", points: ["pin", "body_diameter"] },
    ],
    properties: {
      load_mark: sound(
        "Number and working load limit can be read?",
        "LOLER 1998 reg 7: marked with its safe working load",
      ),
      colour: sound("Colour of this period on it?", COMMON_PRACTICE, {
        ask: must({ when: "asset.colour_code" }),
      }),
      examined: {
        title: "Day of its last thorough examination",
        description: "From the report, not from memory.",
        $ref: "#/$defs/date",
        limits: [
          {
            notBefore: { from: "today", minus: "P6M" },
            basis: "LOLER 1998 reg 9(3)(a): lifting accessories at least every 6 months",
          },
          { notAfter: { from: "today" }, basis: "An examination lies behind us" },
        ],
        grade: { means: "danger-now" },
        ask: must({ evidence: [] }),
      },
      bent: sound("Nothing bent, stretched, cracked or corroded?", COMMON_PRACTICE),
      fittings: sound(
        "Hooks close and latch, rings and links move freely, hook not opened?",
        COMMON_PRACTICE,
        { ask: must({ absentAllowed: ["not-applicable"] }) },
      ),
      clean: sound("Dry, clean and stored off the floor?", COMMON_PRACTICE, {
        grade: { means: "observation" },
      }),
      links: sound("Links without nicks, gouges, twist or stretch?", CHAIN, {
        ask: must({ when: "asset.kind == 'chain sling'" }),
      }),
      link_diameter: measured(
        "Diameter of the most worn link, mean of two across each other",
        { unit: "mm", decimals: 1, plausible: { min: 2, max: 100 } },
        [{ min: "least_diameter", basis: `${CHAIN}: worn below 90 % of nominal is withdrawn` }],
        { ask: must({ when: "asset.kind == 'chain sling'" }) },
      ),
      rope_shape: sound("No kinks, birdcage, crushing, loose strands or heat marks?", ROPE, {
        ask: must({ when: "asset.kind == 'wire rope sling'" }),
      }),
      broken_wires_short: {
        title: "Most broken wires within six rope diameters",
        $ref: "#/$defs/count",
        limits: [{ max: 6, basis: `${ROPE}: more than 6 in 6 diameters is withdrawn` }],
        grade: { means: "danger-now" },
        ask: must({ when: "asset.kind == 'wire rope sling'" }),
      },
      broken_wires_long: {
        title: "Most broken wires within thirty rope diameters",
        $ref: "#/$defs/count",
        limits: [{ max: 14, basis: `${ROPE}: more than 14 in 30 diameters is withdrawn` }],
        grade: { means: "danger-now" },
        ask: must({ when: "asset.kind == 'wire rope sling'" }),
      },
      rope_diameter: measured(
        "Least diameter of the rope",
        { unit: "mm", decimals: 1, plausible: { min: 2, max: 100 } },
        [{ min: "least_diameter", basis: `${ROPE}: thinner by more than 10 % is withdrawn` }],
        { ask: must({ when: "asset.kind == 'wire rope sling'" }) },
      ),
      cuts: sound("No cuts, tears, holes or knots; cover of a round sling whole?", TEXTILE, {
        ask: must({ when: "asset.kind == 'textile sling'" }),
      }),
      burns: sound("No burns, glazing, stiff spots from chemicals, or bleaching?", TEXTILE, {
        ask: must({ when: "asset.kind == 'textile sling'" }),
      }),
      stitching: sound("Stitching and eyes whole?", TEXTILE, {
        ask: must({ when: "asset.kind == 'textile sling'" }),
      }),
      pin: sound("Right pin, threads whole, screws fully home, not bent?", COMMON_PRACTICE, {
        ask: must({ when: "asset.kind == 'shackle'" }),
      }),
      body_diameter: measured(
        "Least diameter of body or pin",
        { unit: "mm", decimals: 1, plausible: { min: 2, max: 100 } },
        [
          {
            min: "least_diameter",
            basis: `Worn by more than a tenth is withdrawn. ${COMMON_PRACTICE}`,
          },
        ],
        { ask: must({ when: "asset.kind == 'shackle'" }) },
      ),
    },
  }),
  interval: {
    title: "Lifting accessory, user check",
    rule: { kind: "from-last-done", every: "P3M", early: "P14D", late: "P7D" },
    basis:
      "Common practice, no source: recorded each quarter, looked at before every lift; LOLER 1998 reg 9(3)(a) asks for a thorough examination every 6 months besides",
  },
  note: "Chain, wire rope and textile slings and shackles: wear, broken wires, marks, papers in date.",
};
