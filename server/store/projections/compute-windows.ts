import { computeWindow, type DueWindow } from "@roundbook/schemas";
import { among } from "../among.ts";
import type { Db } from "../db.ts";
import { insertRows } from "../insert-rows.ts";
import { covered, windows } from "../schema/due.ts";
import { readKeepers } from "./read-facts.ts";
import { type DueAsset, reckoner } from "./reckon.ts";
import { readIntervalRows, type Variant } from "./variants.ts";

type WindowRow = typeof windows.$inferInsert;
type CoveredRow = typeof covered.$inferInsert;

const ASSETS_AT_ONCE = 2000;

function stateOf({
  undecided,
  closure,
}: DueWindow): Pick<WindowRow, "state" | "stateFrom" | "reopens"> {
  if (closure !== undefined)
    return { state: closure.status, stateFrom: closure.from, reopens: closure.reopens };
  return { state: undecided ? "undecided" : null, stateFrom: null, reopens: null };
}

/** Reads once what every computation of windows needs beside its assets. */
export async function windowMaker(tx: Db, only?: (variant: Variant) => boolean) {
  const { byType, read } = await reckoner(tx, await readIntervalRows(tx));
  const keeperOf = await readKeepers(tx);

  return async (list: readonly DueAsset[]): Promise<void> => {
    for (let start = 0; start < list.length; start += ASSETS_AT_ONCE) {
      const some = list.slice(start, start + ASSETS_AT_ONCE);
      const ids = some.map(({ id }) => id);
      const reckon = await read(ids);
      const made: WindowRow[] = [];
      const stoodFor: CoveredRow[] = [];
      for (const asset of some) {
        // Nothing more is due of what is retired.
        if (asset.status === "retired") continue;
        const { id, site, place, assetType } = asset;
        const keeper = keeperOf(place);
        for (const variant of byType.get(assetType) ?? []) {
          if (only !== undefined && !only(variant)) continue;
          const { interval, generation, definition } = variant;
          const reckoned = reckon(asset, variant);
          const window = computeWindow(definition.rule, reckoned.facts);
          const { earliest, due, latest, from, lastDone, why } = window;
          made.push({
            ...{ asset: id, interval, generation, site, place, assetType, keeper },
            ...{ earliest, due, latest, from, lastDone, why },
            ...stateOf(window),
          });
          for (const one of reckoned.covered) stoodFor.push({ ...one, asset: id, generation });
        }
      }
      await writeWindows(tx, ids, made, only === undefined);
      await writeCovered(tx, ids, stoodFor, only === undefined);
    }
  };
}

const keyOf = ({ asset, interval, generation }: WindowRow): string =>
  `${asset} ${interval} ${generation}`;

/** A window keeps its id while there is one: the place in a list that somebody is reading. */
async function writeWindows(
  tx: Db,
  ids: readonly string[],
  rows: readonly WindowRow[],
  all: boolean,
): Promise<void> {
  const { id, asset, interval, generation } = windows;
  const before = await tx
    .select({ id, asset, interval, generation })
    .from(windows)
    .where(among(asset, ids));
  const known = new Map(before.map((row) => [keyOf(row as WindowRow), row.id]));
  const kept = rows.map((row) => {
    const key = keyOf(row);
    const same = known.get(key);
    known.delete(key);
    return same === undefined ? row : { ...row, id: same };
  });
  if (all && known.size > 0) await tx.delete(windows).where(among(windows.id, known.values()));
  await insertRows(tx, windows, kept, "replace");
}

/** What longer checks stood for, of the generations that were worked out. */
async function writeCovered(
  tx: Db,
  ids: readonly string[],
  rows: readonly CoveredRow[],
  all: boolean,
): Promise<void> {
  if (all) await tx.delete(covered).where(among(covered.asset, ids));
  await insertRows(tx, covered, rows, "replace");
}

/** Computes the windows of these assets again, from everything known about them. */
export async function computeWindows(tx: Db, list: readonly DueAsset[]): Promise<void> {
  const make = await windowMaker(tx);
  await make(list);
}
