import type { Counted, DueCounts } from "@roundbook/schemas";
import { and, eq, isNull, lte, or, type SQL } from "drizzle-orm";
import { windows } from "../store/schema/due.ts";
import { assets, intervals } from "../store/schema/register.ts";
import type { Context } from "./context.ts";
import { hasStatus } from "./due-filter.ts";
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
  const count = async (state: SQL | undefined, rare: boolean): Promise<Counted> => {
    let found = 0;
    for (const leg of await dueLegs(ctx, asked, rare || words.few)) {
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
      if (found > DUE_COUNTED) break;
    }
    return { count: Math.min(found, DUE_COUNTED), more: found > DUE_COUNTED };
  };
  const expected = and(isNull(windows.lastDone), hasStatus("never-done", on), lte(windows.due, on));
  return {
    all: await count(undefined, false),
    overdue: await count(hasStatus("overdue", on), false),
    due: await count(or(hasStatus("due", on), hasStatus("late-window", on), expected), false),
    neverDone: await count(hasStatus("never-done", on), true),
    blocked: await count(hasStatus("blocked", on), true),
    excused: await count(hasStatus("excused", on), true),
    undecided: await count(hasStatus("undecided", on), true),
  };
}
