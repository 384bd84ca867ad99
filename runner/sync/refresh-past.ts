import type { ChecklistRow, HistoryEntry, SiteHistory } from "@roundbook/schemas";
import type { DeviceDatabase } from "../offline/database.ts";
import { keepPast } from "../offline/past.ts";
import { isFull } from "../offline/room.ts";
import { getJson, Refusal, Unreachable } from "./client.ts";

/** Two years: the longest usual interval and the one before it. */
const DAYS_KEPT = 730;
const DAY_MS = 86_400_000;
/** A stretch has 200 entries at most; what is more comes with the next refresh. */
const STRETCHES_AT_ONCE = 40;

/** Issues that old entries were judged by: without them an entry cannot be read as it was written. */
const keepIssues = async (database: DeviceDatabase, rows: readonly HistoryEntry[]) => {
  const named = new Set(
    rows.flatMap(({ entry: { body } }) =>
      "checklist" in body && typeof body.checklist === "object" ? body.checklist.hash : [],
    ),
  );
  for (const hash of named)
    if ((await database.getKey("checklists", hash)) === undefined)
      await database.put("checklists", await getJson<ChecklistRow>(`/api/checklists/${hash}`));
};

const refreshSitePast = async (
  database: DeviceDatabase,
  site: string,
  now: () => number,
): Promise<void> => {
  const kept = await database.get("pastOf", site);
  const from = kept?.from ?? new Date(now() - DAYS_KEPT * DAY_MS).toISOString().slice(0, 10);
  let after = kept?.upTo ?? 0;
  for (let at = 0; at < STRETCHES_AT_ONCE; at += 1) {
    const asked = new URLSearchParams({ after: String(after), from });
    const found = await getJson<SiteHistory>(`/api/sites/${site}/history?${asked}`);
    try {
      await keepIssues(database, found.rows);
      await keepPast(database, { site, upTo: found.upTo, from }, found);
    } catch (error) {
      // History gives way to work: a full device goes on without more of it.
      if (isFull(error)) return;
      throw error;
    }
    if (!found.more) return;
    after = found.upTo;
  }
};

/**
 * Brings the history of the kept sites' assets to this device, from where it was left; one tab at a
 * time, beside everything else. Where the server is away it goes on with the next refresh.
 */
export const refreshPast = (database: DeviceDatabase, now: () => number): Promise<void> =>
  navigator.locks.request("roundbook-past", { ifAvailable: true }, async (lock) => {
    if (lock === null) return;
    try {
      for (const site of await database.getAllKeys("bundles"))
        await refreshSitePast(database, site, now);
    } catch (error) {
      if (!(error instanceof Unreachable) && !(error instanceof Refusal)) throw error;
    }
  });
