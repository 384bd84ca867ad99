import { formatCivilDate, parseCivilDate } from "../due/civil.ts";
import { computeWindow } from "../due/compute-window.ts";
import type { IntervalRule } from "../due/rule-schema.ts";
import type { DoneRecord } from "../due/window.ts";
import type { CivilDate } from "../shared/ids.ts";

export const REGISTERED = 0 as CivilDate;

/** @throws Error for what is no date. */
export const day = (iso: string): CivilDate => {
  const parsed = parseCivilDate(iso);
  if (parsed === undefined) throw new Error(`${iso} is no date`);
  return parsed;
};

export const doneOn = (on: CivilDate | string): DoneRecord => {
  const date = typeof on === "string" ? day(on) : on;
  return { entry: `entry of ${date}`, on: date, at: null, counts: true, next: {} };
};

export const windowOf = (rule: IntervalRule, ...done: readonly (CivilDate | string)[]) =>
  computeWindow(rule, { done: done.map(doneOn), registered: REGISTERED });

/** [earliest, due, latest], written. */
export const datesOf = (rule: IntervalRule, ...done: readonly (CivilDate | string)[]): string[] => {
  const { earliest, due, latest } = windowOf(rule, ...done);
  return [earliest, due, latest].map(formatCivilDate);
};

export const dueOf = (rule: IntervalRule, ...done: readonly (CivilDate | string)[]): string =>
  formatCivilDate(windowOf(rule, ...done).due);
