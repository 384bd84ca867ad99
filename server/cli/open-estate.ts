import { existsSync } from "node:fs";
import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { createNewId } from "../new-id.ts";
import { openStore } from "../store/open-store.ts";
import { type Context, createContext, type Session } from "../usecases/context.ts";
import { createEstate, readEstate } from "../usecases/create-estate.ts";
import { enterProgram } from "../usecases/program-person.ts";
import { drainRecomputes } from "../usecases/recompute.ts";
import { type Io, UsageError } from "./io.ts";

const FILE = "roundbook.db";

async function open<T>(io: Io, work: (ctx: Context) => Promise<T>): Promise<T> {
  const store = await openStore({ url: pathToFileURL(join(io.data, FILE)).href });
  try {
    const ctx = createContext({ store, clock: io.clock, newId: createNewId(io.clock) });
    const told = await work(ctx);
    // What was changed here is in force before the command ends.
    await drainRecomputes(ctx);
    return told;
  } finally {
    await store.close();
  }
}

/**
 * Runs `work` on the estate of the data folder.
 * @throws UsageError when there is none: a mistyped folder must not look like an estate in order.
 */
export function withEstate<T>(io: Io, work: (ctx: Context) => Promise<T>): Promise<T> {
  if (existsSync(join(io.data, FILE))) return open(io, work);
  throw new UsageError(`there is no estate in ${io.data}: ROUNDBOOK_DATA names its folder`);
}

/** Runs `work` with its author on the estate of the data folder; begins one where there is none. */
export async function enter<T>(
  io: Io,
  work: (ctx: Context, by: Session) => Promise<T>,
): Promise<T> {
  await mkdir(io.data, { recursive: true });
  return open(io, async (ctx) => {
    if (!(await readEstate(ctx))) await createEstate(ctx, { name: "Estate" });
    return work(ctx, await enterProgram(ctx, "Command line"));
  });
}
