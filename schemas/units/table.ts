import type { Dimension, Unit } from "./unit.ts";

/** The dimensions of UCUM, and quantities that convert to nothing else. */
const AXES = ["m", "kg", "s", "A", "K", "cd", "rad", "cfu", "pH", "spl", "ntu"] as const;
type Axis = (typeof AXES)[number];

const dimension = (exponents: Partial<Record<Axis, number>>): Dimension =>
  AXES.map((axis) => exponents[axis] ?? 0);

const NONE = dimension({});
const LENGTH = dimension({ m: 1 });
const AREA = dimension({ m: 2 });
const VOLUME = dimension({ m: 3 });
const MASS = dimension({ kg: 1 });
const TIME = dimension({ s: 1 });
const FREQUENCY = dimension({ s: -1 });
const FORCE = dimension({ m: 1, kg: 1, s: -2 });
const PRESSURE = dimension({ m: -1, kg: 1, s: -2 });
const ENERGY = dimension({ m: 2, kg: 1, s: -2 });
const POWER = dimension({ m: 2, kg: 1, s: -3 });
const CURRENT = dimension({ A: 1 });
const VOLTAGE = dimension({ m: 2, kg: 1, s: -3, A: -1 });
const RESISTANCE = dimension({ m: 2, kg: 1, s: -3, A: -2 });
const CONDUCTANCE = dimension({ m: -2, kg: -1, s: 3, A: 2 });
const CAPACITANCE = dimension({ m: -2, kg: -1, s: 4, A: 2 });
const TEMPERATURE = dimension({ K: 1 });
const ANGLE = dimension({ rad: 1 });
// UCUM counts the steradian as rad2, so that lumen and candela do not convert.
const LUMINOUS_FLUX = dimension({ cd: 1, rad: 2 });
const ILLUMINANCE = dimension({ cd: 1, rad: 2, m: -2 });

/** [UCUM code, numerator, denominator, dimension, zero × denominator] of each simple unit. */
type Row = readonly [string, number, number, Dimension, number?];

const ROWS: readonly Row[] = [
  ["1", 1, 1, NONE],
  ["%", 1, 100, NONE],
  ["[ppm]", 1, 1e6, NONE],
  ["um", 1, 1e6, LENGTH],
  ["mm", 1, 1000, LENGTH],
  ["cm", 1, 100, LENGTH],
  ["m", 1, 1, LENGTH],
  ["km", 1000, 1, LENGTH],
  ["[in_i]", 254, 10_000, LENGTH],
  ["[ft_i]", 3048, 10_000, LENGTH],
  ["[mi_i]", 1_609_344, 1000, LENGTH],
  ["mm2", 1, 1e6, AREA],
  ["cm2", 1, 1e4, AREA],
  ["m2", 1, 1, AREA],
  ["mL", 1, 1e6, VOLUME],
  ["L", 1, 1000, VOLUME],
  ["m3", 1, 1, VOLUME],
  ["[gal_us]", 3_785_411_784, 1e12, VOLUME],
  ["ug", 1, 1e9, MASS],
  ["mg", 1, 1e6, MASS],
  ["g", 1, 1000, MASS],
  ["kg", 1, 1, MASS],
  ["t", 1000, 1, MASS],
  ["[lb_av]", 45_359_237, 1e8, MASS],
  ["us", 1, 1e6, TIME],
  ["ms", 1, 1000, TIME],
  ["s", 1, 1, TIME],
  ["min", 60, 1, TIME],
  ["h", 3600, 1, TIME],
  ["d", 86_400, 1, TIME],
  ["wk", 604_800, 1, TIME],
  // Of 365.25 days, as UCUM has the year and its twelfth.
  ["mo", 2_629_800, 1, TIME],
  ["a", 31_557_600, 1, TIME],
  ["Hz", 1, 1, FREQUENCY],
  ["kHz", 1000, 1, FREQUENCY],
  ["N", 1, 1, FORCE],
  ["kN", 1000, 1, FORCE],
  ["Pa", 1, 1, PRESSURE],
  ["kPa", 1000, 1, PRESSURE],
  ["MPa", 1e6, 1, PRESSURE],
  ["mbar", 100, 1, PRESSURE],
  ["bar", 100_000, 1, PRESSURE],
  // 0.45359237 kg × 9.80665 m/s² on a square of 25.4 mm.
  ["[psi]", 44_482_216_152_605, 6_451_600_000, PRESSURE],
  ["J", 1, 1, ENERGY],
  ["kJ", 1000, 1, ENERGY],
  ["W", 1, 1, POWER],
  ["kW", 1000, 1, POWER],
  ["uA", 1, 1e6, CURRENT],
  ["mA", 1, 1000, CURRENT],
  ["A", 1, 1, CURRENT],
  ["kA", 1000, 1, CURRENT],
  ["mV", 1, 1000, VOLTAGE],
  ["V", 1, 1, VOLTAGE],
  ["kV", 1000, 1, VOLTAGE],
  ["uOhm", 1, 1e6, RESISTANCE],
  ["mOhm", 1, 1000, RESISTANCE],
  ["Ohm", 1, 1, RESISTANCE],
  ["kOhm", 1000, 1, RESISTANCE],
  ["MOhm", 1e6, 1, RESISTANCE],
  ["GOhm", 1e9, 1, RESISTANCE],
  ["uS", 1, 1e6, CONDUCTANCE],
  ["mS", 1, 1000, CONDUCTANCE],
  ["S", 1, 1, CONDUCTANCE],
  ["uF", 1, 1e6, CAPACITANCE],
  ["K", 1, 1, TEMPERATURE],
  ["Cel", 1, 1, TEMPERATURE, 273.15],
  ["[degF]", 5, 9, TEMPERATURE, 2298.35],
  ["rad", 1, 1, ANGLE],
  ["deg", Math.PI, 180, ANGLE],
  ["lm", 1, 1, LUMINOUS_FLUX],
  ["lx", 1, 1, ILLUMINANCE],
  ["cd", 1, 1, dimension({ cd: 1 })],
  ["[CFU]", 1, 1, dimension({ cfu: 1 })],
  ["[pH]", 1, 1, dimension({ pH: 1 })],
  ["[NTU]", 1, 1, dimension({ ntu: 1 })],
  ["dB[SPL]", 1, 1, dimension({ spl: 1 })],
];

/** Simple units by UCUM code; a number's worth of code rather than a library of 300 KB. */
export const SIMPLE_UNITS: ReadonlyMap<string, Unit> = new Map(
  ROWS.map(([code, num, den, axesOf, zero = 0]) => [
    code,
    { code, num, den, zero, dimension: axesOf },
  ]),
);

/** Compounds worth offering in a menu; any other `a/b` or `a.b` of simple units works too. */
export const COMPOUND_CODES = [
  "Ohm/m",
  "mOhm/m",
  "Ohm/km",
  "L/s",
  "L/min",
  "m3/h",
  "m/s",
  "km/h",
  "mm/m",
  "ug/L",
  "mg/L",
  "uS/cm",
  "mS/m",
  "kg/m3",
  "kg/m2",
  "N/m2",
  "W/m2",
  "A.h",
  "V.A",
  "kW.h",
  "N.m",
  "kN.m",
  "[CFU]/L",
  "[CFU]/mL",
] as const;
