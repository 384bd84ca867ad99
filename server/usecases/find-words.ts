import { and, gte, lt, type SQL, sql } from "drizzle-orm";
import { among } from "../store/among.ts";
import type { Db } from "../store/db.ts";
import { assets, assetWords } from "../store/schema/register.ts";

/** Up to here the assets with a word are listed; beyond, walking in order meets them soon enough. */
const FEW = 1000;
const LAST_CHARACTER = "\u{10ffff}";

export interface WordFilter {
  readonly where: SQL | undefined;
  /** Few assets match: the query is better led by them than by its order. */
  readonly few: boolean;
}

const likeWord = (term: string): SQL => {
  const escaped = term.replace(/[\\%_]/g, (character) => `\\${character}`);
  return sql`${assets.search} like ${`% ${escaped}%`} escape '\\'`;
};

/** Assets with a word that begins so; undefined when they are many, told by the row beyond few. */
async function assetsWith(db: Db, term: string): Promise<readonly string[] | undefined> {
  const begins = and(gte(assetWords.word, term), lt(assetWords.word, term + LAST_CHARACTER));
  const asked = db.select({ asset: assetWords.asset }).from(assetWords).where(begins);
  const [beyond] = await asked.limit(1).offset(FEW);
  if (beyond !== undefined) return undefined;
  const rows = await db
    .selectDistinct({ asset: assetWords.asset })
    .from(assetWords)
    .where(begins)
    .limit(FEW);
  return rows.map(({ asset }) => asset);
}

/**
 * Assets with a word that begins with each term of `q`. The rarest term leads: an index of words
 * lists its assets, so that looking for a number or a name does not read the register.
 */
export async function findWords(db: Db, q: string | undefined): Promise<WordFilter> {
  const terms = (q ?? "")
    .toLowerCase()
    .split(/\s+/u)
    .filter((term) => term !== "");
  if (terms.length === 0) return { where: undefined, few: false };
  let rarest: readonly string[] | undefined;
  for (const term of terms) {
    const found = await assetsWith(db, term);
    if (found !== undefined && (rarest === undefined || found.length < rarest.length))
      rarest = found;
  }
  const likes = terms.map(likeWord);
  if (rarest === undefined) return { where: and(...likes), few: false };
  return { where: and(among(assets.id, rarest), ...likes), few: true };
}
