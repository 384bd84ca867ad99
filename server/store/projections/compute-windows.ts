import {
  type Calendar,
  type CivilDate,
  computeWindow,
  type DueFacts,
  type DueWindow,
  type IntervalDefinition,
  type RuleOverride,
  type WithCovered,
  withCovered,
} from "@roundbook/schemas";
import { among } from "../among.ts";
import type { Db } from "../db.ts";
import { insertRows } from "../insert-rows.ts";
import { covered, windows } from "../schema/due.ts";
import type { assets } from "../schema/register.ts";
import { type Covers, readCovers } from "./covers.ts";
import { type Known as KnownFacts, readCalendars, readKeepers, readKnown } from "./read-facts.ts";
import { readIntervalRows, type Variant, variantsByType } from "./variants.ts";

export type DueAsset = Pick<
  typeof assets.$inferSelect,
  "id" | "assetType" | "site" | "place" | "status" | "registeredOn" | "particulars"
>;

type WindowRow = typeof windows.$inferInsert;
type CoveredRow = typeof covered.$inferInsert;

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

type Known = KnownFacts & { calendar(site: string): Calendar | undefined };

/** What a meter of the rule, or of the asset's own, showed. */
function meterOf(
  asset: DueAsset,
  definition: IntervalDefinition,
  known: Known,
  own?: RuleOverride,
) {
  const rules = [...(own === undefined ? [] : [own.rule]), definition.rule];
  const rule = rules.find((one) => one.kind === "on-usage");
  return rule === undefined
    ? {}
    : { meter: known.meter(asset.id, rule.checklist ?? definition.checklist, rule.point) };
}

function factsOf(
  asset: DueAsset,
  interval: string,
  definition: IntervalDefinition,
  known: Known,
): Omit<DueFacts, "done"> {
  const override = known.override(asset.id, interval);
  const calendar = known.calendar(asset.site);
  return {
    registered: asset.registeredOn as CivilDate,
    events: known.events(asset.id),
    particulars: asset.particulars,
    ...meterOf(asset, definition, known, override),
    ...(override === undefined ? {} : { override }),
    ...(calendar === undefined ? {} : { calendar }),
  };
}

/** What was done of each interval of an asset in a generation, by itself or by a longer check. */
function doneOf(asset: DueAsset, { plan, definitions, asks }: Covers, known: Known): WithCovered {
  const of = (interval: string): IntervalDefinition => {
    const definition = definitions.get(interval);
    if (definition === undefined) throw new Error(`no interval ${interval} in this generation`);
    return definition;
  };
  return withCovered(plan, {
    records: (interval) => known.done(asset.id, of(interval).checklist),
    facts: (interval) => factsOf(asset, interval, of(interval), known),
    asks: ({ entry }, shorter) => asks(known.hashOf(entry) ?? "", shorter),
  });
}

interface Made {
  readonly windows: WindowRow[];
  readonly covered: CoveredRow[];
}

/** All of one asset, by each interval and generation of it. */
function workOutAsset(
  asset: DueAsset,
  variants: readonly Variant[],
  coversOf: (variant: Variant) => Covers,
  known: Known,
  keeper: string | null,
): Made {
  const worlds = new Map<Covers, WithCovered>();
  const made: Made = { windows: [], covered: [] };
  for (const variant of variants) {
    const { interval, generation, definition } = variant;
    const covers = coversOf(variant);
    const world = worlds.get(covers) ?? doneOf(asset, covers, known);
    worlds.set(covers, world);
    const done =
      covers.plan.length === 0 ? known.done(asset.id, definition.checklist) : world.done(interval);
    const facts: DueFacts = { ...factsOf(asset, interval, definition, known), done };
    const window = computeWindow(definition.rule, facts);
    const { earliest, due, latest, from, lastDone, why } = window;
    const { id, site, place, assetType } = asset;
    made.windows.push({
      ...{ asset: id, interval, generation, site, place, assetType, keeper },
      ...{ earliest, due, latest, from, lastDone, why },
      ...stateOf(window),
    });
    for (const one of world.covered)
      if (one.interval === interval) made.covered.push({ ...one, asset: id, generation });
  }
  return made;
}

/** Reads once what every computation of windows needs beside its assets. */
export async function windowMaker(tx: Db, only?: (variant: Variant) => boolean) {
  const rows = await readIntervalRows(tx);
  const byType = variantsByType(rows);
  const coversOf = await readCovers(tx, rows);
  const calendar = await readCalendars(tx);
  const keeperOf = await readKeepers(tx);
  const metered = new Set([...byType.values()].flat().flatMap(meteredBy));

  return async (list: readonly DueAsset[]): Promise<void> => {
    for (let start = 0; start < list.length; start += ASSETS_AT_ONCE) {
      const some = list.slice(start, start + ASSETS_AT_ONCE);
      const ids = some.map(({ id }) => id);
      const known = { ...(await readKnown(tx, ids, metered)), calendar };
      const made = some.map((asset): Made => {
        const variants = byType.get(asset.assetType) ?? [];
        // Nothing more is due of what is retired.
        return asset.status === "retired"
          ? { windows: [], covered: [] }
          : workOutAsset(
              asset,
              only === undefined ? variants : variants.filter(only),
              coversOf,
              known,
              keeperOf(asset.place),
            );
      });
      await writeWindows(
        tx,
        ids,
        made.flatMap((one) => one.windows),
        only === undefined,
      );
      await writeCovered(
        tx,
        ids,
        made.flatMap((one) => one.covered),
        only === undefined,
      );
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
