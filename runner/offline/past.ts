import type { HistoryEntry, SiteHistory } from "@roundbook/schemas";
import type { DeviceDatabase, PastOf } from "./database.ts";

/** Where only the day is known it stands before every instant of it, as the server has it. */
const instantOf = ({ entry }: HistoryEntry): number =>
  entry.happenedAt === null ? -1 : Date.parse(entry.happenedAt);

/** Newest first: by civil date, instant and place in the log, as the server lists them. */
const newestFirst = (a: HistoryEntry, b: HistoryEntry): number =>
  (a.entry.civilDate < b.entry.civilDate ? 1 : a.entry.civilDate > b.entry.civilDate ? -1 : 0) ||
  instantOf(b) - instantOf(a) ||
  b.leaf.seq - a.leaf.seq;

/** What this device keeps of an asset's history, newest first. */
export const pastOfAsset = async (
  database: DeviceDatabase,
  asset: string,
): Promise<HistoryEntry[]> =>
  (await database.getAllFromIndex("past", "asset", asset)).map(({ row }) => row).sort(newestFirst);

/** One entry that is kept here, whatever asset it is about. */
export const pastEntry = async (
  database: DeviceDatabase,
  entry: string,
): Promise<HistoryEntry | undefined> => (await database.get("past", entry))?.row;

/** Keeps a stretch of a site's history and how far it goes, together. */
export const keepPast = async (
  database: DeviceDatabase,
  of: PastOf,
  { rows }: Pick<SiteHistory, "rows">,
): Promise<void> => {
  const transaction = database.transaction(["past", "pastOf"], "readwrite");
  const past = transaction.objectStore("past");
  await Promise.all([
    ...rows.flatMap((row) =>
      row.entry.asset === null ? [] : past.put({ id: row.entry.id, asset: row.entry.asset, row }),
    ),
    transaction.objectStore("pastOf").put(of),
    transaction.done,
  ]);
};
