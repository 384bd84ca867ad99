import type { DueStatus } from "@roundbook/schemas";
import { and, eq, gt, gte, isNotNull, isNull, lt, lte, type SQL, sql } from "drizzle-orm";
import { windows } from "../store/schema/due.ts";

const { earliest, due, latest, lastDone } = windows;

/**
 * `statusOn` as a condition. Windows are read in the order of `due`, so each also bounds `due`
 * where the status implies one: the index then skips the rest.
 */
export function hasStatus(status: DueStatus, on: number): SQL | undefined {
  const done = isNotNull(lastDone);
  switch (status) {
    case "never-done":
      return isNull(lastDone);
    case "overdue":
      return and(done, lt(due, on), lt(latest, on));
    case "late-window":
      return and(done, lt(due, on), gte(latest, on));
    case "due":
      return and(done, eq(due, on));
    case "early":
      return and(done, gt(due, on), lte(earliest, on));
    case "not-yet":
      return and(done, gt(due, on), gt(earliest, on));
    case "undecided":
    case "excused":
    case "blocked":
      // Windows are computed without calendars, so that none has a closure.
      return sql`0`;
    default:
      throw new Error(`no condition for ${status satisfies never}`);
  }
}
