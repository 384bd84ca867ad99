import type { SessionReply } from "@roundbook/schemas";
import type { DeviceDatabase } from "./database.ts";

/** What this device remembers about itself and its person. */
export interface Settings {
  /** The last signed-in person and estate: offline serves them for 30 days. */
  readonly session: { readonly reply: SessionReply; readonly seenAt: number } | null;
  /** Server clock minus device clock, milliseconds, as last measured. */
  readonly clockOffset: number;
  readonly hand: "right" | "left";
  readonly ink: "light" | "dark" | "system";
  readonly site: string | null;
  /** The language checklists are shown in, where they have it; null for their own. */
  readonly language: string | null;
}

const DEFAULTS: Settings = {
  session: null,
  clockOffset: 0,
  hand: "right",
  ink: "system",
  site: null,
  language: null,
};

export const OFFLINE_DAYS = 30;

export const loadSettings = async (database: DeviceDatabase): Promise<Settings> => ({
  ...DEFAULTS,
  ...((await database.get("settings", "device")) as Partial<Settings> | undefined),
});

export const changeSettings = async (
  database: DeviceDatabase,
  change: Partial<Settings>,
): Promise<Settings> => {
  const transaction = database.transaction("settings", "readwrite");
  const kept = (await transaction.store.get("device")) as Partial<Settings> | undefined;
  const next = { ...DEFAULTS, ...kept, ...change };
  await transaction.store.put(next, "device");
  await transaction.done;
  return next;
};
