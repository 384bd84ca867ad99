import { engineFacts, type Fact, type Origin } from "./fact.ts";

/** Largest resistance of one conductor at 20 °C. */
export interface ConductorFigure {
  readonly id: string;
  /** mm² */
  readonly csa: number;
  /** Ohm/km */
  readonly perKm: number;
}

type Row = readonly [id: string, csa: number, perKm: number];
const conductors = (rows: readonly Row[]): readonly ConductorFigure[] =>
  rows.map(([id, csa, perKm]) => ({ id, csa, perKm }));

const iec60228 = (section: string): Origin => ({
  source: "IEC 60228, conductors of insulated cables",
  section,
  year: 2004,
  marker: "S",
});

export const CLASS_5_PLAIN = conductors([
  ["el-001", 0.5, 39],
  ["el-002", 0.75, 26],
  ["el-003", 1, 19.5],
  ["el-004", 1.5, 13.3],
  ["el-005", 2.5, 7.98],
  ["el-006", 4, 4.95],
  ["el-007", 6, 3.3],
]);
export const CLASS_5_TINNED = conductors([
  ["el-008", 0.5, 40.1],
  ["el-009", 0.75, 26.7],
  ["el-010", 1, 20],
  ["el-011", 1.5, 13.7],
  ["el-012", 2.5, 8.21],
  ["el-013", 4, 5.09],
  ["el-014", 6, 3.39],
]);
/** Fixed wiring, never a flexible lead. */
export const CLASS_2_PLAIN = conductors([
  ["el-015", 0.5, 36],
  ["el-016", 0.75, 24.5],
  ["el-017", 1, 18.1],
  ["el-018", 1.5, 12.1],
  ["el-019", 2.5, 7.41],
  ["el-020", 4, 4.61],
  ["el-021", 6, 3.08],
]);
/** A size of old British cords that IEC 60228 does not know: ±0.1 Ohm/km. */
export const LEGACY: ConductorFigure = { id: "el-022", csa: 1.25, perKm: 15.6 };

/** Brings a resistance measured at `celsius` to 20 °C when multiplied with it. */
export interface TemperatureFigure {
  readonly id: string;
  readonly celsius: number;
  readonly factor: number;
}
const factors = (
  rows: readonly (readonly [string, number, number])[],
): readonly TemperatureFigure[] => rows.map(([id, celsius, factor]) => ({ id, celsius, factor }));

/** Printed to three decimals. */
export const TABLE_FACTORS = factors([
  ["el-023", 5, 1.064],
  ["el-024", 10, 1.042],
  ["el-025", 15, 1.02],
  ["el-026", 20, 1],
  ["el-029", 35, 0.943],
  ["el-031", 50, 0.893],
  ["el-032", 70, 0.833],
]);
/** From the constant of copper, to four decimals. */
export const COPPER_FACTORS = factors([
  ["el-033", 5, 1.0626],
  ["el-034", 10, 1.0409],
  ["el-035", 30, 0.9622],
  ["el-036", 40, 0.9271],
  ["el-038", 70, 0.8358],
]);

/** 0.1 Ohm plus the lead, class 5 plain copper at 20 °C. */
export interface LeadFigure {
  readonly id: string;
  /** m */
  readonly length: number;
  /** mm² */
  readonly csa: number;
  /** Ohm */
  readonly limit: number;
}
const leads = (
  rows: readonly (readonly [string, number, number, number])[],
): readonly LeadFigure[] => rows.map(([id, length, csa, limit]) => ({ id, length, csa, limit }));

export const LEADS = leads([
  ["el-039", 1, 0.75, 0.126],
  ["el-040", 2, 0.75, 0.152],
  ["el-041", 2, 1, 0.139],
  ["el-042", 3, 0.5, 0.217],
  ["el-043", 5, 1.5, 0.1665],
  ["el-044", 10, 1.5, 0.233],
  ["el-045", 10, 2.5, 0.1798],
  ["el-046", 15, 1, 0.3925],
  ["el-047", 25, 1.5, 0.4325],
  ["el-048", 25, 2.5, 0.2995],
  ["el-049", 50, 1.5, 0.765],
]);
/** 10 m of 1.5 mm² at 30 °C, to four decimals. */
export const WARM_LEAD = { id: "el-050", length: 10, csa: 1.5, celsius: 30, limit: 0.2382 };
/** 10 m of 1.5 mm²: a reading exactly on its worked-out limit. */
export const LEAD_ON_LIMIT = { id: "el-051", reading: 0.233 };

const arithmetic: Origin = { source: "Arithmetic", section: null, year: null, marker: "C" };

export const CONDUCTOR_FACTS: readonly Fact[] = [
  ...engineFacts(iec60228("class 5 column"), CLASS_5_PLAIN),
  ...engineFacts(iec60228("class 5 tinned"), CLASS_5_TINNED),
  ...engineFacts(iec60228("class 1 and 2 column"), CLASS_2_PLAIN),
  ...engineFacts(
    {
      source: "British practice for flexible cords, BS 6500 and BS 6360",
      section: "-",
      year: null,
      marker: "M",
    },
    [LEGACY],
  ),
  ...engineFacts(
    {
      source: "IEC 60228, temperature correction",
      section: "correction factors",
      year: null,
      marker: "S",
    },
    TABLE_FACTORS,
  ),
  ...engineFacts(
    {
      source: "IEC 60228, copper: 254.5 / (234.5 + t)",
      section: "Annex B",
      year: 2004,
      marker: "M",
    },
    COPPER_FACTORS,
  ),
  ...engineFacts(
    {
      source: "IEC 60228 class 5, and 0.1 Ohm plus the lead as training pages teach it",
      section: "worked example",
      year: null,
      marker: "R",
    },
    LEADS,
  ),
  ...engineFacts({ ...arithmetic, section: "-", marker: "M" }, [WARM_LEAD]),
  ...engineFacts(arithmetic, [LEAD_ON_LIMIT]),
];
