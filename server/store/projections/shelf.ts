import type { SQL } from "drizzle-orm";
import type { SQLiteTable } from "drizzle-orm/sqlite-core";
import type { Db } from "../db.ts";
import { insertRows } from "../insert-rows.ts";

/**
 * Rows of one projection held while a batch of entries is applied: read in one query, changed in
 * memory, written in one statement.
 */
export class Shelf<T extends SQLiteTable> {
  readonly #rows = new Map<string, T["$inferSelect"]>();
  readonly #changed = new Set<string>();
  readonly #table: T;
  readonly #keyOf: (row: T["$inferSelect"]) => string;

  constructor(table: T, keyOf: (row: T["$inferSelect"]) => string) {
    this.#table = table;
    this.#keyOf = keyOf;
  }

  /** Takes in rows that are not held yet; what a batch has changed is newer than the table. */
  async load(tx: Db, where: SQL): Promise<void> {
    const rows: readonly T["$inferSelect"][] = await tx
      .select()
      .from(this.#table as SQLiteTable)
      .where(where);
    for (const row of rows) {
      const key = this.#keyOf(row);
      if (!this.#rows.has(key)) this.#rows.set(key, row);
    }
  }

  get(key: string): T["$inferSelect"] | undefined {
    return this.#rows.get(key);
  }

  has(key: string): boolean {
    return this.#rows.has(key);
  }

  values(): Iterable<T["$inferSelect"]> {
    return this.#rows.values();
  }

  put(row: T["$inferSelect"]): void {
    const key = this.#keyOf(row);
    this.#rows.set(key, row);
    this.#changed.add(key);
  }

  async flush(tx: Db): Promise<void> {
    const rows = [...this.#changed].flatMap((key) => this.#rows.get(key) ?? []);
    this.#changed.clear();
    await insertRows(tx, this.#table, rows, "replace");
  }
}
