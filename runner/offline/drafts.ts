import type { DeviceDatabase, Draft } from "./database.ts";

export const draftKey = (asset: string, checklistHash: string): string =>
  `${asset}:${checklistHash}`;

export const saveDraft = async (database: DeviceDatabase, draft: Draft): Promise<void> => {
  await database.put("drafts", draft);
};

export const loadDraft = (
  database: DeviceDatabase,
  asset: string,
  checklistHash: string,
): Promise<Draft | undefined> => database.get("drafts", draftKey(asset, checklistHash));

export const listDrafts = (database: DeviceDatabase): Promise<Draft[]> => database.getAll("drafts");

/** Only a person throws an inspection away. */
export const discardDraft = async (database: DeviceDatabase, key: string): Promise<void> => {
  await database.delete("drafts", key);
};
