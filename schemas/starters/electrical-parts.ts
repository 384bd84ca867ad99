import type {
  ParticularDefinition,
  PointDefinition,
  ValueDefinition,
} from "../checklist/meta-schema.ts";
import { byDate, COMMON_PRACTICE, measured, must, OBSERVATION, row, sound } from "./starter.ts";

export const ELECTRICAL_CAUTIONS = [
  "Disconnect it and look first. Damage stops the test: nothing damaged is plugged in, not even to try it.",
  "No insulation test on electronic, surge-protected, medical or data equipment unless its maker and the competent person agree.",
  "Let it discharge after an insulation test before anybody touches it.",
  "Opened enclosures, fixed wiring and live work belong to qualified people.",
];

export const DAMAGE_STOPS =
  "Damage stops the test. Do not plug it in: mark it, take it out of use and report it.";
export const EARTH_STOPS =
  "Without its earth and the right polarity it is not switched on. Mark it, take it out of use and report it.";

/** Conductors of flexible leads: the sizes of IEC 60228 that leads are made of. */
export const csa = (title: string): ParticularDefinition => ({
  title,
  type: "number",
  unit: "mm2",
  enum: [0.5, 0.75, 1, 1.5, 2.5, 4],
});
export const RATED_POWER: ParticularDefinition = {
  title: "Rated power",
  type: "number",
  unit: "kW",
  minimum: 0.001,
  maximum: 15,
};
export const FUSED_PLUG: ParticularDefinition = { title: "Plug with a fuse", type: "boolean" };
export const SURGE_PROTECTED: ParticularDefinition = {
  title: "Electronic or surge-protected",
  type: "boolean",
};

const CLASS_5 = "IEC 60228 class 5, plain copper, largest resistance at 20 °C";
/** `asset.csa` in mm². A size between two of the standard has no row: nothing is interpolated. */
export const FLEXIBLE_CONDUCTOR: ValueDefinition = {
  title: "Resistance of a flexible conductor per metre",
  unit: "Ohm/m",
  table: {
    policy: "unique",
    inputs: ["asset.csa"],
    rules: [
      row([0.5], 0.039, CLASS_5),
      row([0.75], 0.026, CLASS_5),
      row([1], 0.0195, CLASS_5),
      row([1.5], 0.0133, CLASS_5),
      row([2.5], 0.00798, CLASS_5),
      row([4], 0.00495, CLASS_5),
    ],
  },
};
export const JOINTS: ValueDefinition = {
  title: "Allowance for joints and contacts",
  unit: "Ohm",
  const: 0.1,
  basis: "0.1 Ohm plus the lead, as training in in-service testing teaches it",
};

export const FUSE_VALUES: Readonly<Record<string, ValueDefinition>> = {
  fuse_for_load: {
    title: "Largest fuse for the load",
    unit: "A",
    table: {
      policy: "unique",
      inputs: ["asset.rated_power"],
      rules: [row([{ max: 0.7 }], 3), row([{ exclusiveMin: 0.7 }], 13)],
    },
  },
  fuse_for_flex: {
    title: "Current the flex carries",
    unit: "A",
    table: {
      policy: "unique",
      inputs: ["asset.csa"],
      rules: [
        row([0.5], 3),
        row([0.75], 6),
        row([1], 10),
        row([1.5], 16),
        row([2.5], 25),
        row([4], 32),
      ],
    },
  },
};

export const FUSE: PointDefinition = measured(
  "Fuse in the plug, as marked on it",
  { unit: "A", decimals: 0, plausible: { min: 1, max: 13 } },
  [
    { max: "fuse_for_load", basis: "BS 1362 fuses: 3 A up to 700 W, 13 A above" },
    {
      max: "fuse_for_flex",
      severity: "advisory",
      basis: "Current-carrying capacity of the flex, BS 7671 table 4F3A; ask what the maker says",
    },
  ],
  {
    description: "Open the plug, or read the carrier. A fuse that was bridged fails the plug.",
    ask: must({ when: "asset.fused_plug" }),
  },
);

const LOOK = "HSE INDG236: most faults are found by looking";
export const LOOK_POINTS: Readonly<Record<string, PointDefinition>> = {
  enclosure: sound("Case whole, no cracks, scorching or open slots?", LOOK),
  flex: sound("Flex whole along its length, no cuts, joints or taped repairs?", LOOK),
  plug: sound("Plug whole, pins straight, cord grip holds the sheath?", LOOK),
  suited: sound("Right for this place: wet, dust, outdoors?", LOOK, { grade: byDate("P7D") }),
  marks: sound("Rating plate and number can be read?", COMMON_PRACTICE, { grade: OBSERVATION }),
};
export const LOOK_NAMES = Object.keys(LOOK_POINTS);

/** Which voltage the insulation was tested with: half of it where surge protection would be hurt. */
export const INSULATION_VOLTAGE: PointDefinition = {
  title: "Voltage of the insulation test",
  $ref: "#/$defs/choice",
  oneOf: [
    { const: "500", title: "500 V" },
    { const: "250", title: "250 V: electronic or surge-protected" },
    { const: "none", title: "Not tested: only the current is measured" },
  ],
  limits: [
    {
      accept: ["500"],
      when: "!asset.surge_protected",
      basis: "500 V DC, training pages on in-service testing",
    },
    {
      accept: ["250", "none"],
      when: "asset.surge_protected",
      severity: "advisory",
      basis:
        "250 V where surge protection would be hurt, or only the current: common practice, no source",
    },
  ],
  grade: OBSERVATION,
  ask: must({ evidence: [] }),
};

/** Megohms; the reading is often all the instrument can say: `>200`. */
export const insulation = (
  limits: NonNullable<PointDefinition["limits"]>,
  when?: string,
): PointDefinition =>
  measured(
    "Insulation resistance",
    { unit: "MOhm", alsoIn: ["kOhm", "GOhm"], decimals: 2, plausible: { min: 0, max: 10_000 } },
    limits,
    { ask: must({ ...(when === undefined ? {} : { when }), absentAllowed: ["not-measurable"] }) },
  );

export const POLARITY = sound(
  "Polarity: live, neutral and earth each straight through?",
  COMMON_PRACTICE,
  { ask: must({ absentAllowed: ["not-applicable", "not-measurable"] }) },
);

export const WORKS = sound("Switched on, does it work as it should?", COMMON_PRACTICE, {
  grade: byDate("P28D"),
});
