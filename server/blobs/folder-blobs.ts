import { access, mkdir, open, readFile, rename, rm } from "node:fs/promises";
import { join } from "node:path";
import { SHA256 } from "@roundbook/schemas";
import type { Blobs } from "./blobs.ts";

const isMissing = (error: unknown): boolean =>
  error instanceof Error && "code" in error && error.code === "ENOENT";

const HASH = new RegExp(SHA256);

/**
 * Keeps each blob as a file below `folder`, in subfolders of the first two digits. What is no hash
 * names no blob: it never becomes part of a path.
 */
export function createFolderBlobs(folder: string, newId: () => string): Blobs {
  const folderOf = (sha256: string) => join(folder, sha256.slice(0, 2));
  const fileOf = (sha256: string) => join(folderOf(sha256), sha256);

  const has = async (sha256: string) =>
    HASH.test(sha256) &&
    access(fileOf(sha256)).then(
      () => true,
      () => false,
    );

  return {
    has,
    async put(sha256, bytes) {
      if (!HASH.test(sha256)) throw new RangeError(`${sha256} is no SHA-256`);
      if (await has(sha256)) return;
      await mkdir(folderOf(sha256), { recursive: true });
      // Written aside and renamed: a crash leaves a stray file, never half a photo under its hash.
      const aside = join(folder, `.${newId()}`);
      try {
        const file = await open(aside, "wx");
        try {
          await file.writeFile(bytes);
          await file.sync();
        } finally {
          await file.close();
        }
        await rename(aside, fileOf(sha256));
      } catch (error) {
        await rm(aside, { force: true });
        throw error;
      }
    },
    async get(sha256) {
      if (!HASH.test(sha256)) return undefined;
      try {
        return await readFile(fileOf(sha256));
      } catch (error) {
        if (isMissing(error)) return undefined;
        throw error;
      }
    },
  };
}
