import { setImmediate } from "node:timers/promises";
import type { IntervalProgress } from "@roundbook/schemas";
import { workOutNext } from "../store/projections/work-out.ts";
import { recomputes } from "../store/schema/due.ts";
import { intervals } from "../store/schema/register.ts";
import type { Context } from "./context.ts";

type At = Pick<Context, "store">;

/** One batch of windows in a transaction of its own. Gives whether any work is left. */
export const recomputeStep = ({ store }: At): Promise<boolean> =>
  store.write((tx) => workOutNext(tx));

/** Works until nothing is left; whoever waits to write gets in between two batches. */
export async function drainRecomputes(ctx: At): Promise<void> {
  const waiting = () => ctx.store.db.select({ id: recomputes.id }).from(recomputes).limit(1);
  if ((await waiting()).length === 0) return;
  while (await recomputeStep(ctx)) await setImmediate();
}

/** How far the dates by changed intervals are worked out, by interval. */
export async function readProgress(ctx: At): Promise<ReadonlyMap<string, IntervalProgress>> {
  const { db } = ctx.store;
  const jobs = new Map((await db.select().from(recomputes)).map((job) => [job.id, job]));
  const progress = new Map<string, IntervalProgress>();
  for (const { id: interval, pending } of await db.select().from(intervals)) {
    const job = pending === null ? undefined : jobs.get(pending.generation);
    if (pending === null || job === undefined) continue;
    const { done, of } = job;
    progress.set(interval, { interval, definition: pending.definition, done, of });
  }
  return progress;
}

const LOOK_EVERY_MS = 500;

/** Keeps at the work that waits, from an earlier start too, until it is stopped. */
export function recomputeInBackground(ctx: Context): { stop(): Promise<void> } {
  let stopped = false;
  let timer: NodeJS.Timeout | undefined;
  let working: Promise<void> = Promise.resolve();
  const look = () => {
    working = drain().catch((error: unknown) => ctx.report(error));
    void working.then(() => {
      if (stopped) return;
      timer = setTimeout(look, LOOK_EVERY_MS);
      timer.unref();
    });
  };
  const drain = async () => {
    const { db } = ctx.store;
    const waiting = await db.select({ id: recomputes.id }).from(recomputes).limit(1);
    for (let more = waiting.length > 0; more && !stopped; await setImmediate())
      more = await recomputeStep(ctx);
  };
  look();
  return {
    async stop() {
      stopped = true;
      clearTimeout(timer);
      await working;
    },
  };
}
