import {
  asksAll,
  type Checklist,
  type CoverPlan,
  coverPlan,
  type DefinedInterval,
  type IntervalDefinition,
} from "@roundbook/schemas";
import { asc } from "drizzle-orm";
import { among } from "../among.ts";
import type { Db } from "../db.ts";
import { checklistDocs, checklists } from "../schema/register.ts";
import { definitionIn, type Intervals, type Variant } from "./variants.ts";

/** Which checks stand for which, as it is in one generation. */
export interface Covers {
  readonly plan: CoverPlan;
  /** Every interval of the type as it reads in this generation. */
  readonly definitions: ReadonlyMap<string, IntervalDefinition>;
  /** Whether an issue asks every point of a shorter interval's checklist. */
  asks(hash: string, shorter: string): boolean;
}

const NOTHING: Covers = { plan: [], definitions: new Map(), asks: () => true };

async function readDocs(tx: Db, ids: ReadonlySet<string>) {
  const rows = await tx
    .select({ id: checklists.id, hash: checklists.hash })
    .from(checklists)
    .where(among(checklists.id, ids))
    .orderBy(asc(checklists.id), asc(checklists.issue));
  const docs = await tx
    .select()
    .from(checklistDocs)
    .where(among(checklistDocs.hash, new Set(rows.map(({ hash }) => hash))));
  const byHash = new Map(docs.map(({ hash, document }) => [hash, document]));
  const newest = new Map(rows.map(({ id, hash }) => [id, hash]));
  const idOf = new Map(rows.map(({ id, hash }) => [hash, id]));
  return { byHash, newest, idOf };
}

function defined(
  id: string,
  definition: IntervalDefinition,
  document: Checklist | undefined,
): readonly DefinedInterval[] {
  return document === undefined ? [] : [{ id, definition, document }];
}

/**
 * The covers of each variant's generation: of the one that readers see, or of the one that is worked
 * out, in which the intervals that hang together read as they will.
 */
export async function readCovers(tx: Db, rows: Intervals): Promise<(variant: Variant) => Covers> {
  const any = rows.some(
    ({ definition, pending }) =>
      (definition.covers ?? []).length > 0 || (pending?.definition.covers ?? []).length > 0,
  );
  if (!any) return () => NOTHING;
  const asked = new Set(
    rows.flatMap(({ definition, pending }) => [
      definition.checklist,
      ...(pending === null ? [] : [pending.definition.checklist]),
    ]),
  );
  const { byHash, newest, idOf } = await readDocs(tx, asked);
  const documentOf = (checklist: string) => byHash.get(newest.get(checklist) ?? "");

  const made = new Map<string, Covers>();
  return ({ generation, definition: { assetType } }) => {
    const awaited = rows.some(({ pending }) => pending?.generation === generation);
    const key = `${awaited ? generation : ""} ${assetType}`;
    const known = made.get(key);
    if (known !== undefined) return known;
    const all = rows
      .map((row) => ({
        id: row.id,
        definition: awaited ? definitionIn(row, generation) : row.definition,
      }))
      .filter(({ definition }) => definition.assetType === assetType)
      .flatMap(({ id, definition }) => defined(id, definition, documentOf(definition.checklist)));
    const byId = new Map(all.map((one) => [one.id, one]));
    const answers = new Map<string, boolean>();
    const asks = (hash: string, shorter: string): boolean => {
      const answer = `${hash} ${shorter}`;
      const before = answers.get(answer);
      if (before !== undefined) return before;
      const [document, checklist, other] = [byHash.get(hash), idOf.get(hash), byId.get(shorter)];
      const says =
        document !== undefined &&
        checklist !== undefined &&
        other !== undefined &&
        asksAll({ id: "", definition: { ...other.definition, checklist }, document }, other);
      answers.set(answer, says);
      return says;
    };
    const definitions = new Map(all.map(({ id, definition }) => [id, definition]));
    const covers: Covers = { plan: coverPlan(all), definitions, asks };
    made.set(key, covers);
    return covers;
  };
}
