import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { HistoryEntry, ImportMapping } from "@roundbook/schemas";
import { createNewId } from "../../../server/new-id.ts";
import { openStore } from "../../../server/store/open-store.ts";
import { addPlace } from "../../../server/usecases/add-place.ts";
import { createContext, type Session } from "../../../server/usecases/context.ts";
import { createEstate } from "../../../server/usecases/create-estate.ts";
import { importFile } from "../../../server/usecases/import-file.ts";
import { issueChecklist } from "../../../server/usecases/issue-checklist.ts";
import { putAssetType } from "../../../server/usecases/put-asset-type.ts";
import { readAsset } from "../../../server/usecases/read-assets.ts";
import { readDue } from "../../../server/usecases/read-due.ts";
import { readHistory, readLog } from "../../../server/usecases/read-history.ts";
import { setInterval } from "../../../server/usecases/set-interval.ts";
import { ASSET_TYPE, CHECKLIST, FIRST_SITE, INTERVAL } from "./checklist.ts";
import { MAPPING } from "./mapping.ts";

/** An estate that knows the city's evaluation and no building yet. */
export async function cityEstate() {
  const folder = mkdtempSync(join(tmpdir(), "roundbook-city-"));
  const store = await openStore({ url: `file:${join(folder, "city.db")}` });
  const clock = () => Date.now();
  const ctx = createContext({ store, clock, newId: createNewId(clock) });
  await createEstate(ctx, { name: "City" });
  const by: Session = { person: ctx.newId(), role: "owner" };
  await addPlace(ctx, by, FIRST_SITE as never);
  const checklist = ctx.newId();
  await issueChecklist(ctx, by, { checklist, document: CHECKLIST });
  await putAssetType(ctx, by, "apartment_building", ASSET_TYPE(checklist) as never);
  await setInterval(ctx, by, INTERVAL(checklist) as never);
  const mapping = MAPPING(checklist) as ImportMapping;

  return {
    ctx,
    folder,
    bring: (path: string, trial = false) => importFile(ctx, by, { path, mapping, trial }),
    /** Buildings with this status on a day. */
    async overdue(on: string): Promise<number> {
      let count = 0;
      let cursor: string | undefined;
      do {
        const page = await readDue(ctx, { on, status: "overdue", cursor, limit: 200 });
        count += page.rows.length;
        cursor = page.next ?? undefined;
      } while (cursor !== undefined);
      return count;
    },
    /** A building's inspections, oldest first. */
    async inspections(number: string): Promise<HistoryEntry[]> {
      const found = await readAsset(ctx, `number:${number}`);
      const { rows } = await readHistory(ctx, found?.asset.id ?? "", { limit: 200 });
      return rows.filter(({ entry }) => entry.kind === "inspection").reverse();
    },
    async everything(): Promise<HistoryEntry[]> {
      const all: HistoryEntry[] = [];
      for await (const row of readLog(ctx)) all.push(row);
      return all;
    },
    async close(): Promise<void> {
      await store.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
export type CityEstate = Awaited<ReturnType<typeof cityEstate>>;

export const scoreOf = ({ leaf }: HistoryEntry) => leaf.judgement?.scores.score;
