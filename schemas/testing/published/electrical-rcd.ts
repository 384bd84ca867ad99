import { engineFacts, type Fact, type Origin } from "./fact.ts";

const product = (section: string, marker: "S" | "M"): Origin => ({
  source: "BS EN 61008-1 and 61009-1, trip times",
  section,
  year: null,
  marker,
});

/** Longest trip time in ms at a multiple of the rated residual current, general type. */
export const GENERAL_TRIP = [
  { id: "el-095", multiple: 1, max: 300 },
  { id: "el-096", multiple: 2, max: 150 },
  { id: "el-097", multiple: 5, max: 40 },
] as const;
/** ms, selective type at five times. */
export const SELECTIVE_FAST = { id: "el-100", min: 50, max: 150 } as const;
/** At half the rated residual current it holds. */
export const HOLDS_AT_HALF = { id: "el-101", multiple: 0.5 } as const;
/** Time-delayed type of BS 4293, ms: 200 ms plus half to all of the delay. */
export const DELAYED = { id: "el-103", delay: 100, min: 250, max: 300 } as const;
/** 30 mA devices may be tested with 250 mA instead of five times. */
export const FAST_TEST_CURRENT = { id: "el-104", rated: 30, milliamps: 250, max: 40 } as const;
/** One test at the rated residual current, ms. */
export const SINGLE_TEST = {
  id: "el-106",
  general: 300,
  selective: { min: 130, max: 500 },
} as const;

/** Plug fuse in A by load in W. */
export const FUSES = [
  { id: "el-107", watts: 60, fuse: 3 },
  { id: "el-108", watts: 690, fuse: 3 },
  { id: "el-109", watts: 700, fuse: 3 },
  { id: "el-110", watts: 701, fuse: 13 },
  { id: "el-112", watts: 2990, fuse: 13 },
] as const;

/** Live, neutral and earth each go straight through; any crossing fails. */
export const STRAIGHT_THROUGH = { id: "el-114" } as const;

export const RCD_FACTS: readonly Fact[] = [
  ...engineFacts(product("table 1", "S"), GENERAL_TRIP),
  ...engineFacts(product("table 1", "M"), [SELECTIVE_FAST]),
  ...engineFacts(product("note", "S"), [HOLDS_AT_HALF]),
  ...engineFacts(
    { source: "Cable table of a trade page, BS 4293", section: "-", year: null, marker: "S" },
    [DELAYED],
  ),
  ...engineFacts(
    { source: "BS EN 61008-1, table 1", section: "643.8 note", year: 2017, marker: "S" },
    [FAST_TEST_CURRENT],
  ),
  ...engineFacts(
    { source: "BS 7671:2018 with amendment 2", section: "643.7", year: 2022, marker: "M" },
    [SINGLE_TEST],
  ),
  ...engineFacts(
    { source: "BS 1362 fuse ratings on a trade page", section: "-", year: null, marker: "S" },
    FUSES,
  ),
  ...engineFacts({ source: "Trade pages", section: "-", year: null, marker: "C" }, [
    STRAIGHT_THROUGH,
  ]),
];
