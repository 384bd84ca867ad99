import type { Holidays } from "@roundbook/schemas";
import { civilParts, parseCivilDate } from "@roundbook/schemas";
import { among } from "../store/among.ts";
import { calendars, holidays } from "../store/schema/calendars.ts";
import { appendNow } from "./append-now.ts";
import { atOnce } from "./at-once.ts";
import { civilNow, estateZone } from "./civil-now.ts";
import type { Context, Session } from "./context.ts";
import { readEstate } from "./create-estate.ts";
import { enterProgram } from "./program-person.ts";

/** A country of ISO 3166-1, or a part of it that has holidays of its own. */
export interface Region {
  /** Such as GB-ENG. */
  readonly code: string;
  readonly name: string;
}

/** Loaded when first asked for: its tables are large, and most of the time nobody asks. */
const library = async () => (await import("date-holidays")).default;

export async function readRegions(): Promise<Region[]> {
  const Library = await library();
  const all = new Library();
  return Object.entries(all.getCountries("en"))
    .flatMap(([country, name]) => {
      const parts = Object.entries(all.getStates(country, "en") ?? {})
        .filter(([part]) => /^[A-Z0-9]{1,3}$/.test(part))
        .map(([part, title]) => ({ code: `${country}-${part}`, name: `${name}, ${title}` }));
      return /^[A-Z]{2}$/.test(country) ? [{ code: country, name }, ...parts] : [];
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

const WEEK_MS = 7 * 86_400_000;

/**
 * Public holidays of a region in a year. Where one falls on a weekend and another day stands for
 * it, that day alone counts (gov.uk/bank-holidays gives it as the "substitute day").
 */
export async function holidaysOf(region: string, year: number): Promise<Holidays["holidays"]> {
  const Library = await library();
  const [country = "", part] = region.split("-");
  const calendar = part === undefined ? new Library(country) : new Library(country, part);
  const found = calendar.getHolidays(year, "en").filter(({ type }) => type === "public");
  const standsFor = found.filter(({ substitute }) => substitute === true);
  const replaced = (one: (typeof found)[number]): boolean =>
    standsFor.some(
      (other) =>
        other !== one &&
        other.name.startsWith(one.name) &&
        other.start > one.start &&
        other.start.getTime() - one.start.getTime() <= WEEK_MS,
    );
  const days = found
    .filter((one) => !replaced(one))
    .map(({ date, name }) => ({
      date: date.slice(0, 10),
      reason: name.replace(/ \(substitute day\)$/, ""),
    }));
  const once = new Map(days.map((one) => [one.date, one]));
  return [...once.values()].sort((a, b) => (a.date < b.date ? -1 : 1));
}

/** Years before and after this one that are written down. */
const YEARS_BACK = 1;
const YEARS_AHEAD = 5;

interface Year {
  readonly region: string;
  readonly year: number;
}

async function missingYears(ctx: Context, regions: ReadonlySet<string>): Promise<Year[]> {
  const today = parseCivilDate(civilNow(ctx, await estateZone(ctx)));
  if (today === undefined || regions.size === 0) return [];
  const { year: now } = civilParts(today);
  const known = await ctx.store.db
    .select({ region: holidays.region, year: holidays.year })
    .from(holidays)
    .where(among(holidays.region, regions));
  const written = new Set(known.map(({ region, year }) => `${region} ${year}`));
  const missing: Year[] = [];
  for (const region of regions)
    for (let year = now - YEARS_BACK; year <= now + YEARS_AHEAD; year += 1)
      if (!written.has(`${region} ${year}`)) missing.push({ region, year });
  return missing;
}

/** Seals the holidays of years that are not written down yet; what is written stays. */
export async function ensureHolidays(
  ctx: Context,
  by: Session,
  regions: Iterable<string>,
): Promise<void> {
  for (const { region, year } of await missingYears(ctx, new Set(regions)))
    await appendNow(ctx, by, {
      kind: "holidays-set",
      asset: null,
      body: { region, year, holidays: await holidaysOf(region, year) },
    });
}

/** Writes down the years ahead that calendars in use have come to need, as when a server starts. */
export async function renewHolidays(ctx: Context): Promise<void> {
  if (!(await readEstate(ctx))) return;
  const rows = await ctx.store.db.select().from(calendars);
  const regions = new Set(rows.flatMap(({ calendar }) => calendar.region ?? []));
  if ((await missingYears(ctx, regions)).length === 0) return;
  await atOnce(ctx, async (at) => ensureHolidays(at, await enterProgram(at, "Server"), regions));
}
