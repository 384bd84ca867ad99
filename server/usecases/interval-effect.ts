import {
  type CivilDate,
  computeWindow,
  expectedMinutes,
  type IntervalDefinition,
  type IntervalEffect,
  spreadOf,
  statusOn,
} from "@roundbook/schemas";
import { and, eq } from "drizzle-orm";
import { among } from "../store/among.ts";
import { windows } from "../store/schema/due.ts";
import type { Context } from "./context.ts";
import { eachSlice, ofType } from "./each-asset.ts";
import { readNewestIssue } from "./read-checklists.ts";
import { dayAsked, statusOfRow } from "./read-due.ts";
import { Refusal } from "./refusal.ts";
import { intervalProblems } from "./set-interval.ts";
import { suppose } from "./supposed-interval.ts";

const EXAMPLES = 10;
const DAYS_A_MONTH = 146_097 / 4800;

/** Checks a month by a rule, on the mean; null where the rule does not tell. */
function perMonth(definition: IntervalDefinition | undefined): number | null {
  if (definition === undefined) return 0;
  const spread = spreadOf(definition.rule);
  return spread === null ? null : DAYS_A_MONTH / ((spread.least + spread.most) / 2);
}

/** What an interval would do today if it read so, before anybody says it: nothing is written. */
export async function readIntervalEffect(
  ctx: Context,
  definition: IntervalDefinition,
  interval?: string,
): Promise<IntervalEffect> {
  const problems = await intervalProblems(ctx, definition, interval ?? "");
  if (problems.length > 0) throw new Refusal("invalid", "interval-not-right", problems);
  const { db } = ctx.store;
  const { read, variant, before } = await suppose(db, definition, interval);
  const on = (await dayAsked(ctx)) as CivilDate;
  const told = { assets: 0, overdueNow: 0, overdueThen: 0, sooner: 0, later: 0, undecided: 0 };
  const examples: string[] = [];
  await eachSlice(db, ofType(definition.assetType), async (slice) => {
    const ids = slice.map(({ id }) => id);
    const reckon = await read(ids);
    const stored =
      before === undefined
        ? []
        : await db
            .select()
            .from(windows)
            .where(
              and(
                eq(windows.interval, before.id),
                eq(windows.generation, before.generation),
                among(windows.asset, ids),
              ),
            );
    const now = new Map(stored.map((row) => [row.asset, row]));
    for (const asset of slice) {
      if (asset.status === "retired") continue;
      told.assets += 1;
      const then = computeWindow(definition.rule, reckon(asset, variant).facts);
      const status = statusOn(then, on);
      if (then.undecided) told.undecided += 1;
      if (status === "overdue") {
        told.overdueThen += 1;
        if (examples.length < EXAMPLES) examples.push(asset.number);
      }
      const row = now.get(asset.id);
      if (row === undefined) continue;
      if (statusOfRow(row, on) === "overdue") told.overdueNow += 1;
      if (then.due < row.due) told.sooner += 1;
      if (then.due > row.due) told.later += 1;
    }
  });
  const newest = await readNewestIssue(ctx, definition.checklist);
  const minutes = newest === null ? 0 : expectedMinutes(newest.document);
  const [was, is] = [perMonth(before?.definition), perMonth(definition)];
  const minutesAMonth =
    was === null || is === null ? null : Math.round((is - was) * minutes * told.assets);
  return { ...told, examples, minutesAMonth };
}
