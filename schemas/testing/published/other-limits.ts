import type { PointDefinition } from "../../checklist/meta-schema.ts";
import { row } from "../../judge/testing/checklists.ts";
import {
  type CheckedFact,
  constant,
  dueFact,
  every,
  INTERVALS,
  type JudgedCheck,
  judgedFact,
  notOurFact,
  origin,
  range,
  readingPoint,
} from "./checked-fact.ts";

const racking = (marker: "S" | "M", year: number | null, section: string | null) =>
  origin("EN 15635 / FEM figures, trade pages", marker, year, section);
const RACKING_JUDGED = racking("S", null, null);
const EYEWASH = origin("ANSI/ISEA Z358.1 extracts", "S", 2009, "4-7");
const PLAYGROUND = origin("EN 1176-1/-7, EN 1177", "M", 2018);
const FIRST_AID = origin("BS 8599-1:2019", "M", 2019);

const mm = (value: number) => ({ value, unit: "mm" });
const cel = (value: number) => ({ value, unit: "Cel" });

/** Green up to the limit, amber up to twice the limit, red above; pro rata of a metre. */
export const bent = (
  member: "depth" | "face" | "bracing",
  length: number,
  bound: number,
  cases: JudgedCheck["cases"],
): JudgedCheck => ({
  says: "Gap under a straight-edge of a metre: over the limit amber, over twice the limit red",
  parts: {
    particulars: {
      member: { title: "Member", enum: ["depth", "face", "bracing"] },
      length: { title: "Length", type: "number", unit: "mm" },
    },
    values: {
      per_metre: {
        unit: "mm/m",
        table: {
          policy: "unique",
          inputs: ["asset.member"],
          rules: [row(["depth"], 3), row(["face"], 5), row(["bracing"], 10)],
        },
      },
      metres: { unit: "m", formula: "asset.length" },
      allowed: { unit: "mm", formula: "per_metre * metres" },
    },
  },
  point: readingPoint("mm", [
    { max: "allowed", severity: "advisory", basis: "EN 15635, green" },
    { max: "2.0 * allowed", basis: "EN 15635, amber" },
  ]),
  asset: { member, length },
  bound,
  cases,
});

/** A probe that may not go in, or another that then has to. */
const probes = (smaller: string, larger: string): readonly JudgedCheck[] => {
  const probe = (title: string, limits?: PointDefinition["limits"]): PointDefinition => ({
    $ref: "#/$defs/choice",
    title,
    oneOf: [
      { const: "enters", title: "Goes in" },
      { const: "no", title: "Does not go in" },
    ],
    ...(limits ? { limits } : {}),
  });
  return [
    {
      says: "An opening that lets the smaller probe in has to let the larger one in",
      parts: { properties: { smaller: probe(smaller) } },
      point: {
        ...probe(larger, [{ accept: ["enters"], basis: "EN 1176-1" }]),
        ask: { when: "answers.smaller == 'enters'" },
      },
      answers: { smaller: "enters" },
      cases: [
        ["enters", "pass"],
        ["no", "fail"],
      ],
    },
  ];
};

/** The kit that goes with a number of people at work. */
const kit = (employees: number, fits: "small" | "medium"): JudgedCheck => ({
  says: "Size of the first-aid kit by number of people",
  parts: { particulars: { people: { title: "People", type: "integer" } } },
  point: {
    $ref: "#/$defs/choice",
    title: "Kit",
    oneOf: [
      { const: "small", title: "Small" },
      { const: "medium", title: "Medium" },
    ],
    limits: [
      { accept: ["small", "medium"], when: "asset.people < 25.0", basis: "BS 8599-1" },
      { accept: ["medium"], when: "asset.people >= 25.0", basis: "BS 8599-1" },
    ],
  },
  asset: { people: employees },
  cases: [
    ["medium", "pass"],
    ["small", fits === "small" ? "pass" : "fail"],
  ],
});

const EXPIRY: JudgedCheck = {
  says: "Contents are in date",
  point: {
    $ref: "#/$defs/date",
    title: "Earliest date in the kit",
    limits: [{ notBefore: { from: "today" }, basis: "HSE L74" }],
  },
  on: "2026-11-25",
  cases: [
    ["2026-11-26", "pass"],
    ["2026-11-25", "pass"],
    ["2026-11-24", "fail"],
  ],
};

const FAHRENHEIT = range("Tepid water", [60, 100], "[degF]", 0.1, [[cel(15.6), "pass"]]);
const AS_PRINTED = range("Tepid water as printed in °C", [16, 38], "Cel", 0.1, [
  [cel(15.6), "fail"],
  [{ value: 60, unit: "[degF]" }, "fail"],
]);

export const OTHER_LIMITS: readonly CheckedFact[] = [
  judgedFact(
    "ot-066",
    racking("M", 2003, "damage measurement"),
    bent("face", 1000, 5, [
      [mm(4.9), "pass"],
      [mm(5), "pass"],
      [mm(5.1), "advisory"],
    ]),
  ),
  judgedFact(
    "ot-068",
    RACKING_JUDGED,
    bent("depth", 1000, 3, [
      [mm(3), "pass"],
      [mm(6), "advisory"],
      [mm(6.1), "fail"],
    ]),
  ),
  // An amber result that turns red by itself hangs on the day it is looked at.
  notOurFact("ot-069", origin("EN 15635, trade pages", "R"), INTERVALS),
  judgedFact(
    "ot-070",
    racking("S", 2003, null),
    bent("bracing", 500, 5, [
      [mm(5), "pass"],
      [mm(5.1), "advisory"],
    ]),
  ),
  judgedFact("ot-072", RACKING_JUDGED, bent("depth", 1000, 3, [[mm(3.1), "advisory"]])),
  judgedFact("ot-075", RACKING_JUDGED, bent("face", 1000, 5, [[mm(5.1), "advisory"]])),
  judgedFact("ot-076", RACKING_JUDGED, bent("face", 1000, 5, [[mm(10.1), "fail"]])),
  judgedFact("ot-077", RACKING_JUDGED, bent("bracing", 1000, 10, [[mm(10), "pass"]])),
  judgedFact("ot-078", RACKING_JUDGED, bent("bracing", 1000, 10, [[mm(20.5), "fail"]])),
  dueFact("ot-080", EYEWASH, every("P1W", "2026-12-28", "2027-01-04")),
  dueFact("ot-081", EYEWASH, every("P1Y", "2026-01-31", "2027-01-31")),
  {
    ...judgedFact(
      "ot-082",
      EYEWASH,
      constant("Flow of an eyewash", "min", 0.4, "[gal_us]/min", 0.01, [
        [{ value: 1.52, unit: "L/min" }, "pass"],
        [{ value: 1.51, unit: "L/min" }, "fail"],
      ]),
      constant("The same as printed in litres", "min", 1.5, "L/min", 0.1),
    ),
    // 0.4 gal/min is 1.514 L/min: the printed 1.5 is rounded.
    converts: [{ from: [0.4, "[gal_us]/min"], to: [1.5, "L/min"], within: 0.05 }],
  },
  judgedFact("ot-084", EYEWASH, FAHRENHEIT),
  judgedFact("ot-085", EYEWASH, AS_PRINTED),
  {
    ...judgedFact("ot-087", EYEWASH, range("Height of the nozzles", [83.8, 114.3], "cm", 0.1)),
    converts: [
      { from: [33, "[in_i]"], to: [83.8, "cm"], within: 0.05 },
      { from: [45, "[in_i]"], to: [114.3, "cm"] },
    ],
  },
  {
    ...judgedFact("ot-088", EYEWASH, range("Height of the shower", [208.3, 243.8], "cm", 0.1)),
    converts: [
      { from: [82, "[in_i]"], to: [208.3, "cm"], within: 0.05 },
      { from: [96, "[in_i]"], to: [243.8, "cm"], within: 0.05 },
    ],
  },
  judgedFact(
    "ot-089",
    origin("ANSI/ISEA Z358.1", "M", 2014),
    constant("How long it flushes", "min", 15, "min", 0.1, [
      [{ value: 900, unit: "s" }, "pass"],
      [{ value: 899, unit: "s" }, "fail"],
    ]),
  ),
  {
    // The range as rounded in °C refuses what the range in °F allows.
    ...judgedFact("ot-090", origin("arithmetic", "R"), FAHRENHEIT, AS_PRINTED),
    converts: [
      { from: [60, "[degF]"], to: [15.5556, "Cel"], within: 0.0001 },
      { from: [100, "[degF]"], to: [37.7778, "Cel"], within: 0.0001 },
    ],
  },
  dueFact("ot-092", PLAYGROUND, {
    rule: { kind: "from-last-done", every: "P3M", early: "P2M" },
    done: "2026-01-31",
    due: "2026-04-30",
    earliest: "2026-02-28",
  }),
  dueFact("ot-093", PLAYGROUND, every("P1Y", "2026-01-31", "2027-01-31")),
  judgedFact("ot-094", PLAYGROUND, ...probes("Probe C, 89 × 157 mm", "Probe D, 230 mm")),
  judgedFact("ot-095", PLAYGROUND, ...probes("Rod of 8 mm", "Rod of 25 mm")),
  judgedFact("ot-096", PLAYGROUND, constant("Free height of fall", "max", 3, "m", 0.01)),
  judgedFact("ot-097", PLAYGROUND, constant("Head injury criterion", "max", 1000, "1", 1)),
  judgedFact("ot-098", FIRST_AID, kit(24, "small")),
  judgedFact("ot-099", FIRST_AID, kit(25, "medium")),
  judgedFact("ot-101", origin("HSE L74", "M"), EXPIRY),
];
