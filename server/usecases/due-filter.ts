import type { DueStatus } from "@roundbook/schemas";
import {
  and,
  eq,
  gt,
  gte,
  isNotNull,
  isNull,
  lt,
  lte,
  or,
  type SQL,
  type SQLWrapper,
  sql,
} from "drizzle-orm";
import type { Db } from "../store/db.ts";
import { windows } from "../store/schema/due.ts";

const { earliest, due, latest, lastDone, state, stateFrom, reopens } = windows;
const COLUMNS = { earliest, due, latest, lastDone, state, stateFrom, reopens };
type Columns = Readonly<Record<keyof typeof COLUMNS, SQLWrapper>>;

/** With the plus no index of a column offers itself: something else leads. */
const FILTERING = Object.fromEntries(
  Object.entries(COLUMNS).map(([name, column]) => [name, sql`+${column}`]),
) as unknown as Columns;

/**
 * `statusOn` as a condition, in the same order: what is blocked is blocked, what is undecided is
 * that, and only then do dates tell. Windows are read in the order of `due`, so each also bounds
 * `due` where the status implies one: the index then skips the rest.
 */
function hasStatus(status: DueStatus, on: number, columns: Columns): SQL | undefined {
  const { earliest: opens, due: by, latest: last, lastDone: done, state: as } = columns;
  // The index of the day that windows open leaves the order to that of due dates.
  const hasBegun = lte(FILTERING.earliest, on);
  const expected = isExpected(on, columns);
  const tells = datesTell(on, columns);
  switch (status) {
    case "blocked":
      return and(isNotNull(as), eq(as, "blocked"), lte(columns.stateFrom, on));
    case "undecided":
      return and(isNotNull(as), eq(as, "undecided"));
    case "never-done":
      return and(isNull(done), hasBegun, tells);
    case "overdue":
      return and(lt(by, on), isNotNull(done), lt(last, on), tells);
    case "excused":
      return and(isNotNull(as), isNotNull(done), isExcused(on, columns), gte(last, on));
    case "late-window":
      return and(lt(by, on), isNotNull(done), gte(last, on), tells, expected);
    case "due":
      return and(eq(by, on), isNotNull(done), tells, expected);
    case "early":
      return and(gt(by, on), isNotNull(done), hasBegun, tells, expected);
    case "not-yet":
      return and(gt(by, on), gt(opens, on), tells, expected);
    default:
      throw new Error(`no condition for ${status satisfies never}`);
  }
}

/** Neither blocked on the day nor undecided: dates tell its status. */
const datesTell = (on: number, { state: as, stateFrom: from }: Columns): SQL | undefined =>
  or(isNull(as), eq(as, "excused"), and(eq(as, "blocked"), gt(from, on)));

const isExcused = (on: number, columns: Columns): SQL | undefined =>
  and(eq(columns.state, "excused"), lte(columns.stateFrom, on), gt(columns.reopens, on));

/** Not excused on the day; what was never done is never excused. */
const isExpected = (on: number, columns: Columns): SQL | undefined =>
  or(
    isNull(columns.state),
    isNull(columns.lastDone),
    gt(columns.stateFrom, on),
    lte(columns.reopens, on),
  );

/**
 * No window is longer than the longest: what was due before it is over, and what is due beyond it
 * has not begun, so that neither is looked at.
 */
async function boundOf(db: Db, status: DueStatus, on: number): Promise<SQL | undefined> {
  const longest = async (length: SQL) => {
    const [row] = await db.select({ days: sql<number | null>`max(${length})` }).from(windows);
    return row?.days ?? 0;
  };
  if (status === "late-window" || status === "excused")
    return gte(due, on - (await longest(sql`${latest} - ${due}`)));
  if (status === "early") return lte(due, on + (await longest(sql`${due} - ${earliest}`)));
  return undefined;
}

/**
 * The windows that stand so on a day, as a condition that the indexes of the due list serve.
 * `sorted`: few rows are led by something else, and the condition only filters them.
 */
export async function standing(
  db: Db,
  status: DueStatus | undefined,
  on: number,
  sorted: boolean,
): Promise<SQL | undefined> {
  if (status === undefined) return undefined;
  if (sorted) return hasStatus(status, on, FILTERING);
  return and(hasStatus(status, on, COLUMNS), await boundOf(db, status, on));
}
