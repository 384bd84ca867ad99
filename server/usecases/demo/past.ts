import { addDuration, type CivilDate, calendarOf } from "@roundbook/schemas";
import type { DemoAsset } from "./assets.ts";
import { type CheckName, KINDS, type OtherName } from "./kinds.ts";
import { SEASONS } from "./places.ts";
import { createRandom } from "./random.ts";

export interface PastInspection {
  readonly asset: DemoAsset;
  readonly check: CheckName;
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

/** Nobody walks a site that is closed. */
const isOpen = ({ room }: DemoAsset): ((day: CivilDate) => boolean) => {
  const season = SEASONS[room.slice(0, 1)];
  const calendar = calendarOf(season === undefined ? {} : { seasons: [season] });
  return (day) => calendar.shut(day) === null;
};

/** Weekly looks were taken up half a year ago. */
const SINCE_DAYS = { vehicle: 182 } as const;

/** Days before today on which a check that is no round of its own was last done. */
const DONE_BEFORE = { calorifier_yearly: 212, vehicle_service: 150 } as const;

/** On each day a site opened again since the registration. */
function reopenings({ room }: DemoAsset, registered: CivilDate, today: CivilDate): CivilDate[] {
  const season = SEASONS[room.slice(0, 1)];
  if (season === undefined) return [];
  const calendar = calendarOf({ seasons: [season] });
  const days: CivilDate[] = [];
  for (let at = registered; ; ) {
    const next = calendar.nextReopening(at);
    if (next === undefined || next.on > today) return days;
    days.push(next.on);
    at = (next.on + 1) as CivilDate;
  }
}

/** When an asset's other checks were done. */
export function otherPastOf(
  asset: DemoAsset,
  registered: CivilDate,
  today: CivilDate,
): PastInspection[] {
  const daysOf = (check: OtherName): CivilDate[] =>
    check === "reopening"
      ? reopenings(asset, registered, today)
      : [(today - DONE_BEFORE[check]) as CivilDate];
  return KINDS[asset.kind].others.flatMap((check) => {
    const days = daysOf(check);
    return days.map((on, position) => ({ asset, check, on, age: days.length - 1 - position }));
  });
}

/** An asset's inspections in order, from its registration to the one its due date stands on. */
export function pastOf(
  asset: DemoAsset,
  registered: CivilDate,
  today: CivilDate,
): PastInspection[] {
  const random = createRandom(seedOf(asset));
  const { every } = KINDS[asset.kind];
  const since =
    asset.kind in SINCE_DAYS ? Math.max(registered, today - SINCE_DAYS.vehicle) : registered;
  const whole = addDuration(today, every) - today;
  const shared = random.whole(Math.ceil(whole * 0.15), whole - 2);
  const dueIn = DUE_IN[asset.number] ?? shared;
  const days: CivilDate[] = [];
  let due = (today + dueIn) as CivilDate;
  for (let day = doneFor(due, every); day > since; day = doneFor(due, every)) {
    days.push(day);
    // The one before was a few days early or late: rounds are walked when there is time.
    due = (day + random.whole(-3, 5)) as CivilDate;
  }
  const walked = days.filter(isOpen(asset));
  return walked.map((on, age) => ({ asset, check: asset.kind, on, age })).reverse();
}
