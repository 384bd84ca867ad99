import { CONFORMITY } from "./conformity.ts";
import { CONDUCTOR_FACTS } from "./electrical-conductors.ts";
import { ELECTRICAL_INTERVALS } from "./electrical-intervals.ts";
import { LIMIT_FACTS } from "./electrical-limits.ts";
import { RCD_FACTS } from "./electrical-rcd.ts";
import type { Fact } from "./fact.ts";
import { FIRE_DOORS } from "./fire-doors.ts";
import { LADDERS } from "./ladders.ts";
import { OTHER_INTERVALS } from "./other-intervals.ts";
import { OTHER_LIMITS } from "./other-limits.ts";
import { UNITS } from "./units.ts";
import { VEHICLES } from "./vehicles.ts";
import { WATER } from "./water.ts";
import { WATER_INTERVALS } from "./water-intervals.ts";

/** Every published figure of the collection, by area. */
export const PUBLISHED: readonly Fact[] = [
  ...CONDUCTOR_FACTS,
  ...LIMIT_FACTS,
  ...RCD_FACTS,
  ...ELECTRICAL_INTERVALS,
  ...LADDERS,
  ...FIRE_DOORS,
  ...WATER,
  ...WATER_INTERVALS,
  ...OTHER_INTERVALS,
  ...VEHICLES,
  ...OTHER_LIMITS,
  ...CONFORMITY,
  ...UNITS,
];
