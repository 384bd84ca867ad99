import type { ParticularDefinitions } from "../checklist/meta-schema.ts";
import {
  csa,
  DAMAGE_STOPS,
  ELECTRICAL_CAUTIONS,
  FUSE,
  FUSE_VALUES,
  FUSED_PLUG,
  INSULATION_VOLTAGE,
  insulation,
  LOOK_NAMES,
  LOOK_POINTS,
  RATED_POWER,
  SURGE_PROTECTED,
  WORKS,
} from "./electrical-parts.ts";
import { draft, measured, must, type Starter, sound } from "./starter.ts";

const particulars: ParticularDefinitions = {
  rated_power: RATED_POWER,
  csa: csa("Conductor cross-section of its lead"),
  fused_plug: FUSED_PLUG,
  surge_protected: SURGE_PROTECTED,
};

export const PORTABLE_CLASS_2: Starter = {
  key: "portable-class-2",
  title: "Portable appliance, Class II",
  assetType: { name: "portable_class_2", title: "Portable appliance, Class II", particulars },
  checklist: draft({
    title: "Portable appliance, Class II: inspection and test",
    minutes: 6,
    particulars: { ...particulars },
    cautions: [
      ...ELECTRICAL_CAUTIONS,
      "Class II only where the mark of a square within a square is on it; otherwise test it as Class I.",
    ],
    values: { ...FUSE_VALUES },
    groups: [
      {
        id: "look",
        title: "Look, unplugged",
        points: [...LOOK_NAMES, "double_square"],
        groupAnswer: true,
      },
      { id: "fusing", title: "Fuse", points: ["fuse"] },
      {
        id: "dead_tests",
        title: "Tests, not switched on",
        points: ["insulation_voltage", "insulation"],
      },
      { id: "live_tests", title: "Tests, switched on", points: ["touch_current", "works"] },
    ],
    properties: {
      ...LOOK_POINTS,
      double_square: sound(
        "Mark of a square within a square on it?",
        "IEC 61140, mark of Class II",
      ),
      fuse: FUSE,
      insulation_voltage: INSULATION_VOLTAGE,
      insulation: insulation(
        [
          {
            min: 2,
            basis: "Class II: 2 MOhm, training pages on in-service testing and EN 50699",
          },
        ],
        "answers.insulation_voltage != 'none'",
      ),
      touch_current: measured(
        "Touch current",
        { unit: "mA", alsoIn: ["uA"], decimals: 2, plausible: { min: 0, max: 20 } },
        [{ max: 0.25, basis: "Class II: 0.25 mA, trade pages on in-service testing" }],
        { ask: must({ absentAllowed: ["not-measurable"] }) },
      ),
      works: WORKS,
    },
    stops: [
      {
        after: [...LOOK_NAMES.filter((name) => name !== "marks"), "double_square"],
        on: ["fail"],
        groups: ["dead_tests", "live_tests"],
        say: DAMAGE_STOPS,
      },
      {
        after: ["insulation"],
        on: ["fail"],
        groups: ["live_tests"],
        say: "Its insulation failed: do not switch it on. Mark it, take it out of use and report it.",
      },
    ],
  }),
  interval: {
    title: "Combined inspection and test, Class II",
    rule: { kind: "from-last-done", every: "P2Y", early: "P2M", late: "P1M" },
    basis:
      "HSE INDG236 asks for no test of double-insulated hand-held equipment in low-risk places, a look every 6 to 12 months; the test here is common practice",
  },
  note: "Look, insulation and touch current of a double-insulated appliance.",
};
