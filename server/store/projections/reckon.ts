import {
  type Calendar,
  type CivilDate,
  type DueFacts,
  type IntervalDefinition,
  type IntervalRule,
  type WithCovered,
  withCovered,
} from "@roundbook/schemas";
import type { Db } from "../db.ts";
import type { assets } from "../schema/register.ts";
import { type Covers, readCovers } from "./covers.ts";
import { type Known as KnownFacts, readCalendars, readKnown } from "./read-facts.ts";
import { type Intervals, type Variant, variantsByType } from "./variants.ts";

export type DueAsset = Pick<
  typeof assets.$inferSelect,
  "id" | "assetType" | "site" | "place" | "status" | "registeredOn" | "particulars"
>;

/** Which checklist reads the meter of a rule. */
const meteredBy = ({ definition: { rule, checklist } }: Variant): readonly string[] =>
  rule.kind === "on-usage" ? [rule.checklist ?? checklist] : [];

type Known = KnownFacts & { calendar(site: string): Calendar | undefined };

/** What the meter of a rule showed; nothing where it goes by no use. */
function meterOf(
  asset: DueAsset,
  rule: IntervalRule,
  { checklist }: IntervalDefinition,
  known: Known,
) {
  return rule.kind === "on-usage"
    ? { meter: known.meter(asset.id, rule.checklist ?? checklist, rule.point) }
    : {};
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
    ...meterOf(asset, definition.rule, definition, known),
    ...(override === undefined
      ? {}
      : { override: { ...override, ...meterOf(asset, override.rule, definition, known) } }),
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

/** What windows of one asset by one interval follow from. */
export interface Reckoned {
  readonly facts: DueFacts;
  readonly covered: WithCovered["covered"];
}

/**
 * Reads once what every reckoning needs beside its assets, and then all that it needs of some: by
 * the intervals as they are stored, or as somebody thinks of having them.
 */
export async function reckoner(tx: Db, rows: Intervals) {
  const byType = variantsByType(rows);
  const coversOf = await readCovers(tx, rows);
  const calendar = await readCalendars(tx);
  const metered = new Set([...byType.values()].flat().flatMap(meteredBy));

  const read = async (ids: readonly string[]) => {
    const known: Known = { ...(await readKnown(tx, ids, metered)), calendar };
    const worlds = new Map<string, Map<Covers, WithCovered>>();
    const worldOf = (asset: DueAsset, covers: Covers): WithCovered => {
      const own = worlds.get(asset.id) ?? new Map<Covers, WithCovered>();
      worlds.set(asset.id, own);
      const world = own.get(covers) ?? doneOf(asset, covers, known);
      own.set(covers, world);
      return world;
    };
    return (asset: DueAsset, variant: Variant): Reckoned => {
      const { interval, definition } = variant;
      const facts = factsOf(asset, interval, definition, known);
      const covers = coversOf(variant);
      if (covers.plan.length === 0)
        return {
          facts: { ...facts, done: known.done(asset.id, definition.checklist) },
          covered: [],
        };
      const world = worldOf(asset, covers);
      return {
        facts: { ...facts, done: world.done(interval) },
        covered: world.covered.filter((one) => one.interval === interval),
      };
    };
  };
  return { byType, read };
}
