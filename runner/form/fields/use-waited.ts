import { useEffect, useState } from "react";
import type { Wait } from "../model/filled.ts";
import { isOpen, secondsAt, type WaitRule, waitRule } from "../model/wait.ts";
import type { FieldProps } from "./field.ts";

/** Four looks a second: the figures never skip one. */
const TICK = 250;

export interface Waited {
  readonly rule: WaitRule;
  readonly wait: Wait | undefined;
  /** Gone by, up to the moment it was read. */
  readonly seconds: number;
  /** A reading may be written. */
  readonly open: boolean;
}

/** The wait of a timed point as it stands now; `undefined` on a point that asks for none. */
export function useWaited({
  point,
  wait,
  now,
}: Pick<FieldProps, "point" | "wait" | "now">): Waited | undefined {
  const rule = waitRule(point);
  const running = rule !== undefined && wait !== undefined && wait.readAt === undefined;
  const [, tick] = useState(0);
  useEffect(() => {
    if (!running) return;
    const timer = setInterval(() => tick((count) => count + 1), TICK);
    return () => clearInterval(timer);
  }, [running]);
  if (rule === undefined) return undefined;
  const at = wait?.readAt ?? now();
  return {
    rule,
    wait,
    seconds: wait === undefined ? 0 : secondsAt(wait, at),
    open: isOpen(rule, wait, at),
  };
}
