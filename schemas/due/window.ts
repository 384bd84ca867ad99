import type { CivilDate } from "../shared/ids.ts";
import type { Explanation } from "../shared/problem.ts";
import { LAST_CIVIL_DATE } from "./civil.ts";

/** What an inspection means for due dates: a projection of one sealed entry. */
export interface DoneRecord {
  readonly entry: string;
  /** The site's civil date on which it was done. */
  readonly on: CivilDate;
  /** Milliseconds UTC; null when only the date is known, as in old papers. */
  readonly at: number | null;
  /** Complete and evaluated: only these move a due date. */
  readonly counts: boolean;
  /** By score name: ISO 8601 duration, "at-once", or null. */
  readonly next: Readonly<Record<string, string | null>>;
  /** A date carried in from old papers: it moves the date and never counts as proof. */
  readonly broughtForward?: boolean;
  /** Title of the longer check that this was, where it was not this check itself. */
  readonly coveredBy?: string;
}

/** Overdue means after `latest`; between `due` and `latest` is due, in the late window. */
export interface DueWindow {
  readonly earliest: CivilDate;
  readonly due: CivilDate;
  readonly latest: CivilDate;
  /** The entry this window was computed from; null when the asset was never done. */
  readonly from: string | null;
  readonly lastDone: CivilDate | null;
  readonly why: Explanation;
  /** Absent unless the date fell into one and moved to the day it reopens. */
  readonly closure?: Closure;
  /** What it is due by cannot be told; `why` says what is lacking. Due on the day last done until then. */
  readonly undecided?: true;
}

/** Stands for "no date": no event has asked for it yet, or a recurrence is over. */
export const NO_DATE = LAST_CIVIL_DATE;

/** Whether a window has dates at all. */
export const hasDates = ({ due }: Pick<DueWindow, "due">): boolean => due < NO_DATE;

/** Excused is counted apart and never as done; blocked is not to be used before it is done. */
export interface Closure {
  readonly status: "excused" | "blocked";
  /** The day it would have been due. */
  readonly from: CivilDate;
  /** The first open day after it. */
  readonly reopens: CivilDate;
}

export type DueStatus =
  | "not-yet"
  | "early"
  | "due"
  | "late-window"
  | "overdue"
  | "never-done"
  | "undecided"
  | Closure["status"];
