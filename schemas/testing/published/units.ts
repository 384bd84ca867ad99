import { engineFacts, type Fact, notOurs, type Origin } from "./fact.ts";

const ucum = (section: string): Origin => ({
  source: "UCUM functional tests, UcumFunctionalTests.xml",
  section,
  year: 2021,
  marker: "R",
});

/** Printed with as many digits as the figure that went in. */
export const CONVERSIONS = [
  { id: "cf-034", value: 6.3, from: "mm", to: "m", printed: 0.0063, digits: 2 },
  { id: "cf-039", value: 6.3, from: "[in_i]", to: "m", printed: 0.16, digits: 3 },
  { id: "cf-040", value: 6.3, from: "[in_i]", to: "cm", printed: 16, digits: 3 },
] as const;

/** One pound an hour divided by one kilogram a second. */
export const QUOTIENT = {
  id: "cf-044",
  from: "[lb_av]/h",
  to: "kg/s",
  is: 0.000125997880555555,
} as const;

/** Valid by UCUM and beyond a table of `a/b` and `a.b`: refused, never guessed. */
export const BEYOND = {
  exponents: [{ id: "cf-035", from: "s.mm-2", to: "s.m-2" }],
  threeUnits: [{ id: "cf-036", from: "s/m.mg", to: "s.m-1.g" }],
  factors: [
    { id: "cf-037", from: "4.s/m", to: "s/m" },
    { id: "cf-043", from: "10*-7.s", to: "s" },
  ],
  mercury: [{ id: "cf-041", from: "m[Hg]", to: "g.s-2.m-1" }],
  leadingSlash: [{ id: "cf-047", from: "/m", to: "/cm" }],
} as const;

/** No unit at all. */
export const INVALID = { id: "cf-046", code: "m/" } as const;
/** Cases of the whole file, which `tests/real-data` reads in place. */
export const SUITE = { id: "cf-033", validation: 529, conversion: 30 } as const;

/** Exact by definition, where binary arithmetic is a few digits off. */
export const EXACT = [
  { id: "cf-050", value: 20, from: "Cel", to: "[degF]", is: 68 },
  { id: "cf-051", value: 140, from: "[degF]", to: "Cel", is: 60 },
  { id: "cf-052", value: 0.125, from: "[in_i]", to: "mm", is: 3.175 },
] as const;

const ids = (rows: readonly { readonly id: string }[]) => rows.map(({ id }) => id);
const conversion = ucum("conversion");

export const UNITS: readonly Fact[] = [
  ...engineFacts(ucum("-"), [SUITE]),
  ...engineFacts(conversion, CONVERSIONS),
  ...notOurs(
    conversion,
    "exponents within a unit: the table holds a/b and a.b",
    ids(BEYOND.exponents),
  ),
  ...notOurs(conversion, "three units in one: the table holds a/b and a.b", ids(BEYOND.threeUnits)),
  ...notOurs(conversion, "factors within a unit are left out", ids(BEYOND.factors)),
  ...notOurs(conversion, "columns of mercury are read on no round", ids(BEYOND.mercury)),
  ...engineFacts(ucum("4-103"), [QUOTIENT]),
  ...engineFacts(ucum("validation"), [INVALID]),
  ...notOurs(
    ucum("validation"),
    "nothing before the slash: the table holds a/b and a.b",
    ids(BEYOND.leadingSlash),
  ),
  ...notOurs(
    { source: "Two UCUM libraries, measured", section: "-", year: 2026, marker: "C" },
    "how other libraries fare says nothing about ours",
    ["cf-048"],
  ),
  ...engineFacts(
    { source: "Definition of the units", section: "-", year: null, marker: "C" },
    EXACT,
  ),
];
