import type { DueStatus } from "@roundbook/schemas";
import { and, eq, gt, gte, isNotNull, isNull, lt, lte, or, type SQL, sql } from "drizzle-orm";
import { windows } from "../store/schema/due.ts";

const { earliest, due, latest, lastDone, state, stateFrom, reopens } = windows;

/**
 * `statusOn` as a condition, in the same order: what is blocked is blocked, what is undecided is
 * that, and only then do dates tell. Windows are read in the order of `due`, so each also bounds
 * `due` where the status implies one: the index then skips the rest.
 */
export function hasStatus(status: DueStatus, on: number): SQL | undefined {
  switch (status) {
    case "blocked":
      return and(isNotNull(state), eq(state, "blocked"), lte(stateFrom, on));
    case "undecided":
      return and(isNotNull(state), eq(state, "undecided"));
    case "never-done":
      return and(isNull(lastDone), hasBegun(on), tells(on));
    case "overdue":
      return and(lt(due, on), isNotNull(lastDone), lt(latest, on), tells(on));
    case "excused":
      return and(isNotNull(state), isNotNull(lastDone), isExcused(on), gte(latest, on));
    case "late-window":
      return and(lt(due, on), isNotNull(lastDone), gte(latest, on), tells(on), isExpected(on));
    case "due":
      return and(eq(due, on), isNotNull(lastDone), tells(on), isExpected(on));
    case "early":
      return and(gt(due, on), isNotNull(lastDone), hasBegun(on), tells(on), isExpected(on));
    case "not-yet":
      return and(gt(due, on), gt(earliest, on), tells(on), isExpected(on));
    default:
      throw new Error(`no condition for ${status satisfies never}`);
  }
}

/** With the plus, the index of the day that windows open leaves the order to that of due dates. */
const hasBegun = (on: number): SQL => sql`+${earliest} <= ${on}`;

/** Neither blocked on the day nor undecided: dates tell its status. */
const tells = (on: number): SQL | undefined =>
  or(isNull(state), eq(state, "excused"), and(eq(state, "blocked"), gt(stateFrom, on)));

const isExcused = (on: number): SQL | undefined =>
  and(eq(state, "excused"), lte(stateFrom, on), gt(reopens, on));

/** Not excused on the day; what was never done is never excused. */
const isExpected = (on: number): SQL | undefined =>
  or(isNull(state), isNull(lastDone), gt(stateFrom, on), lte(reopens, on));
