import { calendarProblems, type Problem, problem, type SiteCalendar } from "@roundbook/schemas";
import { appendNow } from "./append-now.ts";
import { atOnce } from "./at-once.ts";
import type { Context, Session } from "./context.ts";
import { ensureHolidays, readRegions } from "./holidays.ts";
import { readPlaces } from "./read-register.ts";
import { Refusal } from "./refusal.ts";

async function problemsOf(calendar: SiteCalendar): Promise<Problem[]> {
  const { region, ...own } = calendar;
  const known = region === undefined || (await readRegions()).some(({ code }) => code === region);
  const problems = calendarProblems(own);
  return known ? problems : [problem("/region", "unknown-region", { region }), ...problems];
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
  const { region } = calendar;
  await atOnce(ctx, async (at) => {
    if (region !== undefined) await ensureHolidays(at, by, [region]);
    await appendNow(at, by, { kind: "calendar-set", asset: null, body: { site, calendar } });
  });
}
