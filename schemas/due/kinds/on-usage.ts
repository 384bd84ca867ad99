import { formatCivilDate } from "../civil.ts";
import type { DueFacts } from "../facts.ts";
import type { RuleOf } from "../rule-schema.ts";
import type { DoneRecord } from "../window.ts";
import { explain, type Span, undecided } from "./span.ts";

/** Due when the meter has gone `every` further than it stood when it was last done. */
export function onUsage(rule: RuleOf<"on-usage">, _known: DueFacts, record: DoneRecord): Span {
  const params = { point: rule.point, date: formatCivilDate(record.on) };
  return undecided(record, explain("needs-meter", params));
}
