import { at, type Problem, parseCivilDate, problem, type SiteCalendar } from "@roundbook/schemas";
import { appendNow } from "./append-now.ts";
import type { Context, Session } from "./context.ts";
import { ensureHolidays, readRegions } from "./holidays.ts";
import { readPlaces } from "./read-register.ts";
import { Refusal } from "./refusal.ts";

/** 2024 has a 29 February. */
const isDayOfYear = (monthAndDay: string): boolean =>
  parseCivilDate(`2024-${monthAndDay}`) !== undefined;

async function problemsOf({ region, closures = [], seasons = [] }: SiteCalendar) {
  const problems: Problem[] = [];
  if (region !== undefined && !(await readRegions()).some(({ code }) => code === region))
    problems.push(problem("/region", "unknown-region", { region }));
  for (const [index, { from, to }] of closures.entries()) {
    for (const [name, date] of Object.entries({ from, to }))
      if (parseCivilDate(date) === undefined)
        problems.push(problem(at("/closures", index, name), "no-such-date", { date }));
    if (from > to)
      problems.push(problem(at("/closures", index, "to"), "ends-before", { from, to }));
  }
  for (const [index, season] of seasons.entries())
    for (const name of ["from", "to"] as const)
      if (!isDayOfYear(season[name]))
        problems.push(problem(at("/seasons", index, name), "no-such-date", { date: season[name] }));
  return problems;
}

/** Says when a site is closed, as a whole; holidays of its region are written down with it. */
export async function setCalendar(
  ctx: Context,
  by: Session,
  site: string,
  calendar: SiteCalendar,
): Promise<void> {
  const place = (await readPlaces(ctx)).find(({ id }) => id === site);
  if (place?.level !== "site") throw new Refusal("not-found", "no-such-site");
  const problems = await problemsOf(calendar);
  if (problems.length > 0) throw new Refusal("invalid", "calendar-not-right", problems);
  if (calendar.region !== undefined) await ensureHolidays(ctx, by, [calendar.region]);
  await appendNow(ctx, by, { kind: "calendar-set", asset: null, body: { site, calendar } });
}
