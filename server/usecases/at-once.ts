import type { Context } from "./context.ts";

/**
 * Runs a verb that first looks and then appends as one transaction: two managers, or a manager and
 * the command line, cannot both be the next issue. `work` gets a context that reads and writes
 * inside it, and may be run again.
 */
export const atOnce = <C extends Context, T>(ctx: C, work: (ctx: C) => Promise<T>): Promise<T> =>
  ctx.store.write((tx) =>
    work({ ...ctx, store: { ...ctx.store, db: tx, write: (unit) => unit(tx) } }),
  );
