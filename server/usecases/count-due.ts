import type { Counted, DueCounts, DueStatus } from "@roundbook/schemas";
import { and, eq, type SQL, sql } from "drizzle-orm";
import { windows } from "../store/schema/due.ts";
import { assets, intervals } from "../store/schema/register.ts";
import type { Context } from "./context.ts";
import { standing } from "./due-filter.ts";
import { dueLegs } from "./due-scope.ts";
import { findWords } from "./find-words.ts";
import { type DueAsked, dayAsked, isSeen } from "./read-due.ts";

/** Beyond this a count is not worth its time: the reader is told "more than". */
const DUE_COUNTED = 1000;

/**
 * How many windows stand how, of those asked for: a request of its own, so that no list waits for
 * it, and none of them counted further than a reader asks.
 */
export async function countDue(
  ctx: Context,
  asked: Omit<DueAsked, "cursor" | "limit" | "status">,
): Promise<DueCounts> {
  const { db } = ctx.store;
  const on = await dayAsked(ctx, asked.on, asked.site);
  const words = await findWords(db, asked.q);
  const { legs, sorted } = await dueLegs(ctx, asked, words.few);
  /** Of states that exclude each other. */
  const count = async (...states: (SQL | undefined)[]): Promise<Counted> => {
    let found = 0;
    for (const state of states)
      for (const leg of legs) {
        if (found > DUE_COUNTED) break;
        const query = db
          .select({ id: windows.id })
          .from(windows)
          .innerJoin(intervals, isSeen)
          .$dynamic();
        if (words.where) query.innerJoin(assets, eq(assets.id, windows.asset));
        const rows = await query
          .where(and(...leg, state, words.where))
          .limit(DUE_COUNTED + 1 - found);
        found += rows.length;
      }
    return { count: Math.min(found, DUE_COUNTED), more: found > DUE_COUNTED };
  };
  const stands = (status: DueStatus) => standing(db, status, on, sorted);
  const expected = and(
    await stands("never-done"),
    sql`${sorted ? sql`+` : sql``}${windows.due} <= ${on}`,
  );
  return {
    all: await count(undefined),
    overdue: await count(await stands("overdue")),
    due: await count(await stands("due"), await stands("late-window"), expected),
    neverDone: await count(await stands("never-done")),
    blocked: await count(await stands("blocked")),
    excused: await count(await stands("excused")),
    undecided: await count(await stands("undecided")),
  };
}
