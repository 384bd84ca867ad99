import type { CivilDate } from "../../shared/ids.ts";
import type { Explanation } from "../../shared/problem.ts";
import { formatCivilDate } from "../civil.ts";
import type { DueCode } from "../codes.ts";
import type { Closure, DoneRecord } from "../window.ts";

/** What a rule makes of one record, before what holds for every rule. */
export interface Span {
  /** The record it is counted from; null when it was never done. */
  readonly record: DoneRecord | null;
  readonly earliest: CivilDate;
  readonly due: CivilDate;
  readonly latest: CivilDate;
  readonly why: Explanation;
  readonly closure?: Closure;
  readonly undecided?: true;
}

/** What cannot be told is due on the day it was last done, so that it is never silently not due. */
export const undecided = (record: DoneRecord, why: Explanation): Span => ({
  record,
  earliest: record.on,
  due: record.on,
  latest: record.on,
  why,
  undecided: true,
});

export const explain = (
  code: DueCode,
  params: Explanation["params"],
  moved: readonly Explanation[] = [],
): Explanation => (moved.length > 0 ? { code, params, moved } : { code, params });

/** What every sentence about a record mentions. */
export const facts = (record: DoneRecord): { readonly date: string; readonly entry: string } => ({
  date: formatCivilDate(record.on),
  entry: record.entry,
});
