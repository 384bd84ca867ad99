import type { AskDefinition } from "@roundbook/schemas";
import type { Wait } from "./filled.ts";
import type { FormPoint } from "./sections.ts";

export type WaitRule = NonNullable<AskDefinition["wait"]>;

/** The longest wait an answer can hold, a day. */
const LONGEST = 86_400;

/** Seconds a point asks to wait before it is read. */
export const waitRule = ({ definition }: FormPoint): WaitRule | undefined => definition.ask?.wait;

/**
 * Seconds from the start of a wait to an instant, cut to a tenth: rounding up would let a reading
 * count that came too early. A clock that was set back gives 0.
 */
export const secondsAt = ({ startedAt }: Wait, at: number): number =>
  Math.min(Math.max(Math.floor((at - startedAt) / 100) / 10, 0), LONGEST);

/** "1:04", of whole seconds begun. */
export function clockFigures(seconds: number): string {
  const whole = Math.floor(seconds);
  const minutes = Math.floor(whole / 60);
  const rest = String(whole % 60).padStart(2, "0");
  if (minutes < 60) return `${minutes}:${rest}`;
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}:${rest}`;
}

export const isEarly = ({ atLeast = 0 }: WaitRule, seconds: number): boolean => seconds < atLeast;
export const isLate = ({ atMost }: WaitRule, seconds: number): boolean =>
  atMost !== undefined && seconds > atMost;

/** A reading may be written: the wait is over, or the person said it was read. */
export const isOpen = (rule: WaitRule, wait: Wait | undefined, now: number): boolean =>
  wait !== undefined && (wait.readAt !== undefined || !isEarly(rule, secondsAt(wait, now)));
