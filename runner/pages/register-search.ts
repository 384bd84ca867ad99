import type { AssetRow, AssetStatus, DueRow, SiteBundle } from "@roundbook/schemas";

export interface FoundAsset {
  readonly asset: AssetRow;
  /** The window that is due first, when the asset has one. */
  readonly due: DueRow | null;
}

export interface FoundSite {
  readonly site: string;
  readonly name: string;
  readonly found: readonly FoundAsset[];
}

export interface RegisterQuery {
  readonly words: string;
  readonly site: string | null;
  readonly status: AssetStatus | null;
}

const wordsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .split(/[\s,›]+/)
    .filter((word) => word !== "");

const matches = (asset: AssetRow, words: readonly string[]): boolean => {
  const text = [asset.number, asset.description, asset.serial ?? "", ...asset.path]
    .join(" ")
    .toLowerCase();
  return words.every((word) => text.includes(word));
};

const byWalk = (a: FoundAsset, b: FoundAsset): number =>
  a.asset.path.join("\u0000") < b.asset.path.join("\u0000")
    ? -1
    : a.asset.path.join("\u0000") > b.asset.path.join("\u0000")
      ? 1
      : a.asset.number.localeCompare(b.asset.number, "en", { numeric: true });

/** Assets that hold every word, site by site; works on what the device keeps. */
export const searchRegister = (
  bundles: readonly SiteBundle[],
  query: RegisterQuery,
): readonly FoundSite[] => {
  const words = wordsOf(query.words);
  return bundles
    .filter((bundle) => query.site === null || bundle.site.id === query.site)
    .map((bundle) => {
      const first = new Map<string, DueRow>();
      for (const row of bundle.due) {
        const known = first.get(row.asset);
        if (!known || row.latest < known.latest) first.set(row.asset, row);
      }
      return {
        site: bundle.site.id,
        name: bundle.site.name,
        found: bundle.assets
          .filter((asset) => query.status === null || asset.status === query.status)
          .filter((asset) => matches(asset, words))
          .map((asset) => ({ asset, due: first.get(asset.id) ?? null }))
          .sort(byWalk),
      };
    })
    .filter((site) => site.found.length > 0);
};

/** Pieces of a text, told apart by whether a search word stands there. */
export const markHits = (
  text: string,
  query: string,
): readonly { readonly text: string; readonly hit: boolean }[] => {
  const words = wordsOf(query);
  if (words.length === 0) return [{ text, hit: false }];
  const lower = text.toLowerCase();
  const pieces: { text: string; hit: boolean }[] = [];
  let from = 0;
  while (from < text.length) {
    const next = words
      .map((word) => ({ word, at: lower.indexOf(word, from) }))
      .filter((hit) => hit.at >= 0)
      .sort((a, b) => a.at - b.at || b.word.length - a.word.length)[0];
    if (!next) break;
    if (next.at > from) pieces.push({ text: text.slice(from, next.at), hit: false });
    pieces.push({ text: text.slice(next.at, next.at + next.word.length), hit: true });
    from = next.at + next.word.length;
  }
  if (from < text.length) pieces.push({ text: text.slice(from), hit: false });
  return pieces;
};
