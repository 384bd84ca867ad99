import type { AssetRow } from "@roundbook/schemas";

/**
 * The number after the highest of this site: its digits at the end count on, what stands before
 * them and their leading zeros stay.
 */
export const nextNumber = (numbers: readonly string[]): string => {
  let best: { prefix: string; digits: string; value: number } | null = null;
  for (const number of numbers) {
    const match = /^(.*?)(\d{1,12})$/.exec(number);
    if (!match) continue;
    const [, prefix = "", digits = ""] = match;
    const value = Number(digits);
    if (!best || value > best.value) best = { prefix, digits, value };
  }
  if (!best) return "1";
  return best.prefix + String(best.value + 1).padStart(best.digits.length, "0");
};

/** Descriptions this estate already uses that hold what is typed, the commonest first. */
export const suggestDescriptions = (
  assets: readonly AssetRow[],
  typed: string,
  assetType: string,
): readonly { readonly text: string; readonly count: number }[] => {
  const wanted = typed.trim().toLowerCase();
  const counts = new Map<string, number>();
  for (const asset of assets) {
    if (asset.assetType !== assetType) continue;
    if (wanted !== "" && !asset.description.toLowerCase().includes(wanted)) continue;
    counts.set(asset.description, (counts.get(asset.description) ?? 0) + 1);
  }
  return [...counts]
    .map(([text, count]) => ({ text, count }))
    .filter(({ text }) => text !== typed)
    .sort((a, b) => b.count - a.count || (a.text < b.text ? -1 : 1))
    .slice(0, 3);
};
