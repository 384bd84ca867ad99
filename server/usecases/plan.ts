import {
  type CivilDate,
  type Coming,
  forecast,
  formatCivilDate,
  hasDates,
  LAST_CIVIL_DATE,
  type Plan,
  type PlanWeek,
  problem,
  weekday,
} from "@roundbook/schemas";
import { eq } from "drizzle-orm";
import { among } from "../store/among.ts";
import { readLogState } from "../store/append-log.ts";
import type { Db } from "../store/db.ts";
import { readKeepers } from "../store/projections/read-facts.ts";
import { reckoner } from "../store/projections/reckon.ts";
import { readIntervalRows } from "../store/projections/variants.ts";
import { windows } from "../store/schema/due.ts";
import { assets, checklists } from "../store/schema/register.ts";
import type { Context } from "./context.ts";
import { eachSlice } from "./each-asset.ts";
import { Closures } from "./plan-closures.ts";
import { dayAsked, statusOfRow } from "./read-due.ts";
import { readPeople } from "./read-register.ts";
import { keeperIds, readCalendarRows, readTeams } from "./read-teams.ts";
import { Refusal } from "./refusal.ts";

export interface PlanAsked {
  readonly site?: string;
  readonly keeper?: string;
  readonly on?: string;
}

const WEEKS = 53;

interface Week {
  checks: number;
  minutes: number;
  /** Checks that may be done in the week before, or wait for the one after, inside their windows. */
  forward: number;
  wait: number;
}

/** Minutes that a check is expected to take, by checklist: those of its newest issue. */
async function readMinutes(db: Db): Promise<ReadonlyMap<string, number>> {
  const rows = await db
    .select({ id: checklists.id, minutes: checklists.minutes })
    .from(checklists)
    .orderBy(checklists.id, checklists.issue);
  return new Map(rows.map(({ id, minutes }) => [id, minutes]));
}

const mondayOf = (day: number): number => day - weekday(day as CivilDate) + 1;

/** Whose time it is: of the one asked for, of the keepers of a site, or of everybody. */
async function timeOf(ctx: Context, asked: PlanAsked, keeping: ReadonlySet<string>) {
  const people = await readPeople(ctx);
  const teams = await readTeams(ctx);
  const members = (id: string): readonly string[] =>
    teams.find((team) => team.id === id)?.members ?? [id];
  const whose = new Set(
    asked.keeper === undefined ? [...keeping].flatMap(members) : members(asked.keeper),
  );
  const timed = people.filter(
    ({ id, minutesAWeek }) => whose.has(id) && minutesAWeek !== undefined,
  );
  return {
    minutesAWeek:
      timed.length === 0 ? null : timed.reduce((sum, one) => sum + (one.minutesAWeek ?? 0), 0),
    keepers: timed.map(({ name }) => name),
  };
}

async function workOut(ctx: Context, asked: PlanAsked): Promise<Plan> {
  const { db } = ctx.store;
  const today = (await dayAsked(ctx, asked.on, asked.site)) as CivilDate;
  const first = mondayOf(today);
  const until = (first + WEEKS * 7 - 1) as CivilDate;
  if (until > LAST_CIVIL_DATE) {
    const params = { date: formatCivilDate(today) };
    throw new Refusal("invalid", "query-not-right", [
      problem("/on", "beyond-the-calendar", params),
    ]);
  }
  const weeks = Array.from(
    { length: WEEKS },
    (): Week => ({ checks: 0, minutes: 0, forward: 0, wait: 0 }),
  );
  const overdue = { checks: 0, minutes: 0 };
  const rows = await readIntervalRows(db);
  const { byType, read } = await reckoner(db, rows);
  const keeperOf = await readKeepers(db);
  const whose = asked.keeper === undefined ? null : new Set(await keeperIds(ctx, asked.keeper));
  const minutesOf = await readMinutes(db);
  const keeping = new Set<string>();
  const closures = new Closures(await readCalendarRows(ctx), today, until);
  const seen = new Map(rows.map((row) => [row.id, row.generation]));

  const put = (site: string, { window }: Coming, minutes: number) => {
    closures.count(site, window);
    const at = Math.floor((Math.max(window.due, today) - first) / 7);
    const week = weeks[at];
    if (week === undefined) return;
    week.checks += 1;
    week.minutes += minutes;
    const monday = first + at * 7;
    if (window.earliest < monday && monday > first) week.forward += 1;
    if (window.latest > monday + 6) week.wait += 1;
  };

  const where = asked.site === undefined ? undefined : eq(assets.site, asked.site);
  await eachSlice(db, where, async (slice) => {
    const kept = slice.filter(({ status, place }) => {
      const keeper = keeperOf(place);
      if (keeper !== null) keeping.add(keeper);
      return status !== "retired" && (whose === null || (keeper !== null && whose.has(keeper)));
    });
    const ids = kept.map(({ id }) => id);
    const stored = await db.select().from(windows).where(among(windows.asset, ids));
    const now = new Map(
      stored.map((row) => [`${row.asset} ${row.interval} ${row.generation}`, row]),
    );
    const reckon = await read(ids);
    for (const asset of kept)
      for (const variant of byType.get(asset.assetType) ?? []) {
        const { interval, generation, definition } = variant;
        if (seen.get(interval) !== generation) continue;
        const row = now.get(`${asset.id} ${interval} ${generation}`);
        if (row === undefined || !hasDates({ due: row.due as CivilDate })) continue;
        const minutes = minutesOf.get(definition.checklist) ?? 0;
        const status = statusOfRow(row, today);
        const late = status === "overdue" || status === "undecided" || status === "never-done";
        if (late) {
          overdue.checks += 1;
          overdue.minutes += minutes;
        }
        const { facts } = reckon(asset, variant);
        const coming = forecast(definition.rule, facts, { from: today, until });
        for (const [position, one] of coming.entries())
          if (position > 0 || !late) put(asset.site, one, minutes);
      }
  });
  const { minutesAWeek, keepers } = await timeOf(ctx, asked, keeping);
  const told = weeks.map(
    ({ checks, minutes }, at): PlanWeek => ({
      week: formatCivilDate((first + at * 7) as CivilDate),
      checks,
      minutes: Math.round(minutes),
    }),
  );
  return {
    from: formatCivilDate(today),
    weeks: told,
    overdue: { checks: overdue.checks, minutes: Math.round(overdue.minutes) },
    minutesAWeek,
    keepers,
    heavy:
      minutesAWeek === null
        ? []
        : weeks.flatMap((week, at) =>
            week.minutes > minutesAWeek
              ? {
                  week: told[at]?.week ?? "",
                  over: Math.round(week.minutes - minutesAWeek),
                  mayComeForward: week.forward,
                  mayWait: week.wait,
                }
              : [],
          ),
    closures: closures.told(asked.site === undefined ? null : new Set([asked.site])),
  };
}

const KEPT = 20;
const plans = new WeakMap<Context["store"], Map<string, Promise<Plan>>>();

/**
 * What is coming in the next 12 months, worked out in slices that let others in. A plan holds as
 * long as the log does not grow and the day does not change.
 */
export async function readPlan(ctx: Context, asked: PlanAsked): Promise<Plan> {
  const today = await dayAsked(ctx, asked.on, asked.site);
  const { size } = await readLogState(ctx.store.db);
  // A generation that is switched to changes dates without an entry.
  const seen = (await readIntervalRows(ctx.store.db)).map(({ generation }) => generation);
  const key = JSON.stringify([size, seen, today, asked.site ?? null, asked.keeper ?? null]);
  const kept = plans.get(ctx.store) ?? new Map<string, Promise<Plan>>();
  plans.set(ctx.store, kept);
  const known = kept.get(key);
  if (known !== undefined) return known;
  if (kept.size >= KEPT) kept.clear();
  const plan = workOut(ctx, asked);
  kept.set(key, plan);
  plan.catch(() => kept.delete(key));
  return plan;
}
