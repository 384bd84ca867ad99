import { setImmediate } from "node:timers/promises";
import { asc, gt } from "drizzle-orm";
import type { Sealed } from "../append-log.ts";
import type { Db } from "../db.ts";
import { entryDocs } from "../schema/log.ts";
import { take } from "./project.ts";
import { emptyProjections } from "./tables.ts";
import { computeAllWindows, settleIntervals } from "./work-out.ts";

const ENTRIES_AT_ONCE = 500;

/** Derives every projection from the log again, in the caller's transaction. Gives the entries read. */
export async function rebuildProjections(tx: Db): Promise<number> {
  await emptyProjections(tx);
  let last = 0;
  for (;;) {
    const docs = await tx
      .select({ seq: entryDocs.seq, entry: entryDocs.entry, leaf: entryDocs.leaf })
      .from(entryDocs)
      .where(gt(entryDocs.seq, last))
      .orderBy(asc(entryDocs.seq))
      .limit(ENTRIES_AT_ONCE);
    const sealed = docs.map(
      ({ entry, leaf }): Sealed => ({ entry: JSON.parse(entry), leaf: JSON.parse(leaf) }),
    );
    await take(tx, sealed);
    last += docs.length;
    if (docs.length < ENTRIES_AT_ONCE) break;
    await setImmediate();
  }
  await settleIntervals(tx);
  await computeAllWindows(tx);
  return last;
}
