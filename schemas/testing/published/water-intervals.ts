import { type CheckedFact, dueFact, every, INTERVALS, notOurFact, origin } from "./checked-fact.ts";
import { HSE } from "./water.ts";

const TABLE_1 = origin(HSE, "R", 2007, "table 1");
const SHEETS = origin("HSE sample recording sheets", "S");

export const WATER_INTERVALS: readonly CheckedFact[] = [
  dueFact("wa-007", TABLE_1, every("P1M", "2026-01-31", "2026-02-28")),
  dueFact("wa-008", TABLE_1, every("P1M", "2024-01-31", "2024-02-29")),
  // Once in winter and once in summer is no count of months.
  notOurFact("wa-009", TABLE_1, INTERVALS),
  dueFact("wa-010", TABLE_1, every("P1Y", "2026-03-02", "2027-03-02")),
  dueFact("wa-011", TABLE_1, every("P1Y", "2024-02-29", "2025-02-28")),
  dueFact("wa-012", SHEETS, every("P1W", "2026-12-28", "2027-01-04")),
  dueFact("wa-013", SHEETS, every("P3M", "2025-11-30", "2026-02-28")),
];
