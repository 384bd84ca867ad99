import { and, ne } from "drizzle-orm";
import { among } from "../store/among.ts";
import type { Db } from "../store/db.ts";
import { assets } from "../store/schema/register.ts";
import { numberKey } from "../store/words.ts";

/**
 * Which of these asset numbers, as looked up (`numberKey`), an asset in use bears. Numbers are not
 * unique: devices lease blocks of them, and a clash is sealed, flagged and mended.
 */
export async function takenNumbers(tx: Db, numbers: readonly string[]): Promise<Set<string>> {
  if (numbers.length === 0) return new Set();
  const rows = await tx
    .select({ key: assets.numberKey })
    .from(assets)
    .where(and(among(assets.numberKey, numbers.map(numberKey)), ne(assets.status, "retired")));
  return new Set(rows.map((row) => row.key));
}
