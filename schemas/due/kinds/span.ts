import type { CivilDate } from "../../shared/ids.ts";
import type { Explanation } from "../../shared/problem.ts";
import { formatCivilDate } from "../civil.ts";
import type { DueCode } from "../codes.ts";
import type { DoneRecord } from "../window.ts";

/** What a rule makes of one record, before what holds for every rule. */
export interface Span {
  readonly record: DoneRecord;
  readonly earliest: CivilDate;
  readonly due: CivilDate;
  readonly latest: CivilDate;
  readonly why: Explanation;
}

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
