import type { IntervalDefinition } from "@roundbook/schemas";
import type { Db } from "../db.ts";
import { intervals } from "../schema/register.ts";

/** An interval as windows are computed by it: as readers see it, or as it will be. */
export interface Variant {
  readonly interval: string;
  readonly generation: number;
  readonly definition: IntervalDefinition;
}

export type Intervals = readonly (typeof intervals.$inferSelect)[];

export const readIntervalRows = (tx: Db): Promise<Intervals> => tx.select().from(intervals);

const seen = ({ id, generation, definition }: Intervals[number]): readonly Variant[] =>
  generation === 0 ? [] : [{ interval: id, generation, definition }];

const awaited = ({ id, pending }: Intervals[number]): readonly Variant[] =>
  pending === null ? [] : [{ interval: id, ...pending }];

/** By asset type, both generations: what is sealed while one is worked out counts in it too. */
export function variantsByType(rows: Intervals): ReadonlyMap<string, readonly Variant[]> {
  const byType = new Map<string, Variant[]>();
  for (const variant of rows.flatMap((row) => [...seen(row), ...awaited(row)])) {
    const { assetType } = variant.definition;
    byType.set(assetType, [...(byType.get(assetType) ?? []), variant]);
  }
  return byType;
}

/** How an interval reads in a generation: it is worked out together with those that it hangs on. */
export const definitionIn = (row: Intervals[number], generation: number): IntervalDefinition =>
  row.pending !== null && row.pending.generation === generation
    ? row.pending.definition
    : row.definition;
