import { type Client, type Config, createClient } from "@libsql/client";
import { drizzle } from "drizzle-orm/libsql";
import { isBusy } from "./busy.ts";
import type { Db } from "./db.ts";

export interface Address {
  /** `file:/absolute/path.db`, or a libSQL server's URL. */
  readonly url: string;
  readonly authToken?: string;
}

export interface Connection {
  readonly client: Client;
  readonly db: Db;
  /** Drops the connection and opens it anew: after SQLITE_BUSY it would lose what it acknowledges. */
  reconnect(): Promise<void>;
  close(): void;
}

/** Calls block the process while they wait, so the wait is short and the lane tries again. */
const WAIT_MILLISECONDS = 250;
const COMMON = ["PRAGMA foreign_keys=ON", "PRAGMA temp_store=MEMORY", "PRAGMA cache_size=-65536"];
const PRAGMAS = {
  write: [
    // Only a new file takes it: documents of some kilobytes then fit a page instead of a chain.
    "PRAGMA page_size=16384",
    "PRAGMA journal_mode=WAL",
    "PRAGMA synchronous=FULL",
    "PRAGMA wal_autocheckpoint=2000",
    ...COMMON,
  ],
  read: ["PRAGMA query_only=ON", "PRAGMA mmap_size=268435456", ...COMMON],
} as const;

const isFile = (url: string): boolean => url.startsWith("file:");

/**
 * One connection, with its PRAGMAs: they hold per connection, so over a file the client keeps
 * exactly one. Statements run synchronously there, so a second would gain nothing.
 */
export async function connect(
  address: Address,
  role: keyof typeof PRAGMAS,
  wait = WAIT_MILLISECONDS,
): Promise<Connection> {
  const local = isFile(address.url);
  const config: Config = local
    ? { url: address.url, concurrency: 1, timeout: wait }
    : { url: address.url, authToken: address.authToken };
  const client = createClient(config);
  const execute = client.execute.bind(client);
  const prepare = async () => {
    if (local) for (const pragma of PRAGMAS[role]) await execute(pragma);
  };
  const reconnect = async () => {
    if (!local) return;
    await client.reconnect();
    await prepare();
  };
  if (role === "read") {
    // A statement that met BUSY stays open and would hold its view of the past for ever.
    client.execute = async (statement) => {
      try {
        return await execute(statement);
      } catch (error) {
        if (!isBusy(error)) throw error;
        await reconnect();
        return execute(statement);
      }
    };
  }
  await prepare();
  return { client, db: drizzle(client), reconnect, close: () => client.close() };
}
