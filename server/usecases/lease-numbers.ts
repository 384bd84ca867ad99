import {
  type LeaseNumbers,
  NUMBERS_AT_ONCE,
  type NumberBlock,
  problem,
  SERIAL_DIGITS,
} from "@roundbook/schemas";
import { and, asc, eq, gt, gte, lt, sql } from "drizzle-orm";
import type { Db } from "../store/db.ts";
import { numberBlocks } from "../store/schema/number-blocks.ts";
import { assets } from "../store/schema/register.ts";
import type { Context, Session } from "./context.ts";
import { readDevice } from "./read-register.ts";
import { Refusal } from "./refusal.ts";

/** The highest number of a prefix that any asset bears, of whatever site and status; 0 for none. */
async function highestBorne(tx: Db, prefix: string): Promise<number> {
  const digits = sql`substr(${assets.numberKey}, ${prefix.length + 1})`;
  const [row] = await tx
    .select({ most: sql<number | null>`max(cast(${digits} as integer))` })
    .from(assets)
    .where(
      and(
        // A colon comes after the nine.
        gte(assets.numberKey, `${prefix}0`),
        lt(assets.numberKey, `${prefix}:`),
        sql`${digits} not glob '*[^0-9]*' and length(${digits}) <= ${SERIAL_DIGITS}`,
      ),
    );
  return row?.most ?? 0;
}

/** A letter that lower case makes longer would shift what stands after it. */
const keyOf = (prefix: string): string => prefix.trimStart().toLowerCase();

/**
 * Leases a device the next numbers of a prefix. They follow all that were leased and all that
 * assets of any site bear, so that two devices without a network never give out the same. Asked
 * again with the same `after`, because the answer was lost, it gives the same block.
 * @throws Refusal when the device is not enrolled for this person.
 */
export async function leaseNumbers(
  ctx: Context,
  by: Session,
  { device, prefix, after }: LeaseNumbers,
): Promise<NumberBlock> {
  const known = await readDevice(ctx, device);
  if (known?.person !== by.person)
    throw new Refusal("conflict", "device-not-enrolled", [
      problem("/device", "device-not-enrolled"),
    ]);
  const key = keyOf(prefix);
  return ctx.store.write(async (tx) => {
    const own = and(eq(numberBlocks.device, device), eq(numberBlocks.prefix, key));
    const [unseen] = await tx
      .select({ first: numberBlocks.first, last: numberBlocks.last })
      .from(numberBlocks)
      .where(and(own, gt(numberBlocks.first, after ?? -1)))
      .orderBy(asc(numberBlocks.first))
      .limit(1);
    if (unseen) return { prefix, ...unseen };
    const [leased] = await tx
      .select({ most: sql<number | null>`max(${numberBlocks.last})` })
      .from(numberBlocks)
      .where(eq(numberBlocks.prefix, key));
    const first = Math.max(leased?.most ?? 0, await highestBorne(tx, key)) + 1;
    const last = first + NUMBERS_AT_ONCE - 1;
    const leasedAt = ctx.clock();
    await tx.insert(numberBlocks).values({ device, prefix: key, first, last, leasedAt });
    return { prefix, first, last };
  });
}
