import { existsSync, readdirSync } from "node:fs";
import { join, resolve } from "node:path";

/** Where published data that is not ours to copy lies; read in place. */
const ROOT = resolve(
  process.env.ROUNDBOOK_REAL_DATA ??
    join(import.meta.dirname, "..", "..", "..", "shared", "real-data"),
);

export const realDataPath = (...path: readonly string[]): string => join(ROOT, ...path);

/** A folder of the real data, or null where this machine does not have it. */
export const realData = (...path: readonly string[]): string | null => {
  const folder = realDataPath(...path);
  return existsSync(folder) ? folder : null;
};

/** Every file below a folder with this ending, in a fixed order. */
export const filesBelow = (folder: string | null, ending: string): readonly string[] =>
  folder === null
    ? []
    : readdirSync(folder, { recursive: true, encoding: "utf8" })
        .filter((name) => name.endsWith(ending))
        .sort()
        .map((name) => join(folder, name));
