import { and, asc, eq } from "drizzle-orm";
import { among } from "../store/among.ts";
import type { Db } from "../store/db.ts";
import { covered } from "../store/schema/due.ts";
import { intervals } from "../store/schema/register.ts";

/** Titles of the shorter checks that inspections stood for as well, by entry. */
export async function readCovered(
  db: Db,
  entries: Iterable<string>,
): Promise<ReadonlyMap<string, readonly string[]>> {
  const rows = await db
    .select({ entry: covered.entry, title: intervals.title })
    .from(covered)
    .innerJoin(
      intervals,
      and(eq(intervals.id, covered.interval), eq(intervals.generation, covered.generation)),
    )
    .where(among(covered.entry, entries))
    .orderBy(asc(intervals.title));
  const titles = new Map<string, string[]>();
  for (const { entry, title } of rows) titles.set(entry, [...(titles.get(entry) ?? []), title]);
  return titles;
}
