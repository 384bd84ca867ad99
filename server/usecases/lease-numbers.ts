import {
  type LeaseNumbers,
  NUMBERS_AT_ONCE,
  type NumberBlock,
  problem,
  SERIAL_DIGITS,
} from "@roundbook/schemas";
import { and, asc, eq, gt, sql } from "drizzle-orm";
import type { Db } from "../store/db.ts";
import { numberBlocks } from "../store/schema/number-blocks.ts";
import { assets } from "../store/schema/register.ts";
import type { Context, Session } from "./context.ts";
import { readDevice } from "./read-register.ts";
import { Refusal } from "./refusal.ts";

/** The first of so many numbers, at or after `near`, that nobody was leased and no asset bears. */
async function firstFree(tx: Db, prefix: string, near: number): Promise<number> {
  const digits = sql`substr(number_key, ${prefix.length + 1})`;
  // A colon comes after the nine.
  const [row] = await tx.all<{ first: number }>(sql`
    with used (a, b) as (
      select ${near} - 1, ${near} - 1
      union all
      select cast(${digits} as integer), cast(${digits} as integer) from ${assets}
      where number_key >= ${`${prefix}0`} and number_key < ${`${prefix}:`}
        and ${digits} not glob '*[^0-9]*' and length(${digits}) <= ${SERIAL_DIGITS}
        and cast(${digits} as integer) >= ${near}
      union all
      select first, last from ${numberBlocks} where prefix = ${prefix} and last >= ${near}
    ), runs (reach, next) as (
      select max(b) over (order by a, b rows unbounded preceding), lead(a) over (order by a, b)
      from used
    )
    select reach + 1 as first from runs
    where next is null or next - reach > ${NUMBERS_AT_ONCE} order by reach limit 1`);
  if (row === undefined) throw new Error("numbers have no end");
  return row.first;
}

/** A letter that lower case makes longer would shift what stands after it. */
const keyOf = (prefix: string): string => prefix.trimStart().toLowerCase();

/**
 * Leases a device the next numbers of a site. Nobody else was leased any of them and no asset of
 * any site bears one, so that two devices without a network never give out the same. Asked again
 * with the same `after`, because the answer was lost, it gives the same block.
 * @throws Refusal when the device is not enrolled for this person.
 */
export async function leaseNumbers(
  ctx: Context,
  by: Session,
  { device, site, prefix, near, after }: LeaseNumbers,
): Promise<NumberBlock> {
  const known = await readDevice(ctx, device);
  if (known?.person !== by.person)
    throw new Refusal("conflict", "device-not-enrolled", [
      problem("/device", "device-not-enrolled"),
    ]);
  const key = keyOf(prefix);
  return ctx.store.write(async (tx) => {
    const { id, first, last } = numberBlocks;
    const own = and(
      eq(numberBlocks.device, device),
      eq(numberBlocks.site, site),
      eq(numberBlocks.prefix, key),
    );
    const [unseen] = await tx
      .select({ id, first, last })
      .from(numberBlocks)
      .where(and(own, gt(id, after ?? 0)))
      .orderBy(asc(id))
      .limit(1);
    if (unseen) return { prefix, ...unseen };
    const from = await firstFree(tx, key, near);
    const block = { first: from, last: from + NUMBERS_AT_ONCE - 1 };
    const leasedAt = ctx.clock();
    const [row] = await tx
      .insert(numberBlocks)
      .values({ device, site, prefix: key, ...block, leasedAt })
      .returning({ id });
    if (row === undefined) throw new Error("a block was leased without an id");
    return { prefix, id: row.id, ...block };
  });
}
