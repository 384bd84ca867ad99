import { type CheckedFact, dueFact, every, notOurFact, origin } from "./checked-fact.ts";

const INDG236 = origin("HSE INDG236 (rev 3), table of initial intervals", "S", 2013, "table");
const HSG107 = origin("HSE HSG107, third edition", "M", 2013, "table 1");
const OSHA = origin(
  "OSHA 29 CFR 1926.404(b)(1)(iii), as DOE-HDBK-1092 sets it out",
  "R",
  1998,
  "item 3",
);
const FIXED = origin("Trade pages that quote the standard", "S", null, "table");

const DONE = "2026-02-28";
const DUE = {
  P1D: "2026-03-01",
  P1W: "2026-03-07",
  P1M: "2026-03-28",
  P3M: "2026-05-28",
  P6M: "2026-08-28",
  P12M: "2027-02-28",
  P1Y: "2027-02-28",
  P2Y: "2028-02-28",
  P3Y: "2029-02-28",
  P4Y: "2030-02-28",
  P5Y: "2031-02-28",
  P10Y: "2036-02-28",
} as const;
/** Both ends of a published range are intervals that a manager may choose. */
const periods = (...durations: (keyof typeof DUE)[]) =>
  durations.map((duration) => every(duration, DONE, DUE[duration]));
const NO_CHECK = "no check is asked for, so that there is no interval to reckon";

export const ELECTRICAL_INTERVALS: readonly CheckedFact[] = [
  // Battery below 20 V, and extra low voltage below 50 V.
  notOurFact("el-115", INDG236, NO_CHECK),
  notOurFact("el-116", INDG236, NO_CHECK),
  // Desktop computers: a look every 2 to 4 years, a test within 5 unless double insulated.
  dueFact("el-117", INDG236, ...periods("P2Y", "P4Y", "P5Y")),
  // Double insulated and hand-held: a look every 6 months to a year.
  dueFact("el-120", INDG236, ...periods("P6M", "P1Y")),
  // Leads and plugs: a look every 6 months to 4 years, a test every 1 to 5 years.
  dueFact("el-122", INDG236, ...periods("P6M", "P4Y", "P1Y", "P5Y")),
  // Construction at 110 V: weekly, monthly, then a test each quarter.
  dueFact("el-123", HSG107, ...periods("P1W", "P1M", "P3M")),
  // Fixed RCDs of construction sites: each shift, weekly, a quarter; portable ones monthly.
  dueFact("el-125", HSG107, ...periods("P1D", "P1W", "P3M", "P1M")),
  // Heavy industry: daily, weekly, a test every 6 to 12 months.
  dueFact("el-127", HSG107, ...periods("P1D", "P1W", "P6M", "P12M")),
  // Office equipment that is not hand-held.
  dueFact("el-129", HSG107, ...periods("P2Y", "P4Y", "P5Y")),
  // Looked at before each day's use.
  dueFact("el-130", OSHA, ...periods("P1D")),
  // Fixed installations at most: homes 5 to 10 years, commerce 5, industry 3.
  dueFact("el-133", FIXED, ...periods("P5Y", "P10Y")),
  dueFact("el-134", FIXED, ...periods("P5Y")),
  dueFact("el-135", FIXED, ...periods("P3Y")),
];
