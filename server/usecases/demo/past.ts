import { addDuration, type CivilDate } from "@roundbook/schemas";
import type { DemoAsset } from "./assets.ts";
import { KINDS } from "./kinds.ts";
import { createRandom } from "./random.ts";

export interface PastInspection {
  readonly asset: DemoAsset;
  readonly on: CivilDate;
  /** Inspections back from the last one, which is 0. */
  readonly age: number;
}

/** Days from today to the due date where the story wants one; negative is past. */
const DUE_IN: Readonly<Record<string, number>> = {
  "4012": -4,
  "4058": 0,
  "4059": -12,
  "4031": 2,
  "4033": 17,
  "4035": 17,
  "4047": 18,
  "4067": 172,
  "1015": 170,
  "1061": 0,
  "1022": 0,
  "7062": -9,
  "7104": 11,
  "7052": 1,
};

/** The last day on which an inspection would be due again on `due`. */
function doneFor(due: CivilDate, every: string): CivilDate {
  let day = due;
  while (addDuration(day, every) > due) day = (day - 1) as CivilDate;
  return day;
}

/** Assets of a kind at one site are walked on one day: they share a seed. */
const seedOf = ({ kind, room }: DemoAsset): number =>
  [...kind, ...room.slice(0, 1)].reduce((seed, sign) => seed * 31 + sign.charCodeAt(0), 7) >>> 0;

/** An asset's inspections in order, from its registration to the one its due date stands on. */
export function pastOf(
  asset: DemoAsset,
  registered: CivilDate,
  today: CivilDate,
): PastInspection[] {
  const random = createRandom(seedOf(asset));
  const { every } = KINDS[asset.kind].interval;
  const whole = addDuration(today, every) - today;
  const shared = random.whole(Math.ceil(whole * 0.15), whole - 2);
  const dueIn = DUE_IN[asset.number] ?? shared;
  const days: CivilDate[] = [];
  let due = (today + dueIn) as CivilDate;
  for (let day = doneFor(due, every); day > registered; day = doneFor(due, every)) {
    days.push(day);
    // The one before was a few days early or late: rounds are walked when there is time.
    due = (day + random.whole(-3, 5)) as CivilDate;
  }
  return days.map((on, age) => ({ asset, on, age })).reverse();
}
