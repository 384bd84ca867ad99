import type { IntervalDefinition } from "@roundbook/schemas";
import type { Db } from "../store/db.ts";
import { reckoner } from "../store/projections/reckon.ts";
import { readIntervalRows, type Variant } from "../store/projections/variants.ts";

/** No entry has asked for it: a generation that is only thought of. */
const SUPPOSED = -1;
/** An interval that does not exist yet; no id of ours looks like it. */
const NEW = "supposed";

/** Reckons by a definition as if it were in force, together with all others as they are. */
export async function suppose(db: Db, definition: IntervalDefinition, interval = NEW) {
  const { assetType, checklist, title } = definition;
  const stored = await readIntervalRows(db);
  const before = stored.find(({ id }) => id === interval);
  const row = {
    id: interval,
    assetType,
    checklist,
    title,
    definition: before?.definition ?? definition,
    generation: before?.generation ?? 0,
    pending: { definition, generation: SUPPOSED },
    seq: 0,
  };
  const rows = [...stored.filter(({ id }) => id !== interval), row];
  const variant: Variant = { interval, generation: SUPPOSED, definition };
  const { read } = await reckoner(db, rows);
  return { read, variant, before };
}
