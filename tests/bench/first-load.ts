import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Row } from "./row.ts";

interface Chunk {
  readonly file: string;
  readonly imports?: readonly string[];
  readonly isEntry?: boolean;
}

const TARGET_KB = 110;

/** Scripts the browser needs before the runner's first screen: the entry and all it imports statically. */
export const benchFirstLoad = (dist: string): Row[] => {
  const manifest = join(dist, ".vite/manifest.json");
  if (!existsSync(manifest)) throw new Error("the runner is not built");
  const chunks: Record<string, Chunk> = JSON.parse(readFileSync(manifest, "utf8"));
  const files = new Set<string>();
  const add = (chunk: Chunk | undefined) => {
    if (!chunk || files.has(chunk.file)) return;
    files.add(chunk.file);
    for (const name of chunk.imports ?? []) add(chunks[name]);
  };
  for (const chunk of Object.values(chunks)) if (chunk.isEntry) add(chunk);
  const bytes = [...files]
    .filter((file) => file.endsWith(".js"))
    .reduce((sum, file) => sum + gzipSync(readFileSync(join(dist, file)), { level: 9 }).length, 0);
  const kilobytes = bytes / 1000;
  return [
    {
      what: "runner's first load",
      against: "",
      ratio: null,
      figure: `${kilobytes.toFixed(1)} kB gz of scripts in ${files.size} files`,
      target: `≤ ${TARGET_KB} kB`,
      met: kilobytes <= TARGET_KB,
    },
  ];
};
