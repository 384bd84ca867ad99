import type { Fact } from "./fact.ts";
import { FIRE_DOORS } from "./fire-doors.ts";
import { LADDERS } from "./ladders.ts";
import { OTHER_INTERVALS } from "./other-intervals.ts";
import { OTHER_LIMITS } from "./other-limits.ts";
import { VEHICLES } from "./vehicles.ts";
import { WATER } from "./water.ts";
import { WATER_INTERVALS } from "./water-intervals.ts";

/** Every published figure of the collection, by area. */
export const PUBLISHED: readonly Fact[] = [
  ...LADDERS,
  ...FIRE_DOORS,
  ...WATER,
  ...WATER_INTERVALS,
  ...OTHER_INTERVALS,
  ...VEHICLES,
  ...OTHER_LIMITS,
];
