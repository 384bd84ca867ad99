import { type CivilDate, computeWindow, type DueFacts, type DueWindow } from "@roundbook/schemas";
import { among } from "../among.ts";
import type { Db } from "../db.ts";
import { insertRows } from "../insert-rows.ts";
import { windows } from "../schema/due.ts";
import type { assets } from "../schema/register.ts";
import { type Known, readCalendars, readKeepers, readKnown } from "./read-facts.ts";
import { readIntervalRows, type Variant, variantsByType } from "./variants.ts";

export type DueAsset = Pick<
  typeof assets.$inferSelect,
  "id" | "assetType" | "site" | "place" | "status" | "registeredOn" | "particulars"
>;

type WindowRow = typeof windows.$inferInsert;

const ASSETS_AT_ONCE = 2000;

/** Which checklist reads the meter of a rule. */
const meteredBy = ({ definition: { rule, checklist } }: Variant): readonly string[] =>
  rule.kind === "on-usage" ? [rule.checklist ?? checklist] : [];

function stateOf({
  undecided,
  closure,
}: DueWindow): Pick<WindowRow, "state" | "stateFrom" | "reopens"> {
  if (closure !== undefined)
    return { state: closure.status, stateFrom: closure.from, reopens: closure.reopens };
  return { state: undecided ? "undecided" : null, stateFrom: null, reopens: null };
}

function factsOf(asset: DueAsset, variant: Variant, known: Known): DueFacts {
  const { interval, definition } = variant;
  const { checklist, rule } = definition;
  const override = known.override(asset.id, interval);
  return {
    done: known.done(asset.id, checklist),
    registered: asset.registeredOn as CivilDate,
    events: known.events(asset.id),
    particulars: asset.particulars,
    ...(rule.kind === "on-usage"
      ? { meter: known.meter(asset.id, rule.checklist ?? checklist, rule.point) }
      : {}),
    ...(override === undefined ? {} : { override }),
  };
}

/** Reads once what every computation of windows needs beside its assets. */
export async function windowMaker(tx: Db, only?: (variant: Variant) => boolean) {
  const byType = variantsByType(await readIntervalRows(tx));
  const calendarOf = await readCalendars(tx);
  const keeperOf = await readKeepers(tx);
  const metered = new Set([...byType.values()].flat().flatMap(meteredBy));

  const rowsOf = (asset: DueAsset, known: Known): WindowRow[] => {
    // Nothing more is due of what is retired.
    if (asset.status === "retired") return [];
    const calendar = calendarOf(asset.site);
    const variants = byType.get(asset.assetType) ?? [];
    return (only === undefined ? variants : variants.filter(only)).map((variant) => {
      const facts = factsOf(asset, variant, known);
      const window = computeWindow(
        variant.definition.rule,
        calendar === undefined ? facts : { ...facts, calendar },
      );
      const { earliest, due, latest, from, lastDone, why } = window;
      return {
        asset: asset.id,
        interval: variant.interval,
        generation: variant.generation,
        site: asset.site,
        place: asset.place,
        assetType: asset.assetType,
        keeper: keeperOf(asset.place),
        ...{ earliest, due, latest, from, lastDone, why },
        ...stateOf(window),
      };
    });
  };

  return async (list: readonly DueAsset[]): Promise<void> => {
    for (let start = 0; start < list.length; start += ASSETS_AT_ONCE) {
      const some = list.slice(start, start + ASSETS_AT_ONCE);
      const ids = some.map(({ id }) => id);
      const known = await readKnown(tx, ids, metered);
      const rows = some.flatMap((asset) => rowsOf(asset, known));
      await writeWindows(tx, ids, rows, only === undefined);
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

/** Computes the windows of these assets again, from everything known about them. */
export async function computeWindows(tx: Db, list: readonly DueAsset[]): Promise<void> {
  const make = await windowMaker(tx);
  await make(list);
}
