import type { AssetRow, BodyOf, SiteBundle } from "@roundbook/schemas";
import type { OutboxRow } from "./database.ts";

const pathOf = (bundle: SiteBundle, place: string): string[] => {
  const path: string[] = [];
  const byId = new Map(bundle.places.map((one) => [one.id, one]));
  for (let at = byId.get(place); at; at = at.parent ? byId.get(at.parent) : undefined) {
    path.unshift(at.name);
  }
  return path[0] === bundle.site.name ? path : [bundle.site.name, ...path];
};

const assetOf = (bundle: SiteBundle, row: OutboxRow): AssetRow | null => {
  const { entry } = row.signed;
  if (entry.kind !== "registered" || entry.asset === null) return null;
  const body: BodyOf<"registered"> = entry.body;
  const here = body.place === bundle.site.id || bundle.places.some((one) => one.id === body.place);
  if (!here || bundle.assets.some((asset) => asset.id === entry.asset)) return null;
  return {
    id: entry.asset,
    number: body.number,
    assetType: body.assetType,
    description: body.description,
    site: bundle.site.id,
    place: body.place,
    path: pathOf(bundle, body.place),
    particulars: body.particulars,
    serial: body.serial ?? null,
    ...(body.photo === undefined ? {} : { photo: body.photo }),
    status: "in-service",
    order: body.order ?? Number.MAX_SAFE_INTEGER,
    registeredOn: entry.civilDate,
  };
};

/** Places within the site that assets were moved to here, by asset: the last that was written counts. */
const movesIn = (bundle: SiteBundle, outbox: readonly OutboxRow[]): ReadonlyMap<string, string> => {
  const here = new Set([bundle.site.id, ...bundle.places.map(({ id }) => id)]);
  return new Map(
    outbox.flatMap(({ signed: { entry }, state }) =>
      entry.kind === "moved" &&
      entry.asset !== null &&
      state !== "refused" &&
      here.has(entry.body.place)
        ? [[entry.asset, entry.body.place] as const]
        : [],
    ),
  );
};

const withMoves = (bundle: SiteBundle, outbox: readonly OutboxRow[]): SiteBundle => {
  const moves = movesIn(bundle, outbox);
  if (moves.size === 0) return bundle;
  return {
    ...bundle,
    assets: bundle.assets.map((asset) => {
      const place = moves.get(asset.id);
      return place === undefined ? asset : { ...asset, place, path: pathOf(bundle, place) };
    }),
    due: bundle.due.map((row) => ({ ...row, place: moves.get(row.asset) ?? row.place })),
  };
};

/** What the server sent, with the assets that were registered or moved here and still wait to be sent. */
export const withWaiting = async (
  bundle: SiteBundle,
  outbox: readonly OutboxRow[],
): Promise<SiteBundle> => withMoves(await withRegistered(bundle, outbox), outbox);

const withRegistered = async (
  bundle: SiteBundle,
  outbox: readonly OutboxRow[],
): Promise<SiteBundle> => {
  const assets = outbox.flatMap((row) => assetOf(bundle, row) ?? []);
  if (assets.length === 0) return bundle;
  // Working out dates is heavy, and most devices open without a new asset waiting.
  const { dueOfNew } = await import("./waiting-due.ts");
  return {
    ...bundle,
    assets: [...bundle.assets, ...assets],
    due: [...bundle.due, ...assets.flatMap((asset) => dueOfNew(bundle, asset))],
  };
};
