import type { Answer } from "../../checklist/answer-types.ts";
import { row } from "../../judge/testing/checklists.ts";
import {
  type CheckedFact,
  constant,
  dueFact,
  every,
  type JudgedCheck,
  judgedFact,
  looked,
  notOurFact,
  origin,
  range,
  readingPoint,
} from "./checked-fact.ts";

const GUIDANCE = "Home Office fire door guidance, Fire Safety (England) Regulations 2022";
const REGULATION_10 = origin(GUIDANCE, "S", 2022, "reg 10; 6.1");
const BS_8214 = origin("BS 8214:2016, trade pages", "S", 2016, "BS 8214 12.3");
const BS_8214_JUDGED = origin("BS 8214:2016, trade pages", "S");
const nfpa = (section: string | null, year: number | null = 2019) =>
  origin("NFPA 80, explained on trade pages", "S", year, section);

const mm = (value: number) => ({ value, unit: "mm" });
const inch = (value: number) => ({ value, unit: "[in_i]" });

export const SIDE_GAP = range("Gap at head and sides, both ends allowed", [2, 4], "mm", 0.1, [
  [{ value: 0.4, unit: "cm" }, "pass"],
  [{ value: 0.41, unit: "cm" }, "fail"],
]);

const sideGap = (gap: number, verdict: "pass" | "fail"): JudgedCheck => ({
  ...SIDE_GAP,
  cases: [[mm(gap), verdict]],
});

/** Gap under the leaf: it hangs on cold-smoke protection and on a flexible seal at the foot. */
export const underTheLeaf = (
  smoke: boolean,
  seal: boolean,
  bound: number,
  cases: JudgedCheck["cases"],
): JudgedCheck => ({
  says: "Gap at the threshold by kind of door",
  parts: {
    particulars: {
      smoke: { title: "Keeps out cold smoke", type: "boolean" },
      seal: { title: "Flexible seal at the foot", type: "boolean" },
    },
    values: {
      threshold: {
        unit: "mm",
        table: {
          policy: "unique",
          inputs: ["asset.smoke", "asset.seal"],
          rules: [row([true, false], 3), row([true, true], 10), row([false, { any: true }], 10)],
        },
      },
    },
  },
  point: readingPoint("mm", [{ max: "threshold", basis: "BS 8214" }]),
  asset: { smoke, seal },
  bound,
  cases,
});

const upTo = (bound: number): JudgedCheck["cases"] => [
  [mm(bound - 0.1), "pass"],
  [mm(bound), "pass"],
  [mm(bound + 0.1), "fail"],
];

/** A nominal gap and its tolerance, in inches and measured in millimetres. */
const nominal = (says: string, cases: JudgedCheck["cases"]): JudgedCheck => ({
  says,
  parts: {
    values: {
      nominal: { unit: "[in_i]", const: 0.125 },
      tolerance: { unit: "[in_i]", const: 0.0625 },
    },
  },
  point: readingPoint("[in_i]", [
    { min: "nominal - tolerance", max: "nominal + tolerance", basis: "NFPA 80" },
  ]),
  cases,
});

const STEEL: JudgedCheck["cases"] = [
  [mm(1.58), "fail"],
  [mm(1.5875), "pass"],
  [inch(0.0625), "pass"],
  [inch(0.1875), "pass"],
  [mm(4.7625), "pass"],
  [mm(4.77), "fail"],
];

/** Twenty-minute wood in a metal frame: the edition that holds is a particular of the door. */
export const byEdition = (edition: number, cases: JudgedCheck["cases"]): JudgedCheck => ({
  says: "Largest gap of a wood door by edition of the standard",
  parts: {
    particulars: { edition: { title: "Edition", type: "number" } },
    values: {
      largest: {
        unit: "[in_i]",
        table: {
          policy: "unique",
          inputs: ["asset.edition"],
          rules: [row([{ exclusiveMax: 2016 }], 0.125), row([{ min: 2016 }], 0.1875)],
        },
      },
    },
  },
  point: readingPoint("[in_i]", [{ max: "largest", basis: "NFPA 80, 6.3.1.7" }]),
  asset: { edition },
  cases,
});

const NO_ACCESS: Answer = { absent: { reason: "no-access" } };

export const FIRE_DOORS: readonly CheckedFact[] = [
  {
    ...dueFact("fd-001", REGULATION_10, every("P3M", "2026-01-31", "2026-04-30")),
    // The rule is for buildings whose top storey is more than 11 m up.
    judged: [11.01, 11].map((top_storey) => ({
      ...looked("Checked where the top storey is above 11 m"),
      parts: { particulars: { top_storey: { title: "Top storey", type: "number", unit: "m" } } },
      point: {
        ...looked("Checked where the top storey is above 11 m").point,
        ask: { when: "asset.top_storey > 11.0" },
      },
      asset: { top_storey },
      cases: [["not-ok", top_storey > 11 ? "fail" : null] as const],
    })),
  },
  {
    ...dueFact("fd-002", REGULATION_10, every("P12M", "2026-01-31", "2027-01-31")),
    // Best endeavours: an attempt without access is on record and is no fault of the door.
    judged: [
      {
        ...looked("An attempt without access"),
        point: { ...looked("Door").point, ask: { absentAllowed: ["no-access"] } },
        cases: [
          [NO_ACCESS, "not-counted"],
          ["not-ok", "fail"],
        ],
      },
    ],
  },
  judgedFact(
    "fd-005",
    origin(GUIDANCE, "S", 2022, "how to check"),
    looked("Let go fully open, it closes into the frame and latches"),
    looked("Let go at about 15 degrees, it closes into the frame and latches"),
  ),
  judgedFact(
    "fd-006",
    origin("common inspection practice", "C"),
    looked("Let go 75 mm ajar, it closes into the frame and latches"),
  ),
  notOurFact(
    "fd-007",
    origin("2*L*sin(7.5 deg)", "C"),
    "trigonometry of the trade: formulas have no sine, and no limit rests on it",
  ),
  judgedFact("fd-008", BS_8214, SIDE_GAP),
  judgedFact("fd-009", BS_8214, underTheLeaf(true, false, 3, upTo(3))),
  judgedFact("fd-010", BS_8214, underTheLeaf(true, true, 10, upTo(10))),
  judgedFact(
    "fd-011",
    BS_8214,
    underTheLeaf(false, false, 10, upTo(10)),
    range("Gap at the threshold by the certificate", [6, 10], "mm", 0.1),
  ),
  judgedFact("fd-012", BS_8214_JUDGED, sideGap(1.9, "fail")),
  judgedFact("fd-013", BS_8214_JUDGED, sideGap(2, "pass")),
  judgedFact("fd-014", BS_8214_JUDGED, sideGap(3, "pass")),
  judgedFact("fd-015", BS_8214_JUDGED, sideGap(4, "pass")),
  judgedFact("fd-017", BS_8214_JUDGED, underTheLeaf(true, false, 3, [[mm(3), "pass"]])),
  judgedFact("fd-018", BS_8214_JUDGED, underTheLeaf(true, false, 3, [[mm(3.5), "fail"]])),
  judgedFact("fd-019", BS_8214_JUDGED, underTheLeaf(true, true, 10, [[mm(8), "pass"]])),
  judgedFact("fd-020", BS_8214_JUDGED, underTheLeaf(false, false, 10, [[mm(10), "pass"]])),
  judgedFact("fd-021", BS_8214_JUDGED, underTheLeaf(false, false, 10, [[mm(12), "fail"]])),
  judgedFact(
    "fd-023",
    nfpa("4.8.4"),
    constant("Gap under a door more than 38 in above the floor", "max", 0.375, "[in_i]", 0.001, [
      [mm(9.525), "pass"],
      [mm(9.53), "fail"],
    ]),
  ),
  judgedFact("fd-024", nfpa("6.3.1.7"), nominal("Clearance of a steel door", STEEL)),
  judgedFact(
    "fd-026",
    nfpa("6.3.1.7", 2016),
    nominal("Twenty-minute wood or laminate in a metal frame", STEEL),
    byEdition(2016, [
      [inch(0.1875), "pass"],
      [mm(4.7625), "pass"],
      [mm(4.77), "fail"],
    ]),
    byEdition(2013, [
      [inch(0.125), "pass"],
      [mm(3.175), "pass"],
      [inch(0.1875), "fail"],
    ]),
  ),
  judgedFact("fd-028", nfpa(null, null), nominal("Steel door", [[mm(4.77), "fail"]])),
  dueFact("fd-029", nfpa("5.2"), every("P1Y", "2026-01-31", "2027-01-31")),
  notOurFact(
    "fd-030",
    origin("NFPA 80 5.2.3.5.2 (13 items since 2013; 11 in 2007/2010)", "M", 2013),
    "how many things a standard lists: a fact about the standard, no limit on a door",
  ),
  dueFact(
    "fd-033",
    origin("Fire Safety (England) Regulations 2022, summary", "S", 2022, "reg 9"),
    every("P12M", "2026-01-31", "2027-01-31"),
  ),
];
