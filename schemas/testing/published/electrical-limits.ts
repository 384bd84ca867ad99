import { engineFacts, type Fact, type Origin } from "./fact.ts";

/** One published bound of a reading. */
export interface BoundFigure {
  readonly id: string;
  readonly of: string;
  readonly bound: number;
}
type Row = readonly [id: string, of: string, bound: number];
const bounds = (rows: readonly Row[]): readonly BoundFigure[] =>
  rows.map(([id, of, bound]) => ({ id, of, bound }));

/** A bound that depends on a length in m or a power in kW. */
export interface GrowingFigure {
  readonly id: string;
  readonly by: number;
  readonly bound: number;
}
type GrowingRow = readonly [id: string, by: number, bound: number];
const growing = (rows: readonly GrowingRow[]): readonly GrowingFigure[] =>
  rows.map(([id, by, bound]) => ({ id, by, bound }));

const en50699 = (section: string, year: number | null): Origin => ({
  source: "EN 50678 and EN 50699 (before: VDE 0701-0702)",
  section,
  year,
  marker: "M",
});
const trade = (section: string): Origin => ({
  source: "Trade pages that quote the standard",
  section,
  year: null,
  marker: "S",
});

/** Ohm, up to 1.5 mm² and 5 m. */
export const EN_SHORT_LEAD = { id: "el-052", length: 5, csa: 1.5, bound: 0.3 };
/** Ohm by length in m: a begun 7.5 m counts whole, which is the usual reading of the rule. */
export const EN_STEPS = growing([
  ["el-053", 5, 0.3],
  ["el-055", 12.5, 0.4],
  ["el-056", 12.51, 0.5],
  ["el-058", 20, 0.5],
  ["el-059", 25, 0.6],
  ["el-060", 50, 0.9],
  ["el-061", 57.5, 1],
  ["el-062", 100, 1],
]);
/** Ohm, single cores above 1.5 mm²; other leads are reckoned from length and cross-section. */
export const EN_THICK = { id: "el-063", bound: 0.1 };

/** MOhm at 500 V DC. */
export const UK_INSULATION = bounds([
  ["el-064", "Class I", 1],
  ["el-065", "Class I heating below 3 kW", 0.3],
  ["el-066", "Class II", 2],
]);
/** MOhm */
export const EN_INSULATION = bounds([
  ["el-069", "Class I heating above 3.5 kW", 0.3],
  ["el-070", "Class II", 2],
  ["el-071", "Class III", 0.25],
]);
/** V DC where surge protection would be hurt; the limits stay. */
export const GENTLE_VOLTAGE = { id: "el-072", volts: 250 };

/** mA */
export const UK_CURRENT = bounds([
  ["el-073", "Class I hand-held or portable", 0.75],
  ["el-074", "Class I other", 3.5],
  ["el-075", "Class II", 0.25],
]);
/** mA by kW of a Class I heating appliance: 0.75 mA/kW, at most 5 mA. */
export const UK_HEATING_FIRST = growing([["el-076", 1, 0.75]]);
export const UK_HEATING = growing([
  ["el-077", 2, 1.5],
  ["el-078", 6, 4.5],
  // 6.667 kW give 5.00025 mA: the ceiling holds.
  ["el-079", 6.667, 5],
]);
/** mA */
export const UK_CLASS_III = bounds([["el-081", "Class III", 0.5]]);
/** mA by kW of heating: 3.5 mA, above 3.5 kW 1 mA/kW, at most 10 mA. */
export const EN_HEATING = growing([
  ["el-082", 3.5, 3.5],
  ["el-083", 5, 5],
  ["el-084", 10, 10],
  ["el-085", 12, 10],
]);
/** mA at working temperature; Class II as a peak. */
export const IEC_LEAKAGE = bounds([
  ["el-088", "portable Class I", 0.75],
  ["el-089", "stationary motor Class I", 3.5],
  ["el-090", "Class II, peak", 0.35],
]);
export const AS_NZS_EARTH = bounds([["el-091", "earth continuity in Ohm", 1]]);
/** mA */
export const AS_NZS_CURRENT = bounds([
  ["el-093", "Class I", 5],
  ["el-094", "Class II", 1],
]);

const asNzs: Origin = {
  source: "AS/NZS 3760, as widely published",
  section: "tables 1-3",
  year: 2010,
  marker: "M",
};

export const LIMIT_FACTS: readonly Fact[] = [
  ...engineFacts(en50699("table of limits", 2020), [EN_SHORT_LEAD]),
  ...engineFacts(en50699("-", null), EN_STEPS),
  ...engineFacts(en50699("-", 2020), [EN_THICK]),
  ...engineFacts(
    {
      source: "British training pages on in-service testing",
      section: "electrical tests",
      year: null,
      marker: "S",
    },
    UK_INSULATION,
  ),
  ...engineFacts(en50699("-", 2021), EN_INSULATION),
  ...engineFacts({ source: "Common practice, no source", section: "-", year: null, marker: "C" }, [
    GENTLE_VOLTAGE,
  ]),
  ...engineFacts(trade("-"), UK_CURRENT),
  ...engineFacts(trade("earth leakage page"), UK_HEATING_FIRST),
  ...engineFacts(trade("-"), [...UK_HEATING, ...UK_CLASS_III]),
  ...engineFacts(en50699("protective conductor current", 2008), EN_HEATING),
  ...engineFacts({ source: "IEC 60335-1", section: "13.2", year: 2010, marker: "M" }, IEC_LEAKAGE),
  ...engineFacts(asNzs, [...AS_NZS_EARTH, ...AS_NZS_CURRENT]),
];
