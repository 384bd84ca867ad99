import { type Address, connect } from "./connect.ts";
import type { Db } from "./db.ts";
import { migrate } from "./migrations/migrate.ts";
import { rebuildProjections } from "./projections/rebuild-projections.ts";
import { projectionsAreCurrent } from "./projections/tables.ts";
import { openLane, type Write } from "./write-lane.ts";

export interface Store {
  /** For reading only: SQLite refuses writes on it. */
  readonly db: Db;
  /** The only way to write; see `Write`. Read through `tx` inside it, never through `db`. */
  readonly write: Write;
  close(): Promise<void>;
}

/**
 * Opens or makes the database, brings its tables of record up to date, and derives the projections
 * again when this program derives them otherwise than the one that wrote them.
 */
export async function openStore(address: Address): Promise<Store> {
  const writing = await connect(address, "write");
  const lane = openLane(writing);
  try {
    await lane.write(async (tx) => {
      await migrate(tx);
      if (!(await projectionsAreCurrent(tx))) await rebuildProjections(tx);
    });
  } catch (error) {
    writing.close();
    throw error;
  }
  const reading = await connect(address, "read");
  return {
    db: reading.db,
    write: lane.write,
    close: async () => {
      await lane.idle();
      reading.close();
      writing.close();
    },
  };
}
