import type { DeviceDatabase } from "../offline/database.ts";

/** Drafts and waiting entries as one JSON file, whatever the browser does with its own store. */
export const saveUnsent = async (database: DeviceDatabase, now: number): Promise<void> => {
  const [outbox, drafts] = await Promise.all([
    database.getAll("outbox"),
    database.getAll("drafts"),
  ]);
  const text = JSON.stringify(
    { kind: "roundbook-unsent", savedAt: new Date(now).toISOString(), outbox, drafts },
    null,
    2,
  );
  const url = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = url;
  link.download = `roundbook-unsent-${new Date(now).toISOString().slice(0, 10)}.json`;
  link.click();
  URL.revokeObjectURL(url);
};
