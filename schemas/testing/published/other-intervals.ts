import {
  type CheckedFact,
  type DueCheck,
  dueFact,
  every,
  INTERVALS,
  type JudgedCheck,
  judgedFact,
  notOurFact,
  origin,
  readingPoint,
} from "./checked-fact.ts";
import type { Origin } from "./fact.ts";

const BS_5306 = origin("BS 5306-3 summaries", "S", 2009, "maintenance overview");
const NFPA_10 = origin("NFPA 10", "M", 2018, "7");
const EN_50172 = origin("Emergency lighting BS EN 50172 / BS 5266-8", "S", 2004, "routine tests");
const HEIGHT = "Work at Height Regulations 2005 reg 12";
const REG_12 = origin(HEIGHT, "S", 2005, "reg 12");
const REG_12_4 = origin(HEIGHT, "S", 2005, "reg 12(4)");
const LOLER = origin("LOLER 1998 reg 9(3)", "M", 1998, "9(3)(a)");
const STATUTES = origin("COSHH 2002 / Electrical Safety Standards (PRS) 2020 / CAR 2012", "M");
const COSHH = origin("COSHH reg 9(2)", "M", 2002);
const gas = (marker: "S" | "C", year: number | null, section: string | null) =>
  origin(
    "Gas Safety (Installation and Use) Regulations reg 36A (2018 amendment)",
    marker,
    year,
    section,
  );
const GAS = gas("S", 2018, "36A(1)");

/** From 28 February 2026, the day the published nested schedule begins with. */
const AFTER_FEBRUARY: Readonly<Record<string, string>> = {
  P1D: "2026-03-01",
  P1W: "2026-03-07",
  P1M: "2026-03-28",
  P3M: "2026-05-28",
  P6M: "2026-08-28",
  P12M: "2027-02-28",
  P1Y: "2027-02-28",
  P14M: "2027-04-28",
  P3Y: "2029-02-28",
  P5Y: "2031-02-28",
  P6Y: "2032-02-28",
  P12Y: "2038-02-28",
  P20Y: "2046-02-28",
};
const from28February = (duration: string): DueCheck =>
  every(duration, "2026-02-28", AFTER_FEBRUARY[duration] ?? "");
const interval = (id: string, at: Origin, ...durations: string[]): CheckedFact =>
  dueFact(id, at, ...durations.map(from28February));

/** How many days after an inspection a platform may still be used. */
export const usableFor = (days: string, last: string, blocked: string): JudgedCheck => ({
  says: "Used only when inspected within the seven days before",
  parts: {
    particulars: { inspected: { title: "Inspected", type: "string", format: "date" } },
  },
  point: {
    $ref: "#/$defs/date",
    title: "Day of use",
    limits: [{ notAfter: { from: "asset.inspected", plus: days }, basis: "reg 12(4)" }],
  },
  asset: { inspected: "2026-03-02" },
  cases: [
    [last, "pass"],
    [blocked, "fail"],
  ],
});

const windowOpens = (deadline: string, opens: string, before: string): JudgedCheck => ({
  says: "A check in the two months before the deadline keeps it",
  parts: {
    particulars: { deadline: { title: "Deadline", type: "string", format: "date" } },
  },
  point: {
    $ref: "#/$defs/date",
    title: "Day of the check",
    limits: [{ notBefore: { from: "asset.deadline", minus: "P2M" }, basis: "reg 36A" }],
  },
  asset: { deadline },
  cases: [
    [opens, "pass"],
    [before, "fail"],
  ],
});

const platform = (fall: number, verdict: "fail" | null): JudgedCheck => ({
  says: "Asked where a person could fall two metres or more",
  parts: { particulars: { fall: { title: "Fall", type: "number", unit: "m" } } },
  point: {
    $ref: "#/$defs/check",
    title: "Inspected?",
    limits: [{ accept: ["ok"], basis: "reg 12(4)" }],
    ask: { when: "asset.fall >= 2.0" },
  },
  asset: { fall },
  cases: [["not-ok", verdict]],
});

/** The older monthly test ran for a quarter of the rated duration at most. */
const QUARTER: JudgedCheck = {
  says: "Up to a quarter of the rated duration",
  parts: { particulars: { rated: { title: "Rated duration", type: "number", unit: "h" } } },
  point: readingPoint("min", [{ max: "asset.rated / 4", basis: "BS 5266-1:1999" }]),
  asset: { rated: 3 },
  bound: 45,
  cases: [
    [{ value: 44, unit: "min" }, "pass"],
    [{ value: 45, unit: "min" }, "pass"],
    [{ value: 46, unit: "min" }, "fail"],
  ],
};

export const OTHER_INTERVALS: readonly CheckedFact[] = [
  interval("ot-001", BS_5306, "P1M"),
  interval("ot-002", BS_5306, "P12M"),
  interval("ot-003", BS_5306, "P5Y"),
  interval("ot-004", BS_5306, "P20Y"),
  interval("ot-006", NFPA_10, "P1M"),
  interval("ot-007", NFPA_10, "P1Y"),
  interval("ot-008", NFPA_10, "P6Y"),
  interval("ot-009", NFPA_10, "P12Y"),
  interval("ot-010", NFPA_10, "P5Y"),
  interval("ot-011", origin("from the BS 5306-3 rows", "R"), "P1M", "P12M", "P5Y", "P20Y"),
  interval("ot-012", EN_50172, "P1D"),
  interval("ot-013", EN_50172, "P1M"),
  interval("ot-014", EN_50172, "P1Y"),
  {
    ...interval("ot-016", origin("BS 5266-1:1999", "S", 1999), "P1M", "P6M", "P3Y"),
    judged: [QUARTER],
  },
  interval("ot-017", origin("buildings guidance, trade page", "S", 2019), "P1W"),
  interval("ot-018", origin("BS 5839-1", "M", 2017, "clause 45"), "P6M"),
  notOurFact("ot-019", REG_12, INTERVALS),
  notOurFact("ot-021", REG_12, INTERVALS),
  notOurFact("ot-022", REG_12, "hours of a report: the due engine counts civil days"),
  judgedFact("ot-023", REG_12_4, usableFor("P7D", "2026-03-09", "2026-03-10")),
  judgedFact("ot-024", REG_12_4, platform(2, "fail"), platform(1.99, null)),
  interval("ot-025", LOLER, "P6M"),
  interval("ot-026", LOLER, "P6M"),
  interval("ot-027", LOLER, "P12M"),
  interval("ot-029", STATUTES, "P14M"),
  interval("ot-030", STATUTES, "P1M"),
  interval("ot-031", STATUTES, "P5Y"),
  dueFact("ot-033", COSHH, every("P14M", "2026-01-15", "2027-03-15")),
  dueFact("ot-034", COSHH, every("P14M", "2026-11-30", "2028-01-30")),
  dueFact("ot-035", COSHH, every("P14M", "2024-02-29", "2025-04-29")),
  dueFact("ot-036", COSHH, every("P14M", "2025-12-31", "2027-02-28")),
  notOurFact("ot-060", GAS, INTERVALS),
  notOurFact("ot-061", GAS, INTERVALS),
  notOurFact("ot-062", GAS, INTERVALS),
  judgedFact(
    "ot-064",
    gas("C", null, null),
    windowOpens("2026-04-30", "2026-02-28", "2026-02-27"),
    // The window of the published worked example that the engine cannot yet count from.
    windowOpens("2019-04-06", "2019-02-06", "2019-02-05"),
  ),
];
