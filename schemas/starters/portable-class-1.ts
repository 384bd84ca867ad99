import type { ParticularDefinitions } from "../checklist/meta-schema.ts";
import {
  csa,
  DAMAGE_STOPS,
  EARTH_STOPS,
  ELECTRICAL_CAUTIONS,
  FLEXIBLE_CONDUCTOR,
  FUSE,
  FUSE_VALUES,
  FUSED_PLUG,
  INSULATION_VOLTAGE,
  insulation,
  JOINTS,
  LOOK_NAMES,
  LOOK_POINTS,
  POLARITY,
  RATED_POWER,
  SURGE_PROTECTED,
  WORKS,
} from "./electrical-parts.ts";
import { draft, measured, must, row, type Starter } from "./starter.ts";

const particulars: ParticularDefinitions = {
  kind: {
    title: "Kind",
    enum: ["hand-held or portable", "movable or stationary", "heating"],
  },
  rated_power: RATED_POWER,
  lead_length: {
    title: "Length of its lead",
    type: "number",
    unit: "m",
    minimum: 0.2,
    maximum: 100,
  },
  csa: csa("Conductor cross-section of its lead"),
  earth_rule: {
    title: "Rule for the earth",
    enum: ["0.1 Ohm plus the lead", "0.3 Ohm and steps"],
  },
  fused_plug: FUSED_PLUG,
  surge_protected: SURGE_PROTECTED,
};

const UK_CURRENT = "Trade pages on in-service testing, protective conductor current";
const EN_EARTH = "EN 50699: 0.3 Ohm to 5 m, 0.1 Ohm more per further 7.5 m begun, at most 1 Ohm";

export const PORTABLE_CLASS_1: Starter = {
  key: "portable-class-1",
  title: "Portable appliance, Class I",
  assetType: { name: "portable_class_1", title: "Portable appliance, Class I", particulars },
  checklist: draft({
    title: "Portable appliance, Class I: inspection and test",
    minutes: 8,
    particulars: { ...particulars },
    cautions: ELECTRICAL_CAUTIONS,
    values: {
      joints: JOINTS,
      r_per_m: FLEXIBLE_CONDUCTOR,
      stepped_earth: {
        title: "Earth limit by steps",
        unit: "Ohm",
        table: {
          policy: "unique",
          inputs: ["asset.lead_length"],
          rules: [
            row([{ max: 5 }], 0.3),
            row([{ exclusiveMin: 5, max: 12.5 }], 0.4),
            row([{ exclusiveMin: 12.5, max: 20 }], 0.5),
            row([{ exclusiveMin: 20, max: 27.5 }], 0.6),
            row([{ exclusiveMin: 27.5, max: 35 }], 0.7),
            row([{ exclusiveMin: 35, max: 42.5 }], 0.8),
            row([{ exclusiveMin: 42.5, max: 50 }], 0.9),
            row([{ exclusiveMin: 50 }], 1),
          ],
        },
      },
      current_per_power: { title: "Current per kilowatt", unit: "mA/kW", const: 0.75 },
      least_heating_current: { title: "Current allowed in any case", unit: "mA", const: 0.75 },
      most_heating_current: { title: "Most for any heating appliance", unit: "mA", const: 5 },
      ...FUSE_VALUES,
    },
    groups: [
      { id: "look", title: "Look, unplugged", points: LOOK_NAMES, groupAnswer: true },
      { id: "fusing", title: "Fuse", points: ["fuse"] },
      {
        id: "dead_tests",
        title: "Tests, not switched on",
        points: ["polarity", "earth_continuity", "insulation_voltage", "insulation"],
      },
      { id: "live_tests", title: "Tests, switched on", points: ["protective_current", "works"] },
    ],
    properties: {
      ...LOOK_POINTS,
      fuse: FUSE,
      polarity: POLARITY,
      earth_continuity: measured(
        "Earth continuity, earth pin to metal",
        { unit: "Ohm", alsoIn: ["mOhm"], decimals: 3, plausible: { min: 0, max: 20 } },
        [
          {
            max: "joints + asset.lead_length * r_per_m",
            when: "asset.earth_rule == '0.1 Ohm plus the lead' || asset.csa > 1.5",
            basis: "0.1 Ohm plus the lead, IEC 60228 class 5 at 20 °C",
          },
          {
            max: "stepped_earth",
            when: "asset.earth_rule == '0.3 Ohm and steps' && asset.csa <= 1.5",
            basis: EN_EARTH,
          },
        ],
        {
          description: "Move the lead along its length while you read; the highest counts.",
          ask: must({ absentAllowed: ["not-measurable"] }),
        },
      ),
      insulation_voltage: INSULATION_VOLTAGE,
      insulation: insulation(
        [
          {
            min: 0.3,
            when: "asset.kind == 'heating' && asset.rated_power < 3.0",
            basis: "Heating below 3 kW: 0.3 MOhm, training pages on in-service testing",
          },
          {
            min: 1,
            when: "asset.kind != 'heating' || asset.rated_power >= 3.0",
            basis: "Class I: 1 MOhm, training pages on in-service testing",
          },
        ],
        "answers.insulation_voltage != 'none'",
      ),
      protective_current: measured(
        "Current in the protective conductor, or touch current",
        { unit: "mA", alsoIn: ["uA"], decimals: 2, plausible: { min: 0, max: 20 } },
        [
          { max: 0.75, when: "asset.kind == 'hand-held or portable'", basis: UK_CURRENT },
          { max: 3.5, when: "asset.kind == 'movable or stationary'", basis: UK_CURRENT },
          {
            max: "max(least_heating_current, min(asset.rated_power * current_per_power, most_heating_current))",
            when: "asset.kind == 'heating'",
            basis: "Heating: 0.75 mA, or 0.75 mA per kW if more, at most 5 mA",
          },
        ],
        { ask: must({ absentAllowed: ["not-measurable"] }) },
      ),
      works: WORKS,
    },
    stops: [
      {
        after: LOOK_NAMES.filter((name) => name !== "marks"),
        on: ["fail"],
        groups: ["dead_tests", "live_tests"],
        say: DAMAGE_STOPS,
      },
      {
        after: ["polarity", "earth_continuity", "insulation"],
        on: ["fail"],
        groups: ["live_tests"],
        say: EARTH_STOPS,
      },
    ],
  }),
  interval: {
    title: "Combined inspection and test, Class I",
    rule: { kind: "from-last-done", every: "P1Y", early: "P1M", late: "P1M" },
    basis:
      "HSE INDG236: earthed equipment in low-risk places every 1 to 2 years; by risk elsewhere",
  },
  note: "Look, earth, insulation and current of an earthed appliance with its lead.",
};
