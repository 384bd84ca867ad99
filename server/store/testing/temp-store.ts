import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import { openStore, type Store } from "../open-store.ts";

/** A folder that goes when the test has ended. */
export function tempFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "roundbook-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export const tempFile = (): string => `file:${join(tempFolder(), "test.db")}`;

/** A new store in a file of its own, closed when the test has ended. */
export async function tempStore(url = tempFile()): Promise<Store> {
  const store = await openStore({ url });
  onTestFinished(() => store.close());
  return store;
}
