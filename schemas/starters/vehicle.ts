import type { ParticularDefinitions } from "../checklist/meta-schema.ts";
import {
  byDate,
  COMMON_PRACTICE,
  DANGER,
  draft,
  measured,
  must,
  row,
  type Starter,
  sound,
} from "./starter.ts";

const particulars: ParticularDefinitions = {
  class: {
    title: "Class",
    enum: ["car", "van up to 3500 kg", "larger goods vehicle", "bus", "motorcycle"],
  },
  wheels: { title: "Wheels on the road", type: "integer", minimum: 2, maximum: 20 },
  section_width: {
    title: "Section width of the tyres",
    type: "number",
    unit: "mm",
    minimum: 80,
    maximum: 600,
  },
  tows: { title: "Tows", type: "boolean" },
};

const TREAD = "askthe.police.uk, tread table";
const CUT = "askthe.police.uk: 25 mm or 10 % of the section width, whichever is greater";
const BELTED = "asset.class != 'motorcycle'";

export const VEHICLE: Starter = {
  key: "vehicle",
  title: "Vehicle walk-round",
  assetType: { name: "vehicle", title: "Vehicle", particulars },
  checklist: draft({
    title: "Vehicle: walk-round check",
    minutes: 10,
    particulars: { ...particulars },
    cautions: [
      "Engine off, brake on, key out, wheels chocked before you bend to them.",
      "Never under a raised body or a vehicle on a jack.",
      "Stand clear of traffic. With a danger found it is not driven.",
    ],
    values: {
      least_tread: {
        title: "Least tread",
        unit: "mm",
        table: {
          policy: "unique",
          inputs: ["asset.class"],
          rules: [
            row([["car", "van up to 3500 kg"]], 1.6, TREAD),
            row([["larger goods vehicle", "bus"]], 1, TREAD),
            row(["motorcycle"], 1, TREAD),
          ],
        },
      },
      short_cut: { title: "A cut of this length", unit: "mm", const: 25, basis: CUT },
      longest_cut: {
        title: "Longest cut",
        unit: "mm",
        formula: "max(short_cut, 0.1 * asset.section_width)",
      },
    },
    groups: [
      {
        id: "round_it",
        title: "Round it",
        points: ["still", "lights", "glass", "mirrors", "leaks", "body", "load", "coupling"],
      },
      {
        id: "at_the_wheel",
        title: "At the wheel",
        points: ["brakes", "steering", "horn", "belts", "lamps"],
      },
      {
        id: "wheel",
        title: "Wheels",
        points: ["tread", "cut", "tyre", "nuts"],
        repeat: { each: "Wheel", count: "asset.wheels", atMost: 20 },
      },
    ],
    properties: {
      still: sound("Engine off, brake on, cannot roll?", COMMON_PRACTICE),
      lights: sound("All lights, indicators and reflectors work and are clean?", COMMON_PRACTICE),
      glass: sound("Windscreen clear; wipers and washers work?", COMMON_PRACTICE, {
        ask: must({ absentAllowed: ["not-applicable"] }),
      }),
      mirrors: sound("Mirrors whole and set?", COMMON_PRACTICE, { grade: byDate("P1D") }),
      leaks: sound("No oil, fuel or water under it?", COMMON_PRACTICE),
      body: sound("Body, plates and steps whole and fast?", COMMON_PRACTICE, {
        grade: byDate("P7D"),
      }),
      load: sound("Load secured and within its limits?", COMMON_PRACTICE, {
        ask: must({ absentAllowed: ["not-applicable"] }),
      }),
      coupling: sound("Coupling locked, cable and lines connected?", COMMON_PRACTICE, {
        ask: must({ when: "asset.tows", absentAllowed: ["not-applicable"] }),
      }),
      brakes: sound("Brake firm, and holds; parking brake holds?", COMMON_PRACTICE),
      steering: sound("Steering without play or noise?", COMMON_PRACTICE),
      horn: sound("Horn sounds?", COMMON_PRACTICE, { grade: byDate("P1D") }),
      belts: sound("Seat belts whole, and latch?", COMMON_PRACTICE, {
        ask: must({ when: BELTED }),
      }),
      lamps: sound("No warning lamp stays lit?", COMMON_PRACTICE, { grade: byDate("P1D") }),
      tread: {
        title: "Tread, at three places across",
        $ref: "#/$defs/readings",
        quantity: { unit: "mm", decimals: 1, plausible: { min: 0, max: 30 } },
        several: { count: 3, combine: "lowest" },
        limits: [{ min: "least_tread", basis: TREAD }],
        grade: DANGER,
        ask: must(),
      },
      cut: measured(
        "Longest cut, 0 where there is none",
        { unit: "mm", decimals: 0, plausible: { min: 0, max: 200 } },
        [{ max: "longest_cut", basis: CUT }],
      ),
      tyre: sound(
        "No bulge, cord showing or object in it; looks rightly inflated?",
        COMMON_PRACTICE,
      ),
      nuts: sound("Wheel nuts all there and tight, by their marks?", COMMON_PRACTICE),
    },
    stops: [
      {
        after: ["still"],
        on: ["fail"],
        groups: ["wheel"],
        say: "It can roll: do not go to the wheels until it cannot.",
      },
    ],
  }),
  interval: {
    title: "Vehicle, walk-round",
    rule: { kind: "from-last-done", every: "P1D" },
    basis: `On each day of use. ${COMMON_PRACTICE}`,
  },
  note: "Round it, at the wheel, then wheel by wheel: tread by class of vehicle, cuts, nuts.",
};
