import type { ParticularDefinitions } from "../checklist/meta-schema.ts";
import {
  ELECTRICAL_CAUTIONS,
  insulation,
  JOINTS,
  RATED_POWER,
  SURGE_PROTECTED,
  WORKS,
} from "./electrical-parts.ts";
import {
  byDate,
  COMMON_PRACTICE,
  draft,
  measured,
  must,
  row,
  type Starter,
  sound,
} from "./starter.ts";

const particulars: ParticularDefinitions = {
  heating: { title: "Heating appliance", type: "boolean" },
  rated_power: RATED_POWER,
  earth_path: {
    title: "Length of protective conductor between the two points",
    description: "From the appliance to where both circuits meet, and on to the reference point.",
    type: "number",
    unit: "m",
    minimum: 0.5,
    maximum: 200,
  },
  csa: {
    title: "Cross-section of the protective conductor",
    type: "number",
    unit: "mm2",
    enum: [1, 1.5, 2.5, 4, 6],
  },
  surge_protected: SURGE_PROTECTED,
};

const CLASS_2 = "IEC 60228 classes 1 and 2, plain copper, largest resistance at 20 °C";

export const FIXED_APPLIANCE: Starter = {
  key: "fixed-appliance",
  title: "Fixed appliance, point to point",
  assetType: { name: "fixed_appliance", title: "Fixed appliance", particulars },
  checklist: draft({
    title: "Fixed appliance: inspection and point-to-point test",
    minutes: 15,
    particulars: { ...particulars },
    cautions: [
      ...ELECTRICAL_CAUTIONS,
      "Isolate, lock off and prove dead before anything is opened; one person holds the key.",
    ],
    values: {
      joints: JOINTS,
      r_per_m: {
        title: "Resistance of a fixed conductor per metre",
        unit: "Ohm/m",
        table: {
          policy: "unique",
          inputs: ["asset.csa"],
          rules: [
            row([1], 0.0181, CLASS_2),
            row([1.5], 0.0121, CLASS_2),
            row([2.5], 0.00741, CLASS_2),
            row([4], 0.00461, CLASS_2),
            row([6], 0.00308, CLASS_2),
          ],
        },
      },
    },
    groups: [
      {
        id: "look",
        title: "Look",
        points: ["enclosure", "connection", "fixing", "isolator"],
        groupAnswer: true,
      },
      { id: "isolating", title: "Isolate", points: ["isolated"] },
      { id: "dead_tests", title: "Tests, isolated", points: ["point_to_point", "insulation"] },
      { id: "back_on", title: "Supply back on", points: ["works"] },
    ],
    properties: {
      enclosure: sound("Case whole, covers on, no scorching?", COMMON_PRACTICE),
      connection: sound("Flex outlet or spur whole, cable held, no heat marks?", COMMON_PRACTICE),
      fixing: sound("Fixed firmly, air can pass where it must?", COMMON_PRACTICE, {
        grade: byDate("P28D"),
      }),
      isolator: sound("Isolator beside it, marked with what it isolates?", COMMON_PRACTICE, {
        grade: byDate("P28D"),
      }),
      isolated: sound(
        "Isolated, locked off and proved dead?",
        "HSE HSG85: isolate, secure and prove dead before work",
      ),
      point_to_point: measured(
        "Resistance from its metal to the reference earth",
        { unit: "Ohm", alsoIn: ["mOhm"], decimals: 3, plausible: { min: 0, max: 20 } },
        [
          {
            max: "joints + asset.earth_path * r_per_m",
            basis: "0.1 Ohm plus the fixed conductor, IEC 60228 class 2 at 20 °C",
          },
        ],
        {
          description: "Null the test leads first; the reference is the earth of a known socket.",
          ask: must({ absentAllowed: ["not-measurable"] }),
        },
      ),
      insulation: insulation(
        [
          {
            min: 0.3,
            when: "asset.heating && asset.rated_power < 3.0",
            basis: "Heating below 3 kW: 0.3 MOhm, training pages on in-service testing",
          },
          {
            min: 1,
            when: "!asset.heating || asset.rated_power >= 3.0",
            basis: "Class I: 1 MOhm, training pages on in-service testing",
          },
        ],
        "!asset.surge_protected",
      ),
      works: WORKS,
    },
    stops: [
      {
        after: ["enclosure", "connection"],
        on: ["fail"],
        groups: ["dead_tests", "back_on"],
        say: "Damage stops the test. Leave it isolated, mark it and report it.",
      },
      {
        after: ["isolated"],
        on: ["fail"],
        groups: ["dead_tests", "back_on"],
        say: "What is not proved dead is not tested. Stop and call a qualified person.",
      },
      {
        after: ["point_to_point", "insulation"],
        on: ["fail"],
        groups: ["back_on"],
        say: "It is not switched on again. Leave it isolated, mark it and report it.",
      },
    ],
  }),
  interval: {
    title: "Fixed appliance: combined inspection and test",
    rule: { kind: "from-last-done", every: "P2Y", early: "P2M", late: "P1M" },
    basis: "Common practice, no source: between the portable appliances and the fixed installation",
  },
  note: "For appliances without a plug: isolate, then earth from the metal to a known earth.",
};
