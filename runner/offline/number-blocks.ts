import { type AssetRow, type NumberBlock, type SerialNumber, serialOf } from "@roundbook/schemas";
import type { DeviceDatabase } from "./database.ts";

/** Asset numbers that this device alone may give out; `next` is the first that it has not. */
export interface KeptBlock extends Pick<NumberBlock, "id" | "first" | "last"> {
  readonly next: number;
}
/** By site and prefix (`scopeOf`), the oldest block first. */
export type KeptNumbers = Readonly<Record<string, readonly KeptBlock[]>>;

/** How numbers go on at a site: what stands before the digits, the highest so far, and its width. */
export type Series = SerialNumber;

const keyOf = (device: string) => `numbers:${device}`;

export const scopeOf = (site: string, prefix: string): string => `${site} ${prefix}`;

export const printSerial = ({ prefix, width }: Omit<Series, "value">, value: number): string =>
  prefix + String(value).padStart(width, "0");

/**
 * The series that assets of a type are numbered in here: the commonest prefix among them, else
 * among all assets, with its highest number. Without any number it begins at 1.
 */
export const seriesOf = (assets: readonly AssetRow[], assetType: string): Series => {
  const serials = (of: readonly AssetRow[]) => of.flatMap(({ number }) => serialOf(number) ?? []);
  const all = serials(assets);
  const own = serials(assets.filter((asset) => asset.assetType === assetType));
  const counts = new Map<string, number>();
  for (const { prefix } of own.length > 0 ? own : all)
    counts.set(prefix, (counts.get(prefix) ?? 0) + 1);
  const [commonest] = [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1));
  const prefix = commonest?.[0] ?? "";
  return all
    .filter((one) => one.prefix === prefix)
    .reduce((best, one) => (one.value > best.value ? one : best), { prefix, value: 0, width: 1 });
};

export const leftIn = (blocks: readonly KeptBlock[]): number =>
  blocks.reduce((sum, { next, last }) => sum + last - next + 1, 0);

export interface Proposal {
  readonly number: string;
  /** Of the scope it is kept in; null where nothing is kept, so that another device may propose it too. */
  readonly leased: { readonly scope: string; readonly value: number } | null;
}

/** The next number of a series: of what is kept for this device, else simply the next. */
export const proposeNumber = (
  site: string,
  series: Series,
  kept: KeptNumbers,
  taken: (number: string) => boolean,
): Proposal => {
  const scope = scopeOf(site, series.prefix);
  for (const { next, last } of kept[scope] ?? [])
    for (let value = next; value <= last; value += 1) {
      const number = printSerial(series, value);
      if (!taken(number)) return { number, leased: { scope, value } };
    }
  let value = series.value + 1;
  while (taken(printSerial(series, value))) value += 1;
  return { number: printSerial(series, value), leased: null };
};

export const loadNumbers = async (database: DeviceDatabase, device: string): Promise<KeptNumbers> =>
  ((await database.get("settings", keyOf(device))) as KeptNumbers | undefined) ?? {};

const change = async (
  database: DeviceDatabase,
  device: string,
  scope: string,
  changed: (blocks: readonly KeptBlock[]) => readonly KeptBlock[] | null,
): Promise<boolean> => {
  const transaction = database.transaction("settings", "readwrite", { durability: "strict" });
  const kept = ((await transaction.store.get(keyOf(device))) as KeptNumbers | undefined) ?? {};
  const blocks = changed(kept[scope] ?? []);
  if (blocks) await transaction.store.put({ ...kept, [scope]: blocks }, keyOf(device));
  await transaction.done;
  return blocks !== null;
};

/** Keeps a block that was leased; of those that are used up only the newest is remembered. */
export const keepBlock = (
  database: DeviceDatabase,
  device: string,
  scope: string,
  { id, first, last }: Pick<NumberBlock, "id" | "first" | "last">,
): Promise<boolean> =>
  change(database, device, scope, (blocks) =>
    blocks.some((one) => one.id === id)
      ? null
      : [...blocks.filter(({ next, last }) => next <= last), { id, first, last, next: first }],
  );

/** Gives a number out, once: false when another tab was first. */
export const claimNumber = (
  database: DeviceDatabase,
  device: string,
  { scope, value }: { readonly scope: string; readonly value: number },
): Promise<boolean> =>
  change(database, device, scope, (blocks) => {
    const holds = ({ next, last }: KeptBlock) => next <= value && value <= last;
    return blocks.some(holds)
      ? blocks.map((one) => (holds(one) ? { ...one, next: value + 1 } : one))
      : null;
  });
