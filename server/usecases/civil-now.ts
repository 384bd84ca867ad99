import { civilDateAt, formatCivilDate } from "@roundbook/schemas";
import { asc, eq } from "drizzle-orm";
import { places } from "../store/schema/register.ts";
import type { Context } from "./context.ts";

const formats = new Map<string, Intl.DateTimeFormat>();

function formatFor(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known !== undefined) return known;
  const format = new Intl.DateTimeFormat("en-GB", {
    timeZone: zone,
    hourCycle: "h23",
    year: "numeric",
    month: "numeric",
    day: "numeric",
    hour: "numeric",
    minute: "numeric",
    second: "numeric",
  });
  formats.set(zone, format);
  return format;
}

/** Minutes east of UTC that clocks of an IANA zone show at an instant. @throws RangeError for no zone. */
export function offsetMinutes(zone: string, instant: number): number {
  const parts = new Map<string, number>(
    formatFor(zone)
      .formatToParts(instant)
      .map(({ type, value }) => [type, Number(value)]),
  );
  const part = (type: string) => parts.get(type) ?? 0;
  const shown = Date.UTC(
    part("year"),
    part("month") - 1,
    part("day"),
    part("hour"),
    part("minute"),
    part("second"),
  );
  return Math.round((shown - Math.floor(instant / 1000) * 1000) / 60_000);
}

/** YYYY-MM-DD at an instant in a zone. */
export const civilAt = (zone: string, instant: number): string =>
  formatCivilDate(civilDateAt(instant, offsetMinutes(zone, instant)));

export const civilNow = (ctx: Context, zone: string): string => civilAt(zone, ctx.clock());

/** The zone of a site, or of the estate's first site; UTC until there is one. */
export async function estateZone(ctx: Context, site?: string): Promise<string> {
  const [row] = await ctx.store.db
    .select({ zone: places.zone })
    .from(places)
    .where(site === undefined ? eq(places.level, "site") : eq(places.id, site))
    .orderBy(asc(places.seq))
    .limit(1);
  return row?.zone ?? "UTC";
}
