import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createClient } from "@libsql/client";

/** One sighting of a name in the file; `content` tells sightings of one name apart. */
export interface Sighting {
  readonly name: string;
  readonly content: string;
  readonly row: number;
}

/** The first sighting of the same name, and how many there were before this one. */
export interface Earlier {
  readonly before: number;
  readonly row: number;
  readonly content: string;
}

/** What an import must remember of all rows so far: kept on disk, so that memory stays flat. */
export interface Scratch {
  /** In the order given. */
  readonly see: (sightings: readonly Sighting[]) => Promise<readonly Earlier[]>;
  readonly put: (pairs: ReadonlyMap<string, string>) => Promise<void>;
  readonly get: (keys: readonly string[]) => Promise<Map<string, string>>;
  readonly close: () => Promise<void>;
}

const SCHEMA = [
  "PRAGMA journal_mode = OFF",
  "PRAGMA synchronous = OFF",
  "CREATE TABLE seen (name TEXT PRIMARY KEY, content TEXT, line INTEGER, times INTEGER) WITHOUT ROWID",
  "CREATE TABLE kept (name TEXT PRIMARY KEY, value TEXT) WITHOUT ROWID",
];

export async function openScratch(): Promise<Scratch> {
  const folder = await mkdtemp(join(tmpdir(), "roundbook-import-"));
  const client = createClient({ url: `file:${join(folder, "scratch.db")}` });
  for (const statement of SCHEMA) await client.execute(statement);
  const run = (sql: string, value: unknown) =>
    client.execute({ sql, args: [JSON.stringify(value)] });

  const see: Scratch["see"] = async (sightings) => {
    const { rows } = await run(
      "SELECT seen.* FROM json_each(?) AS wanted JOIN seen ON seen.name = wanted.value",
      [...new Set(sightings.map(({ name }) => name))],
    );
    const known = new Map(
      rows.map((found) => [
        String(found.name),
        {
          before: Number(found.times),
          row: Number(found.line),
          content: String(found.content),
        },
      ]),
    );
    const replies = sightings.map(({ name, content, row }): Earlier => {
      const earlier = known.get(name) ?? { before: 0, row, content };
      known.set(name, { ...earlier, before: earlier.before + 1 });
      return earlier;
    });
    await run(
      "INSERT OR REPLACE INTO seen SELECT value->>0, value->>1, value->>2, value->>3 FROM json_each(?)",
      [...known].map(([name, { content, row, before }]) => [name, content, row, before]),
    );
    return replies;
  };

  return {
    see,
    put: async (pairs) => {
      if (pairs.size === 0) return;
      await run("INSERT OR REPLACE INTO kept SELECT value->>0, value->>1 FROM json_each(?)", [
        ...pairs,
      ]);
    },
    get: async (keys) => {
      const { rows } = await run(
        "SELECT kept.* FROM json_each(?) AS wanted JOIN kept ON kept.name = wanted.value",
        keys,
      );
      return new Map(rows.map((found) => [String(found.name), String(found.value)]));
    },
    close: async () => {
      client.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}
