import { engineFacts, type Fact, notOurs, type Origin } from "./fact.ts";

const ilac = (marker: "S" | "M"): Origin => ({
  source: "ILAC-G8:09/2019",
  section: "4.2, table 1",
  year: 2019,
  marker,
});
const jcgm = (section: string): Origin => ({
  source: "JCGM 106:2012",
  section,
  year: 2012,
  marker: "M",
});

/**
 * Guard band w = r · U with U = 2u, and the largest chance that what is accepted is outside its
 * limit, for a normal distribution. r = 0.83 is the rule of ISO 14253-1:2017; below zero the limit
 * is widened, so that only what lies beyond it is rejected.
 */
export const GUARD_BANDS = [
  { id: "cf-002", r: 1.5, risk: 0.0013498980316300957 },
  { id: "cf-003", r: 1, risk: 0.02275013194817922 },
  { id: "cf-004", r: 0.83, risk: 0.048457226266722817 },
  { id: "cf-005", r: 0, risk: 0.5 },
  { id: "cf-006", r: -1, risk: 0.9772498680518208 },
] as const;

/** Standard uncertainties between acceptance limit and limit for a wanted chance of conformity. */
export const WANTED = [
  { id: "cf-008", p: 0.9, z: 1.2816 },
  { id: "cf-009", p: 0.95, z: 1.6449 },
  { id: "cf-010", p: 0.99, z: 2.3263 },
  { id: "cf-011", p: 0.999, z: 3.0902 },
] as const;

/** Breakdown voltage in V. */
export const BREAKDOWN = { id: "cf-012", max: -5.4, y: -5.47, u: 0.05, p: 0.9192 } as const;
/** Oil viscosity; the limits are closer together than two guard bands. */
export const VISCOSITY = {
  id: "cf-014",
  min: 12.5,
  max: 16.3,
  y: 13.6,
  u: 1.8,
  p: 0.6626,
} as const;
/** Speed in km/h with an uncertainty that grows with the reading: rejected above `exact`. */
export const SPEED = {
  id: "cf-015",
  max: 100,
  relative: 0.02,
  z: 3.0902,
  exact: 106.588,
  used: 107,
} as const;

/** Readings near limits of the trade, U = 2u: what each rule makes of them. */
export const NEAR_LIMITS = [
  {
    id: "cf-024",
    of: "hot outlet",
    unit: "Cel",
    min: 50,
    y: 50.6,
    U: 1,
    p: 0.8849,
    acceptance: 51,
    guarded: "fail",
  },
  {
    id: "cf-025",
    of: "hot outlet",
    unit: "Cel",
    min: 50,
    y: 51,
    U: 1,
    p: 0.9772,
    acceptance: 51,
    guarded: "pass",
  },
  {
    id: "cf-026",
    of: "hot outlet",
    unit: "Cel",
    min: 50,
    y: 50,
    U: 1,
    p: 0.5,
    acceptance: 51,
    guarded: "fail",
  },
  {
    id: "cf-028",
    of: "earth",
    unit: "Ohm",
    max: 0.3,
    y: 0.29,
    U: 0.02,
    p: 0.8413,
    acceptance: 0.28,
    guarded: "fail",
  },
  {
    id: "cf-029",
    of: "door gap",
    unit: "mm",
    max: 4,
    y: 3.8,
    U: 0.3,
    p: 0.9088,
    acceptance: 3.7,
    guarded: "fail",
  },
] as const;

/** Neither conformity nor non-conformity is proven between 49 and 51 °C. */
export const NON_BINARY = { id: "cf-032", min: 50, y: 49.6, U: 1 } as const;

export const CONFORMITY: readonly Fact[] = [
  ...engineFacts(ilac("M"), [GUARD_BANDS[0], GUARD_BANDS[2], GUARD_BANDS[4]]),
  ...engineFacts(ilac("S"), [GUARD_BANDS[1], GUARD_BANDS[3]]),
  ...engineFacts(jcgm("table 1"), WANTED),
  ...engineFacts(jcgm("7.3 example"), [BREAKDOWN]),
  ...engineFacts(jcgm("7.4 example"), [VISCOSITY]),
  ...engineFacts(jcgm("8.3.3 example"), [SPEED]),
  ...notOurs(
    jcgm("9.5.4"),
    "global risks need what is known of all assets before measuring; a judgement knows one reading",
    ["cf-016", "cf-018", "cf-019", "cf-020"],
  ),
  ...notOurs(
    {
      source: "Deaver's figures, as tests of an open uncertainty library quote them",
      section: "test_riskdeaver",
      year: null,
      marker: "R",
    },
    "false accepts and rejects over a whole production, not a judgement of one reading",
    ["cf-021", "cf-022", "cf-023"],
  ),
  ...engineFacts(
    {
      source: "Rules of ILAC-G8 on limits of the trade",
      section: "4.2.3",
      year: 2019,
      marker: "C",
    },
    NEAR_LIMITS,
  ),
  ...engineFacts(
    {
      source: "ISO 14253-1:2017, and ILAC-G8 non-binary",
      section: "5",
      year: 2017,
      marker: "M",
    },
    [NON_BINARY],
  ),
];
