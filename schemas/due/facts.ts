import type { Particulars } from "../checklist/answer-types.ts";
import type { CivilDate } from "../shared/ids.ts";
import type { Calendar } from "./calendar.ts";
import type { IntervalRule, RuleOf } from "./rule-schema.ts";
import type { DoneRecord } from "./window.ts";

export type EventKind = RuleOf<"on-event">["after"][number];

/** Something that happened to an asset and may ask for a check. Reopenings come from the calendar. */
export interface DueEvent {
  readonly kind: Exclude<EventKind, "reopened">;
  readonly entry: string;
  readonly on: CivilDate;
  /** Milliseconds UTC; null when only the date is known: no check of that day then answers it. */
  readonly at: number | null;
}

/** What a meter showed, in the unit it was read in. */
export interface MeterReading {
  readonly entry: string;
  readonly on: CivilDate;
  readonly at: number | null;
  readonly value: number;
  readonly unit: string;
}

/** Another rule for one asset, for a time or for good. */
export interface RuleOverride {
  readonly rule: IntervalRule;
  readonly reason: string;
  /** The last day it holds; null: until it is ended. */
  readonly until: CivilDate | null;
  /** What the meter of its rule showed, where it goes by use; that of the interval's own otherwise. */
  readonly meter?: readonly MeterReading[];
}

/** All that the due dates of one asset by one interval follow from, in any order. */
export interface DueFacts {
  readonly done: readonly DoneRecord[];
  readonly registered: CivilDate;
  /** Absent: every day is an open one. */
  readonly calendar?: Calendar;
  /** Read by `on-event`. */
  readonly events?: readonly DueEvent[];
  /** Read by `on-usage`. */
  readonly meter?: readonly MeterReading[];
  /** Read by `by-risk`. */
  readonly particulars?: Particulars;
  readonly override?: RuleOverride;
}
