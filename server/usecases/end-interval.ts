import { appendNow } from "./append-now.ts";
import type { Context, Session } from "./context.ts";
import { mustExist } from "./set-interval.ts";

/** Ends an interval: nothing is due by it any more. */
export async function endInterval(ctx: Context, by: Session, interval: string): Promise<void> {
  await mustExist(ctx, interval);
  await appendNow(ctx, by, { kind: "interval-ended", asset: null, body: { interval } });
}
